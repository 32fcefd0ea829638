//! Series: their designs in order, what is missing of them, and their sheets.
//!
//! In: a catalogue. Out: for each series that a record describes, or a design or printing names, a [`SeriesStudy`].
//! Definitions: `docs/definitions.md, "Series"`.
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use literal::{catalogue, key};
//! # use keyblock::model::series_place::SeriesRef;
//! # use keyblock::study::Studies;
//! let catalogue = catalogue(r#"
//! -- records/series/quays.toml
//! title = "The Quays"
//! number = 4
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! series = { series = "quays", position = "1" }
//! -- records/designs/2/design.toml
//! titles = [{ text = "The Crane" }]
//! series = { series = "quays", position = "3" }
//! "#);
//! let series = Studies::of(&catalogue).series;
//! let quays = &series[&SeriesRef::Record(key("quays"))];
//! assert_eq!((quays.known(), quays.missing()), (2, Some(2)));
//! assert_eq!(quays.open_positions, [2, 4]);
//! ```

use std::collections::{BTreeMap, BTreeSet};

use rayon::prelude::*;

use super::census::{self, Census, CountedPart, DesignScope, Groups, Sheets, counted_together};
use super::numerals::from_roman;
use super::order::{Collator, Order};
use keyblock_model::catalogue::Catalogue;
use keyblock_model::design::Design;
use keyblock_model::key::{ImpressionKey, Key};
use keyblock_model::printing::Printing;
use keyblock_model::series_place::{SeriesPlace, SeriesRef};

/// What is known of a series.
#[derive(Clone, Debug, PartialEq)]
pub struct SeriesStudy {
    /// Its designs, in its order.
    pub members: Vec<SeriesMember>,
    /// How many designs it has, by the catalogue's own view of the declared number.
    pub declared: Option<u32>,
    /// The places that no design has, where every design has one that is a whole number.
    pub open_positions: Vec<u32>,
    /// Its sheets, those of rejected and withdrawn designs left out.
    pub census: Census,
}

/// A design of a series.
#[derive(Clone, Debug, PartialEq)]
pub struct SeriesMember {
    /// The design.
    pub design: Key,
    /// Its place in the series.
    pub position: Option<String>,
    /// The printings of it that came out in the series; empty where none is said to have.
    pub printings: Vec<Key>,
    /// Whether the design is rejected or withdrawn, and so not counted.
    pub is_set_apart: bool,
    /// Its known sheets that belong to the series.
    pub sheets: Sheets,
}

impl SeriesStudy {
    /// How many of its designs are known: those that are rejected or withdrawn left out.
    #[must_use]
    pub fn known(&self) -> usize {
        self.members.iter().filter(|m| !m.is_set_apart).count()
    }

    /// How many of the declared designs are not known; `None` where no number is declared.
    #[must_use]
    pub fn missing(&self) -> Option<usize> {
        let declared = usize::try_from(self.declared?).ok()?;
        Some(declared.saturating_sub(self.known()))
    }

    /// Its known sheets, each by its first record ([`Groups::first_of`]), those left out that are counted and not shown.
    #[must_use]
    pub fn sheets(&self) -> BTreeSet<&ImpressionKey> {
        let rows = self.census.by.status.iter();
        rows.flat_map(|row| &row.allowing).collect()
    }
}

/// Every series of a catalogue.
#[must_use]
pub fn all(
    catalogue: &Catalogue,
    groups: &Groups,
    order: &Order,
) -> BTreeMap<SeriesRef, SeriesStudy> {
    let mut named = members(catalogue, order);
    for key in catalogue.series.keys() {
        named.entry(SeriesRef::Record(key.clone())).or_default();
    }
    let named: Vec<_> = named.into_iter().collect();
    named
        .into_par_iter()
        .map(|(series, members)| {
            let study = study(catalogue, groups, &series, &members);
            (series, study)
        })
        .collect()
}

/// The census of a series. `scope`: whether rejected and withdrawn designs are counted too.
#[must_use]
pub fn census(
    catalogue: &Catalogue,
    groups: &Groups,
    series: &SeriesRef,
    scope: DesignScope,
) -> Census {
    let designs: Vec<&Design> = counted_together(catalogue, scope).collect();
    let parts: Vec<CountedPart<'_>> = designs
        .into_iter()
        .filter_map(|design| Some(member(design, series)?.part()))
        .collect();
    census::of_parts(catalogue, groups, &parts)
}

/// The series that designs and printings name.
#[must_use]
pub fn named(catalogue: &Catalogue) -> BTreeSet<&SeriesRef> {
    let designs = catalogue.designs.values();
    designs
        .flat_map(places)
        .map(|place| &place.of.value)
        .collect()
}

/// Whether a design belongs to a series, by itself or by a printing.
#[must_use]
pub fn is_in(design: &Design, series: &SeriesRef) -> bool {
    member(design, series).is_some()
}

/// The places of a design and its printings in series.
fn places(design: &Design) -> impl Iterator<Item = &SeriesPlace> {
    let of_printings = design.standing_printings().flat_map(|p| &p.series);
    design.series.iter().chain(of_printings)
}

/// A design of a series as it was read.
struct Member<'a> {
    design: &'a Design,
    position: Option<&'a str>,
    printings: Vec<&'a Printing>,
}

impl<'a> Member<'a> {
    /// Its sheets that belong to the series: those of the printings that came out in it, or all.
    fn part(&self) -> CountedPart<'a> {
        CountedPart {
            design: self.design,
            printings: self.printings.iter().map(|p| &p.key.value).collect(),
        }
    }
}

/// What a design and its printings say of a series; `None` where they do not name it.
fn member<'a>(design: &'a Design, series: &SeriesRef) -> Option<Member<'a>> {
    let is_it = |place: &&SeriesPlace| place.of.value == *series;
    let own = design.series.iter().find(is_it);
    let printings: Vec<(&Printing, &SeriesPlace)> = design
        .standing_printings()
        .filter_map(|printing| Some((printing, printing.series.iter().find(is_it)?)))
        .collect();
    if own.is_none() && printings.is_empty() {
        return None;
    }
    let mut positions = own
        .into_iter()
        .chain(printings.iter().map(|(_, place)| *place));
    Some(Member {
        design,
        position: positions.find_map(|place| Some(place.position.as_ref()?.value.as_str())),
        printings: printings
            .into_iter()
            .map(|(printing, _)| printing)
            .collect(),
    })
}

/// The designs of every series, in its order: by their places, those without one last and in the order of the catalogue.
fn members<'c>(catalogue: &'c Catalogue, order: &Order) -> BTreeMap<SeriesRef, Vec<Member<'c>>> {
    let mut all: BTreeMap<SeriesRef, Vec<Member<'c>>> = BTreeMap::new();
    let designs = order.keys().iter();
    for design in designs.filter_map(|key| catalogue.designs.get(key)) {
        let series: BTreeSet<&SeriesRef> = places(design).map(|place| &place.of.value).collect();
        for series in series {
            let member = member(design, series);
            all.entry(series.clone()).or_default().extend(member);
        }
    }
    let collator = Collator::of_numbers(&catalogue.settings.language);
    for members in all.values_mut() {
        let numbers: Option<Vec<u32>> = members.iter().map(|m| number(m.position)).collect();
        // The sort is stable.
        match numbers {
            Some(_) => members.sort_by_key(|member| number(member.position)),
            None => members.sort_by(|a, b| {
                let text = |member: &Member<'_>| member.position.unwrap_or_default().to_owned();
                let is_unplaced = a.position.is_none().cmp(&b.position.is_none());
                is_unplaced.then_with(|| collator.compare(&text(a), &text(b)))
            }),
        }
    }
    all
}

/// The place of a design as a number, written in figures or as a roman numeral.
#[must_use]
pub fn number(position: Option<&str>) -> Option<u32> {
    let position = position?.trim().trim_end_matches('.');
    position.parse().ok().or_else(|| from_roman(position))
}

fn study(
    catalogue: &Catalogue,
    groups: &Groups,
    series: &SeriesRef,
    members: &[Member<'_>],
) -> SeriesStudy {
    let record = series.key().and_then(|key| catalogue.series.get(key));
    let declared = record.and_then(|record| record.number.own().copied());
    let counted: Vec<CountedPart<'_>> = members
        .iter()
        .filter(|member| !member.design.standing.is_set_apart())
        .map(Member::part)
        .collect();
    let positions: Vec<Option<&str>> = members.iter().map(|member| member.position).collect();
    SeriesStudy {
        members: members
            .iter()
            .map(|member| SeriesMember {
                design: member.design.key.clone(),
                position: member.position.map(str::to_owned),
                printings: member
                    .printings
                    .iter()
                    .map(|p| p.key.value.clone())
                    .collect(),
                is_set_apart: member.design.standing.is_set_apart(),
                sheets: census::of_parts(catalogue, groups, &[member.part()]).sheets,
            })
            .collect(),
        declared,
        open_positions: open_positions(&positions, declared),
        census: census::of_parts(catalogue, groups, &counted),
    }
}

/// The places from the first to the last that no design has. The last is that of a design or the declared number, whichever
/// is greater.
fn open_positions(positions: &[Option<&str>], declared: Option<u32>) -> Vec<u32> {
    /// More places than any series has designs: a slip, or years.
    const MOST: u32 = 500;
    let numbers: Option<BTreeSet<u32>> = positions.iter().map(|p| number(*p)).collect();
    let Some(taken) = numbers.filter(|numbers| !numbers.is_empty()) else {
        return Vec::new();
    };
    let last = taken.last().copied().max(declared).unwrap_or_default();
    if last > MOST {
        return Vec::new();
    }
    (1..=last).filter(|place| !taken.contains(place)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn open_places_are_told_where_every_place_is_a_number() {
        let open = |positions: &[Option<&str>], declared| open_positions(positions, declared);
        let none: [u32; 0] = [];
        assert_eq!(open(&[Some("1"), Some("4")], None), [2, 3]);
        assert_eq!(open(&[Some("I"), Some("III.")], Some(4)), [2, 4]);
        assert_eq!(open(&[Some("2"), Some("1")], Some(2)), none);
        assert_eq!(open(&[Some("1"), None], Some(4)), none);
        assert_eq!(open(&[Some("title"), Some("1")], Some(4)), none);
        assert_eq!(open(&[Some("1927")], None), none);
        assert_eq!(open(&[], Some(3)), none);
    }
}
