//! `columns.toml` to settings.

use super::super::fault::{SettingFault, position};
use super::super::parts::{Part, parts};
use super::settings::{ColumnSettings, mark};
use crate::exchange::intake::columns::{ColumnReading, Ground, Holds};
use crate::exchange::intake::reading::sizes::{Assumed, Measured, Order, Unit};
use crate::exchange::intake::values::Sureness;
use crate::model::certainty::Certainty;
use crate::read::schema::FileShape;
use crate::read::shape::{Shape, Takes, may, must, unpublished, words};
use crate::read::table::fields::Fields;
use crate::read::values;

pub(super) const HEADER: &str = "[[columns]]";

/// `columns.toml`.
pub static FILE: FileShape = FileShape {
    table: &HEAD,
    lists: &[(
        "columns",
        FileShape {
            table: &COLUMN,
            lists: &[],
        },
    )],
};

/// What stands above the columns.
static HEAD: Shape = unpublished(
    "the head of columns.toml",
    &[
        may(
            "holder",
            Takes::Text,
            "whose sheets these are: a holder's key",
        ),
        may(
            "by",
            Takes::Text,
            "who hands in and is credited: a person's or holder's key",
        ),
        may("source", Takes::Text, "where the file was taken from"),
        may(
            "seen",
            Takes::Date,
            "when the holder's description was seen",
        ),
        may("table", Takes::Text, "the table of the file that is read"),
    ],
);

/// The heading of a column, which may be blank.
const HEADING: Takes = Takes::Either(&[Takes::Text]);

/// A column.
static COLUMN: Shape = unpublished(
    "a column",
    &[
        must("heading", HEADING, "its heading in the file"),
        must("holds", Takes::Word(words::<Holds>), "what it holds"),
        may("sure", Takes::Word(words::<Sureness>), "how sure that is"),
        may("why", Takes::Text, "why, in words"),
        may(
            "unit",
            Takes::Word(words::<Unit>),
            "the unit of numbers without one",
        ),
        may("of", Takes::Word(words::<Measured>), "what was measured"),
        may(
            "order",
            Takes::Word(words::<Order>),
            "which length stands first",
        ),
        may("digest", Takes::Text, "the program's mark on what it wrote"),
    ],
);

/// Reads `columns.toml`, and what is wrong in it.
///
/// The columns are in the order of the file. Keys of the catalogue are checked by [`ColumnSettings::unknown_keys`].
#[must_use]
pub fn read(text: &str) -> (ColumnSettings, Vec<SettingFault>) {
    let mut settings = ColumnSettings::default();
    let mut faults = Vec::new();
    for part in parts(text) {
        match part.header {
            "" => head(&part, &mut settings, &mut faults),
            HEADER => {
                let read = part.read(&COLUMN, &mut faults, column);
                if let Some((mut column, start)) = read {
                    column.column = settings.columns.len();
                    settings.columns.push(column);
                    settings.places.headings.push(place(&part, start));
                }
            }
            _ => faults.push(part.unknown_header(&[HEADER])),
        }
    }
    faults.sort();
    (settings, faults)
}

/// Line and column of a byte of a part.
fn place(part: &Part<'_>, start: u32) -> (usize, usize) {
    let (line, column) = position(part.body, start as usize);
    (part.first_line + line, column)
}

fn head(part: &Part<'_>, settings: &mut ColumnSettings, faults: &mut Vec<SettingFault>) {
    let handing = &mut settings.handing;
    let (holder, by) = part.read(&HEAD, faults, |fields| {
        let holder = fields.key("holder");
        let by = fields.key("by");
        handing.source = fields.words("source");
        handing.seen = fields.date("seen").map(|date| date.value);
        settings.table = fields.words("table");
        (holder, by)
    });
    if let Some(holder) = holder {
        settings.places.holder = place(part, holder.place.start);
        handing.holder = Some(holder.value);
    }
    if let Some(by) = by {
        settings.places.by = place(part, by.place.start);
        handing.by = Some(by.value);
    }
}

/// A column, and the first byte of its heading.
fn column(fields: &mut Fields<'_, '_>) -> Option<(ColumnReading, u32)> {
    let heading = fields.one("heading", values::text);
    let holds = fields.word::<Holds>("holds");
    let sure = fields.word::<Sureness>("sure").map(|sure| sure.value);
    // Only told to the editor.
    fields.words("why");
    let assumed = Assumed {
        unit: fields.word::<Unit>("unit").map(|unit| unit.value),
        of: fields.word::<Measured>("of").map(|of| of.value),
        order: fields.word::<Order>("order").map(|order| order.value),
    };
    let digest = fields.words("digest");
    let heading = heading?;
    let mut column = ColumnReading {
        column: 0,
        heading: heading.value.trim().to_owned(),
        holds: holds?.value,
        sure: sure
            .and_then(Sureness::certainty)
            .unwrap_or(Certainty::Certain),
        why: Vec::new(),
        assumed,
        filled: 0,
        distinct: 0,
    };
    let is_as_written = sure.is_some_and(|sure| {
        sure != Sureness::ByHand && digest.as_deref() == Some(&mark(&column, sure))
    });
    if !is_as_written {
        column.sure = Certainty::Certain;
        column.why = vec![Ground::ByHand];
    }
    Some((column, heading.place.start))
}
