//! Occurrences: the texts of a record and its references, each with its place.
//!
//! `read` collects them by walking every record along its declared keys (`read/shape`). The check for
//! unknown references, the search for private names in published text, and the lists of mentions use
//! them, so a key needs to be declared only once.
//!
//! Texts are not copied: a [`TextAt`] names the bytes of its file, and stores the text itself only
//! where the file writes it differently (with escapes, or in BibTeX).

use super::key::{ImpressionKey, Key};
use super::link::Target;
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
    /// A mark that several sheets share.
    Mark(Key),
    /// A document.
    Document(Key),
    /// A series.
    Series(Key),
    /// A page of the catalogue's own.
    Page(Key),
    /// A term of the catalogue's own vocabulary.
    Term(List, Key),
}

impl RecordId {
    /// The record as links name it; `None` for the settings and for terms, which no link names.
    #[must_use]
    pub fn target(&self) -> Option<Target> {
        Some(match self.clone() {
            RecordId::Design(key) => Target::Design(key),
            RecordId::Impression(key) => Target::Impression(key),
            RecordId::Holder(key) => Target::Holder(key),
            RecordId::Person(key) => Target::Person(key),
            RecordId::Exhibition(key) => Target::Exhibition(key),
            RecordId::Work(key) => Target::Work(key),
            RecordId::Mark(key) => Target::Mark(key),
            RecordId::Document(key) => Target::Document(key),
            RecordId::Series(key) => Target::Series(key),
            RecordId::Page(key) => Target::Page(key),
            RecordId::Catalogue | RecordId::Term(..) => return None,
        })
    }
}

/// Every text of a record that readers may see, and every reference in it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Occurrences {
    /// The texts, and the keys that the record defines. Blank ones, and those declared as never shown, are not
    /// among them.
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
    /// The bytes of the text in its file, without quotes, where the file has the text as it is read;
    /// else the place of the value or record that holds it.
    pub place: Place,
    /// Whether it is a key that the record defines, which becomes part of addresses.
    pub is_own_key: bool,
    /// The text, where the file writes it differently from how it is read.
    words: Option<Box<str>>,
}

impl TextAt {
    /// A text that is exactly the bytes at `place`.
    #[must_use]
    pub fn as_written(key: &'static str, place: Place) -> TextAt {
        TextAt {
            key,
            place,
            is_own_key: false,
            words: None,
        }
    }

    /// The same text, as a key that the record defines.
    #[must_use]
    pub fn as_own_key(self) -> TextAt {
        TextAt {
            is_own_key: true,
            ..self
        }
    }

    /// A text that the file writes differently from how it is read; `place` holds it.
    #[must_use]
    pub fn in_own_words(key: &'static str, place: Place, words: &str) -> TextAt {
        TextAt {
            key,
            place,
            is_own_key: false,
            words: Some(words.into()),
        }
    }

    /// The text itself. `sources` are those it was read from.
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

    /// Whether the bytes at its place are the text itself, so that an offset in one is an offset in
    /// the other.
    #[must_use]
    pub fn is_as_written(&self) -> bool {
        self.words.is_none()
    }
}

/// A reference in a record.
#[derive(Clone, Debug, PartialEq)]
pub struct Reference {
    /// The record, part or term it names, by the key as written.
    pub to: Referent,
    /// Where the key stands.
    pub place: Place,
    /// Where in the work or exhibition, as the record says beside the reference: "p. 31".
    pub locator: Option<Box<str>>,
}

/// The record, part or term that a reference names. Only a record is named in a role; parts, terms and
/// themes are not.
#[derive(Clone, Debug, PartialEq)]
pub enum Referent {
    /// A record.
    Record(Target, MentionRole),
    /// A person or a holder: the catalogue has the key as one or the other.
    Party(Key, MentionRole),
    /// A part of the design that the record is, or is an impression of.
    Part(DesignPart, Key),
    /// A part of the design with the first key.
    PartOf(Key, DesignPart, Key),
    /// A term of a vocabulary.
    Term(List, Key),
    /// Words in place of the key of a term, which no term can have.
    TermInWords(List),
    /// A theme.
    Theme(Key),
}

impl Referent {
    /// The role in which a record is named; `None` where it names no record.
    #[must_use]
    pub fn role(&self) -> Option<MentionRole> {
        match self {
            Referent::Record(_, role) | Referent::Party(_, role) => Some(*role),
            Referent::Part(..)
            | Referent::PartOf(..)
            | Referent::Term(..)
            | Referent::TermInWords(_)
            | Referent::Theme(_) => None,
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
    /// The impression bears the mark.
    BearsMark,
    /// Used the mark.
    MarkUser,
    /// A picture of the mark.
    MarkPicture,
    /// Took or drew a picture of it.
    Photographed,
    /// Saw or reported it.
    Sighting,
    /// Said something about it: a reading, an opinion, an observation, another claim.
    Said,
    /// A work or document that is cited.
    Cited,
    /// Wrote or issued the document.
    WroteDocument,
    /// Was sent the document.
    ReceivedDocument,
    /// Keeps the document.
    KeepsDocument,
    /// The document tells something of it.
    ToldOf,
    /// Published the series.
    SeriesPublisher,
    /// A series to which the design belongs, or in which the printing came out.
    InSeries,
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
    /// To be seen instead of a record that is rejected or withdrawn.
    See,
    /// A page of the catalogue's own, in the order of its lists.
    Listed,
    /// Linked to, or shown, in a Markdown text.
    Linked,
    /// Judged a doubt about a record, for the editors alone: no page says so.
    Settled,
}
