//! A reading: what a cell says, which of its words were read and which left over, and what is doubtful.
//!
//! Invariant: the words read and the words left over are disjoint, in order, and together the whole text but for white
//! space.

use std::fmt;

use super::words::{PieceKind, Span, Words};
use crate::model::certainty::Certainty;

/// What a grammar makes of a cell.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading<T> {
    /// What the cell says, as far as it was understood.
    pub is: T,
    /// The words that were understood.
    pub read: Vec<Span>,
    /// The words that were not.
    pub left: Vec<Span>,
    /// What is doubtful in the reading.
    pub doubts: Vec<Doubt>,
}

impl<T> Reading<T> {
    /// How sure the reading is: certain where every word was read and nothing is doubtful, probable where words are left
    /// over, possible where something is doubtful.
    #[must_use]
    pub fn certainty(&self) -> Certainty {
        match (self.doubts.is_empty(), self.left.is_empty()) {
            (true, true) => Certainty::Certain,
            (true, false) => Certainty::Probable,
            (false, _) => Certainty::Possible,
        }
    }

    /// The words left over, as the cell writes them.
    pub fn left_over<'t>(&self, text: &'t str) -> Vec<&'t str> {
        let left = self.left.iter().filter_map(|span| text.get(span.clone()));
        left.collect()
    }

    /// The same reading of something made from it.
    pub fn map<U>(self, make: impl FnOnce(T) -> U) -> Reading<U> {
        Reading {
            is: make(self.is),
            read: self.read,
            left: self.left,
            doubts: self.doubts,
        }
    }
}

/// What is doubtful in a reading.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Doubt {
    /// Two dates with no word that tells them apart: `1925, 1930`.
    DatesWithoutWords,
    /// A hyphen and a number that is a month or the end of a span: `1905-07`.
    MonthOrSpan,
    /// A day and a month whose order is not told: `5/6/1925`. Both are kept.
    DayOrMonth,
    /// The span ends in the next century: `1898–02`.
    NextCentury,
    /// "early", "mid", "late" were read by a convention of ours.
    PartByConvention,
    /// The year of an era and the year beside it are not the same.
    ErasContradict,
    /// A year of an era that did not have so many, or a month of the calendar before 1873.
    EraOutOfRange,
    /// The date stands in brackets: somebody other than the maker supplied it.
    DateSupplied,
    /// No unit is written.
    UnitUnsaid,
    /// It is not written what was measured.
    MeasuredUnsaid,
    /// The sizes in two units are not the same.
    UnitsContradict,
    /// The width was written before the height.
    WidthFirst,
    /// A separator of thousands or of decimals: `1.200 mm`.
    ThousandsOrDecimals,
    /// A length that no print reaches, or none.
    LengthImpossible,
    /// A short form that may mean several papers, such as `Bütten`.
    ShortForm,
    /// It is called a photograph, which is no print from a matrix.
    Photograph,
    /// The words say that the sheet is not owned but kept.
    KeptNotOwned,
    /// The number is above the size of the edition.
    AboveEdition,
    /// Whose work it is was said with reserve: "attributed to", "circle of".
    AttributedWithReserve,
    /// It is called a copy, which is another print than the one that it copies.
    Copy,
    /// A role was given to several people, which may be one name: `X and Y`.
    OneNameOrSeveral,
    /// The state is above the number of states.
    AboveStates,
    /// More text than a cell of records has; the rest was not read.
    TooLong,
}

impl Doubt {
    /// The doubt in one phrase.
    #[must_use]
    pub fn message(&self) -> &'static str {
        match self {
            Doubt::DatesWithoutWords => "several dates, and no word says what each is of",
            Doubt::MonthOrSpan => "the number after the hyphen is a month or the end of a span",
            Doubt::DayOrMonth => "day and month may be the other way round; both are kept",
            Doubt::NextCentury => "the span was taken to end in the next century",
            Doubt::PartByConvention => {
                "\"early\", \"mid\" or \"late\" was read as a third of the time, by convention"
            }
            Doubt::ErasContradict => "the year of the era and the year beside it differ",
            Doubt::EraOutOfRange => "the era has no such year, or the month is of the old calendar",
            Doubt::DateSupplied => "the date stands in brackets, so it was supplied",
            Doubt::UnitUnsaid => "no unit is written",
            Doubt::MeasuredUnsaid => "it is not written what was measured",
            Doubt::UnitsContradict => "the sizes in two units differ",
            Doubt::WidthFirst => "the width is written before the height",
            Doubt::ThousandsOrDecimals => "the separator is of thousands or of decimals",
            Doubt::LengthImpossible => "a length is not one of a print",
            Doubt::ShortForm => "the short form may mean several papers",
            Doubt::Photograph => "it is called a photograph, which is no print from a matrix",
            Doubt::KeptNotOwned => "the sheet is kept here and owned elsewhere",
            Doubt::AboveEdition => "the number is above the size of the edition",
            Doubt::AttributedWithReserve => "whose work it is, is said with reserve",
            Doubt::Copy => {
                "it is called a copy, which is another print than the one that it copies"
            }
            Doubt::OneNameOrSeveral => "two names may be one, of a firm or a couple",
            Doubt::AboveStates => "the state is above the number of states",
            Doubt::TooLong => "the text is longer than is read; its end was left over",
        }
    }
}

impl fmt::Display for Doubt {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.message())
    }
}

/// The longest cell that grammars read, in bytes. A longer one is left over whole: no cell of a listing that is a date,
/// a size or a credit line comes near it.
pub const LONGEST_CELL: usize = 4_000;

/// What was read of a text, piece by piece, while a grammar goes over it.
#[derive(Debug)]
pub struct Progress {
    is_read: Vec<bool>,
    doubts: Vec<Doubt>,
}

impl Progress {
    /// Nothing of the words read yet.
    #[must_use]
    pub fn of(words: &Words<'_>) -> Progress {
        Progress {
            is_read: vec![false; words.len()],
            doubts: Vec::new(),
        }
    }

    /// Takes the pieces from `start` up to, not including, `end` as read.
    pub fn read(&mut self, start: usize, end: usize) {
        let end = end.min(self.is_read.len());
        if let Some(pieces) = self.is_read.get_mut(start..end) {
            pieces.fill(true);
        }
    }

    /// Whether a piece was read.
    #[must_use]
    pub fn is_read(&self, index: usize) -> bool {
        self.is_read.get(index).copied().unwrap_or(false)
    }

    /// Adds a doubt, once.
    pub fn doubt(&mut self, doubt: Doubt) {
        if !self.doubts.contains(&doubt) {
            self.doubts.push(doubt);
        }
    }

    /// The reading. A separator between words counts as read unless it stands between words left over.
    #[must_use]
    pub fn finish<T>(mut self, words: &Words<'_>, is: T) -> Reading<T> {
        self.settle_separators(words);
        let (mut read, mut left): (Vec<Span>, Vec<Span>) = (Vec::new(), Vec::new());
        let mut last = None;
        for (piece, is_read) in words.pieces().iter().zip(&self.is_read) {
            let spans = if *is_read { &mut read } else { &mut left };
            match spans.last_mut() {
                Some(span) if last == Some(*is_read) => span.end = piece.span.end,
                _ => spans.push(piece.span.clone()),
            }
            last = Some(*is_read);
        }
        self.doubts.sort();
        Reading {
            is,
            read,
            left,
            doubts: self.doubts,
        }
    }

    fn settle_separators(&mut self, words: &Words<'_>) {
        const SEPARATORS: [&str; 19] = [
            ",", ";", ".", ":", "(", ")", "[", "]", "/", "、", "。", "・", "&", "+", "=", "|",
            "\"", "「", "」",
        ];
        let is_separator = |index: usize| {
            let piece = &words.pieces()[index];
            piece.kind == PieceKind::Mark && SEPARATORS.contains(&piece.folded.as_str())
        };
        let before: Vec<bool> = self.is_read.clone();
        for index in 0..words.len() {
            if before[index] || !is_separator(index) {
                continue;
            }
            let earlier = (0..index).rev().find(|i| !is_separator(*i));
            let later = (index + 1..words.len()).find(|i| !is_separator(*i));
            let is_left = |i: Option<usize>| i.map(|i| !before[i]);
            self.is_read[index] = match (is_left(earlier), is_left(later)) {
                (Some(a), Some(b)) => !(a && b),
                (Some(one), None) | (None, Some(one)) => !one,
                (None, None) => false,
            };
        }
    }
}

/// Reads a text with a grammar; one that is too long is left over whole.
pub fn bounded<T: Default>(
    text: &str,
    grammar: impl FnOnce(&Words<'_>, &mut Progress) -> T,
) -> Reading<T> {
    if text.len() > LONGEST_CELL {
        let trimmed = text.trim();
        let start = text.len() - text.trim_start().len();
        let whole = start..start + trimmed.len();
        return Reading {
            is: T::default(),
            read: Vec::new(),
            left: vec![whole],
            doubts: vec![Doubt::TooLong],
        };
    }
    let words = Words::of(text);
    let mut progress = Progress::of(&words);
    let is = grammar(&words, &mut progress);
    progress.finish(&words, is)
}
