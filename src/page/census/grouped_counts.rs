//! Tables of the census whose rows stand in groups: kinds of impression in the classes in which they count, holders in
//! their countries and towns. Each group has its own figure; the records stand at the rows within it.

use std::collections::{BTreeMap, BTreeSet};

use super::census_figures::says_something;
use super::counts::{self, Level, Table, TableRow, largest, table, table_rows};
use super::sheet_records::Records;
use crate::model::holder::HolderKind;
use crate::model::impression::Status;
use crate::model::key::Key;
use crate::model::vocabulary::{CountingClass, List as Vocabulary};
use crate::model::words::ClosedList as _;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::study::census::{Census, Row};
use crate::study::order::Collator;

/// The tables of a census that do not depend on a design: status; kinds in their classes; holders in their places.
pub(super) fn tables(here: &Here<'_>, census: &Census, records: &Records<'_>) -> Vec<Table> {
    let words = here.words();
    let status = |status: &Status| {
        let name = CleanHtml::text(here.status(*status));
        (status.word().to_owned(), name)
    };
    let mut status = table(here, "status", &census.by.status, records, status);
    // A sheet that is not shown has no status, so the rows do not add up to all.
    let not_shown = records.not_shown(census);
    if not_shown > 0 {
        status.note = CleanHtml::text(&words.count("not-in-these-rows", not_shown));
    }
    let mut tables = vec![
        status,
        kinds(here, census, records),
        places(here, census, records),
    ];
    tables.retain(|table| !table.rows.is_empty());
    tables
}

/// Kinds of impression, in the classes in which they count.
fn kinds(here: &Here<'_>, census: &Census, records: &Records<'_>) -> Table {
    let words = here.words();
    let class = |class: &CountingClass| {
        let name = CleanHtml::text(words.listed("class", *class));
        (class.word().to_owned(), name)
    };
    let kind = |key: &Key| {
        let name = CleanHtml::text(&here.term(Vocabulary::Kinds, key.as_str()));
        (key.to_string(), name)
    };
    // Sums and their rows are drawn to one scale.
    let most = largest(&census.by.class);
    let classes = with_keys(
        &census.by.class,
        table_rows(here, "class", &census.by.class, records, most, class),
    );
    let mut kinds = with_keys(
        &census.by.kind,
        table_rows(here, "kind", &census.by.kind, records, most, kind),
    );
    sort(here, &mut kinds, |_| false);
    let mut rows = Vec::new();
    for (class, group) in classes {
        let is_of_class = |kind: Option<&Key>| {
            kind.map(|kind| here.public().vocabularies.class_of(kind)) == class.copied()
        };
        let of_class: Vec<TableRow> = kinds
            .iter()
            .filter(|(kind, _)| is_of_class(*kind))
            .map(|(_, row)| within(row, Level::Within))
            .collect();
        if class.is_none() || of_class.is_empty() {
            rows.push(group);
        } else {
            rows.push(sum_of(group));
            rows.extend(of_class);
        }
    }
    grouped(
        here,
        ("kind", "kind"),
        &["class"],
        rows,
        says_something(&census.by.kind),
    )
}

/// Holders, in their countries and towns. A town has a row of its own where it has several holders.
fn places(here: &Here<'_>, census: &Census, records: &Records<'_>) -> Table {
    let by = &census.by;
    let country = |key: &String| (key.clone(), CleanHtml::text(here.country(key)));
    let city = |key: &String| (String::new(), CleanHtml::text(key));
    let holder = |key: &Key| (key.to_string(), counts::city_first(here, key));
    let most = largest(&by.country).max(largest(&by.holder));
    let mut countries = with_keys(
        &by.country,
        table_rows(here, "country", &by.country, records, most, country),
    );
    let cities: BTreeMap<Option<&String>, TableRow> = with_keys(
        &by.city,
        table_rows(here, "city", &by.city, records, most, city),
    )
    .into_iter()
    .collect();
    let mut holders = with_keys(
        &by.holder,
        table_rows(here, "holder", &by.holder, records, most, holder),
    );
    sort(here, &mut countries, |_| false);
    let kept = &here.public().holders;
    sort(here, &mut holders, |key| {
        kept.get(key)
            .is_some_and(|holder| holder.kind == HolderKind::Private)
    });
    let country_of = |key: &Key| {
        kept.get(key)
            .and_then(|holder| Some(&holder.country.as_ref()?.value))
    };
    let town_of = |key: &Key| {
        kept.get(key)
            .and_then(|holder| Some(&holder.town.as_ref()?.value))
    };
    // A town of one name in two countries has one figure for both, which is that of neither.
    let has_one_country = |town: &String| {
        let of_town = holders.iter().filter_map(|(key, _)| *key);
        let of_town = of_town.filter(|key| town_of(key) == Some(town));
        of_town.map(country_of).collect::<BTreeSet<_>>().len() == 1
    };
    let mut rows = Vec::new();
    for (country, group) in countries {
        let here_kept: Vec<(Option<&Key>, &TableRow)> = holders
            .iter()
            .filter(|(key, _)| key.and_then(country_of) == country)
            .map(|(key, row)| (*key, row))
            .collect();
        // What is not told stands once, without a group.
        let is_alone = matches!(here_kept.as_slice(), [(None, _)]);
        if !is_alone {
            rows.push(if here_kept.is_empty() {
                group
            } else {
                sum_of(group)
            });
        }
        let town = |key: Option<&Key>| key.and_then(town_of);
        for of_town in here_kept.chunk_by(|(a, _), (b, _)| town(*a) == town(*b)) {
            let shared = of_town.first().and_then(|(key, _)| town(*key));
            let shared = shared.filter(|town| of_town.len() > 1 && has_one_country(town));
            let sum = shared.and_then(|town| cities.get(&Some(town)));
            rows.extend(sum.map(|row| sum_of(within(row, Level::Within))));
            for (key, row) in of_town {
                let mut row = within(
                    row,
                    if sum.is_some() {
                        Level::Inner
                    } else {
                        Level::Within
                    },
                );
                if let Some(key) = key.filter(|_| sum.is_some()) {
                    row.name = here.holder(key);
                }
                if is_alone {
                    row.level = Level::Plain;
                }
                rows.push(row);
            }
        }
    }
    let is_said =
        says_something(&by.holder) || says_something(&by.country) || says_something(&by.city);
    grouped(
        here,
        ("holder", "place"),
        &["city", "country"],
        rows,
        is_said,
    )
}

/// The rows of a table with the keys that they count.
fn with_keys<K>(rows: &[Row<K>], shown: Vec<TableRow>) -> Vec<(Option<&K>, TableRow)> {
    rows.iter().map(|row| row.key.as_ref()).zip(shown).collect()
}

/// Sorts rows by name: those of keys that stand late after the others, unknown values last.
fn sort<K>(here: &Here<'_>, rows: &mut [(Option<&K>, TableRow)], is_late: impl Fn(&K) -> bool) {
    let collator = Collator::of_words(here.language());
    rows.sort_by(|(a, one), (b, other)| {
        let place = |key: Option<&K>| (key.is_none(), key.is_some_and(&is_late));
        place(*a)
            .cmp(&place(*b))
            .then_with(|| collator.compare(&one.name.plain(), &other.name.plain()))
    });
}

/// The row of a group: its figure is the sum of rows that name the records.
fn sum_of(row: TableRow) -> TableRow {
    TableRow {
        level: if row.level == Level::Plain {
            Level::Group
        } else {
            row.level
        },
        records: CleanHtml::empty(),
        summary: String::new(),
        ..row
    }
}

fn within(row: &TableRow, level: Level) -> TableRow {
    TableRow {
        level,
        ..row.clone()
    }
}

/// A table of rows in groups, which count `by` and `others`, under the words of `named`; empty where no row says
/// anything.
fn grouped(
    here: &Here<'_>,
    (by, named): (&str, &str),
    others: &[&str],
    rows: Vec<TableRow>,
    is_said: bool,
) -> Table {
    let words = here.words();
    Table {
        id: format!("by-{by}"),
        landings: others.iter().map(|other| format!("by-{other}")).collect(),
        heading: words.word(&format!("by-{named}")).to_owned(),
        of: words.word(&format!("column-{named}")).to_owned(),
        rows: if is_said { rows } else { Vec::new() },
        note: CleanHtml::empty(),
    }
}
