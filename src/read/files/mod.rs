//! The files of a catalogue's folder.
//!
//! Reading order: [`walk`] finds them and [`kind`] recognises each by its path ([`nature`]: what is no
//! file); [`text`] reads one text, [`load`] those of the catalogue, and [`conflict`] finds unfinished merges
//! in them; [`inputs`] holds both, with one hash over all of it.

mod conflict;
pub(crate) mod inputs;
pub(crate) mod kind;
pub(crate) mod load;
pub(crate) mod nature;
pub(crate) mod text;
pub(crate) mod walk;
