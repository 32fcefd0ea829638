//! The page of an impression.
//!
//! Reading order: `page` composes it, in the order of the page.
//!
//! | file | subject |
//! |---|---|
//! | `page` | the whole |
//! | `apparatus` | holder, numbers, its condition |
//! | `as_given` | the holder's own description |
//! | `paper` | the sheet itself: its sizes, its paper |
//! | `marks` | one mark in words |
//! | `opinions` | opinions of others |
//! | `observed` | the observations |
//! | `evidence` | the evidence from them |
//! | `evidence_line` | one line of it |
//! | `printing_record` | what printings record, beside what the sheet has |
//! | `provenance` | the line of provenance |
//! | `provenance_of_records` | the entries of several records as one history |
//! | `reading` | the reading of the catalogue, with its grounds |
//! | `records` | what several records of one sheet say together |
//! | `joined_record` | the page at the address of a record that shares another's page |
//! | `diligence` | its owners from 1933 to 1945 |

mod apparatus;
mod as_given;
pub(crate) mod diligence;
mod evidence;
mod evidence_line;
pub(crate) mod joined_record;
pub(crate) mod marks;
pub(crate) mod observed;
pub(crate) mod opinions;
pub(crate) mod page;
mod paper;
mod printing_record;
pub(crate) mod provenance;
pub(crate) mod provenance_of_records;
mod reading;
mod records;
mod told;
