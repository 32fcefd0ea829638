//! Indexes: pages that gather records of one kind, each a list in an order of its own.
//!
//! | file | subject |
//! |---|---|
//! | `designs` | designs by number and date |
//! | `titles` | titles by letter |
//! | `gathered` | designs by series, subject and technique; impressions by paper |
//! | `holders` | holders by city |
//! | `people` | people by letter |
//! | `owners` | former owners by letter |
//! | `marks_index` | marks on sheets |
//! | `diligence_index` | the years 1933 to 1945 |
//! | `chronology` | dated events, year by year |
//! | `exhibitions` | exhibitions by date |
//! | `literature` | works cited |
//! | `concordance` | this catalogue's numbers and those of earlier catalogues |
//! | `own_editions` | this catalogue's numbers and those of its earlier editions |
//! | `glossary` | terms |

pub(crate) mod chronology;
pub(crate) mod concordance;
pub(crate) mod designs;
pub(crate) mod diligence_index;
pub(crate) mod documents;
pub(crate) mod exhibitions;
pub(crate) mod gathered;
pub(crate) mod glossary;
pub(crate) mod holders;
pub(crate) mod literature;
pub(crate) mod marks_index;
pub(crate) mod own_editions;
pub(crate) mod owners;
pub(crate) mod people;
pub(crate) mod titles;
