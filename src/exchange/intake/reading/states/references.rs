//! The grammar of references to earlier catalogues: author, number, state.

use std::sync::LazyLock;

use super::said::CatalogueSaid;
use super::state::{STATE_WORDS, state_at};
use crate::exchange::intake::reading::outcome::{Doubt, Progress, Reading, bounded};
use crate::exchange::intake::reading::phrases::Phrases;
use crate::exchange::intake::reading::words::{PieceKind, Words};

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
