//! Objects of Linked Art as rows.
//!
//! Source: the model and the API of linked.art 1.0 (pages *Object Production*, *Objects: Physical Characteristics*,
//! *Objects: Provenance*, "Required Vocabulary Terms"). What a name, an identifier, a statement or an activity is follows
//! from the number of the AAT with which it is classified ([`concepts`]).
//!
//! **Paths** are names of properties, in brackets the classification: `identified_by[accession number]`,
//! `referred_to_by[credit line]`, `produced_by/carried_out_by`. `_label` and `content` are silent: they are the text of
//! what they are in. Languages stand behind the path. `type` and `@context` are structure and no cells.
//!
//! | file | subject |
//! |---|---|
//! | `concepts` | what is classified as what |
//! | `names` | names, identifiers and statements |
//! | `production` | makers, techniques and dates of making |
//! | `dimensions` | sizes |
//! | `ownership` | how an object was acquired |

mod concepts;
mod dimensions;
mod names;
mod ownership;
mod production;

use super::json::class;
use super::node::Node;
use super::reading::{Place, Standard, Step};
use super::row::Row;

/// Classes of the objects that make rows: of version 1.0, and as CIDOC CRM names it.
const CLASSES: [&str; 4] = [
    "HumanMadeObject",
    "ManMadeObject",
    "crm:E22_Human-Made_Object",
    "crm:E22_Man-Made_Object",
];

/// Whether a node is an object or a reference to one.
pub(super) fn is_object(node: &Node) -> bool {
    CLASSES.contains(&class(node))
}

/// Whether an object is only named: it has an address, a class and a label, and nothing else.
pub(super) fn is_only_named(node: &Node) -> bool {
    const NAMING: [&str; 6] = ["id", "@id", "type", "@type", "_label", "@context"];
    node.children
        .iter()
        .all(|child| NAMING.contains(&&*child.name))
}

/// How an object is read.
pub(super) struct LinkedArt {
    has_custodian: bool,
}

impl LinkedArt {
    /// Looks at an object as a whole.
    pub fn of(object: &Node) -> LinkedArt {
        LinkedArt {
            has_custodian: object.child("current_custodian").is_some(),
        }
    }
}

impl Standard for LinkedArt {
    fn step(&self, node: &Node, _parent: &Node) -> Step {
        match &*node.name {
            "type" | "@type" | "@context" => {
                node.take_all();
                Step::silent()
            }
            "_label" | "content" => Step::silent(),
            "identified_by" | "referred_to_by" => {
                let kind = names::kind(node);
                let name = match kind.as_str() {
                    "" => node.name.to_string(),
                    kind => format!("{}[{kind}]", node.name),
                };
                let said = node.all("classified_as").chain(node.all("language"));
                let took = said.into_iter().any(|concept| !concepts::is_known(concept));
                Step {
                    took,
                    language: Some(names::language(node)).filter(|language| !language.is_empty()),
                    ..Step::name(name)
                }
            }
            name => Step::name(name),
        }
    }

    fn read(&self, node: &Node, place: &Place, row: &mut Row) {
        if place.path().is_empty() {
            // The record itself.
            names::record(node, row);
            return;
        }
        if &*node.name == "classified_as" {
            concepts::take_kind_of_kind(node);
        }
        match place.path() {
            "produced_by" => production::read(node, row),
            "classified_as" => names::classification(node, row),
            "current_owner" if self.has_custodian => names::owner_beside_custodian(node, row),
            "made_of" | "current_owner" | "current_custodian" => names::labelled(node, place, row),
            _ => {}
        }
    }

    fn is_numbered(&self, path: &str) -> bool {
        names::is_numbered(path)
    }
}
