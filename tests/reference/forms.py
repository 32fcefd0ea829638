"""Opens the workbooks of a compiled site with openpyxl, fills one in and opens it again.

    python3 tests/reference/forms.py demo-site/web

Limits of ECMA-376, part 1: a list written out in a formula has at most 255 characters (18.3.1.32, from memory), so lists
are names; the name of a sheet has at most 31 characters; a cell at most 32,767 (limits of spreadsheet programs, from
memory); rows and columns end at 1,048,576 and 16,384.
"""
import io
import sys
from pathlib import Path

import openpyxl

site = Path(sys.argv[1])


def opened(path):
    book = openpyxl.load_workbook(path)
    assert len(book.worksheets) == 4, path
    form, help_, terms, lists = book.worksheets
    assert [sheet.sheet_state for sheet in book] == ["visible", "visible", "hidden", "hidden"]
    assert all(len(sheet.title) <= 31 for sheet in book)
    return book, form


def checked(path):
    book, form = opened(path)
    headings = [cell.value for cell in form[1]]
    assert all(headings) and len(set(headings)) == len(headings), path
    for cell in form[1]:
        assert cell.comment and "\n" in cell.comment.text, (path, cell.value)
        assert cell.number_format == "@" and cell.font.b
    for letter, width in form.column_dimensions.items():
        assert 10 < width.width < 60, (path, letter)
    assert form.freeze_panes == "B2"
    assert form.page_setup.orientation == "landscape" and form.page_setup.paperSize == 9
    assert form.sheet_properties.pageSetUpPr.fitToPage
    assert form.print_title_rows == "$1:$1"
    lists = form.data_validations.dataValidation
    assert len(lists) == 10, (path, len(lists))
    for listed in lists:
        assert listed.type == "list" and listed.errorStyle == "warning" and listed.allowBlank
        assert len(listed.formula1) <= 255 and '"' not in listed.formula1
        # Every name that the formula has leads to cells with values.
        names = [name for name in book.defined_names if name in listed.formula1.replace("(", ",").replace(")", ",").split(",")]
        assert names, listed.formula1
        for name in names:
            for title, cells in book.defined_names[name].destinations:
                values = [row[0].value for row in book[title][cells]]
                assert values[0] or len(values) == 1, (path, name)
                assert len(values) == 1 or all(values), (path, name)
    for sheet in book:
        assert sheet.max_row <= 1_048_576 and sheet.max_column <= 16_384
        for row in sheet.iter_rows():
            for cell in row:
                assert cell.data_type in ("s", "n", "inlineStr"), (path, cell.coordinate, cell.data_type)
                assert cell.value is None or len(str(cell.value)) <= 32_767
    return book, form, headings


count = 0
for path in sorted(site.glob("design/*/listing.xlsx")) + [site / "contribute/listing.xlsx"]:
    book, form, headings = checked(path)
    assert form.max_row == 1, path
    count += 1
    # A copy that openpyxl writes has everything still.
    form["A2"] = "012.5"
    copy = io.BytesIO()
    book.save(copy)
    copy.seek(0)
    again, form = opened(copy)
    assert form["A2"].value == "012.5"
    assert form["A1"].comment and len(form.data_validations.dataValidation) == 10
rows = 0
for path in sorted(site.glob("holder/*/sheets.xlsx")):
    book, form, headings = checked(path)
    assert headings[-1].startswith(("Impression", "Abzug"))
    for row in form.iter_rows(min_row=2, values_only=True):
        assert row[-1] and row[1], path
        rows += 1
assert count > 10 and rows > 100, (count, rows)
print(f"{count} forms, {rows} sheets of holders")
