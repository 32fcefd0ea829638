//! Intake: what museums and dealers hand in, read into data. Bytes or text in, data out; nothing is written.
//!
//! | folder | subject |
//! |---|---|
//! | `table` | the tables of a file: XLSX, ODS, CSV, TSV |
//! | `records` | records of open standards as such tables: LIDO, Linked Art, IIIF manifests |
//! | `open` | the tables of any of these files |
//! | `sighting_form` | forms that come in a mail |
//! | `columns` | what each column of a table holds |
//! | `reading` | the grammars of single cells: dates, sizes, media, credit lines, numbers, makers, titles, states |
//! | `handing` | who hands a file in, and what holds for all of its rows |
//! | `facts` | what was understood of a cell or a row, in the words of the records |
//! | `cell` | a cell read as what its column holds |
//! | `photographs` | which photographs are of which rows |
//! | `rows` | a row of a table from its cells |
//! | `pieces` | long texts made piece by piece |
//! | `toml_text` | texts and keys as TOML writes them |
//! | `record` | a row as an impression, and its text |
//! | `corrections` | what a file that comes again changes in the records |
//! | `values` | every distinct value of every column that is read, read once |
//! | `settings` | what editors correct: `columns.toml`, `values.toml` |
//! | `schemas` | JSON Schemas of these files and of `designs.toml` |
//! | `acceptance` | what accepting a batch writes |
//! | `proposal` | what a file proposes: impressions, designs, corrections |
//! | `report` | what was understood: for the editor, for the registrar, for programs |
//! | `known` | what rows name in the catalogue, and what they seem to be in the census |
//! | `grouping` | the designs to which rows belong, with `designs.toml` |
//!
//! Nothing is guessed silently: every reading says which words it left over and what is doubtful in it.
//!
//! Not here: the disk.

pub mod acceptance;
pub mod cell;
pub mod columns;
pub mod corrections;
pub mod facts;
pub mod grouping;
pub mod handing;
pub mod known;
pub mod open;
pub mod photographs;
mod pieces;
pub mod proposal;
pub mod reading;
pub mod record;
pub mod records;
pub mod report;
pub mod rows;
pub mod schemas;
pub mod settings;
pub mod sighting_form;
pub mod table;
pub mod toml_text;
pub mod values;
