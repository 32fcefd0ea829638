//! The digest of what a record says to readers, key by key, so that the next edition can tell what was revised.
//!
//! In: the tree of a record without its private fields. Out: [`RecordContent`]. A digest covers a value and not how it
//! was written: the order of the keys of a table, spaces and comments make no difference, and 212 is 212.0. Digests
//! are of the file and not of the model, so a later version of the program gives the same.

use toml::de::{DeTable, DeValue};

use crate::model::catalogue::RecordContent;
use crate::model::register::Digest;
use crate::read::faults::Node;

/// Keys that say nothing to readers, or what is told otherwise: which fields are private, which doubts are settled,
/// which keys the record had before.
const SILENT: [&str; 3] = ["private", "settled", "was"];

/// The digest of each key of a record, in the order of the keys.
pub(crate) fn of_table(table: &DeTable<'_>) -> RecordContent {
    let told = table
        .iter()
        .filter(|(key, _)| !SILENT.contains(&key.get_ref().as_ref()));
    told.map(|(key, node)| {
        let mut hasher = blake3::Hasher::new_derive_key("keyblock: a value of a record");
        add(&mut hasher, node);
        let digest = Digest::of(hasher.finalize().as_bytes());
        (Box::from(key.get_ref().as_ref()), digest)
    })
    .collect()
}

fn add(hasher: &mut blake3::Hasher, node: &Node<'_>) {
    match node.get_ref() {
        DeValue::String(text) => add_text(hasher, *b"text", text),
        DeValue::Integer(number) => add_number(hasher, &number.to_string()),
        DeValue::Float(number) => add_number(hasher, &number.to_string()),
        DeValue::Boolean(yes) => add_text(hasher, *b"flag", if *yes { "true" } else { "false" }),
        DeValue::Datetime(date) => add_text(hasher, *b"date", &date.to_string()),
        DeValue::Array(list) => {
            let published = || list.iter().filter(|node| !is_kept_back(node));
            add_text(hasher, *b"list", &published().count().to_string());
            published().for_each(|node| add(hasher, node));
        }
        DeValue::Table(table) => {
            let told = || {
                let all = table.iter();
                all.filter(|(key, _)| !SILENT.contains(&key.get_ref().as_ref()))
            };
            add_text(hasher, *b"keys", &told().count().to_string());
            for (key, node) in told() {
                add_text(hasher, *b"name", key.get_ref());
                add(hasher, node);
            }
        }
    }
}

/// Whether an item of a list is withheld from readers: a picture with `publish = false`.
fn is_kept_back(node: &Node<'_>) -> bool {
    let table = node.get_ref().as_table();
    let publish = table.and_then(|table| table.get("publish"));
    publish.is_some_and(|node| matches!(node.get_ref(), DeValue::Boolean(false)))
}

fn add_number(hasher: &mut blake3::Hasher, written: &str) {
    match written.replace('_', "").parse::<f64>() {
        Ok(number) => add_text(hasher, *b"numb", &number.to_string()),
        Err(_) => add_text(hasher, *b"numb", written),
    }
}

/// Adds a text with its length, so that two texts never run together.
fn add_text(hasher: &mut blake3::Hasher, kind: [u8; 4], text: &str) {
    hasher.update(&kind);
    hasher.update(&(text.len() as u64).to_le_bytes());
    hasher.update(text.as_bytes());
}

#[cfg(test)]
mod tests {
    use super::*;

    fn digests(text: &str) -> RecordContent {
        let (tree, errors) = DeTable::parse_recoverable(text);
        assert!(errors.is_empty());
        of_table(tree.get_ref())
    }

    #[test]
    fn a_digest_covers_the_value_and_not_how_it_is_written() {
        let same = [
            "size = { image = [212, 301], plate = 'x' } # a comment",
            "[size]\nplate = \"x\"\nimage = [ 212.0, 3_01 ]\n",
            "settled = [{ code = 'x' }]\nwas = ['mill']\nsize = { plate = 'x', image = [212, 301], private = [] }",
        ];
        for text in same {
            assert_eq!(digests(text), digests(same[0]), "{text}");
        }
        let other = [
            "size = { image = [301, 212], plate = 'x' }",
            "size = { image = [212, 301], plate = 'X' }",
            "size = { image = [212, 301] }",
            "size = { image = ['212', 301], plate = 'x' }",
            "sizes = { image = [212, 301], plate = 'x' }",
        ];
        for text in other {
            assert_ne!(digests(text), digests(same[0]), "{text}");
        }
    }

    #[test]
    fn an_unpublished_picture_is_as_if_it_were_not_there() {
        let one = "pictures = [{ file = 'a' }]";
        let two = "pictures = [{ file = 'a' }, { file = 'b', publish = false }]";
        assert_eq!(digests(one), digests(two));
    }
}
