"""Harvests the OAI-PMH static repository of a compiled catalogue with a library of others (PyPI: sickle).

Usage: harvest.py SITE

A gateway answers the verbs of the protocol from the one file; here that is the class below, written after the
specification of 2004-04-23. sickle asks it over HTTP for every record in both formats.
"""

import http.server
import json
import pathlib
import sys
import threading
import urllib.parse

from lxml import etree
from sickle import Sickle

OAI = "http://www.openarchives.org/OAI/2.0/"
STATIC = "{http://www.openarchives.org/OAI/2.0/static-repository}"
LIDO = "{http://www.lido-schema.org}"


class Gateway(http.server.BaseHTTPRequestHandler):
    repository = None

    def do_GET(self):
        asked = dict(urllib.parse.parse_qsl(urllib.parse.urlsplit(self.path).query))
        answer = etree.Element(f"{{{OAI}}}OAI-PMH", nsmap={None: OAI})
        etree.SubElement(answer, f"{{{OAI}}}responseDate").text = "2026-01-01T00:00:00Z"
        etree.SubElement(answer, f"{{{OAI}}}request", verb=asked["verb"]).text = "http://localhost/"
        answer.append(self.part(asked))
        body = etree.tostring(answer, xml_declaration=True, encoding="UTF-8")
        self.send_response(200)
        self.send_header("Content-Type", "text/xml; charset=UTF-8")
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        self.wfile.write(body)

    def part(self, asked):
        """What stands in the file below the element that the verb names."""
        verb = etree.Element(f"{{{OAI}}}{asked['verb']}")
        for part in self.repository.findall(STATIC + asked["verb"]):
            if part.get("metadataPrefix") in (None, asked.get("metadataPrefix")):
                verb.extend(etree.fromstring(etree.tostring(part)))
        return verb

    def log_message(self, *_):
        pass


def read(path):
    return json.loads(path.read_text(encoding="utf-8"))


def main(site):
    Gateway.repository = etree.parse(str(site / "oai.xml")).getroot()
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), Gateway)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    sickle = Sickle(f"http://127.0.0.1:{server.server_port}/")
    identify = sickle.Identify()
    assert identify.protocolVersion == "2.0" and identify.deletedRecord == "no", vars(identify)
    assert "@" in identify.adminEmail, identify.adminEmail
    prefixes = [found.metadataPrefix for found in sickle.ListMetadataFormats()]
    assert prefixes == ["oai_dc", "lido"], prefixes
    # What the tables say of the same sheets.
    rows = read(site / "data/impressions.json")
    sheets = {row["address"]: row for row in rows if row["sheet"] == row["impression"]}
    harvested = {}
    for record in sickle.ListRecords(metadataPrefix="oai_dc"):
        address = record.metadata["identifier"][0]
        row = sheets[address]
        assert record.metadata["title"], address
        assert record.header.identifier.endswith(f"impression/{row['impression']}"), address
        assert row.get("accession", "") in record.metadata["source"][0], address
        harvested[record.header.identifier] = address
    for record in sickle.ListRecords(metadataPrefix="lido"):
        found = record.xml.find(f".//{LIDO}lidoRecID")
        assert found.text == harvested[record.header.identifier], record.header.identifier
    withdrawn = {row["design"] for row in read(site / "data/designs.json") if row["standing"] == "withdrawn"}
    kept = {
        address
        for address, row in sheets.items()
        if row["standing"] != "withdrawn" and row["design"] not in withdrawn
    }
    assert kept == set(harvested.values()), kept ^ set(harvested.values())
    print(f"{len(harvested)} records harvested in both formats")


if __name__ == "__main__":
    main(pathlib.Path(sys.argv[1]))
