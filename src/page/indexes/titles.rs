//! Titles: all titles of all designs by letter, in every language and script. Where several designs have one title, it
//! stands once, with the number of each and what tells them apart (`docs/definitions.md`, "Order of lists").

use serde::Serialize;

use crate::model::design::{Design, Title, TitleKind};
use crate::page::lists::list::{self, List};
use crate::page::phrases::sizes;
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
            let kind = match title.kind {
                TitleKind::Usual | TitleKind::Original | TitleKind::Romanised => CleanHtml::empty(),
                TitleKind::Translated | TitleKind::Former => {
                    CleanHtml::quiet(words.listed("title-kind", title.kind))
                }
            };
            entries.push(Entry {
                filed: filed_under(title, here.language(), words),
                text: here.title(title),
                kind,
                design,
            });
        }
    }
    // The sort is stable: designs of one title keep the order of the catalogue.
    entries.sort_by(|a, b| (&a.filed, &a.text, &a.kind).cmp(&(&b.filed, &b.text, &b.kind)));
    let alike = entries.chunk_by(|a, b| a.text == b.text && a.kind == b.kind);
    let lines =
        alike.filter_map(|alike| Some((alike.first()?.filed.to_owned(), line(here, alike))));
    let title = words.word("titles").to_owned();
    let view = View {
        index: true,
        brief: words.word("titles-brief").to_owned(),
        letters: list::by_letter(here, lines.collect()),
        title: title.clone(),
    };
    Leaf::new(here.address, title, "pages/titles.html", &view)
}

/// A title of a design.
struct Entry<'d> {
    /// What it is filed under.
    filed: &'d str,
    text: CleanHtml,
    /// "former title"; empty for a title in use.
    kind: CleanHtml,
    design: &'d Design,
}

/// "*The Ferry* 14"; "*Landscape*: 12, 1961; 40, 1962, 212 × 301 mm", where several designs have one title.
fn line(here: &Here<'_>, alike: &[Entry<'_>]) -> CleanHtml {
    let href = |design: &Design| here.href(&Address::Design(design.key.clone()));
    if let [only] = alike {
        let link = CleanHtml::link(&href(only.design), &only.text);
        let number = CleanHtml::text(&only.design.number);
        return CleanHtml::join([&link, &only.kind], ", ").and(&CleanHtml::count(&number));
    }
    let dates: Vec<String> = alike
        .iter()
        .map(|entry| here.design_date(entry.design))
        .collect();
    let designs = alike.iter().zip(&dates).map(|(entry, date)| {
        let number = CleanHtml::text(&entry.design.number);
        let link = CleanHtml::link(&href(entry.design), &number);
        // The size is needed only where the date does not tell the designs apart.
        let is_shared = dates.iter().filter(|other| *other == date).count() > 1;
        let size = sizes::of_design(entry.design).filter(|_| is_shared);
        let size = size.map_or_else(CleanHtml::empty, sizes::size);
        CleanHtml::join([&link, &CleanHtml::text(date), &size], ", ")
    });
    let designs: Vec<CleanHtml> = designs.collect();
    let title = alike.first().map_or_else(CleanHtml::empty, |first| {
        CleanHtml::join([&first.text, &first.kind], ", ")
    });
    title.then(": ").and(&CleanHtml::join(&designs, "; "))
}

/// A title as it is filed: without its initial article, brackets and quotation marks. The words `articles-LANG` list the
/// articles of a language. A title without language is taken to be in the catalogue's.
fn filed_under<'t>(title: &'t Title, language: &str, words: &Words) -> &'t str {
    let text = title.text.value.as_str();
    let language = title.lang.as_ref().map_or(language, |l| l.value.as_str());
    let primary = language.split('-').next().unwrap_or_default();
    let id = format!("articles-{}", primary.to_lowercase());
    let articles = words.find(&id).unwrap_or_default();
    // An article may begin with a sign that is none of a quotation: "’t Veer".
    if let Some(rest) = without_article(text, articles) {
        return without_signs(rest);
    }
    let text = without_signs(text);
    without_article(text, articles).map_or(text, without_signs)
}

/// A text without one of `articles`, which are parted by upright lines; `None` where it begins with none of them, or has
/// nothing else.
fn without_article<'t>(text: &'t str, articles: &str) -> Option<&'t str> {
    let articles = articles.split('|').map(str::trim);
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
}

/// A text without the signs before its first letter or figure, and without closing brackets and quotation marks.
fn without_signs(text: &str) -> &str {
    let bare = text.trim_start_matches(|c: char| !c.is_alphanumeric());
    let bare = bare.trim_end_matches([']', ')', '"', '\'', '’', '”', '‘', '“', '»', '«', ' ']);
    if bare.is_empty() { text } else { bare }
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
    fn an_index_passes_over_brackets_and_quotation_marks() {
        assert_eq!(filed("[The Last Ferry]", "en"), "Last Ferry");
        assert_eq!(filed("‘The Last Ferry’", "en"), "Last Ferry");
        assert_eq!(filed("“Ferry” at Night", "en"), "Ferry” at Night");
        assert_eq!(filed("„Die Fähre“", "de"), "Fähre");
        assert_eq!(filed("[...]", "en"), "[...]");
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
