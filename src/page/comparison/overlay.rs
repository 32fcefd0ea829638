//! Overlays of photographs: the data of the script (`assets/compare.js`) with the map of each
//! photograph onto their common frame, or the reason why there is none.

use std::collections::BTreeMap;

use serde::Serialize;

use super::observations::{self, RowData, Verdict};
use crate::model::boxes::PercentBox;
use crate::model::design::Design;
use crate::model::impression::Impression;
use crate::model::key::PictureKey;
use crate::model::registration::{Homography, Registration};
use crate::page::phrases::refusals;
use crate::page::plates::figures;
use crate::page::plates::viewer::{self, ViewerPicture};
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::pictures::PublishedPicture;

/// The data of a comparison.
#[derive(Serialize)]
struct Data<'a> {
    sheets: Vec<SheetData>,
    /// The common frame; `None` where no photograph could be aligned.
    #[serde(skip_serializing_if = "Option::is_none")]
    frame: Option<FrameData>,
    /// The rows of the table, where the reader chooses its columns.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    rows: Vec<&'a RowData>,
    words: BTreeMap<&'static str, String>,
    /// The sentence for each number of differing points.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    counts: Vec<String>,
}

/// A sheet and the photograph that represents it.
#[derive(Serialize)]
struct SheetData {
    /// In addresses.
    key: String,
    /// As readers cite it.
    number: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    picture: Option<ViewerPicture>,
    /// The map from the photograph's published pixels to the frame's, row by row.
    #[serde(skip_serializing_if = "Option::is_none")]
    onto: Option<[f64; 9]>,
    /// Why the photograph has no map.
    #[serde(skip_serializing_if = "Option::is_none")]
    why: Option<String>,
}

#[derive(Serialize)]
struct FrameData {
    width: u32,
    height: u32,
    #[serde(skip_serializing_if = "Option::is_none")]
    mm: Option<f64>,
    /// The printed image on the frame: left, top, width, height in percent.
    #[serde(skip_serializing_if = "Option::is_none")]
    image: Option<[f64; 4]>,
}

/// The photograph that serves as frame, and the map onto it from the reference picture's pixels.
struct SharedFrame<'b> {
    key: PictureKey,
    published: &'b PublishedPicture,
    from_reference: Homography,
}

/// The words of the script, with the arguments it fills.
const WORDS: [(&str, &[&str]); 14] = [
    ("compare-no-picture", &["number"]),
    ("compare-not-laid", &["number", "why"]),
    ("compare-side-only", &[]),
    ("compare-choose", &[]),
    ("compare-choose-one-more", &[]),
    ("compare-four-chosen", &[]),
    ("compare-edge-between", &["first", "second"]),
    ("compare-now", &["number"]),
    ("compare-opacity-of", &["first", "second"]),
    ("compare-difference-of", &["first", "second"]),
    ("compare-difference-share", &["percent"]),
    ("compare-difference-share-of-image", &["percent"]),
    ("compare-unreadable", &[]),
    ("nothing-observed", &[]),
];

/// The data of a comparison of `sheets`, with the rows of its table where the reader chooses columns.
pub(super) fn data(
    here: &Here<'_>,
    design: &Design,
    sheets: &[&Impression],
    rows: Vec<&RowData>,
) -> CleanHtml {
    let pictures: Vec<Option<PictureKey>> = sheets
        .iter()
        .map(|sheet| figures::leading_picture(here, sheet))
        .collect();
    let frame = frame(here, design, pictures.iter().flatten());
    let words = here.words();
    let filled = WORDS
        .iter()
        .map(|(id, places)| (*id, words.left_open(id, places)));
    let verdicts = Verdict::ALL
        .iter()
        .map(|verdict| (verdict.word_id(), words.word(verdict.word_id()).to_owned()));
    let counts = match rows.len() {
        0 => 0..0,
        all => 0..all + 1,
    };
    CleanHtml::data(&Data {
        sheets: sheets
            .iter()
            .zip(&pictures)
            .map(|(sheet, picture)| sheet_data(here, frame.as_ref(), sheet, picture.as_ref()))
            .collect(),
        frame: frame.as_ref().and_then(|frame| {
            let closer = viewer::viewer_picture(here, &frame.key)?;
            Some(FrameData {
                width: closer.width,
                height: closer.height,
                mm: closer.mm,
                image: here
                    .public()
                    .picture(&frame.key)?
                    .area
                    .map(PercentBox::percent),
            })
        }),
        words: filled.chain(verdicts).collect(),
        counts: counts
            .map(|n| observations::count_in_words(here, n, "{all}"))
            .collect(),
        rows,
    })
}

/// The frame: the reference picture where it is published, else the first picture aligned with it.
fn frame<'b, 'p>(
    here: &Here<'b>,
    design: &Design,
    pictures: impl IntoIterator<Item = &'p PictureKey>,
) -> Option<SharedFrame<'b>> {
    let reference = design.reference_picture.as_ref().map(|key| &key.value);
    reference
        .and_then(|key| frame_of(here, key))
        .or_else(|| pictures.into_iter().find_map(|key| frame_of(here, key)))
}

fn frame_of<'b>(here: &Here<'b>, key: &PictureKey) -> Option<SharedFrame<'b>> {
    let registration = here.book.alignments.registrations.get(key)?;
    Some(SharedFrame {
        key: key.clone(),
        published: here.book.pictures.get(key)?,
        from_reference: registration.onto_reference()?.inverse()?,
    })
}

fn sheet_data(
    here: &Here<'_>,
    frame: Option<&SharedFrame<'_>>,
    sheet: &Impression,
    picture: Option<&PictureKey>,
) -> SheetData {
    let onto = picture.zip(frame).and_then(|(key, frame)| {
        let registration = here.book.alignments.registrations.get(key)?;
        let map = registration.onto_reference()?.then(&frame.from_reference)?;
        let published = here.book.pictures.get(key)?;
        viewer::between_published(published, &map, frame.published)
    });
    let why = match (picture, onto) {
        (Some(key), None) => Some(why_not(here, key)),
        _ => None,
    };
    SheetData {
        key: sheet.key.to_string(),
        number: here.sheet_number(&sheet.key),
        picture: picture.and_then(|key| viewer::viewer_picture(here, key)),
        onto: onto.map(|map| map.rows()),
        why,
    }
}

/// Why a picture is not aligned with the reference picture, in words.
fn why_not(here: &Here<'_>, key: &PictureKey) -> String {
    let id = match here.book.alignments.registrations.get(key) {
        Some(Registration::Refused(refused)) => refusals::refusal_word(refused.why),
        _ => "refusal-not-tried",
    };
    here.words().word(id).to_owned()
}
