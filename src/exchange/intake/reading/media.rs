//! Media: techniques, papers, colours and blocks.
//!
//! In: a cell such as "Etching and aquatint on japan paper" or "Farbholzschnitt von 5 Stöcken", and the terms of the
//! vocabularies; their labels and synonyms are the only words for techniques and papers that are known here. Out: their
//! keys, in the order of the text. The first paper is the one that was printed on, further ones are what it is laid on.

use std::sync::LazyLock;

use super::lexicon::Lexicon;
use super::numerals::in_words;
use super::outcome::{Doubt, Progress, Reading, bounded};
use super::phrases::Phrases;
use super::words::{DASHES, PieceKind, Words};
use crate::model::key::Key;
use crate::model::vocabulary::List;

/// What a cell says of how and on what a sheet was printed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Medium {
    /// The techniques, each once.
    pub techniques: Vec<Key>,
    /// The papers, the one printed on first.
    pub papers: Vec<Key>,
    /// How many colours it is printed in.
    pub colours: Option<u32>,
    /// How many blocks, plates, stones or screens it is printed from.
    pub matrices: Option<u32>,
    /// Whether it is said to be in colour, with no number.
    pub is_in_colour: bool,
    /// Whether it is called a photograph.
    pub is_photograph: bool,
    /// Whether it is only called a print.
    pub is_print: bool,
}

/// Small words of a cell.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Small {
    /// "On", before a paper.
    On,
    /// "Laid on", before a further paper.
    LaidOn,
    /// "And", "with", "printed".
    Joint,
    /// "In colour".
    Colour,
    /// "Colours", behind a number.
    Colours,
    /// "Blocks", behind a number.
    Matrices,
    /// "Photograph".
    Photograph,
    /// "Print".
    Print,
}

static SMALL: LazyLock<Phrases<Small>> = LazyLock::new(|| {
    Phrases::of(&[
        (Small::On, "on|on to|onto|auf|sur|op|紙本|に"),
        (
            Small::LaidOn,
            "laid on|laid down on|mounted on|mounted onto|backed with|aufgezogen auf|aufgelegt auf|kaschiert auf|\
             contrecollé sur|doublé sur|marouflé sur|opgezet op|opgeplakt op",
        ),
        (
            Small::Joint,
            "and|with|printed|printed in|printed from|in|from|over|und|mit|gedruckt|in|von|über|et|avec|en|de|à|\
             imprimé|imprimée|en|met|gedrukt|van|と",
        ),
        (
            Small::Colour,
            "in colour|in color|colour|color|in colours|in colors|farbig|in farben|mehrfarbig|en couleur|en couleurs|\
             couleur|in kleur|in kleuren|kleur|多色",
        ),
        (
            Small::Colours,
            "colours|colors|colour|color|farben|farbig|couleurs|kleuren|色",
        ),
        (
            Small::Matrices,
            "blocks|block|woodblocks|plates|plate|stones|stone|screens|screen|stöcken|stöcke|stock|holzstöcken|platten|\
             platte|steinen|steine|stein|sieben|siebe|bois|planches|planche|pierres|pierre|blokken|platen|stenen|版",
        ),
        (
            Small::Photograph,
            "photograph|photographs|photo|fotografie|photographie|foto|写真",
        ),
        (
            Small::Print,
            "print|prints|druckgrafik|druckgraphik|grafik|graphik|estampe|gravure|prent|版画",
        ),
    ])
});

/// Reads a cell of media.
#[must_use]
pub fn medium(text: &str, lexicon: &Lexicon) -> Reading<Medium> {
    bounded(text, |words, progress| read(words, progress, lexicon))
}

/// The techniques of photographs, which are no prints from a matrix.
const PHOTOGRAPHS: [&str; 4] = [
    "photograph",
    "gelatin-silver-print",
    "albumen-print",
    "chromogenic-print",
];

fn read(words: &Words<'_>, progress: &mut Progress, lexicon: &Lexicon) -> Medium {
    let mut medium = Medium::default();
    // Small words that wait for what they belong to.
    let mut waiting: Vec<(usize, usize)> = Vec::new();
    let mut is_after_on = false;
    let mut at = 0;
    while at < words.len() {
        let technique = lexicon.at(List::Techniques, words, at);
        let paper = lexicon.at(List::Papers, words, at);
        let small = SMALL.at(words, at);
        let technique_end = technique.as_ref().map_or(at, |found| found.end);
        let paper_end = paper.as_ref().map_or(at, |found| found.end);
        let small_end = small.map_or(at, |found| found.end);
        if let Some((number, unit, end)) = counted(words, at)
            && end > technique_end.max(paper_end)
        {
            match unit {
                Small::Matrices => medium.matrices = Some(number),
                _ => medium.colours = Some(number),
            }
            take(progress, &mut waiting, at, end);
            is_after_on = false;
            at = end;
        } else if let Some(found) = paper.filter(|found| {
            // A short form, "Bütten", is only a paper where "on" stands before it.
            found.end >= technique_end && (!found.is.is_short || is_after_on)
        }) {
            if found.is.is_short {
                progress.doubt(Doubt::ShortForm);
            }
            if !medium.papers.contains(&found.is.key) || is_after_on {
                medium.papers.push(found.is.key);
            }
            take(progress, &mut waiting, at, found.end);
            is_after_on = false;
            at = found.end;
        } else if let Some(found) = technique.filter(|found| found.end >= small_end) {
            if PHOTOGRAPHS.contains(&found.is.key.as_str()) && !medium.is_photograph {
                medium.is_photograph = true;
                progress.doubt(Doubt::Photograph);
            }
            if !medium.techniques.contains(&found.is.key) {
                medium.techniques.push(found.is.key);
            }
            take(progress, &mut waiting, at, found.end);
            is_after_on = false;
            at = found.end;
        } else if let Some(found) = small {
            match found.is {
                Small::On | Small::LaidOn => {
                    is_after_on = true;
                    waiting.push((at, found.end));
                }
                Small::Joint => waiting.push((at, found.end)),
                Small::Colour | Small::Colours => {
                    medium.is_in_colour = true;
                    take(progress, &mut waiting, at, found.end);
                }
                Small::Photograph => {
                    medium.is_photograph = true;
                    progress.doubt(Doubt::Photograph);
                    take(progress, &mut waiting, at, found.end);
                }
                Small::Print => {
                    medium.is_print = true;
                    take(progress, &mut waiting, at, found.end);
                }
                Small::Matrices => waiting.clear(),
            }
            at = found.end;
        } else {
            if words.at(at).is_some_and(|p| p.kind != PieceKind::Mark) {
                waiting.clear();
            }
            at += 1;
        }
    }
    medium
}

fn take(progress: &mut Progress, waiting: &mut Vec<(usize, usize)>, start: usize, end: usize) {
    for (start, end) in waiting.drain(..) {
        progress.read(start, end);
    }
    progress.read(start, end);
}

/// `5 blocks`, `five colours`, `5-colour`: a number with what it counts, and the piece after it.
fn counted(words: &Words<'_>, index: usize) -> Option<(u32, Small, usize)> {
    let number = words
        .number(index)
        .or_else(|| words.word(index).and_then(in_words))
        .filter(|number| (1..=200).contains(number))?;
    let at = if words.is_mark(index + 1, &DASHES) {
        index + 2
    } else {
        index + 1
    };
    let unit = SMALL.at(words, at)?;
    match unit.is {
        Small::Matrices => Some((number, Small::Matrices, unit.end)),
        Small::Colours | Small::Colour => Some((number, Small::Colours, unit.end)),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use std::fmt::Write as _;

    use super::super::lexicon::samples::lexicon;
    use super::*;

    fn said(text: &str) -> String {
        let medium = medium(text, &lexicon()).is;
        let keys = |keys: &[Key]| {
            let keys: Vec<&str> = keys.iter().map(Key::as_str).collect();
            keys.join("+")
        };
        let mut line = format!("{} / {}", keys(&medium.techniques), keys(&medium.papers));
        for (number, word) in [(medium.colours, "colours"), (medium.matrices, "blocks")] {
            if let Some(number) = number {
                write!(line, " / {number} {word}").unwrap();
            }
        }
        for (flag, word) in [
            (medium.is_in_colour, " / colour"),
            (medium.is_photograph, " / photograph"),
            (medium.is_print, " / print"),
        ] {
            if flag {
                line.push_str(word);
            }
        }
        line
    }

    /// Forms of one museum's `medium` and of other languages, with the terms that the built-in vocabularies have.
    #[test]
    fn media_are_read_whole() {
        for (text, reading) in [
            ("Screenprint on paper", "screenprint / paper"),
            ("Lithograph on paper", "lithograph / paper"),
            ("Etching on paper", "etching / paper"),
            ("Print on paper", " / paper / print"),
            ("Etching and aquatint on paper", "etching+aquatint / paper"),
            ("Wood engraving on paper", "wood-engraving / paper"),
            (
                "Etching, drypoint and aquatint on paper",
                "etching+drypoint+aquatint / paper",
            ),
            ("Etching on paper on paper", "etching / paper+paper"),
            (
                "Etching and aquatint on japan paper",
                "etching+aquatint / japan-paper",
            ),
            (
                "Colour woodcut from 5 blocks",
                "colour-woodcut /  / 5 blocks",
            ),
            (
                "Farbholzschnitt von fünf Stöcken",
                "colour-woodcut /  / 5 blocks",
            ),
            (
                "Colour woodcuts on laid paper",
                "colour-woodcut / laid-paper",
            ),
            ("Radierung auf Büttenpapier", "etching / handmade-paper"),
            ("Holzschnitt in 5 Farben", "woodcut /  / 5 colours"),
            ("woodcut in five colors", "woodcut /  / 5 colours"),
            ("5-colour lithograph", "lithograph /  / 5 colours"),
            ("Woodcut, printed in colours", "woodcut /  / colour"),
            ("Woodcut; hand-colouring", "woodcut+hand-colouring / "),
            ("Radierung und Aquatinta", "etching+aquatint / "),
            (
                "woodcut on japan paper laid on card",
                "woodcut / japan-paper+card",
            ),
            ("Photograph on paper", "photograph / paper / photograph"),
        ] {
            assert_eq!(said(text), reading, "{text}");
            let reading = medium(text, &lexicon());
            assert_eq!(reading.left_over(text), [""; 0], "{text}");
        }
    }

    #[test]
    fn a_short_form_is_a_paper_behind_on_and_doubtful() {
        assert_eq!(said("Radierung auf Bütten"), "etching / handmade-paper");
        let reading = medium("etching on japan", &lexicon());
        assert_eq!(reading.doubts, [Doubt::ShortForm]);
        assert_eq!(said("etching on japan"), "etching / japan-paper");
        assert_eq!(medium("etching, japan", &lexicon()).left.len(), 1);
    }

    /// A term that no vocabulary has is left over, and a synonym is found as soon as one has it.
    #[test]
    fn only_the_vocabularies_know_techniques() {
        let text = "Photograph, gelatin silver print on paper";
        let reading = medium(text, &lexicon());
        assert_eq!(reading.left_over(text), [""; 0]);
        assert!(reading.is.is_photograph);
        let text = "Meshprint on paper";
        let mut known = lexicon();
        assert_eq!(medium(text, &known).left_over(text), ["Meshprint"]);
        let key: Key = "screenprint".parse().unwrap();
        known.add(List::Techniques, &key, "meshprint");
        assert_eq!(
            medium(text, &known).is.techniques,
            std::slice::from_ref(&key)
        );
        let text = "Serigraph on paper";
        assert_eq!(medium(text, &lexicon()).is.techniques, [key]);
    }
}
