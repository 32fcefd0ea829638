//! Settled doubts: what a record says of a doubt or hint that somebody judged and put to rest.

use super::codes::Code;
use super::edtf::Date;
use super::key::Key;
use super::place::{Place, Placed};

/// One entry of a record's `settled`.
#[derive(Clone, Debug, PartialEq)]
pub struct SettledDoubt {
    /// The code of the doubt or hint; one that can be settled ([`Code::can_be_settled`]).
    pub code: Placed<Code>,
    /// The digest of what the doubt rested on when it was judged. Without one the entry is for the only doubt of
    /// this code that the record has.
    pub digest: Option<Placed<String>>,
    /// Why the doubt is at rest.
    pub why: Option<String>,
    /// Who judged it: a person or a holder.
    pub by: Option<Placed<Key>>,
    /// When.
    pub date: Option<Placed<Date>>,
    /// Where the entry stands.
    pub place: Place,
}
