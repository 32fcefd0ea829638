//! The records in an XML document, one at a time.

use std::cell::Cell;
use std::io::{self, BufRead, Read};

use super::limits::{DEPTH, NAMED, PART_BYTES};
use super::node::{Budget, Node, collapsed};
use crate::exchange::intake::table::nodes::{Node as Part, walk};
use crate::exchange::intake::table::{RecordNote, TableFault};

/// The name of the first element of a document; `None` where there is none.
///
/// # Errors
/// A document that declares a type.
pub(super) fn root(text: &str) -> Result<Option<String>, TableFault> {
    let mut name = None;
    let walked = walk(text.as_bytes(), "the XML", |part| match part {
        Part::Open(element) => {
            name = Some(element.name.to_owned());
            // Ends the walk; which fault is of no account.
            Err(TableFault::Empty)
        }
        Part::Close(_) | Part::Text(_) => Ok(()),
    });
    match walked {
        Err(fault @ TableFault::DeclaresEntities { .. }) => Err(fault),
        _ => Ok(name),
    }
}

/// Calls `visit` with every element of a name that is in no other of that name, and gives what stands around them.
///
/// # Errors
/// The first fault of the document or of a call; a record that is too large.
pub(super) fn records(
    text: &str,
    name: &str,
    mut visit: impl FnMut(Node) -> Result<(), TableFault>,
) -> Result<Option<RecordNote>, TableFault> {
    // The open elements of the record, with their texts; the names of the open elements around it.
    let mut open: Vec<(Node, String)> = Vec::new();
    let mut around: Vec<String> = Vec::new();
    let mut budget = Budget::default();
    let mut count = 0_u32;
    let mut outside = (0_u32, Vec::new());
    let since_part = Cell::new(0);
    let source = Chunks {
        rest: text.as_bytes(),
        since_part: &since_part,
    };
    let walked = walk(source, "the XML", |part| {
        since_part.set(0);
        match part {
            Part::Open(element) => {
                if open.len() + around.len() >= DEPTH {
                    return Err(TableFault::TooLarge {
                        what: "the depth of the elements",
                        limit: DEPTH as u64,
                        unit: "levels",
                    });
                }
                if open.is_empty() && element.name != name {
                    around.push(element.name.to_owned());
                    return Ok(());
                }
                if open.is_empty() {
                    count = count.saturating_add(1);
                    budget = Budget::default();
                }
                budget.node(element.name.len())?;
                let mut node = Node::new(element.name, "");
                for (attribute, value) in element.attributes() {
                    budget.node(attribute.len() + value.len())?;
                    node.children
                        .push(Node::new(&format!("@{attribute}"), &value));
                }
                open.push((node, String::new()));
            }
            Part::Text(text) => {
                if let Some((_, held)) = open.last_mut() {
                    budget.text(text.len())?;
                    held.push_str(text);
                    return Ok(());
                }
                let text = collapsed(text);
                if !text.is_empty() {
                    outside.0 = outside.0.saturating_add(1);
                    if outside.1.len() < NAMED {
                        let path = around.last().map_or("", String::as_str);
                        outside.1.push(format!("{path}: {text}"));
                    }
                }
            }
            Part::Close(_) => match open.pop() {
                None => {
                    around.pop();
                }
                Some((mut node, held)) => {
                    node.set_text(&held);
                    match open.last_mut() {
                        // The text of an element goes on behind the elements in it.
                        Some((parent, text)) => {
                            parent.children.push(node);
                            text.push(' ');
                        }
                        None => visit(node)?,
                    }
                }
            },
        }
        Ok(())
    });
    let bad = |why| TableFault::BadRecord {
        record: count,
        line: None,
        why,
    };
    walked.map_err(|fault| match fault {
        TableFault::Damaged { why, .. } => bad(why),
        fault => fault,
    })?;
    if !open.is_empty() || !around.is_empty() {
        return Err(bad("the file ends before its last element does"));
    }
    let (count, texts) = outside;
    Ok((count > 0).then_some(RecordNote::Around { count, texts }))
}

/// A document in chunks, which fails when a parser takes in more than [`PART_BYTES`] before it gives a part: it would hold
/// them beside the document.
struct Chunks<'t> {
    rest: &'t [u8],
    since_part: &'t Cell<usize>,
}

impl Read for Chunks<'_> {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        let available = self.fill_buf()?;
        let count = available.len().min(into.len());
        into[..count].copy_from_slice(&available[..count]);
        self.consume(count);
        Ok(count)
    }
}

impl BufRead for Chunks<'_> {
    fn fill_buf(&mut self) -> io::Result<&[u8]> {
        if self.since_part.get() > PART_BYTES {
            return Err(io::Error::other("a part is too long"));
        }
        Ok(&self.rest[..self.rest.len().min(1 << 16)])
    }

    fn consume(&mut self, amount: usize) {
        let amount = amount.min(self.rest.len());
        self.rest = &self.rest[amount..];
        self.since_part.set(self.since_part.get() + amount);
    }
}
