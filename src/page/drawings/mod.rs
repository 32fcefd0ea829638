//! Drawings: inline SVG, each beside words or a table with the same content.
//!
//! | file | subject |
//! |---|---|
//! | `bars` | bars, squares and columns of counts |
//! | `diagram` | nodes in columns, joined by lines |
//! | `squares` | rows of squares, one a sheet |

pub(crate) mod bars;
pub(crate) mod diagram;
pub(crate) mod squares;
