//! What editions issued, and what changed from each to the next.
//!
//! | file | subject |
//! |---|---|
//! | [`subjects`] | the subject of an entry that each key of a record belongs to |
//! | [`present`] | every address of the catalogue as it is now, and how its entry reads |
//! | [`advance`] | the register with one more edition |
//! | [`account`] | what one edition changed, by design and by holder, from the register alone |
//! | [`readings`] | how numbers and numerals read in each edition |
//! | [`editions`] | all of these, for pages |
//!
//! What changed since the last edition is the account of an edition that the register would get now; so the page of
//! what changed since and the page of an edition are made alike.
//! Definitions: `docs/definitions.md, "The register"`.

pub mod account;
pub mod advance;
pub mod editions;
pub mod present;
pub mod readings;
pub mod subjects;
