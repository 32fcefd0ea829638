//! Every distinct value of every column that is read, read once.
//!
//! In: a table, what its columns hold, the terms and names of the catalogue, and what an editor corrected. Out:
//! [`Values`]: for each distinct text of a column its reading, the editor's word first. The cells of other columns are not
//! kept.
//!
//! A value takes some 250 bytes with its text, whatever the number of its rows: 50,000 distinct titles take 12 MB.
//!
//! | file | subject |
//! |---|---|
//! | `sureness` | how sure a value is |
//! | `settled` | what an editor corrected, and which value it is for |
//! | `kept` | a reading as it is kept, in little room |
//! | `distinct` | the distinct values of a table |

mod distinct;
mod kept;
mod settled;
mod sureness;
#[cfg(test)]
mod tests;

pub use distinct::{DistinctValue, ValueColumn, Values};
pub use kept::KeptReading;
pub use settled::{SettledValue, SettledValues};
pub use sureness::Sureness;
