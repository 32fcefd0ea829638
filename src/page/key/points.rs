//! The points of a key: question, basis (the matrix, inking …), answers, and the detail, cut from the
//! reference picture.

use serde::Serialize;

use crate::model::boxes::PercentBox;
use crate::model::design::Design;
use crate::model::key::{PictureKey, PictureOwner};
use crate::model::point::{Point, PointKind};
use crate::page::phrases::values;
use crate::page::plates::figures;
use crate::page::plates::strips::{self, SheetDetail};
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences};
use crate::page::setting::pictures::PublishedSize;
use crate::page::setting::words::Argument;
use crate::study::index::ValueAt;
use crate::study::scale::Scale;
use crate::study::table::{DiagnosticTable, PointColumn};

/// A point as the key shows it.
#[derive(Clone, Serialize)]
pub(super) struct KeyPoint {
    key: String,
    ask: String,
    rests: String,
    /// The values to tick; empty for a measure.
    answers: Vec<TickPlace>,
    /// Unit and tolerance; `None` for a point that takes no measure.
    measure: Option<MeasureWords>,
    detail: Option<DetailCut>,
    /// Whether its answers have details of their own.
    has_examples: bool,
}

impl KeyPoint {
    /// Whether its answers have details of their own.
    pub(super) fn has_examples(&self) -> bool {
        self.has_examples
    }
}

#[derive(Clone, Serialize)]
struct TickPlace {
    /// The value as an address writes it.
    value: String,
    text: String,
    /// The detail of a sheet that has it.
    detail: Option<SheetDetail>,
}

#[derive(Clone, Serialize)]
struct MeasureWords {
    unit: String,
    /// "± 2 mm".
    tolerance: String,
}

/// The part of the reference picture that shows a point.
#[derive(Clone, Serialize)]
struct DetailCut {
    href: String,
    /// The whole picture, in px.
    width: u32,
    height: u32,
    /// The part, in the same px.
    left: String,
    top: String,
    cut_width: String,
    cut_height: String,
    /// Whether it is too wide for the margin.
    is_wide: bool,
    alt: String,
}

/// The word in an address for a count that no candidate has.
pub(super) const OTHER: &str = "other";

/// The least width of a detail in px, provided that a file is large enough.
const SHARP: f64 = 360.0;

/// The points of a design, in the order of its table.
pub(super) fn all(here: &Here<'_>, design: &Design, table: &DiagnosticTable) -> Vec<KeyPoint> {
    let file = detail_file(here, design);
    let both = table
        .points
        .iter()
        .filter_map(|column| Some((column, design.point(&column.key)?)));
    both.map(|(column, point)| {
        let answers = tick_places(here, design, point, column);
        KeyPoint {
            key: point.key.value.to_string(),
            ask: point.ask.value.clone(),
            rests: values::rests_on(here, design, point),
            has_examples: answers.iter().any(|answer| answer.detail.is_some()),
            answers,
            measure: match &point.kind {
                PointKind::Measure { unit, tolerance } => Some(MeasureWords {
                    unit: unit.clone(),
                    tolerance: format!("± {tolerance} {unit}"),
                }),
                _ => None,
            },
            detail: point
                .area
                .zip(file)
                .map(|(area, file)| detail(here, point, area, file)),
        }
    })
    .collect()
}

fn tick_places(
    here: &Here<'_>,
    design: &Design,
    point: &Point,
    column: &PointColumn,
) -> Vec<TickPlace> {
    if matches!(column.scale, Scale::Measure(_)) {
        return Vec::new();
    }
    let examples = strips::exemplary_values(here, design, point);
    let example = |at: ValueAt| {
        let value = column.scale.value(at)?;
        let found = examples.iter().find(|(shown, _)| *shown == value);
        found.map(|(_, detail)| detail.clone())
    };
    column
        .scale
        .values()
        .map(|at| TickPlace {
            value: key_of_place(column, at),
            text: at_place(here, point, column, at),
            detail: example(at),
        })
        .collect()
}

/// A place on a scale, as an address writes it.
pub(super) fn key_of_place(column: &PointColumn, at: ValueAt) -> String {
    let value = column.scale.value(at);
    value.map_or_else(|| OTHER.to_owned(), |value| value.to_string())
}

/// A place on a scale, in words.
pub(super) fn at_place(
    here: &Here<'_>,
    point: &Point,
    column: &PointColumn,
    at: ValueAt,
) -> String {
    match column.scale.value(at) {
        Some(value) => values::value(here, point, &value),
        None => here.words().word("another-number").to_owned(),
    }
}

/// The picture that details are cut from: the reference picture, where it is published.
pub(super) fn reference(here: &Here<'_>, design: &Design) -> Option<PictureKey> {
    let key = design.reference_picture.as_ref()?.value.clone();
    let is_used = design.points.iter().any(|point| point.area.is_some());
    (is_used && here.book.pictures.contains_key(&key)).then_some(key)
}

/// "Details from 7.5, Northport, Harbour Museum. Photograph: …": the source of the details.
pub(super) fn details_from(here: &Here<'_>, design: &Design) -> Option<CleanHtml> {
    let key = reference(here, design)?;
    let picture = here.public().picture(&key)?;
    let source = match &key.owner {
        PictureOwner::Impression(key) => {
            let impression = here.public().impression(key)?;
            let whose = figures::holder_and_number(here, impression);
            CleanHtml::join([&here.impression(key), &whose], ", ")
        }
        PictureOwner::Design(design) => here.design(design),
        PictureOwner::Document(document) => here.document(document),
    };
    let from = here
        .words()
        .html("details-from", None, &[("picture", &source)]);
    Some(as_sentences(&[from, figures::credit(here, picture)]))
}

/// The file for all details of a page: the smallest in which half of them reach [`SHARP`].
fn detail_file<'h>(here: &Here<'h>, design: &Design) -> Option<&'h PublishedSize> {
    let picture = here.book.pictures.get(&reference(here, design)?)?;
    let boxes = design.points.iter().filter_map(|point| point.area);
    let mut widths: Vec<f64> = boxes.map(|area| shown(area).2).collect();
    widths.sort_by(f64::total_cmp);
    let middle = widths.get(widths.len() / 2).copied()?;
    let is_sharp = |size: &&PublishedSize| f64::from(size.width) * middle / 100.0 >= SHARP;
    picture
        .sizes
        .iter()
        .find(is_sharp)
        .or_else(|| picture.sizes.last())
}

/// A box with some of its surroundings, so that readers recognise the place: left, top, width and height
/// in percent.
fn shown(area: PercentBox) -> (f64, f64, f64, f64) {
    let [left, top, width, height] = area.percent();
    let around = 0.1 * width.max(height);
    let (right, bottom) = (left + width + around, top + height + around);
    let (left, top) = ((left - around).max(0.0), (top - around).max(0.0));
    (left, top, right.min(100.0) - left, bottom.min(100.0) - top)
}

fn detail(here: &Here<'_>, point: &Point, area: PercentBox, file: &PublishedSize) -> DetailCut {
    let (left, top, width, height) = shown(area);
    let across = f64::from(file.width) / 100.0;
    let down = f64::from(file.height) / 100.0;
    DetailCut {
        href: format!("{}{}", here.root, file.address),
        width: file.width,
        height: file.height,
        left: format!("{:.1}", left * across),
        top: format!("{:.1}", top * down),
        cut_width: format!("{:.1}", width * across),
        cut_height: format!("{:.1}", height * down),
        is_wide: width * across > 2.2 * height * down,
        alt: here.words().with(
            "detail-of-point",
            &[("ask", Argument::Text(&point.ask.value))],
        ),
    }
}
