//! Names of designs, states, printings and points.
//!
//! A design is "14, *The Last Ferry*"; a supplied title stands in brackets. A record that does not
//! exist (a mistaken key in a catalogue with errors) is named by its key.

use super::dates;
use super::standing_note;
use crate::model::design::{Design, Title};
use crate::model::key::Key;
use crate::page::setting::address::{Address, Fragment};
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;

impl Here<'_> {
    /// A title as a catalogue prints it: italic, or in brackets where the catalogue or the record supplies it.
    pub fn title(&self, title: &Title) -> CleanHtml {
        let language = title.lang.as_ref().map(|l| l.value.as_str());
        let text = CleanHtml::text(&title.text);
        let has_brackets = title.text.starts_with('[') && title.text.ends_with(']');
        match (title.supplied, has_brackets) {
            (_, true) => self.in_language("span", &text, language),
            (true, false) => {
                let text = CleanHtml::text("[").and(&text).then("]");
                self.in_language("span", &text, language)
            }
            (false, false) => self.in_language("i", &text, language),
        }
    }

    /// The title of a design in use.
    pub fn design_title(&self, design: &Design) -> CleanHtml {
        design.title().map_or_else(
            || CleanHtml::text(self.words().word("untitled")),
            |title| self.title(title),
        )
    }

    /// "14, *The Last Ferry*".
    pub fn design_name(&self, design: &Design) -> CleanHtml {
        CleanHtml::text(&design.number)
            .then(", ")
            .and(&self.design_title(design))
    }

    /// "14, *The Last Ferry*" as a link to the design, with its standing where it is not accepted.
    pub fn design(&self, key: &Key) -> CleanHtml {
        match self.public().designs.get(key) {
            Some(design) => {
                let name = self.link(&Address::Design(key.clone()), &self.design_name(design));
                CleanHtml::join([&name, &self.standing(design)], " ")
            }
            None => CleanHtml::text(key.as_str()),
        }
    }

    /// The standing of a design in brackets, "(rejected)"; empty where it is accepted.
    pub fn standing(&self, design: &Design) -> CleanHtml {
        match standing_note::remark(self, &design.standing) {
            "" => CleanHtml::empty(),
            standing => CleanHtml::quiet(&format!("({standing})")),
        }
    }

    /// The date of a design in words; empty where none is recorded.
    pub fn design_date(&self, design: &Design) -> String {
        design
            .date
            .own()
            .map_or_else(String::new, |date| dates::once(date, self.words()))
    }

    /// "14, *The Last Ferry*, 1927" as a link to the design.
    pub fn design_and_date(&self, key: &Key) -> CleanHtml {
        let date = self
            .public()
            .designs
            .get(key)
            .map_or_else(String::new, |d| self.design_date(d));
        CleanHtml::join([&self.design(key), &CleanHtml::text(&date)], ", ")
    }

    /// "*iii*/iv", with the numeral as a link to the state; "only state" where a design has one; the
    /// key of a state without numeral.
    pub fn state_of(&self, design: &Key, state: &Key) -> CleanHtml {
        let to = self.href_part(&Address::Design(design.clone()), Fragment::State(state));
        match self.book.studies.numeral(design, state) {
            Some(numeral) if numeral.is_only() => {
                CleanHtml::link(&to, &CleanHtml::text(self.words().word("only-state")))
            }
            Some(numeral) => {
                let link = CleanHtml::link(&to, &CleanHtml::text(&numeral.roman()));
                let total = crate::study::numerals::roman(numeral.of());
                CleanHtml::span("numeral", &link).then("/").then(&total)
            }
            None => CleanHtml::link(&to, &CleanHtml::text(&state.as_str().replace('-', " "))),
        }
    }

    /// The numeral of a state without the total; "only state" where the design has one.
    pub fn numeral(&self, design: &Key, state: &Key) -> CleanHtml {
        match self.book.studies.numeral(design, state) {
            Some(numeral) if numeral.is_only() => CleanHtml::text(self.words().word("only-state")),
            Some(numeral) => CleanHtml::span("numeral", &CleanHtml::text(&numeral.roman())),
            None => CleanHtml::text(&state.as_str().replace('-', " ")),
        }
    }

    /// The name of a printing: its own, else the word for its kind.
    pub fn printing_name(&self, design: &Design, key: &Key) -> String {
        let Some(printing) = design.printing(key) else {
            return key.as_str().replace('-', " ");
        };
        match (&printing.name, printing.kind.own()) {
            (Some(name), _) => name.clone(),
            (None, Some(kind)) => self.words().listed("printing", *kind).to_owned(),
            (None, None) => key.as_str().replace('-', " "),
        }
    }

    /// A point by its key in words, "image height", as a link to its row on the page of the design.
    pub fn point(&self, design: &Design, key: &Key) -> CleanHtml {
        let to = self.href_part(&Address::Design(design.key.clone()), Fragment::Point(key));
        CleanHtml::link(&to, &CleanHtml::text(&key.as_str().replace('-', " ")))
    }
}
