//! Numbers, lists and comments as TOML writes them (TOML 1.0).

use super::super::toml_text::text_value as quoted;

/// A text for a comment: in quotes, cut after so many letters.
pub(super) fn quoted_start(text: &str, letters: usize) -> String {
    let text = text.trim();
    match text.char_indices().nth(letters) {
        Some((end, _)) => quoted(&format!("{} …", text[..end].trim_end())),
        None => quoted(text),
    }
}

/// A number that is read back as the same one.
pub(super) fn number(number: f64) -> String {
    if number.fract() == 0.0 && number.abs() < 1e9 {
        format!("{number:.0}")
    } else {
        format!("{number:?}")
    }
}

/// One text in quotes, or a list of several.
pub(super) fn one_or_several<T: AsRef<str>>(texts: &[T]) -> String {
    match texts {
        [one] => quoted(one.as_ref()),
        texts => {
            let quoted: Vec<String> = texts.iter().map(|text| quoted(text.as_ref())).collect();
            format!("[{}]", quoted.join(", "))
        }
    }
}

/// The program's mark on its own words: 8 hexadecimal digits, the first 32 bits of BLAKE3.
pub(in super::super) fn digest(words: &[&str]) -> String {
    let mut hasher = blake3::Hasher::new_derive_key("keyblock: settings of an intake");
    for word in words {
        hasher.update(&(word.len() as u64).to_le_bytes());
        hasher.update(word.as_bytes());
    }
    hasher.finalize().to_hex()[..8].to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Cells that spreadsheets run as formulas, and signs that could leave their text, are read back as they were and stand
    /// on one line.
    #[test]
    fn every_text_stays_one_text_on_one_line() {
        for text in [
            "=HYPERLINK(\"http://example.org\")",
            "a\"\n[[columns]]\nholds = \"title",
            "\\u0041\\",
            "tab\there\r\n",
            "\u{0}\u{1b}[31m\u{7f}\u{85}",
            "\u{202e}txet\u{2066}\u{feff}\u{200b}",
            "\u{2028}",
            "'''\"\"\"",
            "𝄞 木版画",
            "",
        ] {
            let written = format!("a = {}", quoted(text));
            assert_eq!(written.lines().count(), 1, "{written}");
            let table: toml::Table = written.parse().unwrap();
            assert_eq!(table["a"].as_str(), Some(text));
            let comment = format!("# {}\na = 1", quoted_start(text, 40));
            assert!(comment.parse::<toml::Table>().is_ok(), "{comment}");
        }
    }

    #[test]
    fn numbers_are_read_back_as_they_were() {
        for one in [0.0, 241.0, 241.3, 10_000.0 / 33.0, 1e9, 1e21, 1e-9, 0.05] {
            let table: toml::Table = format!("a = {}", number(one)).parse().unwrap();
            let read = table["a"].as_float();
            let whole = table["a"].as_integer().and_then(|n| i32::try_from(n).ok());
            let read = read.or_else(|| whole.map(f64::from));
            assert_eq!(read, Some(one));
        }
    }
}
