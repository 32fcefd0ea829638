//! Tables of points: what to look at to tell states and printings apart, and the values that each may have.

use super::cell::Cell;
use super::rows::{numbered, part, some_part};
use super::table::{TableOf, Written};
use crate::exchange::format::Sources;
use crate::model::boxes::PercentBox;
use crate::model::design::Design;
use crate::model::point::{Point, PointKind};
use crate::page::Address;

pub(super) fn points(sources: Sources<'_>) -> Written {
    type Row<'s> = (&'s Design, usize, &'s Point);
    let edge = |row: &Row, at: usize| -> Cell {
        let edges = row.2.area.map(PercentBox::percent);
        edges.and_then(|edges| edges.get(at).copied()).into()
    };
    let rows = sources.designs().flat_map(|d| numbered(d, &d.points));
    TableOf::new("points")
        .id("point", |row: &Row| part(row.0, &row.2.key))
        .key_of("design", "designs", |row| (&row.0.key).into())
        .required()
        .integer("position", |row| row.1.into())
        .required()
        .text("ask", |row| (&row.2.ask).into())
        .required()
        .word("kind", |row| Some(row.2.kind.word()))
        .text("unit", |row| match &row.2.kind {
            PointKind::Measure { unit, .. } => unit.into(),
            _ => Cell::Empty,
        })
        .number("tolerance", |row| match &row.2.kind {
            PointKind::Measure { tolerance, .. } => (*tolerance).into(),
            _ => Cell::Empty,
        })
        .word("rests_on", |row| Some(row.2.rests_on.value))
        .key_of("matrix", "matrices", |row| {
            some_part(row.0, row.2.matrix.as_ref())
        })
        .boolean("deciding", |row| row.2.is_deciding().into())
        .text("decides", |row| row.2.decides.as_ref().into())
        .number("strays", |row| {
            row.2.strays.as_ref().map(|s| s.value).into()
        })
        .number("left_percent", move |row| edge(row, 0))
        .number("top_percent", move |row| edge(row, 1))
        .number("width_percent", move |row| edge(row, 2))
        .number("height_percent", move |row| edge(row, 3))
        .address("address", |row| {
            let point = row.2.key.value.clone();
            sources.address(&Address::Point(row.0.key.clone(), point))
        })
        .required()
        .write(rows)
}

/// A value that a point may have.
struct ValueRow<'s> {
    design: &'s Design,
    point: &'s Point,
    position: usize,
    value: &'s str,
    meaning: Option<&'s str>,
}

pub(super) fn values(sources: Sources<'_>) -> Written {
    let points = sources.designs();
    let points = points.flat_map(|design| design.points.iter().map(move |point| (design, point)));
    TableOf::new("point-values")
        .part_of("point", "points", |row: &ValueRow| {
            part(row.design, &row.point.key)
        })
        .position(|row| row.position)
        .text("value", |row| row.value.into())
        .required()
        .text("meaning", |row| row.meaning.into())
        .write(points.flat_map(|(design, point)| values_of(design, point)))
}

fn values_of<'s>(design: &'s Design, point: &'s Point) -> Vec<ValueRow<'s>> {
    let words = point.kind.words().unwrap_or_default();
    let meaning = |at: usize| match &point.kind {
        PointKind::Choice(values) => values.get(at).map(|value| value.description.as_str()),
        _ => None,
    };
    let words = words.into_iter().enumerate();
    words
        .map(|(at, value)| ValueRow {
            design,
            point,
            position: at + 1,
            value,
            meaning: meaning(at),
        })
        .collect()
}
