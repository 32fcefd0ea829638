//! The columns of a table of sheets: what each holds, and from which list its cells are chosen.
//!
//! The heading of a column is the word `form-NAME`, the note `form-NAME-note`. Headings are read back by
//! [`crate::exchange::intake::columns`]; a test holds both together.

use crate::exchange::intake::columns::Holds;
use crate::model::vocabulary::List as Vocabulary;

/// From which list the cells of a column are chosen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Chosen {
    /// The designs.
    Design,
    /// The states of the row's design.
    State,
    /// The printings of the row's design.
    Printing,
    /// The terms of a vocabulary.
    Term(Vocabulary),
    /// Located, untraced, destroyed, stolen.
    Status,
    /// In the original, from a photograph, by report.
    Basis,
    /// Yes or no.
    YesNo,
}

/// A column of the table.
#[derive(Clone, Copy, Debug)]
pub(super) struct FormColumn {
    /// Its name, part of the ids of its words.
    pub name: &'static str,
    /// What it holds.
    pub holds: Holds,
    /// Its width in figures.
    pub width: u8,
    /// Its list.
    pub chosen: Option<Chosen>,
}

impl FormColumn {
    /// The id of its heading.
    pub fn heading(&self) -> String {
        format!("form-{}", self.name)
    }

    /// The id of its note.
    pub fn note(&self) -> String {
        format!("form-{}-note", self.name)
    }
}

const fn plain(name: &'static str, holds: Holds, width: u8) -> FormColumn {
    FormColumn {
        name,
        holds,
        width,
        chosen: None,
    }
}

const fn chosen(name: &'static str, holds: Holds, width: u8, list: Chosen) -> FormColumn {
    FormColumn {
        name,
        holds,
        width,
        chosen: Some(list),
    }
}

/// Every column, in the order in which a registrar has the data.
pub(super) static COLUMNS: [FormColumn; 32] = [
    plain("accession", Holds::Accession, 18),
    chosen("design", Holds::Design, 28, Chosen::Design),
    plain("title", Holds::Title, 28),
    chosen("state", Holds::OwnState, 20, Chosen::State),
    chosen("printing", Holds::Printing, 22, Chosen::Printing),
    chosen("kind", Holds::Kind, 18, Chosen::Term(Vocabulary::Kinds)),
    plain("numbering", Holds::Numbering, 14),
    chosen(
        "technique",
        Holds::Medium,
        20,
        Chosen::Term(Vocabulary::Techniques),
    ),
    chosen("paper", Holds::Paper, 18, Chosen::Term(Vocabulary::Papers)),
    plain("watermark", Holds::Watermark, 18),
    plain("image", Holds::Dimensions, 16),
    plain("sheet", Holds::Dimensions, 16),
    plain("platemark", Holds::Dimensions, 16),
    plain("signature", Holds::Signature, 24),
    plain("inscription", Holds::Inscription, 28),
    plain("marks", Holds::Marks, 24),
    plain("condition", Holds::Condition, 24),
    plain("holder", Holds::Holder, 24),
    chosen("status", Holds::Status, 16, Chosen::Status),
    plain("former-accession", Holds::FormerAccession, 18),
    chosen(
        "acquisition",
        Holds::Acquisition,
        18,
        Chosen::Term(Vocabulary::Transfers),
    ),
    plain("credit", Holds::Credit, 28),
    plain("provenance", Holds::Provenance, 36),
    plain("web", Holds::Web, 28),
    plain("photograph", Holds::Photograph, 22),
    chosen("publish", Holds::Publish, 18, Chosen::YesNo),
    plain("rights", Holds::Rights, 24),
    plain("seen", Holds::Seen, 14),
    plain("seen-by", Holds::SeenBy, 18),
    chosen("basis", Holds::Basis, 18, Chosen::Basis),
    plain("remarks", Holds::Remarks, 32),
    plain(IMPRESSION, Holds::Impression, 14),
];

/// The name of the last column, which only the table of recorded sheets has.
pub(super) const IMPRESSION: &str = "impression";

/// The columns of an empty table.
pub(super) fn to_fill_in() -> impl Iterator<Item = &'static FormColumn> {
    COLUMNS.iter().filter(|column| column.name != IMPRESSION)
}
