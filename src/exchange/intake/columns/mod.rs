//! What each column of a table holds: from its heading and from its cells, with how sure that is and on what ground.
//!
//! In: a table and the terms of the vocabularies. Out: one [`ColumnReading`] a column, and what columns say against each
//! other ([`ColumnDoubt`]): heights and widths that are exchanged, an accession number that stands twice. Nothing is
//! chosen silently: a doubt stands beside the reading, which stays as the heading says.
//!
//! | file | subject |
//! |---|---|
//! | `holds` | what a column can hold |
//! | `headings` | headings in English, German, French, Dutch, Japanese |
//! | `places` | headings that mean the house or a place in it |
//! | `paths` | paths of LIDO, Linked Art and IIIF, which are the headings of tables of records |
//! | `content` | what cells look like |
//! | `reading` | a column: what it holds, how sure, why |
//! | `checks` | columns against each other |
//! | `proposal` | all of it for a table |

mod checks;
mod content;
mod headings;
mod holds;
mod paths;
mod places;
mod proposal;
mod reading;
#[cfg(test)]
mod tests;

pub use checks::{ColumnDoubt, checked};
pub use holds::Holds;
pub use proposal::{ColumnProposal, columns};
pub use reading::{ColumnReading, Ground};
