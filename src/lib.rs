//! Keyblock compiles plain TOML records with Markdown notes into the cross-linked web catalogue
//! raisonné of a printmaker: one record per design, one per known impression.
//!
//! # The plan of the house
//!
//! Data flows one way; a stage imports only what `tests/all/house.rs` allows, and only the stages
//! marked *disk* touch files.
//!
//! | stage | in | out | |
//! |---|---|---|---|
//! | [`model`] | | the data types: keys, dates, sizes, points, states, impressions | |
//! | [`read`] | files | the model, every value with its place, and findings | disk |
//! | [`study`] | the model | everything computed: numerals, candidates, counts, concordance | |
//! | [`audit`] | the model and studies | findings: everything wrong or doubtful | |
//! | [`picture`] | photographs | pictures as they may be published, cached by content; alignment | disk |
//! | [`page`] | the public model, studies, pictures | the pages, as bytes | |
//! | [`exchange`] | the data that pages are made from | the files for other programs, in open formats | |
//! | [`issue`] | pages, files and pictures | the site on disk, all or nothing | disk |
//! | [`press`] | a catalogue's folder | runs the stages: `judge`, then `pull` | disk |
//! | [`proof`] | a catalogue's folder | a served catalogue, updated as records change | disk |
//! | [`cli`] | arguments | one call, a report, an exit code | disk |
//!
//! # What is promised
//!
//! Addresses of pages, the format of records, the shape of `--json` and the exit codes (DEVELOPERS.md).
//! Rust items are public for the binary and the tests, without promise.
#![forbid(unsafe_code)]

pub mod audit;
pub mod cli;
pub mod exchange;
pub mod issue;
pub mod page;
pub mod press;
pub mod proof;
pub mod read;

pub use keyblock_model as model;
pub use keyblock_picture as picture;
pub use keyblock_study as study;
