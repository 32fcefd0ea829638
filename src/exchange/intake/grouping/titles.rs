//! Titles as they are compared: folded, without the article at their head; and those that name no design.
//!
//! In: a title. Out: its key, or `None` for one that many sheets have because they have none: "Untitled", "o. T.",
//! "Sans titre".

use crate::study::search::words::number_parts;

/// Articles at the head of a title (English, German, French, Dutch), folded. "l" is that of "L'Écluse".
const ARTICLES: [&str; 17] = [
    "the", "a", "an", "der", "die", "das", "ein", "eine", "le", "la", "les", "l", "un", "une",
    "de", "het", "een",
];

/// What is written in place of a title, by the parts of the text (English, German, French, Dutch, Japanese).
const UNTITLED: [&str; 32] = [
    "untitled",
    "no.title",
    "without.title",
    "title.not.known",
    "title.unknown",
    "unknown.title",
    "unknown",
    "not.titled",
    "o.t",
    "ohne.titel",
    "unbetitelt",
    "kein.titel",
    "titel.unbekannt",
    "unbekannt",
    "sans.titre",
    "s.t",
    "titre.inconnu",
    "non.titre",
    "inconnu",
    "zonder.titel",
    "z.t",
    "ongetiteld",
    "titel.onbekend",
    "onbekend",
    "無題",
    "題名不詳",
    "題名不明",
    "題不詳",
    "題不明",
    "タイトル不明",
    "不詳",
    "not.known",
];

/// The title as it is compared; `None` where it names no design.
///
/// ```
/// # use keyblock::exchange::intake::grouping::title_key;
/// assert_eq!(title_key("The Lock"), title_key("Lock"));
/// assert_eq!(title_key("L’Écluse"), title_key("ecluse"));
/// assert_eq!(title_key("o. T."), None);
/// assert_ne!(title_key("Untitled (boats)"), None);
/// ```
#[must_use]
pub fn title_key(title: &str) -> Option<String> {
    let parts = number_parts(title);
    let whole = parts.join(".");
    if parts.is_empty() || UNTITLED.contains(&whole.as_str()) {
        return None;
    }
    match parts.split_first() {
        Some((article, rest)) if !rest.is_empty() && ARTICLES.contains(&article.as_str()) => {
            Some(rest.join("."))
        }
        _ => Some(whole),
    }
}

#[cfg(test)]
mod tests {
    use super::title_key;

    #[test]
    fn titles_are_one_whatever_their_article_case_and_accents() {
        for (one, other) in [
            ("The Lock", "LOCK"),
            ("Die Schleuse", "Schleuse"),
            ("L'Écluse", "L’ecluse"),
            ("Het Sluisje", "sluisje"),
            ("[The Lock]", "The Lock."),
        ] {
            assert_eq!(title_key(one), title_key(other), "{one}");
        }
        for (one, other) in [
            ("The Lock", "The Locks"),
            ("Lock 1", "Lock 2"),
            ("The", "A"),
        ] {
            assert_ne!(title_key(one), title_key(other), "{one}");
        }
    }

    #[test]
    fn untitled_sheets_have_no_title() {
        for text in [
            "Untitled",
            "[Untitled]",
            "[no title]",
            "o. T.",
            "o.T.",
            "Ohne Titel",
            "Sans titre",
            "無題",
            "…",
            "",
        ] {
            assert_eq!(title_key(text), None, "{text}");
        }
        assert!(title_key("Untitled (Harbour)").is_some());
        assert!(title_key("Unknown Woman").is_some());
    }
}
