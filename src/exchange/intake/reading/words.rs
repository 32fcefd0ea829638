//! A text cut into words, numbers and marks, each with its place.
//!
//! In: a cell. Out: its pieces, folded as the search folds texts, so that capitals, accents and the width of letters
//! do not count. Letters of scripts without spaces (Han, kana) are words of their own. White space is in no piece.

use std::ops::Range;

use crate::study::search::folding::{fold, normalised};

/// A place in a cell, in bytes.
pub type Span = Range<usize>;

/// What a piece is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PieceKind {
    /// Letters, with the apostrophes between them; one letter where the script has no spaces.
    Word,
    /// Figures.
    Number,
    /// A fraction that is one sign, `½`: its parts.
    Fraction(u32, u32),
    /// Any other sign.
    Mark,
}

/// A piece of a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Piece {
    /// What it is.
    pub kind: PieceKind,
    /// Its letters or figures as they are compared.
    pub folded: String,
    /// Where it stands, in bytes.
    pub span: Span,
    /// Whether white space stands before it.
    pub spaced: bool,
}

/// A text and its pieces.
#[derive(Clone, Debug)]
pub struct Words<'t> {
    text: &'t str,
    pieces: Vec<Piece>,
}

/// Fractions that are one sign (Unicode, block "Number Forms", and Latin-1).
const FRACTIONS: [(char, u32, u32); 19] = [
    ('½', 1, 2),
    ('⅓', 1, 3),
    ('⅔', 2, 3),
    ('¼', 1, 4),
    ('¾', 3, 4),
    ('⅕', 1, 5),
    ('⅖', 2, 5),
    ('⅗', 3, 5),
    ('⅘', 4, 5),
    ('⅙', 1, 6),
    ('⅚', 5, 6),
    ('⅐', 1, 7),
    ('⅛', 1, 8),
    ('⅜', 3, 8),
    ('⅝', 5, 8),
    ('⅞', 7, 8),
    ('⅑', 1, 9),
    ('⅒', 1, 10),
    ('↉', 0, 3),
];

impl<'t> Words<'t> {
    /// Cuts a text.
    #[must_use]
    pub fn of(text: &'t str) -> Words<'t> {
        let mut pieces: Vec<Piece> = Vec::new();
        let mut spaced = false;
        let mut signs = text.char_indices().peekable();
        while let Some((start, sign)) = signs.next() {
            if sign.is_whitespace() || sign == '\u{feff}' {
                spaced = true;
                continue;
            }
            let fraction = FRACTIONS.iter().find(|(c, _, _)| *c == sign);
            let kind = if let Some((_, over, under)) = fraction {
                PieceKind::Fraction(*over, *under)
            } else if is_figure(sign) {
                PieceKind::Number
            } else if sign.is_alphabetic() || is_unspaced(sign) {
                PieceKind::Word
            } else {
                PieceKind::Mark
            };
            let mut end = start + sign.len_utf8();
            while let Some((at, next)) = signs.peek().copied() {
                let goes_on = match kind {
                    PieceKind::Number => is_figure(next),
                    PieceKind::Word if !is_unspaced(sign) => {
                        is_letter_of_a_run(next)
                            || (is_apostrophe(next)
                                && text[at + next.len_utf8()..]
                                    .chars()
                                    .next()
                                    .is_some_and(is_letter_of_a_run))
                    }
                    _ => false,
                };
                if !goes_on {
                    break;
                }
                end = at + next.len_utf8();
                signs.next();
            }
            pieces.push(Piece {
                kind,
                folded: compared(&text[start..end]),
                span: start..end,
                spaced,
            });
            spaced = false;
        }
        Words { text, pieces }
    }

    /// The text.
    #[must_use]
    pub fn text(&self) -> &'t str {
        self.text
    }

    /// The number of pieces.
    #[must_use]
    pub fn len(&self) -> usize {
        self.pieces.len()
    }

    /// Whether there is none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.pieces.is_empty()
    }

    /// All pieces.
    #[must_use]
    pub fn pieces(&self) -> &[Piece] {
        &self.pieces
    }

    /// A piece; `None` past the end.
    #[must_use]
    pub fn at(&self, index: usize) -> Option<&Piece> {
        self.pieces.get(index)
    }

    /// The figures at a place, where a number stands there.
    #[must_use]
    pub fn figures(&self, index: usize) -> Option<&str> {
        let piece = self.at(index)?;
        (piece.kind == PieceKind::Number).then_some(piece.folded.as_str())
    }

    /// The number at a place; `None` where none stands there or it has more than nine figures.
    #[must_use]
    pub fn number(&self, index: usize) -> Option<u32> {
        let figures = self.figures(index)?;
        (figures.len() <= 9).then(|| figures.parse().ok())?
    }

    /// The folded word at a place, where a word stands there.
    #[must_use]
    pub fn word(&self, index: usize) -> Option<&str> {
        let piece = self.at(index)?;
        (piece.kind == PieceKind::Word).then_some(piece.folded.as_str())
    }

    /// Whether one of these marks stands at a place.
    #[must_use]
    pub fn is_mark(&self, index: usize, marks: &[&str]) -> bool {
        self.at(index)
            .is_some_and(|p| p.kind == PieceKind::Mark && marks.contains(&p.folded.as_str()))
    }

    /// Whether one of these marks stands at a place, with no white space before it.
    #[must_use]
    pub fn is_close_mark(&self, index: usize, marks: &[&str]) -> bool {
        self.is_mark(index, marks) && self.is_close(index)
    }

    /// Whether no white space stands before the piece.
    #[must_use]
    pub fn is_close(&self, index: usize) -> bool {
        self.at(index).is_some_and(|piece| !piece.spaced)
    }

    /// The text from one piece up to, not including, another.
    #[must_use]
    pub fn between(&self, start: usize, end: usize) -> &'t str {
        match (self.at(start), end.checked_sub(1).and_then(|e| self.at(e))) {
            (Some(first), Some(last)) if first.span.start < last.span.end => {
                &self.text[first.span.start..last.span.end]
            }
            _ => "",
        }
    }
}

/// Signs that mark a span or a missing word: hyphens and dashes.
pub const DASHES: [&str; 7] = ["-", "–", "—", "‐", "−", "‒", "―"];

fn compared(text: &str) -> String {
    let folded = fold(&normalised(text));
    if folded.contains(is_apostrophe) {
        folded.replace(is_apostrophe, "'")
    } else {
        folded
    }
}

fn is_figure(sign: char) -> bool {
    sign.is_ascii_digit() || ('０'..='９').contains(&sign)
}

fn is_apostrophe(sign: char) -> bool {
    matches!(sign, '\'' | '’' | '‘' | 'ʼ')
}

fn is_letter_of_a_run(sign: char) -> bool {
    (sign.is_alphabetic() && !is_unspaced(sign)) || ('\u{300}'..='\u{36f}').contains(&sign)
}

/// Whether a letter is a word of its own: Han, kana and the signs written among them.
fn is_unspaced(sign: char) -> bool {
    matches!(sign,
        '\u{3005}'..='\u{3007}' | '\u{3041}'..='\u{30fa}' | '\u{30fc}'..='\u{30ff}'
        | '\u{3400}'..='\u{4dbf}' | '\u{4e00}'..='\u{9fff}' | '\u{f900}'..='\u{faff}'
        | '\u{20000}'..='\u{323af}')
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cut(text: &str) -> Vec<String> {
        let words = Words::of(text);
        words.pieces().iter().map(|p| p.folded.clone()).collect()
    }

    #[test]
    fn a_text_is_cut_where_its_kind_changes() {
        assert_eq!(cut("c.1830–5"), ["c", ".", "1830", "–", "5"]);
        assert_eq!(cut("24,1x17cm"), ["24", ",", "1", "x", "17", "cm"]);
        assert_eq!(cut("Épreuve d’artiste"), ["epreuve", "d'artiste"]);
        assert_eq!(cut("昭和１８年"), ["昭", "和", "18", "年"]);
    }

    #[test]
    fn the_pieces_lie_in_order_on_borders_of_letters() {
        let text = "9 ½ × 7 in. — Shōwa 18";
        let words = Words::of(text);
        let mut end = 0;
        for piece in words.pieces() {
            assert!(text[end..piece.span.start].trim().is_empty());
            assert!(!text[piece.span.clone()].is_empty());
            end = piece.span.end;
        }
        assert!(text[end..].trim().is_empty());
        assert_eq!(words.at(1).unwrap().kind, PieceKind::Fraction(1, 2));
    }
}
