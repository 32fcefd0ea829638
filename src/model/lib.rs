//! What a catalogue is, with no file, clock or terminal in sight.
//!
//! Reading order: [`key`], [`place`], [`finding`] and [`codes`] are the ground everything stands on;
//! [`edtf`], [`size`], [`boxes`], [`certainty`] and [`words`] are the values records are made of;
//! [`design`] with its [`point`]s, [`state`]s and [`printing`]s, and [`impression`] with its
//! [`mark`]s, [`picture`]s and [`provenance`], are the records of prints; [`registration`] says how
//! one photograph lies on another; [`holder`], [`person`],
//! [`literature`], [`exhibition`], [`vocabulary`] and [`note`] are what those refer to;
//! [`occurrence`] lists the texts and references of each record; [`catalogue`] holds them all, and [`public`] is the catalogue without what is private.
//!
//! Fields are plain and public where every combination of values is a possible record; where
//! something must hold (a key's form, a box inside its picture) the type enforces it.

pub mod boxes;
pub mod catalogue;
pub mod certainty;
pub mod codes;
pub mod design;
pub mod edtf;
pub mod exhibition;
pub mod finding;
pub mod holder;
pub mod impression;
pub mod key;
pub mod link;
pub mod literature;
pub mod mark;
pub mod note;
pub mod occurrence;
pub mod person;
pub mod picture;
pub mod place;
pub mod point;
pub mod printing;
pub mod provenance;
pub mod public;
pub mod registration;
pub mod settings;
pub mod size;
pub mod state;
pub mod theme;
pub mod vocabulary;
pub mod words;
