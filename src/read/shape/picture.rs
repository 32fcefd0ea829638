//! The keys of a picture of a sheet or of a design.

use super::declare::{Shape, Takes, Target, WAS, may, must, plain, words};
use super::others::LARGEST;
use crate::model::occurrence::MentionRole;
use crate::model::picture::{PictureOf, View};
use crate::model::words::Side;

/// A picture: the keys that every picture has, and the given ones.
macro_rules! picture {
    ($file:literal, $($own:expr),*) => {
        plain(
            "a picture",
            &[
                must(
                    "file",
                    Takes::File,
                    $file,
                ),
                may(
                    "name",
                    Takes::OwnKey,
                    "its name; its side where nothing is said",
                ),
                WAS,
                may(
                    "side",
                    Takes::Word(words::<Side>),
                    "the side it shows; recto where nothing is said",
                ),
                may(
                    "view",
                    Takes::Word(words::<View>),
                    "what it shows of it; whole where nothing is said",
                ),
                may(
                    "caption",
                    Takes::Text,
                    "what it shows, where that is not the sheet's side and view: \"the lower right part only\"",
                ),
                may("date", Takes::Date, "when it was taken or drawn"),
                may(
                    "by",
                    Takes::Party(MentionRole::Photographed),
                    "who took or drew it",
                ),
                may(
                    "light",
                    Takes::Text,
                    "the light it was taken in: \"raking, from the left\", \"ultraviolet\"",
                ),
                may(
                    "px_per_mm",
                    Takes::Above0,
                    "how many pixels of the file show a millimetre, where a scale lay beside",
                ),
                may(
                    "box",
                    Takes::Box,
                    "the part that shows this image, along its edges: [left, top, width, height] in percent",
                ),
                may(
                    "mirrored",
                    Takes::Flag,
                    "whether it shows the image mirrored",
                ),
                may(
                    "ties",
                    Takes::Ties,
                    "points tied by hand: [x, y, x, y] in percent of this picture and of the reference, four or more",
                ),
                may(
                    "bare_paper",
                    Takes::Box,
                    "a part that shows bare paper: [left, top, width, height] in percent",
                ),
                may("largest", LARGEST, "the longest published side, px"),
                may(
                    "rights",
                    Takes::Text,
                    "an SPDX or rightsstatements.org identifier, or free text; else those of the holder or the catalogue",
                ),
                may("credit", Takes::Text, "the credit line"),
                may("publish", Takes::Publish, "false: kept, but not published"),
                $($own,)*
            ],
        )
    };
}

/// A photograph of a sheet.
pub static PICTURE: Shape =
    picture!("the file, below the design's folder: \"pictures/1-recto.jpg\"",);

/// A picture of a document.
pub static PICTURE_OF_DOCUMENT: Shape =
    picture!("the file, below records/documents: \"pictures/ledger-3.jpg\"",);

/// A picture of a design: a drawing, a block, an illustration.
pub static DESIGN_PICTURE: Shape = picture!(
    "the file, below the design's folder: \"pictures/1-recto.jpg\"",
    may("of", Takes::Word(words::<PictureOf>), "what it shows"),
    may(
        "cite",
        Takes::Refers(Target::Cited, MentionRole::Cited),
        "the literature it is taken from, or the document: \"document:KEY\""
    )
    .locator("at"),
    may("at", Takes::Text, "where in it: \"p. 31\"")
);
