//! The settings of an intake, which editors correct: what the columns hold, and how values read.
//!
//! `columns.toml` and `values.toml` are written by every run and stay for the next file of the house. What an editor wrote
//! in them is kept; what the program wrote is made anew. The two are told apart by `digest`, the program's mark on its own
//! words: where they no longer fit it, or where it is gone, an editor wrote them.
//!
//! A file with a fault that is an error is not written over, since what the editor meant would be lost.
//!
//! | file | subject |
//! |---|---|
//! | `fault` | what is wrong in a settings file, with line and column |
//! | `parts` | a settings file cut at its headers, each part read alone |
//! | `text` | texts, numbers and comments as TOML writes them |
//! | `reads` | what a value reads, as a table of TOML and back |
//! | `columns` | `columns.toml` |
//! | `values` | `values.toml` |

pub mod columns;
mod fault;
mod parts;
mod reads;
pub(super) mod text;
pub mod values;

pub use fault::SettingFault;
