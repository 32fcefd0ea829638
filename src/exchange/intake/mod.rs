//! Intake: what museums and dealers hand in, read into data. Bytes or text in, data out; nothing is written.
//!
//! | folder | subject |
//! |---|---|
//! | `table` | the tables of a file: XLSX, ODS, CSV, TSV |
//! | `columns` | what each column of a table holds |
//! | `reading` | the grammars of single cells: dates, sizes, media, credit lines, numbers, makers, titles, states |
//!
//! Nothing is guessed silently: every reading says which words it left over and what is doubtful in it.
//!
//! Not here: the records that are proposed, and the disk.

pub mod columns;
pub mod reading;
pub mod table;
