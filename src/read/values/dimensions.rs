//! Sizes as people write them, "230 x 290 mm", for the help of findings.

/// The numbers of a text that consists of numbers joined by "x", "×", "*", "by" or space, with or without a unit, as a
/// record writes them: in millimetres, so "23 × 29.5 cm" is 230 and 295. `None` for any other text.
pub(crate) fn numbers(text: &str) -> Option<Vec<String>> {
    let text = text.trim().to_lowercase();
    let (text, tenfold) = match (text.strip_suffix("mm"), text.strip_suffix("cm")) {
        (Some(text), _) => (text, false),
        (_, Some(text)) => (text, true),
        _ => (text.as_str(), false),
    };
    let spaced = text.replace("by", " ").replace(['x', '×', '*'], " ");
    let spaced = spaced.replace("mm", " ").replace("cm", " ");
    let parts: Vec<&str> = spaced.split_whitespace().collect();
    let is_plain = |part: &&str| part.bytes().all(|b| b.is_ascii_digit() || b == b'.');
    if parts.is_empty() || !parts.iter().all(is_plain) {
        return None;
    }
    parts
        .into_iter()
        .map(|part| in_millimetres(part, tenfold))
        .collect()
}

/// A number as it was written, or ten times it.
fn in_millimetres(number: &str, tenfold: bool) -> Option<String> {
    let value: f64 = number.parse().ok()?;
    if !tenfold {
        return Some(number.to_owned());
    }
    // Rounded, because 10 × 29.3 is not 293 in binary.
    Some(((value * 10_000.0).round() / 1000.0).to_string())
}

#[cfg(test)]
mod tests {
    use super::numbers;

    #[test]
    fn sizes_are_read_as_people_write_them() {
        let read = |text| numbers(text).map(|numbers| numbers.join(", "));
        for text in [
            "230 x 290",
            "230x290",
            "230 × 290 mm",
            "230mm x 290mm",
            "230 by 290",
            "230 290",
        ] {
            assert_eq!(read(text).as_deref(), Some("230, 290"), "{text}");
        }
        assert_eq!(read("23 × 29.3 cm").as_deref(), Some("230, 293"));
        assert_eq!(read("212.5").as_deref(), Some("212.5"));
        for text in [
            "",
            "x",
            "extant",
            "12/50",
            "230, 290",
            "1.2.3",
            "c. 230 x 290",
            "mm",
        ] {
            assert_eq!(read(text), None, "{text}");
        }
    }
}
