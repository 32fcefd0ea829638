//! How many sheets survive, from how often each known one has been seen.
//!
//! Sheets seen only once resemble those never seen. So the numbers of sheets seen exactly once and exactly
//! twice give a lower bound of how many sheets there are.
//!
//! In: how often each sheet of a design was seen (`appearances`). Out: [`Survival`], in sheets.
//! Method: Chao1 in its bias-corrected form, with a log-normal interval of 95 % (Chao 1984 and 1987;
//! formulas in `docs/definitions.md, "Survival"`), checked against `tests/checks/chao1.csv`, which agrees with
//! the library scikit-bio 0.7.4. Its assumptions are stated on the page: sightings should be independent,
//! sheets alike, and none lost or made meanwhile.
//!
//! A test vector of scikit-bio, for which its authors give 9.75 and 9.07 to 17.45 as results of EstimateS: three
//! sheets seen once, three twice, two four times, one five times.
//! ```
//! # use keyblock::study::survival::Survival;
//! let estimate = Survival::of_counts([1, 1, 1, 2, 2, 2, 4, 4, 5].into_iter()).estimate.unwrap();
//! let [low, high] = estimate.interval.unwrap();
//! assert_eq!(estimate.sheets, 9.75);
//! assert_eq!((format!("{low:.2}"), format!("{high:.2}")), ("9.07".into(), "17.45".into()));
//! ```

/// The fewest seen sheets from which an estimate is made.
pub const FEWEST_SHEETS: usize = 5;

/// The normal deviate of a two-sided interval of 95 %.
const DEVIATE: f64 = 1.96;

/// How often the sheets of a design were seen, and the estimate from it.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Survival {
    /// Sheets that were seen at least once.
    pub sheets: usize,
    /// Those seen exactly once.
    pub seen_once: usize,
    /// Those seen exactly twice.
    pub seen_twice: usize,
    /// How many there are in all, where the data allow an estimate.
    pub estimate: Option<Estimate>,
}

/// How many sheets there are in all: a lower bound by its nature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate {
    /// The estimate.
    pub sheets: f64,
    /// The ends of the interval of 95 %; `None` where the formula finds no sheet missing.
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
    /// The survival of sheets, from how often each was seen; 0 is ignored.
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
    pub(crate) fn why_not(&self) -> Option<NoEstimate> {
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

#[cfg(test)]
mod tests {
    use super::*;

    /// The vectors of `tests/checks/chao1.csv` (published vectors and our own; its head says which):
    /// how often each sheet was seen, and the columns of the bias-corrected form.
    #[test]
    fn the_estimate_is_that_of_the_published_table() {
        let table = include_str!("../../../tests/checks/chao1.csv");
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
}
