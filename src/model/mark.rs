//! Marks: what was put on sheets by hand or stamp, after or beside the printing.
//!
//! A [`Mark`] is on one sheet. A seal, stamp or collector's mark that several sheets bear has a record of its own
//! ([`MarkRecord`]), which the marks on the sheets name; what such a mark does not say itself, its record says
//! ([`super::catalogue::Catalogue::described_mark`]).

use std::borrow::Cow;

use super::certainty::{Claim, Statements};
use super::edtf::Date;
use super::key::{Key, PictureKey};
use super::literature::Citation;
use super::note::Note;
use super::place::{Place, Placed};
use super::size::Size;
use super::words::{Side, closed_list};

closed_list! {
    /// The kind of a mark.
    MarkKind {
        /// A signature.
        Signature = "signature",
        /// A stamp.
        Stamp = "stamp",
        /// A seal.
        Seal = "seal",
        /// A collector's mark.
        Collector = "collector",
        /// Other writing.
        Inscription = "inscription",
    }
}

/// A mark on a sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// The key of its record, where it has one.
    pub record: Option<Placed<Key>>,
    /// The condition of the mark, a key of that record.
    pub condition: Option<Placed<Key>>,
    /// Its kind.
    pub kind: Option<Placed<MarkKind>>,
    /// Pencil, ink, brush, blind …
    pub medium: Option<String>,
    /// Its text.
    pub text: Option<String>,
    /// Where on that side: "lower right, in the margin".
    pub at: Option<String>,
    /// The side it is on.
    pub side: Option<Side>,
    /// The key of the person or holder whose name it bears.
    pub whose: Option<Placed<Key>>,
    /// The key of the person or holder who applied it.
    pub applied_by: Option<Placed<Key>>,
    /// When it was put there.
    pub applied: Option<Placed<Date>>,
    /// Its colour.
    pub colour: Option<String>,
    /// Its number in a repertory of marks.
    pub number: Option<String>,
    /// What is to be said of it on this sheet, where its words are not known.
    pub note: Option<String>,
    /// The source and certainty of the statement.
    pub claim: Claim,
    /// Where the mark is recorded.
    pub place: Place,
}

impl Mark {
    /// The mark with its kind, text, colour and number in a repertory, those that it does not say itself from its
    /// record. Of several numbers the first is taken.
    #[must_use]
    pub fn described(&self, record: Option<&MarkRecord>) -> Cow<'_, Mark> {
        let Some(record) = record else {
            return Cow::Borrowed(self);
        };
        let mut described = self.clone();
        let text = record.text.as_ref().map(|text| text.value.clone());
        let number = record.reference.iter().find_map(|r| r.number.clone());
        described.kind = described.kind.or_else(|| record.kind.clone());
        described.text = described.text.or(text);
        described.colour = described.colour.or_else(|| record.colour.clone());
        described.number = described.number.or(number);
        Cow::Owned(described)
    }
}

/// A mark that several sheets share.
#[derive(Clone, Debug, PartialEq)]
pub struct MarkRecord {
    /// Its key: the name of its file.
    pub key: Key,
    /// Its kind.
    pub kind: Option<Placed<MarkKind>>,
    /// Its text.
    pub text: Option<Placed<String>>,
    /// A picture of it, recorded with a sheet or a design.
    pub picture: Option<Placed<PictureKey>>,
    /// Its size.
    pub size: Statements<Size>,
    /// Its colour.
    pub colour: Option<String>,
    /// Its number in repertories of marks.
    pub reference: Vec<Citation>,
    /// Those who used it.
    pub users: Vec<RecordedUser>,
    /// Its conditions, in the order of time.
    pub conditions: Vec<MarkCondition>,
    /// Notes on it.
    pub note: Option<Note>,
    /// Where it is recorded.
    pub place: Place,
}

impl MarkRecord {
    /// A condition, by key.
    #[must_use]
    pub fn condition(&self, key: &Key) -> Option<&MarkCondition> {
        self.conditions.iter().find(|c| c.key.value == *key)
    }
}

/// Somebody who used a mark.
#[derive(Clone, Debug, PartialEq)]
pub struct RecordedUser {
    /// The key of the person or holder.
    pub person: Placed<Key>,
    /// From when.
    pub from: Option<Placed<Date>>,
    /// Until when.
    pub to: Option<Placed<Date>>,
    /// The source and certainty of the statement.
    pub claim: Claim,
}

/// A condition of a mark: whole, chipped, recut. It dates an impression of a seal as a state dates a print.
#[derive(Clone, Debug, PartialEq)]
pub struct MarkCondition {
    /// Its key.
    pub key: Placed<Key>,
    /// What is to be seen, in a sentence.
    pub summary: Option<String>,
    /// From when the mark was so.
    pub from: Option<Placed<Date>>,
    /// Until when it was so.
    pub to: Option<Placed<Date>>,
}
