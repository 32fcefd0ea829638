//! Sizes: dimensions that were measured together, as the grammar of sizes reads them.
//!
//! What was measured is the label of the assignment that gave the dimension, or of its technique; the model has no other
//! place for it in the object itself. Dimensions that are no lengths (weights, counts, colours) stand under `dimension[…]`.

use indexmap::IndexMap;

use super::concepts::{self, label, word};
use crate::exchange::intake::records::measures::{Measure, in_words};
use crate::exchange::intake::records::node::Node;
use crate::exchange::intake::records::row::Row;

/// Reads the dimensions of an object.
pub(super) fn read(object: &Node, row: &mut Row) {
    let mut measured: IndexMap<String, Vec<Measure>> = IndexMap::new();
    for dimension in object.all("dimension") {
        let Some(value) = dimension.child("value").and_then(Node::take) else {
            continue;
        };
        let kinds: Vec<&Node> = dimension.all("classified_as").collect();
        let is_length = kinds.is_empty() || kinds.iter().any(|kind| is_length(kind));
        let kinds: Vec<String> = kinds.into_iter().map(word).collect();
        let units: Vec<String> = dimension.all("unit").map(word).collect();
        let measure = Measure {
            kind: kinds.join(", "),
            value: value.to_owned(),
            unit: units.join(" "),
        };
        if is_length {
            measured.entry(of(dimension)).or_default().push(measure);
        } else {
            let path = format!("dimension[{}]", measure.kind);
            row.add(&path, &format!("{value} {}", measure.unit));
        }
    }
    for (of, measures) in &measured {
        row.add("dimension", &in_words(of, measures));
    }
}

/// Whether a kind of dimension is a length.
fn is_length(kind: &Node) -> bool {
    let known = concepts::known(kind).unwrap_or_else(|| concepts::label_shown(kind));
    let known = known.to_lowercase();
    let lengths = [
        "height", "width", "depth", "diameter", "length", "höhe", "breite", "tiefe", "hauteur",
        "largeur", "hoogte", "breedte",
    ];
    lengths.iter().any(|length| known.starts_with(length))
}

/// What was measured.
fn of(dimension: &Node) -> String {
    for assignment in dimension.all("assigned_by") {
        let techniques: Vec<&Node> = assignment.all("technique").collect();
        if let Some(technique) = techniques.first() {
            return label(technique);
        }
    }
    String::new()
}
