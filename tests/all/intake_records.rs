//! What the catalogue publishes in open standards is read back by intake: LIDO, Linked Art and IIIF of the demonstration, held
//! against its tables of data, which other code makes.
//!
//! Records that are not ours: `src/exchange/intake/records/tests/`, with the output of the reference libraries.

use std::collections::BTreeMap;

use keyblock::exchange::intake::columns::{Holds, columns};
use keyblock::exchange::intake::open;
use keyblock::exchange::intake::reading::sizes::{Assumed, sizes};
use keyblock::exchange::intake::reading::{Lexicon, makers};
use keyblock::exchange::intake::table::Table;
use serde_json::Value;

use crate::data_tables::SITE;

/// The rows of the table of impressions, by the key of the sheet.
fn impressions() -> BTreeMap<String, Value> {
    let rows: Value = serde_json::from_slice(&SITE.files["data/impressions.json"]).unwrap();
    let rows = rows.as_array().unwrap().iter();
    rows.map(|row| (row["impression"].as_str().unwrap().to_owned(), row.clone()))
        .collect()
}

/// The cells of each row under the columns that hold something: by row, then what is held.
fn read(bytes: &[u8]) -> Vec<BTreeMap<Holds, Vec<String>>> {
    let tables = open::tables(bytes).unwrap();
    assert_eq!(tables.len(), 1);
    let table: &Table = &tables[0];
    let proposal = columns(table, &Lexicon::default());
    let rows = table.rows().map(|row| {
        let mut held: BTreeMap<Holds, Vec<String>> = BTreeMap::new();
        for column in &proposal.columns {
            let cell = row.cell(column.column);
            if !cell.is_empty() {
                held.entry(column.holds).or_default().push(cell.to_owned());
            }
        }
        held
    });
    rows.collect()
}

fn cells(row: &BTreeMap<Holds, Vec<String>>, holds: Holds) -> &[String] {
    row.get(&holds).map_or(&[], Vec::as_slice)
}

/// The accession number and the sizes of a row are those of the table of data. Gives how many sizes there were.
fn is_as_recorded(row: &BTreeMap<Holds, Vec<String>>, data: &Value, what: &str) -> usize {
    let accession = data["accession"].as_str().unwrap_or_default();
    let part = data["part"].as_str().unwrap_or_default();
    if !accession.is_empty() && part.is_empty() {
        let numbers = [Holds::Accession, Holds::FormerAccession].map(|holds| cells(row, holds));
        assert!(
            numbers.concat().contains(&accession.to_owned()),
            "{what}: {numbers:?}"
        );
    }
    let read: Vec<(f64, f64)> = cells(row, Holds::Dimensions)
        .iter()
        .flat_map(|cell| sizes(cell, Assumed::default()).is)
        .filter_map(|size| Some((size.height?.mm, size.width?.mm)))
        .collect();
    let mut count = 0;
    for of in ["sheet", "image", "platemark"] {
        let [height, width] =
            ["height", "width"].map(|side| data[format!("{of}_{side}_mm")].as_f64());
        if let (Some(height), Some(width)) = (height, width) {
            count += 1;
            assert!(
                read.contains(&(height, width)),
                "{what}: {of} {height} x {width}, {read:?}"
            );
        }
    }
    count
}

#[test]
fn lido_of_the_demonstration_comes_back() {
    let data = impressions();
    let (mut sheets, mut sizes) = (0, 0);
    let files = SITE.files.iter();
    let files =
        files.filter(|(path, _)| path.starts_with("design/") && path.ends_with("/lido.xml"));
    for (_, bytes) in files {
        for row in read(bytes) {
            let address = cells(&row, Holds::Id)
                .iter()
                .find_map(|id| id.split_once("/impression/"))
                .unwrap();
            let key = address.1.split('/').next().unwrap();
            sizes += is_as_recorded(&row, &data[key], key);
            sheets += 1;
        }
    }
    assert!(sheets > 150 && sizes > 100, "{sheets} {sizes}");
}

#[test]
fn linked_art_of_the_demonstration_comes_back() {
    let data = impressions();
    let lexicon = Lexicon::default();
    let (mut sheets, mut sizes, mut credits) = (0, 0, 0);
    for (key, recorded) in &data {
        let Some(bytes) = SITE.files.get(&format!("impression/{key}/linked-art.json")) else {
            continue;
        };
        let rows = read(bytes);
        assert_eq!(rows.len(), 1);
        sheets += 1;
        // What is not certain is said in words, which name no size that the grammar could take for another.
        let is_certain = ["sheet", "image", "platemark"].iter().all(|of| {
            recorded[format!("{of}_certainty")]
                .as_str()
                .is_none_or(|c| c == "certain")
        });
        if is_certain {
            sizes += is_as_recorded(&rows[0], recorded, key);
        }
        if let Some(credit) = recorded["credit"].as_str() {
            credits += 1;
            assert!(
                cells(&rows[0], Holds::Credit).contains(&credit.to_owned()),
                "{key}"
            );
        }
        // Each part of the production that somebody carried out is a maker.
        let json: Value = serde_json::from_slice(bytes).unwrap();
        let parts = json["produced_by"]["part"].as_array().unwrap();
        let named = parts
            .iter()
            .filter(|part| !part["carried_out_by"].is_null())
            .count();
        let read: usize = cells(&rows[0], Holds::Maker)
            .iter()
            .map(|cell| makers::makers(cell, &lexicon).is.len())
            .sum();
        assert_eq!(read, named, "{key}: {:?}", cells(&rows[0], Holds::Maker));
    }
    assert!(
        sheets > 150 && sizes > 100 && credits > 1,
        "{sheets} {sizes} {credits}"
    );
}

#[test]
fn manifests_of_the_demonstration_come_back() {
    let data = impressions();
    let mut sheets = 0;
    for (key, recorded) in &data {
        let Some(bytes) = SITE.files.get(&format!("impression/{key}/manifest.json")) else {
            continue;
        };
        let rows = read(bytes);
        let accession = recorded["accession"].as_str().unwrap_or_default();
        let part = recorded["part"].as_str().unwrap_or_default();
        if part.is_empty() && !accession.is_empty() {
            assert_eq!(cells(&rows[0], Holds::Accession), [accession], "{key}");
        }
        let json: Value = serde_json::from_slice(bytes).unwrap();
        let pictures = json["items"].as_array().unwrap().len();
        let read: usize = cells(&rows[0], Holds::Photograph)
            .iter()
            .map(|cell| cell.split("; ").count())
            .sum();
        assert_eq!(read, pictures, "{key}");
        sheets += 1;
    }
    assert!(sheets > 50, "{sheets}");
}

/// What a catalogue only links is told and not fetched: its collections name manifests.
#[test]
fn collections_of_the_demonstration_only_name_their_manifests() {
    let refused = open::tables(&SITE.files["design/14/collection.json"]).unwrap_err();
    assert!(
        refused.message().contains("by their addresses"),
        "{}",
        refused.message()
    );
}
