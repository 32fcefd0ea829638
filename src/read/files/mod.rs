//! The files of a catalogue's folder.
//!
//! Reading order: [`walk`] finds them and recognises each by its path; [`load`] reads the texts, and
//! [`conflict`] finds unfinished merges in them; [`inputs`] holds both, with one hash over all of it.

mod conflict;
pub(crate) mod inputs;
pub(crate) mod load;
pub(crate) mod walk;
