//! States: the forms of a design that differ by a change on the printing surface.
//!
//! A state's numeral is only its place in the order; it is computed (`study::numerals`) and not
//! stored. An inserted state changes numerals, but no keys.

use super::certainty::Statements;
use super::edtf::Date;
use super::key::Key;
use super::literature::Citation;
use super::place::{Place, Placed};
use super::point::ShownPoints;
use super::size::Sizes;
use super::standing::RecordStanding;

/// A state of a design.
#[derive(Clone, Debug, PartialEq)]
pub struct State {
    /// Its key: a descriptive word, not a numeral.
    pub key: Placed<Key>,
    /// When the change was made.
    pub date: Statements<Date>,
    /// The person who made it, where that is not the artist.
    pub by: Option<Placed<Key>>,
    /// The change, in a sentence.
    pub summary: Option<String>,
    /// The sizes of image and matrix, where they are not the design's (a plate was cut down).
    pub size: Sizes,
    /// The values it shows at points that rest on a matrix.
    pub shows: ShownPoints,
    /// The states it was changed from; `None`: the one before in the record's order.
    pub follows: Option<Vec<Placed<Key>>>,
    /// When it was recognised as a state.
    pub described: Option<Placed<Date>>,
    /// The state from which it was first distinguished.
    pub split_from: Option<Placed<Key>>,
    /// Citations of earlier literature, with its numbers for it.
    pub literature: Vec<Citation>,
    /// Whether it is accepted, doubtful, rejected or withdrawn.
    pub standing: RecordStanding,
    /// Where it is recorded.
    pub place: Place,
}

/// A difference between sheets without a change of state or printing.
#[derive(Clone, Debug, PartialEq)]
pub struct Variant {
    /// Its key.
    pub key: Placed<Key>,
    /// The difference.
    pub summary: Option<String>,
    /// The states it occurs in.
    pub states: Vec<Placed<Key>>,
    /// The printings it occurs in.
    pub printings: Vec<Placed<Key>>,
    /// The values it shows; used for agreement, not for candidates.
    pub shows: ShownPoints,
    /// Whether it is accepted, doubtful, rejected or withdrawn.
    pub standing: RecordStanding,
    /// Where it is recorded.
    pub place: Place,
}
