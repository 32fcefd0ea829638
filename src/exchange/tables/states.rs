//! Tables of the parts of designs: matrices, states, printings, variants, and what each shows at the points.

use super::cell::Cell;
use super::rows::{numbered, part, parts, some_part};
use super::table::{TableOf, Written};
use crate::exchange::format::Sources;
use crate::model::design::{Design, Matrix, MatrixNow};
use crate::model::key::Key;
use crate::model::place::Placed;
use crate::model::point::{ShownAtPoint, Value};
use crate::model::printing::{Printing, StatesPrinted};
use crate::model::state::{State, Variant};
use crate::page::Fragment;
use crate::study::numerals::Numeral;

pub(super) fn matrices(sources: Sources<'_>) -> Written {
    type Row<'s> = (&'s Design, usize, &'s Matrix);
    fn now<'r>(row: &'r Row<'_>) -> Option<&'r MatrixNow> {
        row.2.now.as_ref()
    }
    let rows = sources.designs().flat_map(|d| numbered(d, &d.matrices));
    TableOf::new("matrices")
        .id("matrix", |row: &Row| part(row.0, &row.2.key))
        .key_of("design", "designs", |row| (&row.0.key).into())
        .required()
        .integer("position", |row| row.1.into())
        .required()
        .word("kind", |row| row.2.kind)
        .text("material", |row| row.2.material.as_ref().into())
        .text("carries", |row| row.2.carries.as_ref().into())
        .text("colour", |row| row.2.colour.as_ref().into())
        .size(
            ["matrix_height_mm", "matrix_width_mm", "matrix_certainty"],
            |row| &row.2.size,
        )
        .text("accession", |row| row.2.accession.as_ref().into())
        .keys_of("only_in", "variants", |row| parts(row.0, &row.2.only_in))
        .word("fate", |row| now(row).map(|now| now.state.value))
        .plain_date("fate_date", |row| {
            now(row)
                .and_then(|now| now.date.as_ref())
                .map(|date| &date.value)
        })
        .key_of("holder", "holders", |row| {
            now(row).and_then(|now| now.holder.as_ref()).into()
        })
        .address("address", |row| {
            sources.design_part(row.0, Fragment::Matrix(&row.2.key))
        })
        .required()
        .write(rows)
}

pub(super) fn states(sources: Sources<'_>) -> Written {
    type Row<'s> = (&'s Design, usize, &'s State);
    let numeral = |row: &Row| sources.studies.numeral(&row.0.key, &row.2.key);
    let rows = sources.designs().flat_map(|d| numbered(d, &d.states));
    TableOf::new("states")
        .id("state", |row: &Row| part(row.0, &row.2.key))
        .key_of("design", "designs", |row| (&row.0.key).into())
        .required()
        .integer("position", |row| row.1.into())
        .required()
        .text("numeral", move |row| {
            numeral(row).map(Numeral::roman).into()
        })
        .integer("of_states", move |row| numeral(row).map(Numeral::of).into())
        .date(["date", "date_earliest", "date_latest"], |row| {
            row.2.date.own()
        })
        .certainty_of("date_certainty", |row| &row.2.date)
        .person_or_holder(sources, ["by_person", "by_holder"], |row| {
            row.2.by.as_ref().map(|by| &by.value)
        })
        .text("summary", |row| row.2.summary.as_ref().into())
        .keys_of("follows", "states", |row| match &row.2.follows {
            Some(follows) => parts(row.0, follows),
            None => Cell::Empty,
        })
        .plain_date("described", |row| {
            row.2.described.as_ref().map(|date| &date.value)
        })
        .key_of("split_from", "states", |row| {
            some_part(row.0, row.2.split_from.as_ref())
        })
        .sizes(|row| &row.2.size)
        .standing(|row| &row.2.standing)
        .address("address", |row| {
            sources.design_part(row.0, Fragment::State(&row.2.key))
        })
        .required()
        .write(rows)
}

pub(super) fn printings(sources: Sources<'_>) -> Written {
    type Row<'s> = (&'s Design, usize, &'s Printing);
    let rows = sources.designs().flat_map(|d| numbered(d, &d.printings));
    TableOf::new("printings")
        .id("printing", |row: &Row| part(row.0, &row.2.key))
        .key_of("design", "designs", |row| (&row.0.key).into())
        .required()
        .integer("position", |row| row.1.into())
        .required()
        .text("name", |row| row.2.name.as_ref().into())
        .word("kind", |row| row.2.kind.own().copied())
        .certainty_of("kind_certainty", |row| &row.2.kind)
        .person_or_holder(sources, ["printer_person", "printer_holder"], |row| {
            row.2.printer.own()
        })
        .certainty_of("printer_certainty", |row| &row.2.printer)
        .person_or_holder(sources, ["publisher_person", "publisher_holder"], |row| {
            row.2.publisher.own()
        })
        .certainty_of("publisher_certainty", |row| &row.2.publisher)
        .date(["date", "date_earliest", "date_latest"], |row| {
            row.2.date.own()
        })
        .certainty_of("date_certainty", |row| &row.2.date)
        .integer("edition", |row| row.2.edition.own().into())
        .certainty_of("edition_certainty", |row| &row.2.edition)
        .integer("printed", |row| row.2.printed.own().into())
        .certainty_of("printed_certainty", |row| &row.2.printed)
        .boolean("numbered", |row| row.2.numbered.into())
        .boolean("every_state", |row| {
            (row.2.states == StatesPrinted::All).into()
        })
        .keys_of("states", "states", |row| match &row.2.states {
            StatesPrinted::All => parts_of_states(row.0),
            StatesPrinted::Some(states) => parts(row.0, states),
        })
        .keys_of("matrices", "matrices", |row| parts(row.0, &row.2.matrices))
        .list("paper", |row| Cell::placed(&row.2.paper))
        .list("inks", |row| Cell::placed(&row.2.inks))
        .word("pressed", |row| row.2.pressed)
        .sizes(|row| &row.2.size)
        .standing(|row| &row.2.standing)
        .address("address", |row| {
            sources.design_part(row.0, Fragment::Printing(&row.2.key))
        })
        .required()
        .write(rows)
}

/// The keys of every state of a design that is not withdrawn.
fn parts_of_states(design: &Design) -> Cell {
    parts(design, design.standing_states().map(|state| &state.key))
}

pub(super) fn variants(sources: Sources<'_>) -> Written {
    type Row<'s> = (&'s Design, usize, &'s Variant);
    let rows = sources.designs().flat_map(|d| numbered(d, &d.variants));
    TableOf::new("variants")
        .id("variant", |row: &Row| part(row.0, &row.2.key))
        .key_of("design", "designs", |row| (&row.0.key).into())
        .required()
        .integer("position", |row| row.1.into())
        .required()
        .text("summary", |row| row.2.summary.as_ref().into())
        .keys_of("states", "states", |row| parts(row.0, &row.2.states))
        .keys_of("printings", "printings", |row| {
            parts(row.0, &row.2.printings)
        })
        .standing(|row| &row.2.standing)
        .address("address", |row| {
            sources.design_part(row.0, Fragment::Variant(&row.2.key))
        })
        .required()
        .write(rows)
}

/// A value that a part of a design shows at a point.
struct Shown<'s> {
    design: &'s Design,
    state: Option<&'s Key>,
    printing: Option<&'s Key>,
    variant: Option<&'s Key>,
    point: &'s ShownAtPoint,
    value: &'s Placed<Value>,
}

pub(super) fn shown(sources: Sources<'_>) -> Written {
    let some =
        |design: &Design, key: Option<&Key>| -> Cell { key.map(|key| part(design, key)).into() };
    TableOf::new("shown")
        .key_of("design", "designs", |row: &Shown| (&row.design.key).into())
        .required()
        .key_of("point", "points", |row| part(row.design, &row.point.point))
        .required()
        .key_of("state", "states", move |row| some(row.design, row.state))
        .key_of("printing", "printings", move |row| {
            some(row.design, row.printing)
        })
        .key_of("variant", "variants", move |row| {
            some(row.design, row.variant)
        })
        .text("value", |row| row.value.value.to_string().into())
        .required()
        .write(sources.designs().flat_map(shown_by))
}

fn shown_by(design: &Design) -> Vec<Shown<'_>> {
    let mut all = Vec::new();
    for state in &design.states {
        all.extend(rows(
            design,
            [Some(&state.key.value), None, None],
            &state.shows.0,
        ));
    }
    for printing in &design.printings {
        all.extend(rows(
            design,
            [None, Some(&printing.key.value), None],
            &printing.shows.0,
        ));
    }
    for variant in &design.variants {
        all.extend(rows(
            design,
            [None, None, Some(&variant.key.value)],
            &variant.shows.0,
        ));
    }
    all
}

fn rows<'s>(
    design: &'s Design,
    [state, printing, variant]: [Option<&'s Key>; 3],
    points: &'s [ShownAtPoint],
) -> impl Iterator<Item = Shown<'s>> {
    points.iter().flat_map(move |point| {
        point.values.iter().map(move |value| Shown {
            design,
            state,
            printing,
            variant,
            point,
            value,
        })
    })
}
