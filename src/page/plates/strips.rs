//! Strips: one point, cut from every photograph that lies on the reference picture, in one row.
//!
//! Details stand in the order of states, then of printings, so that what changed is seen by looking
//! along the row. What is cut was cut by `picture`; here it is chosen and captioned. A sheet is shown
//! once, by that of its pictures which lies on the reference most surely.

use std::collections::BTreeMap;

use serde::Serialize;

use super::figures;
use crate::model::certainty::Certainty;
use crate::model::design::Design;
use crate::model::impression::{Impression, StateReading};
use crate::model::key::{Key, PictureKey};
use crate::model::picture::Picture;
use crate::model::point::Point;
use crate::model::registration::Registration;
use crate::page::phrases::readings;
use crate::page::phrases::refusals;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences};
use crate::page::setting::pictures::PublishedSize;
use crate::page::setting::reading_order;
use crate::page::setting::words::Given;
use crate::study::allowed::{rules_out, shown_values};

/// One point of every sheet.
#[derive(Serialize)]
pub(crate) struct Strip {
    /// The question, leading to the page of the point.
    ask: CleanHtml,
    /// What the row is, for those who come to it by keyboard.
    label: String,
    details: Vec<Detail>,
}

/// The detail of one sheet.
#[derive(Clone, Serialize)]
pub(crate) struct Detail {
    src: String,
    width: u32,
    height: u32,
    alt: String,
    /// Its shape: `tall`, `even`, `wide` or `band`. It decides how high a row is.
    shape: &'static str,
    /// The page of the sheet.
    href: String,
    /// "7.5".
    key: String,
    /// Handle, state and printing.
    sheet: CleanHtml,
    /// Holder and number.
    holder: CleanHtml,
}

/// A sheet with the picture its details are cut from.
pub(crate) struct Sitter<'d> {
    pub impression: &'d Impression,
    pub key: PictureKey,
    pub picture: &'d Picture,
    /// How surely it lies on the reference, 0 to 1.
    pub confidence: f64,
}

/// The sheets that show a point, by state, then printing, then key.
pub(crate) fn sitters<'d>(here: &Here<'_>, design: &'d Design, point: &Point) -> Vec<Sitter<'d>> {
    let mut sitters: Vec<Sitter<'d>> = in_order(here, design)
        .into_iter()
        .filter_map(|impression| {
            let mut best: Option<Sitter<'d>> = None;
            for picture in &impression.pictures {
                let key = figures::key_of(impression, &picture.name);
                if detail_of(here, &key, &point.key.value).is_none() {
                    continue;
                }
                let confidence = confidence(here, &key);
                if best.as_ref().is_none_or(|b| confidence > b.confidence) {
                    best = Some(Sitter {
                        impression,
                        key,
                        picture,
                        confidence,
                    });
                }
            }
            best
        })
        .collect();
    sitters.retain(|sitter| here.book.pictures.contains_key(&sitter.key));
    sitters
}

/// The sheets of a design as strips show them: by state, then printing, then key.
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

/// The strips of a design: its points of which two sheets or more have a detail.
pub(crate) fn all(here: &Here<'_>, design: &Design) -> Vec<Strip> {
    let strips = design.points.iter().filter_map(|point| {
        let sitters = sitters(here, design, point);
        (sitters.len() > 1).then(|| Strip {
            ask: ask(here, design, point),
            label: label(here, point),
            details: details(here, design, point, &sitters),
        })
    });
    strips.collect()
}

/// The question of a point, leading to its page.
fn ask(here: &Here<'_>, design: &Design, point: &Point) -> CleanHtml {
    let address = Address::Point(design.key.clone(), point.key.value.clone());
    here.link(&address, &CleanHtml::text(&point.ask.value))
}

fn label(here: &Here<'_>, point: &Point) -> String {
    let ask = Given::Text(&point.ask.value);
    here.words().with("strip-of", &[("ask", ask)])
}

/// The details of sheets, captioned.
pub(crate) fn details(
    here: &Here<'_>,
    design: &Design,
    point: &Point,
    sitters: &[Sitter<'_>],
) -> Vec<Detail> {
    let details = sitters
        .iter()
        .filter_map(|s| detail(here, design, point, s));
    details.collect()
}

fn detail(here: &Here<'_>, design: &Design, point: &Point, sitter: &Sitter<'_>) -> Option<Detail> {
    let size = detail_of(here, &sitter.key, &point.key.value)?;
    let key = sitter.impression.key.to_string();
    let reading = readings::short(here, design, sitter.impression);
    let handle = here.impression(&sitter.impression.key);
    Some(Detail {
        src: format!("{}{}", here.root, size.address),
        width: size.width,
        height: size.height,
        alt: here.words().with(
            "alt-detail",
            &[
                ("key", Given::Text(&key)),
                ("ask", Given::Text(&point.ask.value)),
            ],
        ),
        shape: shape(size),
        href: here.href(&Address::Impression(sitter.impression.key.clone())),
        key,
        sheet: if reading.is_empty() {
            handle
        } else {
            handle.then(" ").and(&reading)
        },
        holder: figures::holder_and_number(here, sitter.impression),
    })
}

fn shape(size: &PublishedSize) -> &'static str {
    match f64::from(size.width) / f64::from(size.height.max(1)) {
        x if x < 0.75 => "tall",
        x if x < 1.6 => "even",
        x if x < 3.0 => "wide",
        _ => "band",
    }
}

/// For each state the detail of one sheet that is certainly of it and on which nothing was seen that
/// contradicts it: the one whose picture lies on the
/// reference most surely, and of two alike the first.
pub(crate) fn exemplary(here: &Here<'_>, design: &Design, point: &Point) -> BTreeMap<Key, Detail> {
    let mut best: BTreeMap<Key, Sitter<'_>> = BTreeMap::new();
    for sitter in sitters(here, design, point) {
        let Some(state) = certain_state(sitter.impression) else {
            continue;
        };
        if contradicts(design, sitter.impression, state) {
            continue;
        }
        let is_better = best
            .get(state)
            .is_none_or(|known| sitter.confidence > known.confidence);
        if is_better {
            best.insert(state.clone(), sitter);
        }
    }
    best.into_iter()
        .filter_map(|(state, sitter)| Some((state, detail(here, design, point, &sitter)?)))
        .collect()
}

/// Whether something seen on a sheet is not what a state shows there: then it is no example of it.
fn contradicts(design: &Design, impression: &Impression, state: &Key) -> bool {
    impression.observed.iter().any(|observation| {
        let point = design.point(&observation.point.value);
        let shown = point
            .zip(design.state(state))
            .and_then(|(point, state)| Some((point, shown_values(&state.shows, point)?)));
        shown.is_some_and(|(point, shown)| rules_out(point, &observation.seen, &shown))
    })
}

/// The one state that a sheet is certainly of.
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

/// What must be said of the photographs that details come from: sheets with one credit together.
pub(crate) fn credits(here: &Here<'_>, sitters: &[Sitter<'_>]) -> Vec<CleanHtml> {
    let mut said: Vec<(CleanHtml, Vec<CleanHtml>)> = Vec::new();
    for sitter in sitters {
        let own = sitter.impression.credit.as_ref();
        let mut parts: Vec<CleanHtml> = own.map(|c| CleanHtml::text(c)).into_iter().collect();
        parts.push(figures::credit(here, sitter.picture));
        let credit = as_sentences(&parts);
        let key = CleanHtml::text(&sitter.impression.key.to_string());
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

/// The credits of every photograph that some strip of the design shows.
pub(crate) fn all_credits(here: &Here<'_>, design: &Design) -> Vec<CleanHtml> {
    let of_points = design
        .points
        .iter()
        .map(|point| sitters(here, design, point));
    let mut shown: Vec<Sitter<'_>> = of_points.filter(|s| s.len() > 1).flatten().collect();
    shown.sort_by_cached_key(|sitter| {
        let impression = sitter.impression;
        (impression.key.clone(), sitter.key.clone())
    });
    shown.dedup_by(|one, other| one.key == other.key);
    credits(here, &shown)
}

/// The photographed sheets that a strip cannot show, with the reasons: not aligned, or trimmed there.
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
            let refused = met.iter().find_map(|(_, registration)| match registration {
                Registration::Refused(refused) => Some(refused.why),
                Registration::Reference | Registration::Aligned(_) => None,
            });
            lines.extend(refused.map(|why| {
                let why = CleanHtml::text(words.word(refusals::refusal_word(why)));
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
