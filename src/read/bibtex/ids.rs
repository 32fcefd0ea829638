//! The further keys of entries: `ids`, which BibLaTeX defines as keys by which an entry can also be cited.

use biblatex::RawChunk;

use super::blocks::{blocks, parse_blocks};
use super::bounds;
use super::entry::{Entry, shifted};
use crate::model::key::Key;
use crate::model::place::{FileId, Place, Placed};

/// An entry with its further keys.
pub(crate) struct OtherKeys {
    /// The key of the entry.
    pub(crate) key: Placed<Key>,
    /// The others. Those that do not have the form of a key never were addresses, and are left out.
    pub(crate) others: Vec<Placed<Key>>,
}

/// The entries of a BibTeX file with their further keys.
pub(crate) fn other_keys(text: &str, file: FileId) -> Vec<OtherKeys> {
    if bounds::too_deep(text).is_some() {
        return Vec::new();
    }
    let mut all = Vec::new();
    for block in parse_blocks(&blocks(text), file, &mut Vec::new()) {
        for raw in &block.raw.entries {
            let entry = Entry {
                start: block.start,
                raw,
            };
            let Ok(key) = raw.v.key.v.parse() else {
                continue;
            };
            let fields = raw.v.fields.iter();
            let ids = fields.filter(|field| field.key.v.eq_ignore_ascii_case("ids"));
            let mut others = Vec::new();
            for chunk in ids.flat_map(|field| &field.value.v) {
                if let RawChunk::Normal(list) = &chunk.v {
                    let span = shifted(&chunk.span, block.start);
                    others.extend(listed(list, text, span.start, file));
                }
            }
            let key = Placed::new(key, entry.key_place(file));
            all.push(OtherKeys { key, others });
        }
    }
    all
}

/// The fields in which an entry names others (the BibLaTeX manual, "Special Fields").
const LINKS: [&str; 5] = ["crossref", "xref", "xdata", "related", "entryset"];

/// The keys by which entries of a BibTeX file name each other.
pub(crate) fn references(text: &str, file: FileId) -> Vec<Placed<Key>> {
    if bounds::too_deep(text).is_some() {
        return Vec::new();
    }
    let mut all = Vec::new();
    for block in parse_blocks(&blocks(text), file, &mut Vec::new()) {
        let fields = block.raw.entries.iter().flat_map(|entry| &entry.v.fields);
        for field in fields.filter(|f| LINKS.iter().any(|l| f.key.v.eq_ignore_ascii_case(l))) {
            for chunk in &field.value.v {
                if let RawChunk::Normal(list) = &chunk.v {
                    let span = shifted(&chunk.span, block.start);
                    all.extend(listed(list, text, span.start, file));
                }
            }
        }
    }
    all
}

/// The keys of a list with commas that stands in the file at or after byte `from`.
fn listed(list: &str, text: &str, from: usize, file: FileId) -> Vec<Placed<Key>> {
    let inside = text.get(from..).and_then(|rest| rest.find(list));
    let mut at = from + inside.unwrap_or(0);
    let mut keys = Vec::new();
    for written in list.split(',') {
        let word = written.trim();
        let start = at + written.len() - written.trim_start().len();
        if let Ok(key) = word.parse() {
            let place = Place::new(file, start..start + word.len());
            keys.push(Placed::new(key, place));
        }
        at += written.len() + 1;
    }
    keys
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_other_keys_of_an_entry_are_found_where_they_stand() {
        let text = "@book{verhoeven-1961, title={One}, IDS = {first-list, DBLP:x/1, verhoeven}}\n\
                    @book{two, title={Two}}\n";
        let all = other_keys(text, FileId::default());
        let [first, second] = all.as_slice() else {
            panic!("{} entries", all.len());
        };
        let of = |key: &Placed<Key>| text.get(key.place.span()).unwrap().to_owned();
        let found: Vec<_> = first.others.iter().map(of).collect();
        assert_eq!(found, ["first-list", "verhoeven"]);
        assert_eq!(of(&first.key), "verhoeven-1961");
        assert!(second.others.is_empty());
    }
}
