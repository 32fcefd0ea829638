//! The series in the census: how many sheets the designs of each have, with the records of every
//! figure.

use std::collections::BTreeSet;

use serde::Serialize;

use super::sheet_records::Records;
use crate::model::impression::Status;
use crate::model::key::Key;
use crate::model::words::ClosedList as _;
use crate::page::setting::address::{Fragment, Overview};
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, capitalised};
use crate::study::census::Census;
use crate::study::order::Collator;

/// One series.
#[derive(Serialize)]
pub(super) struct SeriesRow {
    /// Its name, as a link to its designs.
    title: CleanHtml,
    known: CleanHtml,
    statuses: Vec<CleanHtml>,
    /// The target of the figures' links.
    id: String,
    /// Its name alone.
    name: String,
    records: Vec<StatusRecords>,
}

/// The records of a series' sheets of one status.
#[derive(Serialize)]
struct StatusRecords {
    id: String,
    status: CleanHtml,
    records: CleanHtml,
}

/// The series, by name. `statuses` are the columns of the table.
pub(super) fn all(here: &Here<'_>, statuses: &[Status], records: &Records<'_>) -> Vec<SeriesRow> {
    let collator = Collator::of_words(here.language());
    let mut series: Vec<(&String, &Census)> = here.book.studies.series.iter().collect();
    series.sort_by(|(a, _), (b, _)| collator.compare(a, b));
    let mut taken = BTreeSet::new();
    let series = (1..).zip(series).map(|(place, (name, census))| {
        // Names in other scripts have no form for an address, and two names may have the same.
        let own = Key::nearest_form(name).map(|key| key.to_string());
        let key = own.filter(|key| taken.insert(key.clone()));
        let key = key.unwrap_or_else(|| format!("{place}."));
        let id = Fragment::Counted("series", Some(&key)).to_string();
        one(here, name, census, id, statuses, records)
    });
    series.collect()
}

fn one(
    here: &Here<'_>,
    name: &str,
    census: &Census,
    id: String,
    statuses: &[Status],
    records: &Records<'_>,
) -> SeriesRow {
    let leading = |id: &str, figure: CleanHtml| CleanHtml::link(&format!("#{id}"), &figure);
    let id_of = |status: Status| format!("{id}.{}", status.word());
    let row_of = |status: Status| census.by.status.iter().find(|r| r.key == Some(status));
    let figure = |status: &Status| match row_of(*status) {
        Some(row) => leading(&id_of(*status), here.sheets(row.sheets)),
        None => CleanHtml::empty(),
    };
    let of_status = |status: &Status| {
        let row = row_of(*status)?;
        let part = Fragment::Counted("status", Some(status.word()));
        Some(StatusRecords {
            id: id_of(*status),
            status: capitalised(&CleanHtml::text(here.status(*status))),
            records: records.behind(here, &row.allowing, part),
        })
    };
    let known = here.sheets(census.sheets);
    SeriesRow {
        title: here.gathered(Overview::Series, name, name),
        known: if census.sheets.at_most == 0 {
            known
        } else {
            leading(&id, known)
        },
        statuses: statuses.iter().map(figure).collect(),
        name: name.to_owned(),
        records: statuses.iter().filter_map(of_status).collect(),
        id,
    }
}
