//! Numbers of impressions as figures and in words: "14", "13–14", "13 to 14 impressions".

use super::dates;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::words::Argument;
use crate::study::census::Sheets;

/// A count as a phrase: "14 impressions known", "13 to 14 impressions known".
pub(crate) fn known(here: &Here<'_>, sheets: Sheets) -> String {
    let words = here.words();
    if sheets.is_certain() {
        words.count("sheets-known", sheets.at_most)
    } else {
        words.with(
            if sheets.exact {
                "sheets-known-between"
            } else {
                "sheets-known-not-below"
            },
            &[
                ("least", Argument::Count(sheets.at_least)),
                ("n", Argument::Count(sheets.at_most)),
            ],
        )
    }
}

/// A count as a figure: "14", "13–14".
pub(crate) fn figure(sheets: Sheets) -> String {
    if sheets.is_certain() {
        sheets.at_most.to_string()
    } else {
        format!("{}–{}", sheets.at_least, sheets.at_most)
    }
}

impl Here<'_> {
    /// A number of sheets for a table: "14" or "13–14", spelt out for screen readers; "≥13–40" where
    /// the lower end is only a bound.
    pub fn sheets(&self, sheets: Sheets) -> CleanHtml {
        if sheets.is_certain() {
            return CleanHtml::text(&sheets.at_most.to_string());
        }
        let bound = if sheets.exact { "" } else { "≥" };
        let short = format!("{bound}{}–{}", sheets.at_least, sheets.at_most);
        let seen = CleanHtml::element("span", &[("aria-hidden", "true")], &CleanHtml::text(&short));
        let said = CleanHtml::span("unseen", &CleanHtml::text(&self.between(sheets)));
        seen.and(&said)
    }

    /// A number of impressions in words: "14 impressions", "13 to 14 impressions".
    pub fn impressions_in_words(&self, sheets: Sheets) -> String {
        if sheets.is_certain() {
            self.words().count("count-impressions", sheets.at_most)
        } else {
            self.words()
                .html(
                    if sheets.exact {
                        "sheets-between"
                    } else {
                        "sheets-not-below"
                    },
                    Some(sheets.at_most),
                    &[("least", &CleanHtml::text(&sheets.at_least.to_string()))],
                )
                .plain()
        }
    }

    fn between(&self, sheets: Sheets) -> String {
        let id = if sheets.exact {
            "between-numbers"
        } else {
            "not-below-numbers"
        };
        self.words().with(
            id,
            &[
                ("least", Argument::Text(&sheets.at_least.to_string())),
                ("most", Argument::Text(&sheets.at_most.to_string())),
            ],
        )
    }

    /// "as of 15 October 2026", the date of the catalogue; empty where it has none.
    pub fn as_of(&self) -> String {
        self.public()
            .settings
            .dated
            .as_ref()
            .map_or_else(String::new, |dated| {
                let dated = dates::once(dated, self.words());
                self.words()
                    .with("as-of", &[("date", Argument::Text(&dated))])
            })
    }
}
