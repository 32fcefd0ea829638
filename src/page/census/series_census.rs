//! The series in the census: how many sheets of each are known, with the records of every figure. Where printings came out
//! in a series, their sheets are counted, else all sheets of its designs.

use std::collections::BTreeSet;

use serde::Serialize;

use super::sheet_records::Records;
use crate::model::impression::Status;
use crate::model::key::Key;
use crate::model::series_place::SeriesRef;
use crate::model::words::ClosedList as _;
use crate::page::setting::address::Fragment;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, capitalised};
use crate::study::census::Census;
use crate::study::order::Collator;

/// The table of series.
#[derive(Serialize)]
pub(super) struct SeriesTable {
    /// The statuses that sheets of some series have, as heads of columns.
    statuses: Vec<CleanHtml>,
    rows: Vec<SeriesRow>,
}

/// One series.
#[derive(Serialize)]
struct SeriesRow {
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

/// The series with designs, by name; `None` without any.
pub(super) fn table(here: &Here<'_>, records: &Records<'_>) -> Option<SeriesTable> {
    let collator = Collator::of_words(here.language());
    let series = here.book.studies.series.iter();
    let mut series: Vec<(String, &SeriesRef, &Census)> = series
        .filter(|(_, study)| study.known() > 0)
        .map(|(of, study)| (here.series_name(of), of, &study.census))
        .collect();
    series.sort_by(|(a, ..), (b, ..)| collator.compare(a, b));
    let occurs = |status: &Status| {
        let mut of_series = series.iter().flat_map(|(_, _, census)| &census.by.status);
        of_series.any(|row| row.key == Some(*status))
    };
    let statuses: Vec<Status> = Status::ALL.iter().copied().filter(occurs).collect();
    // The keys of records are taken first.
    let recorded = series.iter().filter_map(|(_, of, _)| of.key());
    let mut taken: BTreeSet<String> = recorded.map(ToString::to_string).collect();
    let series = (1..).zip(series).map(|(place, (name, of, census))| {
        // Names in other scripts have no form for an address, and two names may have the same.
        let key = of.key().map(ToString::to_string).or_else(|| {
            let own = Key::nearest_form(&name).map(|key| key.to_string());
            own.filter(|key| taken.insert(key.clone()))
        });
        let key = key.unwrap_or_else(|| format!("{place}."));
        let id = Fragment::Counted("series", Some(&key)).to_string();
        let title = here.series(of);
        one(
            here,
            (name, title),
            census,
            id,
            (statuses.as_slice(), records),
        )
    });
    let rows: Vec<SeriesRow> = series.collect();
    (!rows.is_empty()).then(|| SeriesTable {
        statuses: statuses.iter().map(|s| head(here, *s)).collect(),
        rows,
    })
}

/// The head of a column of sheets of a status.
pub(super) fn head(here: &Here<'_>, status: Status) -> CleanHtml {
    capitalised(&CleanHtml::text(here.status(status)))
}

fn one(
    here: &Here<'_>,
    (name, title): (String, CleanHtml),
    census: &Census,
    id: String,
    (statuses, records): (&[Status], &Records<'_>),
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
            status: head(here, *status),
            records: records.behind(here, &row.allowing, part),
        })
    };
    let known = here.sheets(census.sheets);
    SeriesRow {
        title,
        known: if census.sheets.at_most == 0 {
            known
        } else {
            leading(&id, known)
        },
        statuses: statuses.iter().map(figure).collect(),
        name,
        records: statuses.iter().filter_map(of_status).collect(),
        id,
    }
}
