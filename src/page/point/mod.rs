//! The page of a point.
//!
//! | file | subject |
//! |---|---|
//! | `page` | the whole |
//! | `tones` | its tone on each photograph |

pub(crate) mod page;
mod tones;
