//! The place where a key is defined: changes it there, and adds the old key to `was`.

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use super::planned::RenamePlan;
use crate::model::former::Named;
use crate::model::key::{Key, PictureOwner};
use crate::model::link::Target;
use crate::model::occurrence::DesignPart;
use crate::model::place::Place;
use crate::read::bibtex;
use crate::read::edits::Edits;
use crate::read::faults::Node;
use crate::read::files::inputs::Inputs;
use crate::read::files::kind::FileKind;
use crate::read::files::load::Loaded;
use crate::read::records::record;
use crate::read::refusal::Refusal;
use crate::read::table::fields::in_order;

/// Adds the edits at the place of the thing's own key, where it is in this file.
pub(super) fn edit(
    edits: &mut Edits<'_>,
    path: &str,
    text: &str,
    file: &Loaded,
    thing: &Named,
    new: &Key,
) -> Result<(), Refusal> {
    let Some(source) = file.source() else {
        return Ok(());
    };
    let mut own = Own {
        edits,
        path,
        text,
        file,
        old: thing.key(),
        new,
    };
    match (thing, &file.kind) {
        (Named::Record(Target::Work(_)), FileKind::Literature) => own.work(),
        (Named::Record(target), kind) if is_of_file(target, kind) => {
            record::tree_alone(source, |tree| own.root(tree));
            Ok(())
        }
        (Named::Record(Target::Exhibition(_)), FileKind::Exhibitions) => {
            record::tree_alone(source, |tree| own.exhibition(tree))
        }
        (Named::Record(Target::Picture(picture)), kind) => {
            let is_owner = match (&picture.owner, kind) {
                (PictureOwner::Impression(owner), FileKind::Impression(key)) => owner == key,
                (PictureOwner::Design(owner), FileKind::Design(key))
                | (PictureOwner::Document(owner), FileKind::Document(key)) => owner == key,
                _ => false,
            };
            if is_owner {
                record::tree_alone(source, |tree| own.picture(tree))
            } else {
                Ok(())
            }
        }
        (Named::Part(design, part, _), FileKind::Design(key)) if design == key => {
            let list = match part {
                DesignPart::Matrix => "matrices",
                DesignPart::State => "states",
                DesignPart::Printing => "printings",
                DesignPart::Variant => "variants",
            };
            record::tree_alone(source, |tree| own.part(tree, list))
        }
        (Named::Point(design, _), FileKind::Design(key)) if design == key => {
            record::tree_alone(source, |tree| own.part(tree, "points"))
        }
        (Named::Condition(mark, _), FileKind::Mark(key)) if mark == key => {
            record::tree_alone(source, |tree| own.part(tree, "conditions"))
        }
        _ => Ok(()),
    }
}

/// Whether the file is the record itself, whose key is the name of the file or folder.
fn is_of_file(target: &Target, kind: &FileKind) -> bool {
    match (target, kind) {
        (Target::Design(old), FileKind::Design(key))
        | (Target::Holder(old), FileKind::Holder(key))
        | (Target::Person(old), FileKind::Person(key))
        | (Target::Mark(old), FileKind::Mark(key))
        | (Target::Document(old), FileKind::Document(key))
        | (Target::Series(old), FileKind::Series(key))
        | (Target::Page(old), FileKind::PageRecord(key)) => old == key,
        _ => false,
    }
}

/// Adds the files and folders that are named by the key.
pub(super) fn moves(plan: &mut RenamePlan, inputs: &Inputs, thing: &Named, new: &Key) {
    let Named::Record(target) = thing else { return };
    let old = thing.key();
    let folder = match target {
        Target::Design(_) => {
            let folder = |key: &Key| format!("records/designs/{key}");
            plan.moves.push((folder(old), folder(new)));
            return;
        }
        Target::Holder(_) => "holders",
        Target::Person(_) => "people",
        Target::Mark(_) => "marks",
        Target::Document(_) => "documents",
        Target::Series(_) => "series",
        Target::Page(_) => "pages",
        _ => return,
    };
    let path = |key: &Key, ending: &str| format!("records/{folder}/{key}.{ending}");
    for ending in endings(inputs, &format!("records/{folder}/{old}.")) {
        plan.moves.push((path(old, ending), path(new, ending)));
    }
    // A page has a record only for its former keys.
    let record = path(old, "toml");
    if folder == "pages" && !inputs.locations.contains_key(&record) {
        let record = path(new, "toml");
        plan.texts
            .insert(record.clone(), format!("was = [\"{old}\"]\n"));
        plan.places.insert(record, 1);
    }
}

/// The ends of the files whose paths begin so: "md", "toml"; of a document also "transcription.md", "en.md".
fn endings<'i>(inputs: &'i Inputs, begin: &str) -> Vec<&'i str> {
    let files = inputs.locations.keys();
    files.filter_map(|path| path.strip_prefix(begin)).collect()
}

struct Own<'e, 't> {
    edits: &'e mut Edits<'t>,
    path: &'e str,
    text: &'e str,
    file: &'e Loaded,
    old: &'e Key,
    new: &'e Key,
}

impl Own<'_, '_> {
    /// A record that is a file: its `was` stands below its first key.
    fn root(&mut self, tree: &DeTable<'_>) {
        if self.in_list(tree) {
            return;
        }
        let line = self.was_line();
        // The key of a header stands within it, and that of a value before the value.
        let first = in_order(tree)
            .into_iter()
            .find(|(key, node)| node.span().start > key.span().end);
        match first {
            Some((_, node)) => self.edits.insert_below(node.span().end, &line),
            None => self.edits.insert(0, format!("{line}\n\n")),
        }
    }

    /// A part of a record, in a list of tables.
    fn part(&mut self, tree: &DeTable<'_>, list: &str) -> Result<(), Refusal> {
        let Some((at, table)) = find(tree, list, |table| {
            text_of(table, "key") == Some(self.old.as_str())
        }) else {
            return Ok(());
        };
        let Some(key) = table.get("key") else {
            return Ok(());
        };
        self.define(key)?;
        self.add_was(table, at, key, "");
        Ok(())
    }

    /// A picture, which has the name of its side where it has none of its own.
    fn picture(&mut self, tree: &DeTable<'_>) -> Result<(), Refusal> {
        let is_it = |table: &DeTable<'_>| {
            let name = text_of(table, "name").or_else(|| text_of(table, "side"));
            name.unwrap_or("recto") == self.old.as_str()
        };
        let Some((at, table)) = find(tree, "pictures", is_it) else {
            return Ok(());
        };
        if let Some(name) = table.get("name") {
            self.define(name)?;
            self.add_was(table, at, name, "");
        } else if let Some(file) = table.get("file") {
            let name = format!("name = \"{}\"", self.new);
            self.add_was(table, at, file, &name);
        }
        Ok(())
    }

    /// An exhibition: the table named by its key, and headers of tables within it.
    fn exhibition(&mut self, tree: &DeTable<'_>) -> Result<(), Refusal> {
        let Some((key, node)) = tree.get_key_value(self.old.as_str()) else {
            return Ok(());
        };
        let DeValue::Table(table) = node.get_ref() else {
            return Ok(());
        };
        self.edits.key(
            self.path,
            self.place(key.span()),
            self.old.as_str(),
            self.new.as_str(),
        )?;
        let mut headers = Vec::new();
        inner_headers(table, self.text, &mut headers);
        for header in headers {
            self.edits.key(
                self.path,
                self.place(header),
                self.old.as_str(),
                self.new.as_str(),
            )?;
        }
        if self.in_list(table) {
            return Ok(());
        }
        let span = node.span();
        let line = self.was_line();
        match self.text.get(span.clone()).and_then(|t| t.chars().next()) {
            Some('[') => self.edits.insert_below(span.end, &line),
            Some('{') => self.edits.insert(span.start + 1, format!(" {line},")),
            _ => {
                return Err(Refusal::of_records(
                    format!("the exhibition `{}` has no header of its own", self.old),
                    format!("begin it with [{}]", self.old),
                ));
            }
        }
        Ok(())
    }

    /// An entry of the literature, whose former keys are its `ids`.
    fn work(&mut self) -> Result<(), Refusal> {
        let entries = bibtex::other_keys(self.text, self.file.file);
        let Some(entry) = entries.into_iter().find(|e| e.key.value == *self.old) else {
            return Ok(());
        };
        let place = entry.key.place;
        self.edits
            .key(self.path, place, self.old.as_str(), self.new.as_str())?;
        let returns = entry.others.iter().find(|other| other.value == *self.new);
        match (returns, entry.others.last()) {
            (Some(own), _) => {
                let (new, old) = (self.new.as_str(), self.old.as_str());
                self.edits.key(self.path, own.place, new, old)
            }
            (None, Some(last)) => {
                let end = last.place.span().end;
                self.edits.insert(end, format!(", {}", self.old));
                Ok(())
            }
            (None, None) => {
                let end = place.span().end;
                self.edits
                    .insert(end, format!(",\n  ids = {{{}}}", self.old));
                Ok(())
            }
        }
    }

    /// The value that defines the key.
    fn define(&mut self, key: &Node<'_>) -> Result<(), Refusal> {
        let place = self.place(key.span());
        let (old, new) = (self.old.as_str(), self.new.as_str());
        self.edits.key(self.path, place, old, new)
    }

    /// Adds the old key to `was` in a table of a list, beside `anchor`, with `more` before it.
    fn add_was(&mut self, table: &DeTable<'_>, at: usize, anchor: &Node<'_>, more: &str) {
        let is_inline = self.text.get(at..).is_some_and(|t| t.starts_with('{'));
        let listed = self.in_list(table);
        let was = self.was_line();
        let lines = [more, if listed { "" } else { &was }];
        for line in lines.into_iter().filter(|line| !line.is_empty()) {
            let end = anchor.span().end;
            if is_inline {
                self.edits.insert(end, format!(", {line}"));
            } else {
                self.edits.insert_below(end, line);
            }
        }
    }

    /// Adds the old key to the `was` of a table, where it has one. A key that becomes the present one again leaves it.
    fn in_list(&mut self, table: &DeTable<'_>) -> bool {
        let Some(node) = table.get("was") else {
            return false;
        };
        let old = format!("\"{}\"", self.old);
        let is_new = |node: &&Node<'_>| node.get_ref().as_str() == Some(self.new.as_str());
        match node.get_ref() {
            DeValue::Array(list) => {
                if let Some(own) = list.iter().find(is_new) {
                    self.edits.replace(own.span(), old);
                } else if let Some(last) = list.last() {
                    self.edits.insert(last.span().end, format!(", {old}"));
                } else {
                    self.edits.replace(node.span(), format!("[{old}]"));
                }
            }
            DeValue::String(_) if is_new(&node) => self.edits.replace(node.span(), old),
            DeValue::String(_) => {
                let span = node.span();
                self.edits.insert(span.start, "[".to_owned());
                self.edits.insert(span.end, format!(", {old}]"));
            }
            // A value that is no key is reported where the record is read.
            _ => return false,
        }
        true
    }

    fn was_line(&self) -> String {
        format!("was = [\"{}\"]", self.old)
    }

    fn place(&self, span: std::ops::Range<usize>) -> Place {
        Place::new(self.file.file, span)
    }
}

/// The first table of a list that fits, and the byte at which it begins.
fn find<'n, 't>(
    tree: &'n DeTable<'t>,
    list: &str,
    fits: impl Fn(&DeTable<'t>) -> bool,
) -> Option<(usize, &'n DeTable<'t>)> {
    let nodes: &[Node<'t>] = match tree.get(list)?.get_ref() {
        DeValue::Array(nodes) => nodes,
        _ => std::slice::from_ref(tree.get(list)?),
    };
    nodes.iter().find_map(|node| {
        let table = node.get_ref().as_table()?;
        fits(table).then(|| (node.span().start, table))
    })
}

fn text_of<'n>(table: &'n DeTable<'_>, key: &str) -> Option<&'n str> {
    table.get(key).map(Spanned::get_ref)?.as_str()
}

/// The headers of the tables within a table: `[[KEY.settled]]`.
fn inner_headers(table: &DeTable<'_>, text: &str, headers: &mut Vec<std::ops::Range<usize>>) {
    for node in table.values() {
        of_node(node, text, headers);
    }
}

fn of_node(node: &Node<'_>, text: &str, headers: &mut Vec<std::ops::Range<usize>>) {
    match node.get_ref() {
        DeValue::Table(table) => {
            if text.get(node.span()).is_some_and(|t| t.starts_with('[')) {
                headers.push(node.span());
            }
            inner_headers(table, text, headers);
        }
        DeValue::Array(list) => list.iter().for_each(|node| of_node(node, text, headers)),
        _ => {}
    }
}
