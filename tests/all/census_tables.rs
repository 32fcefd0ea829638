//! The census as tables for other programs: they contain the same figures as its pages.

use std::collections::BTreeMap;

use keyblock::page::Site;

use crate::census_figures::{cells, censuses, shown};
use crate::census_pages::{FERRY, part};
use crate::pages::{page, site, site_of};
use crate::program::copy_of;

/// The rows of a table, each by its heads.
fn table(site: &Site, path: &str) -> Vec<BTreeMap<String, String>> {
    let mut reader = csv::Reader::from_reader(site.files[path].as_slice());
    let heads = reader.headers().unwrap().clone();
    let rows = reader.records().map(|row| {
        let row = row.unwrap();
        let cells = heads.iter().zip(row.iter());
        cells
            .map(|(head, cell)| (head.to_owned(), cell.to_owned()))
            .collect()
    });
    rows.collect()
}

/// The rows of a table whose cells have these values.
fn rows_with<'t>(
    table: &'t [BTreeMap<String, String>],
    wanted: &[(&str, &str)],
) -> Vec<&'t BTreeMap<String, String>> {
    let is_wanted = |row: &&BTreeMap<String, String>| {
        let mut wanted = wanted.iter();
        wanted.all(|(head, cell)| row[*head] == *cell)
    };
    table.iter().filter(is_wanted).collect()
}

/// A figure as pages show it: "14", "13–14", "≥13–40".
fn figure(row: &BTreeMap<String, String>) -> String {
    let bound = if row["exact"] == "true" { "" } else { "≥" };
    if row["at_least"] == row["at_most"] {
        row["at_most"].clone()
    } else {
        format!("{bound}{}–{}", row["at_least"], row["at_most"])
    }
}

/// The visible text of a cell: without what a screen reader reads in its place, and without records.
fn seen(cell: &str) -> String {
    let visible = cell.split("<span class=\"unseen\">").next().unwrap();
    shown(visible.split("<span class=\"of-cell\">").next().unwrap())
}

fn sorted(figures: impl Iterator<Item = String>) -> Vec<String> {
    let mut figures: Vec<String> = figures.filter(|figure| !figure.is_empty()).collect();
    figures.sort();
    figures
}

/// The figures of `all` that are not in `others`, each as often as it is missing.
fn without(all: &[String], others: &[String]) -> Vec<String> {
    let mut others = others.to_vec();
    let is_missing = |figure: &&String| match others.iter().position(|other| other == *figure) {
        Some(at) => {
            others.swap_remove(at);
            false
        }
        None => true,
    };
    all.iter().filter(is_missing).cloned().collect()
}

#[test]
fn every_table_of_a_page_stands_in_the_file_beside_it() {
    let folder = copy_of("demo-site");
    let site = site(folder.path());
    let mut met: BTreeMap<&str, usize> = BTreeMap::new();
    for address in censuses(&site) {
        let text = page(&site, address);
        let all = table(&site, &format!("{address}census.csv"));
        let design = address.strip_prefix("design/");
        let design = design.map_or("", |rest| rest.split('/').next().unwrap());
        let own = rows_with(&all, &[("design", design), ("series", "")]);
        let figures = |by: &str| {
            let rows = own.iter().filter(|row| row["by"] == by);
            sorted(rows.map(|row| figure(row)))
        };
        // Tables in groups: a figure of each group and of each row in it, and of a town where it has several holders.
        for (by, around, between) in [("kind", "class", "kind"), ("holder", "country", "city")] {
            let id = format!("by-{by}");
            if text.contains(&format!("id=\"{id}\"")) {
                *met.entry(by).or_default() += 1;
                let shown = sorted(cells(part(text, &id)).map(seen));
                for level in [by, around] {
                    let missing = without(&figures(level), &shown);
                    assert!(missing.is_empty(), "{address} {by}: {level} {missing:?}");
                }
                let levels = [by, around, between].map(figures).concat();
                let unknown = without(&shown, &levels);
                assert!(unknown.is_empty(), "{address} {by}: {unknown:?}");
            }
        }
        for by in ["status", "state", "printing"] {
            let id = format!("by-{by}");
            if text.contains(&format!("id=\"{id}\"")) {
                *met.entry(by).or_default() += 1;
                assert_eq!(
                    sorted(cells(part(text, &id)).map(seen)),
                    figures(by),
                    "{address} {by}"
                );
            }
        }
        for (id, by) in [("crossing", "state-printing"), ("holding", "holder-state")] {
            if text.contains(&format!("id=\"{id}\"")) {
                *met.entry(by).or_default() += 1;
                // Without the totals: a row's last, and the foot.
                let body = part(text, id).split("</tbody>").next().unwrap();
                let rows = body.split("<tr>").skip(2).flat_map(|row| {
                    let cells: Vec<String> = cells(row).map(seen).collect();
                    cells[..cells.len() - 1].to_vec()
                });
                let shown = sorted(rows.map(|cell| cell.trim_matches('–').to_owned()));
                assert_eq!(shown, figures(by), "{address} {by}");
            }
        }
        if text.contains("id=\"seen\"") {
            *met.entry("seen").or_default() += 1;
            let figures = sorted(
                [figures("first-met"), figures("met-again")]
                    .concat()
                    .into_iter(),
            );
            assert_eq!(
                sorted(cells(part(text, "seen")).map(seen)),
                figures,
                "{address}"
            );
        }
    }
    for (by, least) in [
        ("status", 29),
        ("state-printing", 3),
        ("holder-state", 5),
        ("seen", 20),
    ] {
        assert!(met.get(by).is_some_and(|n| *n >= least), "{by}: {met:?}");
    }
}

#[test]
fn declared_editions_stand_in_a_file_of_their_own() {
    let folder = copy_of("demo-site");
    let site = site(folder.path());
    let declared = part(page(&site, "census/"), "declared-editions");
    let all = table(&site, "census/editions.csv");
    let rows: Vec<_> = all
        .iter()
        .filter(|row| !(row["declared"].is_empty() && row["printed"].is_empty()))
        .collect();
    let lines: Vec<&str> = declared.split("<tr>").skip(2).collect();
    assert_eq!(lines.len(), rows.len());
    let some = |row: &BTreeMap<String, String>, head: &str| {
        let figure = row[head].clone();
        if figure == "0" { String::new() } else { figure }
    };
    for (line, row) in lines.iter().zip(&rows) {
        let known = match (&row["at_least"], &row["at_most"]) {
            (least, most) if least == most => most.clone(),
            (least, most) => format!("{least}–{most}"),
        };
        // An uncertain size has a question mark on the page alone.
        let plain = |cell: &str| seen(cell).trim_end_matches('?').to_owned();
        let figures: Vec<String> = cells(line).map(plain).collect();
        let wanted = [
            row["declared"].clone(),
            row["printed"].clone(),
            known,
            row["met"].clone(),
            some(row, "above"),
            some(row, "repeated"),
        ];
        assert_eq!(figures, wanted, "{row:?}");
        assert!(line.contains(&row["name"].replace('&', "&amp;")), "{row:?}");
    }
    // What stands beside a design is what everything says of it, and pages without editions have no file.
    for address in censuses(&site)
        .into_iter()
        .filter(|a| a.starts_with("design/"))
    {
        let key = address.split('/').nth(1).unwrap();
        let link = page(&site, address).contains("href=\"./editions.csv\"");
        let path = format!("{address}editions.csv");
        assert_eq!(link, site.files.contains_key(&path), "{address}");
        if link {
            let own = table(&site, &path);
            let of_all = rows_with(&all, &[("design", key)]);
            assert_eq!(own.iter().collect::<Vec<_>>(), of_all);
        }
    }
}

#[test]
fn which_numbers_were_met_is_told_and_what_is_not_accepted_is_marked() {
    let rejected = "-- records/designs/2/design.toml\ntitles = [{ text = \"The Crane\" }]\n\
         standing = \"rejected\"\nwhy = \"By another hand.\"\n\
         -- records/designs/2/impressions/1.toml\nstatus = \"located\"\nholder = \"museum\"\n";
    let site = site_of(&[FERRY, rejected]);
    let editions = table(&site, "design/1/census/editions.csv");
    assert_eq!(editions.len(), 1);
    assert_eq!(editions[0]["numbers_met"], "3 12");
    assert_eq!(
        (
            editions[0]["declared"].as_str(),
            editions[0]["missing"].as_str()
        ),
        ("50", "48")
    );
    let all = table(&site, "census/census.csv");
    let total = |design: &str| {
        let rows = rows_with(&all, &[("design", design), ("series", ""), ("by", "all")]);
        (rows[0]["at_most"].clone(), rows[0]["standing"].clone())
    };
    let text = |n: &str, standing: &str| (n.to_owned(), standing.to_owned());
    assert_eq!(total(""), text("5", ""));
    assert_eq!(total("1"), text("5", "accepted"));
    assert_eq!(total("2"), text("1", "rejected"));
}
