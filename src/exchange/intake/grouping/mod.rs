//! Rows grouped into the designs to which they belong, as a proposal with reasons.
//!
//! In: the rows of a file, the catalogue, what an editor settled in `designs.toml`. Out: the designs, each with its rows and
//! with the reasons of every join and split. What comes first decides:
//!
//! 1. what an editor settled, by accession number: the recorded impression that a sheet is, else its design;
//! 2. the record under which the holder keeps the sheet;
//! 3. a number or key of this catalogue, or the number of an earlier one through the concordance;
//! 4. the title (folded, without its article, in any language of the design's `titles`), with the size of the image or
//!    platemark, else the date and the series.
//!
//! Sheets without a title never join by it. Where two of these contradict each other neither is chosen: the design is one of
//! several, and a doubt says why. Rows of no recorded design are grouped among themselves by the same rules.
//!
//! | file | subject |
//! |---|---|
//! | `titles` | titles as they are compared |
//! | `extent` | the size of what was printed, and whether two agree |
//! | `clues` | what a row says of its design |
//! | `placement` | where a row belongs, and why |
//! | `recorded` | the designs of the catalogue |
//! | `series_names` | the series of the catalogue |
//! | `clusters` | new designs |
//! | `grouped` | all rows |
//! | `keyed` | the keys that new designs would get |
//! | `new_design` | the record of a new design |
//! | `design_toml` | its text |
//! | `settings` | `designs.toml` |
//!
//! Not here: what a row is in the census (`known`).

mod clues;
mod clusters;
mod design_toml;
mod extent;
mod grouped;
mod keyed;
mod new_design;
mod placement;
mod recorded;
mod series_names;
pub mod settings;
mod titles;

pub use design_toml::design_toml;
pub use grouped::grouped;
pub use keyed::keyed;
pub use new_design::{NewDesign, NewDesignMaker, technique_of_rows};
pub use titles::title_key;
