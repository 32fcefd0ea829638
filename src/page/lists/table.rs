//! Tables whose columns may be empty: checklists, rows that begin with their names, rows of figures. A column that no row
//! fills is left out together with its head. [`Table::new`] does this for all of them.
//!
//! Tables in which an empty column says something (a state of which nothing is recorded) are not made here: they say it
//! below the table (`filled`).

use serde::Serialize;

use crate::page::setting::html::CleanHtml;

/// A column.
pub(crate) struct Column {
    /// Its head.
    pub head: CleanHtml,
    /// What its cells hold.
    pub holds: Holds,
}

/// What the cells of a column hold, which decides how they are set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Holds {
    /// What several rows have in common: set once, beside all of them.
    Group,
    /// The name of the row.
    Name,
    /// Words.
    Words,
    /// The number of a sheet with its holder.
    Accession,
    /// A number that stands under others.
    Figure,
}

impl Holds {
    /// The class of its cells; empty for none.
    fn class(self) -> &'static str {
        match self {
            Holds::Group | Holds::Name | Holds::Words => "",
            Holds::Accession => "accession",
            Holds::Figure => "figure",
        }
    }

    fn class_of_head(self) -> &'static str {
        match self {
            Holds::Figure => "figure",
            _ => "",
        }
    }

    /// The scope of cells that are heads of rows; empty for data.
    fn scope(self) -> &'static str {
        match self {
            Holds::Group => "rowgroup",
            Holds::Name => "row",
            Holds::Words | Holds::Accession | Holds::Figure => "",
        }
    }
}

impl Column {
    /// A column with the head `head`.
    pub fn new(holds: Holds, head: &str) -> Column {
        Column {
            head: CleanHtml::text(head),
            holds,
        }
    }
}

/// A row, with a cell for each column.
pub(crate) struct Row {
    /// The target of links to it; empty for none.
    pub id: String,
    /// Its cells, in the order of the columns.
    pub cells: Vec<CleanHtml>,
}

impl Row {
    /// A row that no link leads to.
    pub fn new(cells: Vec<CleanHtml>) -> Row {
        Row {
            id: String::new(),
            cells,
        }
    }

    /// What stands in a column; `None` for nothing.
    fn text(&self, column: usize) -> Option<&CleanHtml> {
        self.cells.get(column).filter(|text| !text.is_empty())
    }
}

/// A table, as the part `part.table` sets it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub(crate) struct Table {
    heads: Vec<Cell>,
    rows: Vec<Line>,
    foot: Option<Line>,
}

#[derive(Clone, Debug, PartialEq, Serialize)]
struct Line {
    id: String,
    cells: Vec<Cell>,
}

#[derive(Clone, Debug, PartialEq, Serialize)]
struct Cell {
    text: CleanHtml,
    /// The class of the cell; empty for none.
    class: &'static str,
    /// The scope of a head; empty for a cell of data.
    scope: &'static str,
    /// How many rows it stands beside; 0 for one row of a column without groups.
    rows: usize,
}

impl Table {
    /// A table of the columns that some row fills; `None` without rows.
    pub fn new(columns: &[Column], rows: &[Row]) -> Option<Table> {
        let filled = filled(columns, rows);
        let heads = filled.iter().map(|(_, column)| Cell {
            text: column.head.clone(),
            class: column.holds.class_of_head(),
            scope: "col",
            rows: 0,
        });
        (!rows.is_empty()).then(|| Table {
            heads: heads.collect(),
            rows: (0..rows.len())
                .filter_map(|at| line(&filled, rows, at))
                .collect(),
            foot: None,
        })
    }

    /// The same with a row of sums at its foot.
    pub fn with_foot(columns: &[Column], rows: &[Row], foot: Row) -> Option<Table> {
        let filled = filled(columns, rows);
        Some(Table {
            foot: line(&filled, &[foot], 0),
            ..Table::new(columns, rows)?
        })
    }

    /// A table of words whose rows begin with their names.
    pub fn of_named_rows(heads: &[&str], rows: &[Row]) -> Option<Table> {
        let columns = heads.iter().enumerate().map(|(at, head)| {
            let holds = if at == 0 { Holds::Name } else { Holds::Words };
            Column::new(holds, head)
        });
        Table::new(&columns.collect::<Vec<_>>(), rows)
    }
}

/// The columns that some row fills, with their places among all.
fn filled<'c>(columns: &'c [Column], rows: &[Row]) -> Vec<(usize, &'c Column)> {
    let columns = columns.iter().enumerate();
    columns
        .filter(|(at, _)| rows.iter().any(|row| row.text(*at).is_some()))
        .collect()
}

/// The row at a place, without the cells of a group that an earlier row has.
fn line(columns: &[(usize, &Column)], rows: &[Row], at: usize) -> Option<Line> {
    let row = rows.get(at)?;
    let cells = columns.iter().filter_map(|(column, of)| {
        let text = row.text(*column).cloned().unwrap_or_default();
        let beside = match of.holds {
            Holds::Group => rows_of_group(rows, at, *column)?,
            _ => 0,
        };
        Some(Cell {
            text,
            class: of.holds.class(),
            scope: of.holds.scope(),
            rows: beside,
        })
    });
    Some(Line {
        id: row.id.clone(),
        cells: cells.collect(),
    })
}

/// How many rows from `at` on have the same in a column; `None` where the row before has it too.
fn rows_of_group(rows: &[Row], at: usize, column: usize) -> Option<usize> {
    let own = rows.get(at)?.text(column);
    let before = at.checked_sub(1).and_then(|before| rows.get(before));
    if before.is_some_and(|before| before.text(column) == own) {
        return None;
    }
    let alike = rows.get(at..)?.iter();
    Some(alike.take_while(|row| row.text(column) == own).count())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn texts(table: &Table) -> Vec<Vec<String>> {
        let plain = |cells: &[Cell]| cells.iter().map(|cell| cell.text.plain()).collect();
        let rows = table.rows.iter().map(|row| plain(&row.cells));
        std::iter::once(plain(&table.heads))
            .chain(rows)
            .chain(table.foot.iter().map(|foot| plain(&foot.cells)))
            .collect()
    }

    fn row(cells: [&str; 4]) -> Row {
        Row::new(cells.map(CleanHtml::text).into())
    }

    fn columns() -> [Column; 4] {
        [
            Column::new(Holds::Group, "Design"),
            Column::new(Holds::Name, "Impression"),
            Column::new(Holds::Words, "State"),
            Column::new(Holds::Figure, "Sheets"),
        ]
    }

    #[test]
    fn a_column_that_no_row_fills_is_left_out_with_its_head() {
        let rows = [row(["1", "1.1", "", ""]), row(["2", "2.1", "", "3"])];
        let foot = row(["", "All", "4", "3"]);
        let table = Table::with_foot(&columns(), &rows, foot).unwrap();
        assert_eq!(
            texts(&table),
            [
                ["Design", "Impression", "Sheets"],
                ["1", "1.1", ""],
                ["2", "2.1", "3"],
                ["", "All", "3"]
            ]
        );
        assert_eq!(Table::new(&columns(), &[]), None);
    }

    #[test]
    fn what_rows_have_in_common_stands_once_beside_them() {
        let rows = [
            row(["1", "1.1", "", ""]),
            row(["1", "1.2", "", ""]),
            row(["2", "2.1", "", ""]),
        ];
        let table = Table::new(&columns(), &rows).unwrap();
        let beside: Vec<usize> = table.rows.iter().map(|row| row.cells[0].rows).collect();
        assert_eq!(beside, [2, 0, 1]);
        assert_eq!(table.rows[1].cells.len(), 1);
    }
}
