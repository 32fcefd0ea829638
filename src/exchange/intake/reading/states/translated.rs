//! What a state of an earlier catalogue is now.

use super::said::{SaidState, StateRemark};

/// What an old state is in the catalogue's own states.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TranslatedState<S> {
    /// The states it may be, in the order of the pairs: several where an old one was split.
    pub may_be: Vec<S>,
    /// The old states for which no pair is known.
    pub unknown: Vec<u32>,
}

/// Carries an old state through pairs of an old state and what it is now, from the concordance. Several old states give
/// everything that any of them may be, each once.
///
/// ```
/// # use keyblock::exchange::intake::reading::states::{SaidState, translated};
/// // The old second state was split; a trial state was found before all.
/// let pairs = [(1, vec!["carved"]), (2, vec!["signed", "cracked"])];
/// let old = SaidState { states: vec![2], ..SaidState::default() };
/// assert_eq!(translated(&old, &pairs).may_be, ["signed", "cracked"]); // "iii or iv"
/// ```
#[must_use]
pub fn translated<S: Clone + PartialEq>(
    old: &SaidState,
    pairs: &[(u32, Vec<S>)],
) -> TranslatedState<S> {
    let mut result = TranslatedState {
        may_be: Vec::new(),
        unknown: Vec::new(),
    };
    if old.remark == Some(StateRemark::Undescribed) {
        return result;
    }
    // "Only state" is the first of a catalogue that knew no other.
    let only = [1];
    let states = match old.remark {
        Some(StateRemark::Only) if old.states.is_empty() => &only[..],
        _ => &old.states[..],
    };
    for state in states {
        let mut is_known = false;
        for (_, ours) in pairs.iter().filter(|(theirs, _)| theirs == state) {
            is_known = true;
            for one in ours {
                if !result.may_be.contains(one) {
                    result.may_be.push(one.clone());
                }
            }
        }
        if !is_known {
            result.unknown.push(*state);
        }
    }
    result
}
