//! The fewest sheets that unresolved doubts allow.
//!
//! Sheets are joined by "may be the same sheet". A set in which every two may be the same could be
//! one sheet (a clique), so the fewest sheets are the fewest cliques that cover all of them.
//!
//! A row of the census counts some of the sheets only. A clique that also holds a sheet of another value costs nothing
//! there, since it is then counted elsewhere.
//!
//! In: a graph of sheets. Out: [`Cover`].
//! Method: minimum clique cover, which is graph colouring of the complement and hard in general (Karp 1972).
//! Doubts come in small clusters, so each connected part of up to [`EXACT_UP_TO`] sheets is solved exactly by
//! branch and bound; larger ones are bounded from below by a set of which no two may be the same. Of such a set, each
//! clique holds one sheet at most, which also bounds the branches (Kuhn's algorithm finds how many the cliques at hand
//! can take).
//! Definitions: `docs/definitions.md, "Distinct sheets"` and `"Rows of the census"`.
//! Not here: which records may be of the same sheet (`count`).
//!
//! A ring of five takes three cliques, because its complement is a ring of five too, whose chromatic number is 3:
//! ```
//! # use keyblock::study::clique_cover::{Cover, Graph};
//! # use keyblock::study::index::SheetAt;
//! let mut ring = Graph::unjoined(5);
//! for at in 0..5 {
//!     ring.join(SheetAt::new(at), SheetAt::new((at + 1) % 5));
//! }
//! assert_eq!(ring.cover(), Cover { at_least: 3, exact: true });
//! ```
//!
//! | file | subject |
//! |---|---|
//! | `graph` | the graph of sheets |
//! | `cover` | the graph covered part by part |
//! | `exact` | a small part, exactly |
//! | `bound` | a lower bound for a large part |

mod bound;
mod cover;
mod exact;
mod graph;
#[cfg(test)]
mod tests;

pub use cover::{Cover, EXACT_UP_TO};
pub use graph::Graph;
