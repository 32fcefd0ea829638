//! The kinds of record: from a file to the model.
//!
//! Reading order: [`record`] parses a file and reads it, once as recorded and once as it may be
//! published. Then a file for each kind: [`settings`]; [`designs`], a design's folder, with its
//! [`design`], [`points`] and [`states`], and the [`impression`]s with their [`provenance`] and
//! [`pictures`]; [`parties`], which are [`holder`]s and people ([`person`]); [`exhibitions`]; [`terms`]
//! beside those that are built in ([`vocabulary`]). [`citations`] are part of several kinds.

pub(crate) mod citations;
pub(crate) mod design;
pub(crate) mod designs;
pub(crate) mod exhibitions;
pub(crate) mod holder;
pub(crate) mod impression;
pub(crate) mod parties;
pub(crate) mod person;
pub(crate) mod pictures;
pub(crate) mod points;
pub(crate) mod provenance;
pub(crate) mod record;
pub(crate) mod settings;
pub(crate) mod states;
pub(crate) mod terms;
pub(crate) mod vocabulary;
