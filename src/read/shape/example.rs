//! Examples of values, for the help of findings: what a key takes, as it is written in a record.
//!
//! In: the declaration of a key. Out: TOML on one line. A part in capitals stands for what the catalogue has: `KEY` for a
//! key, `TEXT` for a text.

use super::declare::{KeyShape, MapKeys, Shape, Takes, Target};

/// The most keys of a table that an example has.
const MOST_KEYS: usize = 3;

impl Shape {
    /// A table of this shape with the keys that it must have, `{ key = "KEY", ask = "TEXT" }`; where it must have none, with
    /// the first that names nothing else.
    pub(crate) fn example(&self) -> String {
        let required: Vec<&KeyShape> = self.keys().filter(|key| key.required).collect();
        let keys = if required.is_empty() {
            let names_nothing = |key: &&KeyShape| !key.takes.is_name();
            let first = self.keys().find(names_nothing);
            first.or_else(|| self.keys().next()).into_iter().collect()
        } else {
            required
        };
        let keys = keys.into_iter().take(MOST_KEYS);
        let entries: Vec<String> = keys
            .map(|key| format!("{} = {}", key.name, key.takes.example()))
            .collect();
        format!("{{ {} }}", entries.join(", "))
    }
}

impl Takes {
    /// A value of this type.
    pub(crate) fn example(&self) -> String {
        let fixed = match self {
            Takes::Text
            | Takes::TextByLanguage
            | Takes::TextsByLanguage
            | Takes::TermOrWords(_)
            | Takes::HolderOrWords(_)
            | Takes::Party(_)
            | Takes::TextOrTables(_) => "\"TEXT\"",
            Takes::Flag => "true",
            Takes::Publish => "false",
            Takes::Above0 | Takes::From0 | Takes::Fraction(_) => "0.5",
            Takes::Date => "\"1927\"",
            Takes::Size => "[212, 301]",
            Takes::Box => "[62.0, 8.5, 12.0, 16.0]",
            Takes::Colour => "\"#1f3a4d\"",
            Takes::Language => "\"en\"",
            Takes::Country => "\"NO\"",
            Takes::Isil => "\"NO-1020300\"",
            Takes::Web => "\"https://example.org\"",
            Takes::File => "\"pictures/1-recto.jpg\"",
            Takes::Refers(Target::Impression, _) => "\"14.7\"",
            Takes::Refers(Target::Picture, _) => "\"14.7/recto\"",
            Takes::Link(_) | Takes::EvidenceTarget(_) => "\"design:14\"",
            Takes::Ties => {
                "[[10, 10, 12, 11], [90, 10, 91, 11], [10, 90, 12, 91], [90, 90, 91, 91]]"
            }
            Takes::PointValues | Takes::Observed => "\"present\"",
            Takes::StatesPrinted => "\"all\"",
            Takes::OwnKey
            | Takes::Term(_)
            | Takes::Refers(..)
            | Takes::Part(_)
            | Takes::MarkCondition
            | Takes::Theme
            | Takes::StateReading => "\"KEY\"",
            Takes::Whole(least, _) => return least.to_string(),
            Takes::Word(words) => {
                let words = words();
                return format!("\"{}\"", words.first().copied().unwrap_or_default());
            }
            Takes::Several(one) | Takes::Statements(one) => return one.example(),
            Takes::Either(all) => return all.first().map(Takes::example).unwrap_or_default(),
            Takes::Table(shape) => return shape.example(),
            Takes::Tables(shape) => return format!("[{}]", shape.example()),
            Takes::Map(keys, value) => {
                let key = match keys {
                    MapKeys::Headings => "HEADING",
                    MapKeys::Points => "POINT",
                    MapKeys::Matrices => "MATRIX",
                    MapKeys::Values => "VALUE",
                };
                return format!("{{ {key} = {} }}", value.example());
            }
        };
        fixed.to_owned()
    }

    /// Whether a value names something that the catalogue has elsewhere.
    fn is_name(&self) -> bool {
        matches!(
            self,
            Takes::Refers(..)
                | Takes::Part(_)
                | Takes::MarkCondition
                | Takes::Link(_)
                | Takes::Term(_)
        )
    }

    /// The words that a value must be one of; empty for a value of another type.
    pub(crate) fn words(&self) -> Vec<&'static str> {
        match self {
            Takes::Word(words) => words(),
            Takes::Several(one) | Takes::Statements(one) => one.words(),
            _ => Vec::new(),
        }
    }
}
