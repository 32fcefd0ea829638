//! Citations with the number that an earlier catalogue gives, and how that relates to this catalogue's.

use crate::model::literature::{Citation, Relation};
use crate::model::words::ClosedList;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::words::Words;
use crate::study::concordance::DesignPart;

/// What of this catalogue a number of an earlier one stands for.
#[derive(Clone, Copy)]
pub(crate) enum NumberedPart {
    Design,
    State,
    Printing,
}

impl NumberedPart {
    pub(crate) const ALL: [NumberedPart; 3] = [
        NumberedPart::Design,
        NumberedPart::State,
        NumberedPart::Printing,
    ];

    /// The word of it in the ids of words.
    pub(crate) fn word(self) -> &'static str {
        match self {
            NumberedPart::Design => "design",
            NumberedPart::State => "state",
            NumberedPart::Printing => "printing",
        }
    }
}

impl From<&DesignPart> for NumberedPart {
    fn from(part: &DesignPart) -> NumberedPart {
        match part {
            DesignPart::Whole => NumberedPart::Design,
            DesignPart::State(_) => NumberedPart::State,
            DesignPart::Printing(_) => NumberedPart::Printing,
        }
    }
}

/// How the number of an earlier catalogue relates to ours: "includes this state".
pub(crate) fn relation(words: &Words, relation: Relation, part: NumberedPart) -> &str {
    match relation {
        Relation::CoversOurs | Relation::PartOfOurs => {
            let id = format!("relation-{}-{}", relation.word(), part.word());
            words.find(&id).unwrap_or(relation.word())
        }
        Relation::Same | Relation::NotAState | Relation::Error => {
            words.listed("relation", relation)
        }
    }
}

/// A citation: "Verhoeven 1961, p. 12, no. 22" of a design, "Verhoeven 1961, p. 12, state II (includes this state)" of a
/// state.
pub(crate) fn citation(here: &Here<'_>, citation: &Citation, part: NumberedPart) -> CleanHtml {
    let mut out = here.cited(&citation.cite.value, citation.at.as_deref());
    if let Some(number) = &citation.number {
        out = out.then(", ").and(&numbered(here, number, part));
    }
    match citation.relation {
        Relation::Same => out,
        other => out
            .then(" (")
            .then(relation(here.words(), other, part))
            .then(")"),
    }
}

/// "no. 22", "state II"; a state that is named in words, "only state", as it is written.
fn numbered(here: &Here<'_>, number: &str, part: NumberedPart) -> CleanHtml {
    let (words, text) = (here.words(), CleanHtml::text(number));
    match part {
        NumberedPart::State if is_numeral(number) => {
            words.html("state-reading", None, &[("state", &text)])
        }
        NumberedPart::State => text,
        NumberedPart::Design | NumberedPart::Printing => {
            words.html("cited-number", None, &[("number", &text)])
        }
    }
}

/// Whether the number of a state begins with a numeral, Arabic or Roman, or is one letter: "II", "2a", "iii/IV", "b"; not
/// "only state", "cancelled".
fn is_numeral(number: &str) -> bool {
    let word = number.split(|c: char| !c.is_alphanumeric()).next();
    let word = word.unwrap_or_default();
    let is_figure = |c: char| c.is_numeric();
    let is_roman = |c: char| matches!(c.to_ascii_lowercase(), 'i' | 'v' | 'x' | 'l');
    let after = match word.chars().next() {
        Some(first) if is_figure(first) => word.trim_start_matches(is_figure),
        _ => word.trim_start_matches(is_roman),
    };
    !word.is_empty() && after.chars().count() <= 1
}

#[cfg(test)]
mod tests {
    use super::is_numeral;

    #[test]
    fn a_state_in_words_is_told_from_a_numeral() {
        for numeral in [
            "I",
            "II",
            "iv",
            "2",
            "IIa",
            "2b",
            "III/V",
            "II (of IV)",
            "b",
            "Ⅱ",
        ] {
            assert!(is_numeral(numeral), "{numeral}");
        }
        for words in [
            "only state",
            "cancelled",
            "einziger Zustand",
            "",
            "before letters",
        ] {
            assert!(!is_numeral(words), "{words}");
        }
    }
}
