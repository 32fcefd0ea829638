//! Credit lines: how a sheet was acquired, from whom, through whom and when.
//!
//! In: a line such as "Presented by the artist's widow through the Friends of the Museum, 1970", and the terms of the
//! vocabulary of transfers. Out: the key of the transfer, the names as written, the year. The line itself is the
//! holder's and is kept exactly; this is only what it says.

use std::sync::LazyLock;

use super::lexicon::Lexicon;
use super::outcome::{Doubt, Progress, Reading, bounded};
use super::phrases::Phrases;
use super::words::{PieceKind, Words};
use crate::model::key::Key;
use crate::model::vocabulary::List;

/// What a credit line says.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Credit {
    /// How it was acquired.
    pub how: Option<Key>,
    /// From whom.
    pub from: Option<String>,
    /// Through whom, or with whose help.
    pub through: Option<String>,
    /// The year.
    pub year: Option<u32>,
    /// Whether several owners acquired it together.
    pub is_joint: bool,
}

/// Words for how, with the key of the built-in vocabulary that they mean. A key that the vocabularies of a catalogue
/// lack is not given.
static WAYS: LazyLock<Phrases<&str>> = LazyLock::new(|| {
    Phrases::of(&[
        (
            "gift",
            "presented|given|gift|gifts|donated|donation|anonymous gift|partial gift|geschenk|schenkung|geschenkt|\
             zuwendung|stiftung|gestiftet|don|donation|donné|offert|schenking|geschonken|gift|寄贈",
        ),
        (
            "bequest",
            "bequeathed|bequest|vermächtnis|legat|nachlass|legs|légué|legaat|nalatenschap|遺贈",
        ),
        (
            "purchase",
            "purchased|purchase|bought|acquired by purchase|purchased at auction|acquired at auction|museum purchase|ankauf|angekauft|gekauft|kauf|achat|acheté|acquis en vente publique|acheté en vente publique|ersteigert|\
             acquis par achat|aankoop|aangekocht|gekocht|購入",
        ),
        (
            "transfer",
            "transferred|transfer|überweisung|überwiesen|übertragen|versement|versé|transfert|attribution|attribué|\
             overdracht|overgedragen|管理換",
        ),
        (
            "exchange",
            "exchanged|exchange|by exchange|tausch|getauscht|échange|échangé|ruil|geruild|交換",
        ),
        (
            "legal-deposit",
            "copyright deposit|legal deposit|pflichtexemplar|dépôt légal|wettelijk depot|納本",
        ),
        (
            "loan",
            "lent|on loan|long-term loan|long term loan|loan|permanent loan|leihgabe|dauerleihgabe|prêt|prêté|bruikleen|\
             in bruikleen|langdurig bruikleen|寄託",
        ),
        (
            "deposit",
            "deposited|deposit|on deposit|depositum|dépôt|en dépôt|depot",
        ),
        (
            "commission",
            "commissioned|commission|auftrag|commande|commandé|opdracht",
        ),
        ("restitution", "restituted|restitution|restituiert|restitué"),
        (
            "find",
            "found in the collection|found in collection|im bestand gefunden|alter bestand|ancien fonds|oud bezit",
        ),
        (
            "unknown",
            "accepted in lieu of tax|accepted by|accepted|acquired|acquisition|erworben|erwerbung|acquis|acquisition|\
             dation|verworven|verwerving|source unknown|source unrecorded|herkunft unbekannt|provenance inconnue|\
             herkomst onbekend|取得",
        ),
    ])
});

/// What the words before a name say of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Lead {
    From,
    Through,
    /// Something else that stays left over: "in memory of".
    Other,
    Joint,
}

static LEADS: LazyLock<Phrases<Lead>> = LazyLock::new(|| {
    Phrases::of(&[
        (
            Lead::From,
            "by|of|from|with|with the|von|vom|von der|des|der|aus|aus dem|aus der|aus der sammlung|mit|de|du|des|de la|\
             par|par le|par la|van|van de|van het|uit|door|より|から",
        ),
        (
            Lead::Through,
            "through|through the|via|with the assistance of|with assistance from|with help from|with the help of|\
             with funds from|with funds provided by|with a contribution from|with the support of|from funds given by|\
             durch|durch vermittlung von|vermittelt durch|mit mitteln|mit mitteln von|mit mitteln der|\
             mit mitteln des|mit unterstützung|mit unterstützung von|mit unterstützung der|mit hilfe von|\
             par l'intermédiaire de|par l'entremise de|grâce à|avec le concours de|avec l'aide de|avec le soutien de|\
             door bemiddeling van|met steun van|met hulp van|dankzij",
        ),
        (
            Lead::Other,
            "in memory of|in honour of|in honor of|to mark|on the occasion of|as part of|zum andenken an|zur erinnerung an|\
             in erinnerung an|anlässlich|aus anlass|en mémoire de|en souvenir de|à l'occasion de|\
             ter nagedachtenis aan|ter gelegenheid van|in lieu of",
        ),
        (
            Lead::Joint,
            "jointly|jointly with|gemeinsam mit|conjointement|conjointement avec|gezamenlijk met",
        ),
    ])
});

/// The way in which several holders acquire together: nobody from whom need be named.
const JOINT: &str = "joint-purchase";

/// Reads a credit line.
#[must_use]
pub fn credit(text: &str, lexicon: &Lexicon) -> Reading<Credit> {
    bounded(text, |words, progress| read(words, progress, lexicon))
}

fn read(words: &Words<'_>, progress: &mut Progress, lexicon: &Lexicon) -> Credit {
    let mut credit = Credit::default();
    let last_year = year_at_the_end(words);
    let year_at = last_year.map(|(at, _, _)| at);
    if let Some((start, year, end)) = last_year {
        credit.year = Some(year);
        progress.read(start, end);
    }
    let mut at = 0;
    let mut is_way_read = false;
    while at < words.len() {
        if Some(at) == year_at {
            at += 1;
            continue;
        }
        if !is_way_read && let Some((key, end)) = way(words, at, lexicon) {
            is_way_read = true;
            if key
                .as_ref()
                .is_some_and(|k| ["loan", "deposit"].contains(&k.as_str()))
            {
                progress.doubt(Doubt::KeptNotOwned);
            }
            credit.is_joint |= key.as_ref().is_some_and(|key| key.as_str() == JOINT);
            progress.read(at, end);
            credit.how = key;
            at = end;
            // "Gift: A. Brook", "Schenkung A. Brook, 1970": a name may follow with no word before it.
            let start = past_marks(words, at);
            if !credit.is_joint
                && LEADS.at(words, start).is_none()
                && WAYS.at(words, start).is_none()
            {
                at = name(words, progress, start, &mut credit.from, year_at);
            }
        } else if let Some(lead) = LEADS.at(words, at) {
            let end = lead.end;
            match lead.is {
                Lead::Joint => {
                    credit.is_joint = true;
                    progress.read(at, end);
                    at = end;
                }
                Lead::From if is_way_read && credit.from.is_none() => {
                    progress.read(at, end);
                    at = name(words, progress, end, &mut credit.from, year_at);
                }
                Lead::Through if is_way_read && credit.through.is_none() => {
                    progress.read(at, end);
                    at = name(words, progress, end, &mut credit.through, year_at);
                }
                Lead::From | Lead::Through | Lead::Other => at = end,
            }
        } else {
            at += 1;
        }
    }
    if !is_way_read && let Some((start, _, end)) = last_year {
        // A number at the end of a line that says nothing else may be part of a name or number.
        let is_alone = start == 0 && end == words.len();
        if !is_alone && !words.is_mark(start.wrapping_sub(1), &[","]) {
            credit.year = None;
        }
    }
    credit
}

/// The key of the transfer that begins at a piece, where the vocabulary has it, and the piece after its words.
fn way(words: &Words<'_>, index: usize, lexicon: &Lexicon) -> Option<(Option<Key>, usize)> {
    let own = WAYS.at(words, index);
    let term = lexicon.at(List::Transfers, words, index);
    match (own, term) {
        (Some(own), term) if term.as_ref().is_none_or(|term| term.end <= own.end) => {
            Some((lexicon.key(List::Transfers, own.is), own.end))
        }
        (_, Some(term)) => Some((Some(term.is.key), term.end)),
        _ => None,
    }
}

fn past_marks(words: &Words<'_>, index: usize) -> usize {
    let mut at = index;
    while words.is_mark(at, &[":", ",", ";", "(", "-", "–"]) {
        at += 1;
    }
    at
}

/// Reads a name: all up to the year, a bracket, a semicolon, or words that lead to something else.
fn name(
    words: &Words<'_>,
    progress: &mut Progress,
    start: usize,
    into: &mut Option<String>,
    year_at: Option<usize>,
) -> usize {
    let ends = |at: usize| {
        Some(at) == year_at
            || words.is_mark(at, &[";", "(", "[", ")", "]"])
            || LEADS
                .at(words, at)
                .is_some_and(|lead| lead.is != Lead::From)
            // `A. Brook, by exchange`: another way.
            || (words.is_mark(at.wrapping_sub(1), &[","]) && WAYS.at(words, at).is_some())
    };
    let mut end = start;
    while end < words.len() && !ends(end) {
        end += 1;
    }
    let next = end;
    while end > start && words.is_mark(end - 1, &[",", ".", ":", "-", "–"]) {
        // The stop of "Co." or "A." belongs to the name.
        if words.is_close_mark(end - 1, &["."]) && is_abbreviation(words, end - 1) {
            break;
        }
        end -= 1;
    }
    if end > start {
        *into = Some(words.between(start, end).to_owned());
        progress.read(start, end);
    }
    next.max(start)
}

fn is_abbreviation(words: &Words<'_>, stop: usize) -> bool {
    let before = stop.checked_sub(1).and_then(|at| words.at(at));
    before.is_some_and(|piece| piece.kind == PieceKind::Word && piece.folded.chars().count() <= 3)
}

/// The year with which a line ends, or that stands behind a comma or in brackets: its first piece, itself, and the piece
/// after it.
fn year_at_the_end(words: &Words<'_>) -> Option<(usize, u32, usize)> {
    let is_year = |at: usize| {
        let figures = words.figures(at)?;
        let year = words.number(at)?;
        let is_part = words.is_close_mark(at + 1, &[".", "/", "-", ":"])
            && words.is_close(at + 2)
            && words.figures(at + 2).is_some()
            || at > 0
                && words.is_close(at)
                && words.is_mark(at - 1, &[".", "/", "-", ":"])
                && at > 1
                && words.is_close(at - 1)
                && words.figures(at - 2).is_some();
        (figures.len() == 4 && (1400..=2099).contains(&year) && !is_part).then_some(year)
    };
    let at = (0..words.len()).rev().find(|at| is_year(*at).is_some())?;
    let year = is_year(at)?;
    let ends =
        (at + 1..words.len()).all(|rest| words.at(rest).is_some_and(|p| p.kind == PieceKind::Mark));
    let is_apart = at > 0 && words.is_mark(at - 1, &[",", "(", "[", ";"])
        || words
            .word(at.wrapping_sub(1))
            .is_some_and(|w| ["in", "im", "en"].contains(&w))
        || at == 0;
    // A small word before it belongs to it: "in 1970".
    let start = if words
        .word(at.wrapping_sub(1))
        .is_some_and(|w| ["in", "im", "en"].contains(&w))
    {
        at - 1
    } else {
        at
    };
    let end = if words.word(at + 1) == Some("年") {
        at + 2
    } else {
        at + 1
    };
    (ends || is_apart || end > at + 1).then_some((start, year, end))
}

#[cfg(test)]
mod tests {
    use std::fmt::Write as _;

    use super::super::lexicon::samples::lexicon;
    use super::*;

    fn said(text: &str) -> String {
        let credit = credit(text, &lexicon()).is;
        let how = credit.how.as_ref().map_or("-", Key::as_str);
        let mut line = how.to_owned();
        for (word, name) in [("from", &credit.from), ("through", &credit.through)] {
            if let Some(name) = name {
                write!(line, " {word} {name}").unwrap();
            }
        }
        if let Some(year) = credit.year {
            write!(line, " in {year}").unwrap();
        }
        if credit.is_joint {
            line.push_str(" jointly");
        }
        line
    }

    /// Verbs, donors, through whom, and years, as the credit lines of one museum have them, with invented names; words of
    /// other languages from memory.
    #[test]
    fn credit_lines_are_read_whole() {
        for (text, reading) in [
            ("Purchased 1982", "purchase in 1982"),
            ("Presented by Ada Brook 1975", "gift from Ada Brook in 1975"),
            (
                "Presented by Ada Brook, 1975",
                "gift from Ada Brook in 1975",
            ),
            (
                "Gift of Mr. and Mrs. A. B. Mill, 1970",
                "gift from Mr. and Mrs. A. B. Mill in 1970",
            ),
            (
                "Bequeathed by Ada Brook 1970",
                "bequest from Ada Brook in 1970",
            ),
            (
                "Transferred from the Library 1973",
                "transfer from the Library in 1973",
            ),
            (
                "Presented by Ada Brook through the Friends of the Harbour Museum 1975",
                "gift from Ada Brook through Friends of the Harbour Museum in 1975",
            ),
            (
                "Purchased with assistance from the Lock Fund 1990",
                "purchase through the Lock Fund in 1990",
            ),
            (
                "Schenkung von Ada Brook, 1970",
                "gift from Ada Brook in 1970",
            ),
            ("Geschenk Ada Brook 1970", "gift from Ada Brook in 1970"),
            (
                "Vermächtnis Ada Brook, 1970",
                "bequest from Ada Brook in 1970",
            ),
            ("Ankauf 1970", "purchase in 1970"),
            (
                "Ankauf aus der Sammlung Mill, 1970",
                "purchase from Mill in 1970",
            ),
            ("Erworben 1970", "unknown in 1970"),
            ("Don de Ada Brook, 1970", "gift from Ada Brook in 1970"),
            ("Legs Ada Brook, 1970", "bequest from Ada Brook in 1970"),
            ("Achat, 1970", "purchase in 1970"),
            (
                "Schenking van Ada Brook, 1970",
                "gift from Ada Brook in 1970",
            ),
            ("Legaat Ada Brook 1970", "bequest from Ada Brook in 1970"),
            ("Aankoop 1970", "purchase in 1970"),
            ("Bruikleen van Ada Brook", "loan from Ada Brook"),
            (
                "Dauerleihgabe der Brook-Stiftung",
                "loan from Brook-Stiftung",
            ),
            ("Gift of the artist", "gift from the artist"),
            ("By exchange, 1970", "exchange in 1970"),
            ("Legal deposit", "legal-deposit"),
        ] {
            assert_eq!(said(text), reading, "{text}");
            let reading = credit(text, &lexicon());
            assert_eq!(reading.left_over(text), [""; 0], "{text}");
        }
    }

    #[test]
    fn a_joint_acquisition_is_told() {
        let text = "Acquired jointly with the Mill Museum through Ada Brook 2008";
        let reading = credit(text, &lexicon());
        assert!(reading.is.is_joint);
        assert_eq!(reading.is.year, Some(2008));
        assert_eq!(reading.is.through.as_deref(), Some("Ada Brook"));
    }

    #[test]
    fn what_is_neither_a_donor_nor_a_year_is_left_over() {
        for (text, reading, leftover) in [
            (
                "Gift of A. Brook in memory of C. Mill, 1970",
                "gift from A. Brook in 1970",
                "in memory of C. Mill",
            ),
            ("Ada Brook Collection", "-", "Ada Brook Collection"),
            ("Inv. 1970.12", "-", "Inv. 1970.12"),
        ] {
            assert_eq!(said(text), reading, "{text}");
            let reading = credit(text, &lexicon());
            assert_eq!(reading.left_over(text).join(" | "), leftover, "{text}");
        }
    }

    #[test]
    fn a_loan_is_kept_and_not_owned() {
        let reading = credit("Leihgabe von Ada Brook", &lexicon());
        assert_eq!(reading.doubts, [Doubt::KeptNotOwned]);
    }
}
