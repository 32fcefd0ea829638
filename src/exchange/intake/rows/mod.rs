//! Rows: what each row of a table proposes.
//!
//! In: a table, what its columns hold, the readings of their cells, the catalogue. Out: one [`ProposedRow`] a row, with
//! the facts of its cells together, the words left over, and what is doubtful. Which design a row is of, and what it is in
//! the census, is not asked here.
//!
//! | file | subject |
//! |---|---|
//! | `reader` | a row from its cells |
//! | `lengths` | columns of heights and widths, beside sizes in words |
//!
//! [`ProposedRow`]: super::proposal::ProposedRow

mod lengths;
mod reader;
#[cfg(test)]
mod tests;

pub use reader::{RowReader, rows};
