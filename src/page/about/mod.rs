//! Pages about the catalogue itself.
//!
//! | file | subject |
//! |---|---|
//! | `opening` | the opening page |
//! | `catalogue_notes` | cautions, how to contribute, the data |
//! | `cite` | how to cite |

pub(crate) mod catalogue_notes;
pub(crate) mod cite;
pub(crate) mod opening;
