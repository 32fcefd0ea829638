//! A table of TOML to facts.

use std::sync::Arc;

use toml::de::DeValue;

use super::lengths::plain;
use super::shapes::{LATER, NOT_KNOWN, READS, SIZE};
use crate::exchange::intake::facts::{
    DatedAct, Facts, GivenMaker, GivenSize, GivenTitle, shared, shared_credit,
};
use crate::exchange::intake::reading::Lexicon;
use crate::exchange::intake::reading::credit::Credit;
use crate::exchange::intake::reading::dates::{Act, When};
use crate::exchange::intake::reading::names::NamedRecords;
use crate::exchange::intake::reading::sizes::{Length, Measured};
use crate::exchange::intake::reading::states::{CatalogueSaid, SaidState};
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::size::Mm;
use crate::model::vocabulary::List;
use crate::model::words::ClosedList;
use crate::read::faults::{Faults, Node, is_unread};
use crate::read::table::fields::{Fields, read_table};
use crate::read::values;
use crate::read::values::near::nearest;
use crate::study::numerals::from_roman;

/// Reads what a value reads, where it is a table.
pub(in super::super) fn node<'t>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
    text: &str,
    lexicon: &Lexicon,
) -> Option<Facts> {
    let DeValue::Table(table) = node.get_ref() else {
        faults.wrong_form(node, "a table", "{ title = \"The Ferry\" }");
        return None;
    };
    let at = faults.of(node);
    Some(read_table(faults, &READS, table, at, |fields| {
        reads(fields, text, lexicon)
    }))
}

/// Reads what a value reads; `text` is the value.
fn reads(fields: &mut Fields<'_, '_>, text: &str, lexicon: &Lexicon) -> Facts {
    let title = fields.words("title");
    let is_supplied = fields.flag("supplied").unwrap_or(false);
    Facts {
        title: title.map(|text| Arc::new(GivenTitle { text, is_supplied })),
        dates: shared(dates(fields)),
        sizes: shared(sizes(fields, text)),
        techniques: terms(fields, "technique", List::Techniques, lexicon),
        papers: terms(fields, "paper", List::Papers, lexicon),
        colours: fields.whole("colours").map(|n| n.value),
        matrices: fields.whole("matrices").map(|n| n.value),
        numbering: fields.words("numbering"),
        edition: fields.whole("edition").map(|n| n.value),
        kind: term(fields, "kind", List::Kinds, lexicon),
        makers: shared(fields.tables("makers", |fields| {
            let name = fields.words("name");
            let role = term(fields, "role", List::Roles, lexicon);
            Some(GivenMaker {
                name: name?,
                role: role?,
            })
        })),
        credit: shared_credit(Credit {
            how: term(fields, "how", List::Transfers, lexicon),
            from: fields.words("from"),
            through: fields.words("through"),
            year: fields.whole("year").map(|n| n.value),
            is_joint: fields.flag("joint").unwrap_or(false),
        }),
        references: shared(fields.tables("catalogues", |fields| Some(reference(fields)))),
        holder: record(fields, "holder", &HOLDER, &[&lexicon.names.holders]),
        series: record(fields, "series", &SERIES, &[&lexicon.names.series]),
        seen: fields.date("seen").map(|date| Arc::new(date.value)),
        seen_by: record(
            fields,
            "seen_by",
            &PARTY,
            &[&lexicon.names.people, &lexicon.names.holders],
        ),
        basis: fields.word("basis").map(|basis| basis.value),
        web: fields.one("web", values::web).map(|web| web.value),
        rights: fields.words("rights"),
        ..Facts::default()
    }
}

/// The start of a key in the file, by which dates and sizes stand in the order in which they are written.
fn start_of(fields: &Fields<'_, '_>, key: &str) -> u32 {
    fields.key_place(key).map_or(0, |place| place.start)
}

fn dates(fields: &mut Fields<'_, '_>) -> Vec<DatedAct> {
    let mut all: Vec<(u32, DatedAct)> = Vec::new();
    for act in Act::ALL {
        let start = start_of(fields, act.word());
        let whens = fields.several(act.word(), |faults, node| match node.get_ref().as_str() {
            Some(NOT_KNOWN) => Some(When::NotKnown),
            Some(LATER) => Some(When::Later),
            _ => values::date(faults, node).map(|date| When::Date(date.value)),
        });
        all.extend(
            whens
                .into_iter()
                .map(|when| (start, DatedAct { act: *act, when })),
        );
    }
    all.sort_by_key(|(start, _)| *start);
    all.into_iter().map(|(_, dated)| dated).collect()
}

fn sizes(fields: &mut Fields<'_, '_>, text: &str) -> Vec<GivenSize> {
    let mut all: Vec<(u32, GivenSize)> = Vec::new();
    for of in Measured::ALL {
        let start = start_of(fields, of.word());
        let Some(node) = fields.take(of.word()) else {
            continue;
        };
        let is_lengths = |node: &Node<'_>| !node.get_ref().is_array() && !node.get_ref().is_table();
        let nodes = match node.get_ref() {
            DeValue::Array(list) if !list.iter().any(is_lengths) => &list[..],
            _ => std::slice::from_ref(node),
        };
        for node in nodes.iter().filter(|node| !is_unread(node)) {
            fields.faults.key = of.word();
            let size = size(fields.faults, node, *of, text);
            all.extend(size.map(|size| (start, size)));
        }
    }
    all.sort_by_key(|(start, _)| *start);
    all.into_iter().map(|(_, size)| size).collect()
}

/// `[166, 243]`, or a table that says more.
fn size<'t>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
    of: Measured,
    text: &str,
) -> Option<GivenSize> {
    let given = |[height, width]: [Length; 2]| GivenSize {
        of,
        height,
        width,
        is_sight: false,
        said: text.trim().to_owned(),
    };
    let DeValue::Table(table) = node.get_ref() else {
        return lengths(faults, node).map(given);
    };
    let at = faults.of(node);
    read_table(faults, &SIZE, table, at, |fields| {
        let size = fields.one("size", lengths);
        let within = fields.one("within", tolerances);
        let is_sight = fields.flag("sight").unwrap_or(false);
        let said = fields.words("said");
        let mut given = given(size?);
        if let Some([height, width]) = within {
            given.height.tolerance_mm = height;
            given.width.tolerance_mm = width;
        }
        given.is_sight = is_sight;
        given.said = said.unwrap_or(given.said);
        Some(given)
    })
}

/// `[height, width]`, each as exact as its figures.
fn lengths<'t>(faults: &mut Faults<'t>, node: &'t Node<'t>) -> Option<[Length; 2]> {
    // The reader of records says what is wrong in a size.
    values::size(faults, node)?;
    let DeValue::Array(list) = node.get_ref() else {
        return None;
    };
    let [height, width] = list.as_ref() else {
        return None;
    };
    let length = |node: &Node<'t>| {
        let mm = values::plain_number(node).filter(|mm| Mm::new(*mm).is_some())?;
        Some(plain(mm, faults.written(node)))
    };
    Some([length(height)?, length(width)?])
}

/// How far lengths may be off: one number for both, or `[height, width]`.
fn tolerances<'t>(faults: &mut Faults<'t>, node: &'t Node<'t>) -> Option<[f64; 2]> {
    let number = |node: &Node<'_>| values::plain_number(node).filter(|mm| *mm >= 0.0);
    let read = match node.get_ref() {
        DeValue::Array(list) => match list.as_ref() {
            [height, width] => number(height).zip(number(width)),
            _ => None,
        },
        _ => number(node).map(|both| (both, both)),
    };
    if read.is_none() {
        faults.wrong_form(
            node,
            "a number of millimetres, or one for each length",
            "0.5",
        );
    }
    read.map(|(height, width)| [height, width])
}

fn reference(fields: &mut Fields<'_, '_>) -> CatalogueSaid {
    let author = fields.words("after");
    let number = fields.words("number");
    let states = fields.one("state", states);
    let of = fields.whole("of").map(|n| n.value);
    let printing = fields.words("printing");
    let remark = fields.word("remark").map(|remark| remark.value);
    let is_said = states.is_some() || of.is_some() || printing.is_some() || remark.is_some();
    CatalogueSaid {
        author,
        number,
        state: is_said.then(|| SaidState {
            states: states.unwrap_or_default(),
            of,
            printing,
            remark,
        }),
        is_not_in: fields.flag("not_in").unwrap_or(false),
    }
}

/// `ii`, `ii or iii`, `2 or 3`.
fn states<'t>(faults: &mut Faults<'t>, node: &'t Node<'t>) -> Option<Vec<u32>> {
    let text = values::str_in(faults, node, "a state in quotes")?;
    if text.value.trim().is_empty() {
        return Some(Vec::new());
    }
    let state = |state: &str| from_roman(state).or_else(|| state.parse().ok());
    let states: Option<Vec<u32>> = text.value.split(" or ").map(|s| state(s.trim())).collect();
    if states.is_none() {
        let message = format!("\"{}\" is no state", text.value);
        let finding = Finding::new(Code::ValueUnknown, text.place, message);
        faults.push(
            finding.help("write its number: \"ii\", or \"ii or iii\" where it may be either"),
        );
    }
    states
}

fn term(
    fields: &mut Fields<'_, '_>,
    name: &'static str,
    list: List,
    lexicon: &Lexicon,
) -> Option<Key> {
    fields.one(name, |faults, node| term_of(faults, node, list, lexicon))
}

fn terms(
    fields: &mut Fields<'_, '_>,
    name: &'static str,
    list: List,
    lexicon: &Lexicon,
) -> Vec<Key> {
    fields.several(name, |faults, node| term_of(faults, node, list, lexicon))
}

/// A term of a list, which must be known: only a record may bring a new one.
fn term_of<'t>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
    list: List,
    lexicon: &Lexicon,
) -> Option<Key> {
    let text = values::str_in(faults, node, "a key in quotes")?;
    let found = lexicon.key(list, text.value);
    if found.is_none() {
        let message = format!(
            "`{}` is no {} that the vocabulary has",
            text.value,
            list.term_name()
        );
        let near = nearest(text.value, lexicon.keys(list).iter().map(Key::as_str));
        let help = match near {
            Some(near) => format!("did you mean \"{near}\"?"),
            None => format!("`keyblock terms {list}` prints those that it has"),
        };
        let finding = Finding::new(Code::TermUnknown, text.place, message);
        faults.push(finding.help(help));
    }
    found
}

/// A kind of record, for findings: its name, and the code of one that is not there.
type Kind = (&'static str, Code);

const HOLDER: Kind = ("holder", Code::HolderUnknown);
const SERIES: Kind = ("series", Code::SeriesUnknown);
const PARTY: Kind = ("person or holder", Code::PartyUnknown);

/// The key of a record, which must be there.
fn record(
    fields: &mut Fields<'_, '_>,
    name: &'static str,
    (what, code): &Kind,
    known: &[&NamedRecords],
) -> Option<Key> {
    fields.one(name, |faults, node| {
        let key = values::key(faults, node)?;
        if known.iter().any(|records| records.has(&key.value)) {
            return Some(key.value);
        }
        let message = format!("the catalogue has no {what} `{}`", key.value);
        let keys = known.iter().flat_map(|records| records.keys());
        let help = match nearest(key.value.as_str(), keys.map(Key::as_str)) {
            Some(near) => format!("did you mean \"{near}\"?"),
            None => "write the key of a record, or add the record first".to_owned(),
        };
        let finding = Finding::new(*code, key.place, message);
        faults.push(finding.help(help));
        None
    })
}
