//! A proposed record: the impression, and what of it is not published until an editor decides.

use crate::model::impression::Impression;

/// A proposed record.
#[derive(Clone, Debug, PartialEq)]
pub struct RecordDraft {
    /// The impression.
    pub impression: Impression,
    /// What of it is listed as private.
    pub withheld: Withheld,
}

/// What a record lists as private. An editor takes off the list what may be published.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Withheld {
    /// Keys of the record.
    pub keys: Vec<&'static str>,
    /// Fields of the holder's description.
    pub given: Vec<String>,
    /// Whether the names of those who saw the sheet are, where they have no record.
    pub seen_by: bool,
    /// Whether the words of marks are.
    pub marks: bool,
}
