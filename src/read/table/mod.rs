//! Typed reading of one table of a record.
//!
//! Reading order: [`cursor`] takes values from a table by the keys that its shape declares; [`rest`]
//! reports unknown and missing keys; [`fields`] reads the values; [`keyed`] reads lists of tables that
//! have keys of their own; [`length`] finds lists that are too long to be read.

mod cursor;
pub(crate) mod fields;
pub(crate) mod keyed;
pub(crate) mod length;
mod rest;
