//! Reads each kind of record from its file into the model.
//!
//! Reading order: [`record`] parses a file and reads it, once as recorded and once as it may be
//! published. Each kind of record has a file: [`settings`]; [`designs`] for a design's folder, with its
//! [`design`], [`sizes`], [`points`] and [`states`], and the [`impression`]s with their [`sheet`],
//! [`provenance`] and [`pictures`]; [`parties`], which are [`holder`]s and people ([`person`]); [`marks`];
//! [`exhibitions`]; [`terms`], added to the built-in ones ([`vocabulary`]). [`citations`] and what others record of the
//! same thing ([`as_found`]) occur in several kinds, and every record may say which
//! doubts are [`settled`]. [`register`] reads the addresses that were issued.

pub(crate) mod as_found;
pub(crate) mod citations;
pub(crate) mod design;
pub(crate) mod designs;
pub(crate) mod documents;
pub(crate) mod exhibitions;
pub(crate) mod holder;
pub(crate) mod impression;
pub(crate) mod marks;
pub(crate) mod parties;
pub(crate) mod person;
pub(crate) mod pictures;
pub(crate) mod points;
pub(crate) mod provenance;
pub(crate) mod record;
pub(crate) mod register;
pub(crate) mod series;
pub(crate) mod series_places;
pub(crate) mod settings;
pub(crate) mod settled;
pub(crate) mod sheet;
pub(crate) mod sizes;
pub(crate) mod states;
pub(crate) mod terms;
pub(crate) mod unpublished;
pub(crate) mod vocabulary;
