//! Lists of tables that have keys of their own: points, states, blocks …
//!
//! A key that could not be read, or that is used twice, has one finding. References to keys of the list
//! that do not exist are then not reported: they may mean the part with the faulty key.

use std::collections::{BTreeMap, BTreeSet};

use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::place::{Place, Placed};
use crate::read::faults::Faults;
use crate::read::table::fields::Fields;

/// The parts of a record that have keys of their own.
pub(crate) struct Keyed<T> {
    /// Those that could be read, in the order of the record.
    pub(crate) all: Vec<T>,
    /// Whether every part has a key of its own. Only then is a reference to an unknown key a fault.
    pub(crate) all_known: bool,
    /// Keys that several parts have.
    pub(crate) twice: BTreeSet<Key>,
}

impl<'t> Fields<'_, 't> {
    /// A list of tables, each with its own `key`. `read` gets the key where it could be read.
    pub(crate) fn keyed<T>(
        &mut self,
        name: &'static str,
        mut read: impl FnMut(&mut Fields<'_, 't>, Option<Placed<Key>>) -> Option<T>,
    ) -> Keyed<T> {
        let written = self.take(name).map_or(0, |node| {
            node.get_ref().as_array().map_or(1, |list| list.len())
        });
        let mut keys = Vec::new();
        let all = self.tables(name, |fields| {
            let key = fields.key("key");
            keys.extend(key.clone());
            read(fields, key)
        });
        let twice = distinct(self.faults, name, &keys);
        Keyed {
            all,
            all_known: keys.len() == written && twice.is_empty() && !self.is_misspelt(name),
            twice,
        }
    }
}

/// Reports keys that are used twice, at the second use and with the first as the second place, and
/// returns them. `what` names the parts in the message: "points", "states".
pub(crate) fn distinct<'k>(
    faults: &mut Faults<'_>,
    what: &str,
    keys: impl IntoIterator<Item = &'k Placed<Key>>,
) -> BTreeSet<Key> {
    let mut first: BTreeMap<&Key, Place> = BTreeMap::new();
    let mut twice = BTreeSet::new();
    for key in keys {
        if let Some(earlier) = first.get(&key.value) {
            let finding = Finding::new(
                Code::KeyTwice,
                key.place,
                format!("there are two {what} `{}`", key.value),
            )
            .beside(*earlier, "the first")
            .help("give one of the two another key");
            faults.push(finding);
            twice.insert(key.value.clone());
        } else {
            first.insert(&key.value, key.place);
        }
    }
    twice
}
