//! Corrections: what a file that comes again changes in a record.
//!
//! In: a record, the row that has its holder and accession number, and what intake would make of the record's own
//! `[as_given]` ([`Reintake`]). Out: [`Correction`]s, and the record's text with those that are accepted.
//!
//! What stands in a record came from intake where it is what the words in `[as_given]` read; everything else a scholar
//! wrote. So for each key:
//!
//! | the old words read | the new words read | recorded | then |
//! |---|---|---|---|
//! | a | a | anything | nothing: a scholar's reading, or an empty key, stays |
//! | a | b | a | corrected to b |
//! | a | b | b | nothing |
//! | a | b | c | kept, and told |
//! | nothing | b | nothing | b is added |
//! | a | nothing | a | kept, and told |
//!
//! (docs/definitions.md, "Files that come again"). A record without `[as_given]` was entered by hand: its old words read nothing. The words themselves (`as_given`) follow
//! the file; a field of which the file has no column stays, and is told.
//!
//! | file | subject |
//! |---|---|
//! | `before` | the words that a record has from the file before |
//! | `flat` | a record as keys with values, and lists of tables |
//! | `compare` | which keys change |
//! | `reintake` | the same for the rows of a table |
//! | `applied` | the text of a record with its corrections |
//! | `layout` | where in a text keys stand, and where further ones go |
//!
//! [`Correction`]: super::proposal::Correction

mod applied;
mod before;
mod compare;
mod flat;
mod layout;
mod reintake;
#[cfg(test)]
mod tests;

pub use applied::{NotApplied, applied};
pub use compare::{changes_something, corrections};
pub use reintake::Reintake;
