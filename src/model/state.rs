//! States: what changes on the printing surface made.
//!
//! A state's numeral is only its place in the order; it is computed (`study::numerals`) and stored
//! nowhere. Insert a state and the numerals move, the keys do not.

use super::certainty::Statements;
use super::edtf::Date;
use super::key::Key;
use super::literature::Citation;
use super::place::{Place, Placed};
use super::point::ShownPoints;
use super::standing::RecordStanding;

/// A state of a design.
#[derive(Clone, Debug, PartialEq)]
pub struct State {
    /// Its key: telling, not a numeral.
    pub key: Placed<Key>,
    /// When the change was made.
    pub date: Statements<Date>,
    /// Who made it, where that is not the artist.
    pub by: Option<Placed<Key>>,
    /// What changed, in a sentence.
    pub summary: Option<String>,
    /// What it shows at points that rest on a matrix.
    pub shows: ShownPoints,
    /// The states it was changed from; `None`: the one before in the record's order.
    pub follows: Option<Vec<Placed<Key>>>,
    /// When it was recognised as a state.
    pub described: Option<Placed<Date>>,
    /// The state it was told apart from when it was recognised.
    pub split_from: Option<Placed<Key>>,
    /// What earlier literature calls it.
    pub literature: Vec<Citation>,
    /// Whether it stands.
    pub standing: RecordStanding,
    /// Where its record stands.
    pub place: Place,
}

/// A sheet that differs with no change of state or printing.
#[derive(Clone, Debug, PartialEq)]
pub struct Variant {
    /// Its key.
    pub key: Placed<Key>,
    /// What differs.
    pub summary: Option<String>,
    /// The states it is met in.
    pub states: Vec<Placed<Key>>,
    /// The printings it is met in.
    pub printings: Vec<Placed<Key>>,
    /// What it shows; counts for agreement, not for candidates.
    pub shows: ShownPoints,
    /// Whether it stands.
    pub standing: RecordStanding,
    /// Where its record stands.
    pub place: Place,
}
