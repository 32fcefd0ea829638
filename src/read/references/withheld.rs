//! Removes citations of documents that are not published from the tree of a record.
//!
//! A document with `publish = false` acts, in everything published, as if it were not there. A record that cites one is
//! therefore read a second time without those citations, as a record with private fields is read without them
//! ([`super::private`]), so every key that takes a citation is covered.

use std::collections::BTreeSet;

use toml::de::{DeTable, DeValue};

use crate::model::key::Key;
use crate::model::literature::Cited;
use crate::read::faults::Node;

/// The tree without its citations of these documents; `None` where it has none.
pub(crate) fn without_citations<'t>(
    tree: &DeTable<'t>,
    withheld: &BTreeSet<Key>,
) -> Option<DeTable<'t>> {
    if withheld.is_empty() || !cites(tree, withheld) {
        return None;
    }
    let mut tree = tree.clone();
    take_out(&mut tree, withheld);
    Some(tree)
}

/// Whether `cite` of this very table names one of the documents.
fn cites_itself(table: &DeTable<'_>, withheld: &BTreeSet<Key>) -> bool {
    let cited = table.get("cite").and_then(|node| node.get_ref().as_str());
    let cited = cited.and_then(|text| text.parse::<Cited>().ok());
    matches!(cited, Some(Cited::Document(key)) if withheld.contains(&key))
}

fn cites(table: &DeTable<'_>, withheld: &BTreeSet<Key>) -> bool {
    cites_itself(table, withheld) || table.values().any(|node| node_cites(node, withheld))
}

fn node_cites(node: &Node<'_>, withheld: &BTreeSet<Key>) -> bool {
    match node.get_ref() {
        DeValue::Table(table) => cites(table, withheld),
        DeValue::Array(list) => list.iter().any(|node| node_cites(node, withheld)),
        _ => false,
    }
}

/// Removes the citations, each with the place in the document that stands beside it.
fn take_out(table: &mut DeTable<'_>, withheld: &BTreeSet<Key>) {
    if cites_itself(table, withheld) {
        table.remove("cite");
        table.remove("at");
    }
    for (_, node) in table.iter_mut() {
        take_out_of(node, withheld);
    }
}

fn take_out_of(node: &mut Node<'_>, withheld: &BTreeSet<Key>) {
    match node.get_mut() {
        DeValue::Table(table) => take_out(table, withheld),
        DeValue::Array(list) => {
            for node in list.iter_mut() {
                take_out_of(node, withheld);
            }
        }
        _ => {}
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_citation_goes_with_its_place_and_no_other_does() {
        let withheld = BTreeSet::from(["letter".parse().unwrap()]);
        let text = "kind = { is = 'proof', cite = 'document:letter', at = 'leaf 2' }\n\
                    literature = [{ cite = 'letter', at = 'p. 1' }, { cite = 'document:ledger' }]\n";
        let (tree, _) = DeTable::parse_recoverable(text);
        let left = without_citations(tree.get_ref(), &withheld).unwrap();
        let left = format!("{left:?}");
        for gone in ["document:letter", "leaf 2"] {
            assert!(!left.contains(gone), "{gone} is still there");
        }
        for kept in ["proof", "p. 1", "document:ledger"] {
            assert!(left.contains(kept), "{kept} is gone");
        }
        assert!(without_citations(tree.get_ref(), &BTreeSet::new()).is_none());
    }
}
