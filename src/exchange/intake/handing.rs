//! Who hands a file in, and what holds for all of its rows.

use crate::model::edtf::Date;
use crate::model::key::Key;

/// Who hands a file in, and what holds for all of its rows, as the head of `columns.toml` says it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct HandingIn {
    /// The name of the folder in the inbox: the house that hands in, whose next file reuses what was settled.
    pub name: Option<Key>,
    /// The holder of every sheet for which no column says otherwise.
    pub holder: Option<Key>,
    /// Who hands in and is credited with it: a key of a person or holder.
    pub by: Option<Key>,
    /// Where the file was taken from, in words or as an address on the web: the `source` of `[as_given]`.
    pub source: Option<String>,
    /// When the holder's description was seen: the `seen` of `[as_given]`.
    pub seen: Option<Date>,
}
