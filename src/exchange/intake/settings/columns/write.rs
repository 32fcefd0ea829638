//! Settings to `columns.toml`.

use std::fmt::Write as _;

use super::super::super::toml_text::text_value as quoted;
use super::super::text::quoted_start;
use super::read::HEADER;
use super::settings::{ColumnSettings, is_by_hand, mark, sureness};
use crate::exchange::intake::columns::{ColumnReading, Ground, Holds};
use crate::model::words::ClosedList;

/// How many letters of a sample are shown.
const LETTERS: usize = 60;

/// What stands at the head of the file.
const HEAD: &str = "\
# What each column of the file holds, as its heading and its cells tell.
#
# Where it is wrong, correct `holds`, `unit`, `of` or `order`, and run intake again. Where it is right though unsure, write
# `sure = \"by-hand\"`. What you wrote stands, also for the next file of this house, wherever the column is there. A column
# that holds \"unknown\" is kept with the sheet as it is given, and is not read.
";

/// `columns.toml`.
#[must_use]
pub fn written(settings: &ColumnSettings) -> String {
    let mut out = HEAD.to_owned();
    let words: Vec<&str> = Holds::ALL.iter().map(|holds| holds.word()).collect();
    let _ = writeln!(out, "#\n# `holds` takes one of:");
    for line in words.chunks(8) {
        let _ = writeln!(out, "#   {}", line.join(", "));
    }
    out.push('\n');
    head(&mut out, settings);
    for doubt in settings.doubts.iter().filter(|d| d.column().is_none()) {
        let _ = writeln!(out, "\n# DOUBT: {}", doubt.message());
    }
    for (place, column) in settings.columns.iter().enumerate() {
        out.push('\n');
        if settings.added.contains(&column.column) {
            out.push_str("# New in this file.\n");
        }
        for doubt in &settings.doubts {
            if doubt.column() == Some(column.column) {
                let _ = writeln!(out, "# DOUBT: {}", doubt.message());
            }
        }
        write_column(&mut out, column);
        if let Some(samples) = settings.samples.get(place) {
            write_samples(&mut out, column, samples);
        }
    }
    for column in &settings.absent {
        out.push_str("\n# This file has no such column; it is kept for the next file.\n");
        write_column(&mut out, column);
    }
    out
}

fn head(out: &mut String, settings: &ColumnSettings) {
    let handing = &settings.handing;
    let key = |key: &Option<crate::model::key::Key>| key.as_ref().map(ToString::to_string);
    for (name, value, help) in [
        (
            "holder",
            key(&handing.holder),
            "whose sheets these are, where no column says it: the key of a holder",
        ),
        (
            "by",
            key(&handing.by),
            "who hands in and is credited: the key of a person or holder",
        ),
        (
            "source",
            handing.source.clone(),
            "where the file was taken from: words, or an address on the web",
        ),
        (
            "seen",
            handing.seen.as_ref().map(|date| date.as_str().to_owned()),
            "when the holder's description was seen: a date such as \"2025-04\"",
        ),
    ] {
        let _ = writeln!(out, "# {help}");
        match value {
            Some(value) => {
                let _ = writeln!(out, "{name} = {}", quoted(&value));
            }
            None => {
                let _ = writeln!(out, "# {name} = \"\"");
            }
        }
    }
    if let Some(table) = &settings.table {
        let _ = writeln!(
            out,
            "# the table of the file that is read\ntable = {}",
            quoted(table)
        );
    }
}

fn write_column(out: &mut String, column: &ColumnReading) {
    let sure = sureness(column);
    let _ = write!(
        out,
        "{HEADER}\nheading = {}\nholds = \"{}\"\nsure = \"{sure}\"\n",
        quoted(&column.heading),
        column.holds,
    );
    if !column.why.is_empty() {
        let why: Vec<String> = column.why.iter().map(Ground::message).collect();
        let _ = writeln!(out, "why = {}", quoted(&why.join("; ")));
    }
    let assumed = column.assumed;
    for (name, word) in [
        ("unit", assumed.unit.map(ClosedList::word)),
        ("of", assumed.of.map(ClosedList::word)),
        ("order", assumed.order.map(ClosedList::word)),
    ] {
        if let Some(word) = word {
            let _ = writeln!(out, "{name} = \"{word}\"");
        }
    }
    if !is_by_hand(column) {
        let _ = writeln!(out, "digest = \"{}\"", mark(column, sure));
    }
}

fn write_samples(out: &mut String, column: &ColumnReading, samples: &[String]) {
    if samples.is_empty() {
        out.push_str("# no cell has a text\n");
        return;
    }
    let shown: Vec<String> = samples.iter().map(|s| quoted_start(s, LETTERS)).collect();
    let _ = writeln!(
        out,
        "# {} cells, {} different: {}",
        column.filled,
        column.distinct,
        shown.join(", ")
    );
}
