//! A planned change of a key.

use std::collections::BTreeMap;

/// What a change of a key changes.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct RenamePlan {
    /// The texts that change, by path in the catalogue as it is before the change.
    pub texts: BTreeMap<String, String>,
    /// In how many places each changes.
    pub places: BTreeMap<String, usize>,
    /// Files and folders that get another name: path before, path after.
    pub moves: Vec<(String, String)>,
}
