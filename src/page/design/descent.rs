//! The descent of states as a diagram: which state was made from which. A design in which each state
//! follows the one before has no diagram.

use crate::model::design::Design;
use crate::model::key::Key;
use crate::model::state::State;
use crate::page::drawings::diagram::{Diagram, Line, LineStyle, LinkedText, Node, lay_out};
use crate::page::setting::address::Fragment;
use crate::page::setting::book::Here;
use crate::page::setting::words::Argument;
use crate::study::numerals::{Numeral, predecessors};

/// The descent of a design's states; `None` where each follows the one before.
pub(super) fn diagram(here: &Here<'_>, design: &Design) -> Option<Diagram> {
    let states: Vec<&State> = design.standing_states().collect();
    let place = |key: &Key| states.iter().position(|s| s.key.value == *key);
    let edges: Vec<(usize, usize)> = states
        .iter()
        .enumerate()
        .flat_map(|(to, state)| {
            let before = predecessors(design, state);
            let from: Vec<usize> = before.iter().filter_map(|s| place(&s.key.value)).collect();
            from.into_iter().map(move |from| (from, to))
        })
        .collect();
    let is_chain = edges
        .iter()
        .enumerate()
        .all(|(at, edge)| *edge == (at, at + 1))
        && edges.len() + 1 == states.len();
    if is_chain || states.len() < 2 {
        return None;
    }
    let rows = rows(states.len(), &edges);
    let roman = |state: &State| {
        let numeral = here.book.studies.numeral(&design.key, &state.key.value);
        numeral.map_or_else(|| state.key.value.to_string(), Numeral::roman)
    };
    let nodes: Vec<Node> = states
        .iter()
        .zip(&rows)
        .enumerate()
        .map(|(column, (state, row))| Node {
            column,
            row: Some(*row),
            lines: vec![vec![LinkedText {
                text: roman(state),
                href: format!("#{}", Fragment::State(&state.key.value)),
            }]],
        })
        .collect();
    let said: Vec<String> = edges
        .iter()
        .filter_map(|(from, to)| {
            let (from, to) = (states.get(*from)?, states.get(*to)?);
            let given = [
                ("state", Argument::Text(&roman(to))),
                ("before", Argument::Text(&roman(from))),
            ];
            Some(here.words().with("descent-said", &given))
        })
        .collect();
    let lines: Vec<Line> = edges
        .iter()
        .map(|(from, to)| Line {
            from: *from,
            to: *to,
            style: LineStyle::Solid,
            said: String::new(),
        })
        .collect();
    Some(lay_out(&nodes, &lines, said.join("; ")))
}

/// A row for each state: the row of a state that it follows, if no other state continues that row yet;
/// else a new row.
fn rows(states: usize, edges: &[(usize, usize)]) -> Vec<usize> {
    let mut rows: Vec<usize> = Vec::new();
    let mut continued = vec![false; states];
    let mut free = 0;
    for state in 0..states {
        let followed = edges
            .iter()
            .filter(|(_, to)| *to == state)
            .map(|(from, _)| *from)
            .find(|from| !continued.get(*from).copied().unwrap_or(true));
        let row = followed.and_then(|from| {
            if let Some(is_continued) = continued.get_mut(from) {
                *is_continued = true;
            }
            rows.get(from).copied()
        });
        rows.push(row.unwrap_or_else(|| {
            free += 1;
            free - 1
        }));
    }
    rows
}

#[cfg(test)]
mod tests {
    use super::rows;

    #[test]
    fn a_branch_gets_a_row_of_its_own_and_a_chain_keeps_its_row() {
        // 0 → 1 → 3, 0 → 2.
        assert_eq!(rows(4, &[(0, 1), (0, 2), (1, 3)]), [0, 0, 1, 0]);
        // Two beginnings that come together.
        assert_eq!(rows(3, &[(0, 2), (1, 2)]), [0, 1, 0]);
    }
}
