//! A record as a tree, whether it came from XML or JSON, and what of it was already said.
//!
//! An element of XML is a node, its attributes are children whose names begin with `@`. A property of a JSON object is a
//! node; the values of a list are nodes of one name. [`Node::take`] gives a text and marks it, so that what no reader of
//! the standard asks for can be found afterwards.

use std::cell::Cell;

use super::limits::{RECORD_BYTES, RECORD_NODES};
use crate::exchange::intake::table::TableFault;

/// An element, an attribute or a property.
#[derive(Debug, Default)]
pub(super) struct Node {
    /// Its name; of an attribute with `@` before it.
    pub name: Box<str>,
    /// Its own text, without line breaks and double spaces.
    text: Box<str>,
    taken: Cell<bool>,
    /// What is in it, in order.
    pub children: Vec<Node>,
}

impl Node {
    /// A node with a text; white space in it becomes single spaces.
    pub fn new(name: &str, text: &str) -> Node {
        let mut node = Node {
            name: name.into(),
            ..Node::default()
        };
        node.set_text(text);
        node
    }

    /// Gives it its text.
    pub fn set_text(&mut self, text: &str) {
        self.text = collapsed(text).into();
    }

    /// Its own text, which stays to be taken.
    pub fn peek(&self) -> &str {
        &self.text
    }

    /// Whether its own text was taken.
    pub fn is_taken(&self) -> bool {
        self.taken.get()
    }

    /// Its own text, where it has one that was not taken yet; it is taken now.
    pub fn take(&self) -> Option<&str> {
        let is_left = !self.text.is_empty() && !self.taken.replace(true);
        is_left.then_some(&*self.text)
    }

    /// Takes everything in it: it was said in other words, or says nothing.
    pub fn take_all(&self) {
        self.taken.set(true);
        for child in &self.children {
            child.take_all();
        }
    }

    /// The first child of a name.
    pub fn child(&self, name: &str) -> Option<&Node> {
        self.children.iter().find(|child| &*child.name == name)
    }

    /// The children of a name.
    pub fn all(&self, name: &'static str) -> impl Iterator<Item = &Node> {
        self.children
            .iter()
            .filter(move |child| &*child.name == name)
    }

    /// The nodes below it at a path of names.
    pub fn at(&self, path: &[&'static str]) -> Vec<&Node> {
        let mut found = vec![self];
        for name in path {
            found = found.into_iter().flat_map(|node| node.all(name)).collect();
        }
        found
    }

    /// The text of the first child of a name that has one.
    pub fn text_of(&self, name: &'static str) -> &str {
        let mut texts = self.all(name).map(Node::peek);
        texts.find(|text| !text.is_empty()).unwrap_or("")
    }
}

/// A text with single spaces for all white space.
pub(super) fn collapsed(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// What a record may still take.
#[derive(Clone, Copy, Debug)]
pub(super) struct Budget {
    nodes: usize,
    bytes: usize,
}

impl Default for Budget {
    fn default() -> Budget {
        Budget {
            nodes: RECORD_NODES,
            bytes: RECORD_BYTES,
        }
    }
}

impl Budget {
    /// Counts a node with so many bytes of name and text.
    pub fn node(&mut self, bytes: usize) -> Result<(), TableFault> {
        let nodes = self.nodes.checked_sub(1).ok_or(TableFault::TooLarge {
            what: "a record",
            limit: RECORD_NODES as u64,
            unit: "elements",
        })?;
        self.nodes = nodes;
        self.text(bytes)
    }

    /// Counts bytes of a text.
    pub fn text(&mut self, bytes: usize) -> Result<(), TableFault> {
        self.bytes = self.bytes.checked_sub(bytes).ok_or(TableFault::TooLarge {
            what: "a record",
            limit: RECORD_BYTES as u64,
            unit: "bytes",
        })?;
        Ok(())
    }
}
