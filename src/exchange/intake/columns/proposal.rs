//! What the columns of a table hold, as a proposal.

use std::collections::BTreeSet;

use super::checks::{ColumnDoubt, checked};
use super::content::{TOLD_BY_CELLS, looks_like};
use super::headings::{Said, said};
use super::holds::Holds;
use super::reading::{ColumnReading, Ground};
use super::{paths, places};
use crate::exchange::intake::reading::Lexicon;
use crate::exchange::intake::reading::sizes::{Assumed, assumed_by};
use crate::exchange::intake::table::{Table, TableKind};
use crate::model::certainty::Certainty;

/// The columns of a table as they were read, and what they say against each other.
#[derive(Clone, Debug, PartialEq)]
pub struct ColumnProposal {
    /// Every column, in order.
    pub columns: Vec<ColumnReading>,
    /// What should be looked at.
    pub doubts: Vec<ColumnDoubt>,
}

/// How many cells of a column are looked at, evenly over its rows.
const LOOKED_AT: usize = 200;

/// Reads what each column of a table holds.
#[must_use]
pub fn columns(table: &Table, lexicon: &Lexicon) -> ColumnProposal {
    let headings: Vec<&str> = table.heading().collect();
    let is_own_form = is_own_form(&headings);
    let mut columns: Vec<ColumnReading> = Vec::new();
    for (column, heading) in headings.iter().enumerate() {
        let cells: Vec<&str> = table
            .rows()
            .map(|row| row.cell(column))
            .filter(|cell| !cell.is_empty())
            .collect();
        let distinct: BTreeSet<&str> = cells.iter().copied().collect();
        let is_path = matches!(
            table.kind,
            TableKind::Lido | TableKind::LinkedArt | TableKind::Iiif
        );
        let (holds, sure, why) = if is_path {
            held_by_path(table.kind, heading)
        } else if places::is_ambiguous(heading) && !cells.is_empty() && !is_own_form {
            places::held(&looked_at(&cells), lexicon)
        } else {
            held(heading, &cells, distinct.len(), lexicon)
        };
        columns.push(ColumnReading {
            column,
            heading: (*heading).to_owned(),
            holds,
            sure,
            why,
            // A path says nothing of units.
            assumed: if is_path {
                Assumed::default()
            } else {
                assumed_by(heading)
            },
            filled: cells.len(),
            distinct: distinct.len(),
        });
    }
    withdraw_guesses(&mut columns);
    withdraw_further_paths(&mut columns);
    tell_further(&mut columns);
    let doubts = checked(table, &columns);
    ColumnProposal { columns, doubts }
}

/// Where a heading names the accession numbers, columns whose cells merely look like numbers are not taken for them.
fn withdraw_guesses(columns: &mut [ColumnReading]) {
    let is_named = |column: &ColumnReading| {
        column.holds == Holds::Accession && column.why.contains(&Ground::HeadingIs)
    };
    if !columns.iter().any(is_named) {
        return;
    }
    for column in columns {
        let is_guess = matches!(column.why.first(), Some(Ground::Cells { .. }));
        if column.holds == Holds::Accession && is_guess {
            column.holds = Holds::Unknown;
            column.sure = Certainty::Certain;
            column.why = vec![Ground::Nothing];
        }
    }
}

/// A sheet has one holder and a picture one statement of its rights: of the paths of records, the first that tells counts (the
/// custodian's name in one language, the address of a licence before its name).
fn withdraw_further_paths(columns: &mut [ColumnReading]) {
    for holds in [Holds::Holder, Holds::Rights] {
        let of_path = columns
            .iter_mut()
            .filter(|column| column.holds == holds && column.why.contains(&Ground::PathIs));
        let mut first = None;
        for column in of_path {
            let Some(by) = first else {
                first = Some(column.column);
                continue;
            };
            column.holds = Holds::Unknown;
            column.why = vec![Ground::AlreadyHeld { by }];
        }
    }
}

/// A sheet has one accession number: a further column of them needs a decision.
fn tell_further(columns: &mut [ColumnReading]) {
    let mut first = None;
    for column in columns.iter_mut().filter(|c| c.holds == Holds::Accession) {
        if let Some(by) = first {
            column.sure = Certainty::Possible;
            column.why.push(Ground::AlreadyHeld { by });
        }
        first = first.or(Some(column.column));
    }
}

/// What a column of records holds: as its path says, for certain; its cells are not asked.
fn held_by_path(kind: TableKind, heading: &str) -> (Holds, Certainty, Vec<Ground>) {
    let (holds, ground) = match paths::held(kind, heading) {
        Some((holds, paths::By::Path)) => (holds, Ground::PathIs),
        Some((holds, paths::By::Word)) => (holds, Ground::HeadingIs),
        None => (Holds::Unknown, Ground::Nothing),
    };
    (holds, Certainty::Certain, vec![ground])
}

/// The cells that are looked at.
fn looked_at<'c>(cells: &[&'c str]) -> Vec<&'c str> {
    let step = cells.len().div_ceil(LOOKED_AT).max(1);
    cells.iter().step_by(step).copied().collect()
}

/// Whether a table is one of our own forms, whose headings mean what the forms say.
fn is_own_form(headings: &[&str]) -> bool {
    let mut headings = headings.iter();
    headings.any(|heading| said(heading) == Some(Said::Whole(Holds::OwnState)))
}

/// What a column holds: as its heading says, surer where the cells agree; without a heading as its cells look.
fn held(
    heading: &str,
    cells: &[&str],
    distinct: usize,
    lexicon: &Lexicon,
) -> (Holds, Certainty, Vec<Ground>) {
    let looked_at = looked_at(cells);
    let of = looked_at.len();
    let fit = |holds: Holds| {
        let fits = looked_at
            .iter()
            .filter_map(|cell| looks_like(holds, cell, lexicon));
        fits.fold(None, |sum: Option<usize>, is_fit| {
            Some(sum.unwrap_or(0) + usize::from(is_fit))
        })
    };
    if let Some(said) = said(heading) {
        let (Said::Whole(holds) | Said::Part(holds)) = said;
        let is_whole = matches!(said, Said::Whole(_));
        let mut why = vec![if is_whole {
            Ground::HeadingIs
        } else {
            Ground::HeadingHas
        }];
        if cells.is_empty() {
            why.push(Ground::NoCells);
            let sure = if is_whole {
                Certainty::Probable
            } else {
                Certainty::Possible
            };
            return (holds, sure, why);
        }
        let Some(fit) = fit(holds) else {
            let sure = if is_whole {
                Certainty::Certain
            } else {
                Certainty::Probable
            };
            return (holds, sure, why);
        };
        why.push(Ground::Cells { fit, of });
        let sure = match (is_whole, fit * 2 >= of, fit * 10 >= of) {
            (true, true, _) => Certainty::Certain,
            (true, false, true) | (false, true, _) => Certainty::Probable,
            _ => Certainty::Possible,
        };
        return (holds, sure, why);
    }
    if cells.is_empty() {
        return (Holds::Unknown, Certainty::Certain, vec![Ground::NoCells]);
    }
    // At least nine of ten cells, and more than two, since two may look like anything.
    for holds in TOLD_BY_CELLS {
        let fit = fit(holds).unwrap_or(0);
        if of > 2 && fit * 10 >= of * 9 {
            let sure = if heading.is_empty() {
                Certainty::Probable
            } else {
                Certainty::Possible
            };
            return (holds, sure, vec![Ground::Cells { fit, of }]);
        }
    }
    let numbers = fit(Holds::Accession).unwrap_or(0);
    if of > 2
        && numbers == of
        && distinct == cells.len()
        && !looked_at.iter().all(|cell| is_count(cell))
    {
        let why = vec![Ground::Cells { fit: numbers, of }];
        return (Holds::Accession, Certainty::Possible, why);
    }
    (Holds::Unknown, Certainty::Certain, vec![Ground::Nothing])
}

/// Whether a cell is a plain number, which may count anything.
fn is_count(cell: &str) -> bool {
    cell.chars()
        .all(|c| c.is_ascii_digit() || c == '.' || c == ',')
}
