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
use crate::model::catalogue::Catalogue;
use crate::model::design::Design;
use crate::model::impression::Impression;
use crate::model::key::ImpressionKey;
use crate::study::index::{Indexed, SheetAt};

/// Counts the sheets of some designs.
pub(super) fn count(catalogue: &Catalogue, groups: &Groups, designs: &[&Design]) -> Census {
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
    let graph = doubts(groups, &records, &sheets);
    let sheets: Indexed<SheetAt, (ImpressionKey, SheetAllows)> = sheets.into_iter().collect();
    let cover = graph.cover();
    Census {
        sheets: Sheets {
            at_least: cover.at_least,
            at_most: sheets.len(),
            exact: cover.exact,
        },
        by: CensusRows {
            holder: rows(&graph, &sheets, |a| &a.holder),
            country: rows(&graph, &sheets, |a| &a.country),
            city: rows(&graph, &sheets, |a| &a.city),
            state: rows(&graph, &sheets, |a| &a.state),
            printing: rows(&graph, &sheets, |a| &a.printing),
            crossing: rows(&graph, &sheets, |a| &a.crossing),
            holding: rows(&graph, &sheets, |a| &a.holding),
            kind: rows(&graph, &sheets, |a| &a.kind),
            class: rows(&graph, &sheets, |a| &a.class),
            status: rows(&graph, &sheets, |a| &a.status),
        },
    }
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

fn rows<K: Ord + Clone>(
    graph: &Graph,
    sheets: &Indexed<SheetAt, (ImpressionKey, SheetAllows)>,
    values: impl Fn(&SheetAllows) -> &Values<Option<K>>,
) -> Vec<Row<K>>
where
    Option<K>: Value,
{
    let mut rows: BTreeMap<&Option<K>, (BTreeSet<SheetAt>, Vec<ImpressionKey>)> = BTreeMap::new();
    for (at, (first, sheet)) in sheets.entries() {
        let allowed = values(sheet).allowed();
        let is_only = allowed.len() == 1;
        for value in allowed {
            let (only, allowing) = rows.entry(value).or_default();
            allowing.push(first.clone());
            if is_only {
                only.insert(at);
            }
        }
    }
    let mut rows: Vec<Row<K>> = rows
        .into_iter()
        .map(|(key, (only, allowing))| {
            let cover = graph.cover_beside(&only, |at| values(&sheets[at].1).differ_from(key));
            Row {
                key: key.clone(),
                sheets: Sheets {
                    at_least: cover.at_least,
                    at_most: allowing.len(),
                    exact: cover.exact,
                },
                allowing,
            }
        })
        .collect();
    // What is not recorded comes last.
    rows.sort_by_key(|row| row.key.is_none());
    rows
}
