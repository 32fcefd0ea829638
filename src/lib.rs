//! Keyblock compiles plain TOML records with Markdown notes into the cross-linked web catalogue
//! raisonné of a printmaker: one record per design, one per known impression.
//!
//! # The plan of the house
//!
//! Data flows one way; a stage imports only what `tests/all/house.rs` allows it, and only those
//! marked *disk* touch files.
//!
//! | stage | in | out | |
//! |---|---|---|---|
//! | [`model`] | | what a catalogue is: keys, dates, sizes, points, states, impressions | |
//! | [`read`] | files | the model, every value with its place, and findings | disk |
//! | [`study`] | the model | what scholarship computes: numerals, candidates, counts, concordance | |
//! | [`audit`] | the model and studies | findings: what is wrong or doubtful | |
//! | [`picture`] | photographs | pictures as they may be published, kept by content | disk |
//! | [`page`] | the public model, studies, pictures | the pages, as text | |
//! | [`exchange`] | what pages are set from | the files for other programs, in open formats | |
//! | [`issue`] | pages, files and pictures | the site on disk, all or nothing | disk |
//! | [`press`] | a catalogue's folder | the stages in their order: judge, then pull | disk |
//! | [`proof`] | everything above | a served catalogue that follows its records | disk |
//! | [`cli`] | words typed | one call, a report, an exit code | disk |
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
pub mod study;

pub use keyblock_model as model;
pub use keyblock_picture as picture;
