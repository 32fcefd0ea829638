//! Dates: what happened when, in EDTF.
//!
//! "c.1830–5, published 1840; reprinted 1970s" gives three statements: the design about 1830 to 1835, a printing of
//! 1840, another of the 1970s. The verb says of what the date is; without one it is the design's.
//!
//! | file | subject |
//! |---|---|
//! | `statement` | what is said: an act, of what it is the date, and when |
//! | `verbs` | the words for acts |
//! | `extent` | a time before it is written as EDTF: its ends, each approximate or uncertain |
//! | `calendar` | months, seasons, and the words around dates |
//! | `eras` | Japanese eras |
//! | `moments` | one time in a text: a day, a month, a year, a decade, a century, parts of them |
//! | `spans` | spans, alternatives, before and after |
//! | `grammar` | the list of statements in a cell |

mod calendar;
mod eras;
mod extent;
#[cfg(test)]
mod golden;
mod grammar;
mod moments;
mod spans;
mod statement;
mod verbs;

pub use grammar::dates;
pub use statement::{Act, DateOf, DateStatement, When};
