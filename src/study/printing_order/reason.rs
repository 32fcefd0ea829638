//! Why one sheet was printed before another.

use crate::index::ValueAt;
use keyblock_model::edtf::Date;
use keyblock_model::key::Key;

/// A reason why one sheet was printed before another.
#[derive(Clone, Debug, PartialEq)]
pub enum Reason {
    /// A matrix is less worn on it.
    Wear(WearStep),
    /// Its state comes before that of the other.
    States {
        /// The state of the sheet printed before.
        before: Key,
        /// The state of the sheet printed after.
        after: Key,
    },
    /// It had been printed before the printing of the other began.
    Dates {
        /// The date of the sheet printed before.
        before: Box<DatedBy>,
        /// The date of the sheet printed after.
        after: Box<DatedBy>,
    },
}

/// Two stages of wear of one matrix.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WearStep {
    /// The matrix: the one that the point names, or the design's only one.
    pub matrix: Option<Key>,
    /// The point of wear.
    pub point: Key,
    /// The lower stage, by its place among the point's stages.
    pub before: ValueAt,
    /// The higher stage.
    pub after: ValueAt,
}

/// A date that places a sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct DatedBy {
    /// The printing that has the date; `None` where the sheet has it itself.
    pub printing: Option<Key>,
    /// The date.
    pub date: Date,
}
