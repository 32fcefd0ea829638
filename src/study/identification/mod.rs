//! Identification: which state and printing a sheet can be, and which of these the points of a design
//! separate.
//!
//! In: the records of a design, and what was seen on a sheet. Out: candidates, the values each allows,
//! those an observation excludes, and the points to look at next. Definitions: `docs/definitions.md`.
//!
//! | file | subject |
//! |---|---|
//! | [`assumptions`] | how often observations err and sheets depart from the record |
//! | [`allowed`] | the values that states and printings show at a point, compared |
//! | [`candidates`] | the states and printings a sheet can be of |
//! | [`changes`] | how a state differs from those it follows |
//! | [`scale`] | the values of a point, and how well an observation fits them |
//! | [`table`] | the diagnostic table: candidates by points |
//! | [`identify`] | the candidates weighed by observations |
//! | [`evidence`] | the evidence for each state and each printing, as people are told it |
//! | [`grades`] | how well what was seen fits a state or printing, with the words |
//! | [`next_point`] | which point to look at next; `answer_chances`: what an answer is expected to tell |
//! | [`printing_record`] | what the records of printings say of a sheet's paper, inks, numbering and blocks |
//! | [`remaining`] | the candidates that nothing recorded of a sheet excludes |
//! | [`separate`] | which candidates no point separates; the smallest set of points |
//! | [`settle`] | what the record of a sheet settles |
//! | [`agree`] | whether observations contradict the recorded identification |
//! | [`couplets`] | the table as a printed key; `leads`: the leads of one point |

pub mod agree;
pub mod allowed;
mod answer_chances;
pub mod assumptions;
pub mod candidates;
pub mod changes;
pub mod couplets;
pub mod evidence;
pub mod grades;
pub mod identify;
mod leads;
pub mod next_point;
pub mod printing_record;
pub mod remaining;
pub mod scale;
pub mod separate;
pub mod settle;
pub mod table;
