# The longer texts: counting, cautions, how to cite, how to contribute, the data. A blank line begins
# a paragraph.

how-counted-rule = One printed image on one sheet is one impression.
how-counted-text =
    Where two records may describe one impression, the count is a range: the higher figure counts them
    separately, the lower counts as many as possible once. Where the lower figure cannot be worked out
    exactly, it is a bound, marked ≥. Rows need not add up: an impression that may belong in either of two
    rows is counted in both. Doubtful impressions are counted, and named beside the figures. Recuts,
    reproductions and withdrawn records are not counted.

# Cautions.
cautions-brief = What this catalogue is, what it is not, and what it asks of its readers.
caution-opinion = Opinion as of a date
caution-opinion-text =
    This catalogue states scholarly opinion as of its date. It is not an authentication, an appraisal or
    an opinion on title. Inclusion or omission implies no judgement on a sheet’s value or on anyone’s
    right to it. Opinions may change with evidence, and the catalogue then says what changed.

    Where it names a state or a printing, it means that a sheet is consistent with what is recorded
    of them, unless it says “contradicted by what was seen”, and it gives the reasons. No one should buy,
    sell or insure on the strength of the catalogue alone.
caution-tones = Tones and colours
caution-tones-text =
    Photographs are not measurements. Light, camera, screen, fading and age all change a tone. Colours
    measured from photographs are not colorimetry, and no difference of colour between two photographs
    here is evidence by itself.
caution-provenance = Gaps in provenance
caution-provenance-text =
    Gaps in the history of a print are common and imply no wrongdoing; a complete record is no
    clearance. Anyone deciding about a particular sheet, above all one that may have been in Europe
    between 1933 and 1945, should commission independent research and qualified legal advice in the
    country where it is.
caution-rights = Copyright
caution-rights-text =
    Works of art may be in copyright, and so may photographs of them; the law differs from country
    to country. The rights in each photograph are stated beneath it, as its owner gave them. The
    licence of this catalogue covers its text and data, but no photograph.
caution-cultural-property = Cultural property
caution-cultural-property-text =
    Laws on the export, import and return of cultural property differ by country and change. What
    is recorded here of a sheet’s history is not legal advice on export or sale.
caution-handling = Handling
caution-handling-text =
    Originals should be handled by trained people: clean, dry hands, both hands, full support, little
    light. Do not unframe a sheet, lift it from its mount or wet it to answer a question of this
    catalogue. “Not visible” is a good answer.
caution-privacy = Privacy and correction
caution-privacy-text =
    The name and place of a private collection are published only where its owner’s consent is
    recorded. Consent may be withdrawn; the impression then stays in the count, and the name is removed.
    Other people in the records, former owners among them, are named without consent.

    The name of a person who objects is removed. Anyone who objects, or who finds a mistake or something
    that should not be public, is asked to write to us.
caution-titles = Historical language
caution-titles-text =
    Titles and descriptions from the past may use words that we would not. They are kept as evidence
    and do not express our views.
cautions-added = Particular to this catalogue

# How to cite.
cite-brief = Catalogue numbers are permanent; state numerals may change. Cite the number, and the edition when you cite a state.
cite-whole = The catalogue
cite-design = A print
cite-design-text = Give the short title of the catalogue and the number. For a listing, add the state, the number of states, and the edition of the catalogue that counted them:
cite-impression = One impression
cite-impression-text = Its number stays the same wherever the sheet goes and whoever owns it:
cite-unknown = An impression not recorded here
cite-unknown-text = Cite the print, and add “this impression not recorded in { $siglum }”. Then please tell us of it, as “How to contribute” says.
cite-address = Addresses
cite-address-text =
    Every print, impression, holder, person and work has one address, and it does not change. The address of a page is given at its foot and may be printed.

    States are numbered in the order in which they were made. If a state is found between two others, the numerals after it move by one. The address of a state contains its identifier, not its numeral, and stays the same.

    Where a record had to be renamed or joined with another, its old address leads to the present one. The page of a withdrawn record says why it was withdrawn, and what to see instead.
cite-files = For reference managers
cite-files-text = At the foot of the page of each print and each impression are its citations as files for reference managers: BibTeX, RIS and CSL-JSON. The “Copy” button beside a citation copies it as text.
cite-data = A table of the data
cite-data-text = Name the catalogue, its edition and the address of the page “Data”. The edition matters: a later one may hold more.
cite-picture = A photograph
cite-picture-text = The credit and the rights stand beneath each photograph; both belong to its owner. The licence of this catalogue does not cover photographs.
cite-in-short = In short
cite-in-full = In full

# How to contribute.
contribute-brief = This catalogue grows by what readers send: unrecorded impressions, sightings, corrections. Send a table, records from your own system, or a mail.
contribute-how = Where to write
contribute-how-text = Write to { $contact }. Give the number of the print or impression you mean. The link at the foot of each page fills in the number, the edition and the address.
contribute-how-no-contact = This catalogue gives no address to write to; its editors are named in the citation below.
contribute-table = A table
contribute-table-text =
    For several sheets, fill in { $table }: one row for each sheet, in your own words and units. Lists in the cells offer the terms of this catalogue, and a note at each heading says what belongs there. The page of each print has a table of its own, with its states and printings. An export of your own database will do as well (XLSX, ODS or CSV), with the headings that it has.

    The page of your institution offers the impressions recorded here in the same columns. It is easiest for both sides if you correct that table and send it back. Your credit line is printed exactly as you give it.
contribute-records = Records in an open format
contribute-records-text = If your system gives them, send the files of your records in LIDO or Linked Art, or IIIF manifests. They are read as they are; nothing needs to be prepared.
contribute-mail = A mail
contribute-mail-text =
    For a single sheet, or a sighting in a sale, an exhibition, an old list or a photograph, fill in { $form } as far as you can and send it in a mail. Give the date, the source with its page or lot, and what shows that it was this sheet. The page of each print has this form with its number filled in.
contribute-happens = What happens to it
contribute-happens-text =
    Everything that you send is kept in your own words. The program reads it and says what it understood, what it doubts and what it could not read; you get this report. An editor decides what enters the catalogue, under a permanent number and with you as its source if you wish.

    If you send a corrected table later, only what changed is looked at again. What others have recorded is never overwritten: where you differ, both views can stand, each with its name.
contribute-sheet = An unrecorded impression
contribute-sheet-text = Send what you have. Each of the following helps, and none is required:
contribute-sheet-1 = photographs of both sides, the whole sheet in even light, with a ruler if there is one
contribute-sheet-2 = the size of the sheet and of the image or platemark in millimetres, height first, and how it was measured
contribute-sheet-3 = every signature, stamp, number, inscription and watermark, with its place and whether it is in pencil, ink or stamped
contribute-sheet-4 = what you see at the points that the page of the print lists, and what you cannot see
contribute-sheet-5 = where the sheet is, its accession number, and where it was before, with the source
contribute-sheet-6 = who examined it, when, and whether from the sheet or from a photograph
contribute-correction = A correction
contribute-correction-text = Say what is wrong and on what evidence. If your view differs from ours, it can be recorded beside ours, with your name and the date.
contribute-public = What becomes public
contribute-public-text =
    Public: the record of the sheet, with your name as its source if you wish. Not public: the name and place of a private owner, unless the owner has agreed; addresses; values; and whatever the file of a photograph says of where and when it was taken. A private owner can be named “Private collection”, with or without a country.

    An owner may withdraw this agreement at any time. The name is then removed from every page and every file here. What was printed or copied before cannot be called back.
contribute-rights = Photographs
contribute-rights-text =
    Say who took them, how they are to be credited, whether they may be shown here, and how large. A photograph that may not be shown still helps to identify an impression.

    Send only what you may send: with the permission of the holder where the sheet is not yours, and of the photographer. Copyright, museum rules and the protection of personal data differ by country; ask where you are. A photograph without such a permission is better described than sent.

# The data.
data-brief = What can be reused, in which form, and on what terms.
data-offers = What there is
data-offers-text = Everything that the pages show is also available as data, free of charge and without asking:
data-offers-1 = For everyone: all records as tables, one file for each kind of record, for a spreadsheet (CSV) or for a program (JSON). They are listed below.
data-offers-2 = For museums and libraries: on the page of each holder, a table of its own impressions with their accession numbers and their permanent addresses here.
data-offers-3 = For museums and portals: beside each print, the records of its impressions in LIDO, the exchange format of museums; and all of them in one file for harvesters (programs that collect records from many catalogues).
data-offers-4 = For writers: the citation of each design and each impression, for reference managers. The page “How to cite” says more.
data-tables = The tables
data-tables-text = Each row has the identifier of its record, by which tables refer to each other. What every column holds is explained under:
data-table = Table
data-rows = Rows
data-reading = How to read the tables
data-reading-text =
    A record is named by its identifier, the last part of its address: 14 is a design, 14.7 its seventh recorded impression, 14/moonlit one of its states. Identifiers do not change. Numerals of states are given for reading; they may change from one edition to the next.

    An empty cell means that nothing is recorded, never that something was looked for and not found; where that is known, a column says so. A date stands as it is recorded, by the rules for uncertain dates of ISO 8601-2 (EDTF): 1927~ is about 1927, 1927/1931 from 1927 to 1931. Beside it stand the first and the last day that it can mean. Sizes are in millimetres, height before width.

    Uncertainty is stated: a column gives the certainty of a value (certain, probable, possible), and the table of statements has every view of a date, size or edition with its source. What private owners have not consented to make public is not in the data.

    In CSV, the items of a list are divided by “|”, and an apostrophe stands before a text that begins with =, +, - or @, so that no spreadsheet takes it for a formula. JSON has lists as lists and texts as they are, and leaves empty cells out.
data-museum = For the database of a museum
data-museum-text = To lead from your records to ours and back:
data-museum-1 = On the page of your institution, take the table of its impressions (CSV or JSON).
data-museum-2 = Match it with your records by accession number. An impression that has none there is matched by hand, with the photographs on its page.
data-museum-3 = Where a list has only numbers, ours or those of an earlier catalogue, paste its column into the page “Resolve references”, which gives the addresses and says how sure each is.
data-museum-4 = Keep the address of each impression in your record. It stays the same whatever is found out about the sheet.
data-museum-5 = Do not keep the numeral of a state without the edition of the catalogue. Keep the identifier of the state, or take the numeral anew from each edition.
data-museum-6 = If something is wrong, or an impression is missing, write to us; “How to contribute” says what helps.
data-get = The records themselves
data-get-text = The files from which the pages are made are available on request: { $contact }.
data-get-no-contact = The files from which the pages are made are not offered here.
data-records = What the pages are made from
data-records-text =
    This catalogue is compiled from plain text: a TOML file for each design, impression, holder and
    person, Markdown for the longer texts, BibTeX for the literature. The pages and the tables are made
    from these records and say the same.
data-beside = Tables and images
format-bibtex-about = Citations for reference managers stand beside each design, impression, document and series: citation.bib (BibTeX), citation.json (CSL-JSON) and citation.ris (RIS), in { $address }
format-census-csv-about = The counts of each census page stand beside it as tables (CSV).
format-holder-csv-about = The impressions of each holder that keeps or owns any stand beside its page as tables: sheets.csv and sheets.json, in { $address }
format-holder-xlsx-about = Beside them stands a workbook with everything that is recorded of these impressions, to be corrected and sent back: sheets.xlsx.
format-image-service-about = Every photograph that is shown is an image service (IIIF Image API 3.0, level 0), at { $address }, by impression and name; its file info.json says what is available.
format-linked-art-about = Each design, impression, holder, person and document has a record in Linked Art (JSON-LD) beside its page, at { $address }linked-art.json; those of states, printings and blocks stand below the design.
format-linked-art-provenance-about = The provenance of an impression is in provenance.json beside it.
format-linked-art-words-about = The text of a document, and what it is about, is in words.json beside it.
format-iiif-manifest-about = Each impression with photographs has a manifest (IIIF Presentation 3.0), { $address }manifest.json, with the points of the design as annotations; so has each document with pictures, with its transcription and translations.
format-iiif-collection-about = Collections of manifests stand beside the designs, the holders, the list of designs and the list of documents: { $address }collection.json.
data-addresses = Permanent addresses
data-addresses-text = The address of a page permanently identifies its record: { $design } a design, { $impression } an impression, { $holder } a holder, with the identifier in place of “…”. These addresses may be kept in other databases and printed in books.
format-lido-about = The records of the impressions of each print stand beside it in LIDO 1.1, an XML format that museums exchange: lido.xml, in { $address }
format-oai-about = All these records are also in one file, in LIDO and in the simpler Dublin Core, as a static repository for the protocol OAI-PMH: oai.xml, in { $address } Harvesters read it through a gateway, which others run.
data-machines = For programs
data-machines-text =
    Everything is a plain file: there is no interface to register for, and no limit. Begin with { $package }, which describes every table with its columns, its size and its SHA-256 (a Data Package with Table Schemas, version 2.0); its “version” is the edition of the catalogue. If that file has not changed, nothing in the tables has.

    Each page names the files beside it in its head, as links with their media types. A page never needs a script to be read. The addresses of all pages are in sitemap.xml.
data-licence = Licence
data-licence-text = The text and the data of this catalogue are under { $licence }. Anyone who uses them on these terms needs no further permission; name the catalogue and its edition.
data-no-licence = No licence is stated for the text and data of this catalogue. Ask before you publish more than a quotation.
data-licence-pictures = The photographs are not under this licence. Each has rights of its own, stated by its owner; they stand beneath it and in the table of pictures.
data-licence-works = The prints themselves may be in copyright, whoever took the photograph. Whether they are depends on the country and on the year of the artist’s death.
data-licence-facts = A fact (a size, a date, the place of a sheet) belongs to no one. Please still say where you found it, so that a reader can check it and corrections reach you.
field-notes = What the columns hold
field-notes-brief = Every column of every table on the page { $data }.
column = Column
column-kind-of = What it is
column-holds = What it holds
column-always = { $kind }, never empty
column-of-table = Identifiers of the table
column-words = One of:
column-kind-text = text
column-kind-address = web address
column-kind-integer = whole number
column-kind-number = number
column-kind-boolean = true or false
column-kind-day = day
column-kind-date = date (EDTF)
column-kind-list = list
as-data = As data
holder-as-data = These impressions as a table, with accession numbers and permanent addresses, to be matched with a database:
holder-correct = The same impressions with everything that is recorded of them, to be corrected and sent back:
dataset-description = The designs, states, printings and known impressions of { $title }, with holders, identification, observations and provenance.

# Changes.
changes-current = This edition
changes-current-text = You are reading { $edition }.
changes-undated = This catalogue carries neither edition nor date.
changes-later = Earlier editions
changes-later-text = No edition has been issued with a register of its addresses and numerals so far, so there is nothing to compare this one with. From the first issued edition on, this page lists what changed: entries, states, impressions and numerals.
