//! What is to be accepted, and what accepting it writes.

use std::collections::{BTreeMap, BTreeSet};

use crate::exchange::intake::handing::HandingIn;
use crate::exchange::intake::photographs::Photographs;
use crate::exchange::intake::proposal::Proposal;
use crate::exchange::intake::record::RecordMaker;
use crate::exchange::intake::table::RowView;
use crate::model::catalogue::Catalogue;
use crate::model::key::{ImpressionKey, Key};
use crate::read::next_record::FreeImpressionKeys;

/// The rows that are to be accepted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum RowChoice {
    /// All that are ready.
    All,
    /// Those with these numbers; each must be acceptable.
    Rows(BTreeSet<u32>),
}

impl RowChoice {
    pub(super) fn names(&self, row: u32) -> bool {
        matches!(self, RowChoice::Rows(rows) if rows.contains(&row))
    }

    pub(super) fn includes(&self, row: u32) -> bool {
        *self == RowChoice::All || self.names(row)
    }
}

/// What is accepted, and what its records are made of.
pub struct Accepting<'a> {
    /// What the file proposes.
    pub proposal: &'a Proposal,
    /// The catalogue, with everything private.
    pub catalogue: &'a Catalogue,
    /// Who hands in.
    pub handing: &'a HandingIn,
    /// What makes records of rows.
    pub maker: &'a RecordMaker<'a>,
    /// The cells of a row, by its number.
    pub cells: &'a dyn Fn(u32) -> Option<RowView<'a>>,
    /// The technique of each proposed design.
    pub techniques: &'a [Vec<Key>],
    /// The keys that new impressions get.
    pub free_keys: &'a FreeImpressionKeys,
    /// Which photographs are of which rows, by their places in the proposal.
    pub photographs: &'a Photographs,
    /// The names of the photographs.
    pub names: &'a [String],
    /// Whether a recorded impression has this photograph already, by its place among the names.
    pub has_photograph: &'a dyn Fn(&ImpressionKey, usize) -> bool,
    /// Whether the catalogue has a file at a path.
    pub has_file: &'a dyn Fn(&str) -> bool,
}

/// What accepting writes.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Acceptance {
    /// The records, by path in the catalogue.
    pub records: BTreeMap<String, RecordText>,
    /// The photographs to be copied: the place of each among the names, and its path in the catalogue.
    pub pictures: Vec<(usize, String)>,
    /// The rows that are accepted, in their order.
    pub rows: Vec<AcceptedRow>,
    /// The new designs.
    pub designs: Vec<Key>,
    /// The rows that stay in the inbox.
    pub left: Vec<LeftRow>,
}

/// The text of a record.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RecordText {
    /// The text.
    pub text: String,
    /// Whether the record is new.
    pub is_new: bool,
}

/// A row that is accepted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct AcceptedRow {
    /// Its number in the file.
    pub row: u32,
    /// Its impression.
    pub impression: ImpressionKey,
    /// Whether the impression is new.
    pub is_new: bool,
    /// How many keys of a record that was there are corrected.
    pub corrected: usize,
    /// How many photographs come with it.
    pub photographs: usize,
}

/// A row that stays in the inbox.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LeftRow {
    /// Its number in the file.
    pub row: u32,
    /// Why, and what to do.
    pub why: String,
}
