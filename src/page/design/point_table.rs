//! The table of points against states or printings, and the points that are in no such table.
//!
//! It is set as in books: points down, states across, a value in words, a ditto mark for a value
//! unchanged from the column before, a wedge and the value for a change. A screen reader gets the value
//! in full either way.

use serde::Serialize;

use crate::model::design::Design;
use crate::model::point::{Point, Value};
use crate::page::lists::filled::FilledColumns;
use crate::page::phrases::enumeration;
use crate::page::phrases::values;
use crate::page::plates::strips::SheetDetail;
use crate::page::setting::address::{Address, Fragment};
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;

/// A table of points against states or printings.
#[derive(Serialize)]
pub(crate) struct PointTable {
    heads: Vec<Head>,
    rows: Vec<Row>,
    /// "Nothing is recorded here for iii and v": the columns that no row fills, which are left out; empty for none.
    left_out: CleanHtml,
}

#[derive(Serialize)]
struct Head {
    href: String,
    text: String,
}

#[derive(Serialize)]
struct Row {
    id: String,
    /// The link to the page of the point; empty on that page.
    href: String,
    ask: String,
    rests: String,
    cells: Vec<Cell>,
}

/// What one column shows at a point.
#[derive(Serialize)]
pub(crate) struct Cell {
    /// Its relation to the column before: `blank`, `plain`, `same` or `changed`.
    pub kind: &'static str,
    /// What is shown, in words.
    pub text: String,
    /// The detail of an example.
    pub detail: Option<SheetDetail>,
}

impl Cell {
    /// Whether it says or shows anything.
    fn is_filled(&self) -> bool {
        self.kind != "blank" || self.detail.is_some()
    }
}

impl PointTable {
    /// A table of `points` with a column for each of `columns` (link and text), where `shows` gives the
    /// values at a point.
    pub fn plain<'d>(
        here: &Here<'_>,
        design: &'d Design,
        points: &[Point],
        columns: &[(String, String)],
        shows: impl Fn(usize, &Point) -> Option<Vec<&'d Value>>,
    ) -> Option<PointTable> {
        PointTable::of(here, design, points, columns, |point| {
            (0..columns.len())
                .map(|at| match shows(at, point) {
                    Some(values) => Cell {
                        kind: "plain",
                        text: values::any_of(here, point, values),
                        detail: None,
                    },
                    None => blank(),
                })
                .collect()
        })
    }

    /// A table of `points` with a column for each of `columns` (link and text) and the cells of a point.
    /// Points whose cells are all blank are left out; so are columns, which are named below the table.
    pub fn of(
        here: &Here<'_>,
        design: &Design,
        points: &[Point],
        columns: &[(String, String)],
        cells: impl Fn(&Point) -> Vec<Cell>,
    ) -> Option<PointTable> {
        let mut rows: Vec<Row> = points
            .iter()
            .map(|point| Row {
                id: Fragment::Point(&point.key.value).to_string(),
                href: page_of(here, design, point),
                ask: point.ask.value.clone(),
                rests: values::rests_on(here, design, point),
                cells: cells(point),
            })
            .filter(|row| row.cells.iter().any(|cell| cell.kind != "blank"))
            .collect();
        let heads = columns.iter().map(|(href, text)| Head {
            href: href.clone(),
            text: text.clone(),
        });
        let mut heads: Vec<Head> = heads.collect();
        let filled = FilledColumns::of(heads.len(), &rows, |row| &row.cells, Cell::is_filled);
        for row in &mut rows {
            filled.keep(&mut row.cells);
        }
        let left_out = filled.keep(&mut heads);
        let left_out = left_out.iter();
        let left_out: Vec<CleanHtml> = left_out
            .map(|head| CleanHtml::link(&head.href, &CleanHtml::text(&head.text)))
            .collect();
        (!rows.is_empty()).then(|| PointTable {
            heads,
            rows,
            left_out: if left_out.is_empty() {
                CleanHtml::empty()
            } else {
                let columns = enumeration::together(here, &left_out);
                let given = [("columns", &columns)];
                here.words().html("points-left-out", None, &given)
            },
        })
    }

    /// The fragments of the points that have a row.
    pub fn row_ids(&self) -> Vec<String> {
        self.rows.iter().map(|row| row.id.clone()).collect()
    }

    /// The same without the ids of rows that another table of the page has.
    pub fn without_ids(mut self, taken: &[String]) -> PointTable {
        for row in &mut self.rows {
            if taken.contains(&row.id) {
                row.id = String::new();
            }
        }
        self
    }
}

/// A point that is in no table, because neither states nor printings record its value.
#[derive(Serialize)]
pub(crate) struct PointLine {
    id: String,
    href: String,
    ask: String,
    rests: String,
    answers: String,
}

/// The points without a row in a table of the page, with the answers each takes.
pub(crate) fn other_points(here: &Here<'_>, design: &Design, taken: &[String]) -> Vec<PointLine> {
    design
        .points
        .iter()
        .map(|point| PointLine {
            id: Fragment::Point(&point.key.value).to_string(),
            href: page_of(here, design, point),
            ask: point.ask.value.clone(),
            rests: values::rests_on(here, design, point),
            answers: values::answers(here, point),
        })
        .filter(|line| !taken.contains(&line.id))
        .collect()
}

/// The link to the page of a point; empty on that page.
fn page_of(here: &Here<'_>, design: &Design, point: &Point) -> String {
    let address = Address::Point(design.key.clone(), point.key.value.clone());
    if address == *here.address {
        String::new()
    } else {
        here.href(&address)
    }
}

/// A cell without a value.
pub(crate) fn blank() -> Cell {
    Cell {
        kind: "blank",
        text: String::new(),
        detail: None,
    }
}
