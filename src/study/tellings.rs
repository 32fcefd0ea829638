//! What documents tell, by what they tell it of.
//!
//! In: the documents of a catalogue. Out: for each design, state, printing, impression and person, the statements of
//! documents about it ([`DocumentStatement`]), the oldest document first; undated documents last, then by key.
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use literal::catalogue;
//! # use keyblock::study::tellings::Tellings;
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! -- records/documents/letter.toml
//! date = "1931"
//! tells = [{ of = "design:1", says = "The block was cut in May." }]
//! -- records/documents/ledger.toml
//! date = "1927/1930"
//! tells = [{ of = "design:1", says = "Forty sheets were printed." }]
//! "#);
//! let tellings = Tellings::of(&catalogue);
//! let about = tellings.about(&"design:1".parse().unwrap());
//! let documents: Vec<&str> = about.iter().map(|said| said.document.as_str()).collect();
//! assert_eq!(documents, ["ledger", "letter"]);
//! ```

use std::collections::BTreeMap;

use keyblock_model::catalogue::Catalogue;
use keyblock_model::document::{Document, EvidenceTarget, Telling};
use keyblock_model::edtf::Day;
use keyblock_model::key::Key;

/// A statement of a document, by its place in the record.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DocumentStatement {
    /// The document.
    pub document: Key,
    /// The place of the statement in `tells` of the document, from 0.
    pub place: usize,
}

impl DocumentStatement {
    /// The document and what it tells there; `None` where the catalogue has no such document.
    #[must_use]
    pub fn read<'c>(&self, catalogue: &'c Catalogue) -> Option<(&'c Document, &'c Telling)> {
        let document = catalogue.documents.get(&self.document)?;
        Some((document, document.tells.get(self.place)?))
    }
}

/// The statements of all documents.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Tellings(BTreeMap<EvidenceTarget, Vec<DocumentStatement>>);

impl Tellings {
    /// The statements of the documents of a catalogue.
    #[must_use]
    pub fn of(catalogue: &Catalogue) -> Tellings {
        let mut all = Tellings::default();
        for document in in_order(catalogue) {
            for (place, telling) in document.tells.iter().enumerate() {
                for of in &telling.of {
                    let about = all.0.entry(of.value.clone()).or_default();
                    let statement = DocumentStatement {
                        document: document.key.clone(),
                        place,
                    };
                    // A record may name one thing twice.
                    if about.last() != Some(&statement) {
                        about.push(statement);
                    }
                }
            }
        }
        all
    }

    /// The statements about one record or part.
    #[must_use]
    pub fn about(&self, of: &EvidenceTarget) -> &[DocumentStatement] {
        self.0.get(of).map_or(&[], Vec::as_slice)
    }

    /// Everything that documents tell something of, with the statements.
    pub fn iter(&self) -> impl Iterator<Item = (&EvidenceTarget, &[DocumentStatement])> {
        self.0.iter().map(|(of, said)| (of, said.as_slice()))
    }
}

/// The documents of a catalogue, the oldest first: by the first day that each can be of, or by the last where the
/// beginning is open or unknown; undated ones last, then by key.
#[must_use]
pub fn in_order(catalogue: &Catalogue) -> Vec<&Document> {
    let mut documents: Vec<&Document> = catalogue.documents.values().collect();
    documents.sort_by_key(|document| {
        let day = day(document);
        (day.is_none(), day, &document.key)
    });
    documents
}

/// The first day that a document can be of, or the last where the beginning is open or unknown.
#[must_use]
pub fn day(document: &Document) -> Option<Day> {
    let date = &document.date.as_ref()?.value;
    date.earliest().day().or(date.latest().day())
}
