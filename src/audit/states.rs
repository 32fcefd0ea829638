//! Rules on states: what they show, and whether anything distinguishes them from the state before.

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::design::Design;
use crate::model::finding::Finding;
use crate::model::place::Place;
use crate::model::point::{RestsOn, ShownPoints};
use crate::model::state::State;
use crate::study::Studies;
use crate::study::candidates::candidates;
use crate::study::changes::StateChanges;

use super::wording;

/// A state shows something at a point that does not rest on the matrix. Only what is cut into the matrix is
/// shared by every sheet pulled afterwards (docs/trade.md, "Why the matrix alone separates states").
pub(super) fn shows_other(catalogue: &Catalogue, studies: &Studies, findings: &mut Vec<Finding>) {
    for design in catalogue.designs.values() {
        for state in &design.states {
            for shown in &state.shows.0 {
                let Some(point) = design.point(&shown.point.value) else {
                    continue;
                };
                let rests_on = point.rests_on.value;
                if rests_on == RestsOn::Matrix {
                    continue;
                }
                let name = wording::state(studies, design, &state.key.value);
                let key = &point.key.value;
                findings.push(
                    Finding::new(
                        Code::StateShowsOther,
                        shown.point.place,
                        format!("{name} of design {} shows `{key}`, which rests on {rests_on}, not on the matrix", design.number),
                    )
                    .saying("shown by a state")
                    .beside(point.rests_on.place, "the point does not rest on the matrix")
                    .help(format!("move `{key}` to the printings that show it, or to a variant")),
                );
            }
        }
    }
}

/// A state and a printing that contains it can share no value at a point.
pub(super) fn shows_conflict(
    catalogue: &Catalogue,
    studies: &Studies,
    findings: &mut Vec<Finding>,
) {
    for design in catalogue.designs.values() {
        for candidate in candidates(design) {
            let (Some(state), Some(printing)) = (candidate.state, candidate.printing) else {
                continue;
            };
            for point in &design.points {
                let key = &point.key.value;
                if candidate
                    .allows(point)
                    .is_none_or(|allowed| !allowed.is_empty())
                {
                    continue;
                }
                let name = wording::state(studies, design, &state.key.value);
                let place = |shows: &ShownPoints, otherwise: Place| {
                    shows.at(key).map_or(otherwise, |shown| shown.place)
                };
                findings.push(
                    Finding::new(
                        Code::ShowsConflict,
                        place(&printing.shows, printing.place),
                        format!(
                            "printing `{}` of design {} contains {name}, but the two share no value at `{key}`",
                            printing.key.value, design.number
                        ),
                    )
                    .saying("shown by the printing")
                    .beside(
                        place(&state.shows, state.place),
                        format!("shown by {name}"),
                    )
                    .help("correct one of the two, or leave the state out of the printing's `states`"),
                );
            }
        }
    }
}

/// A state is in no printing, though the design has printings of states: nobody is said to have printed it.
pub(super) fn in_no_printing(
    catalogue: &Catalogue,
    studies: &Studies,
    findings: &mut Vec<Finding>,
) {
    for design in catalogue.designs.values() {
        let printings = || design.standing_printings().filter(|p| p.is_counted());
        if printings().next().is_none() {
            continue;
        }
        for state in design.standing_states() {
            if printings().any(|p| p.states.contains(&state.key.value)) {
                continue;
            }
            let name = wording::state(studies, design, &state.key.value);
            findings.push(
                Finding::new(
                    Code::StateInNoPrinting,
                    state.key.place,
                    format!("no printing of design {} contains {name}", design.number),
                )
                .help(format!(
                    "add `{}` to the `states` of the printing that it was printed in, or add a printing, such as one of proofs",
                    state.key.value
                )),
            );
        }
    }
}

/// No point of the matrix distinguishes a state from the one it follows. A first state follows none.
pub(super) fn no_difference(catalogue: &Catalogue, studies: &Studies, findings: &mut Vec<Finding>) {
    for design in catalogue.designs.values() {
        let Some(study) = studies.designs.get(&design.key) else {
            continue;
        };
        for state in design.standing_states() {
            let changes = study.changes.get(&state.key.value);
            let untold: Vec<&StateChanges> = changes
                .into_iter()
                .flatten()
                .filter(|changes| !changes.tell_apart())
                .collect();
            if let Some(first) = untold.first() {
                findings.push(untold_apart(studies, design, state, first));
            }
        }
    }
}

fn untold_apart(
    studies: &Studies,
    design: &Design,
    state: &State,
    changes: &StateChanges,
) -> Finding {
    let name = wording::state(studies, design, &state.key.value);
    let before = wording::state(studies, design, &changes.follows);
    let first_new = changes.changed.first().map(|change| &change.point);
    let (message, help) = if state.shows.0.is_empty() {
        (
            format!("{name} of design {} says at no point what it shows, so nothing tells it from {before}", design.number),
            "add a point that rests on the matrix for what changed, and say what both states show there".to_owned(),
        )
    } else if let Some(point) = first_new {
        (
            format!(
                "nothing tells {name} of design {} from {before}: at `{point}` the two are not shown to differ",
                design.number
            ),
            format!("say what {before} shows at `{point}`"),
        )
    } else {
        (
            format!("{name} of design {} shows no difference from {before}", design.number),
            "say at which point the matrix differs; where only inking, paper or a mark does, it is a printing or a variant".to_owned(),
        )
    };
    let mut finding = Finding::new(Code::StateNoDifference, state.key.place, message).help(help);
    if let Some(before) = design.state(&changes.follows) {
        finding = finding.beside(before.key.place, "the state it follows");
    }
    finding
}
