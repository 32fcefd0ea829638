//! Reading: the files of a catalogue to its model, every value with its place, and findings.
//!
//! In: a folder. Out: a [`Reading`], always: whatever is faulty is a finding, and the rest is read.
//!
//! | part | subject |
//! |---|---|
//! | [`shape`] | which keys each kind of record has; everything below reads along these declarations |
//! | `files` | the files of the folder: found, recognised by their paths, loaded, named by content |
//! | `syntax` | faults of TOML, each at its place, and the text that can be parsed in spite of them |
//! | `faults` | what is found wrong while one file is read |
//! | `table` | typed reading of one table, key by key; unknown and missing keys |
//! | `values` | single values: texts, numbers, dates, sizes, keys, codes; the nearest of some names |
//! | `records` | a file for each kind of record, from its table to the model |
//! | `bibtex`, `reference` | the literature, and how its works are worded |
//! | `references` | the texts and references of every record, links in Markdown, references to nothing |
//! | [`schema`], `start` | what is written for editors, from the same declarations; the first files of a catalogue |
//! | [`mod@theme`] | the files of the theme |
//! | `assemble` | all of these in order: from the files to a [`Reading`] |
//!
//! Not here: what scholarship must settle (`audit`), and whether pictures can be read (`picture`).
#![allow(
    clippy::disallowed_methods,
    reason = "this stage is the one that reads records and themes from disk"
)]

mod assemble;
mod bibtex;
mod faults;
mod files;
mod records;
mod reference;
mod references;
pub mod schema;
pub mod shape;
mod start;
mod stray;
mod syntax;
mod table;
pub mod theme;
mod values;

pub use assemble::{Reading, read, read_inputs};
pub use files::inputs::{Inputs, stamp};
pub use start::start_files;
pub use theme::theme;
pub(crate) use values::near;
