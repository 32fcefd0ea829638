//! Single values as TOML: texts, keys, numbers, dates, sizes, and values of several.

use crate::model::certainty::{Claim, Statement, Statements};
use crate::model::edtf::Date;
use crate::model::place::Placed;
use crate::model::provenance::Party;
use crate::model::size::Size;

use super::parts::Entry;
use crate::exchange::intake::toml_text::{key_text, text_value};

/// A number. Whole ones have no point.
pub(super) fn number(number: f64) -> String {
    number.to_string()
}

/// `[height, width]`.
pub(super) fn size(size: &Size) -> String {
    format!(
        "[{}, {}]",
        number(size.height_mm()),
        number(size.width_mm())
    )
}

/// A date in quotes.
pub(super) fn date(date: &Date) -> String {
    text_value(&date.to_string())
}

/// Anything that is written as a word in quotes: keys, words of closed lists.
pub(super) fn word(word: &impl ToString) -> String {
    text_value(&word.to_string())
}

/// `[a, b]`.
pub(super) fn list(values: impl IntoIterator<Item = String>) -> String {
    let values: Vec<String> = values.into_iter().collect();
    format!("[{}]", values.join(", "))
}

/// One value bare, several as a list.
pub(super) fn one_or_list(values: Vec<String>) -> String {
    match values.as_slice() {
        [only] => only.clone(),
        _ => list(values),
    }
}

/// `{ a = 1, b = 2 }`.
pub(super) fn inline(entries: &[Entry]) -> String {
    let entries: Vec<String> = entries
        .iter()
        .map(|entry| format!("{} = {}", key_text(&entry.key), entry.value))
        .collect();
    format!("{{ {} }}", entries.join(", "))
}

/// Inline tables in brackets.
pub(super) fn inline_list(tables: &[Vec<Entry>]) -> String {
    list(tables.iter().map(|entries| inline(entries)))
}

/// A person or institution: a key, or a name.
pub(super) fn party(party: &Party, is_private: bool) -> String {
    match party {
        Party::Record(key) => word(&key.value),
        Party::Named(name) if is_private => {
            format!("{{ name = {}, private = [\"name\"] }}", text_value(name))
        }
        Party::Named(name) => format!("{{ name = {} }}", text_value(name)),
        Party::Undisclosed => "{}".to_owned(),
    }
}

/// The keys of a claim.
pub(super) fn claim(claim: &Claim) -> Vec<Entry> {
    let Claim {
        certainty,
        basis,
        by,
        date: on,
        cite,
        at,
    } = claim;
    let mut keys = Keys::default();
    keys.word("certainty", certainty.as_ref());
    keys.word("basis", basis.as_ref());
    keys.word("by", by.as_ref());
    keys.add("date", on.as_ref().map(|on| date(on)));
    keys.word("cite", cite.as_ref());
    keys.text("at", at.as_deref());
    keys.0
}

/// Statements: one bare, one with its claim, or a list of those.
pub(super) fn statements<T>(
    statements: &Statements<T>,
    value: impl Fn(&T) -> String,
) -> Option<String> {
    let table = |statement: &Statement<T>| {
        let mut entries = vec![Entry::new("is", value(&statement.is))];
        entries.extend(claim(&statement.claim));
        inline(&entries)
    };
    Some(match statements.0.as_slice() {
        [] => return None,
        [only] if only.claim == Claim::default() => value(&only.is),
        [only] => table(only),
        several => list(several.iter().map(table)),
    })
}

/// Keys with their values, those that are there.
#[derive(Default)]
pub(super) struct Keys(pub Vec<Entry>);

impl Keys {
    /// Adds a value, where there is one.
    pub fn add(&mut self, key: &str, value: Option<String>) {
        self.0.extend(value.map(|value| Entry::new(key, value)));
    }

    /// Adds a text.
    pub fn text(&mut self, key: &str, text: Option<&str>) {
        self.add(key, text.map(text_value));
    }

    /// Adds a text with a place.
    pub fn placed(&mut self, key: &str, text: Option<&Placed<String>>) {
        self.text(key, text.map(|text| text.value.as_str()));
    }

    /// Adds a word.
    pub fn word<T: ToString>(&mut self, key: &str, value: Option<&Placed<T>>) {
        self.add(key, value.map(|value| word(&value.value)));
    }

    /// Adds several words in brackets, where there are any.
    pub fn words<T: ToString>(&mut self, key: &str, values: &[Placed<T>]) {
        let values: Vec<String> = values.iter().map(|value| word(&value.value)).collect();
        self.add(key, (!values.is_empty()).then(|| list(values)));
    }

    /// Adds several values, one bare.
    pub fn several(&mut self, key: &str, values: Vec<String>) {
        self.add(key, (!values.is_empty()).then(|| one_or_list(values)));
    }

    /// Adds a date.
    pub fn date(&mut self, key: &str, value: Option<&Placed<Date>>) {
        self.add(key, value.map(|value| date(value)));
    }

    /// Adds `true` or `false`.
    pub fn flag(&mut self, key: &str, value: Option<bool>) {
        self.add(key, value.map(|value| value.to_string()));
    }

    /// Adds tables in brackets, where there are any.
    pub fn tables(&mut self, key: &str, tables: &[Vec<Entry>]) {
        self.add(key, (!tables.is_empty()).then(|| inline_list(tables)));
    }
}
