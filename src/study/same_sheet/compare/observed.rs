//! Compares the identifications and the observations of two records: a sheet has one state, one printing,
//! and one answer to each question.
//!
//! In: two records of a design. Out: reasons from states, printings, kinds, papers and observed points.

use crate::census::readings;
use crate::identification::allowed::{is_same_set, is_seen_to_differ};
use crate::identification::identify::is_printed;
use crate::same_sheet::reason::{Bearing, Evidence, Reason};
use crate::same_sheet::record::ComparedRecord;
use keyblock_model::certainty::Certainty;
use keyblock_model::design::Design;
use keyblock_model::impression::{Identification, Impression, StateReading};
use keyblock_model::key::Key;
use keyblock_model::place::Place;
use keyblock_model::point::{Observation, ObservedValue, Point, PointKind, RestsOn, Value};

/// Compares the identifications, kinds, papers and observations.
pub(super) fn compare(
    design: &Design,
    one: &ComparedRecord<'_>,
    other: &ComparedRecord<'_>,
    reasons: &mut Vec<Reason>,
) {
    let (one, other) = (one.impression, other.impression);
    taken_as(one, other, reasons);
    kinds(one, other, reasons);
    papers(one, other, reasons);
    points(design, one, other, reasons);
}

/// The values that every reading of an identification allows; `None` where one of them names none, or
/// where blocks are in different conditions.
fn allowed(
    identified: &Identification,
    of: fn(&Identification) -> Option<Vec<Key>>,
) -> Option<Vec<Key>> {
    let mut all: Vec<Key> = Vec::new();
    for reading in readings(identified) {
        all.extend(of(reading).filter(|keys| !keys.is_empty())?);
    }
    all.sort();
    all.dedup();
    Some(all)
}

fn states(reading: &Identification) -> Option<Vec<Key>> {
    match reading.state.as_ref()? {
        StateReading::OneOf(states) => Some(states.iter().map(|s| s.value.clone()).collect()),
        StateReading::ByMatrix(_) => None,
    }
}

fn printings(reading: &Identification) -> Vec<Key> {
    reading.printing.iter().map(|p| p.value.clone()).collect()
}

fn taken_as(one: &Impression, other: &Impression, reasons: &mut Vec<Reason>) {
    let (Some(a), Some(b)) = (&one.identified, &other.identified) else {
        return;
    };
    let are_certain = [a, b]
        .iter()
        .all(|i| readings(i).all(|r| r.claim.certainty() == Certainty::Certain));
    let places = [a.place, b.place];
    let told = |same: fn(Key) -> Evidence, apart: fn([Vec<Key>; 2]) -> Evidence, of| {
        let (a, b) = (allowed(a, of)?, allowed(b, of)?);
        if let ([only], [known]) = (a.as_slice(), b.as_slice())
            && only == known
        {
            return Some((Bearing::Fits, same(only.clone())));
        }
        if a.iter().any(|key| b.contains(key)) {
            return None;
        }
        let bearing = if are_certain {
            Bearing::Excludes
        } else {
            Bearing::Weighs
        };
        Some((bearing, apart([a, b])))
    };
    let of_state = told(Evidence::SameState, Evidence::OtherState, states);
    let of_printing = told(Evidence::SamePrinting, Evidence::OtherPrinting, |r| {
        Some(printings(r))
    });
    for (bearing, evidence) in of_state.into_iter().chain(of_printing) {
        reasons.push(Reason::new(bearing, evidence, places));
    }
}

fn kinds(one: &Impression, other: &Impression, reasons: &mut Vec<Reason>) {
    let (Some(a), Some(b)) = (one.kind.0.first(), other.kind.0.first()) else {
        return;
    };
    if a.is.value != b.is.value {
        let evidence = Evidence::OtherKind([a.is.value.clone(), b.is.value.clone()]);
        let places = [a.is.place, b.is.place];
        reasons.push(Reason::new(Bearing::Weighs, evidence, places));
    }
}

fn papers(one: &Impression, other: &Impression, reasons: &mut Vec<Reason>) {
    let (Some(a), Some(b)) = (&one.sheet.paper, &other.sheet.paper) else {
        return;
    };
    let (bearing, evidence) = if a.value == b.value {
        (Bearing::Fits, Evidence::SamePaper(a.value.clone()))
    } else {
        // Papers are judged by eye, and often through glass.
        let papers = [a.value.clone(), b.value.clone()];
        (Bearing::Weighs, Evidence::OtherPaper(papers))
    };
    reasons.push(Reason::new(bearing, evidence, [a.place, b.place]));
}

fn points(design: &Design, one: &Impression, other: &Impression, reasons: &mut Vec<Reason>) {
    let mut alike: Vec<Key> = Vec::new();
    let mut places: Option<[Place; 2]> = None;
    for a in &one.observed {
        let b = other
            .observed
            .iter()
            .find(|b| b.point.value == a.point.value);
        let Some((b, point)) = b.zip(design.point(&a.point.value)) else {
            continue;
        };
        // A mark can be added any day.
        if point.rests_on.value == RestsOn::Mark
            || !is_printed(one, point)
            || !is_printed(other, point)
        {
            continue;
        }
        let (Some(seen), Some(again)) = (values(a), values(b)) else {
            continue;
        };
        if is_seen_to_differ(point, &seen, &again) {
            let owned = |values: Vec<&Value>| values.into_iter().cloned().collect();
            let evidence = Evidence::SeenApart {
                point: point.key.value.clone(),
                values: [owned(seen), owned(again)],
            };
            let places = [a.place, b.place];
            reasons.push(Reason::new(bearing(point, a, b), evidence, places));
        } else if seen.len() == 1 && (is_same_set(&seen, &again) || is_measure(point)) {
            alike.push(point.key.value.clone());
            places.get_or_insert([a.place, b.place]);
        }
    }
    if let Some(places) = places {
        let evidence = Evidence::SeenAlike(alike);
        reasons.push(Reason::new(Bearing::Fits, evidence, places));
    }
}

fn is_measure(point: &Point) -> bool {
    matches!(point.kind, PointKind::Measure { .. })
}

fn values(observation: &Observation) -> Option<Vec<&Value>> {
    match &observation.seen {
        ObservedValue::OneOf(values) => Some(values.iter().map(|v| &v.value).collect()),
        ObservedValue::NoneOf(_) | ObservedValue::NotVisible | ObservedValue::NotApplicable => None,
    }
}

/// A difference in what the matrix printed, wear included, excludes one sheet where both observations are
/// certain. Inks fade and papers are misjudged; a single measured length excludes nothing.
fn bearing(point: &Point, a: &Observation, b: &Observation) -> Bearing {
    let are_certain = [a, b]
        .iter()
        .all(|o| o.claim.certainty() == Certainty::Certain);
    let is_fixed = matches!(point.rests_on.value, RestsOn::Matrix | RestsOn::Blocks);
    match (are_certain, is_fixed && !is_measure(point)) {
        (true, true) => Bearing::Excludes,
        (true, false) => Bearing::Contradicts,
        (false, _) => Bearing::Weighs,
    }
}
