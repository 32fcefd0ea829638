//! Occasions: the years in which each sheet was met.
//!
//! In: the records of a design, grouped by sheet. Out: for each sheet, the years of its sightings, of its exhibitions
//! and of its changes of hands, each year once, so that two records of one event are one occasion; and the same by
//! decade. Definitions: `docs/definitions.md, "Occasions"`.
//! Not here: the estimate of how many sheets there are (`survival`).
//!
//! A sale, the purchase at it and a report of it are one occasion:
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use literal::{catalogue, key};
//! # use keyblock::study::{census::Groups, occasions::by_sheet};
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! -- records/designs/1/impressions/1.toml
//! status = "located"
//! sightings = [{ date = "1938-05" }, { date = "1952" }]
//! provenance = [
//!   { agent = { name = "A Saleroom" }, from = "1938-05-12", how = "sale" },
//!   { owner = { name = "A Buyer" }, from = "1938", how = "purchase" },
//! ]
//! "#);
//! let design = &catalogue.designs[&key("1")];
//! let sheets = by_sheet(&catalogue, &Groups::of(&catalogue), design);
//! assert_eq!(Vec::from_iter(&sheets[0].years), [&1938, &1952]);
//! ```

use std::collections::{BTreeMap, BTreeSet};

use super::groups::{Groups, is_counted};
use keyblock_model::catalogue::Catalogue;
use keyblock_model::certainty::Certainty;
use keyblock_model::design::Design;
use keyblock_model::edtf::Date;
use keyblock_model::impression::Impression;
use keyblock_model::key::ImpressionKey;

/// When one sheet was met.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SheetOccasions {
    /// The sheet, by its first record.
    pub sheet: ImpressionKey,
    /// The years in which it was met: of an interval or an approximate date, the earliest.
    pub years: BTreeSet<i64>,
    /// Its reports that give no year: exhibitions without a date, dates with an open start.
    pub undated: usize,
}

/// The occasions of each counted sheet of a design; a sheet that was never met has no years.
#[must_use]
pub fn by_sheet(catalogue: &Catalogue, groups: &Groups, design: &Design) -> Vec<SheetOccasions> {
    let mut sheets: BTreeMap<ImpressionKey, (BTreeSet<i64>, usize)> = BTreeMap::new();
    for impression in design.impressions.values() {
        if is_counted(design, impression) {
            let sheet = sheets.entry(groups.first_of(&impression.key));
            let (years, undated) = sheet.or_default();
            for date in reports(catalogue, impression) {
                match date.and_then(year) {
                    Some(year) => drop(years.insert(year)),
                    None => *undated += 1,
                }
            }
        }
    }
    let sheets = sheets.into_iter();
    sheets
        .map(|(sheet, (years, undated))| SheetOccasions {
            sheet,
            years,
            undated,
        })
        .collect()
}

/// The earliest year of a date; `None` where its start is open or unknown.
fn year(date: &Date) -> Option<i64> {
    Some(date.earliest().day()?.year)
}

/// The dates of one record's reports: its sightings, its exhibitions, and those entries of its provenance that
/// say how the sheet changed hands, and when. `None` for an exhibition without a date.
fn reports<'a>(
    catalogue: &'a Catalogue,
    record: &'a Impression,
) -> impl Iterator<Item = Option<&'a Date>> {
    let sighted = record.sightings.iter();
    let sighted = sighted.map(|sighting| Some(&sighting.date.value));
    let exhibited = record.exhibited.iter();
    let exhibited = exhibited.filter(|shown| shown.certainty() != Certainty::Possible);
    let exhibited = exhibited.map(|shown| {
        let exhibition = catalogue.exhibitions.get(&shown.exhibition.value)?;
        Some(&exhibition.date.as_ref()?.value)
    });
    let passed_on = record.provenance.iter().filter_map(|entry| {
        entry.how.as_ref()?;
        let this_sheet = entry.this_sheet.as_ref().map(|c| c.value);
        if this_sheet == Some(Certainty::Possible) {
            return None;
        }
        Some(Some(&entry.from.as_ref().or(entry.to.as_ref())?.value))
    });
    sighted.chain(exhibited).chain(passed_on)
}

/// The occasions in one decade.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Decade {
    /// Its first year: 1930.
    pub from: i64,
    /// Sheets met for the first time.
    pub first: Vec<ImpressionKey>,
    /// Later occasions of sheets met before, in this decade or an earlier one: each by its sheet, so a sheet may
    /// be listed several times.
    pub again: Vec<ImpressionKey>,
}

impl Decade {
    /// Whether anything was met in it.
    #[must_use]
    pub fn has_any(&self) -> bool {
        !self.first.is_empty() || !self.again.is_empty()
    }
}

/// Occasions over time.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct OccasionsByDecade {
    /// Decade by decade, without a gap.
    pub decades: Vec<Decade>,
    /// Reports that give no year, and years that cannot be right.
    pub undated: usize,
}

/// The years that are counted by decade. A date far outside is a slip or not the date of a print,
/// and would add a column for every decade between.
const YEARS: std::ops::RangeInclusive<i64> = 1000..=2999;

/// The occasions of sheets over time.
#[must_use]
pub(crate) fn over_time(sheets: &[SheetOccasions]) -> OccasionsByDecade {
    let mut decades: BTreeMap<i64, Decade> = BTreeMap::new();
    let mut undated = 0;
    for of in sheets {
        let years = of.years.iter().copied();
        let years: Vec<i64> = years.filter(|year| YEARS.contains(year)).collect();
        undated += of.undated + of.years.len() - years.len();
        for (place, year) in years.into_iter().enumerate() {
            let decade = decades.entry(year.div_euclid(10)).or_default();
            if place == 0 {
                decade.first.push(of.sheet.clone());
            } else {
                decade.again.push(of.sheet.clone());
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
    OccasionsByDecade {
        decades: all.map(decade).collect(),
        undated,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn decades_follow_without_a_gap_and_tell_first_from_again() {
        let sheets: [&[i64]; 5] = [&[1931, 1938], &[1952], &[1931], &[], &[170_000_002]];
        let key = |n: u32| ImpressionKey {
            design: "1".parse().unwrap(),
            number: n,
        };
        let sheets: Vec<SheetOccasions> = (1..)
            .zip(sheets)
            .map(|(n, years)| SheetOccasions {
                sheet: key(n),
                years: years.iter().copied().collect(),
                undated: usize::from(n == 1),
            })
            .collect();
        let decade = |from, first: &[u32], again: &[u32]| Decade {
            from,
            first: first.iter().copied().map(key).collect(),
            again: again.iter().copied().map(key).collect(),
        };
        let expected = OccasionsByDecade {
            decades: vec![
                decade(1930, &[1, 3], &[1]),
                decade(1940, &[], &[]),
                decade(1950, &[2], &[]),
            ],
            undated: 2,
        };
        assert_eq!(over_time(&sheets), expected);
        assert_eq!(over_time(&[]), OccasionsByDecade::default());
    }
}
