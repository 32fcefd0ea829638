//! The records in a JSON document or in JSON Lines, one at a time.
//!
//! A record stands by itself, in a list, or in the list of a page, set, graph or collection around it ([`LISTS`]). A property
//! that stands twice in an object is kept twice.

use std::fmt;

use serde::de::{DeserializeSeed, Deserializer, MapAccess, SeqAccess, Visitor};

use super::limits::{DEPTH, PART_BYTES, RECORD_BYTES};
use super::node::{Budget, Node};
use crate::exchange::intake::table::TableFault;

/// The properties whose lists hold records: of pages of the Linked Art API (ActivityStreams), graphs of JSON-LD, IIIF
/// collections of version 3 and 2, sets.
const LISTS: [&str; 7] = [
    "items",
    "orderedItems",
    "@graph",
    "manifests",
    "members",
    "member",
    "object",
];

/// What is met in a document.
pub(super) enum Met {
    /// A record, or a reference to one.
    Record(Node),
    /// An object around records, without them.
    Around(Node),
}

/// Calls `visit` with everything that is met; `is_record` tells by its class whether an object is a record.
///
/// # Errors
/// The first fault of the document or of a call; a record that is too large.
pub(super) fn records(
    text: &str,
    is_record: fn(&Node) -> bool,
    visit: &mut dyn FnMut(Met) -> Result<(), TableFault>,
) -> Result<(), TableFault> {
    let mut reading = Reading {
        is_record,
        visit,
        budget: Budget::default(),
        fault: None,
        met: 0,
    };
    if has_long_text(text) {
        return Err(TableFault::TooLarge {
            what: "a record",
            limit: RECORD_BYTES as u64,
            unit: "bytes",
        });
    }
    let mut parser = serde_json::Deserializer::from_str(text);
    loop {
        reading.budget = Budget::default();
        let document = Value {
            name: "",
            reading: &mut reading,
            depth: 0,
            is_top: true,
        };
        let read = document.deserialize(&mut parser);
        let nodes = read.map_err(|error| reading.fault_of(&error))?;
        for node in nodes {
            reading.hand_over(node)?;
        }
        // JSON Lines: one document after the other.
        if parser.end().is_ok() {
            return Ok(());
        }
    }
}

/// Whether a text in quotation marks is longer than [`PART_BYTES`]: the parser would hold it beside the document.
fn has_long_text(text: &str) -> bool {
    if text.len() <= PART_BYTES {
        return false;
    }
    // Between two quotation marks that no backslash precedes lies a text, or what is between two texts.
    let mut last = 0;
    let mut is_escaped = false;
    for (at, byte) in text.bytes().enumerate() {
        if byte == b'"' && !is_escaped {
            last = at;
        } else if at - last > PART_BYTES {
            return true;
        }
        is_escaped = byte == b'\\' && !is_escaped;
    }
    false
}

/// A document that is being read.
struct Reading<'v> {
    is_record: fn(&Node) -> bool,
    visit: &'v mut dyn FnMut(Met) -> Result<(), TableFault>,
    budget: Budget,
    fault: Option<TableFault>,
    met: u32,
}

impl Reading<'_> {
    fn fault_of(&mut self, error: &serde_json::Error) -> TableFault {
        self.fault.take().unwrap_or(TableFault::BadRecord {
            record: self.met.saturating_add(1),
            line: Some(error.line()),
            why: if error.is_eof() {
                "the file ends before its last object does"
            } else {
                "it is no sound JSON, or nested too deeply"
            },
        })
    }

    /// Hands over what is at the top, or in the list of what is around the records.
    fn hand_over(&mut self, node: Node) -> Result<(), TableFault> {
        if (self.is_record)(&node) {
            self.met = self.met.saturating_add(1);
            (self.visit)(Met::Record(node))
        } else {
            (self.visit)(Met::Around(node))
        }
    }

    /// Counts against the record; the fault is kept, since the parser's own error cannot carry it.
    fn count<E: serde::de::Error>(
        &mut self,
        counted: impl FnOnce(&mut Budget) -> Result<(), TableFault>,
    ) -> Result<(), E> {
        counted(&mut self.budget).map_err(|fault| self.failed(fault))
    }

    fn failed<E: serde::de::Error>(&mut self, fault: TableFault) -> E {
        self.fault = Some(fault);
        E::custom("it is too large")
    }
}

/// A value: read as the nodes that it makes under a name, one for each value of a list.
struct Value<'r, 'v, 'n> {
    name: &'n str,
    reading: &'r mut Reading<'v>,
    depth: usize,
    /// Whether what is in it may be records: at the top, and in the lists of what is around records.
    is_top: bool,
}

impl Value<'_, '_, '_> {
    fn leaf<E: serde::de::Error>(self, text: &str) -> Result<Vec<Node>, E> {
        let bytes = self.name.len() + text.len();
        self.reading.count(|budget| budget.node(bytes))?;
        Ok(vec![Node::new(self.name, text)])
    }
}

impl<'de> DeserializeSeed<'de> for Value<'_, '_, '_> {
    type Value = Vec<Node>;

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<Vec<Node>, D::Error> {
        deserializer.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Value<'_, '_, '_> {
    type Value = Vec<Node>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("JSON")
    }

    fn visit_unit<E: serde::de::Error>(self) -> Result<Vec<Node>, E> {
        Ok(Vec::new())
    }

    fn visit_bool<E: serde::de::Error>(self, value: bool) -> Result<Vec<Node>, E> {
        self.leaf(if value { "true" } else { "false" })
    }

    fn visit_u64<E: serde::de::Error>(self, value: u64) -> Result<Vec<Node>, E> {
        self.leaf(&value.to_string())
    }

    fn visit_i64<E: serde::de::Error>(self, value: i64) -> Result<Vec<Node>, E> {
        self.leaf(&value.to_string())
    }

    fn visit_f64<E: serde::de::Error>(self, value: f64) -> Result<Vec<Node>, E> {
        self.leaf(&value.to_string())
    }

    fn visit_str<E: serde::de::Error>(self, value: &str) -> Result<Vec<Node>, E> {
        self.leaf(value)
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut values: A) -> Result<Vec<Node>, A::Error> {
        let mut nodes: Vec<Node> = Vec::new();
        loop {
            let before = self.reading.budget;
            if self.is_top {
                // Each record has the whole of what a record may take.
                self.reading.budget = Budget::default();
            }
            let next = values.next_element_seed(Value {
                name: self.name,
                reading: &mut *self.reading,
                depth: self.depth + 1,
                is_top: self.is_top,
            })?;
            let Some(made) = next else {
                return Ok(nodes);
            };
            if !self.is_top {
                nodes.extend(made);
                continue;
            }
            self.reading.budget = before;
            for node in made {
                // In a manifest the items are canvases, which belong to it.
                let is_record = (self.reading.is_record)(&node);
                if is_record || self.name.is_empty() {
                    let handed = self.reading.hand_over(node);
                    handed.map_err(|fault| self.reading.failed::<A::Error>(fault))?;
                } else {
                    let counted = self.reading.count(|budget| count_of(&node, budget));
                    counted?;
                    nodes.push(node);
                }
            }
        }
    }

    fn visit_map<A: MapAccess<'de>>(self, mut properties: A) -> Result<Vec<Node>, A::Error> {
        if self.depth > DEPTH {
            return Err(self.reading.failed(TableFault::TooLarge {
                what: "the depth of the objects",
                limit: DEPTH as u64,
                unit: "levels",
            }));
        }
        let bytes = self.name.len();
        self.reading.count(|budget| budget.node(bytes))?;
        let mut node = Node::new(self.name, "");
        while let Some(name) = properties.next_key::<String>()? {
            let is_list = self.is_top && LISTS.contains(&name.as_str());
            let made = properties.next_value_seed(Value {
                name: &name,
                reading: &mut *self.reading,
                depth: self.depth + 1,
                is_top: is_list,
            })?;
            if !is_list {
                node.children.extend(made);
                continue;
            }
            for child in made {
                if (self.reading.is_record)(&child) {
                    let handed = self.reading.hand_over(child);
                    handed.map_err(|fault| self.reading.failed::<A::Error>(fault))?;
                } else {
                    node.children.push(child);
                }
            }
        }
        Ok(vec![node])
    }
}

fn count_of(node: &Node, budget: &mut Budget) -> Result<(), TableFault> {
    budget.node(node.name.len() + node.peek().len())?;
    node.children
        .iter()
        .try_for_each(|child| count_of(child, budget))
}

/// The class of an object: its `type`, or `@type`.
pub(super) fn class(node: &Node) -> &str {
    match node.text_of("type") {
        "" => node.text_of("@type"),
        class => class,
    }
}

/// The address of an object: its `id`, or `@id`.
pub(super) fn address(node: &Node) -> &str {
    match node.text_of("id") {
        "" => node.text_of("@id"),
        address => address,
    }
}
