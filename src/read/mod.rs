//! Reading: the files of a catalogue to its model, every value with its place.

pub mod shape;
