# The forms that readers fill in and send: the table of sheets and the text for a mail. `form-NAME` is the heading of a
# column, `form-NAME-note` says what belongs there. The program reads the headings back in English and German; one that is
# changed here may no longer be recognised.

form-sheet-rows = Sheets
form-sheet-help = How to fill in
form-sheet-terms = Terms
form-sheet-lists = Lists
form-not-read = This page of the workbook is not read.
form-unlisted = This is not in the list. You may write it all the same; it will be looked at.

form-accession = Accession number
form-accession-note =
    The number under which the sheet is kept, as your records have it.
    Example: 1920.1-12
form-design = Number in this catalogue
form-design-note =
    The print, by its number here. Choose it from the list, or write the number alone.
    Example: 14
form-title = Title
form-title-note =
    The title under which you keep the sheet. Leave it empty where the number is given and you have no title of your own.
    Example: The old lock in rain
form-state = State in this catalogue
form-state-note =
    The state by the count of this catalogue. Choose it from the list once the number is given, and leave it empty if you are not sure. The count of an earlier catalogue belongs in the remarks.
    Example: ii
form-printing = Printing in this catalogue
form-printing-note =
    The printing that the sheet belongs to. Choose it from the list once the number is given, and leave it empty if you are not sure.
    Example: First edition
form-kind = Kind of impression
form-kind-note =
    An impression of the edition, a proof, a counterproof … Empty means that you do not know.
    Example: trial proof
form-numbering = Number in edition
form-numbering-note =
    The number as it is written on the sheet.
    Example: 12/50
form-technique = Technique
form-technique-note =
    Only where you describe it otherwise than this catalogue does. Several terms are divided by commas.
    Example: etching, drypoint
form-paper = Paper
form-paper-note =
    Choose from the list, or describe it in your own words.
    Example: laid paper
form-watermark = Watermark
form-watermark-note =
    Its letters or what it shows. Write “none” where you looked and found none.
    Example: crowned shield
form-image = Image (mm, height × width)
form-image-note =
    The printed picture, height first, in millimetres. Write another unit behind the numbers.
    Example: 166 x 243
form-sheet = Sheet (mm, height × width)
form-sheet-note =
    The whole piece of paper, height first, in millimetres. Write another unit behind the numbers.
    Example: 212 x 301
form-platemark = Platemark (mm, height × width)
form-platemark-note =
    The edge of the plate in the paper, height first, in millimetres.
    Example: 180 x 255
form-signature = Signature
form-signature-note =
    How and where the sheet is signed. Write “none” where it is not.
    Example: pencil, lower right: O. Perelaz
form-inscription = Inscriptions
form-inscription-note =
    Everything written on the sheet besides signature and number, with its place.
    Example: verso, ink: Lock, 2nd proof
form-marks = Stamps and collectors’ marks
form-marks-note =
    Stamps, seals and collectors’ marks, each with its place.
    Example: red stamp, verso, lower left: HM in a circle
form-condition = Condition
form-condition-note =
    What a visitor to the print room should know.
    Example: trimmed to the image; foxing along the lower edge
form-holder = Holder
form-holder-note =
    Who keeps the sheet. Do not name a private owner without consent: write “private collection”.
    Example: Harbour Museum, Northport
form-status = Whereabouts
form-status-note =
    Empty means that the sheet is where the holder says.
    Example: untraced
form-former-accession = Former number
form-former-accession-note =
    Numbers that the sheet had before, divided by semicolons.
    Example: K. 211; L 1920/3
form-acquisition = How acquired
form-acquisition-note =
    How the sheet came to its holder. Choose from the list, or use your own words.
    Example: bequest
form-credit = Credit line
form-credit-note =
    Exactly as it is to be printed.
    Example: Bequest of Ida Wray, 1920
form-provenance = Provenance
form-provenance-note =
    Owners before, the earliest first, with years and sources. Leave out names that may not be made public.
    Example: The artist; sale, Northport, 1931, lot 12
form-web = Web page
form-web-note =
    The address of your own page for the sheet.
    Example: https://museum.example.org/objects/1920-1-12
form-photograph = Photograph (file name)
form-photograph-note =
    The name of the file that you send with the table; several are divided by semicolons.
    Example: 1920-1-12-recto.tif
form-publish = May the photograph be shown?
form-publish-note =
    Yes only where you have the right to allow it. Empty means no.
    Example: yes
form-rights = Rights in the photograph
form-rights-note =
    The credit and the terms that are to stand beneath it.
    Example: Photograph Harbour Museum, CC BY 4.0
form-seen = Seen on
form-seen-note =
    The day on which the sheet was seen; a year alone will do.
    Example: 2026-03-14
form-seen-by = Seen by
form-seen-by-note =
    Who saw it. The name is printed with the sighting; leave it empty if you do not want that.
    Example: A. Reader
form-basis = How seen
form-basis-note =
    In the original, or otherwise.
    Example: at first hand
form-remarks = Remarks
form-remarks-note =
    Anything else: doubts, sources, the number and state in an earlier catalogue.
    Example: Called state III in the sale list of 1931
form-impression = Impression in this catalogue
form-impression-note =
    The permanent number of the sheet in this catalogue. Please leave it as it is; leave it empty for a sheet that is not here.
    Example: 14.7

form-yes = yes
form-no = no

form-help-title = How to fill in this table
form-help =
    One row for each sheet. Fill in what you know and leave the rest empty: an empty cell means that you do not say, never that there is nothing.

    Use your own words and units. A list in a cell is an offer; what is not in it may be written all the same. Columns that you do not need may be deleted, your own columns may be added, and their order does not matter. Please keep the headings as they are.

    Point at a heading to read what belongs beneath it, with an example.

    Sizes are in millimetres, height before width. If you measured in another unit, write it behind the numbers. Accession numbers and dates stay as you write them.

    Give the state and the printing only where you are sure. If you follow an earlier catalogue, say so in the remarks.

    What happens to the table: the program reads it and says of each column and row what it understood and what it did not; you get this report. An editor looks at what is proposed before anything is published. A sheet that is already in the catalogue is recognised by its accession number; what differs is shown to the editors and overwrites nothing.

    Photographs: no photograph is published unless you say “yes” and have the right to allow it. One that may not be shown still helps to identify the sheet.

    Private owners: no name and no place of a private owner is published without the owner’s consent. Do not write them here unless you may pass them on; what the law asks for differs by country.

    Send the table to { $contact }.
form-help-no-contact = the editors of this catalogue

sighting-title = Report of a sheet
sighting-how = Write after the colons what you know, leave the rest empty, and send it to { $contact }.
sighting-several = For a second sheet, copy the lines below and fill them in again.
sighting-private = No photograph and no name of a private owner is published without consent.

form-link-listing = a table (XLSX)
form-link-sighting = a form for a mail (text)
form-link-listing-general = this table (XLSX)
form-link-sighting-general = this form (text)
report-a-sheet = Report a sheet
report-a-sheet-text = Do you know an impression that is not listed here, or more about one that is? Fill in { $table } or { $form }. What happens then: { $how }.
