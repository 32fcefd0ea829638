//! Texts and keys as TOML writes them (TOML 1.0).

use std::fmt::Write as _;

/// A text in quotes, on one line.
///
/// Signs that are not seen (controls, marks of direction, spaces without width) are written as escapes, so that an
/// editor sees them and no text can hide what stands after it. A text with quotation marks or backslashes stands in
/// single quotes where that is possible.
///
/// ```
/// # use keyblock::exchange::intake::toml_text::text_value;
/// assert_eq!(text_value("Ōsaka"), "\"Ōsaka\"");
/// assert_eq!(text_value("9 1/2\""), "'9 1/2\"'");
/// assert_eq!(text_value("two\nlines"), "\"two\\nlines\"");
/// assert_eq!(text_value("\u{202e}x"), "\"\\u202Ex\"");
/// ```
#[must_use]
pub fn text_value(text: &str) -> String {
    // Most texts of a large file, told byte by byte.
    let is_plain = |b: u8| (b' '..=b'~').contains(&b) && b != b'"' && b != b'\\';
    if text.bytes().all(is_plain) {
        let mut out = String::with_capacity(text.len() + 2);
        out.push('"');
        out.push_str(text);
        out.push('"');
        return out;
    }
    let needs_escape = text.chars().any(is_unseen);
    let has_quotes = text.contains(['"', '\\']);
    if has_quotes && !needs_escape && !text.contains('\'') {
        return format!("'{text}'");
    }
    let mut out = String::with_capacity(text.len() + 2);
    out.push('"');
    for sign in text.chars() {
        match sign {
            '"' => out.push_str("\\\""),
            '\\' => out.push_str("\\\\"),
            '\n' => out.push_str("\\n"),
            '\r' => out.push_str("\\r"),
            '\t' => out.push_str("\\t"),
            sign if is_unseen(sign) => {
                let code = u32::from(sign);
                if code > 0xFFFF {
                    let _ = write!(out, "\\U{code:08X}");
                } else {
                    let _ = write!(out, "\\u{code:04X}");
                }
            }
            sign => out.push(sign),
        }
    }
    out.push('"');
    out
}

/// Controls, and signs of formatting that have no shape of their own (Unicode general categories Cc, Cf, Zl and Zp, as far
/// as texts have them).
fn is_unseen(sign: char) -> bool {
    sign.is_control()
        || matches!(
            sign,
            '\u{00AD}'
                | '\u{061C}'
                | '\u{180E}'
                | '\u{200B}'..='\u{200F}'
                | '\u{2028}'..='\u{202E}'
                | '\u{2060}'..='\u{206F}'
                | '\u{FEFF}'
                | '\u{FFF9}'..='\u{FFFB}'
                | '\u{E0000}'..='\u{E007F}'
        )
}

/// A name of a key: bare where TOML allows that, else in quotes.
///
/// ```
/// # use keyblock::exchange::intake::toml_text::key_text;
/// assert_eq!(key_text("Titel"), "Titel");
/// assert_eq!(key_text("Inv.-Nr."), "\"Inv.-Nr.\"");
/// ```
#[must_use]
pub fn key_text(name: &str) -> String {
    let is_bare = !name.is_empty()
        && name
            .bytes()
            .all(|b| b.is_ascii_alphanumeric() || b == b'-' || b == b'_');
    if is_bare {
        name.to_owned()
    } else {
        text_value(name)
    }
}
