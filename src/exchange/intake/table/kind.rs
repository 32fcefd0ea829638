//! From what a table was made, and what a registrar should know of a file of records.

/// From what a table was made. Headings of records are paths, those of sheets are words.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum TableKind {
    /// A sheet: XLSX, ODS, CSV, TSV.
    #[default]
    Sheet,
    /// Records of LIDO.
    Lido,
    /// Objects of Linked Art.
    LinkedArt,
    /// Manifests of the IIIF Presentation API.
    Iiif,
    /// The form by which a sighting is reported.
    SightingForm,
}

/// What was met in a file of records beside the rows.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum RecordNote {
    /// Records that are named by their addresses alone. They are not fetched.
    OnlyNamed {
        /// How many.
        count: u32,
        /// The first addresses.
        addresses: Vec<String>,
    },
    /// Records of something else than sheets: people, groups, places. They make no rows.
    OfAnotherClass {
        /// The class, as the file names it.
        class: String,
        /// How many.
        count: u32,
    },
    /// What the file says around the records: the label of a collection, the page that follows.
    Around {
        /// How many texts.
        count: u32,
        /// The first of them, each with its path.
        texts: Vec<String>,
    },
    /// More paths than a table has columns: the rarest are in the column `further`.
    Further {
        /// How many.
        paths: u32,
    },
}

impl RecordNote {
    /// The note in one sentence.
    #[must_use]
    pub fn message(&self) -> String {
        match self {
            RecordNote::OnlyNamed { count, addresses } => format!(
                "{count} records are named by their addresses alone and were not read: {}",
                addresses.join(", ")
            ),
            RecordNote::OfAnotherClass { class, count } => {
                format!("{count} records of the class {class} describe no sheet and make no rows")
            }
            RecordNote::Around { count, texts } => format!(
                "{count} texts stand around the records and belong to none: {}",
                texts.join("; ")
            ),
            RecordNote::Further { paths } => {
                format!("{paths} paths that few records have are in the column `further`")
            }
        }
    }
}
