//! Drawings: inline SVG beside the words or the table that say the same.
//!
//! | file | subject |
//! |---|---|
//! | `bars` | bars, squares and columns of counts |
//! | `diagram` | things in columns, joined by lines |

pub(crate) mod bars;
pub(crate) mod diagram;
