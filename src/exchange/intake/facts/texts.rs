//! The texts of cells that no grammar reads, by what their columns hold.

use std::sync::Arc;

use crate::exchange::intake::columns::Holds;

/// Texts by what their columns hold, in the order of [`Holds`]. Rows of one file share them.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct HeldTexts(Vec<(Holds, Arc<str>)>);

impl HeldTexts {
    /// The text of the columns that hold this.
    #[must_use]
    pub fn get(&self, holds: Holds) -> Option<&str> {
        let place = self.place(holds).ok()?;
        self.0.get(place).map(|(_, text)| &**text)
    }

    /// The texts with what their columns hold.
    pub fn iter(&self) -> impl Iterator<Item = (Holds, &str)> {
        self.0.iter().map(|(holds, text)| (*holds, &**text))
    }

    /// Adds the text of a cell, after one that stands already for another column that holds the same.
    pub fn add(&mut self, holds: Holds, text: Arc<str>) {
        match self.place(holds) {
            Ok(place) => {
                let known = &mut self.0[place].1;
                *known = Arc::from(format!("{known}; {text}"));
            }
            Err(place) => self.0.insert(place, (holds, text)),
        }
    }

    /// Gives back the memory beside the texts.
    pub(super) fn shrink(&mut self) {
        self.0.shrink_to_fit();
    }

    fn place(&self, holds: Holds) -> Result<usize, usize> {
        self.0.binary_search_by_key(&holds, |(known, _)| *known)
    }
}

impl FromIterator<(Holds, Arc<str>)> for HeldTexts {
    fn from_iter<I: IntoIterator<Item = (Holds, Arc<str>)>>(all: I) -> HeldTexts {
        let mut texts = HeldTexts::default();
        for (holds, text) in all {
            texts.add(holds, text);
        }
        texts
    }
}

impl IntoIterator for HeldTexts {
    type Item = (Holds, Arc<str>);
    type IntoIter = std::vec::IntoIter<(Holds, Arc<str>)>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn texts_of_columns_that_hold_the_same_stand_one_after_the_other() {
        let mut texts = HeldTexts::default();
        texts.add(Holds::Remarks, "seen".into());
        texts.add(Holds::Condition, "foxed".into());
        texts.add(Holds::Condition, "trimmed".into());
        assert_eq!(texts.get(Holds::Condition), Some("foxed; trimmed"));
        assert_eq!(texts.get(Holds::Marks), None);
        let all: Vec<Holds> = texts.iter().map(|(holds, _)| holds).collect();
        assert!(all.is_sorted());
        assert_eq!(texts.clone().into_iter().collect::<HeldTexts>(), texts);
    }
}
