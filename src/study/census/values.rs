//! What several records of one sheet say together.
//!
//! In: the values that each record allows. Out: [`Values`], those of the sheet: what all records that say anything
//! allow; where they share none, everything that any of them allows.
//! Definitions: `docs/definitions.md, "Rows of the census"`.

use std::collections::BTreeSet;

use super::crossing::StateAndPrinting;
use super::rows::HolderAndState;
use keyblock_model::impression::Status;
use keyblock_model::key::Key;
use keyblock_model::vocabulary::CountingClass;

/// A value under which sheets are counted. One value may say less than another: `None` says nothing, `untraced` nothing
/// beside another status, a state alone less than the state with a printing.
pub(super) trait Value: Ord + Clone {
    /// What both say together; `None` where both cannot hold.
    fn and(&self, other: &Self) -> Option<Self>;
}

/// Of two things that may not be recorded: the one that is, or both where they are the same.
fn either<T: Clone + PartialEq>(one: Option<&T>, other: Option<&T>) -> Option<Option<T>> {
    match (one, other) {
        (Some(one), Some(other)) => (one == other).then(|| Some(one.clone())),
        (one, other) => Some(one.or(other).cloned()),
    }
}

macro_rules! plain_values {
    ($($of:ty),+) => {$(
        impl Value for Option<$of> {
            fn and(&self, other: &Self) -> Option<Self> {
                either(self.as_ref(), other.as_ref())
            }
        }
    )+};
}

plain_values!(Key, String, CountingClass, bool);

impl<A: Value, B: Value> Value for (A, B) {
    fn and(&self, other: &Self) -> Option<Self> {
        Some((self.0.and(&other.0)?, self.1.and(&other.1)?))
    }
}

impl Value for Option<Status> {
    fn and(&self, other: &Self) -> Option<Self> {
        let said = |status: &Option<Status>| status.filter(|s| *s != Status::Untraced);
        let both = either(said(self).as_ref(), said(other).as_ref())?;
        Some(both.or(*self).or(*other))
    }
}

impl Value for Option<StateAndPrinting> {
    fn and(&self, other: &Self) -> Option<Self> {
        let (Some(one), Some(two)) = (self, other) else {
            return Some(self.clone().or_else(|| other.clone()));
        };
        Some(Some(StateAndPrinting {
            state: either(one.state.as_ref(), two.state.as_ref())?,
            printing: either(one.printing.as_ref(), two.printing.as_ref())?,
        }))
    }
}

impl Value for Option<HolderAndState> {
    fn and(&self, other: &Self) -> Option<Self> {
        let (Some(one), Some(two)) = (self, other) else {
            return Some(self.clone().or_else(|| other.clone()));
        };
        Some(Some(HolderAndState {
            holder: either(one.holder.as_ref(), two.holder.as_ref())?,
            state: either(one.state.as_ref(), two.state.as_ref())?,
        }))
    }
}

/// The values of a sheet.
#[derive(Clone, Debug)]
pub(super) struct Values<V> {
    /// Those that it allows; empty for a sheet that stands in no row of this kind.
    allowed: BTreeSet<V>,
    /// Whether its records share a value.
    do_agree: bool,
}

impl<V> Default for Values<V> {
    fn default() -> Values<V> {
        Values {
            allowed: BTreeSet::new(),
            do_agree: true,
        }
    }
}

/// What two sets share: every value that follows from one of each.
fn shared<V: Value>(one: &BTreeSet<V>, other: &BTreeSet<V>) -> BTreeSet<V> {
    let pairs = one.iter().flat_map(|a| other.iter().map(move |b| (a, b)));
    pairs.filter_map(|(a, b)| a.and(b)).collect()
}

impl<V: Value> Values<V> {
    /// The values of a sheet from those of its records, of which an empty set says nothing. `nothing` is the value
    /// of a sheet of which no record says anything.
    pub fn of<'r>(records: impl Iterator<Item = &'r BTreeSet<V>>, nothing: V) -> Values<V>
    where
        V: 'r,
    {
        let said: Vec<&BTreeSet<V>> = records.filter(|record| !record.is_empty()).collect();
        let Some((first, others)) = said.split_first() else {
            return Values {
                allowed: BTreeSet::from([nothing]),
                do_agree: true,
            };
        };
        let mut allowed = (*first).clone();
        for other in others {
            allowed = shared(&allowed, other);
        }
        if !allowed.is_empty() {
            return Values {
                allowed,
                do_agree: true,
            };
        }
        let all: BTreeSet<V> = said.into_iter().flatten().cloned().collect();
        let says_less = |value: &&V| {
            let mut others = all.iter().filter(|other| other != value);
            others.any(|other| value.and(other).as_ref() == Some(other))
        };
        Values {
            allowed: all.iter().filter(|v| !says_less(v)).cloned().collect(),
            do_agree: false,
        }
    }

    /// Every value of the sheet together with every one of another kind.
    pub fn with<W: Value, B: Value>(
        &self,
        others: &Values<W>,
        both: impl Fn(&V, &W) -> B,
    ) -> Values<B> {
        let both = &both;
        let pairs = self.allowed.iter();
        let pairs = pairs.flat_map(|a| others.allowed.iter().map(move |b| both(a, b)));
        Values {
            allowed: pairs.collect(),
            do_agree: self.do_agree && others.do_agree,
        }
    }

    /// These values as others, each of which follows from one of them.
    pub fn map<W: Value>(&self, as_other: impl Fn(&V) -> W) -> Values<W> {
        Values {
            allowed: self.allowed.iter().map(as_other).collect(),
            do_agree: self.do_agree,
        }
    }

    /// Keeps the values that `is_possible` holds of; all of them where it holds of none.
    pub fn retain_if_any(&mut self, is_possible: impl Fn(&V) -> bool) {
        if self.allowed.iter().any(&is_possible) {
            self.allowed.retain(is_possible);
        }
    }

    /// The values that the sheet allows.
    pub fn allowed(&self) -> impl ExactSizeIterator<Item = &V> {
        self.allowed.iter()
    }

    /// Whether these differ from a value: a sheet of this one's records and of records that allow only that value
    /// would not allow that value alone.
    pub fn differ_from(&self, value: &V) -> bool {
        let together = self.allowed.iter().filter_map(|v| v.and(value));
        let together: BTreeSet<V> = together.collect();
        !self.do_agree || together.len() != 1 || !together.contains(value)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn set<V: Ord>(values: impl IntoIterator<Item = V>) -> BTreeSet<V> {
        values.into_iter().collect()
    }

    fn key(text: &str) -> Key {
        text.parse().unwrap()
    }

    /// The values of a sheet from the states that each record allows: "b" from "a b" and "b c". A dash: a reading that
    /// names none.
    fn states(records: &[&str]) -> String {
        let read = |text: &&str| -> BTreeSet<Option<Key>> {
            text.split_whitespace()
                .map(|t| (t != "-").then(|| key(t)))
                .collect()
        };
        let records: Vec<_> = records.iter().map(read).collect();
        let values = Values::of(records.iter(), None);
        let shown = values
            .allowed()
            .map(|v| v.as_ref().map_or("-", Key::as_str));
        shown.collect::<Vec<_>>().join(" ")
    }

    #[test]
    fn records_of_one_sheet_allow_what_they_share_or_else_what_any_allows() {
        for (records, values) in [
            (&["a b", "b c"][..], "b"),
            (&["a", "", "a b"], "a"),
            (&["a", "b c"], "a b c"),
            (&["a b", "b c", "a c"], "a b c"),
            (&["", ""], "-"),
            // A reading that names none leaves every value open.
            (&["a -", "b"], "b"),
            (&["a -", "b -"], "- a b"),
        ] {
            assert_eq!(states(records), values, "{records:?}");
        }
    }

    #[test]
    fn untraced_says_nothing_beside_another_status() {
        use Status::{Destroyed, Located, Untraced};
        for (records, values) in [
            (&[Untraced, Located][..], &[Located][..]),
            (&[Untraced, Untraced], &[Untraced]),
            (&[Untraced, Located, Destroyed], &[Located, Destroyed]),
        ] {
            let records: Vec<_> = records.iter().map(|s| set([Some(*s)])).collect();
            let found = Values::of(records.iter(), None);
            let found: BTreeSet<Status> = found.allowed().flatten().copied().collect();
            assert_eq!(found, set(values.iter().copied()));
        }
    }

    #[test]
    fn a_state_and_a_printing_say_less_alone_than_together() {
        let pair =
            |state: Option<Key>, printing: Option<Key>| Some(StateAndPrinting { state, printing });
        let of = |records: &[BTreeSet<Option<StateAndPrinting>>]| {
            Values::of(records.iter(), None).allowed
        };
        let [a, b, own] = ["a", "b", "own"].map(|text| Some(key(text)));
        let state = set([pair(a.clone(), None)]);
        let printing = set([pair(None, own.clone())]);
        let both = set([pair(a, own.clone())]);
        assert_eq!(of(&[state.clone(), printing.clone()]), both);
        assert_eq!(of(&[state, both.clone()]), both);
        let other = set([pair(b, own)]);
        let all: BTreeSet<_> = both.union(&other).cloned().collect();
        assert_eq!(of(&[both, other]), all);
    }

    #[test]
    fn values_differ_from_one_that_they_do_not_leave_alone() {
        let of = |records: &[&str]| {
            let record = |text: &&str| set(text.split_whitespace().map(|t| Some(key(t))));
            let records: Vec<_> = records.iter().map(record).collect();
            Values::of(records.iter(), None)
        };
        let a = Some(key("a"));
        let cases = [
            (&["b"][..], true, true),
            (&["a b"], false, true),
            (&["a"], false, true),
            (&[], false, false),
            // Records that contradict each other leave no value alone.
            (&["a", "b"], true, true),
        ];
        for (records, from_a, from_nothing) in cases {
            let values = of(records);
            assert_eq!(values.differ_from(&a), from_a, "{values:?}");
            assert_eq!(values.differ_from(&None), from_nothing, "{values:?}");
        }
        let [untraced, located] = [Status::Untraced, Status::Located].map(Some);
        let of = |status| Values::of([set([status])].iter(), None);
        assert!(of(located).differ_from(&untraced));
        assert!(!of(untraced).differ_from(&located));
    }
}
