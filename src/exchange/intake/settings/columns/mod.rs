//! `columns.toml`: what the columns of a file hold, for an editor to correct, and what holds for all of its rows.
//!
//! The first run writes it from what headings and cells tell. An editor's word wins over that, and the next file of the
//! house is read by it, column by column by their headings, in whatever order they stand. A column that the program once
//! recognised stays as it was; one that it did not is looked at again.
//!
//! | file | subject |
//! |---|---|
//! | `settings` | the settings |
//! | `read` | the file to settings |
//! | `join` | settings and what this file tells |
//! | `write` | settings to the file |

mod join;
mod read;
mod settings;
#[cfg(test)]
mod tests;
mod write;

pub use join::joined;
pub use read::{FILE, read};
pub use settings::ColumnSettings;
pub use write::written;
