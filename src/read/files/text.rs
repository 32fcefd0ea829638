//! Reads the text of a file, if it is one: a plain file, not too large, and UTF-8.

use std::fs;
use std::io::Read as _;
use std::path::Path;

use super::nature::Nature;

/// The text of a file.
#[derive(Debug)]
pub(crate) enum Text {
    /// The whole text.
    Whole(String),
    /// The file is not UTF-8 from this byte on; invalid bytes were replaced.
    Mangled { text: String, from: usize },
    /// The file is larger than its kind may be and was not read. Its size in bytes.
    TooLarge(u64),
    /// The file is UTF-16 and was not read.
    Utf16,
    /// Something other than a file is there, and was not opened.
    NotAFile(Nature),
    /// The file does not exist.
    Absent,
    /// The file cannot be read, for this reason.
    Unreadable(String),
}

/// Why a file was not read.
enum Refusal {
    NotAFile(Nature),
    TooLarge(u64),
}

/// Reads a text file of at most `largest` bytes.
pub(crate) fn read_text(full: &Path, largest: u64) -> Text {
    let read = || -> std::io::Result<Result<Vec<u8>, Refusal>> {
        let about = fs::metadata(full)?;
        if !about.is_file() {
            return Ok(Err(Refusal::NotAFile(Nature::of(about.file_type()))));
        }
        let size = about.len();
        if size > largest {
            return Ok(Err(Refusal::TooLarge(size)));
        }
        let mut bytes = Vec::with_capacity(usize::try_from(size).unwrap_or(0));
        // A file may grow while it is read.
        let file = fs::File::open(full)?;
        file.take(largest + 1).read_to_end(&mut bytes)?;
        let length = bytes.len() as u64;
        Ok(if length > largest {
            Err(Refusal::TooLarge(length))
        } else {
            Ok(bytes)
        })
    };
    match read() {
        Err(fault) if fault.kind() == std::io::ErrorKind::NotFound => Text::Absent,
        Err(fault) => Text::Unreadable(fault.to_string()),
        Ok(Err(Refusal::NotAFile(nature))) => Text::NotAFile(nature),
        Ok(Err(Refusal::TooLarge(size))) => Text::TooLarge(size),
        Ok(Ok(bytes)) => text_of(bytes),
    }
}

/// The text that some bytes are.
pub(crate) fn text_of(bytes: Vec<u8>) -> Text {
    if is_utf16(&bytes) {
        return Text::Utf16;
    }
    match String::from_utf8(bytes) {
        Ok(text) => Text::Whole(text),
        Err(fault) => Text::Mangled {
            from: fault.utf8_error().valid_up_to(),
            text: String::from_utf8_lossy(fault.as_bytes()).into_owned(),
        },
    }
}

/// Whether bytes are UTF-16: they begin with its mark, or one byte of most of the first pairs is zero,
/// as in every text of Latin letters, and the other byte never is. UTF-8 texts hold no zeros.
fn is_utf16(bytes: &[u8]) -> bool {
    if bytes.starts_with(&[0xff, 0xfe]) || bytes.starts_with(&[0xfe, 0xff]) {
        return true;
    }
    let begins = bytes.get(..512).unwrap_or(bytes);
    let zeros = |at: usize| {
        let bytes = begins
            .chunks_exact(2)
            .filter(|pair| pair.get(at) == Some(&0));
        bytes.count()
    };
    let (first, second) = (zeros(0), zeros(1));
    let most = (begins.len() / 2).div_ceil(2).max(2);
    (first == 0 && second >= most) || (second == 0 && first >= most)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn utf_16_is_recognised_with_its_mark_and_without() {
        let text = "title = \"The Ferry\"\n";
        let little: Vec<u8> = text.encode_utf16().flat_map(u16::to_le_bytes).collect();
        let big: Vec<u8> = text.encode_utf16().flat_map(u16::to_be_bytes).collect();
        assert!(is_utf16(&little) && is_utf16(&big));
        assert!(is_utf16(b"\xff\xfe\x0e\x60") && is_utf16(b"\xfe\xff\x60\x0e"));
        for other in [
            "",
            "a",
            text,
            "title = \"\0\"",
            "\u{feff}title = \"\u{14d}\"",
        ] {
            assert!(!is_utf16(other.as_bytes()), "{other:?}");
        }
    }
}
