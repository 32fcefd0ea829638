//! Pages about the catalogue itself.
//!
//! | file | subject |
//! |---|---|
//! | `opening` | the opening page |
//! | `catalogue_notes` | cautions, how to contribute |
//! | `cite` | how to cite |
//! | `contents` | the ways to all pages about the artist and the catalogue |
//! | `data` | what can be taken from the catalogue, and on what terms |
//! | `field_notes` | the columns of every table |

pub(crate) mod catalogue_notes;
pub(crate) mod cite;
pub(crate) mod contents;
pub(crate) mod data;
pub(crate) mod field_notes;
pub(crate) mod opening;
