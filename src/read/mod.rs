//! Reading: the files of a catalogue to its model, every value with its place.

mod bibtex;
mod near;
mod note;
mod reference;
mod resolve;
pub mod schema;
pub mod shape;
mod start;
mod vocabulary;

pub use start::start_files;
