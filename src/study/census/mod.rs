//! The census: how many sheets are known, as an interval.
//!
//! A record is not a sheet. Records joined by `same_as` are one group; where two groups may be the
//! same sheet the count has a lower and an upper end. The definitions are those of DESIGN.md's
//! appendix, "Distinct sheets".
//!
//! In: impressions. Out: [`Census`]: the count, and rows by holder, country, town, state, printing,
//! both of these crossed, holder and state crossed, kind, class and status. Rows are made from what may
//! be published, so that a count never tells what a record keeps private.
//! Reading order: `groups` says which records are one sheet, `allows` what the records of one allow, `count`
//! counts. Not here: declared editions (`editions`).

use std::collections::BTreeMap;

use crate::model::catalogue::Catalogue;
use crate::model::design::Design;
use crate::model::impression::Status;
use crate::model::key::{ImpressionKey, Key};
use crate::model::vocabulary::CountingClass;

use super::crossing::Crossed;

mod allows;
mod count;
mod groups;

pub(crate) use allows::readings;
pub(in crate::study) use allows::{or_nothing, states_of};
use count::count;
pub use groups::{Groups, is_counted};

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
