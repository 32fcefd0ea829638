//! Which standard a file holds, by its content, and its tables.

use std::collections::BTreeMap;

use super::json::{Met, address, class};
use super::lido::Lido;
use super::limits::{FILE_BYTES, NAMED};
use super::linked_art::LinkedArt;
use super::node::Node;
use super::reading::row;
use super::row::Row;
use super::sheet::{PathCounts, Sheet};
use super::{iiif, json, lido, linked_art, xml};
use crate::exchange::intake::table::encoding::{Decoded, decoded};
use crate::exchange::intake::table::limits::FILE_BYTES as OTHER_FILE_BYTES;
use crate::exchange::intake::table::{RecordNote, Table, TableFault, TableKind, TableNote, Taken};

/// The tables of a file of records, one for each standard in it; `None` where the file is neither XML nor JSON.
///
/// # Errors
/// [`TableFault`] where it is XML or JSON of another kind, is damaged or too large, declares entities, or holds no record.
pub fn tables(bytes: &[u8]) -> Result<Option<Vec<Table>>, TableFault> {
    let Some(form) = form(bytes) else {
        return Ok(None);
    };
    let is_utf_8 = std::str::from_utf8(bytes).is_ok();
    // What is in another encoding is held twice.
    let limit = if is_utf_8 {
        FILE_BYTES
    } else {
        OTHER_FILE_BYTES
    };
    if bytes.len() as u64 > limit {
        return Err(TableFault::TooLarge {
            what: "the file",
            limit,
            unit: "bytes",
        });
    }
    let Some(decoded) = decoded(bytes) else {
        return Ok(None);
    };
    let mut tables = match form {
        Form::Xml => match xml::root(&decoded.text)? {
            Some(root) if lido::ROOTS.contains(&root.as_str()) => lido_tables(&decoded.text)?,
            // A table may begin with a word in angle brackets.
            Some(_) if decoded.text.trim_end().ends_with('>') => {
                return Err(TableFault::OtherKind("XML and no LIDO"));
            }
            _ => return Ok(None),
        },
        Form::Json => json_tables(&decoded.text)?,
    };
    for table in &mut tables {
        table.notes.extend(notes(&decoded));
    }
    Ok(Some(tables))
}

/// What was found about the encoding.
fn notes(decoded: &Decoded<'_>) -> impl Iterator<Item = TableNote> + use<> {
    let assumed = decoded.assumed.map(TableNote::ReadAs);
    let count = decoded.unreadable;
    let unreadable = (count > 0).then_some(TableNote::UnreadableBytes { count });
    assumed.into_iter().chain(unreadable)
}

/// The form of a document.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Form {
    Xml,
    Json,
}

/// The form by the first signs: `<` and a name, `{` and a property, `[` and an object. A table may begin with `[Untitled],…`.
fn form(bytes: &[u8]) -> Option<Form> {
    let mut signs = bytes
        .iter()
        .take(1024)
        // The second halves of signs in UTF-16, and byte order marks.
        .filter(|byte| !matches!(byte, 0 | 0xef | 0xbb | 0xbf | 0xfe | 0xff))
        .filter(|byte| !byte.is_ascii_whitespace());
    match (signs.next()?, signs.next()?) {
        (b'<', b'?' | b'!' | b'a'..=b'z' | b'A'..=b'Z') => Some(Form::Xml),
        (b'{', b'"' | b'}') | (b'[', b'{' | b'[' | b']') => Some(Form::Json),
        _ => None,
    }
}

fn lido_tables(text: &str) -> Result<Vec<Table>, TableFault> {
    let mut counts = PathCounts::default();
    let around = xml::records(text, lido::RECORD, |record| {
        counts.count(&row(&record, &Lido::of(&record)));
        Ok(())
    })?;
    if counts.records() == 0 {
        return Err(TableFault::Empty);
    }
    let mut sheet = Sheet::begin(counts, TableKind::Lido, Taken::default())?;
    xml::records(text, lido::RECORD, |record| {
        sheet.write(&row(&record, &Lido::of(&record)))
    })?;
    if let Some(note) = around {
        sheet.note(note);
    }
    Ok(sheet.finish().0.into_iter().collect())
}

/// What a document of JSON holds beside the records.
#[derive(Default)]
struct Beside {
    named: (u32, Vec<String>),
    others: BTreeMap<String, u32>,
    around: (u32, Vec<String>),
}

fn is_record(node: &Node) -> bool {
    linked_art::is_object(node) || iiif::is_manifest(node)
}

/// A record as a row, with its standard; `None` of one that is only named.
fn read(record: &Node) -> Option<(TableKind, Row)> {
    if linked_art::is_object(record) {
        let is_whole = !linked_art::is_only_named(record);
        is_whole.then(|| (TableKind::LinkedArt, row(record, &LinkedArt::of(record))))
    } else {
        let is_whole = !iiif::is_only_named(record);
        is_whole.then(|| (TableKind::Iiif, row(record, &iiif::Manifests)))
    }
}

fn json_tables(text: &str) -> Result<Vec<Table>, TableFault> {
    let (mut objects, mut manifests) = (PathCounts::default(), PathCounts::default());
    let mut beside = Beside::default();
    json::records(text, is_record, &mut |met| {
        match met {
            Met::Record(record) => match read(&record) {
                Some((TableKind::LinkedArt, row)) => objects.count(&row),
                Some((_, row)) => manifests.count(&row),
                None => beside.name(&record),
            },
            Met::Around(node) => beside.add(&node),
        }
        Ok(())
    })?;
    if objects.records() + manifests.records() == 0 {
        return Err(match beside.named.0 {
            0 => TableFault::OtherKind("JSON without records of Linked Art or IIIF manifests"),
            count => TableFault::OnlyNamed { count },
        });
    }
    let mut tables = Vec::new();
    let mut taken = Taken::default();
    for (kind, counts) in [
        (TableKind::LinkedArt, objects),
        (TableKind::Iiif, manifests),
    ] {
        if counts.records() == 0 {
            continue;
        }
        let mut sheet = Sheet::begin(counts, kind, taken)?;
        json::records(text, is_record, &mut |met| match met {
            Met::Record(record) => match read(&record) {
                Some((of, row)) if of == kind => sheet.write(&row),
                _ => Ok(()),
            },
            Met::Around(_) => Ok(()),
        })?;
        for note in beside.notes() {
            sheet.note(note);
        }
        let (table, now) = sheet.finish();
        tables.extend(table);
        taken = now;
    }
    Ok(tables)
}

impl Beside {
    /// A record that is only named.
    fn name(&mut self, record: &Node) {
        self.named.0 = self.named.0.saturating_add(1);
        if self.named.1.len() < NAMED {
            self.named.1.push(address(record).to_owned());
        }
    }

    /// An object that is no record of a sheet: of another class, or around the records.
    fn add(&mut self, node: &Node) {
        const AROUND: [&str; 9] = [
            "",
            "Collection",
            "sc:Collection",
            "OrderedCollection",
            "OrderedCollectionPage",
            "CollectionPage",
            "Set",
            "Create",
            "Update",
        ];
        let class = class(node);
        if !AROUND.contains(&class) {
            // The classes of a file are few; a file of countless ones tells the first.
            if self.others.len() < NAMED || self.others.contains_key(class) {
                *self.others.entry(class.to_owned()).or_default() += 1;
            }
            return;
        }
        self.text(node, "");
    }

    fn text(&mut self, node: &Node, path: &str) {
        let path = format!("{path}/{}", node.name);
        if !node.peek().is_empty() && !["type", "@type", "@context"].contains(&&*node.name) {
            self.around.0 = self.around.0.saturating_add(1);
            if self.around.1.len() < NAMED {
                let path = path.trim_matches('/');
                self.around.1.push(format!("{path}: {}", node.peek()));
            }
        }
        for child in &node.children {
            self.text(child, &path);
        }
    }

    fn notes(&self) -> Vec<RecordNote> {
        let (count, addresses) = self.named.clone();
        let named = (count > 0).then_some(RecordNote::OnlyNamed { count, addresses });
        let others = self.others.iter();
        let others = others.map(|(class, count)| RecordNote::OfAnotherClass {
            class: class.clone(),
            count: *count,
        });
        let (count, texts) = self.around.clone();
        let around = (count > 0).then_some(RecordNote::Around { count, texts });
        named.into_iter().chain(others).chain(around).collect()
    }
}
