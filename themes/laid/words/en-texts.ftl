# The longer texts: counting, cautions, how to cite, how to contribute, the data. A blank line begins
# a paragraph.

how-counted-rule = One printed image on one sheet is one impression.
how-counted-text =
    Where two records may be of one impression, the count has two ends: at most, if each such pair is
    taken as two impressions; at least, if as many as possible are taken as one. Where too many records
    are linked for the lower end to be worked out, it is a bound, marked ≥. Rows need not add up: an impression
    that may stand in either of two rows is counted in both. Doubtful impressions are counted, and named
    beside the figures. Recuts, reproductions and withdrawn records are not counted.

# Cautions.
cautions-brief = What this catalogue is, what it is not, and what it asks of its readers.
caution-opinion = Opinion at a date
caution-opinion-text =
    This catalogue states scholarly opinion at its date. It is not an authentication, an appraisal
    or an opinion on title. That a sheet is in it, or is not, is no verdict on its worth or on anyone’s
    right to it. Opinions may change with evidence, and the catalogue then says what changed.

    Where it names a state or a printing, it means that a sheet is consistent with what is recorded
    of them, unless it says “contradicted by what was seen”, and gives the reasons. Nobody should buy, sell
    or insure on its word alone.
caution-tones = Tones and colours
caution-tones-text =
    Photographs are not measurements. Light, camera, screen, fading and age all change a tone. Colours
    measured from photographs are not colorimetry, and no difference of colour between two photographs
    here is evidence by itself.
caution-provenance = Gaps in provenance
caution-provenance-text =
    Gaps in the history of a print are usual, and none is an accusation. Silence is not clearance
    either. Whoever must decide on a sheet, above all one that may have been in Europe between 1933
    and 1945, needs research of its own and licensed advice where the sheet is.
caution-rights = Copyright
caution-rights-text =
    Works of art may be in copyright, and so may photographs of them; the law differs from country
    to country. The rights in each photograph are said beneath it and are those its owner gave. The
    licence of this catalogue covers its text and data, and no picture.
caution-cultural-property = Cultural property
caution-cultural-property-text =
    Laws on the export, import and return of cultural property differ by country and change. What
    is recorded here of a sheet’s history is no legal advice on where it may go.
caution-handling = Handling
caution-handling-text =
    Originals are handled by trained hands: clean and dry, two hands, full support, little light. Do
    not unframe a sheet, lift it from its mount or wet it to answer a question of this catalogue.
    “Not visible” is a good answer.
caution-privacy = Privacy and correction
caution-privacy-text =
    The name and place of a private collection are published only where its owner’s consent is
    recorded. Consent may be withdrawn; the sheet and its count then stay, and the name goes. Others
    whom the records name, former owners among them, are named without it.

    The name of a person who objects is taken out. Whoever objects, or finds a mistake or something
    that should not be public, is asked to write.
caution-titles = Old words
caution-titles-text =
    Titles and descriptions from the past may use words that we would not. They are kept as evidence
    and are not ours.
cautions-added = Of this catalogue

# How to cite.
cite-brief = Numbers last, numerals may move: cite the number, and with a numeral the edition.
cite-whole = The catalogue
cite-design = An entry
cite-design-text = The siglum and the number. In a listing, the state and its total follow, and the edition of the catalogue that counted them:
cite-impression = An impression
cite-impression-text = Its handle names one sheet, wherever it goes and whoever owns it:
cite-unknown = A sheet not recorded here
cite-unknown-text = Cite the entry for the print, and say of the sheet “this impression not recorded in { $siglum }”. Then please tell us of it.
cite-address = Addresses
cite-address-text =
    Every entry, impression, holder, person and work has one address that does not change. A state’s
    numeral is only its place in the order: when a state is found it may move, the address does not.
    Where a record had to be renamed or joined with another, its old address leads to the present one;
    that of a withdrawn record says why it was withdrawn, and what to see instead.
cite-in-short = In short
cite-in-full = In full

# How to contribute.
contribute-brief = The census grows by what readers send. Every sheet counts, and so does every correction.
contribute-how = Where to write
contribute-how-text = Write to { $contact }. Say which entry or impression you mean, by its number.
contribute-how-no-contact = This catalogue gives no address to write to; its editors are named in the citation below.
contribute-sheet = A sheet not recorded
contribute-sheet-text = Send what you have; each of these helps, and none is required:
contribute-sheet-1 = photographs of both sides, the whole sheet in even light, with a ruler if there is one
contribute-sheet-2 = the size of the sheet and of the image or platemark in millimetres, height first, and how it was measured
contribute-sheet-3 = every signature, stamp, number, inscription and watermark, with its place and whether pencil, ink or stamp
contribute-sheet-4 = what you see at the points that the entry lists, and what you cannot see
contribute-sheet-5 = where the sheet is, its accession number, and where it was before, with the source
contribute-sheet-6 = who looked, when, and whether at the sheet or at a photograph
contribute-sighting = A sighting
contribute-sighting-text = A sale, an exhibition, an old list, a photograph: the date, the source with its page or lot, and what there shows that it was this sheet.
contribute-correction = A correction
contribute-correction-text = Say what is wrong and on what evidence. Views that differ from ours are recorded beside ours, with their author and date.
contribute-museum = Museums and libraries
contribute-museum-text = A table of your impressions is welcome, one a row, in your own words and units; so are your own record numbers and the address of your record. Your credit line is printed exactly as you give it, and each photograph carries the rights you state.
contribute-public = What becomes public
contribute-public-text =
    The record of the sheet, with your name as its source if you wish. Never public: the name and
    place of a private collection whose owner’s consent is not recorded, addresses, values, and
    whatever a photograph’s file says of where and when it was taken. An owner may be “Private
    collection”, with a country or without. Consent may be withdrawn at any time, and the name is then
    taken from every page; what was printed or copied before cannot be called back.
contribute-rights = Photographs
contribute-rights-text = Say who took them, how they are to be credited, and whether they may be shown here, and how large. Pictures that may not be shown still help to identify a sheet.

# The data.
data-brief = What there is for machines today, and what there is not.
data-records = The records
data-records-text =
    This catalogue is compiled from plain text: a TOML file for each design, impression, holder and
    person, Markdown for the longer texts, BibTeX for the literature. The records are the data; the
    pages are made from them.
data-get = Getting them
data-get-text = The records are not offered for download here. Ask for them: { $contact }.
data-get-no-contact = The records are not offered for download here.
data-beside = Beside the pages
format-bibtex-about = Beside each design and each impression stand its citations for reference managers: citation.bib (BibTeX), citation.json (CSL-JSON) and citation.ris (RIS), in { $address }
format-census-csv-about = The counts of a census page stand beside it as tables (CSV).
format-image-service-about = Every photograph that is shown is an image service (IIIF Image API 3.0, level 0), at { $address }, by sheet and name; its file info.json says what can be had.
data-nothing-else = There are no feeds, and no records in other formats.
data-addresses = Addresses as identifiers
data-addresses-text = The address of a page is the identifier of its record: { $address }. It may be kept in other databases.
data-licence = Licence
data-licence-text = Text and data: { $licence }. Photographs: as said under each. The works themselves may be in copyright.
data-no-licence = No licence is stated for the text and data of this catalogue. Photographs: as said under each.

# Changes.
changes-current = This edition
changes-current-text = What you read is { $edition }.
changes-undated = What you read carries neither edition nor date.
changes-later = Earlier editions
changes-later-text = No edition has been issued with a register of its addresses and numerals so far, so there is nothing to compare this one with. From the first issued edition on, this page lists what changed: entries, states, impressions and numerals.
