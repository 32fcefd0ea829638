//! Titles: every title of every design, in every language and script, by letter.

use serde::Serialize;

use crate::model::design::{Title, TitleKind};
use crate::page::lists::list::{self, List};
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;

#[derive(Serialize)]
struct View {
    title: String,
    /// Parts stand close together, as in an index.
    index: bool,
    brief: String,
    letters: Vec<List>,
}

pub(crate) fn page(here: &Here<'_>) -> Leaf {
    let words = here.words();
    let mut entries = Vec::new();
    for design in here.designs_in_order() {
        for title in &design.titles {
            let link = CleanHtml::link(
                &here.href(&Address::Design(design.key.clone())),
                &here.title(title),
            );
            let kind = match title.kind {
                TitleKind::Usual | TitleKind::Original | TitleKind::Romanised => CleanHtml::empty(),
                TitleKind::Translated | TitleKind::Former => {
                    CleanHtml::quiet(words.listed("title-kind", title.kind))
                }
            };
            let number = CleanHtml::text(&design.number);
            let line = CleanHtml::join([&link, &kind], ", ").and(&CleanHtml::count(&number));
            entries.push((filed_under(title, here.language()).to_owned(), line));
        }
    }
    let title = words.word("titles").to_owned();
    let view = View {
        index: true,
        brief: words.word("titles-brief").to_owned(),
        letters: list::by_letter(here, entries),
        title: title.clone(),
    };
    Leaf::new(here.address, title, "pages/titles.html", &view)
}

/// Initial articles, by language: an index files "The Last Ferry" under L. Common practice; the
/// articles themselves are those of the grammars.
const ARTICLES: [(&str, &[&str]); 10] = [
    ("en", &["the ", "a ", "an "]),
    ("de", &["der ", "die ", "das ", "ein ", "eine "]),
    ("nl", &["de ", "het ", "een ", "'t ", "’t "]),
    ("fr", &["le ", "la ", "les ", "un ", "une ", "l'", "l’"]),
    (
        "it",
        &[
            "il ", "lo ", "la ", "i ", "gli ", "le ", "un ", "uno ", "una ", "l'", "l’",
        ],
    ),
    ("es", &["el ", "la ", "los ", "las ", "un ", "una "]),
    ("pt", &["o ", "a ", "os ", "as ", "um ", "uma "]),
    ("sv", &["en ", "ett ", "den ", "det "]),
    ("da", &["en ", "et ", "den ", "det "]),
    ("no", &["en ", "ei ", "et ", "den ", "det "]),
];

/// A title without its initial article. A title whose language is not said is taken to be in the
/// catalogue's.
fn filed_under<'t>(title: &'t Title, language: &str) -> &'t str {
    let text = title.text.value.as_str();
    let language = title.lang.as_ref().map_or(language, |l| l.value.as_str());
    let primary = language.split('-').next().unwrap_or_default();
    let articles = ARTICLES
        .iter()
        .find(|(tag, _)| tag.eq_ignore_ascii_case(primary))
        .map_or(&[][..], |(_, articles)| articles);
    articles
        .iter()
        .find_map(|article| {
            let head = text.get(..article.len())?;
            let rest = text.get(article.len()..)?;
            (head.to_lowercase() == *article && !rest.trim().is_empty()).then_some(rest)
        })
        .unwrap_or(text)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::certainty::Claim;
    use crate::model::place::{Place, Placed};

    fn filed(text: &str, language: &str) -> String {
        let title = Title {
            text: Placed::new(text.to_owned(), Place::default()),
            lang: Some(Placed::new(language.to_owned(), Place::default())),
            kind: TitleKind::Usual,
            supplied: false,
            claim: Claim::default(),
        };
        filed_under(&title, "en").to_owned()
    }

    #[test]
    fn an_index_passes_over_the_article_of_the_titles_own_language() {
        assert_eq!(filed("The Last Ferry", "en"), "Last Ferry");
        assert_eq!(filed("L’Écluse", "fr"), "Écluse");
        assert_eq!(filed("Die Fähre", "de-CH"), "Fähre");
        assert_eq!(filed("Die Hard Frost", "en"), "Die Hard Frost");
        assert_eq!(filed("A", "en"), "A");
    }
}
