//! States that follow themselves.

use std::collections::BTreeSet;

use crate::model::codes::Code;
use crate::model::design::Design;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::place::Placed;

/// Reports the circles among the states of a design. A circle cannot consist of links to earlier states
/// alone, so each has a `follows` that names the state itself or a later one. The finding is placed there.
pub(super) fn circles(design: &Design) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (at, state) in design.states.iter().enumerate() {
        for followed in state.follows.iter().flatten() {
            let points_back = design
                .states
                .iter()
                .take(at)
                .any(|s| s.key.value == followed.value);
            if points_back || !comes_from(design, followed, &state.key.value) {
                continue;
            }
            let message = if followed.value == state.key.value {
                format!("the state `{}` follows itself", state.key.value)
            } else {
                format!(
                    "the state `{}` follows `{}`, which comes from it",
                    state.key.value, followed.value
                )
            };
            findings.push(
                Finding::new(Code::StateCycle, followed.place, message)
                    .help("name the states that were there before the change"),
            );
        }
    }
    findings
}

/// Whether the state `from` is `origin`, or was changed from it in one or several steps.
fn comes_from(design: &Design, from: &Placed<Key>, origin: &Key) -> bool {
    let mut open = vec![from.value.clone()];
    let mut seen = BTreeSet::new();
    while let Some(key) = open.pop() {
        if key == *origin {
            return true;
        }
        if !seen.insert(key.clone()) {
            continue;
        }
        let Some(at) = design.states.iter().position(|s| s.key.value == key) else {
            continue;
        };
        match design
            .states
            .get(at)
            .and_then(|state| state.follows.as_ref())
        {
            Some(follows) => open.extend(follows.iter().map(|f| f.value.clone())),
            None => open.extend(
                at.checked_sub(1)
                    .and_then(|before| design.states.get(before))
                    .map(|s| s.key.value.clone()),
            ),
        }
    }
    false
}
