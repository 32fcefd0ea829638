//! The grammar of a state: `ii/iii`, `II. Zustand`, "only state".

use std::sync::LazyLock;

use super::said::{SaidState, StateRemark};
use crate::exchange::intake::reading::numerals::ordinal;
use crate::exchange::intake::reading::phrases::Phrases;
use crate::exchange::intake::reading::words::Words;
use crate::study::numerals::from_roman;

pub(super) static STATE_WORDS: LazyLock<Phrases<()>> = LazyLock::new(|| {
    Phrases::of(&[(
        (),
        "state|states|st.|zustand|zust.|zustände|zuständen|état|etat|états|ét.|staat|staten|ステート|状態",
    )])
});

static OF_WORDS: LazyLock<Phrases<()>> =
    LazyLock::new(|| Phrases::of(&[((), "of|out of|von|v.|sur|de|van")]));

static OR_WORDS: LazyLock<Phrases<()>> =
    LazyLock::new(|| Phrases::of(&[((), "or|oder|ou|of|–|-|と|または")]));

static REMARK_WORDS: LazyLock<Phrases<StateRemark>> = LazyLock::new(|| {
    Phrases::of(&[
        (
            StateRemark::Only,
            "only state|sole state|one state|single state|only known state|einziger zustand|einz. zustand|état unique|\
             seul état|unique état|enige staat",
        ),
        (
            StateRemark::Undescribed,
            "undescribed|undescribed state|state undescribed|unrecorded state|unbeschrieben|unbeschriebener zustand|\
             non décrit|état non décrit|onbeschreven|onbeschreven staat",
        ),
    ])
});

static BETWEEN: LazyLock<Phrases<()>> = LazyLock::new(|| {
    Phrases::of(&[(
        (),
        "between|undescribed state between|zwischen|unbeschrieben zwischen|entre|tussen",
    )])
});

static AND: LazyLock<Phrases<()>> = LazyLock::new(|| Phrases::of(&[((), "and|und|et|en")]));

/// The state that begins at a piece, and the piece after it.
#[must_use]
pub fn state_at(words: &Words<'_>, index: usize) -> Option<(SaidState, usize)> {
    if let Some(between) = BETWEEN.at(words, index)
        && let Some((first, at)) = plain_number(words, between.end)
        && let Some(and) = AND.at(words, at)
        && let Some((second, end)) = plain_number(words, and.end)
        && first < second
        && second < 60
    {
        let state = SaidState {
            states: vec![first, second],
            remark: Some(StateRemark::Between),
            ..SaidState::default()
        };
        return Some((state, end));
    }
    if let Some(remark) = REMARK_WORDS.at(words, index) {
        let state = SaidState {
            remark: Some(remark.is),
            ..SaidState::default()
        };
        // "undescribed state between II and III"
        if remark.is == StateRemark::Undescribed
            && let Some((between, end)) = state_at(words, remark.end)
                .filter(|(state, _)| state.remark == Some(StateRemark::Between))
        {
            return Some((between, end));
        }
        return Some((state, remark.end));
    }
    with_word_before(words, index)
        .or_else(|| with_word_behind(words, index))
        .or_else(|| in_numerals(words, index))
}

/// `state ii`, `Zustand II von III`, `état 2/3`.
fn with_word_before(words: &Words<'_>, index: usize) -> Option<(SaidState, usize)> {
    let word = STATE_WORDS.at(words, index)?;
    let at = if words.is_mark(word.end, &[":"]) {
        word.end + 1
    } else {
        word.end
    };
    let (first, at) = plain_number(words, at).filter(|(n, _)| *n < 60)?;
    Some(continued(words, first, at))
}

/// `2nd state`, `II. Zustand`, `2nd of 3 states`, `second or third state`, `第2ステート`.
fn with_word_behind(words: &Words<'_>, index: usize) -> Option<(SaidState, usize)> {
    let start = if words.word(index) == Some("第") {
        index + 1
    } else {
        index
    };
    let (first, at) = ordinal(words, start)
        .or_else(|| plain_number(words, start))
        .filter(|(n, _)| (1..60).contains(n))?;
    let mut said = SaidState {
        states: vec![first],
        ..SaidState::default()
    };
    let mut at = at;
    if let Some(or) = OR_WORDS.at(words, at)
        // "2de of 3de staat" is Dutch, "2nd of 3 states" is English.
        && let Some((second, end)) = ordinal(words, or.end)
            .or_else(|| plain_number(words, or.end).filter(|_| words.word(at) != Some("of")))
        && STATE_WORDS.at(words, end).is_some()
        && second > first
    {
        said.states.push(second);
        at = end;
    }
    // `2nd of 3 states`
    if let Some((of, end)) = of_how_many(words, at)
        && let Some(word) = STATE_WORDS.at(words, end)
    {
        said.of = Some(of);
        return Some((said, word.end));
    }
    let word = STATE_WORDS.at(words, at)?;
    let mut end = word.end;
    if let Some((of, after)) = of_how_many(words, end) {
        said.of = Some(of);
        end = after;
    }
    Some((said, end))
}

/// `ii/iii`, `II (v. III)`, `VII/b (of d)`, `/VII`: roman numerals alone, of which one must be sure to be a state.
fn in_numerals(words: &Words<'_>, index: usize) -> Option<(SaidState, usize)> {
    let start = if words.is_close_mark(index, &["/"]) {
        index + 1
    } else {
        index
    };
    let first = words.word(start).and_then(from_roman).filter(|n| *n < 60)?;
    let (said, end) = continued(words, first, start + 1);
    // One letter alone, "I" or "C. ", is a word or an initial, unless it stands behind a number.
    let is_alone = end == start + 1;
    let is_after_number = index > 0
        && (words.figures(index - 1).is_some() || start > index || is_after_letter(words, index));
    let is_letter = words
        .word(start)
        .is_some_and(|w| w.len() == 1 && w != "i" && w != "v");
    let is_initial = is_alone && words.is_close_mark(end, &["."]) && !is_after_number;
    if is_initial || (is_alone && is_letter && !is_after_number) {
        return None;
    }
    Some((said, end))
}

/// Whether the piece before is the letter of a number: `12a ii`.
fn is_after_letter(words: &Words<'_>, index: usize) -> bool {
    index > 1
        && words.word(index - 1).is_some_and(|w| w.len() == 1)
        && words.is_close(index - 1)
        && words.figures(index - 2).is_some()
}

/// What follows the number of a state: the number of states, a further state, a printing.
fn continued(words: &Words<'_>, first: u32, at: usize) -> (SaidState, usize) {
    let mut said = SaidState {
        states: vec![first],
        ..SaidState::default()
    };
    let mut end = at;
    if let Some(or) = OR_WORDS.at(words, end)
        && let Some((second, after)) = plain_number(words, or.end).filter(|(n, _)| *n > first && *n < 60)
        // "of" is Dutch for "or" and English for "out of": English wins unless a number of states follows.
        && words.word(end) != Some("of")
    {
        said.states.push(second);
        end = after;
    }
    if let Some((of, after)) = of_how_many(words, end) {
        said.of = Some(of);
        end = after;
    } else if words.is_mark(end, &["/"])
        && let Some(letter) = words.word(end + 1).filter(|w| w.len() == 1 && w.is_ascii())
        && words.is_close(end + 1)
    {
        said.printing = Some(letter.to_owned());
        end += 2;
        // `(of d)`: how many printings.
        let is_open = words.is_mark(end, &["("]);
        let inside = if is_open { end + 1 } else { end };
        if let Some(of) = OF_WORDS.at(words, inside)
            && words.word(of.end).is_some_and(|w| w.len() == 1)
        {
            end = of.end + 1;
            if is_open && words.is_mark(end, &[")"]) {
                end += 1;
            }
        }
    }
    (said, end)
}

/// `/III`, `(of III)`, `(v. III)`, `von 3`, `(3)`.
fn of_how_many(words: &Words<'_>, index: usize) -> Option<(u32, usize)> {
    if words.is_mark(index, &["/"]) {
        return plain_number(words, index + 1);
    }
    let is_open = words.is_mark(index, &["(", "["]);
    let inside = if is_open { index + 1 } else { index };
    let of = OF_WORDS.at(words, inside)?;
    let (number, end) = plain_number(words, of.end)?;
    let end = if is_open && words.is_mark(end, &[")", "]"]) {
        end + 1
    } else {
        end
    };
    Some((number, end))
}

fn plain_number(words: &Words<'_>, index: usize) -> Option<(u32, usize)> {
    let number = words
        .number(index)
        .or_else(|| words.word(index).and_then(from_roman))?;
    (1..100).contains(&number).then_some((number, index + 1))
}
