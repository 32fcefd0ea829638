//! Checklists: impressions in a table, grouped by design.

use serde::Serialize;

use crate::model::design::Design;
use crate::model::impression::{Identification, Impression, StateReading};
use crate::model::vocabulary::List as Vocabulary;
use crate::page::phrases::enumeration;
use crate::page::phrases::readings;
use crate::page::phrases::standing_note;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;

/// A checklist, by design.
#[derive(Serialize)]
pub(crate) struct Checklist {
    /// The impressions, by design.
    pub groups: Vec<Group>,
    /// Whether any row has a remark; without one the table has no column for it.
    pub has_remarks: bool,
}

/// The impressions of one design.
#[derive(Serialize)]
pub(crate) struct Group {
    /// The design, as a link.
    pub design: CleanHtml,
    /// Its impressions.
    pub rows: Vec<Row>,
}

/// One impression.
#[derive(Serialize)]
pub(crate) struct Row {
    /// Its handle.
    pub handle: CleanHtml,
    /// Its number: the holder's, or that in an exhibition.
    pub number: String,
    /// Its state, as a link.
    pub state: CleanHtml,
    /// Its printing, kind and numbering.
    pub printing: CleanHtml,
    /// A remark: its owner or its present place, and the standing of a record that is not accepted.
    pub remark: CleanHtml,
}

/// A checklist of impressions, which must come in the order of the catalogue; `None` for no impression.
pub(crate) fn checklist<'i>(
    here: &Here<'_>,
    impressions: impl IntoIterator<Item = (&'i Design, &'i Impression)>,
    number: impl Fn(&Impression) -> String,
    remark: impl Fn(&Impression) -> CleanHtml,
) -> Option<Checklist> {
    let mut groups: Vec<(&Design, Group)> = Vec::new();
    for (design, impression) in impressions {
        let standing = standing_note::remark(here, &impression.standing);
        let row = Row {
            handle: here.impression(&impression.key),
            number: number(impression),
            state: state(here, design, impression),
            printing: printing(here, design, impression),
            remark: CleanHtml::join([&remark(impression), &CleanHtml::text(standing)], "; "),
        };
        match groups.last_mut() {
            Some((last, group)) if last.key == design.key => group.rows.push(row),
            _ => {
                let group = Group {
                    design: here.design(&design.key),
                    rows: vec![row],
                };
                groups.push((design, group));
            }
        }
    }
    let groups: Vec<Group> = groups.into_iter().map(|(_, group)| group).collect();
    let has_remarks = groups
        .iter()
        .flat_map(|group| &group.rows)
        .any(|row| !row.remark.is_empty());
    (!groups.is_empty()).then_some(Checklist {
        groups,
        has_remarks,
    })
}

/// The state that a sheet is taken to be in, each numeral a link, with how sure that is.
fn state(here: &Here<'_>, design: &Design, impression: &Impression) -> CleanHtml {
    let Some(reading) = &impression.identified else {
        return CleanHtml::empty();
    };
    let state = unqualified_state(here, design, reading);
    if state.is_empty() {
        return state;
    }
    let doubts = readings::doubts(here, design, impression, reading);
    CleanHtml::join([&state, &doubts], " ")
}

/// The state of a reading in words, "iii/iv", without how sure it is; empty where none is named.
pub(crate) fn unqualified_state(
    here: &Here<'_>,
    design: &Design,
    reading: &Identification,
) -> CleanHtml {
    match &reading.state {
        Some(StateReading::OneOf(states)) => {
            let states: Vec<CleanHtml> = states
                .iter()
                .map(|s| here.state_of(&design.key, &s.value))
                .collect();
            enumeration::either(here, &states)
        }
        _ => readings::state_alone(here, design, reading),
    }
}

/// The printing, the kind where it is not a sheet of the edition, and the numbering. Where no state is named, how
/// sure the reading is stands after the printing.
fn printing(here: &Here<'_>, design: &Design, impression: &Impression) -> CleanHtml {
    let printing = impression
        .identified
        .as_ref()
        .map_or_else(CleanHtml::empty, |reading| {
            let printing = readings::printing_alone(here, design, reading);
            let printing = CleanHtml::text(&printing);
            if printing.is_empty() || !unqualified_state(here, design, reading).is_empty() {
                return printing;
            }
            let doubts = readings::doubts(here, design, impression, reading);
            CleanHtml::join([&printing, &doubts], " ")
        });
    let kind = impression
        .kind
        .own()
        .filter(|kind| kind.as_str() != "edition")
        .map_or_else(String::new, |kind| {
            here.term(Vocabulary::Kinds, kind.as_str())
        });
    let numbering = impression
        .numbering
        .as_ref()
        .map_or("", |n| n.value.as_str());
    let parts = [printing, CleanHtml::text(&kind), CleanHtml::text(numbering)];
    CleanHtml::join(&parts, ", ")
}
