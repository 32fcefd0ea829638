//! State and number of an earlier catalogue, as text: `B. 12 ii/iii`, `II. Zustand`, "only state"; and what an old state
//! is now.
//!
//! In: a cell. Out: author, number and state as it says them. Which entry of ours that is, the concordance decides, not
//! this grammar; [`translated`] carries an old state through pairs that the concordance gives.

use std::sync::LazyLock;

use super::numerals::ordinal;
use super::outcome::{Doubt, Progress, Reading, bounded};
use super::phrases::Phrases;
use super::words::{PieceKind, Words};
use crate::model::words::closed_list;
use crate::study::numerals::{from_roman, roman};

closed_list! {
    /// What a state is said to be beside a number.
    StateRemark {
        /// The only state.
        Only = "only",
        /// Not in the catalogue.
        Undescribed = "undescribed",
        /// Between the two states named.
        Between = "between",
    }
}

/// A state as a cell says it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct SaidState {
    /// The states, from 1: several where the cell leaves it open ("ii or iii"), or names the neighbours.
    pub states: Vec<u32>,
    /// How many states there are said to be.
    pub of: Option<u32>,
    /// The printing within the state, `b` of `VII/b`.
    pub printing: Option<String>,
    /// What else is said.
    pub remark: Option<StateRemark>,
}

impl SaidState {
    /// The state in the way of catalogues: `ii/iii`, `ii or iii`, `only state`.
    #[must_use]
    pub fn written(&self) -> String {
        let states: Vec<String> = self.states.iter().map(|s| roman(*s)).collect();
        let mut text = match self.remark {
            Some(StateRemark::Only) => "only state".to_owned(),
            Some(StateRemark::Undescribed) => "undescribed".to_owned(),
            Some(StateRemark::Between) => format!("between {}", states.join(" and ")),
            None => states.join(" or "),
        };
        if let Some(of) = self.of {
            text.push('/');
            text.push_str(&roman(of));
        }
        if let Some(printing) = &self.printing {
            text.push('/');
            text.push_str(printing);
        }
        text
    }
}

/// A reference to an earlier catalogue, as a cell gives it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct CatalogueSaid {
    /// The author or the abbreviation of the catalogue, as written.
    pub author: Option<String>,
    /// The number in it.
    pub number: Option<String>,
    /// The state by it.
    pub state: Option<SaidState>,
    /// Whether the cell says that the catalogue does not have it.
    pub is_not_in: bool,
}

static STATE_WORDS: LazyLock<Phrases<()>> = LazyLock::new(|| {
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

static NOT_IN: LazyLock<Phrases<()>> = LazyLock::new(|| {
    Phrases::of(&[(
        (),
        "not in|not described by|nicht bei|nicht in|unbeschrieben bei|pas dans|absent de|non décrit par|niet in|niet bij",
    )])
});

/// Reads a cell of a column that holds numbers of a catalogue: there a number alone is one (`12`, `12a`).
#[must_use]
pub fn catalogue_numbers(text: &str) -> Reading<Vec<CatalogueSaid>> {
    let reading = states(text);
    let bare = text.trim();
    if !reading.is.is_empty() || !is_bare_number(bare) {
        return reading;
    }
    let start = text.len() - text.trim_start().len();
    let whole = start..start + bare.len();
    Reading {
        is: vec![CatalogueSaid {
            number: Some(bare.to_owned()),
            ..CatalogueSaid::default()
        }],
        read: vec![whole],
        left: Vec::new(),
        doubts: Vec::new(),
    }
}

/// Up to five figures, with a letter or none behind them.
fn is_bare_number(text: &str) -> bool {
    let figures = text.trim_end_matches(|c: char| c.is_ascii_alphabetic());
    (1..=5).contains(&figures.len())
        && text.len() - figures.len() <= 1
        && figures.bytes().all(|b| b.is_ascii_digit())
}

/// Reads a cell of catalogue numbers and states.
#[must_use]
pub fn states(text: &str) -> Reading<Vec<CatalogueSaid>> {
    bounded(text, read)
}

fn read(words: &Words<'_>, progress: &mut Progress) -> Vec<CatalogueSaid> {
    let mut found: Vec<CatalogueSaid> = Vec::new();
    // Whether the last reference is still being told: no semicolon has closed it.
    let mut is_open = false;
    let mut at = 0;
    while at < words.len() {
        if words.is_mark(at, &[";", "|"]) {
            is_open = false;
            at += 1;
        } else if let Some((state, end)) =
            state_at(words, at).filter(|_| NOT_IN.at(words, at).is_none())
        {
            if let Some(of) = state.of
                && state.states.iter().any(|state| *state > of)
            {
                progress.doubt(Doubt::AboveStates);
            }
            progress.read(at, end);
            match found
                .last_mut()
                .filter(|last| is_open && last.state.is_none())
            {
                Some(last) => last.state = Some(state),
                None => found.push(CatalogueSaid {
                    state: Some(state),
                    ..CatalogueSaid::default()
                }),
            }
            is_open = false;
            at = end;
        } else if let Some((reference, end)) = reference(words, at) {
            progress.read(at, end);
            found.push(reference);
            is_open = true;
            at = end;
        } else {
            at += 1;
        }
    }
    found
}

/// `B. 12`, `Brook 1955, no. 12a`, `not in B.`: an author with a number.
fn reference(words: &Words<'_>, index: usize) -> Option<(CatalogueSaid, usize)> {
    let not_in = NOT_IN.at(words, index);
    let start = not_in.map_or(index, |found| found.end);
    let mut end = start;
    // Names, initials and "and" up to the number.
    while words.at(end).is_some_and(|p| p.kind == PieceKind::Word)
        && STATE_WORDS.at(words, end).is_none()
        && end < start + 12
    {
        if words.word(end).is_some_and(is_number_word) {
            break;
        }
        end += 1;
        while words.is_mark(end, &[".", "&", "-", "/"]) && words.at(end + 1).is_some() {
            end += 1;
        }
        if words.is_close_mark(end, &["."]) {
            end += 1;
        }
    }
    let named = end;
    if named == start {
        return None;
    }
    let author = |end: usize| {
        let author = words.between(start, end).trim();
        (!author.is_empty()).then(|| author.to_owned())
    };
    if not_in.is_some() {
        return Some((
            CatalogueSaid {
                author: author(named),
                is_not_in: true,
                ..CatalogueSaid::default()
            },
            named,
        ));
    }
    // The year of the catalogue belongs to its name: `Brook 1955, 12`.
    let mut name_end = named;
    let mut at = named;
    let is_year = |at: usize| words.figures(at).is_some_and(|f| f.len() == 4);
    if is_year(at) && (words.is_mark(at + 1, &[",", ":"]) || words.figures(at + 1).is_some()) {
        at += 1;
        name_end = at;
    }
    while words.is_mark(at, &[",", ":", "."]) || words.word(at).is_some_and(is_number_word) {
        at += 1;
    }
    let start_of_number = at;
    // The letters of a class behind the catalogue and its year: `Brook 1955, W 12`.
    let is_class = |at: usize| words.word(at).is_some_and(|word| word.chars().count() <= 2);
    if name_end > named && is_class(at) && words.figures(at + 1).is_some() {
        at += 1;
    }
    words.figures(at)?;
    at += 1;
    // `12a`, `12 bis`, `1955.12`
    if words
        .word(at)
        .is_some_and(|w| words.is_close(at) && w.len() == 1 || ["bis", "ter"].contains(&w))
    {
        at += 1;
    }
    while words.is_close_mark(at, &["."])
        && words.is_close(at + 1)
        && words.figures(at + 1).is_some()
    {
        at += 2;
    }
    let reference = CatalogueSaid {
        author: author(name_end),
        number: Some(words.between(start_of_number, at).to_owned()),
        ..CatalogueSaid::default()
    };
    Some((reference, at))
}

fn is_number_word(word: &str) -> bool {
    [
        "no", "nos", "nr", "cat", "kat", "n", "num", "nummer", "number",
    ]
    .contains(&word)
}

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

#[cfg(test)]
mod tests {
    use super::*;

    fn said(text: &str) -> String {
        let references = states(text).is;
        let told = references.iter().map(|reference| {
            let mut parts = Vec::new();
            if reference.is_not_in {
                parts.push("not in".to_owned());
            }
            parts.extend(reference.author.clone());
            parts.extend(reference.number.clone().map(|n| format!("no. {n}")));
            parts.extend(reference.state.as_ref().map(SaidState::written));
            parts.join(" ")
        });
        told.collect::<Vec<_>>().join("; ")
    }

    #[test]
    fn a_number_alone_is_one_where_the_column_holds_numbers() {
        let number = |text: &str| {
            let reading = catalogue_numbers(text);
            let number = reading.is.first().and_then(|said| said.number.clone());
            number.filter(|_| reading.left.is_empty())
        };
        assert_eq!(number(" 12a "), Some("12a".to_owned()));
        assert_eq!(number("9"), Some("9".to_owned()));
        for text in ["12ab", "1912 12", "123456", "a", ""] {
            assert_eq!(number(text), None, "{text}");
        }
        assert_eq!(states("9").is, []);
    }

    /// Forms of docs/trade.md, "Writing states", with invented catalogues.
    #[test]
    fn states_and_numbers_are_read_whole() {
        for (text, reading) in [
            ("B. 12 ii/iii", "B. no. 12 ii/iii"),
            ("Brook 1955, W 12 III", "Brook 1955 no. W 12 iii"),
            ("Brook 1955, 12 III", "Brook 1955 no. 12 iii"),
            ("non décrit par Brook", "not in Brook"),
            ("iii/v", "iii/v"),
            ("ii", "ii"),
            ("II (of IV)", "ii/iv"),
            ("II (v. III)", "ii/iii"),
            ("2nd of 3 states", "ii/iii"),
            ("3rd of 5 states", "iii/v"),
            ("2nd state", "ii"),
            ("second state", "ii"),
            ("state ii", "ii"),
            ("State II of IV", "ii/iv"),
            ("state 2/4", "ii/iv"),
            ("II. Zustand", "ii"),
            ("2. Zustand von 3", "ii/iii"),
            ("Zustand II von III", "ii/iii"),
            ("2e état sur 3", "ii/iii"),
            ("IIe état", "ii"),
            ("2de staat", "ii"),
            ("第2ステート", "ii"),
            ("only state", "only state"),
            ("einziger Zustand", "only state"),
            ("état unique", "only state"),
            ("enige staat", "only state"),
            ("ii or iii", "ii or iii"),
            ("undescribed", "undescribed"),
            ("undescribed state between II and III", "between ii and iii"),
            ("Brook 176/VII/b (of d)", "Brook no. 176 vii/b"),
            ("Mill 14 iii", "Mill no. 14 iii"),
            ("Mill 1955, 14 iii/v", "Mill 1955 no. 14 iii/v"),
            ("Mill, no. 12a", "Mill no. 12a"),
            ("B. 12; M. 7 ii", "B. no. 12; M. no. 7 ii"),
            ("not in Mill", "not in Mill"),
        ] {
            assert_eq!(said(text), reading, "{text}");
            let reading = states(text);
            assert_eq!(reading.left_over(text), [""; 0], "{text}");
        }
    }

    #[test]
    fn a_state_above_their_number_is_doubtful() {
        assert_eq!(states("iv/iii").doubts, [Doubt::AboveStates]);
        assert_eq!(states("ii/iii").doubts, []);
    }

    #[test]
    fn an_old_state_that_was_split_gives_either() {
        let pairs = [(1, vec!["i"]), (2, vec!["ii", "iii"]), (3, vec!["iv"])];
        let old = |text: &str| states(text).is[0].state.clone().unwrap();
        let now = |text: &str| translated(&old(text), &pairs);
        assert_eq!(now("ii/iii").may_be, ["ii", "iii"]);
        assert_eq!(now("iii/iii").may_be, ["iv"]);
        assert_eq!(now("ii or iii").may_be, ["ii", "iii", "iv"]);
        assert_eq!(now("only state").may_be, ["i"]);
        assert_eq!(now("iv").unknown, [4]);
        assert!(now("undescribed").may_be.is_empty());
    }
}
