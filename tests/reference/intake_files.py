"""Writes the files of other programs that the tests of intake read: tests/intake/openpyxl.xlsx, odfpy.ods,
cromulent.json and iiif-prezi3.json.

    pip install openpyxl odfpy cromulent==1.0.1 iiif-prezi3==3.1.1
    python3 tests/reference/intake_files.py tests/intake

cromulent is the reference library of the model of Linked Art, iiif-prezi3 that of the IIIF Presentation API. The two
spreadsheets have the same rows, of an invented museum: German headings, a formula with its stored value where the library
writes one, a merged range, dates, an empty row.
"""
import datetime
import json
import sys
import zipfile
from pathlib import Path

import iiif_prezi3
import openpyxl
from cromulent import model, vocab
from odf.opendocument import OpenDocumentSpreadsheet
from odf.table import CoveredTableCell, Table, TableCell, TableRow
from odf.text import P

HEADING = ["Inv.-Nr.", "Titel", "Höhe (cm)", "Breite (cm)", "Datierung", "Erworben"]
ROWS = [
    ["HM 1970.12", 'Schleuse "am Kai"', 24.1, 17.8, "um 1912", datetime.date(1970, 3, 1)],
    ["HM 1971.3", "Wehr & Mühle", 30, 20.5, 1925, datetime.date(1971, 12, 24)],
]
MERGED = ["HM 1972.1", "[Ohne Titel]", 9.5, 7]


def workbook(path):
    book = openpyxl.Workbook()
    sheet = book.active
    sheet.title = "Graphik"
    for row in [HEADING, *ROWS, [], MERGED]:
        sheet.append(row)
    # Only programs that compute store a value beside a formula; openpyxl does not, so it is put in below.
    sheet["D3"] = "=41/2"
    sheet.merge_cells("D5:E5")
    book.save(path)
    parts = {}
    with zipfile.ZipFile(path) as archive:
        for info in archive.infolist():
            parts[info.filename] = archive.read(info)
    name = "xl/worksheets/sheet1.xml"
    stored = parts[name].replace(b"<f>41/2</f><v />", b"<f>41/2</f><v>20.5</v>")
    stored = stored.replace(b"<f>41/2</f><v></v>", b"<f>41/2</f><v>20.5</v>")
    assert b"<v>20.5</v>" in stored
    parts[name] = stored
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive:
        for filename, content in parts.items():
            archive.writestr(zipfile.ZipInfo(filename, (2020, 1, 1, 0, 0, 0)), content)


def cell(value, **more):
    if isinstance(value, datetime.date):
        made = TableCell(valuetype="date", datevalue=value.isoformat(), **more)
        shown = value.strftime("%d.%m.%y")
    elif isinstance(value, (int, float)):
        made = TableCell(valuetype="float", value=str(value), **more)
        shown = str(value).replace(".", ",")
    else:
        made = TableCell(valuetype="string", **more)
        shown = value
    made.addElement(P(text=shown))
    return made


def spreadsheet(path):
    document = OpenDocumentSpreadsheet()
    table = Table(name="Graphik")
    for values in [HEADING, *ROWS, [], MERGED]:
        row = TableRow()
        for place, value in enumerate(values):
            if values is MERGED and place == 3:
                row.addElement(cell(value, numbercolumnsspanned=2, numberrowsspanned=1))
                row.addElement(CoveredTableCell())
            else:
                row.addElement(cell(value))
        if not values:
            row.addElement(TableCell())
        table.addElement(row)
    document.spreadsheet.addElement(table)
    document.save(path)


HOUSE = "https://harbour-museum.example.org"


def printed(number, title, year, size, credit):
    """A print as the pages of the model show one: names, numbers, statements, production in parts, dimensions."""
    sheet = vocab.Print(ident=f"{HOUSE}/object/{number}", label=title)
    sheet.identified_by = vocab.PrimaryName(content=title)
    sheet.identified_by[0].language = vocab.instances["german"]
    sheet.identified_by = vocab.AccessionNumber(content=number)
    sheet.identified_by = vocab.LocalNumber(content=f"obj-{number}")
    sheet.referred_to_by = vocab.CreditStatement(content=credit)
    sheet.referred_to_by = vocab.MaterialStatement(content="Radierung auf B\u00fctten")
    sheet.referred_to_by = vocab.EditionStatement(content="Nr. 12 von 50")
    sheet.referred_to_by = vocab.ConditionStatement(content="fleckig")
    production = model.Production()
    sheet.produced_by = production
    designing = model.Production()
    designing.carried_out_by = model.Person(ident=f"{HOUSE}/person/brook", label="Ada Brook")
    designing.technique = model.Type(ident="http://vocab.getty.edu/aat/300053241", label="etching (printing process)")
    production.part = designing
    when = model.TimeSpan()
    when.begin_of_the_begin = f"{year}-01-01T00:00:00Z"
    when.end_of_the_end = f"{year}-12-31T23:59:59Z"
    when.identified_by = vocab.DisplayName(content=f"um {year}")
    production.timespan = when
    for kind, value in ((vocab.Height, size[0]), (vocab.Width, size[1])):
        length = kind(value=value)
        length.unit = vocab.instances["mm"]
        sheet.dimension = length
    sheet.made_of = model.Material(ident="http://vocab.getty.edu/aat/300014109", label="paper")
    museum = model.Group(ident=f"{HOUSE}/", label="Harbour Museum")
    sheet.current_owner = museum
    acquisition = model.Acquisition()
    acquisition.classified_as = model.Type(ident="http://vocab.getty.edu/aat/300417637", label="gift (method of acquisition)")
    acquisition.transferred_title_from = model.Person(ident=f"{HOUSE}/person/mill", label="C. Mill")
    acquisition.transferred_title_to = museum
    acquired = model.TimeSpan()
    acquired.identified_by = vocab.DisplayName(content="1970")
    acquisition.timespan = acquired
    sheet.changed_ownership_through = acquisition
    return sheet


def objects(path):
    sheets = [
        printed("HM 1970.12", "Schleuse am Kai", 1912, (241, 178), "Schenkung C. Mill, 1970"),
        printed("HM 1971.3", "Wehr und M\u00fchle", 1925, (300, 205.5), "Ankauf 1971"),
    ]
    items = [json.loads(model.factory.toString(sheet)) for sheet in sheets]
    # A page of the API (ActivityStreams) with the records themselves in it.
    page = {
        "@context": "https://www.w3.org/ns/activitystreams",
        "id": f"{HOUSE}/page/1",
        "type": "OrderedCollectionPage",
        "next": f"{HOUSE}/page/2",
        "orderedItems": items,
    }
    path.write_text(json.dumps(page, ensure_ascii=False, indent=1) + "\n", encoding="utf-8")


def manifests(path):
    items = []
    for number, title, year in (("HM 1970.12", "Schleuse am Kai", "um 1912"), ("HM 1971.3", "Wehr", "1925")):
        address = f"{HOUSE}/iiif/{number.replace(' ', '-')}"
        manifest = iiif_prezi3.Manifest(
            id=f"{address}/manifest.json",
            label={"de": [title], "en": [f"{title} (en)"]},
            metadata=[
                {"label": {"de": ["Inv.-Nr."], "en": ["Accession number"]}, "value": {"none": [number]}},
                {"label": {"de": ["Datierung"], "en": ["Date"]}, "value": {"de": [year], "en": [year.replace("um", "c.")]}},
                {"label": {"de": ["Technik"]}, "value": {"de": ["Radierung auf B\u00fctten"]}},
                {"label": {"de": ["Ma\u00dfe"]}, "value": {"de": ["Platte: 24,1 x 17,8 cm"]}},
            ],
            requiredStatement={"label": {"de": ["Creditzeile"]}, "value": {"de": ["Schenkung C. Mill, 1970"]}},
            rights="http://creativecommons.org/publicdomain/zero/1.0/",
            homepage=[{"id": f"{HOUSE}/object/{number}", "type": "Text", "label": {"de": ["Objekt"]}, "format": "text/html"}],
            provider=[{"id": f"{HOUSE}/", "type": "Agent", "label": {"de": ["Hafenmuseum"]}}],
        )
        canvas = manifest.make_canvas(id=f"{address}/canvas/1", label={"de": ["recto"]}, width=1780, height=2410)
        canvas.add_image(
            image_url=f"{address}/full/max/0/default.jpg",
            anno_page_id=f"{address}/page/1",
            anno_id=f"{address}/annotation/1",
            format="image/jpeg",
            width=1780,
            height=2410,
        )
        items.append(json.loads(manifest.json()))
    collection = iiif_prezi3.Collection(id=f"{HOUSE}/iiif/prints", label={"de": ["Graphik"]}, items=[])
    collection = json.loads(collection.json())
    collection["items"] = items
    path.write_text(json.dumps(collection, ensure_ascii=False, indent=1) + "\n", encoding="utf-8")


if __name__ == "__main__":
    folder = Path(sys.argv[1])
    workbook(folder / "openpyxl.xlsx")
    spreadsheet(folder / "odfpy.ods")
    objects(folder / "cromulent.json")
    manifests(folder / "iiif-prezi3.json")
