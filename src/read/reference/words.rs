//! The words of a reference: "edited by", "vol. 2", quotation marks.
//!
//! They come from the theme, as the words of the pages do: Fluent messages `bibliography-…` in
//! `words/LANG.ftl`, in English where a language lacks one. So a language needs no code, and a catalogue
//! changes a word of its references as it changes any other. Each message gets `$region`, the region of
//! the catalogue's language ("GB" in `en-GB`, else empty), because British and American quotation marks
//! differ.
//!
//! A faulty file of words gives no finding here; the stage that makes the pages reports it.

use biblatex::{Date, DateValue, Datetime};
use fluent_bundle::types::{FluentNumber, FluentNumberOptions, FluentNumberType};
use fluent_bundle::{FluentArgs, FluentBundle, FluentResource, FluentValue};

use crate::model::theme::Theme;
use crate::read::theme::built_in;

/// The words of one language.
pub(in crate::read) struct Words {
    region: String,
    /// The language's own, then English.
    bundles: Vec<FluentBundle<FluentResource>>,
    and: String,
}

impl Words {
    /// The words of `language` (BCP 47) from a theme.
    pub(in crate::read) fn new(theme: &Theme, language: &str) -> Words {
        let mut tags = language.split('-');
        let primary = tags.next().unwrap_or_default().to_lowercase();
        let region = tags.find(|tag| tag.len() == 2).unwrap_or_default();
        let mut languages = vec![primary.as_str()];
        if primary != "en" {
            languages.push("en");
        }
        let mut words = Words {
            region: region.to_uppercase(),
            bundles: languages.iter().map(|tag| bundle(theme, tag)).collect(),
            and: String::new(),
        };
        words.and = words.say("bibliography-and", &[]);
        words
    }

    /// The words of `language` from the built-in theme.
    #[cfg(test)]
    pub(in crate::read) fn built_in(language: &str) -> Words {
        Words::new(&Theme::default(), language)
    }

    /// A word, with `told` as the arguments of its message; its id where no language has the message.
    pub(super) fn say(&self, id: &str, told: &[(&'static str, FluentValue<'_>)]) -> String {
        let mut all: FluentArgs<'_> = told.iter().cloned().collect();
        all.set("region", self.region.as_str());
        let found = self.bundles.iter().find_map(|bundle| {
            let pattern = bundle.get_message(id)?.value()?;
            let mut faults = Vec::new();
            Some(
                bundle
                    .format_pattern(pattern, Some(&all), &mut faults)
                    .into_owned(),
            )
        });
        found.unwrap_or_else(|| id.to_owned())
    }

    /// "and", between two names.
    pub(super) fn and(&self) -> &str {
        &self.and
    }

    /// "edited by Clara Ray", "vol. 2": a word with one argument; empty where `text` is empty.
    pub(super) fn with(&self, id: &str, name: &'static str, text: &str) -> String {
        if text.is_empty() {
            return String::new();
        }
        self.say(id, &[(name, text.into())])
    }

    /// A title in quotation marks, with its full stop inside or after the marks as the language has it;
    /// without a full stop where the title itself ends with such a mark.
    pub(super) fn quoted(&self, title: &str) -> String {
        let stop = if super::line::ends_itself(title) {
            ""
        } else {
            "."
        };
        self.say(
            "bibliography-quoted",
            &[("title", title.into()), ("stop", stop.into())],
        )
    }

    /// "2nd ed."
    pub(super) fn edition(&self, n: i64) -> String {
        let options = FluentNumberOptions {
            r#type: FluentNumberType::Ordinal,
            ..FluentNumberOptions::default()
        };
        #[allow(
            clippy::cast_precision_loss,
            reason = "an `f64` holds every realistic edition number exactly"
        )]
        let number = FluentNumber::new(n as f64, options);
        self.say(
            "bibliography-edition",
            &[("n", FluentValue::Number(number))],
        )
    }

    /// "May 3, 2019", "May 2019", "2019".
    pub(super) fn day(&self, date: &Date) -> String {
        let last = last_day(date);
        let Some(month) = last.month else {
            return year(date);
        };
        let month = ("month", self.month(month).into());
        let year = ("year", last.year.to_string().into());
        match last.day {
            Some(day) => {
                let day = ("day", (day + 1).to_string().into());
                self.say("bibliography-date", &[day, month, year])
            }
            None => self.say("date-month", &[month, year]),
        }
    }

    /// "May 3", "May"; empty where only the year is known.
    pub(super) fn day_of_year(&self, date: &Date) -> String {
        let last = last_day(date);
        match (last.month.map(|month| self.month(month)), last.day) {
            (None, _) => String::new(),
            (Some(month), None) => month,
            (Some(month), Some(day)) => {
                let day = ("day", (day + 1).to_string().into());
                self.say("bibliography-day", &[day, ("month", month.into())])
            }
        }
    }

    /// The name of a month; January is 0.
    fn month(&self, month: u8) -> String {
        self.say(&format!("month-{}", month + 1), &[])
    }
}

/// "1961", "1936–1940", "[1936?]".
pub(super) fn year(date: &Date) -> String {
    let years = match date.value {
        DateValue::Between(first, last) if first.year != last.year => {
            format!("{}–{}", first.year, last.year)
        }
        DateValue::After(first) => format!("{}–", first.year),
        DateValue::Before(last) => format!("–{}", last.year),
        DateValue::At(day) | DateValue::Between(_, day) => day.year.to_string(),
    };
    if date.uncertain || date.approximate {
        format!("[{years}?]")
    } else {
        years
    }
}

fn last_day(date: &Date) -> Datetime {
    match date.value {
        DateValue::At(day)
        | DateValue::After(day)
        | DateValue::Before(day)
        | DateValue::Between(_, day) => day,
    }
}

/// The words of one language: the built-in ones, overridden by those of the catalogue's theme.
fn bundle(theme: &Theme, tag: &str) -> FluentBundle<FluentResource> {
    let mut bundle = FluentBundle::new(vec![tag.parse().unwrap_or_default()]);
    bundle.set_use_isolating(false);
    for theme in [&built_in(), theme] {
        for path in theme.files.keys() {
            let of_language = path
                .strip_prefix("words/")
                .and_then(|name| name.strip_prefix(tag))
                .is_some_and(|rest| rest.starts_with(['.', '-']));
            if let Some(text) = theme.text(path).filter(|_| of_language) {
                let read = FluentResource::try_new(text.to_owned());
                bundle.add_resource_overriding(read.unwrap_or_else(|(sound, _)| sound));
            }
        }
    }
    bundle
}

/// The text with its first letter as a capital.
pub(super) fn capitalised(text: &str) -> String {
    let mut characters = text.chars();
    match characters.next() {
        Some(first) => first.to_uppercase().chain(characters).collect(),
        None => String::new(),
    }
}
