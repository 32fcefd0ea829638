# The words of the pages, English. One word a line; a catalogue's own theme may change any of them.

# The frame.
catalogue = Catalogue
contents = Contents
skip-to-text = To the text
to-cite = To cite
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

# Joining.
and = and
or = or
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
count-sheets = { $n ->
    [one] { $n } sheet
   *[other] { $n } sheets
}

# Names.
untitled = Untitled
private-collection = Private collection
name-withheld = name withheld
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

# Pictures.
photograph-by = Photograph: { $credit }.
alt-impression = { $side } of impression { $key } of { $title }, { $where }
side-recto = Recto
side-verso = Verso
side-edge = Edge
side-mount = Mount
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
date-or = { $before } or { $last }
date-and = { $before } and { $last }
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
