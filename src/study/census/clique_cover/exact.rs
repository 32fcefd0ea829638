//! The fewest cliques that cover a small graph, found by branch and bound.
//!
//! In: an adjacency matrix of bits. Out: the number. Not here: how a graph falls into parts (`cover`).

/// The fewest cliques that cover a graph of at most 32 vertices, beside one for each vertex of `free` (bits), which
/// costs nothing: branch and bound. Each vertex in turn, the hardest to place first, joins a clique that it fits or
/// starts a new one; a branch that cannot beat the best found so far is left.
pub(super) fn smallest_cover(rows: &[u32], free: u32) -> usize {
    let (mut cliques, mut order) = (Vec::new(), Vec::new());
    for (at, row) in rows.iter().enumerate() {
        if free & 1 << at == 0 {
            order.push(at);
        } else {
            cliques.push(row & !free);
        }
    }
    order.sort_by_key(|v| (rows[*v].count_ones(), *v));
    let cost_nothing = cliques.len();
    let mut best = cost_nothing + order.len();
    place(rows, &order, &mut cliques, &mut best);
    best - cost_nothing
}

/// Places the first vertex of `left`; `cliques` holds for each clique, as bits, the vertices that fit it.
fn place(rows: &[u32], left: &[usize], cliques: &mut Vec<u32>, best: &mut usize) {
    let Some((vertex, rest)) = left.split_first() else {
        *best = (*best).min(cliques.len());
        return;
    };
    if cliques.len() + new_cliques(rows, left, cliques) >= *best {
        return;
    }
    let (row, bit) = (rows[*vertex], 1_u32 << vertex);
    let still = rest.iter().fold(0, |bits, v| bits | 1_u32 << v);
    let mut tried = Vec::new();
    for at in 0..cliques.len() {
        let fitting = cliques[at];
        // Cliques that the vertices left fit alike are one choice.
        let like = fitting & still;
        if fitting & bit != 0 && !tried.contains(&like) {
            tried.push(like);
            cliques[at] = fitting & row;
            place(rows, rest, cliques, best);
            cliques[at] = fitting;
        }
    }
    cliques.push(row);
    place(rows, rest, cliques, best);
    cliques.pop();
}

/// How many more cliques `left` needs at the least: vertices no two of which are joined, less those that the cliques
/// at hand can take, one each.
fn new_cliques(rows: &[u32], left: &[usize], cliques: &[u32]) -> usize {
    let mut apart = Vec::new();
    let mut beside = 0_u32;
    for vertex in left {
        if beside & 1 << vertex == 0 {
            apart.push(*vertex);
            beside |= rows[*vertex];
        }
    }
    let mut taken = vec![None; cliques.len()];
    let takes = |vertex: &&usize| {
        take(
            **vertex,
            cliques,
            &mut vec![false; cliques.len()],
            &mut taken,
        )
    };
    apart.len() - apart.iter().filter(takes).count()
}

/// Finds a clique for a vertex that it fits, moving others where they fit another; `taken` holds who has each.
fn take(vertex: usize, cliques: &[u32], asked: &mut [bool], taken: &mut [Option<usize>]) -> bool {
    for (at, fitting) in cliques.iter().enumerate() {
        if fitting & 1 << vertex == 0 || asked[at] {
            continue;
        }
        asked[at] = true;
        if taken[at].is_none_or(|other| take(other, cliques, asked, taken)) {
            taken[at] = Some(vertex);
            return true;
        }
    }
    false
}
