//! An entry: a record, or a part of one, as it is searched and as it is shown when it is found.

use keyblock_model::words::closed_list;

closed_list! {
    /// What an entry is. The order is that of results that fit a query equally well.
    EntryKind {
        /// A design.
        Design = "design",
        /// A state of a design.
        State = "state",
        /// A printing of a design.
        Printing = "printing",
        /// An impression.
        Impression = "impression",
        /// A mark.
        Mark = "mark",
        /// A holder.
        Holder = "holder",
        /// A person.
        Person = "person",
        /// A work of the literature.
        Work = "work",
        /// A number of an earlier catalogue, in the list on the page of that.
        Earlier = "earlier",
        /// An exhibition.
        Exhibition = "exhibition",
        /// A series.
        Series = "series",
        /// A document.
        Document = "document",
        /// A page of the catalogue: its own texts and its indexes.
        Page = "page",
        /// A term of the glossary.
        Term = "term",
    }
}

closed_list! {
    /// What readers narrow a search by, beside the kind of entry.
    Narrowing {
        /// The place of the state in the order of its design.
        State = "state",
        /// The kind of the printing.
        Printing = "printing",
        /// The holder.
        Holder = "holder",
        /// The technique.
        Technique = "technique",
        /// The decade of the sheet, else of the design.
        Decade = "decade",
    }
}

/// A text of an entry, by what it is to it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Field {
    /// A number by which it is cited: its own, or that of an earlier catalogue.
    Number(String),
    /// A number that is also typed without punctuation: an accession number.
    Accession(String),
    /// Its title or name.
    Name(String),
    /// Something that its record says in a few words.
    Fact(String),
    /// A longer text about it.
    Text(String),
}

/// A value that readers narrow by.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct NarrowingValue {
    /// Which of the lists of values it belongs to.
    pub by: Narrowing,
    /// Its place in the list, by figures first; then by the label.
    pub rank: u32,
    /// Its name in addresses.
    pub key: String,
    /// Its name for readers.
    pub label: String,
}

/// An entry.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// What it is.
    pub kind: EntryKind,
    /// Its number for readers; empty where it has none.
    pub number: String,
    /// Its title or name for readers.
    pub title: String,
    /// The language of the title, where it is not the catalogue's.
    pub language: Option<String>,
    /// What sets it apart, in a line; may be empty.
    pub about: String,
    /// Its address, relative to the catalogue.
    pub href: String,
    /// The smallest file of its picture, relative to the catalogue.
    pub picture: Option<String>,
    /// What is searched.
    pub fields: Vec<Field>,
    /// What readers narrow by.
    pub values: Vec<NarrowingValue>,
}

impl Entry {
    /// An entry without number, picture and fields.
    #[must_use]
    pub fn new(kind: EntryKind, title: String, href: String) -> Entry {
        Entry {
            kind,
            number: String::new(),
            title,
            language: None,
            about: String::new(),
            href,
            picture: None,
            fields: Vec::new(),
            values: Vec::new(),
        }
    }

    /// Adds a field, unless its text is empty.
    pub fn add(&mut self, field: fn(String) -> Field, text: impl Into<String>) {
        let text = text.into();
        if !text.trim().is_empty() {
            self.fields.push(field(text));
        }
    }

    /// Adds several.
    pub fn add_all<T: Into<String>>(
        &mut self,
        field: fn(String) -> Field,
        texts: impl IntoIterator<Item = T>,
    ) {
        for text in texts {
            self.add(field, text);
        }
    }
}
