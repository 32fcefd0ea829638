//! Records: a catalogue with its files mangled, with tables made of the keys that records declare, or with
//! any bytes for a file, is read to its end.

use std::collections::BTreeSet;
use std::sync::LazyLock;

use keyblock::read::shape::{CLAIM, OBSERVED, PARTY, RECORDS, STANDING, Shape, Takes};
use proptest::prelude::*;
use proptest::sample::{Index, select};

use super::{any_text, check_reading, explore, of_pieces, sound};

const PIECES: &[&str] = &[
    "title",
    "key",
    "points",
    "states",
    "shows",
    "observed",
    "private",
    "is",
    "not",
    " = ",
    "=",
    "\n",
    "[",
    "]",
    "[[",
    "]]",
    "{",
    "}",
    ",",
    ".",
    "\"",
    "'",
    "\"\"\"",
    "\"a text\"",
    "\"1927~\"",
    "\"14.1\"",
    "\"14\"",
    "1",
    "-1.5",
    "1e999",
    "nan",
    "true",
    "1927-05-31",
    "[212, 301]",
    "[points]",
    "[[points]]",
    "[a.b.c]",
    "#",
    "\\u202e",
    "\\",
    "\r",
    "\t",
    " ",
    "\u{feff}",
    "<<<<<<< HEAD\n",
    ">>>>>>> b\n",
    "a.b.c",
    "pictures",
    "\"not-visible\"",
    "[] ",
    "{} ",
];

/// Every key that some table of a record may have.
static KEYS: LazyLock<Vec<&'static str>> = LazyLock::new(|| {
    fn visit(
        shape: &'static Shape,
        known: &mut Vec<&'static Shape>,
        keys: &mut BTreeSet<&'static str>,
    ) {
        if known.iter().any(|s| std::ptr::eq(*s, shape)) {
            return;
        }
        known.push(shape);
        for key in shape.keys() {
            keys.insert(key.name);
            let mut takes = &key.takes;
            while let Takes::Several(inner) | Takes::Statements(inner) | Takes::Map(_, inner) =
                takes
            {
                takes = inner;
            }
            if let Takes::Table(shape) | Takes::Tables(shape) = takes {
                visit(shape, known, keys);
            }
        }
    }
    let (mut known, mut keys) = (Vec::new(), BTreeSet::new());
    for shape in RECORDS
        .iter()
        .map(|(_, shape, _)| *shape)
        .chain([&OBSERVED, &PARTY])
    {
        visit(shape, &mut known, &mut keys);
    }
    keys.extend(CLAIM.iter().chain(STANDING).map(|key| key.name));
    keys.into_iter().collect()
});

/// Texts that mean something to some key.
const WORDS: &[&str] = &[
    "14",
    "14.1",
    "14.1/recto",
    "artist",
    "harbour-museum",
    "owner-a",
    "first-list",
    "moon",
    "dark",
    "present",
    "absent",
    "matrix",
    "presence",
    "choice",
    "measure",
    "count",
    "all",
    "1927",
    "1927/1931",
    "c. 1927",
    "en",
    "NO",
    "located",
    "certain",
    "possible",
    "design:14",
    "holder:nobody",
    "https://example.org",
    "#1f3a4d",
    "recto",
    "pictures/1-recto.jpg",
    "../..",
    "private",
    "name",
    "rejected",
    "withdrawn",
    "laid",
    "12/50",
    "",
];

fn value() -> impl Strategy<Value = toml::Value> {
    let leaf = prop_oneof![
        6 => select(WORDS).prop_map(toml::Value::from),
        1 => any_text(8).prop_map(toml::Value::from),
        2 => (-2_i64..400).prop_map(toml::Value::from),
        1 => any::<i64>().prop_map(toml::Value::from),
        1 => any::<f64>().prop_map(toml::Value::from),
        1 => any::<bool>().prop_map(toml::Value::from),
    ];
    leaf.prop_recursive(4, 60, 6, |inner| {
        let key = prop_oneof![
            8 => select(KEYS.as_slice()).prop_map(str::to_owned),
            1 => select(WORDS).prop_map(str::to_owned),
            1 => any_text(6),
        ];
        prop_oneof![
            1 => prop::collection::vec(inner.clone(), 0..4).prop_map(toml::Value::Array),
            2 => prop::collection::vec((key, inner), 0..8)
                .prop_map(|entries| toml::Value::Table(entries.into_iter().collect())),
        ]
    })
}

/// A change to a text.
#[derive(Clone, Debug)]
enum Change {
    /// Bytes from one place to another become a text.
    Replace(Index, Index, String),
    /// A line stands twice, further on.
    Repeat(Index, Index),
    /// A line goes.
    Remove(Index),
    /// The text ends there.
    End(Index),
    /// A bit of a byte is turned.
    Turn(Index, u8),
}

impl Change {
    fn apply(&self, text: &mut Vec<u8>) {
        if text.is_empty() {
            return;
        }
        let lines = |text: &[u8]| -> Vec<Vec<u8>> {
            text.split_inclusive(|byte| *byte == b'\n')
                .map(<[u8]>::to_vec)
                .collect()
        };
        match self {
            Change::Replace(from, to, by) => {
                let (from, to) = (from.index(text.len()), to.index(text.len()));
                // Most changes are small.
                let end = to.clamp(from.min(to), from.min(to) + 12);
                text.splice(from.min(to)..end, by.bytes());
            }
            Change::Repeat(line, before) => {
                let mut all = lines(text);
                let line = all[line.index(all.len())].clone();
                all.insert(before.index(all.len()), line);
                *text = all.concat();
            }
            Change::Remove(line) => {
                let mut all = lines(text);
                all.remove(line.index(all.len()));
                *text = all.concat();
            }
            Change::End(at) => text.truncate(at.index(text.len())),
            Change::Turn(at, bit) => {
                let at = at.index(text.len());
                text[at] ^= 1 << bit;
            }
        }
    }
}

fn change() -> impl Strategy<Value = Change> {
    let place = any::<Index>;
    prop_oneof![
        4 => (place(), place(), of_pieces(PIECES, 4)).prop_map(|(a, b, by)| Change::Replace(a, b, by)),
        2 => (place(), place()).prop_map(|(a, b)| Change::Repeat(a, b)),
        2 => place().prop_map(Change::Remove),
        1 => place().prop_map(Change::End),
        1 => (place(), 0..8_u8).prop_map(|(at, bit)| Change::Turn(at, bit)),
    ]
}

#[test]
fn a_mangled_record_is_read_or_told() {
    let changes = prop::collection::vec((any::<Index>(), change()), 1..6);
    explore("records, mangled", 200, &changes, |changes| {
        let mut files = sound();
        for (file, change) in changes {
            let file = file.index(files.len());
            if let Some(text) = files.values_mut().nth(file) {
                change.apply(text);
            }
        }
        check_reading(&files)
    });
}

/// The records that are replaced by tables of declared keys, or by any bytes.
const FILES: &[&str] = &[
    "catalogue.toml",
    "records/designs/14/design.toml",
    "records/designs/14/impressions/1.toml",
    "records/holders/harbour-museum.toml",
    "records/people/artist.toml",
    "records/exhibitions.toml",
    "records/vocabulary/techniques.toml",
];

#[test]
fn a_record_of_declared_keys_with_any_values_is_read_or_told() {
    let key = select(KEYS.as_slice());
    let table = prop::collection::vec((key, value()), 0..12);
    let cases = (select(FILES), any::<bool>(), table);
    explore(
        "records, of declared keys",
        200,
        &cases,
        |(path, joins, table)| {
            let mut files = sound();
            let table: toml::Table = table
                .iter()
                .map(|(k, v)| ((*k).to_owned(), v.clone()))
                .collect();
            let known = files
                .get(*path)
                .map(|bytes| String::from_utf8_lossy(bytes).into_owned());
            let known: toml::Table = known.and_then(|text| text.parse().ok()).unwrap_or_default();
            let mut record = if *joins { known } else { toml::Table::new() };
            record.extend(table);
            let text = toml::to_string(&record).unwrap_or_default();
            files.insert((*path).to_owned(), text.into_bytes());
            check_reading(&files)
        },
    );
}

#[test]
fn a_record_of_any_bytes_is_read_or_told() {
    let bytes = prop_oneof![
        3 => of_pieces(PIECES, 60).prop_map(String::into_bytes),
        1 => prop::collection::vec(any::<u8>(), 0..300),
    ];
    let cases = (select(FILES), bytes);
    explore("records, of any bytes", 200, &cases, |(path, bytes)| {
        let mut files = sound();
        files.insert((*path).to_owned(), bytes.clone());
        check_reading(&files)
    });
}
