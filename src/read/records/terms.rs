//! `vocabulary/LIST.toml`: the catalogue's own terms.

use std::collections::BTreeMap;

use toml::de::DeValue;

use crate::model::vocabulary::Term;
use crate::read::faults::{Faults, Node};
use crate::read::table::fields::{Fields, in_order};
use crate::read::values;

/// Reads one term.
pub(crate) fn term(fields: &mut Fields<'_, '_>) -> Term {
    Term {
        labels: fields.one("label", by_language).unwrap_or_default(),
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
    let DeValue::Table(table) = node.get_ref() else {
        let text = values::telling_text(faults, node)?;
        return Some(BTreeMap::from([(String::new(), text.value)]));
    };
    let mut texts = BTreeMap::new();
    for (tag, node) in in_order(table) {
        let place = faults.place(tag.span());
        let language = values::language_from(faults, tag.get_ref(), place);
        let text = values::telling_text(faults, node);
        if let (Some(language), Some(text)) = (language, text) {
            texts.insert(language, text.value);
        }
    }
    Some(texts)
}
