//! Rule: a sheet or printing is dated after a matrix that it needs was cancelled or destroyed.
//!
//! Impressions from a cancelled matrix exist and are listed apart (docs/trade.md, "Cancelled and destroyed
//! matrices"): a sheet of kind `cancelled`, and a printing all of whose recorded sheets are of that kind, may
//! be later than the cancellation. Nothing is printed from a matrix that was destroyed.

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::design::{Design, Matrix, MatrixFate};
use crate::model::edtf::Date;
use crate::model::finding::Finding;
use crate::model::impression::{BlockPrinted, Impression};
use crate::model::place::Placed;
use crate::model::printing::Printing;
use crate::study::Studies;
use crate::study::editions::only_printing;

use super::dates::taken_as;
use super::firm;
use super::wording;

/// A cancelled or destroyed matrix, and the date of its cancellation or destruction.
struct LostMatrix<'a> {
    matrix: &'a Matrix,
    fate: MatrixFate,
    since: &'a Placed<Date>,
}

fn lost_matrices(design: &Design) -> Vec<LostMatrix<'_>> {
    design
        .matrices
        .iter()
        .filter_map(|matrix| {
            let now = matrix.now.as_ref()?;
            let fate = now.state.value;
            let since = firm::date(now.date.as_ref())?;
            matches!(fate, MatrixFate::Cancelled | MatrixFate::Destroyed).then_some(LostMatrix {
                matrix,
                fate,
                since,
            })
        })
        .collect()
}

/// A sheet or a printing is dated after a matrix that it needs was cancelled or destroyed.
pub(super) fn after_destruction(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for design in catalogue.designs.values() {
        for lost in lost_matrices(design) {
            for printing in design.standing_printings() {
                findings.extend(of_printing(design, &lost, printing));
            }
            for impression in design.impressions.values() {
                findings.extend(of_sheet(design, &lost, impression));
            }
        }
    }
}

fn of_printing(design: &Design, lost: &LostMatrix, printing: &Printing) -> Option<Finding> {
    let run = firm::own_date(&printing.date)?;
    let is_late = firm::is_before(&lost.since.value, &run.value);
    let is_exempt = lost.fate == MatrixFate::Cancelled && is_of_cancelled_sheets(design, printing);
    if !is_late || is_exempt || !printing.is_counted() || !uses(printing, lost.matrix) {
        return None;
    }
    let what = format!(
        "{} of design {} is",
        wording::printing(&printing.key.value),
        design.number
    );
    Some(finding(&what, run, lost))
}

fn of_sheet(design: &Design, lost: &LostMatrix, impression: &Impression) -> Option<Finding> {
    let pulled = firm::own_date(&impression.sheet.date)?;
    let is_late = firm::is_before(&lost.since.value, &pulled.value);
    let is_exempt = lost.fate == MatrixFate::Cancelled && is_cancelled(impression);
    if !is_late || is_exempt || !is_printed_on(design, lost.matrix, impression) {
        return None;
    }
    Some(finding(
        &format!("{} is", design.sheet_number(impression)),
        pulled,
        lost,
    ))
}

fn finding(what: &str, date: &Placed<Date>, lost: &LostMatrix) -> Finding {
    let kind = lost
        .matrix
        .kind
        .map_or("matrix", |kind| crate::model::words::ClosedList::word(kind));
    Finding::new(
        Code::DatedAfterDestruction,
        date.place,
        format!(
            "{what} dated {}, but the {kind} `{}` was {} in {}",
            date.value, lost.matrix.key.value, lost.fate, lost.since.value
        ),
    )
    .saying("printed")
    .beside(lost.since.place, lost.fate.to_string())
    .help("correct one of the dates, or say which blocks were printed")
}

fn is_cancelled(impression: &Impression) -> bool {
    impression
        .kind
        .own()
        .is_some_and(|kind| kind.as_str() == "cancelled")
}

fn is_of_cancelled_sheets(design: &Design, printing: &Printing) -> bool {
    let mut sheets = design
        .impressions
        .values()
        .filter(|i| only_printing(i) == Some(&printing.key.value))
        .peekable();
    sheets.peek().is_some() && sheets.all(is_cancelled)
}

/// Whether a printing uses a matrix. Where the record does not say which matrices it uses, it uses all but
/// those of variants.
fn uses(printing: &Printing, matrix: &Matrix) -> bool {
    if printing.matrices.is_empty() {
        matrix.only_in.is_empty()
    } else {
        printing
            .matrices
            .iter()
            .any(|m| m.value == matrix.key.value)
    }
}

/// Whether a matrix was certainly printed on a sheet: by what was seen on it, or else by every printing that
/// the sheet may be of.
fn is_printed_on(design: &Design, matrix: &Matrix, impression: &Impression) -> bool {
    let seen = impression
        .blocks
        .iter()
        .find(|(m, _)| m.value == matrix.key.value)
        .map(|(_, printed)| printed.value);
    match seen {
        Some(BlockPrinted::Printed) => return true,
        Some(BlockPrinted::NotPrinted) => return false,
        Some(BlockPrinted::NotVisible) | None => {}
    }
    let variant = impression
        .identified
        .as_ref()
        .and_then(|i| i.variant.as_ref());
    let is_of_this_variant = variant.is_some_and(|v| matrix.only_in.contains(v));
    let candidates = taken_as(design, impression);
    if candidates.iter().all(|c| c.printing.is_none()) {
        return matrix.only_in.is_empty() || is_of_this_variant;
    }
    candidates.iter().all(|c| {
        c.printing
            .is_some_and(|p| p.is_counted() && (uses(p, matrix) || is_of_this_variant))
    })
}
