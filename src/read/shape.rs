//! Shapes: which keys each kind of record has, declared once.
//!
//! The reader (`fields`), the JSON Schemas and the commented templates are made from these tables:
//! a key that is not here cannot be read, and a key that is here must be read (checked in
//! development builds by `Fields::finish`).
//!
//! In: nothing. Out: one [`Shape`] a record kind and a nested table, [`RECORDS`] naming the kinds.
//! Not here: what the values become (`values` and the readers of each kind).

mod design;
mod impression;
mod others;
mod picture;

pub use design::{
    COMPARISON, DESIGN, MAKER, MATRIX, MATRIX_NOW, POINT, PRINTING, RELATED, SERIES, SIZE, STATE,
    TITLE, VARIANT,
};
pub use impression::{
    EXHIBITED, FORMER_ACCESSION, IDENTIFICATION, IMPRESSION, MARK, MAYBE_SAME_SHEET, OBSERVED,
    OPINION, OTHER_SHEET, PROVENANCE, SAME_SHEET, SHEET, SIGHTING,
};

pub use others::{
    CATALOGUE, CONSENT, EXHIBITION, FORMER_NAME, HOLDER, OTHER_NAME, PERSON, PICTURES, PRIVACY,
    SUCCESSOR, TERM,
};
pub use picture::{DESIGN_PICTURE, PICTURE};

pub(crate) use others::consent_covers;

use crate::model::occurrence::{DesignPart, MentionRole};
use crate::model::vocabulary::List;
use crate::model::words::{ClosedList, Standing};

/// The keys of one kind of record or nested table.
#[derive(Debug)]
pub struct Shape {
    /// What it is called in a finding: "a point", "an impression".
    pub name: &'static str,
    /// Its own keys, in the order in which a template lists them.
    pub own: &'static [KeyShape],
    /// Whether it also takes the keys of a claim ([`CLAIM`]).
    pub claim: bool,
    /// Whether it also takes the keys of standing ([`STANDING`]).
    pub standing: bool,
}

/// One key of a record.
#[derive(Debug)]
pub struct KeyShape {
    /// The key.
    pub name: &'static str,
    /// What its value is.
    pub takes: Takes,
    /// Whether every such record must have it.
    pub required: bool,
    /// What it says, in one line, for templates and editors.
    pub help: &'static str,
    /// Whether its texts are shown to readers.
    pub shown: Shown,
    /// Of a reference: the key of the same table whose text says where in the work or exhibition.
    pub locator: Option<&'static str>,
}

/// Whether the texts of a key are shown to readers of the compiled catalogue. Those that are shown are
/// searched for names that must not be published.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shown {
    /// They are, on some page or in some file of the site.
    ToReaders,
    /// They never are, for this reason.
    Never(&'static str),
}

impl KeyShape {
    /// The same key; its texts are never shown to readers, for the reason `why`.
    const fn never_shown(self, why: &'static str) -> KeyShape {
        KeyShape {
            shown: Shown::Never(why),
            ..self
        }
    }

    /// The same key; the text of `key`, in the same table, says where in what it names.
    const fn locator(self, key: &'static str) -> KeyShape {
        KeyShape {
            locator: Some(key),
            ..self
        }
    }
}

/// What the value of a key is. Wherever a list is taken, one value alone may stand without brackets.
#[derive(Debug)]
pub enum Takes {
    /// Text; where the key is required it must say something.
    Text,
    /// `true` or `false`.
    Flag,
    /// `true` or `false`; `false` keeps the table and all in it from readers.
    Publish,
    /// A whole number between two, both included.
    Whole(u32, u32),
    /// A number above 0.
    Above0,
    /// An EDTF date, as text.
    Date,
    /// `[height, width]` in millimetres.
    Size,
    /// `[left, top, width, height]` in percent of a picture.
    Box,
    /// A colour, `#rrggbb`.
    Colour,
    /// A language tag, BCP 47.
    Language,
    /// A country, ISO 3166-1 alpha-2.
    Country,
    /// A library or museum code, ISO 15511.
    Isil,
    /// An address on the web, `http` or `https`.
    Web,
    /// A path inside the design's folder.
    File,
    /// The record's own key, made here.
    OwnKey,
    /// One word of a closed list.
    Word(fn() -> Vec<&'static str>),
    /// A term of a vocabulary.
    Term(List),
    /// A term of a vocabulary, or free words.
    TermOrWords(List),
    /// The key of another record, and the role in which that is mentioned.
    Refers(Target, MentionRole),
    /// The key of a part of the design.
    Part(DesignPart),
    /// The key of a theme.
    Theme,
    /// A holder's key, or free words.
    HolderOrWords(MentionRole),
    /// A record as links name it (`design:14`, `impression:14.7`).
    Link(MentionRole),
    /// The key of a person or holder, or `{ name = "…" }` ([`PARTY`]).
    Party(MentionRole),
    /// Text, or a table of texts by language tag.
    TextByLanguage,
    /// A list of `[x, y, x, y]`, percent.
    Ties,
    /// A point's value (text or number), or several.
    PointValues,
    /// A point's value, several, or a table [`OBSERVED`].
    Observed,
    /// The key of a state, several, or a table of matrix and state.
    StateReading,
    /// `"all"`, or the keys of states.
    StatesPrinted,
    /// One or several.
    Several(&'static Takes),
    /// One bare value, or one or several `{ is, … }` with the keys of a claim.
    Statements(&'static Takes),
    /// A table.
    Table(&'static Shape),
    /// A list of tables.
    Tables(&'static Shape),
    /// A table whose keys are not declared here.
    Map(MapKeys, &'static Takes),
}

/// What the keys of a table are, where they are not declared.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MapKeys {
    /// Headings of the catalogue's own.
    Headings,
    /// Points of the design.
    Points,
    /// Matrices of the design.
    Matrices,
    /// Values of a point, made here.
    Values,
}

/// The kind of record that a reference names.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Target {
    /// A design.
    Design,
    /// An impression: `14.7`.
    Impression,
    /// A picture: `14.7/recto`.
    Picture,
    /// A holder.
    Holder,
    /// A person.
    Person,
    /// A person or a holder.
    Party,
    /// A work of the literature.
    Work,
    /// An exhibition.
    Exhibition,
    /// A page of the catalogue's own.
    Page,
}

/// The kinds of record: the name of the schema, its shape, and whether the file holds many of them
/// by key (`exhibitions.toml`, a vocabulary) or is one.
pub static RECORDS: &[(&str, &Shape, Holds)] = &[
    ("catalogue", &CATALOGUE, Holds::One),
    ("design", &DESIGN, Holds::One),
    ("impression", &IMPRESSION, Holds::One),
    ("holder", &HOLDER, Holds::One),
    ("person", &PERSON, Holds::One),
    ("exhibitions", &EXHIBITION, Holds::ManyByKey),
    ("vocabulary", &TERM, Holds::ManyByKey),
];

/// Whether a file is one record or holds many.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Holds {
    /// The file is one record.
    One,
    /// Each table of the file is a record, its key the table's name.
    ManyByKey,
}

/// The keys of a claim.
pub const CLAIM: &[KeyShape] = &[
    may(
        "certainty",
        Takes::Word(words::<crate::model::certainty::Certainty>),
        "how sure; certain where nothing is said",
    ),
    may(
        "basis",
        Takes::Word(words::<crate::model::certainty::Basis>),
        "what the statement rests on",
    ),
    may(
        "by",
        Takes::Refers(Target::Party, MentionRole::Said),
        "who says so: a person's or holder's key",
    ),
    may("date", Takes::Date, "when it was said"),
    may(
        "cite",
        Takes::Refers(Target::Work, MentionRole::Cited),
        "the literature it is taken from",
    )
    .locator("at"),
    may("at", Takes::Text, "where in it: \"p. 31\""),
];

/// The keys of standing.
pub const STANDING: &[KeyShape] = &[
    may(
        "standing",
        Takes::Word(words::<Standing>),
        "whether the record stands; accepted where nothing is said",
    ),
    may(
        "see",
        Takes::Several(&Takes::Link(MentionRole::See)),
        "what to see instead, as links name it: \"design:15\"",
    ),
    may("why", Takes::Text, "why"),
];

/// Somebody without a record of their own.
pub static PARTY: Shape = plain(
    "a name",
    &[must(
        "name",
        Takes::Text,
        "the name, as readers are to see it",
    )],
);

/// The table of a statement where the value may also stand alone. What `is` takes is declared by the
/// key that takes the statement.
pub(crate) static STATEMENT: Shape =
    claimed("a statement", &[must("is", Takes::Text, "what is stated")]);

/// The key that every table may have.
pub const PRIVATE: KeyShape = may(
    "private",
    Takes::Several(&Takes::Text),
    "the keys of this table that are never published",
)
.never_shown("it holds names of keys");

impl Shape {
    /// Every key the table may have, `private` last.
    pub fn keys(&self) -> impl Iterator<Item = &'static KeyShape> {
        let claim = if self.claim { CLAIM } else { &[] };
        let standing = if self.standing { STANDING } else { &[] };
        self.own
            .iter()
            .chain(claim)
            .chain(standing)
            .chain(std::iter::once(&PRIVATE))
    }

    /// One key, where the table may have it.
    #[must_use]
    pub fn key(&self, name: &str) -> Option<&'static KeyShape> {
        self.keys().find(|key| key.name == name)
    }
}

/// The words of a closed list, in its order.
#[must_use]
pub fn words<T: ClosedList>() -> Vec<&'static str> {
    T::ALL.iter().map(|value| value.word()).collect()
}

/// A key that a record may have.
const fn may(name: &'static str, takes: Takes, help: &'static str) -> KeyShape {
    KeyShape {
        name,
        takes,
        required: false,
        help,
        shown: Shown::ToReaders,
        locator: None,
    }
}

/// A key that every such record must have.
const fn must(name: &'static str, takes: Takes, help: &'static str) -> KeyShape {
    KeyShape {
        name,
        takes,
        required: true,
        help,
        shown: Shown::ToReaders,
        locator: None,
    }
}

/// A table with its own keys only.
const fn plain(name: &'static str, own: &'static [KeyShape]) -> Shape {
    Shape {
        name,
        own,
        claim: false,
        standing: false,
    }
}

/// A table that also takes the keys of a claim.
const fn claimed(name: &'static str, own: &'static [KeyShape]) -> Shape {
    Shape {
        name,
        own,
        claim: true,
        standing: false,
    }
}

/// A table that also takes the keys of standing.
const fn standing(name: &'static str, own: &'static [KeyShape]) -> Shape {
    Shape {
        name,
        own,
        claim: false,
        standing: true,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Every shape that a record reaches, each once.
    fn all_shapes() -> Vec<&'static Shape> {
        fn visit(shape: &'static Shape, seen: &mut Vec<&'static Shape>) {
            if seen.iter().any(|s| std::ptr::eq(*s, shape)) {
                return;
            }
            seen.push(shape);
            for key in shape.keys() {
                visit_takes(&key.takes, seen);
            }
        }
        fn visit_takes(takes: &'static Takes, seen: &mut Vec<&'static Shape>) {
            match takes {
                Takes::Table(shape) | Takes::Tables(shape) => visit(shape, seen),
                Takes::Several(inner) | Takes::Statements(inner) | Takes::Map(_, inner) => {
                    visit_takes(inner, seen);
                }
                Takes::Observed => visit(&OBSERVED, seen),
                Takes::Party(_) => visit(&PARTY, seen),
                _ => {}
            }
        }
        let mut seen = Vec::new();
        for (_, shape, _) in RECORDS {
            visit(shape, &mut seen);
        }
        seen
    }

    #[test]
    fn no_table_declares_a_key_twice() {
        for shape in all_shapes() {
            let mut names: Vec<_> = shape.keys().map(|k| k.name).collect();
            names.sort_unstable();
            let all = names.len();
            names.dedup();
            assert_eq!(names.len(), all, "{} declares a key twice", shape.name);
        }
    }

    #[test]
    fn every_key_has_a_line_of_help() {
        for shape in all_shapes() {
            for key in shape.keys() {
                assert!(!key.help.is_empty(), "{}.{}", shape.name, key.name);
                assert!(!key.help.contains('\n'), "{}.{}", shape.name, key.name);
            }
        }
    }

    #[test]
    fn a_locator_is_a_text_of_the_same_table() {
        for shape in all_shapes() {
            for key in shape.keys() {
                if let Some(locator) = key.locator {
                    let declared = shape.key(locator).map(|key| &key.takes);
                    let name = (shape.name, key.name);
                    assert!(matches!(declared, Some(Takes::Text)), "{name:?}");
                }
            }
        }
    }

    /// DESIGN.md section 4, "Required".
    #[test]
    fn what_is_required_is_what_the_design_requires() {
        let required = |shape: &Shape| -> Vec<_> {
            shape
                .keys()
                .filter(|k| k.required)
                .map(|k| k.name)
                .collect()
        };
        assert_eq!(
            required(&CATALOGUE),
            ["title", "siglum", "artist", "language", "address"]
        );
        assert_eq!(required(&DESIGN), ["titles"]);
        for shape in [&MATRIX, &STATE, &VARIANT] {
            assert_eq!(required(shape), ["key"], "{}", shape.name);
        }
        assert_eq!(required(&PRINTING), ["key", "kind", "states"]);
        assert_eq!(required(&POINT), ["key", "ask", "kind", "rests_on"]);
        assert_eq!(required(&IMPRESSION), ["status"]);
        assert_eq!(required(&PICTURE), ["file", "rights"]);
        assert_eq!(required(&SIGHTING), ["date"]);
        assert_eq!(required(&HOLDER), ["name", "kind"]);
        assert_eq!(required(&PERSON), ["name"]);
        assert_eq!(required(&EXHIBITION), ["title"]);
    }
}
