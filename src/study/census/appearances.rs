//! Appearances: each time a sheet was seen, and when.
//!
//! In: the records of a design, grouped by sheet. Out: the events at which each sheet was seen: its
//! sightings, its exhibitions and its changes of owner or keeper, an event that is reported twice counted
//! once; and the same by decade. Definitions: `docs/definitions.md, "Occasions"`.
//! Not here: the estimate of how many sheets there are (`survival`).
//!
//! Two records of one sale are one appearance:
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/doc/catalogue.rs")); }
//! # use literal::{catalogue, key};
//! # use keyblock::study::{appearances::by_sheet, census::Groups};
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! -- records/designs/1/impressions/1.toml
//! status = "located"
//! sightings = [{ date = "1938-05", cite = "sale" }, { date = "1938-05", cite = "sale" }, { date = "1952" }]
//! "#);
//! let design = &catalogue.designs[&key("1")];
//! let sheets = by_sheet(&catalogue, &Groups::of(&catalogue), design);
//! assert_eq!(sheets[0].1.len(), 2);
//! ```

use std::collections::BTreeMap;

use super::groups::{Groups, is_counted};
use crate::model::catalogue::Catalogue;
use crate::model::design::Design;
use crate::model::edtf::Date;
use crate::model::impression::Impression;
use crate::model::key::{ImpressionKey, Key};

/// One appearance as a record gives it: its date, and the citation and lot by which it is recognised.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Report<'a> {
    date: Option<&'a Date>,
    cite: Option<&'a Key>,
    lot: Option<&'a str>,
}

impl Report<'_> {
    /// Whether both report one event: the same date, and the same citation or lot.
    fn is_same(&self, other: &Self) -> bool {
        let is_both = |one: Option<&str>, two: Option<&str>| one.is_some() && one == two;
        is_both(self.date.map(Date::as_str), other.date.map(Date::as_str))
            && (is_both(self.lot, other.lot)
                || is_both(self.cite.map(Key::as_str), other.cite.map(Key::as_str)))
    }
}

/// A sheet by its first record, with the events at which it was seen, by their dates.
pub type SheetAppearances<'a> = (ImpressionKey, Vec<Option<&'a Date>>);

/// The events at which each sheet of a design was seen, by their dates; `None` for an event without
/// a date. A sheet that never appeared has no events.
#[must_use]
pub fn by_sheet<'a>(
    catalogue: &'a Catalogue,
    groups: &Groups,
    design: &'a Design,
) -> Vec<SheetAppearances<'a>> {
    let mut sheets: BTreeMap<ImpressionKey, Vec<Report<'a>>> = BTreeMap::new();
    for impression in design.impressions.values() {
        if is_counted(design, impression) {
            let seen = sheets.entry(groups.first_of(&impression.key)).or_default();
            seen.extend(reports(catalogue, impression));
        }
    }
    let sheets = sheets.into_iter();
    sheets.map(|(sheet, told)| (sheet, events(&told))).collect()
}

/// The reports of one record: its sightings, its exhibitions, and those entries of its provenance that
/// say how the sheet changed hands, and when.
fn reports<'a>(
    catalogue: &'a Catalogue,
    record: &'a Impression,
) -> impl Iterator<Item = Report<'a>> {
    let sighted = record.sightings.iter().map(|sighting| Report {
        date: Some(&sighting.date.value),
        cite: sighting.cite.as_ref().map(|cite| &cite.value),
        lot: None,
    });
    let exhibited = record.exhibited.iter().map(|shown| {
        let exhibition = catalogue.exhibitions.get(&shown.exhibition.value);
        Report {
            date: exhibition.and_then(|e| Some(&e.date.as_ref()?.value)),
            cite: exhibition.and_then(|e| Some(&e.cite.as_ref()?.value)),
            lot: None,
        }
    });
    let passed_on = record.provenance.iter().filter_map(|entry| {
        entry.how.as_ref()?;
        Some(Report {
            date: Some(&entry.from.as_ref().or(entry.to.as_ref())?.value),
            cite: entry.claim.cite.as_ref().map(|cite| &cite.value),
            lot: entry.lot.as_deref(),
        })
    });
    sighted.chain(exhibited).chain(passed_on)
}

/// The events of some reports, each once, by their dates.
fn events<'a>(told: &[Report<'a>]) -> Vec<Option<&'a Date>> {
    let mut event: Vec<usize> = (0..told.len()).collect();
    for (at, one) in told.iter().enumerate() {
        for (other, two) in told.iter().enumerate().take(at) {
            let (Some(&a), Some(&b)) = (event.get(at), event.get(other)) else {
                continue;
            };
            if a != b && one.is_same(two) {
                for of in event.iter_mut().filter(|of| **of == a) {
                    *of = b;
                }
            }
        }
    }
    event.sort_unstable();
    event.dedup();
    event
        .iter()
        .filter_map(|at| Some(told.get(*at)?.date))
        .collect()
}

/// The appearances in one decade.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Decade {
    /// Its first year: 1930.
    pub from: i64,
    /// Sheets seen for the first time.
    pub first: Vec<ImpressionKey>,
    /// Appearances of sheets that had been seen before, in this decade or an earlier one: each by its sheet,
    /// so a sheet may be listed several times.
    pub again: Vec<ImpressionKey>,
}

impl Decade {
    /// Whether anything was seen in it.
    #[must_use]
    pub(crate) fn has_any(&self) -> bool {
        !self.first.is_empty() || !self.again.is_empty()
    }
}

/// Appearances over time.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct AppearancesByDecade {
    /// Decade by decade, without a gap, by the first day each appearance can have been on.
    pub decades: Vec<Decade>,
    /// How many have no date, or none that can be right.
    pub undated: usize,
}

/// The years that are counted by decade. A date far outside is a slip or not the date of a print,
/// and would add a column for every decade between.
const YEARS: std::ops::RangeInclusive<i64> = 1000..=2999;

/// The appearances of sheets over time.
#[must_use]
pub(crate) fn over_time(sheets: &[SheetAppearances<'_>]) -> AppearancesByDecade {
    let mut decades: BTreeMap<i64, Decade> = BTreeMap::new();
    let mut undated = 0;
    for (sheet, events) in sheets {
        let year =
            |date: &Date| Some(date.earliest().day()?.year).filter(|year| YEARS.contains(year));
        let mut years: Vec<i64> = events.iter().copied().flatten().filter_map(year).collect();
        undated += events.len() - years.len();
        years.sort_unstable();
        for (place, year) in years.into_iter().enumerate() {
            let decade = decades.entry(year.div_euclid(10)).or_default();
            if place == 0 {
                decade.first.push(sheet.clone());
            } else {
                decade.again.push(sheet.clone());
            }
        }
    }
    let ends = decades
        .keys()
        .next()
        .copied()
        .zip(decades.keys().last().copied());
    let all = ends.into_iter().flat_map(|(first, last)| first..=last);
    let decade = |tens: i64| Decade {
        from: tens * 10,
        ..decades.get(&tens).cloned().unwrap_or_default()
    };
    AppearancesByDecade {
        decades: all.map(decade).collect(),
        undated,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn date(text: &str) -> Date {
        Date::parse(text).unwrap()
    }

    #[test]
    fn what_one_event_left_in_two_places_is_one_appearance() {
        let cite: Key = "marlof-1938".parse().unwrap();
        let other: Key = "dorn-1927".parse().unwrap();
        let (may, june) = (date("1938-05"), date("1938-06"));
        let seen = |date, cite, lot| Report { date, cite, lot };
        // A sale reported by a sighting and by the provenance; then the same sale under its lot alone.
        let sale = [
            seen(Some(&may), Some(&cite), None),
            seen(Some(&may), Some(&cite), Some("44")),
            seen(Some(&may), None, Some("44")),
        ];
        assert_eq!(events(&sale).len(), 1);
        // Another day, another source, or nothing that says it was one event.
        let apart = [
            seen(Some(&may), Some(&cite), None),
            seen(Some(&june), Some(&cite), None),
            seen(Some(&may), Some(&other), None),
            seen(Some(&may), None, None),
            seen(Some(&may), None, None),
            seen(None, Some(&cite), None),
            seen(None, Some(&cite), None),
        ];
        assert_eq!(events(&apart).len(), 7);
    }

    #[test]
    fn decades_follow_without_a_gap_and_tell_first_from_again() {
        let dates = ["1931", "1938-05", "1952~", "1931/1935"].map(date);
        let [first, later, guess, span] = &dates;
        let far = date("Y170000002");
        let sheets = [
            vec![Some(later), Some(first), None],
            vec![Some(guess)],
            vec![Some(span)],
            vec![],
            vec![Some(&far)],
        ];
        let key = |n: u32| ImpressionKey {
            design: "1".parse().unwrap(),
            number: n,
        };
        let sheets: Vec<SheetAppearances<'_>> = (1..).map(key).zip(sheets).collect();
        let decade = |from, first: &[u32], again: &[u32]| Decade {
            from,
            first: first.iter().copied().map(key).collect(),
            again: again.iter().copied().map(key).collect(),
        };
        let expected = AppearancesByDecade {
            decades: vec![
                decade(1930, &[1, 3], &[1]),
                decade(1940, &[], &[]),
                decade(1950, &[2], &[]),
            ],
            undated: 2,
        };
        assert_eq!(over_time(&sheets), expected);
        assert_eq!(over_time(&[]), AppearancesByDecade::default());
    }
}
