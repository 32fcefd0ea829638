//! A table of a record that is being read, and its keys.

use toml::Spanned;
use toml::de::{DeString, DeTable};

use crate::model::place::Place;
use crate::read::faults::{Faults, Node, is_unread};
use crate::read::shape::Shape;

/// A table that is being read.
pub(crate) struct Fields<'a, 't> {
    /// Collects the findings.
    pub(crate) faults: &'a mut Faults<'t>,
    /// The place of the table: its header, its braces, or the start of the file.
    pub(crate) at: Place,
    pub(super) shape: &'static Shape,
    pub(super) table: &'t DeTable<'t>,
    pub(super) asked: Vec<&'static str>,
}

impl<'t> Fields<'_, 't> {
    /// The value of a key; `None` where it is absent or could not be parsed.
    pub(crate) fn take(&mut self, name: &'static str) -> Option<&'t Node<'t>> {
        debug_assert!(
            self.shape.key(name).is_some(),
            "{} does not declare `{name}`",
            self.shape.name
        );
        self.asked.push(name);
        self.faults.key = name;
        self.table.get(name).filter(|node| !is_unread(node))
    }

    /// The place of a key of the table.
    pub(crate) fn key_place(&self, name: &str) -> Option<Place> {
        let (key, _) = self.table.get_key_value(name)?;
        Some(self.faults.place(key.span()))
    }

    /// Whether the table has a key.
    pub(crate) fn has(&self, name: &str) -> bool {
        self.table.contains_key(name)
    }
}

/// One entry of a table whose keys are not declared.
#[derive(Clone, Copy)]
pub(crate) struct Entry<'t> {
    /// The key.
    pub(crate) key: &'t Spanned<DeString<'t>>,
    /// Its value.
    pub(crate) node: &'t Node<'t>,
}

/// The entries of a table in the order in which they are written. The tree has them sorted by name.
pub(crate) fn in_order<'t>(
    table: &'t DeTable<'t>,
) -> Vec<(&'t Spanned<DeString<'t>>, &'t Node<'t>)> {
    let mut entries: Vec<_> = table.iter().collect();
    entries.sort_by_key(|(key, _)| key.span().start);
    entries
}
