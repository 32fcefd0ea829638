//! The census: how many sheets are known, as an interval, and what follows from their records.
//!
//! A record is not a sheet. Records joined by `same_as` are one group; where two groups may be the
//! same sheet the count has a lower and an upper end.
//!
//! In: the impressions of a catalogue, and the sheets that are counted and not shown. Out: [`Census`]: the count, and
//! rows by holder, country, town, state, printing, both of these crossed, holder and state crossed, kind, class and
//! status. It counts what it is given: everything for the commands, the concealed catalogue for readers.
//! Definitions: `docs/definitions.md, "Which records count"`, `"Distinct sheets"` and `"Rows of the census"`.
//!
//! | file | subject |
//! |---|---|
//! | `groups` | which records are one sheet, and which count |
//! | `readings` | an identification and its alternatives |
//! | `allows` | the values under which a sheet may be counted |
//! | [`crossing`] | states crossed with printings |
//! | [`clique_cover`] | the fewest sheets that doubts allow |
//! | `rows` | the census as values |
//! | `count` | the counting |
//! | [`editions`] | numbers found on sheets, compared with declared editions |
//! | [`appearances`] | when each sheet was seen |
//! | [`survival`] | how many sheets there may be |
//! | [`linked`] | impressions on one paper, sheets of one set |
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use literal::{catalogue, key};
//! # use keyblock::study::{Studies, census::Sheets};
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! -- records/designs/1/impressions/1.toml
//! status = "located"
//! -- records/designs/1/impressions/2.toml
//! status = "untraced"
//! maybe_same_as = [{ impression = "1.1" }]
//! "#);
//! let census = &Studies::of(&catalogue).designs[&key("1")].census;
//! assert_eq!(census.sheets, Sheets { at_least: 1, at_most: 2, exact: true });
//! ```

use keyblock_model::catalogue::Catalogue;
use keyblock_model::design::Design;
use keyblock_model::key::Key;

mod allows;
pub mod clique_cover;
mod count;
pub mod crossing;
pub mod editions;
pub mod firmness;
mod groups;
pub mod linked;
pub mod occasions;
mod readings;
mod rows;
pub mod survival;
mod values;

pub(crate) use count::CountedPart;
use count::{count, count_parts};
pub use groups::Groups;
pub use groups::{is_counted, is_of_own_matrices};
pub(crate) use readings::readings;
pub use rows::{Census, CensusRows, DesignScope, HolderAndState, Row, Sheets};

/// The census of one design.
#[must_use]
pub(crate) fn of_design(catalogue: &Catalogue, groups: &Groups, design: &Design) -> Census {
    let mut census = count(catalogue, groups, &[design]);
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
pub fn of_everything(catalogue: &Catalogue, groups: &Groups, designs: DesignScope) -> Census {
    let designs: Vec<&Design> = counted_together(catalogue, designs).collect();
    of_designs(catalogue, groups, &designs)
}

/// The designs that are counted together.
pub(super) fn counted_together(
    catalogue: &Catalogue,
    designs: DesignScope,
) -> impl Iterator<Item = &Design> {
    let all = catalogue.designs.values();
    all.filter(move |design| designs == DesignScope::All || !design.standing.is_set_apart())
}

/// The census of parts of designs together. States and printings are of one design each, so they have no rows here.
#[must_use]
pub(crate) fn of_parts(
    catalogue: &Catalogue,
    groups: &Groups,
    parts: &[CountedPart<'_>],
) -> Census {
    count_parts(catalogue, groups, parts)
}

/// The census of several designs together. States and printings are of one design each, so they have
/// no rows here.
fn of_designs(catalogue: &Catalogue, groups: &Groups, designs: &[&Design]) -> Census {
    let mut census = count(catalogue, groups, designs);
    census.by.state.clear();
    census.by.printing.clear();
    census.by.crossing.clear();
    census.by.holding.clear();
    census
}

fn in_the_order_of<'a>(rows: &mut [Row<Key>], order: impl Iterator<Item = &'a Key>) {
    let order: Vec<&Key> = order.collect();
    // Values that the record does not list come after those it lists; what is not recorded comes last.
    rows.sort_by_key(|row| {
        let key = row.key.as_ref();
        let listed = order.iter().position(|k| Some(*k) == key);
        (key.is_none(), listed.is_none(), listed)
    });
}
