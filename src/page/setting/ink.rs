//! The block ink: one colour that the catalogue chooses, adjusted to be legible on light and dark
//! paper.
//!
//! In: `ink` of `catalogue.toml`. Out: `assets/ink.css` and the theme's drawings, with the ink for
//! light and for dark paper. Its contrast is at least 4.5:1 on light paper (WCAG 2.2, success criterion
//! 1.4.3) and 7:1 on dark (1.4.6), where thin strokes in a saturated colour tire the eye.

use crate::model::settings::Ink;

/// The papers of the theme (`assets/sheet.css`), and the least contrast of text against them.
const LIGHT_PAPER: Ink = Ink([0xfb, 0xfb, 0xf9]);
const DARK_PAPER: Ink = Ink([0x17, 0x17, 0x16]);
const LEAST_ON_LIGHT: f64 = 4.5;
const LEAST_ON_DARK: f64 = 7.0;

/// The style sheet that names the two inks.
pub fn style_sheet(ink: Ink) -> String {
    let light = darkened_until_legible(ink);
    let dark = lightened_until_legible(ink);
    format!(":root {{ --ink-on-light: {light}; --ink-on-dark: {dark}; }}\n")
}

/// A drawing of the theme with the two inks in its own style element, because the pages' style sheets do
/// not apply inside drawings.
pub fn inked(svg: &str, ink: Ink) -> String {
    svg.replacen(
        "<style>",
        &format!("<style>\n{}", style_sheet(ink).trim_end()),
        1,
    )
}

fn darkened_until_legible(ink: Ink) -> Ink {
    mixed_until_legible(ink, Ink([0, 0, 0]), LIGHT_PAPER, LEAST_ON_LIGHT)
}

fn lightened_until_legible(ink: Ink) -> Ink {
    mixed_until_legible(ink, Ink([0xff, 0xff, 0xff]), DARK_PAPER, LEAST_ON_DARK)
}

/// `ink` mixed with the least share of `other`, in hundredths, that reaches a contrast of `least` on
/// `paper`.
fn mixed_until_legible(ink: Ink, other: Ink, paper: Ink, least: f64) -> Ink {
    (0..=100_u32)
        .map(|percent| mixed(ink, other, percent))
        .find(|mixed| contrast(*mixed, paper) >= least)
        .unwrap_or(other)
}

fn mixed(ink: Ink, other: Ink, percent: u32) -> Ink {
    let mut channels = ink.0;
    for (channel, other) in channels.iter_mut().zip(other.0) {
        let sum = u32::from(*channel) * (100 - percent) + u32::from(other) * percent;
        *channel = u8::try_from((sum + 50) / 100).unwrap_or(u8::MAX);
    }
    Ink(channels)
}

/// The contrast ratio of two colours, 1 to 21 (WCAG 2.2, "contrast ratio").
pub fn contrast(a: Ink, b: Ink) -> f64 {
    let (a, b) = (luminance(a), luminance(b));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

/// Relative luminance, 0 to 1 (WCAG 2.2, "relative luminance").
fn luminance(Ink([r, g, b]): Ink) -> f64 {
    let linear = |channel: u8| {
        let c = f64::from(channel) / 255.0;
        if c <= 0.04045 {
            c / 12.92
        } else {
            libm::pow((c + 0.055) / 1.055, 2.4)
        }
    };
    0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn contrast_is_the_standards() {
        // WCAG 2.2: black on white is 21:1; #767676 on white is the lightest grey at 4.5:1 (4.54).
        let white = Ink([255, 255, 255]);
        assert!((contrast(Ink([0, 0, 0]), white) - 21.0).abs() < 1e-9);
        assert!((contrast(Ink([0x76, 0x76, 0x76]), white) - 4.54).abs() < 0.005);
    }

    #[test]
    fn a_drawing_is_in_the_catalogues_ink() {
        let drawn = inked(
            "<svg><style>\npath { fill: var(--ink-on-light); }</style></svg>",
            Ink([0x8a, 0x2b, 0x1d]),
        );
        assert!(drawn.starts_with("<svg><style>\n:root { --ink-on-light: #8a2b1d;"));
    }

    #[test]
    fn every_ink_is_legible_on_both_papers() {
        for text in [
            "#1f3a4d", "#ffff00", "#000000", "#ffffff", "#777777", "#ff0000",
        ] {
            let ink = Ink::parse(text).unwrap();
            assert!(contrast(darkened_until_legible(ink), LIGHT_PAPER) >= LEAST_ON_LIGHT);
            assert!(contrast(lightened_until_legible(ink), DARK_PAPER) >= LEAST_ON_DARK);
        }
        let legible = Ink::parse("#1f3a4d").unwrap();
        assert_eq!(
            darkened_until_legible(legible),
            legible,
            "a legible ink stays as chosen"
        );
    }
}
