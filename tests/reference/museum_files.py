"""Writes the files that three museums of the demonstration hand in: tests/intake/lindenmark.xlsx, saint-aubrac.windows-1252 and
holmsted.xml. All sheets, people and museums are invented.

    pip install openpyxl
    python3 tests/reference/museum_files.py tests/intake

| file | what it has that registrars' files have |
|---|---|
| lindenmark.xlsx | German headings, centimetres and millimetres, labelled sizes, a formula with and one without a stored value, a merged range, an empty row, an accession number on two rows, height and width exchanged, a design that the catalogue lacks |
| saint-aubrac.windows-1252 | CSV in Windows-1252 (no `.csv`, since texts of this repository are UTF-8), semicolons, line ends of DOS, states after two earlier catalogues, some of which were split since |
| holmsted.xml | LIDO 1.1: five records with events of production and acquisition |
"""
import csv
import io
import sys
import zipfile
from pathlib import Path

import openpyxl

LINDENMARK_HEADING = [
    "Inv.-Nr.", "Alte Inventarnummer", "Künstler", "Titel", "Datierung", "Technik", "Maße", "Höhe (cm)", "Breite (cm)",
    "Exemplar", "Signatur", "Erwerb", "Erhaltungszustand", "Werkverzeichnis", "Dateiname",
]
PERELAZ = "Perelaz, Oryna"
# Height and width stand in each other's columns, as in many tables that were made by hand.
LINDENMARK = [
    ["1938-77", None, PERELAZ, "Gulls over the Fish Steps", "1924", "Holzschnitt in drei Farben auf Japanpapier",
     "Darstellung 22 x 30 cm; Blatt 28,5 x 36,5 cm", 30, 22, "7/60", "O. Perelaz u. r. in Bleistift",
     "Ankauf von Dorn & Halyard, 1938", "gut", "Ambry 1969, W 1 II", "1938-77.jpg"],
    ["1938-78", None, PERELAZ, "Heron, First Frost", "1931/32", "Farbholzschnitt auf Simili-Japan",
     "310 x 200 mm (Darstellung), 374 x 257 mm (Blatt)", 20, 31, "37/80", None,
     "Ankauf von Dorn & Halyard, 1938", "dünne Stelle am oberen Rand", "Ambry 1969, W 9 III", None],
    ["1961-204", None, PERELAZ, "Gant Light, Rising Wind", "1927, gedruckt 1938",
     "Holzschnitt in vier Farben auf Japanpapier", "23,2 x 36,2 cm (Darstellung); Blatt 29 x 42 cm", 36.2, 23.2, "12/80",
     "bez. u. r.: O. Perelaz", "Geschenk von Dr. K. Ehrenfurth, Lindenmark, 1961", "sehr gut", "Ambry 1969, W 4 III",
     "1961-204.jpg"],
    ["1939-15", None, PERELAZ, "Unloading Oranges, Night", "um 1930", "Farbholzschnitt", "260 x 340 mm", 34, 26, "11/80",
     None, "Ankauf, 1939", "Einriss am linken Rand", "Ambry 1969, W 8 II", None],
    ["1959-31", None, PERELAZ, "The Tide Mill", "1927", "Radierung und Aquatinta auf Büttenpapier",
     "Platte 19,8 x 27,6 cm; Blatt 26,8 x 34,5 cm", 27.6, 19.8, "Probedruck", None,
     "Ankauf aus dem Nachlass Orle, 1959", None, "Ambry 1969, E 2 II", None],
    ["1959-32", None, PERELAZ, "Dredger in Fog", "1931", "Aquatinta und Radierung",
     "Platte 18,8 x 28,2 cm; Blatt 26,5 x 35 cm", 28.2, 18.8, None, "O. Perelaz 31", "Ankauf, 1959", "Quetschfalte",
     "Ambry 1969, E 4 I", None],
    ["1963-18", None, PERELAZ, "The Cooper's Yard", "1930, gedruckt 1933", "Radierung auf Velin",
     "Platte 25 x 19 cm; Blatt 33,5 x 26,5 cm", 19, 25, "14/40", "mit Bleistift signiert", "Tausch, 1963", "lichtrandig",
     "Ambry 1969, E 5", None],
    ["1954-7", "G 211", PERELAZ, "The Fog Bell", "um 1933", "Holzschnitt in drei Farben auf Maulbeerpapier",
     "24,1 x 17,8 cm (Passepartoutausschnitt)", 17.8, 24.1, "A.P. III/X", None,
     "Geschenk von Frau Ilse Marwede, 1954", None, "Ambry 1969, W 11", None],
    ["1954-8", "G 212", PERELAZ, "Rain from Seaward", "1932?", "Farbholzschnitt auf Japan", "20 x 33 cm", 33, 20, "A.P.",
     None, None, "stockfleckig", "Ambry 1969, W 10", None],
    [],
    ["1970-3", None, PERELAZ, "Nächtlicher Kai", "um 1912", "Linolschnitt auf Zeitungspapier", "14,2 x 20,5 cm", "=41/2", 14.2,
     None, None, "Vermächtnis Anna Wessling, 1970", "brüchig", None, None],
    ["1970-4", None, PERELAZ, "Nächtlicher Kai", "1912, gedruckt 1932", "Linolschnitt", "Bild 142 x 205 mm; Blatt 18 x 25 cm",
     20.5, 14.2, "Nr. 3 von 12", "sign. u. dat. 1932", "Vermächtnis Anna Wessling, 1970", None, "nicht bei Ambry", None],
    ["1970-5", None, "Kopie nach Oryna Perelaz", "Nets on Sluice Bridge", "nach 1928", "Holzschnitt, koloriert",
     "9 1/2 x 12 1/4 in.", "=9.5*2.54", None, None, None, "Vermächtnis Anna Wessling, 1970", None, None, None],
    ["1970-4", None, PERELAZ, "The Caulkers", "1928", "Radierung, Aquatinta", "21 x 29 cm (Plattenrand)", 29, 21,
     "e. a.", "signiert", "Ankauf, 1970", None, "Ambry 1969, E 3", None],
]
# The formula of the first such cell has the value that a spreadsheet program stored; that of the second has none.
STORED = (b"<f>41/2</f><v></v>", b"<f>41/2</f><v />", b"<f>41/2</f><v>20.5</v>")


def lindenmark(path):
    book = openpyxl.Workbook()
    sheet = book.active
    sheet.title = "Graphik"
    for row in [LINDENMARK_HEADING, *LINDENMARK]:
        sheet.append(row)
    # The credit line of two sheets of one gift.
    sheet.merge_cells("L9:L10")
    second = book.create_sheet("Hinweise")
    second.append(["Stand der Liste: Januar 2026"])
    book.save(path)
    parts = {}
    with zipfile.ZipFile(path) as archive:
        for info in archive.infolist():
            parts[info.filename] = archive.read(info)
    name = "xl/worksheets/sheet1.xml"
    stored = parts[name].replace(STORED[0], STORED[2]).replace(STORED[1], STORED[2])
    assert STORED[2] in stored
    parts[name] = stored
    # The hour at which the file was made would make it another at each run.
    del parts["docProps/core.xml"]
    parts["[Content_Types].xml"] = parts["[Content_Types].xml"].replace(
        b'<Override PartName="/docProps/core.xml" ContentType="application/vnd.openxmlformats-package.core-properties+xml" />', b"")
    parts["_rels/.rels"] = b"".join(
        part if b"core-properties" not in part else b""
        for part in parts["_rels/.rels"].replace(b"/>", b"/>\n").splitlines())
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive:
        for filename, content in parts.items():
            archive.writestr(zipfile.ZipInfo(filename, (2020, 1, 1, 0, 0, 0)), content, zipfile.ZIP_DEFLATED)


SAINT_AUBRAC_HEADING = [
    "N° d'inventaire", "Ancien numéro", "Auteur", "Titre", "Date", "Technique", "Dimensions", "Catalogue", "État", "Tirage",
    "Mode d'acquisition", "Inscriptions", "Remarques",
]
TEAPE = "Fonds Teape, legs 1938"
SAINT_AUBRAC = [
    ["Teape 61", "", PERELAZ, "Le phare de Gant, le vent se lève", "1927", "Bois gravé en couleurs sur papier japon",
     "Feuille 23,8 × 35,8 cm", "Ambry 1969, W 4", "II", "", TEAPE, "", "Rogné en bas, doublé sur carton"],
    ["Teape 64", "", PERELAZ, "Neige sur le quai au charbon", "1929", "Bois gravé en couleurs, rehauts de mica",
     "27 × 19 cm (image) ; 32,8 × 23,8 cm (feuille)", "Ambry 1969, W 7", "I", "", TEAPE, "", ""],
    ["Teape 70", "", PERELAZ, "Le moulin à marée", "1927-1928", "Eau-forte et aquatinte sur vergé",
     "Cuvette 19,8 × 27,6 cm", "Ambry 1969, E 2", "III", "", TEAPE, "", ""],
    ["Teape 80", "", PERELAZ, "La débâcle", "1936", "Bois gravé en couleurs", "24,5 × 36,8 cm", "Ambry 1969, W 14", "I", "",
     TEAPE, "", ""],
    ["2003.11.1", "D 402", PERELAZ, "Le phare de Gant, le vent se lève", "1927, tirage de 1956",
     "Bois gravé en couleurs sur vélin", "23,2 × 36,2 cm (image)", "Ambry 1969, W 4", "III", "31/65",
     "Don de M. Étienne Vauquelin, 2003", "Cachet de la succession", ""],
    ["2003.11.2", "D 403", PERELAZ, "Les vitrines du shipchandler", "vers 1926", "Bois gravé en couleurs",
     "28 × 20 cm (image)", "Ambry 1969, W 5", "II", "", "Don de M. Étienne Vauquelin, 2003", "Signé au crayon : O. Perelaz", ""],
    ["2003.11.3", "D 404", PERELAZ, "Le phare de Gant", "1927 ?", "Bois gravé", "246 × 362 mm", "Dreyloft 1936, 9", "I", "",
     "Don de M. Étienne Vauquelin, 2003", "", "Épreuve d'essai, avant le faisceau ?"],
    ["2003.11.4", "", PERELAZ, "Les grues, Vieux Bassin", "1925-1927", "Bois gravé en couleurs, en hauteur",
     "30 × 21 cm", "Dreyloft 1936, 3", "II", "", "Achat, 2003", "", ""],
    ["2003.11.5", "", "Anonyme d'après Oryna Perelaz", "Le phare de Gant", "s. d.", "Reproduction photomécanique",
     "12 × 18 cm", "", "", "", "Don anonyme", "", "À vérifier"],
    ["2011.4.1", "", PERELAZ, "Bac de nuit", "années 1920", "Linogravure sur papier pelure", "15,5 × 21 cm", "non décrit par Ambry",
     "", "ép. d'artiste", "Acquis en vente publique, Verlaan, 2011", "", ""],
]


def saint_aubrac(path):
    text = io.StringIO()
    writer = csv.writer(text, delimiter=";", lineterminator="\r\n")
    writer.writerow(SAINT_AUBRAC_HEADING)
    writer.writerows(SAINT_AUBRAC)
    path.write_bytes(text.getvalue().encode("cp1252"))


# Accession number, title, state, edition, statement of date, earliest, latest, technique, paper, sizes, catalogue, credit
# line, how acquired, from whom, when.
HOLMSTED = [
    ("KKS 1934:118", "Gant Light, Rising Wind", "1st state", "", "1927", "1927", "1927", "colour woodcut", "mulberry paper",
     [("image", 245.5, 361), ("sheet", 312, 430)], "Dreyloft 1936, 9", "Purchased 1934", "purchase", "", "1934"),
    ("KKS 1936:77", "Nets on Sluice Bridge", "only state", "", "1928", "1928", "1928", "colour woodcut", "mulberry paper",
     [("image", 230, 310), ("sheet", 285, 372)], "Ambry 1969, W 6", "Purchased 1936", "purchase", "", "1936"),
    ("KKS 1951:9", "The Salt Pans", "", "", "about 1933", "1932", "1934", "drypoint", "laid paper",
     [("plate", 120, 250), ("sheet", 171, 305)], "Ambry 1969, E 6", "Gift of Mrs Birgit Thorsø, 1951", "gift",
     "Mrs Birgit Thorsø", "1951"),
    ("KKS 1957:3", "The Tide Mill", "3rd state", "4/20", "plate 1927, this impression 1957", "1957", "1957",
     "etching and aquatint", "wove paper", [("plate", 198, 276)], "Ambry 1969, E 2", "Purchased from Tove Lindmarsh, 1957",
     "purchase", "Tove Lindmarsh", "1957"),
    ("KKS 1960:44", "The Old Crane at Holmsted Strand", "", "A.P.", "1922", "1922", "1922", "linocut", "japan paper",
     [("image", 160, 112)], "", "Bequest of Niels Aagren, 1960", "bequest", "Niels Aagren", "1960"),
]
TYPE = "http://terminology.lido-schema.org/lido00099"
AAT = "http://vocab.getty.edu/aat/"


def lido_record(record):
    (number, title, state, edition, date, earliest, latest, technique, paper, sizes, catalogue, credit, how, source,
     year) = record
    escaped = title.replace("&", "&amp;")
    measured = "".join(f"""
          <lido:objectMeasurementsSet>
            <lido:displayObjectMeasurements>{of}: {height} x {width} mm</lido:displayObjectMeasurements>
            <lido:objectMeasurements>
              <lido:measurementsSet>
                <lido:measurementType><lido:term>height</lido:term></lido:measurementType>
                <lido:measurementUnit><lido:term>mm</lido:term></lido:measurementUnit>
                <lido:measurementValue>{height}</lido:measurementValue>
              </lido:measurementsSet>
              <lido:measurementsSet>
                <lido:measurementType><lido:term>width</lido:term></lido:measurementType>
                <lido:measurementUnit><lido:term>mm</lido:term></lido:measurementUnit>
                <lido:measurementValue>{width}</lido:measurementValue>
              </lido:measurementsSet>
              <lido:extentMeasurements><lido:term>{of}</lido:term></lido:extentMeasurements>
            </lido:objectMeasurements>
          </lido:objectMeasurementsSet>""" for of, height, width in sizes)
    said = "".join(f"<lido:{name}>{text}</lido:{name}>" for name, text in
                   [("displayState", state), ("displayEdition", edition)] if text)
    said = f"\n        <lido:displayStateEditionWrap>{said}</lido:displayStateEditionWrap>" if said else ""
    work = f"""
    <lido:objectRelationWrap>
      <lido:relatedWorksWrap>
        <lido:relatedWorkSet>
          <lido:relatedWork><lido:displayObject>{catalogue}</lido:displayObject></lido:relatedWork>
          <lido:relatedWorkRelType><lido:term>catalogue raisonné</lido:term></lido:relatedWorkRelType>
        </lido:relatedWorkSet>
      </lido:relatedWorksWrap>
    </lido:objectRelationWrap>""" if catalogue else ""
    actor = f"""
            <lido:eventActor>
              <lido:displayActorInRole>{source}</lido:displayActorInRole>
            </lido:eventActor>""" if source else ""
    return f"""
  <lido:lido>
    <lido:lidoRecID lido:type="http://terminology.lido-schema.org/lido00100">holmsted/{number.split(" ")[1]}</lido:lidoRecID>
    <lido:descriptiveMetadata xml:lang="en">
      <lido:objectClassificationWrap>
        <lido:objectWorkTypeWrap>
          <lido:objectWorkType>
            <lido:conceptID lido:type="{TYPE}" lido:source="AAT">{AAT}300041273</lido:conceptID>
            <lido:term>prints (visual works)</lido:term>
          </lido:objectWorkType>
        </lido:objectWorkTypeWrap>
      </lido:objectClassificationWrap>
      <lido:objectIdentificationWrap>
        <lido:titleWrap>
          <lido:titleSet><lido:appellationValue xml:lang="en">{escaped}</lido:appellationValue></lido:titleSet>
        </lido:titleWrap>
        <lido:repositoryWrap>
          <lido:repositorySet>
            <lido:repositoryName>
              <lido:legalBodyName><lido:appellationValue>Holmsted Museum of Art</lido:appellationValue></lido:legalBodyName>
            </lido:repositoryName>
            <lido:workID>{number}</lido:workID>
          </lido:repositorySet>
        </lido:repositoryWrap>{said}
        <lido:objectMeasurementsWrap>{measured}
        </lido:objectMeasurementsWrap>
      </lido:objectIdentificationWrap>
      <lido:eventWrap>
        <lido:eventSet>
          <lido:event>
            <lido:eventType>
              <lido:conceptID lido:type="{TYPE}">http://terminology.lido-schema.org/lido00007</lido:conceptID>
              <lido:term>Production</lido:term>
            </lido:eventType>
            <lido:eventActor>
              <lido:actorInRole>
                <lido:actor>
                  <lido:nameActorSet><lido:appellationValue>Oryna Perelaz</lido:appellationValue></lido:nameActorSet>
                </lido:actor>
                <lido:roleActor><lido:term>artist</lido:term></lido:roleActor>
              </lido:actorInRole>
            </lido:eventActor>
            <lido:eventDate>
              <lido:displayDate>{date}</lido:displayDate>
              <lido:date><lido:earliestDate>{earliest}</lido:earliestDate><lido:latestDate>{latest}</lido:latestDate></lido:date>
            </lido:eventDate>
            <lido:eventMaterialsTech>
              <lido:displayMaterialsTech>{technique} on {paper}</lido:displayMaterialsTech>
            </lido:eventMaterialsTech>
          </lido:event>
        </lido:eventSet>
        <lido:eventSet>
          <lido:event>
            <lido:eventType>
              <lido:conceptID lido:type="{TYPE}">http://terminology.lido-schema.org/lido00001</lido:conceptID>
              <lido:term>Acquisition</lido:term>
            </lido:eventType>{actor}
            <lido:eventDate><lido:displayDate>{year}</lido:displayDate></lido:eventDate>
            <lido:eventMethod><lido:term>{how}</lido:term></lido:eventMethod>
          </lido:event>
        </lido:eventSet>
      </lido:eventWrap>{work}
    </lido:descriptiveMetadata>
    <lido:administrativeMetadata xml:lang="en">
      <lido:rightsWorkWrap>
        <lido:rightsWorkSet>
          <lido:creditLine>{credit}</lido:creditLine>
        </lido:rightsWorkSet>
      </lido:rightsWorkWrap>
      <lido:recordWrap>
        <lido:recordID lido:type="http://terminology.lido-schema.org/lido00100">{number}</lido:recordID>
        <lido:recordType><lido:term>item</lido:term></lido:recordType>
        <lido:recordSource>
          <lido:legalBodyName><lido:appellationValue>Holmsted Museum of Art</lido:appellationValue></lido:legalBodyName>
        </lido:recordSource>
      </lido:recordWrap>
    </lido:administrativeMetadata>
  </lido:lido>"""


def holmsted(path):
    records = "".join(lido_record(record) for record in HOLMSTED)
    path.write_text(f"""<?xml version="1.0" encoding="UTF-8"?>
<lido:lidoWrap xmlns:lido="http://www.lido-schema.org">{records}
</lido:lidoWrap>
""", encoding="utf-8")


if __name__ == "__main__":
    folder = Path(sys.argv[1])
    lindenmark(folder / "lindenmark.xlsx")
    saint_aubrac(folder / "saint-aubrac.windows-1252")
    holmsted(folder / "holmsted.xml")
