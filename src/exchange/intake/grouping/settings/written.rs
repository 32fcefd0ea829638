//! Writes `designs.toml`.
//!
//! In: the designs as proposed, the rows, and what the file said before. Out: the text. What an editor settled stands in it
//! as it was said, with the sheets that this file lacks; everything else is as proposed now. The same proposal gives the same
//! bytes.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;

use super::design_settings::{DesignSettings, SettledDesign, SettledIs};
use super::settled_sheets::SettledSheets;
use super::sheet_name::Written;
use crate::exchange::intake::proposal::{DesignIs, ProposedDesign, ProposedRow, RowStanding};
use crate::exchange::intake::toml_text::text_value as quoted;
use crate::model::key::Key;
use crate::study::search::words::number_key;

/// What the file says of itself.
const HEAD: &str = "\
# To which design each sheet belongs, and why; and which sheets are recorded already.
#
# Where it is wrong, move accession numbers from one design to another, correct `is`, join two designs or split one, and run
# intake again. Where it is right though doubtful, write `settled = true`. What you wrote stands, also for the next file of
# this house; everything else is proposed anew by each run. A sheet of which no record is to be made: leave_out = [\"1962.44\"]
#
#   is        the key of a design of the catalogue, or \"new\"; a list where it may be one of several
#   key       the key that a new design would get (told, not read)
#   number    the number that readers see, of a new design (the next whole number where nothing is said)
#   title     its title; that of a new design may be corrected
#   sheets    accession numbers; rows of the file (\"row 7\") where there is none, or several rows have it
#   added     sheets that were proposed for a settled design since: move them into `sheets`, or elsewhere
#   why       why the sheets are one design; `splits`: why others are not of it; `doubts`: what to look at
#   digest    written by Keyblock; leave it as it is
#
# A sheet that may be a recorded impression is asked about under [[sheets]]. Say there whether it is; you may add sheets that
# are not asked about.
#
#   sheet     its accession number, or its row (\"row 7\")
#   is        the impression that it is (\"14.7\"): the sheet becomes a correction of that record
#   is_not    the impressions that it is not ([\"14.7\"]): the sheet stays one of its own, whatever its number says
#   why       your reason, kept with it
#   may_be    the impressions that it may be, and why (told, not read)

";

/// The most sheets that are asked about: the file must stay one that a person can read. The report has all.
const MOST_ASKED: usize = 500;

/// The most impressions that are named of a sheet that is asked about.
const MOST_NAMED: usize = 6;

/// The text of `designs.toml`.
#[must_use]
pub fn written(
    designs: &[ProposedDesign],
    rows: &[ProposedRow],
    before: &DesignSettings,
) -> String {
    let mut text = HEAD.to_owned();
    let names = SheetNames::of(rows);
    let left_out: Vec<&str> = before
        .leave_out
        .iter()
        .map(|sheet| sheet.text.as_str())
        .collect();
    list(&mut text, "leave_out", &left_out);
    if !left_out.is_empty() {
        text.push('\n');
    }
    let unplaced: Vec<String> = rows
        .iter()
        .filter(|row| row.design.is_none() && row.standing != RowStanding::LeftOut)
        .map(|row| names.name(row))
        .collect();
    if !unplaced.is_empty() {
        text.push_str("# Sheets of which nothing tells the design:\n");
        list(&mut text, "unplaced", &unplaced);
        text.push('\n');
    }
    sheets(&mut text, rows, &names, before);
    let mut told = BTreeSet::new();
    for design in designs {
        told.extend(design.settled.iter().copied());
        let settled = design
            .settled
            .iter()
            .filter_map(|at| before.designs.get(*at));
        entry(
            &mut text,
            design,
            &settled.collect::<Vec<_>>(),
            rows,
            &names,
        );
    }
    // Settled designs of which this file has no sheet.
    for (at, design) in before.designs.iter().enumerate() {
        if design.is_settled && !told.contains(&at) {
            kept(&mut text, design);
        }
    }
    text
}

/// What is said of single sheets, as the file had it; then the sheets that may be recorded impressions.
fn sheets(text: &mut String, rows: &[ProposedRow], names: &SheetNames, before: &DesignSettings) {
    let settled = SettledSheets::of(&before.sheets);
    let asked = rows
        .iter()
        .filter(|row| row.standing == RowStanding::New && !row.may_be.is_empty());
    let mut open: Vec<&ProposedRow> = Vec::new();
    // By the place of what is said of them.
    let mut asked_again: BTreeMap<(usize, usize), &ProposedRow> = BTreeMap::new();
    for row in asked {
        match settled.row(row) {
            Some(said) => {
                let place = (said.sheet.line, said.sheet.column);
                asked_again.entry(place).or_insert(row);
            }
            None => open.push(row),
        }
    }
    for said in before.sheets.iter().filter(|said| said.says_something()) {
        text.push_str("[[sheets]]\n");
        line(text, "sheet", &said.sheet.text);
        if let Some(is) = &said.is {
            line(text, "is", &is.key.to_string());
        }
        let is_not = said.is_not.iter().map(|named| named.key.to_string());
        list(text, "is_not", &is_not.collect::<Vec<_>>());
        if let Some(why) = &said.why {
            line(text, "why", why);
        }
        if let Some(row) = asked_again.get(&(said.sheet.line, said.sheet.column)) {
            several(text, "may_be", &may_be(row));
        }
        text.push('\n');
    }
    for row in open.iter().take(MOST_ASKED) {
        text.push_str("[[sheets]]\n");
        line(text, "sheet", &names.name(row));
        several(text, "may_be", &may_be(row));
        text.push('\n');
    }
    if open.len() > MOST_ASKED {
        let more = open.len() - MOST_ASKED;
        let _ = writeln!(
            text,
            "# Of {more} more sheets that may be recorded report.csv says which impressions: add those that you judge here.\n"
        );
    }
}

/// The impressions that a row may be, each with the reason.
fn may_be(row: &ProposedRow) -> Vec<String> {
    let named = row.may_be.iter().take(MOST_NAMED);
    let mut told: Vec<String> = named
        .map(|other| format!("{}: {}", other.impression, other.why))
        .collect();
    let more = row.may_be.len() - told.len();
    if more > 0 {
        told.push(format!("and {more} more"));
    }
    told
}

/// How rows are named in the file.
struct SheetNames {
    repeated: BTreeSet<String>,
}

impl SheetNames {
    fn of(rows: &[ProposedRow]) -> SheetNames {
        let mut seen = BTreeSet::new();
        let keys = rows
            .iter()
            .filter_map(|row| number_key(row.accession.as_deref()?));
        let repeated = keys.filter(|key| !seen.insert(key.clone())).collect();
        SheetNames { repeated }
    }

    fn name(&self, row: &ProposedRow) -> String {
        let key = row.accession.as_deref().and_then(number_key);
        match (&row.accession, key) {
            (Some(accession), Some(key)) if !self.repeated.contains(&key) => accession.clone(),
            _ => format!("row {}", row.row),
        }
    }
}

fn entry(
    text: &mut String,
    design: &ProposedDesign,
    settled: &[&SettledDesign],
    rows: &[ProposedRow],
    names: &SheetNames,
) {
    text.push_str("[[designs]]\n");
    let of = |places: &[usize]| -> Vec<String> {
        let rows = places.iter().filter_map(|at| rows.get(*at));
        rows.map(|row| names.name(row)).collect()
    };
    match &design.is {
        DesignIs::Recorded(key) => line(text, "is", key.as_str()),
        DesignIs::OneOf(keys) => {
            let keys: Vec<&str> = keys.iter().map(Key::as_str).collect();
            list(text, "is", &keys);
        }
        DesignIs::New => line(text, "is", "new"),
    }
    if design.is == DesignIs::New {
        if let Some(key) = &design.key {
            line(text, "key", key.as_str());
        }
        if let Some(number) = &design.number {
            line(text, "number", number);
        }
    }
    if let Some(title) = &design.title {
        line(text, "title", title);
    }
    if settled.is_empty() {
        let sheets = of(&design.rows);
        list(text, "sheets", &sheets);
        line(text, "digest", &as_written(design, &sheets).mark());
    } else {
        let sheets: Vec<&str> = settled
            .iter()
            .flat_map(|design| &design.sheets)
            .map(|sheet| sheet.text.as_str())
            .collect();
        list(text, "sheets", &sheets);
        list(text, "added", &of(&design.added));
        text.push_str("settled = true\n");
    }
    several(text, "why", &design.joins);
    several(text, "splits", &design.splits);
    several(text, "doubts", &design.doubts);
    text.push('\n');
}

/// A proposed design as it will be read again.
fn as_written(design: &ProposedDesign, sheets: &[String]) -> SettledDesign {
    SettledDesign {
        is: match &design.is {
            DesignIs::Recorded(key) => SettledIs::Recorded(key.clone()),
            DesignIs::OneOf(keys) => SettledIs::OneOf(keys.clone()),
            DesignIs::New => SettledIs::New,
        },
        at: Written::default(),
        number: design.number.clone().filter(|_| design.is == DesignIs::New),
        title: design.title.clone(),
        sheets: sheets.iter().map(|sheet| Written::new(sheet)).collect(),
        is_settled: false,
    }
}

/// A settled design as the file had it.
fn kept(text: &mut String, design: &SettledDesign) {
    text.push_str("[[designs]]\n");
    match &design.is {
        SettledIs::Recorded(key) => line(text, "is", key.as_str()),
        SettledIs::OneOf(keys) => {
            let keys: Vec<&str> = keys.iter().map(Key::as_str).collect();
            list(text, "is", &keys);
        }
        SettledIs::New => line(text, "is", "new"),
    }
    if let Some(number) = &design.number {
        line(text, "number", number);
    }
    if let Some(title) = &design.title {
        line(text, "title", title);
    }
    let sheets: Vec<&str> = design
        .sheets
        .iter()
        .map(|sheet: &Written| sheet.text.as_str())
        .collect();
    list(text, "sheets", &sheets);
    text.push_str("settled = true\n\n");
}

fn line(text: &mut String, key: &str, value: &str) {
    let _ = writeln!(text, "{key} = {}", quoted(value));
}

/// A list on lines no longer than editors show; nothing where it is empty.
fn list<T: AsRef<str>>(text: &mut String, key: &str, items: &[T]) {
    const WIDTH: usize = 100;
    if items.is_empty() {
        return;
    }
    let quoted: Vec<String> = items.iter().map(|item| quoted(item.as_ref())).collect();
    let one_line = format!("{key} = [{}]", quoted.join(", "));
    if one_line.chars().count() <= WIDTH {
        text.push_str(&one_line);
        text.push('\n');
        return;
    }
    let _ = writeln!(text, "{key} = [");
    let mut line = String::from(" ");
    for item in quoted {
        if line.chars().count() + item.chars().count() + 2 > WIDTH && line.len() > 1 {
            text.push_str(&line);
            text.push('\n');
            line = String::from(" ");
        }
        let _ = write!(line, " {item},");
    }
    text.push_str(&line);
    text.push_str("\n]\n");
}

/// Sentences, each on a line of its own.
fn several(text: &mut String, key: &str, items: &[String]) {
    match items {
        [] => {}
        [one] => {
            let _ = writeln!(text, "{key} = [{}]", quoted(one));
        }
        several => {
            let _ = writeln!(text, "{key} = [");
            for item in several {
                let _ = writeln!(text, "  {},", quoted(item));
            }
            text.push_str("]\n");
        }
    }
}
