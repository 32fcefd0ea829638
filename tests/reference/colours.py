"""Holds the colours of pictures that the program made against Little CMS (through Pillow, PyPI).

Usage: colours.py KEYBLOCK

Profiles of invented inks and of an invented scanner are made here, pictures of many patches are saved with them as
CMYK and RGB in JPEG, PNG and TIFF. The program compiles a catalogue of them in the best quality,
and the middle of each patch is compared. The profiles have one table, which Little CMS uses for any intent;
colorimetrically, because perceptually it would scale black to black for its sRGB of version 4.
"""

import io
import pathlib
import struct
import subprocess
import sys
import tempfile

from PIL import Image, ImageCms

SIDE, PATCH = 12, 32
NEAR, MEAN = 4, 1.0


def wide(value):
    return struct.pack(">H", max(0, min(65535, round(value))))


def lab_of_light(light):
    rows = [(0.452, 0.399, 0.149), (0.222, 0.717, 0.061), (0.017, 0.118, 0.865)]
    shares = [sum(part * l for part, l in zip(row, light)) for row in rows]
    x, y, z = [s ** (1 / 3) if s > 216 / 24389 else (24389 / 27 * s + 16) / 116 for s in shares]
    return 116 * y - 16, 500 * (x - y), 200 * (y - z)


def lab_of_inks(inks):
    passes = [(0.04, 0.35, 0.65), (0.55, 0.05, 0.25), (0.80, 0.70, 0.05), (0.03, 0.03, 0.03)]
    light = [0.9] * 3
    for ink, through in zip(inks, passes):
        light = [l * (1 - ink * (1 - t)) for l, t in zip(light, through)]
    return lab_of_light(light)


def lut16(channels, grid, lab):
    table = b"mft2" + bytes(4) + bytes([channels, 3, grid, 0])
    table += b"".join(struct.pack(">i", 65536 if at % 4 == 0 else 0) for at in range(9))
    table += struct.pack(">HH", 17, 2)
    table += b"".join(wide((step / 16) ** 0.8 * 65535) for _ in range(channels) for step in range(17))
    for place in range(grid**channels):
        node = [place // grid**channel % grid / (grid - 1) for channel in reversed(range(channels))]
        l, a, b = lab(node)
        table += wide(l * 652.8) + wide((a + 128) * 256) + wide((b + 128) * 256)
    return table + 3 * (wide(0) + wide(65535))


def profile(kind, space, table):
    description = b"desc" + bytes(4) + struct.pack(">I", 9) + b"invented\0" + bytes(78)
    tags = [
        (b"desc", description),
        (b"cprt", b"text" + bytes(4) + b"invented\0"),
        (b"wtpt", b"XYZ " + bytes(4) + struct.pack(">iii", 0xF6D6, 0x10000, 0xD32D)),
        (b"A2B0", table),
    ]
    start = 128 + 4 + 12 * len(tags)
    directory, body = struct.pack(">I", len(tags)), b""
    for name, content in tags:
        content += bytes(-len(content) % 4)
        directory += name + struct.pack(">II", start + len(body), len(content))
        body += content
    header = struct.pack(">I", start + len(body)) + bytes(4) + bytes([2, 0x10, 0, 0]) + kind + space + b"Lab "
    header += struct.pack(">6H", 2026, 1, 1, 0, 0, 0) + b"acsp" + bytes(28)
    header += struct.pack(">iii", 0xF6D6, 0x10000, 0xD32D)
    return header + bytes(128 - len(header)) + directory + body


def patches(mode, count):
    """A picture of SIDE × SIDE patches whose values run through each channel at its own pace."""
    picture = Image.new(mode, (SIDE * PATCH, SIDE * PATCH))
    paces, state = [37, 91, 151, 197], 1
    for row in range(SIDE):
        for column in range(SIDE):
            state = (state * 1103515245 + 12345) % 2**31
            values = tuple((paces[c] * (row * SIDE + column) + (state >> (8 + 4 * c))) % 256 for c in range(count))
            # Hardly any picture has all inks at once, and black in most patches would hide the others.
            if count == 4:
                values = (*values[:3], values[3] // 3)
            picture.paste(values, (column * PATCH, row * PATCH, (column + 1) * PATCH, (row + 1) * PATCH))
    return picture


def converted(picture, source):
    srgb, intent = ImageCms.createProfile("sRGB"), ImageCms.Intent.RELATIVE_COLORIMETRIC
    return ImageCms.applyTransform(
        picture,
        ImageCms.buildTransform(source, srgb, picture.mode, "RGB", intent, 0),
    )


def middles(picture):
    half = PATCH // 2
    return [
        picture.getpixel((column * PATCH + half, row * PATCH + half))
        for row in range(SIDE)
        for column in range(SIDE)
    ]


def main():
    program = pathlib.Path(sys.argv[1]).resolve()
    inks = profile(b"prtr", b"CMYK", lut16(4, 9, lab_of_inks))
    scanner = profile(b"scnr", b"RGB ", lut16(3, 17, lambda rgb: lab_of_light([v * v for v in rgb])))
    sources = {name: ImageCms.ImageCmsProfile(io.BytesIO(icc)) for name, icc in (("inks", inks), ("scanner", scanner))}
    cmyk, rgb = patches("CMYK", 4), patches("RGB", 3)
    best = {"quality": 100, "subsampling": 0}
    with tempfile.TemporaryDirectory() as folder:
        catalogue = pathlib.Path(folder) / "catalogue"
        subprocess.run([program, "start", catalogue], check=True, capture_output=True)
        for old in sorted((catalogue / "records").rglob("*"), reverse=True):
            if old.is_file() and "designs" in old.parts:
                old.unlink()
        pictures = catalogue / "records/designs/1/pictures"
        pictures.mkdir(parents=True, exist_ok=True)
        (catalogue / "records/designs/1/impressions").mkdir(exist_ok=True)
        cmyk.save(pictures / "a.jpg", icc_profile=inks, **best)
        cmyk.save(pictures / "b.tif", icc_profile=inks, compression="tiff_lzw")
        rgb.save(pictures / "c.png", icc_profile=scanner)
        rgb.save(pictures / "d.jpg", icc_profile=scanner, **best)
        wanted = {
            "a.jpg": converted(Image.open(pictures / "a.jpg"), sources["inks"]),
            "b.tif": converted(cmyk, sources["inks"]),
            "c.png": converted(rgb, sources["scanner"]),
            "d.jpg": converted(Image.open(pictures / "d.jpg"), sources["scanner"]),
        }
        (catalogue / "records/designs/1/design.toml").write_text('titles = [{ text = "Patches" }]\n')
        record = 'status = "untraced"\n'
        for name in wanted:
            record += f'[[pictures]]\nname = "{name[0]}"\nfile = "pictures/{name}"\nrights = "CC0-1.0"\n'
        (catalogue / "records/designs/1/impressions/1.toml").write_text(record)
        settings = catalogue / "catalogue.toml"
        text = settings.read_text().replace("quality = 85", "quality = 100")
        settings.write_text(text)
        done = subprocess.run([program, "compile", catalogue], capture_output=True, text=True)
        assert done.returncode == 0, done.stdout + done.stderr
        for name, expected in wanted.items():
            made = catalogue / f"web/picture/1.1/{name[0]}/full/max/0/default.jpg"
            found, expected = middles(Image.open(made).convert("RGB")), middles(expected)
            apart = [max(abs(f - e) for f, e in zip(one, two)) for one, two in zip(found, expected)]
            mean = sum(apart) / len(apart)
            print(f"{name}: {len(apart)} colours, at most {max(apart)} levels apart, {mean:.2f} in the mean")
            assert max(apart) <= NEAR and mean <= MEAN, name


main()
