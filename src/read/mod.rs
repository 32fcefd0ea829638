//! Reading: the files of a catalogue to its model, every value with its place, and findings.
//!
//! In: a folder. Out: a [`Reading`], always: whatever is faulty is a finding, and the rest is read.
//! Reading order: `walk` finds the files, `record` parses one, `fields` and `values` take it apart by
//! the tables in [`shape`], and a file for each kind of record puts the model together.
//!
//! Not here: what scholarship must settle (`audit`), and whether pictures can be read (`picture`).
#![allow(
    clippy::disallowed_methods,
    reason = "this stage is the one that reads records and themes from disk"
)]

mod assemble;
mod bibtex;
mod date_help;
mod design;
mod designs;
mod echoes;
mod exhibitions;
mod faults;
mod fields;
mod holder;
mod identifiers;
mod impression;
mod inputs;
mod keyed;
mod links;
mod literature;
mod load;
pub mod near;
mod note;
mod occurrences;
mod parties;
mod person;
mod pictures;
mod points;
mod private;
mod provenance;
mod record;
mod reference;
mod resolve;
pub mod schema;
mod settings;
pub mod shape;
mod start;
mod states;
mod stray;
mod syntax;
mod terms;
pub mod theme;
mod values;
mod vocabulary;
mod walk;

pub use assemble::{Reading, read, read_inputs};
pub use inputs::{Inputs, stamp};
pub use start::start_files;
pub use theme::theme;
