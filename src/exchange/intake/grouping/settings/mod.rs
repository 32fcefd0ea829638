//! `designs.toml`: the designs to which the sheets of a house belong, proposed by each run and settled by an editor.
//!
//! | file | subject |
//! |---|---|
//! | `design_settings` | what the file says, and what is wrong in it against the rows and the catalogue |
//! | `read` | the text read |
//! | `shapes` | its keys, for the schema |
//! | `written` | the text written |

mod design_settings;
mod read;
mod shapes;
mod written;

pub use design_settings::{DesignSettings, SettledDesign, SettledIs, Written};
pub(super) use design_settings::{SettledPlace, SettledPlaces};
pub use read::read;
pub use shapes::FILE;
pub use written::written;
