//! The resources of the standard, with the properties that are used here. What is empty is not written.

use std::collections::BTreeMap;

use serde::Serialize;

/// A text in languages (BCP 47; `none` where it is not known), each a list.
pub(super) type Label = BTreeMap<String, Vec<String>>;

/// A label and its value.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub(super) struct Entry {
    pub label: Label,
    pub value: Label,
}

/// A reference to another resource, or to a file.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub(super) struct Reference {
    pub id: String,
    pub r#type: &'static str,
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    pub label: Label,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub format: Option<&'static str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub profile: Option<&'static str>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub language: Vec<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub width: Option<u32>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub height: Option<u32>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub homepage: Vec<Reference>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub thumbnail: Vec<Reference>,
}

/// What manifests and collections have in common.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Resource {
    #[serde(rename = "@context")]
    pub context: &'static str,
    pub id: String,
    pub r#type: &'static str,
    pub label: Label,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub metadata: Vec<Entry>,
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    pub summary: Label,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub required_statement: Option<Entry>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rights: Option<String>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub provider: Vec<Reference>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub thumbnail: Vec<Reference>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub homepage: Vec<Reference>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub see_also: Vec<Reference>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub part_of: Vec<Reference>,
}

/// A manifest.
#[derive(Clone, Debug, Serialize)]
pub(super) struct Manifest {
    #[serde(flatten)]
    pub resource: Resource,
    pub items: Vec<Canvas>,
}

/// A collection.
#[derive(Clone, Debug, Serialize)]
pub(super) struct Collection {
    #[serde(flatten)]
    pub resource: Resource,
    pub items: Vec<Reference>,
}

/// A canvas: one picture.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Canvas {
    pub id: String,
    pub r#type: &'static str,
    pub label: Label,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub metadata: Vec<Entry>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub required_statement: Option<Entry>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rights: Option<String>,
    pub width: u32,
    pub height: u32,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub thumbnail: Vec<Reference>,
    pub items: [Page<Painting>; 1],
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub annotations: Vec<Page<Comment>>,
}

/// A page of annotations.
#[derive(Clone, Debug, Serialize)]
pub(super) struct Page<A> {
    pub id: String,
    pub r#type: &'static str,
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    pub label: Label,
    pub items: Vec<A>,
}

/// The annotation that puts a picture on its canvas.
#[derive(Clone, Debug, Serialize)]
pub(super) struct Painting {
    pub id: String,
    pub r#type: &'static str,
    pub motivation: &'static str,
    pub body: Image,
    pub target: String,
}

/// A picture.
#[derive(Clone, Debug, Serialize)]
pub(super) struct Image {
    pub id: String,
    pub r#type: &'static str,
    pub format: &'static str,
    pub width: u32,
    pub height: u32,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub service: Vec<Service>,
}

/// An image service.
#[derive(Clone, Debug, Serialize)]
pub(super) struct Service {
    pub id: String,
    pub r#type: &'static str,
    pub profile: &'static str,
}

/// An annotation that says something of a part of a canvas.
#[derive(Clone, Debug, Serialize)]
pub(super) struct Comment {
    pub id: String,
    pub r#type: &'static str,
    pub motivation: &'static str,
    pub body: TextBody,
    pub target: Target,
}

/// What it says.
#[derive(Clone, Debug, Serialize)]
pub(super) struct TextBody {
    pub r#type: &'static str,
    pub value: String,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub language: Vec<String>,
    pub format: &'static str,
}

/// A canvas, or a part of it: an upright rectangle as a fragment of its address, or an outline.
#[derive(Clone, Debug, Serialize)]
#[serde(untagged)]
pub(super) enum Target {
    Rectangle(String),
    Outline(SpecificResource),
}

/// A part of a canvas by its outline.
#[derive(Clone, Debug, Serialize)]
pub(super) struct SpecificResource {
    pub r#type: &'static str,
    pub source: String,
    pub selector: SvgSelector,
}

/// An outline.
#[derive(Clone, Debug, Serialize)]
pub(super) struct SvgSelector {
    pub r#type: &'static str,
    pub value: String,
}
