//! Reads the files of a catalogue into its model, every value with its place, and reports findings.
//!
//! In: a folder. Out: always a [`Reading`]: each fault is a finding, and everything else is read.
//!
//! | part | subject |
//! |---|---|
//! | [`shape`] | which keys each kind of record has; the parts below follow these declarations |
//! | `limits` | the largest and deepest that is read |
//! | `files` | the files of the folder: found, recognised by their paths, loaded, hashed |
//! | `syntax` | faults of TOML, each at its place, and the text that can be parsed in spite of them |
//! | `faults` | the findings while one file is read |
//! | `table` | typed reading of one table, key by key; unknown and missing keys |
//! | `values` | single values: texts, numbers, dates, sizes, keys, codes; suggestions for misspelt names |
//! | `records` | a file for each kind of record, from its table to the model |
//! | `former` | the keys that records had before |
//! | `bibtex`, `reference` | the literature, and the wording of its references |
//! | `references` | the texts and references of every record, links in Markdown, references to nothing |
//! | `rights` | pictures whose rights nothing states |
//! | `stray` | files that are not records, or that no record names |
//! | `edits` | bytes of a text replaced, everything around them kept |
//! | [`rename`] | plans the change of a key through every record |
//! | [`schema`], `start` | the JSON Schemas, from the same declarations; the first files of a catalogue |
//! | [`mod@theme`] | the files of the theme |
//! | `assemble` | runs these in order, from the files to a [`Reading`] |
//!
//! Not here: contradictions and doubts between sound records (`audit`), and whether pictures can be
//! decoded (`picture`).
#![allow(
    clippy::disallowed_methods,
    reason = "this stage is the one that reads records and themes from disk"
)]

mod assemble;
mod bibtex;
pub(crate) mod edits;
pub(crate) mod faults;
mod files;
mod former;
mod limits;
pub mod next_record;
mod records;
mod reference;
mod references;
pub mod refusal;
pub mod rename;
mod rights;
pub mod schema;
pub mod shape;
mod start;
mod stray;
mod syntax;
pub(crate) mod table;
pub mod theme;
pub(crate) mod values;

pub use assemble::{Reading, read, read_inputs};
pub use files::inputs::{Inputs, stamp};
pub(crate) use records::record::alone;
pub use records::vocabulary::built_in as built_in_terms;
pub use start::start_files;
pub(crate) use syntax::too_deep;
pub use theme::theme;
pub(crate) use values::{names, near};
