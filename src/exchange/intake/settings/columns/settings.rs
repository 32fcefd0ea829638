//! The settings of the columns.

use super::super::fault::SettingFault;
use super::super::text::digest;
use crate::exchange::intake::columns::{ColumnDoubt, ColumnReading, Ground, Holds};
use crate::exchange::intake::handing::HandingIn;
use crate::exchange::intake::values::Sureness;
use crate::model::catalogue::Catalogue;
use crate::model::key::Key;
use crate::model::words::ClosedList as _;
use crate::read::values::near::nearest;

/// What the columns of a file hold, and what holds for all of its rows.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ColumnSettings {
    /// Who hands in, and what holds for all rows. Its `name` is that of the folder, not of the file.
    pub handing: HandingIn,
    /// The table of the file that is read, where it has several.
    pub table: Option<String>,
    /// The columns. As `columns.toml` has them, each is certain where an editor wrote it ([`Ground::ByHand`]); joined with
    /// a table, they are those of the table, in its order.
    pub columns: Vec<ColumnReading>,
    /// Two or three texts of each column; only joined with a table.
    pub samples: Vec<Vec<String>>,
    /// What columns say against each other; only joined with a table.
    pub doubts: Vec<ColumnDoubt>,
    /// The columns that `columns.toml` did not have, from 0; none where it had no column.
    pub added: Vec<usize>,
    /// The columns of `columns.toml` that the table does not have, kept for the next file.
    pub absent: Vec<ColumnReading>,
    /// Where the file has what findings point at.
    pub(super) places: Places,
}

/// Lines and columns, from 1, of what findings point at.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Places {
    pub(super) holder: (usize, usize),
    pub(super) by: (usize, usize),
    /// The heading of each column.
    pub(super) headings: Vec<(usize, usize)>,
}

impl ColumnSettings {
    /// Faults of keys that the catalogue lacks.
    #[must_use]
    pub fn unknown_keys(&self, catalogue: &Catalogue) -> Vec<SettingFault> {
        let holders: Vec<&Key> = catalogue.holders.keys().collect();
        let people = catalogue.people.keys();
        let parties: Vec<&Key> = people.chain(catalogue.holders.keys()).collect();
        let mut faults = Vec::new();
        for (key, known, what, at) in [
            (&self.handing.holder, &holders, "holder", self.places.holder),
            (
                &self.handing.by,
                &parties,
                "person or holder",
                self.places.by,
            ),
        ] {
            let Some(key) = key.as_ref().filter(|key| !known.contains(key)) else {
                continue;
            };
            let near = nearest(key.as_str(), known.iter().map(|key| key.as_str()));
            let help = match near {
                Some(near) => format!("did you mean \"{near}\"?"),
                None => format!("write the key of a {what}, or add the record first"),
            };
            faults.push(SettingFault {
                line: at.0,
                column: at.1,
                message: format!("the catalogue has no {what} `{key}`"),
                help: Some(help),
                is_error: true,
            });
        }
        faults
    }
}

/// Whether an editor wrote what a column holds.
pub(super) fn is_by_hand(column: &ColumnReading) -> bool {
    column.why.contains(&Ground::ByHand)
}

/// How sure a column is, as the file says it.
pub(super) fn sureness(column: &ColumnReading) -> Sureness {
    if is_by_hand(column) {
        Sureness::ByHand
    } else if column.holds == Holds::Unknown {
        Sureness::Unread
    } else {
        Sureness::of(Some(column.sure))
    }
}

/// The program's mark on what it wrote of a column.
pub(super) fn mark(column: &ColumnReading, sure: Sureness) -> String {
    let assumed = column.assumed;
    digest(&[
        column.holds.word(),
        assumed.unit.map_or("", |unit| unit.word()),
        assumed.of.map_or("", |of| of.word()),
        assumed.order.map_or("", |order| order.word()),
        sure.word(),
    ])
}
