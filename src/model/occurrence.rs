//! Occurrences: the texts of a record and its references, each with its place.
//!
//! Reading records them by walking every record along its declared keys (`read/shape`). References to
//! nothing, the search for private names in published text, and the lists of who is mentioned where
//! all start from here, so a key declared once is seen by all of them.
//!
//! Texts are not copied: a [`TextAt`] names the bytes of its file, and holds words of its own only
//! where the file writes them differently (with escapes, or in BibTeX).

use super::key::{ImpressionKey, Key};
use super::link;
use super::place::{Place, Sources};
use super::vocabulary::List;

/// A record of the catalogue.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum RecordId {
    /// The catalogue's settings.
    Catalogue,
    /// A design, with its states, printings, variants, matrices and its commentary.
    Design(Key),
    /// An impression.
    Impression(ImpressionKey),
    /// A holder.
    Holder(Key),
    /// A person.
    Person(Key),
    /// An exhibition.
    Exhibition(Key),
    /// A work of the literature.
    Work(Key),
    /// A page of the catalogue's own.
    Page(Key),
    /// A term of the catalogue's own vocabulary.
    Term(List, Key),
}

/// Every text of a record that readers may see, and every reference in it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Occurrences {
    /// The texts. Blank ones, and those declared as never shown, are not among them.
    pub texts: Vec<TextAt>,
    /// The references.
    pub references: Vec<Reference>,
}

impl Occurrences {
    /// Adds the occurrences of another part of the record: a text beside it.
    pub fn extend(&mut self, other: Occurrences) {
        self.texts.extend(other.texts);
        self.references.extend(other.references);
    }
}

/// A text of a record.
#[derive(Clone, Debug, PartialEq)]
pub struct TextAt {
    /// The key whose value it is; `""` for a Markdown text and for an entry of the literature.
    pub key: &'static str,
    /// Where it stands: the words themselves, without quotes, where the file has them as they are
    /// read; else the value or the record that holds them.
    pub place: Place,
    /// The words, where the file does not have them as they are read.
    words: Option<Box<str>>,
}

impl TextAt {
    /// A text whose words are the bytes at `place`.
    #[must_use]
    pub fn as_written(key: &'static str, place: Place) -> TextAt {
        TextAt {
            key,
            place,
            words: None,
        }
    }

    /// A text that the file writes differently from how it is read; `place` holds it.
    #[must_use]
    pub fn in_own_words(key: &'static str, place: Place, words: &str) -> TextAt {
        TextAt {
            key,
            place,
            words: Some(words.into()),
        }
    }

    /// What it says. `sources` are those it was read from.
    #[must_use]
    pub fn words<'a>(&'a self, sources: &'a Sources) -> &'a str {
        match &self.words {
            Some(words) => words,
            None => sources
                .text(self.place.file)
                .get(self.place.span())
                .unwrap_or_default(),
        }
    }

    /// Whether the bytes at its place are its words, so that a part of the one is a part of the other.
    #[must_use]
    pub fn is_as_written(&self) -> bool {
        self.words.is_none()
    }
}

/// A reference in a record.
#[derive(Clone, Debug, PartialEq)]
pub struct Reference {
    /// What it names, by the key as written.
    pub to: Referent,
    /// Where the key stands.
    pub place: Place,
    /// Where in the work or exhibition, as the record says beside the reference: "p. 31".
    pub locator: Option<Box<str>>,
}

/// What a reference names. A record is named in a role; parts, terms and themes are not mentioned.
#[derive(Clone, Debug, PartialEq)]
pub enum Referent {
    /// A record.
    Record(link::Target, MentionRole),
    /// A person or a holder; which of the two, the catalogue says.
    Party(Key, MentionRole),
    /// A part of the design that the record is, or is an impression of.
    Part(DesignPart, Key),
    /// A term of a vocabulary.
    Term(List, Key),
    /// A theme.
    Theme(Key),
}

impl Referent {
    /// The role in which a record is named; `None` for what is no record.
    #[must_use]
    pub fn role(&self) -> Option<MentionRole> {
        match self {
            Referent::Record(_, role) | Referent::Party(_, role) => Some(*role),
            Referent::Part(..) | Referent::Term(..) | Referent::Theme(_) => None,
        }
    }
}

/// A kind of part that a design has.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum DesignPart {
    /// A matrix.
    Matrix,
    /// A state.
    State,
    /// A printing.
    Printing,
    /// A variant.
    Variant,
}

/// In which role a record is mentioned.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum MentionRole {
    /// The artist of the catalogue.
    Artist,
    /// An editor of the catalogue.
    Editor,
    /// Made the design, or a state of it.
    Maker,
    /// Printed a printing.
    Printer,
    /// Published a printing.
    Publisher,
    /// Has a matrix.
    MatrixHolder,
    /// Keeps the impression.
    Holder,
    /// Owns or owned it.
    Owner,
    /// Handled it: a dealer or auction house.
    Agent,
    /// Kept it for its owner.
    Keeper,
    /// Had it under a former number.
    FormerHolder,
    /// Their name is on it.
    Mark,
    /// Put a mark on it.
    AppliedMark,
    /// Saw or reported it.
    Sighting,
    /// Said something about it: a reading, an opinion, an observation, another claim.
    Said,
    /// A work that is cited.
    Cited,
    /// An exhibition in which the impression was shown, or where the exhibition was.
    Exhibited,
    /// A holder that another became.
    Successor,
    /// A related design.
    Related,
    /// Shown side by side.
    Compared,
    /// The reference picture of the design is of it.
    Reference,
    /// A counterproof was taken from it.
    TakenFrom,
    /// The same sheet.
    SameSheet,
    /// Perhaps the same sheet.
    MaybeSameSheet,
    /// Another sheet.
    OtherSheet,
    /// On the same paper.
    SharesSheet,
    /// Of the same set.
    GoesWith,
    /// To be seen instead of a record that does not stand.
    See,
    /// A page of the catalogue's own, in the order of its lists.
    Listed,
    /// Linked to, or shown, in a Markdown text.
    Linked,
}
