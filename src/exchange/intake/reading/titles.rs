//! Titles, and what stands in a title beside it: makers, the kind of proof, the state, that it was supplied.
//!
//! "[The Lock], engraved by C. Mill (trial proof)" is the supplied title "The Lock", an engraver and a kind. The title
//! itself is kept as written.

use super::kinds::kind;
use super::lexicon::Lexicon;
use super::makers::{self, NamedMaker};
use super::outcome::{Progress, Reading, bounded};
use super::states::{SaidState, state_at};
use super::words::Words;
use crate::model::key::Key;

/// What a cell says of a title.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct TitleSaid {
    /// The title as written, without what was read out of it.
    pub title: String,
    /// Whether it stands in square brackets: supplied by a cataloguer.
    pub is_supplied: bool,
    /// Makers named behind it.
    pub makers: Vec<NamedMaker>,
    /// The kind of impression.
    pub kind: Option<Key>,
    /// The state.
    pub state: Option<SaidState>,
}

/// Reads a cell of titles. Its words are all read: what is not understood is the title.
#[must_use]
pub fn title(text: &str, lexicon: &Lexicon) -> Reading<TitleSaid> {
    bounded(text, |words, progress| read(words, progress, lexicon))
}

fn read(words: &Words<'_>, progress: &mut Progress, lexicon: &Lexicon) -> TitleSaid {
    let mut said = TitleSaid::default();
    // What stands behind the title begins at the first comma, bracket or semicolon from which all is understood.
    let mut end = words.len();
    for at in 1..words.len() {
        if words.is_mark(at, &[",", ";", "(", "[", ":"]) && is_understood(words, at, lexicon) {
            end = at;
            behind(words, progress, lexicon, at, &mut said);
            break;
        }
    }
    let mut start = 0;
    let closing = |end: usize| end > 1 && words.is_mark(end - 1, &["]"]);
    if words.is_mark(0, &["["]) && closing(end) {
        let is_one = (1..end - 1).all(|at| !words.is_mark(at, &["[", "]"]));
        if is_one {
            said.is_supplied = true;
            start = 1;
            end -= 1;
        }
    }
    words.between(start, end).trim().clone_into(&mut said.title);
    progress.read(0, words.len());
    said
}

/// Whether everything from a piece on is a maker, a kind or a state.
fn is_understood(words: &Words<'_>, start: usize, lexicon: &Lexicon) -> bool {
    let mut rest = Progress::of(words);
    let mut said = TitleSaid::default();
    behind(words, &mut rest, lexicon, start, &mut said);
    let is_word = |at: usize| words.word(at).is_some() || words.figures(at).is_some();
    let is_all_read = (start..words.len()).all(|at| !is_word(at) || rest.is_read(at));
    is_all_read && (said.kind.is_some() || said.state.is_some() || !said.makers.is_empty())
}

fn behind(
    words: &Words<'_>,
    progress: &mut Progress,
    lexicon: &Lexicon,
    start: usize,
    said: &mut TitleSaid,
) {
    let mut at = start;
    while at < words.len() {
        if let Some(found) = kind(words, at, lexicon) {
            said.kind.get_or_insert(found.is);
            progress.read(at, found.end);
            at = found.end;
        } else if let Some((state, end)) = state_at(words, at) {
            said.state.get_or_insert(state);
            progress.read(at, end);
            at = end;
        } else if words.word(at).is_some() {
            said.makers = makers::read(words, progress, lexicon, at, false);
            return;
        } else {
            at += 1;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::lexicon::samples::lexicon;
    use super::*;

    fn said(text: &str) -> String {
        let is = title(text, &lexicon()).is;
        let mut told = vec![if is.is_supplied {
            format!("[{}]", is.title)
        } else {
            is.title
        }];
        for maker in is.makers {
            told.push(format!("{} {}", maker.role, maker.name));
        }
        told.extend(is.kind.map(|key| key.to_string()));
        told.extend(is.state.map(|state| format!("state {}", state.written())));
        told.join(" | ")
    }

    #[test]
    fn what_stands_behind_a_title_is_read_out_of_it() {
        for (text, reading) in [
            ("The Lock", "The Lock"),
            ("[The Lock]", "[The Lock]"),
            ("[Title not known]", "[Title not known]"),
            (
                "The Lock, engraved by C. Mill",
                "The Lock | engraver C. Mill",
            ),
            ("The Lock (trial proof)", "The Lock | trial-proof"),
            ("The Lock, Probedruck", "The Lock | proof"),
            ("L'écluse, épreuve d'artiste", "L'écluse | artists-proof"),
            (
                "[The Lock], engraved by C. Mill after A. Brook",
                "[The Lock] | engraver C. Mill | after A. Brook",
            ),
            ("The Lock, second state", "The Lock | state ii"),
            ("Lock, Mill and Weir", "Lock, Mill and Weir"),
            ("The Proof of the Pudding", "The Proof of the Pudding"),
            ("After the Flood", "After the Flood"),
            ("Morning, after rain", "Morning | after rain"),
        ] {
            // "after rain" cannot be told from a name; the proposal shows it beside the title.
            assert_eq!(said(text), reading, "{text}");
        }
    }
}
