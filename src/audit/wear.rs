//! Rule: the recorded wear would have to go backwards (docs/definitions.md, "Order of printing").

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::design::Design;
use crate::model::finding::Finding;
use crate::model::impression::Impression;
use crate::model::key::{ImpressionKey, Key};
use crate::model::place::Place;
use crate::study::Studies;
use crate::study::wear::{Wear, WearContradiction};

use super::wording;

/// Wear only advances. So there is an error in the records where, by their wear, each of several sheets was
/// pulled before another of them, or where a sheet of a later state shows less wear than one of an earlier
/// state.
pub(super) fn backwards(catalogue: &Catalogue, studies: &Studies, findings: &mut Vec<Finding>) {
    for design in catalogue.designs.values() {
        let study = studies.designs.get(&design.key);
        for wear in study.into_iter().flat_map(|study| &study.wear) {
            for cycle in &wear.cycles {
                findings.extend(in_a_circle(catalogue, design, wear, cycle));
            }
            for backwards in &wear.contradictions {
                findings.extend(against_states(catalogue, design, backwards));
            }
        }
    }
}

fn in_a_circle(
    catalogue: &Catalogue,
    design: &Design,
    wear: &Wear,
    cycle: &[ImpressionKey],
) -> Option<Finding> {
    let sheets: Vec<String> = cycle
        .iter()
        .map(|sheet| catalogue.sheet_number(sheet))
        .collect();
    let points: Vec<String> = wear.points.iter().map(|p| format!("`{p}`")).collect();
    let first = catalogue.impression(cycle.first()?)?;
    let place = wear
        .points
        .iter()
        .find_map(|point| seen_at(first, point))
        .unwrap_or(first.place);
    let mut finding = Finding::new(
        Code::WearBackwards,
        place,
        format!(
            "by the wear of design {} at {}, each of {} was pulled before another of them",
            design.number,
            points.join(" and "),
            sheets.join(", ")
        ),
    )
    .saying("seen here")
    .help("look again at the stages, or lower the certainty of one");
    for other in cycle.iter().skip(1) {
        let impression = catalogue.impression(other);
        let place = impression.and_then(|i| wear.points.iter().find_map(|p| seen_at(i, p)));
        if let Some(place) = place {
            finding = finding.beside(place, format!("seen on {}", catalogue.sheet_number(other)));
        }
    }
    Some(finding)
}

fn against_states(
    catalogue: &Catalogue,
    design: &Design,
    backwards: &WearContradiction,
) -> Option<Finding> {
    let later = catalogue.impression(&backwards.later)?;
    let earlier = catalogue.impression(&backwards.earlier)?;
    let point = design.point(&backwards.point)?;
    let stage = |impression: &Impression| {
        let seen = impression
            .observed
            .iter()
            .find(|o| o.point.value == backwards.point);
        seen.map(|o| wording::seen(point, &o.seen))
            .unwrap_or_default()
    };
    let finding = Finding::new(
        Code::WearBackwards,
        seen_at(later, &backwards.point)?,
        format!(
            "{} is of a later state than {}, but shows less wear at `{}`: {}, not {}",
            design.sheet_number(later),
            design.sheet_number(earlier),
            backwards.point,
            stage(later),
            stage(earlier)
        ),
    )
    .saying("seen on the later state")
    .beside(
        seen_at(earlier, &backwards.point)?,
        "seen on the earlier state",
    )
    .help("look again at both sheets, or lower the certainty of one observation or identification");
    Some(finding)
}

fn seen_at(impression: &Impression, point: &Key) -> Option<Place> {
    let seen = impression.observed.iter().find(|o| o.point.value == *point);
    seen.map(|o| o.place)
}
