//! Records: what a row proposes as an impression, and its text.
//!
//! In: a [`ProposedRow`] with its cells, who hands in, the catalogue. Out: a [`RecordDraft`]: the impression, and what of
//! it is not published until an editor decides; its text as TOML ([`RecordDraft::text`]). `[as_given]` holds every cell
//! as it came, so nothing is lost by what the grammars do not read. The reading of a text that was written here gives the
//! same impression.
//!
//! What is said in a row of the design or of a printing (title, makers, dates, size of the edition) stands in
//! `[as_given]` alone: it is for the records of designs. What the contributor takes the sheet to be is an opinion of the
//! contributor; `[identified]` is the editors' (docs/trade.md, "Certainty").
//!
//! | file | subject |
//! |---|---|
//! | `given` | the names that the fields of `[as_given]` have |
//! | `draft` | a proposed record: the impression, and what is not published |
//! | `maker` | a draft from a row |
//! | `described` | the parts that describe the sheet: sizes, marks, what was looked for and not found |
//! | `told` | the parts that say who told it: opinions, acquisition, sightings |
//! | `withheld` | what is not published until an editor decides |
//! | `values` | single values as TOML |
//! | `tables` | the tables of a record that are of one kind: marks, pictures, provenance … |
//! | `parts` | a record as keys, tables and lists of tables |
//! | `sections` | an impression as keys and tables, in the order of the template |
//! | `written` | keys and tables as text |
//!
//! [`ProposedRow`]: super::proposal::ProposedRow

mod described;
mod draft;
mod given;
mod maker;
mod parts;
mod sections;
mod tables;
#[cfg(test)]
pub(in crate::exchange::intake) mod tests;
mod told;
mod values;
mod withheld;
mod written;

pub use draft::{RecordDraft, Withheld};
pub use given::GivenNames;
pub use maker::{PrivateNames, RecordMaker};
pub use parts::{Entry, Part, Sections};
pub use sections::{dotted, sections};
pub use written::{written, written_inline};
