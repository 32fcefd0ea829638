# Die Wörter der Seiten, deutsch. Das Theme eines Verzeichnisses darf jedes ändern.

# Der Rahmen.
catalogue = Werkverzeichnis
contents = Inhalt
skip-to-text = Zum Text
to-cite = Zitierweise
colophon = Impressum
edition = Ausgabe { $edition }
cited-editors = { $n ->
    [one] { $names } (Hg.)
   *[other] { $names } (Hgg.)
}
cited-in = { $cited }, in: { $whole }
text-and-data-under = Text und Daten unter { $licence }; Fotografien wie jeweils angegeben.
corrections-to = Berichtigungen und uns noch unbekannte Blätter an:
caution-line = Dieses Verzeichnis gibt eine wissenschaftliche Meinung zu seinem Datum wieder: weder Echtheitsbestätigung noch Schätzung noch Auskunft über Eigentum.

# Sammelseiten.
designs = Entwürfe
titles = Titel
series = Folgen
subjects = Motive
techniques = Techniken
census = Bestand
holders = Standorte
people = Personen
marks = Marken
chronology = Chronologie
exhibitions = Ausstellungen
literature = Literatur
concordance = Konkordanz
glossary = Glossar
changes = Änderungen
cite = Wie zu zitieren
contribute = Wie beizutragen
cautions = Vorbehalte
data = Daten

# Verbinden.
and = und
or = oder
by-person = von { $person }
table = Tabelle
note-back = Zurück

# Zählen.
count-designs = { $n ->
    [one] { $n } Entwurf
   *[other] { $n } Entwürfe
}
count-impressions = { $n ->
    [one] { $n } Abzug
   *[other] { $n } Abzüge
}
count-states = { $n ->
    [one] { $n } Zustand
   *[other] { $n } Zustände
}
count-printings = { $n ->
    [one] { $n } Druck
   *[other] { $n } Drucke
}
count-holders = { $n ->
    [one] { $n } Standort
   *[other] { $n } Standorte
}
count-sheets = { $n ->
    [one] { $n } Blatt
   *[other] { $n } Blätter
}

# Namen.
untitled = Ohne Titel
private-collection = Privatbesitz
name-withheld = Name nicht genannt
holder-not-recorded = Standort nicht verzeichnet
life-born = geboren { $date }
life-died = gestorben { $date }
life-active = tätig { $date }

# Wo ein Blatt ist.
status-located = nachgewiesen
status-untraced = verschollen
status-destroyed = zerstört
status-stolen = gestohlen

# Zustände und Drucke.
only-state = einziger Zustand
state-reading = Zustand { $state }
state-of-matrix = { $matrix } { $state }
variant-reading = Variante: { $variant }
printing-artist = Eigendruck
printing-lifetime = Druck zu Lebzeiten
printing-posthumous = postumer Druck
printing-restrike = Neudruck
printing-recut = Nachschnitt
printing-reproduction = Reproduktion
printing-proofs = Probedrucke

# Abbildungen.
photograph-by = Foto: { $credit }.
alt-impression = { $side } des Abzugs { $key } von { $title }, { $where }
side-recto = Vorderseite
side-verso = Rückseite
side-edge = Kante
side-mount = Unterlage
view-detail = Detail
view-raking = Streiflicht
view-transmitted = Durchlicht
picture-of-drawing = Zeichnung
picture-of-matrix = Stock oder Platte
picture-of-illustration = Abbildung
no-photograph = Keine Fotografie
rights-InC = Urheberrechtlich geschützt
rights-InC-EDU = Urheberrechtlich geschützt, Nutzung zu Bildungszwecken erlaubt
rights-InC-NC = Urheberrechtlich geschützt, nicht kommerzielle Nutzung erlaubt
rights-InC-RUU = Urheberrechtlich geschützt, Rechteinhaber nicht ermittelt
rights-InC-OW-EU = Urheberrechtlich geschützt, verwaistes Werk
rights-NoC-US = In den Vereinigten Staaten nicht geschützt
rights-NoC-CR = Nicht geschützt, vertragliche Beschränkungen
rights-NoC-NC = Nicht geschützt, nur nicht kommerzielle Nutzung
rights-NoC-OKLR = Nicht geschützt, andere rechtliche Beschränkungen
rights-CNE = Schutz nicht geprüft
rights-UND = Schutz nicht bestimmbar
rights-NKC = Kein Schutz bekannt

# Daten.
date-unknown = Datum unbekannt
date-about = um { $date }
date-perhaps = vielleicht { $date }
date-perhaps-about = vielleicht um { $date }
date-between = zwischen { $a } und { $b }
date-throughout = { $a } bis { $b }
date-not-before = nicht vor { $date }
date-not-after = nicht nach { $date }
date-from = ab { $date }
date-until = bis { $date }
date-from-unknown = ab { $date }, bis wann ist unbekannt
date-until-unknown = bis { $date }, ab wann ist unbekannt
date-or-earlier = { $date } oder früher
date-or-later = { $date } oder später
date-or = { $before } oder { $last }
date-and = { $before } und { $last }
date-day = { $day }. { $month } { $year }
date-day-month = { $day }. { $month }
date-day-alone = { $day }.
date-month = { $month } { $year }
date-some-day = ein Tag im { $month } { $year }
date-some-month = ein Monat des Jahres { $year }
date-some-day-of-year = ein Tag im Jahr { $year }
date-decade = { $decade }er Jahre
date-the-decade = die { $decade }er Jahre
date-bce = { $year } v. Chr.
date-significant = { $year } (auf { $n } Stellen genau)
date-spring = Frühjahr { $year }
date-spring-north = Frühjahr { $year } (Nordhalbkugel)
date-spring-south = Frühjahr { $year } (Südhalbkugel)
date-summer = Sommer { $year }
date-summer-north = Sommer { $year } (Nordhalbkugel)
date-summer-south = Sommer { $year } (Südhalbkugel)
date-autumn = Herbst { $year }
date-autumn-north = Herbst { $year } (Nordhalbkugel)
date-autumn-south = Herbst { $year } (Südhalbkugel)
date-winter = Winter { $year }
date-winter-north = Winter { $year } (Nordhalbkugel)
date-winter-south = Winter { $year } (Südhalbkugel)
date-quarter-1 = 1. Quartal { $year }
date-quarter-2 = 2. Quartal { $year }
date-quarter-3 = 3. Quartal { $year }
date-quarter-4 = 4. Quartal { $year }
date-third-1 = 1. Drittel { $year }
date-third-2 = 2. Drittel { $year }
date-third-3 = 3. Drittel { $year }
date-half-1 = 1. Halbjahr { $year }
date-half-2 = 2. Halbjahr { $year }
month-1 = Januar
month-2 = Februar
month-3 = März
month-4 = April
month-5 = Mai
month-6 = Juni
month-7 = Juli
month-8 = August
month-9 = September
month-10 = Oktober
month-11 = November
month-12 = Dezember
