//! A row of squares, one for each sheet: filled, hollow, or a point. A run of squares alike is one dashed line, so that
//! a drawing of hundreds of sheets takes no more than a few lines of text.
//!
//! In: runs in their order. Out: the paths of inline SVG, in px; `parts/whole.html` draws them and `assets/census.css`
//! gives the dashes: a square of 8 px, a gap of 2.

use std::fmt::Write as _;

use serde::Serialize;

/// From one square to the next, in px.
const STEP: usize = 10;
/// The side of a square, in px.
const SIDE: usize = 8;
/// The squares on a line of a drawing as wide as the text.
pub(crate) const ACROSS: usize = 40;
/// The squares on a line of a drawing in a column.
pub(crate) const ACROSS_COLUMN: usize = 12;

/// How a square is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(crate) enum Mark {
    /// Filled: certain.
    Filled,
    /// Hollow: not certain.
    Hollow,
    /// A point: not known.
    Point,
}

/// Squares alike, and whether a gap parts them from those before.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Run {
    /// How they are drawn.
    pub mark: Mark,
    /// Whether they belong to what the catalogue sets first, which has the ink.
    pub is_first: bool,
    /// How many.
    pub sheets: usize,
    /// Whether they begin a group.
    pub begins: bool,
}

/// The drawing. All are alike wide, so that the squares of one row stand under those of another at any size.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub(crate) struct Squares {
    width: usize,
    height: usize,
    lines: Vec<Line>,
}

/// One run, as the path of a line that is dashed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
struct Line {
    mark: Mark,
    is_first: bool,
    path: String,
}

/// Draws runs one after another, in lines of `across` squares.
pub(crate) fn squares(runs: &[Run], across: usize) -> Squares {
    let mut at = 0;
    let mut lines = Vec::new();
    for run in runs.iter().filter(|run| run.sheets > 0) {
        // A group is parted by the room of a square, except at the beginning of a line.
        if run.begins && at % across != 0 {
            at += 1;
        }
        let mut path = String::new();
        let mut left = run.sheets;
        while left > 0 {
            let (row, column) = (at / across, at % across);
            let n = left.min(across - column);
            let (x, y) = (column * STEP, row * STEP + STEP / 2);
            let _ = write!(path, "M{x} {y}h{}", n * STEP - (STEP - SIDE));
            at += n;
            left -= n;
        }
        lines.push(Line {
            mark: run.mark,
            is_first: run.is_first,
            path,
        });
    }
    Squares {
        width: across * STEP,
        height: at.div_ceil(across) * STEP,
        lines,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn run(mark: Mark, sheets: usize, begins: bool) -> Run {
        Run {
            mark,
            is_first: true,
            sheets,
            begins,
        }
    }

    #[test]
    fn squares_alike_are_one_line_and_groups_are_parted() {
        let runs = [
            run(Mark::Filled, 3, true),
            run(Mark::Hollow, 1, false),
            run(Mark::Filled, 0, true),
            run(Mark::Point, 2, true),
        ];
        let drawn = squares(&runs, ACROSS);
        let paths: Vec<&str> = drawn.lines.iter().map(|l| l.path.as_str()).collect();
        assert_eq!(paths, ["M0 5h28", "M30 5h8", "M50 5h18"]);
        assert_eq!((drawn.width, drawn.height), (400, 10));
    }

    #[test]
    fn a_long_run_goes_on_in_the_next_line() {
        let drawn = squares(
            &[run(Mark::Filled, 39, true), run(Mark::Filled, 3, true)],
            ACROSS,
        );
        // The gap takes the last place of the first line.
        assert_eq!(drawn.lines[1].path, "M0 15h28");
        assert_eq!((drawn.width, drawn.height), (400, 20));
        let drawn = squares(&[run(Mark::Filled, 1000, true)], ACROSS);
        assert_eq!(drawn.lines.len(), 1);
        assert!(drawn.lines[0].path.starts_with("M0 5h398M0 15h398"));
        assert!(drawn.lines[0].path.len() < 300);
        assert_eq!((drawn.width, drawn.height), (400, 250));
    }
}
