//! Rules on signs that cannot be seen in texts: signs that their script does not need, and controls of the
//! direction of writing.
//!
//! Each text has at most one finding of each kind, at the first such sign, with the number of the others.

mod direction;
mod invisible;

use std::ops::Range;

use self::direction::{Turn, turns};
use self::invisible::invisible_signs;
use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::occurrence::TextAt;
use crate::model::place::Place;
use crate::study::Studies;

/// A text holds a sign that cannot be seen and that its script does not need.
pub(super) fn invisible(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for (text, words) in texts(catalogue) {
        let signs = invisible_signs(words);
        let Some((at, sign)) = signs.first() else {
            continue;
        };
        let name = named(*sign);
        let message = match signs.len() - 1 {
            0 => format!("an invisible character stands here: {name}"),
            1 => format!("an invisible character stands here, and another further on: {name}"),
            n => {
                format!("an invisible character stands here, and {n} others further on: {name}")
            }
        };
        let place = place(text, at);
        findings.push(Finding::new(Code::SignInvisible, place, message).help(
            "delete it; it was probably copied with the text, and it hides the words from searches",
        ));
    }
}

/// A text turns the direction of writing, or leaves it turned.
pub(super) fn direction(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for (text, words) in texts(catalogue) {
        let turns = turns(words);
        let Some((at, sign, turn)) = turns.first() else {
            continue;
        };
        let name = named(*sign);
        let message = match turn {
            Turn::Overrides => {
                format!("the direction of a text is overridden here: {name}")
            }
            Turn::NeverClosed => {
                format!("here a direction of writing begins that never ends: {name}")
            }
            Turn::NeverOpened => {
                format!("here a direction of writing ends that never began: {name}")
            }
        };
        findings.push(
            Finding::new(Code::DirectionTurned, place(text, at), message).help(
                "delete it; each text is set in the direction of its own script without such signs",
            ),
        );
    }
}

/// Every text of the catalogue with its words.
fn texts(catalogue: &Catalogue) -> impl Iterator<Item = (&TextAt, &str)> {
    let records = catalogue.occurrences.values();
    let texts = records.flat_map(|occurrences| &occurrences.texts);
    let with_words = texts.map(|text| (text, text.words(&catalogue.sources)));
    with_words.filter(|(_, words)| !words.is_ascii())
}

/// The place of the bytes `at` of a text; that of the whole text where its file writes it differently.
fn place(text: &TextAt, at: &Range<usize>) -> Place {
    if text.is_as_written() {
        let start = text.place.start as usize;
        Place::new(text.place.file, start + at.start..start + at.end)
    } else {
        text.place
    }
}

/// A sign by its number, with its name in Unicode where it is one that is often met.
fn named(sign: char) -> String {
    let name = match sign {
        '\u{200b}' => "zero width space",
        '\u{200c}' => "zero width non-joiner",
        '\u{200d}' => "zero width joiner",
        '\u{202a}' => "left-to-right embedding",
        '\u{202b}' => "right-to-left embedding",
        '\u{202c}' => "pop directional formatting",
        '\u{202d}' => "left-to-right override",
        '\u{202e}' => "right-to-left override",
        '\u{2066}' => "left-to-right isolate",
        '\u{2067}' => "right-to-left isolate",
        '\u{2068}' => "first strong isolate",
        '\u{2069}' => "pop directional isolate",
        '\u{feff}' => "byte order mark",
        '\u{fe00}'..='\u{fe0f}' | '\u{e0100}'..='\u{e01ef}' => "variation selector",
        '\u{e0000}'..='\u{e007f}' => "tag",
        _ => return format!("U+{:04X}", u32::from(sign)),
    };
    format!("U+{:04X}, {name}", u32::from(sign))
}
