//! A node of a record: the properties of Linked Art that are used here, each declared once.

use serde::Serialize;

/// Declares [`Node`]: properties that are texts, that are one node, and that are lists of nodes. What is empty is not
/// written.
macro_rules! node {
    (texts: $($text:ident)*; one: $($one:ident)*; many: $($many:ident)*;) => {
        /// A node. Its properties have the names and the meaning of the model (`linked.art/model/`).
        #[derive(Clone, Debug, Default, PartialEq, Serialize)]
        pub(super) struct Node {
            /// The address of the context; only of a whole record.
            #[serde(rename = "@context", skip_serializing_if = "Option::is_none")]
            pub context: Option<&'static str>,
            #[serde(skip_serializing_if = "Option::is_none")]
            pub id: Option<String>,
            /// The class.
            #[serde(rename = "type")]
            pub kind: &'static str,
            /// A name for developers.
            #[serde(rename = "_label", skip_serializing_if = "Option::is_none")]
            pub label: Option<String>,
            $(#[serde(skip_serializing_if = "Option::is_none")] pub $text: Option<String>,)*
            /// Of a dimension.
            #[serde(skip_serializing_if = "Option::is_none")]
            pub value: Option<f64>,
            $(#[serde(skip_serializing_if = "Option::is_none")] pub $one: Option<Box<Node>>,)*
            $(#[serde(skip_serializing_if = "Vec::is_empty")] pub $many: Vec<Node>,)*
            /// Of an activity, which can be part of one other.
            #[serde(rename = "part_of", skip_serializing_if = "Option::is_none")]
            pub part_of_activity: Option<Box<Node>>,
        }
    };
}

node! {
    texts:
        assigned_property
        begin_of_the_begin
        content
        end_of_the_end
        format;
    one:
        born
        created_by
        destroyed_by
        died
        produced_by
        timespan
        unit;
    many:
        about
        access_point
        assigned
        assigned_by
        attributed_by
        carried_out
        carried_out_by
        carries
        classified_as
        conforms_to
        current_custodian
        current_owner
        digitally_available_via
        digitally_carried_by
        digitally_shown_by
        dimension
        equivalent
        identified_by
        influenced_by
        language
        made_of
        member_of
        part
        part_of
        paid_from
        paid_to
        participant
        referred_to_by
        representation
        represents_instance_of_type
        residence
        shows
        subject_of
        technique
        took_place_at
        transferred_custody_from
        transferred_custody_of
        transferred_custody_to
        transferred_title_from
        transferred_title_of
        transferred_title_to
        used_specific_object;
}

impl Node {
    /// A node of a class.
    pub fn new(kind: &'static str) -> Node {
        Node {
            kind,
            ..Node::default()
        }
    }

    /// A node of a class with an address: a record, or a reference to one.
    pub fn at(kind: &'static str, id: String, label: impl Into<String>) -> Node {
        Node {
            id: Some(id),
            label: Some(label.into()),
            ..Node::new(kind)
        }
    }

    /// The same in a box, for a property that has one value.
    #[allow(
        clippy::unnecessary_wraps,
        reason = "every such property may be absent, so each caller would wrap it"
    )]
    pub fn boxed(self) -> Option<Box<Node>> {
        Some(Box::new(self))
    }
}
