//! The photographs that a record gets: their names, their tables in the record.

use std::collections::BTreeSet;
use std::fmt::Write as _;

use crate::exchange::intake::columns::Holds;
use crate::exchange::intake::photographs::PhotographMatch;
use crate::exchange::intake::proposal::ProposedRow;
use crate::exchange::intake::reading::choices;
use crate::exchange::intake::toml_text::text_value;
use crate::model::picture::View;
use crate::model::words::{ClosedList as _, Side};

/// A photograph that a record gets.
pub(super) struct NewPicture {
    /// Its place among the names of photographs.
    pub place: usize,
    /// Its table in the record.
    pub table: String,
    /// Its path in the catalogue.
    pub path: String,
}

/// The name of a picture: its side, with its view where that is not the whole sheet, and a number where the record has the
/// name already.
pub(super) fn free_name(found: &PhotographMatch, names: &mut BTreeSet<String>) -> String {
    let mut name = found.side.word().to_owned();
    if found.view != View::Whole {
        name = format!("{name}-{}", found.view.word());
    }
    let mut free = name.clone();
    let mut number = 1;
    while !names.insert(free.clone()) {
        number += 1;
        free = format!("{name}-{number}");
    }
    free
}

/// The rights where a row states none.
const NO_RIGHTS: &str = "not stated by the holder";

/// The table of a picture in a record.
pub(super) fn table_of(
    found: &PhotographMatch,
    name: &str,
    file: &str,
    row: &ProposedRow,
) -> String {
    let stated = |holds: Holds| {
        row.facts
            .texts
            .get(holds)
            .map(str::trim)
            .filter(|text| !text.is_empty())
    };
    let rights = row
        .facts
        .rights
        .as_deref()
        .or_else(|| stated(Holds::Rights));
    let is_public = rights.is_some() && stated(Holds::Publish).and_then(choices::yes) == Some(true);
    let mut table = format!("\n[[pictures]]\nfile = {}\n", text_value(file));
    if name != found.side.word() {
        let _ = writeln!(table, "name = {}", text_value(name));
    }
    if found.side != Side::Recto {
        let _ = writeln!(table, "side = \"{}\"", found.side.word());
    }
    if found.view != View::Whole {
        let _ = writeln!(table, "view = \"{}\"", found.view.word());
    }
    let _ = writeln!(
        table,
        "rights = {}",
        text_value(rights.unwrap_or(NO_RIGHTS))
    );
    let _ = writeln!(table, "publish = {is_public}");
    table
}

/// The text of a record with further pictures at its end; `None` where it cannot take them there.
pub(super) fn with_pictures(text: &str, pictures: &[NewPicture]) -> Option<String> {
    let before: toml::Table = text.parse().ok()?;
    let mut with = text.trim_end().to_owned();
    with.push('\n');
    for picture in pictures {
        with.push_str(&picture.table);
    }
    let after: toml::Table = with.parse().ok()?;
    let count = |table: &toml::Table| {
        table
            .get("pictures")
            .and_then(toml::Value::as_array)
            .map_or(0, Vec::len)
    };
    (count(&after) == count(&before) + pictures.len()).then_some(with)
}
