//! Search: what a reader may type to find a record, and in which order records are found.
//!
//! Pure functions: no record is read here and no file written. `page::search` says what of each record is
//! searched, `exchange::search_index` writes the files, and the theme's `find.js` looks things up in them in
//! the browser. Definitions: `docs/definitions.md, "Search"`.
//!
//! | file | subject |
//! |---|---|
//! | [`folding`] | the table by which letters are compared, the same here and in the browser |
//! | [`words`] | a text as words, a number as a key |
//! | [`entry`] | a record as it is searched and shown, and what readers narrow by |
//! | [`query`] | what people write before a number and leave off its key |
//! | [`index`] | every word with the entries that have it |
//! | [`sets`] | a set of entries as short text |
//! | [`shards`] | the words cut into files, one for each word that a reader can type |
//! | [`columns`] | the values of every entry that readers narrow by |

pub mod columns;
pub mod entry;
pub mod folding;
pub mod index;
pub mod query;
pub mod sets;
pub mod shards;
pub mod words;
