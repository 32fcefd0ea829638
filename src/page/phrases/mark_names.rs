//! Names of the marks that have a record: "seal “ОП”", as a link to its page.

use crate::model::key::Key;
use crate::model::mark::MarkRecord;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::words::Argument;

impl Here<'_> {
    /// The short name of a mark: its kind and its text, or its key in words where it has no text.
    pub fn mark_name(&self, mark: &MarkRecord) -> CleanHtml {
        let words = self.words();
        let kind = mark.kind.as_ref();
        let kind = kind.map_or(words.word("mark"), |kind| words.listed("mark", kind.value));
        match &mark.text {
            Some(text) => {
                let quoted = words.with("quoted", &[("text", Argument::Text(&text.value))]);
                CleanHtml::text(kind)
                    .then(" ")
                    .and(&CleanHtml::text(&quoted))
            }
            None => CleanHtml::text(&mark.key.as_str().replace('-', " ")),
        }
    }

    /// A mark by its short name, as a link.
    pub fn mark(&self, key: &Key) -> CleanHtml {
        match self.public().marks.get(key) {
            Some(mark) => self.link(&Address::Mark(key.clone()), &self.mark_name(mark)),
            None => CleanHtml::text(key.as_str()),
        }
    }
}
