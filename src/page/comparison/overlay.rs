//! Photographs of sheets for the script (`assets/compare.js`): all of each sheet, whole rectos and others, each with the
//! map onto their common frame, or the reason why there is none. Only photographs with a map can be laid on each other.

use std::collections::BTreeMap;

use serde::Serialize;

use super::observations::{self, Observations};
use super::rows::{RowData, Verdict};
use super::sheets::ComparedSheet;
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

/// A sheet and its photographs.
#[derive(Serialize)]
struct SheetData {
    /// In addresses.
    key: String,
    /// As readers cite it.
    number: String,
    /// The photograph that represents it.
    #[serde(flatten)]
    leading: PhotographData,
    /// Its other photographs: the verso, details, in raking and in transmitted light.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    others: Vec<PhotographData>,
}

/// A photograph of a sheet.
#[derive(Default, Serialize)]
struct PhotographData {
    /// Its key in addresses; empty where the sheet has none.
    #[serde(skip_serializing_if = "String::is_empty")]
    name: String,
    /// What it shows: "Verso", "Recto, in raking light".
    #[serde(skip_serializing_if = "String::is_empty")]
    shows: String,
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
    ("compare-photograph-of", &["number"]),
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
];

/// The data of a comparison of `sheets`, with the rows of its table where the reader chooses columns. Photographs of
/// sheets of several designs have no frame in common.
pub(super) fn data(
    here: &Here<'_>,
    sheets: &[ComparedSheet<'_>],
    observations: &Observations,
    rows: Vec<&RowData>,
) -> CleanHtml {
    let pictures: Vec<Vec<PictureKey>> = sheets
        .iter()
        .map(|(_, sheet)| figures::pictures_of_sheet(here, sheet))
        .collect();
    let leading = pictures.iter().filter_map(|pictures| pictures.first());
    let frame = observations::one_design(sheets).and_then(|design| frame(here, design, leading));
    let words = here.words();
    let without_points = words.word(observations.without_points()).to_owned();
    let filled = WORDS
        .iter()
        .map(|(id, places)| (*id, words.left_open(id, places)));
    let verdicts = Verdict::ALL
        .iter()
        .map(|verdict| (verdict.word_id(), words.word(verdict.word_id()).to_owned()));
    let counts = match rows.iter().filter(|row| !row.fact).count() {
        0 => 0..0,
        all => 0..all + 1,
    };
    CleanHtml::data(&Data {
        sheets: sheets
            .iter()
            .zip(&pictures)
            .map(|((_, sheet), pictures)| sheet_data(here, frame.as_ref(), sheet, pictures))
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
        words: filled
            .chain(verdicts)
            .chain([("nothing-observed", without_points)])
            .collect(),
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
    pictures: &[PictureKey],
) -> SheetData {
    let mut photographs = pictures.iter().map(|key| photograph(here, frame, key));
    SheetData {
        key: sheet.key.to_string(),
        number: here.sheet_number(&sheet.key),
        leading: photographs.next().unwrap_or_default(),
        others: photographs.collect(),
    }
}

fn photograph(
    here: &Here<'_>,
    frame: Option<&SharedFrame<'_>>,
    key: &PictureKey,
) -> PhotographData {
    let onto = frame.and_then(|frame| {
        let registration = here.book.alignments.registrations.get(key)?;
        let map = registration.onto_reference()?.then(&frame.from_reference)?;
        let published = here.book.pictures.get(key)?;
        viewer::between_published(published, &map, frame.published)
    });
    let shows = here.public().picture(key);
    PhotographData {
        name: key.name.to_string(),
        shows: shows.map_or_else(String::new, |picture| figures::shown(here, picture)),
        picture: viewer::viewer_picture(here, key),
        why: onto.is_none().then(|| why_not(here, frame, key)),
        onto: onto.map(|map| map.rows()),
    }
}

/// Why a picture is not aligned with the others, in words.
fn why_not(here: &Here<'_>, frame: Option<&SharedFrame<'_>>, key: &PictureKey) -> String {
    let is_recto = here
        .public()
        .picture(key)
        .is_some_and(viewer::is_whole_recto);
    let id = match here.book.alignments.registrations.get(key) {
        Some(Registration::Refused(refused)) => refusals::refusal_word(refused.why),
        Some(_) if frame.is_none() => "refusal-other-design",
        _ if is_recto => "refusal-not-tried",
        _ => "refusal-other-view",
    };
    here.words().word(id).to_owned()
}
