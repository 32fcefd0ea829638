//! Separability: which candidates the recorded points separate, and which they do not.
//!
//! Two candidates are separated by a point at which both are known and share no value. A point that
//! rests on blocks, inking, paper or a mark separates printings, never two states of one printing:
//! features chosen anew for each sheet may recur in any order (`docs/trade.md, "Why the matrix alone separates
//! states"`). A pair that no point separates is a gap in the catalogue.
//!
//! In: a diagnostic table; no observation. Out: [`Separability`].
//! Method: the smallest set is a minimum test collection (Garey and Johnson 1979, problem SP6),
//! found as a smallest hitting set of the points that separate each pair, exactly for up to
//! [`EXACT_UP_TO`] points. Definitions: `docs/definitions.md, "Separability"`.
//!
//! The corners of a cube, separated by three yes/no points, need all three (`tests/checks/separating.json`, "cube"):
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use literal::{catalogue, key};
//! # use keyblock::study::{Studies, index::PointAt};
//! let mut record = String::from("-- records/designs/1/design.toml\n");
//! for axis in ["x", "y", "z"] {
//!     record += &format!("[[points]]\nkey = \"{axis}\"\nask = \"?\"\nkind = \"presence\"\nrests_on = \"matrix\"\n");
//! }
//! for corner in 0..8 {
//!     let at = |bit: i32| if corner & bit == 0 { "absent" } else { "present" };
//!     let (x, y, z) = (at(1), at(2), at(4));
//!     record += &format!("[[states]]\nkey = \"c{corner}\"\nshows = {{ x = \"{x}\", y = \"{y}\", z = \"{z}\" }}\n");
//! }
//! let studies = Studies::of(&catalogue(&record));
//! let found = &studies.designs[&key("1")].separability;
//! assert_eq!(found.smallest_set, [0, 1, 2].map(PointAt::new));
//! assert!(found.exact && found.inseparable.is_empty());
//! ```

use std::collections::{BTreeMap, BTreeSet};

use super::table::{DiagnosticTable, PointColumn};
use crate::index::{CandidateAt, ClassAt, Indexed, PointAt};
use keyblock_model::point::RestsOn;

/// Which candidates the points of a design separate.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Separability {
    /// The pairs of candidates that no point separates, in the table's order.
    pub inseparable: Vec<(CandidateAt, CandidateAt)>,
    /// The pairs that points separate, but no deciding point: what is seen only makes one likelier than the
    /// other. In the table's order.
    pub only_likelier: Vec<(CandidateAt, CandidateAt)>,
    /// Points that separate every pair that some point separates, in the table's order.
    pub smallest_set: Vec<PointAt>,
    /// Whether no smaller set does, and none of the same size comes before it in the table's order.
    /// Otherwise it was gathered greedily and may be larger than needed.
    pub exact: bool,
}

/// The most points for which the smallest set is found by trying every set that could be.
pub const EXACT_UP_TO: usize = 24;

/// Which candidates the points of a table separate.
#[must_use]
pub fn separability(table: &DiagnosticTable) -> Separability {
    let columns: Indexed<PointAt, ClassSeparation<'_>> =
        table.points.iter().map(ClassSeparation::of).collect();
    let (mut inseparable, mut only_likelier) = (Vec::new(), Vec::new());
    let mut pairs: BTreeMap<PointSet, usize> = BTreeMap::new();
    let mut separating = PointSet::of_none(columns.len());
    for (one, a) in table.candidates.entries() {
        for (other, b) in table.candidates.entries().skip(one.index() + 1) {
            let is_one_printing = a.printing == b.printing;
            let mut is_decided = false;
            separating.clear();
            for (point, column) in columns.entries() {
                if column.separates(one, other, is_one_printing) {
                    separating.insert(point);
                    is_decided |= column.column.is_deciding;
                }
            }
            if separating.is_empty() {
                inseparable.push((one, other));
                continue;
            }
            if !is_decided {
                only_likelier.push((one, other));
            }
            if let Some(count) = pairs.get_mut(&separating) {
                *count += 1;
            } else {
                pairs.insert(separating.clone(), 1);
            }
        }
    }
    let exact = table.points.len() <= EXACT_UP_TO;
    Separability {
        inseparable,
        only_likelier,
        smallest_set: if exact {
            smallest(&pairs)
        } else {
            greedy_set(&pairs, &columns.indexes())
        },
        exact,
    }
}

/// Which classes of a column are told apart, computed once for all pairs.
struct ClassSeparation<'a> {
    column: &'a PointColumn,
    /// Whether two classes are told apart.
    apart: Indexed<ClassAt, Indexed<ClassAt, bool>>,
}

impl<'a> ClassSeparation<'a> {
    fn of(column: &'a PointColumn) -> ClassSeparation<'a> {
        let classes = || column.classes.indexes();
        let row = |a: ClassAt| classes().map(|b| column.classes_apart(a, b)).collect();
        ClassSeparation {
            column,
            apart: classes().map(row).collect(),
        }
    }

    fn separates(&self, one: CandidateAt, other: CandidateAt, is_one_printing: bool) -> bool {
        if is_one_printing && self.column.rests_on != RestsOn::Matrix {
            return false;
        }
        let class_of = &self.column.class_of;
        self.apart[class_of[one]][class_of[other]]
    }
}

/// A set of points, a bit for each.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct PointSet(Vec<u64>);

impl PointSet {
    fn of_none(points: usize) -> PointSet {
        PointSet(vec![0; points.div_ceil(64)])
    }

    fn clear(&mut self) {
        self.0.fill(0);
    }

    fn insert(&mut self, point: PointAt) {
        self.0[point.index() / 64] |= 1 << (point.index() % 64);
    }

    fn contains(&self, point: PointAt) -> bool {
        self.0[point.index() / 64] & (1 << (point.index() % 64)) != 0
    }

    fn is_empty(&self) -> bool {
        self.0.iter().all(|word| *word == 0)
    }
}

/// The smallest set that meets each of `pairs`, the first in order among equals. Up to [`EXACT_UP_TO`] points, so
/// that the first word of each set holds them all.
fn smallest(pairs: &BTreeMap<PointSet, usize>) -> Vec<PointAt> {
    let sets: BTreeSet<u64> = pairs
        .keys()
        .filter_map(|set| set.0.first().copied())
        .collect();
    // A point that meets a set meets every set that contains it.
    let needed: Vec<u64> = sets
        .iter()
        .copied()
        .filter(|set| {
            let is_within = |inner: &u64| inner & set == *inner && inner != set;
            !sets.iter().any(is_within)
        })
        .collect();
    let fewest = apart_from_each_other(&needed);
    let mut chosen = Vec::new();
    let found = (fewest..=EXACT_UP_TO).any(|size| choose(&needed, 0, size, &mut chosen));
    debug_assert!(found, "all points together meet every set");
    chosen
}

/// Adds the first `size` points from `from` on, in order, that meet each of `sets`; where there are
/// none, leaves `chosen` as it was and returns false.
fn choose(sets: &[u64], from: u32, size: usize, chosen: &mut Vec<PointAt>) -> bool {
    let Some(last) = sets.iter().map(|set| set.ilog2()).min() else {
        return true;
    };
    if size == 0 || apart_from_each_other(sets) > size {
        return false;
    }
    // The set whose last point comes first must be met by that point or one before it.
    for point in from..=last {
        let left: Vec<u64> = sets
            .iter()
            .copied()
            .filter(|set| set & (1 << point) == 0)
            .collect();
        if left.len() == sets.len() {
            continue;
        }
        chosen.push(PointAt::new(point as usize));
        if choose(&left, point + 1, size - 1, chosen) {
            return true;
        }
        chosen.pop();
    }
    false
}

/// How many of the sets, taken one after the other, share no point: each needs a point of its own.
fn apart_from_each_other(sets: &[u64]) -> usize {
    let mut taken = 0;
    sets.iter()
        .filter(|set| {
            let is_apart = *set & taken == 0;
            if is_apart {
                taken |= *set;
            }
            is_apart
        })
        .count()
}

/// A set that meets each of `pairs`, by the greedy method: repeatedly the point that separates most of
/// the pairs not yet separated, the first in order among equals.
///
/// The number of pairs that each point separates is kept, and lowered where a pair is met, so that each
/// set is looked at once for each of its points.
fn greedy_set(
    pairs: &BTreeMap<PointSet, usize>,
    points: &(impl Iterator<Item = PointAt> + Clone),
) -> Vec<PointAt> {
    let points: Vec<PointAt> = points.clone().collect();
    let mut left: Vec<(&PointSet, usize)> = pairs.iter().map(|(s, n)| (s, *n)).collect();
    let mut separated: Vec<usize> = points
        .iter()
        .map(|point| {
            let met = left.iter().filter(|(set, _)| set.contains(*point));
            met.map(|(_, count)| count).sum()
        })
        .collect();
    let mut chosen = BTreeSet::new();
    while !left.is_empty() {
        let most = separated.iter().zip(&points);
        let best = most.max_by_key(|(met, point)| (**met, std::cmp::Reverse(**point)));
        let Some((_, best)) = best.map(|(met, point)| (*met, *point)) else {
            break;
        };
        left.retain(|(set, count)| {
            let is_met = set.contains(best);
            if is_met {
                for (met, point) in separated.iter_mut().zip(&points) {
                    *met -= if set.contains(*point) { *count } else { 0 };
                }
            }
            !is_met
        });
        chosen.insert(best);
    }
    chosen.into_iter().collect()
}
