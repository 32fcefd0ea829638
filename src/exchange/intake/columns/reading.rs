//! A column: what it holds, how sure that is, and on what ground.

use super::holds::Holds;
use crate::exchange::intake::reading::sizes::Assumed;
use crate::model::certainty::Certainty;

/// On what ground a column was read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Ground {
    /// The heading is a word for it.
    HeadingIs,
    /// The path of the standard that the record is in says so.
    PathIs,
    /// The heading has a word for it among others.
    HeadingHas,
    /// So many of the cells looked at are such ones.
    Cells {
        /// How many are.
        fit: usize,
        /// How many were looked at.
        of: usize,
    },
    /// The heading means the house that keeps the sheets or a place in that house, and so many of the cells looked at name
    /// a house.
    Houses {
        /// How many do.
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
    /// An editor wrote it in `columns.toml`.
    ByHand,
    /// `columns.toml` has it so from an earlier file of the house; this file alone would be read otherwise.
    Before,
}

impl Ground {
    /// The ground in one phrase.
    #[must_use]
    pub fn message(&self) -> String {
        match self {
            Ground::HeadingIs => "the heading says so".to_owned(),
            Ground::PathIs => "the path of the standard says so".to_owned(),
            Ground::HeadingHas => "the heading has a word for it".to_owned(),
            Ground::Cells { fit, of } => format!("{fit} of {of} cells look like it"),
            Ground::Houses { fit, of } => format!(
                "the heading means a house or a place in it, and {fit} of {of} cells name a house"
            ),
            Ground::AlreadyHeld { by } => format!("column {} holds the same", by + 1),
            Ground::NoCells => "no cell has a text".to_owned(),
            Ground::Nothing => "neither the heading nor the cells are known".to_owned(),
            Ground::ByHand => "an editor says so".to_owned(),
            Ground::Before => "it was so in an earlier file".to_owned(),
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
