# Ausgaben, und was jede von ihnen geändert hat.

editions = Ausgaben
changes-by-entry = Nach Einträgen
changes-by-holder = Nach Sammlungen
changes-other-records = Andere Einträge
changes-since = Seit { $edition }
changes-since-text = Diese Änderungen gehören noch zu keiner Ausgabe. Ein Zitat der letzten Ausgabe kann anders lauten.
changes-in = Änderungen in { $edition }
changes-all-editions = Alle Änderungen
changes-feed = Jede Ausgabe und ihre Änderungen meldet Lesern und Programmen ein Feed:
edition-first = { $date }. Die erste Ausgabe: { $added }.
edition-dated = { $date }. Was diese Ausgabe geändert hat, nach damaligem Stand.
edition-added = neu { $added }
edition-then-and-now = Nummern und Zustandszahlen
edition-then-and-now-text = Diese Einträge und Zustände hatten in dieser Ausgabe eine andere Nummer oder Zustandszahl. Ihre Adressen sind dieselben geblieben.
read-then = In dieser Ausgabe
read-now = Jetzt

count-works = { $n ->
    [one] { $n } Werk der Literatur
   *[other] { $n } Werke der Literatur
}

change-entry-new = Neuer Eintrag{ $n ->
    [0] {""}
    [one] , mit einem Abzug
   *[other] , mit { $n } Abzügen
}
change-moved = Die Kennung des Eintrags war { $was }; seine früheren Adressen führen hierher
change-number = Nummer { $now }, früher { $was }
change-numerals = Zustandszahlen: { $moved }
change-numeral = { $was } ist jetzt { $now }
change-part-new = Neu: { $part }
change-part-moved = { $part }, früher { $was } genannt
change-part-standing = { $part }: { $standing }
part-printing = Druck „{ $name }“
part-variant = Variante „{ $name }“
part-matrix = { $name } (Druckform)
change-accepted-again = wieder anerkannt
change-revised = überarbeitet: { $subjects }
change-revised-somehow = überarbeitet
change-sheets-new = { $n ->
    [one] Neuer Abzug: { $sheets }.
   *[other] Neue Abzüge: { $sheets }.
}
change-sheet-new = neu
change-identified = jetzt { $now }, früher { $was }
change-holder = jetzt bei { $now }, früher bei { $was }
change-no-holder = keiner Sammlung
change-sheet-joined = derselbe Abzug wie { $sheet }
change-sheet-parted = nicht derselbe Abzug wie ein anderer
change-taken-over = jetzt Teil von { $successor }
change-on-its-own = wieder eigenständig
change-record-leads = { $was } führt jetzt zu { $now }.
not-identified-then = nicht bestimmt

holder-change-new = Neu: { $sheets }.
holder-change-came = Jetzt hier verzeichnet: { $sheets }.
holder-change-left = Früher hier verzeichnet: { $sheets }.
holder-change-identified = Anders bestimmt: { $sheets }.
holder-change-standing = Anders beurteilt: { $sheets }.
holder-change-revised = Überarbeitet: { $sheets }.

changes-new-holders = { $n ->
    [one] Neue Sammlung: { $records }.
   *[other] Neue Sammlungen: { $records }.
}
changes-new-people = { $n ->
    [one] Neue Person: { $records }.
   *[other] Neue Personen: { $records }.
}
changes-new-literature = Neu in der Literatur: { $records }.
changes-new-exhibitions = { $n ->
    [one] Neue Ausstellung: { $records }.
   *[other] Neue Ausstellungen: { $records }.
}
changes-new-marks = { $n ->
    [one] Neue Marke: { $records }.
   *[other] Neue Marken: { $records }.
}
changes-new-documents = { $n ->
    [one] Neues Dokument: { $records }.
   *[other] Neue Dokumente: { $records }.
}
changes-new-series = { $n ->
    [one] Neue Folge: { $records }.
   *[other] Neue Folgen: { $records }.
}
changes-new-pages = { $n ->
    [one] Neue Seite: { $records }.
   *[other] Neue Seiten: { $records }.
}

subject-titles = Titel
subject-name = Name
subject-date = Datierung
subject-makers = Urheber
subject-technique = Technik
subject-size = Maße
subject-series = Folge
subject-motif = Motive
subject-matrices = Stöcke und Platten
subject-states = Zustände
subject-printings = Drucke
subject-variants = Varianten
subject-points = Merkmale
subject-whereabouts = Verbleib
subject-identification = Bestimmung
subject-observations = Beobachtungen
subject-sheet = Blatt
subject-marks = Marken
subject-provenance = Provenienz
subject-exhibitions = Ausstellungen
subject-literature = Literatur
subject-pictures = Bilder
subject-comparisons = Vergleiche
subject-relations = verwandte Einträge
subject-standing = Beurteilung
subject-text = Text
subject-particulars = Angaben

formerly-numbered = Frühere Nummer
formerly-identified = In früheren Ausgaben
formerly-read = früher { $value } ({ $editions })
concordance-own-editions = Frühere Ausgaben dieses Verzeichnisses
concordance-own-editions-text = Wie frühere Ausgaben dieses Verzeichnisses einen Eintrag oder Zustand nannten, der jetzt eine andere Nummer oder Zustandszahl hat.
concordance-now = Jetzt

feed-title = { $title }: Änderungen
feed-first = Die erste Ausgabe: { $added }.
feed-edition = { $n ->
    [0] Kein Eintrag einer Graphik hat sich geändert.
    [one] Änderungen an { $n } Graphik.
   *[other] Änderungen an { $n } Graphiken.
}

format-atom = Feed der Änderungen (Atom)
format-atom-about = Die Änderungen jeder Ausgabe sind ein Feed (Atom, RFC 4287), unter { $address }

edition-revised = seither überarbeitet
cite-revised = Seit der letzten Ausgabe
cite-revised-text = Die Einträge sind seit der letzten Ausgabe überarbeitet worden; Zitate sagen es. Fügen Sie den Tag hinzu, an dem Sie die Seite gelesen haben. Die Adresse bleibt dieselbe.

unpublished = Nicht mehr veröffentlicht
unpublished-since = Was unter dieser Adresse stand, ist zuletzt in { $edition } erschienen.
no-key-now = Zu diesem Eintrag sind jetzt keine Merkmale verzeichnet, an denen ein Abzug bestimmt werden könnte.
nothing-to-compare-now = Von diesem Eintrag lassen sich jetzt keine zwei Abzüge vergleichen.
no-entry-now = Das Verzeichnis führt hier jetzt nichts auf.
elsewhere-here = Anderswo im Verzeichnis
