//! Kinds of events, by their numbers in the LIDO Terminology or by their terms.

use crate::exchange::intake::records::node::Node;

/// Numbers of the LIDO Terminology, words for them in paths, and terms that records have (German terms: the terminology's
/// own labels; French and Dutch: from memory). Numbers 1, 2, 6, 7, 12, 224, 225 and 485: `src/exchange/lido`; the others as
/// published mappings to LIDO give them.
const EVENTS: &[(&str, &str, &[&str])] = &[
    (
        "00001",
        "acquisition",
        &["acquisition", "erwerb", "erwerbung", "verwerving"],
    ),
    ("00002", "finding", &["finding", "fund", "auffindung"]),
    (
        "00003",
        "event",
        &["event", "(non-specified)", "nicht spezifiziert"],
    ),
    ("00006", "modification", &["modification", "bearbeitung"]),
    (
        "00007",
        "production",
        &["production", "herstellung", "fabrication", "vervaardiging"],
    ),
    ("00009", "loss", &["loss", "verlust"]),
    (
        "00012",
        "creation",
        &["creation", "geistige schöpfung", "création", "creatie"],
    ),
    ("00223", "move", &["move", "ortswechsel"]),
    ("00224", "designing", &["designing", "design", "entwurf"]),
    (
        "00225",
        "exhibition",
        &["exhibition", "ausstellung", "exposition", "tentoonstelling"],
    ),
    (
        "00226",
        "commissioning",
        &["commissioning", "auftrag", "beauftragung"],
    ),
    (
        "00227",
        "provenance",
        &["provenance", "provenienz", "herkomst"],
    ),
    (
        "00228",
        "publication",
        &[
            "publication",
            "veröffentlichung",
            "publikation",
            "publicatie",
        ],
    ),
    ("00485", "publication", &[]),
    (
        "00487",
        "production",
        &["carrier production", "druck", "printing", "drucklegung"],
    ),
];

/// The address of a number of the LIDO Terminology begins so.
const TERMINOLOGY: &str = "terminology.lido-schema.org/";

/// The kind of an event: our word where its number or term is known, else its term as the record has it.
pub(super) fn event(node: &Node) -> String {
    let Some(kind) = node.child("eventType") else {
        return "event".to_owned();
    };
    let terms: Vec<&Node> = kind.all("term").chain(concept_terms(kind)).collect();
    let known = known(kind, &terms);
    let Some(word) = known else {
        let term = terms.iter().find_map(|term| term.take());
        return term.unwrap_or("event").to_owned();
    };
    word.to_owned()
}

/// Whether the kind of an event is known by its number or its term.
pub(super) fn is_known(node: &Node) -> bool {
    let Some(kind) = node.child("eventType") else {
        return true;
    };
    let terms: Vec<&Node> = kind.all("term").chain(concept_terms(kind)).collect();
    known(kind, &terms).is_some()
}

fn known(kind: &Node, terms: &[&Node]) -> Option<&'static str> {
    let ids = kind.all("conceptID").map(Node::peek);
    let by_number = ids
        .filter_map(|id| id.split_once(TERMINOLOGY))
        .filter_map(|(_, number)| number.strip_prefix("lido"))
        .find_map(|number| EVENTS.iter().find(|(known, ..)| *known == number));
    let by_term = || {
        let mut terms = terms.iter();
        terms.find_map(|term| {
            let term = term.peek().to_lowercase();
            EVENTS
                .iter()
                .find(|(_, _, words)| words.contains(&term.as_str()))
        })
    };
    by_number.or_else(by_term).map(|(_, word, _)| *word)
}

/// The terms of a concept in SKOS form, which version 1.1 allows beside `term`.
fn concept_terms(kind: &Node) -> impl Iterator<Item = &Node> {
    kind.all("Concept")
        .flat_map(|concept| concept.all("prefLabel"))
}
