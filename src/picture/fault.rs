//! The faults of a picture, in words for the person who recorded it.

use std::fmt;
use std::path::PathBuf;

/// Why a picture could not be prepared.
///
/// Displayed, it is one phrase that stands alone; [`Fault::help`] says what to do about it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Fault {
    /// No file at the path.
    Missing,
    /// The path leads to a folder or a device.
    NotAFile,
    /// The disk refuses to read the file; the reason is the system's.
    Unopened(String),
    /// The file has no content.
    Empty,
    /// The file is too large to be a picture within the limits.
    TooManyBytes {
        /// Its length in bytes.
        bytes: u64,
        /// The most it may have, in bytes.
        limit: u64,
    },
    /// No known kind of picture.
    NotAPicture,
    /// A kind of picture that is not read; the name of the kind.
    OtherKind(&'static str),
    /// The file ends before the picture does.
    CutShort,
    /// More pixels than the catalogue allows.
    TooManyPixels {
        /// The width it states, in px.
        width: u32,
        /// The height it states, in px.
        height: u32,
        /// How many pixels it may have in all.
        limit: u64,
    },
    /// Colours given as printing inks.
    Cmyk,
    /// A picture of a readable kind, stored in a way that is not read.
    Unsupported(String),
    /// The content contradicts itself; the decoder's words.
    Damaged(String),
    /// The cache could not be written: a fault of the disk, not of the picture.
    Cache {
        /// The file or folder that could not be written.
        file: PathBuf,
        /// The system's reason.
        why: String,
    },
}

impl Fault {
    /// The action that the cataloguer can take.
    #[must_use]
    pub fn help(&self) -> &'static str {
        match self {
            Self::Missing => "check the spelling of the path, or add the file",
            Self::NotAFile => "name a file, not a folder",
            Self::Unopened(_) => "check that the file may be read",
            Self::Empty | Self::CutShort | Self::Damaged(_) => {
                "copy the file again from where it came from"
            }
            Self::TooManyBytes { .. } | Self::TooManyPixels { .. } => "save a smaller copy",
            Self::NotAPicture | Self::OtherKind(_) => "save it as JPEG, PNG, TIFF or WebP",
            Self::Cmyk => "save it as RGB",
            Self::Unsupported(_) => "save it as RGB or greyscale with 8 or 16 bits a channel",
            Self::Cache { .. } => {
                "check the space left on the disk, and that the cache may be written"
            }
        }
    }

    /// Whether the disk failed rather than the picture, so that compiling cannot go on.
    #[must_use]
    pub fn is_disk(&self) -> bool {
        matches!(self, Self::Cache { .. })
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Missing => f.write_str("the picture is missing"),
            Self::NotAFile => f.write_str("this is not a file"),
            Self::Unopened(why) => write!(f, "the file cannot be opened: {why}"),
            Self::Empty => f.write_str("the file is empty"),
            Self::TooManyBytes { bytes, limit } => write!(
                f,
                "the file is larger than a picture may be: {} MB, at most {} MB",
                grouped(bytes.div_ceil(1_000_000)),
                grouped(limit / 1_000_000)
            ),
            Self::NotAPicture => f.write_str("the file is not a picture that can be read"),
            Self::OtherKind(kind) => write!(f, "{kind} pictures are not read"),
            Self::CutShort => f.write_str("the picture is cut short"),
            Self::TooManyPixels {
                width,
                height,
                limit,
            } => write!(
                f,
                "more pixels than the catalogue allows: {} × {}, at most {} in all",
                grouped(u64::from(*width)),
                grouped(u64::from(*height)),
                grouped(*limit)
            ),
            Self::Cmyk => f.write_str("CMYK pictures are not read"),
            Self::Unsupported(what) => write!(f, "this form of picture is not read: {what}"),
            Self::Damaged(why) => write!(f, "the picture is damaged: {why}"),
            Self::Cache { file, why } => {
                write!(f, "{} cannot be written: {why}", file.display())
            }
        }
    }
}

impl std::error::Error for Fault {}

/// A count with a comma after every three digits.
fn grouped(count: u64) -> String {
    let digits = count.to_string();
    let mut text = String::with_capacity(digits.len() + digits.len() / 3);
    for (place, digit) in digits.chars().enumerate() {
        if place > 0 && (digits.len() - place).is_multiple_of(3) {
            text.push(',');
        }
        text.push(digit);
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fault_reads_as_a_phrase() {
        let fault = Fault::TooManyPixels {
            width: 60_000,
            height: 999,
            limit: 1_000_000,
        };
        assert_eq!(
            fault.to_string(),
            "more pixels than the catalogue allows: 60,000 × 999, at most 1,000,000 in all"
        );
        assert_eq!(fault.help(), "save a smaller copy");
    }
}
