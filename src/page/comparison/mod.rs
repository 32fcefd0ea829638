//! Comparisons: impressions side by side.
//!
//! | file | subject |
//! |---|---|
//! | `links` | links to comparisons |
//! | `observations` | observations, point by point |
//! | `overlay` | photographs laid on each other |
//! | `recorded` | the page of a comparison that the record defines |
//! | `chosen` | the page on which the reader chooses impressions |

pub(crate) mod chosen;
pub(crate) mod links;
mod observations;
mod overlay;
pub(crate) mod recorded;
