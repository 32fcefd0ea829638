//! Counts: rows of the census as tables, each figure with its bar and the records behind it.

use std::collections::{BTreeMap, BTreeSet};

use serde::Serialize;

use super::address::{Address, Fragment};
use super::bars::Bar;
use super::book::Here;
use super::html::CleanHtml;
use super::words::Given;
use crate::model::design::Design;
use crate::model::holder::HolderKind;
use crate::model::impression::Status;
use crate::model::key::{ImpressionKey, Key};
use crate::model::vocabulary::{CountingClass, List as Vocabulary};
use crate::model::words::ClosedList as _;
use crate::study::census::{Census, Row, Sheets, is_counted};
use crate::study::order::Collator;

/// One table: the sheets by one thing.
#[derive(Serialize)]
pub(super) struct Table {
    /// The heading's id.
    pub id: String,
    /// By what.
    pub heading: String,
    /// What a row is: "Country".
    pub of: String,
    /// The rows.
    pub rows: Vec<TableRow>,
}

/// One row of a table.
#[derive(Serialize)]
pub(super) struct TableRow {
    /// What figures elsewhere lead to; empty where none does.
    pub id: String,
    /// The value.
    pub name: CleanHtml,
    /// How many sheets.
    pub sheets: CleanHtml,
    /// The same as a bar.
    pub bar: Bar,
    /// The records behind the figure.
    pub records: CleanHtml,
}

/// The published records of each sheet, by its first record.
pub(super) struct Records<'a> {
    of: BTreeMap<ImpressionKey, Vec<&'a ImpressionKey>>,
    /// Whether records are told by design with a number each, as beyond some hundreds no list helps.
    is_long: bool,
}

/// Beyond this many records in one row a page names the designs and how many of each.
const HANDLES: usize = 60;

impl<'a> Records<'a> {
    /// The records of some designs that count.
    pub fn of(here: &Here<'a>, designs: impl Iterator<Item = &'a Design>) -> Records<'a> {
        let mut of: BTreeMap<ImpressionKey, Vec<&ImpressionKey>> = BTreeMap::new();
        for design in designs {
            for impression in design.impressions.values() {
                if is_counted(design, impression) {
                    let first = here.book.studies.groups.first_of(&impression.key);
                    of.entry(first).or_default().push(&impression.key);
                }
            }
        }
        Records { of, is_long: false }
    }

    /// The same for a table of a whole catalogue.
    pub fn by_design(mut self) -> Records<'a> {
        self.is_long = true;
        self
    }

    /// The records of some sheets, and how many sheets have none that is published. Where designs
    /// stand for them, each leads to `part` of its census.
    pub fn behind(
        &self,
        here: &Here<'_>,
        sheets: &[ImpressionKey],
        part: Fragment<'_>,
    ) -> CleanHtml {
        let mut records: Vec<&ImpressionKey> = sheets
            .iter()
            .filter_map(|sheet| self.of.get(sheet))
            .flatten()
            .copied()
            .collect();
        let order = &here.book.studies.order;
        records.sort_by_key(|key| order.impression_rank(key));
        let shown = if self.is_long && records.len() > HANDLES {
            designs_with_numbers(here, &records, part)
        } else {
            here.handles(records)
        };
        let hidden = sheets.iter().filter(|s| !self.of.contains_key(s)).count();
        let hidden = match hidden {
            0 => CleanHtml::empty(),
            n => Here::quiet(&here.words().count("counted-not-shown", n)),
        };
        CleanHtml::join([&shown, &hidden], "; ")
    }
}

/// "7 (24), 8 (6)", each leading to the census of the design.
fn designs_with_numbers(
    here: &Here<'_>,
    records: &[&ImpressionKey],
    part: Fragment<'_>,
) -> CleanHtml {
    let mut designs: Vec<(&Key, usize)> = Vec::new();
    for key in records {
        match designs.last_mut() {
            Some((design, n)) if **design == key.design => *n += 1,
            _ => designs.push((&key.design, 1)),
        }
    }
    let parts: Vec<CleanHtml> = designs
        .into_iter()
        .filter_map(|(key, n)| {
            let design = here.public().designs.get(key)?;
            let to = here.href_part(&Address::DesignCensus(key.clone()), part);
            let link = CleanHtml::link(&to, &CleanHtml::text(&design.number));
            Some(link.then(&format!(" ({n})")))
        })
        .collect();
    CleanHtml::join(&parts, ", ")
}

/// The tables of a census that do not depend on one design: status, class, kind, country, city, holder.
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
    // Status and class have an order of their own.
    sort_rows(here, census, tables.get_mut(2..).unwrap_or_default());
    tables.retain(|table| !table.rows.is_empty());
    tables
}

/// Sorts rows by name: private collections after those of cities, what is not known at the end.
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

/// Whether rows say more than that nothing is recorded, so that they make a table.
fn says_something<K>(rows: &[Row<K>]) -> bool {
    rows.iter().any(|row| row.key.is_some())
}

/// A table with its rows in the order given. `name` gives the key of a row (empty: it has none) and what
/// it is called.
pub(super) fn table<K>(
    here: &Here<'_>,
    by: &str,
    rows: &[Row<K>],
    records: &Records<'_>,
    name: impl Fn(&K) -> (String, CleanHtml),
) -> Table {
    let words = here.words();
    // Of holders and places some are known and withheld.
    let nothing = match by {
        "country" | "city" | "holder" => "not-told",
        _ => "not-recorded",
    };
    let not_recorded = CleanHtml::text(words.word(nothing));
    let most = rows.iter().map(|row| row.sheets.at_most).max().unwrap_or(0);
    let row = |row: &Row<K>| {
        let named = row.key.as_ref().map(&name);
        // What is not recorded of one design may stand in a table of another only: every sheet has a
        // status.
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
    }
}

/// "Northport, Harbour Museum", the name leading to the holder.
pub(super) fn city_first(here: &Here<'_>, key: &Key) -> CleanHtml {
    let name = here.holder(key);
    let town = here.public().holders.get(key).and_then(|h| h.town.as_ref());
    match town {
        Some(town) => CleanHtml::text(town).then(", ").and(&name),
        None => name,
    }
}

/// How many sheets a row of the census of a design has, leading to the records beside that row; nothing
/// where there is no such row.
pub(super) fn total(
    here: &Here<'_>,
    design: &Design,
    by: &str,
    rows: &[Row<Key>],
    key: Option<&Key>,
) -> CleanHtml {
    let part = if says_something(rows) {
        Fragment::Counted(by, key.map(Key::as_str))
    } else {
        Fragment::Counts("status")
    };
    let row = rows.iter().find(|row| row.key.as_ref() == key);
    row.map_or_else(CleanHtml::empty, |row| {
        let page = Address::DesignCensus(design.key.clone());
        figure(here, &page, part, row.sheets)
    })
}

/// How many sheets there are in all, leading to the rows by status: every sheet has one.
pub(super) fn all(here: &Here<'_>, page: &Address, sheets: Sheets) -> CleanHtml {
    figure(here, page, Fragment::Counts("status"), sheets)
}

/// How many sheets have a status, leading to the records beside that row; nothing for none.
pub(super) fn of_status(
    here: &Here<'_>,
    page: &Address,
    census: &Census,
    status: Status,
) -> CleanHtml {
    let row = census.by.status.iter().find(|row| row.key == Some(status));
    let part = Fragment::Counted("status", Some(status.word()));
    row.map_or_else(CleanHtml::empty, |row| figure(here, page, part, row.sheets))
}

/// A figure that leads to the records it counts, where it counts any.
fn figure(here: &Here<'_>, page: &Address, part: Fragment<'_>, sheets: Sheets) -> CleanHtml {
    let figure = here.sheets(sheets);
    if sheets.at_most == 0 {
        figure
    } else {
        CleanHtml::link(&here.href_part(page, part), &figure)
    }
}

/// A pair of records that may be, or are, one sheet.
#[derive(Serialize)]
pub(super) struct Pair {
    /// The records: "14.20 and 14.21".
    pub records: CleanHtml,
    /// Why.
    pub why: Vec<String>,
}

/// The pairs of records of some designs that may be one sheet, each once.
pub(super) fn open_pairs<'a>(
    here: &Here<'_>,
    designs: impl Iterator<Item = &'a Design>,
) -> Vec<Pair> {
    let mut seen: BTreeSet<(&ImpressionKey, &ImpressionKey)> = BTreeSet::new();
    let mut pairs = Vec::new();
    for impression in designs.flat_map(|d| d.impressions.values()) {
        for other in &impression.maybe_same_as {
            let (a, b) = (&impression.key, &other.impression.value);
            let is_published = here.public().impression(b).is_some();
            if !is_published || !seen.insert((a.min(b), a.max(b))) {
                continue;
            }
            pairs.push(Pair {
                records: super::readings::together(
                    here,
                    &[here.impression(a.min(b)), here.impression(a.max(b))],
                ),
                why: other.why.clone().into_iter().collect(),
            });
        }
    }
    pairs
}

/// "Known: 13 sheets, as of 15 October 2026."
pub(super) fn date_line(here: &Here<'_>, sheets: &str) -> String {
    let as_of = here.as_of();
    let sheets = ("sheets", Given::Text(sheets));
    if as_of.is_empty() {
        here.words().with("census-brief-undated", &[sheets])
    } else {
        here.words()
            .with("census-brief", &[sheets, ("as-of", Given::Text(&as_of))])
    }
}
