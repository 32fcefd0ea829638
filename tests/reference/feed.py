"""Reads the feed of changes of a compiled catalogue with feedparser (PyPI), and checks what feedparser does not report.

Usage: feed.py SITE

feedparser says whether the feed is well formed. It reads a feed without id, title or date and reports nothing, so these
are checked here against RFC 4287: sections 4.1.1 and 4.1.2 (what a feed and an entry must have), 4.2.6 (ids are
absolute), 4.2.7.2 (no two alternate links of one type), 4.1.1 (an author, here that of the feed), and section 3.3 (dates
of RFC 3339). Every alternate link has to lead to a page of the site.
"""

import pathlib
import re
import sys
from urllib.parse import urlsplit
from xml.etree import ElementTree

import feedparser

ATOM = "{http://www.w3.org/2005/Atom}"
DATE = re.compile(r"^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d+)?(Z|[+-]\d{2}:\d{2})$")


def one(parent, name):
    found = parent.findall(ATOM + name)
    assert len(found) == 1, (name, len(found))
    assert (found[0].text or "").strip(), name
    return found[0].text


def checked(parent, base, site):
    """The id of a feed or entry whose parts are as RFC 4287 asks."""
    identity = one(parent, "id")
    assert urlsplit(identity).scheme == "https", identity
    one(parent, "title")
    assert DATE.match(one(parent, "updated")), identity
    links = [link for link in parent.findall(ATOM + "link") if link.get("rel") == "alternate"]
    assert len({(link.get("type"), link.get("hreflang")) for link in links}) == len(links) > 0, identity
    for link in links:
        assert link.get("href").startswith(base), link.get("href")
        page = site / link.get("href")[len(base) :] / "index.html"
        assert page.is_file(), page
    return identity


def main(site):
    site = pathlib.Path(site)
    file = site / "changes" / "feed.atom"
    read = feedparser.parse(file.read_bytes())
    assert not read.bozo, read.bozo_exception
    assert read.version == "atom10", read.version
    root = ElementTree.parse(file).getroot()
    own = [link.get("href") for link in root.findall(ATOM + "link") if link.get("rel") == "self"]
    assert len(own) == 1 and own[0].endswith("changes/feed.atom"), own
    base = own[0][: -len("changes/feed.atom")]
    assert root.findall(f"{ATOM}author/{ATOM}name"), "the feed has no author"
    ids = [checked(root, base, site)]
    entries = root.findall(ATOM + "entry")
    for entry in entries:
        ids.append(checked(entry, base, site))
        one(entry, "summary")
    assert len(set(ids)) == len(ids), "an id stands twice"
    dates = [entry.find(ATOM + "updated").text for entry in entries]
    assert dates == sorted(dates, reverse=True) and one(root, "updated") == dates[0], dates
    assert [entry.id for entry in read.entries] == ids[1:]
    assert all(entry.title and entry.summary and entry.updated_parsed for entry in read.entries)
    print(f"feed: {len(entries)} entries are read by feedparser and hold what RFC 4287 asks")


main(sys.argv[1])
