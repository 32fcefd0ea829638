//! The order in which the sheets of a design were printed, as far as wear, states and dates give it.
//!
//! One sheet was printed before another where a matrix is less worn on it, where its state comes first, or where
//! its printing, or it by its own date, had ended before the other's began. Together these steps give a partial
//! order: what they do not order stays unordered. Each step keeps its reasons. Sheets each of which would have come
//! before the others cannot all be recorded rightly; such a set is one place of the order, told by its shortest
//! cycle.
//!
//! In: a design, and which records are one sheet. Out: [`PrintingOrder`], and the sheets of one number and unlike
//! wear ([`UnlikeWear`]).
//! Definitions: `docs/definitions.md, "Order of printing"`.
//! Method: as an excavation is put in order from pairs of layers that touch, by their transitive reduction (Harris
//! 1979, "Principles of Archaeological Stratigraphy", from memory). The drawing is a Hasse diagram.
//!
//! | file | subject |
//! |---|---|
//! | `reason` | why one sheet was printed before another |
//! | `unchanged` | states between which a matrix did not change |
//! | `evidence` | what places one sheet: its wear, its state, its dates |
//! | `relation` | the transitive closure and reduction of a relation, its cycles |
//! | `order` | the order of a design's sheets |
//! | `unlike_wear` | sheets of one number and unlike wear |

mod evidence;
mod order;
mod reason;
mod relation;
mod unchanged;
mod unlike_wear;

pub use order::{Cycle, CycleStep, Place, PrintingOrder, Step, printing_order};
pub use reason::{DatedBy, Reason, WearStep};
pub use unlike_wear::{UnlikeWear, unlike_wear};
