//! The columns of values by which readers narrow a search: for each of them, the values of every entry.
//!
//! In: the entries. Out: a [`Column`] for each [`Narrowing`]: its values for readers, the combinations of values
//! that entries have (a print may be both etching and aquatint), and for each entry the number of its combination,
//! 0 for none. Written, a number below 0 says how many more entries have the combination before it.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;

use super::entry::{Entry, Narrowing, NarrowingValue};
use super::shards::MOST_BYTES;
use keyblock_model::words::ClosedList as _;

/// The values of all entries by one thing that readers narrow by.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Column {
    /// By what.
    pub by: Narrowing,
    /// Its values, in the order of lists.
    pub values: Vec<NarrowingValue>,
    /// The combinations that occur, from 1 on: places in `values`.
    pub combinations: Vec<Vec<usize>>,
    /// The entries in parts.
    pub parts: Vec<ColumnPart>,
}

/// The values of entries that follow each other.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ColumnPart {
    /// The place of the first of them.
    pub start: usize,
    /// Their combinations, as numbers with commas between them.
    pub numbers: String,
}

/// The columns that have any value.
#[must_use]
pub fn columns(entries: &[Entry]) -> Vec<Column> {
    let columns = Narrowing::ALL.iter().map(|by| column(entries, *by));
    columns.filter(|column| !column.values.is_empty()).collect()
}

fn column(entries: &[Entry], by: Narrowing) -> Column {
    let of = |entry: &Entry| -> Vec<NarrowingValue> {
        let values = entry.values.iter().filter(|value| value.by == by);
        values.cloned().collect()
    };
    let met: BTreeSet<NarrowingValue> = entries.iter().flat_map(of).collect();
    let mut values: Vec<NarrowingValue> = met.into_iter().collect();
    // One key has one label; where two records disagree, the first in the order of values stands.
    let mut keys = BTreeSet::new();
    values.retain(|value| keys.insert(value.key.clone()));
    values.sort_by(|a, b| a.rank.cmp(&b.rank).then_with(|| a.label.cmp(&b.label)));
    let places: BTreeMap<&str, usize> = values.iter().map(|v| v.key.as_str()).zip(0..).collect();
    let mut numbers: BTreeMap<Vec<usize>, usize> = BTreeMap::new();
    let mut combinations = Vec::new();
    let mut parts: Vec<ColumnPart> = Vec::new();
    let mut run = (0, 0);
    for (at, entry) in entries.iter().enumerate() {
        let own: BTreeSet<usize> = of(entry)
            .iter()
            .filter_map(|value| places.get(value.key.as_str()).copied())
            .collect();
        let own: Vec<usize> = own.into_iter().collect();
        let number = if own.is_empty() {
            0
        } else {
            *numbers.entry(own).or_insert_with_key(|own| {
                combinations.push(own.clone());
                combinations.len()
            })
        };
        let is_full = |part: &ColumnPart| part.numbers.len() > MOST_BYTES;
        match parts.last_mut() {
            Some(_) if run.0 == number => run.1 += 1,
            Some(part) if !is_full(part) => {
                end_run(part, run.1);
                let _ = write!(part.numbers, ",{number}");
                run = (number, 0);
            }
            part => {
                if let Some(part) = part {
                    end_run(part, run.1);
                }
                parts.push(ColumnPart {
                    start: at,
                    numbers: number.to_string(),
                });
                run = (number, 0);
            }
        }
    }
    if let Some(part) = parts.last_mut() {
        end_run(part, run.1);
    }
    Column {
        by,
        values,
        combinations,
        parts,
    }
}

fn end_run(part: &mut ColumnPart, more: usize) {
    let _ = match more {
        0 => Ok(()),
        more => write!(part.numbers, ",-{more}"),
    };
}

#[cfg(test)]
mod tests {
    use super::super::entry::EntryKind;
    use super::*;

    fn entry(techniques: &[&str]) -> Entry {
        let mut entry = Entry::new(EntryKind::Design, String::new(), String::new());
        entry.values = techniques
            .iter()
            .map(|key| NarrowingValue {
                by: Narrowing::Technique,
                rank: 0,
                key: (*key).to_owned(),
                label: key.to_uppercase(),
            })
            .collect();
        entry
    }

    #[test]
    fn a_column_has_each_combination_once_and_runs_in_short() {
        let entries = [
            entry(&["etching"]),
            entry(&["etching"]),
            entry(&["etching"]),
            entry(&[]),
            entry(&["etching", "aquatint"]),
            entry(&["aquatint", "etching"]),
        ];
        let [column] = columns(&entries).try_into().unwrap();
        let keys: Vec<&str> = column.values.iter().map(|v| v.key.as_str()).collect();
        assert_eq!(keys, ["aquatint", "etching"]);
        assert_eq!(column.combinations, [vec![1], vec![0, 1]]);
        assert_eq!(
            column.parts,
            [ColumnPart {
                start: 0,
                numbers: "1,-2,0,2,-1".to_owned()
            }]
        );
    }

    #[test]
    fn a_long_column_is_cut_into_small_parts() {
        let names: Vec<String> = (0..900).map(|n| format!("t{n}")).collect();
        let entries: Vec<Entry> = (0..40_000).map(|n| entry(&[&names[n * 7 % 900]])).collect();
        let [column] = columns(&entries).try_into().unwrap();
        assert!(column.parts.len() > 3);
        let mut entries = 0;
        for part in &column.parts {
            assert_eq!(part.start, entries);
            assert!(part.numbers.len() < 30_000);
            entries += part.numbers.split(',').count();
        }
        assert_eq!(entries, 40_000);
    }
}
