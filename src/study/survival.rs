//! How many sheets survive, from how often each known one has been seen.
//!
//! A sheet that was met once only is like those that were never met; from the number met once and
//! twice follows a lower bound of all there are: Chao1 in its bias-corrected form, with a log-normal
//! interval of 95 % (Chao 1984 and 1987; formulas as in CHECKS.md section 5, checked against its
//! table, which agrees with the library scikit-bio 0.7.4).
//!
//! In: the records of a design, grouped by sheet. Out: [`Survival`]. The assumptions are the page's
//! to say: sightings should be independent, sheets alike, and none lost or made meanwhile.

use std::collections::BTreeMap;

use super::census::{Groups, is_counted};
use crate::model::catalogue::Catalogue;
use crate::model::design::Design;
use crate::model::impression::Impression;
use crate::model::key::{ImpressionKey, Key};

/// An estimate asks for at least this many sheets that were seen.
pub const FEWEST_SHEETS: usize = 5;

/// The normal deviate of a two-sided interval of 95 %.
const DEVIATE: f64 = 1.96;

/// What the appearances of a design's sheets come to.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Survival {
    /// Sheets that were seen at least once.
    pub sheets: usize,
    /// Those seen exactly once.
    pub seen_once: usize,
    /// Those seen exactly twice.
    pub seen_twice: usize,
    /// How many there are in all, where the data allow to say.
    pub estimate: Option<Estimate>,
}

/// How many sheets there are in all: a lower bound by its nature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate {
    /// The estimate.
    pub sheets: f64,
    /// The ends of the interval of 95 %; `None` where the form sees nothing missing.
    pub interval: Option<[f64; 2]>,
}

/// Why no estimate is given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoEstimate {
    /// Fewer than [`FEWEST_SHEETS`] sheets were ever seen.
    TooFew,
    /// No sheet was seen twice.
    AllSeenOnce,
}

impl Survival {
    /// The survival of a design's sheets.
    #[must_use]
    pub fn of(catalogue: &Catalogue, groups: &Groups, design: &Design) -> Survival {
        let mut sheets: BTreeMap<ImpressionKey, Vec<Appearance<'_>>> = BTreeMap::new();
        for impression in design.impressions.values() {
            if is_counted(design, impression) {
                let seen = sheets.entry(groups.first_of(&impression.key)).or_default();
                seen.extend(appearances(catalogue, impression));
            }
        }
        Survival::of_counts(sheets.values().map(|seen| distinct(seen)))
    }

    /// The survival of sheets, from how often each was seen; one never seen counts for nothing.
    #[must_use]
    pub fn of_counts(times: impl Iterator<Item = usize>) -> Survival {
        let mut survival = Survival::default();
        for times in times.filter(|times| *times > 0) {
            survival.sheets += 1;
            survival.seen_once += usize::from(times == 1);
            survival.seen_twice += usize::from(times == 2);
        }
        if survival.why_not().is_none() {
            survival.estimate = Some(estimate(
                count(survival.sheets),
                count(survival.seen_once),
                count(survival.seen_twice),
            ));
        }
        survival
    }

    /// Why there is no estimate; `None` where there is one.
    #[must_use]
    pub fn why_not(&self) -> Option<NoEstimate> {
        if self.sheets < FEWEST_SHEETS {
            Some(NoEstimate::TooFew)
        } else if self.seen_once == self.sheets {
            Some(NoEstimate::AllSeenOnce)
        } else {
            None
        }
    }
}

/// Chao1, bias-corrected, from the sheets seen, seen once and seen twice.
fn estimate(seen: f64, once: f64, twice: f64) -> Estimate {
    let unseen = once * (once - 1.0) / (2.0 * (twice + 1.0));
    let sheets = seen + unseen;
    if unseen <= 0.0 {
        return Estimate {
            sheets,
            interval: None,
        };
    }
    let variance = if twice > 0.0 {
        let below = twice + 1.0;
        unseen
            + once * (2.0 * once - 1.0).powi(2) / (4.0 * below.powi(2))
            + once.powi(2) * twice * (once - 1.0).powi(2) / (4.0 * below.powi(4))
    } else {
        unseen + once * (2.0 * once - 1.0).powi(2) / 4.0 - once.powi(4) / (4.0 * sheets)
    };
    let spread = libm::exp(DEVIATE * libm::log(1.0 + variance / unseen.powi(2)).sqrt());
    Estimate {
        sheets,
        interval: Some([seen + unseen / spread, seen + unseen * spread]),
    }
}

#[allow(
    clippy::cast_precision_loss,
    reason = "no catalogue has 2^53 sheets of one design"
)]
fn count(n: usize) -> f64 {
    n as f64
}

/// One time a sheet was seen: when, and what tells it from another of that time.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Appearance<'a> {
    date: Option<&'a str>,
    cite: Option<&'a Key>,
    lot: Option<&'a str>,
}

impl Appearance<'_> {
    /// Whether both tell of one event: the same date, and the same citation or lot.
    fn is_same(&self, other: &Self) -> bool {
        let is_both = |one: Option<&str>, two: Option<&str>| one.is_some() && one == two;
        let key = |appearance: &Self| appearance.cite.map(Key::as_str);
        is_both(self.date, other.date)
            && (is_both(self.lot, other.lot)
                || (self.cite.is_some() && self.cite.map(Key::as_str) == key(other)))
    }
}

/// The appearances that one record tells: its sightings, its exhibitions, and those entries of its
/// provenance that say how it passed on, and when. What is private tells nothing.
fn appearances<'a>(
    catalogue: &'a Catalogue,
    impression: &'a Impression,
) -> impl Iterator<Item = Appearance<'a>> {
    let record = catalogue.published_impression(impression);
    let sighted = record.sightings.iter().map(|sighting| Appearance {
        date: Some(sighting.date.value.as_str()),
        cite: sighting.cite.as_ref().map(|cite| &cite.value),
        lot: None,
    });
    let exhibited = record.exhibited.iter().map(|shown| {
        let exhibition = catalogue.exhibitions.get(&shown.exhibition.value);
        Appearance {
            date: exhibition.and_then(|e| Some(e.date.as_ref()?.value.as_str())),
            cite: exhibition.and_then(|e| Some(&e.cite.as_ref()?.value)),
            lot: None,
        }
    });
    let passed_on = record.provenance.iter().filter_map(|entry| {
        entry.how.as_ref()?;
        let date = entry.from.as_ref().or(entry.to.as_ref())?;
        Some(Appearance {
            date: Some(date.value.as_str()),
            cite: entry.claim.cite.as_ref().map(|cite| &cite.value),
            lot: entry.lot.as_deref(),
        })
    });
    sighted.chain(exhibited).chain(passed_on)
}

/// How many events there are among appearances, those that are the same counted once.
fn distinct(seen: &[Appearance<'_>]) -> usize {
    let mut event: Vec<usize> = (0..seen.len()).collect();
    for (at, one) in seen.iter().enumerate() {
        for (other, two) in seen.iter().enumerate().take(at) {
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
    event.len()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The vectors of `tests/checks/chao1.csv` (published vectors and our own; its head says which):
    /// how often each sheet was seen, and the columns of the bias-corrected form.
    #[test]
    fn the_estimate_is_that_of_the_published_table() {
        let table = include_str!("../../tests/checks/chao1.csv");
        let mut given = 0;
        for line in table.lines().skip(2) {
            let fields: Vec<&str> = line.split(',').collect();
            let number = |at: usize| fields[at].parse::<f64>();
            let times: Vec<usize> = fields[1]
                .split(' ')
                .flat_map(|pair| {
                    let (times, sheets) = pair.split_once(':').unwrap();
                    vec![times.parse().unwrap(); sheets.parse().unwrap()]
                })
                .collect();
            let name = fields[0];
            let survival = Survival::of_counts(times.into_iter());
            assert_eq!(Ok(count(survival.sheets)), number(2), "{name}");
            assert_eq!(Ok(count(survival.seen_once)), number(4), "{name}");
            assert_eq!(Ok(count(survival.seen_twice)), number(5), "{name}");
            let is_given = fields[22] == "1";
            assert_eq!(survival.estimate.is_some(), is_given, "{name}");
            let once = count(survival.seen_once);
            let found = estimate(count(survival.sheets), once, count(survival.seen_twice));
            let near = |a: f64, b: f64| (a - b).abs() < 1e-5 * b.max(1.0);
            assert!(near(found.sheets, number(6).unwrap()), "{name} {found:?}");
            match found.interval {
                Some([low, high]) => {
                    assert!(near(low, number(8).unwrap()), "{name}: {low}");
                    assert!(near(high, number(9).unwrap()), "{name}: {high}");
                }
                None => assert!(once <= 1.0, "{name}"),
            }
            given += usize::from(is_given);
        }
        assert!(given >= 10, "{given} estimates were compared");
    }

    #[test]
    fn what_one_event_left_in_two_places_is_one_appearance() {
        let cite: Key = "marlof-1938".parse().unwrap();
        let other: Key = "dorn-1927".parse().unwrap();
        let seen = |date, cite, lot| Appearance { date, cite, lot };
        // A sale told by a sighting and by the provenance; then the same sale under its lot alone.
        let sale = [
            seen(Some("1938-05"), Some(&cite), None),
            seen(Some("1938-05"), Some(&cite), Some("44")),
            seen(Some("1938-05"), None, Some("44")),
        ];
        assert_eq!(distinct(&sale), 1);
        // Another day, another source, or nothing that says it was one event.
        let apart = [
            seen(Some("1938-05"), Some(&cite), None),
            seen(Some("1938-06"), Some(&cite), None),
            seen(Some("1938-05"), Some(&other), None),
            seen(Some("1938-05"), None, None),
            seen(Some("1938-05"), None, None),
            seen(None, Some(&cite), None),
            seen(None, Some(&cite), None),
        ];
        assert_eq!(distinct(&apart), 7);
    }
}
