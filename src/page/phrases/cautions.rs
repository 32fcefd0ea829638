//! Sentences that link to the cautions.

use crate::page::setting::address::{Address, Overview};
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;

impl Here<'_> {
    /// A sentence at the head of a list, with a link to the cautions.
    pub fn with_cautions(&self, word: &str) -> CleanHtml {
        let words = self.words();
        let to = self.href(&Address::Overview(Overview::Cautions));
        let cautions = CleanHtml::link(&to, &CleanHtml::text(words.word("cautions")));
        CleanHtml::text(words.word(word)).then(" ").and(&cautions)
    }
}
