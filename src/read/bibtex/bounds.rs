//! Limits of the literature, checked before `biblatex` reads it: it calls itself for each command within a
//! command and for each abbreviation within an abbreviation, and it follows every way by which an entry
//! takes fields from others.
//!
//! In: the text, the parsed abbreviations, the entries. Out: what exceeds a limit of `read::limits`.

use std::collections::{BTreeMap, BTreeSet};
use std::ops::Range;

use biblatex::{Pair, RawChunk};

use crate::model::key::Key;
use crate::read::limits::{DEEPEST_NESTING, LONGEST_ABBREVIATION, MOST_WAYS};

/// Where braces are nested more than [`DEEPEST_NESTING`] deep; an entry at the start of a line begins anew.
pub(super) fn too_deep(text: &str) -> Option<Range<usize>> {
    let mut depth = 0_usize;
    let mut begins_line = true;
    let mut is_escaped = false;
    for (at, byte) in text.bytes().enumerate() {
        match byte {
            b'@' if begins_line => depth = 0,
            b'{' if !is_escaped => depth += 1,
            b'}' if !is_escaped => depth = depth.saturating_sub(1),
            _ => {}
        }
        if depth > DEEPEST_NESTING {
            return Some(at..at + 1);
        }
        is_escaped = byte == b'\\' && !is_escaped;
        begins_line = byte == b'\n' || (begins_line && byte.is_ascii_whitespace());
    }
    None
}

/// The abbreviations of a file, by name; of two with one name the later counts.
pub(super) struct Abbreviations<'p, 't> {
    by_name: BTreeMap<&'t str, &'p Pair<'t>>,
    /// The number of bytes that each stands for; `None` for one that cannot be used.
    lengths: BTreeMap<&'t str, Option<usize>>,
}

impl<'p, 't> Abbreviations<'p, 't> {
    /// The abbreviations with the lengths of what they stand for.
    pub(super) fn of(pairs: impl Iterator<Item = &'p Pair<'t>>) -> Abbreviations<'p, 't> {
        let mut all = Abbreviations {
            by_name: pairs.map(|pair| (pair.key.v, pair)).collect(),
            lengths: BTreeMap::new(),
        };
        // An abbreviation is measured once those that it names are; those in circles never are.
        let mut waiting: BTreeMap<&'t str, Vec<&'t str>> = BTreeMap::new();
        let mut open: BTreeMap<&'t str, usize> = BTreeMap::new();
        let mut ready: Vec<&'t str> = Vec::new();
        for (name, pair) in &all.by_name {
            let needed: BTreeSet<&'t str> = named(pair)
                .filter(|other| all.by_name.contains_key(other))
                .collect();
            open.insert(name, needed.len());
            if needed.is_empty() {
                ready.push(name);
            }
            for other in needed {
                waiting.entry(other).or_default().push(name);
            }
        }
        while let Some(name) = ready.pop() {
            let length = all.by_name.get(name).and_then(|pair| all.length(pair));
            all.lengths.insert(name, length);
            for dependent in waiting.remove(name).into_iter().flatten() {
                if let Some(left) = open.get_mut(dependent) {
                    *left -= 1;
                    if *left == 0 {
                        ready.push(dependent);
                    }
                }
            }
        }
        all
    }

    /// The bytes that an abbreviation stands for; `None` beyond [`LONGEST_ABBREVIATION`].
    fn length(&self, pair: &Pair<'t>) -> Option<usize> {
        let chunks = pair.value.v.iter().map(|chunk| match chunk.v {
            RawChunk::Normal(text) => Some(text.len()),
            RawChunk::Abbreviation(name) => {
                self.lengths.get(name).copied().unwrap_or(Some(name.len()))
            }
        });
        let length = chunks.sum::<Option<usize>>()?;
        (length <= LONGEST_ABBREVIATION).then_some(length)
    }

    /// Those that name themselves, directly or through others, or that stand for too much, with the reason.
    pub(super) fn unusable(&self) -> impl Iterator<Item = (&'p Pair<'t>, Unusable)> {
        self.by_name.iter().filter_map(|(name, pair)| {
            let why = match self.lengths.get(name) {
                Some(Some(_)) => return None,
                Some(None) => Unusable::TooLong,
                None => Unusable::Circular,
            };
            Some((*pair, why))
        })
    }

    /// The abbreviations that some values use, with those that these name. Those that cannot be used
    /// stand for nothing: they are reported where they are declared.
    pub(super) fn used_by<'v>(&self, values: impl Iterator<Item = &'v Pair<'t>>) -> Vec<Pair<'t>>
    where
        't: 'v,
    {
        let mut waiting: Vec<&'t str> = values.flat_map(named).collect();
        let mut known = BTreeSet::new();
        let mut used = Vec::new();
        while let Some(name) = waiting.pop() {
            let Some(pair) = self.by_name.get(name).filter(|_| known.insert(name)) else {
                continue;
            };
            let mut pair = (*pair).clone();
            if matches!(self.lengths.get(name), Some(Some(_))) {
                waiting.extend(named(&pair));
            } else {
                pair.value.v.clear();
            }
            used.push(pair);
        }
        used
    }
}

/// Why an abbreviation cannot be used.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Unusable {
    /// It names itself, directly or through others, or one that does.
    Circular,
    /// It stands for more than [`LONGEST_ABBREVIATION`] bytes.
    TooLong,
}

/// The abbreviations that a value names.
fn named<'t>(pair: &Pair<'t>) -> impl Iterator<Item = &'t str> {
    let names = pair.value.v.iter().filter_map(|chunk| match chunk.v {
        RawChunk::Abbreviation(name) => Some(name),
        RawChunk::Normal(_) => None,
    });
    names.collect::<Vec<_>>().into_iter()
}

/// The entries that take fields from others in more than [`MOST_WAYS`] ways. `parents` holds, for each
/// entry that is in no circle, those from which it takes fields.
pub(super) fn in_too_many_ways(parents: &BTreeMap<Key, Vec<Key>>) -> BTreeSet<Key> {
    let mut ways: BTreeMap<&Key, usize> = BTreeMap::new();
    let mut too_many = BTreeSet::new();
    for start in parents.keys() {
        // Depth first, without recursion: an entry is counted after its parents.
        let mut waiting = vec![(start, false)];
        while let Some((key, is_ready)) = waiting.pop() {
            if ways.contains_key(key) {
                continue;
            }
            let of = parents.get(key).map(Vec::as_slice).unwrap_or_default();
            if is_ready {
                let each = of.iter().filter_map(|parent| ways.get(parent));
                let all = each.fold(1_usize, |all, ways| all.saturating_add(*ways));
                ways.insert(key, all);
                if all > MOST_WAYS {
                    too_many.insert(key.clone());
                }
            } else {
                waiting.push((key, true));
                waiting.extend(of.iter().map(|parent| (parent, false)));
            }
        }
    }
    too_many
}
