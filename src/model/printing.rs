//! Printings: campaigns in which impressions were pulled.

use super::certainty::Statements;
use super::edtf::Date;
use super::key::Key;
use super::literature::Citation;
use super::place::{Place, Placed};
use super::point::ShownPoints;
use super::series_place::SeriesPlace;
use super::size::Sizes;
use super::standing::RecordStanding;
use super::words::closed_list;

closed_list! {
    /// The kind of a printing.
    PrintingKind {
        /// Printed by the artist.
        Artist = "artist",
        /// Printed by others while the artist lived.
        Lifetime = "lifetime",
        /// Printed from the original matrix after the artist's death.
        Posthumous = "posthumous",
        /// A later printing from the original matrix.
        Restrike = "restrike",
        /// Printed from newly cut matrices; never counted.
        Recut = "recut",
        /// Made by other means, without the original matrix; never counted.
        Reproduction = "reproduction",
        /// Proofs outside any edition.
        Proofs = "proofs",
    }
}

closed_list! {
    /// How the paper was pressed on the matrix.
    PrintingMeans {
        /// Rubbed by hand.
        Hand = "hand",
        /// In a press.
        Press = "press",
    }
}

impl PrintingKind {
    /// Whether its sheets are impressions of the design's own matrices, and so are counted.
    #[must_use]
    pub fn is_counted(self) -> bool {
        !matches!(self, PrintingKind::Recut | PrintingKind::Reproduction)
    }
}

/// A printing of a design.
#[derive(Clone, Debug, PartialEq)]
pub struct Printing {
    /// Its key.
    pub key: Placed<Key>,
    /// Its name, as readers see it.
    pub name: Option<String>,
    /// Its kind, the catalogue's own view first; empty: not known.
    pub kind: Statements<PrintingKind>,
    /// The printer: a person's or holder's key.
    pub printer: Statements<Key>,
    /// The publisher: a person's or holder's key.
    pub publisher: Statements<Key>,
    /// When.
    pub date: Statements<Date>,
    /// The declared size of the edition.
    pub edition: Statements<u32>,
    /// Whether its sheets are numbered, where that is known.
    pub numbered: Option<bool>,
    /// How many sheets were really printed, where that is known.
    pub printed: Statements<u32>,
    /// The states it contains; none of a design without states.
    pub states: StatesPrinted,
    /// The matrices used; empty: not said.
    pub matrices: Vec<Placed<Key>>,
    /// The papers used.
    pub paper: Vec<Placed<Key>>,
    /// The series in which its sheets came out.
    pub series: Vec<SeriesPlace>,
    /// The sizes of image and matrix, where they are not those of the states or the design.
    pub size: Sizes,
    /// The inks used, in the words of the record.
    pub inks: Vec<Placed<String>>,
    /// How the paper was pressed on the matrix, where that is known.
    pub pressed: Option<PrintingMeans>,
    /// The values it shows at points.
    pub shows: ShownPoints,
    /// Citations of earlier literature, with its numbers for it.
    pub literature: Vec<Citation>,
    /// Whether it is accepted, doubtful, rejected or withdrawn.
    pub standing: RecordStanding,
    /// Where it is recorded.
    pub place: Place,
}

impl Printing {
    /// Whether its sheets count as impressions: by the catalogue's own view of its kind.
    #[must_use]
    pub fn is_counted(&self) -> bool {
        self.kind.own().is_none_or(|kind| kind.is_counted())
    }
}

/// Which states a printing contains.
#[derive(Clone, Debug, PartialEq)]
pub enum StatesPrinted {
    /// Every state.
    All,
    /// These.
    Some(Vec<Placed<Key>>),
}

impl StatesPrinted {
    /// Whether the printing contains `state`.
    #[must_use]
    pub fn contains(&self, state: &Key) -> bool {
        match self {
            StatesPrinted::All => true,
            StatesPrinted::Some(states) => states.iter().any(|s| s.value == *state),
        }
    }
}
