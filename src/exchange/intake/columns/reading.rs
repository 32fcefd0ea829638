//! A column: what it holds, how sure that is, and on what ground.

use super::holds::Holds;
use crate::exchange::intake::reading::sizes::Assumed;
use crate::model::certainty::Certainty;

/// On what ground a column was read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Ground {
    /// The heading is a word for it.
    HeadingIs,
    /// The heading has a word for it among others.
    HeadingHas,
    /// So many of the cells looked at are such ones.
    Cells {
        /// How many are.
        fit: usize,
        /// How many were looked at.
        of: usize,
    },
    /// An earlier column has the same heading or holds the same.
    AlreadyHeld {
        /// The earlier column, from 0.
        by: usize,
    },
    /// No cell of the column has a text.
    NoCells,
    /// Neither the heading nor the cells are known.
    Nothing,
}

impl Ground {
    /// The ground in one phrase.
    #[must_use]
    pub fn message(&self) -> String {
        match self {
            Ground::HeadingIs => "the heading says so".to_owned(),
            Ground::HeadingHas => "the heading has a word for it".to_owned(),
            Ground::Cells { fit, of } => format!("{fit} of {of} cells look like it"),
            Ground::AlreadyHeld { by } => format!("column {} holds the same", by + 1),
            Ground::NoCells => "no cell has a text".to_owned(),
            Ground::Nothing => "neither the heading nor the cells are known".to_owned(),
        }
    }
}

/// A column of a table.
#[derive(Clone, Debug, PartialEq)]
pub struct ColumnReading {
    /// Its place, from 0.
    pub column: usize,
    /// Its heading.
    pub heading: String,
    /// What it holds.
    pub holds: Holds,
    /// How sure that is.
    pub sure: Certainty,
    /// Why.
    pub why: Vec<Ground>,
    /// What the heading says of sizes: the unit, what was measured, which length is first.
    pub assumed: Assumed,
    /// How many cells have a text.
    pub filled: usize,
    /// How many different texts there are.
    pub distinct: usize,
}
