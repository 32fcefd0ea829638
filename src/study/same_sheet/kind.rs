//! The kinds of reasons, in one table: the word of each in `--json`, and a description for people.
//!
//! In: a tie or an evidence. Out: a [`ReasonKind`]. A new reason needs one line here.

use super::reason::{Evidence, Tie};

/// The kind of a reason.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ReasonKind {
    /// Its word in `census --doubts --json`; never changes its meaning.
    pub word: &'static str,
    /// The thing it compares, without its content: "an owner", to be followed by "kept private".
    pub what: &'static str,
}

fn kind(word: &'static str, what: &'static str) -> ReasonKind {
    ReasonKind { word, what }
}

impl Tie {
    /// Its kind.
    #[must_use]
    pub fn kind(&self) -> ReasonKind {
        match self {
            Tie::Number { .. } => kind("same-number", "a number of the edition"),
            Tie::Accession { .. } => kind("same-accession", "a holder's number"),
            Tie::Collector { .. } => kind("same-collector", "a collector's mark"),
            Tie::Inscription(_) => kind("same-inscription", "an inscription"),
            Tie::Lot { .. } => kind("same-lot", "a lot"),
            Tie::Sale { .. } => kind("same-sale", "a sale"),
            Tie::Exhibit { .. } => kind("same-exhibit", "an exhibit"),
            Tie::Page { .. } => kind("same-page", "a report"),
            Tie::Owner(_) => kind("same-owner", "an owner"),
            Tie::Holder(_) => kind("same-holder", "a holder"),
        }
    }
}

impl Evidence {
    /// Its kind.
    #[must_use]
    pub fn kind(&self) -> ReasonKind {
        match self {
            Evidence::Shared(tie) => tie.kind(),
            Evidence::LastKnown(tie) => kind("last-known", tie.kind().what),
            Evidence::Follows { .. } => kind("follows", "dates"),
            Evidence::SheetAlike { .. } => kind("sheet-alike", "a size"),
            Evidence::MatrixAlike(..) => kind("matrix-alike", "a size"),
            Evidence::SameState(_) => kind("same-state", "a state"),
            Evidence::SamePrinting(_) => kind("same-printing", "a printing"),
            Evidence::SamePaper(_) => kind("same-paper", "a paper"),
            Evidence::PaperAlike(..) => kind("paper-alike", "a measurement of the paper"),
            Evidence::SeenAlike(_) => kind("seen-alike", "an observation"),
            Evidence::MatrixNear(..) => kind("matrix-near", "a size"),
            Evidence::MatrixFar(..) => kind("matrix-far", "a size"),
            Evidence::Grown { .. } => kind("grown", "a size"),
            Evidence::OtherState(_) => kind("other-state", "a state"),
            Evidence::OtherPrinting(_) => kind("other-printing", "a printing"),
            Evidence::OtherKind(_) => kind("other-kind", "a kind"),
            Evidence::OtherPaper(_) => kind("other-paper", "a paper"),
            Evidence::PaperApart(..) => kind("paper-apart", "a measurement of the paper"),
            Evidence::SeenApart { .. } => kind("seen-apart", "an observation"),
            Evidence::OtherNumber(_) => kind("other-number", "a number"),
            Evidence::NumberGone(_) => kind("number-gone", "a number"),
            Evidence::MarkGone { .. } => kind("mark-gone", "a mark"),
            Evidence::OtherAccession { .. } => kind("other-accession", "a holder's number"),
            Evidence::OtherLot { .. } => kind("other-lot", "a lot"),
            Evidence::OtherExhibit { .. } => kind("other-exhibit", "an exhibit"),
            Evidence::TwoPlaces(_) => kind("two-places", "an exhibition"),
            Evidence::TwoHands { .. } => kind("two-hands", "an owner or keeper"),
            Evidence::Destroyed => kind("destroyed", "a status"),
            Evidence::SaidBeside => kind("said-beside", "a link"),
        }
    }
}
