//! References: what somebody cites, and what of the catalogue it means.
//!
//! "OP 14 iii", "14.7", "First List 9", an accession number, a title, a name, a key, an address: a reference names one
//! thing, and is looked up whole. (The search finds words anywhere; both cut texts into the same parts, `super::search`.)
//! A reference may have several readings; each has a certainty and a reason.
//!
//! Pure functions over the catalogue as readers may know it. `exchange::resolve_index` publishes the names, and the
//! theme's `references.js` reads references by the same rules in the browser; a test compares the two.
//! Definitions: `docs/definitions.md, "References"`.
//!
//! | file | subject |
//! |---|---|
//! | [`names`] | the names, numbers and keys by which everything can be cited |
//! | [`gather`] | those of a catalogue |
//! | [`former`] | former keys and numerals |
//! | [`reading`] | a reading: what is meant, how certainly, and why |
//! | [`asked`] | a reference cut into its parts |
//! | [`lookup`] | the names by key |
//! | [`part`] | which state, printing or impression of a design is meant |
//! | [`resolver`] | the readings of a reference |
//! | [`settle`] | readings beside each other: their order and certainty |

pub mod asked;
pub mod former;
pub mod gather;
pub mod lookup;
pub mod names;
pub mod part;
pub mod reading;
pub mod resolver;
pub mod settle;
