//! What an editor corrected, and which value it is for.

use std::collections::BTreeMap;

use crate::exchange::intake::columns::Holds;
use crate::exchange::intake::facts::Facts;

/// A value that an editor corrected.
#[derive(Clone, Debug, PartialEq)]
pub struct SettledValue {
    /// The heading of its column.
    pub heading: String,
    /// What the column holds.
    pub holds: Holds,
    /// The text of the value.
    pub text: String,
    /// What it reads.
    pub facts: Facts,
}

/// The values that editors corrected, as `values.toml` has them.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SettledValues {
    all: Vec<SettledValue>,
    /// By what the column holds and the text: places in the list, in order.
    by_text: BTreeMap<(Holds, String), Vec<usize>>,
}

impl SettledValues {
    /// Adds a value.
    pub fn add(&mut self, value: SettledValue) {
        let of_text = self
            .by_text
            .entry((value.holds, value.text.clone()))
            .or_default();
        of_text.push(self.all.len());
        self.all.push(value);
    }

    /// The values, in the order of the file.
    #[must_use]
    pub fn all(&self) -> &[SettledValue] {
        &self.all
    }

    /// The correction of a value, by its place in the list.
    ///
    /// That of the column with the same heading; else that of a column that holds the same and that this table does not
    /// have: a heading may be worded otherwise in the next file. A correction of another column of this table never counts,
    /// since two columns of sizes may be of two things. Where several such columns differ, none counts.
    pub(super) fn find(
        &self,
        holds: Holds,
        heading: &str,
        text: &str,
        is_in_table: impl Fn(&str) -> bool,
    ) -> Option<usize> {
        if self.all.is_empty() {
            return None;
        }
        let of_text = self.by_text.get(&(holds, text.to_owned()))?;
        let value = |place: &&usize| &self.all[**place];
        if let Some(own) = of_text.iter().find(|place| value(place).heading == heading) {
            return Some(*own);
        }
        let mut others = of_text
            .iter()
            .filter(|place| !is_in_table(&value(place).heading));
        let first = others.next()?;
        let is_one = others.all(|other| self.all[*other].facts == self.all[*first].facts);
        is_one.then_some(*first)
    }
}
