//! Counting: how many sheets the records are of, at most and at least, and the rows by key.
//!
//! In: the records of some designs. Out: a [`Census`].
//! Definitions: `docs/definitions.md, "Distinct sheets"` and `"Rows of the census"`.

use std::collections::{BTreeMap, BTreeSet};

use super::allows::{RecordAllows, SheetAllows};
use super::clique_cover::Graph;
use super::groups::{Groups, is_counted, is_counted_only};
use super::rows::{Census, CensusRows, Row, Sheets};
use super::values::{Value, Values};
use crate::index::{Indexed, SheetAt};
use keyblock_model::catalogue::Catalogue;
use keyblock_model::design::Design;
use keyblock_model::impression::Impression;
use keyblock_model::key::{ImpressionKey, Key};

/// Counts the sheets of some designs.
pub(super) fn count(catalogue: &Catalogue, groups: &Groups, designs: &[&Design]) -> Census {
    let counted = Counted::of(catalogue, groups, designs);
    let cover = counted.graph.cover();
    Census {
        sheets: Sheets {
            at_least: cover.at_least,
            at_most: counted.sheets.len(),
            exact: cover.exact,
        },
        by: CensusRows {
            holder: counted.rows(|a| &a.holder),
            country: counted.rows(|a| &a.country),
            city: counted.rows(|a| &a.city),
            state: counted.rows(|a| &a.state),
            printing: counted.rows(|a| &a.printing),
            crossing: counted.rows(|a| &a.crossing),
            holding: counted.rows(|a| &a.holding),
            kind: counted.rows(|a| &a.kind),
            class: counted.rows(|a| &a.class),
            status: counted.rows(|a| &a.status),
        },
    }
}

/// The sheets of a design that are counted: all of them, or those of some printings.
#[derive(Clone, Debug)]
pub(crate) struct CountedPart<'a> {
    /// The design.
    pub design: &'a Design,
    /// The printings; empty: all sheets.
    pub printings: Vec<&'a Key>,
}

/// Counts the sheets of parts of designs together, as the row of a value is counted: at most the sheets that allow one of
/// the printings, at least those that allow no other. States and printings are of one design each, so they have no rows.
pub(super) fn count_parts(
    catalogue: &Catalogue,
    groups: &Groups,
    parts: &[CountedPart<'_>],
) -> Census {
    let designs: Vec<&Design> = parts.iter().map(|part| part.design).collect();
    let counted = Counted::of(catalogue, groups, &designs);
    let parts: BTreeMap<&Key, &CountedPart<'_>> =
        parts.iter().map(|part| (&part.design.key, part)).collect();
    let is_in: BTreeMap<SheetAt, Values<Option<bool>>> = counted
        .sheets
        .entries()
        .map(|(at, (first, sheet))| {
            let printings = parts.get(&first.design).map(|part| &part.printings);
            let is_in = match printings {
                Some(printings) if !printings.is_empty() => sheet.printing.map(|printing| {
                    let printing = printing.as_ref()?;
                    Some(printings.contains(&printing))
                }),
                _ => Values::of([BTreeSet::from([Some(true)])].iter(), None),
            };
            (at, is_in)
        })
        .collect();
    let sheets = counted.rows_of(|at, _| is_in[&at].clone());
    let sheets = sheets.into_iter().find(|(is_in, ..)| *is_in == Some(true));
    let none = Sheets {
        exact: true,
        ..Sheets::default()
    };
    let counted = CountedTogether { counted, is_in };
    Census {
        sheets: sheets.map_or(none, |(_, sheets, _)| sheets),
        by: CensusRows {
            holder: counted.rows(|a| &a.holder),
            country: counted.rows(|a| &a.country),
            city: counted.rows(|a| &a.city),
            kind: counted.rows(|a| &a.kind),
            class: counted.rows(|a| &a.class),
            status: counted.rows(|a| &a.status),
            ..CensusRows::default()
        },
    }
}

/// The sheets of some designs, with what each allows and which may be the same.
struct Counted {
    graph: Graph,
    sheets: Indexed<SheetAt, (ImpressionKey, SheetAllows)>,
}

/// The sheets of some designs, and whether each is counted.
struct CountedTogether {
    counted: Counted,
    is_in: BTreeMap<SheetAt, Values<Option<bool>>>,
}

/// A value, its sheets, and those that allow it.
type ValueRow<V> = (V, Sheets, Vec<ImpressionKey>);

impl Counted {
    fn of(catalogue: &Catalogue, groups: &Groups, designs: &[&Design]) -> Counted {
        let records: Vec<(&Design, &Impression)> = designs
            .iter()
            .flat_map(|design| design.impressions.values().map(|i| (*design, i)))
            .collect();
        let mut groups_of: BTreeMap<ImpressionKey, (&Design, Vec<RecordAllows>)> = BTreeMap::new();
        for (design, impression) in &records {
            if is_counted(design, impression) {
                let group = groups_of.entry(groups.first_of(&impression.key));
                let (_, said) = group.or_insert((design, Vec::new()));
                said.push(RecordAllows::of(catalogue, design, impression));
            }
        }
        let mut sheets: BTreeMap<ImpressionKey, SheetAllows> = groups_of
            .into_iter()
            .map(|(first, (design, said))| (first, SheetAllows::of(design, &said)))
            .collect();
        // A sheet that is counted and not shown is joined to no other.
        for design in designs {
            for sheet in design
                .counted_only
                .iter()
                .filter(|s| is_counted_only(design, s))
            {
                let allows = SheetAllows::of_counted_only(catalogue, design, sheet);
                sheets.insert(sheet.key.clone(), allows);
            }
        }
        Counted {
            graph: doubts(groups, &records, &sheets),
            sheets: sheets.into_iter().collect(),
        }
    }

    fn rows<K: Ord + Clone>(
        &self,
        values: impl Fn(&SheetAllows) -> &Values<Option<K>>,
    ) -> Vec<Row<K>>
    where
        Option<K>: Value,
    {
        in_order(self.rows_of(|_, sheet| values(sheet).clone()))
    }

    /// A row for each value that some sheet allows, in the order of values.
    fn rows_of<V: Value>(
        &self,
        values: impl Fn(SheetAt, &SheetAllows) -> Values<V>,
    ) -> Vec<ValueRow<V>> {
        let values: Indexed<SheetAt, Values<V>> = self
            .sheets
            .entries()
            .map(|(at, (_, sheet))| values(at, sheet))
            .collect();
        let mut rows: BTreeMap<&V, (BTreeSet<SheetAt>, Vec<ImpressionKey>)> = BTreeMap::new();
        for (at, values) in values.entries() {
            let allowed = values.allowed();
            let is_only = allowed.len() == 1;
            for value in allowed {
                let (only, allowing) = rows.entry(value).or_default();
                allowing.push(self.sheets[at].0.clone());
                if is_only {
                    only.insert(at);
                }
            }
        }
        rows.into_iter()
            .map(|(value, (only, allowing))| {
                let cover = self
                    .graph
                    .cover_beside(&only, |at| values[at].differ_from(value));
                let sheets = Sheets {
                    at_least: cover.at_least,
                    at_most: allowing.len(),
                    exact: cover.exact,
                };
                (value.clone(), sheets, allowing)
            })
            .collect()
    }
}

impl CountedTogether {
    fn rows<K: Ord + Clone>(
        &self,
        values: impl Fn(&SheetAllows) -> &Values<Option<K>>,
    ) -> Vec<Row<K>>
    where
        Option<K>: Value,
    {
        let rows = self.counted.rows_of(|at, sheet| {
            let both = |is_in: &Option<bool>, value: &Option<K>| (*is_in, value.clone());
            self.is_in[&at].with(values(sheet), both)
        });
        let rows = rows
            .into_iter()
            .filter(|((is_in, _), ..)| *is_in == Some(true));
        in_order(rows.map(|((_, key), sheets, allowing)| (key, sheets, allowing)))
    }
}

/// The rows; what is not recorded comes last.
fn in_order<K>(rows: impl IntoIterator<Item = ValueRow<Option<K>>>) -> Vec<Row<K>> {
    let rows = rows.into_iter();
    let mut rows: Vec<Row<K>> = rows
        .map(|(key, sheets, allowing)| Row {
            key,
            sheets,
            allowing,
        })
        .collect();
    rows.sort_by_key(|row| row.key.is_none());
    rows
}

/// The graph of groups: an edge where some pair of their records may be the same sheet and none is
/// said not to be.
fn doubts(
    groups: &Groups,
    records: &[(&Design, &Impression)],
    sheets: &BTreeMap<ImpressionKey, SheetAllows>,
) -> Graph {
    let indexes = (0..).map(SheetAt::new);
    let indexes: BTreeMap<&ImpressionKey, SheetAt> = sheets.keys().zip(indexes).collect();
    let pair = |a: &ImpressionKey, b: &ImpressionKey| {
        let a = indexes.get(&groups.first_of(a))?;
        let b = indexes.get(&groups.first_of(b))?;
        Some((*a.min(b), *a.max(b)))
    };
    let mut maybe = BTreeSet::new();
    let mut not = BTreeSet::new();
    for (_, impression) in records {
        let linked = |other| pair(&impression.key, other);
        maybe.extend(
            impression
                .maybe_same_as
                .iter()
                .filter_map(|o| linked(&o.impression.value)),
        );
        not.extend(
            impression
                .not_same_as
                .iter()
                .filter_map(|o| linked(&o.impression.value)),
        );
    }
    let mut graph = Graph::unjoined(sheets.len());
    for (a, b) in maybe.difference(&not) {
        graph.join(*a, *b);
    }
    graph
}
