"""Writes the files of other programs that the tests of intake read: tests/intake/openpyxl.xlsx and odfpy.ods.

    pip install openpyxl odfpy
    python3 tests/reference/intake_files.py tests/intake

Both have the same rows, of an invented museum: German headings, a formula with its stored value where the library
writes one, a merged range, dates, an empty row.
"""
import datetime
import sys
import zipfile
from pathlib import Path

import openpyxl
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


if __name__ == "__main__":
    folder = Path(sys.argv[1])
    workbook(folder / "openpyxl.xlsx")
    spreadsheet(folder / "odfpy.ods")
