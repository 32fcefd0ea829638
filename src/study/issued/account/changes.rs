//! The changes that an edition made, as data without words.

use keyblock_model::issued_address::IssuedAddress;
use keyblock_model::key::{ImpressionKey, Key};
use keyblock_model::occurrence::DesignPart;
use keyblock_model::register::Subject;

/// What an edition changed in a design.
#[derive(Clone, Debug, PartialEq)]
pub struct DesignAccount {
    /// The design.
    pub design: Key,
    /// The changes of its own entry.
    pub changes: Vec<DesignChange>,
    /// The changes of its sheets, by number.
    pub sheets: Vec<SheetAccount>,
}

/// A change of the entry of a design.
#[derive(Clone, Debug, PartialEq)]
pub enum DesignChange {
    /// It is new.
    New,
    /// It had another key.
    Moved {
        /// The key that it had.
        was: String,
    },
    /// Its number is another.
    Number {
        /// The number before.
        was: String,
        /// The number in this edition.
        now: String,
    },
    /// Its standing is another; `None`: accepted.
    Standing(Option<String>),
    /// A part of it changed.
    Part(DesignPart, Key, PartChange),
    /// These subjects were revised.
    Revised(Vec<Subject>),
}

/// A change of a part of a design.
#[derive(Clone, Debug, PartialEq)]
pub enum PartChange {
    /// It is new.
    New,
    /// It had another key.
    Moved {
        /// The key that it had.
        was: String,
    },
    /// A state has another numeral.
    Numeral {
        /// The numeral before, with the total: "ii/iii".
        was: String,
        /// The numeral in this edition.
        now: String,
    },
    /// Its standing is another; `None`: accepted.
    Standing(Option<String>),
}

/// What an edition changed in the record of a sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct SheetAccount {
    /// The impression.
    pub sheet: ImpressionKey,
    /// The changes.
    pub changes: Vec<SheetChange>,
}

/// A change of the record of a sheet.
#[derive(Clone, Debug, PartialEq)]
pub enum SheetChange {
    /// It is new.
    New,
    /// It is identified otherwise, as the register writes it ([`keyblock_model::issued_reading`]).
    Identified {
        /// The identification before; empty where there was none.
        was: String,
        /// The identification in this edition.
        now: String,
    },
    /// Another holder has it; empty where none is recorded.
    Holder {
        /// The holder before, by key.
        was: String,
        /// The holder in this edition.
        now: String,
    },
    /// It was found to be of the same sheet as this impression, which has the page of the sheet; `None`: it has its own
    /// page again.
    Sheet(Option<ImpressionKey>),
    /// Its standing is another; `None`: accepted.
    Standing(Option<String>),
    /// These subjects were revised.
    Revised(Vec<Subject>),
}

/// A change that concerns a holder.
#[derive(Clone, Debug, PartialEq)]
pub struct HolderChange {
    /// The impression.
    pub sheet: ImpressionKey,
    /// What changed.
    pub kind: HolderChangeKind,
}

/// How a sheet changed, as its holder sees it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum HolderChangeKind {
    /// Its record is new.
    New,
    /// It is recorded with this holder now, and was with another or none before.
    Came,
    /// It was recorded with this holder before.
    Left,
    /// It is identified otherwise.
    Identified,
    /// Its standing is another.
    Standing,
    /// Its record was revised.
    Revised,
}

/// What an edition changed in another record.
#[derive(Clone, Debug, PartialEq)]
pub struct RecordAccount {
    /// Its address.
    pub address: IssuedAddress,
    /// The changes.
    pub changes: Vec<RecordChange>,
}

/// A change of a record other than a design or an impression.
#[derive(Clone, Debug, PartialEq)]
pub enum RecordChange {
    /// It is new.
    New,
    /// Its address leads to this one: its key changed, or it was merged.
    Leads(IssuedAddress),
    /// A holder was taken over by this one; `None`: it is on its own again.
    TakenOver(Option<Key>),
    /// These subjects were revised.
    Revised(Vec<Subject>),
}

impl DesignAccount {
    /// Whether the design itself is new in the edition.
    #[must_use]
    pub fn is_new(&self) -> bool {
        self.changes.contains(&DesignChange::New)
    }
}

impl RecordAccount {
    /// Whether the record is new in the edition.
    #[must_use]
    pub fn is_new(&self) -> bool {
        self.changes.contains(&RecordChange::New)
    }
}
