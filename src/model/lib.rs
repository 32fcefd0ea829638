//! The data types of a catalogue. No I/O, no clock, no terminal.
//!
//! | subject | modules, in reading order |
//! |---|---|
//! | names, places, findings | [`key`], [`natural`], [`place`], [`finding`], [`bulk`], [`codes`], [`link`] |
//! | the values records are made of | [`words`], [`standing`], [`edtf`], [`size`], [`boxes`], [`certainty`], [`direction`] |
//! | designs | [`design`], [`point`], [`state`], [`printing`] |
//! | sheets | [`impression`], [`sheet`], [`as_found`], [`mark`], [`picture`], [`picture_terms`], [`provenance`], [`registration`] |
//! | what those refer to | [`holder`], [`person`], [`cited`], [`literature`], [`exhibition`], [`vocabulary`], [`note`] |
//! | the whole | [`settings`], [`theme`], [`catalogue`], [`redacted`], [`occurrence`], [`former`], [`issued_address`], [`register`], [`issued_reading`], [`public`] |
//!
//! Fields are plain and public where every combination of values is a possible record; where something must
//! hold (a key's form, a box inside its picture) the type enforces it.

pub mod as_found;
pub mod boxes;
pub mod bulk;
pub mod catalogue;
pub mod certainty;
pub mod cited;
pub mod codes;
pub mod design;
pub mod direction;
pub mod document;
pub mod edtf;
pub mod exhibition;
pub mod finding;
pub mod former;
pub mod holder;
pub mod impression;
pub mod issued_address;
pub mod issued_reading;
pub mod key;
pub mod link;
pub mod literature;
pub mod mark;
pub mod natural;
pub mod note;
pub mod occurrence;
pub mod person;
pub mod picture;
pub mod picture_terms;
pub mod place;
pub mod point;
pub mod printing;
pub mod provenance;
pub mod public;
pub mod readers_text;
pub mod redacted;
pub mod register;
pub mod registration;
pub mod series;
pub mod series_place;
pub mod settings;
pub mod settled;
pub mod sheet;
pub mod size;
pub mod standing;
pub mod state;
pub mod theme;
pub mod vocabulary;
pub mod words;
