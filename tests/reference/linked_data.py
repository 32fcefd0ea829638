"""Reads the linked data of a compiled catalogue with libraries of others.

Usage: linked_data.py KEYBLOCK CATALOGUE

Linked Art: PyPI PyLD, a JSON-LD processor, expands every record with the context of the model, which PyPI cromulent
carries; no key may be lost, and no name may stay relative. cromulent, the reference library of the model, builds every
record and refuses unknown classes and properties.
IIIF: PyPI iiif-prezi3 reads every manifest and collection. It mends much, so the rules are in tests/all/manifests.rs. The
places of points are mapped once more from the matrices of `keyblock align --json`, and may differ by 2 px.
schema.org: every property of every data block is one of its type in PyPI msgspec-schemaorg, and a thing that is its value
is of a type that the property takes.

What no registry carries: the JSON schemas of Linked Art and of IIIF, and the context of IIIF (their rules are in
tests/all/linked_art.rs and tests/all/manifests.rs), and a validator of Open Graph.
"""

import html
import importlib.resources
import json
import pathlib
import re
import subprocess
import sys

import iiif_prezi3
import msgspec_schemaorg.models as schema
from cromulent import reader
from pyld import jsonld

LINKED_ART = "https://linked.art/ns/v1/linked-art.json"
CONTEXT = json.loads(importlib.resources.files("cromulent").joinpath("data/linked-art.json").read_text(encoding="utf-8"))


def offline(url, _options):
    assert url == LINKED_ART, f"{url} would be fetched"
    return {"contextUrl": None, "documentUrl": url, "document": CONTEXT}


jsonld.set_document_loader(offline)


def read(path):
    return json.loads(path.read_text(encoding="utf-8"))


def keys(value):
    """How many keys with a value a document has, without its context, the graph and the lists around values."""
    if isinstance(value, list):
        return sum(keys(item) for item in value)
    if isinstance(value, dict):
        return sum((key not in ("@context", "@graph")) + keys(item) for key, item in value.items())
    return 0


def expanded_keys(value):
    if isinstance(value, list):
        return sum(expanded_keys(item) for item in value)
    if isinstance(value, dict):
        if "@value" in value:
            return 0
        for key in value:
            assert key.startswith("@") or ":" in key, f"{key} is not defined in the context"
        assert ":" in value.get("@id", ":"), value["@id"]
        for kind in value.get("@type", []):
            assert ":" in kind, f"{kind} is not defined in the context"
        # `assigned_property` names a property and becomes a reference to it, which is a node of its own.
        own = sum(key != "@id" or len(value) > 1 or not is_property(value) for key in value)
        return own + sum(expanded_keys(item) for item in value.values())
    return 0


def is_property(node):
    return set(node) == {"@id"}


def records(path):
    document = read(path)
    for record in document.get("@graph", [document]):
        yield {"@context": document["@context"], **record}


def properties_of(value):
    """The properties of a record and of everything in it, each with its class."""
    if isinstance(value, list):
        for item in value:
            yield from properties_of(item)
    elif isinstance(value, dict):
        for key, item in value.items():
            yield (value["type"], key)
            yield from properties_of(item)


def without_assigned_property(value):
    """DIFFERS: cromulent 1.0.1 refuses the text that the model's documentation and schemas ask for (it wants a Type)."""
    if isinstance(value, list):
        return [without_assigned_property(item) for item in value]
    if isinstance(value, dict):
        return {key: without_assigned_property(item) for key, item in value.items() if key != "assigned_property"}
    return value


def linked_art(site):
    files = sorted(site.glob("**/linked-art.json")) + sorted(site.glob("impression/*/provenance.json"))
    words = sorted(site.glob("document/*/words.json"))
    assert len(words) >= 8, f"only {len(words)} documents have words"
    files += words
    assert len(files) > 100, f"only {len(files)} files"
    seen = 0
    sizes = {}
    all_records = []
    builder = reader.Reader()
    for path in files:
        sizes.setdefault(path.relative_to(site).parts[0] + "/" + path.name, []).append(path.stat().st_size)
        for record in records(path):
            builder.read(without_assigned_property(record))
            all_records.append({key: value for key, value in record.items() if key != "@context"})
            seen += 1
    # The processor takes 45 ms for a record: every eighth, and each that has a property of a class for the first time.
    known = set()
    chosen = []
    for at, record in enumerate(all_records):
        properties = set(properties_of(record))
        if at % 8 == 0 or not properties <= known:
            chosen.append(record)
            known |= properties
    # Many at once, because it reads the context anew for each document.
    for start in range(0, len(chosen), 100):
        some = chosen[start:start + 100]
        expanded = jsonld.expand({"@context": LINKED_ART, "@graph": some})
        assert len(expanded) == len(some)
        for record, one in zip(some, expanded):
            assert one["@id"] == record["id"]
            found, given = expanded_keys(one), keys(record)
            assert found == given, f"{record['id']}: {given} keys became {found}"
    for name, all_sizes in sorted(sizes.items()):
        print(f"linked data: {name}: {len(all_sizes)} files, {sum(all_sizes) / len(all_sizes):.0f} bytes each on average")
    print(f"linked data: {seen} records are built by cromulent; {len(chosen)} of them, with all {len(known)} properties of classes, keep every key in PyLD")


def resources(site):
    manifests = sorted(site.glob("**/manifest.json"))
    collections = sorted(site.glob("**/collection.json"))
    assert len(manifests) > 50 and len(collections) > 20, (len(manifests), len(collections))
    for path in manifests:
        given = read(path)
        manifest = iiif_prezi3.Manifest(**given)
        assert [canvas.id for canvas in manifest.items] == [canvas["id"] for canvas in given["items"]], path
        again = json.loads(manifest.json())
        assert again["label"] == given["label"] and len(again["items"]) == len(given["items"]), path
    for path in collections:
        given = read(path)
        collection = iiif_prezi3.Collection(**given)
        assert len(collection.items) == len(given["items"]) > 0, path
    size = sum(path.stat().st_size for path in manifests) / len(manifests)
    print(f"linked data: {len(manifests)} manifests ({size:.0f} bytes each on average) and {len(collections)} collections are read by iiif-prezi3")


def corners(target, canvas):
    """The corners of an annotation's place; a rectangle's from its upper left, clockwise."""
    if isinstance(target, str):
        x, y, width, height = (float(n) for n in target.split("#xywh=")[1].split(","))
        return [(x, y), (x + width, y), (x + width, y + height), (x, y + height)], True
    path = re.search(r'd="M([^"]+)Z"', target["selector"]["value"]).group(1)
    return [tuple(float(n) for n in point.split(",")) for point in path.split("L")], False


def solve(matrix, x, y):
    """Where the inverse of a projective map takes a point."""
    a, b, c, d, e, f, g, h, i = matrix
    inverse = [e * i - f * h, c * h - b * i, b * f - c * e, f * g - d * i, a * i - c * g, c * d - a * f, d * h - e * g, b * g - a * h, a * e - b * d]
    depth = inverse[6] * x + inverse[7] * y + inverse[8]
    return ((inverse[0] * x + inverse[1] * y + inverse[2]) / depth, (inverse[3] * x + inverse[4] * y + inverse[5]) / depth)


def places(keyblock, catalogue, site, design):
    """Maps the boxes of points from the reference picture by the matrices of `align`."""
    run = subprocess.run([keyblock, "align", design, "--in", catalogue, "--json"], capture_output=True, text=True, check=True)
    answer = json.loads(run.stdout)
    canvases = {}
    for path in site.glob(f"impression/{design}.*/manifest.json"):
        for canvas in read(path)["items"]:
            canvases[canvas["id"].split("/picture/")[1].removesuffix("/canvas")] = canvas
    points = lambda canvas: {a["id"].rsplit("/", 1)[1]: a["target"] for page in canvas.get("annotations", []) for a in page["items"]}
    reference = canvases[answer["reference"]]
    compared = 0
    for aligned in answer["pictures"]:
        canvas = canvases.get(aligned["picture"])
        if canvas is None or aligned["matrix"] is None or aligned["picture"] == answer["reference"]:
            continue
        info = read(site / "picture" / aligned["picture"] / "info.json")
        assert (info["width"], info["height"]) == (canvas["width"], canvas["height"])
        for point, target in points(canvas).items():
            box, _ = corners(points(reference)[point], reference)
            # The demonstration's masters are published in full, so masters and canvases have the same pixels.
            mapped = [solve(aligned["matrix"], x - 0.5, y - 0.5) for x, y in box]
            mapped = [(min(max(x + 0.5, 0), canvas["width"]), min(max(y + 0.5, 0), canvas["height"])) for x, y in mapped]
            found, is_rectangle = corners(target, canvas)
            if is_rectangle:
                xs, ys = [x for x, _ in mapped], [y for _, y in mapped]
                mapped = [(min(xs), min(ys)), (max(xs), min(ys)), (max(xs), max(ys)), (min(xs), max(ys))]
            apart = max(max(abs(a - b) for a, b in zip(one, other)) for one, other in zip(found, mapped))
            assert apart <= 2, (aligned["picture"], point, found, mapped)
            compared += 1
    assert compared > 20, f"only {compared} places"
    print(f"linked data: {compared} places of points on the photographs of no. {design} are where `align` maps them")


def types():
    found = {}
    for name in dir(schema):
        kind = getattr(schema, name)
        if isinstance(kind, type) and hasattr(kind, "__struct_encode_fields__"):
            found[name] = kind
    return found


TYPES = types()


def takes(kind, prop, value):
    """Whether a property of a type may have a thing as its value."""
    for ancestor in kind.__mro__:
        told = getattr(ancestor, "__annotations__", {}).get(prop)
        if told:
            names = set(re.findall(r"\w+", str(told)))
            return any(parent.__name__ in names for parent in TYPES[value["@type"]].__mro__)
    return False


def thing(value, path):
    kind = TYPES[value["@type"]]
    known = set(kind.__struct_encode_fields__) | {"@id", "@type"}
    for prop, given in value.items():
        assert prop in known, f"{path}: {value['@type']} has no {prop}"
        for one in given if isinstance(given, list) else [given]:
            if isinstance(one, dict):
                assert takes(kind, prop, one), f"{path}: {prop} of {value['@type']} is no {one['@type']}"
                thing(one, path)


def blocks(site):
    pages = 0
    kinds = {}
    for path in sorted(site.glob("**/index.html")):
        text = path.read_text(encoding="utf-8")
        found = re.findall(r'<script type="application/ld\+json">(.*?)</script>', text, re.S)
        if 'http-equiv="refresh"' in text:
            assert not found, path
            continue
        assert len(found) == 1, path
        block = json.loads(found[0])
        assert block["@context"] == "https://schema.org"
        for one in block["@graph"]:
            thing(one, path)
            kinds[one["@type"]] = kinds.get(one["@type"], 0) + 1
        image = re.search(r'property="og:image" content="([^"]*)"', text)
        if image:
            address = html.unescape(image.group(1))
            base = re.search(r'property="og:url" content="([^"]*)"', text).group(1).removesuffix(path.parent.relative_to(site).as_posix() + "/")
            base = base if path.parent != site else re.search(r'property="og:url" content="([^"]*)"', text).group(1)
            assert (site / address.removeprefix(base)).is_file(), (path, address)
        pages += 1
    assert pages > 100 and {"VisualArtwork", "Person", "Museum", "Dataset", "WebSite", "BreadcrumbList"} <= set(kinds), kinds
    print(f"linked data: the blocks of {pages} pages have only properties of schema.org: {kinds}")


def main(keyblock, catalogue):
    site = pathlib.Path(catalogue) / "web"
    linked_art(site)
    resources(site)
    places(keyblock, catalogue, site, "7")
    blocks(site)


main(*sys.argv[1:])
