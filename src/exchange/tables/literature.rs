//! Tables of the literature, of the passages cited, and of the numbers that earlier catalogues give.

use super::cell::Cell;
use super::rows::part;
use super::table::{TableOf, Written};
use crate::exchange::format::Sources;
use crate::model::design::Design;
use crate::model::impression::Impression;
use crate::model::key::Key;
use crate::model::literature::{Citation, Work};
use crate::model::printing::Printing;
use crate::model::state::State;
use crate::page::Address;
use crate::study::concordance::{ConcordanceRow, DesignPart, OtherNumber};

pub(super) fn literature(sources: Sources<'_>) -> Written {
    TableOf::new("literature")
        .id("work", |work: &&Work| (&work.key).into())
        .text("short", |work| (&work.short).into())
        .required()
        .text("full", |work| (&work.full).into())
        .text("authors", |work| (&work.authors).into())
        .integer("year", |work| {
            work.year
                .map_or(Cell::Empty, |year| Cell::Integer(year.into()))
        })
        .text("title", |work| (&work.title).into())
        .address("address", |work| {
            sources.address(&Address::Work(work.key.clone()))
        })
        .required()
        .write(sources.public.literature.values())
}

/// A passage that is cited under a design or a part of it, or under an impression.
struct Passage<'s> {
    design: &'s Design,
    state: Option<&'s State>,
    printing: Option<&'s Printing>,
    impression: Option<&'s Impression>,
    known_from: bool,
    citation: &'s Citation,
}

pub(super) fn citations(sources: Sources<'_>) -> Written {
    TableOf::new("citations")
        .key_of("design", "designs", |row: &Passage| {
            (&row.design.key).into()
        })
        .required()
        .key_of("state", "states", |row| {
            row.state.map(|state| part(row.design, &state.key)).into()
        })
        .key_of("printing", "printings", |row| {
            let printing = row.printing;
            printing
                .map(|printing| part(row.design, &printing.key))
                .into()
        })
        .key_of("impression", "impressions", |row| {
            row.impression.map(|impression| &impression.key).into()
        })
        .cited(["work", "document"], |row| Some(&row.citation.cite.value))
        .text("at", |row| row.citation.at.as_ref().into())
        .text("their_number", |row| row.citation.number.as_ref().into())
        .word("relation", |row| {
            let number = row.citation.number.as_ref();
            number.map(|_| row.citation.relation)
        })
        .boolean("known_from", |row| row.known_from.into())
        .word("this_sheet", |row| {
            let this_sheet = row.citation.this_sheet.as_ref();
            this_sheet.map(|certainty| certainty.value)
        })
        .boolean("illustrated", |row| row.citation.illustrated.into())
        .write(sources.designs().flat_map(cited))
}

fn cited(design: &Design) -> Vec<Passage<'_>> {
    let of_design = |citation| Passage {
        design,
        state: None,
        printing: None,
        impression: None,
        known_from: false,
        citation,
    };
    let known_from = design.known_from.iter().map(|citation| Passage {
        known_from: true,
        ..of_design(citation)
    });
    let own = design.literature.iter().map(of_design);
    let states = design.states.iter().flat_map(|state| {
        state.literature.iter().map(move |citation| Passage {
            state: Some(state),
            ..of_design(citation)
        })
    });
    let printings = design.printings.iter().flat_map(|printing| {
        printing.literature.iter().map(move |citation| Passage {
            printing: Some(printing),
            ..of_design(citation)
        })
    });
    let sheets = design.impressions.values().flat_map(|sheet| {
        sheet.literature.iter().map(move |citation| Passage {
            impression: Some(sheet),
            ..of_design(citation)
        })
    });
    known_from
        .chain(own)
        .chain(states)
        .chain(printings)
        .chain(sheets)
        .collect()
}

pub(super) fn concordance(sources: Sources<'_>) -> Written {
    type Row<'s> = (&'s ConcordanceRow, &'s Key, &'s OtherNumber);
    let rows = sources.studies.concordance.rows.iter().flat_map(|row| {
        let cells = row.cells.iter();
        cells.flat_map(move |(work, numbers)| numbers.iter().map(move |n| (row, work, n)))
    });
    let own = |row: &Row, of: fn(&DesignPart) -> Option<&Key>| -> Cell {
        let ours = &row.0.ours;
        of(&ours.part)
            .map(|key| format!("{}/{key}", ours.design))
            .into()
    };
    TableOf::new("concordance")
        .key_of("design", "designs", |row: &Row| (&row.0.ours.design).into())
        .required()
        .key_of("state", "states", move |row| {
            own(row, |part| match part {
                DesignPart::State(key) => Some(key),
                _ => None,
            })
        })
        .key_of("printing", "printings", move |row| {
            own(row, |part| match part {
                DesignPart::Printing(key) => Some(key),
                _ => None,
            })
        })
        .key_of("work", "literature", |row| row.1.into())
        .required()
        .text("their_number", |row| (&row.2.number).into())
        .required()
        .word("relation", |row| Some(row.2.relation))
        .text("at", |row| row.2.at.as_ref().into())
        .write(rows)
}
