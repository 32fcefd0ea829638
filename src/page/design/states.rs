//! The states of a design: the changes in each, and the table of points.

use serde::Serialize;

use super::point_table::{Cell, PointTable, blank};
use super::told_apart;
use crate::model::design::Design;
use crate::model::document::EvidenceTarget;
use crate::model::key::Key;
use crate::model::point::Point;
use crate::model::state::State;
use crate::page::phrases::claims;
use crate::page::phrases::dates;
use crate::page::phrases::document_names::told_of;
use crate::page::phrases::earlier_numbers::{self, NumberedPart};
use crate::page::phrases::enumeration;
use crate::page::phrases::formerly;
use crate::page::phrases::standing_note;
use crate::page::phrases::values;
use crate::page::plates::strips;
use crate::page::setting::address::{Address, Fragment};
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences};
use crate::study::allowed::{both, is_same_set, shown_values};
use crate::study::numerals::predecessors;

/// A state in the list.
#[derive(Serialize)]
pub(crate) struct StateLine {
    id: String,
    numeral: CleanHtml,
    text: CleanHtml,
    others: Vec<CleanHtml>,
    /// What documents tell of it.
    documents: Vec<CleanHtml>,
    standing: Option<CleanHtml>,
}

/// The states in order; withdrawn ones come last and have no numeral.
pub(crate) fn lines(here: &Here<'_>, design: &Design) -> Vec<StateLine> {
    let withdrawn = design.states.iter().filter(|s| s.standing.is_withdrawn());
    design
        .standing_states()
        .chain(withdrawn)
        .map(|state| line(here, design, state))
        .collect()
}

fn line(here: &Here<'_>, design: &Design, state: &State) -> StateLine {
    let words = here.words();
    let date = claims::stated(here, &state.date, |d| dates::once_html(d, words));
    let by = state.by.as_ref().map_or_else(CleanHtml::empty, |by| {
        words.html("by-person", None, &[("person", &here.person(&by.value))])
    });
    let when = date.as_ref().map(|d| d.value.clone()).unwrap_or_default();
    let mut sentences = vec![
        CleanHtml::text(state.summary.as_deref().unwrap_or_default()),
        CleanHtml::join([&by, &when], ", "),
        unusual_predecessors(here, design, state).unwrap_or_default(),
    ];
    if let Some(described) = &state.described {
        let when = CleanHtml::text(&dates::once(&described.value, words));
        sentences.push(words.html("first-described", None, &[("date", &when)]));
    }
    sentences.push(formerly::numerals(here, &design.key, &state.key.value));
    let cited = state.literature.iter();
    let cited = cited.map(|c| earlier_numbers::citation(here, c, NumberedPart::State));
    sentences.extend(cited);
    if !state.standing.is_withdrawn() {
        let told = told_apart::from_those_before(here, design, state);
        sentences.push(
            told.some()
                .map_or_else(CleanHtml::empty, |told| CleanHtml::span("quiet", &told)),
        );
    }
    StateLine {
        id: Fragment::State(&state.key.value).to_string(),
        numeral: if state.standing.is_withdrawn() {
            CleanHtml::span("numeral", &CleanHtml::text("–"))
        } else {
            here.numeral(&design.key, &state.key.value)
        },
        text: as_sentences(&sentences),
        others: date.map(|d| d.others).unwrap_or_default(),
        documents: told_of(
            here,
            &EvidenceTarget::State(design.key.clone(), state.key.value.clone()),
        ),
        standing: standing_note::note(here, &state.standing),
    }
}

/// "From ii and iii", where a state does not follow the state before it alone.
fn unusual_predecessors(here: &Here<'_>, design: &Design, state: &State) -> Option<CleanHtml> {
    let before = predecessors(design, state);
    let usual = neighbour(design, &state.key.value);
    let is_usual = match before.as_slice() {
        [] => usual.is_none() || state.standing.is_withdrawn(),
        [one] => {
            usual.is_some_and(|u| u.key.value == one.key.value) || state.standing.is_withdrawn()
        }
        _ => false,
    };
    if is_usual {
        return None;
    }
    let names: Vec<_> = before
        .iter()
        .map(|s| here.numeral(&design.key, &s.key.value))
        .collect();
    if names.is_empty() {
        return Some(CleanHtml::text(here.words().word("state-follows-none")));
    }
    let all = enumeration::together(here, &names);
    Some(
        here.words()
            .html("state-follows", None, &[("states", &all)]),
    )
}

/// The state in the column before that of `state`.
fn neighbour<'d>(design: &'d Design, state: &Key) -> Option<&'d State> {
    let standing: Vec<&State> = design.standing_states().collect();
    let at = standing.iter().position(|s| s.key.value == *state)?;
    standing.get(at.checked_sub(1)?).copied()
}

/// The table of the values that the states show at `points`; `None` where they record none.
pub(crate) fn table(here: &Here<'_>, design: &Design, points: &[Point]) -> Option<PointTable> {
    let states: Vec<&State> = design.standing_states().collect();
    let page = Address::Design(design.key.clone());
    let columns: Vec<(String, String)> = states
        .iter()
        .map(|state| {
            let href = here.href_part(&page, Fragment::State(&state.key.value));
            let text = match here.book.studies.numeral(&design.key, &state.key.value) {
                Some(numeral) if numeral.is_only() => here.words().word("only-state").to_owned(),
                Some(numeral) => numeral.roman(),
                None => state.key.value.to_string(),
            };
            (href, text)
        })
        .collect();
    let columns_before: Vec<ColumnsBefore<'_>> = states
        .iter()
        .map(|state| ColumnsBefore::of(design, state))
        .collect();
    PointTable::of(here, design, points, &columns, |point| {
        let mut details = strips::exemplary(here, design, point);
        states
            .iter()
            .zip(&columns_before)
            .map(|(state, before)| Cell {
                detail: details.remove(&state.key.value),
                ..cell(here, state, before, point)
            })
            .collect()
    })
}

/// What a state is compared with, whatever the point.
struct ColumnsBefore<'d> {
    /// The states that it follows.
    followed: Vec<&'d State>,
    /// Whether it follows the state in the column before it, and no other.
    is_neighbour: bool,
}

impl<'d> ColumnsBefore<'d> {
    fn of(design: &'d Design, state: &State) -> ColumnsBefore<'d> {
        let followed = predecessors(design, state);
        let is_neighbour = match (followed.as_slice(), neighbour(design, &state.key.value)) {
            ([one], Some(neighbour)) => one.key.value == neighbour.key.value,
            _ => false,
        };
        ColumnsBefore {
            followed,
            is_neighbour,
        }
    }
}

fn cell(here: &Here<'_>, state: &State, before: &ColumnsBefore<'_>, point: &Point) -> Cell {
    let Some(now) = shown_values(&state.shows, point) else {
        return blank();
    };
    let text = values::any_of(here, point, now.iter().copied());
    let followed = before.followed.iter();
    let known: Vec<_> = followed
        .filter_map(|s| shown_values(&s.shows, point))
        .collect();
    // Values that overlap may be the same in both states: no change is recorded.
    let is_changed = known.iter().any(|old| {
        let shared = both(Some(old.clone()), Some(now.clone()));
        shared.is_some_and(|shared| shared.is_empty())
    });
    let is_same = known.iter().all(|old| is_same_set(old, &now));
    let kind = if known.is_empty() {
        "plain"
    } else if is_changed {
        "changed"
    } else if is_same && before.is_neighbour {
        // A ditto mark means "as in the column before", so it is used only where that column is the state
        // followed.
        "same"
    } else {
        "plain"
    };
    Cell {
        kind,
        text,
        detail: None,
    }
}
