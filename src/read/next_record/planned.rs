//! What is to be added, and the record that is planned for it.

use crate::model::key::{ImpressionKey, Key};
use crate::model::link::Target;

/// What to add.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NewRecord {
    /// The next impression of a design.
    Impression {
        /// The key of the design.
        design: Key,
    },
    /// A design.
    Design {
        /// The number that readers see; the next whole number where none is named.
        number: Option<String>,
    },
    /// A holder.
    Holder {
        /// Its key, where the user names one.
        key: Option<Key>,
        /// The key that its name gives; `None` where the name gives none.
        of_name: Option<Key>,
    },
    /// A person.
    Person {
        /// Their key.
        key: Key,
    },
    /// A document.
    Document {
        /// Its key.
        key: Key,
    },
    /// A mark that several sheets share.
    Mark {
        /// Its key.
        key: Key,
    },
    /// A series.
    Series {
        /// Its key.
        key: Key,
    },
}

/// A value that is known of the new record.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Given {
    /// The key.
    pub key: &'static str,
    /// The value: that of a key at the root of the file as TOML writes it, else as it was given.
    pub value: String,
}

/// The table of a design that names its series, as a key of what is given: the key of its record, a title or the name.
pub const IN_SERIES: &str = "[series]";

/// The number of a design in its series, as a key of what is given.
pub const POSITION: &str = "position";

impl Given {
    /// A text.
    #[must_use]
    pub fn text(key: &'static str, text: &str) -> Given {
        Given::written(key, quoted(text))
    }

    /// A list of texts.
    #[must_use]
    pub fn texts<'a>(key: &'static str, texts: impl IntoIterator<Item = &'a str>) -> Given {
        let quoted: Vec<String> = texts.into_iter().map(quoted).collect();
        Given::written(key, format!("[{}]", quoted.join(", ")))
    }

    /// A list of one table with a text: `[{ text = "The Ferry" }]`.
    #[must_use]
    pub fn title(key: &'static str, text: &str) -> Given {
        Given::written(key, format!("[{{ text = {} }}]", quoted(text)))
    }

    /// What names the series of a design ([`IN_SERIES`]), or the design's number there ([`POSITION`]).
    #[must_use]
    pub fn of_series(key: &'static str, text: &str) -> Given {
        let words: Vec<&str> = text.split_whitespace().collect();
        Given::written(key, words.join(" "))
    }

    /// Whether it is the value of a key at the root of the file.
    pub(super) fn is_at_root(&self) -> bool {
        self.key != IN_SERIES && self.key != POSITION
    }

    /// A value that is written as it is.
    pub(super) fn written(key: &'static str, value: String) -> Given {
        Given { key, value }
    }
}

/// A text on one line in quotes, as TOML writes it.
pub(super) fn quoted(text: &str) -> String {
    let words: Vec<&str> = text.split_whitespace().collect();
    let mut quoted = String::from("\"");
    for c in words.join(" ").chars() {
        match c {
            '"' => quoted.push_str("\\\""),
            '\\' => quoted.push_str("\\\\"),
            c if c.is_control() => {}
            c => quoted.push(c),
        }
    }
    quoted.push('"');
    quoted
}

/// A record that can be written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RecordPlan {
    /// The record.
    pub target: Target,
    /// Its path in the catalogue.
    pub path: String,
    /// Its text.
    pub text: String,
    /// The keys that have a value.
    pub is_filled: Vec<&'static str>,
    /// What else there is to say of what was given; `None` for nothing.
    pub remark: Option<String>,
}

/// The path of a record.
pub(super) fn path_of(target: &Target) -> String {
    let folder = match target {
        Target::Design(key) => return format!("records/designs/{key}/design.toml"),
        Target::Impression(ImpressionKey { design, number }) => {
            return format!("records/designs/{design}/impressions/{number}.toml");
        }
        Target::Holder(_) => "holders",
        Target::Person(_) => "people",
        Target::Mark(_) => "marks",
        Target::Series(_) => "series",
        _ => "documents",
    };
    format!("records/{folder}/{}.toml", target.key())
}
