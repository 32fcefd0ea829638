//! The faults of a picture, in words for the person who recorded it.

use std::borrow::Cow;
use std::fmt;
use std::path::PathBuf;

use serde::{Deserialize, Serialize};

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
    /// It needs more memory than the catalogue allows for all pictures together.
    TooMuchMemory {
        /// The memory it needs, in bytes.
        needed: u64,
        /// The most that pictures may take, in bytes.
        limit: u64,
        /// What makes it need so much.
        cause: MemoryCause,
    },
    /// Colours given as printing inks, without a usable profile that says how they look.
    InksWithoutProfile,
    /// Colours given as printing inks, and nothing says whether 0 is no ink or all of it.
    InksOfUnknownSense,
    /// The file was written to while it was read.
    Changed,
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

/// What makes a picture need much memory, where saving it in another way would help.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum MemoryCause {
    /// Its size alone.
    Size,
    /// A progressive JPEG, or one that stores one colour after another: every coefficient is held until the
    /// last scan.
    Scans,
    /// An interlaced PNG, whose rows come in seven passes.
    Interlaced,
    /// A TIFF in strips or tiles that have to be unpacked whole.
    Blocks,
    /// A lossless WebP, whose tables of codes may take hundreds of times the bytes of the file.
    LosslessWebP,
}

impl MemoryCause {
    /// How to save the picture instead.
    fn remedy(self) -> &'static str {
        match self {
            Self::Size => "save a smaller copy",
            Self::Scans => "save it as a baseline JPEG (not progressive), or save a smaller copy",
            Self::Interlaced => "save it without interlacing, or save a smaller copy",
            Self::Blocks => {
                "save the TIFF in strips, uncompressed or with LZW, or save a smaller copy"
            }
            Self::LosslessWebP => "save it as PNG or TIFF instead of lossless WebP",
        }
    }
}

/// A mebibyte, the unit of the setting.
const MIB: u64 = 1 << 20;

impl Fault {
    /// The action that the cataloguer can take.
    #[must_use]
    pub fn help(&self) -> Cow<'static, str> {
        if let Self::TooMuchMemory { needed, cause, .. } = self {
            return format!(
                "{}; or allow it with `memory = {}` in `[pictures]` of catalogue.toml",
                cause.remedy(),
                needed.div_ceil(MIB)
            )
            .into();
        }
        Cow::Borrowed(match self {
            Self::Missing => "check the spelling of the path, or add the file",
            Self::NotAFile => "name a file, not a folder",
            Self::Unopened(_) => "check that the file may be read",
            Self::Empty | Self::CutShort | Self::Damaged(_) => {
                "copy the file again from where it came from"
            }
            Self::TooManyBytes { .. } | Self::TooManyPixels { .. } | Self::TooMuchMemory { .. } => {
                "save a smaller copy"
            }
            Self::NotAPicture | Self::OtherKind(_) => "save it as JPEG, PNG, TIFF or WebP",
            Self::InksWithoutProfile => {
                "convert it to RGB from the profile of the press or printer that it was made for, or save it with that profile embedded"
            }
            Self::InksOfUnknownSense => {
                "save it again as JPEG or TIFF with its colour profile, or convert it to RGB"
            }
            Self::Changed => "compile again once the file is written",
            Self::Unsupported(_) => "save it as RGB or greyscale with 8 or 16 bits a channel",
            Self::Cache { .. } => {
                "check the space left on the disk, and that the cache may be written"
            }
        })
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
            Self::TooMuchMemory { needed, limit, .. } => write!(
                f,
                "it needs {} MiB of memory, and the catalogue allows {} MiB for pictures",
                grouped(needed.div_ceil(MIB)),
                grouped(limit / MIB)
            ),
            Self::InksWithoutProfile => f.write_str(
                "its colours are printing inks (CMYK), and it has no usable profile that says how they look",
            ),
            Self::InksOfUnknownSense => f.write_str(
                "its colours are printing inks (CMYK), and it does not say whether 0 is no ink or all of it",
            ),
            Self::Changed => f.write_str("the file changed while it was read"),
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

    #[test]
    fn too_much_memory_says_how_much_and_what_to_do() {
        let fault = Fault::TooMuchMemory {
            needed: (1800 << 20) + 1,
            limit: 1 << 30,
            cause: MemoryCause::Interlaced,
        };
        assert_eq!(
            fault.to_string(),
            "it needs 1,801 MiB of memory, and the catalogue allows 1,024 MiB for pictures"
        );
        assert_eq!(
            fault.help(),
            "save it without interlacing, or save a smaller copy; \
             or allow it with `memory = 1801` in `[pictures]` of catalogue.toml"
        );
    }
}
