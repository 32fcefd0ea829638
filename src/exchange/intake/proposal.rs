//! What a file proposes: for each row an impression, and the designs to which the rows belong.
//!
//! Only types. `rows` reads the rows, `grouping` groups them into designs, `known` compares them with the records. Nothing
//! here is a record yet: `record` makes the records, and accepting writes them.

use super::columns::{ColumnDoubt, ColumnReading, Holds};
use super::facts::{Contradiction, Facts};
use super::handing::HandingIn;
use super::reading::Doubt;
use super::table::TableNote;
use crate::model::key::{ImpressionKey, Key};

/// What a file proposes.
#[derive(Clone, Debug, Default)]
pub struct Proposal {
    /// The columns as they are read.
    pub columns: Vec<ColumnReading>,
    /// What columns say against each other.
    pub column_doubts: Vec<ColumnDoubt>,
    /// What a registrar should know of the file.
    pub notes: Vec<TableNote>,
    /// The rows, in the order of the file.
    pub rows: Vec<ProposedRow>,
    /// The designs to which rows belong, in order of their first row.
    pub designs: Vec<ProposedDesign>,
}

/// What a row proposes.
#[derive(Clone, Debug, Default)]
pub struct ProposedRow {
    /// The number of the row in the file, from 1.
    pub row: u32,
    /// The number under which the holder keeps the sheet.
    pub accession: Option<String>,
    /// What was understood.
    pub facts: Facts,
    /// The words of each cell that were not, by column from 0.
    pub unread: Vec<(usize, String)>,
    /// What is doubtful.
    pub doubts: Vec<RowDoubt>,
    /// Its design, by its place in [`Proposal::designs`]; `None` where nothing tells it.
    pub design: Option<usize>,
    /// The parts of that design that the row names, where it is recorded.
    pub named: NamedParts,
    /// What it seems to be in the census.
    pub standing: RowStanding,
    /// Records that it may be, with the reasons.
    pub may_be: Vec<MayBe>,
}

impl ProposedRow {
    /// The record that it is, where it is recorded.
    #[must_use]
    pub fn recorded(&self) -> Option<&ImpressionKey> {
        match &self.standing {
            RowStanding::Unchanged(key) | RowStanding::Corrected(key, _) => Some(key),
            RowStanding::New | RowStanding::Nothing | RowStanding::LeftOut => None,
        }
    }

    /// Who keeps the sheet: the holder that the row names, else that of the whole file. A row that names one which no
    /// record has, has none.
    #[must_use]
    pub fn holder<'r>(&'r self, handing: &'r HandingIn) -> Option<&'r Key> {
        let of_file = if self.facts.texts.get(Holds::Holder).is_some() {
            None
        } else {
            handing.holder.as_ref()
        };
        self.facts.holder.as_ref().or(of_file)
    }
}

/// What a row is in the census.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum RowStanding {
    /// An impression that is not recorded.
    #[default]
    New,
    /// This impression, of which everything is recorded as the row says it.
    Unchanged(ImpressionKey),
    /// This impression, and the row says something else or more than was handed in before.
    Corrected(ImpressionKey, Vec<Correction>),
    /// No impression: the row has neither an accession number nor anything else that a record could hold.
    Nothing,
    /// An editor left the row out in `designs.toml`.
    LeftOut,
}

/// The parts of a design that a row names, in this catalogue's terms. Several: the row, or the concordance, leaves it
/// open which.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct NamedParts {
    /// The states that a column of this catalogue's own states may mean.
    pub states: Vec<Key>,
    /// The printings that a column of this catalogue's own printings may mean.
    pub printings: Vec<Key>,
    /// What earlier catalogues say of the sheet.
    pub opinions: Vec<EarlierOpinion>,
}

/// A state or printing after an earlier catalogue: an opinion with `said` and `after`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct EarlierOpinion {
    /// The number as that catalogue has it: `ii/iii`.
    pub said: String,
    /// The work.
    pub after: Key,
    /// The states of this catalogue that it may be: none where the concordance does not have it, several where the
    /// earlier state was split.
    pub states: Vec<Key>,
    /// The printings of this catalogue that it may be.
    pub printings: Vec<Key>,
}

/// What a row changes in a record.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Correction {
    /// The key of the record, such as `credit` or `sheet.image`.
    pub key: String,
    /// What is recorded; `None` where nothing is.
    pub is: Option<String>,
    /// What the row says; `None` where it no longer says anything.
    pub would_be: Option<String>,
    /// Whether a scholar wrote what is recorded: the record stays, and the difference is a doubt.
    pub is_kept: bool,
}

/// A record that a row may be.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MayBe {
    /// The record.
    pub impression: ImpressionKey,
    /// Why, in words. For editors: it may name what the record keeps private.
    pub why: String,
    /// Whether a reason rests on what the record keeps private, or the record is not published: not to be told to those
    /// who hand in.
    pub is_private: bool,
}

/// A design to which rows belong.
#[derive(Clone, Debug, Default)]
pub struct ProposedDesign {
    /// Which design it is.
    pub is: DesignIs,
    /// The number that the rows give a new design; `None`: the next whole number.
    pub number: Option<String>,
    /// The key that a new design would get (`grouping::keyed`).
    pub key: Option<Key>,
    /// Its title: that of the catalogue, else as an editor or the first row that has one gives it.
    pub title: Option<String>,
    /// Its rows, by their places in [`Proposal::rows`].
    pub rows: Vec<usize>,
    /// Why these rows are of one design, in words.
    pub joins: Vec<String>,
    /// Why rows that look alike are not of it, in words.
    pub splits: Vec<String>,
    /// What is doubtful about the group, in words.
    pub doubts: Vec<String>,
    /// The rows that no editor has placed in it, where it is settled: proposed for it since.
    pub added: Vec<usize>,
    /// Whether an editor settled it in `designs.toml`.
    pub is_settled: bool,
    /// The designs of `designs.toml` that it is, by their places.
    pub settled: Vec<usize>,
}

/// Which design rows belong to.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub enum DesignIs {
    /// A design of the catalogue.
    Recorded(Key),
    /// One of these designs of the catalogue; an editor must say which.
    OneOf(Vec<Key>),
    /// A design that the catalogue does not have.
    #[default]
    New,
}

/// What is doubtful about a row.
#[derive(Clone, Debug, PartialEq)]
pub enum RowDoubt {
    /// In the reading of a cell.
    Cell {
        /// The column, from 0.
        column: usize,
        /// What.
        doubt: Doubt,
    },
    /// Two cells say different things.
    Contradiction {
        /// The column of the later cell, from 0.
        column: usize,
        /// Of what.
        of: Contradiction,
    },
    /// Cells say otherwise than another cell of the row.
    Against {
        /// Their columns, from 0.
        columns: Vec<usize>,
        /// What, in words.
        said: String,
    },
    /// Something of the row against the catalogue or other rows, in words.
    Said(String),
}
