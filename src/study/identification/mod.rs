//! Identification: which state and printing a sheet can be, and what the points of a design tell apart.
//!
//! In: the records of a design, and what was seen on a sheet. Out: candidates, what each allows, which of
//! them an observation excludes, and what to look at next. Definitions: `docs/definitions.md`.
//!
//! | file | subject |
//! |---|---|
//! | [`allowed`] | the values that states and printings show at a point, compared |
//! | [`candidates`] | what a sheet of a design can be |
//! | [`changes`] | what a state changed against those it follows |
//! | [`scale`] | the values of a point, and how well an observation fits them |
//! | [`table`] | the diagnostic table: candidates by points |
//! | [`identify`] | what observations make of the candidates |
//! | [`next_point`] | which point to look at next |
//! | [`separate`] | which candidates no point separates; the smallest set of points |
//! | [`settle`] | what the record of a sheet settles |
//! | [`agree`] | whether observations contradict the recorded identification |
//! | [`couplets`] | the table as a printed key; `leads`: the leads of one point |

pub mod agree;
pub mod allowed;
pub mod candidates;
pub mod changes;
pub mod couplets;
pub mod identify;
mod leads;
pub mod next_point;
pub mod scale;
pub mod separate;
pub mod settle;
pub mod table;
