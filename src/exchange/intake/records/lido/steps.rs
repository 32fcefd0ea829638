//! Names in paths of LIDO.
//!
//! Left out are `descriptiveMetadata` and `administrativeMetadata`, elements that end in `Wrap`, `eventSet`, elements that
//! carry the only text of their parent ([`CARRIERS`]), and a few that are clear without ([`CLEAR`]). In brackets stands
//! what `lido:type` or `lido:pref` says (of an address its end), of an event its kind, of a related work the relation. The
//! current repository has no bracket.

use super::kinds;
use crate::exchange::intake::records::node::Node;
use crate::exchange::intake::records::reading::Step;

/// Elements that carry the text of what they are in.
const CARRIERS: [&str; 6] = [
    "appellationValue",
    "descriptiveNoteValue",
    "term",
    "prefLabel",
    "inscriptionTranscription",
    "displayRelatedWork",
];

/// Elements without which a path is as clear.
const CLEAR: [&str; 7] = [
    "eventSet",
    "objectMeasurements",
    "subject",
    "relatedWork",
    "relatedWorkRelType",
    "actorInRole",
    "Concept",
];

/// The two blocks of a record; each may stand once for each language.
const BLOCKS: [&str; 2] = ["descriptiveMetadata", "administrativeMetadata"];

/// Kinds of identifiers, which say that one is an address or of this database: `lido:type` of identifiers.
const KINDS_OF_IDENTIFIERS: [&str; 6] = ["uri", "local", "url", "urn", "lido00099", "lido00100"];

/// What a node adds to a path.
pub(super) fn step(node: &Node, parent: &Node, has_languages: bool) -> Step {
    let name = &*node.name;
    if let Some(attribute) = name.strip_prefix('@') {
        let said = node.peek();
        let is_structure = match attribute {
            "type" => is_kind_of_identifier(said),
            "pref" => is_preferred(said),
            _ => false,
        };
        if is_structure {
            node.take_all();
        }
        // The blocks of metadata have no name in paths.
        let block = if BLOCKS.contains(&&*parent.name) {
            &*parent.name
        } else {
            ""
        };
        return Step::further(format!("{block}@{attribute}"));
    }
    // The language of a record's only block need not stand behind every path.
    let is_plain = BLOCKS.contains(&name) && !has_languages;
    let language = node.child("@lang").filter(|_| !is_plain);
    let language = language.and_then(Node::take).map(str::to_owned);
    let is_silent = BLOCKS.contains(&name)
        || name.ends_with("Wrap")
        || CLEAR.contains(&name)
        || CARRIERS.contains(&name);
    let kind = if is_silent || name == "event" {
        None
    } else {
        kind(node)
    };
    Step {
        took: language.is_some() || kind.is_some() || (name == "event" && !kinds::is_known(node)),
        name: match kind {
            _ if is_silent => None,
            _ if name == "event" => Some(format!("event[{}]", kinds::event(node))),
            Some(kind) => Some(format!("{name}[{kind}]")),
            None => Some(name.to_owned()),
        },
        language,
        is_further: false,
    }
}

/// The kind that stands in brackets.
fn kind(node: &Node) -> Option<String> {
    let name = &*node.name;
    let attribute = |name: &str| {
        let attribute = node.child(name)?;
        let said = attribute.peek();
        (!said.is_empty() && !is_kind_of_identifier(said)).then_some(attribute)
    };
    match name {
        "repositorySet" if is_current(node) => {
            // "current" says what the path says without it.
            let kind = attribute("@type")?;
            (kind.peek().eq_ignore_ascii_case("current")).then(|| kind.take_all());
            None
        }
        "relatedWorkSet" => {
            let terms = node.at(&["relatedWorkRelType", "term"]);
            let term = terms.into_iter().find_map(Node::take)?;
            Some(term.to_owned())
        }
        // The kind of an identifier of a concept is its source, which is in the last column.
        "conceptID" | "actorID" | "placeID" | "legalBodyID" | "objectID" | "lidoRecID"
        | "actor" => None,
        // "preferred" of a title stands at the title's text in version 1.1.
        "titleSet" => {
            let pref = attribute("@pref").filter(|pref| !is_preferred(pref.peek()));
            let own = attribute("@type").or(pref).and_then(Node::take);
            let below = node
                .all("appellationValue")
                .find_map(|text| text.child("@pref"));
            let below = below.filter(|pref| !is_preferred(pref.peek()));
            own.or_else(|| below.and_then(Node::take)).map(end_of)
        }
        _ => attribute("@type").and_then(Node::take).map(end_of),
    }
}

fn is_preferred(pref: &str) -> bool {
    // lido00169: preferred (LIDO Terminology).
    ["preferred", "lido00169"].contains(&end_of(pref).as_str())
}

/// Of an address its last part, of a text the text.
fn end_of(text: &str) -> String {
    let is_address = text.starts_with("http://") || text.starts_with("https://");
    let end = text.trim_end_matches('/').rsplit(['/', '#']).next();
    match end.filter(|_| is_address) {
        Some(end) => end.to_owned(),
        None => text.to_owned(),
    }
}

fn is_kind_of_identifier(kind: &str) -> bool {
    KINDS_OF_IDENTIFIERS.contains(&end_of(kind).to_lowercase().as_str())
}

/// Whether a set of a repository is that of who keeps the thing now: its type says so, or it has none.
pub(super) fn is_current(set: &Node) -> bool {
    let kind = set.child("@type").map_or("", Node::peek).to_lowercase();
    ["", "current", "aktuell"].contains(&kind.as_str())
}
