//! Relations between numbered things: closure, cycles, reduction.
//!
//! In: how many things there are, and which is before which. Out: [`Reduction`]: the strongly connected sets in an order
//! that follows the relation, the layer of each, and the fewest steps between them from which all others follow; and
//! the shortest cycle of a set.
//! Method: the closure by Warshall 1962, row by row as sets of bits. In the closure of a relation without cycles a step
//! belongs to the reduction where nothing lies between its ends, and the reduction is unique (Aho, Garey and Ullman
//! 1972). Both from memory.

use std::collections::VecDeque;

use fixedbitset::FixedBitSet;

/// The transitive reduction of a relation, its strongly connected sets taken as one thing each.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Reduction {
    /// The sets, each in rising order; of two sets, the one before the other comes first.
    pub sets: Vec<Vec<usize>>,
    /// For each set the length of the longest chain of steps that leads to it.
    pub layers: Vec<usize>,
    /// The steps between the sets, by their indexes, in rising order.
    pub steps: Vec<(usize, usize)>,
}

/// A relation: for each thing, the set of those that it is before.
pub(super) struct Relation(Vec<FixedBitSet>);

impl Relation {
    /// The relation of `count` things that holds where `is_before` says so. No thing is before itself.
    pub fn of(count: usize, is_before: impl Fn(usize, usize) -> bool) -> Relation {
        let rows = (0..count).map(|a| {
            let after = (0..count).filter(|b| a != *b && is_before(a, *b));
            let mut row = FixedBitSet::with_capacity(count);
            row.extend(after);
            row
        });
        Relation(rows.collect())
    }

    /// Whether one thing is before another.
    pub fn holds(&self, before: usize, after: usize) -> bool {
        self.0.get(before).is_some_and(|row| row.contains(after))
    }

    /// What one thing is before, in rising order.
    fn after(&self, before: usize) -> impl Iterator<Item = usize> {
        self.0.get(before).into_iter().flat_map(FixedBitSet::ones)
    }

    fn closure(&self) -> Relation {
        let mut rows = self.0.clone();
        for through in 0..rows.len() {
            let Some(beyond) = rows.get(through).cloned() else {
                continue;
            };
            for row in rows.iter_mut().filter(|row| row.contains(through)) {
                row.union_with(&beyond);
            }
        }
        Relation(rows)
    }

    /// The transitive reduction.
    pub fn reduction(&self) -> Reduction {
        let closure = self.closure();
        let is_one_set = |a: usize, b: usize| a == b || closure.holds(a, b) && closure.holds(b, a);
        let mut sets: Vec<Vec<usize>> = Vec::new();
        for thing in 0..self.0.len() {
            let mut known = sets.iter_mut();
            let set = known.find(|set| set.first().is_some_and(|first| is_one_set(*first, thing)));
            match set {
                Some(set) => set.push(thing),
                None => sets.push(vec![thing]),
            }
        }
        // A set before another is before that one's things and all that they are before, and so before more things.
        let things_after = |set: &Vec<usize>| {
            let first = set.first().copied().unwrap_or_default();
            let after = closure.after(first);
            after.filter(|thing| !is_one_set(first, *thing)).count()
        };
        sets.sort_by_cached_key(|set| (usize::MAX - things_after(set), set.clone()));
        let first_of: Vec<usize> = sets.iter().filter_map(|s| s.first().copied()).collect();
        let between_sets = Relation::of(sets.len(), |a, b| {
            match (first_of.get(a), first_of.get(b)) {
                (Some(a), Some(b)) => closure.holds(*a, *b),
                _ => false,
            }
        });
        let mut layers = vec![0; sets.len()];
        let mut steps = Vec::new();
        for (before, row) in between_sets.0.iter().enumerate() {
            let mut follows = FixedBitSet::with_capacity(sets.len());
            for next in row.ones() {
                if let Some(beyond) = between_sets.0.get(next) {
                    follows.union_with(beyond);
                }
            }
            let layer = layers.get(before).map_or(0, |layer| layer + 1);
            for next in row.difference(&follows) {
                steps.push((before, next));
                if let Some(known) = layers.get_mut(next) {
                    *known = layer.max(*known);
                }
            }
        }
        Reduction {
            sets,
            layers,
            steps,
        }
    }

    /// The shortest cycle through things of a strongly connected set, from the first of them in the order of the set;
    /// of several as short, the one whose first thing comes first. Empty where there is none.
    pub fn shortest_cycle(&self, set: &[usize]) -> Vec<usize> {
        let mut shortest: Vec<usize> = Vec::new();
        for start in set {
            // Two are the fewest.
            if shortest.len() == 2 {
                break;
            }
            let found = self.cycle_from(*start, set);
            if !found.is_empty() && (shortest.is_empty() || found.len() < shortest.len()) {
                shortest = found;
            }
        }
        shortest
    }

    /// The shortest cycle from one thing back to it, breadth first.
    fn cycle_from(&self, start: usize, set: &[usize]) -> Vec<usize> {
        let mut from = vec![None; self.0.len()];
        let mut to_visit = VecDeque::from([start]);
        while let Some(at) = to_visit.pop_front() {
            if at != start && self.holds(at, start) {
                let mut way = vec![at];
                let mut back = at;
                while let Some(Some(before)) = from.get(back) {
                    back = *before;
                    way.push(back);
                }
                way.reverse();
                return way;
            }
            for next in set.iter().filter(|next| self.holds(at, **next)) {
                if let Some(place) = from.get_mut(*next)
                    && place.is_none()
                    && *next != start
                {
                    *place = Some(at);
                    to_visit.push_back(*next);
                }
            }
        }
        Vec::new()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(count: usize, steps: &[(usize, usize)]) -> Relation {
        Relation::of(count, |a, b| steps.contains(&(a, b)))
    }

    #[test]
    fn a_step_that_follows_from_others_is_left_out() {
        let found = of(4, &[(0, 1), (1, 2), (0, 2), (3, 2)]).reduction();
        assert_eq!(found.sets, [[0], [1], [3], [2]]);
        assert_eq!(found.steps, [(0, 1), (1, 3), (2, 3)]);
        assert_eq!(found.layers, [0, 1, 0, 2]);
    }

    #[test]
    fn what_comes_before_a_cycle_stands_before_it() {
        let found = of(3, &[(2, 0), (0, 1), (1, 0)]).reduction();
        assert_eq!(found.sets, [vec![2], vec![0, 1]]);
        assert_eq!((found.steps, found.layers), (vec![(0, 1)], vec![0, 1]));
    }

    #[test]
    fn a_cycle_is_one_set_and_its_shortest_is_told() {
        // 0 → 1 → 2 → 3 → 0, and 1 → 3, so that 0 → 1 → 3 is shorter; 4 after it.
        let relation = of(5, &[(0, 1), (1, 2), (2, 3), (3, 0), (1, 3), (2, 4)]);
        let found = relation.reduction();
        assert_eq!(found.sets, [vec![0, 1, 2, 3], vec![4]]);
        assert_eq!(found.steps, [(0, 1)]);
        assert_eq!(relation.shortest_cycle(&found.sets[0]), [0, 1, 3]);
        assert_eq!(relation.shortest_cycle(&[4]), [0_usize; 0]);
    }
}
