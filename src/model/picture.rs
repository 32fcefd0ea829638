//! Pictures: photographs of sheets, and the design's own illustrations.

use super::boxes::PercentBox;
use super::edtf::Date;
use super::key::Key;
use super::literature::Cited;
use super::place::{Place, Placed};
use super::provenance::Party;
use super::words::{Side, closed_list};

closed_list! {
    /// The view of a sheet that a picture shows.
    View {
        /// The whole sheet; the default.
        Whole = "whole",
        /// A detail.
        Detail = "detail",
        /// In raking light.
        Raking = "raking",
        /// In transmitted light.
        Transmitted = "transmitted",
    }
}

closed_list! {
    /// The subject of a picture that is recorded with a design.
    PictureOf {
        /// A drawing for the design.
        Drawing = "drawing",
        /// A block, plate or stone.
        Matrix = "matrix",
        /// An illustration from elsewhere.
        Illustration = "illustration",
    }
}

impl Picture {
    /// The rights in it; empty where nothing states them, which is an error of the record.
    #[must_use]
    pub fn rights_text(&self) -> &str {
        self.rights.as_ref().map_or("", |rights| rights.as_str())
    }

    /// Whether its record, or a default that was filled in, keeps it from readers.
    #[must_use]
    pub fn is_withheld(&self) -> bool {
        self.publish == Some(false)
    }
}

/// A picture.
#[derive(Clone, Debug, PartialEq)]
pub struct Picture {
    /// Its name within its record; its side where none is given.
    pub name: Placed<Key>,
    /// The file, relative to the folder of the design or of the documents, with `/`.
    pub file: Placed<String>,
    /// The same relative to the catalogue.
    pub path: String,
    /// The side it shows.
    pub side: Side,
    /// The view it shows of that side.
    pub view: View,
    /// What it shows, in the words of the record, where that is not the sheet's side and view.
    pub caption: Option<String>,
    /// When it was taken or drawn.
    pub date: Option<Placed<Date>>,
    /// Who took or drew it.
    pub by: Option<Party>,
    /// The light it was taken in, in words.
    pub light: Option<String>,
    /// The pixels of the file in a millimetre of what it shows.
    pub px_per_mm: Option<f64>,
    /// The part that shows this image, where a picture shows more (an uncut sheet).
    pub area: Option<PercentBox>,
    /// Whether it shows the image mirrored (a counterproof).
    pub mirrored: bool,
    /// Hand-set ties to the reference picture: `[x, y, x, y]`, percent of this picture and of the
    /// reference; none, or four and more.
    pub ties: Vec<[f64; 4]>,
    /// A part that shows bare paper, against which tones are measured.
    pub bare_paper: Option<PercentBox>,
    /// The longest published side in px, where it is less than the catalogue's.
    pub largest: Option<u32>,
    /// The rights, as an SPDX or rightsstatements.org identifier or free text; `None` where the record says nothing. In
    /// a catalogue as readers may know it those of its holder or of the catalogue stand in place of that.
    pub rights: Option<Placed<String>>,
    /// The credit line.
    pub credit: Option<String>,
    /// Whether it may be published; `None` where the record says nothing ([`super::picture_terms`]).
    pub publish: Option<bool>,
    /// The subject, for a picture of a design.
    pub of: Option<PictureOf>,
    /// Where it is taken from.
    pub cite: Option<Placed<Cited>>,
    /// Where in that.
    pub at: Option<String>,
    /// Where it is recorded.
    pub place: Place,
}

/// The table `[pictures]` of a holder or of the catalogue: what holds where a picture says nothing.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PictureDefaults {
    /// The rights.
    pub rights: Option<Placed<String>>,
    /// The credit line.
    pub credit: Option<Placed<String>>,
    /// Whether pictures are published.
    pub publish: Option<Placed<bool>>,
}

impl PictureDefaults {
    /// Whether it refuses to publish.
    pub(super) fn refuses(&self) -> bool {
        self.publish.as_ref().is_some_and(|publish| !publish.value)
    }
}
