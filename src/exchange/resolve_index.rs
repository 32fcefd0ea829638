//! The names, numbers and keys by which references are resolved, for the page `resolve/` and for other sites.
//! docs/JSON.md describes the files. Not a format of the table, because they describe the whole catalogue.
//!
//! | file | content |
//! |---|---|
//! | `resolve/index.json` | designs with titles, states, printings and the numbers of their impressions; the literature with the numbers of earlier catalogues; holders, people, exhibitions, marks, documents, series; how addresses are made of keys |
//! | `resolve/accessions/N.json` | part N of the accession numbers and of the identifiers of sheets elsewhere, sorted by their keys |
//!
//! Addresses are not repeated: `addresses` has one template for each kind of record.

use std::collections::BTreeMap;

use serde::Serialize;
use serde_json::{Value, json};

use super::format::WholeFormat;
use super::tag::tag;
use crate::model::literature::Relation;
use crate::model::words::ClosedList as _;
use crate::page::{Book, Take, query_words};
use crate::study::numerals::roman;
use crate::study::resolve::names::{
    Accession, DesignNames, EarlierRow, Names, NumberKind, QueryWords, References, Stands,
    StateNames, WorkNames,
};
use crate::study::search::folding;
use crate::study::search::shards::MOST_BYTES;

/// The folder of the files, which is that of the page.
const FOLDER: &str = "resolve/";

/// The index of references.
pub(super) const FORMAT: WholeFormat = WholeFormat {
    name: "resolve-index",
    paths: &["resolve/index.json", "resolve/accessions/….json"],
    each,
};

/// Makes every file, and passes each to `take`.
fn each(book: &Book<'_>, take: &Take<'_>) {
    let studies = book.studies;
    let references = References::of(
        book.public,
        &studies.order,
        &studies.concordance,
        &studies.joined,
        query_words(&book.words),
    );
    let parts = accession_parts(&references);
    let mut index = Index::of(&references);
    index.catalogue = &book.public.settings.title.value;
    index.language = &book.public.settings.language.value;
    index.accessions = parts.iter().map(|part| part.start.as_str()).collect();
    let names = text(&index);
    let numbers = parts.iter().map(|part| part.numbers.as_str());
    index.tag = tag(numbers.chain([names.as_str()]));
    take(format!("{FOLDER}index.json"), (text(&index) + "\n").into());
    for (at, part) in parts.iter().enumerate() {
        let json = format!(
            "{{\"tag\":\"{}\",\"numbers\":{{{}}}}}\n",
            index.tag, part.numbers
        );
        take(format!("{FOLDER}accessions/{at}.json"), json.into());
    }
}

/// How addresses are made of keys (URI Template, RFC 6570, level 1). `row`: a number on the page of its work.
const ADDRESSES: [(&str, &str); 12] = [
    ("design", "design/{design}/"),
    ("document", "document/{document}/"),
    ("exhibition", "exhibition/{exhibition}/"),
    ("holder", "holder/{holder}/"),
    ("impression", "impression/{impression}/"),
    ("literature", "lit/{literature}/"),
    ("mark", "mark/{mark}/"),
    ("person", "person/{person}/"),
    ("printing", "design/{design}/#printing-{printing}"),
    ("row", "lit/{literature}/#{row}"),
    ("series", "series/{series}/"),
    ("state", "design/{design}/#state-{state}"),
];

#[derive(Serialize)]
struct Index<'a> {
    tag: String,
    catalogue: &'a str,
    siglum: &'a str,
    address: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    edition: Option<&'a str>,
    language: &'a str,
    addresses: BTreeMap<&'static str, &'static str>,
    designs: Vec<DesignEntry<'a>>,
    literature: Vec<WorkEntry<'a>>,
    holders: Vec<NamesEntry<'a>>,
    people: Vec<NamesEntry<'a>>,
    exhibitions: Vec<NamesEntry<'a>>,
    marks: Vec<NamesEntry<'a>>,
    documents: Vec<NamesEntry<'a>>,
    series: Vec<NamesEntry<'a>>,
    accessions: Vec<&'a str>,
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    stands: BTreeMap<&'a str, StandsEntry>,
    words: WordLists<'a>,
    folding: BTreeMap<&'static str, &'static str>,
}

#[derive(Serialize)]
struct DesignEntry<'a> {
    key: &'a str,
    number: &'a str,
    titles: &'a [String],
    #[serde(skip_serializing_if = "<[_]>::is_empty")]
    former: &'a [String],
    #[serde(skip_serializing_if = "<[_]>::is_empty")]
    ids: &'a [String],
    #[serde(skip_serializing_if = "<[_]>::is_empty")]
    was: &'a [String],
    #[serde(skip_serializing_if = "Vec::is_empty")]
    formerly: Vec<FormerNumberEntry<'a>>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    states: Vec<StateEntry<'a>>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    printings: Vec<PrintingEntry<'a>>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    impressions: Vec<[u32; 2]>,
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    joined: &'a BTreeMap<u32, u32>,
}

#[derive(Serialize)]
struct FormerNumberEntry<'a> {
    edition: &'a str,
    number: &'a str,
}

#[derive(Serialize)]
struct StateEntry<'a> {
    key: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    numeral: Option<String>,
    #[serde(skip_serializing_if = "<[_]>::is_empty")]
    was: &'a [String],
    #[serde(skip_serializing_if = "Vec::is_empty")]
    formerly: Vec<FormerNumeralEntry<'a>>,
}

#[derive(Serialize)]
struct FormerNumeralEntry<'a> {
    edition: &'a str,
    numeral: String,
}

#[derive(Serialize)]
struct PrintingEntry<'a> {
    key: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    name: Option<&'a str>,
    #[serde(skip_serializing_if = "<[_]>::is_empty")]
    was: &'a [String],
}

#[derive(Serialize)]
struct NamesEntry<'a> {
    key: &'a str,
    names: &'a [String],
    #[serde(skip_serializing_if = "<[_]>::is_empty")]
    former: &'a [String],
    #[serde(skip_serializing_if = "<[_]>::is_empty")]
    was: &'a [String],
    #[serde(skip_serializing_if = "Option::is_none")]
    town: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    isil: Option<&'a str>,
    #[serde(skip_serializing_if = "<[_]>::is_empty")]
    ids: &'a [String],
}

#[derive(Serialize)]
struct WorkEntry<'a> {
    key: &'a str,
    short: &'a str,
    title: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    author: Option<&'a str>,
    #[serde(skip_serializing_if = "<[_]>::is_empty")]
    was: &'a [String],
    #[serde(skip_serializing_if = "Vec::is_empty")]
    numbers: Vec<RowEntry<'a>>,
}

#[derive(Serialize)]
struct RowEntry<'a> {
    #[serde(skip_serializing_if = "Option::is_none")]
    number: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    part: Option<&'a str>,
    row: &'a str,
    ours: Vec<OwnEntry<'a>>,
}

#[derive(Serialize)]
struct OwnEntry<'a> {
    design: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    state: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    printing: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    relation: Option<&'static str>,
}

#[derive(Serialize)]
struct StandsEntry {
    how: &'static str,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    see: Vec<String>,
}

impl StandsEntry {
    fn of(stands: &Stands) -> StandsEntry {
        StandsEntry {
            how: stands.how.word(),
            see: stands.see.iter().map(ToString::to_string).collect(),
        }
    }
}

#[derive(Serialize)]
struct WordLists<'a> {
    number: &'a [String],
    state: &'a [String],
    accession: &'a [String],
    edition: &'a [String],
    only_state: &'a str,
}

impl<'a> Index<'a> {
    fn of(references: &'a References) -> Index<'a> {
        let names = |all: &'a [Names]| all.iter().map(NamesEntry::of).collect();
        Index {
            tag: String::new(),
            catalogue: "",
            siglum: &references.siglum,
            address: &references.address,
            edition: references.edition.as_deref(),
            language: "",
            addresses: BTreeMap::from(ADDRESSES),
            designs: references.designs.iter().map(DesignEntry::of).collect(),
            literature: references
                .works
                .iter()
                .map(|work| WorkEntry::of(work, references))
                .collect(),
            holders: names(&references.holders),
            people: names(&references.people),
            exhibitions: names(&references.exhibitions),
            marks: names(&references.marks),
            documents: names(&references.documents),
            series: names(&references.series),
            accessions: Vec::new(),
            stands: references
                .stands
                .iter()
                .map(|(named, stands)| (named.as_str(), StandsEntry::of(stands)))
                .collect(),
            words: WordLists::of(&references.words),
            folding: folding::table().collect(),
        }
    }
}

impl<'a> DesignEntry<'a> {
    fn of(names: &'a DesignNames) -> DesignEntry<'a> {
        DesignEntry {
            key: names.key.as_str(),
            number: &names.number,
            titles: &names.titles,
            former: &names.former,
            ids: &names.ids,
            was: &names.was,
            formerly: names
                .formerly
                .iter()
                .map(|former| FormerNumberEntry {
                    edition: &former.edition,
                    number: &former.number,
                })
                .collect(),
            states: names.states.iter().map(StateEntry::of).collect(),
            printings: names
                .printings
                .iter()
                .map(|printing| PrintingEntry {
                    key: printing.key.as_str(),
                    name: printing.name.as_deref(),
                    was: &printing.was,
                })
                .collect(),
            impressions: ranges(&names.impressions),
            joined: &names.joined,
        }
    }
}

impl<'a> StateEntry<'a> {
    fn of(state: &'a StateNames) -> StateEntry<'a> {
        StateEntry {
            key: state.key.as_str(),
            numeral: state.place.map(roman),
            was: &state.was,
            formerly: state
                .formerly
                .iter()
                .map(|former| FormerNumeralEntry {
                    edition: &former.edition,
                    numeral: roman(former.place),
                })
                .collect(),
        }
    }
}

impl<'a> NamesEntry<'a> {
    fn of(names: &'a Names) -> NamesEntry<'a> {
        NamesEntry {
            key: names.key.as_str(),
            names: &names.names,
            former: &names.former,
            was: &names.was,
            town: names.town.as_deref(),
            isil: names.isil.as_deref(),
            ids: &names.ids,
        }
    }
}

impl<'a> WorkEntry<'a> {
    fn of(work: &'a WorkNames, references: &'a References) -> WorkEntry<'a> {
        WorkEntry {
            key: work.key.as_str(),
            short: &work.short,
            title: &work.title,
            author: work.author.as_deref(),
            was: &work.was,
            numbers: work
                .rows
                .iter()
                .map(|row| RowEntry::of(row, references))
                .collect(),
        }
    }
}

impl<'a> RowEntry<'a> {
    fn of(row: &'a EarlierRow, references: &'a References) -> RowEntry<'a> {
        let ours = row.ours.iter().filter_map(|ours| {
            let design = references.designs.get(ours.design)?;
            let state = ours.state.and_then(|state| design.states.get(state));
            let printing = ours.printing.and_then(|at| design.printings.get(at));
            Some(OwnEntry {
                design: design.key.as_str(),
                state: state.map(|state| state.key.as_str()),
                printing: printing.map(|printing| printing.key.as_str()),
                relation: (ours.relation != Relation::Same).then(|| ours.relation.word()),
            })
        });
        RowEntry {
            number: row.number.as_deref(),
            part: row.part.as_deref(),
            row: &row.fragment,
            ours: ours.collect(),
        }
    }
}

impl<'a> WordLists<'a> {
    fn of(words: &'a QueryWords) -> WordLists<'a> {
        WordLists {
            number: &words.number,
            state: &words.state,
            accession: &words.accession,
            edition: &words.edition,
            only_state: &words.only_state,
        }
    }
}

/// Numbers in ascending order as ranges: the first and the last of each.
fn ranges(numbers: &[u32]) -> Vec<[u32; 2]> {
    let mut ranges: Vec<[u32; 2]> = Vec::new();
    for number in numbers {
        match ranges.last_mut() {
            Some([_, last]) if *last + 1 == *number => *last = *number,
            _ => ranges.push([*number, *number]),
        }
    }
    ranges
}

/// Accession numbers that follow each other.
struct AccessionPart {
    /// The key of the first; empty for the first part.
    start: String,
    /// The fields of a JSON object, with commas between them.
    numbers: String,
}

/// The accession numbers in parts of at most [`MOST_BYTES`], sorted as browsers sort text.
fn accession_parts(references: &References) -> Vec<AccessionPart> {
    let mut numbers: Vec<(&String, &Vec<Accession>)> = references.accessions.iter().collect();
    numbers.sort_by(|a, b| a.0.encode_utf16().cmp(b.0.encode_utf16()));
    let mut parts: Vec<AccessionPart> = Vec::new();
    for (key, sheets) in numbers {
        let sheets: Vec<Value> = sheets.iter().map(sheet).collect();
        let field = format!("{}:{}", text(key), text(&sheets));
        match parts.last_mut() {
            Some(part) if part.numbers.len() + 1 + field.len() <= MOST_BYTES => {
                part.numbers.push(',');
                part.numbers.push_str(&field);
            }
            last => {
                let start = last.map_or_else(String::new, |_| key.clone());
                parts.push(AccessionPart {
                    start,
                    numbers: field,
                });
            }
        }
    }
    parts
}

/// The impression, its holder, and what sets the number apart.
fn sheet(accession: &Accession) -> Value {
    let mut sheet = vec![
        json!(accession.impression.to_string()),
        json!(accession.holder.as_ref().map(ToString::to_string)),
    ];
    match accession.kind {
        NumberKind::Present => {}
        NumberKind::Former => sheet.push(json!("former")),
        NumberKind::Elsewhere => sheet.push(json!("elsewhere")),
    }
    if accession.is_bare {
        sheet.push(json!("bare"));
    }
    json!(sheet)
}

fn text(value: &impl Serialize) -> String {
    serde_json::to_string(value).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_that_follow_each_other_are_one_range() {
        assert_eq!(ranges(&[1, 2, 3, 5, 7, 8]), [[1, 3], [5, 5], [7, 8]]);
        assert!(ranges(&[]).is_empty());
    }
}
