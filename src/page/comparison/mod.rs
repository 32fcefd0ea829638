//! Comparisons: sheets beside each other.
//!
//! | file | subject |
//! |---|---|
//! | `links` | links to comparisons |
//! | `rows` | a row of the table and its verdict |
//! | `sheets` | sizes, paper, marks and condition of the sheets |
//! | `observations` | observations, point by point |
//! | `columns` | the plates |
//! | `overlay` | photographs laid on each other |
//! | `recorded` | the page of a comparison that the record defines |
//! | `groups` | sheets of several designs: by mark, by watermark |
//! | `chosen` | the pages on which the reader chooses sheets |

pub(crate) mod chosen;
mod columns;
pub(crate) mod groups;
pub(crate) mod links;
mod observations;
mod overlay;
pub(crate) mod recorded;
mod rows;
mod sheets;
