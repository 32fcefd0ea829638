//! Figures of the census, as links to the records they count.

use crate::model::design::Design;
use crate::model::impression::Status;
use crate::model::key::Key;
use crate::model::words::ClosedList as _;
use crate::page::setting::address::{Address, Fragment};
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::study::census::{Census, Row, Sheets};

/// Whether some row has a key, so that the rows make a table.
pub(super) fn says_something<K>(rows: &[Row<K>]) -> bool {
    rows.iter().any(|row| row.key.is_some())
}

/// The figure of a row of a design's census, as a link to its records; empty without such a row.
pub(super) fn total(
    here: &Here<'_>,
    design: &Design,
    by: &str,
    rows: &[Row<Key>],
    key: Option<&Key>,
) -> CleanHtml {
    let part = if says_something(rows) {
        Some(Fragment::Counted(by, key.map(Key::as_str)))
    } else {
        let study = here.book.studies.designs.get(&design.key);
        study.and_then(|study| rows_of_all(&study.census))
    };
    let row = rows.iter().find(|row| row.key.as_ref() == key);
    row.map_or_else(CleanHtml::empty, |row| {
        let page = Address::DesignCensus(design.key.clone());
        figure(here, &page, part, row.sheets)
    })
}

/// The number of all sheets of a census, as a link to the rows by status.
pub(super) fn all(here: &Here<'_>, page: &Address, census: &Census) -> CleanHtml {
    figure(here, page, rows_of_all(census), census.sheets)
}

/// The same, and below it the sheets among them that are not accepted and the number of those that are not shown.
pub(super) fn all_with_notes(
    here: &Here<'_>,
    page: &Address,
    census: &Census,
    not_accepted: &CleanHtml,
    not_shown: usize,
) -> CleanHtml {
    let not_shown = match not_shown {
        0 => String::new(),
        n => here.words().count("counted-not-shown", n),
    };
    let figure = all(here, page, census);
    figure
        .and(&below(not_accepted))
        .and(&below(&CleanHtml::text(&not_shown)))
}

/// A note below a figure; empty for an empty one.
pub(super) fn below(note: &CleanHtml) -> CleanHtml {
    if note.is_empty() {
        CleanHtml::empty()
    } else {
        CleanHtml::span("of-cell", note)
    }
}

/// The rows by status, where every sheet that is shown stands; `None` where none is shown.
fn rows_of_all(census: &Census) -> Option<Fragment<'static>> {
    says_something(&census.by.status).then_some(Fragment::Counts("status"))
}

/// The number of sheets of a status, as a link to its records; empty for none.
pub(super) fn of_status(
    here: &Here<'_>,
    page: &Address,
    census: &Census,
    status: Status,
) -> CleanHtml {
    let row = census.by.status.iter().find(|row| row.key == Some(status));
    let part = Fragment::Counted("status", Some(status.word()));
    row.map_or_else(CleanHtml::empty, |row| {
        figure(here, page, Some(part), row.sheets)
    })
}

/// A figure as a link to the records it counts, or to the page where no part lists them; plain for zero.
fn figure(
    here: &Here<'_>,
    page: &Address,
    part: Option<Fragment<'_>>,
    sheets: Sheets,
) -> CleanHtml {
    let figure = here.sheets(sheets);
    match part {
        _ if sheets.at_most == 0 => figure,
        Some(part) => CleanHtml::link(&here.href_part(page, part), &figure),
        None => here.link(page, &figure),
    }
}
