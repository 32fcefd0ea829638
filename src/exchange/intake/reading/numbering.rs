//! Numbering: the number of a sheet, the size of its edition, and which kind of proof it is.
//!
//! `12/50` is number 12 of 50; its order has no meaning (docs/trade.md, "Numbered editions"). Numbers are kept as
//! written, since roman and arabic numbers belong to different series of one edition.

use std::sync::LazyLock;

use super::kinds::kind;
use super::lexicon::Lexicon;
use super::numerals::kanji_or_figures;
use super::outcome::{Doubt, Progress, Reading, bounded};
use super::phrases::Phrases;
use super::words::Words;
use crate::model::key::Key;
use crate::study::numerals::from_roman;

/// What a cell says of the number of a sheet and its edition.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Numbering {
    /// The number of the sheet as written: `12`, `III`.
    pub number: Option<String>,
    /// The number behind the stroke as written: `50`, `X`.
    pub out_of: Option<String>,
    /// The declared size of the edition.
    pub edition: Option<u32>,
    /// How many proofs are said to exist beside the edition.
    pub proofs: Option<u32>,
    /// The kind of impression.
    pub kind: Option<Key>,
    /// Whether it is said to have no number.
    pub is_unnumbered: bool,
}

impl Numbering {
    /// The numbering as a record has it: `12/50`.
    #[must_use]
    pub fn as_recorded(&self) -> Option<String> {
        let number = self.number.as_ref()?;
        Some(match &self.out_of {
            Some(of) => format!("{number}/{of}"),
            None => number.clone(),
        })
    }
}

/// Small words of a cell.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Small {
    Unnumbered,
    Edition,
    Number,
    Copies,
    Of,
}

static SMALL: LazyLock<Phrases<Small>> = LazyLock::new(|| {
    Phrases::of(&[
        (
            Small::Unnumbered,
            "unnumbered|not numbered|no number|no numbering|unnummeriert|unnumeriert|nicht nummeriert|ohne nummer|\
             non numéroté|non numérotée|sans numéro|ongenummerd|niet genummerd|番号なし",
        ),
        (
            Small::Edition,
            "edition|ed.|edition of|ed. of|edition size|from an edition of|from the edition of|an edition of|the edition|\
             limited edition|limited edition of|auflage|aufl.|auflage von|aus einer auflage von|auflagenhöhe|\
             tirage|tirage à|tirage de|édition de|édition à|tiré à|oplage|oplage van|uit een oplage van|限定|限",
        ),
        (
            Small::Number,
            "no.|nr.|number|numbered|nummer|nummeriert|numeriert|n°|nº|numéro|numéroté|numérotée|genummerd|exemplar|ex.|№|第",
        ),
        (
            Small::Copies,
            "copies|impressions|prints|sheets|exemplare|exemplaren|expl.|exemplar|abzüge|abzügen|drucke|drucken|blatt|\
             exemplaires|épreuves|ex.|exemplaar|afdrukken|部|枚|番|plus|numbered|signed and numbered|signiert und nummeriert|\
             signed|in|je",
        ),
        (
            Small::Of,
            "of|out of|from|from a total of|von|aus|aus insgesamt|sur|de|van|uit",
        ),
    ])
});

/// Reads a cell of numbering.
#[must_use]
pub fn numbering(text: &str, lexicon: &Lexicon) -> Reading<Numbering> {
    bounded(text, |words, progress| {
        let found = read(words, progress, lexicon);
        let number = found.number.as_deref().and_then(value);
        let of = found.out_of.as_deref().and_then(value).or(found.edition);
        if let (Some(number), Some(of)) = (number, of)
            && number > of
        {
            progress.doubt(Doubt::AboveEdition);
        }
        found
    })
}

fn value(written: &str) -> Option<u32> {
    written
        .parse()
        .ok()
        .or_else(|| from_roman(&written.to_lowercase()))
}

fn read(words: &Words<'_>, progress: &mut Progress, lexicon: &Lexicon) -> Numbering {
    let mut found = Numbering::default();
    let mut waiting: Vec<(usize, usize)> = Vec::new();
    let mut is_edition_next = false;
    let mut is_number_next = false;
    let mut at = 0;
    while at < words.len() {
        let small = SMALL.at(words, at);
        if let Some(kind) =
            kind(words, at, lexicon).filter(|kind| small.is_none_or(|s| s.end < kind.end))
        {
            // `50 + 5 A.P.` has proofs beside the edition; it does not say that this sheet is one.
            if found.proofs.is_none() || found.number.is_some() {
                found.kind = Some(kind.is);
            }
            take(progress, &mut waiting, at, kind.end);
            at = kind.end;
        } else if let Some((number, of, end)) = fraction(words, at) {
            found.number.get_or_insert(number);
            found.out_of.get_or_insert(of);
            take(progress, &mut waiting, at, end);
            is_edition_next = false;
            is_number_next = false;
            at = end;
        } else if let Some(small) = small {
            match small.is {
                Small::Unnumbered => {
                    found.is_unnumbered = true;
                    take(progress, &mut waiting, at, small.end);
                }
                Small::Edition => {
                    is_edition_next = true;
                    waiting.push((at, small.end));
                }
                Small::Number => {
                    is_number_next = true;
                    waiting.push((at, small.end));
                }
                Small::Copies if found.edition.is_some() || found.number.is_some() => {
                    progress.read(at, small.end);
                }
                Small::Of if found.number.is_some() => {
                    is_edition_next = true;
                    waiting.push((at, small.end));
                }
                Small::Copies | Small::Of => {}
            }
            at = small.end;
        } else if words.is_mark(at, &["+"])
            && let Some((proofs, end)) = kanji_or_figures(words, at + 1)
            && found.edition.is_some()
            && kind(words, end, lexicon).is_some()
        {
            found.proofs = Some(proofs);
            let end_of_kind = kind(words, end, lexicon).map_or(end, |kind| kind.end);
            progress.read(at, end_of_kind);
            at = end_of_kind;
        } else if let Some((number, end)) = kanji_or_figures(words, at) {
            let is_of_copies = SMALL
                .at(words, end)
                .is_some_and(|small| small.is == Small::Copies);
            if is_edition_next || (is_of_copies && found.edition.is_none()) {
                found.edition.get_or_insert(number);
                if found.number.is_some() && found.out_of.is_none() {
                    found.out_of = Some(number.to_string());
                }
                is_edition_next = false;
                take(progress, &mut waiting, at, end);
            } else if is_number_next && found.number.is_none() {
                found.number = Some(words.between(at, end).to_owned());
                is_number_next = false;
                take(progress, &mut waiting, at, end);
            } else if found.number.is_none()
                && SMALL.at(words, end).is_some_and(|s| s.is == Small::Of)
            {
                // `12 of 50`
                found.number = Some(words.between(at, end).to_owned());
                take(progress, &mut waiting, at, end);
            }
            at = end;
        } else {
            at += 1;
        }
    }
    found
}

fn take(progress: &mut Progress, waiting: &mut Vec<(usize, usize)>, start: usize, end: usize) {
    for (start, end) in waiting.drain(..) {
        progress.read(start, end);
    }
    progress.read(start, end);
}

/// `12/50`, `III/X`: both numbers as written, and the piece after them.
fn fraction(words: &Words<'_>, index: usize) -> Option<(String, String, usize)> {
    let is_number = |at: usize| {
        words.number(at).is_some() || words.word(at).is_some_and(|w| from_roman(w).is_some())
    };
    let is_stroke = words.is_mark(index + 1, &["/", "⁄", "∕", "|"]);
    // Three numbers with strokes are a date.
    let is_more = words.is_close_mark(index + 3, &["/"]) && is_number(index + 4)
        || index > 1 && words.is_mark(index - 1, &["/"]) && is_number(index - 2);
    if !is_number(index) || !is_stroke || !is_number(index + 2) || is_more {
        return None;
    }
    let written = |at: usize| words.between(at, at + 1).to_owned();
    Some((written(index), written(index + 2), index + 3))
}

#[cfg(test)]
mod tests {
    use super::super::lexicon::samples::lexicon;
    use super::*;

    fn said(text: &str) -> String {
        let is = numbering(text, &lexicon()).is;
        let mut told = Vec::new();
        told.extend(is.as_recorded());
        told.extend(is.edition.map(|size| format!("ed. {size}")));
        told.extend(is.proofs.map(|size| format!("proofs {size}")));
        told.extend(is.kind.map(|key| key.to_string()));
        if is.is_unnumbered {
            told.push("unnumbered".to_owned());
        }
        told.join(", ")
    }

    #[test]
    fn numbering_is_read_whole() {
        for (text, reading) in [
            ("12/50", "12/50"),
            ("12 / 50", "12/50"),
            ("A.P. III/X", "III/X, artists-proof"),
            ("AP 3/10", "3/10, artists-proof"),
            ("e.a. 3/10", "3/10, artists-proof"),
            ("épreuve d'artiste III/X", "III/X, artists-proof"),
            ("12/50 (A.P.)", "12/50, artists-proof"),
            ("ed. 50", "ed. 50"),
            ("edition of 50", "ed. 50"),
            ("Aufl. 50", "ed. 50"),
            ("Auflage von 50 Exemplaren", "ed. 50"),
            ("Auflage: 50", "ed. 50"),
            ("tirage à 50 exemplaires", "ed. 50"),
            ("oplage van 50", "ed. 50"),
            ("限定50部", "ed. 50"),
            ("No. 12 of an edition of 50", "12/50, ed. 50"),
            ("Nr. 12 von 50", "12/50, ed. 50"),
            ("12 of 50", "12/50, ed. 50"),
            ("edition 50 + 5 AP", "ed. 50, proofs 5"),
            ("h.c.", "hors-commerce"),
            ("P.P.", "printers-proof"),
            ("B.A.T.", "bon-a-tirer"),
            ("bon à tirer", "bon-a-tirer"),
            ("trial proof", "trial-proof"),
            ("Probedruck", "proof"),
            ("unnumbered", "unnumbered"),
            ("unnummeriert", "unnumbered"),
            ("non numéroté", "unnumbered"),
            ("ongenummerd", "unnumbered"),
        ] {
            assert_eq!(said(text), reading, "{text}");
            let reading = numbering(text, &lexicon());
            assert_eq!(reading.left_over(text), [""; 0], "{text}");
        }
    }

    #[test]
    fn a_number_above_the_edition_is_doubtful_and_a_date_is_none() {
        assert_eq!(numbering("60/50", &lexicon()).doubts, [Doubt::AboveEdition]);
        assert_eq!(numbering("12/5/1925", &lexicon()).is, Numbering::default());
        let text = "12/50, blue ink";
        assert_eq!(numbering(text, &lexicon()).left_over(text), ["blue ink"]);
    }
}
