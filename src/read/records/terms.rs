//! `vocabulary/LIST.toml`: the catalogue's own terms.

use std::collections::BTreeMap;

use toml::de::DeValue;

use crate::model::vocabulary::Term;
use crate::read::faults::{Faults, Node, is_unread};
use crate::read::table::fields::{Fields, in_order};
use crate::read::values;

/// Reads one term.
pub(crate) fn term(fields: &mut Fields<'_, '_>) -> Term {
    Term {
        labels: fields.one("label", by_language).unwrap_or_default(),
        synonyms: fields
            .one("synonyms", several_by_language)
            .unwrap_or_default(),
        notes: fields.one("note", by_language).unwrap_or_default(),
        aat: fields.whole("aat").map(|aat| aat.value),
        class: fields.word("class").map(|class| class.value),
    }
}

/// Text in the catalogue's own language, or a table of texts by language tag.
fn by_language<'t>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
) -> Option<BTreeMap<String, String>> {
    each_language(faults, node, |faults, node| {
        Some(values::telling_text(faults, node)?.value)
    })
}

/// One text or several in the catalogue's own language, or a table of them by language tag.
fn several_by_language<'t>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
) -> Option<BTreeMap<String, Vec<String>>> {
    each_language(faults, node, |faults, node| {
        let DeValue::Array(list) = node.get_ref() else {
            return Some(vec![values::telling_text(faults, node)?.value]);
        };
        let read = list.iter().filter(|node| !is_unread(node));
        let texts = read.filter_map(|node| values::telling_text(faults, node));
        Some(texts.map(|text| text.value).collect())
    })
}

/// What `read` makes of a value in the catalogue's own language, or of each value of a table by language tag.
fn each_language<'t, T>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
    read: impl Fn(&mut Faults<'t>, &'t Node<'t>) -> Option<T>,
) -> Option<BTreeMap<String, T>> {
    let DeValue::Table(table) = node.get_ref() else {
        return Some(BTreeMap::from([(String::new(), read(faults, node)?)]));
    };
    let mut by_tag = BTreeMap::new();
    for (tag, node) in in_order(table) {
        let place = faults.place(tag.span());
        let language = values::language_from(faults, tag.get_ref(), place);
        let value = read(faults, node);
        if let (Some(language), Some(value)) = (language, value) {
            by_tag.insert(language, value);
        }
    }
    Some(by_tag)
}
