# The words of the pages, English. One word a line; a catalogue's own theme may change any of them.

# The frame.
catalogue = Catalogue
contents = Contents
on-this-page = On this page
skip-to-text = Skip to main text
to-cite = How to cite this page
cite-states-and-printings = States and printings
for-reference-managers = For reference managers:
as-linked-data = As linked data:
copy = Copy
copied = Copied
colophon = Colophon
edition = edition { $edition }
cited-editors = { $n ->
    [one] { $names } (ed.)
   *[other] { $names } (eds.)
}
cited-in = { $cited }, in { $whole }
text-and-data-under = Text and data under { $licence }; photographs as credited beneath each.
corrections-to = Please send corrections and unrecorded impressions to
caution-line = This catalogue states scholarly opinion as of its date; it is not an authentication, an appraisal or an opinion on title.

# Pages that gather.
designs = Designs
titles = Titles
series = Series
subjects = Subjects
techniques = Techniques
census = Census
holders = Holders
people = People
marks = Marks
owners = Former owners
overview-provenance = Provenance, 1933–1945
chronology = Chronology
exhibitions = Exhibitions
literature = Literature
documents = Documents
concordance = Concordance
glossary = Glossary
also-called = also { $names }
changes = Changes
cite = How to cite
contribute = How to contribute
cautions = Scope and limitations
data = Data

# The sections in the head of every page, and the ways into the catalogue.
section-designs = Prints
section-identify = Identify
section-census = Census
section-holders = Collections
section-about = About
overview-designs = Prints
overview-identify = Identify a sheet
overview-about = About the catalogue
overview-holders = Collections
neighbouring-designs = Neighbouring prints
neighbouring-impressions = Neighbouring impressions
neighbour-before = Previous:
neighbour-after = Next:
ways-in = Start here
way-designs = Browse the prints
way-designs-about = Every print by its picture, in the order of the catalogue.
way-designs-by-number = Every print by number, title and date.
way-identify = Identify a sheet
way-identify-about = Choose the print by its picture and answer questions about what you see: the identification key names the states and printings that fit.
way-identify-by-number = Choose the print and answer questions about what you see: the identification key names the states and printings that fit.
way-census = The census
all-prints = { $n ->
    [one] The print
   *[other] All { $n } prints
}
as-list = { $title }, as a list
views = Views
view-wall = Pictures
view-numbers = Numbers and titles
view-list = List
not-pictured = no photograph
holder-wall = Photographs
identify-brief = Which print is it? Its picture leads to its identification key, which asks what can be seen on the sheet and names the states and printings that fit.
identify-which = Prints with an identification key
identify-without = Prints without a key
identify-number = By number
identify-by-number = A number of this catalogue or of an earlier one, or an accession number, leads to the record: { $resolve }. Titles, names and the words of inscriptions are found by { $search }.
about-texts = The catalogue
about-artist = The artist and the prints
about-use = Using the catalogue
about-keyboard = Keyboard
keyboard-neighbours = ← and → on the page of a print or an impression: previous and next.
keyboard-search = / on any page: search.

# Search. `search-number-words`: what people write before a number, which belongs to no number.
search = Search
search-field = Search the catalogue
search-hint = Titles in any script, numbers, accession numbers, names, marks, and the words of every text. Press / on any page to search.
search-failed = The search index could not be loaded. The indexes work without scripts.
search-no-script = Searching needs a script, which this browser does not run. These indexes lead to every record:
search-results = Results
search-indexes = Indexes
search-narrow = Narrow the results
search-found = Found: { $n }
search-first = The first { $n }; type more letters for fewer results
search-some = No record has all of these words. Records with some of them: { $n }
search-count = { $n } of { $of }
search-nothing = Nothing was found.
search-all = All { $n } results
search-more = Show more
search-any = any
search-all-again = Show all again
search-in-number = number
search-in-name = name
search-in-record = in the record
search-in-text = in the text
search-by-kind = Type of record
search-by-state = State
search-by-printing = Printing
search-by-holder = Holder
search-by-technique = Technique
search-by-decade = Decade
search-kind-design = Design
search-kind-state = State
search-kind-printing = Printing
search-kind-impression = Impression
search-kind-mark = Mark
search-kind-holder = Holder
search-kind-person = Person
search-kind-work = Literature
search-kind-earlier = Number of an earlier catalogue
search-kind-exhibition = Exhibition
search-kind-series = Series
search-kind-document = Document
search-kind-page = Page
search-kind-term = Term
search-number-words = no nr num number cat
not-found = There is no page at this address
not-found-brief = The address may be misspelt, or the page was never part of this catalogue. This is what the catalogue has for the words of the address.

# References. The lists are what people write beside a number and what belongs to none: before a state ("state iii of v"),
# an accession number ("inv. 1962.44"), an edition ("edition 2"); those of English stand in every language.
resolve = Resolve references
resolve-brief = Paste references to get permanent addresses: numbers with or without states, accession numbers, numbers of earlier catalogues, titles, names.
resolve-field = References, one a line
resolve-hint = For example:
resolve-go = Find addresses
resolve-copy = Copy the addresses
resolve-save = Save as CSV
resolve-failed = The list of references could not be loaded.
resolve-no-script = This page needs a script, which this browser does not run. { $indexes } lead to every record.
resolve-indexes = The indexes
resolve-results = Readings
resolve-found = References understood: { $n } of { $of }
resolve-asked = Reference
resolve-certainty = Certainty
resolve-reading = Reading and address
resolve-why = Reason
resolve-nothing = not understood
resolve-about = For other sites
resolve-about-text = The names, numbers and identifiers by which references are read are in one file, { $file }, which other sites and databases may use: it gives the identifier and the address of every design, state, printing and impression, and the numbers of earlier catalogues; the accession numbers are in further files beside it.
resolve-state-words = state st of
resolve-accession-words = inv inventory acc accession
resolve-edition-words = edition ed
resolve-why-number = number in this catalogue
resolve-why-key = identifier in this catalogue
resolve-why-former-key = former identifier
resolve-why-edition = number or numeral of edition { $edition }
resolve-why-other-total = numeral in this catalogue, which has another total of states
resolve-why-not-there = “{ $text }” is not recorded there
resolve-why-accession = accession number
resolve-why-bare-accession = accession number without its punctuation
resolve-why-former-accession = former accession number
resolve-why-earlier = { $work }, { $number }
resolve-why-earlier-not-there = { $work }, { $number }; the concordance has no “{ $text }” there
resolve-why-row = the number itself, in that catalogue’s list
resolve-why-title = title
resolve-why-former-title = former title
resolve-why-name = name
resolve-why-former-name = former name
resolve-why-isil = ISIL
resolve-why-elsewhere = identifier elsewhere
resolve-why-beginning = a title or name begins so
resolve-see = see { $records }
resolve-why-joined = { $record } is a record of this impression

# Joining.
or = or
list-and = { $before } and { $last }
list-or = { $before } or { $last }
list-comma = { ", " }
quote-open = “
quote-close = ”
quote-single-open = ‘
quote-single-close = ’
by-person = by { $person }
table = Table
note-back = Back

# Counting. `in-words` is a number inside a sentence, `in-words-first` one that begins it.
in-words = { $n ->
    [1] one
    [2] two
    [3] three
    [4] four
    [5] five
    [6] six
    [7] seven
    [8] eight
    [9] nine
    [10] ten
   *[other] { $n }
}
in-words-first = { $n ->
    [1] One
    [2] Two
    [3] Three
    [4] Four
    [5] Five
    [6] Six
    [7] Seven
    [8] Eight
    [9] Nine
    [10] Ten
   *[other] { $n }
}
count-designs = { $n ->
    [one] { $n } design
   *[other] { $n } designs
}
count-impressions = { $n ->
    [one] { $n } impression
   *[other] { $n } impressions
}
count-records = { $n ->
    [one] { $n } record
   *[other] { $n } records
}
count-states = { $n ->
    [one] { in-words } state
   *[other] { in-words } states
}
count-printings = { $n ->
    [one] { in-words } printing
   *[other] { in-words } printings
}
count-holders = { $n ->
    [one] { $n } holder
   *[other] { $n } holders
}

# Names.
untitled = Untitled
private-collection = Private collection
name-withheld = name withheld
withheld-owner = an owner whose name is withheld
withheld-somebody = somebody whose name is withheld
private-in-text = private collection, { $country }
a-private-collection = a { $collection }
holder-not-recorded = holder not recorded
life-born = born { $date }
life-died = died { $date }
life-active = active { $date }

# Where a sheet stands.
status-located = located
status-untraced = untraced
status-destroyed = destroyed
status-stolen = stolen

# States and printings.
only-state = only state
state-reading = state { $state }
state-of-matrix = { $matrix } { $state }
variant-reading = variant: { $variant }
printing-artist = printed by the artist
printing-lifetime = lifetime printing
printing-posthumous = posthumous printing
printing-restrike = restrike
printing-recut = recut
printing-reproduction = reproduction
printing-proofs = proofs

pressed-hand = rubbed by hand
pressed-press = printed in a press

# Pictures.
photograph-by = Photograph: { $credit }.
picture-by = Taken or drawn by
picture-date = Date of the picture
picture-light = Light
alt-captioned = Impression { $key }: { $caption }
alt-impression = { $side } of impression { $key } of { $title }, { $where }
side-recto = Recto
side-verso = Verso
side-edge = Edge
side-mount = Mount
on-side-recto = recto
on-side-verso = verso
on-side-edge = edge
on-side-mount = mount
view-detail = detail
view-raking = raking light
view-transmitted = transmitted light
picture-of-drawing = Drawing
picture-of-matrix = Block or plate
picture-of-illustration = Illustration
no-photograph = No photograph
rights-InC = In copyright
rights-InC-EDU = In copyright, educational use permitted
rights-InC-NC = In copyright, non-commercial use permitted
rights-InC-RUU = In copyright, rights holder not located
rights-InC-OW-EU = In copyright, orphan work
rights-NoC-US = No copyright in the United States
rights-NoC-CR = No copyright, contractual restrictions
rights-NoC-NC = No copyright, non-commercial use only
rights-NoC-OKLR = No copyright, other legal restrictions
rights-CNE = Copyright not evaluated
rights-UND = Copyright undetermined
rights-NKC = No known copyright

# The opening page and the designs.
what-it-is = A catalogue raisonné of the prints, with a census of all known impressions
edited-by = edited by { $editors }
the-catalogue = The catalogue
introduction-in-full = Read the introduction
how-sheets-are-named = Each impression has a permanent number, made of the design’s number and its own: { $example }.
by-number = By number
by-date = by date
by-date-head = By date
by-techniques = by technique
by-series = by series
by-titles = by title
by-subjects = by subject
also = Also { $ways }
designs-by-number = { $n ->
    [one] One print
   *[other] { in-words-first } prints, by number
}
designs-apart = Rejected and withdrawn
no-impression-known = no impression known
undated = Undated

# A design's page.
entry = Entry
cited-as = Cite as
date = Date
makers = Makers
technique = Technique
support = Support
size = Size
size-of-states = { $figure }, as in { $states }
size-measured = { $n ->
    [one] { $range } ({ $of }, measured on one sheet)
   *[other] { $range } ({ $of }, measured on { in-words } sheets)
}
series-one = Series
formerly-titled = Formerly titled
place-in-series = { $series }, no. { $position }
series-form-portfolio = Portfolio
series-form-parts = Series in parts
series-form-set = Set
series-form-album = Album
series-formerly = formerly { $title }
series-publisher = Publisher
series-declared = Designs declared
series-designs = { $n ->
    [one] { in-words } design declared
   *[other] { in-words } designs declared
}
series-known-of = { $known } of { $n } designs known
series-open-places = { $n ->
    [one] No. { $places } is not known
   *[other] Nos { $places } are not known
}
series-sheets = Known impressions
series-counted = Only impressions of the printings named are counted.
series-counted-or-all = Only impressions of the printings named are counted; where none is named, all impressions of the design are.
series-by-status = Of these: { $statuses }.
series-sets = Sets kept together
series-set-whole = complete
blocks = Blocks
plates-of-metal = Plates
stones = Stones
screens = Screens
matrices = Matrices
of-image = image
of-block = block
of-plate = plate
of-stone = stone
of-screen = screen
of-matrix = matrix
of-sheet = sheet
of-unsaid = part not stated
of-support = secondary support
of-mount = mount
of-frame = frame
sizes-measured = Measured: { $how }
measured-sight = within a mount or frame, so the sheet may be larger
sizes-given-as = Given as “{ $said }”
of-platemark = platemark
from-blocks = { $n ->
    [one] { $technique } from one block
   *[other] { $technique } from { in-words } blocks
}
from-plates = { $n ->
    [one] { $technique } from one plate
   *[other] { $technique } from { in-words } plates
}
from-stones = { $n ->
    [one] { $technique } from one stone
   *[other] { $technique } from { in-words } stones
}
from-screens = { $n ->
    [one] { $technique } from one screen
   *[other] { $technique } from { in-words } screens
}
from-some-matrices = { $n ->
    [one] { $technique } from one matrix
   *[other] { $technique } from { in-words } matrices
}
on-paper = on { $papers }
in-inks = in { $inks }
came-out-in = published in { $series }
only-in-variant = only in { $variants }
matrix-named = { $name } { $kind }
matrix-block = block
matrix-plate = plate
matrix-stone = stone
matrix-screen = screen
matrix-now-extant = extant
matrix-now-cancelled = cancelled
matrix-now-destroyed = destroyed
matrix-now-unknown = whereabouts unknown
state = State
states = States
caption-states = How the states differ
states-compared = States compared
points-left-out = Nothing is recorded here for { $columns }.
point = Point
what-is-compared = Feature
points = Points
other-points = Further points
first-described = first described { $date }
state-follows = follows { $states }
state-follows-none = follows no other state
unchanged = { $value }, unchanged
changed = changed:
not-recorded = not recorded
not-told = not recorded or withheld
printing = Printing
printings = Printings
variants = Variants
caption-printings = How the printings differ
printings-compared = Printings compared
printed-by = printed by { $printer }
published-by = published by { $publisher }
printed-and-published-by = printed and published by { $who }
all-states = all states
in-states = { $n ->
    [one] state { $states }
   *[other] states { $states }
}
declared-edition = declared edition { $n }
count-printed = { $n ->
    [one] one impression printed
   *[other] { in-words } impressions printed
}
numbered = numbered
not-numbered = not numbered
from-matrices = from the { $matrices }
of-kind = Type
of-printer = Printer
of-publisher = Publisher
of-date = Date
of-edition = Declared edition
of-printed = Printed
impressions = Impressions
not-identified = Not identified
private-collections = Private collections
place-not-recorded = Place not recorded
the-same = the same
only-numbers-differ = { $n ->
    [one] nothing else is recorded that tells this impression from others
   *[other] nothing else is recorded that tells these { in-words } impressions apart
}
lacks = without the { $matrices }
lot = lot { $lot }
dealer-number = no. { $lot }
last-recorded = last recorded: { $where }
last-recorded-in-trade = last recorded in the trade: { $where }
last-recorded-owner = last recorded with a private owner
last-recorded-agent = last recorded in the trade
last-recorded-keeper = last recorded with an unnamed custodian
show-all = Show all
some-answer = { $shown } of { $all } shown.
none-answers = No impression matches.
all-of-them = all
not-said = not stated
holder = Holder
kind-of-holder-museum = museums
kind-of-holder-library = libraries
kind-of-holder-archive = archives
kind-of-holder-foundation = foundations
kind-of-holder-private = private
kind-of-holder-trade = the trade
kind-of-holder-unknown = not known
drawings-and-blocks = Drawings and blocks
sheets-known = { $n ->
    [one] One impression known
   *[other] { in-words-first } impressions known
}
sheets-known-between = { $n ->
    [one] At most one impression known
   *[other] { $least } to { $n } impressions known
}
sheets-known-not-below = { $n ->
    [one] At most one impression known
   *[other] { $least } or more, at most { $n } impressions known
}
all-located = all located
of-which-located = { $figure } located
may-be-one-sheet = { $one } and { $other } may be the same impression.
census-of-design = The census of this design
comparisons = Comparisons
related = Related designs
named-as-related-by = Named as related by
here = Here
commentary = Commentary
mentioned-in = Mentioned in
see = See { $records }

# An impression's page.
sheet = Sheet
inventory = accession no. { $number }
owner = Owner
joint-owners = Joint owners
accession = Accession no.
formerly = formerly { $what }
credit-line = Credit line
holders-page = the holder’s own page of this impression
identifiers = Identifiers elsewhere
technique-of-design = of the design: { $technique }
as-given = As described by the holder
as-given-seen = seen { $date }
as-given-from = Source: { $source }
status = Status
kind = Impression type
taken-from = Taken from
number = Number
paper = Paper
inks = Inks
pulled = Printed
watermark = watermark: { $watermark }
chain-lines = chain lines { $value } mm apart
laid-lines = { $value } laid lines to the centimetre
paper-thickness = { $value } mm thick
mounted-on = laid down on { $support }
margins = margins: { $margins }
printed-side-recto = printed on the recto
printed-side-verso = printed on the verso
printed-side-edge = printed on the edge
printed-side-mount = printed on the mount
blocks-printed = Blocks printed
blocks-all = { $n ->
    [2] both
   *[other] all { in-words }
}
blocks-all-but = all but the { $matrices }
block-printed = printed
block-not-printed = not printed
block-not-visible = not visible
condition = Condition
mark = mark
mark-signature = signature
mark-stamp = stamp
mark-seal = seal
mark-collector = collector’s mark
mark-inscription = inscription
in-medium = { $what }, { $medium }
quoted = “{ $text }”
name-of = bearing the name of { $person }
applied-by = applied by { $person }
looked-for = No { $what } found.
without-signature = signature
without-stamp = stamp
without-seal = seal
without-collector = collector’s mark
without-inscription = inscription
without-watermark = watermark
without-numbering = number
identification = Identification
or-else = Or:
other-opinions = Other opinions
after-work = after { $work }
observed = Observations
seen-there = On the sheet
observed-certainly = Observations (certain unless noted)
but-shows = but recorded:
count-disagree = { $n ->
    [one] One observation does not agree with the identification
   *[other] { in-words-first } observations do not agree with the identification
}
more-pictures = More pictures
provenance = Provenance
provenance-key = Earliest first. A semicolon marks direct transfer; a full stop, a gap or an unknown link. Dealers and agents stand in parentheses, life dates in brackets.
provenance-as-recorded = As recorded, entry by entry
bought-in = bought in
as-keeper = as custodian
probably = probably
possibly = possibly
probably-this-sheet = probably this impression
possibly-this-sheet = possibly this impression
illustrated = illustrated
not-illustrated = not illustrated
probably-that-sheet = probably { $sheet }
possibly-that-sheet = possibly { $sheet }
owner-gift = gift to { $who }
owner-bequest = bequest to { $who }
owner-descent = by descent to { $who }
owner-purchase = purchased by { $who }
owner-sale = sold to { $who }
owner-exchange = by exchange to { $who }
owner-transfer = transferred to { $who }
owner-commission = commissioned by { $who }
owner-from-the-artist = from the artist to { $who }
owner-legal-deposit = legal deposit to { $who }
owner-confiscation = confiscated by { $who }
owner-forced-sale = sold under duress to { $who }
owner-looting = looted by { $who }
owner-theft = stolen by { $who }
owner-restitution = restituted to { $who }
owner-unknown = acquired by { $who }
owner-find = found in the collection of { $who }
owner-fire = destroyed by fire, { $who }
owner-destruction = destroyed, { $who }
agent-sale = sale, { $who }
agent-purchase = purchased by { $who }
agent-exchange = exchanged by { $who }
agent-forced-sale = forced sale, { $who }
keeper-loan = lent to { $who }
keeper-deposit = deposited with { $who }

# The owners of 1933 to 1945.
caution = Caution
years-1933-1945 = 1933–1945
years-throughout = Ownership is recorded for the whole time in which the sheet may have existed, from { $time }
years-uncertain = Ownership is recorded for the whole time in which the sheet may have existed, from { $time }, but with certainty for none of it
years-perhaps = Ownership is recorded for the whole time in which the sheet may have existed, from { $time }, but not with certainty for all of it
years-partly = Owners are recorded for part of the time from { $time }
years-silent = No owner is recorded here from { $time }
years-change-recorded = A change of ownership is recorded for these years
years-change-possible = Ownership may have changed in these years
years-last = last recorded { $date }
years-last-in-trade = last recorded in the trade, { $date }
years-perhaps-last = perhaps { $last }
years-then-none = { $last }; then no owner recorded
years-then-next = { $last }; then { $next }
years-next-owner = no owner recorded until { $date } ({ $who })
years-next-owner-between = no owner recorded; next recorded { $date } ({ $who })
years-next-sale-of-day = no owner recorded until the sale of { $date } ({ $who })
years-next-sale = no owner recorded until a sale, { $date } ({ $who })
years-next-bought-in = no owner recorded until it was offered and bought in, { $date } ({ $who })
years-next-in-trade = no owner recorded until it was in the trade, { $date } ({ $who })
years-perhaps-same = perhaps the same impression as { $other }: { $entries }
years-perhaps-same-alone = perhaps the same impression as { $other }
years-manner-unknown = How ownership changed is not recorded
years-see-sheet = how ownership changed is not recorded: see the impression
years-see-note = see the note on the impression
years-see-written = see the provenance text of the impression
years-only-open-days = Only days without a certain owner are listed.
years-handled = In the trade in these years: { $entries }
years-entries-only = Only the entries are counted here, not the provenance text
years-may-be-later = It may have been printed later
years-probably-later = It was probably printed later, { $by }
years-nobody = no owner recorded
years-perhaps-owner = perhaps { $owner }
years-acquired = acquired { $date }
years-acquired-some-day = acquired { $date }, the day is not recorded
years-acquired-not-recorded = since when is not recorded
years-held = held until { $date }
years-held-some-day = held until { $date }, the day is not recorded
years-held-not-recorded = until when is not recorded
years-caution = Gaps are common and imply no wrongdoing; a complete record is no clearance. Anyone deciding about a particular sheet should commission independent research and qualified legal advice in the country where it is.
provenance-years-brief = The recorded owners of each impression from 30 January 1933 to 8 May 1945. Impressions printed after or destroyed before these years are left out; those of unknown printing date are included. The absence of a recorded owner does not clear an impression.
years-head-silent = No owner recorded for these years
years-head-partly = Owner recorded, certainly or possibly, for part of these years
years-head-perhaps = Owner recorded throughout, for some days without certainty
years-head-uncertain = Owner recorded throughout, for every day without certainty
years-head-throughout = Owner recorded throughout
years-mark-change-recorded = change of ownership recorded
years-mark-change-possible = change of ownership possible
years-mark-may-be-later = may have been printed later
years-mark-probably-later = probably printed later, { $by }
years-not-asked = { $n ->
    [one] One record is left out: its impression was printed after or destroyed before these years, or it is withdrawn, a recut or a reproduction.
   *[other] { in-words-first } records are left out: their impressions were printed after or destroyed before these years, or they are withdrawn, recuts or reproductions.
}

sightings = Recorded sightings
notes = Notes
other-records = Other records
stolen-caution = Recorded here as stolen. The catalogue gives no opinion on title: anyone who encounters this sheet should contact the last recorded owner or the authorities, as local law requires.
against-what-was-seen = contradicted by what was seen
is-the-same-sheet = This record and { $other } describe the same impression.
one-sheet-of-records = { $records } describe the same impression. A number in braces names the record that a line comes from.
choices = One of these
taken-over = Now part of { $successor }, where the impressions once held here are listed.
recorded-with = recorded under { $holder }
has-moved = This page is now here: { $page }.
leads-to-its-sheet = { $record } and { $sheet } describe the same impression; see { $sheet }.
record-of-this-sheet = From record { $record }
same-sheet-as = The same impression as { $other }
maybe-same-sheet-as = Perhaps the same impression as { $other }
other-sheet-than = Certainly not the same as { $other }
shares-sheet-with = On the same sheet of paper as { $other }
goes-with = Belongs with { $other }
counterproof-taken = A counterproof was taken from it: { $other }
compare = Compare
compare-chosen = Compare { $n }
compared-with = with { $others }

# A comparison.
impressions-compared = { $n ->
    [one] One impression
    [2] Two impressions compared
    [3] Three impressions compared
    [4] Four impressions compared
   *[other] { $n } impressions compared
}
title-compared = { $keys } compared
observations = Observations
together = Result
verdict-differ = differ
verdict-agree = agree
verdict-cannot-be-told = cannot be told
count-differ = { $n ->
    [0] They differ at none of the { $all } points recorded.
    [one] They differ at one of the { $all } points recorded.
   *[other] They differ at { $n } of the { $all } points recorded.
}
nothing-observed = No observations are recorded for these impressions.
nothing-recorded-to-compare = Nothing is recorded of these impressions that could be compared.
compared-across-designs = Impressions of different designs have no points in common; what is recorded of the sheets is compared.
compared-of-all = The first { $shown } of { $all } stand here.
sheets-and-observations = Sheets and observations
paper-colour = Colour of the paper
chain-lines-apart = Distance between chain lines
laid-lines-in-a-centimetre = Laid lines per centimetre
thickness-of-the-paper = Thickness of the paper
watermark-alone = Watermark
margins-alone = Margins
mounted-on-alone = Laid down on
not-looked-at = Not recorded on any of them:
ground = Background
ground-page = as the page
ground-light = light
ground-dark = dark

# Impressions laid on each other.
comparison-chosen = Compare impressions
comparison-of = { $design }: impressions compared
compare-any = Compare impressions
compare-with-another = Compare with another impression
compare-which = Choose impressions
compare-marked-sheets = Compare these impressions
compare-other-photographs = Other photographs:
compare-photograph-of = Photograph of { $number }
compare-none = clear
compare-choose = Choose two to four.
compare-choose-one-more = Choose one more.
compare-four-chosen = Four at most. Remove one to add another.
compare-how = View
compare-how-to-read = How to read this
compare-side = side by side
compare-edge = divider
compare-blink = alternating
compare-overlay = overlay
compare-difference = differences
compare-first = First
compare-second = Second
compare-edge-between = { $first } left of the divider, { $second } right of it
compare-opacity-of = { $second } over { $first }
compare-now = { $number }
compare-stop = stop
compare-go = resume
compare-step = switch
compare-pace = Speed
compare-slow = slow
compare-quick = fast
compare-is-still = Reduced motion is on: switch by hand.
compare-working = Comparing …
compare-difference-of = Dark: darker on { $second }. Light: darker on { $first }. Mid-grey: no difference in line.
compare-difference-how = Only lines and edges are compared, so an area that is on one sheet only shows at its edge. Nothing is drawn where only one photograph reaches. Differences in inking and in lighting are evened out; fading, stains and a poor fit are not. A difference seen here is a reason to look at the sheets, and no evidence by itself.
compare-difference-share = Lines and edges differ on { $percent } of the area.
compare-difference-share-of-image = Lines and edges differ on { $percent } of the printed image.
compare-unreadable = The pixels cannot be read: browsers do not allow it on pages opened from a disk.
compare-no-picture = There is no photograph of { $number }.
compare-not-laid = The photograph of { $number } cannot be aligned with the others: { $why }.
compare-side-only = Side-by-side view only; not to a common scale.
recorded-on-no-sheet = Not recorded on any impression:

# Looking closer at a picture.
view-closer-look = Zoom
view-closer = zoom in
view-further = zoom out
view-whole = whole photograph
view-left = move left
view-right = move right
view-up = move up
view-down = move down
view-close = close
view-copy-link = Copy a link to this detail
view-copy-state = Copy this detail for another viewer (IIIF)
view-bar = Scale bar:
view-is-whole = Whole photograph
view-is-closer = { $times }×
view-keys = Keyboard: + − zoom, 0 whole photograph, arrows move. Click the picture to zoom with the wheel.

# Values of points.
value-present = present
value-absent = absent
value-not = not
value-not-visible = not visible
value-not-applicable = not applicable
wear = wear
rests-on-matrix = matrix
rests-on-blocks = which blocks were printed
rests-on-inking = inking
rests-on-paper = paper
rests-on-mark = mark

# Claims.
certainty-certain = certain
certainty-probable = probable
certainty-possible = possible
basis-first-hand = at first hand
basis-photograph = from a photograph
basis-literature = from literature
basis-report = from a report
cited-number = no. { $number }
relation-same = the same
relation-covers-ours-design = includes this design
relation-covers-ours-state = includes this state
relation-covers-ours-printing = includes this printing
relation-part-of-ours-design = part of this design
relation-part-of-ours-state = part of this state
relation-part-of-ours-printing = part of this printing
relation-not-a-state = not a state
relation-error = in error
standing-accepted = Accepted
standing-doubtful = Doubtful
standing-rejected = Rejected
standing-withdrawn = Withdrawn
stands-doubtful = doubtful
stands-rejected = rejected
stands-withdrawn = withdrawn
stands-taken-over = merged

# Dates.
date-unknown = date unknown
date-about = about { $date }
date-perhaps = perhaps { $date }
date-perhaps-about = perhaps about { $date }
date-between = between { $a } and { $b }
date-throughout = { $a } to { $b }
date-not-before = not before { $date }
date-not-after = not after { $date }
date-from = from { $date }
date-until = until { $date }
date-from-unknown = from { $date }, end unknown
date-until-unknown = until { $date }, beginning unknown
date-or-earlier = { $date } or earlier
date-or-later = { $date } or later
date-day = { $day } { $month } { $year }
date-day-month = { $day } { $month }
date-day-alone = { $day }
date-month = { $month } { $year }
date-some-day = a day in { $month } { $year }
date-some-month = a month in { $year }
date-some-day-of-year = a day in { $year }
date-decade = { $decade }s
date-the-decade = the { $decade }s
date-bce = { $year } BCE
date-significant = { $year } (to { $n } significant digits)
date-spring = spring { $year }
date-spring-north = spring { $year } (northern hemisphere)
date-spring-south = spring { $year } (southern hemisphere)
date-summer = summer { $year }
date-summer-north = summer { $year } (northern hemisphere)
date-summer-south = summer { $year } (southern hemisphere)
date-autumn = autumn { $year }
date-autumn-north = autumn { $year } (northern hemisphere)
date-autumn-south = autumn { $year } (southern hemisphere)
date-winter = winter { $year }
date-winter-north = winter { $year } (northern hemisphere)
date-winter-south = winter { $year } (southern hemisphere)
date-quarter-1 = first quarter of { $year }
date-quarter-2 = second quarter of { $year }
date-quarter-3 = third quarter of { $year }
date-quarter-4 = fourth quarter of { $year }
date-third-1 = first third of { $year }
date-third-2 = second third of { $year }
date-third-3 = third third of { $year }
date-half-1 = first half of { $year }
date-half-2 = second half of { $year }
month-1 = January
month-2 = February
month-3 = March
month-4 = April
month-5 = May
month-6 = June
month-7 = July
month-8 = August
month-9 = September
month-10 = October
month-11 = November
month-12 = December
# Indexes and counts.
sheets-between = { $least } to { $n } impressions
sheets-not-below = { $least } or more, at most { $n } impressions
between-numbers = { $least } to { $most }
not-below-numbers = { $least } or more, at most { $most }
as-of = as of { $date }
this-catalogue = this catalogue
see-record = see { $record }
about = About
particulars = Particulars
count-cities = { $n ->
    [one] { $n } city
   *[other] { $n } cities
}
count-of-designs = { $n ->
    [one] of { $n } design
   *[other] of { $n } designs
}
impressions-of-designs = { $impressions } { $designs }
all = All

# Checklists.
impression = Impression
accession-number = Accession no.
printing-and-kind = Printing, type
remarks = Remarks

# Holders.
holders-brief = Arranged by city, then by institution. { $holders } in { $cities }.
holders-private = Private collections
holders-trade = The trade
holders-without-place = Place not recorded
now-part-of = now { $holder }
holder-kind-museum = museum
holder-kind-library = library
holder-kind-archive = archive
holder-kind-foundation = foundation
holder-kind-private = private collection
holder-kind-trade = trade
holder-kind-unknown = kind not known
formerly-named = Formerly
took-over = Incorporates
continued-by = Continued by
isil = ISIL
web = Web
owned-by = owned by { $owner }
owned-elsewhere = On deposit elsewhere
kept-at = Kept at
impressions-here = Impressions here
formerly-owned = Formerly owned
stolen-from-here = Stolen from here
formerly-kept = Formerly on deposit here
formerly-here = Formerly here
handled-here = Sold or offered here
matrices-here = Blocks and plates here
exhibitions-here = Exhibitions here
now-at = now { $where }
named-printer = As printer
named-publisher = As publisher
named-series-publisher = Series published
named-mark = Name appears on
named-applied-mark = Marks applied to
named-mark-user = As user of the mark
named-sighting = Examined or reported
named-said = Opinions and statements about
named-photographed = Photographs and drawings by
to-do = Still to be done
to-do-all = all { $n } impressions
to-do-some = { $n } impressions
to-do-not-identified = Not identified
to-do-not-measured = Not measured
to-do-no-photograph = No photograph here
to-do-no-verso = No photograph of the verso here
to-do-years = No owner recorded for some or all of 1933–1945

# People.
people-brief = { $n ->
    [one] One person, with cross-references from variant names.
   *[other] { in-words-first } people, with cross-references from variant names.
}
active = Active
in-this-catalogue = In this catalogue
is-artist = artist
is-editor = editor
authority = Authority records
made-by-them = Designs
in-no-series = Single prints
by-where-now = by present holder
unless-said = { $what }, unless noted
printed-by-them = As printer
published-by-them = As publisher
owned-by-them = As owner
kept-by-them = As custodian
handled-by-them = As dealer or agent
writings = Writings

# Chronology.
year-by-year = Year by year
event-born = { $person } born
event-died = { $person } died
event-active = { $person } active
event-states = { $n ->
    [one] state { $states }
   *[other] states { $states }
}
event-matrix = { $matrix } { $fate }
event-exhibition = Exhibition: { $exhibition }
event-document = Document: { $document }
event-series = Series: { $series }
event-series-published = Series published: { $series }

# Concordance and literature.
concordance-brief = { $n ->
    [one] This catalogue’s numbers against those of one earlier catalogue, in both directions.
   *[other] This catalogue’s numbers against those of { in-words } earlier catalogues, in both directions.
}
from-our-numbers = From our numbers
from-their-numbers = From { $work }
our-number = This catalogue
their-number = Its number
its-numbers = Its numbers
its-number = Number
relation = Relation
not-described-there = not described there
in-none-of-the-catalogues = { $n ->
    [one] One design has no number there:
   *[other] { $n } designs have no number there:
}
concordance-dash = A dash: not described there.
earlier-catalogues = Earlier catalogues
literature-cited = Literature cited
reference = Reference
authors-here = In this catalogue
cited-in-designs = Cited under designs
cited-in-impressions = Cited under impressions
cited-in-exhibitions = Cited elsewhere

# References. $region is the region of the catalogue's language: GB in en-GB, else empty.
bibliography-and = and
bibliography-by = by { $names }
bibliography-edited-by = edited by { $names }
bibliography-translated-by = translated by { $names }
bibliography-edited-and-translated-by = edited and translated by { $names }
bibliography-compiled-by = compiled by { $names }
bibliography-editors = { $n ->
    [one] ed.
   *[other] eds.
}
bibliography-translators = trans.
bibliography-compilers = { $n ->
    [one] comp.
   *[other] comps.
}
bibliography-et-al = et al.
bibliography-in = in
bibliography-quoted = { $region ->
    [GB] ‘{ $title }’{ $stop }
   *[other] “{ $title }{ $stop }”
}
bibliography-edition = { $n }{ $n ->
    [one] st
    [two] nd
    [few] rd
   *[other] th
} { $region ->
    [GB] edn.
   *[other] ed.
}
bibliography-volume = vol. { $volume }
bibliography-volumes = { $n } vols.
bibliography-number = no. { $number }
bibliography-no-date = n.d.
bibliography-date = { $region ->
    [GB] { $day } { $month } { $year }
   *[other] { $month } { $day }, { $year }
}
bibliography-accessed = accessed { $date }
bibliography-doctoral = doctoral dissertation
bibliography-masters = master’s thesis
bibliography-technical = Technical Report
bibliography-manuscript = unpublished manuscript
bibliography-of = of
bibliography-chapter = chap. { $chapter } in
bibliography-version = version { $version }
bibliography-day = { $region ->
    [GB] { $day } { $month }
   *[other] { $month } { $day }
}

# Exhibitions.
exhibition = Exhibition
exhibition-catalogue = Catalogue
impressions-shown = Impressions shown
number-there = Exhibition no.
now-kept = Present holder

# Marks.
owners-brief = Owners before the present holder; dealers, agents and custodians are listed separately. Not an opinion on title.
owners-agents = Dealers and agents
owners-keepers = Custodians
owners-numbers = Former accession numbers
owners-numbers-elsewhere = Holder not recorded
marks-brief = Signatures, stamps, seals, collectors’ marks and inscriptions, with watermarks.
mark-shared = A mark with several users
marks-shared = Marks with several users
marks-shared-note = alone, such a mark identifies neither owner nor date
marks-signature = Signatures
marks-stamp = Stamps
marks-seal = Seals
marks-collector = Collectors’ marks
marks-inscription = Inscriptions
marks-other = Other marks
marks-watermark = Watermarks
mark-own-hand = own hand
mark-applied-by = applied by { $name }
mark-not-described = not described
mark-colour = Colour
mark-repertory = Repertory
mark-users = Used by
mark-user = User
mark-used = Period
mark-put-on = Applied to
mark-years-unknown = years not known
mark-caution = The mark had several users; alone it establishes neither a user nor a date.
mark-conditions = Conditions
mark-condition = Condition
mark-condition-when = Period
mark-conditions-note = The mark changed over time. Where its condition on a sheet is recorded, that limits when the mark was applied, not when the sheet was printed.
mark-in-condition = condition: { $condition }
mark-seen-on = Recorded on
mark-printings = Printings and dates
mark-printing = Printing
mark-printed = Printed
mark-printing-unknown = printing not settled
mark-applied = Applied
mark-sheets = Impressions on which it is recorded

# Titles.
titles-brief = All titles in all languages. Initial articles, brackets and quotation marks are ignored.
title-kind-translated = translated
title-kind-former = former title

# Census.
census-brief = Known { $as-of }: { $sheets }.
census-brief-undated = Known: { $sheets }.
census-of = Census of { $design }
how-counted = How we count
by-design = By design
by-status = By status
by-state = By state
by-printing = By printing
by-kind = By impression type
by-place = By place
whole = At a glance
whole-key = Each square is one impression. Each row is one design, with a gap between printings. Records that may describe one impression are counted separately.
whole-key-of-design = Each square is one impression. Records that may describe one impression are counted separately.
whole-others = printed by others
whole-uncertain = printing uncertain, or contradicted by an observation
whole-unknown = no printing recorded
whole-printing = { $printing }: { $sheets }{ $uncertain ->
    [0] { "" }
   *[other] , { $uncertain } uncertain
}
whole-several-printings = One of several printings
whole-no-printing = No printing recorded
column-status = Status
column-state = State
column-printing = Printing
column-kind = Impression type
column-holder = Holder
column-place = Country, town and holder
number-short = No.
title = Title
known = Known
sheets = Impressions
records = Records
caption-crossing = Impressions by state and printing
crossing-left-out = No impression is known of: { $printings }.
crossing-open = An impression of uncertain state or printing is counted under each possibility.
crossing-not-firm = Below a figure: how many of its impressions are identified only as probable or possible (not certain), and how many are contradicted by what was seen (contradicted). The others are firm.
not-firm-key = Not certain: identified only as probable or possible. Contradicted: what was seen contradicts the identification. The figures include these impressions.
contradicted-fits = { $sheet } is identified as { $called }; what was seen fits { $states }
contradicted-fits-none = { $sheet } is identified as { $called }; what was seen fits no recorded state
of-them-uncertain = { $n ->
    [one] { $n } not certain
   *[other] { $n } not certain
}
of-them-contradicted = { $n ->
    [one] { $n } contradicted
   *[other] { $n } contradicted
}
of-them-standing = { $n } of them { $standing } ({ $records })
none-known = none known
not-in-this-state = not printed in this state
counted-not-shown = { $n ->
    [one] { $n } counted but not published
   *[other] { $n } counted but not published
}
not-in-these-rows = { $n ->
    [one] { $n } counted but not published; it is in no row of this table.
   *[other] { $n } counted but not published; they are in no row of this table.
}
designs-of-one = { $n ->
    [one] One design known in one impression
   *[other] { $n } designs known in one impression each
}
one-impression-each = Known in one impression
whole-one-each = one each
only-impression = The only impression known
designs-of-no-impression = { $n ->
    [one] One further design is not in this table: no impression of it is known.
   *[other] { in-words-first } further designs are not in this table: no impression of them is known.
}
declared-editions = Editions
known-of-declared = { $n ->
    [one] Known: { $known } of one declared
   *[other] Known: { $known } of { $n } declared
}
known-of-perhaps-declared = { $n ->
    [one] Known: { $known } of perhaps one declared
   *[other] Known: { $known } of perhaps { $n } declared
}
known-of-printed = { $n ->
    [one] Known: { $known } of one printed
   *[other] Known: { $known } of { $n } printed
}
known-of-printing = Known: { $known }
proofs-included = proofs included
numbered-above = { $n ->
    [one] one of them numbered above it
   *[other] { in-words } of them numbered above it
}
source-not-given = source not given
design = Design
declared = Declared
numbers-printed = Printed
numbers-met = Numbers recorded
numbers-above = Above the edition
numbers-repeated = Recorded twice
may-be-one-sheet-head = Perhaps the same impression
are-one-sheet = One impression, several records
edition-declared = { $n ->
    [one] { $printing }: { $n } declared
   *[other] { $printing }: { $n } declared
}
edition-perhaps-declared = { $n ->
    [one] { $printing }: perhaps { $n } declared
   *[other] { $printing }: perhaps { $n } declared
}
edition-met-of = { $n ->
    [0] No number is recorded.
    [one] One of { $declared } numbers is recorded.
   *[other] { $n } of { $declared } numbers are recorded.
}
edition-met-of-perhaps = { $n ->
    [0] No number is recorded.
    [one] One of perhaps { $declared } numbers is recorded.
   *[other] { $n } of perhaps { $declared } numbers are recorded.
}
edition-met = { $n ->
    [one] One number is recorded; no size is declared.
   *[other] { in-words-first } numbers are recorded; no size is declared.
}
numbers-key = A linked number leads to its impression.
edition-unnumbered = Not numbered.
declared-key = Known: all impressions of the printing, proofs included. Printed: the number printed. Numbers recorded: those read on impressions.
declared-perhaps-key = ?: the size is only reported, or given as probable or possible.
declared-by = Source:
of-other-size = Numbered out of a different total:
others-say = According to other sources:
others-say-printed = Number printed, according to other sources:
met-twice = Recorded on more than one impression:
above-declared = Numbered above the declared edition:

# Census: what stands beside the counts.
bars-key = Solid bars: certain minimum. Outline: possible maximum.
class-edition = edition impressions
class-proof = proofs
class-counterproof = counterproofs
class-maculature = maculatures
class-cancelled = from a cancelled matrix
class-fragment = fragments
class-other = other types
set-apart = Rejected and withdrawn
set-apart-note = Rejected or withdrawn designs, listed separately. Their impressions are in no total on this page.
set-apart-own = This design is rejected or withdrawn; its impressions are in no total of the catalogue.
census-by-series = By series
series-together = Series
on-one-paper = On one sheet of paper
on-one-paper-note = Each is counted by itself.
of-one-set = From one set
of-one-set-note = Each impression of a set is counted.
recorded-not-counted = Recorded, not counted
by-state-and-printing = By state and printing
holders-by-state = By holder and state
caption-holders-by-state = Impressions of each holder by state
counted-withdrawn = withdrawn
format-census-csv = The counts as a table (CSV)
format-editions-csv = The declared editions as a table (CSV)
format-bibtex = BibTeX
format-csl-json = CSL-JSON
format-ris = RIS
format-holder-csv = CSV
format-lido = The records of its impressions (LIDO)
format-oai = All records for harvesters (OAI-PMH)
format-holder-json = JSON
format-holder-xlsx = Workbook (XLSX)
size-kilobytes = { $n } kB
size-megabytes = { $n } MB
format-image-service = The photograph as an image service (IIIF)
format-linked-art = Linked Art
format-linked-art-provenance = Provenance in Linked Art
format-linked-art-words = Text in Linked Art
format-iiif-manifest = IIIF manifest
format-iiif-collection = IIIF collection

# Census: survival, and when sheets were met.
how-many-survive = Estimated total
survival-estimate = An estimated { $estimate } or more impressions existed to be recorded, including any since destroyed (95% interval: { $interval }). This does not show that any is missing.
survival-from-to = { $low } to { $high }
survival-size-recorded = No estimate is made because a size is declared or recorded for at least one printing; compare the known impressions with it.
survival-never-met = { $n ->
    [one] No estimate is made: one known impression has no recorded occasion.
   *[other] No estimate is made: { in-words } known impressions have no recorded occasion.
}
survival-too-few = No estimate is made: at least five impressions with a recorded occasion are needed.
survival-all-once = No estimate is made: no impression is recorded on a second occasion.
survival-few-once = No estimate is made: at least two impressions recorded on one occasion only are needed. This does not show that there are no others.
survival-ground = { $n ->
    [one] Based on one impression recorded on at least one occasion
   *[other] Based on { $n } impressions recorded on at least one occasion
}, of which { $once } on one and { $twice } on two. An occasion is a year with a sighting, an exhibition, a change of hands or a loan.
survival-says-little = Nearly every impression is recorded on one occasion only, so the estimate says little more than that there may be others.
open-pairs-count-twice = Records that may describe one impression are counted separately here.
survival-caution-1 = The method (Chao1, bias-corrected; Chao 1984 and 1987) gives a lower bound. It is near the truth only if impressions that were rarely recorded are like those never recorded.
survival-caution-2 = It treats occasions as independent; but sale catalogues quote one another, and museum records are copied.
survival-caution-3 = It treats the number as fixed, while impressions are lost and found. Private owners may hide whole groups of them, and a famous state is recorded more often than others.
survival-caution-4 = Two records of one impression raise the estimate; a wrong merger lowers it.
survival-caution-5 = We know of no published use of the method for the impressions of a single print.
seen-over-time = When they were recorded
seen-key = Filled: impressions recorded for the first time. Hollow: later occasions of impressions recorded before. For any one impression a year counts once.
seen-caption = Occasions by decade
seen-first = First recorded
seen-again = Recorded again
decade-column = Years
decade = { $from }–{ $to }
occasions-undated = { $n ->
    [one] One report gives no year.
   *[other] { in-words-first } reports give no year.
}
as-a-table = As a table

# Glossary.
principles-of-catalogue = Principles of this catalogue
principle-states = What makes a state
principle-counts = What is counted
principle-measures = How measurements are taken
terms-of-techniques = Techniques
terms-of-kinds = Types of impression
terms-of-papers = Papers
terms-of-transfers = Modes of transfer
terms-of-roles = Roles
terms-of-relations = Relations between designs
terms-of-documents = Kinds of documents
papers = Papers
matrix-fate-extant = extant
matrix-fate-cancelled = cancelled
matrix-fate-destroyed = destroyed
matrix-fate-unknown = not known

# The identification key.
identification-key = Identification key
key-of = Identification key to { $design }
key-candidates = { $n ->
    [one] One state and printing is recorded
   *[other] { in-words-first } possibilities of state and printing are recorded
}
key-asks = find the state and printing of a sheet, point by point.
key-in-numbers = The key
key-how = Begin at 1. Look at the sheet, choose the line that fits, and go to its number, until you reach a result.
key-unseen = Whatever is trimmed, mounted or framed over cannot be seen, and does not count as absent: follow every line there, and keep every result. Where no line fits, nothing recorded here agrees: go back, or report the sheet.
key-confirm = Before relying on a result, check the points it names, and compare the sheet with everything that its state and printing show.
key-is-no-authentication = The key says what a sheet is consistent with, as far as this catalogue knows; it does not authenticate.
key-handling = Never take a print out of its frame, lift its mount or wet a watermark to answer a question.
key-from = from
key-go-to = go to
key-tells-nothing = Nothing recorded here distinguishes them. A sheet of this design is
key-not-told-apart = No recorded point distinguishes these.
key-stops = Further points distinguish some of these, but the key would grow too long for paper.
key-confirmed-by = confirm it by { $points }
key-state-confirmed-by = confirm the state by { $points }
key-printing-not-decided = no deciding point distinguishes this printing from { $printings }: compare { $points }
key-measured-otherwise = Measure again: paper shrinks, and a difference of up to { $twice } rules out none of these. Beyond that, nothing recorded here agrees: it may be a recut, a reproduction, or a state or printing not yet described
key-agrees-with-nothing = Nothing recorded here agrees: check each answer again; it may be a recut, a reproduction, or a state or printing not yet described
key-points = Points to examine
key-measure = Measured; two measurements of one thing may differ by { $tolerance }.
details-from = details from { $picture } and from the impressions numbered on them, whose pages give the rights
detail-of-point = Where to look: { $ask }
key-examine = Examine a sheet
key-how-form = Answer in any order, and only what you can see. If you cannot decide between answers, tick both. Leave out what is trimmed, framed or covered by a mount: it does not count as absent. { key-handling }
key-nearest = Nothing recorded fits. Excluded by the fewest points:
key-next = Look next:
key-next-worth = expected to give { $bits } bits of information
key-next-none = Nothing else recorded here is expected to settle more.
key-look-here = look here next
key-measured = measured
key-how-sure = how sure
key-not-ticked = anything but these
key-not-these = not { $values }
key-weight = weight { $weight }
key-with-states = with { $states }
key-left-all = Nothing is excluded.
key-left-some = { $left } of { $all } possibilities remain.
key-left-one = One of { $all } possibilities remains.
key-left-none = No recorded state and printing fits all your answers. Check them, or mark an uncertain one as probable. If the answers stand, it may be a state not yet described.
key-mixed = The points that exclude them lie on different matrices: the matrices may be in different states.
key-not-understood = Part of this page’s address was not understood and is ignored: { $what }
key-begin-again = Start again
key-kept = The address of this page keeps the answers and may be sent to a colleague.
consistent-with = consistent with { $candidates }
another-number = another number
number-between = { $low } to { $high } { $unit }
number-exactly = { $number } { $unit }
number-below = less than { $number } { $unit }
number-above = more than { $number } { $unit }

# The examination sheet.
examination-sheet = Examination sheet
examination-sheet-of = Examination sheet for { $design }
examination-sheet-why = the same points on paper, to be ticked in front of the print.
examination-sheet-print = To be printed, and filled in with a pencil in front of the print. Then:
sheet-points = Points to examine, the most telling first
sheet-instrument = Measured with
sheet-image-size = Image, height × width
sheet-platemark-size = Platemark, height × width
sheet-sides = Both sides of the sheet
sheet-recto = Recto: inscriptions and marks
sheet-verso = Verso: inscriptions and marks
sheet-side-how = Text, medium, place on the sheet; stamps with their size and colour.
sheet-watermark = Watermark and paper
sheet-watermark-how = A sketch with its size and the direction of the chain lines, where light passes through.
sheet-condition-how = Margins, tears, losses, stains, repairs, backing, mount.
sheet-not-seen = What could not be seen
sheet-not-seen-how = Where and why: trimmed, mounted, framed, laid down.
sheet-examined-by = Examined by
sheet-seen-how = Examined
sheet-unframed = unframed
sheet-framed = framed or mounted
sheet-both-sides = both sides
sheet-from-photograph = from a photograph
sheet-size-of = Sheet, height × width
sheet-how = Tick what you see; tick two if undecided. Leave blank what you did not examine.
cannot-be-seen = cannot be seen
only-probable = only probable
only-possible = only possible

# What tells states apart, and what follows from what was seen.
told-by = distinguished from { $state } by { $points }
told-by-nothing = not distinguishable from { $state } at any recorded point
smallest-set-of-all = These points together distinguish every state and printing: { $points }.
smallest-set = These points together distinguish every state and printing that can be distinguished: { $points }.
gathered-set = These points together distinguish every state and printing that can be distinguished, though fewer may do: { $points }.
set-weighs = { $n ->
    [one] Of these, { $points } excludes nothing and only makes one likelier than another.
   *[other] Of these, { $points } exclude nothing and only make one likelier than another.
}
not-separated = No recorded point distinguishes { $pairs }.
only-made-likelier = No deciding point distinguishes { $pairs }: what is seen makes one likelier than the other and excludes neither.
pair-not-separated = { $one } from { $other }
not-separated-more = { $n ->
    [one] One further pair is not distinguished.
   *[other] { in-words-first } further pairs are not distinguished.
}
descent = Descent
descent-said = { $state } from { $before }
order-of-printing = Order of printing
order-by-wear = by wear
order-by-states = by the succession of states
order-by-dates = by dates
order-state = state { $state }
order-stage = { $point }: { $stage }
order-printed = printing of { $date }
order-date-of-printing = { $date } ({ $printing })
order-date-of-sheet = { $date } (the sheet itself)
order-reason-wear = wear of the { $matrix } ({ $point }: { $before }, then { $after })
order-reason-states = state { $before } comes before state { $after }
order-reason-dates = dates: { $before } before { $after }
order-after = after { $before }: { $reasons }
order-more = { $n ->
    [one] and one more
   *[other] and { in-words } more
}
order-contradicts = not in order
order-in-a-cycle = { $sheets } cannot be put in order, because what is recorded of them contradicts itself
order-cycle-step = { $before } before { $after }: { $reasons }
order-unlike-wear = { $one } and { $other } both have the number { $number } ({ $printing }), but { $other } shows more wear: { $wear }; if this was seen rightly they are two sheets, and one number may be misread or was given twice
order-unlike-wear-two = { $one } and { $other } both have the number { $number } ({ $printing }), and { $other } shows more wear: { $wear }; they are recorded as two sheets, so one number may be misread or was given twice
order-without = left out, because what was seen contradicts the identification: { $sheets }
wear-of-no-matrix = blocks
order-how = One impression was printed before another where a matrix shows less wear on it (seen for certain on both, with no recorded difference of that matrix between their states), where its state comes first, or where its printing or its own date ended before the other’s began. Approximate, uncertain and open dates give no order. Impressions that no step connects may have been printed in any order.
seen-excludes-all = what was seen excludes every state and printing recorded here
seen-nothing-telling = Nothing was seen at a point that distinguishes states or printings.
perhaps-mixed = the points that exclude the nearest lie on different matrices: the matrices may be in different states
would-settle = look next: { $points }
nothing-would-settle = No recorded point that is still to be examined distinguishes those that remain.
would-settle-unmounted = if a conservator unmounts the sheet, look: { $points }

# The evidence for states and printings.
evidence = What the observations say
evidence-tells-nothing = What was seen distinguishes neither states nor printings.
evidence-states-alike = What was seen does not distinguish the states.
evidence-printings-alike = What was seen does not distinguish the printings.
evidence-departs = the sheet departs from what is recorded for its identification only where sheets vary or marks are added, which does not contradict the identification: { $points }
evidence-unrecorded = only { $candidate } fits what is recorded; what it shows is not recorded at: { $points }
evidence-matrix = matrix
evidence-wear = wear
evidence-blocks = blocks
evidence-paper = paper
evidence-inking = inking
evidence-mark = mark
evidence-of-paper-date = Date of the paper
evidence-recorded = recorded:
evidence-no-weight = not weighed
evidence-seen-and-recorded = { $ask } { $seen }; recorded: { $recorded }
bearing-excludes = excludes
bearing-for = for
bearing-against = against
fit-best = fits best
fit-level = level with the best
fit-behind = behind
fit-far-behind = far behind
fit-very-far-behind = very far behind
fit-excluded = excluded
fit-no-printing = not in a recorded printing that fits
fit-nothing-to-compare = nothing recorded to compare
fit-nothing-told = not distinguished
evidence-folded = { $n ->
    [one] one more observation
   *[other] { in-words } more observations
}
no-state-of-this = no state of this design
no-recorded-printing = no recorded printing
printing-with-states = { $printing }, with { $states }
evidence-change = What would change this
evidence-first-of-alike = , the first of { $n } that weigh the same,
evidence-is-recorded-with = is recorded with:
evidence-would-exclude = { $ask } { $recorded }; anything else excludes it
evidence-would-weigh = { $ask } { $recorded }; anything else speaks against it
evidence-look-again = not seen for certain: look again
evidence-if-unmounted = could be seen if a conservator unmounted the sheet
evidence-more-points = { $n ->
    [one] and one more point
   *[other] and { in-words } more points
}
evidence-always = It may be none of these: a recut, a reproduction, or a state or printing not yet described.
evidence-copy-untold = nothing is recorded that distinguishes it
evidence-grades = Only the matrix can exclude; wear, blocks, paper, inking and marks vary or can be added, and are weighed. Level with the best: what was seen is at most 3 times as likely for the best; behind: at most 20 times; far behind: at most 150 times; very far behind: more. The chances of error behind these figures are working assumptions.
examine-by-key = Examine a sheet by the key
in-our-terms = here { $ours }
number-not-in-concordance = a number that is not in the concordance
number-is-an-error = which the concordance calls an error
mixed-and-key = The key compares whole states; this sheet is taken to be from matrices in different states.

# Points, their strips and their tones.
title-point = { $number }, { $point }
point-kind-presence = Present or absent
point-kind-choice = One of several answers
point-kind-count = A number
point-kind-measure = A measure in { $unit }, to within { $tolerance } { $unit }
point-kind-stage = A stage of wear
point-rests-on = rests on: { $ground }
point-answers = Answers
point-bearing = What an answer decides
point-decides = A certain answer here excludes every state and printing of which something else is recorded. Reason: { $why }
point-strays = About { $n } of { $of } sheets depart from what is recorded here, so an answer is weighed and excludes nothing.
point-shown = What is shown there
separates = Distinguishes
separates-from = { $one } from { $others }
strips = Details
strips-how = Each row shows one point on every aligned photograph, in order of state and printing.
strips-more = These points distinguish most; the page of each other point shows its own details.
detail-in-picture = in the picture
detail-in-picture-about = “In the picture” opens the photograph at this place. The link holds the place as a content state (IIIF), so other viewers can open it too.
strip-of = Impression by impression: { $ask }
strip-of-state = Details, { $state }
alt-detail = Detail of { $key }: { $ask }
not-aligned = { $sheet } is not shown: its photograph could not be aligned ({ $why }).
part-not-shown = { $sheet } is not shown: its photograph does not reach this detail.
refusal-little-to-compare = there is too little on it to compare
refusal-nothing-in-common = no matching detail was found
refusal-no-plausible-fit = the only fit would need an impossible distortion
refusal-few-agree = too few places match
refusal-one-part-only = the matching places lie in one part only
refusal-ties-disagree = the places matched by hand disagree
refusal-not-tried = it is not one of those aligned with the reference picture
refusal-other-view = it shows another side, a detail, or another light
refusal-other-design = the impressions are of different designs
taken-to-be = Identified as
shown-by-these = Its state and printing show
tones = Tones
tone-caution = Tones read from photographs are not colorimetry: light, camera, paper, fading and age all change them. They are shown for looking, never as evidence; nothing in this catalogue rests on them.
tone-table = Mean of L*, a* and b* (CIELAB, D65) with its standard deviation; bare paper of the same photograph is 100, 0, 0
tone-difference = CIEDE2000 from { $sheet }
tone-base = the others are measured against it
paper-bare = Bare paper
paper-given = where the record says
paper-found = found beside the image

# Documents.
document = document
documents-brief = Letters, ledgers, contracts, labels and other papers that are evidence about the prints, each with what it tells.
documents-by-date = By date
documents-by-kind = By kind
documents-other = Other documents
document-to = to { $to }
document-by-to = { $by } to { $to }
document-kept = Kept at
document-language = Language
document-tells = What it tells
document-words = Text
document-rights = Rights in the text
document-transcription = Transcription
document-translation = Translation, { $language }
document-state-of = state { $part } of { $design }
document-part-of = { $part } of { $design }
documents-kept = Documents kept
documents-by-them = Wrote or issued
documents-to-them = Received
documents-on-them = What documents tell
evidence-document = Document
evidence-document-for = Document on this sheet

# Names of languages, by their tags (BCP 47).
language-ar = Arabic
language-bg = Bulgarian
language-cs = Czech
language-da = Danish
language-de = German
language-el = Greek
language-en = English
language-es = Spanish
language-et = Estonian
language-fa = Persian
language-fi = Finnish
language-fr = French
language-he = Hebrew
language-hr = Croatian
language-hu = Hungarian
language-it = Italian
language-ja = Japanese
language-ko = Korean
language-la = Latin
language-lt = Lithuanian
language-lv = Latvian
language-nl = Dutch
language-no = Norwegian
language-pl = Polish
language-pt = Portuguese
language-ro = Romanian
language-ru = Russian
language-sk = Slovak
language-sl = Slovenian
language-sr = Serbian
language-sv = Swedish
language-tr = Turkish
language-uk = Ukrainian
language-yi = Yiddish
language-zh = Chinese
