//! Reads the keys of one table of a record as typed values, and reports every fault at its place.
//!
//! Unknown keys and missing required keys are reported. A value that cannot be read is reported and then
//! counts as absent; reading continues.
//!
//! In: a table of the tree and its [`Shape`]. Out: values of the model. `values` reads single values.

use toml::de::{DeTable, DeValue};

use crate::model::certainty::{Claim, Statement, Statements};
use crate::model::codes::Code;
use crate::model::edtf::Date;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::literature::Cited;
use crate::model::place::{Place, Placed};
use crate::model::standing::RecordStanding;
use crate::model::words::{ClosedList, Standing};
use crate::read::faults::{Faults, Node, is_unread};
use crate::read::shape::{STATEMENT, Shape, Takes};
use crate::read::table::rest::{ListedField, check_private};
use crate::read::values;

pub(crate) use crate::read::table::cursor::{Entry, Fields, in_order};

/// Reads a table as `shape` declares it: calls `read` for the values, then reports unknown keys and
/// missing required keys.
pub(crate) fn read_table<'t, T>(
    faults: &mut Faults<'t>,
    shape: &'static Shape,
    table: &'t DeTable<'t>,
    at: Place,
    read: impl FnOnce(&mut Fields<'_, 't>) -> T,
) -> T {
    faults.enter(shape, table, at);
    let mut fields = Fields {
        faults,
        at,
        shape,
        table,
        asked: Vec::new(),
    };
    let value = read(&mut fields);
    fields.former_keys();
    fields.finish();
    faults.leave();
    value
}

impl<'t> Fields<'_, 't> {
    /// One value.
    pub(crate) fn one<T>(
        &mut self,
        name: &'static str,
        read: impl FnOnce(&mut Faults<'t>, &'t Node<'t>) -> Option<T>,
    ) -> Option<T> {
        let node = self.take(name)?;
        read(self.faults, node)
    }

    /// One value or several.
    pub(crate) fn several<T>(
        &mut self,
        name: &'static str,
        read: impl Fn(&mut Faults<'t>, &'t Node<'t>) -> Option<T>,
    ) -> Vec<T> {
        match self.take(name) {
            None => Vec::new(),
            Some(node) => values::several(self.faults, node, read),
        }
    }

    /// Text. Blank text is a finding where the shape requires the key; elsewhere it counts as absent.
    pub(crate) fn text(&mut self, name: &'static str) -> Option<Placed<String>> {
        let is_required = self.shape.key(name).is_some_and(|key| key.required);
        if is_required {
            self.one(name, values::telling_text)
        } else {
            self.one(name, values::text)
                .filter(|text| !text.value.trim().is_empty())
        }
    }

    /// Text without its place.
    pub(crate) fn words(&mut self, name: &'static str) -> Option<String> {
        self.text(name).map(|text| text.value)
    }

    /// `true` or `false`.
    pub(crate) fn flag(&mut self, name: &'static str) -> Option<bool> {
        self.one(name, values::flag).map(|flag| flag.value)
    }

    /// A whole number within the bounds that the shape declares.
    pub(crate) fn whole(&mut self, name: &'static str) -> Option<Placed<u32>> {
        let Some(Takes::Whole(least, most)) = self.shape.key(name).map(|key| &key.takes) else {
            debug_assert!(false, "{}.{name} is no whole number", self.shape.name);
            return None;
        };
        self.one(name, values::whole(*least, *most))
    }

    /// A number above 0, at most the one that the shape declares.
    pub(crate) fn fraction(&mut self, name: &'static str) -> Option<Placed<f64>> {
        let Some(Takes::Fraction(most)) = self.shape.key(name).map(|key| &key.takes) else {
            debug_assert!(false, "{}.{name} is no fraction", self.shape.name);
            return None;
        };
        self.one(name, |faults, node| values::fraction(faults, node, *most))
    }

    /// A date.
    pub(crate) fn date(&mut self, name: &'static str) -> Option<Placed<Date>> {
        self.one(name, values::date)
    }

    /// A key: the record's own or another's.
    pub(crate) fn key(&mut self, name: &'static str) -> Option<Placed<Key>> {
        self.one(name, values::key)
    }

    /// One key or several.
    pub(crate) fn keys(&mut self, name: &'static str) -> Vec<Placed<Key>> {
        self.several(name, values::key)
    }

    /// The key of a term.
    pub(crate) fn term(&mut self, name: &'static str) -> Option<Placed<Key>> {
        self.one(name, values::term)
    }

    /// One key of a term or several.
    pub(crate) fn terms(&mut self, name: &'static str) -> Vec<Placed<Key>> {
        self.several(name, values::term)
    }

    /// A word of a closed list.
    pub(crate) fn word<T: ClosedList>(&mut self, name: &'static str) -> Option<Placed<T>> {
        self.one(name, values::word)
    }

    /// Statements: a bare value, `{ is, … }`, or a list of those.
    pub(crate) fn statements<T>(
        &mut self,
        name: &'static str,
        read: impl Fn(&mut Faults<'t>, &'t Node<'t>) -> Option<Placed<T>>,
    ) -> Statements<T> {
        let Some(node) = self.take(name) else {
            return Statements::default();
        };
        let declared = self.shape.key(name).map(|key| &key.takes);
        let takes_list = matches!(declared, Some(Takes::Statements(Takes::Size)));
        let alone = |faults: &mut Faults<'t>, node| {
            let is = read(faults, node)?;
            let claim = Claim::default();
            Some(Statement { is, claim })
        };
        let one = |faults: &mut Faults<'t>, node: &'t Node<'t>, table| {
            faults.key = name;
            let at = faults.of(node);
            read_table(faults, &STATEMENT, table, at, |fields| {
                let stated = fields.take("is");
                // Findings name the outer key, not `is`.
                fields.faults.key = name;
                let is = stated.and_then(|node| read(fields.faults, node));
                let claim = fields.claim();
                is.map(|is| Statement { is, claim })
            })
        };
        let DeValue::Array(list) = node.get_ref() else {
            let stated = match node.get_ref() {
                DeValue::Table(table) => one(self.faults, node, table),
                _ => alone(self.faults, node),
            };
            return Statements(stated.into_iter().collect());
        };
        let has_tables = list.iter().any(|node| node.get_ref().is_table());
        if !has_tables && (takes_list || list.is_empty()) {
            let stated = if takes_list {
                alone(self.faults, node)
            } else {
                None
            };
            return Statements(stated.into_iter().collect());
        }
        let mut stated = Vec::new();
        for node in list.iter().filter(|node| !is_unread(node)) {
            if let DeValue::Table(table) = node.get_ref() {
                stated.extend(one(self.faults, node, table));
            } else {
                let finding = Finding::new(
                    Code::ValueType,
                    self.faults.of(node),
                    format!("a list of `{name}` is one of statements, and this is none"),
                )
                .help(format!(
                    "where sources disagree, write {{ is = {} }} with who says so; else leave out the brackets",
                    self.faults.written(node)
                ));
                self.faults.push(finding);
            }
        }
        Statements(stated)
    }

    /// A nested table.
    pub(crate) fn table<T>(
        &mut self,
        name: &'static str,
        read: impl FnOnce(&mut Fields<'_, 't>) -> T,
    ) -> Option<T> {
        let shape = self.nested(name)?;
        let node = self.take(name)?;
        let DeValue::Table(table) = node.get_ref() else {
            self.faults.wrong_form(node, "a table", &shape.example());
            return None;
        };
        let at = self.faults.of(node);
        Some(read_table(self.faults, shape, table, at, read))
    }

    /// A list of nested tables; a single table may be written without brackets.
    pub(crate) fn tables<T>(
        &mut self,
        name: &'static str,
        mut read: impl FnMut(&mut Fields<'_, 't>) -> Option<T>,
    ) -> Vec<T> {
        let Some((shape, nodes)) = self.nested_nodes(name) else {
            return Vec::new();
        };
        let mut all = Vec::new();
        for node in nodes.iter().filter(|node| !is_unread(node)) {
            self.faults.key = name;
            if let DeValue::Table(table) = node.get_ref() {
                let at = self.faults.of(node);
                all.extend(read_table(self.faults, shape, table, at, &mut read));
            } else {
                let example = format!("[{}]", shape.example());
                self.faults.wrong_form(node, "a list of tables", &example);
            }
        }
        all
    }

    /// Text, a table that says more, or a list of both. Blank text counts as absent.
    pub(crate) fn text_or_tables<T>(
        &mut self,
        name: &'static str,
        in_words: impl Fn(String) -> T,
        mut read: impl FnMut(&mut Fields<'_, 't>) -> Option<T>,
    ) -> Vec<T> {
        let Some((shape, nodes)) = self.nested_nodes(name) else {
            return Vec::new();
        };
        let mut all = Vec::new();
        for node in nodes.iter().filter(|node| !is_unread(node)) {
            self.faults.key = name;
            match node.get_ref() {
                DeValue::Table(table) => {
                    let at = self.faults.of(node);
                    all.extend(read_table(self.faults, shape, table, at, &mut read));
                }
                DeValue::String(text) => {
                    let text = text.as_ref();
                    all.extend((!text.trim().is_empty()).then(|| in_words(text.to_owned())));
                }
                _ => {
                    let what = "text in quotes, or a table";
                    self.faults.wrong_form(node, what, &shape.example());
                }
            }
        }
        all
    }

    /// The values of a list of nested tables, with their shape; one value is a list of one.
    fn nested_nodes(&mut self, name: &'static str) -> Option<(&'static Shape, &'t [Node<'t>])> {
        let shape = self.nested(name)?;
        let node = self.take(name)?;
        let nodes: &[Node<'t>] = match node.get_ref() {
            DeValue::Array(list) => list,
            _ => std::slice::from_ref(node),
        };
        Some((shape, nodes))
    }

    fn nested(&self, name: &str) -> Option<&'static Shape> {
        if let Some(Takes::Table(shape) | Takes::Tables(shape) | Takes::TextOrTables(shape)) =
            self.shape.key(name).map(|key| &key.takes)
        {
            Some(shape)
        } else {
            debug_assert!(false, "{}.{name} is no table", self.shape.name);
            None
        }
    }

    /// The entries of a table whose keys the shape does not declare, in the order in which they are
    /// written. The second argument of `read` is the place of the table.
    pub(crate) fn map<T>(
        &mut self,
        name: &'static str,
        mut read: impl FnMut(&mut Faults<'t>, Place, Entry<'t>) -> Option<T>,
    ) -> Vec<T> {
        let Some(node) = self.take(name) else {
            return Vec::new();
        };
        let DeValue::Table(table) = node.get_ref() else {
            let declared = self.shape.key(name).map(|key| key.takes.example());
            let example = declared.unwrap_or_default();
            self.faults.wrong_form(node, "a table", &example);
            return Vec::new();
        };
        let at = self.faults.of(node);
        let mut all = Vec::new();
        for (key, node) in in_order(table) {
            if key.get_ref() == "private" {
                let listed = |name: &str| {
                    if table.contains_key(name) {
                        ListedField::MayBePrivate
                    } else {
                        ListedField::Unknown
                    }
                };
                check_private(self.faults, node, &listed, || {
                    table.keys().map(|k| k.get_ref().as_ref()).collect()
                });
            } else if !is_unread(node) {
                self.faults.key = key.get_ref();
                all.extend(read(self.faults, at, Entry { key, node }));
            }
        }
        all
    }

    /// The entries of an open table whose keys the shape does not declare, in the order in which they are written.
    pub(crate) fn further<T>(
        &mut self,
        mut read: impl FnMut(&mut Faults<'t>, Entry<'t>) -> Option<T>,
    ) -> Vec<T> {
        debug_assert!(self.shape.open, "{} is not open", self.shape.name);
        let mut all = Vec::new();
        for (key, node) in in_order(self.table) {
            if self.shape.key(key.get_ref()).is_some() || is_unread(node) {
                continue;
            }
            // Any name is allowed here. But a name that is a required key which the record lacks is taken for that key.
            let is_stray = self.faults.is_wanted(key.get_ref()) || !node.get_ref().is_str();
            if is_stray && self.faults.swallowed(key, self.at, true) {
                continue;
            }
            self.faults.key = key.get_ref();
            all.extend(read(self.faults, Entry { key, node }));
        }
        all
    }

    /// Reports former keys that are no keys. `former` reads them of all records at once, before any record is
    /// read, because references may name them.
    fn former_keys(&mut self) {
        if self.shape.key("was").is_some() {
            self.keys("was");
        }
    }

    /// The work or document that `cite` names.
    pub(crate) fn cite(&mut self) -> Option<Placed<Cited>> {
        self.one("cite", values::cited)
    }

    /// The keys of a claim.
    pub(crate) fn claim(&mut self) -> Claim {
        Claim {
            certainty: self.word("certainty"),
            basis: self.word("basis"),
            by: self.key("by"),
            date: self.date("date"),
            cite: self.cite(),
            at: self.words("at"),
        }
    }

    /// The keys of standing.
    pub(crate) fn stands(&mut self) -> RecordStanding {
        RecordStanding {
            standing: self
                .word("standing")
                .map_or(Standing::Accepted, |standing| standing.value),
            see: self.several("see", values::link),
            why: self.words("why"),
        }
    }
}

impl<'t> Entry<'t> {
    /// The key as a key of the model; an invalid one is reported.
    pub(crate) fn read_key(&self, faults: &mut Faults<'t>) -> Option<Placed<Key>> {
        let place = faults.place(self.key.span());
        values::key_from(faults, self.key.get_ref(), place)
    }
}
