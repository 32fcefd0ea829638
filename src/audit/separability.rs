//! Rules on separability: states and printings that no point separates, and sheets whose observations allow a
//! narrower identification (docs/definitions.md, "Separability").

use std::collections::BTreeSet;

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::design::Design;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::study::Studies;
use crate::study::index::CandidateAt;
use crate::study::settle::narrower;

use super::wording;

/// No recorded point separates two states of one printing. A state and the one it follows are compared by
/// `states::no_difference`.
pub(super) fn states(catalogue: &Catalogue, studies: &Studies, findings: &mut Vec<Finding>) {
    for (design, pairs) in inseparable_pairs(catalogue, studies) {
        let inseparable: BTreeSet<(&Key, &Key)> = pairs
            .iter()
            .filter(|(one, other)| one.1 == other.1 && one.0 != other.0)
            .filter_map(|(one, other)| Some((one.0?, other.0?)))
            .filter(|(one, other)| !is_found_elsewhere(studies, design, one, other))
            .collect();
        for (one, other) in inseparable {
            let (Some(first), Some(second)) = (design.state(one), design.state(other)) else {
                continue;
            };
            let name = wording::state(studies, design, other);
            let before = wording::state(studies, design, one);
            findings.push(
                Finding::new(
                    Code::StatesInseparable,
                    second.key.place,
                    format!(
                        "no point of design {} separates {name} from {before}",
                        design.number
                    ),
                )
                .beside(
                    first.key.place,
                    "the state that it cannot be distinguished from",
                )
                .help("add a point that rests on the matrix, or say what both states show at one"),
            );
        }
    }
}

/// Whether one of two states follows the other and no point separates them: then `states::no_difference`
/// has the finding.
fn is_found_elsewhere(studies: &Studies, design: &Design, one: &Key, other: &Key) -> bool {
    let Some(study) = studies.designs.get(&design.key) else {
        return false;
    };
    let is_found = |state: &Key, before: &Key| {
        let changes = study.changes.get(state);
        changes
            .into_iter()
            .flatten()
            .any(|c| c.follows == *before && !c.tell_apart())
    };
    is_found(one, other) || is_found(other, one)
}

/// No recorded point separates the sheets of one printing from those of another.
pub(super) fn printings(catalogue: &Catalogue, studies: &Studies, findings: &mut Vec<Finding>) {
    for (design, pairs) in inseparable_pairs(catalogue, studies) {
        let mut inseparable: Vec<(&Key, &Key, Option<&Key>)> = Vec::new();
        let mut known: BTreeSet<(&Key, &Key)> = BTreeSet::new();
        for (one, other) in pairs {
            let (Some(first), Some(second)) = (one.1, other.1) else {
                continue;
            };
            if one.0 == other.0 && first != second && known.insert((first, second)) {
                inseparable.push((first, second, one.0));
            }
        }
        for (one, other, state) in inseparable {
            let (Some(first), Some(second)) = (design.printing(one), design.printing(other)) else {
                continue;
            };
            let in_state = state.map_or(String::new(), |state| {
                format!(" in {}", wording::state(studies, design, state))
            });
            findings.push(
                Finding::new(
                    Code::PrintingsInseparable,
                    second.key.place,
                    format!(
                        "no point of design {} separates {} from {}{in_state}",
                        design.number,
                        wording::printing(other),
                        wording::printing(one)
                    ),
                )
                .beside(
                    first.key.place,
                    "the printing that it cannot be distinguished from",
                )
                .help(
                    "say at some point (paper, inking, marks, blocks) what each of the two shows",
                ),
            );
        }
    }
}

/// Two candidates: state and printing of each.
type CandidatePair<'a> = (CandidateKeys<'a>, CandidateKeys<'a>);

/// The keys of a candidate's state and printing.
type CandidateKeys<'a> = (Option<&'a Key>, Option<&'a Key>);

/// The pairs of candidates that no point separates, design by design. A design without any points is left
/// out, because it is not described yet.
fn inseparable_pairs<'a>(
    catalogue: &'a Catalogue,
    studies: &'a Studies,
) -> impl Iterator<Item = (&'a Design, Vec<CandidatePair<'a>>)> {
    catalogue.designs.values().filter_map(|design| {
        let study = studies.designs.get(&design.key)?;
        if design.points.is_empty() {
            return None;
        }
        let row = |at: CandidateAt| {
            let row = &study.table.candidates[at];
            (row.state.as_ref(), row.printing.as_ref())
        };
        let pairs = study.separability.inseparable.iter();
        let pairs = pairs.map(|(one, other)| (row(*one), row(*other)));
        Some((design, pairs.collect()))
    })
}

/// The observations of a sheet allow a narrower identification than the recorded one.
pub(super) fn could_be_settled(
    catalogue: &Catalogue,
    studies: &Studies,
    findings: &mut Vec<Finding>,
) {
    for (design, impression) in catalogue.impressions() {
        let Some(study) = studies.designs.get(&design.key) else {
            continue;
        };
        if impression.standing.is_withdrawn() {
            continue;
        }
        let Some(narrower) = narrower(&study.table, design, impression) else {
            continue;
        };
        let state = narrower
            .state
            .as_ref()
            .map(|key| wording::state(studies, design, key));
        let printing = narrower.printing.as_ref().map(wording::printing);
        let left = match (state, printing) {
            (Some(state), Some(printing)) => format!("{state} in {printing}"),
            (Some(one), None) | (None, Some(one)) => one,
            (None, None) => continue,
        };
        let identified = impression.identified.as_ref();
        let recorded = identified.map_or_else(
            || "not identified".to_owned(),
            |i| format!("identified as {}", wording::reading(studies, design, i)),
        );
        let place = identified.map_or(impression.place, wording::place_of_reading);
        let mut finding = Finding::new(
            Code::CouldBeSettled,
            place,
            format!(
                "{} is {recorded}, but what was seen on it leaves only {left}",
                catalogue.sheet_number(&impression.key)
            ),
        )
        .help("narrow the identification, or lower the certainty of what was seen");
        if let Some(observation) = impression.observed.first() {
            finding = finding.beside(observation.place, "seen");
        }
        findings.push(finding);
    }
}
