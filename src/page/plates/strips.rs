//! Strips: one point, cut from every photograph that is aligned with the reference picture, in a row.
//!
//! Details stand in the order of states, then of printings, so that a change shows along the row.
//! `picture` cuts them; this file chooses and captions them. A sheet is shown once, from the picture
//! with the most certain alignment.

use std::cmp::Reverse;
use std::collections::BTreeMap;

use serde::Serialize;

use super::{canvas, figures};
use crate::model::certainty::Certainty;
use crate::model::design::Design;
use crate::model::impression::{Impression, StateReading};
use crate::model::key::{Key, PictureKey};
use crate::model::picture::Picture;
use crate::model::point::{ObservedValue, Point, RestsOn, Value};
use crate::model::registration::Registration;
use crate::page::phrases::readings;
use crate::page::phrases::refusals;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences};
use crate::page::setting::pictures::PublishedSize;
use crate::page::setting::reading_order;
use crate::page::setting::words::Argument;
use crate::study::allowed::{is_against, is_told_apart, shown_values};

/// One point of every sheet.
#[derive(Serialize)]
pub(crate) struct Strip {
    /// The question, as a link to the page of the point.
    ask: CleanHtml,
    /// The name of the row, for screen readers and keyboards.
    label: String,
    details: Vec<SheetDetail>,
}

/// The detail of one sheet.
#[derive(Clone, Serialize)]
pub(crate) struct SheetDetail {
    src: String,
    width: u32,
    height: u32,
    alt: String,
    /// Its shape: `tall`, `even`, `wide` or `band`, which decides the height of the row.
    shape: &'static str,
    /// The page of the sheet.
    href: String,
    /// "7.5".
    key: String,
    /// Handle, state and printing.
    sheet: CleanHtml,
    /// Holder and number.
    holder: CleanHtml,
    /// The link that opens the sheet's photograph at this place, where the list offers it.
    place: Option<String>,
}

/// A sheet with the picture its details are cut from.
pub(crate) struct DetailSource<'d> {
    pub impression: &'d Impression,
    pub key: PictureKey,
    pub picture: &'d Picture,
    /// The confidence of its alignment, 0 to 1.
    pub confidence: f64,
}

/// The sheets that show a point, by state, then printing, then key.
pub(crate) fn detail_sources<'d>(
    here: &Here<'_>,
    design: &'d Design,
    point: &Point,
) -> Vec<DetailSource<'d>> {
    let mut sources: Vec<DetailSource<'d>> = in_order(here, design)
        .into_iter()
        .filter_map(|impression| {
            let records = here.joined().on_page(design, impression);
            records
                .into_iter()
                .find_map(|record| detail_source(here, record, point))
        })
        .collect();
    sources.retain(|source| here.book.pictures.contains_key(&source.key));
    sources
}

/// The photograph of a sheet that shows a point: of several, the one with the most certain alignment.
fn detail_source<'d>(
    here: &Here<'_>,
    impression: &'d Impression,
    point: &Point,
) -> Option<DetailSource<'d>> {
    let mut best: Option<DetailSource<'d>> = None;
    for picture in &impression.pictures {
        let key = figures::key_of(impression, &picture.name);
        if detail_of(here, &key, &point.key.value).is_none() {
            continue;
        }
        let confidence = confidence(here, &key);
        if best.as_ref().is_none_or(|b| confidence > b.confidence) {
            best = Some(DetailSource {
                impression,
                key,
                picture,
                confidence,
            });
        }
    }
    best
}

/// The place of a point on a sheet's own photograph, where one shows it.
pub(crate) fn detail_on(
    here: &Here<'_>,
    design: &Design,
    impression: &Impression,
    point: &Point,
) -> Option<SheetDetail> {
    let source = detail_source(here, impression, point)?;
    if !here.book.pictures.contains_key(&source.key) {
        return None;
    }
    detail(here, design, point, &source)
}

/// The sheets of a design in the order of strips: by state, then printing, then key.
fn in_order<'d>(here: &Here<'_>, design: &'d Design) -> Vec<&'d Impression> {
    let mut sheets = reading_order::listed(here, design);
    sheets.sort_by_cached_key(|impression| {
        (
            reading_order::rank(design, impression),
            impression.key.clone(),
        )
    });
    sheets
}

fn detail_of<'h>(here: &Here<'h>, picture: &PictureKey, point: &Key) -> Option<&'h PublishedSize> {
    here.book.alignments.details.get(picture)?.get(point)
}

fn confidence(here: &Here<'_>, picture: &PictureKey) -> f64 {
    match here.book.alignments.registrations.get(picture) {
        Some(Registration::Reference) => 1.0,
        Some(Registration::Aligned(aligned)) => aligned.confidence,
        Some(Registration::Refused(_)) | None => 0.0,
    }
}

/// The most strips on the page of a design; the page of each point shows its own.
const MOST_STRIPS: usize = 3;

/// The points of a design whose strips stand on its page: of those of which two or more sheets have a detail, the ones
/// that separate the most states or printings, in the record's order.
fn most_telling<'d>(
    here: &Here<'_>,
    design: &'d Design,
) -> Vec<(&'d Point, Vec<DetailSource<'d>>)> {
    let shown = design
        .points
        .iter()
        .enumerate()
        .filter_map(|(place, point)| {
            let sources = detail_sources(here, design, point);
            (sources.len() > 1).then_some((place, point, sources))
        });
    let mut shown: Vec<_> = shown.collect();
    shown.sort_by_key(|(place, point, _)| (Reverse(separated_pairs(design, point)), *place));
    shown.truncate(MOST_STRIPS);
    shown.sort_by_key(|(place, ..)| *place);
    shown
        .into_iter()
        .map(|(_, point, sources)| (point, sources))
        .collect()
}

/// How many pairs of states a point separates; of printings, where it does not rest on the matrix.
fn separated_pairs(design: &Design, point: &Point) -> usize {
    let shown: Vec<_> = if point.rests_on.value == RestsOn::Matrix {
        let states = design.standing_states();
        states
            .filter_map(|state| shown_values(&state.shows, point))
            .collect()
    } else {
        let printings = design.standing_printings();
        printings
            .filter_map(|printing| shown_values(&printing.shows, point))
            .collect()
    };
    let pairs = shown.iter().enumerate().map(|(at, one)| {
        let others = shown.iter().skip(at + 1);
        others
            .filter(|other| is_told_apart(point, one, other))
            .count()
    });
    pairs.sum()
}

/// Whether more points than `shown` have details.
pub(crate) fn has_more(here: &Here<'_>, design: &Design, shown: usize) -> bool {
    let points = design.points.iter();
    let mut points = points.filter(|point| detail_sources(here, design, point).len() > 1);
    points.nth(shown).is_some()
}

/// The strips on the page of a design. Holders are named on the pages of the points.
pub(crate) fn of_design(here: &Here<'_>, design: &Design) -> Vec<Strip> {
    let strip = |(point, sources): (&Point, Vec<DetailSource<'_>>)| {
        let details = sources.iter().filter_map(|source| {
            Some(SheetDetail {
                holder: CleanHtml::empty(),
                ..detail(here, design, point, source)?
            })
        });
        Strip {
            ask: ask(here, design, point),
            label: label(here, point),
            details: details.collect(),
        }
    };
    most_telling(here, design).into_iter().map(strip).collect()
}

/// The question of a point, as a link to its page.
pub(crate) fn ask(here: &Here<'_>, design: &Design, point: &Point) -> CleanHtml {
    let address = Address::Point(design.key.clone(), point.key.value.clone());
    here.link(&address, &CleanHtml::text(&point.ask.value))
}

fn label(here: &Here<'_>, point: &Point) -> String {
    let ask = Argument::Text(&point.ask.value);
    here.words().with("strip-of", &[("ask", ask)])
}

fn detail(
    here: &Here<'_>,
    design: &Design,
    point: &Point,
    source: &DetailSource<'_>,
) -> Option<SheetDetail> {
    let size = detail_of(here, &source.key, &point.key.value)?;
    let key = here.sheet_number(&source.impression.key);
    let reading = readings::short(here, design, source.impression);
    let handle = here.impression(&source.impression.key);
    Some(SheetDetail {
        src: format!("{}{}", here.root, size.address),
        width: size.width,
        height: size.height,
        alt: here.words().with(
            "alt-detail",
            &[
                ("key", Argument::Text(&key)),
                ("ask", Argument::Text(&point.ask.value)),
            ],
        ),
        shape: shape(size),
        href: here.href(&Address::Impression(source.impression.key.clone())),
        key,
        sheet: if reading.is_empty() {
            handle
        } else {
            handle.then(" ").and(&reading)
        },
        holder: figures::holder_and_number(here, source.impression),
        place: None,
    })
}

/// The details of sheets, each with the link that opens its place in the photograph.
pub(crate) fn placed_details(
    here: &Here<'_>,
    design: &Design,
    point: &Point,
    sources: &[DetailSource<'_>],
) -> Vec<SheetDetail> {
    let details = sources.iter().filter_map(|source| {
        Some(SheetDetail {
            place: canvas::point_href(here, design, &point.key.value, &source.key),
            ..detail(here, design, point, source)?
        })
    });
    details.collect()
}

fn shape(size: &PublishedSize) -> &'static str {
    match f64::from(size.width) / f64::from(size.height.max(1)) {
        x if x < 0.75 => "tall",
        x if x < 1.6 => "even",
        x if x < 3.0 => "wide",
        _ => "band",
    }
}

/// An example of each state: the detail of a sheet that is certainly of the state and that no
/// observation contradicts. Of several, the one with the most certain alignment, then the first.
pub(crate) fn exemplary(
    here: &Here<'_>,
    design: &Design,
    point: &Point,
) -> BTreeMap<Key, SheetDetail> {
    let mut best: BTreeMap<Key, DetailSource<'_>> = BTreeMap::new();
    for source in detail_sources(here, design, point) {
        let Some(state) = certain_state(source.impression) else {
            continue;
        };
        if contradicts(design, source.impression, state) {
            continue;
        }
        let is_better = best
            .get(state)
            .is_none_or(|known| source.confidence > known.confidence);
        if is_better {
            best.insert(state.clone(), source);
        }
    }
    best.into_iter()
        .filter_map(|(state, source)| Some((state, detail(here, design, point, &source)?)))
        .collect()
}

/// An example of each value of a point: the detail of a sheet on which it was seen for certain, else of one that is
/// certainly of a state that shows nothing else there; of no sheet whose observations contradict its identification. Of several, the one with
/// the most certain alignment, then the first.
pub(crate) fn exemplary_values(
    here: &Here<'_>,
    design: &Design,
    point: &Point,
) -> Vec<(Value, SheetDetail)> {
    let mut best: Vec<(Value, bool, DetailSource<'_>)> = Vec::new();
    let studied = here.book.studies.designs.get(&design.key);
    for source in detail_sources(here, design, point) {
        // A sheet whose identification is contradicted is no model for a reader.
        let number = source.impression.key.number;
        if studied.is_some_and(|study| study.contradictions.contains_key(&number)) {
            continue;
        }
        let Some((value, is_seen)) = value_on(design, source.impression, point) else {
            continue;
        };
        match best.iter_mut().find(|(known, ..)| *known == value) {
            None => best.push((value, is_seen, source)),
            Some((_, known_is_seen, known)) => {
                if (is_seen, source.confidence) > (*known_is_seen, known.confidence) {
                    (*known_is_seen, *known) = (is_seen, source);
                }
            }
        }
    }
    let details = best.into_iter();
    details
        .filter_map(|(value, _, source)| Some((value, detail(here, design, point, &source)?)))
        .collect()
}

/// The one value that a sheet has at a point, and whether it was seen there; `None` where that is not certain.
fn value_on(design: &Design, impression: &Impression, point: &Point) -> Option<(Value, bool)> {
    let mut observed = impression.observed.iter();
    if let Some(observation) = observed.find(|o| o.point.value == point.key.value) {
        let is_certain = observation.claim.certainty() == Certainty::Certain;
        return match &observation.seen {
            ObservedValue::OneOf(values) if is_certain => match values.as_slice() {
                [one] => Some((one.value.clone(), true)),
                _ => None,
            },
            _ => None,
        };
    }
    let state = certain_state(impression)?;
    if contradicts(design, impression, state) {
        return None;
    }
    match shown_values(&design.state(state)?.shows, point)?.as_slice() {
        [one] => Some(((*one).clone(), false)),
        _ => None,
    }
}

/// Whether an observation of a sheet contradicts what a state shows.
fn contradicts(design: &Design, impression: &Impression, state: &Key) -> bool {
    impression.observed.iter().any(|observation| {
        let point = design.point(&observation.point.value);
        let shown = point
            .zip(design.state(state))
            .and_then(|(point, state)| Some((point, shown_values(&state.shows, point)?)));
        shown.is_some_and(|(point, shown)| is_against(point, &observation.seen, &shown))
    })
}

/// The state of a sheet that is identified with one, for certain.
fn certain_state(impression: &Impression) -> Option<&Key> {
    let reading = impression.identified.as_ref()?;
    let is_certain = reading.claim.certainty() == Certainty::Certain && reading.or.is_empty();
    match &reading.state {
        Some(StateReading::OneOf(states)) if is_certain => match states.as_slice() {
            [one] => Some(&one.value),
            _ => None,
        },
        _ => None,
    }
}

/// The credits of the photographs that details come from; sheets with the same credit together.
pub(crate) fn credits(here: &Here<'_>, sources: &[DetailSource<'_>]) -> Vec<CleanHtml> {
    let mut said: Vec<(CleanHtml, Vec<CleanHtml>)> = Vec::new();
    for source in sources {
        let own = source.impression.credit.as_ref();
        let mut parts: Vec<CleanHtml> = own.map(|c| CleanHtml::text(c)).into_iter().collect();
        parts.push(figures::credit(here, source.picture));
        let credit = as_sentences(&parts);
        let key = CleanHtml::text(&here.sheet_number(&source.impression.key));
        match said.iter_mut().find(|(known, _)| *known == credit) {
            Some((_, keys)) if keys.contains(&key) => {}
            Some((_, keys)) => keys.push(key),
            None => said.push((credit, vec![key])),
        }
    }
    said.iter()
        .map(|(credit, keys)| CleanHtml::join(keys, ", ").then(": ").and(credit))
        .collect()
}

/// The credits of the photographs in the strips on the page of the design.
pub(crate) fn credits_of_design(here: &Here<'_>, design: &Design) -> Vec<CleanHtml> {
    let shown = most_telling(here, design);
    credits_of(here, shown.into_iter().map(|(_, sources)| sources))
}

/// The credits of every photograph of which a detail is shown at some point.
pub(crate) fn all_credits(here: &Here<'_>, design: &Design) -> Vec<CleanHtml> {
    let points = design.points.iter();
    let of_points = points.map(|point| detail_sources(here, design, point));
    credits_of(here, of_points.filter(|sources| sources.len() > 1))
}

fn credits_of<'d>(
    here: &Here<'_>,
    shown: impl Iterator<Item = Vec<DetailSource<'d>>>,
) -> Vec<CleanHtml> {
    let mut shown: Vec<DetailSource<'_>> = shown.flatten().collect();
    shown.sort_by_cached_key(|source| {
        let impression = source.impression;
        (impression.key.clone(), source.key.clone())
    });
    shown.dedup_by(|one, other| one.key == other.key);
    credits(here, &shown)
}

/// The photographed sheets that a strip does not show, with the reasons: not aligned, or trimmed there.
pub(crate) fn not_shown(here: &Here<'_>, design: &Design, point: Option<&Point>) -> Vec<CleanHtml> {
    let words = here.words();
    let registrations = &here.book.alignments.registrations;
    let mut lines = Vec::new();
    for impression in in_order(here, design) {
        let keys = impression
            .pictures
            .iter()
            .map(|picture| figures::key_of(impression, &picture.name))
            .filter(|key| here.book.pictures.contains_key(key));
        let met: Vec<(PictureKey, Registration)> = keys
            .filter_map(|key| Some((key.clone(), *registrations.get(&key)?)))
            .collect();
        let is_aligned = |registration: &Registration| registration.onto_reference().is_some();
        let handle = here.impression(&impression.key);
        if !met.iter().any(|(_, registration)| is_aligned(registration)) {
            // A caption says why a photograph of something else or of a part was not aligned.
            let caption = met
                .iter()
                .find_map(|(key, _)| here.public().picture(key)?.caption.clone());
            let refused = met.iter().find_map(|(_, registration)| match registration {
                Registration::Refused(refused) => Some(refused.why),
                Registration::Reference | Registration::Aligned(_) => None,
            });
            lines.extend(refused.map(|why| {
                let why = words.word(refusals::refusal_word(why));
                let why = CleanHtml::text(caption.as_deref().unwrap_or(why));
                words.html("not-aligned", None, &[("sheet", &handle), ("why", &why)])
            }));
        } else if let Some(point) = point
            && point.area.is_some()
            && !met
                .iter()
                .any(|(key, _)| detail_of(here, key, &point.key.value).is_some())
        {
            lines.push(words.html("part-not-shown", None, &[("sheet", &handle)]));
        }
    }
    lines
}
