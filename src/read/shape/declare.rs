//! The types with which keys are declared (a shape, its keys, the type of each value), and the keys that
//! many shapes share.

use crate::model::codes::Code;
use crate::model::occurrence::{DesignPart, MentionRole};
use crate::model::vocabulary::List;
use crate::model::words::{ClosedList, Standing};

/// The keys of one kind of record or nested table.
#[derive(Debug)]
pub struct Shape {
    /// Its name in a finding: "a point", "an impression".
    pub name: &'static str,
    /// Its own keys, in the order in which a template lists them.
    pub own: &'static [KeyShape],
    /// Whether it also takes the keys of a claim ([`CLAIM`]).
    pub claim: bool,
    /// Whether it also takes the keys of standing ([`STANDING`]).
    pub standing: bool,
    /// Whether it also takes keys of the record's own choice, each with a text.
    pub open: bool,
    /// Whether it also takes `private` ([`PRIVATE`]): not where nothing of the table is ever published.
    pub private: bool,
}

/// One key of a record.
#[derive(Debug)]
pub struct KeyShape {
    /// The key.
    pub name: &'static str,
    /// The type of its value.
    pub takes: Takes,
    /// Whether every such table must have it.
    pub required: bool,
    /// Its meaning in one line, for templates and editors.
    pub help: &'static str,
    /// Whether its texts are shown to readers.
    pub shown: Shown,
    /// For a reference, the key in the same table whose text gives the place in the work or exhibition.
    pub locator: Option<&'static str>,
}

/// Whether readers of the compiled catalogue see the texts of a key. Texts that they see are searched
/// for names that must not be published.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shown {
    /// They are shown, on some page or in some file of the site.
    ToReaders,
    /// They are never shown, for this reason.
    Never(&'static str),
}

impl KeyShape {
    /// Declares that the key's texts are never shown to readers, for the reason `why`.
    pub(super) const fn never_shown(self, why: &'static str) -> KeyShape {
        KeyShape {
            shown: Shown::Never(why),
            ..self
        }
    }

    /// Declares `key`, in the same table, as the locator of this reference.
    pub(super) const fn locator(self, key: &'static str) -> KeyShape {
        KeyShape {
            locator: Some(key),
            ..self
        }
    }
}

/// The type of a key's value. Wherever a list is expected, a single value may be written without
/// brackets.
#[derive(Debug)]
pub enum Takes {
    /// Text; where the key is required, it must not be blank.
    Text,
    /// `true` or `false`.
    Flag,
    /// `true` or `false`; `false` withholds the table and everything in it from readers.
    Publish,
    /// A whole number within these bounds, both included.
    Whole(u32, u32),
    /// A number above 0.
    Above0,
    /// A number, 0 or more.
    From0,
    /// A number above 0 and at most this.
    Fraction(f64),
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
    /// The part's own key, which this value defines.
    OwnKey,
    /// One word of a closed list.
    Word(fn() -> Vec<&'static str>),
    /// A term of a vocabulary.
    Term(List),
    /// A term of a vocabulary, or free words.
    TermOrWords(List),
    /// The key of another record, and the role in which it is mentioned.
    Refers(Target, MentionRole),
    /// The key of a part of the design.
    Part(DesignPart),
    /// The key of a condition of the mark that the same table names.
    MarkCondition,
    /// The key of a theme.
    Theme,
    /// A holder's key, or free words.
    HolderOrWords(MentionRole),
    /// A record, named as in links (`design:14`, `impression:14.7`).
    Link(MentionRole),
    /// What a document tells something of: `design:14`, `state:14/cut-down`, `printing:14/own`, `impression:14.7`,
    /// `person:KEY`, `series:KEY`.
    EvidenceTarget(MentionRole),
    /// The key of a person or holder, or `{ name = "…" }` ([`PARTY`]).
    Party(MentionRole),
    /// Text, or a table of texts by language tag.
    TextByLanguage,
    /// One text or several, or a table of them by language tag.
    TextsByLanguage,
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
    /// A value of one of these types. No key of a record takes such a value; settings of an intake do.
    Either(&'static [Takes]),
    /// One or several.
    Several(&'static Takes),
    /// One bare value, or one or several `{ is, … }` with the keys of a claim.
    Statements(&'static Takes),
    /// Text, a table that says more, or several of both.
    TextOrTables(&'static Shape),
    /// A table.
    Table(&'static Shape),
    /// A list of tables.
    Tables(&'static Shape),
    /// A table whose keys are not declared here.
    Map(MapKeys, &'static Takes),
}

/// The meaning of a table's keys, where they are not declared.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MapKeys {
    /// Headings that the catalogue chooses.
    Headings,
    /// Points of the design.
    Points,
    /// Matrices of the design.
    Matrices,
    /// Values of a point, which this table defines.
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
    /// A work of the literature, by its key, or a document: `document:KEY`.
    Cited,
    /// An exhibition.
    Exhibition,
    /// A mark that several sheets share.
    Mark,
    /// A series.
    Series,
    /// One of the catalogue's own pages.
    Page,
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
        Takes::Refers(Target::Cited, MentionRole::Cited),
        "the literature it is taken from, or the document: \"document:KEY\"",
    )
    .locator("at"),
    may("at", Takes::Text, "where in it: \"p. 31\""),
];

/// A key of an open table that the record chose itself.
pub(crate) static FURTHER: KeyShape = may("…", Takes::Text, "a field by its own name");

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

/// A party without a record of its own.
pub static PARTY: Shape = plain(
    "a name",
    &[must(
        "name",
        Takes::Text,
        "the name, as readers are to see it",
    )],
);

/// The table of a statement, whose value may also stand alone. The key that takes the statement
/// declares the type of `is`.
pub(crate) static STATEMENT: Shape =
    claimed("a statement", &[must("is", Takes::Text, "what is stated")]);

/// The key that every table may have.
pub const PRIVATE: KeyShape = may(
    "private",
    Takes::Several(&Takes::Text),
    "the keys of this table that are never published",
)
.never_shown("it holds names of keys");

/// The key of a record, or of a part of one, in which it names the keys that it had before.
pub const WAS: KeyShape = may(
    "was",
    Takes::Several(&Takes::OwnKey),
    "keys it had before: their addresses lead here",
);

/// The key of a record in which it says which of its doubts are settled.
pub(super) const SETTLED: KeyShape = may(
    "settled",
    Takes::Tables(&SETTLED_DOUBT),
    "doubts about this record that were judged and are at rest",
);

/// A doubt that was judged. Nothing of it is published.
pub static SETTLED_DOUBT: Shape = plain(
    "a settled doubt",
    &[
        must(
            "code",
            Takes::Word(settleable),
            "the code of the doubt or hint, as audit prints it",
        ),
        may(
            "digest",
            Takes::Text,
            "the digest that audit gives: the doubt is raised again once what it rests on changes",
        )
        .never_shown(SETTLED_FOR_EDITORS),
        may("why", Takes::Text, "why it is at rest").never_shown(SETTLED_FOR_EDITORS),
        may(
            "by",
            Takes::Refers(Target::Party, MentionRole::Settled),
            "who judged it: a person's or holder's key",
        ),
        may("date", Takes::Date, "when it was judged"),
    ],
);

const SETTLED_FOR_EDITORS: &str = "only `keyblock audit --settled` shows it";

/// The codes that can be settled.
pub(crate) fn settleable() -> Vec<&'static str> {
    let codes = Code::ALL.iter().filter(|code| code.can_be_settled());
    codes.map(|code| code.as_str()).collect()
}

impl Shape {
    /// Every key the table may have, `private` last.
    pub fn keys(&self) -> impl Iterator<Item = &'static KeyShape> {
        let claim = if self.claim { CLAIM } else { &[] };
        let standing = if self.standing { STANDING } else { &[] };
        self.own
            .iter()
            .chain(claim)
            .chain(standing)
            .chain(self.private.then_some(&PRIVATE))
    }

    /// The declaration of one key; `None` where the table may not have it.
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
pub(crate) const fn may(name: &'static str, takes: Takes, help: &'static str) -> KeyShape {
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
pub(crate) const fn must(name: &'static str, takes: Takes, help: &'static str) -> KeyShape {
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
pub(super) const fn plain(name: &'static str, own: &'static [KeyShape]) -> Shape {
    Shape {
        name,
        own,
        claim: false,
        standing: false,
        open: false,
        private: true,
    }
}

/// A table of a file of which nothing is ever published, such as the settings of an intake.
pub(crate) const fn unpublished(name: &'static str, own: &'static [KeyShape]) -> Shape {
    Shape {
        private: false,
        ..plain(name, own)
    }
}

/// A table that also takes the keys of a claim.
pub(super) const fn claimed(name: &'static str, own: &'static [KeyShape]) -> Shape {
    Shape {
        name,
        own,
        claim: true,
        standing: false,
        open: false,
        private: true,
    }
}

/// A table that also takes the keys of standing.
pub(super) const fn standing(name: &'static str, own: &'static [KeyShape]) -> Shape {
    Shape {
        name,
        own,
        claim: false,
        standing: true,
        open: false,
        private: true,
    }
}
