//! Makers: people with their roles.
//!
//! In: "Engraved by C. Mill after A. Brook; published by D. Lock", "Brook, Ada (engraver)", "gestochen von C. Mill", and
//! the vocabulary of roles. Out: the names as written, each with the key of its role; without a word for the role it is
//! the artist's.

use std::sync::LazyLock;

use super::lexicon::Lexicon;
use super::outcome::{Doubt, Progress, Reading, bounded};
use super::phrases::{Found, Phrases};
use super::words::{PieceKind, Span, Words};
use crate::model::key::Key;
use crate::model::vocabulary::List;

/// A person with a role, as a cell names them.
#[derive(Clone, Debug, PartialEq)]
pub struct NamedMaker {
    /// The name as written, without dates of life.
    pub name: String,
    /// The key of the role: of the built-in vocabulary, or the catalogue's own.
    pub role: Key,
    /// What is written in brackets behind the name: dates of life, mostly.
    pub note: Option<String>,
    /// Where the name stands in the cell.
    pub at: Span,
}

/// Words before a name.
static BEFORE: LazyLock<Phrases<&str>> = LazyLock::new(|| {
    Phrases::of(&[
        (
            "after",
            "after|after a design by|after a drawing by|after a painting by|nach|nach einem entwurf von|nach einer zeichnung von|d'après|d'apres|naar|naar een ontwerp van|naar een tekening van|原画",
        ),
        (
            "engraver",
            "engraved by|line-engraved by|gestochen von|kupferstich von|gravé par|gravée par|gegraveerd door|gestoken door",
        ),
        (
            "etcher",
            "etched by|radiert von|radierung von|eau-forte par|geëtst door",
        ),
        (
            "carver",
            "cut by|block cut by|blocks cut by|carved by|geschnitten von|taillé par|bois gravé par|gesneden door|彫師|彫",
        ),
        (
            "lithographer",
            "lithographed by|lithographiert von|lithografiert von|lithographié par|gelithografeerd door",
        ),
        (
            "printer",
            "printed by|printer|gedruckt von|drucker|druck von|imprimé par|imprimée par|imprimeur|tiré par|gedrukt door|drukker|摺師|摺",
        ),
        (
            "publisher",
            "published by|publisher|issued by|verlegt von|verleger|verlag|herausgegeben von|publié par|éditeur|édité par|chez|uitgegeven door|uitgever|版元|出版",
        ),
        (
            "designer",
            "designed by|drawn by|entworfen von|gezeichnet von|dessiné par|ontworpen door|getekend door",
        ),
        (
            "artist",
            "artist|by|von|künstler|künstlerin|artiste|par|kunstenaar|door|作者|絵師",
        ),
    ])
});

/// The role of those whose composition a print repeats.
const AFTER: &str = "after";

/// Words behind a name, alone or in brackets.
static BEHIND: LazyLock<Phrases<&str>> = LazyLock::new(|| {
    Phrases::of(&[
        (
            "engraver",
            "engraver|stecher|stecherin|graveur|sc.|sculp.|sculpsit|inc.",
        ),
        ("etcher", "etcher|radierer|aquafortiste|etser"),
        (
            "carver",
            "carver|block cutter|blockcutter|formschneider|holzschneider|houtsnijder",
        ),
        (
            "lithographer",
            "lithographer|lithograf|lithograph|lithographe|lith.",
        ),
        ("printer", "printer|drucker|imprimeur|drukker|imp."),
        (
            "publisher",
            "publisher|verleger|verlag|éditeur|uitgever|exc.|excudit",
        ),
        (
            "designer",
            "designer|draughtsman|entwerfer|zeichner|dessinateur|ontwerper|tekenaar|del.|delineavit|inv.|invenit",
        ),
        (
            "artist",
            "artist|künstler|künstlerin|artiste|kunstenaar|printmaker|grafiker|grafikerin",
        ),
    ])
});

/// Words that say with reserve whose work it is.
static RESERVES: LazyLock<Phrases<()>> = LazyLock::new(|| {
    Phrases::of(&[(
        (),
        "attributed to|attr. to|attr.|circle of|school of|workshop of|studio of|follower of|manner of|style of|possibly|\
         probably|zugeschrieben|umkreis|umkreis von|schule|schule von|werkstatt|werkstatt von|nachfolger|nachfolger von|\
         attribué à|attribuée à|cercle de|école de|atelier de|toegeschreven aan|kring van|school van|atelier van|伝",
    )])
});

/// Who it is that nobody knows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Nobody {
    /// The maker.
    Unknown,
    /// The maker of a copy.
    Copyist,
}

/// Words that say that nobody is known; a copy's maker is not, whom it is after is.
static NOBODY: LazyLock<Phrases<Nobody>> = LazyLock::new(|| {
    Phrases::of(&[
        (
            Nobody::Unknown,
            "unknown|unknown artist|anonymous|anon.|not known|various|various artists|unbekannt|unbekannter künstler|anonym|\
         inconnu|anonyme|onbekend|anoniem|不詳|作者不詳",
        ),
        (
            Nobody::Copyist,
            "copy|copyist|kopie|kopist|copie|copiste|模写",
        ),
    ])
});

/// Reads a cell of makers.
#[must_use]
pub fn makers(text: &str, lexicon: &Lexicon) -> Reading<Vec<NamedMaker>> {
    bounded(text, |words, progress| {
        read(words, progress, lexicon, 0, true)
    })
}

/// Reads makers from a piece on. With `has_plain`, a name without a word for its role is the artist's.
pub(super) fn read(
    words: &Words<'_>,
    progress: &mut Progress,
    lexicon: &Lexicon,
    start: usize,
    has_plain: bool,
) -> Vec<NamedMaker> {
    let mut found: Vec<NamedMaker> = Vec::new();
    let mut role: Option<Key> = None;
    let mut lead: Option<(usize, usize)> = None;
    let mut at = start;
    while at < words.len() {
        if let Some(nobody) = NOBODY.at(words, at) {
            if nobody.is == Nobody::Copyist {
                progress.doubt(Doubt::Copy);
            }
            progress.read(at, nobody.end);
            at = nobody.end;
        } else if let Some(reserve) = RESERVES.at(words, at) {
            progress.doubt(Doubt::AttributedWithReserve);
            lead.get_or_insert((at, at)).1 = reserve.end;
            at = reserve.end;
        } else if let Some(before) = role_before(words, at, lexicon) {
            // "printed and published by": one name, two roles; the later word counts, both are read.
            lead.get_or_insert((at, at)).1 = before.end;
            role = Some(before.is);
            at = before.end;
        } else if words.at(at).is_some_and(|p| p.kind == PieceKind::Word)
            && (has_plain || lead.is_some())
        {
            let Some(role) = role.take().or_else(|| "artist".parse().ok()) else {
                break;
            };
            let (maker, end) = named(words, at, role, lexicon);
            if let Some(lead) = lead.take() {
                progress.read(lead.0, lead.1);
            }
            progress.read(at, end);
            if maker.name.contains(" and ")
                || maker.name.contains(" & ")
                || maker.name.contains(" und ")
            {
                progress.doubt(Doubt::OneNameOrSeveral);
            }
            found.push(maker);
            at = end.max(at + 1);
        } else {
            if words.at(at).is_some_and(|p| p.kind != PieceKind::Mark) {
                lead = None;
                role = None;
            }
            at += 1;
        }
    }
    found
}

/// Words for a role before a name, or a label of the vocabulary with a colon behind it.
fn role_before(words: &Words<'_>, index: usize, lexicon: &Lexicon) -> Option<Found<Key>> {
    if let Some(own) = BEFORE.at(words, index) {
        return Some(Found {
            is: own.is.parse().ok()?,
            end: own.end,
        });
    }
    let term = lexicon.at(List::Roles, words, index)?;
    words.is_mark(term.end, &[":"]).then_some(Found {
        is: term.is.key,
        end: term.end,
    })
}

/// Words for a role behind a name: ours, or a label of the vocabulary.
fn role_behind(words: &Words<'_>, index: usize, lexicon: &Lexicon) -> Option<Found<Key>> {
    if let Some(own) = BEHIND.at(words, index) {
        return Some(Found {
            is: own.is.parse().ok()?,
            end: own.end,
        });
    }
    let term = lexicon.at(List::Roles, words, index)?;
    // "after" stands before a name.
    (term.is.key.as_str() != AFTER).then_some(Found {
        is: term.is.key,
        end: term.end,
    })
}

/// The name that begins at a piece: up to a bracket, a semicolon, or words for the next role.
fn named(words: &Words<'_>, start: usize, role: Key, lexicon: &Lexicon) -> (NamedMaker, usize) {
    let mut role = role;
    let is_lead = |at: usize| BEFORE.at(words, at).is_some() || RESERVES.at(words, at).is_some();
    let mut end = start + 1;
    while end < words.len() {
        let is_break = words.is_mark(end, &[";", "(", "[", "|", "/", ":", ")", "]"]);
        // `von`, `by` inside a name ("Anna von Mill") are no leads: only longer words and those behind a comma are.
        let is_role = is_lead(end)
            && (words.is_mark(end - 1, &[","])
                || BEFORE
                    .at(words, end)
                    .is_some_and(|b| b.end > end + 1 || !is_particle(words, end)));
        let is_joint = words
            .word(end)
            .is_some_and(|w| ["and", "und", "et", "en"].contains(&w))
            && is_lead(end + 1);
        let is_behind = (words.is_mark(end - 1, &[","])
            || BEHIND
                .at(words, end)
                .is_some_and(|b| words.is_mark(b.end - 1, &["."])))
            && role_behind(words, end, lexicon).is_some();
        if is_break || is_role || is_joint || is_behind {
            break;
        }
        end += 1;
    }
    let mut last = end;
    while last > start + 1 && words.is_mark(last - 1, &[",", "-", "–"]) {
        last -= 1;
    }
    let name = words.between(start, last).trim().to_owned();
    let at = match (words.at(start), words.at(last - 1)) {
        (Some(first), Some(last)) => first.span.start..last.span.end,
        _ => 0..0,
    };
    let mut note = None;
    // What stands behind the name: its role, or a note in brackets, or both.
    loop {
        let is_bracketed = words.is_mark(end, &["(", "["]);
        let inside = if is_bracketed { end + 1 } else { end };
        if let Some(behind) = role_behind(words, inside, lexicon) {
            role = behind.is;
            end = behind.end;
            if is_bracketed && words.is_mark(end, &[")", "]"]) {
                end += 1;
            }
        } else if is_bracketed {
            let close = (inside..words.len()).find(|i| words.is_mark(*i, &[")", "]"]));
            let Some(close) = close.filter(|_| note.is_none()) else {
                break;
            };
            note = Some(words.between(inside, close).trim().to_owned());
            end = close + 1;
        } else if words.is_mark(end, &[","]) && role_behind(words, end + 1, lexicon).is_some() {
            end += 1;
        } else if words
            .word(end)
            .is_some_and(|w| ["and", "und", "et", "en"].contains(&w))
        {
            end += 1;
            break;
        } else {
            break;
        }
    }
    let maker = NamedMaker {
        name,
        role,
        note,
        at,
    };
    (maker, end)
}

/// Whether a word may be a part of a name as well as a word for a role.
fn is_particle(words: &Words<'_>, index: usize) -> bool {
    words
        .word(index)
        .is_some_and(|w| ["von", "par", "by", "door", "na", "nach", "after", "naar"].contains(&w))
        && !words
            .word(index)
            .is_some_and(|w| ["after", "nach", "naar"].contains(&w))
}

#[cfg(test)]
mod tests {
    use super::super::lexicon::samples::lexicon;
    use super::*;

    fn said(text: &str) -> String {
        let makers = makers(text, &lexicon()).is;
        let told = makers.iter().map(|maker| {
            let role = maker.role.as_str();
            match &maker.note {
                Some(note) => format!("{role} {} ({note})", maker.name),
                None => format!("{role} {}", maker.name),
            }
        });
        told.collect::<Vec<_>>().join("; ")
    }

    #[test]
    fn makers_are_read_whole() {
        for (text, reading) in [
            ("Ada Brook", "artist Ada Brook"),
            ("Brook, Ada", "artist Brook, Ada"),
            ("Ada Brook (1880–1950)", "artist Ada Brook (1880–1950)"),
            (
                "engraved by C. Mill after Ada Brook",
                "engraver C. Mill; after Ada Brook",
            ),
            (
                "gestochen von C. Mill nach Ada Brook",
                "engraver C. Mill; after Ada Brook",
            ),
            (
                "gravé par C. Mill d'après Ada Brook",
                "engraver C. Mill; after Ada Brook",
            ),
            ("after Ada Brook", "after Ada Brook"),
            (
                "Ada Brook; printed by D. Lock; published by E. Weir & Co.",
                "artist Ada Brook; printer D. Lock; publisher E. Weir & Co.",
            ),
            ("C. Mill (engraver)", "engraver C. Mill"),
            ("C. Mill, engraver", "engraver C. Mill"),
            (
                "C. Mill (1880–1950), engraver",
                "engraver C. Mill (1880–1950)",
            ),
            ("Printer: D. Lock", "printer D. Lock"),
            ("Verleger: E. Weir", "publisher E. Weir"),
            ("C. Mill sc.", "engraver C. Mill"),
            ("Anna von Mill", "artist Anna von Mill"),
            ("E. Weir (screen maker)", "screen-maker E. Weir"),
            ("unknown", ""),
        ] {
            assert_eq!(said(text), reading, "{text}");
            let reading = makers(text, &lexicon());
            assert_eq!(reading.left_over(text), [""; 0], "{text}");
        }
    }

    #[test]
    fn a_copy_is_told_and_its_maker_is_not_made_up() {
        let reading = makers("Kopie nach Ada Brook", &lexicon());
        assert_eq!(said("Kopie nach Ada Brook"), "after Ada Brook");
        assert_eq!(reading.doubts, [Doubt::Copy]);
    }

    #[test]
    fn reserve_is_told() {
        let reading = makers("attributed to Ada Brook", &lexicon());
        assert_eq!(reading.doubts, [Doubt::AttributedWithReserve]);
        assert_eq!(reading.is[0].name, "Ada Brook");
    }
}
