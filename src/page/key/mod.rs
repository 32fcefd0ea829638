//! The identification key of a design: on screen, as couplets, and as a sheet to take along.
//!
//! | file | subject |
//! |---|---|
//! | `candidates` | what a sheet of the design can be |
//! | `points` | the points, with their details |
//! | `couplets` | the couplets |
//! | `data` | the table for the script |
//! | `choose` | the way to the keys: which print is it? |
//! | `page` | the page of the key |
//! | `examination_sheet` | the points on paper |
//! | `recorded` | what the table records, in words |
//! | `prefilled` | the link to the key with a record's observations |

pub(crate) mod candidates;
pub(crate) mod choose;
mod couplets;
mod data;
pub(crate) mod examination_sheet;
pub(crate) mod page;
mod points;
pub(crate) mod prefilled;
pub(crate) mod recorded;
