//! Checklists: impressions in a table, grouped by design.

use super::table::{Column, Holds, Row, Table};
use crate::model::design::Design;
use crate::model::impression::{Identification, Impression, StateReading};
use crate::model::vocabulary::List as Vocabulary;
use crate::page::phrases::enumeration;
use crate::page::phrases::readings;
use crate::page::phrases::standing_note;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;

/// The words for the heads of the columns that differ from page to page.
pub(crate) struct ChecklistHeads {
    /// The number of the sheet: with its holder, or in an exhibition.
    pub number: &'static str,
    /// The remark: the owner of the sheet or its present place.
    pub remark: &'static str,
}

/// A checklist of impressions, which must come in the order of the catalogue; `None` for no impression. Its rows: the
/// design, the handle of the sheet, its number, its state, its printing with kind and numbering, and a remark with the
/// standing of a record that is not accepted.
pub(crate) fn checklist<'i>(
    here: &Here<'_>,
    heads: &ChecklistHeads,
    impressions: impl IntoIterator<Item = (&'i Design, &'i Impression)>,
    number: impl Fn(&Impression) -> String,
    remark: impl Fn(&Impression) -> CleanHtml,
) -> Option<Table> {
    let columns = [
        (Holds::Group, "design"),
        (Holds::Name, "impression"),
        (Holds::Accession, heads.number),
        (Holds::Words, "state"),
        (Holds::Words, "printing-and-kind"),
        (Holds::Words, heads.remark),
    ];
    let columns = columns.map(|(holds, head)| Column::new(holds, here.words().word(head)));
    let row = |(design, impression): (&Design, &Impression)| {
        let standing = standing_note::remark(here, &impression.standing);
        Row::new(vec![
            here.design(&design.key),
            here.impression(&impression.key),
            CleanHtml::text(&number(impression)),
            state(here, design, impression),
            printing(here, design, impression),
            CleanHtml::join([&remark(impression), &CleanHtml::text(standing)], "; "),
        ])
    };
    let rows: Vec<Row> = impressions.into_iter().map(row).collect();
    Table::new(&columns, &rows)
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
