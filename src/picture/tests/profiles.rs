//! Colour profiles made of tables (ICC.1:2022), of invented inks and of an invented scanner.

/// A profile: its header, a table of tags, the tags.
fn profile(
    class: [u8; 4],
    space: [u8; 4],
    pcs: [u8; 4],
    version: u8,
    tables: &[([u8; 4], Vec<u8>)],
) -> Vec<u8> {
    let mut tags: Vec<([u8; 4], Vec<u8>)> = vec![
        (*b"cprt", [&b"text\0\0\0\0invented\0"[..]].concat()),
        (
            *b"wtpt",
            [
                &b"XYZ \0\0\0\0"[..],
                &[0, 0, 0xF6, 0xD6, 0, 1, 0, 0, 0, 0, 0xD3, 0x2D],
            ]
            .concat(),
        ),
    ];
    tags.extend(tables.iter().cloned());
    let mut directory = u32::try_from(tags.len()).unwrap().to_be_bytes().to_vec();
    let mut body = Vec::new();
    let start = 128 + 4 + tags.len() * 12;
    for (name, mut content) in tags {
        while content.len() % 4 != 0 {
            content.push(0);
        }
        directory.extend(name);
        directory.extend(u32::try_from(start + body.len()).unwrap().to_be_bytes());
        directory.extend(u32::try_from(content.len()).unwrap().to_be_bytes());
        body.extend(content);
    }
    let mut header = vec![0; 128];
    let size = u32::try_from(start + body.len()).unwrap();
    header[..4].copy_from_slice(&size.to_be_bytes());
    header[8] = version;
    header[12..16].copy_from_slice(&class);
    header[16..20].copy_from_slice(&space);
    header[20..24].copy_from_slice(&pcs);
    header[24..36].copy_from_slice(&[7, 0xEA, 0, 1, 0, 1, 0, 0, 0, 0, 0, 0]);
    header[36..40].copy_from_slice(b"acsp");
    header[68..80].copy_from_slice(&[0, 0, 0xF6, 0xD6, 0, 1, 0, 0, 0, 0, 0xD3, 0x2D]);
    [header, directory, body].concat()
}

/// CIELAB under D50 of what four inks leave of light: each lets through a share of red, green and blue light,
/// in proportion to its amount.
pub fn lab_of_inks(inks: &[f64]) -> [f64; 3] {
    const PASSES: [[f64; 3]; 4] = [
        [0.04, 0.35, 0.65],
        [0.55, 0.05, 0.25],
        [0.80, 0.70, 0.05],
        [0.03, 0.03, 0.03],
    ];
    let mut light = [0.9; 3];
    for (ink, passes) in inks.iter().zip(PASSES) {
        for (light, passes) in light.iter_mut().zip(passes) {
            *light *= 1.0 - ink * (1.0 - passes);
        }
    }
    lab_of_light(light)
}

/// CIELAB under D50 of linear red, green and blue with primaries near those of sRGB.
pub fn lab_of_light(light: [f64; 3]) -> [f64; 3] {
    const ROWS: [[f64; 3]; 3] = [
        [0.452, 0.399, 0.149],
        [0.222, 0.717, 0.061],
        [0.017, 0.118, 0.865],
    ];
    let root = |row: [f64; 3]| {
        let share: f64 = row
            .iter()
            .zip(light)
            .map(|(part, light)| part * light)
            .sum();
        if share > 216.0 / 24389.0 {
            libm::cbrt(share)
        } else {
            (24389.0 / 27.0 * share + 16.0) / 116.0
        }
    };
    let [x, y, z] = ROWS.map(root);
    [116.0 * y - 16.0, 500.0 * (x - y), 200.0 * (y - z)]
}

fn wide(value: f64) -> [u8; 2] {
    let whole: f64 = value.clamp(0.0, 65535.0);
    format!("{whole:.0}").parse::<u16>().unwrap().to_be_bytes()
}

/// Every node of a grid, the first channel slowest.
fn nodes(channels: u32, grid: u32) -> impl Iterator<Item = Vec<f64>> {
    (0..grid.pow(channels)).map(move |place| {
        (0..channels)
            .rev()
            .map(|channel| f64::from(place / grid.pow(channel) % grid) / f64::from(grid - 1))
            .collect()
    })
}

/// `lut16Type`: curves of a gamma on both sides of the nodes.
fn lut16(channels: u32, grid: u32, encoded: impl Fn(&[f64]) -> [f64; 3]) -> Vec<u8> {
    let mut table = b"mft2\0\0\0\0".to_vec();
    table.extend([
        u8::try_from(channels).unwrap(),
        3,
        u8::try_from(grid).unwrap(),
        0,
    ]);
    for at in 0..9 {
        table.extend(if at % 4 == 0 { [0, 1, 0, 0] } else { [0; 4] });
    }
    table.extend([0, 17, 0, 2]);
    for _ in 0..channels {
        for step in 0..17 {
            table.extend(wide(libm::pow(f64::from(step) / 16.0, 0.8) * 65535.0));
        }
    }
    for node in nodes(channels, grid) {
        table.extend(encoded(&node).into_iter().flat_map(wide));
    }
    for _ in 0..3 {
        table.extend([0, 0, 0xFF, 0xFF]);
    }
    table
}

/// CIELAB as a `lut16Type` has it.
fn legacy([l, a, b]: [f64; 3]) -> [f64; 3] {
    [l * 652.8, (a + 128.0) * 256.0, (b + 128.0) * 256.0]
}

/// Four invented inks, version 2, 16 bits.
pub fn inks() -> Vec<u8> {
    let table = lut16(4, 9, |inks| legacy(lab_of_inks(inks)));
    profile(*b"prtr", *b"CMYK", *b"Lab ", 2, &[(*b"A2B0", table)])
}

/// The same in 8 bits.
pub fn inks_of_8_bits() -> Vec<u8> {
    let mut table = b"mft1\0\0\0\0\x04\x03\x09\0".to_vec();
    for at in 0..9 {
        table.extend(if at % 4 == 0 { [0, 1, 0, 0] } else { [0; 4] });
    }
    table.extend((0..4).flat_map(|_| 0..=u8::MAX));
    for node in nodes(4, 9) {
        let [l, a, b] = lab_of_inks(&node);
        table.extend([l * 2.55, a + 128.0, b + 128.0].map(|v| wide(v)[1]));
    }
    table.extend((0..3).flat_map(|_| 0..=u8::MAX));
    profile(*b"prtr", *b"CMYK", *b"Lab ", 2, &[(*b"A2B0", table)])
}

/// Three channels of an invented scanner, `lut16Type`, version 2.
pub fn scanner() -> Vec<u8> {
    let lab = |rgb: &[f64]| lab_of_light([rgb[0] * rgb[0], rgb[1] * rgb[1], rgb[2] * rgb[2]]);
    let table = lut16(3, 17, |rgb| legacy(lab(rgb)));
    profile(*b"scnr", *b"RGB ", *b"Lab ", 2, &[(*b"A2B0", table)])
}

/// The same as a `lutAToBType` of version 4: curves, a table, curves, a matrix and curves.
pub fn scanner_of_version_4() -> Vec<u8> {
    let curve = |exponent: u16| {
        let mut curve = b"curv\0\0\0\0\0\0\0\x01".to_vec();
        curve.extend(exponent.to_be_bytes());
        curve.extend([0, 0]);
        curve
    };
    let curves = |exponent| [curve(exponent), curve(exponent), curve(exponent)].concat();
    // u8Fixed8: 0x0100 is 1.
    let straight = curves(0x0100);
    let number = |value: f64| {
        format!("{:.0}", value * 65536.0)
            .parse::<i32>()
            .unwrap()
            .to_be_bytes()
    };
    let mut matrix = Vec::new();
    for value in [1.0, 0.0, 0.0, 0.0, 0.9, 0.0, 0.0, 0.0, 0.9, 0.0, 0.05, 0.05] {
        matrix.extend(number(value));
    }
    let mut table = [17_u8; 3].to_vec();
    table.resize(16, 0);
    table.extend([2, 0, 0, 0]);
    for rgb in nodes(3, 17) {
        let [l, x, y] = lab_of_light([rgb[0] * rgb[0], rgb[1] * rgb[1], rgb[2] * rgb[2]]);
        // Undone by the matrix: 0.9 v + 0.05.
        let ab = |value: f64| (((value + 128.0) / 255.0) - 0.05) / 0.9 * 65535.0;
        table.extend(
            [l / 100.0 * 65535.0, ab(x), ab(y)]
                .into_iter()
                .flat_map(wide),
        );
    }
    while table.len() % 4 != 0 {
        table.push(0);
    }
    let mut tag = b"mAB \0\0\0\0\x03\x03\0\0".to_vec();
    let mut at = 32;
    let mut offsets = Vec::new();
    for part in [&straight, &matrix, &straight, &table, &straight] {
        offsets.extend(u32::try_from(at).unwrap().to_be_bytes());
        at += part.len();
    }
    tag.extend(offsets);
    tag.extend([&straight[..], &matrix, &straight, &table, &straight].concat());
    profile(*b"scnr", *b"RGB ", *b"Lab ", 4, &[(*b"A2B0", tag)])
}
