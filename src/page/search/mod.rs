//! Search: what of each record is searched, the page on which results stand, and the page for an address
//! that leads to nothing.
//!
//! | file | subject |
//! |---|---|
//! | `entries` | everything that is searched, in the order in which equally good results stand |
//! | `designs` | designs, their states and printings |
//! | `impressions` | impressions |
//! | `marks` | marks and watermarks |
//! | `parties` | holders and people |
//! | `publications` | the literature, exhibitions, series, documents |
//! | `texts` | the catalogue's own pages, its indexes, the terms of its glossary |
//! | `former` | former keys, which old addresses show |
//! | `narrowing` | the values by which readers narrow a search |
//! | `page` | the search page |
//! | `not_found` | the page for an address that leads to nothing |
//! | `ways` | the field, and the indexes for readers without scripts |
//!
//! Entries are made of what pages and addresses show, from the public catalogue alone. The index itself is made by
//! `study::search` and written by `exchange::search_index`.

mod designs;
pub(crate) mod entries;
mod former;
mod impressions;
mod marks;
mod narrowing;
pub(crate) mod not_found;
pub(crate) mod page;
mod parties;
mod publications;
mod texts;
mod ways;
