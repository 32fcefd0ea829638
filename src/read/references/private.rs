//! Removes the private fields of a record from its tree.
//!
//! Any table may list `private = ["field", …]`. A record with such a list is read twice: once as
//! written, and once from the tree without those fields, which gives what may be published. The fields
//! are removed from the tree, before the model is made, so every kind of record is covered.

use toml::de::{DeTable, DeValue};

use crate::model::place::{FileId, Place};
use crate::model::redacted::PrivateText;
use crate::read::faults::Node;

/// A record's tree without its private fields, and the texts that were removed; `None` where no field
/// is private.
pub(crate) fn without<'t>(
    table: &DeTable<'t>,
    file: FileId,
) -> Option<(DeTable<'t>, Vec<PrivateText>)> {
    if !has_list(table) {
        return None;
    }
    let mut public = table.clone();
    let mut texts = Vec::new();
    take_out(&mut public, file, "", &mut texts);
    Some((public, texts))
}

fn has_list(table: &DeTable<'_>) -> bool {
    table.contains_key("private") || table.values().any(node_has_list)
}

fn node_has_list(node: &Node<'_>) -> bool {
    match node.get_ref() {
        DeValue::Table(table) => has_list(table),
        DeValue::Array(list) => list.iter().any(node_has_list),
        _ => false,
    }
}

/// Whether a key of a table decides what may be published. It is never removed, because that would change the decision.
/// No page shows it. `within` is the key under which the table stands. A point of a design may have the key `publish`
/// or `withdrawn` too.
fn decides(within: &str, name: &str, value: &Node<'_>) -> bool {
    match name {
        "publish" => matches!(value.get_ref(), DeValue::Boolean(_)),
        "withdrawn" => within == "consent",
        _ => false,
    }
}

/// Removes the private fields of `table`, which stands under the key `within`, and of the tables in it. In an entry of
/// the provenance the role of a private party stays: readers may learn that there was an owner, but not who.
fn take_out(table: &mut DeTable<'_>, file: FileId, within: &str, texts: &mut Vec<PrivateText>) {
    if let Some(names) = table.remove("private") {
        let names: Vec<String> = match names.get_ref() {
            DeValue::String(name) => vec![name.to_string()],
            DeValue::Array(list) => {
                let names = list.iter().filter_map(|node| node.get_ref().as_str());
                names.map(str::to_owned).collect()
            }
            _ => Vec::new(),
        };
        for name in &names {
            let Some(node) = table.get_mut(name.as_str()) else {
                continue;
            };
            if decides(within, name, node) {
                continue;
            }
            collect(node, file, texts);
            let is_part =
                within == "provenance" && matches!(name.as_str(), "owner" | "agent" | "keeper");
            if is_part {
                *node.get_mut() = DeValue::Table(DeTable::new());
            } else {
                table.remove(name.as_str());
            }
        }
    }
    let names: Vec<_> = table.keys().cloned().collect();
    for name in names {
        if let Some(node) = table.get_mut(&name) {
            take_out_of(node, file, name.get_ref(), texts);
        }
    }
}

fn take_out_of(node: &mut Node<'_>, file: FileId, within: &str, texts: &mut Vec<PrivateText>) {
    match node.get_mut() {
        DeValue::Table(table) => take_out(table, file, within, texts),
        DeValue::Array(list) => {
            for node in list.iter_mut() {
                take_out_of(node, file, within, texts);
            }
        }
        _ => {}
    }
}

/// Every text below a value.
fn collect(node: &Node<'_>, file: FileId, texts: &mut Vec<PrivateText>) {
    match node.get_ref() {
        DeValue::String(text) if !text.trim().is_empty() => texts.push(PrivateText {
            text: text.to_string(),
            place: Place::new(file, node.span()),
        }),
        DeValue::Table(table) => table.values().for_each(|node| collect(node, file, texts)),
        DeValue::Array(list) => list.iter().for_each(|node| collect(node, file, texts)),
        _ => {}
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn private_fields_leave_the_tree_at_any_depth_with_their_texts() {
        let text = "a = 'kept'\nb = { c = 'secret', d = 1, private = ['c'] }\n\
                    l = [{ o = { name = 'hidden', private = ['name'] } }]\nz = ['x']\nprivate = 'z'\n";
        let (tree, _) = DeTable::parse_recoverable(text);
        let (public, texts) = without(tree.get_ref(), FileId::default()).unwrap();
        let words: Vec<_> = texts.iter().map(|t| t.text.as_str()).collect();
        assert_eq!(words, ["x", "secret", "hidden"]);
        let left = format!("{public:?}");
        assert!(left.contains("kept"));
        for gone in ["secret", "hidden", "private"] {
            assert!(!left.contains(gone), "{gone} is still there");
        }
    }

    #[test]
    fn what_decides_about_publishing_is_never_taken_out() {
        let text = "publish = false\nprivate = ['publish']\n\
                    [consent]\nwithdrawn = '2020'\nprivate = ['withdrawn']\n";
        let (tree, _) = DeTable::parse_recoverable(text);
        let (public, texts) = without(tree.get_ref(), FileId::default()).unwrap();
        assert!(public.contains_key("publish"));
        let consent = public
            .get("consent")
            .and_then(|node| node.get_ref().as_table());
        assert!(consent.is_some_and(|consent| consent.contains_key("withdrawn")));
        assert!(texts.is_empty());
    }

    #[test]
    fn a_point_named_like_a_key_that_decides_is_taken_out() {
        let text = "[observed]\npublish = 'present'\nwithdrawn = 'absent'\nprivate = ['publish', 'withdrawn']\n";
        let (tree, _) = DeTable::parse_recoverable(text);
        let (public, texts) = without(tree.get_ref(), FileId::default()).unwrap();
        let observed = public
            .get("observed")
            .and_then(|node| node.get_ref().as_table());
        assert!(observed.is_some_and(toml::map::Map::is_empty));
        assert_eq!(texts.len(), 2);
    }

    #[test]
    fn a_record_that_keeps_nothing_private_is_not_read_twice() {
        let (tree, _) = DeTable::parse_recoverable("a = 1\n[b]\nc = [2]\n");
        assert!(without(tree.get_ref(), FileId::default()).is_none());
    }
}
