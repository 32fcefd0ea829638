//! Tables of the census: rows with a figure, its bar and the records behind it.

use serde::Serialize;

use super::census_figures::says_something;
use super::firmness;
use super::sheet_records::Records;
use crate::model::key::Key;
use crate::page::drawings::bars::Bar;
use crate::page::setting::address::Fragment;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::words::Argument;
use crate::study::DesignStudy;
use crate::study::census::Row;

/// A table of sheets by one property.
#[derive(Serialize)]
pub(super) struct Table {
    /// The heading's id.
    pub id: String,
    /// The ids of the properties that its rows count besides: figures elsewhere link to each.
    pub landings: Vec<String>,
    /// The heading.
    pub heading: String,
    /// The head of the first column: "Country".
    pub of: String,
    /// The rows.
    pub rows: Vec<TableRow>,
    /// What stands below the rows; may be empty.
    pub note: CleanHtml,
}

impl Table {
    /// Says beside the records of each row how many of its sheets are not identified firmly. `rows` are those of the
    /// census, in the order of the table.
    pub fn with_firmness(
        mut self,
        here: &Here<'_>,
        study: &DesignStudy,
        rows: &[Row<Key>],
    ) -> Table {
        for (row, counted) in self.rows.iter_mut().zip(rows) {
            let not_firm = firmness::in_words(here, study, &counted.allowing);
            if !not_firm.is_empty() {
                let not_firm = CleanHtml::quiet(&not_firm);
                row.records = CleanHtml::join([&row.records, &not_firm], "; ");
                self.note = CleanHtml::text(here.words().word("not-firm-key"));
            }
        }
        self
    }
}

/// One row of a table.
#[derive(Clone, Serialize)]
pub(super) struct TableRow {
    /// The fragment that figures elsewhere link to; may be empty.
    pub id: String,
    /// Its place among the rows around it.
    pub level: Level,
    /// The value.
    pub name: CleanHtml,
    /// The number of sheets.
    pub sheets: CleanHtml,
    /// The number as a bar.
    pub bar: Bar,
    /// Its records.
    pub records: CleanHtml,
    /// How many designs they are of, where they are so many that the list stays folded; empty where it is open.
    pub summary: String,
}

/// The place of a row among those around it, as a class of its row.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) enum Level {
    /// A row of a table whose rows are all alike.
    Plain,
    /// The sum of the rows below it, up to the next of its kind.
    Group,
    /// A row of such a group; also the sum of those of `Inner` below it.
    Within,
    /// A row of a row within a group.
    Inner,
}

/// A table with its rows in the order given. `name` gives the key of a row (may be empty) and its name.
pub(super) fn table<K>(
    here: &Here<'_>,
    by: &str,
    rows: &[Row<K>],
    records: &Records<'_>,
    name: impl Fn(&K) -> (String, CleanHtml),
) -> Table {
    let words = here.words();
    let rows = if says_something(rows) {
        table_rows(here, by, rows, records, largest(rows), name)
    } else {
        Vec::new()
    };
    Table {
        id: format!("by-{by}"),
        landings: Vec::new(),
        heading: words.word(&format!("by-{by}")).to_owned(),
        of: words.word(&format!("column-{by}")).to_owned(),
        rows,
        note: CleanHtml::empty(),
    }
}

/// The largest number of sheets of a row.
pub(super) fn largest<K>(rows: &[Row<K>]) -> usize {
    rows.iter().map(|row| row.sheets.at_most).max().unwrap_or(0)
}

/// Rows of the census as rows of a table, in the order given; `most` sheets have the longest bar.
pub(super) fn table_rows<K>(
    here: &Here<'_>,
    by: &str,
    rows: &[Row<K>],
    records: &Records<'_>,
    most: usize,
    name: impl Fn(&K) -> (String, CleanHtml),
) -> Vec<TableRow> {
    let words = here.words();
    // Holders and places may be known and withheld.
    let nothing = match by {
        "country" | "city" | "holder" => "not-told",
        _ => "not-recorded",
    };
    let not_recorded = CleanHtml::text(words.word(nothing));
    let row = |row: &Row<K>| {
        let named = row.key.as_ref().map(&name);
        // The row of unrecorded values may be missing from the table of one design, so it links to the
        // status: every sheet has one.
        let (id, part) = match &named {
            None => (
                Fragment::Counted(by, None).to_string(),
                Fragment::Counts("status"),
            ),
            Some((key, _)) if key.is_empty() => (String::new(), Fragment::Counts(by)),
            Some((key, _)) => {
                let own = Fragment::Counted(by, Some(key));
                (own.to_string(), own)
            }
        };
        TableRow {
            sheets: here.sheets(row.sheets),
            bar: Bar::of(row.sheets, most),
            records: records.behind(here, &row.allowing, part),
            summary: records.summary(here, &row.allowing),
            id,
            level: Level::Plain,
            name: named.map_or_else(|| not_recorded.clone(), |(_, name)| name),
        }
    };
    rows.iter().map(row).collect()
}

/// "Northport, Harbour Museum", with the name as a link.
pub(super) fn city_first(here: &Here<'_>, key: &Key) -> CleanHtml {
    let name = here.holder(key);
    let town = here.public().holders.get(key).and_then(|h| h.town.as_ref());
    match town {
        Some(town) => CleanHtml::text(town).then(", ").and(&name),
        None => name,
    }
}

/// "Known as of 15 October 2026: 13 impressions."
pub(super) fn date_line(here: &Here<'_>, sheets: &str) -> String {
    let as_of = here.as_of();
    let sheets = ("sheets", Argument::Text(sheets));
    if as_of.is_empty() {
        here.words().with("census-brief-undated", &[sheets])
    } else {
        here.words()
            .with("census-brief", &[sheets, ("as-of", Argument::Text(&as_of))])
    }
}
