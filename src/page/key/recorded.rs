//! What the diagnostic table records, in words: the values that a candidate allows, the kinds of evidence, and the
//! recuts and reproductions that a sheet may be instead.

use serde::Serialize;

use super::points::at_place;
use crate::model::design::Design;
use crate::model::point::{Point, PointKind};
use crate::page::phrases::enumeration;
use crate::page::plates::strips;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::study::scale::Allowed;
use crate::study::table::{AxisRow, DiagnosticTable, PointColumn};

/// A recut or a reproduction that the catalogue records, and what tells it.
#[derive(Serialize)]
pub(crate) struct RecordedCopy {
    name: CleanHtml,
    kind: String,
    /// Its points, each with the values recorded; empty where nothing is recorded that tells it.
    told: Vec<CleanHtml>,
}

/// The recuts and reproductions that the design records.
pub(crate) fn copies(
    here: &Here<'_>,
    design: &Design,
    table: &DiagnosticTable,
) -> Vec<RecordedCopy> {
    let copies = table.printings.iter().filter_map(|row| {
        let printing = design.printing(row.key.as_ref()?)?;
        let kind = printing.kind.own().filter(|kind| !kind.is_counted())?;
        Some(RecordedCopy {
            name: CleanHtml::text(&here.printing_name(design, &printing.key.value)),
            kind: here.words().listed("printing", *kind).to_owned(),
            told: told(here, design, table, row),
        })
    });
    copies.collect()
}

fn told(
    here: &Here<'_>,
    design: &Design,
    table: &DiagnosticTable,
    row: &AxisRow,
) -> Vec<CleanHtml> {
    let points = row.shown.iter().filter_map(|at| {
        let column = table.points.get(*at)?;
        let point = design.point(&column.key)?;
        let allowed = column.allows(*row.candidates.first()?)?;
        let shown = CleanHtml::text(&self::allowed(here, point, column, allowed));
        Some(strips::ask(here, design, point).then(" ").and(&shown))
    });
    points.collect()
}

/// What a candidate allows at a point: "graded or wiped", "204 mm".
pub(crate) fn allowed(
    here: &Here<'_>,
    point: &Point,
    column: &PointColumn,
    allowed: &Allowed,
) -> String {
    match allowed {
        Allowed::AnyOf(values) => {
            let values = values.iter().map(|at| at_place(here, point, column, *at));
            enumeration::either_text(here.words(), &values.collect::<Vec<String>>())
        }
        Allowed::Number(number) => match &point.kind {
            PointKind::Measure { unit, .. } => format!("{number} {unit}"),
            _ => number.to_string(),
        },
    }
}
