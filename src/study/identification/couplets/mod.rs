//! Couplets: a design's diagnostic table as a key for paper.
//!
//! A key of the printed tradition asks one point at a time; each of its leads goes on to another number or
//! ends with the candidates that agree. Each number has the point that is expected to give most information
//! about the candidates left, taken as equally likely, so that a key does not change with every sheet that is
//! found. A candidate goes down every lead that it allows, and one that is not known at the point goes down
//! all of them; leads that go on to the same candidates are one. So a reader who answers correctly never loses
//! the right candidate. Candidates that no point separates end together.
//!
//! A stamp, a paper or an inking alone never ends a key: where a reader would come to an end without an answer at a
//! deciding point, one is asked first, with a lead for what agrees with no candidate. Each end names the deciding
//! points, not yet asked, that would confirm it.
//!
//! In: a diagnostic table; no observation. Out: [`Couplets`].
//! Method: a diagnostic key grown from its head, as reviewed by Payne and Preece 1980 (see `table`),
//! its points chosen by expected information (`next_point`). Parts that recur stand once and are
//! referred to. A key grows with the overlap of its candidates, so it is built breadth first and
//! stops at [`MOST_COUPLETS`]; leads that stop there are marked [`Goal::Stop`].
//! Definitions: `docs/definitions.md, "Couplets"`.
//! Not here: the leads of one point (`leads`).
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use literal::{catalogue, key};
//! # use keyblock::study::{Studies, couplets::{Goal, couplets}, index::CoupletAt};
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! points = [{ key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" }]
//! states = [{ key = "dark", shows = { moon = "absent" } }, { key = "moonlit", shows = { moon = "present" } }]
//! "#);
//! let key = couplets(&Studies::of(&catalogue).designs[&key("1")].table);
//! let leads = &key.couplets[CoupletAt::new(0)].leads;
//! assert_eq!((key.couplets.len(), leads.len()), (1, 2));
//! assert!(leads.iter().all(|lead| lead.goal == Goal::End && lead.candidates.len() == 1));
//! ```
//!
//! | file | subject |
//! |---|---|
//! | `key` | the types of a key |
//! | `growth` | a key grown from its head |
//! | `deciding` | the deciding points, and what could be seen there |
//! | `order` | the couplets in the order of reading |
//! | `confirm` | the points that would confirm an end |

mod confirm;
mod deciding;
mod growth;
mod key;
mod order;
#[cfg(test)]
mod tests;

use super::leads;
use super::table::DiagnosticTable;
pub use growth::MOST_COUPLETS;
pub use key::{Couplet, Couplets, Goal, Lead};
pub use leads::{LeadCondition, Range};

/// The key of a table.
#[must_use]
pub fn couplets(table: &DiagnosticTable) -> Couplets {
    let (grown, deciding) = growth::grow(table);
    let mut couplets = order::in_reading_order(grown);
    confirm::confirm(&deciding, table, &mut couplets);
    Couplets { couplets }
}
