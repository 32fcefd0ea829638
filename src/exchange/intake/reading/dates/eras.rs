//! Japanese eras: the year of the calendar is the year of the era plus a number.
//!
//! Meiji 1867, Taishō 1911, Shōwa 1925, Heisei 1988, Reiwa 2018 (docs/trade.md, "Tables that others hand in"). The last year
//! of an era is the first of the next: 1912, 1926, 1989 and 2019 each carry two. Until the end of 1872 (Meiji 5) the
//! calendar was lunar, so months of those years are not those of ours.

use std::sync::LazyLock;

use crate::exchange::intake::reading::phrases::Phrases;

/// An era.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Era {
    /// The year before its first.
    pub before: u32,
    /// How many years it had; more than anybody catalogues for the present one.
    pub years: u32,
}

impl Era {
    /// The year of the calendar; `None` where the era had no such year.
    pub fn year(self, of_era: u32) -> Option<u32> {
        (1..=self.years)
            .contains(&of_era)
            .then_some(self.before + of_era)
    }
}

/// The eras by their names.
pub(super) static ERAS: LazyLock<Phrases<Era>> = LazyLock::new(|| {
    let era = |before, years| Era { before, years };
    Phrases::of(&[
        (era(1867, 45), "Meiji|明治"),
        (era(1911, 15), "Taishō|Taisyo|大正"),
        (era(1925, 64), "Shōwa|Syowa|昭和"),
        (era(1988, 31), "Heisei|平成"),
        (era(2018, 81), "Reiwa|令和"),
    ])
});

/// The last year in which the calendar was lunar.
pub(super) const LAST_LUNAR_YEAR: u32 = 1872;
