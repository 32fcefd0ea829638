//! Why a file cannot be read, and what its sender can do.

/// Why a file cannot be read as tables.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum TableFault {
    /// Something is larger than is read.
    TooLarge {
        /// What is too large.
        what: &'static str,
        /// The limit.
        limit: u64,
        /// The unit of the limit.
        unit: &'static str,
    },
    /// The file is of a kind that is not read.
    OtherKind(&'static str),
    /// The archive or a part of it cannot be read.
    Damaged {
        /// The part of the file; empty for the whole.
        part: String,
        /// What is wrong with it.
        why: &'static str,
    },
    /// An XML part declares entities, which could grow without bound.
    DeclaresEntities {
        /// The part.
        part: String,
    },
    /// A record of a file of records cannot be read.
    BadRecord {
        /// The record, from 1: the one in which reading stopped.
        record: u32,
        /// Its line in the file, from 1, where the parser says it.
        line: Option<usize>,
        /// What is wrong.
        why: &'static str,
    },
    /// The file names records by their addresses and holds none. Nothing is fetched.
    OnlyNamed {
        /// How many it names.
        count: u32,
    },
    /// A part is encrypted.
    Encrypted,
    /// There is no row with cells.
    Empty,
}

impl TableFault {
    /// What is wrong, in one phrase.
    #[must_use]
    pub fn message(&self) -> String {
        match self {
            TableFault::TooLarge { what, limit, unit } => {
                format!("{what} is larger than the {limit} {unit} that are read")
            }
            TableFault::OtherKind(kind) => format!("the file is {kind}, which is not read"),
            TableFault::Damaged { part, why } if part.is_empty() => {
                format!("the file cannot be read: {why}")
            }
            TableFault::Damaged { part, why } => {
                format!("{part} in the file cannot be read: {why}")
            }
            TableFault::DeclaresEntities { part } => {
                format!("{part} in the file declares entities, which are not read")
            }
            TableFault::BadRecord { record, line, why } => {
                let line = line.map_or_else(String::new, |line| format!(" (line {line})"));
                format!("record {record}{line} cannot be read: {why}")
            }
            TableFault::OnlyNamed { count } => {
                format!("the file names {count} records by their addresses and holds none of them")
            }
            TableFault::Encrypted => "the file is encrypted".to_owned(),
            TableFault::Empty => "the file has no cells and no records".to_owned(),
        }
    }

    /// What to do about it.
    #[must_use]
    pub fn help(&self) -> &'static str {
        match self {
            TableFault::TooLarge { .. } => "split the file into several",
            TableFault::OtherKind(_) => {
                "hand in XLSX, ODS, CSV, LIDO, Linked Art or IIIF manifests"
            }
            TableFault::Damaged { .. } | TableFault::DeclaresEntities { .. } => {
                "open it in a spreadsheet program and save it anew as XLSX, ODS or CSV"
            }
            TableFault::BadRecord { .. } => {
                "correct this record, or export the records anew; the records before it can be read"
            }
            TableFault::OnlyNamed { .. } => {
                "hand in the records themselves, several in one file; nothing is fetched from the web"
            }
            TableFault::Encrypted => "save it without a password",
            TableFault::Empty => {
                "hand in a file with a heading and a row for each sheet, or with a record for each"
            }
        }
    }

    /// A part that cannot be read.
    pub(in crate::exchange::intake) fn damaged(part: &str, why: &'static str) -> TableFault {
        TableFault::Damaged {
            part: part.to_owned(),
            why,
        }
    }
}
