# Editions, and what each of them changed.

editions = Editions
changes-by-entry = By entry
changes-by-holder = By holder
changes-other-records = Other records
changes-since = Since { $edition }
changes-since-text = These changes belong to no edition yet. A citation of the last edition may differ.
changes-in = Changes in { $edition }
changes-all-editions = All changes
changes-feed = A feed announces each edition and its changes to readers and programs:
edition-first = { $date }. The first edition: { $added }.
edition-dated = { $date }. What this edition changed, as it stood then.
edition-added = { $added } added
edition-then-and-now = Numbers and numerals
edition-then-and-now-text = These entries and states had another number or numeral in this edition. Their addresses have not changed.
read-then = In this edition
read-now = Now

count-works = { $n ->
    [one] { $n } work of the literature
   *[other] { $n } works of the literature
}

change-entry-new = New entry{ $n ->
    [0] {""}
    [one] , with one impression
   *[other] , with { $n } impressions
}
change-moved = The identifier of the entry was { $was }; its former addresses lead here
change-number = Number { $now }, formerly { $was }
change-numerals = Numerals: { $moved }
change-numeral = { $was } is now { $now }
change-part-new = New: { $part }
change-part-moved = { $part }, formerly called { $was }
change-part-standing = { $part }: { $standing }
part-printing = printing “{ $name }”
part-variant = variant “{ $name }”
part-matrix = { $name } (matrix)
change-accepted-again = accepted again
change-revised = revised: { $subjects }
change-revised-somehow = revised
change-sheets-new = { $n ->
    [one] New impression: { $sheets }.
   *[other] New impressions: { $sheets }.
}
change-sheet-new = new
change-identified = now { $now }, formerly { $was }
change-holder = now with { $now }, formerly with { $was }
change-no-holder = no recorded holder
change-sheet-joined = the same impression as { $sheet }
change-sheet-parted = not the same impression as another
change-taken-over = now part of { $successor }
change-on-its-own = independent again
change-record-leads = { $was } now leads to { $now }.
not-identified-then = not identified

holder-change-new = New: { $sheets }.
holder-change-came = Now recorded here: { $sheets }.
holder-change-left = Formerly recorded here: { $sheets }.
holder-change-identified = Identified differently: { $sheets }.
holder-change-standing = Standing changed: { $sheets }.
holder-change-revised = Revised: { $sheets }.

changes-new-holders = { $n ->
    [one] New holder: { $records }.
   *[other] New holders: { $records }.
}
changes-new-people = { $n ->
    [one] New person: { $records }.
   *[other] New people: { $records }.
}
changes-new-literature = New in the literature: { $records }.
changes-new-exhibitions = { $n ->
    [one] New exhibition: { $records }.
   *[other] New exhibitions: { $records }.
}
changes-new-marks = { $n ->
    [one] New mark: { $records }.
   *[other] New marks: { $records }.
}
changes-new-documents = { $n ->
    [one] New document: { $records }.
   *[other] New documents: { $records }.
}
changes-new-series = { $n ->
    [one] New series: { $records }.
   *[other] New series: { $records }.
}
changes-new-pages = { $n ->
    [one] New page: { $records }.
   *[other] New pages: { $records }.
}

subject-titles = titles
subject-name = name
subject-date = date
subject-makers = makers
subject-technique = technique
subject-size = size
subject-series = series
subject-motif = subjects
subject-matrices = blocks and plates
subject-states = states
subject-printings = printings
subject-variants = variants
subject-points = points
subject-whereabouts = whereabouts
subject-identification = identification
subject-observations = observations
subject-sheet = the sheet
subject-marks = marks
subject-provenance = provenance
subject-exhibitions = exhibitions
subject-literature = literature
subject-pictures = pictures
subject-comparisons = comparisons
subject-relations = related records
subject-standing = standing
subject-text = text
subject-particulars = particulars

formerly-numbered = Earlier number
formerly-identified = In earlier editions
formerly-read = formerly { $value } ({ $editions })
concordance-own-editions = Earlier editions of this catalogue
concordance-own-editions-text = What earlier editions of this catalogue called an entry or a state, where it has another number or numeral now.
concordance-now = Now

feed-title = { $title }: changes
feed-first = The first edition: { $added }.
feed-edition = { $n ->
    [0] No entry of a design changed.
    [one] Changes in { $n } design.
   *[other] Changes in { $n } designs.
}

format-atom = Feed of changes (Atom)
format-atom-about = The changes of every edition are a feed (Atom, RFC 4287), at { $address }

edition-revised = as revised since
cite-revised = Since the last edition
cite-revised-text = The records have been revised since the last edition was issued, and citations say so. Add the day on which you read the page. The address stays the same.

unpublished = No longer published
unpublished-since = What stood at this address was last published in { $edition }.
no-key-now = No points are recorded now by which an impression of this entry could be identified.
nothing-to-compare-now = Fewer than two impressions of this entry can be compared now.
no-entry-now = The catalogue lists nothing here now.
elsewhere-here = Elsewhere in the catalogue
