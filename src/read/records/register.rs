//! `register.toml`: the addresses that were issued.
//!
//! Only `keyblock issue` writes this file, so it has no declaration of keys, no schema and no template. Whatever does
//! not have the form in which it is written is an error at its place, and the rest is read: an address that was
//! issued is never silently dropped.
//!
//! The form is shown in docs/definitions.md, "The register".

use std::collections::BTreeMap;
use std::ops::Range;

use toml::Spanned;
use toml::de::{DeString, DeTable, DeValue};

use crate::model::codes::Code;
use crate::model::edtf::Date;
use crate::model::finding::Finding;
use crate::model::issued_address::{IssuedAddress, IssuedKind};
use crate::model::place::{FileId, Place, Placed};
use crate::model::register::{
    Aspect, Digest, IssuedEdition, IssuedEntry, REGISTER_FORM, Register, Said, Subject,
};
use crate::model::words::ClosedList;
use crate::read::faults::{Node, bounded, is_unread};
use crate::read::files::load::Source;
use crate::read::records::record;
use crate::read::table::fields::in_order;

/// The register in a file, and everything in the file that is not of its form.
pub(crate) fn register(source: Source<'_>) -> (Register, Vec<Finding>) {
    record::tree(source, |tree| {
        let mut reading = Reading {
            file: source.file,
            findings: Vec::new(),
            editions: BTreeMap::new(),
        };
        let register = reading.register(tree);
        (register, bounded(reading.findings))
    })
}

struct Reading {
    file: FileId,
    findings: Vec<Finding>,
    /// The place of each edition, by its name.
    editions: BTreeMap<String, usize>,
}

impl Reading {
    fn register(&mut self, tree: &DeTable<'_>) -> Register {
        let mut register = Register::default();
        if !self.has_known_form(tree) {
            return register;
        }
        register.editions = self.issued_editions(tree);
        for (name, node) in in_order(tree) {
            let name_text: &str = name.get_ref();
            if matches!(name_text, "form" | "editions") || is_unread(node) {
                continue;
            }
            let Some(kind) = IssuedKind::from_word(name_text) else {
                self.damaged(
                    name.span(),
                    format!("the register has no section `{name_text}`"),
                );
                continue;
            };
            let Some(section) = node.get_ref().as_table() else {
                self.damaged(name.span(), format!("`{name_text}` is not a section"));
                continue;
            };
            for (key, node) in in_order(section) {
                if let Some((address, entry)) = self.entry(kind, key, node) {
                    register.entries.insert(address, entry);
                }
            }
        }
        register
    }

    /// Whether the register is of the form that this program writes.
    fn has_known_form(&mut self, tree: &DeTable<'_>) -> bool {
        let Some(node) = tree.get("form").filter(|node| !is_unread(node)) else {
            self.damaged(0..0, "the register does not say its form".to_owned());
            return false;
        };
        let form = match node.get_ref() {
            DeValue::Integer(number) => number.to_string().parse().ok(),
            _ => None,
        };
        match form {
            Some(REGISTER_FORM) => true,
            Some(newer) if newer > REGISTER_FORM => {
                let message = format!(
                    "the register is of form {newer}, and this program knows form {REGISTER_FORM}"
                );
                let finding = Finding::new(Code::RegisterDamaged, self.place(node.span()), message);
                let help = "use a version of keyblock that is as new as the one that wrote it";
                self.findings.push(finding.help(help));
                false
            }
            _ => {
                self.damaged(
                    node.span(),
                    format!("the form of the register is {REGISTER_FORM}"),
                );
                false
            }
        }
    }

    fn issued_editions(&mut self, tree: &DeTable<'_>) -> Vec<IssuedEdition> {
        let mut editions = Vec::new();
        let Some(node) = tree.get("editions").filter(|node| !is_unread(node)) else {
            self.damaged(0..0, "the register lists no editions".to_owned());
            return editions;
        };
        let DeValue::Array(list) = node.get_ref() else {
            self.damaged(node.span(), "`editions` is a list".to_owned());
            return editions;
        };
        for node in list.iter().filter(|node| !is_unread(node)) {
            if let Some(edition) = self.issued_edition(node) {
                let name = edition.edition.value.clone();
                if self.editions.insert(name, editions.len()).is_some() {
                    let message = format!("edition {} is listed twice", edition.edition.value);
                    self.damaged(node.span(), message);
                }
                editions.push(edition);
            }
        }
        editions
    }

    fn issued_edition(&mut self, node: &Node<'_>) -> Option<IssuedEdition> {
        let Some(table) = node.get_ref().as_table() else {
            self.damaged(node.span(), "an edition is a table".to_owned());
            return None;
        };
        let known = ["edition", "dated", "address", "uncommitted"];
        for (key, _) in in_order(table) {
            if !known.contains(&key.get_ref().as_ref()) {
                self.damaged(key.span(), format!("an edition has no `{}`", key.get_ref()));
            }
        }
        let edition = self.text(table, "edition", node)?;
        let dated = self.text(table, "dated", node)?;
        let date = Date::parse(&dated.value).ok();
        let Some(date) = date.filter(IssuedEdition::can_be_dated) else {
            let place = dated.place.start as usize..dated.place.end as usize;
            self.damaged(place, format!("`{}` is not a day", dated.value));
            return None;
        };
        let address = self.text(table, "address", node)?;
        let uncommitted = match table.get("uncommitted") {
            Some(_) => Some(self.text(table, "uncommitted", node)?.value),
            None => None,
        };
        Some(IssuedEdition {
            edition,
            dated: dated.map(|_| date),
            address: address.value,
            uncommitted,
        })
    }

    /// A text that a table must have.
    fn text(
        &mut self,
        table: &DeTable<'_>,
        name: &str,
        whole: &Node<'_>,
    ) -> Option<Placed<String>> {
        let Some(node) = table.get(name) else {
            self.damaged(whole.span(), format!("`{name}` is missing here"));
            return None;
        };
        let text = self.text_of(node)?;
        Some(Placed::new(text, self.place(node.span())))
    }

    fn text_of(&mut self, node: &Node<'_>) -> Option<String> {
        let text = node.get_ref().as_str().map(str::to_owned);
        if text.is_none() && !is_unread(node) {
            self.damaged(node.span(), "this is not a text".to_owned());
        }
        text
    }

    /// One line: an address and how its entry read.
    fn entry(
        &mut self,
        kind: IssuedKind,
        key: &Spanned<DeString<'_>>,
        node: &Node<'_>,
    ) -> Option<(IssuedAddress, IssuedEntry)> {
        let Ok(address) = IssuedAddress::parse(kind, key.get_ref()) else {
            let message = format!("`{}` is not a key of the kind `{kind}`", key.get_ref());
            self.damaged(key.span(), message);
            return None;
        };
        let Some(table) = node.get_ref().as_table() else {
            if !is_unread(node) {
                self.damaged(
                    node.span(),
                    format!("the entry of {address} is not a table"),
                );
            }
            return None;
        };
        let since = self.text(table, "since", node)?;
        let since_span = since.place.start as usize..since.place.end as usize;
        let since = self.edition(&since.value, since_span)?;
        let mut entry = IssuedEntry::new(since, self.place(key.span()));
        for (name, node) in in_order(table) {
            let name_text: &str = name.get_ref();
            if name_text == "since" || is_unread(node) {
                continue;
            }
            if name_text == "revised" {
                entry.revised = self.revised(node);
            } else if name_text == "holds" {
                entry.holds = self.holds(node);
            } else if let Some(aspect) = Aspect::from_word(name_text) {
                if let Some(said) = self.said(node, since) {
                    entry.said.insert(aspect, said);
                }
            } else {
                self.damaged(name.span(), format!("an entry has no `{name_text}`"));
            }
        }
        Some((address, entry))
    }

    /// A value since the entry was first issued, or values by the edition from which on they held.
    fn said(&mut self, node: &Node<'_>, since: usize) -> Option<Said> {
        let DeValue::Table(table) = node.get_ref() else {
            return Some(Said::since(since, self.text_of(node)?));
        };
        let mut said = Said::default();
        for (name, node) in in_order(table) {
            let edition = self.edition(name.get_ref(), name.span());
            let value = self.text_of(node);
            if let (Some(edition), Some(value)) = (edition, value) {
                said.insert(edition, value);
            }
        }
        Some(said)
    }

    fn revised(&mut self, node: &Node<'_>) -> BTreeMap<usize, Vec<Subject>> {
        let mut revised = BTreeMap::new();
        let Some(table) = node.get_ref().as_table() else {
            self.damaged(node.span(), "`revised` names editions".to_owned());
            return revised;
        };
        for (name, node) in in_order(table) {
            let edition = self.edition(name.get_ref(), name.span());
            let Some(text) = self.text_of(node) else {
                continue;
            };
            let subjects = text.split_whitespace();
            let subjects = subjects.filter_map(|word| self.subject(word, node.span()));
            let subjects = subjects.collect();
            if let Some(edition) = edition {
                revised.insert(edition, subjects);
            }
        }
        revised
    }

    fn holds(&mut self, node: &Node<'_>) -> BTreeMap<Subject, Digest> {
        let mut holds = BTreeMap::new();
        let Some(text) = self.text_of(node) else {
            return holds;
        };
        for word in text.split_whitespace() {
            let Some((subject, digest)) = word.split_once(':') else {
                self.damaged(
                    node.span(),
                    format!("`{word}` is not a subject with its digest"),
                );
                continue;
            };
            let subject = self.subject(subject, node.span());
            match (subject, Digest::parse(digest)) {
                (Some(subject), Some(digest)) => {
                    holds.insert(subject, digest);
                }
                (_, None) => self.damaged(node.span(), format!("`{digest}` is not a digest")),
                (None, _) => {}
            }
        }
        holds
    }

    fn subject(&mut self, word: &str, span: Range<usize>) -> Option<Subject> {
        let subject = Subject::from_word(word);
        if subject.is_none() {
            self.damaged(span, format!("`{word}` is not a subject"));
        }
        subject
    }

    fn edition(&mut self, name: &str, span: Range<usize>) -> Option<usize> {
        let edition = self.editions.get(name).copied();
        if edition.is_none() {
            self.damaged(span, format!("edition {name} is not listed in `editions`"));
        }
        edition
    }

    fn place(&self, span: Range<usize>) -> Place {
        Place::new(self.file, span)
    }

    fn damaged(&mut self, span: Range<usize>, message: String) {
        let finding = Finding::new(Code::RegisterDamaged, self.place(span), message);
        self.findings.push(finding.help(
            "only `keyblock issue` writes this file: take it, or this line of it, from the version that was kept last",
        ));
    }
}
