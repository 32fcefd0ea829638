//! What a design names: people, terms, literature, and its own parts.

use std::collections::BTreeSet;

use super::Names;
use crate::model::codes::Code;
use crate::model::design::Design;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::place::Placed;
use crate::model::printing::{Printing, StatesPrinted};
use crate::model::state::State;
use crate::model::vocabulary::List;

pub(super) fn resolve(names: &mut Names, design: &Design) {
    general(names, design);
    for matrix in &design.matrices {
        for variant in &matrix.only_in {
            names.variant(design, variant);
        }
        if let Some(holder) = matrix.now.as_ref().and_then(|now| now.holder.as_ref()) {
            names.holder(holder);
        }
    }
    for matrix in design
        .points
        .iter()
        .filter_map(|point| point.matrix.as_ref())
    {
        names.matrix(design, matrix);
    }
    for state in &design.states {
        state_names(names, design, state);
    }
    circles(names, design);
    for printing in &design.printings {
        printing_names(names, design, printing);
    }
    for variant in &design.variants {
        for state in &variant.states {
            names.state(design, state);
        }
        for printing in &variant.printings {
            names.printing(design, printing);
        }
        names.stands(&variant.standing);
    }
}

fn general(names: &mut Names, design: &Design) {
    for title in &design.titles {
        names.claim(&title.claim);
    }
    names.claims(&design.date);
    names.claims(&design.image);
    names.claims(&design.matrix_size);
    for maker in &design.makers {
        names.person(&maker.person);
        if let Some(role) = &maker.role {
            names.term(List::Roles, role);
        }
        names.claim(&maker.claim);
    }
    for technique in &design.technique {
        names.term(List::Techniques, technique);
    }
    for support in &design.support {
        names.term(List::Papers, support);
    }
    for related in &design.related {
        names.design(&related.design);
        if let Some(how) = &related.how {
            names.term(List::Relations, how);
        }
    }
    names.citations(&design.known_from);
    names.citations(&design.literature);
    for cite in design
        .pictures
        .iter()
        .filter_map(|picture| picture.cite.as_ref())
    {
        names.work(cite);
    }
    if let Some(picture) = &design.reference_picture {
        names.picture(picture);
    }
    for impression in design
        .comparisons
        .iter()
        .flat_map(|comparison| &comparison.of)
    {
        names.impression(impression);
    }
    names.stands(&design.standing);
}

fn state_names(names: &mut Names, design: &Design, state: &State) {
    names.claims(&state.date);
    if let Some(by) = &state.by {
        names.person(by);
    }
    for other in state.follows.iter().flatten().chain(&state.split_from) {
        names.state(design, other);
    }
    names.citations(&state.literature);
    names.stands(&state.standing);
}

fn printing_names(names: &mut Names, design: &Design, printing: &Printing) {
    names.claims(&printing.kind);
    names.claims(&printing.date);
    names.claims(&printing.edition);
    for statement in printing.printer.iter().chain(printing.publisher.iter()) {
        names.party_key(&statement.is);
        names.claim(&statement.claim);
    }
    if let StatesPrinted::Some(states) = &printing.states {
        for state in states {
            names.state(design, state);
        }
    }
    for matrix in &printing.matrices {
        names.matrix(design, matrix);
    }
    for paper in &printing.paper {
        names.term(List::Papers, paper);
    }
    names.citations(&printing.literature);
    names.stands(&printing.standing);
}

/// Tells of states that follow themselves. The order of the record never makes a circle, so each
/// circle has a `follows` that points at the state itself or at a later one: there it is told.
fn circles(names: &mut Names, design: &Design) {
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
            names.push(
                Finding::new(Code::StateCycle, followed.place, message)
                    .help("name the states that were there before the change"),
            );
        }
    }
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
