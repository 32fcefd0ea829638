# Die Formulare, die Leser ausfüllen und schicken: die Tabelle der Blätter und der Text für eine E-Mail. `form-NAME` ist die
# Überschrift einer Spalte, `form-NAME-note` sagt, was hineingehört. Das Programm liest die Überschriften auf Englisch und
# Deutsch wieder ein; eine, die hier geändert ist, erkennt es vielleicht nicht.

form-sheet-rows = Blätter
form-sheet-help = Zum Ausfüllen
form-sheet-terms = Begriffe
form-sheet-lists = Listen
form-not-read = Diese Seite der Mappe wird nicht eingelesen.
form-unlisted = Das steht nicht in der Liste. Es darf trotzdem stehen bleiben und wird angesehen.

form-accession = Inventarnummer
form-accession-note =
    Die Nummer, unter der das Blatt verwahrt wird, so wie sie bei Ihnen steht.
    Beispiel: 1920.1-12
form-design = Nummer in diesem Verzeichnis
form-design-note =
    Die Graphik mit ihrer Nummer hier. Wählen Sie aus der Liste oder schreiben Sie nur die Nummer.
    Beispiel: 14
form-title = Titel
form-title-note =
    Der Titel, unter dem Sie das Blatt führen. Er kann fehlen, wenn die Nummer angegeben ist und Sie keinen eigenen Titel haben.
    Beispiel: Die alte Schleuse im Regen
form-state = Zustand in diesem Verzeichnis
form-state-note =
    Der Zustand nach der Zählung dieses Verzeichnisses. Wählen Sie aus der Liste, sobald die Nummer angegeben ist; im Zweifel bleibt die Zelle leer. Die Zählung eines früheren Verzeichnisses gehört zu den Bemerkungen.
    Beispiel: ii
form-printing = Druck in diesem Verzeichnis
form-printing-note =
    Der Druck, zu dem das Blatt gehört. Wählen Sie aus der Liste, sobald die Nummer angegeben ist; im Zweifel bleibt die Zelle leer.
    Beispiel: Erste Auflage
form-kind = Art des Abzugs
form-kind-note =
    Abzug der Auflage, Probedruck, Gegendruck … Leer heißt: nicht bekannt.
    Beispiel: Probedruck
form-numbering = Nummer in der Auflage
form-numbering-note =
    Die Nummer, wie sie auf dem Blatt steht.
    Beispiel: 12/50
form-technique = Technik
form-technique-note =
    Nur wo Sie sie anders angeben als dieses Verzeichnis. Mehrere Begriffe werden durch Kommas getrennt.
    Beispiel: Radierung, Kaltnadel
form-paper = Papier
form-paper-note =
    Wählen Sie aus der Liste oder beschreiben Sie es mit eigenen Worten.
    Beispiel: Büttenpapier
form-watermark = Wasserzeichen
form-watermark-note =
    Seine Buchstaben oder was es zeigt. „Keines“, wo Sie gesucht und keines gefunden haben.
    Beispiel: gekrönter Schild
form-image = Darstellung (mm, Höhe × Breite)
form-image-note =
    Das Gedruckte, Höhe zuerst, in Millimetern. Eine andere Einheit schreiben Sie hinter die Zahlen.
    Beispiel: 166 x 243
form-sheet = Blatt (mm, Höhe × Breite)
form-sheet-note =
    Das ganze Papier, Höhe zuerst, in Millimetern. Eine andere Einheit schreiben Sie hinter die Zahlen.
    Beispiel: 212 x 301
form-platemark = Plattenrand (mm, Höhe × Breite)
form-platemark-note =
    Der Rand der Platte im Papier, Höhe zuerst, in Millimetern.
    Beispiel: 180 x 255
form-signature = Signatur
form-signature-note =
    Wie und wo das Blatt signiert ist. „Keine“, wo es nicht signiert ist.
    Beispiel: Bleistift, unten rechts: O. Perelaz
form-inscription = Aufschriften
form-inscription-note =
    Was sonst auf dem Blatt geschrieben steht, mit der Stelle.
    Beispiel: verso, Tinte: Schleuse, 2. Probe
form-marks = Stempel und Sammlermarken
form-marks-note =
    Stempel, Siegel und Sammlermarken, jeweils mit der Stelle.
    Beispiel: roter Stempel, verso, unten links: HM im Kreis
form-condition = Erhaltung
form-condition-note =
    Was wissen muss, wer das Blatt sehen will.
    Beispiel: auf die Darstellung beschnitten; stockfleckig am unteren Rand
form-holder = Standort
form-holder-note =
    Wer das Blatt verwahrt. Nennen Sie keinen privaten Eigentümer ohne dessen Zustimmung, sondern schreiben Sie „Privatbesitz“.
    Beispiel: Hafenmuseum, Nordhafen
form-status = Verbleib
form-status-note =
    Leer heißt: Das Blatt ist am angegebenen Ort.
    Beispiel: verschollen
form-former-accession = Frühere Nummer
form-former-accession-note =
    Nummern, die das Blatt früher hatte, durch Strichpunkte getrennt.
    Beispiel: K. 211; L 1920/3
form-acquisition = Wie erworben
form-acquisition-note =
    Wie das Blatt an seinen Ort kam. Wählen Sie aus der Liste oder nehmen Sie eigene Worte.
    Beispiel: Vermächtnis
form-credit = Herkunftsvermerk
form-credit-note =
    Genau so, wie er gedruckt werden soll.
    Beispiel: Vermächtnis Ida Wray, 1920
form-provenance = Provenienz
form-provenance-note =
    Frühere Eigentümer, der früheste zuerst, mit Jahren und Quellen. Lassen Sie Namen weg, die nicht öffentlich werden dürfen.
    Beispiel: Künstler; Auktion, Nordhafen, 1931, Los 12
form-web = Webseite
form-web-note =
    Die Adresse Ihrer eigenen Seite zu diesem Blatt.
    Beispiel: https://museum.example.org/objects/1920-1-12
form-photograph = Fotografie (Dateiname)
form-photograph-note =
    Der Name der Datei, die Sie mit der Tabelle schicken; mehrere werden durch Strichpunkte getrennt.
    Beispiel: 1920-1-12-recto.tif
form-publish = Darf die Fotografie gezeigt werden?
form-publish-note =
    Ja nur dann, wenn Sie das Recht haben, es zu erlauben. Leer heißt nein.
    Beispiel: ja
form-rights = Rechte an der Fotografie
form-rights-note =
    Bildnachweis und Bedingungen, die darunter stehen sollen.
    Beispiel: Foto Hafenmuseum, CC BY 4.0
form-seen = Gesehen am
form-seen-note =
    Der Tag, an dem das Blatt gesehen wurde; ein Jahr genügt.
    Beispiel: 2026-03-14
form-seen-by = Gesehen von
form-seen-by-note =
    Wer es sah. Der Name steht gedruckt beim Nachweis; lassen Sie ihn weg, wenn Sie das nicht möchten.
    Beispiel: A. Leser
form-basis = Wie gesehen
form-basis-note =
    Am Original oder anders.
    Beispiel: nach Augenschein
form-remarks = Bemerkungen
form-remarks-note =
    Alles andere: Zweifel, Quellen, Nummer und Zustand in einem früheren Verzeichnis.
    Beispiel: In der Auktionsliste von 1931 als Zustand III
form-impression = Abzug in diesem Verzeichnis
form-impression-note =
    Die bleibende Nummer des Blattes in diesem Verzeichnis. Bitte lassen Sie sie stehen; bei einem Blatt, das hier fehlt, bleibt die Zelle leer.
    Beispiel: 14.7

form-yes = ja
form-no = nein

form-help-title = So wird diese Tabelle ausgefüllt
form-help =
    Eine Zeile für jedes Blatt. Tragen Sie ein, was Sie wissen, und lassen Sie das andere leer: Eine leere Zelle heißt, dass Sie nichts dazu sagen, nie, dass es nichts gibt.

    Nehmen Sie Ihre eigenen Worte und Einheiten. Die Liste in einer Zelle ist ein Angebot; was nicht darin steht, darf trotzdem stehen. Spalten, die Sie nicht brauchen, dürfen gelöscht werden, eigene dürfen dazukommen, und auf die Reihenfolge kommt es nicht an. Die Überschriften lassen Sie bitte, wie sie sind.

    Zeigen Sie auf eine Überschrift, um zu lesen, was darunter gehört, mit einem Beispiel.

    Maße stehen in Millimetern, Höhe vor Breite. Haben Sie in einer anderen Einheit gemessen, so schreiben Sie diese hinter die Zahlen. Inventarnummern und Daten bleiben, wie Sie sie schreiben.

    Geben Sie Zustand und Druck nur an, wo Sie sicher sind. Folgen Sie einem früheren Verzeichnis, so sagen Sie das in den Bemerkungen.

    Was mit der Tabelle geschieht: Das Programm liest sie und sagt zu jeder Spalte und Zeile, was es verstanden hat und was nicht; diesen Bericht bekommen Sie. Bevor etwas veröffentlicht wird, prüft es ein Herausgeber. Ein Blatt, das schon im Verzeichnis steht, wird an der Inventarnummer erkannt; was abweicht, wird den Herausgebern gezeigt und überschreibt nichts.

    Fotografien: Keine Fotografie wird veröffentlicht, wenn Sie nicht „ja“ sagen und das Recht haben, es zu erlauben. Auch eine, die nicht gezeigt werden darf, hilft, das Blatt zu bestimmen.

    Private Eigentümer: Weder Name noch Ort eines privaten Eigentümers wird ohne dessen Zustimmung veröffentlicht. Schreiben Sie beides nur hierher, wenn Sie es weitergeben dürfen; was das Gesetz verlangt, ist von Land zu Land verschieden.

    Schicken Sie die Tabelle an { $contact }.
form-help-no-contact = die Herausgeber dieses Verzeichnisses

sighting-title = Meldung eines Blattes
sighting-how = Schreiben Sie hinter die Doppelpunkte, was Sie wissen, lassen Sie das andere leer, und schicken Sie es an { $contact }.
sighting-several = Für ein zweites Blatt kopieren Sie die Zeilen unten und füllen sie noch einmal aus.
sighting-private = Keine Fotografie und kein Name eines privaten Eigentümers wird ohne Zustimmung veröffentlicht.

form-link-listing = eine Tabelle (XLSX)
form-link-sighting = ein Formular für eine E-Mail (Text)
form-link-listing-general = diese Tabelle (XLSX)
form-link-sighting-general = dieses Formular (Text)
report-a-sheet = Ein Blatt melden
report-a-sheet-text = Kennen Sie einen Abzug, der hier nicht verzeichnet ist, oder wissen Sie mehr über einen, der hier steht? Füllen Sie { $table } oder { $form } aus. Was damit geschieht: { $how }.
