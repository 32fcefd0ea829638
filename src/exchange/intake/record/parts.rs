//! A record as keys with values, tables, and lists of tables.

/// A key with its value as TOML.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// The key, without quotes.
    pub key: String,
    /// The value.
    pub value: String,
}

impl Entry {
    /// A key with its value.
    #[must_use]
    pub fn new(key: &str, value: String) -> Entry {
        Entry {
            key: key.to_owned(),
            value,
        }
    }
}

/// A table of a record, or a list of tables.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Part {
    /// `[sheet]`.
    Table(&'static str, Vec<Entry>),
    /// `[[marks]]`.
    List(&'static str, Vec<Vec<Entry>>),
}

/// A record as keys and tables.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Sections {
    /// The keys above the first table.
    pub root: Vec<Entry>,
    /// The tables, those with anything in them.
    pub parts: Vec<Part>,
}
