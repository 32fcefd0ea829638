//! The sheet of paper: its sizes and how they were taken, the paper and its watermarks, its condition.

use super::certainty::Statements;
use super::edtf::Date;
use super::key::Key;
use super::literature::Citation;
use super::place::Placed;
use super::size::Size;
use super::words::Side;

/// The sheet of paper.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Sheet {
    /// The whole piece of paper.
    pub size: Statements<Size>,
    /// The printed image.
    pub image: Statements<Size>,
    /// The platemark.
    pub platemark: Statements<Size>,
    /// A size whose source does not say what was measured.
    pub unsaid: Statements<Size>,
    /// The secondary support: what the sheet is laid down on.
    pub support: Statements<Size>,
    /// The mount.
    pub mount: Statements<Size>,
    /// The frame.
    pub frame: Statements<Size>,
    /// How the sizes were taken.
    pub measuring: Measuring,
    /// The side of the paper it is printed on, where that matters (an uncut or twice used sheet).
    pub side: Option<Side>,
    /// The paper, a key of the vocabulary.
    pub paper: Option<Placed<Key>>,
    /// The colour of the paper.
    pub colour: Option<String>,
    /// From one chain line to the next, in millimetres.
    pub chain_lines: Option<Placed<f64>>,
    /// Laid lines in a centimetre.
    pub laid_lines: Option<Placed<f64>>,
    /// The thickness of the paper, in millimetres.
    pub thickness: Option<Placed<f64>>,
    /// The inks seen on it, in the words of the record. An ink that is not named may be there too.
    pub inks: Vec<Placed<String>>,
    /// The date before which the paper was not made.
    pub paper_date: Option<Placed<Date>>,
    /// The watermarks, a countermark among them.
    pub watermark: Vec<Watermark>,
    /// The margins, in words.
    pub margins: Option<String>,
    /// What the sheet is laid down on, in words.
    pub mounted_on: Option<String>,
    /// When it was pulled.
    pub date: Statements<Date>,
}

/// How the sizes of a sheet were taken, where a size does not say so itself.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Measuring {
    /// The key of the person or holder who measured.
    pub by: Option<Placed<Key>>,
    /// When.
    pub date: Option<Placed<Date>>,
    /// The instrument.
    pub how: Option<String>,
    /// Whether it was done within a mount or frame, so that the paper may be larger and the image is perhaps covered.
    pub sight: bool,
    /// The words and units that the sizes were taken from.
    pub said: Option<String>,
}

impl Measuring {
    /// Whether nothing is recorded of it.
    #[must_use]
    pub fn is_unsaid(&self) -> bool {
        *self == Measuring::default()
    }
}

/// A watermark in a sheet.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Watermark {
    /// What it shows or says.
    pub text: Option<String>,
    /// Repertories of watermarks, each with its number for it.
    pub reference: Vec<Citation>,
    /// Where on the sheet.
    pub at: Option<String>,
}

/// One thing that was noted of the condition of a sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct ConditionNote {
    /// What was found.
    pub what: String,
    /// Where on the sheet.
    pub at: Option<String>,
    /// How it was seen: by eye, in raking light.
    pub how: Option<String>,
    /// The key of the person or holder who noted it.
    pub by: Option<Placed<Key>>,
    /// When.
    pub date: Option<Placed<Date>>,
}
