//! Phrases: values of the catalogue in words, the same on every page.
//!
//! In: values of the model and of studies. Out: text and links. Several files add methods to
//! [`Here`](super::setting::book::Here).
//!
//! | file | subject |
//! |---|---|
//! | `enumeration` | "a, b or c" |
//! | `calendar` | one date |
//! | `dates` | sets and intervals of dates, lives, decades |
//! | `sizes` | "212 × 301 mm" |
//! | `papers` | the sheet of paper, its watermarks, its condition |
//! | `mark_names` | marks that have a record |
//! | `matrices` | blocks, plates, stones, screens |
//! | `values` | values of points |
//! | `evidence_words` | how well what was seen fits, and what a point says |
//! | `rights` | licences and statements of rights |
//! | `terms` | terms of vocabularies |
//! | `design_names` | designs, states, printings, points |
//! | `sheet_names` | impressions |
//! | `party_names` | holders and people |
//! | `source_names` | works of the literature, exhibitions |
//! | `link_targets` | the records that links in texts name |
//! | `lots` | numbers of lots and of dealers' lists |
//! | `venues` | where and when an exhibition was shown |
//! | `claims` | certainty, basis and source of a statement |
//! | `earlier_numbers` | citations with the numbers of earlier catalogues |
//! | `readings` | states and printings of a sheet |
//! | `standing_note` | doubtful, rejected, withdrawn |
//! | `refusals` | why a photograph could not be aligned |
//! | `sheet_counts` | how many sheets |
//! | `cautions` | sentences with a link to the cautions |
//! | `imprint` | edition, contact, citation |
//! | `formerly` | numbers and numerals of earlier editions |
//! | `issued_readings` | what an edition said of a sheet |
//! | `citations` | short citations of designs, states, printings and impressions |

mod calendar;
mod cautions;
pub(crate) mod citations;
pub(crate) mod claims;
pub(crate) mod dates;
mod design_names;
pub(crate) mod document_names;
pub(crate) mod earlier_numbers;
pub(crate) mod enumeration;
pub(crate) mod evidence_words;
pub(crate) mod formerly;
pub(crate) mod holding;
pub(crate) mod identifiers;
pub(crate) mod imprint;
pub(crate) mod issued_readings;
mod link_targets;
pub(crate) mod lots;
mod mark_names;
pub(crate) mod matrices;
pub(crate) mod papers;
pub(crate) mod party_names;
pub(crate) mod readings;
pub(crate) mod refusals;
pub(crate) mod rights;
pub(crate) mod series_names;
pub(crate) mod sheet_counts;
mod sheet_names;
pub(crate) mod sizes;
pub(crate) mod source_names;
pub(crate) mod standing_note;
mod terms;
pub(crate) mod values;
pub(crate) mod venues;
