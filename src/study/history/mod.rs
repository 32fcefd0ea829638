//! The history of sheets: when each was pulled and printed, who owned it, and who marked it.
//!
//! In: the records of sheets, with their provenance, marks and observed wear. Out: orders and times, with what
//! is not known. Definitions: `docs/definitions.md`.
//!
//! | file | subject |
//! |---|---|
//! | [`wear`] | the order in which sheets were pulled, from wear of the matrices |
//! | [`printing_date`] | when a sheet was printed |
//! | [`ownership`] | who owned a sheet when, certainly and possibly |
//! | [`diligence`] | for which days from 1933 to 1945 an owner is recorded |
//! | [`marks`] | marks that several people used |

pub mod diligence;
pub mod marks;
pub mod ownership;
pub mod printing_date;
pub mod wear;
