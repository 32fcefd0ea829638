//! The page of a design.
//!
//! Reading order: `page` composes it, in the order of the page.
//!
//! | file | subject |
//! |---|---|
//! | `page` | the whole |
//! | `brief` | date and technique, under the title |
//! | `apparatus` | titles, makers, matrices |
//! | `sizes` | sizes by state, or as measured on the sheets |
//! | `states` | the changes in each state |
//! | `point_table` | points against states or printings |
//! | `descent` | which state was made from which |
//! | `told_apart` | the points that separate the states |
//! | `printing_order` | the order of printing, with its reasons |
//! | `printings` | printings and variants |
//! | `alike_sheets` | what tells the sheets of one holder apart |
//! | `holdings` | the impressions, by state, printing and place |
//! | `sources` | literature, concordance, exhibitions, related designs |

mod alike_sheets;
mod apparatus;
pub(crate) mod brief;
mod descent;
mod holdings;
pub(crate) mod page;
pub(crate) mod point_table;
mod printing_order;
pub(crate) mod printings;
mod sizes;
mod sources;
pub(crate) mod states;
mod told_apart;
