# Die längeren Texte: Zählen, Vorbehalte, Zitieren, Beitragen, Daten. Eine Leerzeile beginnt einen
# Absatz.

how-counted-rule = Ein gedrucktes Bild auf einem Blatt ist ein Abzug.
how-counted-text =
    Wo zwei Einträge denselben Abzug beschreiben können, ist die Zahl eine Spanne: Die höhere zählt sie
    einzeln, die niedrigere möglichst viele nur einmal. Wo sich die niedrigere nicht genau ermitteln
    lässt, ist sie eine Schranke, bezeichnet mit ≥. Die Zeilen müssen sich nicht zur Summe fügen: Ein
    Abzug, der zu einer von zwei Zeilen gehören kann, zählt in beiden. Zweifelhafte Abzüge sind gezählt
    und neben den Zahlen genannt. Nachschnitte, Reproduktionen und zurückgezogene Einträge sind nicht
    gezählt.

# Vorbehalte.
cautions-brief = Was dieses Verzeichnis ist, was es nicht ist und worum es seine Leser bittet.
caution-opinion = Meinung zu einem Datum
caution-opinion-text =
    Dieses Verzeichnis gibt eine wissenschaftliche Meinung zu seinem Datum wieder. Es ist weder eine
    Echtheitsbestätigung noch eine Schätzung noch eine Auskunft über Eigentum. Dass ein Blatt darin steht
    oder fehlt, ist kein Urteil über seinen Wert oder über ein Recht daran. Meinungen können sich mit
    neuen Belegen ändern; das Verzeichnis sagt dann, was sich geändert hat.

    Wo es einen Zustand oder Druck nennt, heißt das: Das Blatt ist mit dem vereinbar, was darüber
    verzeichnet ist, sofern nicht „im Widerspruch zum Gesehenen“ dabeisteht. Die Gründe sind genannt.
    Niemand sollte allein auf das Verzeichnis hin kaufen, verkaufen oder versichern.
caution-tones = Töne und Farben
caution-tones-text =
    Fotografien sind keine Messungen. Licht, Kamera, Bildschirm, Verblassen und Alter verändern einen
    Ton. Aus Fotografien gelesene Farben sind keine Farbmessung, und kein Farbunterschied zwischen
    zwei Fotografien ist hier für sich ein Beleg.
caution-provenance = Lücken der Provenienz
caution-provenance-text =
    Lücken in der Geschichte eines Blattes sind üblich und bedeuten kein Unrecht; ein lückenloser
    Nachweis ist keine Entlastung. Wer über ein bestimmtes Blatt entscheidet, vor allem über eines, das
    zwischen 1933 und 1945 in Europa gewesen sein kann, sollte eigens nachforschen und am Ort des Blattes
    fachkundigen Rechtsrat einholen.
caution-rights = Urheberrecht
caution-rights-text =
    Kunstwerke können urheberrechtlich geschützt sein, ebenso Fotografien von ihnen; das Recht ist von
    Land zu Land verschieden. Die Rechte an jeder Fotografie stehen darunter, wie ihr Inhaber sie
    angegeben hat. Die Lizenz dieses Verzeichnisses gilt für Text und Daten, für keine Fotografie.
caution-cultural-property = Kulturgut
caution-cultural-property-text =
    Gesetze über Ausfuhr, Einfuhr und Rückgabe von Kulturgut sind von Land zu Land verschieden und
    ändern sich. Was hier über die Geschichte eines Blattes steht, ist keine Rechtsauskunft über Ausfuhr
    oder Verkauf.
caution-handling = Umgang mit Originalen
caution-handling-text =
    Originale gehören in geübte Hände: sauber und trocken, beide Hände, volle Auflage, wenig Licht.
    Nehmen Sie für eine Frage dieses Verzeichnisses kein Blatt aus dem Rahmen, lösen Sie es nicht vom
    Passepartout und befeuchten Sie es nicht. „Nicht sichtbar“ ist eine gute Antwort.
caution-privacy = Persönlichkeitsschutz und Berichtigung
caution-privacy-text =
    Name und Ort eines privaten Eigentümers werden nur veröffentlicht, wo seine Einwilligung verzeichnet
    ist. Sie kann widerrufen werden; der Abzug bleibt dann in der Zählung, der Name wird entfernt. Andere,
    die in den Einträgen stehen, darunter frühere Eigentümer, werden ohne Einwilligung genannt.

    Wer nicht genannt sein will, dessen Name wird entfernt. Wer widerspricht oder einen Fehler findet oder
    etwas, das nicht öffentlich sein sollte, möge uns schreiben.
caution-titles = Historische Sprache
caution-titles-text =
    Titel und Beschreibungen aus früherer Zeit können Wörter enthalten, die wir nicht gebrauchen würden.
    Sie bleiben als Zeugnisse stehen und geben nicht unsere Ansicht wieder.
cautions-added = Zu diesem Verzeichnis

# Zitieren.
cite-brief = Nummern sind dauerhaft; Zustandszahlen können sich ändern. Zitieren Sie die Nummer und bei einem Zustand auch die Ausgabe.
cite-whole = Das Verzeichnis
cite-design = Eine Graphik
cite-design-text = Nennen Sie die Abkürzung des Verzeichnisses und die Nummer. In einem Angebot folgen der Zustand, die Zahl der Zustände und die Ausgabe des Verzeichnisses, die sie zählte:
cite-impression = Ein einzelner Abzug
cite-impression-text = Seine Nummer bleibt, wohin das Blatt auch kommt und wem es auch gehört:
cite-unknown = Ein hier nicht verzeichneter Abzug
cite-unknown-text = Zitieren Sie die Graphik mit dem Zusatz „dieser Abzug nicht verzeichnet in { $siglum }“. Bitte teilen Sie ihn uns dann mit, wie unter „Mitwirken“ beschrieben.
cite-address = Adressen
cite-address-text =
    Jede Graphik, jeder Abzug, jede Sammlung, jede Person und jedes Werk hat eine Adresse, und sie ändert sich nicht. Die Adresse einer Seite steht an ihrem Fuß und darf gedruckt werden.

    Zustände sind in der Reihenfolge gezählt, in der sie entstanden. Wird ein Zustand zwischen zwei anderen gefunden, so rücken die Zahlen danach um eins weiter. Die Adresse eines Zustands enthält seine Kennung, nicht seine Zahl, und bleibt gleich.

    Wo ein Eintrag umbenannt oder mit einem anderen vereint werden musste, führt die alte Adresse zur heutigen. Die Seite eines zurückgezogenen Eintrags sagt, warum er zurückgezogen wurde und was stattdessen anzusehen ist.
cite-files = Für Literaturverwaltungen
cite-files-text = Am Fuß der Seite jeder Graphik und jedes Abzugs stehen die Zitate als Dateien für Literaturverwaltungen: BibTeX, RIS und CSL-JSON. Die Schaltfläche „Kopieren“ neben einem Zitat kopiert es als Text.
cite-data = Eine Tabelle der Daten
cite-data-text = Nennen Sie das Verzeichnis, seine Ausgabe und die Adresse der Seite „Daten“. Auf die Ausgabe kommt es an: Eine spätere kann mehr enthalten.
cite-picture = Eine Fotografie
cite-picture-text = Bildnachweis und Rechte stehen unter jeder Fotografie; beide sind Sache ihres Inhabers. Die Lizenz dieses Verzeichnisses gilt nicht für Fotografien.
cite-in-short = Kurz
cite-in-full = Ausführlich

# Beitragen.
contribute-brief = Dieses Verzeichnis wächst durch das, was Leser schicken: nicht verzeichnete Abzüge, Nachweise, Berichtigungen. Schicken Sie eine Tabelle, Datensätze aus Ihrem System oder eine E-Mail.
contribute-how = Wohin schreiben
contribute-how-text = Schreiben Sie an { $contact } und nennen Sie die Graphik oder den Abzug mit der Nummer. Der Link am Fuß jeder Seite trägt Nummer, Ausgabe und Adresse gleich ein.
contribute-how-no-contact = Dieses Verzeichnis nennt keine Anschrift; seine Herausgeber stehen unten in der Zitierweise.
contribute-table = Eine Tabelle
contribute-table-text =
    Für mehrere Blätter füllen Sie { $table } aus: eine Zeile für jedes Blatt, in Ihren Worten und Einheiten. Listen in den Zellen bieten die Begriffe dieses Verzeichnisses an, und eine Notiz an jeder Überschrift sagt, was hineingehört. Die Seite jeder Graphik hat eine eigene Tabelle mit ihren Zuständen und Drucken. Ebenso willkommen ist ein Auszug aus Ihrer Datenbank (XLSX, ODS oder CSV), mit den Überschriften, die er hat.

    Die Seite Ihres Hauses bietet die hier verzeichneten Blätter in denselben Spalten an. Am einfachsten ist es für beide Seiten, wenn Sie diese Tabelle berichtigen und zurückschicken. Ihr Herkunftsvermerk wird genau so gedruckt, wie Sie ihn geben.
contribute-records = Datensätze in einem offenen Format
contribute-records-text = Wenn Ihr System sie ausgibt, schicken Sie die Dateien Ihrer Datensätze in LIDO oder Linked Art oder IIIF-Manifeste. Sie werden so gelesen, wie sie sind; Sie müssen nichts vorbereiten.
contribute-mail = Eine E-Mail
contribute-mail-text =
    Für ein einzelnes Blatt oder einen Nachweis in einer Auktion, einer Ausstellung, einer alten Liste oder einer Fotografie füllen Sie { $form } aus, so weit Sie können, und schicken es in einer E-Mail. Nennen Sie das Datum, die Quelle mit Seite oder Losnummer, und was dort zeigt, dass es dieses Blatt war. Auf der Seite jeder Graphik steht dieses Formular mit eingetragener Nummer.
contribute-happens = Was damit geschieht
contribute-happens-text =
    Alles, was Sie schicken, bleibt in Ihren Worten erhalten. Das Programm liest es und sagt, was es verstanden hat, was zweifelhaft ist und was es nicht lesen konnte; diesen Bericht bekommen Sie. Ein Herausgeber entscheidet, was in das Verzeichnis kommt, unter einer bleibenden Nummer und auf Wunsch mit Ihnen als Quelle.

    Schicken Sie später eine berichtigte Tabelle, so wird nur angesehen, was sich geändert hat. Was andere verzeichnet haben, wird nie überschrieben: Wo Sie anderer Ansicht sind, können beide Ansichten nebeneinander stehen, jede mit Namen.
contribute-sheet = Ein nicht verzeichneter Abzug
contribute-sheet-text = Schicken Sie, was Sie haben. Jedes davon hilft, keines ist Bedingung:
contribute-sheet-1 = Fotografien beider Seiten, das ganze Blatt in gleichmäßigem Licht, wenn möglich mit Maßstab
contribute-sheet-2 = die Maße von Blatt und Darstellung oder Plattenrand in Millimetern, Höhe zuerst, und wie gemessen wurde
contribute-sheet-3 = jede Signatur, jeder Stempel, jede Nummer, Aufschrift und jedes Wasserzeichen, mit der Stelle und ob Bleistift, Tinte oder Stempel
contribute-sheet-4 = was an den Merkmalen zu sehen ist, die auf der Seite der Graphik stehen, und was nicht zu sehen ist
contribute-sheet-5 = wo das Blatt ist, seine Inventarnummer, und wo es vorher war, mit der Quelle
contribute-sheet-6 = wer es untersuchte, wann, und ob am Blatt oder an einer Fotografie
contribute-correction = Eine Berichtigung
contribute-correction-text = Sagen Sie, was falsch ist und worauf sich das stützt. Weicht Ihre Ansicht von unserer ab, so kann sie neben unserer stehen, mit Ihrem Namen und dem Datum.
contribute-public = Was öffentlich wird
contribute-public-text =
    Öffentlich: der Eintrag des Blattes, auf Wunsch mit Ihrem Namen als Quelle. Nicht öffentlich: Name und Ort eines privaten Eigentümers, sofern er nicht zugestimmt hat; Anschriften; Werte; und was die Datei einer Fotografie über Ort und Zeit der Aufnahme sagt. Ein privater Eigentümer kann als „Privatbesitz“ erscheinen, mit oder ohne Land.

    Ein Eigentümer kann seine Zustimmung jederzeit widerrufen. Der Name wird dann von jeder Seite und aus jeder Datei hier entfernt. Was vorher gedruckt oder kopiert wurde, lässt sich nicht zurückrufen.
contribute-rights = Fotografien
contribute-rights-text =
    Sagen Sie, wer sie aufnahm, wie sie zu bezeichnen sind, ob sie hier gezeigt werden dürfen und wie groß. Auch eine Fotografie, die nicht gezeigt werden darf, hilft, einen Abzug zu bestimmen.

    Schicken Sie nur, was Sie schicken dürfen: mit Erlaubnis der Sammlung, wenn das Blatt nicht Ihnen gehört, und des Fotografen. Urheberrecht, Hausordnungen und Datenschutz sind von Land zu Land verschieden; erkundigen Sie sich vor Ort. Eine Fotografie ohne solche Erlaubnis beschreiben Sie besser, statt sie zu schicken.

# Daten.
data-brief = Was man weiterverwenden kann, in welcher Form und unter welchen Bedingungen.
data-offers = Was es gibt
data-offers-text = Alles, was die Seiten zeigen, gibt es auch als Daten, kostenlos und ohne zu fragen:
data-offers-1 = Für alle: sämtliche Einträge als Tabellen, eine Datei für jede Art von Eintrag, für die Tabellenkalkulation (CSV) oder für ein Programm (JSON). Sie sind unten aufgeführt.
data-offers-2 = Für Museen und Bibliotheken: auf der Seite jeder Sammlung eine Tabelle der eigenen Abzüge mit Inventarnummern und ihren bleibenden Adressen hier.
data-offers-3 = Für Museen und Portale: neben jeder Graphik die Datensätze ihrer Abzüge in LIDO, dem Austauschformat der Museen; und alle zusammen in einer Datei für Sammelprogramme, die Datensätze aus vielen Verzeichnissen holen.
data-offers-4 = Für Schreibende: das Zitat jeder Graphik und jedes Abzugs, für Literaturverwaltungen. Mehr auf der Seite „Zitierweise“.
data-tables = Die Tabellen
data-tables-text = Jede Zeile hat die Kennung ihres Eintrags, mit der die Tabellen aufeinander verweisen. Was jede Spalte enthält, steht unter:
data-table = Tabelle
data-rows = Zeilen
data-reading = Wie die Tabellen zu lesen sind
data-reading-text =
    Ein Eintrag wird mit seiner Kennung benannt, dem letzten Teil seiner Adresse: 14 ist eine Graphik, 14.7 ihr siebter verzeichneter Abzug, 14/moonlit einer ihrer Zustände. Kennungen ändern sich nicht. Zustandszahlen stehen zum Lesen da; sie können sich von einer Ausgabe zur nächsten ändern.

    Eine leere Zelle heißt, dass nichts verzeichnet ist, nie, dass etwas gesucht und nicht gefunden wurde; wo das bekannt ist, sagt es eine Spalte. Ein Datum steht so da, wie es verzeichnet ist, nach den Regeln der ISO 8601-2 (EDTF) für ungewisse Daten: 1927~ ist um 1927, 1927/1931 von 1927 bis 1931. Daneben stehen der erste und der letzte Tag, den es bedeuten kann. Maße stehen in Millimetern, Höhe vor Breite.

    Was ungewiss ist, ist so bezeichnet: Eine Spalte nennt die Sicherheit eines Wertes (certain sicher, probable wahrscheinlich, possible möglich), und die Tabelle der Angaben enthält jede Ansicht zu Datum, Maß oder Auflage mit ihrer Quelle. Was private Eigentümer nicht öffentlich machen wollen, steht nicht in den Daten.

    In CSV sind die Glieder einer Liste durch „|“ getrennt, und vor einem Text, der mit =, +, - oder @ beginnt, steht ein Apostroph, damit ihn keine Tabellenkalkulation für eine Formel hält. JSON hat Listen als Listen und Texte, wie sie sind, und lässt leere Zellen weg.
data-museum = Für die Datenbank eines Museums
data-museum-text = Um von Ihren Datensätzen zu unseren zu führen und zurück:
data-museum-1 = Nehmen Sie auf der Seite Ihres Hauses die Tabelle seiner Abzüge (CSV oder JSON).
data-museum-2 = Gleichen Sie sie über die Inventarnummer mit Ihren Datensätzen ab, Abzüge ohne Inventarnummer von Hand mit den Fotografien auf ihrer Seite.
data-museum-3 = Hat eine Liste nur Nummern, unsere oder die eines früheren Verzeichnisses, so fügen Sie ihre Spalte auf der Seite „Verweise auflösen“ ein; sie gibt die Adressen und sagt, wie sicher jede ist.
data-museum-4 = Behalten Sie die Adresse jedes Abzugs in Ihrem Datensatz. Sie bleibt, was immer über das Blatt herausgefunden wird.
data-museum-5 = Behalten Sie keine Zustandszahl ohne die Ausgabe des Verzeichnisses, sondern die Kennung des Zustands, oder übernehmen Sie die Zahl aus jeder Ausgabe neu.
data-museum-6 = Ist etwas falsch oder fehlt ein Abzug, so schreiben Sie uns; was hilft, steht unter „Mitwirken“.
data-get = Die Einträge selbst
data-get-text = Die Dateien, aus denen die Seiten erzeugt werden, erhalten Sie auf Anfrage: { $contact }.
data-get-no-contact = Die Dateien, aus denen die Seiten erzeugt werden, werden hier nicht angeboten.
data-records = Woraus die Seiten erzeugt sind
data-records-text =
    Dieses Verzeichnis wird aus einfachem Text erzeugt: eine TOML-Datei für jede Graphik, jeden Abzug,
    jede Sammlung und jede Person, Markdown für die längeren Texte, BibTeX für die Literatur. Seiten und
    Tabellen werden aus diesen Einträgen erzeugt und sagen dasselbe.
data-beside = Tabellen und Bilder
format-bibtex-about = Neben jeder Graphik, jedem Abzug, jedem Dokument und jeder Folge stehen Zitate für Literaturverwaltungen: citation.bib (BibTeX), citation.json (CSL-JSON) und citation.ris (RIS), in { $address }
format-census-csv-about = Die Zahlen jeder Seite des Census stehen daneben als Tabellen (CSV).
format-holder-csv-about = Neben der Seite jeder Sammlung, die Abzüge verwahrt oder besitzt, stehen diese als Tabellen: sheets.csv und sheets.json, in { $address }
format-holder-xlsx-about = Daneben steht eine Mappe mit allem, was von diesen Abzügen verzeichnet ist, zum Berichtigen und Zurückschicken: sheets.xlsx.
format-image-service-about = Jede gezeigte Fotografie ist ein Bilddienst (IIIF Image API 3.0, Stufe 0), unter { $address } mit Abzug und Namen; seine Datei info.json sagt, was zu haben ist.
format-linked-art-about = Neben jeder Graphik und jedem Abzug, jeder Sammlung, jeder Person und jedem Dokument steht der Eintrag in Linked Art (JSON-LD), unter { $address }linked-art.json; die der Zustände, Drucke und Stöcke stehen unter der Graphik.
format-linked-art-provenance-about = Die Provenienz eines Abzugs steht daneben in provenance.json.
format-linked-art-words-about = Der Wortlaut eines Dokuments und wovon er handelt stehen daneben in words.json.
format-iiif-manifest-about = Jeder Abzug mit Fotografien hat ein Manifest (IIIF Presentation 3.0), { $address }manifest.json, mit den Merkmalen der Graphik als Annotationen; ebenso jedes Dokument mit Bildern, mit Transkription und Übersetzungen.
format-iiif-collection-about = Sammlungen von Manifesten stehen neben den Graphiken, den Sammlungen, der Liste der Graphiken und der Liste der Dokumente: { $address }collection.json.
data-addresses = Dauerhafte Adressen
data-addresses-text = Die Adresse einer Seite bezeichnet ihren Eintrag dauerhaft: { $design } eine Graphik, { $impression } einen Abzug, { $holder } eine Sammlung, mit der Kennung statt „…“. Diese Adressen dürfen in anderen Datenbanken und in Büchern stehen.
format-lido-about = Neben jeder Graphik stehen die Datensätze ihrer Abzüge in LIDO 1.1, einem XML-Format, das Museen austauschen: lido.xml, in { $address }
format-oai-about = Alle diese Datensätze stehen noch einmal in einer einzigen Datei, in LIDO und im einfacheren Dublin Core, als statisches Archiv für das Protokoll OAI-PMH: oai.xml, in { $address } Sammelprogramme lesen sie über ein Gateway, das andere betreiben.
data-machines = Für Programme
data-machines-text =
    Alles ist eine einfache Datei: Es gibt keine Schnittstelle, bei der man sich anmelden müsste, und keine Obergrenze. Man beginne mit { $package }; darin ist jede Tabelle mit Spalten, Größe und SHA-256 beschrieben (ein Data Package mit Table Schemas, Version 2.0); „version“ ist die Ausgabe des Verzeichnisses. Hat sich diese Datei nicht geändert, so hat sich in den Tabellen nichts geändert.

    Jede Seite nennt in ihrem Kopf die Dateien, die neben ihr stehen, als Links mit ihren Medientypen. Keine Seite braucht ein Skript, um gelesen zu werden. Die Adressen aller Seiten stehen in sitemap.xml.
data-licence = Lizenz
data-licence-text = Text und Daten dieses Verzeichnisses stehen unter { $licence }. Wer sie zu diesen Bedingungen nutzt, braucht keine weitere Erlaubnis; nennen Sie das Verzeichnis und seine Ausgabe.
data-no-licence = Für Text und Daten dieses Verzeichnisses ist keine Lizenz genannt. Wer mehr als ein Zitat veröffentlichen will, frage vorher.
data-licence-pictures = Die Fotografien stehen nicht unter dieser Lizenz. Jede hat eigene Rechte, die ihr Inhaber angegeben hat; sie stehen darunter und in der Tabelle der Bilder.
data-licence-works = Die Graphiken selbst können urheberrechtlich geschützt sein, wer auch immer sie fotografiert hat. Ob sie es sind, hängt vom Land und vom Todesjahr des Künstlers ab.
data-licence-facts = Eine Tatsache (ein Maß, ein Datum, der Ort eines Blattes) gehört niemandem. Bitte sagen Sie trotzdem, woher Sie sie haben, damit Leser sie prüfen können und Berichtigungen uns erreichen.
field-notes = Was die Spalten enthalten
field-notes-brief = Jede Spalte jeder Tabelle der Seite { $data }.
column = Spalte
column-kind-of = Was es ist
column-holds = Was sie enthält
column-always = { $kind }, nie leer
column-of-table = Kennungen der Tabelle
column-words = Eines von:
column-kind-text = Text
column-kind-address = Netzadresse
column-kind-integer = ganze Zahl
column-kind-number = Zahl
column-kind-boolean = true oder false
column-kind-day = Tag
column-kind-date = Datum (EDTF)
column-kind-list = Liste
as-data = Als Daten
holder-as-data = Diese Abzüge als Tabelle, mit Inventarnummern und bleibenden Adressen, zum Abgleich mit einer Datenbank:
holder-correct = Dieselben Abzüge mit allem, was von ihnen verzeichnet ist, zum Berichtigen und Zurückschicken:
dataset-description = Die Graphiken, Zustände, Drucke und bekannten Abzüge von { $title }, mit Sammlungen, Bestimmung, Beobachtungen und Provenienz.

# Änderungen.
changes-current = Diese Ausgabe
changes-current-text = Sie lesen { $edition }.
changes-undated = Dieses Verzeichnis trägt weder Ausgabe noch Datum.
changes-later = Frühere Ausgaben
changes-later-text = Bisher wurde keine Ausgabe mit einem Register ihrer Adressen und Zustandszahlen herausgegeben; es gibt also nichts, womit diese zu vergleichen wäre. Von der ersten herausgegebenen Ausgabe an steht hier, was sich geändert hat: Einträge, Zustände, Abzüge und Zustandszahlen.
