//! Where in the text of a record keys stand, and where further ones go.

use std::fmt::Write as _;

use toml::Spanned;
use toml::de::{DeString, DeTable, DeValue};

use crate::exchange::intake::record::{Entry, written_inline};
use crate::exchange::intake::toml_text::{key_text, text_value};
use crate::read::edits::Edits;

type Key<'t> = Spanned<DeString<'t>>;
type Node<'t> = Spanned<DeValue<'t>>;

/// How a table is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Form {
    /// Below a header, or above all headers.
    Lines,
    /// In braces.
    Braces,
    /// With dotted keys: `sheet.image = …`.
    Dotted,
}

/// A table of a record in its text.
pub(super) struct TableAt<'r, 't> {
    text: &'t str,
    table: &'r DeTable<'t>,
    /// What stands before a further key: `sheet.`.
    prefix: String,
    form: Form,
    /// A byte of the header, or of the braces.
    at: usize,
}

impl<'r, 't> TableAt<'r, 't> {
    /// The keys above all headers.
    pub fn root(text: &'t str, table: &'r DeTable<'t>) -> TableAt<'r, 't> {
        TableAt {
            text,
            table,
            prefix: String::new(),
            form: Form::Lines,
            at: 0,
        }
    }

    /// A table within it; `None` where there is none.
    pub fn table(&self, name: &str) -> Option<TableAt<'r, 't>> {
        let node = self.table.get(name)?;
        let DeValue::Table(table) = node.get_ref() else {
            return None;
        };
        Some(TableAt::of(self.text, table, node, name))
    }

    fn of(text: &'t str, table: &'r DeTable<'t>, node: &Node<'t>, name: &str) -> TableAt<'r, 't> {
        let at = node.span().start;
        let form = match text.get(at..).and_then(|rest| rest.chars().next()) {
            Some('[') => Form::Lines,
            Some('{') => Form::Braces,
            _ => Form::Dotted,
        };
        let prefix = match form {
            Form::Dotted => format!("{}.", key_text(name)),
            _ => String::new(),
        };
        TableAt {
            text,
            table,
            prefix,
            form,
            at,
        }
    }

    /// The place of a value.
    pub fn value(&self, key: &str) -> Option<std::ops::Range<usize>> {
        Some(self.table.get(key)?.span())
    }

    /// The entries in lines of their own, in the order of the text: not those below further headers.
    fn own(&self) -> Vec<(&'r Key<'t>, &'r Node<'t>)> {
        let mut own: Vec<(&Key<'t>, &Node<'t>)> = self
            .table
            .iter()
            // The key of a header stands within it, and that of a value before the value.
            .filter(|(key, node)| node.span().start >= key.span().end)
            .collect();
        own.sort_by_key(|(key, _)| key.span().start);
        own
    }

    /// Adds keys below the last one of the table.
    pub fn add(&self, edits: &mut Edits<'_>, entries: &[Entry]) {
        let last = self.own().last().map(|(_, node)| node.span().end);
        let line =
            |entry: &Entry| format!("{}{} = {}", self.prefix, key_text(&entry.key), entry.value);
        if self.form == Form::Braces {
            let all: Vec<String> = entries.iter().map(line).collect();
            let all = all.join(", ");
            match last {
                Some(end) => edits.insert(end, format!(", {all}")),
                None => edits.insert(self.at + 1, format!(" {all} ")),
            }
            return;
        }
        for entry in entries {
            match last {
                Some(end) => edits.insert_below(end, &line(entry)),
                None if self.at == 0 && self.prefix.is_empty() => {
                    edits.insert(0, format!("{}\n", line(entry)));
                }
                None => edits.insert_below(self.at, &line(entry)),
            }
        }
    }

    /// Takes out a key with its value. A comment behind the value stays.
    pub fn remove(&self, edits: &mut Edits<'_>, key: &str) {
        let own = self.own();
        let Some(place) = own.iter().position(|(known, _)| known.get_ref() == key) else {
            return;
        };
        let (name, node) = own[place];
        let (start, end) = (name.span().start, node.span().end);
        if self.form == Form::Braces {
            // With the comma before it, or behind the first.
            let before = place.checked_sub(1).and_then(|before| own.get(before));
            let span = match (before, own.get(place + 1)) {
                (Some((_, before)), _) => before.span().end..end,
                (None, Some((after, _))) => start..after.span().start,
                (None, None) => start..end,
            };
            edits.replace(span, String::new());
            return;
        }
        let before = self.text.get(..start).unwrap_or_default();
        let rest = self.text.get(end..).unwrap_or_default();
        let rest_of_line = rest.split('\n').next().unwrap_or_default();
        if rest_of_line.trim().is_empty() {
            // With the line break before it, so that what is added below the line still has a line of its own.
            let line_end = end + rest_of_line.trim_end_matches('\r').len();
            let span = match before.rfind('\n') {
                Some(line_break) => before[..line_break].trim_end_matches('\r').len()..line_end,
                None => 0..(end + rest_of_line.len() + 1).min(self.text.len()),
            };
            edits.replace(span, String::new());
        } else {
            let blank = rest_of_line.len() - rest_of_line.trim_start().len();
            edits.replace(start..end + blank, String::new());
        }
    }

    /// Adds names to the list of what is private in the table.
    pub fn keep_private(&self, edits: &mut Edits<'_>, names: &[String]) {
        let quoted: Vec<String> = names.iter().map(|name| text_value(name)).collect();
        let all = quoted.join(", ");
        let Some(node) = self.table.get("private") else {
            let entry = Entry::new("private", format!("[{all}]"));
            self.add(edits, &[entry]);
            return;
        };
        let last = match node.get_ref() {
            DeValue::Array(list) => list.last(),
            _ => Some(node),
        };
        match (last, node.get_ref().is_array()) {
            (Some(last), true) => edits.insert(last.span().end, format!(", {all}")),
            (Some(only), false) => {
                let written = self.text.get(only.span()).unwrap_or_default();
                edits.replace(only.span(), format!("[{written}, {all}]"));
            }
            (None, _) => edits.replace(node.span(), format!("[{all}]")),
        }
    }

    /// The names that the table lists as private.
    pub fn private(&self) -> Vec<&str> {
        match self.table.get("private").map(Spanned::get_ref) {
            Some(DeValue::String(name)) => vec![name],
            Some(DeValue::Array(list)) => list
                .iter()
                .filter_map(|node| node.get_ref().as_str())
                .collect(),
            _ => Vec::new(),
        }
    }
}

/// The tables of a list in the text, in order.
pub(super) fn tables_of<'r, 't>(
    text: &'t str,
    root: &'r DeTable<'t>,
    list: &str,
) -> Vec<TableAt<'r, 't>> {
    let Some(node) = root.get(list) else {
        return Vec::new();
    };
    let nodes: &[Node<'t>] = match node.get_ref() {
        DeValue::Array(nodes) => nodes,
        _ => std::slice::from_ref(node),
    };
    let tables = nodes.iter().filter_map(|node| match node.get_ref() {
        DeValue::Table(table) => Some(TableAt::of(text, table, node, list)),
        _ => None,
    });
    tables.collect()
}

/// Adds tables to a list: behind the last one of the list where it is written in brackets, else at the end of the text.
pub(super) fn add_tables(
    edits: &mut Edits<'_>,
    end: &mut String,
    text: &str,
    root: &DeTable<'_>,
    list: &str,
    tables: &[Vec<Entry>],
) {
    let inline: Vec<String> = tables.iter().map(|table| written_inline(table)).collect();
    let node = root.get(list);
    let begins = |sign: &str| {
        let at = node.map(|node| node.span().start);
        at.and_then(|at| text.get(at..))
            .is_some_and(|rest| rest.starts_with(sign))
    };
    match node.map(Spanned::get_ref) {
        Some(DeValue::Array(nodes)) if begins("[") && !begins("[[") => {
            let span = node.map(Spanned::span).unwrap_or_default();
            let inline = inline.join(", ");
            if let Some(last) = nodes.last() {
                edits.insert(last.span().end, format!(", {inline}"));
            } else {
                edits.replace(span, format!("[{inline}]"));
            }
        }
        Some(DeValue::Table(_)) if begins("{") => {
            let span = node.map(Spanned::span).unwrap_or_default();
            let known = text.get(span.clone()).unwrap_or_default();
            edits.replace(span, format!("[{known}, {}]", inline.join(", ")));
        }
        _ => {
            for table in tables {
                end.push_str(&block(&format!("[[{list}]]"), table));
            }
        }
    }
}

/// A header with its keys, a blank line before it.
pub(super) fn block(header: &str, entries: &[Entry]) -> String {
    let mut text = format!("\n{header}\n");
    for entry in entries {
        let _ = writeln!(text, "{} = {}", key_text(&entry.key), entry.value);
    }
    text
}
