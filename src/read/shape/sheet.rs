//! The keys of the sheet of paper: its sizes and how they were taken, the paper, its watermarks, its condition.

use super::citation::NUMBERED_CITATION;
use super::declare::{Shape, Takes, Target, may, must, plain, words};
use crate::model::occurrence::MentionRole;
use crate::model::vocabulary::List;
use crate::model::words::Side;

/// The widest interval of chain lines and the most laid lines in a centimetre that a record can give.
const MOST_LINES: f64 = 100.0;

/// The thickest paper or board, in millimetres. Paper is about a tenth of one: a thickness in micrometres is refused.
const THICKEST: f64 = 20.0;

/// The sheet of paper.
pub static SHEET: Shape = plain(
    "the sheet",
    &[
        may(
            "size",
            Takes::Statements(&Takes::Size),
            "the whole paper, [height, width] in mm",
        ),
        may(
            "image",
            Takes::Statements(&Takes::Size),
            "the printed image, [height, width] in mm",
        ),
        may(
            "platemark",
            Takes::Statements(&Takes::Size),
            "the platemark, [height, width] in mm",
        ),
        may(
            "unsaid",
            Takes::Statements(&Takes::Size),
            "a size whose source does not say of what, [height, width] in mm",
        ),
        may(
            "support",
            Takes::Statements(&Takes::Size),
            "what the sheet is laid down on, [height, width] in mm",
        ),
        may(
            "mount",
            Takes::Statements(&Takes::Size),
            "the mount, [height, width] in mm",
        ),
        may(
            "frame",
            Takes::Statements(&Takes::Size),
            "the frame, [height, width] in mm",
        ),
        may(
            "by",
            Takes::Refers(Target::Party, MentionRole::Said),
            "who took the sizes, where a size does not say so itself: a person's or holder's key",
        ),
        may(
            "measured",
            Takes::Date,
            "when they were taken; `date` is when the impression was pulled",
        ),
        may(
            "how",
            Takes::Text,
            "with what they were taken: \"a steel rule\"",
        ),
        may(
            "sight",
            Takes::Flag,
            "true: taken within a mount or frame, so that the paper may be larger",
        ),
        may(
            "said",
            Takes::Text,
            "the words and units that they were taken from: \"9 x 12 in.\"",
        ),
        may(
            "side",
            Takes::Word(words::<Side>),
            "the side of the paper it is printed on, where that matters",
        ),
        may("paper", Takes::Term(List::Papers), "the paper"),
        may("colour", Takes::Text, "the colour of the paper"),
        may(
            "chain_lines",
            Takes::Fraction(MOST_LINES),
            "from one chain line to the next, mm",
        ),
        may(
            "laid_lines",
            Takes::Fraction(MOST_LINES),
            "laid lines in a centimetre",
        ),
        may(
            "thickness",
            Takes::Fraction(THICKEST),
            "the thickness of the paper, mm",
        ),
        may(
            "inks",
            Takes::Several(&Takes::Text),
            "the inks seen on it; one that is not named may be there too",
        ),
        may(
            "paper_date",
            Takes::Date,
            "when the paper was made: not before",
        ),
        may(
            "watermark",
            Takes::TextOrTables(&WATERMARK),
            "the watermark, in words or as a table; a list where there is a countermark too",
        ),
        may("margins", Takes::Text, "the margins, in words"),
        may(
            "mounted_on",
            Takes::Text,
            "what the sheet is laid down on: \"grey card\"",
        ),
        may(
            "date",
            Takes::Statements(&Takes::Date),
            "when the impression was pulled",
        ),
    ],
);

/// A watermark.
pub static WATERMARK: Shape = plain(
    "a watermark",
    &[
        may("text", Takes::Text, "what it shows or says"),
        may(
            "reference",
            Takes::Tables(&NUMBERED_CITATION),
            "its number in repertories of watermarks",
        ),
        may("place", Takes::Text, "where on the sheet"),
    ],
);

/// One thing that was noted of the condition of a sheet.
pub static CONDITION_NOTE: Shape = plain(
    "a note on the condition",
    &[
        must("what", Takes::Text, "what was found: \"foxing\""),
        may("where", Takes::Text, "where on the sheet"),
        may(
            "how",
            Takes::Text,
            "how it was seen: \"by eye\", \"in raking light\"",
        ),
        may(
            "by",
            Takes::Refers(Target::Party, MentionRole::Said),
            "who noted it: a person's or holder's key",
        ),
        may("date", Takes::Date, "when it was noted"),
    ],
);
