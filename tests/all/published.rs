//! Values published elsewhere, each with its source.
//!
//! The tables are in `tests/checks/`; the first line of each names the source of its values.

use keyblock::model::edtf::parts::{CalendarDate as EdtfDate, Edtf, IntervalEndpoint, Qualifier};
use keyblock::model::edtf::{Date, Edge};

/// The dates of the Library of Congress EDTF page of 2019-02-04 (ISO 8601-2:2019, Annex A), and
/// some more under the same rules.
const EDTF: &str = include_str!("../checks/edtf.csv");
const EDTF_INVALID: &str = include_str!("../checks/edtf_invalid.csv");
const EDTF_ORDER: &str = include_str!("../checks/edtf_order.csv");
const EDTF_SEASONS: &str = include_str!("../checks/edtf_seasons.csv");
/// The numbers of the Art & Architecture Thesaurus that were looked up.
const AAT: &str = include_str!("../checks/aat_terms.csv");

/// Source: `tests/checks/edtf.csv`, columns `earliest` and `latest`.
#[test]
fn dates_begin_and_end_where_the_standard_says() {
    let rows = rows(EDTF);
    assert_eq!(rows.len(), 64);
    let mut conventions = 0;
    for row in &rows {
        let date = parsed(&row[0]);
        if row[3] == "convention" {
            // The standard gives seasons no months; another test checks those of the program.
            conventions += 1;
            assert!(date.is_loose(), "{} may contradict nothing", row[0]);
            continue;
        }
        assert_eq!(edge(date.earliest()), row[3], "earliest of {}", row[0]);
        assert_eq!(edge(date.latest()), row[4], "latest of {}", row[0]);
    }
    assert_eq!(conventions, 3);
}

/// Source: `tests/checks/edtf.csv`, column `level`: the least level that allows the expression.
#[test]
fn dates_are_of_the_level_the_standard_gives_them() {
    for row in rows(EDTF) {
        assert_eq!(
            parsed(&row[0]).edtf().level().to_string(),
            row[1],
            "{}",
            row[0]
        );
    }
}

/// Source: `tests/checks/edtf.csv`, column `qualifier`.
#[test]
fn qualifiers_cover_what_the_standard_says() {
    for row in rows(EDTF) {
        assert_eq!(qualifiers(parsed(&row[0]).edtf()), row[5], "{}", row[0]);
    }
}

/// A date is kept as it was written.
#[test]
fn dates_are_shown_as_they_were_written() {
    for row in rows(EDTF) {
        assert_eq!(parsed(&row[0]).as_str(), row[0]);
    }
}

/// Source: `tests/checks/edtf_invalid.csv`. The one disputed string (`/`, both ends empty) is
/// refused, as three of four implementations do.
#[test]
fn what_is_no_date_is_refused() {
    let rows = rows(EDTF_INVALID);
    assert_eq!(rows.len(), 32);
    for row in rows {
        let text: String = serde_json::from_str(&row[0]).unwrap();
        let fault = Date::parse(&text).expect_err(&row[2]);
        assert!(fault.offset <= text.len(), "{text:?}");
        assert!(!fault.reason.is_empty(), "{text:?}");
    }
}

/// Source: `tests/checks/edtf_order.csv`.
#[test]
fn order_under_uncertainty_is_what_the_bounds_allow() {
    let rows = rows(EDTF_ORDER);
    assert_eq!(rows.len(), 15);
    for row in rows {
        let (a, b) = (parsed(&row[0]), parsed(&row[1]));
        assert_eq!(
            a.certainly_before(&b),
            row[2] == "yes",
            "{a} certainly before {b}"
        );
        assert_eq!(
            a.possibly_before(&b),
            row[3] == "yes",
            "{a} possibly before {b}"
        );
    }
}

/// Source: `tests/checks/edtf_seasons.csv`, where implementations disagree and the standard gives
/// no months. Ours are those of the crate `edtf-core`: a winter runs into the next year.
#[test]
fn seasons_take_the_months_we_chose() {
    let rows = rows(EDTF_SEASONS);
    assert_eq!(rows.len(), 6);
    for row in rows {
        let date = parsed(&row[0]);
        let span = format!("{}/{}", edge(date.earliest()), edge(date.latest()));
        assert_eq!(span, row[1], "{date}");
        assert!(date.is_loose(), "{date} may contradict nothing");
    }
}

/// Source: `tests/checks/aat_terms.csv`. A built-in term has a number only where one was looked up,
/// and the number of a term of its name.
#[test]
fn numbers_of_the_thesaurus_are_those_that_were_looked_up() {
    let table = rows(AAT);
    let mut checked = 0;
    for list in [
        "techniques",
        "papers",
        "kinds",
        "transfers",
        "roles",
        "relations",
        "subjects",
    ] {
        let path = format!(
            "{}/content/vocabulary/{list}.toml",
            env!("CARGO_MANIFEST_DIR")
        );
        let terms: toml::Table = toml::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
        for (key, term) in &terms {
            let Some(number) = term.get("aat") else {
                continue;
            };
            let number = number.as_integer().unwrap().to_string();
            let found = table.iter().find(|row| row[2] == number);
            let found =
                found.unwrap_or_else(|| panic!("{list} {key}: {number} was never looked up"));
            let ours = term["label"]["en"]
                .as_str()
                .unwrap()
                .replace("colour", "color");
            let stem: String = ours.chars().take(5).collect();
            assert!(
                found[1].to_lowercase().contains(&stem),
                "{list} {key}: {number} is {}",
                found[1]
            );
            checked += 1;
        }
    }
    assert!(checked > 30, "{checked}");
}

fn parsed(text: &str) -> Date {
    Date::parse(text).unwrap_or_else(|fault| panic!("{text}: {fault:?}"))
}

/// An end as the tables write it.
fn edge(edge: Edge) -> String {
    match edge {
        Edge::Day(day) => day.to_string(),
        Edge::Open => "open".to_owned(),
        Edge::Unknown => "unknown".to_owned(),
    }
}

/// The qualifiers as the table writes them: of the whole, of an end, of parts.
fn qualifiers(edtf: &Edtf) -> String {
    match edtf {
        Edtf::Date(date) => of_date(date),
        Edtf::DateTime(time) => of_date(&time.date),
        Edtf::Interval(interval) => {
            let (start, end) = (of_end(&interval.start), of_end(&interval.end));
            match (start.as_str(), end.as_str()) {
                ("", "") => String::new(),
                // The table names the part where both ends qualify the same one.
                (a, b) if a == b && a.contains(' ') => a.to_owned(),
                (a, b) if a == b => format!("{a} both"),
                (a, "") => format!("{a} start"),
                ("", b) => format!("{b} end"),
                (a, b) => format!("{a} start {b} end"),
            }
        }
        // No set in the table is qualified.
        Edtf::Set(_) => String::new(),
    }
}

fn of_end(end: &IntervalEndpoint) -> String {
    match end {
        IntervalEndpoint::Date(date)
        | IntervalEndpoint::OnOrBefore(date)
        | IntervalEndpoint::OnOrAfter(date) => of_date(date),
        IntervalEndpoint::Open | IntervalEndpoint::Unknown => String::new(),
    }
}

fn of_date(date: &EdtfDate) -> String {
    let parts = [
        Some(("year", date.year.qualifier)),
        date.month.map(|month| ("month", month.qualifier)),
        date.day.map(|day| ("day", day.qualifier)),
    ];
    let written: Vec<_> = parts.into_iter().flatten().collect();
    let qualified: Vec<_> = written.iter().filter(|(_, q)| q.is_qualified()).collect();
    let Some((_, first)) = qualified.first() else {
        return String::new();
    };
    assert!(
        qualified.iter().all(|(_, q)| q == first),
        "the table mixes no signs in a date"
    );
    if qualified.len() == written.len() {
        return sign(*first).to_owned();
    }
    let names: Vec<&str> = qualified.iter().map(|(name, _)| *name).collect();
    format!("{} {}", sign(*first), names.join(" "))
}

fn sign(qualifier: Qualifier) -> &'static str {
    match (qualifier.uncertain, qualifier.approximate) {
        (true, true) => "%",
        (true, false) => "?",
        (false, true) => "~",
        (false, false) => "",
    }
}

/// The rows of a table without its source line and its heading.
fn rows(table: &str) -> Vec<Vec<String>> {
    assert!(table.starts_with("# "), "the first line names the source");
    table.lines().skip(2).map(cells).collect()
}

/// The cells of a line: separated by commas, in quotes where they hold any, quotes doubled.
fn cells(line: &str) -> Vec<String> {
    let mut cells = vec![String::new()];
    let mut quoted = false;
    let mut signs = line.chars().peekable();
    while let Some(sign) = signs.next() {
        let cell = cells.last_mut().unwrap();
        match sign {
            '"' if quoted && signs.peek() == Some(&'"') => {
                signs.next();
                cell.push('"');
            }
            '"' => quoted = !quoted,
            ',' if !quoted => cells.push(String::new()),
            other => cell.push(other),
        }
    }
    cells
}
