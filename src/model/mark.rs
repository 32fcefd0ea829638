//! Marks: what was put on one sheet by hand or stamp, after or beside the printing.

use super::certainty::Claim;
use super::edtf::Date;
use super::key::Key;
use super::place::{Place, Placed};
use super::words::{Side, closed_list};

closed_list! {
    /// What kind of mark it is.
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
    /// What it says.
    pub text: Option<String>,
    /// Where on that side: "lower right, in the margin".
    pub at: Option<String>,
    /// The side it is on.
    pub side: Option<Side>,
    /// Whose name it bears: a person's or holder's key.
    pub whose: Option<Placed<Key>>,
    /// Who applied it.
    pub applied_by: Option<Placed<Key>>,
    /// When it was put there.
    pub applied: Option<Placed<Date>>,
    /// Its colour.
    pub colour: Option<String>,
    /// Its number in a repertory of marks.
    pub number: Option<String>,
    /// Who says so.
    pub claim: Claim,
    /// Where the mark is recorded.
    pub place: Place,
}
