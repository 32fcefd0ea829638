//! The words and abbreviations for kinds of impressions: `A.P.`, "épreuve d'artiste", "Probedruck".
//!
//! In: a place of a text, and the vocabulary of kinds. Out: the key of the kind. Labels and synonyms of the vocabulary
//! come first; here stand the abbreviations of the trade and the words of other languages.

use std::sync::LazyLock;

use super::lexicon::Lexicon;
use super::phrases::{Found, Phrases};
use super::words::Words;
use crate::model::key::Key;
use crate::model::vocabulary::List;

/// Words with the key of the built-in vocabulary that they mean (docs/trade.md, "Kinds of impression"; abbreviations from memory).
static WORDS: LazyLock<Phrases<&str>> = LazyLock::new(|| {
    Phrases::of(&[
        (
            "artists-proof",
            "a.p.|ap|e.a.|ea|p.a.|artist's proof|artists proof|artist proof|épreuve d'artiste|épreuves d'artiste|ép. d'artiste|épr. d'artiste|\
             künstlerexemplar|künstlerabzug|kunstenaarsexemplaar|prova d'artista",
        ),
        (
            "trial-proof",
            "t.p.|tp|trial proof|épreuve d'essai|probeabzug|proefdruk|試摺|試し摺り|試刷",
        ),
        ("proof", "proof|probedruck|épreuve|proefafdruk|校合摺"),
        (
            "working-proof",
            "w.p.|working proof|épreuve de travail|arbeitsabzug|werkdruk",
        ),
        (
            "state-proof",
            "s.p.|state proof|épreuve d'état|zustandsdruck|zustandsabzug|staatdruk",
        ),
        (
            "colour-trial",
            "c.t.p.|colour trial|color trial|colour trial proof|color trial proof|farbprobe|essai de couleur|kleurproef",
        ),
        (
            "progressive-proof",
            "progressive proof|skalendruck|épreuve de décomposition",
        ),
        (
            "touched-proof",
            "touched proof|retouched proof|überarbeiteter probedruck|épreuve retouchée",
        ),
        (
            "counterproof",
            "counterproof|counter proof|gegendruck|contre-épreuve|contre épreuve|tegendruk",
        ),
        ("maculature", "maculature|makulatur|macule"),
        (
            "bon-a-tirer",
            "b.a.t.|bat|bon à tirer|gut zum druck|right to print|r.t.p.|rtp",
        ),
        (
            "printers-proof",
            "p.p.|pp|printer's proof|printers proof|druckerexemplar|épreuve d'imprimeur|drukkersexemplaar",
        ),
        (
            "hors-commerce",
            "h.c.|hc|hors commerce|nicht im handel|niet in de handel",
        ),
        (
            "presentation-proof",
            "presentation proof|presentation copy|widmungsexemplar|exemplaire de présentation",
        ),
        (
            "before-letters",
            "proof before letters|before letters|before all letters|avant la lettre|avant toute lettre|druck vor der schrift|vor der schrift|vor aller schrift|voor de letter",
        ),
        (
            "unfinished",
            "unfinished proof|unfinished impression|unvollendeter abzug",
        ),
        ("cancellation-proof", "cancellation proof|entwertungsdruck"),
        (
            "cancelled",
            "from the cancelled plate|from the canceled plate|from the cancelled block|von der entwerteten platte|de la planche rayée|planche rayée",
        ),
        ("fragment", "fragment|fragmentarisch"),
    ])
});

/// The kind of impression that begins at a piece; `None` too where the vocabularies have no such kind.
#[must_use]
pub fn kind(words: &Words<'_>, index: usize, lexicon: &Lexicon) -> Option<Found<Key>> {
    let term = lexicon.at(List::Kinds, words, index);
    let own = WORDS.inflected_at(words, index).and_then(|own| {
        let key = lexicon.key(List::Kinds, own.is)?;
        Some(Found {
            is: key,
            end: own.end,
        })
    });
    match (term, own) {
        (Some(term), own) if own.as_ref().is_none_or(|own| own.end <= term.end) => Some(Found {
            is: term.is.key,
            end: term.end,
        }),
        (_, own) => own,
    }
}
