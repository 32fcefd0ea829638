//! What documents tell of a record, from the record to the words of the documents.
//!
//! The words of a document are `about` what it tells of for certain (`document`). The inverse is `subject_of`, whose values
//! the schema embeds: it gives an embedded text no `id`, although the documentation of the API allows one ("Digital
//! Reference Structure"), and the documentation requires the files that carry it. So a text stands here with its name, its
//! languages, and two files: the page of the document, and the record of its words, whose address is the `id` of the words.
//! What a document does not tell for certain is assigned, as on the side of the document.

use std::collections::BTreeSet;

use super::document::said;
use super::node::Node;
use super::parts::{self, display};
use super::{concepts, ids};
use crate::model::certainty::Certainty;
use crate::model::document::{Document, EvidenceTarget, Telling};
use crate::model::key::Key;
use crate::page::{Address, Here, claims};

/// The documents that tell of a record, as properties of it.
#[derive(Default)]
pub(super) struct DocumentEvidence {
    /// The words of each document that certainly tells of it, once; the oldest document first.
    pub subject_of: Vec<Node>,
    /// Each statement that is not certain to be about it.
    pub attributed_by: Vec<Node>,
}

/// The documents that tell of one record.
pub(super) fn about(here: &Here<'_>, of: EvidenceTarget) -> DocumentEvidence {
    about_any(here, &[of])
}

/// The documents that tell of a thing by any of its records.
pub(super) fn about_any(here: &Here<'_>, of: &[EvidenceTarget]) -> DocumentEvidence {
    let tellings = &here.book.studies.tellings;
    let mut evidence = DocumentEvidence::default();
    let mut certain: BTreeSet<&Key> = BTreeSet::new();
    let mut doubted = Vec::new();
    for statement in of.iter().flat_map(|of| tellings.about(of)) {
        let Some((document, telling)) = statement.read(here.public()) else {
            continue;
        };
        if telling.certainty() == Certainty::Certain {
            if certain.insert(&document.key) {
                evidence.subject_of.push(words(here, document));
            }
        } else if !doubted.contains(&statement) {
            doubted.push(statement);
            let assigned = assignment(here, document, telling);
            evidence.attributed_by.push(assigned);
        }
    }
    evidence
}

/// The words of a document, by the files in which they stand.
fn words(here: &Here<'_>, document: &Document) -> Node {
    let name = here.document_name(document).plain();
    let page = ids::page_address(here, &Address::Document(document.key.clone()));
    let record = ids::words(here, &document.key);
    let languages = document.lang.iter();
    Node {
        identified_by: vec![parts::primary_name(name.as_str())],
        language: languages
            .filter_map(|tag| concepts::language(&tag.value))
            .collect(),
        digitally_carried_by: vec![
            parts::page_file(page),
            parts::digital(record, ids::MEDIA_TYPE),
        ],
        label: Some(name),
        ..Node::new("LinguisticObject")
    }
}

/// A statement that is not certain to be about the record.
fn assignment(here: &Here<'_>, document: &Document, telling: &Telling) -> Node {
    let certainty = claims::certainty(here, telling.certainty());
    let name = format!("{}: {certainty}", here.words().word("documents-on-them"));
    let words = Node::at(
        "LinguisticObject",
        ids::words(here, &document.key),
        here.document_name(document).plain(),
    );
    Node {
        identified_by: vec![display(name)],
        referred_to_by: vec![Node {
            content: Some(said(here, telling)),
            ..Node::new("LinguisticObject")
        }],
        assigned_property: Some("subject_of".to_owned()),
        assigned: vec![words],
        ..Node::new("AttributeAssignment")
    }
}
