//! Diagrams: nodes in columns, joined by lines that run from left to right.
//!
//! In: nodes, each with its column and its lines of text, and the edges between them. Out: coordinates
//! in px for an inline SVG ([`Diagram`]); `parts/diagram.html` draws it. The page always gives the
//! content of a diagram in words too.

use serde::Serialize;

/// The width of a character in px, for text of 15 px: an old-style figure of a serif face is
/// narrower, a capital wider.
const CHARACTER: usize = 8;
/// The height of a line, in px.
const LINE: usize = 20;
/// Between two nodes of a column, in px.
const BETWEEN: usize = 18;
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

/// A diagram as coordinates.
#[derive(Serialize)]
pub(crate) struct Diagram {
    width: usize,
    height: usize,
    /// Its content in words, for screen readers.
    said: String,
    texts: Vec<Text>,
    /// The lines, as path data.
    paths: Vec<String>,
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

/// Lays out `nodes`, with a line for each pair of `edges`.
pub(crate) fn lay_out(nodes: &[Node], edges: &[(usize, usize)], said: String) -> Diagram {
    let columns = nodes.iter().map(|n| n.column + 1).max().unwrap_or(0);
    let in_column = |column: usize| {
        nodes
            .iter()
            .enumerate()
            .filter(move |(_, n)| n.column == column)
    };
    let mut lefts = Vec::new();
    let mut left = 0;
    for column in 0..columns {
        lefts.push(left);
        let width = in_column(column).map(|(_, n)| n.width()).max().unwrap_or(0);
        left += width + GAP;
    }
    let width = left.saturating_sub(GAP);
    let heights = |column: usize| -> usize {
        let stacked: usize = in_column(column).map(|(_, n)| n.height() + BETWEEN).sum();
        stacked.saturating_sub(BETWEEN)
    };
    let rows = nodes
        .iter()
        .filter_map(|n| Some(n.row? * (LINE + BETWEEN) + LINE));
    let tallest = (0..columns).map(heights).chain(rows).max().unwrap_or(0);
    let mut tops = vec![0; nodes.len()];
    for column in 0..columns {
        let mut top = MARGIN + (tallest - heights(column).min(tallest)) / 2;
        for (at, node) in in_column(column) {
            if let Some(place) = tops.get_mut(at) {
                *place = node.row.map_or(top, |row| MARGIN + row * (LINE + BETWEEN));
            }
            top += node.height() + BETWEEN;
        }
    }
    let place = |at: usize| {
        let node = nodes.get(at)?;
        Some((node, *lefts.get(node.column)?, *tops.get(at)?))
    };
    let texts = (0..nodes.len())
        .filter_map(place)
        .flat_map(|(node, x, top)| {
            let lines = node.lines.iter().enumerate();
            lines.map(move |(line, words)| Text {
                x,
                y: top + line * LINE + LINE * 3 / 4,
                words: words.clone(),
            })
        });
    let mut lowest = 0;
    let mut paths = Vec::new();
    for (from, to) in edges {
        let (Some((a, ax, atop)), Some((b, bx, btop))) = (place(*from), place(*to)) else {
            continue;
        };
        let (x1, y1) = (ax + a.width() + 6, atop + a.height() / 2);
        let (x2, y2) = (bx.saturating_sub(6), btop + b.height() / 2);
        if b.column > a.column + 1 {
            // A line that passes a column bends below its nodes.
            let (c1, c2) = (x1 + GAP, x2.saturating_sub(GAP));
            let below = tops
                .iter()
                .zip(nodes)
                .filter(|(_, n)| n.column > a.column && n.column < b.column)
                .map(|(top, n)| top + n.height())
                .max()
                .unwrap_or(y1)
                .max(y1)
                .max(y2)
                + BETWEEN;
            lowest = lowest.max(below);
            paths.push(format!("M{x1} {y1}C{c1} {below} {c2} {below} {x2} {y2}"));
        } else {
            let middle = x1.midpoint(x2);
            paths.push(format!("M{x1} {y1}C{middle} {y1} {middle} {y2} {x2} {y2}"));
        }
    }
    Diagram {
        width,
        height: (tallest + MARGIN).max(lowest) + MARGIN,
        texts: texts.collect(),
        paths,
        said,
    }
}
