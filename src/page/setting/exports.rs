//! The files of a site for other programs, as data. `exchange` lists them; `export_links` makes the
//! links.

use std::collections::BTreeMap;
use std::fmt;

use super::address::{Address, Fragment};
use crate::model::key::{Key, PictureKey};
use crate::model::words::closed_list;

/// The subject from which a file is made.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Subject {
    /// The content of a page; the file is in the folder of the page.
    Page(Address),
    /// A part of a design; the file is in a folder of its own within that of the page of the design.
    Part(Key, DesignPart),
    /// A published picture; the file is in the folder of its image service.
    Picture(PictureKey),
}

/// A part of a design that has no page of its own, by its key.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum DesignPart {
    /// A state.
    State(Key),
    /// A printing.
    Printing(Key),
    /// A block, plate, stone or screen.
    Matrix(Key),
}

impl fmt::Display for DesignPart {
    /// As its place on the page of the design: `state-cut-down`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            DesignPart::State(key) => Fragment::State(key).fmt(f),
            DesignPart::Printing(key) => Fragment::Printing(key).fmt(f),
            DesignPart::Matrix(key) => Fragment::Matrix(key).fmt(f),
        }
    }
}

/// The files of a site for other programs.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Exports {
    /// The formats, in the order in which pages name them.
    pub formats: Vec<ExportFormat>,
    /// The files of each subject, in the order of the formats.
    pub files: BTreeMap<Subject, Vec<Export>>,
    /// The tables of everything public.
    pub tables: Vec<TableNotes>,
    /// The columns of the table of its sheets that each holder has.
    pub holder_table: Vec<ColumnNotes>,
}

/// A table of the data as pages describe it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TableNotes {
    /// Its name, which is also that of its files and part of the ids of its words.
    pub name: &'static str,
    /// How many rows it has.
    pub rows: usize,
    /// The size of its file in CSV, in bytes.
    pub csv_bytes: usize,
    /// The size of its file in JSON, in bytes.
    pub json_bytes: usize,
    /// Its columns.
    pub columns: Vec<ColumnNotes>,
}

/// A column of a table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ColumnNotes {
    /// Its name, which is also part of the id of its word; a unit stands at its end (`_mm`).
    pub name: &'static str,
    /// What its cells hold.
    pub kind: ColumnKind,
    /// The only words that its cells may hold; none: any.
    pub words: Vec<&'static str>,
    /// The table whose keys its cells hold.
    pub references: Option<&'static str>,
    /// Whether every row has a value in it.
    pub is_required: bool,
}

closed_list! {
    /// What the cells of a column hold. The words are also part of the ids of words.
    ColumnKind {
        /// Text.
        Text = "text",
        /// A web address.
        Address = "address",
        /// A whole number.
        Integer = "integer",
        /// A number.
        Number = "number",
        /// `true` or `false`.
        Boolean = "boolean",
        /// A day, `YYYY-MM-DD`.
        Day = "day",
        /// A date as recorded, EDTF.
        Date = "date",
        /// Several values.
        List = "list",
    }
}

/// The data of a format that pages use.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ExportFormat {
    /// Its name, which is also part of the ids of its words.
    pub name: &'static str,
    /// The folders of its files, with `…` for the key of a record or picture.
    pub folders: &'static [&'static str],
}

/// A file for other programs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Export {
    /// The name of its format.
    pub format: &'static str,
    /// Its path, relative to the catalogue.
    pub path: String,
    /// Its media type (RFC 6838).
    pub media_type: &'static str,
    /// Its relation to its subject (RFC 8288).
    pub relation: &'static str,
}
