//! What changed in each edition and since the last, by entry and by holder.
//!
//! | file | subject |
//! |---|---|
//! | `wording` | a change in words |
//! | `account` | the account of an edition as a part of a page |
//! | `then_and_now` | how numbers and numerals read in an edition, where they read otherwise now |
//! | `latest` | the page of changes: since the last edition, the last edition, every edition |
//! | `edition` | the page of an edition |

mod account;
pub(crate) mod edition;
pub(crate) mod latest;
mod then_and_now;
pub(crate) mod wording;
