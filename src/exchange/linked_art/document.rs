//! Documents: the paper, and its words.
//!
//! The record of a document is that of the paper: its kind, its shelfmark and who keeps it, who made it when, and its pictures. The
//! record of its words has their languages, the transcription as content, and what they are about. The model has no
//! property for whom a document was sent to; the statement of the production says it. Translations are in the manifest.

use super::concepts::{self, CALL_NUMBER, DESCRIPTION, NOTE, PRODUCTION, RIGHTS, TYPE_OF_WORK};
use super::ids;
use super::node::Node;
use super::parts::{self, display, identifier, statement};
use crate::model::certainty::Certainty;
use crate::model::document::{Document, EvidenceTarget, Telling};
use crate::model::series_place::SeriesRef;
use crate::model::vocabulary::List;
use crate::page::document_names::{brief, doubted};
use crate::page::html::CleanHtml;
use crate::page::{Address, Here, claims, figures, plain_text};

/// The record of the paper.
pub(super) fn document(here: &Here<'_>, document: &Document) -> Node {
    let page = Address::Document(document.key.clone());
    let name = here.document_name(document).plain();
    let kind = document.kind.as_ref().map(|kind| Node {
        classified_as: vec![TYPE_OF_WORK.bare()],
        ..concepts::term(here, "Type", List::Documents, kind.as_str())
    });
    let holder = document.holder.as_ref();
    let holder = holder.and_then(|holder| ids::agent(here, &holder.value));
    let shelfmark = document.shelfmark.as_ref().map(|shelfmark| {
        let assigned = holder.clone().map(|by| Node {
            carried_out_by: vec![by],
            ..Node::new("AttributeAssignment")
        });
        Node {
            assigned_by: assigned.into_iter().collect(),
            ..identifier(shelfmark.value.as_str(), CALL_NUMBER)
        }
    });
    let about = plain_text::note(here, document.note.as_ref());
    let carried = has_words(document).then(|| {
        Node::at(
            "LinguisticObject",
            ids::words(here, &document.key),
            name.as_str(),
        )
    });
    Node {
        identified_by: std::iter::once(parts::primary_name(name.as_str()))
            .chain(shelfmark)
            .collect(),
        classified_as: kind.into_iter().collect(),
        referred_to_by: [
            statement(PRODUCTION, brief(here, document).plain()),
            statement(DESCRIPTION, about.trim()),
        ]
        .into_iter()
        .flatten()
        .collect(),
        produced_by: made(here, document, "Production"),
        carries: carried.into_iter().collect(),
        current_custodian: holder.into_iter().collect(),
        representation: figures::document_pictures(here.book.pictures, document)
            .iter()
            .filter_map(|key| parts::representation(here, key))
            .collect(),
        subject_of: parts::subject_of(here, &page, None),
        ..Node::at("HumanMadeObject", ids::record(here, &page), name)
    }
}

/// Whether a document has words, or tells something.
pub(super) fn has_words(document: &Document) -> bool {
    document.transcription.is_some() || !document.tells.is_empty()
}

/// The record of the words.
pub(super) fn words(here: &Here<'_>, document: &Document) -> Node {
    let page = Address::Document(document.key.clone());
    let name = here.document_name(document).plain();
    let words = document.transcription.as_ref();
    let words = words.map(|text| plain_text::by_lines(here, text));
    let languages = document.lang.iter();
    let rights = document.rights.as_ref();
    let rights = rights.map(|rights| figures::rights_in_words(here, rights));
    let mut about: Vec<Node> = Vec::new();
    let is_certain = |telling: &&Telling| telling.certainty() == Certainty::Certain;
    for of in document.tells.iter().filter(is_certain).flat_map(|t| &t.of) {
        let of = target(here, &of.value);
        if let Some(of) = of.filter(|of| !about.contains(of)) {
            about.push(of);
        }
    }
    let tells = document.tells.iter();
    let tells = tells.filter_map(|telling| statement(NOTE, said(here, telling)));
    Node {
        identified_by: vec![parts::primary_name(name.as_str())],
        content: words.filter(|words| !words.is_empty()),
        language: languages
            .filter_map(|tag| concepts::language(&tag.value))
            .collect(),
        about,
        attributed_by: document
            .tells
            .iter()
            .filter(|telling| !is_certain(telling))
            .filter_map(|telling| assigned(here, telling))
            .collect(),
        referred_to_by: tells
            .chain(statement(RIGHTS, rights.unwrap_or_default()))
            .collect(),
        created_by: made(here, document, "Creation"),
        subject_of: parts::subject_of(here, &page, None),
        ..Node::at("LinguisticObject", ids::words(here, &document.key), name)
    }
}

/// Who made it and when, as an event of a class; `None` where neither is recorded.
fn made(here: &Here<'_>, document: &Document, kind: &'static str) -> Option<Box<Node>> {
    let record = ids::record(here, &Address::Document(document.key.clone()));
    let by = document.by.iter().enumerate();
    let by: Vec<Node> = by
        .filter_map(|(at, party)| ids::party(here, party, format!("{record}#by-{}", at + 1)))
        .collect();
    let date = document.date.as_ref();
    let timespan = date.and_then(|date| parts::lasting(here, &date.value));
    if by.is_empty() && timespan.is_none() {
        return None;
    }
    Node {
        carried_out_by: by,
        timespan,
        ..Node::new(kind)
    }
    .boxed()
}

/// What it tells, in words: "Forty sheets were printed (leaf 3)".
pub(super) fn said(here: &Here<'_>, telling: &Telling) -> String {
    let says = telling.says.value.trim_end_matches('.');
    let says = match &telling.at {
        Some(at) => CleanHtml::text(&format!("{says} ({at})")),
        None => CleanHtml::text(says),
    };
    doubted(here, says, telling).plain()
}

/// What the document is not certain to tell of, as an assignment.
fn assigned(here: &Here<'_>, telling: &Telling) -> Option<Node> {
    let things: Vec<Node> = telling
        .of
        .iter()
        .filter_map(|of| target(here, &of.value))
        .collect();
    let certainty = claims::certainty(here, telling.certainty());
    let name = format!("{}: {certainty}", here.words().word("document-tells"));
    (!things.is_empty()).then(|| Node {
        identified_by: vec![display(name)],
        referred_to_by: vec![Node {
            content: Some(said(here, telling)),
            ..Node::new("LinguisticObject")
        }],
        assigned_property: Some("about".to_owned()),
        assigned: things,
        ..Node::new("AttributeAssignment")
    })
}

/// The record that it tells something of; `None` where readers may not know it.
fn target(here: &Here<'_>, of: &EvidenceTarget) -> Option<Node> {
    let design = |key| here.public().designs.get(key);
    match of {
        EvidenceTarget::Design(key) => Some(ids::design(here, design(key)?)),
        EvidenceTarget::State(key, state) => {
            let design = design(key)?;
            design.state(state)?;
            Some(ids::state(here, design, state))
        }
        EvidenceTarget::Printing(key, printing) => {
            let design = design(key)?;
            design.printing(printing)?;
            Some(ids::printing(here, design, printing))
        }
        EvidenceTarget::Impression(key) => {
            design(&key.design)?.impressions.get(&key.number)?;
            Some(ids::sheet(here, key))
        }
        EvidenceTarget::Person(key) => ids::agent(here, key),
        EvidenceTarget::Series(key) => ids::series(here, &SeriesRef::Record(key.clone())),
    }
}
