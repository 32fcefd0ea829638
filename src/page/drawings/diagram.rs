//! Diagrams: nodes in columns, joined by lines that run from left to right.
//!
//! In: nodes, each with its column and its lines of text, and the lines between them. Out: coordinates
//! in px for an inline SVG ([`Diagram`]); `parts/diagram.html` draws it. The page always gives the
//! content of a diagram in words too.
//! Method: layers as given; a line that passes a column gets a free slot in it; the nodes of a column are sorted by the
//! mean place of those that they are joined to, from the left and from the right in turn, so that few lines cross
//! (Sugiyama, Tagawa and Toda 1981, from memory).

use serde::Serialize;

/// The width of a character in px, for text of 15 px: an old-style figure of a serif face is
/// narrower, a capital wider.
const CHARACTER: usize = 8;
/// The height of a line, in px.
const LINE: usize = 20;
/// Between two nodes of a column, in px.
const BETWEEN: usize = 18;
/// The height of the slot of a line that passes a column, in px.
const SLOT: usize = 2;
/// How often the columns are sorted anew, from the left and back.
const SWEEPS: usize = 4;
/// Between two columns, in px.
const GAP: usize = 56;
/// Above and below everything, in px.
const MARGIN: usize = 4;

/// A node of a diagram.
pub(crate) struct Node {
    /// Its column, from 0.
    pub column: usize,
    /// Its row within the column, from 0, where that is fixed; otherwise nodes are stacked and centred.
    pub row: Option<usize>,
    /// Its text, line by line, each of a few words that may be links.
    pub lines: Vec<Vec<LinkedText>>,
}

/// A few words that may be a link.
#[derive(Clone, Serialize)]
pub(crate) struct LinkedText {
    /// The text.
    pub text: String,
    /// The link; empty for none.
    pub href: String,
}

/// A line of a diagram.
pub(crate) struct Line {
    /// The node on its left.
    pub from: usize,
    /// The node on its right.
    pub to: usize,
    /// How it is drawn.
    pub style: LineStyle,
    /// What it says, shown where a reader points at it; empty for nothing.
    pub said: String,
}

/// How a line is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum LineStyle {
    /// In one piece.
    Solid,
    /// In dashes.
    Dashed,
    /// In dots.
    Dotted,
}

impl LineStyle {
    /// Its class in the style sheet.
    pub fn class(self) -> &'static str {
        match self {
            LineStyle::Solid => "solid",
            LineStyle::Dashed => "dashed",
            LineStyle::Dotted => "dotted",
        }
    }
}

/// A diagram as coordinates.
#[derive(Serialize)]
pub(crate) struct Diagram {
    width: usize,
    height: usize,
    /// Its content in words, for screen readers.
    said: String,
    texts: Vec<Text>,
    paths: Vec<Path>,
}

#[derive(Serialize)]
struct Path {
    /// Path data.
    d: String,
    class: &'static str,
    said: String,
}

#[derive(Serialize)]
struct Text {
    x: usize,
    y: usize,
    words: Vec<LinkedText>,
}

impl Node {
    fn width(&self) -> usize {
        let of_line = |line: &Vec<LinkedText>| -> usize {
            let characters: usize = line.iter().map(|w| w.text.chars().count() + 1).sum();
            characters.saturating_sub(1)
        };
        self.lines.iter().map(of_line).max().unwrap_or(0) * CHARACTER
    }

    fn height(&self) -> usize {
        self.lines.len() * LINE
    }
}

/// A node, or the slot of a line that passes a column.
struct Slot<'n> {
    node: Option<&'n Node>,
    column: usize,
    width: usize,
    height: usize,
    /// Its place within its column, from the top.
    place: usize,
    top: usize,
}

/// Lays out `nodes`, joined by `lines`, each of which leads to a column further right.
pub(crate) fn lay_out(nodes: &[Node], lines: &[Line], said: String) -> Diagram {
    let mut slots: Vec<Slot<'_>> = nodes.iter().map(Slot::of_node).collect();
    let is_fixed = nodes.iter().any(|node| node.row.is_some());
    let ways: Vec<Vec<usize>> = lines
        .iter()
        .map(|line| way(&mut slots, line, is_fixed))
        .collect();
    let columns = slots.iter().map(|slot| slot.column + 1).max().unwrap_or(0);
    let mut by_column: Vec<Vec<usize>> = vec![Vec::new(); columns];
    for (at, slot) in slots.iter_mut().enumerate() {
        if let Some(column) = by_column.get_mut(slot.column) {
            slot.place = column.len();
            column.push(at);
        }
    }
    if !is_fixed {
        sort_columns(&mut slots, &mut by_column, &ways);
    }
    let mut lefts = Vec::new();
    let mut widths = Vec::new();
    let mut left = 0;
    for column in &by_column {
        let width = |at: &usize| slots.get(*at).map(|slot| slot.width);
        let width = column.iter().filter_map(width).max().unwrap_or(0);
        lefts.push(left);
        widths.push(width);
        left += width + GAP;
    }
    let tallest = stack(&mut slots, &by_column);
    let mut lowest = 0;
    let mut paths = Vec::new();
    for (line, way) in lines.iter().zip(&ways) {
        let points = points(&slots, way, &lefts, &widths);
        let d = if is_fixed {
            let (d, bottom) = around(&slots, line, &points);
            lowest = lowest.max(bottom);
            d
        } else {
            through(&points)
        };
        paths.push(Path {
            d,
            class: line.style.class(),
            said: line.said.clone(),
        });
    }
    Diagram {
        width: left.saturating_sub(GAP),
        height: (tallest + MARGIN).max(lowest) + MARGIN,
        texts: texts(&slots, &lefts),
        paths,
        said,
    }
}

impl<'n> Slot<'n> {
    fn of_node(node: &'n Node) -> Slot<'n> {
        Slot {
            node: Some(node),
            column: node.column,
            width: node.width(),
            height: node.height(),
            place: 0,
            top: 0,
        }
    }
}

/// The slots that a line runs through, its nodes among them. It gets a slot of its own in each column that it passes,
/// unless the rows are fixed.
fn way(slots: &mut Vec<Slot<'_>>, line: &Line, is_fixed: bool) -> Vec<usize> {
    let column = |at: usize| slots.get(at).map_or(0, |slot| slot.column);
    let passed = (column(line.from) + 1)..column(line.to);
    let mut way = vec![line.from];
    for column in passed.filter(|_| !is_fixed) {
        way.push(slots.len());
        slots.push(Slot {
            node: None,
            column,
            width: 0,
            height: SLOT,
            place: 0,
            top: 0,
        });
    }
    way.push(line.to);
    way
}

/// Sorts the slots of each column by the mean place of those that they are joined to in the column beside it.
fn sort_columns(slots: &mut [Slot<'_>], by_column: &mut [Vec<usize>], ways: &[Vec<usize>]) {
    let mut joined: Vec<[Vec<usize>; 2]> = vec![[Vec::new(), Vec::new()]; slots.len()];
    for way in ways {
        for pair in way.windows(2) {
            if let [from, to] = pair {
                if let Some([_, right]) = joined.get_mut(*from) {
                    right.push(*to);
                }
                if let Some([left, _]) = joined.get_mut(*to) {
                    left.push(*from);
                }
            }
        }
    }
    for sweep in 0..SWEEPS {
        let is_from_left = sweep % 2 == 0;
        let columns: Vec<usize> = if is_from_left {
            (0..by_column.len()).collect()
        } else {
            (0..by_column.len()).rev().collect()
        };
        for column in columns.into_iter().skip(1) {
            let Some(column) = by_column.get_mut(column) else {
                continue;
            };
            // The mean as a fraction of two whole numbers, so that no rounding decides.
            let mean = |at: &usize| -> (usize, usize) {
                let place = |at: &usize| slots.get(*at).map_or(0, |slot| slot.place);
                let beside = joined
                    .get(*at)
                    .map(|[left, right]| if is_from_left { left } else { right });
                match beside {
                    Some(beside) if !beside.is_empty() => {
                        (beside.iter().map(place).sum(), beside.len())
                    }
                    _ => (place(at), 1),
                }
            };
            let means: std::collections::BTreeMap<usize, (usize, usize)> =
                column.iter().map(|at| (*at, mean(at))).collect();
            column.sort_by(|a, b| {
                let of = |at: &usize| means.get(at).copied().unwrap_or((0, 1));
                let ((sum_a, n_a), (sum_b, n_b)) = (of(a), of(b));
                (sum_a * n_b).cmp(&(sum_b * n_a))
            });
            for (place, at) in column.iter().enumerate() {
                if let Some(slot) = slots.get_mut(*at) {
                    slot.place = place;
                }
            }
        }
    }
}

/// Stacks the slots of each column, and centres the columns; fixed rows stay. Gives the height of the tallest column.
fn stack(slots: &mut [Slot<'_>], by_column: &[Vec<usize>]) -> usize {
    let height = |slots: &[Slot<'_>], column: &[usize]| -> usize {
        let of_each = column.iter().filter_map(|at| slots.get(*at));
        let stacked: usize = of_each.map(|slot| slot.height + BETWEEN).sum();
        stacked.saturating_sub(BETWEEN)
    };
    let rows = slots
        .iter()
        .filter_map(|slot| Some(slot.node?.row? * (LINE + BETWEEN) + LINE));
    let heights = by_column.iter().map(|column| height(slots, column));
    let tallest = heights.chain(rows).max().unwrap_or(0);
    for column in by_column {
        let mut top = MARGIN + (tallest - height(slots, column).min(tallest)) / 2;
        for at in column {
            if let Some(slot) = slots.get_mut(*at) {
                let row = slot.node.and_then(|node| node.row);
                slot.top = row.map_or(top, |row| MARGIN + row * (LINE + BETWEEN));
                top += slot.height + BETWEEN;
            }
        }
    }
    tallest
}

/// The points that a line runs through, from left to right: the end of its first node, both sides of each column that it
/// passes, the beginning of its last node.
fn points(
    slots: &[Slot<'_>],
    way: &[usize],
    lefts: &[usize],
    widths: &[usize],
) -> Vec<(usize, usize)> {
    let mut points = Vec::new();
    for (step, at) in way.iter().enumerate() {
        let Some(slot) = slots.get(*at) else { continue };
        let left = lefts.get(slot.column).copied().unwrap_or(0);
        let y = slot.top + slot.height / 2;
        let passed = widths.get(slot.column).copied().unwrap_or(0);
        let width = slot.node.map_or(passed, |_| slot.width);
        if step > 0 {
            points.push((left.saturating_sub(6), y));
        }
        if step + 1 < way.len() {
            points.push((left + width + 6, y));
        }
    }
    points
}

/// A line through its points: a curve between two columns, straight across a column.
fn through(points: &[(usize, usize)]) -> String {
    use std::fmt::Write as _;

    let mut d = String::new();
    for pair in points.chunks(2) {
        let [(x1, y1), (x2, y2)] = pair else { continue };
        let middle = x1.midpoint(*x2);
        let start = if d.is_empty() { 'M' } else { 'L' };
        // Writing to a text cannot fail.
        let _ = write!(d, "{start}{x1} {y1}C{middle} {y1} {middle} {y2} {x2} {y2}");
    }
    d
}

/// A line between fixed rows, and how far down it reaches: one that passes a column bends below its nodes.
fn around(slots: &[Slot<'_>], line: &Line, points: &[(usize, usize)]) -> (String, usize) {
    let [(x1, y1), (x2, y2)] = points else {
        return (String::new(), 0);
    };
    let column = |at: usize| slots.get(at).map_or(0, |slot| slot.column);
    let (from, to) = (column(line.from), column(line.to));
    if to <= from + 1 {
        return (through(points), 0);
    }
    let (c1, c2) = (x1 + GAP, x2.saturating_sub(GAP));
    let passed = slots.iter().filter(|s| s.column > from && s.column < to);
    let below = passed
        .map(|slot| slot.top + slot.height)
        .max()
        .unwrap_or(*y1)
        .max(*y1)
        .max(*y2)
        + BETWEEN;
    let d = format!("M{x1} {y1}C{c1} {below} {c2} {below} {x2} {y2}");
    (d, below)
}

fn texts(slots: &[Slot<'_>], lefts: &[usize]) -> Vec<Text> {
    let nodes = slots.iter().filter_map(|slot| {
        let node = slot.node?;
        Some((node, *lefts.get(node.column)?, slot.top))
    });
    let of_each = nodes.flat_map(|(node, x, top)| {
        let lines = node.lines.iter().enumerate();
        lines.map(move |(line, words)| Text {
            x,
            y: top + line * LINE + LINE * 3 / 4,
            words: words.clone(),
        })
    });
    of_each.collect()
}
