//! The data that pages are made from.

use super::setting::exports::Exports;
use super::setting::pictures::{Alignments, Pictures};
use crate::model::public::Public;
use crate::model::theme::Theme;
use crate::study::PublishedStudies;

/// The data that pages are made from.
#[derive(Clone, Copy)]
pub struct Input<'a> {
    /// The catalogue, without private data.
    pub public: &'a Public,
    /// The studies: everything computed from what may be published.
    pub studies: &'a PublishedStudies,
    /// The pictures that may be shown.
    pub pictures: &'a Pictures,
    /// The results of alignment.
    pub alignments: &'a Alignments,
    /// The files for other programs that pages link to (`exchange`).
    pub exports: &'a Exports,
    /// The theme.
    pub theme: &'a Theme,
}
