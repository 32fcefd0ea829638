# Die Wörter der Seiten, deutsch. Das Theme eines Verzeichnisses darf jedes ändern.

# Der Rahmen.
catalogue = Werkverzeichnis
contents = Inhalt
on-this-page = Auf dieser Seite
skip-to-text = Zum Haupttext
to-cite = Zitierweise dieser Seite
cite-states-and-printings = Zustände und Drucke
for-reference-managers = Für Literaturverwaltungen:
as-linked-data = Als verknüpfte Daten:
copy = Kopieren
copied = Kopiert
colophon = Impressum
edition = Ausgabe { $edition }
cited-editors = { $n ->
    [one] { $names } (Hg.)
   *[other] { $names } (Hgg.)
}
cited-in = { $cited }, in: { $whole }
text-and-data-under = Text und Daten unter { $licence }; Fotografien mit den jeweils darunter genannten Rechten.
corrections-to = Berichtigungen und Hinweise auf nicht verzeichnete Abzüge bitte an
caution-line = Dieses Verzeichnis gibt eine wissenschaftliche Meinung zu seinem Datum wieder; es ist weder eine Echtheitsbestätigung noch eine Schätzung noch eine Auskunft über Eigentum.

# Sammelseiten.
designs = Graphiken
titles = Titel
series = Folgen
subjects = Motive
techniques = Techniken
census = Census
holders = Sammlungen
people = Personen
marks = Marken
owners = Frühere Eigentümer
overview-provenance = Provenienz, 1933–1945
chronology = Chronologie
exhibitions = Ausstellungen
literature = Literatur
documents = Dokumente
concordance = Konkordanz
glossary = Glossar
also-called = auch { $names }
changes = Änderungen
cite = Zitierweise
contribute = Mitwirken
cautions = Vorbehalte
data = Daten

# Die Abschnitte im Kopf jeder Seite und die Wege in das Verzeichnis.
section-designs = Graphiken
section-identify = Bestimmen
section-census = Census
section-holders = Sammlungen
section-about = Über
overview-designs = Graphiken
overview-identify = Ein Blatt bestimmen
overview-about = Über das Verzeichnis
overview-holders = Sammlungen
neighbouring-designs = Benachbarte Graphiken
neighbouring-impressions = Benachbarte Abzüge
neighbour-before = Zurück:
neighbour-after = Weiter:
ways-in = Einstieg
way-designs = Graphiken ansehen
way-designs-about = Alle Graphiken im Bild, in der Reihenfolge des Verzeichnisses.
way-designs-by-number = Alle Graphiken mit Nummer, Titel und Datum.
way-identify = Ein Blatt bestimmen
way-identify-about = Wählen Sie die Graphik nach dem Bild und geben Sie an, was zu sehen ist: Der Bestimmungsschlüssel nennt die passenden Zustände und Drucke.
way-identify-by-number = Wählen Sie die Graphik und geben Sie an, was zu sehen ist: Der Bestimmungsschlüssel nennt die passenden Zustände und Drucke.
way-census = Der Census
all-prints = { $n ->
    [one] Die Graphik
   *[other] Alle { $n } Graphiken
}
as-list = { $title }, als Liste
views = Ansichten
view-wall = Bilder
view-numbers = Nummern und Titel
view-list = Liste
not-pictured = keine Fotografie
holder-wall = Fotografien
identify-brief = Welche Graphik ist es? Ihr Bild führt zu ihrem Bestimmungsschlüssel, der fragt, was auf dem Blatt zu sehen ist, und die passenden Zustände und Drucke nennt.
identify-which = Graphiken mit Bestimmungsschlüssel
identify-without = Graphiken ohne Schlüssel
identify-number = Nach Nummer
identify-by-number = Eine Nummer dieses oder eines älteren Verzeichnisses oder eine Inventarnummer führt zum Eintrag: { $resolve }. Titel, Namen und die Wörter von Aufschriften findet die { $search }.
about-texts = Das Verzeichnis
about-artist = Künstler und Werk
about-use = Zum Gebrauch
about-keyboard = Tastatur
keyboard-neighbours = ← und → auf der Seite einer Graphik oder eines Abzugs: zurück und weiter.
keyboard-search = / auf jeder Seite: Suche.

# Suche. `search-number-words`: was vor einer Nummer geschrieben wird und zu keiner gehört.
search = Suche
search-field = Im Verzeichnis suchen
search-hint = Titel in jeder Schrift, Nummern, Inventarnummern, Namen, Marken und die Wörter aller Texte. Die Taste / führt von jeder Seite zur Suche.
search-failed = Der Suchindex konnte nicht geladen werden. Die Register brauchen kein Skript.
search-no-script = Die Suche braucht ein Skript, das dieser Browser nicht ausführt. Diese Register führen zu jedem Eintrag:
search-results = Ergebnisse
search-indexes = Register
search-narrow = Ergebnisse eingrenzen
search-found = Gefunden: { $n }
search-first = Die ersten { $n }; weitere Buchstaben grenzen die Suche ein
search-some = Kein Eintrag enthält alle diese Wörter. Einträge mit einigen davon: { $n }
search-count = { $n } von { $of }
search-nothing = Nichts gefunden.
search-all = Alle { $n } Ergebnisse
search-more = Mehr zeigen
search-any = alle
search-all-again = Wieder alle zeigen
search-in-number = Nummer
search-in-name = Name
search-in-record = im Eintrag
search-in-text = im Text
search-by-kind = Art des Eintrags
search-by-state = Zustand
search-by-printing = Druck
search-by-holder = Sammlung
search-by-technique = Technik
search-by-decade = Jahrzehnt
search-kind-design = Graphik
search-kind-state = Zustand
search-kind-printing = Druck
search-kind-impression = Abzug
search-kind-mark = Marke
search-kind-holder = Sammlung
search-kind-person = Person
search-kind-work = Literatur
search-kind-earlier = Nummer eines früheren Verzeichnisses
search-kind-exhibition = Ausstellung
search-kind-series = Folge
search-kind-document = Dokument
search-kind-page = Seite
search-kind-term = Begriff
search-number-words = nr no nummer num kat
not-found = Unter dieser Adresse gibt es keine Seite
not-found-brief = Die Adresse ist vielleicht falsch geschrieben, oder die Seite gehörte nie zu diesem Verzeichnis. Dies enthält das Verzeichnis zu den Wörtern der Adresse.

# Verweise. Die Listen sind, was neben einer Nummer steht und zu keiner gehört: vor einem Zustand („Zustand iii von v“), einer
# Inventarnummer („Inv. 1962.44“), einer Ausgabe („Ausgabe 2“); die englischen stehen in jeder Sprache.
resolve = Verweise auflösen
resolve-brief = Verweise einfügen und dauerhafte Adressen erhalten: Nummern mit und ohne Zustand, Inventarnummern, Nummern früherer Verzeichnisse, Titel, Namen.
resolve-field = Verweise, einer je Zeile
resolve-hint = Zum Beispiel:
resolve-go = Adressen finden
resolve-copy = Adressen kopieren
resolve-save = Als CSV speichern
resolve-failed = Die Liste der Verweise konnte nicht geladen werden.
resolve-no-script = Diese Seite braucht ein Skript, das dieser Browser nicht ausführt. { $indexes } führen zu jedem Eintrag.
resolve-indexes = Die Register
resolve-results = Lesarten
resolve-found = Verstandene Verweise: { $n } von { $of }
resolve-asked = Verweis
resolve-certainty = Sicherheit
resolve-reading = Lesart und Adresse
resolve-why = Grund
resolve-nothing = nicht verstanden
resolve-about = Für andere Websites
resolve-about-text = Die Namen, Nummern und Kennungen, nach denen Verweise gelesen werden, stehen in einer Datei, { $file }, die andere Websites und Datenbanken verwenden können: Sie enthält Kennung und Adresse jeder Graphik und jedes Zustands, Drucks und Abzugs sowie die Nummern früherer Verzeichnisse; die Inventarnummern stehen in weiteren Dateien daneben.
resolve-state-words = zustand zust zst von state st of
resolve-accession-words = inv inventar inventarnummer inventory acc accession
resolve-edition-words = ausgabe auflage edition ed
resolve-why-number = Nummer in diesem Verzeichnis
resolve-why-key = Kennung in diesem Verzeichnis
resolve-why-former-key = frühere Kennung
resolve-why-edition = Nummer oder Zustandszahl der Ausgabe { $edition }
resolve-why-other-total = Zustandszahl in diesem Verzeichnis, das eine andere Zahl von Zuständen hat
resolve-why-not-there = „{ $text }“ ist dort nicht erfasst
resolve-why-accession = Inventarnummer
resolve-why-bare-accession = Inventarnummer ohne ihre Satzzeichen
resolve-why-former-accession = frühere Inventarnummer
resolve-why-earlier = { $work }, { $number }
resolve-why-earlier-not-there = { $work }, { $number }; die Konkordanz hat dort kein „{ $text }“
resolve-why-row = die Nummer selbst, in der Liste des anderen Verzeichnisses
resolve-why-title = Titel
resolve-why-former-title = früherer Titel
resolve-why-name = Name
resolve-why-former-name = früherer Name
resolve-why-isil = ISIL
resolve-why-elsewhere = Kennung andernorts
resolve-why-beginning = ein Titel oder Name, der so beginnt
resolve-see = siehe { $records }
resolve-why-joined = { $record } ist ein Eintrag zu diesem Abzug

# Verbinden.
or = oder
list-and = { $before } und { $last }
list-or = { $before } oder { $last }
list-comma = { ", " }
quote-open = „
quote-close = “
quote-single-open = ‚
quote-single-close = ’
by-person = von { $person }
table = Tabelle
note-back = Zurück

# Zählen. `in-words` ist eine Zahl im Satz, `in-words-first` eine am Anfang.
in-words = { $n ->
    [1] ein
    [2] zwei
    [3] drei
    [4] vier
    [5] fünf
    [6] sechs
    [7] sieben
    [8] acht
    [9] neun
    [10] zehn
   *[other] { $n }
}
in-words-first = { $n ->
    [1] Ein
    [2] Zwei
    [3] Drei
    [4] Vier
    [5] Fünf
    [6] Sechs
    [7] Sieben
    [8] Acht
    [9] Neun
    [10] Zehn
   *[other] { $n }
}
count-designs = { $n ->
    [one] { $n } Graphik
   *[other] { $n } Graphiken
}
count-impressions = { $n ->
    [one] { $n } Abzug
   *[other] { $n } Abzüge
}
count-records = { $n ->
    [one] { $n } Eintrag
   *[other] { $n } Einträge
}
count-states = { $n ->
    [one] { in-words } Zustand
   *[other] { in-words } Zustände
}
count-printings = { $n ->
    [one] { in-words } Druck
   *[other] { in-words } Drucke
}
count-holders = { $n ->
    [one] { $n } Sammlung
   *[other] { $n } Sammlungen
}

# Namen.
untitled = Ohne Titel
private-collection = Privatbesitz
name-withheld = Name nicht genannt
withheld-owner = jemand, dessen Name nicht genannt ist
withheld-somebody = jemand, dessen Name nicht genannt ist
private-in-text = Privatbesitz, { $country }
a-private-collection = { $collection }
holder-not-recorded = Sammlung nicht verzeichnet
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

pressed-hand = von Hand abgerieben
pressed-press = in der Presse gedruckt

# Abbildungen.
photograph-by = Foto: { $credit }.
picture-by = Aufgenommen oder gezeichnet von
picture-date = Datum der Aufnahme
picture-light = Licht
alt-captioned = Abzug { $key }: { $caption }
alt-impression = { $side } des Abzugs { $key } von { $title }, { $where }
side-recto = Vorderseite
side-verso = Rückseite
side-edge = Kante
side-mount = Unterlage
on-side-recto = recto
on-side-verso = verso
on-side-edge = auf der Kante
on-side-mount = auf der Unterlage
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

# Die Titelseite und die Graphiken.
what-it-is = Ein Werkverzeichnis der Druckgraphik mit einem Census aller bekannten Abzüge
edited-by = herausgegeben von { $editors }
the-catalogue = Das Verzeichnis
introduction-in-full = Zur Einleitung
how-sheets-are-named = Jeder Abzug hat eine dauerhafte Nummer aus der der Graphik und seiner eigenen: { $example }.
by-number = Nach Nummern
by-date = nach Daten
by-date-head = Nach Daten
by-techniques = nach Techniken
by-series = nach Folgen
by-titles = nach Titeln
by-subjects = nach Motiven
also = Auch { $ways }
designs-by-number = { $n ->
    [one] Eine Graphik
   *[other] { in-words-first } Graphiken, nach Nummern
}
designs-apart = Abgelehnt und zurückgezogen
no-impression-known = kein Abzug bekannt
undated = Ohne Datum

# Die Seite einer Graphik.
entry = Eintrag
cited-as = Zitieren als
date = Datum
makers = Urheber
technique = Technik
support = Bildträger
size = Maße
size-of-states = { $figure }, wie bei { $states }
size-measured = { $n ->
    [one] { $range } ({ $of }, an einem Blatt gemessen)
   *[other] { $range } ({ $of }, an { in-words } Blättern gemessen)
}
series-one = Folge
formerly-titled = Früher betitelt
place-in-series = { $series }, Nr. { $position }
series-form-portfolio = Mappe
series-form-parts = Folge in Lieferungen
series-form-set = Suite
series-form-album = Album
series-formerly = früher { $title }
series-publisher = Verleger
series-declared = Angekündigte Blätter
series-designs = { $n ->
    [one] { in-words } Blatt angekündigt
   *[other] { in-words } Blätter angekündigt
}
series-known-of = { $known } von { $n } Blättern bekannt
series-open-places = { $n ->
    [one] Nr. { $places } ist nicht bekannt
   *[other] Nr. { $places } sind nicht bekannt
}
series-sheets = Bekannte Abzüge
series-counted = Gezählt sind nur Abzüge der genannten Drucke.
series-counted-or-all = Gezählt sind nur Abzüge der genannten Drucke; wo keiner genannt ist, alle Abzüge der Graphik.
series-by-status = Davon: { $statuses }.
series-sets = Erhaltene Sätze
series-set-whole = vollständig
blocks = Stöcke
plates-of-metal = Platten
stones = Steine
screens = Siebe
matrices = Druckformen
of-image = Darstellung
of-block = Stock
of-plate = Platte
of-stone = Stein
of-screen = Sieb
of-matrix = Druckform
of-sheet = Blatt
of-unsaid = ohne Angabe, was gemessen wurde
of-support = Unterlage
of-mount = Passepartout
of-frame = Rahmen
sizes-measured = Gemessen: { $how }
measured-sight = im Passepartout oder Rahmen; das Blatt kann größer sein
sizes-given-as = Angegeben als „{ $said }“
of-platemark = Plattenrand
from-blocks = { $n ->
    [one] { $technique } von einem Stock
   *[other] { $technique } von { in-words } Stöcken
}
from-plates = { $n ->
    [one] { $technique } von einer Platte
   *[other] { $technique } von { in-words } Platten
}
from-stones = { $n ->
    [one] { $technique } von einem Stein
   *[other] { $technique } von { in-words } Steinen
}
from-screens = { $n ->
    [one] { $technique } von einem Sieb
   *[other] { $technique } von { in-words } Sieben
}
from-some-matrices = { $n ->
    [one] { $technique } von einer Druckform
   *[other] { $technique } von { in-words } Druckformen
}
on-paper = auf { $papers }
in-inks = in { $inks }
came-out-in = erschienen in { $series }
only-in-variant = nur in { $variants }
matrix-named = { $kind } „{ $name }“
matrix-block = Stock
matrix-plate = Platte
matrix-stone = Stein
matrix-screen = Sieb
matrix-now-extant = erhalten
matrix-now-cancelled = entwertet
matrix-now-destroyed = zerstört
matrix-now-unknown = Verbleib unbekannt
state = Zustand
states = Zustände
caption-states = Wie sich die Zustände unterscheiden
states-compared = Zustände im Vergleich
points-left-out = Zu { $columns } ist hier nichts verzeichnet.
point = Merkmal
what-is-compared = Eigenschaft
points = Merkmale
other-points = Weitere Merkmale
first-described = zuerst beschrieben { $date }
state-follows = folgt auf { $states }
state-follows-none = folgt auf keinen anderen Zustand
unchanged = { $value }, unverändert
changed = geändert:
not-recorded = nicht verzeichnet
not-told = nicht verzeichnet oder nicht genannt
printing = Druck
printings = Drucke
variants = Varianten
caption-printings = Wie sich die Drucke unterscheiden
printings-compared = Drucke im Vergleich
printed-by = gedruckt von { $printer }
published-by = verlegt von { $publisher }
printed-and-published-by = gedruckt und verlegt von { $who }
all-states = alle Zustände
in-states = { $n ->
    [one] Zustand { $states }
   *[other] Zustände { $states }
}
declared-edition = angegebene Auflage { $n }
count-printed = { $n ->
    [one] ein Abzug gedruckt
   *[other] { in-words } Abzüge gedruckt
}
numbered = nummeriert
not-numbered = nicht nummeriert
from-matrices = von { $matrices }
of-kind = Art
of-printer = Drucker
of-publisher = Verleger
of-date = Datum
of-edition = Angegebene Auflage
of-printed = Gedruckt
impressions = Abzüge
not-identified = Nicht bestimmt
private-collections = Privatbesitz
place-not-recorded = Ort nicht verzeichnet
the-same = ebenda
only-numbers-differ = { $n ->
    [one] sonst ist nichts verzeichnet, was diesen Abzug von anderen unterscheidet
   *[other] sonst ist nichts verzeichnet, was diese { in-words } Abzüge unterscheidet
}
lacks = ohne { $matrices }
lot = Los { $lot }
dealer-number = Nr. { $lot }
last-recorded = zuletzt nachgewiesen: { $where }
last-recorded-in-trade = zuletzt im Handel nachgewiesen: { $where }
last-recorded-owner = zuletzt in Privatbesitz nachgewiesen
last-recorded-agent = zuletzt im Handel nachgewiesen
last-recorded-keeper = zuletzt bei einem ungenannten Verwahrer nachgewiesen
show-all = Alle zeigen
some-answer = { $shown } von { $all } gezeigt.
none-answers = Kein Abzug entspricht der Auswahl.
all-of-them = alle
not-said = nicht angegeben
holder = Sammlung
kind-of-holder-museum = Museen
kind-of-holder-library = Bibliotheken
kind-of-holder-archive = Archive
kind-of-holder-foundation = Stiftungen
kind-of-holder-private = privat
kind-of-holder-trade = Handel
kind-of-holder-unknown = nicht bekannt
drawings-and-blocks = Zeichnungen und Stöcke
sheets-known = { $n ->
    [one] Ein Abzug bekannt
   *[other] { in-words-first } Abzüge bekannt
}
sheets-known-between = { $n ->
    [one] Höchstens ein Abzug bekannt
   *[other] { $least } bis { $n } Abzüge bekannt
}
sheets-known-not-below = { $n ->
    [one] Höchstens ein Abzug bekannt
   *[other] { $least } oder mehr, höchstens { $n } Abzüge bekannt
}
all-located = alle nachgewiesen
of-which-located = { $figure } nachgewiesen
may-be-one-sheet = { $one } und { $other } sind vielleicht derselbe Abzug.
census-of-design = Der Census dieser Graphik
comparisons = Vergleiche
related = Verwandte Graphiken
named-as-related-by = Als verwandt genannt bei
here = Hier
commentary = Kommentar
mentioned-in = Erwähnt in
see = Siehe { $records }

# Die Seite eines Abzugs.
sheet = Blatt
inventory = Inv.-Nr. { $number }
owner = Eigentümer
joint-owners = Gemeinsame Eigentümer
accession = Inv.-Nr.
formerly = früher { $what }
credit-line = Herkunftsvermerk
holders-page = die eigene Seite der Sammlung zu diesem Abzug
identifiers = Kennungen andernorts
technique-of-design = der Graphik: { $technique }
as-given = Angaben der Sammlung
as-given-seen = gesehen { $date }
as-given-from = Quelle: { $source }
status = Verbleib
kind = Art des Abzugs
taken-from = Abgenommen von
number = Nummer
paper = Papier
inks = Druckfarben
pulled = Gedruckt
watermark = Wasserzeichen: { $watermark }
chain-lines = Kettlinien im Abstand von { $value } mm
laid-lines = { $value } Ripplinien auf den Zentimeter
paper-thickness = { $value } mm stark
mounted-on = aufgezogen ({ $support })
margins = Ränder: { $margins }
printed-side-recto = auf der Vorderseite gedruckt
printed-side-verso = auf der Rückseite gedruckt
printed-side-edge = auf der Kante gedruckt
printed-side-mount = auf der Unterlage gedruckt
blocks-printed = Gedruckte Stöcke
blocks-all = { $n ->
    [2] beide
   *[other] alle { in-words }
}
blocks-all-but = alle außer { $matrices }
block-printed = gedruckt
block-not-printed = nicht gedruckt
block-not-visible = nicht sichtbar
condition = Erhaltung
mark = Marke
mark-signature = Signatur
mark-stamp = Stempel
mark-seal = Siegel
mark-collector = Sammlermarke
mark-inscription = Aufschrift
in-medium = { $what }, { $medium }
quoted = „{ $text }“
name-of = mit dem Namen { $person }
applied-by = angebracht von { $person }
looked-for = Nicht gefunden: { $what }.
without-signature = Signatur
without-stamp = Stempel
without-seal = Siegel
without-collector = Sammlermarke
without-inscription = Aufschrift
without-watermark = Wasserzeichen
without-numbering = Nummer
identification = Bestimmung
or-else = Oder:
other-opinions = Andere Meinungen
after-work = nach { $work }
observed = Beobachtungen
seen-there = Auf dem Blatt
observed-certainly = Beobachtungen (sicher, wo nichts anderes vermerkt ist)
but-shows = verzeichnet aber:
count-disagree = { $n ->
    [one] Eine Beobachtung stimmt nicht mit der Bestimmung überein
   *[other] { in-words-first } Beobachtungen stimmen nicht mit der Bestimmung überein
}
more-pictures = Weitere Abbildungen
provenance = Provenienz
provenance-key = Das Früheste zuerst. Ein Strichpunkt bezeichnet den unmittelbaren Übergang, ein Punkt eine Lücke oder eine unbekannte Verbindung. Händler und Vermittler stehen in runden, Lebensdaten in eckigen Klammern.
provenance-as-recorded = Wie verzeichnet, Eintrag für Eintrag
bought-in = zurückgegangen
as-keeper = als Verwahrer
probably = wahrscheinlich
possibly = möglicherweise
probably-this-sheet = wahrscheinlich dieser Abzug
possibly-this-sheet = möglicherweise dieser Abzug
illustrated = abgebildet
not-illustrated = nicht abgebildet
probably-that-sheet = wahrscheinlich { $sheet }
possibly-that-sheet = möglicherweise { $sheet }
owner-gift = Schenkung an { $who }
owner-bequest = Vermächtnis an { $who }
owner-descent = im Erbgang an { $who }
owner-purchase = Ankauf durch { $who }
owner-sale = verkauft an { $who }
owner-exchange = im Tausch an { $who }
owner-transfer = überwiesen an { $who }
owner-commission = Auftrag von { $who }
owner-from-the-artist = vom Künstler an { $who }
owner-legal-deposit = Pflichtexemplar an { $who }
owner-confiscation = eingezogen von { $who }
owner-forced-sale = unter Zwang verkauft an { $who }
owner-looting = geraubt von { $who }
owner-theft = gestohlen von { $who }
owner-restitution = restituiert an { $who }
owner-unknown = erworben von { $who }
owner-find = im Bestand gefunden von { $who }
owner-fire = durch Brand zerstört, { $who }
owner-destruction = zerstört, { $who }
agent-sale = Verkauf, { $who }
agent-purchase = Ankauf durch { $who }
agent-exchange = Tausch, { $who }
agent-forced-sale = Zwangsverkauf, { $who }
keeper-loan = Leihgabe an { $who }
keeper-deposit = Depositum bei { $who }

# Die Eigentümer von 1933 bis 1945.
caution = Hinweis
years-1933-1945 = 1933–1945
years-throughout = Für die ganze Zeit, in der das Blatt bestanden haben kann, { $time }, ist ein Eigentümer verzeichnet
years-uncertain = Für die ganze Zeit, in der das Blatt bestanden haben kann, { $time }, ist ein Eigentümer verzeichnet, für keinen Teil davon mit Gewissheit
years-perhaps = Für die ganze Zeit, in der das Blatt bestanden haben kann, { $time }, ist ein Eigentümer verzeichnet, für einen Teil davon nicht mit Gewissheit
years-partly = Für einen Teil der Zeit { $time } sind Eigentümer verzeichnet
years-silent = Für die Zeit { $time } ist hier kein Eigentümer verzeichnet
years-change-recorded = Für diese Jahre ist ein Wechsel des Eigentümers verzeichnet
years-change-possible = In diese Jahre fällt vielleicht ein Wechsel des Eigentümers
years-last = zuletzt nachgewiesen { $date }
years-last-in-trade = zuletzt im Handel nachgewiesen, { $date }
years-perhaps-last = vielleicht { $last }
years-then-none = { $last }; danach kein Eigentümer verzeichnet
years-then-next = { $last }; danach { $next }
years-next-owner = kein Eigentümer verzeichnet bis { $date } ({ $who })
years-next-owner-between = kein Eigentümer verzeichnet; wieder nachgewiesen { $date } ({ $who })
years-next-sale-of-day = kein Eigentümer verzeichnet bis zum Verkauf am { $date } ({ $who })
years-next-sale = kein Eigentümer verzeichnet bis zu einem Verkauf, { $date } ({ $who })
years-next-bought-in = kein Eigentümer verzeichnet bis zu einem Angebot ohne Verkauf, { $date } ({ $who })
years-next-in-trade = kein Eigentümer verzeichnet, bis das Blatt im Handel war, { $date } ({ $who })
years-perhaps-same = vielleicht derselbe Abzug wie { $other }: { $entries }
years-perhaps-same-alone = vielleicht derselbe Abzug wie { $other }
years-manner-unknown = Wie der Eigentümer wechselte, ist nicht verzeichnet
years-see-sheet = wie der Eigentümer wechselte, ist nicht verzeichnet: siehe den Abzug
years-see-note = siehe die Anmerkung zum Abzug
years-see-written = siehe den Provenienztext des Abzugs
years-only-open-days = Aufgeführt sind nur Tage ohne sicheren Eigentümer.
years-handled = In diesen Jahren im Handel: { $entries }
years-entries-only = Hier zählen nur die Einträge, nicht der Provenienztext
years-may-be-later = Vielleicht erst später gedruckt
years-probably-later = Wahrscheinlich später gedruckt, { $by }
years-nobody = kein Eigentümer verzeichnet
years-perhaps-owner = vielleicht { $owner }
years-acquired = erworben { $date }
years-acquired-some-day = erworben { $date }, der Tag ist nicht verzeichnet
years-acquired-not-recorded = seit wann, ist nicht verzeichnet
years-held = Eigentümer bis { $date }
years-held-some-day = Eigentümer bis { $date }, der Tag ist nicht verzeichnet
years-held-not-recorded = bis wann, ist nicht verzeichnet
years-caution = Lücken sind üblich und bedeuten kein Unrecht; ein lückenloser Nachweis ist keine Entlastung. Wer über ein bestimmtes Blatt entscheidet, sollte eigens nachforschen und am Ort des Blattes fachkundigen Rechtsrat einholen.
provenance-years-brief = Die verzeichneten Eigentümer jedes Abzugs vom 30. Januar 1933 bis zum 8. Mai 1945. Danach gedruckte oder vorher zerstörte Abzüge fehlen hier; Abzüge unbekannter Druckzeit sind eingeschlossen. Dass kein Eigentümer verzeichnet ist, entlastet einen Abzug nicht.
years-head-silent = Für diese Jahre kein Eigentümer verzeichnet
years-head-partly = Eigentümer für einen Teil dieser Jahre verzeichnet, sicher oder vielleicht
years-head-perhaps = Eigentümer durchgehend verzeichnet, für manche Tage nicht mit Gewissheit
years-head-uncertain = Eigentümer durchgehend verzeichnet, für keinen Tag mit Gewissheit
years-head-throughout = Eigentümer durchgehend verzeichnet
years-mark-change-recorded = Wechsel des Eigentümers verzeichnet
years-mark-change-possible = Wechsel des Eigentümers möglich
years-mark-may-be-later = vielleicht später gedruckt
years-mark-probably-later = wahrscheinlich später gedruckt, { $by }
years-not-asked = { $n ->
    [one] Ein Eintrag fehlt hier: Sein Abzug ist nach diesen Jahren gedruckt oder vorher zerstört, oder er ist zurückgezogen, ein Nachschnitt oder eine Reproduktion.
   *[other] { in-words-first } Einträge fehlen hier: Ihre Abzüge sind nach diesen Jahren gedruckt oder vorher zerstört, oder sie sind zurückgezogen, Nachschnitte oder Reproduktionen.
}

sightings = Nachweise
notes = Anmerkungen
other-records = Andere Einträge
stolen-caution = Hier als gestohlen verzeichnet. Das Verzeichnis äußert sich nicht zum Eigentum: Wem dieses Blatt begegnet, der wende sich an den zuletzt verzeichneten Eigentümer oder an die Behörden, wie es das örtliche Recht verlangt.
against-what-was-seen = im Widerspruch zum Gesehenen
is-the-same-sheet = Dieser Eintrag und { $other } beschreiben denselben Abzug.
one-sheet-of-records = { $records } beschreiben denselben Abzug. Eine Nummer in geschweiften Klammern nennt den Eintrag, aus dem eine Zeile stammt.
choices = Zur Auswahl
taken-over = Jetzt Teil von { $successor }; dort sind die früher hier verwahrten Abzüge aufgeführt.
recorded-with = verzeichnet unter { $holder }
has-moved = Diese Seite steht jetzt hier: { $page }.
leads-to-its-sheet = { $record } und { $sheet } beschreiben denselben Abzug; siehe { $sheet }.
record-of-this-sheet = Aus dem Eintrag { $record }
same-sheet-as = Derselbe Abzug wie { $other }
maybe-same-sheet-as = Vielleicht derselbe Abzug wie { $other }
other-sheet-than = Sicher nicht derselbe Abzug wie { $other }
shares-sheet-with = Auf demselben Bogen wie { $other }
goes-with = Gehört zu { $other }
counterproof-taken = Davon wurde ein Gegendruck genommen: { $other }
compare = Vergleichen
compare-chosen = { $n } vergleichen
compared-with = mit { $others }

# Ein Vergleich.
impressions-compared = { $n ->
    [one] Ein Abzug
    [2] Zwei Abzüge im Vergleich
    [3] Drei Abzüge im Vergleich
    [4] Vier Abzüge im Vergleich
   *[other] { $n } Abzüge im Vergleich
}
title-compared = { $keys } im Vergleich
observations = Beobachtungen
together = Ergebnis
verdict-differ = verschieden
verdict-agree = gleich
verdict-cannot-be-told = nicht zu entscheiden
count-differ = { $n ->
    [0] Sie unterscheiden sich an keinem der { $all } verzeichneten Merkmale.
    [one] Sie unterscheiden sich an einem der { $all } verzeichneten Merkmale.
   *[other] Sie unterscheiden sich an { $n } der { $all } verzeichneten Merkmale.
}
nothing-observed = Zu diesen Abzügen sind keine Beobachtungen verzeichnet.
nothing-recorded-to-compare = Zu diesen Abzügen ist nichts vermerkt, was sich vergleichen ließe.
compared-across-designs = Abzüge verschiedener Blätter haben keine Merkmale gemeinsam; verglichen wird, was zum Papier und seinem Zustand vermerkt ist.
compared-of-all = Hier stehen die ersten { $shown } von { $all }.
sheets-and-observations = Papier und Beobachtungen
paper-colour = Farbe des Papiers
chain-lines-apart = Abstand der Kettlinien
laid-lines-in-a-centimetre = Ripplinien je Zentimeter
thickness-of-the-paper = Papierstärke
watermark-alone = Wasserzeichen
margins-alone = Ränder
mounted-on-alone = Aufgezogen auf
not-looked-at = Bei keinem von ihnen verzeichnet:
ground = Hintergrund
ground-page = wie die Seite
ground-light = hell
ground-dark = dunkel

# Abzüge aufeinandergelegt.
comparison-chosen = Abzüge vergleichen
comparison-of = { $design }: Abzüge im Vergleich
compare-any = Abzüge vergleichen
compare-with-another = Mit einem anderen Abzug vergleichen
compare-which = Abzüge wählen
compare-marked-sheets = Diese Abzüge vergleichen
compare-other-photographs = Weitere Aufnahmen:
compare-photograph-of = Aufnahme von { $number }
compare-none = Auswahl aufheben
compare-choose = Wählen Sie zwei bis vier.
compare-choose-one-more = Wählen Sie noch einen.
compare-four-chosen = Höchstens vier. Entfernen Sie einen, um einen anderen zu wählen.
compare-how = Ansicht
compare-how-to-read = Lesehilfe
compare-side = nebeneinander
compare-edge = Trennlinie
compare-blink = abwechselnd
compare-overlay = überlagert
compare-difference = Unterschiede
compare-first = Erster
compare-second = Zweiter
compare-edge-between = { $first } links der Trennlinie, { $second } rechts davon
compare-opacity-of = { $second } über { $first }
compare-now = { $number }
compare-stop = anhalten
compare-go = weiter
compare-step = wechseln
compare-pace = Tempo
compare-slow = langsam
compare-quick = schnell
compare-is-still = Bewegung ist reduziert: bitte von Hand wechseln.
compare-working = Wird verglichen …
compare-difference-of = Dunkel: dunkler auf { $second }. Hell: dunkler auf { $first }. Mittelgrau: kein Unterschied in der Linie.
compare-difference-how = Verglichen werden nur Linien und Kanten; eine Fläche, die nur einer der beiden Abzüge hat, zeigt sich daher an ihrer Kante. Was nur eine der Fotografien erfasst, bleibt leer. Unterschiede der Einfärbung und der Beleuchtung sind ausgeglichen, Verblassen, Flecken und ungenaue Deckung nicht. Ein Unterschied ist hier ein Anlass, die Blätter anzusehen, und für sich kein Beleg.
compare-difference-share = Linien und Kanten unterscheiden sich auf { $percent } der Fläche.
compare-difference-share-of-image = Linien und Kanten unterscheiden sich auf { $percent } des Druckbilds.
compare-unreadable = Die Bildpunkte lassen sich nicht lesen: Browser erlauben es auf Seiten nicht, die von der Festplatte geöffnet werden.
compare-no-picture = Von { $number } gibt es keine Fotografie.
compare-not-laid = Die Fotografie von { $number } lässt sich mit den anderen nicht zur Deckung bringen: { $why }.
compare-side-only = Nur nebeneinander; kein gemeinsamer Maßstab.
recorded-on-no-sheet = Auf keinem Abzug verzeichnet:

# Ein Bild von Nahem.
view-closer-look = Vergrößern
view-closer = vergrößern
view-further = verkleinern
view-whole = ganze Fotografie
view-left = nach links
view-right = nach rechts
view-up = nach oben
view-down = nach unten
view-close = schließen
view-copy-link = Link zu diesem Ausschnitt kopieren
view-copy-state = Ausschnitt für einen anderen Betrachter kopieren (IIIF)
view-bar = Maßstab:
view-is-whole = Ganze Fotografie
view-is-closer = { $times }×
view-keys = Tastatur: + − vergrößern und verkleinern, 0 ganze Fotografie, Pfeile verschieben. Klick auf das Bild: Vergrößern mit dem Rad.

# Werte der Merkmale.
value-present = vorhanden
value-absent = fehlt
value-not = nicht
value-not-visible = nicht sichtbar
value-not-applicable = nicht zutreffend
wear = Abnutzung
rests-on-matrix = Druckform
rests-on-blocks = gedruckte Stöcke
rests-on-inking = Einfärbung
rests-on-paper = Papier
rests-on-mark = Marke

# Aussagen.
certainty-certain = sicher
certainty-probable = wahrscheinlich
certainty-possible = möglich
basis-first-hand = nach Augenschein
basis-photograph = nach einer Fotografie
basis-literature = nach der Literatur
basis-report = nach einem Bericht
cited-number = Nr. { $number }
relation-same = dasselbe
relation-covers-ours-design = umfasst diese Graphik
relation-covers-ours-state = umfasst diesen Zustand
relation-covers-ours-printing = umfasst diesen Druck
relation-part-of-ours-design = Teil dieser Graphik
relation-part-of-ours-state = Teil dieses Zustands
relation-part-of-ours-printing = Teil dieses Drucks
relation-not-a-state = kein Zustand
relation-error = irrtümlich
standing-accepted = Anerkannt
standing-doubtful = Zweifelhaft
standing-rejected = Abgelehnt
standing-withdrawn = Zurückgezogen
stands-doubtful = zweifelhaft
stands-rejected = abgelehnt
stands-withdrawn = zurückgezogen
stands-taken-over = aufgegangen

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
date-from-unknown = ab { $date }, Ende unbekannt
date-until-unknown = bis { $date }, Beginn unbekannt
date-or-earlier = { $date } oder früher
date-or-later = { $date } oder später
date-day = { $day }. { $month } { $year }
date-day-month = { $day }. { $month }
date-day-alone = { $day }.
date-month = { $month } { $year }
date-some-day = ein Tag im { $month } { $year }
date-some-month = ein Monat im Jahr { $year }
date-some-day-of-year = ein Tag im Jahr { $year }
date-decade = { $decade }er Jahre
date-the-decade = { $decade }/{ $end }
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
# Register und Zahlen.
sheets-between = { $least } bis { $n } Abzüge
sheets-not-below = { $least } oder mehr, höchstens { $n } Abzüge
not-below-numbers = { $least } oder mehr, höchstens { $most }
between-numbers = { $least } bis { $most }
as-of = Stand { $date }
this-catalogue = dieses Verzeichnis
see-record = siehe { $record }
about = Text
particulars = Angaben
count-cities = { $n ->
    [one] { $n } Ort
   *[other] { $n } Orten
}
count-of-designs = { $n ->
    [one] von { $n } Graphik
   *[other] von { $n } Graphiken
}
impressions-of-designs = { $impressions } { $designs }
all = Alle

# Listen von Abzügen.
impression = Abzug
accession-number = Inv.-Nr.
printing-and-kind = Druck, Art
remarks = Bemerkungen

# Sammlungen.
holders-brief = Nach Ort, dann nach Einrichtung. { $holders } an { $cities }.
holders-private = Privatbesitz
holders-trade = Handel
holders-without-place = Ort nicht verzeichnet
now-part-of = jetzt { $holder }
holder-kind-museum = Museum
holder-kind-library = Bibliothek
holder-kind-archive = Archiv
holder-kind-foundation = Stiftung
holder-kind-private = Privatbesitz
holder-kind-trade = Handel
holder-kind-unknown = Art nicht bekannt
formerly-named = Früher
took-over = Darin aufgegangen
continued-by = Fortgeführt von
isil = ISIL
web = Web
owned-by = Eigentum: { $owner }
owned-elsewhere = Als Depositum anderswo
kept-at = Verwahrt bei
impressions-here = Abzüge hier
formerly-owned = Früher im Eigentum
stolen-from-here = Von hier gestohlen
formerly-kept = Früher als Depositum hier
formerly-here = Früher hier
handled-here = Hier verkauft oder angeboten
matrices-here = Stöcke und Platten hier
exhibitions-here = Ausstellungen hier
now-at = jetzt { $where }
named-printer = Als Drucker
named-publisher = Als Verleger
named-series-publisher = Verlegte Folgen
named-mark = Name steht auf
named-applied-mark = Marken angebracht auf
named-mark-user = Als Benutzer der Marke
named-sighting = Als Gewährsperson
named-said = Meinungen und Aussagen zu
named-photographed = Aufnahmen und Zeichnungen von
to-do = Noch zu tun
to-do-all = alle { $n } Abzüge
to-do-some = { $n } Abzüge
to-do-not-identified = Nicht bestimmt
to-do-not-measured = Nicht gemessen
to-do-no-photograph = Keine Fotografie hier
to-do-no-verso = Keine Fotografie der Rückseite hier
to-do-years = Für 1933–1945 ganz oder teilweise kein Eigentümer verzeichnet

# Personen.
people-brief = { $n ->
    [one] Eine Person, mit Verweisen von anderen Namensformen.
   *[other] { in-words-first } Personen, mit Verweisen von anderen Namensformen.
}
active = Tätig
in-this-catalogue = In diesem Verzeichnis
is-artist = Künstler
is-editor = Herausgeber
authority = Normdaten
made-by-them = Graphiken
in-no-series = Einzelblätter
by-where-now = nach heutiger Sammlung
unless-said = { $what }, wo nichts anderes vermerkt ist
printed-by-them = Als Drucker
published-by-them = Als Verleger
owned-by-them = Als Eigentümer
kept-by-them = Als Verwahrer
handled-by-them = Als Händler oder Vermittler
writings = Schriften

# Chronologie.
year-by-year = Jahr für Jahr
event-born = { $person } geboren
event-died = { $person } gestorben
event-active = { $person } tätig
event-states = { $n ->
    [one] Zustand { $states }
   *[other] Zustände { $states }
}
event-matrix = { $matrix } { $fate }
event-exhibition = Ausstellung: { $exhibition }
event-document = Dokument: { $document }
event-series = Folge: { $series }
event-series-published = Folge erschienen: { $series }

# Konkordanz und Literatur.
concordance-brief = { $n ->
    [one] Die Nummern dieses Verzeichnisses neben denen eines früheren, in beiden Richtungen.
   *[other] Die Nummern dieses Verzeichnisses neben denen von { in-words } früheren, in beiden Richtungen.
}
from-our-numbers = Nach unseren Nummern
from-their-numbers = Nach { $work }
our-number = Dieses Verzeichnis
their-number = Dortige Nummer
its-numbers = Seine Nummern
its-number = Nummer
relation = Beziehung
not-described-there = dort nicht beschrieben
in-none-of-the-catalogues = { $n ->
    [one] Eine Graphik hat dort keine Nummer:
   *[other] { $n } Graphiken haben dort keine Nummer:
}
concordance-dash = Ein Strich: dort nicht beschrieben.
earlier-catalogues = Frühere Verzeichnisse
literature-cited = Zitierte Literatur
reference = Titelaufnahme
authors-here = In diesem Verzeichnis
cited-in-designs = Zitiert bei Graphiken
cited-in-impressions = Zitiert bei Abzügen
cited-in-exhibitions = Sonst zitiert

# Literaturangaben. $region ist die Region der Sprache des Katalogs: CH bei de-CH, sonst leer.
bibliography-and = und
bibliography-by = von { $names }
bibliography-edited-by = herausgegeben von { $names }
bibliography-translated-by = übersetzt von { $names }
bibliography-edited-and-translated-by = herausgegeben und übersetzt von { $names }
bibliography-compiled-by = zusammengestellt von { $names }
bibliography-editors = Hrsg.
bibliography-translators = Übers.
bibliography-compilers = Bearb.
bibliography-et-al = u.{ "\u00A0" }a.
bibliography-in = in
bibliography-quoted = { $region ->
    [CH] «{ $title }»{ $stop }
   *[other] „{ $title }“{ $stop }
}
bibliography-edition = { $n }. Aufl.
bibliography-volume = Bd. { $volume }
bibliography-volumes = { $n } Bde.
bibliography-number = Nr. { $number }
bibliography-no-date = o.{ "\u00A0" }J.
bibliography-date = { $day }. { $month } { $year }
bibliography-accessed = zugegriffen { $date }
bibliography-doctoral = Dissertation
bibliography-masters = Masterarbeit
bibliography-technical = technischer Bericht
bibliography-manuscript = unveröffentlichtes Manuskript
bibliography-of = von
bibliography-chapter = Kap. { $chapter } in
bibliography-version = Version { $version }
bibliography-day = { $day }. { $month }

# Ausstellungen.
exhibition = Ausstellung
exhibition-catalogue = Katalog
impressions-shown = Gezeigte Abzüge
number-there = Nr. der Ausstellung
now-kept = Heutige Sammlung

# Marken.
owners-brief = Eigentümer vor der heutigen Sammlung; Händler, Vermittler und Verwahrer sind gesondert aufgeführt. Keine Aussage über das Eigentumsrecht.
owners-agents = Händler und Vermittler
owners-keepers = Verwahrer
owners-numbers = Frühere Inventarnummern
owners-numbers-elsewhere = Sammlung nicht verzeichnet
marks-brief = Signaturen, Stempel, Siegel, Sammlermarken und Aufschriften, dazu Wasserzeichen.
mark-shared = Eine Marke mit mehreren Benutzern
marks-shared = Marken mit mehreren Benutzern
marks-shared-note = für sich bestimmt eine solche Marke weder Eigentümer noch Zeit
marks-signature = Signaturen
marks-stamp = Stempel
marks-seal = Siegel
marks-collector = Sammlermarken
marks-inscription = Aufschriften
marks-other = Andere Marken
marks-watermark = Wasserzeichen
mark-own-hand = eigenhändig
mark-applied-by = angebracht von { $name }
mark-not-described = nicht beschrieben
mark-colour = Farbe
mark-repertory = Repertorium
mark-users = Benutzt von
mark-user = Benutzer
mark-used = Zeit
mark-put-on = Angebracht auf
mark-years-unknown = Jahre nicht bekannt
mark-caution = Die Marke hatte mehrere Benutzer; für sich bestimmt sie weder Benutzer noch Zeit.
mark-conditions = Zustände der Marke
mark-condition = Zustand der Marke
mark-condition-when = Zeit
mark-conditions-note = Die Marke veränderte sich mit der Zeit. Wo ihr Zustand auf einem Blatt verzeichnet ist, begrenzt er, wann sie angebracht wurde, nicht, wann das Blatt gedruckt wurde.
mark-in-condition = Zustand der Marke: { $condition }
mark-seen-on = Verzeichnet auf
mark-printings = Drucke und Daten
mark-printing = Druck
mark-printed = Gedruckt
mark-printing-unknown = Druck nicht bestimmt
mark-applied = Angebracht
mark-sheets = Abzüge, auf denen sie verzeichnet ist

# Titel.
titles-brief = Alle Titel in allen Sprachen. Artikel am Anfang, Klammern und Anführungszeichen bleiben unberücksichtigt.
title-kind-translated = übersetzt
title-kind-former = früherer Titel

# Census.
census-brief = Bekannt ({ $as-of }): { $sheets }.
census-brief-undated = Bekannt: { $sheets }.
census-of = Census: { $design }
how-counted = Wie wir zählen
by-design = Nach Graphiken
by-status = Nach Verbleib
by-state = Nach Zuständen
by-printing = Nach Drucken
by-kind = Nach Art des Abzugs
by-place = Nach Orten
whole = Auf einen Blick
whole-key = Jedes Quadrat ist ein Abzug, jede Zeile eine Graphik; Lücken trennen ihre Drucke. Einträge, die denselben Abzug beschreiben können, zählen einzeln.
whole-key-of-design = Jedes Quadrat ist ein Abzug. Einträge, die denselben Abzug beschreiben können, zählen einzeln.
whole-others = von anderen gedruckt
whole-uncertain = Druck unsicher oder im Widerspruch zu einer Beobachtung
whole-unknown = kein Druck verzeichnet
whole-printing = { $printing }: { $sheets }{ $uncertain ->
    [0] { "" }
   *[other] , davon { $uncertain } unsicher
}
whole-several-printings = Einer von mehreren Drucken
whole-no-printing = Kein Druck verzeichnet
column-status = Verbleib
column-state = Zustand
column-printing = Druck
column-kind = Art des Abzugs
column-holder = Sammlung
column-place = Land, Ort und Sammlung
number-short = Nr.
title = Titel
known = Bekannt
sheets = Abzüge
records = Einträge
caption-crossing = Abzüge nach Zustand und Druck
crossing-left-out = Kein Abzug bekannt: { $printings }.
crossing-open = Ein Abzug von ungewissem Zustand oder Druck zählt bei jeder Möglichkeit.
crossing-not-firm = Unter einer Zahl: wie viele ihrer Abzüge nur als wahrscheinlich oder möglich bestimmt sind (nicht sicher) und bei wie vielen das Gesehene der Bestimmung widerspricht (im Widerspruch). Die übrigen sind sicher.
not-firm-key = Nicht sicher: nur als wahrscheinlich oder möglich bestimmt. Im Widerspruch: Das Gesehene widerspricht der Bestimmung. Die Zahlen schließen diese Abzüge ein.
contradicted-fits = { $sheet } ist als { $called } bestimmt; was gesehen wurde, passt zu { $states }
contradicted-fits-none = { $sheet } ist als { $called } bestimmt; was gesehen wurde, passt zu keinem verzeichneten Zustand
of-them-uncertain = { $n ->
    [one] { $n } nicht sicher
   *[other] { $n } nicht sicher
}
of-them-contradicted = { $n ->
    [one] { $n } im Widerspruch
   *[other] { $n } im Widerspruch
}
of-them-standing = davon { $n } { $standing } ({ $records })
none-known = keiner bekannt
not-in-this-state = nicht in diesem Zustand gedruckt
counted-not-shown = { $n ->
    [one] { $n } gezählt, nicht veröffentlicht
   *[other] { $n } gezählt, nicht veröffentlicht
}
not-in-these-rows = { $n ->
    [one] { $n } gezählt, nicht veröffentlicht; er steht in keiner Zeile dieser Tabelle.
   *[other] { $n } gezählt, nicht veröffentlicht; sie stehen in keiner Zeile dieser Tabelle.
}
designs-of-one = { $n ->
    [one] Eine Graphik, in einem Abzug bekannt
   *[other] { $n } Graphiken, in je einem Abzug bekannt
}
one-impression-each = In einem Abzug bekannt
whole-one-each = je einer
only-impression = Der einzige bekannte Abzug
designs-of-no-impression = { $n ->
    [one] Eine weitere Graphik steht nicht in dieser Tabelle: Von ihr ist kein Abzug bekannt.
   *[other] { in-words-first } weitere Graphiken stehen nicht in dieser Tabelle: Von ihnen ist kein Abzug bekannt.
}
declared-editions = Auflagen
known-of-declared = { $n ->
    [one] Bekannt: { $known } von einem angegebenen
   *[other] Bekannt: { $known } von { $n } angegebenen
}
known-of-perhaps-declared = { $n ->
    [one] Bekannt: { $known } von vielleicht einem angegebenen
   *[other] Bekannt: { $known } von vielleicht { $n } angegebenen
}
known-of-printed = { $n ->
    [one] Bekannt: { $known } von einem gedruckten
   *[other] Bekannt: { $known } von { $n } gedruckten
}
known-of-printing = Bekannt: { $known }
proofs-included = Probedrucke eingeschlossen
numbered-above = { $n ->
    [one] einer davon mit höherer Nummer
   *[other] { in-words } davon mit höheren Nummern
}
source-not-given = ohne Quellenangabe
design = Graphik
declared = Angegeben
numbers-printed = Gedruckt
numbers-met = Nummern verzeichnet
numbers-above = Über der Auflage
numbers-repeated = Doppelt verzeichnet
may-be-one-sheet-head = Vielleicht derselbe Abzug
are-one-sheet = Ein Abzug, mehrere Einträge
edition-declared = { $n ->
    [one] { $printing }: { $n } angegeben
   *[other] { $printing }: { $n } angegeben
}
edition-perhaps-declared = { $n ->
    [one] { $printing }: vielleicht { $n } angegeben
   *[other] { $printing }: vielleicht { $n } angegeben
}
edition-met-of = { $n ->
    [0] Keine Nummer ist verzeichnet.
    [one] Eine von { $declared } Nummern ist verzeichnet.
   *[other] { $n } von { $declared } Nummern sind verzeichnet.
}
edition-met-of-perhaps = { $n ->
    [0] Keine Nummer ist verzeichnet.
    [one] Eine von vielleicht { $declared } Nummern ist verzeichnet.
   *[other] { $n } von vielleicht { $declared } Nummern sind verzeichnet.
}
edition-met = { $n ->
    [one] Eine Nummer ist verzeichnet; eine Auflagenhöhe ist nicht angegeben.
   *[other] { in-words-first } Nummern sind verzeichnet; eine Auflagenhöhe ist nicht angegeben.
}
numbers-key = Eine verlinkte Nummer führt zu ihrem Abzug.
edition-unnumbered = Nicht nummeriert.
declared-key = Bekannt: alle Abzüge des Drucks, Probedrucke eingeschlossen. Gedruckt: die Zahl der gedruckten Abzüge. Nummern verzeichnet: die auf Abzügen gelesenen Nummern.
declared-perhaps-key = ?: Die Höhe ist nur berichtet oder nur als wahrscheinlich oder möglich angegeben.
declared-by = Quelle:
of-other-size = Mit abweichender Auflagenhöhe nummeriert:
others-say = Nach anderen Quellen:
others-say-printed = Zahl der gedruckten Abzüge nach anderen Quellen:
met-twice = Auf mehr als einem Abzug verzeichnet:
above-declared = Über der angegebenen Auflage nummeriert:

# Census: was neben den Zahlen steht.
bars-key = Gefüllte Balken: sichere Mindestzahl. Umriss: mögliche Höchstzahl.
class-edition = Auflagendrucke
class-proof = Probedrucke
class-counterproof = Gegendrucke
class-maculature = Makulaturabzüge
class-cancelled = von einer entwerteten Druckform
class-fragment = Fragmente
class-other = andere Arten
set-apart = Abgelehnt und zurückgezogen
set-apart-note = Abgelehnte oder zurückgezogene Graphiken, gesondert aufgeführt. Ihre Abzüge zählen in keiner Summe dieser Seite.
set-apart-own = Diese Graphik ist abgelehnt oder zurückgezogen; ihre Abzüge zählen in keiner Summe des Verzeichnisses.
census-by-series = Nach Folgen
series-together = Folge
on-one-paper = Auf einem Bogen
on-one-paper-note = Jedes Bild zählt für sich.
of-one-set = Aus einem Satz
of-one-set-note = Jeder Abzug eines Satzes zählt.
recorded-not-counted = Verzeichnet, nicht gezählt
by-state-and-printing = Nach Zustand und Druck
holders-by-state = Nach Sammlung und Zustand
caption-holders-by-state = Abzüge je Sammlung nach Zustand
counted-withdrawn = zurückgezogen
format-census-csv = Die Zahlen als Tabelle (CSV)
format-editions-csv = Die angegebenen Auflagen als Tabelle (CSV)
format-bibtex = BibTeX
format-csl-json = CSL-JSON
format-ris = RIS
format-holder-csv = CSV
format-lido = Die Datensätze ihrer Abzüge (LIDO)
format-oai = Alle Datensätze für Sammelprogramme (OAI-PMH)
format-holder-json = JSON
format-holder-xlsx = Mappe (XLSX)
size-kilobytes = { $n } kB
size-megabytes = { $n } MB
format-image-service = Die Fotografie als Bilddienst (IIIF)
format-linked-art = Linked Art
format-linked-art-provenance = Provenienz in Linked Art
format-linked-art-words = Wortlaut in Linked Art
format-iiif-manifest = IIIF-Manifest
format-iiif-collection = IIIF-Sammlung

# Census: wie viele es geben mag, und wann Blätter nachgewiesen sind.
how-many-survive = Geschätzte Gesamtzahl
survival-estimate = Schätzungsweise gab es mindestens { $estimate } nachweisbare Abzüge, seither zerstörte eingeschlossen (95-%-Intervall: { $interval }). Das zeigt nicht, dass ein Abzug fehlt.
survival-from-to = { $low } bis { $high }
survival-size-recorded = Geschätzt wird nicht, weil für mindestens einen Druck eine Auflagenhöhe angegeben oder verzeichnet ist; mit ihr sind die bekannten Abzüge zu vergleichen.
survival-never-met = { $n ->
    [one] Geschätzt wird nicht: Zu einem bekannten Abzug ist kein Anlass verzeichnet.
   *[other] Geschätzt wird nicht: Zu { in-words } bekannten Abzügen ist kein Anlass verzeichnet.
}
survival-too-few = Geschätzt wird nicht: Dazu sind mindestens fünf Abzüge mit einem verzeichneten Anlass nötig.
survival-all-once = Geschätzt wird nicht: Kein Abzug ist bei einem zweiten Anlass verzeichnet.
survival-few-once = Geschätzt wird nicht: Dazu sind mindestens zwei Abzüge nötig, die nur bei einem Anlass verzeichnet sind. Das zeigt nicht, dass es keine weiteren gibt.
survival-ground = { $n ->
    [one] Grundlage ist ein Abzug, der bei mindestens einem Anlass verzeichnet ist
   *[other] Grundlage sind { $n } Abzüge, die bei mindestens einem Anlass verzeichnet sind
}, davon { $once } bei einem und { $twice } bei zweien. Ein Anlass ist ein Jahr mit einem Nachweis, einer Ausstellung, einem Besitzwechsel oder einer Leihe.
survival-says-little = Fast jeder Abzug ist nur bei einem Anlass verzeichnet; die Schätzung sagt daher kaum mehr, als dass es weitere geben kann.
open-pairs-count-twice = Einträge, die denselben Abzug beschreiben können, zählen hier einzeln.
survival-caution-1 = Das Verfahren (Chao1, verzerrungskorrigiert; Chao 1984 und 1987) gibt eine untere Schranke. Sie kommt der Wahrheit nur nahe, wenn selten nachgewiesene Abzüge den nie nachgewiesenen gleichen.
survival-caution-2 = Es setzt voraus, dass Anlässe unabhängig sind; aber Auktionskataloge zitieren einander, und Museumsangaben werden abgeschrieben.
survival-caution-3 = Es setzt eine feste Zahl voraus, während Abzüge verloren gehen und gefunden werden. Private Eigentümer können ganze Gruppen verbergen, und ein berühmter Zustand wird öfter nachgewiesen als andere.
survival-caution-4 = Zwei Einträge zu einem Abzug vergrößern die Schätzung, eine falsche Zusammenlegung verkleinert sie.
survival-caution-5 = Für die Abzüge eines einzelnen Druckes kennen wir keine veröffentlichte Anwendung des Verfahrens.
seen-over-time = Wann sie nachgewiesen sind
seen-key = Gefüllt: zum ersten Mal nachgewiesene Abzüge. Hohl: spätere Anlässe schon nachgewiesener Abzüge. Je Abzug zählt ein Jahr einmal.
seen-caption = Anlässe nach Jahrzehnt
seen-first = Zum ersten Mal nachgewiesen
seen-again = Wieder nachgewiesen
decade-column = Jahre
decade = { $from }–{ $to }
occasions-undated = { $n ->
    [one] Ein Nachweis nennt kein Jahr.
   *[other] { in-words-first } Nachweise nennen kein Jahr.
}
as-a-table = Als Tabelle

# Glossar.
principles-of-catalogue = Grundsätze dieses Verzeichnisses
principle-states = Was einen Zustand ausmacht
principle-counts = Was gezählt wird
principle-measures = Wie gemessen wird
terms-of-techniques = Techniken
terms-of-kinds = Arten von Abzügen
terms-of-papers = Papiere
terms-of-transfers = Arten des Übergangs
terms-of-roles = Rollen
terms-of-relations = Beziehungen zwischen Graphiken
terms-of-documents = Arten von Dokumenten
papers = Papiere
matrix-fate-extant = erhalten
matrix-fate-cancelled = entwertet
matrix-fate-destroyed = zerstört
matrix-fate-unknown = nicht bekannt

# Der Bestimmungsschlüssel.
identification-key = Bestimmungsschlüssel
key-of = Bestimmungsschlüssel zu { $design }
key-candidates = { $n ->
    [one] Verzeichnet ist ein Zustand in einem Druck
   *[other] Verzeichnet sind { in-words } Möglichkeiten von Zustand und Druck
}
key-asks = Zustand und Druck eines Blattes finden, Merkmal für Merkmal.
key-in-numbers = Der Schlüssel
key-how = Beginnen Sie bei 1. Sehen Sie das Blatt an, wählen Sie die Zeile, die zutrifft, und gehen Sie zu ihrer Nummer, bis Sie zu einem Ergebnis kommen.
key-unseen = Was beschnitten, montiert oder vom Rahmen verdeckt ist, ist nicht zu sehen und gilt nicht als fehlend: Folgen Sie dort jeder Zeile und behalten Sie jedes Ergebnis. Trifft keine Zeile zu, so stimmt nichts hier Verzeichnetes überein: Gehen Sie zurück oder melden Sie das Blatt.
key-confirm = Bevor Sie sich auf ein Ergebnis verlassen, prüfen Sie die dort genannten Merkmale und vergleichen Sie das Blatt mit allem, was dieser Zustand und dieser Druck zeigen.
key-is-no-authentication = Der Schlüssel sagt, womit ein Blatt nach Kenntnis dieses Verzeichnisses vereinbar ist; er bestätigt keine Echtheit.
key-handling = Nehmen Sie nie ein Blatt aus dem Rahmen, heben Sie nie ein Passepartout und befeuchten Sie nie ein Wasserzeichen, um eine Frage zu beantworten.
key-from = von
key-go-to = weiter zu
key-tells-nothing = Nichts hier Verzeichnetes unterscheidet sie. Ein Blatt dieser Graphik ist
key-not-told-apart = Kein verzeichnetes Merkmal unterscheidet diese.
key-stops = Weitere Merkmale unterscheiden einige davon, doch würde der Schlüssel für Papier zu lang.
key-confirmed-by = zu bestätigen durch { $points }
key-state-confirmed-by = der Zustand ist zu bestätigen durch { $points }
key-printing-not-decided = kein entscheidendes Merkmal unterscheidet diesen Druck von { $printings }: zu vergleichen sind { $points }
key-measured-otherwise = Nochmals messen: Papier schrumpft, und eine Abweichung bis { $twice } schließt keinen davon aus. Darüber hinaus stimmt nichts hier Verzeichnetes überein: vielleicht ist es ein Nachschnitt, eine Reproduktion oder ein noch nicht beschriebener Zustand oder Druck
key-agrees-with-nothing = Nichts hier Verzeichnetes stimmt überein: jede Antwort nochmals prüfen; vielleicht ist es ein Nachschnitt, eine Reproduktion oder ein noch nicht beschriebener Zustand oder Druck
key-points = Zu prüfende Merkmale
key-measure = Gemessen; zwei Messungen derselben Sache können um { $tolerance } voneinander abweichen.
details-from = Ausschnitte aus { $picture } und aus den Abzügen, deren Nummern darauf stehen; die Rechte stehen auf deren Seiten
detail-of-point = Wo zu suchen ist: { $ask }
key-examine = Ein Blatt untersuchen
key-how-form = Antworten Sie in beliebiger Folge und nur, was Sie sehen. Können Sie sich zwischen Antworten nicht entscheiden, so kreuzen Sie beide an. Lassen Sie aus, was beschnitten, gerahmt oder vom Passepartout verdeckt ist: Es gilt nicht als fehlend. { key-handling }
key-nearest = Nichts Verzeichnetes passt. Von den wenigsten Merkmalen ausgeschlossen:
key-next = Als Nächstes ansehen:
key-next-worth = lässt { $bits } Bit Aufschluss erwarten
key-next-none = Nichts weiter Verzeichnetes verspricht mehr Aufschluss.
key-look-here = als Nächstes ansehen
key-measured = gemessen
key-how-sure = wie sicher
key-not-ticked = keines der angekreuzten
key-not-these = nicht { $values }
key-weight = Gewicht { $weight }
key-with-states = mit { $states }
key-left-all = Nichts ist ausgeschlossen.
key-left-some = { $left } von { $all } Möglichkeiten bleiben.
key-left-one = Eine von { $all } Möglichkeiten bleibt.
key-left-none = Kein verzeichneter Zustand und Druck passt zu allen Antworten. Prüfen Sie sie, oder bezeichnen Sie eine unsichere als wahrscheinlich. Bestätigen sich die Antworten, ist es vielleicht ein noch nicht beschriebener Zustand.
key-mixed = Die ausschließenden Merkmale liegen auf verschiedenen Druckformen: Vielleicht sind die Druckformen in verschiedenen Zuständen.
key-not-understood = Ein Teil der Adresse dieser Seite wurde nicht verstanden und bleibt unberücksichtigt: { $what }
key-begin-again = Von vorn
key-kept = Die Adresse dieser Seite enthält die Antworten und lässt sich weitergeben.
consistent-with = vereinbar mit { $candidates }
another-number = eine andere Zahl
number-between = { $low } bis { $high } { $unit }
number-exactly = { $number } { $unit }
number-below = weniger als { $number } { $unit }
number-above = mehr als { $number } { $unit }

# Der Untersuchungsbogen.
examination-sheet = Untersuchungsbogen
examination-sheet-of = Untersuchungsbogen zu { $design }
examination-sheet-why = dieselben Merkmale auf Papier, zum Ankreuzen vor dem Blatt.
examination-sheet-print = Zum Ausdrucken und Ausfüllen mit Bleistift, das Blatt vor Augen. Danach:
sheet-points = Zu prüfende Merkmale, das aufschlussreichste zuerst
sheet-instrument = Gemessen mit
sheet-image-size = Darstellung, Höhe × Breite
sheet-platemark-size = Plattenrand, Höhe × Breite
sheet-sides = Beide Seiten des Blattes
sheet-recto = Vorderseite: Aufschriften und Marken
sheet-verso = Rückseite: Aufschriften und Marken
sheet-side-how = Wortlaut, Mittel, Stelle auf dem Blatt; Stempel mit Größe und Farbe.
sheet-watermark = Wasserzeichen und Papier
sheet-watermark-how = Eine Skizze mit Größe und Richtung der Kettlinien, wo Licht durchscheint.
sheet-condition-how = Ränder, Risse, Fehlstellen, Flecken, Ausbesserungen, Unterlage, Montierung.
sheet-not-seen = Was nicht zu sehen war
sheet-not-seen-how = Wo und warum: beschnitten, montiert, gerahmt, aufgezogen.
sheet-examined-by = Untersucht von
sheet-seen-how = Untersucht
sheet-unframed = ungerahmt
sheet-framed = gerahmt oder montiert
sheet-both-sides = beide Seiten
sheet-from-photograph = nach einer Fotografie
sheet-size-of = Blatt, Höhe × Breite
sheet-how = Kreuzen Sie an, was Sie sehen, zwei Kästchen, wenn Sie unentschieden sind. Lassen Sie leer, was Sie nicht untersucht haben.
cannot-be-seen = nicht zu sehen
only-probable = nur wahrscheinlich
only-possible = nur möglich

# Was Zustände unterscheidet, und was aus dem Gesehenen folgt.
told-by = von { $state } zu unterscheiden durch { $points }
told-by-nothing = an keinem verzeichneten Merkmal von { $state } zu unterscheiden
smallest-set-of-all = Diese Merkmale zusammen unterscheiden alle Zustände und Drucke: { $points }.
smallest-set = Diese Merkmale zusammen unterscheiden alle Zustände und Drucke, die sich unterscheiden lassen: { $points }.
gathered-set = Diese Merkmale zusammen unterscheiden alle Zustände und Drucke, die sich unterscheiden lassen, vielleicht auch schon weniger: { $points }.
set-weighs = { $n ->
    [one] Davon schließt { $points } nichts aus und macht nur eines wahrscheinlicher als ein anderes.
   *[other] Davon schließen { $points } nichts aus und machen nur eines wahrscheinlicher als ein anderes.
}
not-separated = Kein verzeichnetes Merkmal unterscheidet { $pairs }.
only-made-likelier = Kein entscheidendes Merkmal unterscheidet { $pairs }: Das Gesehene macht das eine wahrscheinlicher und schließt das andere nicht aus.
pair-not-separated = { $one } von { $other }
not-separated-more = { $n ->
    [one] Ein weiteres Paar ist nicht zu unterscheiden.
   *[other] { in-words-first } weitere Paare sind nicht zu unterscheiden.
}
descent = Abfolge
descent-said = { $state } aus { $before }
order-of-printing = Reihenfolge des Drucks
order-by-wear = nach der Abnutzung
order-by-states = nach der Folge der Zustände
order-by-dates = nach Daten
order-state = Zustand { $state }
order-stage = { $point }: { $stage }
order-printed = Druck von { $date }
order-date-of-printing = { $date } ({ $printing })
order-date-of-sheet = { $date } (das Blatt selbst)
order-reason-wear = Abnutzung: { $matrix } ({ $point }: { $before }, dann { $after })
order-reason-states = Zustand { $before } geht Zustand { $after } voraus
order-reason-dates = Daten: { $before } vor { $after }
order-after = nach { $before }: { $reasons }
order-more = { $n ->
    [one] und einem weiteren
   *[other] und { in-words } weiteren
}
order-contradicts = ohne Reihenfolge
order-in-a-cycle = { $sheets } lassen sich nicht ordnen, weil sich das Verzeichnete widerspricht
order-cycle-step = { $before } vor { $after }: { $reasons }
order-unlike-wear = { $one } und { $other } haben beide die Nummer { $number } ({ $printing }), doch { $other } zeigt mehr Abnutzung: { $wear }; ist das richtig gesehen, sind es zwei Blätter, und eine Nummer ist vielleicht falsch gelesen oder wurde zweimal vergeben
order-unlike-wear-two = { $one } und { $other } haben beide die Nummer { $number } ({ $printing }), und { $other } zeigt mehr Abnutzung: { $wear }; sie sind als zwei Blätter verzeichnet, also ist eine Nummer vielleicht falsch gelesen oder wurde zweimal vergeben
order-without = nicht eingeordnet, weil das Gesehene der Bestimmung widerspricht: { $sheets }
wear-of-no-matrix = Druckformen
order-how = Ein Abzug wurde vor einem anderen gedruckt, wenn eine Druckform auf ihm weniger abgenutzt ist (auf beiden sicher gesehen, und kein verzeichnetes Merkmal dieser Druckform ist in ihren Zuständen verschieden), wenn sein Zustand vorausgeht oder wenn sein Druck oder sein eigenes Datum endete, bevor das andere begann. Ungefähre, unsichere und offene Daten ergeben keine Reihenfolge. Abzüge, die kein Schritt verbindet, können in jeder Reihenfolge gedruckt sein.
seen-excludes-all = das Gesehene schließt jeden hier verzeichneten Zustand und Druck aus
seen-nothing-telling = An keinem Merkmal, das Zustände oder Drucke unterscheidet, wurde etwas gesehen.
perhaps-mixed = die Merkmale, die die nächsten ausschließen, liegen auf verschiedenen Druckformen: vielleicht sind die Druckformen in verschiedenen Zuständen
would-settle = als Nächstes ansehen: { $points }
nothing-would-settle = Kein verzeichnetes Merkmal, das noch zu prüfen wäre, unterscheidet die verbleibenden.
would-settle-unmounted = wenn eine Restauratorin oder ein Restaurator das Blatt aus der Montierung löst, ansehen: { $points }

# Was für Zustände und Drucke spricht.
evidence = Was die Beobachtungen aussagen
evidence-tells-nothing = Das Gesehene unterscheidet weder Zustände noch Drucke.
evidence-states-alike = Das Gesehene unterscheidet die Zustände nicht.
evidence-printings-alike = Das Gesehene unterscheidet die Drucke nicht.
evidence-departs = das Blatt weicht von dem, was für seine Bestimmung verzeichnet ist, nur in Merkmalen ab, die von Blatt zu Blatt wechseln oder hinzugefügt werden; das widerspricht der Bestimmung nicht: { $points }
evidence-unrecorded = nur { $candidate } passt zu dem Verzeichneten; was es zeigt, ist nicht verzeichnet bei: { $points }
evidence-matrix = Druckform
evidence-wear = Abnutzung
evidence-blocks = Stöcke
evidence-paper = Papier
evidence-inking = Einfärbung
evidence-mark = Marke
evidence-of-paper-date = Datum des Papiers
evidence-recorded = verzeichnet:
evidence-no-weight = nicht gewichtet
evidence-seen-and-recorded = { $ask } { $seen }; verzeichnet: { $recorded }
bearing-excludes = schließt aus
bearing-for = dafür
bearing-against = dagegen
fit-best = passt am besten
fit-level = gleichauf mit dem besten
fit-behind = dahinter
fit-far-behind = weit dahinter
fit-very-far-behind = sehr weit dahinter
fit-excluded = ausgeschlossen
fit-no-printing = in keinem verzeichneten Druck, der passt
fit-nothing-to-compare = nichts Vergleichbares verzeichnet
fit-nothing-told = nicht unterschieden
evidence-folded = { $n ->
    [one] eine weitere Beobachtung
   *[other] { in-words } weitere Beobachtungen
}
no-state-of-this = kein Zustand dieser Graphik
no-recorded-printing = kein verzeichneter Druck
printing-with-states = { $printing }, mit { $states }
evidence-change = Was daran etwas ändern würde
evidence-first-of-alike = , die erste von { $n } gleich gewichteten Möglichkeiten,
evidence-is-recorded-with = ist verzeichnet mit:
evidence-would-exclude = { $ask } { $recorded }; alles andere schließt es aus
evidence-would-weigh = { $ask } { $recorded }; alles andere spricht dagegen
evidence-look-again = nicht sicher gesehen: nochmals ansehen
evidence-if-unmounted = zu sehen, wenn eine Restauratorin oder ein Restaurator das Blatt aus der Montierung löst
evidence-more-points = { $n ->
    [one] und ein weiteres Merkmal
   *[other] und { in-words } weitere Merkmale
}
evidence-always = Es kann auch nichts davon sein: ein Nachschnitt, eine Reproduktion oder ein noch nicht beschriebener Zustand oder Druck.
evidence-copy-untold = nichts ist verzeichnet, was sie unterscheidet
evidence-grades = Nur die Druckform kann ausschließen; Abnutzung, Stöcke, Papier, Einfärbung und Marken wechseln oder können hinzukommen und werden gewichtet. Gleichauf mit dem besten: Das Gesehene ist beim besten höchstens 3-mal so wahrscheinlich; dahinter: höchstens 20-mal; weit dahinter: höchstens 150-mal; sehr weit dahinter: mehr. Die Irrtumsraten hinter diesen Zahlen sind Arbeitsannahmen.
examine-by-key = Ein Blatt mit dem Schlüssel untersuchen
in-our-terms = hier { $ours }
number-not-in-concordance = eine Nummer, die nicht in der Konkordanz steht
number-is-an-error = was die Konkordanz einen Irrtum nennt
mixed-and-key = Der Schlüssel vergleicht ganze Zustände; dieses Blatt gilt als von Druckformen in verschiedenen Zuständen gedruckt.

# Merkmale, ihre Detailreihen und ihre Töne.
title-point = { $number }, { $point }
point-kind-presence = Vorhanden oder nicht
point-kind-choice = Eine von mehreren Antworten
point-kind-count = Eine Anzahl
point-kind-measure = Ein Maß in { $unit }, auf { $tolerance } { $unit } genau
point-kind-stage = Eine Stufe der Abnutzung
point-rests-on = beruht auf: { $ground }
point-answers = Antworten
point-bearing = Was eine Antwort entscheidet
point-decides = Eine sichere Antwort schließt jeden Zustand und jeden Druck aus, für den hier anderes verzeichnet ist. Begründung: { $why }
point-strays = Etwa { $n } von { $of } Blättern weichen hier von dem Verzeichneten ab; eine Antwort wird daher nur gewichtet und schließt nichts aus.
point-shown = Was dort zu sehen ist
separates = Unterscheidet
separates-from = { $one } von { $others }
strips = Details
strips-how = Jede Reihe zeigt ein Merkmal auf allen ausgerichteten Fotografien, in der Folge der Zustände und Drucke.
strips-more = Diese Merkmale unterscheiden am meisten; die Seite jedes anderen Merkmals zeigt seine eigenen Details.
detail-in-picture = in der Fotografie
detail-in-picture-about = „In der Fotografie“ öffnet sie an dieser Stelle. Der Link enthält die Stelle als Content State (IIIF), sodass auch andere Betrachter sie öffnen können.
strip-of = Abzug für Abzug: { $ask }
strip-of-state = Details, { $state }
alt-detail = Detail von { $key }: { $ask }
not-aligned = { $sheet } fehlt hier: Die Fotografie ließ sich nicht ausrichten ({ $why }).
part-not-shown = { $sheet } fehlt hier: Die Fotografie reicht nicht bis zu dieser Stelle.
refusal-little-to-compare = zu wenig darauf ist vergleichbar
refusal-nothing-in-common = keine übereinstimmende Stelle gefunden
refusal-no-plausible-fit = die einzige Deckung verlangt eine unmögliche Verzerrung
refusal-few-agree = zu wenige Stellen stimmen überein
refusal-one-part-only = die übereinstimmenden Stellen liegen nur in einem Teil
refusal-ties-disagree = die von Hand gesetzten Passpunkte widersprechen einander
refusal-not-tried = sie gehört nicht zu denen, die am Referenzbild ausgerichtet werden
refusal-other-view = sie zeigt eine andere Seite, eine Einzelheit oder anderes Licht
refusal-other-design = die Abzüge sind von verschiedenen Blättern
taken-to-be = Bestimmt als
shown-by-these = Zustand und Druck zeigen
tones = Töne
tone-caution = Aus Fotografien gelesene Töne sind keine Farbmessung: Licht, Kamera, Papier, Verblassen und Alter verändern sie. Sie stehen hier zum Betrachten, nie als Beleg; nichts in diesem Verzeichnis beruht auf ihnen.
tone-table = Mittel von L*, a* und b* (CIELAB, D65) mit Standardabweichung; unbedrucktes Papier derselben Fotografie ist 100, 0, 0
tone-difference = CIEDE2000 von { $sheet }
tone-base = an ihm sind die anderen gemessen
paper-bare = Unbedrucktes Papier
paper-given = nach dem Eintrag
paper-found = neben dem Bild gefunden

# Dokumente.
document = Dokument
documents-brief = Briefe, Geschäftsbücher, Verträge, Etiketten und andere Papiere, die etwas über die Drucke belegen, jedes mit dem, was es aussagt.
documents-by-date = Nach Datum
documents-by-kind = Nach Art
documents-other = Andere Dokumente
document-to = an { $to }
document-by-to = { $by } an { $to }
document-kept = Aufbewahrt
document-language = Sprache
document-tells = Was es aussagt
document-words = Wortlaut
document-rights = Rechte am Wortlaut
document-transcription = Abschrift
document-translation = Übersetzung, { $language }
document-state-of = Zustand { $part } von { $design }
document-part-of = { $part } von { $design }
documents-kept = Dokumente in Verwahrung
documents-by-them = Verfasst oder ausgestellt
documents-to-them = Erhalten
documents-on-them = Was Dokumente aussagen
evidence-document = Dokument
evidence-document-for = Dokument zu diesem Blatt

# Namen der Sprachen, nach ihren Kennungen (BCP 47).
language-ar = Arabisch
language-bg = Bulgarisch
language-cs = Tschechisch
language-da = Dänisch
language-de = Deutsch
language-el = Griechisch
language-en = Englisch
language-es = Spanisch
language-et = Estnisch
language-fa = Persisch
language-fi = Finnisch
language-fr = Französisch
language-he = Hebräisch
language-hr = Kroatisch
language-hu = Ungarisch
language-it = Italienisch
language-ja = Japanisch
language-ko = Koreanisch
language-la = Latein
language-lt = Litauisch
language-lv = Lettisch
language-nl = Niederländisch
language-no = Norwegisch
language-pl = Polnisch
language-pt = Portugiesisch
language-ro = Rumänisch
language-ru = Russisch
language-sk = Slowakisch
language-sl = Slowenisch
language-sr = Serbisch
language-sv = Schwedisch
language-tr = Türkisch
language-uk = Ukrainisch
language-yi = Jiddisch
language-zh = Chinesisch
