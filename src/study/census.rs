//! The census: how many sheets are known, as an interval.
//!
//! A record is not a sheet. Records joined by `same_as` are one group; where two groups may be the
//! same sheet the count has a lower and an upper end. The definitions are those of DESIGN.md's
//! appendix, "Distinct sheets".
//!
//! In: impressions. Out: [`Census`]: the count, and rows by holder, country, town, state, printing,
//! both of these crossed, holder and state crossed, kind, class and status. Rows are made from what may
//! be published, so that a count never tells what a record keeps private.
//! Not here: declared editions (`editions`).

use std::collections::{BTreeMap, BTreeSet};

use crate::model::catalogue::Catalogue;
use crate::model::design::Design;
use crate::model::impression::{Identification, Impression, StateReading, Status};
use crate::model::key::{ImpressionKey, Key};
use crate::model::vocabulary::{CountingClass, List};

use super::clique_cover::Graph;
use super::crossing::{self, Crossed};

/// Whose holders the rows tell.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Holders {
    /// Those of every record: for the editors.
    All,
    /// Those of the records that are shown. One that is counted without being shown stands where no
    /// holder is recorded, or its row would tell who has it.
    Shown,
}

/// Which designs are counted together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Designs {
    /// All of them: what DESIGN.md's appendix counts, and `census --json` tells.
    All,
    /// Those that are neither rejected nor withdrawn. Works rejected as not by the artist stand apart in
    /// a catalogue raisonné, in no total (common practice, no source).
    Accepted,
}

/// A number of sheets, as an interval.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Sheets {
    /// The fewest that the open doubts allow.
    pub at_least: usize,
    /// The number of groups: every open doubt resolved as two sheets.
    pub at_most: usize,
    /// Whether `at_least` is the fewest itself, not only a number it is not below.
    pub exact: bool,
}

impl Sheets {
    /// Whether nothing is open.
    #[must_use]
    pub fn is_certain(self) -> bool {
        self.at_least == self.at_most
    }
}

/// One row: the sheets that have a value, or for which nothing is recorded.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row<K> {
    /// The value; `None`: nothing is recorded.
    pub key: Option<K>,
    /// The sheets: at most those that allow the value, at least those that allow no other.
    pub sheets: Sheets,
    /// Those that allow the value, each by its first record ([`Groups::first_of`]).
    pub allowing: Vec<ImpressionKey>,
}

/// The rows, each list in the order of its keys with what is not recorded last. They need not add
/// up: a sheet that is one of two states stands in both rows.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct By {
    /// By holder.
    pub holder: Vec<Row<Key>>,
    /// By the holder's country, ISO 3166-1 alpha-2.
    pub country: Vec<Row<String>>,
    /// By the holder's town, where it may be published.
    pub city: Vec<Row<String>>,
    /// By state, in the record's order. Empty where several designs are counted together.
    pub state: Vec<Row<Key>>,
    /// By printing, in the record's order. Empty where several designs are counted together.
    pub printing: Vec<Row<Key>>,
    /// By state and printing together. Empty where several designs are counted together.
    pub crossing: Vec<Row<Crossed>>,
    /// By holder and state together. Empty where several designs are counted together.
    pub holding: Vec<Row<Holding>>,
    /// By kind of impression.
    pub kind: Vec<Row<Key>>,
    /// By the class in which a kind of impression counts.
    pub class: Vec<Row<CountingClass>>,
    /// By status.
    pub status: Vec<Row<Status>>,
}

/// A holder and a state; `None` for what is not recorded.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Holding {
    /// The holder.
    pub holder: Option<Key>,
    /// The state.
    pub state: Option<Key>,
}

/// The known sheets of a design, or of a whole catalogue.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Census {
    /// How many there are.
    pub sheets: Sheets,
    /// The same by various keys.
    pub by: By,
}

/// The records of a catalogue, grouped by sheet.
#[derive(Clone, Debug)]
pub struct Groups {
    of: BTreeMap<ImpressionKey, ImpressionKey>,
}

impl Groups {
    /// Groups every record of the catalogue by `same_as`; links to nothing are passed over.
    #[must_use]
    pub fn of(catalogue: &Catalogue) -> Groups {
        let mut groups = Groups {
            of: catalogue
                .impressions()
                .map(|(_, i)| (i.key.clone(), i.key.clone()))
                .collect(),
        };
        for (_, impression) in catalogue.impressions() {
            for other in &impression.same_as {
                groups.join(&impression.key, &other.impression.value);
            }
        }
        let keys: Vec<ImpressionKey> = groups.of.keys().cloned().collect();
        for key in keys {
            let first = groups.first_of(&key);
            groups.of.insert(key, first);
        }
        groups
    }

    /// The first record of the group that `record` belongs to: the name of the sheet.
    #[must_use]
    pub fn first_of(&self, record: &ImpressionKey) -> ImpressionKey {
        let mut at = record;
        while let Some(parent) = self.of.get(at) {
            if parent == at {
                break;
            }
            at = parent;
        }
        at.clone()
    }

    fn join(&mut self, a: &ImpressionKey, b: &ImpressionKey) {
        if !self.of.contains_key(a) || !self.of.contains_key(b) {
            return;
        }
        let (a, b) = (self.first_of(a), self.first_of(b));
        let (first, later) = if a <= b { (a, b) } else { (b, a) };
        self.of.insert(later, first);
    }
}

/// Whether a record counts as a sheet: it was not withdrawn, and it is not identified only with
/// printings that are no printings of the design's own matrices.
#[must_use]
pub fn is_counted(design: &Design, impression: &Impression) -> bool {
    if impression.standing.is_withdrawn() {
        return false;
    }
    let Some(identified) = &impression.identified else {
        return true;
    };
    let is_of_other_matrices = |key: &Key| design.printing(key).is_some_and(|p| !p.is_counted());
    !readings(identified).all(|reading| {
        !reading.printing.is_empty()
            && reading
                .printing
                .iter()
                .all(|p| is_of_other_matrices(&p.value))
    })
}

/// A reading and those that are possible beside it, however deeply they are nested.
pub(crate) fn readings(identified: &Identification) -> impl Iterator<Item = &Identification> {
    let mut to_visit = vec![identified];
    std::iter::from_fn(move || {
        let next = to_visit.pop()?;
        to_visit.extend(next.or.iter().rev());
        Some(next)
    })
}

/// The census of one design.
#[must_use]
pub fn of_design(
    catalogue: &Catalogue,
    groups: &Groups,
    design: &Design,
    holders: Holders,
) -> Census {
    let mut census = count(catalogue, groups, &[design], holders);
    in_the_order_of(
        &mut census.by.state,
        design.states.iter().map(|s| &s.key.value),
    );
    in_the_order_of(
        &mut census.by.printing,
        design.printings.iter().map(|p| &p.key.value),
    );
    census
}

/// The census of the whole catalogue.
#[must_use]
pub fn of_everything(
    catalogue: &Catalogue,
    groups: &Groups,
    designs: Designs,
    holders: Holders,
) -> Census {
    let designs: Vec<&Design> = counted_together(catalogue, designs).collect();
    of_designs(catalogue, groups, &designs, holders)
}

/// The designs that are counted together. That one does not stand may be private.
pub(super) fn counted_together(
    catalogue: &Catalogue,
    designs: Designs,
) -> impl Iterator<Item = &Design> {
    let all = catalogue.designs.values();
    all.filter(move |design| {
        designs == Designs::All || !catalogue.published_design(design).standing.is_set_apart()
    })
}

/// The census of each series, by its name.
#[must_use]
pub fn of_series(
    catalogue: &Catalogue,
    groups: &Groups,
    designs: Designs,
    holders: Holders,
) -> BTreeMap<String, Census> {
    let mut series: BTreeMap<&str, Vec<&Design>> = BTreeMap::new();
    for design in counted_together(catalogue, designs) {
        // Its name may be private; its impressions are not in what may be published of the design.
        if let Some(of) = &catalogue.published_design(design).series {
            series.entry(&of.name.value).or_default().push(design);
        }
    }
    let census = |(name, designs): (&str, Vec<&Design>)| {
        (
            name.to_owned(),
            of_designs(catalogue, groups, &designs, holders),
        )
    };
    series.into_iter().map(census).collect()
}

/// The census of several designs together. States and printings are of one design each, so they have
/// no rows here.
fn of_designs(
    catalogue: &Catalogue,
    groups: &Groups,
    designs: &[&Design],
    holders: Holders,
) -> Census {
    let mut census = count(catalogue, groups, designs, holders);
    census.by.state.clear();
    census.by.printing.clear();
    census.by.crossing.clear();
    census.by.holding.clear();
    census
}

fn in_the_order_of<'a>(rows: &mut [Row<Key>], order: impl Iterator<Item = &'a Key>) {
    let order: Vec<&Key> = order.collect();
    rows.sort_by_key(|row| {
        let place = |key: &Key| order.iter().position(|k| *k == key);
        row.key
            .as_ref()
            .map_or(usize::MAX, |key| place(key).unwrap_or(order.len()))
    });
}

/// What the records of one group allow, each kind of value as a set.
#[derive(Default)]
struct Allows {
    holder: BTreeSet<Option<Key>>,
    country: BTreeSet<Option<String>>,
    city: BTreeSet<Option<String>>,
    state: BTreeSet<Option<Key>>,
    printing: BTreeSet<Option<Key>>,
    crossing: BTreeSet<Option<Crossed>>,
    holding: BTreeSet<Option<Holding>>,
    kind: BTreeSet<Option<Key>>,
    class: BTreeSet<Option<CountingClass>>,
    status: BTreeSet<Option<Status>>,
}

fn count(catalogue: &Catalogue, groups: &Groups, designs: &[&Design], holders: Holders) -> Census {
    let records: Vec<(&Design, &Impression)> = designs
        .iter()
        .flat_map(|design| design.impressions.values().map(|i| (*design, i)))
        .collect();
    let mut sheets: BTreeMap<ImpressionKey, Allows> = BTreeMap::new();
    for (design, impression) in &records {
        if is_counted(design, impression) {
            let sheet = sheets.entry(groups.first_of(&impression.key)).or_default();
            if holders == Holders::All || impression.publish {
                allow_holder(sheet, catalogue, impression);
            }
            allow(sheet, catalogue, design, impression);
        }
    }
    let graph = doubts(groups, &records, &sheets);
    let sheets: Vec<(ImpressionKey, Allows)> = sheets
        .into_iter()
        .map(|(first, allows)| (first, allows.completed(catalogue)))
        .collect();
    let cover = graph.cover();
    Census {
        sheets: Sheets {
            at_least: cover.at_least,
            at_most: sheets.len(),
            exact: cover.exact,
        },
        by: By {
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

impl Allows {
    /// What all records of a sheet allow together. One of which nothing is recorded stands in the row
    /// without a key.
    fn completed(mut self, catalogue: &Catalogue) -> Allows {
        fn fill<K: Ord>(set: &mut BTreeSet<Option<K>>) {
            if set.is_empty() {
                set.insert(None);
            }
        }
        fill(&mut self.holder);
        fill(&mut self.country);
        fill(&mut self.city);
        fill(&mut self.state);
        fill(&mut self.printing);
        if self.crossing.is_empty() {
            self.crossing.insert(Some(Crossed::default()));
        }
        fill(&mut self.kind);
        fill(&mut self.status);
        let class = |kind: &Key| {
            let term = catalogue.vocabularies.term(List::Kinds, kind.as_str());
            term.and_then(|t| t.class).unwrap_or(CountingClass::Other)
        };
        self.class = self.kind.iter().map(|k| k.as_ref().map(class)).collect();
        let pairs = self.holder.iter().flat_map(|holder| {
            self.state.iter().map(move |state| {
                Some(Holding {
                    holder: holder.clone(),
                    state: state.clone(),
                })
            })
        });
        self.holding = pairs.collect();
        self
    }
}

/// Adds the holder that one record names, with country and town where they may be published.
fn allow_holder(sheet: &mut Allows, catalogue: &Catalogue, impression: &Impression) {
    let record = catalogue.published_impression(impression);
    if let Some(holder) = &record.holder {
        sheet.holder.insert(Some(holder.value.clone()));
        if let Some(holder) = catalogue.published_holder(&holder.value) {
            let country = holder.country.as_ref().map(|c| c.value.clone());
            sheet.country.extend(country.map(Some));
            let town = holder.town.as_ref().filter(|_| holder.may_publish("place"));
            sheet.city.extend(town.map(|t| Some(t.value.clone())));
        }
    }
}

/// Adds what one record allows beside its holder. A record that says nothing of something adds
/// nothing: another record of the same sheet may know.
fn allow(sheet: &mut Allows, catalogue: &Catalogue, design: &Design, impression: &Impression) {
    let record = catalogue.published_impression(impression);
    sheet.status.insert(Some(record.status.value));
    let own_kind = record.kind.own();
    let Some(identified) = &record.identified else {
        sheet.kind.extend(own_kind.cloned().map(Some));
        return;
    };
    crossing::add(&mut sheet.crossing, crossing::of_record(design, identified));
    let states: BTreeSet<Option<Key>> = readings(identified).flat_map(states_of).collect();
    let printings: BTreeSet<Option<Key>> = readings(identified)
        .flat_map(|r| or_nothing(r.printing.iter().map(|p| p.value.clone()).collect()))
        .collect();
    // Only where some reading says something is the silence of another reading a doubt.
    if states.iter().any(Option::is_some) {
        sheet.state.extend(states);
    }
    if printings.iter().any(Option::is_some) {
        sheet.printing.extend(printings);
    }
    let kinds = readings(identified)
        .filter_map(|reading| reading.kind.as_ref().map(|k| &k.value).or(own_kind));
    sheet.kind.extend(kinds.cloned().map(Some));
}

pub(super) fn states_of(reading: &Identification) -> Vec<Option<Key>> {
    match &reading.state {
        None => vec![None],
        Some(StateReading::OneOf(states)) => {
            or_nothing(states.iter().map(|s| s.value.clone()).collect())
        }
        Some(StateReading::ByMatrix(by_matrix)) => or_nothing(
            by_matrix
                .iter()
                .map(|(_, state)| state.value.clone())
                .collect(),
        ),
    }
}

pub(super) fn or_nothing(keys: Vec<Key>) -> Vec<Option<Key>> {
    if keys.is_empty() {
        vec![None]
    } else {
        keys.into_iter().map(Some).collect()
    }
}

/// The graph of groups: an edge where some pair of their records may be the same sheet and none is
/// said not to be.
fn doubts(
    groups: &Groups,
    records: &[(&Design, &Impression)],
    sheets: &BTreeMap<ImpressionKey, Allows>,
) -> Graph {
    let places: BTreeMap<&ImpressionKey, usize> = sheets.keys().zip(0..).collect();
    let pair = |a: &ImpressionKey, b: &ImpressionKey| {
        let a = places.get(&groups.first_of(a))?;
        let b = places.get(&groups.first_of(b))?;
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
    sheets: &[(ImpressionKey, Allows)],
    values: impl Fn(&Allows) -> &BTreeSet<Option<K>>,
) -> Vec<Row<K>> {
    let mut rows: BTreeMap<&Option<K>, (BTreeSet<usize>, Vec<ImpressionKey>)> = BTreeMap::new();
    for (at, (first, sheet)) in sheets.iter().enumerate() {
        let allowed = values(sheet);
        for value in allowed {
            let (only, allowing) = rows.entry(value).or_default();
            allowing.push(first.clone());
            if allowed.len() == 1 {
                only.insert(at);
            }
        }
    }
    let mut rows: Vec<Row<K>> = rows
        .into_iter()
        .map(|(key, (only, allowing))| {
            let cover = graph.cover_of(&only);
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
