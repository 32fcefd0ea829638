//! Where a row belongs, and why.

use crate::model::key::Key;

/// A group of rows of one design.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(super) enum Group {
    /// A design of the catalogue.
    Recorded(Key),
    /// One of several designs of the catalogue.
    OneOf(Vec<Key>),
    /// A new design that an editor settled, by its place in the settings.
    Settled(usize),
    /// A new design, by its place among those found.
    New(usize),
    /// No design of the catalogue; which new one is not decided yet.
    Undecided,
}

/// Where a row belongs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Placement {
    /// The group.
    pub group: Group,
    /// Why it belongs there, in words.
    pub joins: Vec<String>,
    /// Why it does not belong elsewhere, in words.
    pub splits: Vec<String>,
    /// What is doubtful about it, in words.
    pub doubts: Vec<String>,
}

impl Placement {
    pub(super) fn of(group: Group) -> Placement {
        Placement {
            group,
            joins: Vec::new(),
            splits: Vec::new(),
            doubts: Vec::new(),
        }
    }
}
