//! `designs.toml`: the designs to which the sheets of a house belong, and the recorded impressions that single sheets are;
//! proposed by each run and settled by an editor.
//!
//! | file | subject |
//! |---|---|
//! | `sheet_name` | how the file names a sheet |
//! | `settled_sheets` | which recorded impressions single sheets are, and are not |
//! | `design_settings` | what the file says |
//! | `check` | what is wrong in it against the rows and the catalogue |
//! | `read` | the text read |
//! | `shapes` | its keys, for the schema |
//! | `written` | the text written |

mod check;
mod design_settings;
mod read;
mod settled_sheets;
mod shapes;
mod sheet_name;
mod written;

pub use design_settings::{DesignSettings, SettledDesign, SettledIs};
pub(super) use design_settings::{SettledPlace, SettledPlaces};
pub use read::read;
pub use settled_sheets::{NamedImpression, SettledSheet, SettledSheets};
pub use shapes::FILE;
pub use sheet_name::Written;
pub use written::written;
