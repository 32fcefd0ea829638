# Die Wörter der Seiten, deutsch. Das Theme eines Verzeichnisses darf jedes ändern.

# Der Rahmen.
catalogue = Werkverzeichnis
contents = Inhalt
on-this-page = Auf dieser Seite
skip-to-text = Zum Text
to-cite = Zitierweise
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
owners = Frühere Eigentümer
overview-provenance = Provenienz, 1933–1945
chronology = Chronologie
exhibitions = Ausstellungen
literature = Literatur
concordance = Konkordanz
glossary = Glossar
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
ways-in = Wege hinein
way-designs = Die Graphiken ansehen
way-designs-about = Alle Graphiken im Bild, in der Reihenfolge des Verzeichnisses.
way-identify = Ein Blatt bestimmen
way-identify-about = Die Graphik nach dem Bild wählen und angeben, was zu sehen ist: Der Schlüssel nennt die passenden Zustände und Drucke.
way-census = Der Census
all-prints = { $n ->
    [one] Die Graphik
   *[other] Alle { $n } Graphiken
}
as-list = { $title }, als Liste
views = Ansichten
view-wall = Bilder
view-list = Liste
not-pictured = keine Fotografie
holder-wall = Fotografien
identify-brief = Welche Graphik ist es? Ihr Bild führt zu ihrem Bestimmungsschlüssel, der fragt, was auf dem Blatt zu sehen ist, und die passenden Zustände und Drucke nennt.
identify-which = Graphiken mit Bestimmungsschlüssel
identify-without = Graphiken ohne Schlüssel
identify-number = Nach einer Nummer
identify-by-number = Eine Nummer dieses oder eines älteren Verzeichnisses oder eine Inventarnummer führt zum Eintrag: { $resolve }. Titel, Namen und die Wörter von Aufschriften findet die { $search }.
about-texts = Das Verzeichnis
about-artist = Künstler und Werk
about-use = Zum Gebrauch
about-keyboard = Auf der Tastatur
keyboard-neighbours = ← und → auf der Seite einer Graphik oder eines Abzugs: zurück und weiter.
keyboard-search = / auf jeder Seite: Suche.

# Suche. `search-number-words`: was vor einer Nummer geschrieben wird und zu keiner gehört.
search = Suche
search-field = Im Verzeichnis suchen
search-hint = Titel in jeder Schrift, Nummern, Inventarnummern, Namen, Marken und die Wörter aller Texte. Die Taste / führt von jeder Seite zur Suche.
search-failed = Das Suchverzeichnis konnte nicht geladen werden. Die Register brauchen kein Skript.
search-no-script = Die Suche braucht ein Skript, das dieser Browser nicht ausführt. Diese Register führen zu jedem Eintrag:
search-results = Ergebnisse
search-indexes = Register
search-narrow = Ergebnisse eingrenzen
search-found = Gefunden: { $n }
search-first = Die ersten { $n }; mit mehr Buchstaben werden es weniger
search-some = Nichts enthält alle diese Wörter. Mit einigen davon gefunden: { $n }
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
search-by-kind = Art
search-by-state = Zustand
search-by-printing = Druck
search-by-holder = Standort
search-by-technique = Technik
search-by-decade = Jahrzehnt
search-kind-design = Entwurf
search-kind-state = Zustand
search-kind-printing = Druck
search-kind-impression = Abzug
search-kind-mark = Marke
search-kind-holder = Standort
search-kind-person = Person
search-kind-work = Literatur
search-kind-earlier = Nummer eines früheren Verzeichnisses
search-kind-exhibition = Ausstellung
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
resolve-results = Was sie bedeuten
resolve-found = Verweise, die hier etwas bedeuten: { $n } von { $of }
resolve-asked = Verweis
resolve-certainty = Sicherheit
resolve-reading = Bedeutung und Adresse
resolve-why = Warum
resolve-nothing = bedeutet in diesem Verzeichnis nichts
resolve-about = Für andere Websites
resolve-about-text = Die Namen, Nummern und Schlüssel, nach denen Verweise gelesen werden, sind eine Datei, { $file }, die andere Websites und Datenbanken verwenden können: Sie hat Schlüssel und Adresse jedes Entwurfs, Zustands, Drucks und Abzugs und die Nummern früherer Verzeichnisse; die Inventarnummern stehen in Teilen daneben.
resolve-state-words = zustand zust zst von state st of
resolve-accession-words = inv inventar inventarnummer inventory acc accession
resolve-edition-words = ausgabe auflage edition ed
resolve-why-number = Nummer in diesem Verzeichnis
resolve-why-key = Schlüssel in diesem Verzeichnis
resolve-why-former-key = früherer Schlüssel
resolve-why-edition = Nummer oder Zählung der Ausgabe { $edition }
resolve-why-other-total = Zählung in diesem Verzeichnis, das eine andere Zahl von Zuständen hat
resolve-why-not-there = „{ $text }“ ist dort nicht erfasst
resolve-why-accession = Inventarnummer
resolve-why-bare-accession = Inventarnummer ohne ihre Satzzeichen
resolve-why-former-accession = frühere Inventarnummer
resolve-why-earlier = { $work }, { $number }
resolve-why-earlier-not-there = { $work }, { $number }; die Konkordanz hat dort kein „{ $text }“
resolve-why-row = die Nummer selbst, in der Liste jenes Verzeichnisses
resolve-why-title = Titel
resolve-why-former-title = früherer Titel
resolve-why-name = Name
resolve-why-former-name = früherer Name
resolve-why-isil = ISIL
resolve-why-beginning = ein Titel oder Name beginnt so
resolve-see = siehe { $records }
resolve-why-joined = { $record } ist ein Eintrag zu diesem Blatt

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

# Zählen.
count-designs = { $n ->
    [one] { $n } Entwurf
   *[other] { $n } Entwürfe
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

# Namen.
untitled = Ohne Titel
private-collection = Privatbesitz
name-withheld = Name nicht genannt
withheld-owner = jemand, dessen Name nicht genannt ist
withheld-somebody = jemand, dessen Name nicht genannt ist
private-in-text = Privatbesitz, { $country }
a-private-collection = { $collection }
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

pressed-hand = von Hand abgerieben
pressed-press = in der Presse gedruckt

# Abbildungen.
photograph-by = Foto: { $credit }.
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

# Die Titelseite und die Entwürfe.
what-it-is = Ein Werkverzeichnis der Druckgraphik mit dem Bestand aller bekannten Abzüge
edited-by = herausgegeben von { $editors }
the-catalogue = Das Verzeichnis
introduction-in-full = Die ganze Einleitung
how-sheets-are-named = Ein Blatt heißt nach der Nummer seines Entwurfs und seiner eigenen, wie { $example }; diese Namen ändern sich nicht.
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
   *[other] { $n } Graphiken, nach Nummern
}
designs-apart = Abgelehnt und zurückgezogen
no-impression-known = kein Abzug bekannt
undated = Ohne Datum

# Die Seite eines Entwurfs.
entry = Eintrag
cited-as = Zitiert als
date = Datum
makers = Urheber
technique = Technik
size = Maße
size-of-states = { $figure }, das Maß von { $states }
size-measured = { $n ->
    [one] { $range } ({ $of }, an einem Blatt gemessen)
   *[other] { $range } ({ $of }, an { $n } Blättern gemessen)
}
series-one = Folge
formerly-titled = Früher betitelt
place-in-series = { $series }, Nr. { $position }
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
of-platemark = Plattenrand
from-blocks = { $n ->
    [one] { $technique } von einem Stock
   *[other] { $technique } von { $n } Stöcken
}
from-plates = { $n ->
    [one] { $technique } von einer Platte
   *[other] { $technique } von { $n } Platten
}
from-stones = { $n ->
    [one] { $technique } von einem Stein
   *[other] { $technique } von { $n } Steinen
}
from-screens = { $n ->
    [one] { $technique } von einem Sieb
   *[other] { $technique } von { $n } Sieben
}
from-some-matrices = { $n ->
    [one] { $technique } von einer Druckform
   *[other] { $technique } von { $n } Druckformen
}
on-paper = auf { $papers }
in-inks = in { $inks }
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
caption-states = Worauf zu achten ist, Zustand für Zustand
states-compared = Zustände im Vergleich
point = Merkmal
points = Merkmale
other-points = Ferner zu beachten
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
caption-printings = Worauf zu achten ist, Druck für Druck
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
   *[other] { $n } Abzüge gedruckt
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
lacks = ohne { $matrices }
lot = Los { $lot }
dealer-number = Nr. { $lot }
last-recorded = zuletzt nachgewiesen: { $where }
last-recorded-in-trade = zuletzt im Handel nachgewiesen: { $where }
last-recorded-owner = zuletzt in Privatbesitz nachgewiesen
last-recorded-agent = zuletzt im Handel nachgewiesen
last-recorded-keeper = zuletzt bei einem nicht genannten Verwahrer nachgewiesen
show-all = Alle zeigen
some-answer = { $shown } von { $all } entsprechen dem.
none-answers = Von { $all } entspricht keiner alledem.
all-of-them = alle
not-said = nicht gesagt
holder = Standort
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
   *[other] { $n } Abzüge bekannt
}
sheets-known-between = { $n ->
    [one] Höchstens ein Abzug bekannt
   *[other] Mindestens { $least }, höchstens { $n } Abzüge bekannt
}
sheets-known-not-below = { $n ->
    [one] Höchstens ein Abzug bekannt
   *[other] Nicht weniger als { $least }, höchstens { $n } Abzüge bekannt
}
of-which-located = { $figure } nachgewiesen
may-be-one-sheet = { $one } und { $other } sind vielleicht ein Blatt.
census-of-design = Der Bestand dieses Entwurfs
comparisons = Vergleiche
related = Verwandte Entwürfe
named-as-related-by = Als verwandt genannt bei
here = Hier
commentary = Kommentar
mentioned-in = Erwähnt in
see = Siehe { $records }

# Die Seite eines Abzugs.
sheet = Blatt
inventory = Inv.-Nr. { $number }
owner = Eigentümer
accession = Inv.-Nr.
formerly = früher { $what }
credit-line = Herkunftsvermerk
status = Verbleib
kind = Art
taken-from = Abgenommen von
number = Nummer
paper = Papier
inks = Druckfarben
pulled = Gedruckt
watermark = Wasserzeichen: { $watermark }
margins = Ränder: { $margins }
printed-side-recto = auf der Vorderseite gedruckt
printed-side-verso = auf der Rückseite gedruckt
printed-side-edge = auf der Kante gedruckt
printed-side-mount = auf der Unterlage gedruckt
blocks-printed = Gedruckte Stöcke
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
name-of = auf den Namen { $person }
applied-by = angebracht von { $person }
looked-for = Gesucht und nicht gefunden: { $what }.
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
observed = Was zu sehen war
seen-there = Gesehen
observed-certainly = Was zu sehen war; sicher, wo nichts anderes gesagt ist
but-shows = aber gezeigt:
count-disagree = { $n ->
    [one] Eine Beobachtung stimmt nicht mit der Bestimmung überein
   *[other] { $n } Beobachtungen stimmen nicht mit der Bestimmung überein
}
more-pictures = Weitere Abbildungen
provenance = Provenienz
provenance-key = Das Früheste zuerst. Ein Strichpunkt sagt, dass das Blatt unmittelbar an den Nächsten ging; ein Punkt, dass es nicht so war oder nicht bekannt ist. Vermittler stehen in runden Klammern, Lebensdaten in eckigen.
provenance-as-recorded = Wie verzeichnet, Eintrag für Eintrag
bought-in = zurückgegangen
as-keeper = in Verwahrung
probably = wahrscheinlich
possibly = möglicherweise
probably-this-sheet = wahrscheinlich dieses Blatt
possibly-this-sheet = möglicherweise dieses Blatt
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
caution = Vorsicht
years-1933-1945 = 1933–1945
years-throughout = Für die ganze Zeit, in der es bestanden haben kann, { $time }, ist ein Eigentümer verzeichnet
years-uncertain = Für die ganze Zeit, in der es bestanden haben kann, { $time }, ist ein Eigentümer verzeichnet, für keinen Teil davon mit Gewissheit
years-perhaps = Für die ganze Zeit, in der es bestanden haben kann, { $time }, ist ein Eigentümer verzeichnet, für einen Teil davon nicht mit Gewissheit
years-partly = Für einen Teil der Zeit, { $time }, sind Eigentümer verzeichnet
years-silent = Für die Zeit, { $time }, ist hier kein Eigentümer verzeichnet
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
years-next-bought-in = kein Eigentümer verzeichnet, bis es angeboten und nicht verkauft wurde, { $date } ({ $who })
years-next-in-trade = kein Eigentümer verzeichnet, bis es im Handel war, { $date } ({ $who })
years-perhaps-same = vielleicht dasselbe Blatt wie { $other }: { $entries }
years-perhaps-same-alone = vielleicht dasselbe Blatt wie { $other }
years-manner-unknown = Wie es den Eigentümer wechselte, ist nicht verzeichnet
years-see-sheet = wie es den Eigentümer wechselte, ist nicht verzeichnet: siehe das Blatt
years-see-note = siehe die Anmerkung zum Blatt
years-see-written = siehe die von Hand geschriebene Provenienz des Blattes
years-only-open-days = Aufgeführt sind nur Tage ohne sicheren Eigentümer.
years-handled = In diesen Jahren im Handel: { $entries }
years-entries-only = Hier zählen nur die Einträge, nicht der von Hand geschriebene Text
years-may-be-later = Es ist vielleicht erst später gedruckt
years-probably-later = Es ist wahrscheinlich später gedruckt, { $by }
years-nobody = kein Eigentümer verzeichnet
years-perhaps-owner = vielleicht { $owner }
years-acquired = erworben { $date }
years-acquired-some-day = erworben { $date }, der Tag ist nicht verzeichnet
years-acquired-not-recorded = seit wann, ist nicht verzeichnet
years-held = Eigentümer bis { $date }
years-held-some-day = Eigentümer bis { $date }, der Tag ist nicht verzeichnet
years-held-not-recorded = bis wann, ist nicht verzeichnet
years-caution = Lücken sind üblich und bedeuten kein Unrecht; ein Nachweis ohne Lücken ist keine Entlastung. Wer über ein bestimmtes Blatt entscheidet, sollte eigens nachforschen und am Ort des Blattes fachkundigen Rechtsrat einholen.
provenance-years-brief = Was hier über die Eigentümer jedes Abzugs vom 30. Januar 1933 bis 8. Mai 1945 verzeichnet ist. Nach später gedruckten oder vorher zerstörten Abzügen wird nicht gefragt; Abzüge unbekannter Druckzeit sind eingeschlossen. Dass kein Eigentümer verzeichnet ist, entlastet einen Abzug nicht.
years-head-silent = Für diese Jahre kein Eigentümer verzeichnet
years-head-partly = Eigentümer verzeichnet, auch nur vielleicht, für einen Teil dieser Jahre
years-head-perhaps = Eigentümer durchgehend verzeichnet, für manche Tage nicht mit Gewissheit
years-head-uncertain = Eigentümer durchgehend verzeichnet, für keinen Tag mit Gewissheit
years-head-throughout = Eigentümer durchgehend verzeichnet
years-mark-change-recorded = Wechsel des Eigentümers verzeichnet
years-mark-change-possible = Wechsel des Eigentümers möglich
years-mark-may-be-later = vielleicht später gedruckt
years-mark-probably-later = wahrscheinlich später gedruckt, { $by }
years-not-asked = { $n ->
    [one] Nach einem Eintrag wird nicht gefragt: Sein Blatt ist später gedruckt oder vorher zerstört, oder er ist zurückgezogen, ein Nachschnitt oder eine Reproduktion.
   *[other] Nach { $n } Einträgen wird nicht gefragt: Ihre Blätter sind später gedruckt oder vorher zerstört, oder sie sind zurückgezogen, Nachschnitte oder Reproduktionen.
}

sightings = Gesehen
notes = Anmerkungen
other-records = Andere Einträge
stolen-caution = Hier als gestohlen verzeichnet. Das Verzeichnis äußert sich nicht zum Eigentum: Wem dieses Blatt begegnet, der wende sich an den zuletzt verzeichneten Eigentümer oder an die Behörden, wie es das örtliche Recht verlangt.
against-what-was-seen = entgegen dem, was gesehen wurde
is-the-same-sheet = Dieser Eintrag und { $other } sind ein Blatt.
one-sheet-of-records = { $records } sind Einträge eines Blattes. Eine Nummer in geschweiften Klammern nennt den Eintrag, aus dem eine Zeile stammt.
choices = Eines von diesen
taken-over = Fortgeführt von { $successor }; dort stehen die Blätter, die hier waren.
recorded-with = verzeichnet bei { $holder }
has-moved = Diese Seite steht jetzt hier: { $page }.
leads-to-its-sheet = { $record } und { $sheet } sind ein Blatt; es ist unter { $sheet } beschrieben.
record-of-this-sheet = Aus dem Eintrag { $record }
same-sheet-as = Dasselbe Blatt wie { $other }
maybe-same-sheet-as = Vielleicht dasselbe Blatt wie { $other }
other-sheet-than = Sicher ein anderes Blatt als { $other }
shares-sheet-with = Auf demselben Papier wie { $other }
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
together = Zusammen
verdict-differ = verschieden
verdict-agree = gleich
verdict-cannot-be-told = nicht zu entscheiden
count-differ = { $n ->
    [0] Sie unterscheiden sich an keinem der { $all } beobachteten Merkmale.
    [one] Sie unterscheiden sich an einem von { $all } Merkmalen.
   *[other] Sie unterscheiden sich an { $n } von { $all } Merkmalen.
}
nothing-observed = An keinem Merkmal dieser Blätter ist etwas verzeichnet.
not-looked-at = Bei keinem verzeichnet:
ground = Grund
ground-page = wie die Seite
ground-light = hell
ground-dark = dunkel

# Abzüge aufeinandergelegt.
comparison-chosen = Abzüge vergleichen
comparison-of = { $design }: Abzüge im Vergleich
compare-any = Abzüge vergleichen
compare-with-another = Mit einem anderen Abzug vergleichen
compare-which = Abzüge wählen
compare-none = keinen wählen
compare-choose = Wählen Sie zwei bis vier.
compare-choose-one-more = Wählen Sie noch einen.
compare-four-chosen = Mehr als vier gehen nicht: nehmen Sie einen weg, um einen anderen zu wählen.
compare-how = Ansicht
compare-how-to-read = Wie ist das zu lesen?
compare-side = nebeneinander
compare-edge = Trennlinie
compare-blink = abwechselnd
compare-overlay = überlagert
compare-difference = Unterschiede
compare-first = Erster
compare-second = Zweiter
compare-edge-between = { $first } links der Kante, { $second } rechts davon
compare-opacity-of = { $second } über { $first }
compare-now = { $number }
compare-stop = anhalten
compare-go = weiter
compare-step = wechseln
compare-pace = Tempo
compare-slow = langsam
compare-quick = schnell
compare-is-still = Ihr System wünscht keine Bewegung: schalten Sie von Hand weiter.
compare-working = Wird verglichen …
compare-difference-of = Dunkel: dunkler auf { $second }. Hell: dunkler auf { $first }. Mittelgrau: kein Unterschied in der Linie.
compare-difference-how = Verglichen werden nur Linien und Kanten: Eine Fläche, die nur ein Blatt hat, zeigt sich an ihrer Kante. Wohin nur eine Aufnahme reicht, ist nichts gezeichnet. Wie satt die Farbe ist und wie die Aufnahmen belichtet sind, ist ausgeglichen; Verblassen, Flecken und eine ungenaue Lage sind es nicht. Ein Unterschied ist hier ein Anlass, die Blätter anzusehen, und für sich kein Beleg.
compare-difference-share = Linien und Kanten unterscheiden sich auf { $percent } der Fläche.
compare-difference-share-of-image = Linien und Kanten unterscheiden sich auf { $percent } des Druckbilds.
compare-unreadable = Die Bildpunkte lassen sich nicht lesen: Browser verbieten es auf Seiten, die von der Festplatte geöffnet werden.
compare-no-picture = Von { $number } gibt es keine Aufnahme.
compare-not-laid = Die Aufnahme von { $number } lässt sich nicht auf die anderen legen: { $why }.
compare-side-only = Sie sind nur nebeneinander zu sehen, nicht in einem Maßstab.
recorded-on-no-sheet = Auf keinem Blatt festgehalten:

# Ein Bild von Nahem.
view-closer-look = Näher ansehen
view-closer = näher
view-further = weiter weg
view-whole = das Ganze
view-left = nach links
view-right = nach rechts
view-up = nach oben
view-down = nach unten
view-close = schließen
view-copy-link = Link zu dieser Stelle kopieren
view-copy-state = Stelle für einen anderen Betrachter kopieren (IIIF)
view-bar = Der Balken ist so lang wie
view-is-whole = Das Ganze ist im Blick.
view-is-closer = { $times }-mal so groß wie zuerst.
view-keys = Tasten: + und − näher und weiter weg, 0 das Ganze, die Pfeile zum Verschieben. Das Rad vergrößert, sobald das Bild angeklickt ist.

# Werte der Merkmale.
value-present = vorhanden
value-absent = fehlt
value-not = nicht
value-not-visible = nicht sichtbar
value-not-applicable = nicht anwendbar
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
basis-report = nach Bericht
cited-number = Nr. { $number }
relation-same = dasselbe
relation-covers-ours-design = umfasst diesen Entwurf
relation-covers-ours-state = umfasst diesen Zustand
relation-covers-ours-printing = umfasst diesen Druck
relation-part-of-ours-design = Teil dieses Entwurfs
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
stands-taken-over = fortgeführt

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
date-day = { $day }. { $month } { $year }
date-day-month = { $day }. { $month }
date-day-alone = { $day }.
date-month = { $month } { $year }
date-some-day = ein Tag im { $month } { $year }
date-some-month = ein Monat des Jahres { $year }
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
sheets-between = mindestens { $least } und höchstens { $n } Abzüge
sheets-not-below = nicht weniger als { $least } und höchstens { $n } Abzüge
not-below-numbers = nicht weniger als { $least }, höchstens { $most }
between-numbers = mindestens { $least }, höchstens { $most }
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
    [one] von { $n } Entwurf
   *[other] von { $n } Entwürfen
}
impressions-of-designs = { $impressions } { $designs }
all = Alle

# Listen von Abzügen.
impression = Abzug
accession-number = Inv.-Nr.
printing-and-kind = Druck, Art
remarks = Bemerkungen

# Standorte.
holders-brief = Nach Ort, dann Einrichtung. { $holders } an { $cities }.
holders-private = Privatsammlungen
holders-trade = Handel
holders-without-place = Ort nicht verzeichnet
now-part-of = jetzt { $holder }
holder-kind-museum = Museum
holder-kind-library = Bibliothek
holder-kind-archive = Archiv
holder-kind-foundation = Stiftung
holder-kind-private = Privatsammlung
holder-kind-trade = Handel
holder-kind-unknown = Art nicht bekannt
formerly-named = Früher
took-over = Übernommen
continued-by = Fortgeführt von
isil = ISIL
web = Web
owned-by = Eigentum: { $owner }
owned-elsewhere = Eigenes, anderswo verwahrt
kept-at = Verwahrt
impressions-here = Abzüge hier
formerly-owned = Ehemals im Eigentum
stolen-from-here = Von hier gestohlen
formerly-kept = Ehemals für andere verwahrt
formerly-here = Früher hier
handled-here = Durch den Handel hier
matrices-here = Stöcke und Platten hier
exhibitions-here = Ausstellungen hier
now-at = jetzt { $where }
named-printer = Druckte
named-publisher = Verlegte
named-mark = Namenszug auf
named-applied-mark = Marken gesetzt auf
named-mark-user = Benutzte die Marke
named-sighting = Gesehen
named-said = Meinungen und Aussagen zu
to-do = Noch zu tun
to-do-not-identified = Nicht bestimmt
to-do-not-measured = Nicht gemessen
to-do-no-photograph = Keine Fotografie hier
to-do-no-verso = Keine Fotografie der Rückseite hier
to-do-years = Für 1933–1945 ganz oder teilweise kein Eigentümer verzeichnet

# Personen.
people-brief = { $n ->
    [one] Eine Person, unter jeder Form des Namens.
   *[other] { $n } Personen, unter jeder Form ihrer Namen.
}
active = Tätig
in-this-catalogue = In diesem Verzeichnis
is-artist = schuf diese Drucke
is-editor = Herausgeber
authority = Normdaten
made-by-them = Entwürfe
in-no-series = Einzelblätter
by-where-now = nach heutigem Standort
unless-said = { $what }, wo nichts anderes gesagt ist
printed-by-them = Gedruckt
published-by-them = Verlegt
owned-by-them = Im Besitz gewesen
kept-by-them = Verwahrt
handled-by-them = Im Handel vermittelt
writings = Schriften

# Chronologie.
year-by-year = Jahr für Jahr
event-born = { $person } geboren
event-died = { $person } stirbt
event-active = { $person } tätig
event-only-state = Einziger Zustand von { $design }
event-states = { $n ->
    [one] Zustand { $states } von { $design }
   *[other] Zustände { $states } von { $design }
}
event-printing = { $printing }: { $design }
event-matrix = { $matrix } { $fate }: { $design }
event-exhibition = Ausstellung: { $exhibition }

# Konkordanz und Literatur.
concordance-brief = { $n ->
    [one] Unsere Nummern neben denen eines früheren Verzeichnisses, in beiden Richtungen.
   *[other] Unsere Nummern neben denen von { $n } früheren Verzeichnissen, in beiden Richtungen.
}
from-our-numbers = Von unseren Nummern
from-their-numbers = Von { $work }
our-number = Hier
their-number = Dort
its-numbers = Seine Nummern
its-number = Nummer
relation = Verhältnis
not-described-there = dort nicht beschrieben
concordance-dash = Ein Strich: dort nicht beschrieben.
earlier-catalogues = Frühere Verzeichnisse
literature-cited = Zitierte Literatur
reference = Titelaufnahme
authors-here = In diesem Verzeichnis
cited-in-designs = Zitiert bei Entwürfen
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
number-there = Nr. dort
now-kept = Jetzt

# Marken.
owners-brief = Als Eigentümer vor dem heutigen Standort verzeichnet; Vermittler und Verwahrer für sich. Keine Aussage über das Eigentumsrecht.
owners-agents = Vermittler
owners-keepers = Verwahrer
owners-numbers = Frühere Inventarnummern
owners-numbers-elsewhere = An einem Standort, der nicht verzeichnet ist
marks-brief = Was auf einzelne Blätter von Hand oder mit Stempel gesetzt wurde, und was der Papiermacher in ihnen ließ.
mark-shared = Eine Marke, die mehrere benutzten
marks-shared = Von mehreren benutzt
marks-shared-note = allein sagt eine solche Marke weder Eigentümer noch Zeit
marks-signature = Signaturen
marks-stamp = Stempel
marks-seal = Siegel
marks-collector = Sammlermarken
marks-inscription = Aufschriften
marks-other = Andere Marken
marks-watermark = Wasserzeichen
mark-own-hand = eigenhändig
mark-applied-by = gesetzt von { $name }
mark-not-described = nicht beschrieben
mark-colour = Farbe
mark-repertory = Verzeichnis
mark-users = Benutzt von
mark-user = Wer
mark-used = Wann
mark-put-on = Gesetzt auf
mark-years-unknown = Jahre nicht bekannt
mark-caution = Mehrere benutzten diese Marke. Für sich allein beweist sie keinen von ihnen: weder Benutzer noch Zeit.
mark-conditions = Zustände der Marke
mark-condition = Zustand der Marke
mark-condition-when = Wann
mark-conditions-note = Die Marke veränderte sich mit der Zeit. Wo ihr Zustand auf einem Blatt verzeichnet ist, begrenzt er, wann sie gesetzt wurde, nicht wann das Blatt gedruckt wurde.
mark-in-condition = Zustand der Marke: { $condition }
mark-seen-on = Zu sehen auf
mark-printings = Drucke und Daten
mark-printing = Druck
mark-printed = Gedruckt
mark-printing-unknown = Druck nicht bestimmt
mark-applied = Gesetzt
mark-sheets = Abzüge, auf denen sie verzeichnet ist

# Titel.
titles-brief = Jeder Titel in jeder Sprache, ein Artikel am Anfang bleibt außer Betracht.
title-kind-translated = übersetzt
title-kind-former = früherer Titel

# Bestand.
census-brief = Bekannt: { $sheets }, { $as-of }.
census-brief-undated = Bekannt: { $sheets }.
census-of = Bestand von { $design }
how-counted = Wie wir zählen
by-design = Nach Entwurf
by-status = Nach Verbleib
by-state = Nach Zustand
by-printing = Nach Druck
by-kind = Nach Art
by-place = Nach Orten
whole = Auf einen Blick
whole-key = Jedes Quadrat ist ein Abzug. Eine Zeile ist ein Entwurf; eine Lücke trennt seine Drucke. Einträge, die denselben Abzug betreffen können, zählen einzeln.
whole-key-of-design = Jedes Quadrat ist ein Abzug. Einträge, die denselben Abzug betreffen können, zählen einzeln.
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
column-kind = Art
column-holder = Standort
column-place = Land, Ort und Standort
number-short = Nr.
title = Titel
known = Bekannt
sheets = Abzüge
records = Einträge
caption-crossing = Abzüge nach Zustand und Druck
crossing-open = Ein Abzug, der zu einem oder einem anderen gehören kann, zählt bei jedem.
crossing-not-firm = Unter einer Zahl steht, wie viele ihrer Abzüge nur wahrscheinlich oder möglicherweise so bestimmt sind (nicht sicher), und bei wie vielen das Gesehene der Bestimmung widerspricht (widersprochen). Die anderen sind sicher.
not-firm-key = Nicht sicher: nur wahrscheinlich oder möglicherweise so bestimmt. Widersprochen: das Gesehene widerspricht der Bestimmung. Die Zahlen zählen diese Abzüge mit.
contradicted-fits = { $sheet } ist als { $called } bestimmt; was gesehen wurde, passt zu { $states }
contradicted-fits-none = { $sheet } ist als { $called } bestimmt; was gesehen wurde, passt zu keinem verzeichneten Zustand
of-them-uncertain = { $n ->
    [one] { $n } nicht sicher
   *[other] { $n } nicht sicher
}
of-them-contradicted = { $n ->
    [one] { $n } widersprochen
   *[other] { $n } widersprochen
}
of-them-standing = davon { $n } { $standing } ({ $records })
none-known = keines bekannt
not-in-this-state = nicht in diesem Zustand gedruckt
counted-not-shown = { $n ->
    [one] { $n } gezählt, nicht gezeigt
   *[other] { $n } gezählt, nicht gezeigt
}
not-in-these-rows = { $n ->
    [one] { $n } gezählt, nicht gezeigt; er steht in keiner Zeile dieser Tabelle.
   *[other] { $n } gezählt, nicht gezeigt; sie stehen in keiner Zeile dieser Tabelle.
}
designs-of-no-impression = { $n ->
    [one] Ein weiterer Entwurf steht nicht in dieser Tabelle: Von ihm ist kein Abzug bekannt.
   *[other] { $n } weitere Entwürfe stehen nicht in dieser Tabelle: Von ihnen ist kein Abzug bekannt.
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
   *[other] { $n } davon mit höheren Nummern
}
source-not-given = ohne Quellenangabe
design = Entwurf
declared = Angegeben
numbers-printed = Gedruckt
numbers-met = Nummern verzeichnet
numbers-above = Darüber
numbers-repeated = Doppelt verzeichnet
may-be-one-sheet-head = Vielleicht ein Blatt
are-one-sheet = Ein Blatt, mehrere Einträge
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
    [one] Eine der { $declared } Nummern ist verzeichnet.
   *[other] { $n } der { $declared } Nummern sind verzeichnet.
}
edition-met-of-perhaps = { $n ->
    [0] Keine Nummer ist verzeichnet.
    [one] Eine von vielleicht { $declared } Nummern ist verzeichnet.
   *[other] { $n } von vielleicht { $declared } Nummern sind verzeichnet.
}
edition-met = { $n ->
    [one] Eine Nummer ist verzeichnet; eine Auflagenhöhe ist nicht angegeben.
   *[other] { $n } Nummern sind verzeichnet; eine Auflagenhöhe ist nicht angegeben.
}
numbers-key = Eine Nummer als Verweis führt zu ihrem Abzug.
edition-unnumbered = Nicht nummeriert.
declared-key = Bekannt: alle Abzüge des Drucks, Probedrucke eingeschlossen. Gedruckt: die Zahl der gedruckten. Nummern: die auf Abzügen gelesenen.
declared-perhaps-key = ?: Die Höhe ist nur berichtet oder nur als wahrscheinlich oder möglich angegeben.
declared-by = Quelle:
of-other-size = Auf eine andere Höhe nummeriert, die niemand angibt:
others-say = Andere nennen
others-say-printed = Andere nennen als Zahl der gedruckten
met-twice = Auf mehr als einem Abzug verzeichnet:
above-declared = Über der angegebenen Auflage nummeriert:

# Bestand: was neben den Zahlen steht.
bars-key = Ein Balken ist bis zum unteren Ende der Zahl gefüllt und von dort bis zu ihrem oberen Ende hohl.
class-edition = Auflagendrucke
class-proof = Probedrucke
class-counterproof = Gegendrucke
class-maculature = Makulaturabzüge
class-cancelled = von einer entwerteten Druckform
class-fragment = Fragmente
class-other = anderer Art
set-apart = Nicht anerkannt
set-apart-note = Abgelehnte oder zurückgezogene Entwürfe, getrennt aufgeführt. Ihre Abzüge zählen in keiner Summe dieser Seite.
set-apart-own = Dieser Entwurf ist nicht anerkannt; seine Abzüge zählen in keiner Summe des Katalogs.
census-by-series = Nach Folge
series-together = Folge
on-one-paper = Auf einem Bogen
on-one-paper-note = Jedes Bild zählt für sich.
of-one-set = Aus einem Satz
of-one-set-note = Jeder Abzug eines Satzes zählt.
recorded-not-counted = Verzeichnet, nicht gezählt
by-state-and-printing = Nach Zustand und Druck
holders-by-state = Nach Aufbewahrung und Zustand
caption-holders-by-state = Abzüge je Aufbewahrungsort und Zustand
counted-withdrawn = zurückgezogen
format-census-csv = Die Zahlen als Tabelle (CSV)
format-editions-csv = Die angegebenen Auflagen als Tabelle (CSV)
format-bibtex = BibTeX
format-csl-json = CSL-JSON
format-ris = RIS
format-holder-csv = CSV
format-lido = Die Datensätze ihrer Blätter (LIDO)
format-oai = Alle Datensätze für Sammelprogramme (OAI-PMH)
format-holder-json = JSON
size-kilobytes = { $n } kB
size-megabytes = { $n } MB
format-image-service = Die Aufnahme als Bilddienst (IIIF)
format-linked-art = Linked Art
format-linked-art-provenance = Provenienz in Linked Art
format-iiif-manifest = IIIF-Manifest
format-iiif-collection = IIIF-Sammlung

# Bestand: wie viele es geben mag, und wann Blätter nachgewiesen sind.
how-many-survive = Wie viele es geben mag
survival-estimate = Abzüge, die hätten nachgewiesen werden können, zerstörte eingeschlossen: eine untere Schranke von { $estimate } (95 %: { $interval }). Sie zeigt nicht, dass ein Abzug fehlt.
survival-from-to = { $low } bis { $high }
survival-size-recorded = Geschätzt wird nicht, weil für mindestens einen Druck eine Auflagenhöhe angegeben oder festgehalten ist; mit ihr sind die bekannten Abzüge zu vergleichen.
survival-never-met = { $n ->
    [one] Geschätzt wird nicht: zu einem bekannten Abzug ist kein Anlass verzeichnet.
   *[other] Geschätzt wird nicht: zu { $n } bekannten Abzügen ist kein Anlass verzeichnet.
}
survival-too-few = Geschätzt wird nicht: es braucht fünf Abzüge mit einem verzeichneten Anlass.
survival-all-once = Geschätzt wird nicht: kein Abzug ist bei einem zweiten Anlass verzeichnet.
survival-few-once = Geschätzt wird nicht: es braucht zwei Abzüge, die nur bei einem Anlass verzeichnet sind. Das zeigt nicht, dass es keine weiteren gibt.
survival-ground = { $n ->
    [one] Ein Abzug ist bei wenigstens einem Anlass verzeichnet
   *[other] { $n } Abzüge sind bei wenigstens einem Anlass verzeichnet
}, davon { $once } bei einem, { $twice } bei zweien. Ein Anlass ist ein Jahr mit einem Nachweis, einer Ausstellung, einem Besitzwechsel oder einer Leihe.
survival-says-little = Fast jeder Abzug ist nur bei einem Anlass verzeichnet. Die Schätzung sagt dann kaum mehr, als dass es weitere geben mag.
open-pairs-count-twice = Je zwei Einträge, die ein Blatt sein können, gelten hier als zwei Abzüge.
survival-caution-1 = Das Verfahren (Chao1, verzerrungskorrigiert; Chao 1984 und 1987) gibt eine untere Schranke. Sie ist der Wahrheit nur nahe, wenn selten nachgewiesene Abzüge nie nachgewiesenen gleichen.
survival-caution-2 = Es nimmt Anlässe für unabhängig; Auktionskataloge zitieren aber einander, und Museumsangaben werden abgeschrieben.
survival-caution-3 = Es nimmt die Zahl für fest, während Abzüge verloren gehen und gefunden werden. Private Sammlungen können ganze Gruppen verbergen, und ein berühmter Zustand wird öfter nachgewiesen als andere.
survival-caution-4 = Zwei Einträge zu einem Abzug vergrößern die Schätzung, eine falsche Zusammenlegung verkleinert sie.
survival-caution-5 = Für die Abzüge eines einzelnen Druckes kennen wir keine veröffentlichte Anwendung des Verfahrens.
seen-over-time = Wann sie nachgewiesen sind
seen-key = Gefüllt: zum ersten Mal nachgewiesene Abzüge. Hohl: spätere Anlässe schon nachgewiesener Abzüge. Je Abzug zählt ein Jahr einmal.
seen-caption = Anlässe nach Jahrzehnt
seen-first = Zum ersten Mal
seen-again = Wieder
decade-column = Jahre
decade = { $from }–{ $to }
occasions-undated = { $n ->
    [one] Ein Nachweis nennt kein Jahr.
   *[other] { $n } Nachweise nennen kein Jahr.
}
as-a-table = Als Tabelle

# Glossar.
principles-of-catalogue = Grundsätze dieses Verzeichnisses
principle-states = Was einen Zustand ausmacht
principle-counts = Was zählt
principle-measures = Wie gemessen wird
terms-of-techniques = Techniken
terms-of-kinds = Arten von Abzügen
terms-of-papers = Papiere
terms-of-transfers = Arten des Übergangs
terms-of-roles = Rollen
terms-of-relations = Verhältnisse zwischen Entwürfen
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
   *[other] Verzeichnet sind { $n } Verbindungen von Zustand und Druck
}
key-asks = welcher Zustand und Druck ein Blatt sein kann.
key-in-numbers = Der Schlüssel
key-how = Man beginnt bei 1, sieht das Blatt an, wählt die Zeile, die zutrifft, und geht zu ihrer Nummer weiter, bis gesagt wird, womit das Blatt vereinbar ist.
key-unseen = Was beschnitten, montiert oder vom Rahmen verdeckt ist, ist nicht zu sehen und gilt nicht als fehlend: dort folgt man jeder Zeile und behält, was man erreicht. Trifft keine Zeile zu, so stimmt nichts hier Verzeichnetes überein: man geht zurück oder meldet das Blatt.
key-confirm = Bevor man sich auf ein Ende verlässt, sehe man die dort genannten Merkmale an und vergleiche das Blatt mit allem, was dieser Zustand und dieser Druck zeigen.
key-is-no-authentication = Der Schlüssel sagt, womit ein Blatt nach Kenntnis dieses Katalogs vereinbar ist; er bestätigt keine Echtheit.
key-handling = Um eine Frage zu beantworten, nehme man keinen Druck aus dem Rahmen, hebe kein Passepartout und befeuchte kein Wasserzeichen.
key-from = von
key-go-to = weiter zu
key-tells-nothing = Nichts hier Verzeichnetes unterscheidet das eine vom anderen. Ein Blatt dieses Entwurfs ist
key-not-told-apart = Kein verzeichnetes Merkmal unterscheidet sie.
key-stops = Weitere Merkmale unterscheiden einige davon, doch würde der Schlüssel für Papier zu lang.
key-confirmed-by = zu bestätigen durch { $points }
key-state-confirmed-by = der Zustand ist zu bestätigen durch { $points }
key-printing-not-decided = kein entscheidendes Merkmal trennt diesen Druck von { $printings }: zu vergleichen sind { $points }
key-measured-otherwise = Nochmals messen: Papier schrumpft, und eine Abweichung bis { $twice } spricht gegen keinen davon. Darüber hinaus stimmt nichts hier Verzeichnetes überein: vielleicht ist es ein Nachschnitt, eine Reproduktion oder ein noch nicht beschriebener Zustand oder Druck
key-agrees-with-nothing = Nichts hier Verzeichnetes stimmt überein: jede Antwort nochmals prüfen; vielleicht ist es ein Nachschnitt, eine Reproduktion oder ein noch nicht beschriebener Zustand oder Druck
key-points = Was anzusehen ist
key-measure = Gemessen; zwei Messungen derselben Sache weichen um { $tolerance } ab.
details-from = Ausschnitte aus { $picture } und aus den Abzügen, deren Nummern darauf stehen; die Rechte stehen auf deren Seiten
detail-of-point = Wo zu suchen ist: { $ask }
key-examine = Ein Blatt untersuchen
key-how-form = In beliebiger Folge antworten, und nur, was zu sehen ist; mehreres ankreuzen, wo es das eine oder das andere ist. Was beschnitten, montiert oder vom Rahmen verdeckt ist, ist nicht zu sehen und gilt nicht als fehlend. { key-handling }
key-nearest = Nichts Verzeichnetes passt; am wenigsten spricht gegen
key-next = Als nächstes ansehen:
key-next-worth = lässt { $bits } Bit Aufschluss erwarten
key-next-none = Nichts weiter Verzeichnetes verspricht mehr Aufschluss.
key-look-here = als nächstes ansehen
key-measured = gemessen
key-how-sure = wie sicher
key-not-ticked = nichts vom Angekreuzten
key-not-these = nicht { $values }
key-weight = Gewicht { $weight }
key-with-states = mit { $states }
key-left-all = Nichts ist ausgeschlossen.
key-left-some = { $left } von { $all } Verbindungen von Zustand und Druck sind nicht ausgeschlossen.
key-left-one = Eine von { $all } Verbindungen von Zustand und Druck ist nicht ausgeschlossen.
key-left-none = Das Gesehene schließt jeden hier verzeichneten Zustand und Druck aus. Diese Merkmale nochmals ansehen. Bestätigen sie sich, ist es vielleicht ein noch nicht beschriebener Zustand.
key-mixed = Die ausschließenden Merkmale liegen auf verschiedenen Druckformen: vielleicht sind die Stöcke in verschiedenem Zustand.
key-not-understood = Die Adresse dieser Seite enthält, was dieser Schlüssel nicht kennt: { $what }
key-begin-again = Von vorn
key-kept = Die Adresse dieser Seite behält die Antworten und lässt sich weitergeben.
consistent-with = vereinbar mit { $candidates }
another-number = eine andere Zahl
number-between = { $low } bis { $high } { $unit }
number-exactly = { $number } { $unit }
number-below = weniger als { $number } { $unit }
number-above = mehr als { $number } { $unit }

# Der Untersuchungsbogen.
examination-sheet = Untersuchungsbogen
examination-sheet-of = Untersuchungsbogen zu { $design }
examination-sheet-why = dieselben Merkmale auf Papier, vor dem Druck anzukreuzen.
examination-sheet-print = Zum Ausdrucken; vor dem Druck mit Bleistift auszufüllen. Danach:
sheet-points = Was anzusehen ist, das Aufschlussreichste zuerst
sheet-instrument = Gemessen mit
sheet-image-size = Darstellung, Höhe × Breite
sheet-platemark-size = Plattenrand, Höhe × Breite
sheet-sides = Beide Seiten des Blattes
sheet-recto = Vorderseite: Beschriftungen und Marken
sheet-verso = Rückseite: Beschriftungen und Marken
sheet-side-how = Wortlaut, Mittel, Stelle auf dem Blatt; Stempel mit Größe und Farbe.
sheet-watermark = Wasserzeichen und Papier
sheet-watermark-how = Eine Skizze mit Größe und Richtung der Kettlinien, wo Licht durchscheint.
sheet-condition-how = Ränder, Risse, Fehlstellen, Flecken, Ausbesserungen, Unterlage, Montierung.
sheet-not-seen = Was nicht zu sehen war
sheet-not-seen-how = Wo und warum: beschnitten, montiert, gerahmt, aufgezogen.
sheet-examined-by = Untersucht von
sheet-seen-how = Gesehen
sheet-unframed = ungerahmt
sheet-framed = gerahmt oder montiert
sheet-both-sides = beide Seiten
sheet-from-photograph = nach einer Fotografie
sheet-size-of = Blatt, Höhe × Breite
sheet-how = Ankreuzen, was zu sehen ist; zwei Kästchen für das eine oder das andere. Nichts ankreuzen, was nicht angesehen wurde.
cannot-be-seen = nicht zu sehen
only-probable = nur wahrscheinlich
only-possible = nur möglich

# Was Zustände unterscheidet, und was aus dem Gesehenen folgt.
told-by = von { $state } zu unterscheiden durch { $points }
told-by-nothing = kein verzeichnetes Merkmal unterscheidet ihn von { $state }
smallest-set-of-all = Diese Merkmale zusammen unterscheiden alle Zustände und Drucke: { $points }.
smallest-set = Diese Merkmale zusammen unterscheiden alle Zustände und Drucke, die sich unterscheiden lassen: { $points }.
gathered-set = Diese Merkmale zusammen unterscheiden alle Zustände und Drucke, die sich unterscheiden lassen, vielleicht auch schon weniger: { $points }.
set-weighs = { $n ->
    [one] Davon schließt { $points } nichts aus und macht nur eines wahrscheinlicher als ein anderes.
   *[other] Davon schließen { $points } nichts aus und machen nur eines wahrscheinlicher als ein anderes.
}
not-separated = Kein verzeichnetes Merkmal trennt { $pairs }.
only-made-likelier = Kein entscheidendes Merkmal trennt { $pairs }: das Gesehene macht das eine wahrscheinlicher und schließt das andere nicht aus.
pair-not-separated = { $one } von { $other }
not-separated-more = { $n ->
    [one] Ein weiteres Paar ist nicht getrennt.
   *[other] { $n } weitere Paare sind nicht getrennt.
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
   *[other] und { $n } weiteren
}
order-contradicts = ohne Reihenfolge
order-in-a-cycle = { $sheets } lassen sich nicht ordnen, weil sich das Verzeichnete widerspricht
order-cycle-step = { $before } vor { $after }: { $reasons }
order-unlike-wear = { $one } und { $other } haben beide die Nummer { $number } ({ $printing }), doch { $other } zeigt mehr Abnutzung: { $wear }; ist das richtig gesehen, sind es zwei Blätter, und eine Nummer ist vielleicht verlesen oder wurde zweimal vergeben
order-unlike-wear-two = { $one } und { $other } haben beide die Nummer { $number } ({ $printing }), und { $other } zeigt mehr Abnutzung: { $wear }; sie sind als zwei Blätter verzeichnet, also ist eine Nummer vielleicht verlesen oder wurde zweimal vergeben
order-without = nicht eingeordnet, weil das Gesehene der Bestimmung widerspricht: { $sheets }
wear-of-no-matrix = Druckstöcke
order-how = Ein Blatt wurde vor einem anderen gedruckt, wenn ein Stock auf ihm weniger abgenutzt ist (beides sicher gesehen, und kein verzeichnetes Merkmal dieses Stocks ist in ihren Zuständen verschieden), wenn sein Zustand vorausgeht oder wenn seine Auflage oder sein eigenes Datum endete, bevor das andere begann. Ungefähre, unsichere und offene Daten ordnen nichts. Was kein Schritt verbindet, kann in jeder Reihenfolge gedruckt sein.
seen-excludes-all = das Gesehene schließt jeden hier verzeichneten Zustand und Druck aus
seen-nothing-telling = An keinem Merkmal, das Zustände oder Drucke unterscheidet, wurde etwas gesehen.
perhaps-mixed = die Merkmale, die die nächsten ausschließen, liegen auf verschiedenen Druckformen: vielleicht sind die Stöcke in verschiedenem Zustand
would-settle = als Nächstes ansehen: { $points }
nothing-would-settle = Kein verzeichnetes Merkmal, das noch anzusehen wäre, unterscheidet die übrigen.
would-settle-unmounted = würde eine Restauratorin oder ein Restaurator das Blatt ausrahmen, wäre anzusehen: { $points }

# Was für Zustände und Drucke spricht.
evidence = Was die Beobachtungen besagen
evidence-tells-nothing = Das Gesehene unterscheidet keinen Zustand und keinen Druck vom anderen.
evidence-states-alike = Das Gesehene unterscheidet die Zustände nicht.
evidence-printings-alike = Das Gesehene unterscheidet die Drucke nicht.
evidence-departs = das Blatt weicht von dem ab, was für seine Bestimmung verzeichnet ist, aber bei Merkmalen, die von Blatt zu Blatt wechseln oder hinzugefügt werden; das widerspricht der Bestimmung nicht: { $points }
evidence-unrecorded = von dem Verzeichneten passt nur { $candidate }; was es zeigt, ist nicht verzeichnet bei: { $points }
evidence-matrix = Druckform
evidence-wear = Abnutzung
evidence-blocks = Stöcke
evidence-paper = Papier
evidence-inking = Einfärbung
evidence-mark = Marke
evidence-of-paper-date = Alter des Papiers
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
   *[other] { $n } weitere Beobachtungen
}
no-state-of-this = kein Zustand dieses Entwurfs
no-recorded-printing = kein verzeichneter Druck
printing-with-states = { $printing }, mit { $states }
evidence-change = Was daran etwas ändern würde
evidence-first-of-alike = , die erste von { $n } gleich gewichteten Möglichkeiten,
evidence-is-recorded-with = ist verzeichnet mit:
evidence-would-exclude = { $ask } { $recorded }; alles andere schließt es aus
evidence-would-weigh = { $ask } { $recorded }; alles andere spricht dagegen
evidence-look-again = nicht sicher gesehen: nochmals ansehen
evidence-if-unmounted = zu sehen, wenn eine Restauratorin oder ein Restaurator das Blatt ausrahmte
evidence-more-points = { $n ->
    [one] und ein weiteres Merkmal
   *[other] und { $n } weitere Merkmale
}
evidence-always = Es kann auch nichts davon sein: ein Nachschnitt, eine Reproduktion oder ein noch nicht beschriebener Zustand oder Druck.
evidence-copy-untold = nichts ist verzeichnet, was sie unterscheidet
evidence-grades = Nur was die Druckform zeigt, schließt aus; Abnutzung, Stöcke, Papier, Einfärbung und Marken wechseln oder können hinzukommen und wägen. Gleichauf mit dem besten: das Gesehene ist beim besten höchstens 3-mal so wahrscheinlich; dahinter: höchstens 20-mal; weit dahinter: höchstens 150-mal; sehr weit dahinter: mehr. Die Irrtumsraten dahinter sind Arbeitsannahmen.
examine-by-key = Ein Blatt nach dem Schlüssel prüfen
in-our-terms = hier { $ours }
number-not-in-concordance = eine Nummer, die die Konkordanz nicht hat
number-is-an-error = was die Konkordanz einen Irrtum nennt
mixed-and-key = Der Schlüssel vergleicht ganze Zustände; dieses Blatt gilt als von Stöcken in verschiedener Verfassung gedruckt.

# Merkmale, ihre Detailreihen und ihre Töne.
title-point = { $number }, { $point }
point-kind-presence = Vorhanden oder nicht
point-kind-choice = Eine von mehreren Antworten
point-kind-count = Eine Anzahl
point-kind-measure = Ein Maß in { $unit }, auf { $tolerance } { $unit } genau
point-kind-stage = Eine Stufe der Abnutzung
point-rests-on = beruht auf: { $ground }
point-answers = Antworten
point-bearing = Was daraus folgt
point-decides = Eine sichere Antwort schließt jeden Zustand und jeden Druck aus, für den hier anderes festgehalten ist. Begründung: { $why }
point-strays = Etwa { $n } von { $of } Blättern weichen hier von dem ab, was festgehalten ist; eine Antwort wiegt daher nur und schließt nichts aus.
point-shown = Was dort zu sehen ist
separates = Unterscheidet
separates-from = { $one } von { $others }
strips = Details
strips-how = Jede Reihe ist ein Merkmal, ausgeschnitten aus jeder Aufnahme, die auf dem Referenzbild liegt, in der Folge der Zustände und Drucke.
strips-more = Diese Merkmale unterscheiden am meisten; die Seite jedes anderen Merkmals zeigt seine eigenen Details.
detail-in-picture = in der Aufnahme
detail-in-picture-about = „In der Aufnahme“ öffnet die Fotografie an dieser Stelle. Der Link enthält die Stelle als Content State (IIIF), sodass auch andere Betrachter sie öffnen können.
strip-of = Blatt für Blatt: { $ask }
strip-of-state = Details, { $state }
alt-detail = Detail von { $key }: { $ask }
not-aligned = { $sheet } fehlt, denn seine Aufnahme ließ sich nicht ausrichten: { $why }.
part-not-shown = { $sheet } fehlt, denn seine Aufnahme endet vor dieser Stelle.
refusal-little-to-compare = auf ihr ist zu wenig zu vergleichen
refusal-nothing-in-common = nichts auf ihr fand sich auf dem Referenzbild wieder
refusal-no-plausible-fit = sie passte nur so, wie keine Kamera sie verzöge
refusal-few-agree = zu wenige Stellen stimmen überein
refusal-one-part-only = die übereinstimmenden Stellen liegen alle in einem Teil
refusal-ties-disagree = die von Hand gesetzten Passpunkte widersprechen sich
refusal-not-tried = sie gehört nicht zu denen, die auf das Referenzbild gelegt werden
taken-to-be = Gilt als
shown-by-these = Zustand und Druck zeigen
tones = Töne
tone-caution = Aus Aufnahmen gelesene Töne sind keine Farbmessung: Licht, Kamera, Papier, Ausbleichen und Alter verändern sie alle. Sie stehen hier zum Betrachten, nie als Beleg; nichts in diesem Katalog beruht auf ihnen.
tone-table = Mittel von L*, a* und b* (CIELAB, D65) mit Standardabweichung; unbedrucktes Papier derselben Aufnahme ist 100, 0, 0
tone-difference = CIEDE2000 von { $sheet }
tone-base = an ihm sind die anderen gemessen
paper-bare = Unbedrucktes Papier
paper-given = nach dem Eintrag
paper-found = neben dem Bild gefunden
