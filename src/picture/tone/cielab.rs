//! From sRGB to CIELAB, and how far two colours lie apart.
//!
//! sRGB by IEC 61966-2-1; its primaries as a matrix to XYZ under D65, of which the rows add up to the
//! white used, so that neutral greys have a* = b* = 0; CIELAB by CIE 15; differences by CIEDE2000
//! (Sharma, Wu, Dalal 2005, whose table of 34 pairs is the test).
//!
//! Written here because it is a page of formulas, and because a difference must be exactly the same
//! both ways round and on every machine; the library `palette` is what the tests compare with.

/// Linear red, green and blue of sRGB's primaries, 0 to 1; above 1 where something is lighter than
/// what was taken as white.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Linear(pub [f64; 3]);

/// L*, a*, b* under D65.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lab(pub [f64; 3]);

/// Linear sRGB to XYZ (IEC 61966-2-1, to seven places).
const TO_XYZ: [[f64; 3]; 3] = [
    [0.412_456_4, 0.357_576_1, 0.180_437_5],
    [0.212_672_9, 0.715_152_2, 0.072_175_0],
    [0.019_333_9, 0.119_192_0, 0.950_304_1],
];

impl Linear {
    /// The light of an 8-bit sRGB colour.
    #[must_use]
    pub fn from_srgb(encoded: [u8; 3]) -> Linear {
        Linear(encoded.map(|channel| {
            let value = f64::from(channel) / 255.0;
            if value <= 0.04045 {
                value / 12.92
            } else {
                libm::pow((value + 0.055) / 1.055, 2.4)
            }
        }))
    }

    /// The nearest 8-bit sRGB colour.
    #[must_use]
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "clamped to 0..=255 before"
    )]
    pub fn to_srgb(self) -> [u8; 3] {
        self.0.map(|light| {
            let value = if light <= 0.003_130_8 {
                light * 12.92
            } else {
                1.055 * libm::pow(light, 1.0 / 2.4) - 0.055
            };
            (value * 255.0).round().clamp(0.0, 255.0) as u8
        })
    }

    /// Its CIELAB, with 1, 1, 1 as white.
    #[must_use]
    pub fn to_lab(self) -> Lab {
        let [x, y, z] = TO_XYZ.map(|row| {
            let (sum, white) = row
                .iter()
                .zip(self.0)
                .fold((0.0, 0.0), |(sum, white), (part, light)| {
                    (sum + part * light, white + part)
                });
            compressed(sum / white)
        });
        Lab([116.0 * y - 16.0, 500.0 * (x - y), 200.0 * (y - z)])
    }
}

/// The cube root of CIELAB with its straight part near black (CIE 15).
fn compressed(share: f64) -> f64 {
    const EDGE: f64 = 6.0 / 29.0;
    if share > EDGE * EDGE * EDGE {
        libm::cbrt(share)
    } else {
        share / (3.0 * EDGE * EDGE) + 4.0 / 29.0
    }
}

/// How far two colours lie apart, as CIEDE2000 with all weights 1: about 1 is the least that an eye
/// tells apart side by side. The same both ways round.
#[must_use]
pub fn ciede2000(Lab([l1, a1, b1]): Lab, Lab([l2, a2, b2]): Lab) -> f64 {
    const FULL: f64 = 360.0;
    // 25^7, where the correction for chroma has its middle.
    const MIDDLE: f64 = 6_103_515_625.0;
    let share = |chroma: f64| {
        let seventh = libm::pow(chroma, 7.0);
        (seventh / (seventh + MIDDLE)).sqrt()
    };
    let mean_chroma = f64::midpoint(libm::hypot(a1, b1), libm::hypot(a2, b2));
    let stretch = 1.0 + 0.5 * (1.0 - share(mean_chroma));
    let polar = |a: f64, b: f64| {
        let a = a * stretch;
        let hue = if a == 0.0 && b == 0.0 {
            0.0
        } else {
            libm::atan2(b, a).to_degrees()
        };
        let hue = if hue < 0.0 { hue + FULL } else { hue };
        (libm::hypot(a, b), hue)
    };
    let ((c1, h1), (c2, h2)) = (polar(a1, b1), polar(a2, b2));
    let has_hues = c1 * c2 != 0.0;

    let lightness = l2 - l1;
    let chroma = c2 - c1;
    let turn = match h2 - h1 {
        _ if !has_hues => 0.0,
        turn if turn > 180.0 => turn - FULL,
        turn if turn < -180.0 => turn + FULL,
        turn => turn,
    };
    let hue = 2.0 * (c1 * c2).sqrt() * sin(turn / 2.0);

    let mean_lightness = f64::midpoint(l1, l2);
    let mean_chroma = f64::midpoint(c1, c2);
    let sum = h1 + h2;
    let mean_hue = if !has_hues {
        sum
    } else if (h1 - h2).abs() <= 180.0 {
        f64::midpoint(h1, h2)
    } else if sum < FULL {
        f64::midpoint(sum, FULL)
    } else {
        f64::midpoint(sum, -FULL)
    };
    let t = 1.0 - 0.17 * cos(mean_hue - 30.0)
        + 0.24 * cos(2.0 * mean_hue)
        + 0.32 * cos(3.0 * mean_hue + 6.0)
        - 0.20 * cos(4.0 * mean_hue - 63.0);
    let off_blue = (mean_hue - 275.0) / 25.0;
    let rotation = 30.0 * libm::exp(-off_blue * off_blue);
    let from_middle = (mean_lightness - 50.0) * (mean_lightness - 50.0);
    let for_lightness = 1.0 + 0.015 * from_middle / (20.0 + from_middle).sqrt();
    let for_chroma = 1.0 + 0.045 * mean_chroma;
    let for_hue = 1.0 + 0.015 * mean_chroma * t;
    let twist = -2.0 * share(mean_chroma) * sin(2.0 * rotation);

    let (lightness, chroma, hue) = (
        lightness / for_lightness,
        chroma / for_chroma,
        hue / for_hue,
    );
    let squared = lightness * lightness + chroma * chroma + hue * hue + twist * chroma * hue;
    squared.max(0.0).sqrt()
}

fn sin(degrees: f64) -> f64 {
    libm::sin(degrees.to_radians())
}

fn cos(degrees: f64) -> f64 {
    libm::cos(degrees.to_radians())
}

#[cfg(test)]
mod tests {
    use palette::color_difference::Ciede2000 as _;
    use palette::white_point::D65;

    use super::*;

    /// Rows of a table of numbers, without the line of its source and its headings.
    fn rows(table: &str) -> impl Iterator<Item = Vec<&str>> {
        let lines = table.lines().filter(|line| !line.starts_with('#'));
        lines.skip(1).map(|line| line.split(',').collect())
    }

    /// Source: Sharma, Wu, Dalal 2005, Table 1 (`tests/checks/ciede2000.csv`).
    #[test]
    fn the_34_published_pairs_are_met_to_four_places_and_both_ways_round() {
        let mut count = 0;
        for row in rows(include_str!("../../../tests/checks/ciede2000.csv")) {
            let n: Vec<f64> = row.iter().map(|field| field.parse().unwrap()).collect();
            let (one, other) = (Lab([n[1], n[2], n[3]]), Lab([n[4], n[5], n[6]]));
            let found = ciede2000(one, other);
            assert!((found - n[7]).abs() <= 1e-4, "pair {}: {found}", row[0]);
            let back = ciede2000(other, one);
            assert_eq!(found.to_bits(), back.to_bits(), "pair {}", row[0]);
            count += 1;
        }
        assert_eq!(count, 34);
    }

    /// Source: `tests/checks/srgb_lab.csv`; its tolerance: 0.02 in L, a, b, because libraries use
    /// whites that differ in the fourth place, and greys without colour to 0.01.
    #[test]
    fn srgb_becomes_the_tabled_cielab() {
        let mut count = 0;
        for row in rows(include_str!("../../../tests/checks/srgb_lab.csv")) {
            let rgb = [1, 2, 3].map(|at| row[at].parse::<u8>().unwrap());
            let Lab(found) = Linear::from_srgb(rgb).to_lab();
            for (channel, column) in found.into_iter().zip([7, 8, 9]) {
                let tabled: f64 = row[column].parse().unwrap();
                assert!((channel - tabled).abs() < 0.02, "{}: {found:?}", row[0]);
            }
            if rgb[0] == rgb[1] && rgb[1] == rgb[2] {
                assert!(found[1].abs() < 0.01 && found[2].abs() < 0.01, "{found:?}");
            }
            count += 1;
        }
        assert!(count >= 15, "{count} colours");
    }

    /// Source: the library `palette` as an independent implementation, over a grid of sRGB colours.
    #[test]
    fn a_reference_library_finds_the_same_colours_and_differences() {
        let mut grid = Vec::new();
        for r in (0..=255).step_by(51) {
            for g in (0..=255).step_by(51) {
                for b in (0..=255).step_by(51) {
                    grid.push([r, g, b].map(|c: i32| u8::try_from(c).unwrap()));
                }
            }
        }
        let theirs: Vec<palette::Lab<D65, f64>> = grid
            .iter()
            .map(|rgb| {
                let encoded = palette::Srgb::from(*rgb).into_format::<f64>();
                palette::IntoColor::into_color(encoded)
            })
            .collect();
        let ours: Vec<Lab> = grid
            .iter()
            .map(|rgb| Linear::from_srgb(*rgb).to_lab())
            .collect();
        for ((rgb, Lab(ours)), theirs) in grid.iter().zip(&ours).zip(&theirs) {
            let theirs = [theirs.l, theirs.a, theirs.b];
            let near = ours.iter().zip(theirs).all(|(o, t)| (o - t).abs() < 0.02);
            assert!(near, "{rgb:?}: {ours:?} and {theirs:?}");
        }
        // The differences of the same numbers, so that only the formula is compared.
        for (at, one) in ours.iter().enumerate().step_by(7) {
            for (to, other) in ours.iter().enumerate().step_by(5) {
                let found = ciede2000(*one, *other);
                let as_theirs = |Lab([l, a, b]): Lab| palette::Lab::<D65, f64>::new(l, a, b);
                let reference = as_theirs(*one).difference(as_theirs(*other));
                assert!(
                    (found - reference).abs() < 1e-4,
                    "{:?} {:?}: {found} and {reference}",
                    grid[at],
                    grid[to]
                );
                assert_eq!(found.to_bits(), ciede2000(*other, *one).to_bits());
            }
        }
    }
}
