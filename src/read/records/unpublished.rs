//! Which documents are not published, told before any record is read.

use std::collections::BTreeSet;

use toml::de::DeValue;

use crate::model::key::Key;
use crate::read::files::kind::FileKind;
use crate::read::files::load::Loaded;
use crate::read::records::record;

/// The documents that are not published.
pub(crate) fn documents(loaded: &[Loaded]) -> BTreeSet<Key> {
    let withheld = loaded.iter().filter_map(|file| {
        let FileKind::Document(key) = &file.kind else {
            return None;
        };
        let source = file.source()?;
        // Most documents are published, and need not be parsed for it.
        if !source.text.contains("publish") {
            return None;
        }
        let is_published = record::tree_alone(source, |tree| {
            let publish = tree.get("publish").map(toml::Spanned::get_ref);
            !matches!(publish, Some(DeValue::Boolean(false)))
        });
        (!is_published).then(|| key.clone())
    });
    withheld.collect()
}
