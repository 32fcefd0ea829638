//! What the rows of a file seem to be in the catalogue: which designs, states and sheets they name or repeat.
//!
//! In: rows, the catalogue and its studies, everything private included. Out: names resolved, the standing of each row, the
//! records that it may be. For the editors: a [`crate::exchange::intake::proposal::MayBe`] says whether it may be told to
//! others.
//!
//! | file | subject |
//! |---|---|
//! | `names` | the names of the catalogue, made once |
//! | `own` | designs, states and printings in this catalogue's own terms |
//! | `earlier` | references to earlier catalogues |
//! | `state_pairs` | the states of a design beside those of an earlier catalogue |
//! | `works` | columns whose heading names an earlier catalogue |
//! | `numbers` | the sheets by their holders' numbers |
//! | `parts` | what a row names of a design |
//! | `same_sheet` | rows and records that may be one sheet |
//! | `compare` | the standing of each row, and the records that it may be |

mod compare;
mod earlier;
mod names;
mod numbers;
mod own;
mod parts;
mod same_sheet;
mod state_pairs;
mod works;

pub use compare::{Comparison, compare};
pub use earlier::{CitedEntry, CitedPart};
pub use names::CatalogueNames;
pub use numbers::{NumberFit, NumberedSheet, SheetNumbers};
pub use own::Named;
pub use same_sheet::{ReasonWords, Wording};
pub use state_pairs::{PartsMeant, StatePairs};
