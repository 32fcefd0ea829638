//! The table of statements: who says what of a date, size, kind, printer or edition, where sources may disagree.
//!
//! The tables of records give the catalogue's own view alone; here every view has a row with what it rests on.

use std::fmt::Display;

use super::table::{TableOf, Written};
use crate::exchange::format::Sources;
use crate::model::certainty::{Claim, Statements};
use crate::model::design::Design;
use crate::model::size::{Size, Sizes};

/// A statement about one thing.
struct Row<'s> {
    of: String,
    about: &'static str,
    position: usize,
    value: String,
    size: Option<&'s Size>,
    claim: &'s Claim,
}

pub(super) fn statements(sources: Sources<'_>) -> Written {
    let of_designs = sources.designs().flat_map(of_design);
    let of_marks = sources.public.marks.values().flat_map(|mark| {
        let of = format!("mark:{}", mark.key);
        sizes(of, "size", &mark.size)
    });
    let of_series = sources.public.series.values().flat_map(|series| {
        let of = format!("series:{}", series.key);
        let mut rows = values(&of, "date", &series.date);
        rows.extend(values(&of, "publisher", &series.publisher));
        rows.extend(values(&of, "number", &series.number));
        rows
    });
    TableOf::new("statements")
        .text("of", |row: &Row| row.of.as_str().into())
        .required()
        .text("about", |row| row.about.into())
        .required()
        .integer("position", |row| row.position.into())
        .required()
        .text("value", |row| row.value.as_str().into())
        .number("height_mm", |row| row.size.map(Size::height_mm).into())
        .number("width_mm", |row| row.size.map(Size::width_mm).into())
        .claim(sources, |row| row.claim)
        .keyed_by(&["of", "about", "position"])
        .write(of_designs.chain(of_marks).chain(of_series))
}

fn of_design(design: &Design) -> Vec<Row<'_>> {
    let key = &design.key;
    let of = format!("design:{key}");
    let mut rows = values(&of, "date", &design.date);
    rows.extend(image_and_matrix(&of, &design.size));
    for matrix in &design.matrices {
        let of = format!("matrix:{key}/{}", matrix.key.value);
        rows.extend(sizes(of, "matrix", &matrix.size));
    }
    for state in &design.states {
        let of = format!("state:{key}/{}", state.key.value);
        rows.extend(values(&of, "date", &state.date));
        rows.extend(image_and_matrix(&of, &state.size));
    }
    for printing in &design.printings {
        let of = format!("printing:{key}/{}", printing.key.value);
        rows.extend(values(&of, "kind", &printing.kind));
        rows.extend(values(&of, "printer", &printing.printer));
        rows.extend(values(&of, "publisher", &printing.publisher));
        rows.extend(values(&of, "date", &printing.date));
        rows.extend(values(&of, "edition", &printing.edition));
        rows.extend(values(&of, "printed", &printing.printed));
        rows.extend(image_and_matrix(&of, &printing.size));
    }
    for impression in design.impressions.values() {
        let of = format!("impression:{}", impression.key);
        let sheet = &impression.sheet;
        rows.extend(values(&of, "kind", &impression.kind));
        rows.extend(sizes(of.clone(), "sheet", &sheet.size));
        rows.extend(sizes(of.clone(), "image", &sheet.image));
        rows.extend(sizes(of.clone(), "platemark", &sheet.platemark));
        rows.extend(sizes(of.clone(), "unsaid", &sheet.unsaid));
        rows.extend(sizes(of.clone(), "support", &sheet.support));
        rows.extend(sizes(of.clone(), "mount", &sheet.mount));
        rows.extend(sizes(of.clone(), "frame", &sheet.frame));
        rows.extend(values(&of, "date", &sheet.date));
    }
    rows
}

fn image_and_matrix<'s>(of: &str, of_both: &'s Sizes) -> impl Iterator<Item = Row<'s>> {
    let image = sizes(of.to_owned(), "image", &of_both.image);
    image.chain(sizes(of.to_owned(), "matrix", &of_both.matrix))
}

fn values<'s, T: Display>(
    of: &str,
    about: &'static str,
    statements: &'s Statements<T>,
) -> Vec<Row<'s>> {
    let rows = statements.iter().zip(1..);
    rows.map(|(statement, position)| Row {
        of: of.to_owned(),
        about,
        position,
        value: statement.is.value.to_string(),
        size: None,
        claim: &statement.claim,
    })
    .collect()
}

fn sizes<'s>(
    of: String,
    about: &'static str,
    statements: &'s Statements<Size>,
) -> impl Iterator<Item = Row<'s>> {
    let rows = statements.iter().zip(1..);
    rows.map(move |(statement, position)| Row {
        of: of.clone(),
        about,
        position,
        value: String::new(),
        size: Some(&statement.is.value),
        claim: &statement.claim,
    })
}
