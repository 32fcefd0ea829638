//! Designs of which one sheet is known. Where they are many they run on, sheet by sheet, in place of a row each.

use std::collections::BTreeSet;

use super::sheet_records::Records;
use crate::model::design::Design;
use crate::model::impression::Status;
use crate::model::key::{ImpressionKey, Key};
use crate::model::words::ClosedList as _;
use crate::page::lists::run_on::RunOnLine;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, capitalised};

/// So many designs of one sheet still have a row each.
const ROWS: usize = 20;

/// The accepted designs of one sheet that run on; none where they are few.
pub(super) fn run_on(here: &Here<'_>, records: &Records<'_>) -> BTreeSet<Key> {
    let designs = here.designs_in_order();
    let of_one = designs.filter(|design| sheet_of(here, design, records).is_some());
    let keys: BTreeSet<Key> = of_one.map(|design| design.key.clone()).collect();
    if keys.len() > ROWS {
        keys
    } else {
        BTreeSet::new()
    }
}

/// The only sheet of an accepted design, with its status; `None` where more are known, or where there is something to
/// say of the count: a sheet that is not shown, or whose record is not accepted.
fn sheet_of<'h>(
    here: &'h Here<'_>,
    design: &Design,
    records: &Records<'_>,
) -> Option<(&'h ImpressionKey, Status)> {
    let census = &here.book.studies.designs.get(&design.key)?.census;
    let has_one = census.sheets.at_most == 1 && !design.standing.is_set_apart();
    let [row] = census.by.status.as_slice() else {
        return None;
    };
    let sheet = row.allowing.first().filter(|_| has_one)?;
    let is_plain =
        records.not_shown(census) == 0 && records.not_accepted_of(here, &design.key).is_empty();
    Some((sheet, row.key.filter(|_| is_plain)?))
}

/// The sheets of some designs, run on by status.
pub(super) fn lines(
    here: &Here<'_>,
    designs: &BTreeSet<Key>,
    records: &Records<'_>,
) -> Vec<RunOnLine> {
    let sheets = here
        .designs_in_order()
        .filter(|design| designs.contains(&design.key));
    let sheets: Vec<(&ImpressionKey, Status)> = sheets
        .filter_map(|design| sheet_of(here, design, records))
        .collect();
    let of_status = |status: &Status| RunOnLine {
        lead: capitalised(&CleanHtml::text(here.status(*status))),
        items: sheets
            .iter()
            .filter(|(_, of)| of == status)
            .map(|(sheet, _)| here.impression(sheet))
            .collect(),
    };
    let lines = Status::ALL.iter().map(of_status);
    lines.filter(|line| !line.items.is_empty()).collect()
}

/// How many of some designs have their sheet in a status.
pub(super) fn of_status(here: &Here<'_>, designs: &BTreeSet<Key>, status: Status) -> usize {
    let studies = designs
        .iter()
        .filter_map(|key| here.book.studies.designs.get(key));
    let has_it = |row: &crate::study::census::Row<Status>| row.key == Some(status);
    studies
        .filter(|study| study.census.by.status.iter().any(has_it))
        .count()
}
