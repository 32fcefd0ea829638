//! JSON Schemas of the files of an intake that editors correct: `columns.toml`, `values.toml` and `designs.toml`.
//!
//! In: the shapes by which the files are read. Out: one schema (draft 2020-12) for each. They stand in `docs/schemas`.

use serde_json::Value;

use super::grouping::settings::FILE as DESIGNS;
use super::settings::columns::FILE as COLUMNS;
use super::settings::values::FILE as VALUES;
use crate::read::schema::of_file;

/// Every schema, by its name.
#[must_use]
pub fn files() -> [(&'static str, Value); 3] {
    [
        ("intake-columns", &COLUMNS),
        ("intake-values", &VALUES),
        ("intake-designs", &DESIGNS),
    ]
    .map(|(name, file)| (name, of_file(name, file)))
}
