//! Titles: all titles of all designs by letter, in every language and script.

use serde::Serialize;

use crate::model::design::{Title, TitleKind};
use crate::page::lists::list::{self, List};
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::page::setting::words::Words;

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
            entries.push((filed_under(title, here.language(), words).to_owned(), line));
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

/// A title without its initial article; the words `articles-LANG` list the articles of a language. A
/// title without language is taken to be in the catalogue's.
fn filed_under<'t>(title: &'t Title, language: &str, words: &Words) -> &'t str {
    let text = title.text.value.as_str();
    let language = title.lang.as_ref().map_or(language, |l| l.value.as_str());
    let primary = language.split('-').next().unwrap_or_default();
    let id = format!("articles-{}", primary.to_lowercase());
    let articles = words
        .find(&id)
        .unwrap_or_default()
        .split('|')
        .map(str::trim);
    articles
        .filter(|article| !article.is_empty())
        .find_map(|article| {
            let is_elided = article.ends_with(['\'', '’']);
            let space = if is_elided { "" } else { " " };
            let article = format!("{article}{space}");
            let head = text.get(..article.len())?;
            let rest = text.get(article.len()..)?;
            (head.to_lowercase() == article && !rest.trim().is_empty()).then_some(rest)
        })
        .unwrap_or(text)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::certainty::Claim;
    use crate::model::place::{Place, Placed};
    use crate::model::theme::Theme;

    fn filed(text: &str, language: &str) -> String {
        let title = Title {
            text: Placed::new(text.to_owned(), Place::default()),
            lang: Some(Placed::new(language.to_owned(), Place::default())),
            kind: TitleKind::Usual,
            supplied: false,
            claim: Claim::default(),
        };
        let words = Words::new(&Theme::default(), "en").unwrap();
        filed_under(&title, "en", &words).to_owned()
    }

    #[test]
    fn an_index_passes_over_the_article_of_the_titles_own_language() {
        assert_eq!(filed("The Last Ferry", "en"), "Last Ferry");
        assert_eq!(filed("L’Écluse", "fr"), "Écluse");
        assert_eq!(filed("Die Fähre", "de-CH"), "Fähre");
        assert_eq!(filed("’t Veer", "nl"), "Veer");
        assert_eq!(filed("Die Hard Frost", "en"), "Die Hard Frost");
        assert_eq!(filed("A", "en"), "A");
    }
}
