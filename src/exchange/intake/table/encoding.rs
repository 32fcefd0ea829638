//! Bytes to text: by a byte order mark, else UTF-8 where the bytes are that, else Windows-1252.

use std::borrow::Cow;

/// A text with how it was found.
#[derive(Debug, PartialEq, Eq)]
pub(in crate::exchange::intake) struct Decoded<'b> {
    /// The text.
    pub text: Cow<'b, str>,
    /// The encoding, where the file does not say it itself and it is not UTF-8.
    pub assumed: Option<&'static str>,
    /// How many bytes or units are no letter; each is U+FFFD in the text.
    pub unreadable: u32,
}

/// Decodes a file; `None` where it is no text: it holds zero bytes and is not in UTF-16.
pub(in crate::exchange::intake) fn decoded(bytes: &[u8]) -> Option<Decoded<'_>> {
    let of = |text: Cow<'_, str>| {
        let unreadable = text.matches('\u{fffd}').count();
        (
            text.into_owned(),
            u32::try_from(unreadable).unwrap_or(u32::MAX),
        )
    };
    if let Some(rest) = bytes.strip_prefix(b"\xff\xfe") {
        return Some(utf16(rest, u16::from_le_bytes));
    }
    if let Some(rest) = bytes.strip_prefix(b"\xfe\xff") {
        return Some(utf16(rest, u16::from_be_bytes));
    }
    if let Some(rest) = bytes.strip_prefix(b"\xef\xbb\xbf") {
        let (text, unreadable) = match std::str::from_utf8(rest) {
            Ok(text) => return Some(whole(text)),
            Err(_) => of(String::from_utf8_lossy(rest)),
        };
        return Some(Decoded {
            text: Cow::Owned(text),
            assumed: None,
            unreadable,
        });
    }
    if bytes.contains(&0) {
        return None;
    }
    if let Ok(text) = std::str::from_utf8(bytes) {
        return Some(whole(text));
    }
    let text: String = bytes.iter().map(|byte| windows_1252(*byte)).collect();
    let (text, unreadable) = of(Cow::Owned(text));
    Some(Decoded {
        text: Cow::Owned(text),
        assumed: Some("Windows-1252"),
        unreadable,
    })
}

fn whole(text: &str) -> Decoded<'_> {
    Decoded {
        text: Cow::Borrowed(text),
        assumed: None,
        unreadable: 0,
    }
}

fn utf16(bytes: &[u8], unit: fn([u8; 2]) -> u16) -> Decoded<'static> {
    let (pairs, odd) = bytes.as_chunks::<2>();
    let units = pairs.iter().map(|pair| unit(*pair));
    let mut unreadable = u32::from(!odd.is_empty());
    let letters = char::decode_utf16(units).map(|letter| {
        letter.unwrap_or_else(|_| {
            unreadable += 1;
            '\u{fffd}'
        })
    });
    let text: String = letters.collect();
    Decoded {
        text: Cow::Owned(text),
        assumed: None,
        unreadable,
    }
}

/// The letter of a byte in Windows-1252 (the mapping CP1252.TXT of the Unicode Consortium, from memory). Five bytes have
/// none.
fn windows_1252(byte: u8) -> char {
    const HIGH: [char; 32] = [
        '€', '\u{fffd}', '‚', 'ƒ', '„', '…', '†', '‡', 'ˆ', '‰', 'Š', '‹', 'Œ', '\u{fffd}', 'Ž',
        '\u{fffd}', '\u{fffd}', '‘', '’', '“', '”', '•', '–', '—', '˜', '™', 'š', '›', 'œ',
        '\u{fffd}', 'ž', 'Ÿ',
    ];
    match byte {
        0x80..=0x9f => HIGH[usize::from(byte - 0x80)],
        _ => char::from(byte),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_encoding_is_found() {
        for (bytes, text, assumed) in [
            (&b"Stra\xc3\x9fe"[..], "Straße", None),
            (b"\xef\xbb\xbfStra\xc3\x9fe", "Straße", None),
            (b"\xff\xfeS\0\xdf\0", "Sß", None),
            (b"\xfe\xff\0S\0\xdf", "Sß", None),
            (
                b"Stra\xdfe \x96 \x809,50",
                "Straße – €9,50",
                Some("Windows-1252"),
            ),
        ] {
            let found = decoded(bytes).unwrap();
            assert_eq!((&*found.text, found.assumed), (text, assumed));
            assert_eq!(found.unreadable, 0);
        }
        assert_eq!(decoded(b"a\x81\xdf").unwrap().unreadable, 1);
        assert_eq!(decoded(b"a\0b"), None);
    }

    /// The letters of the upper half are those of Latin-1 (ISO 8859-1 is the first block of Unicode).
    #[test]
    fn windows_1252_is_latin_1_above_the_controls() {
        for byte in 0xa0..=0xff {
            assert_eq!(windows_1252(byte), char::from(byte));
        }
        assert_eq!(windows_1252(0x85), '…');
        assert_eq!(windows_1252(0x9c), 'œ');
    }
}
