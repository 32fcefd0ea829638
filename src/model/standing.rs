//! Standing: whether a record is accepted, doubtful, rejected or withdrawn, and what the record says about it.

use super::place::Placed;
use super::words::Standing;

/// The standing of a record, what to see instead, and why.
#[derive(Clone, Debug, PartialEq)]
pub struct RecordStanding {
    /// Its standing.
    pub standing: Standing,
    /// The records to see instead, as links name them.
    pub see: Vec<Placed<String>>,
    /// Why.
    pub why: Option<String>,
}

impl Default for RecordStanding {
    fn default() -> RecordStanding {
        RecordStanding {
            standing: Standing::Accepted,
            see: Vec::new(),
            why: None,
        }
    }
}

impl RecordStanding {
    /// Whether the record was withdrawn.
    #[must_use]
    pub fn is_withdrawn(&self) -> bool {
        self.standing == Standing::Withdrawn
    }

    /// Whether the record is not, or no longer, accepted: rejected or withdrawn. A design that is stays in
    /// an appendix with its number.
    #[must_use]
    pub fn is_set_apart(&self) -> bool {
        matches!(self.standing, Standing::Rejected | Standing::Withdrawn)
    }
}
