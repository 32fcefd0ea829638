//! Lists: forms that several kinds of page share.
//!
//! | file | subject |
//! |---|---|
//! | `list` | a heading and a line each |
//! | `run_on` | a lead and the items under it, run on |
//! | `facts` | the lines of an apparatus |
//! | `filled` | the columns of a table that some row fills |
//! | `table` | tables without the columns that no row fills |
//! | `checklist` | impressions in a table |
//! | `mentions` | the pages and records that name a record |
//! | `entry` | a record with a line about it and a small picture |
//! | `choices` | the records to choose from in place of a withdrawn one |
//! | `wall` | small pictures of designs and impressions, side by side |
//! | `series_members` | the designs of a series, and what is missing of them |
//! | `custody` | who keeps and who owns a sheet |

pub(crate) mod checklist;
pub(crate) mod choices;
pub(crate) mod custody;
pub(crate) mod entry;
pub(crate) mod facts;
pub(crate) mod filled;
pub(crate) mod list;
pub(crate) mod mentions;
pub(crate) mod run_on;
pub(crate) mod series_members;
pub(crate) mod table;
pub(crate) mod wall;
