//! Pages of records other than designs and impressions, one each.
//!
//! | file | subject |
//! |---|---|
//! | `holder` | a holder |
//! | `holder_lists` | lists on the pages of holders and people |
//! | `person` | a person |
//! | `work` | a work of the literature |
//! | `exhibition` | an exhibition |
//! | `mark` | a mark that several sheets share |
//! | `document` | a document |
//! | `series` | a series |

pub(crate) mod document;
pub(crate) mod exhibition;
pub(crate) mod holder;
mod holder_lists;
pub(crate) mod mark;
pub(crate) mod person;
pub(crate) mod series;
pub(crate) mod work;
