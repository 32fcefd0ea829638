//! The census as values: a number of sheets as an interval, and rows of such numbers by key.
//!
//! Not here: how they are counted (`count`).

use super::crossing::StateAndPrinting;
use keyblock_model::impression::Status;
use keyblock_model::key::{ImpressionKey, Key};
use keyblock_model::vocabulary::CountingClass;

/// Which designs are counted together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DesignScope {
    /// All of them, as `census --json` gives.
    All,
    /// Those that are neither rejected nor withdrawn. A catalogue raisonné lists works rejected as not by
    /// the artist apart, and counts them in no total (common practice, no source; `docs/trade.md,
    /// "Counting sheets"`).
    Accepted,
}

/// A number of sheets, as an interval.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Sheets {
    /// The fewest that the open doubts allow.
    pub at_least: usize,
    /// The number of groups: every open doubt resolved as two sheets.
    pub at_most: usize,
    /// Whether `at_least` is the fewest itself, not only a lower bound of it.
    pub exact: bool,
}

impl Sheets {
    /// Whether nothing is open.
    #[must_use]
    pub fn is_certain(self) -> bool {
        self.at_least == self.at_most
    }
}

/// One row: the sheets that have a value, or for which nothing is recorded.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row<K> {
    /// The value; `None`: nothing is recorded.
    pub key: Option<K>,
    /// The sheets: at most those that allow the value, at least those that allow no other.
    pub sheets: Sheets,
    /// Those that allow the value, each by its first record ([`Groups::first_of`]).
    pub allowing: Vec<ImpressionKey>,
}

/// The rows, each list in the order of its keys with what is not recorded last. They need not add
/// up: a sheet that is one of two states is in both rows, and a sheet that is counted and not shown in none of holder,
/// country, town and status.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct CensusRows {
    /// By holder.
    pub holder: Vec<Row<Key>>,
    /// By the holder's country, ISO 3166-1 alpha-2.
    pub country: Vec<Row<String>>,
    /// By the holder's town.
    pub city: Vec<Row<String>>,
    /// By state, in the record's order. Empty where several designs are counted together.
    pub state: Vec<Row<Key>>,
    /// By printing, in the record's order. Empty where several designs are counted together.
    pub printing: Vec<Row<Key>>,
    /// By state and printing together. Empty where several designs are counted together.
    pub crossing: Vec<Row<StateAndPrinting>>,
    /// By holder and state together. Empty where several designs are counted together.
    pub holding: Vec<Row<HolderAndState>>,
    /// By kind of impression.
    pub kind: Vec<Row<Key>>,
    /// By the class in which a kind of impression counts.
    pub class: Vec<Row<CountingClass>>,
    /// By status.
    pub status: Vec<Row<Status>>,
}

/// A holder and a state; `None` for what is not recorded.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct HolderAndState {
    /// The holder.
    pub holder: Option<Key>,
    /// The state.
    pub state: Option<Key>,
}

/// The known sheets of a design, or of a whole catalogue.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Census {
    /// How many there are.
    pub sheets: Sheets,
    /// The same by various keys.
    pub by: CensusRows,
}
