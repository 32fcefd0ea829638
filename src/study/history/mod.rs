//! The history of sheets: when each was printed, who owned it, and who marked it.
//!
//! In: the records of sheets, with their provenance and marks. Out: times, with what
//! is not known. Definitions: `docs/definitions.md`.
//!
//! | file | subject |
//! |---|---|
//! | [`printing_date`] | when a sheet was printed |
//! | [`ownership`] | who owned a sheet when, certainly and possibly |
//! | [`diligence`] | for which days from 1933 to 1945 an owner is recorded |
//! | [`dealings`] | changes of hands and agents of these years, and the records on either side of a gap |
//! | [`marks`] | marks that several people used |

pub mod dealings;
pub mod diligence;
pub mod marks;
pub mod ownership;
pub mod printing_date;
