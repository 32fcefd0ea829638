//! The kinds of records that are added: what is asked of each, and what there is to fill in.

use crate::read::next_record::{Given, IN_SERIES, POSITION};

/// A kind of record.
pub(super) struct RecordKind {
    /// Its name.
    pub name: &'static str,
    /// What is asked, in this order; each is an option too.
    pub questions: &'static [Question],
    /// What a cataloguer fills in, by key, the most important first.
    pub to_fill_in: &'static [&'static str],
}

/// What is asked about a key.
pub(super) struct Question {
    /// The key.
    pub key: &'static str,
    /// The words.
    pub ask: &'static str,
    /// How the answer is written.
    pub form: Form,
    /// The key without which there is nothing to ask.
    pub only_with: Option<&'static str>,
}

/// How an answer is written in the record.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Form {
    /// A text.
    Text,
    /// A list of texts, given with commas between them.
    List,
    /// The text of the first title.
    Title,
    /// What names the series of a design, or its number there.
    OfSeries,
}

impl Question {
    /// The value that an answer gives; `None` for an empty one.
    pub(super) fn given(&self, answer: &str) -> Option<Given> {
        let answer = answer.trim();
        if answer.is_empty() {
            return None;
        }
        Some(match self.form {
            Form::Text => Given::text(self.key, answer),
            Form::Title => Given::title(self.key, answer),
            Form::OfSeries => Given::of_series(self.key, answer),
            Form::List => Given::texts(self.key, answer.split(',').map(str::trim)),
        })
    }
}

const fn question(key: &'static str, ask: &'static str, form: Form) -> Question {
    Question {
        key,
        ask,
        form,
        only_with: None,
    }
}

const fn text(key: &'static str, ask: &'static str) -> Question {
    question(key, ask, Form::Text)
}

const fn list(key: &'static str, ask: &'static str) -> Question {
    question(key, ask, Form::List)
}

pub(super) static IMPRESSION: RecordKind = RecordKind {
    name: "impression",
    questions: &[
        text("holder", "Who keeps it? The key of a holder"),
        text("accession", "Its accession number"),
        text(
            "status",
            "Its status: located, untraced, destroyed or stolen",
        ),
        text(
            "kind",
            "What is it? edition, proof, trial-proof … (`keyblock terms kinds`)",
        ),
    ],
    to_fill_in: &[
        "holder",
        "accession",
        "kind",
        "[identified]",
        "[observed]",
        "[sheet]",
        "[[marks]]",
        "[[pictures]]",
        "[[provenance]]",
        "[[sightings]]",
    ],
};

pub(super) static DESIGN: RecordKind = RecordKind {
    name: "design",
    questions: &[
        question("titles", "Its title", Form::Title),
        text(
            "date",
            "When was it made? 1927, 1927~ about, 1927? uncertain, 1927/1931",
        ),
        list(
            "technique",
            "Its techniques, joined by commas: colour-woodcut, etching … (`keyblock terms techniques`)",
        ),
        question(
            IN_SERIES,
            "The series that it belongs to: its key or title",
            Form::OfSeries,
        ),
        Question {
            only_with: Some(IN_SERIES),
            ..question(
                POSITION,
                "Its number there, as the series or a list gives it",
                Form::OfSeries,
            )
        },
    ],
    to_fill_in: &[
        "titles",
        "date",
        "makers",
        "technique",
        IN_SERIES,
        "[size]",
        "[[matrices]]",
        "[[points]]",
        "[[states]]",
        "[[printings]]",
    ],
};

pub(super) static HOLDER: RecordKind = RecordKind {
    name: "holder",
    questions: &[
        text(
            "kind",
            "What is it? museum, library, archive, foundation, private, trade, unknown",
        ),
        text("place", "The town"),
        text("country", "The country: two capital letters (ISO 3166-1)"),
    ],
    to_fill_in: &["kind", "place", "country", "isil", "web", "credit"],
};

pub(super) static PERSON: RecordKind = RecordKind {
    name: "person",
    questions: &[
        list(
            "roles",
            "What did they do? Keys joined by commas: printer, publisher … (`keyblock terms roles`)",
        ),
        text("born", "When were they born?"),
        text("died", "When did they die?"),
    ],
    to_fill_in: &["sort", "roles", "born", "died", "names", "authority"],
};

pub(super) static DOCUMENT: RecordKind = RecordKind {
    name: "document",
    questions: &[
        text(
            "kind",
            "What is it? letter, ledger, contract … (`keyblock terms documents`)",
        ),
        text("date", "When was it written?"),
        text("holder", "Who keeps it? The key of a holder"),
        text("shelfmark", "Its shelfmark there"),
    ],
    to_fill_in: &[
        "kind",
        "date",
        "by",
        "to",
        "holder",
        "shelfmark",
        "lang",
        "[[tells]]",
        "[[pictures]]",
    ],
};

pub(super) static MARK: RecordKind = RecordKind {
    name: "mark",
    questions: &[
        text(
            "kind",
            "What is it? signature, stamp, seal, collector, inscription",
        ),
        text("text", "Its words"),
    ],
    to_fill_in: &[
        "kind",
        "text",
        "size",
        "colour",
        "picture",
        "users",
        "[[conditions]]",
    ],
};

pub(super) static SERIES: RecordKind = RecordKind {
    name: "series",
    questions: &[
        text(
            "issued",
            "How was it published? portfolio, parts, set, album",
        ),
        text("date", "When was it published?"),
        text(
            "publisher",
            "Who published it? The key of a person or a holder",
        ),
    ],
    to_fill_in: &["issued", "date", "publisher", "number", "note"],
};
