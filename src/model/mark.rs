//! Marks: what was put on one sheet by hand or stamp, after or beside the printing.

use super::certainty::Claim;
use super::edtf::Date;
use super::key::Key;
use super::place::{Place, Placed};
use super::words::{Side, closed_list};

closed_list! {
    /// The kind of a mark.
    MarkKind {
        /// A signature.
        Signature = "signature",
        /// A stamp.
        Stamp = "stamp",
        /// A seal.
        Seal = "seal",
        /// A collector's mark.
        Collector = "collector",
        /// Other writing.
        Inscription = "inscription",
    }
}

/// A mark on a sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// Its kind.
    pub kind: Option<Placed<MarkKind>>,
    /// Pencil, ink, brush, blind …
    pub medium: Option<String>,
    /// Its text.
    pub text: Option<String>,
    /// Where on that side: "lower right, in the margin".
    pub at: Option<String>,
    /// The side it is on.
    pub side: Option<Side>,
    /// The key of the person or holder whose name it bears.
    pub whose: Option<Placed<Key>>,
    /// The key of the person or holder who applied it.
    pub applied_by: Option<Placed<Key>>,
    /// When it was put there.
    pub applied: Option<Placed<Date>>,
    /// Its colour.
    pub colour: Option<String>,
    /// Its number in a repertory of marks.
    pub number: Option<String>,
    /// The source and certainty of the statement.
    pub claim: Claim,
    /// Where the mark is recorded.
    pub place: Place,
}
