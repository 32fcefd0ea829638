//! References: the page where readers paste them and get addresses, and the words of readings.
//!
//! Which readings a reference has is decided by `study::resolve`; in the browser the theme's `references.js` does the
//! same with the names that `exchange::resolve_index` writes.

pub(crate) mod page;
pub(crate) mod reasons;
