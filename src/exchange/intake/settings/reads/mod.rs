//! What a value reads, as a table of TOML in the words of the records, and back.
//!
//! In and out: [`Facts`](crate::exchange::intake::facts::Facts) of one value. Both directions give the same facts, but for a length that no print
//! reaches, which is told as a fault. Numbers are millimetres, the height first.
//!
//! A size keeps to what its words round: `within` is how far each length may be off, half of the last figure that was
//! written. A size written by an editor without it is as exact as its own figures: `[166, 243]` to half a millimetre,
//! `[166.5, 243]` to a twentieth and a half. Its `said`, the words it was taken from, is the whole value where none stands.
//!
//! | file | subject |
//! |---|---|
//! | `shapes` | the keys of the table |
//! | `write` | facts to a table |
//! | `lengths` | how exactly a length is written |
//! | `read` | a table to facts |

mod lengths;
mod read;
mod shapes;
#[cfg(test)]
mod tests;
mod write;

pub(super) use read::node;
pub(super) use shapes::READS;
pub(super) use write::written;
