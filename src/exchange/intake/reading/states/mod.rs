//! State and number of an earlier catalogue, as text: `B. 12 ii/iii`, `II. Zustand`, "only state"; and what an old state
//! is now.
//!
//! In: a cell. Out: author, number and state as it says them. Which entry of ours that is, the concordance decides, not
//! this grammar; [`translated`] carries an old state through pairs that the concordance gives.
//!
//! | file | subject |
//! |---|---|
//! | `said` | what a cell says, as values |
//! | `state` | the grammar of a state |
//! | `references` | the grammar of references to earlier catalogues |
//! | `translated` | what a state of an earlier catalogue is now |

mod references;
mod said;
mod state;
#[cfg(test)]
mod tests;
mod translated;

pub use references::{catalogue_numbers, states};
pub use said::{CatalogueSaid, SaidState, StateRemark};
pub use state::state_at;
pub use translated::{TranslatedState, translated};
