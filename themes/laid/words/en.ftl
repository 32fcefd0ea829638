# The words of the pages, English. One word a line; a catalogue's own theme may change any of them.

# The frame.
catalogue = Catalogue
contents = Contents
on-this-page = On this page
skip-to-text = To the text
to-cite = To cite
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
text-and-data-under = Text and data under { $licence }; photographs as said under each.
corrections-to = Corrections, and sheets not yet known to us:
caution-line = This catalogue is scholarly opinion at its date: not an authentication, an appraisal or an opinion on title.

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
concordance = Concordance
glossary = Glossary
changes = Changes
cite = How to cite
contribute = How to contribute
cautions = Cautions
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
ways-in = Ways in
way-designs = Browse the prints
way-designs-about = Every print by its picture, in the order of the catalogue.
way-identify = Identify a sheet
way-identify-about = Choose the print by its picture, then answer what can be seen: the key names the states and printings that fit.
way-census = The census
all-prints = { $n ->
    [one] The print
   *[other] All { $n } prints
}
as-list = { $title }, as a list
views = Views
view-wall = Pictures
view-list = List
not-pictured = no photograph
holder-wall = Photographs
identify-brief = Which print is it? Its picture leads to its identification key, which asks what can be seen on the sheet and names the states and printings that fit.
identify-which = Prints with an identification key
identify-without = Prints without a key
identify-number = By a number
identify-by-number = A number of this catalogue or of an earlier one, or an accession number, leads to the record: { $resolve }. Titles, names and the words of inscriptions are found by { $search }.
about-texts = The catalogue
about-artist = The artist and the prints
about-use = Using the catalogue
about-keyboard = On the keyboard
keyboard-neighbours = ← and → on the page of a print or an impression: the one before, the one after.
keyboard-search = / on any page: search.

# Search. `search-number-words`: what people write before a number, which belongs to no number.
search = Search
search-field = Search the catalogue
search-hint = Titles in any script, numbers, accession numbers, names, marks, and the words of every text. The key / leads to the search from any page.
search-failed = The search index could not be loaded. The indexes need no script.
search-no-script = Searching needs a script, which this browser does not run. These indexes lead to every record:
search-results = Results
search-indexes = Indexes
search-narrow = Narrow the results
search-found = Found: { $n }
search-first = The first { $n }; with more letters there will be fewer
search-some = Nothing has all of these words. Found by some of them: { $n }
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
search-by-kind = Kind
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
resolve-results = What they mean
resolve-found = References with a meaning here: { $n } of { $of }
resolve-asked = Reference
resolve-certainty = Certainty
resolve-reading = Meaning and address
resolve-why = Why
resolve-nothing = means nothing in this catalogue
resolve-about = For other sites
resolve-about-text = The names, numbers and keys by which references are read are one file, { $file }, which other sites and databases may use: it has the key and the address of every design, state, printing and impression, and the numbers of earlier catalogues; the accession numbers stand beside it in parts.
resolve-state-words = state st of
resolve-accession-words = inv inventory acc accession
resolve-edition-words = edition ed
resolve-why-number = number in this catalogue
resolve-why-key = key in this catalogue
resolve-why-former-key = former key
resolve-why-edition = number or numeral of edition { $edition }
resolve-why-other-total = numeral in this catalogue, which counts another number of states
resolve-why-not-there = “{ $text }” is not recorded there
resolve-why-accession = accession number
resolve-why-bare-accession = accession number without its punctuation
resolve-why-former-accession = former accession number
resolve-why-earlier = { $work }, { $number }
resolve-why-earlier-not-there = { $work }, { $number }; the concordance has no “{ $text }” there
resolve-why-row = the number itself, in the list of that catalogue
resolve-why-title = title
resolve-why-former-title = former title
resolve-why-name = name
resolve-why-former-name = former name
resolve-why-isil = ISIL
resolve-why-beginning = a title or name begins so
resolve-see = see { $records }
resolve-why-joined = { $record } is a record of this sheet

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

# Counting.
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
    [one] { $n } state
   *[other] { $n } states
}
count-printings = { $n ->
    [one] { $n } printing
   *[other] { $n } printings
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
what-it-is = A catalogue raisonné of the prints, with a census of every impression known
edited-by = edited by { $editors }
the-catalogue = The catalogue
introduction-in-full = The introduction in full
how-sheets-are-named = A sheet is named by the number of its design and its own, as in { $example }; these names do not change.
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
   *[other] { $n } prints, by number
}
designs-apart = Rejected and withdrawn
no-impression-known = no impression known
undated = Undated

# A design's page.
entry = Entry
cited-as = Cited as
date = Date
makers = Makers
technique = Technique
size = Size
size-of-states = { $figure }, the size of { $states }
size-measured = { $n ->
    [one] { $range } ({ $of }, measured on one sheet)
   *[other] { $range } ({ $of }, measured on { $n } sheets)
}
series-one = Series
formerly-titled = Formerly titled
place-in-series = { $series }, no. { $position }
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
of-platemark = platemark
from-blocks = { $n ->
    [one] { $technique } from one block
   *[other] { $technique } from { $n } blocks
}
from-plates = { $n ->
    [one] { $technique } from one plate
   *[other] { $technique } from { $n } plates
}
from-stones = { $n ->
    [one] { $technique } from one stone
   *[other] { $technique } from { $n } stones
}
from-screens = { $n ->
    [one] { $technique } from one screen
   *[other] { $technique } from { $n } screens
}
from-some-matrices = { $n ->
    [one] { $technique } from one matrix
   *[other] { $technique } from { $n } matrices
}
on-paper = on { $papers }
in-inks = in { $inks }
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
caption-states = What to look at, state by state
states-compared = States compared
point = Point
points = Points
other-points = Also to look at
first-described = first described { $date }
state-follows = follows { $states }
state-follows-none = follows no other state
unchanged = { $value }, unchanged
changed = changed:
not-recorded = not recorded
not-told = not recorded or not told
printing = Printing
printings = Printings
variants = Variants
caption-printings = What to look at, printing by printing
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
   *[other] { $n } impressions printed
}
numbered = numbered
not-numbered = not numbered
from-matrices = from the { $matrices }
of-kind = Kind
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
lacks = lacks the { $matrices }
lot = lot { $lot }
dealer-number = no. { $lot }
last-recorded = last recorded: { $where }
last-recorded-in-trade = last recorded in the trade: { $where }
last-recorded-owner = last recorded with a private owner
last-recorded-agent = last recorded in the trade
last-recorded-keeper = last recorded with a keeper who is not named
show-all = Show all
some-answer = { $shown } of { $all } answer to this.
none-answers = None of { $all } answers to all of this.
all-of-them = all
not-said = not said
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
   *[other] { $n } impressions known
}
sheets-known-between = { $n ->
    [one] At most one impression known
   *[other] At least { $least }, at most { $n } impressions known
}
sheets-known-not-below = { $n ->
    [one] At most one impression known
   *[other] Not fewer than { $least }, at most { $n } impressions known
}
of-which-located = { $figure } located
may-be-one-sheet = { $one } and { $other } may be one sheet.
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
inventory = inventory { $number }
owner = Owner
accession = Inventory
formerly = formerly { $what }
credit-line = Credit line
status = Status
kind = Kind
taken-from = Taken from
number = Number
paper = Paper
inks = Inks
pulled = Pulled
watermark = watermark: { $watermark }
margins = margins: { $margins }
printed-side-recto = printed on the recto
printed-side-verso = printed on the verso
printed-side-edge = printed on the edge
printed-side-mount = printed on the mount
blocks-printed = Blocks printed
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
name-of = in the name of { $person }
applied-by = applied by { $person }
looked-for = Looked for, none found: { $what }.
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
observed = What was observed
seen-there = Seen
observed-certainly = What was observed; certain unless said otherwise
but-shows = but recorded:
count-disagree = { $n ->
    [one] One observation does not agree with the identification
   *[other] { $n } observations do not agree with the identification
}
more-pictures = More pictures
provenance = Provenance
provenance-key = Earliest first. A semicolon says that the sheet passed directly to the next; a full stop that it did not, or that this is not known. Agents stand in round brackets, life dates in square ones.
provenance-as-recorded = As recorded, entry by entry
bought-in = bought in
as-keeper = in keeping
probably = probably
possibly = possibly
probably-this-sheet = probably this sheet
possibly-this-sheet = possibly this sheet
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
years-throughout = An owner is recorded for all of the time in which it may have existed, from { $time }
years-uncertain = An owner is recorded for all of the time in which it may have existed, from { $time }, but for none of it with certainty
years-perhaps = An owner is recorded for all of the time in which it may have existed, from { $time }, but for part of it not with certainty
years-partly = Owners are recorded for part of the time from { $time }
years-silent = No owner is recorded here for the time from { $time }
years-change-recorded = A change of hands is recorded for these years
years-change-possible = A change of hands may fall in these years
years-last = last recorded { $date }
years-last-in-trade = last recorded in the trade, { $date }
years-perhaps-last = perhaps { $last }
years-then-none = { $last }; then no owner recorded
years-then-next = { $last }; then { $next }
years-next-owner = no owner recorded until { $date } ({ $who })
years-next-owner-between = no owner recorded; next recorded { $date } ({ $who })
years-next-sale-of-day = no owner recorded until the sale of { $date } ({ $who })
years-next-sale = no owner recorded until a sale, { $date } ({ $who })
years-next-bought-in = no owner recorded until it was offered and not sold, { $date } ({ $who })
years-next-in-trade = no owner recorded until it was in the trade, { $date } ({ $who })
years-perhaps-same = perhaps the same sheet as { $other }: { $entries }
years-perhaps-same-alone = perhaps the same sheet as { $other }
years-manner-unknown = How it changed hands is not recorded
years-see-sheet = how it changed hands is not recorded: see the sheet
years-see-note = see the note on the sheet
years-see-written = see the provenance written by hand on the sheet
years-only-open-days = Only days without a certain owner are listed.
years-handled = In the trade in these years: { $entries }
years-entries-only = Only the entries are counted here, not the text written by hand
years-may-be-later = It may have been printed only later
years-probably-later = It was probably printed later, { $by }
years-nobody = no owner recorded
years-perhaps-owner = perhaps { $owner }
years-acquired = acquired { $date }
years-acquired-some-day = acquired { $date }, the day is not recorded
years-acquired-not-recorded = since when is not recorded
years-held = held until { $date }
years-held-some-day = held until { $date }, the day is not recorded
years-held-not-recorded = until when is not recorded
years-caution = Gaps are common and imply no wrongdoing; a record without gaps is no clearance. Anyone who decides about a particular sheet should commission independent research and qualified legal advice in the country where it is.
provenance-years-brief = What is recorded here of the owners of each impression from 30 January 1933 to 8 May 1945. Impressions printed later or destroyed before are outside this study; impressions of unknown printing date are included. The absence of a recorded owner does not clear an impression.
years-head-silent = No owner recorded for these years
years-head-partly = Owner recorded, or perhaps recorded, for part of these years
years-head-perhaps = Owner recorded throughout, for some days not with certainty
years-head-uncertain = Owner recorded throughout, for no day with certainty
years-head-throughout = Owner recorded throughout
years-mark-change-recorded = change of hands recorded
years-mark-change-possible = change of hands possible
years-mark-may-be-later = may have been printed later
years-mark-probably-later = probably printed later, { $by }
years-not-asked = { $n ->
    [one] One record is outside this study: its sheet was printed later or destroyed before, or it is withdrawn, a recut or a reproduction.
   *[other] { $n } records are outside this study: their sheets were printed later or destroyed before, or they are withdrawn, recuts or reproductions.
}

sightings = Seen
notes = Notes
other-records = Other records
stolen-caution = Recorded here as stolen. The catalogue gives no opinion on title: whoever meets this sheet should turn to the last recorded owner or to the authorities, as local law requires.
against-what-was-seen = contradicted by what was seen
is-the-same-sheet = This record and { $other } are one sheet.
one-sheet-of-records = { $records } are records of one sheet. A number in braces names the record that a line comes from.
choices = One of these
taken-over = Continued by { $successor }, which lists the sheets that were here.
recorded-with = recorded with { $holder }
has-moved = This page is now here: { $page }.
leads-to-its-sheet = { $record } and { $sheet } are one sheet, which is described at { $sheet }.
record-of-this-sheet = From record { $record }
same-sheet-as = The same sheet as { $other }
maybe-same-sheet-as = Perhaps the same sheet as { $other }
other-sheet-than = Certainly another sheet than { $other }
shares-sheet-with = On the same paper as { $other }
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
together = Together
verdict-differ = differ
verdict-agree = agree
verdict-cannot-be-told = cannot be told
count-differ = { $n ->
    [0] They differ at none of the { $all } points observed.
    [one] They differ at one point of { $all }.
   *[other] They differ at { $n } points of { $all }.
}
nothing-observed = Nothing was recorded at any point of these sheets.
not-looked-at = Recorded on none of them:
ground = Ground
ground-page = as the page
ground-light = light
ground-dark = dark

# Impressions laid on each other.
comparison-chosen = Compare impressions
comparison-of = { $design }: impressions compared
compare-any = Compare impressions
compare-with-another = Compare with another impression
compare-which = Choose impressions
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
compare-edge-between = { $first } left of the edge, { $second } right of it
compare-opacity-of = { $second } over { $first }
compare-now = { $number }
compare-stop = stop
compare-go = resume
compare-step = switch
compare-pace = Pace
compare-slow = slow
compare-quick = quick
compare-is-still = Reduced motion is on: switch by hand.
compare-working = Comparing …
compare-difference-of = Dark: darker on { $second }. Light: darker on { $first }. Middle grey: no difference in line.
compare-difference-how = Lines and edges alone are compared: a surface that only one sheet has shows at its edge. Nothing is drawn where only one photograph reaches. How rich the ink is and how the photographs were lit is levelled out; fading, stains and a poor fit are not. A difference seen here is a reason to look at the sheets, and no evidence by itself.
compare-difference-share = Lines and edges differ on { $percent } of the surface.
compare-difference-share-of-image = Lines and edges differ on { $percent } of the printed image.
compare-unreadable = The pixels cannot be read: browsers forbid it on pages opened from a disk.
compare-no-picture = There is no photograph of { $number }.
compare-not-laid = The photograph of { $number } cannot be laid on the others: { $why }.
compare-side-only = They are shown side by side only, and not at one scale.
recorded-on-no-sheet = Recorded on no sheet:

# Looking closer at a picture.
view-closer-look = Look closer
view-closer = closer
view-further = further away
view-whole = the whole
view-left = move left
view-right = move right
view-up = move up
view-down = move down
view-close = close
view-copy-link = Copy a link to this place
view-copy-state = Copy the place for another viewer (IIIF)
view-bar = The bar is as long as
view-is-whole = The whole is in sight.
view-is-closer = { $times } times the first view.
view-keys = Keys: + and − closer and further away, 0 the whole, the arrows to move. The wheel enlarges once the picture has been clicked.

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
basis-report = by report
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
stands-taken-over = taken over

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
date-from-unknown = from { $date }, until when is not known
date-until-unknown = until { $date }, from when is not known
date-or-earlier = { $date } or earlier
date-or-later = { $date } or later
date-day = { $day } { $month } { $year }
date-day-month = { $day } { $month }
date-day-alone = { $day }
date-month = { $month } { $year }
date-some-day = a day in { $month } { $year }
date-some-month = a month of { $year }
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
sheets-between = at least { $least } and at most { $n } impressions
sheets-not-below = not fewer than { $least } and at most { $n } impressions
between-numbers = at least { $least }, at most { $most }
not-below-numbers = not fewer than { $least }, at most { $most }
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
accession-number = Accession
printing-and-kind = Printing, kind
remarks = Remarks

# Holders.
holders-brief = By city, then institution. { $holders } in { $cities }.
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
took-over = Took over
continued-by = Continued by
isil = ISIL
web = Web
owned-by = owned by { $owner }
owned-elsewhere = Owned, kept elsewhere
kept-at = Kept at
impressions-here = Impressions here
formerly-owned = Formerly owned
stolen-from-here = Stolen from here
formerly-kept = Formerly kept for others
formerly-here = Formerly here
handled-here = Handled here
matrices-here = Blocks and plates here
exhibitions-here = Exhibitions here
now-at = now { $where }
named-printer = Printed
named-publisher = Published
named-mark = Their name is on
named-applied-mark = Marks put on
named-mark-user = Used the mark
named-sighting = Seen by them
named-said = Opinions and statements on
to-do = Still to be done
to-do-not-identified = Not identified
to-do-not-measured = Not measured
to-do-no-photograph = No photograph here
to-do-no-verso = No photograph of the verso here
to-do-years = No owner recorded for some or all of 1933–1945

# People.
people-brief = { $n ->
    [one] One person, under every form of the name.
   *[other] { $n } people, under every form of their names.
}
active = Active
in-this-catalogue = In this catalogue
is-artist = the artist of these prints
is-editor = editor
authority = Authority records
made-by-them = Designs
in-no-series = Single prints
by-where-now = by where they are now
unless-said = { $what }, unless said otherwise
printed-by-them = Printed
published-by-them = Published
owned-by-them = Owned
kept-by-them = Kept
handled-by-them = Handled
writings = Writings

# Chronology.
year-by-year = Year by year
event-born = { $person } born
event-died = { $person } dies
event-active = { $person } at work
event-only-state = Only state of { $design }
event-states = { $n ->
    [one] State { $states } of { $design }
   *[other] States { $states } of { $design }
}
event-printing = { $printing }: { $design }
event-matrix = { $matrix } { $fate }: { $design }
event-exhibition = Exhibition: { $exhibition }

# Concordance and literature.
concordance-brief = { $n ->
    [one] Our numbers beside those of one earlier catalogue, both ways.
   *[other] Our numbers beside those of { $n } earlier catalogues, both ways.
}
from-our-numbers = From our numbers
from-their-numbers = From { $work }
our-number = Here
their-number = There
its-numbers = Its numbers
its-number = Number
relation = Relation
not-described-there = not described there
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
number-there = No. there
now-kept = Now

# Marks.
owners-brief = Recorded as owners before the present holder; agents and keepers apart. Not an opinion on title.
owners-agents = Agents
owners-keepers = Keepers
owners-numbers = Former inventory numbers
owners-numbers-elsewhere = With a holder who is not recorded
marks-brief = What was put on single sheets by hand or stamp, and what the papermaker left in them.
mark-shared = A mark that several used
marks-shared = Used by several
marks-shared-note = such a mark alone tells neither owner nor time
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
mark-user = Who
mark-used = When
mark-put-on = Stamped
mark-years-unknown = years not known
mark-caution = The mark was used by several; alone it establishes neither a user nor a date.
mark-conditions = Conditions
mark-condition = Condition
mark-condition-when = When
mark-conditions-note = The mark changed with time. Where its condition on a sheet is recorded, that limits when it was put there, not when the sheet was printed.
mark-in-condition = condition: { $condition }
mark-seen-on = Seen on
mark-printings = Printings and dates
mark-printing = Printing
mark-printed = Printed
mark-printing-unknown = printing not settled
mark-applied = Stamped
mark-sheets = Impressions on which it is recorded

# Titles.
titles-brief = Every title in every language, without regard to an article at its head.
title-kind-translated = translated
title-kind-former = former title

# Census.
census-brief = Known: { $sheets }, { $as-of }.
census-brief-undated = Known: { $sheets }.
census-of = Census of { $design }
how-counted = How we count
by-design = By design
by-status = By status
by-state = By state
by-printing = By printing
by-kind = By kind
by-place = By place
whole = At a glance
whole-key = Each square is one impression. A row is one design; a gap divides its printings. Records that may be of one impression are counted separately.
whole-key-of-design = Each square is one impression. Records that may be of one impression are counted separately.
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
column-kind = Kind
column-holder = Holder
column-place = Country, town and holder
number-short = No.
title = Title
known = Known
sheets = Impressions
records = Records
caption-crossing = Impressions by state and printing
crossing-open = An impression that may be of one or another is counted with each.
crossing-not-firm = Below a figure stands how many of its impressions are identified as probable or possible only (not certain), and of how many what was seen contradicts the identification (contradicted). The others are firm.
not-firm-key = Not certain: identified as probable or possible only. Contradicted: what was seen contradicts the identification. The figures count these impressions too.
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
    [one] { $n } counted, not shown
   *[other] { $n } counted, not shown
}
not-in-these-rows = { $n ->
    [one] { $n } counted, not shown; it is in no row of this table.
   *[other] { $n } counted, not shown; they are in no row of this table.
}
designs-of-no-impression = { $n ->
    [one] One more design is not in this table: no impression of it is known.
   *[other] { $n } more designs are not in this table: no impression of them is known.
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
   *[other] { $n } of them numbered above it
}
source-not-given = source not given
design = Design
declared = Declared
numbers-printed = Printed
numbers-met = Numbers recorded
numbers-above = Above
numbers-repeated = Recorded twice
may-be-one-sheet-head = May be one sheet
are-one-sheet = One sheet, several records
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
    [one] One of the { $declared } numbers is recorded.
   *[other] { $n } of the { $declared } numbers are recorded.
}
edition-met-of-perhaps = { $n ->
    [0] No number is recorded.
    [one] One of perhaps { $declared } numbers is recorded.
   *[other] { $n } of perhaps { $declared } numbers are recorded.
}
edition-met = { $n ->
    [one] One number is recorded; no size is declared.
   *[other] { $n } numbers are recorded; no size is declared.
}
numbers-key = A number that is a link leads to its impression.
edition-unnumbered = Not numbered.
declared-key = Known: all impressions of the printing, proofs included. Printed: the number printed. Numbers: those read on impressions.
declared-perhaps-key = ?: the size is only reported, or given as probable or possible.
declared-by = Source:
of-other-size = Numbered as of another size, which nobody declares:
others-say = Other sources give
others-say-printed = Other sources give as the number printed
met-twice = Recorded on more than one impression:
above-declared = Numbered above the declared edition:

# Census: what stands beside the counts.
bars-key = A bar is filled to the lower end of the count and hollow from there to its upper end.
class-edition = edition impressions
class-proof = proofs
class-counterproof = counterproofs
class-maculature = maculatures
class-cancelled = from a cancelled matrix
class-fragment = fragments
class-other = of other kinds
set-apart = Not accepted
set-apart-note = Rejected or withdrawn designs, listed apart. Their impressions count in no total of this page.
set-apart-own = This design is not accepted; its impressions count in no total of the catalogue.
census-by-series = By series
series-together = Series
on-one-paper = On one sheet of paper
on-one-paper-note = Each is counted by itself.
of-one-set = Of one set
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
format-lido = The records of its sheets (LIDO)
format-oai = All records for harvesters (OAI-PMH)
format-holder-json = JSON
size-kilobytes = { $n } kB
size-megabytes = { $n } MB
format-image-service = The photograph as an image service (IIIF)
format-linked-art = Linked Art
format-linked-art-provenance = Provenance in Linked Art
format-iiif-manifest = IIIF manifest
format-iiif-collection = IIIF collection

# Census: survival, and when sheets were met.
how-many-survive = How many there may be
survival-estimate = Impressions that could have been met, destroyed ones among them: a lower bound of { $estimate } (95 %: { $interval }). It does not show that any is missing.
survival-from-to = { $low } to { $high }
survival-size-recorded = No estimate is made because a size is declared or recorded for at least one printing; compare the known impressions with it.
survival-never-met = { $n ->
    [one] No estimate is made: of one known impression no occasion is recorded.
   *[other] No estimate is made: of { $n } known impressions no occasion is recorded.
}
survival-too-few = No estimate is made: it takes five impressions with a recorded occasion.
survival-all-once = No estimate is made: no impression is recorded on a second occasion.
survival-few-once = No estimate is made: it takes two impressions that are recorded on one occasion only. That does not show that there are no others.
survival-ground = { $n ->
    [one] One impression is recorded on at least one occasion
   *[other] { $n } impressions are recorded on at least one occasion
}; { $once } of them on one, { $twice } on two. An occasion is a year with a sighting, an exhibition, a change of hands or a loan.
survival-says-little = Nearly every impression is recorded on one occasion only. The estimate then says little more than that there may be others.
open-pairs-count-twice = Here records that may be of one sheet are counted separately.
survival-caution-1 = The method (Chao1, bias-corrected; Chao 1984 and 1987) gives a lower bound. It is near the truth only if the impressions that were rarely met are like those never met.
survival-caution-2 = It takes occasions for independent; but sale catalogues quote one another, and museum records are copied.
survival-caution-3 = It takes the number for fixed, while impressions are lost and found. Private owners may hide whole groups of them, and a famous state is met more often than others.
survival-caution-4 = Two records of one impression make the estimate larger, a wrong merger makes it smaller.
survival-caution-5 = For the impressions of one print we know of no published use of the method.
seen-over-time = When they were recorded
seen-key = Filled: impressions recorded for the first time. Hollow: later occasions of impressions recorded before. For any one impression a year counts once.
seen-caption = Occasions by decade
seen-first = First met
seen-again = Met again
decade-column = Years
decade = { $from }–{ $to }
occasions-undated = { $n ->
    [one] One report gives no year.
   *[other] { $n } reports give no year.
}
as-a-table = As a table

# Glossary.
principles-of-catalogue = Principles of this catalogue
principle-states = What makes a state
principle-counts = What counts
principle-measures = How things are measured
terms-of-techniques = Techniques
terms-of-kinds = Kinds of impressions
terms-of-papers = Papers
terms-of-transfers = Ways of transfer
terms-of-roles = Roles
terms-of-relations = Relations between designs
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
   *[other] { $n } combinations of state and printing are recorded
}
key-asks = which state and printing a sheet can be.
key-in-numbers = The key
key-how = Begin at 1. Look at the sheet, take the lead that fits, and go on to its number, until it says what the sheet is consistent with.
key-unseen = What is trimmed, mounted or framed over cannot be seen, and does not count as absent: follow every lead there, and keep whatever you come to. Where no lead fits, nothing recorded here agrees: go back, or report the sheet.
key-confirm = Before you rely on an end, look at the points that it names, and compare the sheet with everything that its state and printing show.
key-is-no-authentication = The key says what a sheet is consistent with, as far as this catalogue knows; it does not authenticate.
key-handling = Do not take a print from its frame or lift its mount to answer a question, and wet no watermark.
key-from = from
key-go-to = go to
key-tells-nothing = Nothing recorded here tells one from another. A sheet of this design is
key-not-told-apart = No recorded point tells these apart.
key-stops = More points tell some of these apart, but the key would grow too long for paper.
key-confirmed-by = confirm it by { $points }
key-state-confirmed-by = confirm the state by { $points }
key-printing-not-decided = no deciding point separates this printing from { $printings }: compare { $points }
key-measured-otherwise = Measure again: paper shrinks, and a difference of up to { $twice } speaks against none of these. Beyond it nothing recorded here agrees: it may be a recut, a reproduction, or a state or printing not yet described
key-agrees-with-nothing = Nothing recorded here agrees: look again at each answer; it may be a recut, a reproduction, or a state or printing not yet described
key-points = What to look at
key-measure = Measured; two measurements of one thing may differ by { $tolerance }.
details-from = details from { $picture } and from the impressions numbered on them, whose pages give the rights
detail-of-point = Where to look: { $ask }
key-examine = Examine a sheet
key-how-form = Answer in any order, and only what you can see. If you cannot decide between answers, tick both. Leave out what is trimmed, framed or covered by a mount: it does not count as absent. { key-handling }
key-nearest = Nothing recorded fits; the fewest points exclude
key-next = Look next:
key-next-worth = expected to give { $bits } bits of information
key-next-none = Nothing else recorded here is expected to tell more.
key-look-here = look here next
key-measured = measured
key-how-sure = how sure
key-not-ticked = none of those ticked
key-not-these = not { $values }
key-weight = weight { $weight }
key-with-states = with { $states }
key-left-all = Nothing is excluded.
key-left-some = { $left } of { $all } combinations of state and printing are not excluded.
key-left-one = One of { $all } combinations of state and printing is not excluded.
key-left-none = What was seen excludes every state and printing recorded here. Look at the points again. If they stand, it may be a state not yet described.
key-mixed = The points that exclude them lie on different matrices: the blocks may be in different conditions.
key-not-understood = The address of this page holds what this key does not know: { $what }
key-begin-again = Begin again
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
examination-sheet-print = To be printed and filled in with a pencil in front of the print. Then:
sheet-points = What to look at, in the order that tells most
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
sheet-seen-how = Seen
sheet-unframed = unframed
sheet-framed = framed or mounted
sheet-both-sides = both sides
sheet-from-photograph = from a photograph
sheet-size-of = Sheet, height × width
sheet-how = Tick what is seen; two boxes for one or the other. Tick nothing that was not looked at.
cannot-be-seen = cannot be seen
only-probable = only probable
only-possible = only possible

# What tells states apart, and what follows from what was seen.
told-by = told from { $state } by { $points }
told-by-nothing = no recorded point tells it from { $state }
smallest-set-of-all = These points together distinguish every state and printing: { $points }.
smallest-set = These points together distinguish every state and printing that can be distinguished: { $points }.
gathered-set = These points together distinguish every state and printing that can be distinguished, though fewer may do: { $points }.
set-weighs = { $n ->
    [one] Of these, { $points } excludes nothing and only makes one likelier than another.
   *[other] Of these, { $points } exclude nothing and only make one likelier than another.
}
not-separated = No recorded point separates { $pairs }.
only-made-likelier = No deciding point separates { $pairs }: what is seen makes one likelier than the other and excludes neither.
pair-not-separated = { $one } from { $other }
not-separated-more = { $n ->
    [one] One pair more is not separated.
   *[other] { $n } pairs more are not separated.
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
   *[other] and { $n } more
}
order-contradicts = not in order
order-in-a-cycle = { $sheets } cannot be put in order, because what is recorded of them contradicts itself
order-cycle-step = { $before } before { $after }: { $reasons }
order-unlike-wear = { $one } and { $other } both have the number { $number } ({ $printing }), but { $other } shows more wear: { $wear }; if this was seen rightly they are two sheets, and one number may be misread or was given twice
order-unlike-wear-two = { $one } and { $other } both have the number { $number } ({ $printing }), and { $other } shows more wear: { $wear }; they are recorded as two sheets, so one number may be misread or was given twice
order-without = left out, because what was seen contradicts the identification: { $sheets }
wear-of-no-matrix = blocks
order-how = One sheet was printed before another where a matrix is less worn on it (both seen for certain, and no recorded point of that matrix differs between their states), where its state comes first, or where its printing or its own date ended before the other’s began. Approximate, uncertain and open dates give no order. What no step joins may have been printed in any order.
seen-excludes-all = what was seen excludes every state and printing recorded here
seen-nothing-telling = Nothing was seen at a point that distinguishes states or printings.
perhaps-mixed = the points that exclude the nearest lie on different matrices: the blocks may be in different conditions
would-settle = look next: { $points }
nothing-would-settle = No recorded point that is still to be looked at separates those that are left.
would-settle-unmounted = if a conservator unmounts the sheet, look: { $points }

# The evidence for states and printings.
evidence = What the observations say
evidence-tells-nothing = What was seen tells no state or printing from another.
evidence-states-alike = What was seen does not distinguish the states.
evidence-printings-alike = What was seen does not distinguish the printings.
evidence-departs = the sheet departs from what is recorded for its identification where sheets vary or marks are added, which does not contradict the identification: { $points }
evidence-unrecorded = of what is recorded, only { $candidate } fits; what it shows is not recorded at: { $points }
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
   *[other] { $n } more observations
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
   *[other] and { $n } more points
}
evidence-always = It may be none of these: a recut, a reproduction, or a state or printing not yet described.
evidence-copy-untold = nothing is recorded that distinguishes it
evidence-grades = Only what the matrix shows excludes; wear, blocks, paper, inking and marks vary or can be added, and weigh. Level with the best: what was seen is at most 3 times as likely for the best; behind: at most 20 times; far behind: at most 150 times; very far behind: more. The chances of error behind this are working assumptions.
examine-by-key = Examine a sheet by the key
in-our-terms = here { $ours }
number-not-in-concordance = a number that the concordance does not have
number-is-an-error = which the concordance calls an error
mixed-and-key = The key compares whole states; this sheet is taken to be from blocks in different conditions.

# Points, their strips and their tones.
title-point = { $number }, { $point }
point-kind-presence = Present or absent
point-kind-choice = One of several answers
point-kind-count = A number
point-kind-measure = A measure in { $unit }, to within { $tolerance } { $unit }
point-kind-stage = A stage of wear
point-rests-on = rests on: { $ground }
point-answers = Answers
point-bearing = What follows
point-decides = A certain answer here excludes every state and printing of which something else is recorded. Reason: { $why }
point-strays = About { $n } of { $of } sheets depart from what is recorded here, so an answer weighs and excludes nothing.
point-shown = What is shown there
separates = Tells apart
separates-from = { $one } from { $others }
strips = Details
strips-how = Each row is one point, cut from every photograph that could be aligned with the reference picture, in the order of states and printings.
strips-more = These points distinguish most; the page of each other point shows its own details.
detail-in-picture = in the picture
detail-in-picture-about = “In the picture” opens the photograph at this place. The link has the place as a content state (IIIF), so other viewers can open it too.
strip-of = Sheet by sheet: { $ask }
strip-of-state = Details, { $state }
alt-detail = Detail of { $key }: { $ask }
not-aligned = { $sheet } is not shown, for its photograph could not be aligned: { $why }.
part-not-shown = { $sheet } is not shown, for its photograph ends before this place.
refusal-little-to-compare = there is too little on it to compare
refusal-nothing-in-common = nothing on it was found again on the reference picture
refusal-no-plausible-fit = it fits only as no camera would bend it
refusal-few-agree = too few places agree
refusal-one-part-only = the places that agree lie in one part only
refusal-ties-disagree = the ties set by hand disagree
refusal-not-tried = it is not one that is laid on the reference picture
taken-to-be = Taken to be
shown-by-these = Its state and printing show
tones = Tones
tone-caution = Tones read from photographs are not colorimetry: light, camera, paper, fading and age all change them. They are set out to be looked at, never as evidence; nothing in this catalogue rests on them.
tone-table = Mean of L*, a* and b* (CIELAB, D65) with its standard deviation; bare paper of the same photograph is 100, 0, 0
tone-difference = CIEDE2000 from { $sheet }
tone-base = the others are measured against it
paper-bare = Bare paper
paper-given = where the record says
paper-found = found beside the image
