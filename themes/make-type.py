"""Makes the files of the text face again, from the unpacked npm package source-serif 4.5.1.

    npm pack source-serif@4.5.1 && tar xzf source-serif-4.5.1.tgz
    pip install fonttools==4.68.0 brotli==1.2.1
    python themes/make-type.py package themes/laid/assets/type

Two runs with these releases give the same bytes. The results are in the repository, so that the program is built
without Python and npm.

The name "Source" is reserved (SIL OFL 1.1, section 3), and a subset is a modified version: the files are named
"Keyblock Text" and "Keyblock Figures". Letters that the face lacks are built from its parts: k with dot below, i with
breve, the modifier primes, the ditto mark.
"""

import io
import sys
from pathlib import Path

from fontTools import subset
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.ttLib import TTFont

MACRONS = "U+0100-0101,U+0112-0113,U+012A-012B,U+014C-014D,U+016A-016B"
RANGES = {
    "latin": "U+0020-007E,U+00A0-00FF," + MACRONS + ",U+0131,U+0152-0153,U+0160-0161,U+0178,U+017D-017E,"
    "U+2009-200A,U+2010-2015,U+2018-201E,U+2020-2022,U+2026,U+202F,U+2030,U+2032-2033,U+2039-203A,"
    "U+2044,U+20AC,U+2116,U+2153-2154,U+215B-215E,U+2190-2193,U+2197,U+2212,U+2248,U+2264-2265,U+3003",
    "latin-ext": "U+0102-0111,U+0114-0129,U+012C-0130,U+0132-014B,U+014E-0151,U+0154-015F,U+0162-0169,"
    "U+016C-0177,U+0179-017C,U+017F,U+0192,U+01CD-01DC,U+01E6-01E7,U+01EA-01EB,U+0218-021B,"
    "U+0232-0233,U+0259,U+02B9-02BF,U+02C6-02C7,U+02D8-02DD,U+0300-0304,U+0306-030C,"
    "U+0323-0328,U+032E,U+0331,U+1E00-1E9F",
    "cyrillic": "U+0400-045F,U+0490-0491",
    "greek": "U+0370-03FF",
}
FEATURES = ["onum", "lnum", "tnum", "pnum", "liga", "kern", "locl", "frac", "sups"]
MORE = {"latin": ["smcp", "c2sc"], "latin-ext": ["smcp", "c2sc", "ccmp", "mark"]}
# The large numbers of entries: figures, the signs within numbers, and the letters of "12a" and "R 1".
FIGURES = "U+0020,U+002C-0039,U+0041-005A,U+0061-007A"
# The new letter: the letter that it is built on, another with the same mark, and that one's own base.
BUILT = {0x1E33: ("k", "ḥ", "h"), 0x1E32: ("K", "Ḥ", "H"), 0x12D: ("ı", "ğ", "g")}
ALIASES = {0x2B9: 0x2032, 0x2BA: 0x2033, 0x3003: 0x2033}


def numbers(ranges):
    for part in ranges.replace("U+", "").split(","):
        first, _, last = part.partition("-")
        yield from range(int(first, 16), int(last or first, 16) + 1)


def put(font, code, name):
    for table in font["cmap"].tables:
        if table.isUnicode():
            table.cmap[code] = name


def mend(font):
    cmap, glyf, hmtx = font.getBestCmap(), font["glyf"], font["hmtx"]
    for code, like in ALIASES.items():
        if code not in cmap:
            put(font, code, cmap[like])
    for code, letters in BUILT.items():
        base, sister, sister_base = (cmap[ord(letter)] for letter in letters)
        mark = [c for c in glyf[sister].components if c.glyphName != sister_base][-1]
        pen = TTGlyphPen(font.getGlyphSet())
        pen.addComponent(base, (1, 0, 0, 1, 0, 0))
        shift = (hmtx[base][0] - hmtx[sister_base][0]) // 2
        pen.addComponent(mark.glyphName, (1, 0, 0, 1, mark.x + shift, mark.y))
        name = f"kb{code:04X}"
        font.setGlyphOrder(font.getGlyphOrder() + [name])
        glyph = glyf.glyphs[name] = pen.glyph()
        glyf.glyphOrder = font.getGlyphOrder()
        glyph.recalcBounds(glyf)
        hmtx.metrics[name] = (hmtx[base][0], glyph.xMin)
        put(font, code, name)


def rename(font, family, style):
    new = {
        1: family,
        2: style,
        3: f"{family} {style}",
        4: f"{family} {style}",
        6: f"{family.replace(' ', '')}-{style}",
        16: family,
        17: style,
    }
    for record in font["name"].names:
        if record.nameID in new:
            record.string = new[record.nameID]


def cut(whole, ranges, features, path):
    whole.seek(0)
    part = TTFont(whole, recalcTimestamp=False)
    options = subset.Options(
        layout_features=features,
        flavor="woff2",
        hinting=False,
        name_IDs=[0, 1, 2, 3, 4, 5, 6, 13, 14],
        notdef_outline=True,
    )
    worker = subset.Subsetter(options)
    worker.populate(unicodes=numbers(ranges))
    worker.subset(part)
    subset.save_font(part, str(path), options)
    print(path.name, path.stat().st_size)
    return path.stat().st_size


def opened(file, family, style, is_mended):
    font = TTFont(file, recalcTimestamp=False)
    if is_mended:
        mend(font)
    rename(font, family, style)
    whole = io.BytesIO()
    font.save(whole)
    return whole


def main(package, out):
    files = package / "TTF"
    total = 0
    styles = (("Regular", "roman", "SourceSerif4-Regular.ttf"), ("Italic", "italic", "SourceSerif4-It.ttf"))
    for style, slug, file in styles:
        whole = opened(files / file, "Keyblock Text", style, True)
        for name, ranges in RANGES.items():
            features = FEATURES + MORE.get(name, [])
            total += cut(whole, ranges, features, out / f"text-{slug}-{name}.woff2")
    whole = opened(files / "SourceSerif4Display-Regular.ttf", "Keyblock Figures", "Regular", False)
    total += cut(whole, FIGURES, ["onum", "lnum", "kern"], out / "figures.woff2")
    (out / "OFL.txt").write_bytes(next(package.glob("LICENSE*")).read_bytes())
    print("all", total)


main(Path(sys.argv[1]), Path(sys.argv[2]))
