//! Sizes as museums write them, each with its reading. Tests only.
//!
//! Forms: those of 15,000 records of one museum's open data, with invented numbers; words: docs/trade.md, "Tables that others hand in". Units:
//! NIST SP 811, appendix B (1 in = 25.4 mm exactly).

use std::fmt::Write as _;

use super::{Assumed, Measured, Measurement, Order, Unit, length, sizes};
use crate::exchange::intake::reading::Doubt;
use crate::model::words::ClosedList;

/// The measurements in one line: `image 166 × 243; frame 355 × 500 × 25`.
fn said(text: &str) -> String {
    told(&sizes(text, Assumed::default()).is)
}

fn told(measurements: &[Measurement]) -> String {
    let lines = measurements.iter().map(|m| {
        let of: Vec<&str> = m.of.iter().map(|of| of.word()).collect();
        let lengths = [m.height, m.width, m.depth].into_iter().flatten();
        let lengths: Vec<String> = lengths.map(|l| shortest(l.mm)).collect();
        let mut line = format!("{} {}", of.join("+"), lengths.join(" × "));
        if let Some(diameter) = m.diameter {
            write!(line, "ø {}", shortest(diameter.mm)).unwrap();
        }
        for (flag, word) in [
            (m.is_of_each, " each"),
            (m.is_sight, " sight"),
            (m.is_approximate, " about"),
            (m.is_irregular, " irregular"),
        ] {
            if flag {
                line.push_str(word);
            }
        }
        line
    });
    lines.collect::<Vec<_>>().join("; ")
}

/// Hundredths of a millimetre, without zeros at the end.
fn shortest(mm: f64) -> String {
    format!("{}", (mm * 100.0).round() / 100.0)
}

fn left(text: &str) -> String {
    sizes(text, Assumed::default()).left_over(text).join(" | ")
}

/// Every form of a museum's `dimensions` met four times or more.
#[test]
fn the_forms_of_one_museum_are_read_whole() {
    for (text, reading) in [
        ("image: 166 x 243 mm", "image 166 × 243"),
        ("", ""),
        ("unconfirmed: 166 x 243 mm", "unsaid 166 × 243"),
        ("support: 200 x 300 mm", "support 200 × 300"),
        (
            "support: 200 x 300 mm frame: 355 x 500 x 25 mm",
            "support 200 × 300; frame 355 × 500 × 25",
        ),
        (
            "image: 166 x 243 mm support: 200 x 300 mm",
            "image 166 × 243; support 200 × 300",
        ),
        ("166 x 243 mm", "unsaid 166 × 243"),
        (
            "image: 166 x 243 mm frame: 355 x 500 x 25 mm",
            "image 166 × 243; frame 355 × 500 × 25",
        ),
        (
            "image: 166 x 243 mm image: 100 x 80 mm",
            "image 166 × 243; image 100 × 80",
        ),
        (
            "image: 166 x 243 mm mount: 355 x 500 x 2 mm",
            "image 166 × 243; mount 355 × 500 × 2",
        ),
        ("image, each: 100 x 80 mm", "image 100 × 80 each"),
        (
            "image: 166 x 243 mm support: 200 x 300 mm frame: 355 x 500 x 25 mm",
            "image 166 × 243; support 200 × 300; frame 355 × 500 × 25",
        ),
        ("support & image: 200 x 300 mm", "support+image 200 × 300"),
        ("displayed: 200 x 300 mm", "displayed 200 × 300"),
        ("object: 200 x 300 x 40 mm", "object 200 × 300 × 40"),
        (
            "image: 166 x 243 mm frame: 355 x 500 x 25mm",
            "image 166 × 243; frame 355 × 500 × 25",
        ),
        (
            "unconfirmed: 166 x 243 mm unconfirmed: 100 x 80 mm",
            "unsaid 166 × 243; unsaid 100 × 80",
        ),
        (
            "support: 200 x 300 mm plate: 166 x 243 mm",
            "support 200 × 300; platemark 166 × 243",
        ),
        ("unconfirmed", ""),
        ("unconfirmed, each: 100 x 80 mm", "unsaid 100 × 80 each"),
    ] {
        assert_eq!(said(text), reading, "{text}");
        assert_eq!(left(text), "", "{text}");
    }
}

#[test]
fn sizes_in_five_languages_are_read_whole() {
    for (text, reading) in [
        ("9 1/2 × 7 in.", "unsaid 241.3 × 177.8"),
        ("9 ½ x 7\"", "unsaid 241.3 × 177.8"),
        ("9½ x 7 inches", "unsaid 241.3 × 177.8"),
        ("9-1/2 x 7-1/16 in", "unsaid 241.3 × 179.39"),
        ("24,1 x 17,8 cm", "unsaid 241 × 178"),
        ("24.1x17.8cm", "unsaid 241 × 178"),
        ("24 × 18 cm (sight)", "unsaid 240 × 180 sight"),
        ("sight: 24 x 18 cm", "unsaid 240 × 180 sight"),
        ("H. 24 cm; B. 18 cm", "unsaid 240 × 180"),
        ("B. 18 cm; H. 24 cm", "unsaid 240 × 180"),
        ("24 x 18 x 3 cm", "unsaid 240 × 180 × 30"),
        ("24 (h) x 18 (w) cm", "unsaid 240 × 180"),
        ("18 x 24 cm (B x H)", "unsaid 240 × 180"),
        ("18 x 24 cm (W x H)", "unsaid 240 × 180"),
        ("H x B: 24 x 18 cm", "unsaid 240 × 180"),
        ("24.1 x 17.8 cm (9 1/2 x 7 in.)", "unsaid 241 × 178"),
        (
            "image: 24 x 18 cm (9 7/16 x 7 1/16 in.)",
            "image 239.71 × 179.39",
        ),
        (
            "Platte 14,2 x 10 cm; Blatt 30 x 21,5 cm",
            "platemark 142 × 100; sheet 300 × 215",
        ),
        (
            "Darstellung: 142 x 100 mm, Blatt: 300 x 215 mm",
            "image 142 × 100; sheet 300 × 215",
        ),
        (
            "feuille : 30 x 21,5 cm ; cuvette : 14,2 x 10 cm",
            "sheet 300 × 215; platemark 142 × 100",
        ),
        ("H. 24 ; L. 18 cm", "unsaid 240 × 180"),
        ("blad h 24 x b 18 cm", "sheet 240 × 180"),
        (
            "画寸 24.0×18.0cm 紙寸 30×21cm",
            "image 240 × 180; sheet 300 × 210",
        ),
        ("縦24.0×横18.0cm", "unsaid 240 × 180"),
        ("diameter 12 cm", "unsaid ø 120"),
        ("Ø 12 cm", "unsaid ø 120"),
        ("ca. 24 x 18 cm", "unsaid 240 × 180 about"),
        ("24 x 18 cm (sheet)", "sheet 240 × 180"),
        (
            "24 x 18 cm (image), 30 x 20 cm (sheet)",
            "image 240 × 180; sheet 300 × 200",
        ),
        ("24 x 18 cm, irregular", "unsaid 240 × 180 irregular"),
        ("1' 2\" x 9\"", "unsaid 355.6 × 228.6"),
        ("sheet 30 by 20 cm", "sheet 300 × 200"),
        ("8 sun x 5.5 sun", "unsaid 242.42 × 166.67"),
    ] {
        assert_eq!(said(text), reading, "{text}");
        assert_eq!(left(text), "", "{text}");
    }
}

/// The rounding of the unit: half of the last figure, or of the finest fraction beside it.
#[test]
fn the_rounding_of_the_unit_is_kept() {
    for (text, tolerance) in [
        ("166 x 243 mm", 0.5),
        ("24,1 x 17,8 cm", 0.5),
        ("24 x 18 cm", 5.0),
        ("9 1/2 x 7 in.", 6.35),
        ("9 3/8 x 7 in.", 1.5875),
        ("9 5/16 x 7 1/2 in.", 0.79375),
    ] {
        let measurement = &sizes(text, Assumed::default()).is[0];
        let lengths = [measurement.height.unwrap(), measurement.width.unwrap()];
        for length in lengths {
            assert!(
                (length.tolerance_mm - tolerance).abs() < 1e-9,
                "{text}: {length:?}"
            );
        }
    }
}

#[test]
fn what_is_doubtful_is_told() {
    let plain = Assumed::default();
    for (text, doubt) in [
        ("24 x 18", Doubt::UnitUnsaid),
        ("24 x 18 cm", Doubt::MeasuredUnsaid),
        ("image: 24.1 x 17.8 cm (12 x 7 in.)", Doubt::UnitsContradict),
        ("image: 18 x 24 cm (B x H)", Doubt::WidthFirst),
        ("image: 1.200 x 800 mm", Doubt::ThousandsOrDecimals),
        ("image: 0 x 18 cm", Doubt::LengthImpossible),
    ] {
        assert!(sizes(text, plain).doubts.contains(&doubt), "{text}");
    }
    assert_eq!(said("image: 1.200 x 800 mm"), "image 1200 × 800");
    let unitless = &sizes("24 x 18", plain).is[0];
    assert_eq!((unitless.size(), unitless.unit), (None, None));
    assert_eq!(unitless.figures, [24.0, 18.0]);
    assert_eq!(sizes("image: 24 x 18 cm", plain).doubts, []);
}

/// What the heading of a column says need not stand in the cell.
#[test]
fn a_heading_gives_unit_order_and_what_was_measured() {
    let assumed = Assumed {
        unit: Some(Unit::Centimetre),
        of: Some(Measured::Sheet),
        order: Some(Order::WidthFirst),
    };
    let reading = sizes("18 x 24", assumed);
    assert_eq!(told(&reading.is), "sheet 240 × 180");
    for (text, unit) in [("24,1", Some(Unit::Centimetre)), ("24,1 cm", None)] {
        let found = length(text, unit).is.unwrap();
        assert!((found.mm - 241.0).abs() < 1e-9, "{text}");
    }
    assert_eq!(length("24", None).doubts, [Doubt::UnitUnsaid]);
}

#[test]
fn words_that_were_not_understood_are_left_over() {
    for (text, reading, leftover) in [
        ("4 sheets, each 24 x 18 cm", "sheet 240 × 180 each", "4"),
        ("24 x 18 cm trimmed", "unsaid 240 × 180", "trimmed"),
        ("large", "", "large"),
        ("24", "", "24"),
    ] {
        assert_eq!(said(text), reading, "{text}");
        assert_eq!(left(text), leftover, "{text}");
    }
}

/// Each unit in millimetres: NIST SP 811, appendix B; the shaku 303.03 mm (docs/trade.md, "Tables that others hand in").
#[test]
fn units_are_as_long_as_they_are_defined() {
    for unit in Unit::ALL {
        let mm = match unit {
            Unit::Millimetre => 1.0,
            Unit::Centimetre => 10.0,
            Unit::Metre => 1000.0,
            Unit::Inch => 25.4,
            Unit::Foot => 304.8,
            Unit::Shaku => 303.030,
            Unit::Sun => 30.303,
        };
        assert!((unit.mm() - mm).abs() < 0.001, "{unit}");
    }
}
