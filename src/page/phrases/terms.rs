//! Terms of the vocabularies in words, and as links to the pages that list records by them.

use crate::model::key::Key;
use crate::model::vocabulary::List;
use crate::page::setting::address::{Address, Overview};
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;

impl Here<'_> {
    /// A term of a vocabulary, in words: "colour woodcut".
    pub fn term(&self, list: List, key: &str) -> String {
        self.public()
            .vocabularies
            .term(list, key)
            .and_then(|term| term.label(self.language()))
            .map_or_else(|| key.replace('-', " "), str::to_owned)
    }

    /// The other names of a term, which readers may know and which the glossary gives. It does not give those of subjects, so the
    /// search leaves them out.
    pub fn synonyms(&self, list: List, key: &str) -> Vec<String> {
        let term = self.public().vocabularies.term(list, key);
        let synonyms = term
            .into_iter()
            .flat_map(|term| term.synonyms(self.language()));
        synonyms.map(str::to_owned).collect()
    }

    /// The name of a language (BCP 47); the tag itself where the theme has none.
    pub fn language_name(&self, tag: &str) -> String {
        let primary = tag.split('-').next().unwrap_or(tag);
        let name = self.words().find(&format!("language-{primary}"));
        name.map_or_else(|| tag.to_owned(), str::to_owned)
    }

    /// A technique, subject or series, as a link to its list on an overview. `name` is the text, `key`
    /// its key or the nearest form of one.
    pub fn gathered(&self, overview: Overview, key: &str, name: &str) -> CleanHtml {
        let text = CleanHtml::text(name);
        let fragment = Key::nearest_form(key);
        match fragment.filter(|_| self.book.overviews.contains(&overview)) {
            Some(fragment) => CleanHtml::link(
                &format!("{}#{fragment}", self.href(&Address::Overview(overview))),
                &text,
            ),
            None => text,
        }
    }

    /// A technique, as a link to the designs made in it.
    pub fn technique(&self, key: &Key) -> CleanHtml {
        let name = self.term(List::Techniques, key.as_str());
        self.gathered(Overview::Techniques, key.as_str(), &name)
    }

    /// A subject, as a link to the designs that show it.
    pub fn subject(&self, subject: &str) -> CleanHtml {
        let name = self
            .public()
            .vocabularies
            .term(List::Subjects, subject)
            .and_then(|term| term.label(self.language()))
            .unwrap_or(subject);
        self.gathered(Overview::Subjects, subject, name)
    }
}
