//! Manifests of the IIIF Presentation API as rows, versions 3 and 2.
//!
//! Source: the specifications of the API, 3.0 (section 3, "Resource Properties") and 2.1 (section 3).
//!
//! **Paths** are names of properties. Pairs of `metadata` and the `requiredStatement` have the label of the house in the
//! path: `metadata/Datierung@de`; a value is under the label in its own language, else under the first. `items/image` are
//! the pictures that are painted on canvases. `type` and `@context` are structure and no cells. Markup in values stays as
//! it is.

use super::json::class;
use super::limits::STEP_BYTES;
use super::node::Node;
use super::reading::{Place, Standard, Step, shorten, with_language};
use super::row::Row;

/// Whether a node is a manifest or a reference to one.
pub(super) fn is_manifest(node: &Node) -> bool {
    ["Manifest", "sc:Manifest"].contains(&class(node))
}

/// Whether a manifest is only named: it has neither canvases nor descriptions.
pub(super) fn is_only_named(node: &Node) -> bool {
    let has = |name: &'static str| node.child(name).is_some();
    !(has("items") || has("sequences") || has("metadata"))
}

/// How manifests are read.
pub(super) struct Manifests;

/// Properties whose values are texts by language.
const TEXTS: [&str; 3] = ["label", "value", "summary"];

impl Standard for Manifests {
    fn step(&self, node: &Node, parent: &Node) -> Step {
        match &*node.name {
            "type" | "@type" | "@context" => {
                node.take_all();
                Step::silent()
            }
            "none" | "@none" | "@value" => Step::silent(),
            "@id" => Step::name("id"),
            "@language" => Step::further("@language"),
            language if TEXTS.contains(&&*parent.name) => Step::language(language),
            name => Step::name(name),
        }
    }

    fn read(&self, node: &Node, place: &Place, row: &mut Row) {
        match (&*node.name, place.path()) {
            ("metadata" | "requiredStatement", _) => pair(node, place.path(), row),
            ("homepage" | "related", "homepage" | "related") => {
                let id = node.child("id").or(node.child("@id"));
                if let Some(id) = id.and_then(Node::take).or_else(|| node.take()) {
                    row.add_numbered("homepage", id);
                }
            }
            ("body", _) if place.path() == "items/items/items/body" => painted(node, row),
            ("resource", "sequences/canvases/images/resource") => painted(node, row),
            _ => {}
        }
    }

    fn is_numbered(&self, path: &str) -> bool {
        ["label", "homepage", "items/image"].contains(&path)
    }
}

/// The texts of a property with their languages: a map of version 3, or a text, an object with `@value`, or a list of
/// them of version 2. They are taken.
fn texts<'n>(node: &'n Node, name: &'static str) -> Vec<(&'n str, &'n str)> {
    let mut found = Vec::new();
    for value in node.all(name) {
        found.extend(value.take().map(|text| ("", text)));
        let has_text = !value.text_of("@value").is_empty();
        let language = value.child("@language").filter(|_| has_text);
        let language = language.and_then(Node::take).unwrap_or("");
        for child in &value.children {
            let language = match &*child.name {
                "@value" => language,
                "none" | "@none" => "",
                language => language,
            };
            found.extend(child.take().map(|text| (language, text)));
        }
    }
    found
}

/// A label and its value.
fn pair(node: &Node, path: &str, row: &mut Row) {
    let labels = texts(node, "label");
    let mut is_used = vec![false; labels.len()];
    for (language, value) in texts(node, "value") {
        let own = labels.iter().position(|(of, _)| *of == language);
        let at = own.or((!labels.is_empty()).then_some(0));
        let label = at.map_or("", |at| labels[at].1);
        if let Some(at) = at {
            is_used[at] = true;
        }
        let mut heading = label.to_owned();
        shorten(&mut heading, STEP_BYTES);
        if heading.len() < label.len() {
            row.add_further(path, label);
        }
        let path = match heading.as_str() {
            "" => path.to_owned(),
            label => format!("{path}/{label}"),
        };
        row.add(&with_language(&path, language), value);
    }
    for ((language, label), is_used) in labels.iter().zip(is_used) {
        if !is_used {
            row.add_further(&with_language(&format!("{path}/label"), language), label);
        }
    }
}

/// The pictures of a canvas: one, or a choice of several.
fn painted(body: &Node, row: &mut Row) {
    for image in std::iter::once(body)
        .chain(body.all("items"))
        .chain(body.all("item"))
    {
        let is_image = ["Image", "dctypes:Image"].contains(&class(image));
        let id = image.child("id").or(image.child("@id"));
        if let Some(id) = id.filter(|_| is_image).and_then(Node::take) {
            row.add_numbered("items/image", id);
        }
    }
}
