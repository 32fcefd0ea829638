//! Tables of the census: rows with a figure, its bar and the records behind it.

use std::collections::BTreeSet;

use serde::Serialize;

use super::census_figures::says_something;
use super::firmness;
use super::sheet_records::Records;
use crate::model::holder::HolderKind;
use crate::model::impression::Status;
use crate::model::key::Key;
use crate::model::vocabulary::{CountingClass, List as Vocabulary};
use crate::model::words::ClosedList as _;
use crate::page::drawings::bars::Bar;
use crate::page::setting::address::Fragment;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::words::Argument;
use crate::study::DesignStudy;
use crate::study::census::{Census, Row};
use crate::study::order::Collator;

/// A table of sheets by one property.
#[derive(Serialize)]
pub(super) struct Table {
    /// The heading's id.
    pub id: String,
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
#[derive(Serialize)]
pub(super) struct TableRow {
    /// The fragment that figures elsewhere link to; may be empty.
    pub id: String,
    /// The value.
    pub name: CleanHtml,
    /// The number of sheets.
    pub sheets: CleanHtml,
    /// The number as a bar.
    pub bar: Bar,
    /// Its records.
    pub records: CleanHtml,
}

/// The tables of a census that do not depend on a design: status, class, kind, country, city, holder.
pub(super) fn tables(here: &Here<'_>, census: &Census, records: &Records<'_>) -> Vec<Table> {
    let words = here.words();
    let kind = |key: &Key| {
        let name = CleanHtml::text(&here.term(Vocabulary::Kinds, key.as_str()));
        (key.to_string(), name)
    };
    let class = |class: &CountingClass| {
        let name = CleanHtml::text(words.listed("class", *class));
        (class.word().to_owned(), name)
    };
    let status = |status: &Status| {
        let name = CleanHtml::text(here.status(*status));
        (status.word().to_owned(), name)
    };
    let country = |key: &String| (key.clone(), CleanHtml::text(here.country(key)));
    let city = |key: &String| (String::new(), CleanHtml::text(key));
    let holder = |key: &Key| (key.to_string(), city_first(here, key));
    let mut tables = vec![
        table(here, "status", &census.by.status, records, status),
        table(here, "class", &census.by.class, records, class),
        table(here, "kind", &census.by.kind, records, kind),
        table(here, "country", &census.by.country, records, country),
        table(here, "city", &census.by.city, records, city),
        table(here, "holder", &census.by.holder, records, holder),
    ];
    // Status and class keep the order of their lists.
    sort_rows(here, census, tables.get_mut(2..).unwrap_or_default());
    // A sheet that is not shown has no status, so the rows do not add up to all.
    let not_shown = records.not_shown(census);
    if let Some(status) = tables.first_mut().filter(|_| not_shown > 0) {
        status.note = CleanHtml::text(&words.count("not-in-these-rows", not_shown));
    }
    tables.retain(|table| !table.rows.is_empty());
    tables
}

/// Sorts rows by name: private collections after those of cities, unknown values last.
fn sort_rows(here: &Here<'_>, census: &Census, tables: &mut [Table]) {
    let collator = Collator::of_words(here.language());
    let unnamed = ["not-recorded", "not-told"].map(|word| here.words().word(word));
    let is_private = |key: &&Key| {
        let holder = here.public().holders.get(*key);
        holder.is_some_and(|holder| holder.kind == HolderKind::Private)
    };
    let holders = census.by.holder.iter().filter_map(|row| row.key.as_ref());
    let private = holders.filter(is_private);
    let private: BTreeSet<String> = private.map(|key| city_first(here, key).plain()).collect();
    for table in tables {
        table.rows.sort_by(|a, b| {
            let name = |row: &TableRow| row.name.plain();
            let is_late = |row: &TableRow| {
                let is_unnamed = unnamed.contains(&row.name.as_str());
                (is_unnamed, private.contains(&name(row)))
            };
            is_late(a)
                .cmp(&is_late(b))
                .then_with(|| collator.compare(&name(a), &name(b)))
        });
    }
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
    // Holders and places may be known and withheld.
    let nothing = match by {
        "country" | "city" | "holder" => "not-told",
        _ => "not-recorded",
    };
    let not_recorded = CleanHtml::text(words.word(nothing));
    let most = rows.iter().map(|row| row.sheets.at_most).max().unwrap_or(0);
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
            id,
            name: named.map_or_else(|| not_recorded.clone(), |(_, name)| name),
        }
    };
    let rows = if says_something(rows) {
        rows.iter().map(row).collect()
    } else {
        Vec::new()
    };
    Table {
        id: format!("by-{by}"),
        heading: words.word(&format!("by-{by}")).to_owned(),
        of: words.word(&format!("column-{by}")).to_owned(),
        rows,
        note: CleanHtml::empty(),
    }
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

/// "Known: 13 impressions, as of 15 October 2026."
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
