//! How many sheets could have been met, from the occasions on which each known one was.
//!
//! Sheets met on one occasion resemble those never met. So the numbers of sheets met on exactly one and exactly two
//! occasions give a lower bound of how many sheets there are, or were: destroyed ones are among them.
//!
//! In: the occasions of each sheet of a design (`occasions`), its printings and its census. Out: [`Survival`], in
//! sheets. Method: Chao1 in its bias-corrected form, with a log-normal interval of 95 % (Chao 1984 and 1987;
//! formulas and conditions in `docs/definitions.md, "Survival"`), checked against `tests/checks/chao1.csv`, which agrees
//! with the library scikit-bio 0.7.4. Its assumptions are stated on the page: occasions should be independent,
//! sheets alike, and none lost or made meanwhile.
//!
//! A test vector of scikit-bio, for which its authors give 9.75 and 9.07 to 17.45 as results of EstimateS: three
//! sheets met once, three twice, two four times, one five times.
//! ```
//! # use keyblock::study::survival::{MetSheets, chao1};
//! let met = MetSheets::of_counts([1, 1, 1, 2, 2, 2, 4, 4, 5].into_iter());
//! let estimate = chao1(met).unwrap();
//! assert_eq!(estimate.sheets, 9.75);
//! let interval = format!("{:.2} to {:.2}", estimate.low, estimate.high);
//! assert_eq!(interval, "9.07 to 17.45");
//! ```

use super::occasions::SheetOccasions;
use super::rows::Sheets;
use keyblock_model::design::Design;

/// The fewest sheets met from which an estimate is made.
pub const FEWEST_SHEETS: usize = 5;

/// The fewest sheets met on one occasion alone from which an estimate is made.
pub const FEWEST_MET_ONCE: usize = 2;

/// The normal deviate of a two-sided interval of 95 %.
const DEVIATE: f64 = 1.96;

/// On how many occasions sheets were met.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct MetSheets {
    /// Sheets met on at least one occasion.
    pub sheets: usize,
    /// Those met on exactly one.
    pub once: usize,
    /// Those met on exactly two.
    pub twice: usize,
}

impl MetSheets {
    /// Counts sheets by the number of occasions of each; 0 is ignored.
    #[must_use]
    pub fn of_counts(occasions: impl Iterator<Item = usize>) -> MetSheets {
        let mut met = MetSheets::default();
        for occasions in occasions.filter(|n| *n > 0) {
            met.sheets += 1;
            met.once += usize::from(occasions == 1);
            met.twice += usize::from(occasions == 2);
        }
        met
    }
}

/// How often the sheets of a design were met, and the estimate from it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Survival {
    /// On how many occasions its sheets were met.
    pub met: MetSheets,
    /// How many sheets could have been met, or why nothing is estimated.
    pub estimate: Result<Estimate, NoEstimate>,
}

/// How many sheets could have been met in all: a lower bound by its nature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate {
    /// The estimate.
    pub sheets: f64,
    /// The lower end of the interval of 95 %.
    pub low: f64,
    /// Its upper end.
    pub high: f64,
}

/// Why no estimate is given. The first that applies is the one that is told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoEstimate {
    /// How many were printed is declared or recorded for a printing that counts, and says more.
    SizeRecorded,
    /// Some known sheets have no occasion: how many.
    NeverMet(usize),
    /// Fewer than [`FEWEST_SHEETS`] sheets were met.
    TooFew,
    /// No sheet was met on a second occasion.
    AllMetOnce,
    /// Fewer than [`FEWEST_MET_ONCE`] sheets were met on one occasion alone. The formula would then add none, which
    /// is no evidence that there are no others.
    TooFewMetOnce,
}

impl Survival {
    /// The survival of the sheets of a design. `known` is their number; `occasions` those of each.
    #[must_use]
    pub(crate) fn of(design: &Design, known: Sheets, occasions: &[SheetOccasions]) -> Survival {
        let met = MetSheets::of_counts(occasions.iter().map(|of| of.years.len()));
        let mut printings = design.standing_printings().filter(|p| p.is_counted());
        let estimate = if printings.any(|p| !p.edition.is_empty() || !p.printed.is_empty()) {
            Err(NoEstimate::SizeRecorded)
        } else if met.sheets < known.at_most {
            Err(NoEstimate::NeverMet(known.at_most - met.sheets))
        } else {
            // Every known sheet was met, so the estimate is not below their number.
            chao1(met)
        };
        Survival { met, estimate }
    }
}

/// Chao1, bias-corrected, with its interval.
///
/// # Errors
/// Where too few sheets were met, on too few or too many occasions.
pub fn chao1(met: MetSheets) -> Result<Estimate, NoEstimate> {
    if met.sheets < FEWEST_SHEETS {
        Err(NoEstimate::TooFew)
    } else if met.once >= met.sheets {
        Err(NoEstimate::AllMetOnce)
    } else if met.once < FEWEST_MET_ONCE {
        Err(NoEstimate::TooFewMetOnce)
    } else {
        Ok(formula(
            count(met.sheets),
            count(met.once),
            count(met.twice),
        ))
    }
}

/// The formula, for `once` above 1.
fn formula(seen: f64, once: f64, twice: f64) -> Estimate {
    let unseen = once * (once - 1.0) / (2.0 * (twice + 1.0));
    let sheets = seen + unseen;
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
        low: seen + unseen / spread,
        high: seen + unseen * spread,
    }
}

#[allow(
    clippy::cast_precision_loss,
    reason = "no catalogue has 2^53 sheets of one design"
)]
fn count(n: usize) -> f64 {
    n as f64
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The vectors of `tests/checks/chao1.csv` (published vectors and our own; its head says which): how often each
    /// sheet was met, and the columns of the bias-corrected form. `given_by_design` says whether five sheets or more
    /// were met, not all of them once; an estimate takes two that were, besides.
    #[test]
    fn the_estimate_is_that_of_the_published_table() {
        let table = include_str!("../../../tests/checks/chao1.csv");
        let mut given = 0;
        for line in table.lines().skip(2) {
            let fields: Vec<&str> = line.split(',').collect();
            let number = |at: usize| fields[at].parse::<f64>();
            let times = fields[1].split(' ').flat_map(|pair| {
                let (times, sheets) = pair.split_once(':').unwrap();
                vec![times.parse().unwrap(); sheets.parse().unwrap()]
            });
            let name = fields[0];
            let met = MetSheets::of_counts(times);
            assert_eq!(Ok(count(met.sheets)), number(2), "{name}");
            assert_eq!(Ok(count(met.once)), number(4), "{name}");
            assert_eq!(Ok(count(met.twice)), number(5), "{name}");
            let is_given = fields[22] == "1" && met.once > 1;
            assert_eq!(chao1(met).is_ok(), is_given, "{name}");
            given += usize::from(is_given);
            let near = |a: f64, b: f64| (a - b).abs() < 1e-5 * b.max(1.0);
            if met.once > 1 {
                let found = formula(count(met.sheets), count(met.once), count(met.twice));
                for (value, at) in [(found.sheets, 6), (found.low, 8), (found.high, 9)] {
                    assert!(near(value, number(at).unwrap()), "{name}: {found:?}");
                }
            }
        }
        assert!(given >= 10, "{given} estimates were compared");
    }

    #[test]
    fn without_two_sheets_met_once_and_one_met_again_nothing_is_estimated() {
        let of = |counts: &[usize]| chao1(MetSheets::of_counts(counts.iter().copied()));
        assert_eq!(of(&[1, 1, 2, 2]), Err(NoEstimate::TooFew));
        assert_eq!(of(&[1, 1, 1, 1, 1]), Err(NoEstimate::AllMetOnce));
        assert_eq!(of(&[2, 2, 2, 2, 1]), Err(NoEstimate::TooFewMetOnce));
        assert_eq!(of(&[2, 2, 2, 2, 2]), Err(NoEstimate::TooFewMetOnce));
        assert!(of(&[1, 1, 2, 2, 2]).is_ok_and(|estimate| estimate.low >= 5.0));
    }
}
