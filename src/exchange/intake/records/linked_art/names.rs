//! Names, identifiers and statements, by what they are classified as.

use super::concepts::{self, is, label, word};
use super::{dimensions, ownership};
use crate::exchange::intake::records::json::{address, class};
use crate::exchange::intake::records::limits::STEP_BYTES;
use crate::exchange::intake::records::node::Node;
use crate::exchange::intake::records::reading::{Place, shorten, with_language};
use crate::exchange::intake::records::row::Row;

/// What a name, an identifier or a statement is; empty for a statement that is not classified.
pub(super) fn kind(node: &Node) -> String {
    let mut kinds: Vec<String> = Vec::new();
    let (mut is_accession, mut is_former) = (false, false);
    for concept in node.all("classified_as") {
        is_accession |= is(concept, "accession number");
        is_former |= is(concept, "former name");
        let word = word(concept);
        if !word.is_empty() {
            kinds.push(word);
        }
    }
    if is_accession && is_former {
        return "former accession number".to_owned();
    }
    let kind = kinds.join(", ");
    match (class(node), kind.as_str()) {
        ("Identifier", "") => "identifier".to_owned(),
        ("Name", "") => "name".to_owned(),
        // Labels of a house's own could be mistaken for those of the other class.
        ("Identifier", _) if !is_known(&kind) => format!("identifier: {kind}"),
        _ => kind,
    }
}

fn is_known(kind: &str) -> bool {
    kind.ends_with(" number")
}

/// The language of a name or a statement.
pub(super) fn language(node: &Node) -> String {
    let languages: Vec<String> = node.all("language").map(concepts::language).collect();
    languages.join("+")
}

/// What is read of a record as a whole: what its parts say together.
pub(super) fn record(object: &Node, row: &mut Row) {
    // The name by which the object is shown comes before its others.
    let is_primary = |name: &&Node| {
        name.all("classified_as")
            .any(|kind| is(kind, "primary name"))
    };
    let (primary, others): (Vec<&Node>, Vec<&Node>) =
        object.all("identified_by").partition(is_primary);
    for name in primary.into_iter().chain(others) {
        said(name, row);
    }
    for statement in object.all("referred_to_by") {
        said(statement, row);
    }
    dimensions::read(object, row);
    ownership::read(object, row);
    files(object, row);
}

/// Kinds of which each has a column.
const ONE_EACH: [&str; 4] = [
    "accession number",
    "former accession number",
    "primary name",
    "name",
];

/// Whether texts of a path have a column each.
pub(super) fn is_numbered(path: &str) -> bool {
    ONE_EACH
        .iter()
        .any(|kind| path == format!("identified_by[{kind}]"))
        || ["representation", "subject_of[web page]"].contains(&path)
}

/// A name, an identifier or a statement.
fn said(node: &Node, row: &mut Row) {
    let kind = kind(node);
    let language = language(node);
    let Some(content) = node.child("content").and_then(Node::take) else {
        return;
    };
    let mut path = match kind.as_str() {
        "" => node.name.to_string(),
        kind => format!("{}[{kind}]", node.name),
    };
    if path.len() > STEP_BYTES {
        row.add_further(&node.name, &kind);
        shorten(&mut path, STEP_BYTES);
    }
    let heading = with_language(&path, &language);
    if is_numbered(&path) {
        row.add_numbered(&heading, content);
    } else {
        row.add(&heading, content);
    }
}

/// Kinds of work (which are often techniques) apart from other classifications.
pub(super) fn classification(concept: &Node, row: &mut Row) {
    let is_work = concept
        .all("classified_as")
        .any(|kind| is(kind, "type of work"));
    let path = if is_work {
        "classified_as[type of work]"
    } else {
        "classified_as"
    };
    row.add(path, &label(concept));
}

/// A thing by its label.
pub(super) fn labelled(node: &Node, place: &Place, row: &mut Row) {
    row.add(&place.heading(), &label(node));
}

/// An owner, where somebody else keeps the object: the holder is who keeps it.
pub(super) fn owner_beside_custodian(owner: &Node, row: &mut Row) {
    row.add("current_owner[beside the custodian]", &label(owner));
}

/// Pages about the object and pictures of it: their addresses.
fn files(object: &Node, row: &mut Row) {
    for carrier in object.at(&["subject_of", "digitally_carried_by"]) {
        let is_page = carrier
            .all("classified_as")
            .any(|kind| is(kind, "web page"))
            || carrier.text_of("format").starts_with("text/html");
        let manifest = carrier.at(&["conforms_to", "id"]);
        let is_manifest = manifest
            .iter()
            .any(|of| of.peek().contains("iiif.io/api/presentation"));
        let path = match (is_page, is_manifest) {
            (true, _) => "subject_of[web page]",
            (false, true) => "subject_of[IIIF manifest]",
            (false, false) => continue,
        };
        addresses(carrier, path, row);
    }
    for image in object.at(&["representation", "digitally_shown_by"]) {
        addresses(image, "representation", row);
    }
}

/// The addresses at which a digital object is got; its own where it has no other.
fn addresses(digital: &Node, path: &str, row: &mut Row) {
    let points: Vec<&Node> = digital.all("access_point").collect();
    for point in &points {
        let id = point
            .child("id")
            .or(point.child("@id"))
            .and_then(Node::take);
        if let Some(id) = id.or_else(|| point.take()) {
            row.add_numbered(path, id);
        }
    }
    if points.is_empty() && !address(digital).is_empty() {
        let id = digital.child("id").or(digital.child("@id"));
        if let Some(id) = id.and_then(Node::take) {
            row.add_numbered(path, id);
        }
    }
}
