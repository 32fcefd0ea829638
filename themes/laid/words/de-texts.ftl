# Die längeren Texte: Zählen, Vorbehalte, Zitieren, Beitragen, Daten. Eine Leerzeile beginnt einen
# Absatz.

how-counted-rule = Ein gedrucktes Bild auf einem Blatt ist ein Abzug.
how-counted-text =
    Wo zwei Einträge einen Abzug betreffen können, hat die Zahl zwei Enden: höchstens, wenn jede solche
    Frage zwei Abzüge wären; mindestens, wenn möglichst viele einer wären. Wo zu viele solche Fragen
    zusammenhängen, um sie zu lösen, ist das untere Ende eine Schranke, bezeichnet mit ≥. Die Zeilen
    müssen sich nicht zur Summe fügen: Ein Abzug, der in einer von zwei Zeilen stehen kann, zählt in
    beiden. Zweifelhafte Abzüge sind gezählt und neben den Zahlen genannt. Nachschnitte, Reproduktionen
    und zurückgezogene Einträge sind nicht gezählt.

# Vorbehalte.
cautions-brief = Was dieses Verzeichnis ist, was es nicht ist und worum es seine Leser bittet.
caution-opinion = Meinung zu einem Datum
caution-opinion-text =
    Dieses Verzeichnis gibt eine wissenschaftliche Meinung zu seinem Datum wieder. Es ist weder
    Echtheitsbestätigung noch Schätzung noch Auskunft über Eigentum. Dass ein Blatt darin steht oder
    fehlt, ist kein Urteil über seinen Wert oder über irgendjemandes Recht daran. Meinungen können sich
    mit neuen Belegen ändern; das Verzeichnis sagt dann, was sich geändert hat.

    Wo es einen Zustand oder Druck nennt, heißt das: Das Blatt ist mit dem vereinbar, was darüber
    verzeichnet ist, sofern nicht „entgegen dem, was gesehen wurde“ dabeisteht, und die Gründe sind
    genannt. Niemand sollte allein auf sein Wort hin kaufen,
    verkaufen oder versichern.
caution-tones = Töne und Farben
caution-tones-text =
    Fotografien sind keine Messungen. Licht, Kamera, Bildschirm, Verblassen und Alter verändern einen
    Ton. Aus Fotografien gemessene Farben sind keine Farbmessung, und kein Farbunterschied zwischen
    zwei Fotografien ist hier für sich allein ein Beleg.
caution-provenance = Lücken der Provenienz
caution-provenance-text =
    Lücken in der Geschichte eines Druckes sind üblich, und keine ist ein Vorwurf. Schweigen ist aber
    auch keine Entlastung. Wer über ein Blatt entscheiden muss, vor allem über eines, das zwischen 1933
    und 1945 in Europa gewesen sein kann, braucht eigene Nachforschung und zugelassenen Rat am Ort
    des Blattes.
caution-rights = Urheberrecht
caution-rights-text =
    Kunstwerke können urheberrechtlich geschützt sein, ebenso Fotografien von ihnen; das Recht ist von
    Land zu Land verschieden. Die Rechte an jeder Fotografie stehen darunter und sind die, die ihr
    Eigentümer angegeben hat. Die Lizenz dieses Verzeichnisses gilt für Text und Daten, für kein Bild.
caution-cultural-property = Kulturgut
caution-cultural-property-text =
    Gesetze über Ausfuhr, Einfuhr und Rückgabe von Kulturgut sind von Land zu Land verschieden und
    ändern sich. Was hier über die Geschichte eines Blattes steht, ist kein Rechtsrat darüber, wohin es
    gehen darf.
caution-handling = Umgang mit Originalen
caution-handling-text =
    Originale gehören in geübte Hände: sauber und trocken, zwei Hände, volle Auflage, wenig Licht. Für
    eine Frage dieses Verzeichnisses nehme man kein Blatt aus dem Rahmen, löse es nicht vom Passepartout
    und befeuchte es nicht. „Nicht sichtbar“ ist eine gute Antwort.
caution-privacy = Persönliches und Berichtigung
caution-privacy-text =
    Name und Ort einer Privatsammlung werden nur veröffentlicht, wo die Einwilligung des Eigentümers
    verzeichnet ist. Sie kann widerrufen werden; Blatt und Zahl bleiben dann, der Name geht. Andere,
    die in den Einträgen stehen, darunter frühere Eigentümer, werden ohne sie genannt.

    Wer nicht genannt sein will, dessen Name wird entfernt. Wer Einspruch erhebt oder einen Fehler
    findet oder etwas, das nicht öffentlich sein sollte, möge schreiben.
caution-titles = Alte Worte
caution-titles-text =
    Titel und Beschreibungen aus früherer Zeit können Worte enthalten, die wir nicht gebrauchen würden.
    Sie bleiben als Zeugnis stehen und sind nicht unsere.
cautions-added = Dieses Verzeichnisses

# Zitieren.
cite-brief = Nummern bleiben, Zustandszahlen können wandern: Man zitiere die Nummer und mit einer Zustandszahl die Ausgabe.
cite-whole = Das Verzeichnis
cite-design = Ein Eintrag
cite-design-text = Sigle und Nummer. In einem Angebot folgen der Zustand mit der Gesamtzahl und die Ausgabe des Verzeichnisses, die sie zählte:
cite-impression = Ein Abzug
cite-impression-text = Seine Kennung benennt ein Blatt, wohin es auch kommt und wem es auch gehört:
cite-unknown = Ein hier nicht verzeichnetes Blatt
cite-unknown-text = Man zitiere den Eintrag für die Graphik, sage vom Blatt „dieser Abzug nicht verzeichnet in { $siglum }“ und teile es uns bitte mit.
cite-address = Adressen
cite-address-text =
    Jeder Eintrag, jeder Abzug, jeder Standort, jede Person und jedes Werk hat eine Adresse, die sich
    nicht ändert. Die Zahl eines Zustands ist nur sein Platz in der Reihe: Wird ein Zustand gefunden,
    kann sie wandern, die Adresse nicht. Wo ein Eintrag umbenannt oder mit einem anderen vereint werden
    musste, führt die alte Adresse zur heutigen; die eines zurückgezogenen Eintrags sagt, warum er
    zurückgezogen wurde und was stattdessen anzusehen ist.
cite-in-short = Kurz
cite-in-full = Ausführlich

# Beitragen.
contribute-brief = Der Bestand wächst durch das, was Leser schicken. Jedes Blatt zählt, jede Berichtigung auch.
contribute-how = Wohin schreiben
contribute-how-text = Man schreibe an { $contact } und nenne den Eintrag oder Abzug mit seiner Nummer.
contribute-how-no-contact = Dieses Verzeichnis nennt keine Anschrift; seine Herausgeber stehen unten in der Zitierweise.
contribute-sheet = Ein nicht verzeichnetes Blatt
contribute-sheet-text = Schicken Sie, was Sie haben; jedes davon hilft, keines ist Bedingung:
contribute-sheet-1 = Fotografien beider Seiten, das ganze Blatt in gleichmäßigem Licht, wenn möglich mit Maßstab
contribute-sheet-2 = die Maße von Blatt und Darstellung oder Plattenrand in Millimetern, Höhe zuerst, und wie gemessen wurde
contribute-sheet-3 = jede Signatur, jeder Stempel, jede Nummer, Aufschrift und jedes Wasserzeichen, mit der Stelle und ob Bleistift, Tinte oder Stempel
contribute-sheet-4 = was an den Stellen zu sehen ist, die der Eintrag nennt, und was nicht zu sehen ist
contribute-sheet-5 = wo das Blatt ist, seine Inventarnummer, und wo es vorher war, mit der Quelle
contribute-sheet-6 = wer es ansah, wann, und ob das Blatt oder eine Fotografie
contribute-sighting = Ein Nachweis
contribute-sighting-text = Eine Auktion, eine Ausstellung, eine alte Liste, eine Fotografie: das Datum, die Quelle mit Seite oder Losnummer, und was dort zeigt, dass es dieses Blatt war.
contribute-correction = Eine Berichtigung
contribute-correction-text = Sagen Sie, was falsch ist und worauf sich das stützt. Abweichende Meinungen stehen neben unserer, mit Verfasser und Datum.
contribute-museum = Museen und Bibliotheken
contribute-museum-text = Eine Tabelle Ihrer Abzüge ist willkommen, einer je Zeile, in Ihren Worten und Einheiten; ebenso Ihre eigenen Nummern und die Adresse Ihres Datensatzes. Ihr Herkunftsvermerk wird genau so gedruckt, wie Sie ihn geben, und jede Fotografie trägt die Rechte, die Sie nennen.
contribute-public = Was öffentlich wird
contribute-public-text =
    Der Eintrag des Blattes, auf Wunsch mit Ihrem Namen als Quelle. Nie öffentlich: Name und Ort einer
    Privatsammlung ohne verzeichnete Einwilligung des Eigentümers, Anschriften, Werte und was die Datei
    einer Fotografie über Ort und Zeit der Aufnahme sagt. Ein Eigentümer kann „Privatsammlung“ sein, mit oder
    ohne Land. Die Einwilligung kann jederzeit widerrufen werden, und der Name verschwindet dann von
    jeder Seite; was vorher gedruckt oder kopiert wurde, lässt sich nicht zurückrufen.
contribute-rights = Fotografien
contribute-rights-text = Sagen Sie, wer sie aufnahm, wie sie zu bezeichnen sind und ob sie hier gezeigt werden dürfen und wie groß. Auch Bilder, die nicht gezeigt werden dürfen, helfen ein Blatt zu bestimmen.

# Daten.
data-brief = Was es heute für Maschinen gibt und was nicht.
data-records = Die Einträge
data-records-text =
    Dieses Verzeichnis wird aus einfachem Text gesetzt: eine TOML-Datei für jeden Entwurf, Abzug,
    Standort und jede Person, Markdown für die längeren Texte, BibTeX für die Literatur. Die Einträge
    sind die Daten; die Seiten werden daraus gemacht.
data-get = Wie man sie bekommt
data-get-text = Die Einträge werden hier nicht zum Herunterladen angeboten. Man frage danach: { $contact }.
data-get-no-contact = Die Einträge werden hier nicht zum Herunterladen angeboten.
data-beside = Neben den Seiten
format-bibtex-about = Neben jedem Entwurf und jedem Abzug stehen seine Zitate für Literaturverwaltungen: citation.bib (BibTeX), citation.json (CSL-JSON) und citation.ris (RIS), in { $address }
format-census-csv-about = Die Zahlen jeder Zählung stehen daneben als Tabellen (CSV).
format-image-service-about = Jede gezeigte Aufnahme ist ein Bilddienst (IIIF Image API 3.0, Stufe 0), unter der Adresse { $address } mit Blatt und Namen der Aufnahme; seine Datei info.json sagt, was zu haben ist.
data-nothing-else = Nachrichtenströme und Datensätze in anderen Formaten gibt es nicht.
data-addresses = Adressen als Kennungen
data-addresses-text = Die Adresse einer Seite ist die Kennung ihres Eintrags: { $address }. Sie darf in anderen Datenbanken stehen.
data-licence = Lizenz
data-licence-text = Text und Daten: { $licence }. Fotografien: wie jeweils angegeben. Die Werke selbst können urheberrechtlich geschützt sein.
data-no-licence = Für Text und Daten dieses Verzeichnisses ist keine Lizenz genannt. Fotografien: wie jeweils angegeben.

# Änderungen.
changes-current = Diese Ausgabe
changes-current-text = Was Sie lesen, ist { $edition }.
changes-undated = Was Sie lesen, trägt weder Ausgabe noch Datum.
changes-later = Frühere Ausgaben
changes-later-text = Bisher wurde keine Ausgabe mit einem Register ihrer Adressen und Zustandszahlen herausgegeben; es gibt also nichts, womit diese zu vergleichen wäre. Von der ersten herausgegebenen Ausgabe an steht hier, was sich geändert hat: Einträge, Zustände, Abzüge und Zustandszahlen.
