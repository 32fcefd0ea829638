//! Collects the findings while one TOML file is read.
//!
//! In: faults, reported where the reader meets them. Out: findings with exact places. [`Faults`] also
//! holds the tables around the current key, and whether the file has syntax faults. In a file with
//! syntax faults no key is reported as missing.

use std::cell::OnceCell;

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use crate::model::codes::Code;
use crate::model::finding::{Finding, Severity};
use crate::model::occurrence::DesignPart;
use crate::model::place::{FileId, Place};
use crate::read::limits::MOST_FINDINGS;
use crate::read::shape::{Shape, Takes};

/// A value of the tree, with its span.
pub(crate) type Node<'t> = Spanned<DeValue<'t>>;

/// The findings on one file while it is read, and the reader's position in the file.
pub(crate) struct Faults<'t> {
    /// The file.
    pub(crate) file: FileId,
    /// Its text.
    pub(crate) text: &'t str,
    /// The key whose value is being read, for messages.
    pub(crate) key: &'t str,
    /// Whether this is the second reading, without the private fields. Its findings are dropped, and a
    /// private party is read as undisclosed.
    pub(crate) redacted: bool,
    broken: bool,
    lost_a_table: bool,
    root: &'t DeTable<'t>,
    found: Bounded,
    trail: Vec<Level<'t>>,
    levels: usize,
    moved: Vec<(usize, &'static str)>,
    /// The starts of all table headers, rising; computed when first needed.
    headers: OnceCell<Vec<usize>>,
}

/// The findings on one file, at most [`MOST_FINDINGS`] of each severity. The rest are counted.
#[derive(Default)]
pub(crate) struct Bounded {
    told: Vec<Finding>,
    errors: Count,
    doubts: Count,
    hints: Count,
}

/// How many findings of one severity there are, and the place of the first that is not told.
#[derive(Default)]
struct Count {
    all: usize,
    first_untold: Option<Place>,
}

impl Bounded {
    /// Adds a finding, or only counts it where there are too many of its severity.
    pub(crate) fn push(&mut self, finding: Finding) {
        let count = match finding.severity() {
            Severity::Error => &mut self.errors,
            Severity::Doubt => &mut self.doubts,
            Severity::Hint => &mut self.hints,
        };
        count.all += 1;
        if count.all > MOST_FINDINGS {
            count.first_untold.get_or_insert(finding.at.place);
        } else {
            self.told.push(finding);
        }
    }

    /// Whether further errors would only be counted.
    pub(crate) fn is_full(&self) -> bool {
        self.errors.all >= MOST_FINDINGS
    }

    /// The findings, and where some are not told, one for each severity that says how many.
    pub(crate) fn into_findings(self) -> Vec<Finding> {
        let mut findings = self.told;
        for (count, what) in [
            (&self.errors, "errors"),
            (&self.doubts, "doubts"),
            (&self.hints, "hints"),
        ] {
            let Some(place) = count.first_untold else {
                continue;
            };
            let message = format!(
                "the file has {} {what}, and only {MOST_FINDINGS} of them are reported",
                count.all
            );
            findings.push(
                Finding::new(Code::FindingsUntold, place, message)
                    .help("correct those that are reported, and audit the catalogue again"),
            );
        }
        findings
    }
}

/// A table that is being read.
#[derive(Clone, Copy)]
struct Level<'t> {
    number: usize,
    shape: &'static Shape,
    table: &'t DeTable<'t>,
    /// The byte at which its content begins: after its header, or at the start of the file.
    body: usize,
}

/// The findings on one file, at most [`MOST_FINDINGS`] of each severity.
pub(crate) fn bounded(findings: Vec<Finding>) -> Vec<Finding> {
    let mut bounded = Bounded::default();
    for finding in findings {
        bounded.push(finding);
    }
    bounded.into_findings()
}

impl<'t> Faults<'t> {
    /// An empty collection for `file`. `broken`: the file has syntax faults.
    pub(crate) fn new(
        file: FileId,
        text: &'t str,
        root: &'t DeTable<'t>,
        broken: bool,
    ) -> Faults<'t> {
        Faults {
            file,
            text,
            key: "",
            redacted: false,
            broken,
            lost_a_table: false,
            root,
            found: Bounded::default(),
            trail: Vec::new(),
            levels: 0,
            moved: Vec::new(),
            headers: OnceCell::new(),
        }
    }

    /// The findings.
    pub(crate) fn into_findings(self) -> Vec<Finding> {
        self.found.into_findings()
    }

    /// Reports a finding.
    pub(crate) fn push(&mut self, finding: Finding) {
        self.found.push(finding);
    }

    /// Notes that some table was read as part of another, because its header is missing.
    pub(crate) fn lose_a_table(&mut self) {
        self.lost_a_table = true;
    }

    /// Whether some table was read as part of another, because its header is missing.
    pub(crate) fn lost_a_table(&self) -> bool {
        self.lost_a_table
    }

    /// Whether the file has syntax faults: a key that seems to be missing may only be unread.
    pub(crate) fn is_broken(&self) -> bool {
        self.broken
    }

    /// The bytes `span` of the file.
    pub(crate) fn place(&self, span: std::ops::Range<usize>) -> Place {
        Place::new(self.file, span)
    }

    /// The place of a value.
    pub(crate) fn of(&self, node: &Node<'_>) -> Place {
        self.place(node.span())
    }

    /// The text of a value, as written in the file.
    pub(crate) fn written(&self, node: &Node<'_>) -> &'t str {
        self.text.get(node.span()).unwrap_or_default()
    }

    /// Reports that the value of the current key is of another type than it takes, with an example of that type.
    pub(crate) fn wrong_form(&mut self, node: &Node<'_>, takes: &str, example: &str) {
        let message = format!("`{}` takes {takes}, not {}", self.key, type_name(node));
        let help = format!("write it like this: {} = {example}", self.key);
        self.push(Finding::new(Code::ValueType, self.of(node), message).help(help));
    }

    /// Reports that the value of the current key is of another type than it takes.
    pub(crate) fn wrong_type(&mut self, node: &Node<'_>, takes: &str) {
        let message = format!("`{}` takes {takes}, not {}", self.key, type_name(node));
        let finding = Finding::new(Code::ValueType, self.of(node), message);
        let written = self.written(node);
        let finding = match node.get_ref() {
            // Parts of a design are named by their keys; their numbers and numerals are computed.
            DeValue::Integer(_) if self.part().is_some() => finding.help(format!(
                "write the key of the {} in quotes, as the design has it; numbers and numerals are computed",
                self.part().unwrap_or_default()
            )),
            DeValue::Integer(_) | DeValue::Float(_) | DeValue::Datetime(_)
                if takes.contains("in quotes") =>
            {
                finding.help(format!("put it in quotes: \"{written}\""))
            }
            DeValue::String(text)
                if takes.contains("number") && text.trim().parse::<f64>().is_ok() =>
            {
                finding.help(format!("leave out the quotes: {}", text.trim()))
            }
            DeValue::String(text) if matches!(text.trim(), "true" | "false") => {
                finding.help(format!("leave out the quotes: {}", text.trim()))
            }
            _ => finding.help(format!("write {takes}")),
        };
        self.push(finding);
    }

    /// The part of the design whose key the current key takes.
    fn part(&self) -> Option<&'static str> {
        let declared = self.trail.last()?.shape.key(self.key)?;
        let takes = match &declared.takes {
            Takes::Several(one) => one,
            takes => takes,
        };
        match takes {
            Takes::Part(DesignPart::Matrix) => Some("matrix"),
            Takes::Part(DesignPart::State) | Takes::StatesPrinted => Some("state"),
            Takes::Part(DesignPart::Printing) => Some("printing"),
            Takes::Part(DesignPart::Variant) => Some("variant"),
            _ => None,
        }
    }

    /// Enters a table.
    pub(crate) fn enter(&mut self, shape: &'static Shape, table: &'t DeTable<'t>, at: Place) {
        self.levels += 1;
        // The root has no header: its place is the start of the file, and its content begins there.
        let body = at.end as usize;
        self.trail.push(Level {
            number: self.levels,
            shape,
            table,
            body,
        });
    }

    /// Leaves the table that was entered last.
    pub(crate) fn leave(&mut self) {
        self.trail.pop();
    }

    /// Whether a key of the table entered last was found below another table's header.
    pub(crate) fn was_moved(&self, key: &str) -> bool {
        self.trail.last().is_some_and(|level| {
            self.moved
                .iter()
                .any(|(n, k)| *n == level.number && *k == key)
        })
    }

    /// Reports a key that stands below the header at `header` but belongs to a table around it.
    /// Returns whether it reported one. `inside`: the table that was entered last has the header.
    pub(crate) fn swallowed(
        &mut self,
        key: &Spanned<toml::de::DeString<'_>>,
        header: Place,
        inside: bool,
    ) -> bool {
        let opened_by_header = self
            .text
            .get(header.span())
            .is_some_and(|t| t.starts_with('['));
        if !opened_by_header {
            return false;
        }
        if self.found.is_full() {
            return true;
        }
        let around = self.trail.len().saturating_sub(usize::from(inside));
        let name: &str = key.get_ref();
        let owner = self.trail.iter().take(around).rev().find_map(|level| {
            let declared = level.shape.key(name)?;
            (!level.table.contains_key(name)).then_some((*level, declared.name))
        });
        let Some((level, declared)) = owner else {
            return false;
        };
        let first_header = self
            .first_header_from(level.body)
            .unwrap_or(header.start as usize);
        let line = self.line(first_header);
        let table = self.text.get(header.span()).unwrap_or_default();
        let finding = Finding::new(
            Code::KeyMisplaced,
            self.place(key.span()),
            format!(
                "`{name}` belongs to {}, but is below `{table}`",
                level.shape.name
            ),
        )
        .beside(header, "everything from here on belongs to this table")
        .help(format!("move above line {line}"));
        self.push(finding);
        self.moved.push((level.number, declared));
        true
    }

    /// Whether one of the tables being read requires a key and lacks it.
    pub(crate) fn is_wanted(&self, name: &str) -> bool {
        self.trail.iter().any(|level| {
            level.shape.key(name).is_some_and(|key| key.required) && !level.table.contains_key(name)
        })
    }

    /// The first table header at or after a byte of the file.
    fn first_header_from(&self, from: usize) -> Option<usize> {
        let headers = self.headers.get_or_init(|| {
            let mut all = Vec::new();
            headers(self.root, self.text, &mut |at| all.push(at));
            all.sort_unstable();
            all
        });
        headers
            .get(headers.partition_point(|at| *at < from))
            .copied()
    }

    /// The line of a byte, from 1.
    pub(crate) fn line(&self, at: usize) -> usize {
        let before = self.text.as_bytes().get(..at).unwrap_or_default();
        before.iter().filter(|b| **b == b'\n').count() + 1
    }
}

/// Calls `visit` with the start of every table header below `table`.
fn headers(table: &DeTable<'_>, text: &str, visit: &mut impl FnMut(usize)) {
    for (_, node) in table {
        headers_of(node, text, visit);
    }
}

fn headers_of(node: &Node<'_>, text: &str, visit: &mut impl FnMut(usize)) {
    match node.get_ref() {
        DeValue::Table(table) => {
            let span = node.span();
            // A table in braces begins with `{`, and a table made by a dotted key begins with that key.
            if text.get(span.clone()).is_some_and(|t| t.starts_with('[')) {
                visit(span.start);
            }
            headers(table, text, visit);
        }
        DeValue::Array(list) => {
            for node in list {
                headers_of(node, text, visit);
            }
        }
        _ => {}
    }
}

/// The type of a value, worded for cataloguers.
pub(crate) fn type_name(node: &Node<'_>) -> &'static str {
    match node.get_ref() {
        DeValue::String(_) => "text",
        DeValue::Integer(_) => "a whole number",
        DeValue::Float(_) => "a number",
        DeValue::Boolean(_) => "true or false",
        DeValue::Datetime(_) => "a date without quotes",
        DeValue::Array(_) => "a list",
        DeValue::Table(_) => "a table",
    }
}

/// Whether the parser put this value in place of one that it could not read. Such a value has no
/// place, and its fault has a finding already.
pub(crate) fn is_unread(node: &Node<'_>) -> bool {
    node.span().is_empty()
}
