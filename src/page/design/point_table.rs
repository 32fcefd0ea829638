//! The table of points against states or printings, and the points that stand in none.
//!
//! The table is set as in books: points down, states across, a value in words, a ditto mark for what
//! stays as in the column before, a wedge and the words for what changed. A screen reader hears the
//! value in full either way.

use serde::Serialize;

use crate::model::design::Design;
use crate::model::point::{Point, Value};
use crate::page::phrases::values;
use crate::page::plates::strips::Detail;
use crate::page::setting::address::{Address, Fragment};
use crate::page::setting::book::Here;

/// A table of points against states or printings.
#[derive(Serialize)]
pub(crate) struct PointTable {
    heads: Vec<Head>,
    rows: Vec<Row>,
}

#[derive(Serialize)]
struct Head {
    href: String,
    text: String,
}

#[derive(Serialize)]
struct Row {
    id: String,
    /// The page of the point; empty on that page.
    href: String,
    ask: String,
    rests: String,
    cells: Vec<Cell>,
}

/// What one column shows at a point.
#[derive(Serialize)]
pub(crate) struct Cell {
    /// How it stands to the column before: `blank`, `plain`, `same` or `changed`.
    pub kind: &'static str,
    /// What is shown, in words.
    pub text: String,
    /// What it looks like on one sheet.
    pub detail: Option<Detail>,
}

impl PointTable {
    /// A table with a column for each of `columns`: where it leads, what it is called, and what it
    /// shows at a point. Points at which nothing is shown are left out.
    pub fn plain<'d>(
        here: &Here<'_>,
        design: &'d Design,
        columns: &[(String, String)],
        shows: impl Fn(usize, &Point) -> Option<Vec<&'d Value>>,
    ) -> Option<PointTable> {
        PointTable::of(here, design, columns, |point| {
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

    /// A table with a column for each of `columns` and the cells that `cells` gives for a point. Points at
    /// which every cell is blank are left out.
    pub fn of(
        here: &Here<'_>,
        design: &Design,
        columns: &[(String, String)],
        cells: impl Fn(&Point) -> Vec<Cell>,
    ) -> Option<PointTable> {
        let rows: Vec<Row> = design
            .points
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
        let heads = columns
            .iter()
            .map(|(href, text)| Head {
                href: href.clone(),
                text: text.clone(),
            })
            .collect();
        (!rows.is_empty()).then_some(PointTable { heads, rows })
    }

    /// The points that have a row, by fragment.
    pub fn row_ids(&self) -> Vec<String> {
        self.rows.iter().map(|row| row.id.clone()).collect()
    }

    /// The row of one point alone; `None` where it has none.
    pub fn only(mut self, id: &str) -> Option<PointTable> {
        self.rows.retain(|row| row.id == id);
        (!self.rows.is_empty()).then_some(self)
    }

    /// The same without the ids of rows that another table of the page has already.
    pub fn without_ids(mut self, taken: &[String]) -> PointTable {
        for row in &mut self.rows {
            if taken.contains(&row.id) {
                row.id = String::new();
            }
        }
        self
    }
}

/// A point that stands in no table, since neither states nor printings say what they show there.
#[derive(Serialize)]
pub(crate) struct PointLine {
    id: String,
    href: String,
    ask: String,
    rests: String,
    answers: String,
}

/// The points that have no row in a table of the page, with the answers each takes.
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

/// Where the page of a point stands; nothing on that page itself.
fn page_of(here: &Here<'_>, design: &Design, point: &Point) -> String {
    let address = Address::Point(design.key.clone(), point.key.value.clone());
    if address == *here.address {
        String::new()
    } else {
        here.href(&address)
    }
}

/// A cell where nothing is shown.
pub(crate) fn blank() -> Cell {
    Cell {
        kind: "blank",
        text: String::new(),
        detail: None,
    }
}
