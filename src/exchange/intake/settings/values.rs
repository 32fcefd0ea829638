//! `values.toml`: every distinct value of every column that is read, for an editor to correct.
//!
//! A value that an editor corrected is so in all of its rows, and stays so in the next file of the house. Counts and the
//! program's own readings are made anew by every run. A correction with a fault is told, and the program's reading counts.

use std::fmt::Write as _;

use super::super::toml_text::text_value as quoted;
use super::fault::SettingFault;
use super::parts::{Part, parts};
use super::reads::{self, READS};
use super::text::{digest, quoted_start};
use crate::exchange::intake::columns::Holds;
use crate::exchange::intake::facts::Facts;
use crate::exchange::intake::pieces::pieces;
use crate::exchange::intake::reading::Lexicon;
use crate::exchange::intake::values::{
    DistinctValue, SettledValue, SettledValues, Sureness, Values,
};
use crate::model::words::ClosedList;
use crate::read::schema::FileShape;
use crate::read::shape::{Shape, Takes, may, must, unpublished, words};
use crate::read::values;

const COLUMN_HEADER: &str = "[[columns]]";
const VALUE_HEADER: &str = "[[columns.values]]";

/// `values.toml`.
pub static FILE: FileShape = FileShape {
    table: &HEAD_SHAPE,
    lists: &[(
        "columns",
        FileShape {
            table: &COLUMN,
            lists: &[(
                "values",
                FileShape {
                    table: &VALUE,
                    lists: &[],
                },
            )],
        },
    )],
};

/// What stands above the columns: nothing.
static HEAD_SHAPE: Shape = unpublished("the head of values.toml", &[]);

/// The heading of a column, which may be blank.
const HEADING: Takes = Takes::Either(&[Takes::Text]);

/// A column.
static COLUMN: Shape = unpublished(
    "a column",
    &[
        must("heading", HEADING, "its heading in the file"),
        must(
            "holds",
            Takes::Word(words::<Holds>),
            "what it holds, as in columns.toml",
        ),
    ],
);

/// A value of a column.
static VALUE: Shape = unpublished(
    "a value",
    &[
        must("is", Takes::Text, "the text of the cells"),
        may(
            "rows",
            Takes::Whole(0, u32::MAX),
            "in how many rows it stands",
        ),
        may("reads", Takes::Table(&READS), "what it says"),
        may(
            "sure",
            Takes::Word(words::<Sureness>),
            "how sure the reading is",
        ),
        may(
            "digest",
            Takes::Text,
            "the program's mark on its own reading",
        ),
    ],
);

/// What stands at the head of the file.
const HEAD: &str = "\
# What the values of the file say: each text once, with its reading. The unsure ones stand first, then the frequent ones.
#
# Where a reading is wrong, correct `reads` and run intake again: it is then so in every row that has the text, also in
# the next file of this house (`sure = \"by-hand\"`). Where it is right though unsure, write `sure = \"by-hand\"`.
# `reads = {}` says that the text tells nothing. A value without a correction may be deleted: it comes back.
#
# Dates are EDTF (\"1912~\" is about 1912), also \"later\" and \"not-known\". Sizes are [height, width] in millimetres.
# `rows` and `digest` are written by Keyblock; leave them as they are.
";

/// Reads the corrections of `values.toml`, and what is wrong in them.
#[must_use]
pub fn read(text: &str, lexicon: &Lexicon) -> (SettledValues, Vec<SettingFault>) {
    let mut settled = SettledValues::default();
    let mut faults = Vec::new();
    // The column below which values stand; `None` where its header could not be read.
    let mut column: Option<(String, Holds)> = None;
    for part in parts(text) {
        match part.header {
            "" => faults.extend(part.keys_above_headers(COLUMN_HEADER)),
            COLUMN_HEADER => {
                column = part.read(&COLUMN, &mut faults, |fields| {
                    let heading = fields.one("heading", values::text);
                    let holds = fields.word("holds");
                    Some((heading?.value, holds?.value))
                });
            }
            VALUE_HEADER if is_untouched(part.body) => {}
            VALUE_HEADER => {
                if let Some((heading, holds)) = &column {
                    let corrected = corrected(&part, lexicon, &mut faults);
                    let value = corrected.map(|(text, facts)| SettledValue {
                        heading: heading.clone(),
                        holds: *holds,
                        text,
                        facts,
                    });
                    if let Some(value) = value {
                        settled.add(value);
                    }
                }
            }
            _ => faults.push(part.unknown_header(&[COLUMN_HEADER, VALUE_HEADER])),
        }
    }
    faults.sort();
    (settled, faults)
}

/// Whether a value stands as the program wrote it, told without parsing it: files have a hundred thousand of them.
fn is_untouched(body: &str) -> bool {
    let keys = ["is", "rows", "reads", "sure", "digest"];
    let mut found: [Option<&str>; 5] = [None; 5];
    for line in body.lines() {
        let line = line.trim_end();
        if line.is_empty() || line.starts_with('#') {
            continue;
        }
        let Some((key, value)) = line.split_once(" = ") else {
            return false;
        };
        let Some(place) = keys.iter().position(|known| *known == key) else {
            return false;
        };
        if found[place].replace(value).is_some() {
            return false;
        }
    }
    let [Some(_), _, Some(reads), Some(sure), Some(mark)] = found else {
        return false;
    };
    let sure = sure.trim_matches('"');
    sure != Sureness::ByHand.word() && mark.trim_matches('"') == digest(&[reads, sure])
}

/// A value as an editor wrote it; `None` where the program did, or where something in it is wrong.
fn corrected(
    part: &Part<'_>,
    lexicon: &Lexicon,
    faults: &mut Vec<SettingFault>,
) -> Option<(String, Facts)> {
    let mut told = Vec::new();
    let read = part.read(&VALUE, &mut told, |fields| {
        let text = fields.one("is", values::telling_text);
        let text = text.map(|text| text.value);
        // Only Keyblock counts rows.
        fields.whole("rows");
        let said = text.as_deref().unwrap_or_default();
        let facts = fields.one("reads", |faults, node| {
            reads::node(faults, node, said, lexicon)
        });
        let sure = fields.word::<Sureness>("sure").map(|sure| sure.value);
        let mark = fields.words("digest");
        Some((text?, facts, sure, mark))
    });
    let is_faulty = told.iter().any(|fault| fault.is_error);
    faults.extend(told);
    let (text, facts, sure, mark) = read.filter(|_| !is_faulty)?;
    let is_by_hand = sure == Some(Sureness::ByHand);
    let Some(facts) = facts else {
        if is_by_hand {
            faults.push(SettingFault {
                line: part.first_line - 1,
                column: 1,
                message: "a value by hand has no `reads`".to_owned(),
                help: Some("write what it says, `reads = {}` where it says nothing".to_owned()),
                is_error: true,
            });
        }
        return None;
    };
    let sure = sure.map_or("", |sure| sure.word());
    let is_as_written = mark.as_deref() == Some(&digest(&[&reads::written(&facts, &text), sure]));
    (is_by_hand || !is_as_written).then_some((text, facts))
}

/// The text of `values.toml`, given piece by piece to `put`.
///
/// # Errors
/// What `put` gives; then the rest is not made.
pub fn write<E>(values: &Values, put: &mut dyn FnMut(&[u8]) -> Result<(), E>) -> Result<(), E> {
    put(HEAD.as_bytes())?;
    let mut kept: Vec<&SettledValue> = values.kept().iter().collect();
    for column in values.columns() {
        let mut out = String::new();
        column_head(&mut out, &column.heading, column.holds);
        put(out.as_bytes())?;
        let piece = |_, values: &[&DistinctValue]| {
            let mut out = String::new();
            for value in values {
                write_value(&mut out, value);
            }
            out
        };
        pieces(&column.by_need(), piece, put)?;
        let mut out = String::new();
        kept = write_kept(&mut out, kept, &column.heading, column.holds);
        put(out.as_bytes())?;
    }
    let mut out = String::new();
    // Columns that this file does not have, in the order in which they were written.
    while let Some(first) = kept.first().copied() {
        out.push_str(
            "\n# This file has no such column; its corrections are kept for the next file.",
        );
        column_head(&mut out, &first.heading, first.holds);
        kept = write_kept(&mut out, kept, &first.heading, first.holds);
    }
    put(out.as_bytes())
}

fn column_head(out: &mut String, heading: &str, holds: Holds) {
    let _ = write!(
        out,
        "\n{COLUMN_HEADER}\nheading = {}\nholds = \"{holds}\"\n",
        quoted(heading)
    );
}

fn write_value(out: &mut String, value: &DistinctValue) {
    let reading = value.reading();
    let reads = reads::written(&reading.facts, &value.text);
    let sure = value.sure().word();
    let _ = write!(
        out,
        "\n{VALUE_HEADER}\nis = {}\nrows = {}\nreads = {reads}\nsure = \"{sure}\"\n",
        quoted(&value.text),
        value.rows
    );
    for doubt in &reading.doubts {
        let _ = writeln!(out, "# doubtful: {doubt}");
    }
    if !reading.left.is_empty() {
        let left = reading.left.iter();
        let left: Vec<String> = left.map(|words| quoted_start(words, 200)).collect();
        let _ = writeln!(out, "# left over: {}", left.join(", "));
    }
    match value.program() {
        None => {
            let _ = writeln!(out, "digest = \"{}\"", digest(&[&reads, sure]));
        }
        Some(program) => {
            let program = reads::written(&program.facts, &value.text);
            if program != reads {
                let _ = writeln!(out, "# Keyblock reads: {program}");
            }
        }
    }
}

/// Writes the corrections of a column whose texts no row has, and gives those of other columns.
fn write_kept<'v>(
    out: &mut String,
    kept: Vec<&'v SettledValue>,
    heading: &str,
    holds: Holds,
) -> Vec<&'v SettledValue> {
    let (own, others): (Vec<_>, Vec<_>) = kept
        .into_iter()
        .partition(|value| value.heading == heading && value.holds == holds);
    for value in own {
        let reads = reads::written(&value.facts, &value.text);
        let _ = write!(
            out,
            "\n{VALUE_HEADER}\nis = {}\nrows = 0\nreads = {reads}\nsure = \"{}\"\n",
            quoted(&value.text),
            Sureness::ByHand
        );
    }
    others
}

#[cfg(test)]
mod tests;
