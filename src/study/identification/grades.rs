//! How well what was seen fits a state or printing, and what one thing seen says of it, each with its word.
//!
//! The words are declared here only: pages say them by `fit-WORD` and `bearing-WORD` of the theme's words, the script
//! of the key has the same, and the terminal prints [`Fit::in_english`].
//!
//! Method: the grades of Kass and Raftery 1995, Journal of the American Statistical Association 90, 773–795 (limits
//! from memory). Definitions: `docs/definitions.md, "The two axes and their grades"`.

use super::identify::rounded;
use super::table::PointColumn;
use keyblock_model::point::EvidenceKind;
use keyblock_model::words::closed_list;

closed_list! {
    /// What one thing that was seen says of a state or printing.
    Bearing {
        /// It excludes it.
        Excludes = "excludes",
        /// It speaks for it and against some other.
        For = "for",
        /// It speaks against it.
        Against = "against",
    }
}

/// How what was seen fits a state or a printing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fit {
    /// Excluded: a state by what rests on the matrix, a printing by any deciding point.
    Excluded,
    /// Of a state: not excluded by the matrix, but each printing that contains it is excluded with it.
    NoPrintingFits,
    /// The best: no other is level with it.
    Best,
    /// Not excluded, and graded against the best.
    Graded(Grade),
    /// Nothing was seen at which both this and the best have something recorded.
    NothingToCompare,
    /// What was seen is for or against no candidate.
    NothingTold,
}

/// How far a state or printing falls behind the best, by the ratio of the likelihoods.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Grade {
    /// Up to 3.
    Level,
    /// Up to 20.
    Behind,
    /// Up to 150.
    FarBehind,
    /// Above 150.
    VeryFarBehind,
}

impl Fit {
    /// Each, with its word and what the terminal says.
    pub const ALL: [(Fit, &'static str, &'static str); 9] = [
        (Fit::Best, "best", "fits best"),
        (Fit::Graded(Grade::Level), "level", "level with the best"),
        (Fit::Graded(Grade::Behind), "behind", "behind"),
        (Fit::Graded(Grade::FarBehind), "far-behind", "far behind"),
        (
            Fit::Graded(Grade::VeryFarBehind),
            "very-far-behind",
            "very far behind",
        ),
        (Fit::Excluded, "excluded", "excluded"),
        (
            Fit::NoPrintingFits,
            "no-printing",
            "not in a recorded printing that fits",
        ),
        (
            Fit::NothingToCompare,
            "nothing-to-compare",
            "nothing recorded to compare",
        ),
        (Fit::NothingTold, "nothing-told", "not distinguished"),
    ];

    /// Its word, by which a theme names it: "far-behind".
    #[must_use]
    pub fn word(self) -> &'static str {
        self.declared().1
    }

    /// What the terminal says: "far behind". The built-in theme says the same in English.
    #[must_use]
    pub fn in_english(self) -> &'static str {
        self.declared().2
    }

    fn declared(self) -> (Fit, &'static str, &'static str) {
        let declared = Fit::ALL.into_iter().find(|(fit, ..)| *fit == self);
        debug_assert!(declared.is_some(), "every fit is declared");
        declared.unwrap_or((self, "", ""))
    }
}

impl Grade {
    /// The grade of a ratio of likelihoods, that of the best to that of another.
    ///
    /// The limits are those of Kass and Raftery 1995, table on p. 777 (from memory).
    #[must_use]
    pub fn of(ratio: f64) -> Grade {
        let ratio = rounded(ratio);
        if ratio <= 3.0 {
            Grade::Level
        } else if ratio <= 20.0 {
            Grade::Behind
        } else if ratio <= 150.0 {
            Grade::FarBehind
        } else {
            Grade::VeryFarBehind
        }
    }

    /// The grade, not lower than the kinds of evidence against it allow: with nothing against it a row is level,
    /// with only marks at most behind, with no deciding point at most far behind.
    pub(super) fn held_up_by<'c>(self, against: impl Iterator<Item = &'c PointColumn>) -> Grade {
        let lowest = against.map(|column| match column.evidence {
            _ if column.is_deciding => Grade::VeryFarBehind,
            EvidenceKind::Mark => Grade::Behind,
            _ => Grade::FarBehind,
        });
        self.min(lowest.max().unwrap_or(Grade::Level))
    }
}
