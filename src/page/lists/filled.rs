//! The columns of a table that some row fills; the others are left out of it.

/// For each column of a table, in order, whether some row fills it.
pub(crate) struct FilledColumns(Vec<bool>);

impl FilledColumns {
    /// The columns of `rows`, of which `cells` gives the cells; `is_filled` says whether a cell says anything.
    pub fn of<R, C>(
        columns: usize,
        rows: &[R],
        cells: impl Fn(&R) -> &[C],
        is_filled: impl Fn(&C) -> bool,
    ) -> FilledColumns {
        let fills = |row: &R, at: usize| cells(row).get(at).is_some_and(&is_filled);
        let columns = 0..columns;
        FilledColumns(
            columns
                .map(|at| rows.iter().any(|row| fills(row, at)))
                .collect(),
        )
    }

    /// Whether no column is filled.
    pub fn is_none(&self) -> bool {
        !self.0.contains(&true)
    }

    /// Takes out of a list with one item for each column those of columns that no row fills, and gives them.
    pub fn keep<T>(&self, of_columns: &mut Vec<T>) -> Vec<T> {
        let all = std::mem::take(of_columns);
        let mut left_out = Vec::new();
        for (item, is_filled) in all.into_iter().zip(&self.0) {
            if *is_filled {
                of_columns.push(item);
            } else {
                left_out.push(item);
            }
        }
        left_out
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_no_row_fills_is_taken_out_in_its_order() {
        let rows = [["1", "", "", "4"], ["", "", "", "2"]];
        let filled = FilledColumns::of(4, &rows, |row| row, |cell| !cell.is_empty());
        let mut heads = vec!["i", "ii", "iii", "iv"];
        assert_eq!(filled.keep(&mut heads), ["ii", "iii"]);
        assert_eq!(heads, ["i", "iv"]);
        assert!(!filled.is_none());
        let none = FilledColumns::of(2, &[["", ""]], |row| row, |cell| !cell.is_empty());
        assert!(none.is_none());
    }
}
