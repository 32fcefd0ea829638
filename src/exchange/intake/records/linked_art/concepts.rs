//! What is classified as what, by numbers of the AAT.

use crate::exchange::intake::records::json::address;
use crate::exchange::intake::records::node::Node;
use crate::exchange::linked_art::language_of_number;

/// Numbers of the AAT and our words for them. Sources of each: `tests/checks/aat_terms.csv`, and the pages "Required
/// Vocabulary Terms" and "Recommended Vocabulary Terms" of linked.art for the last six.
const KNOWN: &[(u32, &str)] = &[
    (300_312_355, "accession number"),
    (300_404_621, "local number"),
    (300_435_704, "system number"),
    (300_404_628, "lot number"),
    (300_412_177, "stock number"),
    (300_311_706, "call number"),
    (300_404_670, "primary name"),
    (300_404_669, "display name"),
    (300_451_544, "sort name"),
    (300_435_719, "former name"),
    (300_264_273, "alternate name"),
    (300_055_644, "height"),
    (300_055_647, "width"),
    (300_072_633, "depth"),
    (300_379_097, "mm"),
    (300_379_098, "cm"),
    (300_379_100, "in"),
    (300_435_435, "edition statement"),
    (300_435_414, "inscription statement"),
    (300_435_420, "markings statement"),
    (300_435_421, "watermarks statement"),
    (300_435_425, "condition statement"),
    (300_026_687, "credit line"),
    (300_435_430, "dimensions statement"),
    (300_435_429, "materials statement"),
    (300_435_452, "physical statement"),
    (300_435_436, "production statement"),
    (300_435_438, "provenance statement"),
    (300_435_439, "acquisition statement"),
    (300_435_424, "exhibition statement"),
    (300_026_497, "bibliography statement"),
    (300_435_434, "rights statement"),
    (300_435_416, "description"),
    (300_027_200, "note"),
    (300_053_319, "printing"),
    (300_054_686, "publishing"),
    (300_264_578, "web page"),
    (300_077_989, "purchase"),
    (300_417_637, "gift"),
    (300_417_645, "loan"),
    (300_055_863, "provenance"),
    (300_435_443, "type of work"),
    (300_418_049, "brief text"),
    (300_215_302, "digital image"),
];

/// The number of a concept in the AAT.
pub(super) fn number(concept: &Node) -> Option<u32> {
    let id = match address(concept) {
        "" => concept.peek(),
        id => id,
    };
    let number = id
        .split_once("vocab.getty.edu/aat/")
        .or_else(|| id.split_once("aat:"))
        .map(|(_, number)| number)?;
    number.parse().ok()
}

/// Our word for a concept that is known by its number.
pub(super) fn known(concept: &Node) -> Option<&'static str> {
    let number = number(concept)?;
    let found = KNOWN.iter().find(|(known, _)| *known == number);
    found.map(|(_, word)| *word)
}

/// Whether a concept or a language is known by its number, so that nothing of it need be kept.
pub(super) fn is_known(concept: &Node) -> bool {
    known(concept).is_some() || number(concept).and_then(language_of_number).is_some()
}

/// Whether a concept is this one.
pub(super) fn is(concept: &Node, word: &str) -> bool {
    known(concept) == Some(word)
}

/// What a concept is called: our word where its number is known, else its label or name, else its address.
pub(super) fn word_shown(concept: &Node) -> &str {
    known(concept).unwrap_or_else(|| label_shown(concept))
}

/// The same, taken: of a known concept everything, else what it is called. An address stays.
pub(super) fn word(concept: &Node) -> String {
    let word = word_shown(concept).to_owned();
    if known(concept).is_some() {
        concept.take_all();
    } else {
        let _ = label(concept);
    }
    word
}

/// The label of a concept, a person, a place: taken. Without one its name; without a name its address, which stays.
pub(super) fn label(node: &Node) -> String {
    if let Some(label) = node.child("_label").and_then(Node::take) {
        return label.to_owned();
    }
    let names = node.at(&["identified_by", "content"]);
    if let Some(name) = names.into_iter().find_map(Node::take) {
        return name.to_owned();
    }
    // A concept may be written as its address alone.
    match node.take() {
        Some(text) => text.to_owned(),
        None => address(node).to_owned(),
    }
}

/// The label without taking it.
pub(super) fn label_shown(node: &Node) -> &str {
    let names = node.at(&["identified_by", "content"]);
    let name = names.first().map_or("", |name| name.peek());
    let said = [node.text_of("_label"), name, node.peek(), address(node)];
    said.into_iter().find(|text| !text.is_empty()).unwrap_or("")
}

/// The code of a language (ISO 639-1), taken; its label where the number has none.
pub(super) fn language(language: &Node) -> String {
    if let Some(code) = number(language).and_then(language_of_number) {
        language.take_all();
        return code.to_owned();
    }
    let shown = label_shown(language).to_owned();
    let _ = label(language);
    shown
}

/// Takes the kinds that the model asks for beside a classification and that say nothing of the object: that a type is one of
/// works, that a text is brief, that a name is for display.
pub(super) fn take_kind_of_kind(concept: &Node) {
    const OF_THE_MODEL: [&str; 3] = ["type of work", "brief text", "display name"];
    if known(concept).is_some_and(|word| OF_THE_MODEL.contains(&word)) {
        concept.take_all();
    }
}
