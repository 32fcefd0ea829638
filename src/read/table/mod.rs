//! Typed reading of one table of a record.
//!
//! Reading order: [`cursor`] takes values from a table by the keys that its shape declares; [`rest`]
//! reports unknown and missing keys; [`fields`] reads the values; [`keyed`] reads lists of tables that
//! have keys of their own.

mod cursor;
pub(crate) mod fields;
pub(crate) mod keyed;
mod rest;
