//! Readings of single cells: small grammars from a text to what it says and the words that it leaves over.
//!
//! In: one cell, and for media, credit lines, numbering, makers and titles the terms of the vocabularies
//! ([`Lexicon`]). Out: a [`Reading`] in the words of the records. English, German, French, Dutch and Japanese.
//!
//! | file | subject |
//! |---|---|
//! | `words` | a text cut into words, numbers and marks, each with its place |
//! | `phrases` | tables of phrases, found in a text whatever its capitals, accents, stops and hyphens |
//! | `outcome` | a reading: what is said, which words were read and which left over, what is doubtful |
//! | `lexicon` | the terms of the vocabularies as phrases |
//! | `numerals` | numbers in words and in kanji |
//! | `dates` | dates with what happened then |
//! | `sizes` | sizes with what was measured, in which unit and how exactly |
//! | `media` | techniques, papers, colours and blocks |
//! | `credit` | how a sheet was acquired, from whom, through whom and when |
//! | `kinds` | the words and abbreviations for kinds of impressions |
//! | `numbering` | the number of a sheet and the size of its edition |
//! | `makers` | people with their roles |
//! | `titles` | titles, with what stands in a title beside it |
//! | `names` | the holders, people and series of the catalogue by their names |
//! | `sightings` | how a sheet was seen, and rights that have an identifier |
//! | `choices` | what is chosen from the lists of our own forms |
//! | `states` | state and number of an earlier catalogue, and what an old state is now |

pub mod choices;
pub mod credit;
pub mod dates;
mod foreign_terms;
pub mod kinds;
pub mod lexicon;
pub mod makers;
pub mod media;
pub mod names;
pub mod numbering;
pub mod numerals;
pub mod outcome;
pub mod phrases;
#[cfg(test)]
mod properties;
pub mod sightings;
pub mod sizes;
pub mod states;
pub mod titles;
pub mod words;

pub use lexicon::Lexicon;
pub use outcome::{Doubt, Reading};
pub use words::Span;
