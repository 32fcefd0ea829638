//! The search index: what the theme's `find.js` loads in the browser. One pass over the whole catalogue makes many
//! files, which nobody but the search loads.
//!
//! | file | content |
//! |---|---|
//! | `search/index.json` | `tag`, which changes with the content; `count` of entries; `kinds`: word and first place of each; `siglum` as the key of a number; `folding`; the starts of the shards (`terms`) and the first places of `records`; the `words` of the interface |
//! | `search/terms/N.json` | shard N of the terms (`study::search::shards`) |
//! | `search/more/N.json` | part N of the entries of the words that very many entries have |
//! | `search/records/N.json` | entries as they are shown: kind, number, title, about, address, picture, language; nothing at the end is left out as `0` |
//! | `search/narrow.json` | `columns`: by what, the values as key and label, their combinations, the first place of each part |
//! | `search/narrow/BY-N.json` | part N of a column (`study::search::columns`) |
//!
//! All but `narrow.json` stay below 30 kB in a catalogue of a hundred thousand records. Everything is made of the
//! entries, which hold what pages show.

use std::collections::BTreeMap;

use rayon::prelude::*;
use serde::Serialize;

use super::format::WholeFormat;
use super::tag::tag;
use crate::model::words::ClosedList as _;
use crate::page::{Address, Book, Here, Take, search_entries};
use crate::study::search::columns::{Column, columns};
use crate::study::search::entry::{Entry, EntryKind};
use crate::study::search::folding;
use crate::study::search::index::terms;
use crate::study::search::shards::{MOST_BYTES, Shards, shards};
use crate::study::search::words::number_key;

/// The folder of the index, which is that of the search page.
const FOLDER: &str = "search/";

pub(super) const FORMAT: WholeFormat = WholeFormat {
    name: "search-index",
    paths: &[
        "search/index.json",
        "search/narrow.json",
        "search/terms/….json",
        "search/more/….json",
        "search/records/….json",
        "search/narrow/….json",
    ],
    each,
};

/// Makes every file of the index, and passes each to `take`.
fn each(book: &Book<'_>, take: &Take<'_>) {
    let here = Here {
        book,
        address: &Address::Opening,
        root: "",
    };
    let entries = search_entries(&here);
    let records = records(&entries);
    let columns = columns(&entries);
    let Shards { shards, more } = shards(&terms(&entries));
    let parts = columns.iter().flat_map(|column| &column.parts);
    let contents = records.iter().map(|part| part.text.as_str());
    let contents = contents.chain(shards.iter().map(|shard| shard.terms.as_str()));
    let contents = contents.chain(more.iter().map(String::as_str));
    let tag = tag(contents.chain(parts.map(|part| part.numbers.as_str())));
    let index = Index {
        tag: &tag,
        count: entries.len(),
        kinds: kinds(&entries),
        siglum: number_key(&here.public().settings.siglum.value).unwrap_or_default(),
        folding: folding::table().collect(),
        terms: shards.iter().map(|shard| shard.start.as_str()).collect(),
        records: records.iter().map(|part| part.start).collect(),
        words: words(&here),
    };
    let narrow = Narrow {
        tag: &tag,
        columns: columns.iter().map(NarrowColumn::of).collect(),
    };
    let write = |name: String, json: String| take(format!("{FOLDER}{name}"), (json + "\n").into());
    write("index.json".to_owned(), json(&index));
    write("narrow.json".to_owned(), json(&narrow));
    shards.par_iter().enumerate().for_each(|(at, shard)| {
        let text = format!("{{\"tag\":\"{tag}\",\"terms\":{{{}}}}}", shard.terms);
        write(format!("terms/{at}.json"), text);
    });
    more.par_iter().enumerate().for_each(|(at, sets)| {
        let text = format!("{{\"tag\":\"{tag}\",\"sets\":[{sets}]}}");
        write(format!("more/{at}.json"), text);
    });
    records.par_iter().enumerate().for_each(|(at, part)| {
        let text = format!("{{\"tag\":\"{tag}\",\"records\":[{}]}}", part.text);
        write(format!("records/{at}.json"), text);
    });
    for column in &columns {
        for (at, part) in column.parts.iter().enumerate() {
            let text = format!("{{\"tag\":\"{tag}\",\"numbers\":[{}]}}", part.numbers);
            write(format!("narrow/{}-{at}.json", column.by.word()), text);
        }
    }
}

/// The overview of the index.
#[derive(Serialize)]
struct Index<'a> {
    tag: &'a str,
    count: usize,
    kinds: Vec<(&'static str, usize)>,
    siglum: String,
    folding: BTreeMap<&'static str, &'static str>,
    terms: Vec<&'a str>,
    records: Vec<usize>,
    words: BTreeMap<String, String>,
}

/// What readers narrow by.
#[derive(Serialize)]
struct Narrow<'a> {
    tag: &'a str,
    columns: Vec<NarrowColumn<'a>>,
}

#[derive(Serialize)]
struct NarrowColumn<'a> {
    by: &'static str,
    values: Vec<(&'a str, &'a str)>,
    combinations: &'a [Vec<usize>],
    parts: Vec<usize>,
}

impl<'a> NarrowColumn<'a> {
    fn of(column: &'a Column) -> NarrowColumn<'a> {
        let values = column.values.iter();
        NarrowColumn {
            by: column.by.word(),
            values: values.map(|v| (v.key.as_str(), v.label.as_str())).collect(),
            combinations: &column.combinations,
            parts: column.parts.iter().map(|part| part.start).collect(),
        }
    }
}

/// Entries that follow each other, as they are shown.
struct Records {
    /// The place of the first of them.
    start: usize,
    /// The items of a JSON array, with commas between them.
    text: String,
}

/// The entries as they are shown, in parts of at most [`MOST_BYTES`].
fn records(entries: &[Entry]) -> Vec<Records> {
    let texts: Vec<String> = entries.par_iter().map(record).collect();
    let mut parts: Vec<Records> = Vec::new();
    for (text, at) in texts.into_iter().zip(0..) {
        match parts.last_mut() {
            Some(part) if part.text.len() + 1 + text.len() <= MOST_BYTES => {
                part.text.push(',');
                part.text.push_str(&text);
            }
            _ => parts.push(Records { start: at, text }),
        }
    }
    parts
}

/// How many characters of the line about an entry are shown.
const LONGEST_LINE: usize = 160;

fn record(entry: &Entry) -> String {
    let about = match entry.about.char_indices().nth(LONGEST_LINE) {
        Some((end, _)) => format!("{}…", entry.about[..end].trim_end()),
        None => entry.about.clone(),
    };
    let text = |text: &str| match text {
        "" => serde_json::Value::from(0),
        text => text.into(),
    };
    let mut fields = vec![
        entry.kind.word().into(),
        text(&entry.number),
        text(&entry.title),
        text(&about),
        text(&entry.href),
        text(entry.picture.as_deref().unwrap_or_default()),
        text(entry.language.as_deref().unwrap_or_default()),
    ];
    while fields.last().is_some_and(serde_json::Value::is_number) {
        fields.pop();
    }
    json(&fields)
}

/// The kinds that occur, with the place of their first entries.
fn kinds(entries: &[Entry]) -> Vec<(&'static str, usize)> {
    let kinds = EntryKind::ALL.iter();
    let first = |kind: &EntryKind| entries.iter().position(|entry| entry.kind == *kind);
    kinds
        .filter_map(|kind| Some((kind.word(), first(kind)?)))
        .collect()
}

/// The words of the interface, without `search-`.
fn words(here: &Here<'_>) -> BTreeMap<String, String> {
    let words = here.words();
    let plain = words.beginning_with("search-").map(|id| {
        let whole = format!("search-{id}");
        (id.to_owned(), words.word(&whole).to_owned())
    });
    let counting = ["all", "count", "first", "found", "some"].into_iter();
    let counting = counting.map(|id| {
        let text = words.left_open(&format!("search-{id}"), &["n", "of"]);
        (id.to_owned(), text)
    });
    plain.chain(counting).collect()
}

fn json(value: &impl Serialize) -> String {
    serde_json::to_string(value).unwrap_or_default()
}
