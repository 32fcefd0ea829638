//! What accepting a batch writes: records with permanent numbers, corrections in place, photographs.
//!
//! In: the proposal with what its records are made of, the rows that are to be accepted, the photographs. Out: an
//! [`Acceptance`], or why rows that were named cannot be accepted. Nothing is decided here that an editor has to decide: a row
//! is left in the inbox where its design is not known, where its design is new and not settled in `designs.toml`, where its
//! design is doubtful, where it is called a copy, where another row has its number, where it has no holder, or where it may be a sheet that is recorded.
//! The last five are accepted where an editor names the row.
//!
//! A photograph is copied with the rights that the row states, or none; it is published only where the row says that it may be
//! and states the rights.
//!
//! | file | subject |
//! |---|---|
//! | `batch` | what is to be accepted, and what accepting it writes |
//! | `writing` | the records of the rows, and why others stay |
//! | `pictures` | the photographs that a record gets |

mod batch;
mod pictures;
mod writing;

pub use batch::{Acceptance, AcceptedRow, Accepting, LeftRow, RecordText, RowChoice};
pub use writing::accepted;
