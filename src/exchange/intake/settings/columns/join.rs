//! The settings of the house and what a file tells, joined.

use std::collections::BTreeSet;

use super::super::fault::SettingFault;
use super::settings::{ColumnSettings, is_by_hand};
use crate::exchange::intake::columns::{ColumnProposal, ColumnReading, Ground, Holds, checked};
use crate::exchange::intake::table::Table;
use crate::model::certainty::Certainty;
use crate::read::values::near::nearest;

/// How many texts of a column are shown.
const SAMPLES: usize = 3;

/// Joins what `columns.toml` says with what the columns of a table tell.
///
/// A column is known by its heading; of several with one heading the first is the first. What an editor wrote stands. What
/// the program wrote of an earlier file stands too where this file tells something else, since an editor left it so; only
/// what it had not recognised is read anew. Out: the columns of the table, and the columns of the file that the table does
/// not have, told at their places.
#[must_use]
pub fn joined(
    settings: ColumnSettings,
    table: &Table,
    proposal: ColumnProposal,
) -> (ColumnSettings, Vec<SettingFault>) {
    let is_first_file = settings.columns.is_empty();
    let mut used: BTreeSet<usize> = BTreeSet::new();
    let mut added = Vec::new();
    let ColumnProposal {
        columns: told,
        doubts,
    } = proposal;
    let mut columns = Vec::with_capacity(told.len());
    for proposed in told.iter().cloned() {
        let known = settings.columns.iter().enumerate();
        let known = known
            .filter(|(place, _)| !used.contains(place))
            .find(|(_, known)| known.heading == proposed.heading.trim());
        if let Some((place, known)) = known {
            used.insert(place);
            columns.push(one(known, proposed));
        } else {
            if !is_first_file {
                added.push(proposed.column);
            }
            columns.push(proposed);
        }
    }
    withdraw_accessions(&mut columns);
    let (faults, absent) = absent(&settings, &used, &columns);
    // Where every column is what the table tells, the table has told its doubts too.
    let doubts = if columns == told {
        doubts
    } else {
        checked(table, &columns)
    };
    let samples = columns.iter().map(|c| samples(table, c.column)).collect();
    let name = Some(table.name.clone()).filter(|name| !name.is_empty());
    let joined = ColumnSettings {
        handing: settings.handing,
        table: name.or(settings.table),
        columns,
        samples,
        doubts,
        added,
        absent,
        places: settings.places,
    };
    (joined, faults)
}

/// A column that the file knows.
fn one(known: &ColumnReading, proposed: ColumnReading) -> ColumnReading {
    let is_same = known.holds == proposed.holds && known.assumed == proposed.assumed;
    let is_new = known.holds == Holds::Unknown && !is_by_hand(known);
    if (is_same || is_new) && !is_by_hand(known) {
        return proposed;
    }
    let why = if is_by_hand(known) {
        Ground::ByHand
    } else {
        Ground::Before
    };
    ColumnReading {
        holds: known.holds,
        sure: known.sure,
        why: vec![why],
        assumed: known.assumed,
        ..proposed
    }
}

/// Where an editor says which column has the accession numbers, others that the program takes for it are not.
fn withdraw_accessions(columns: &mut [ColumnReading]) {
    let by_hand = columns
        .iter()
        .find(|column| column.holds == Holds::Accession && is_by_hand(column));
    let Some(by) = by_hand.map(|column| column.column) else {
        return;
    };
    for column in columns {
        if column.holds == Holds::Accession && !is_by_hand(column) {
            column.holds = Holds::Unknown;
            column.sure = Certainty::Certain;
            column.why = vec![Ground::AlreadyHeld { by }];
        }
    }
}

/// The columns of the file that the table does not have, told unless nothing was known of them.
fn absent(
    settings: &ColumnSettings,
    used: &BTreeSet<usize>,
    columns: &[ColumnReading],
) -> (Vec<SettingFault>, Vec<ColumnReading>) {
    let mut faults = Vec::new();
    let mut absent = Vec::new();
    for (place, column) in settings.columns.iter().enumerate() {
        if used.contains(&place) {
            continue;
        }
        absent.push(column.clone());
        if column.holds == Holds::Unknown {
            continue;
        }
        let (line, at) = settings
            .places
            .headings
            .get(place)
            .copied()
            .unwrap_or((1, 1));
        let headings = columns.iter().map(|column| column.heading.as_str());
        let help = match nearest(&column.heading, headings) {
            Some(near) => format!("did you mean \"{near}\"?"),
            None => "it is kept for the next file; remove it if no file will have it".to_owned(),
        };
        faults.push(SettingFault {
            line,
            column: at,
            message: format!("the file has no column \"{}\"", column.heading),
            help: Some(help),
            is_error: false,
        });
    }
    (faults, absent)
}

/// The first different texts of a column.
fn samples(table: &Table, column: usize) -> Vec<String> {
    let mut found: Vec<String> = Vec::new();
    // Far enough down, since a column of one text would be gone through to its end.
    for row in table.rows().take(2_000) {
        let cell = row.cell(column);
        if !cell.is_empty() && !found.iter().any(|known| known == cell) {
            found.push(cell.to_owned());
        }
        if found.len() == SAMPLES {
            break;
        }
    }
    found
}
