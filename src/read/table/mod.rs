//! Typed reading of one table of a record.
//!
//! Reading order: [`faults`] collects what is found wrong and knows which tables stand around the reader; [`fields`]
//! reads the keys that the table's shape declares; [`keyed`] reads lists of tables that have keys of
//! their own.

pub(crate) mod faults;
pub(crate) mod fields;
pub(crate) mod keyed;
