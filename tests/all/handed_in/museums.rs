//! The files of three museums of the demonstration, taken into a copy of its records. What is proposed is in
//! `tests/intake/NAME.json` (`KEYBLOCK_BLESS=1 cargo test --test all intake::` writes it; read the difference). The files
//! are made by `tests/reference/museum_files.py`.

use std::fs;
use std::path::{Path, PathBuf};

use serde_json::Value;

use super::{document, inbox_text, intake_file, records, row};
use crate::program::copy_of;

fn file(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("tests/intake")
        .join(name)
}

/// The demonstration's records, without its photographs.
fn demonstration() -> tempfile::TempDir {
    let copy = copy_of("demo-site");
    for file in crate::program::files_below(copy.path()) {
        if file
            .extension()
            .is_some_and(|ending| ending == "jpg" || ending == "png")
        {
            fs::remove_file(file).unwrap();
        }
    }
    copy
}

/// Takes a file in, compares the document with the one that is kept, and finds every cell again.
#[track_caller]
fn proposed(name: &str, handed_in: &str) -> Value {
    let catalogue = demonstration();
    let before = records(catalogue.path());
    let document = document(&intake_file(catalogue.path(), &file(handed_in), name));
    assert_eq!(records(catalogue.path()), before);

    let shown = serde_json::to_string_pretty(&document).unwrap() + "\n";
    let kept = file(&format!("{name}.json"));
    if std::env::var_os("KEYBLOCK_BLESS").is_some() {
        fs::write(&kept, &shown).unwrap();
    } else {
        let kept = fs::read_to_string(&kept).unwrap_or_default();
        assert!(
            kept == shown,
            "tests/intake/{name}.json does not have what is proposed; `KEYBLOCK_BLESS=1 cargo test --test all intake::` \
             writes it"
        );
    }
    every_cell_is_found_again(catalogue.path(), name, handed_in);

    // The same file again writes nothing.
    let files = crate::program::bytes_below(catalogue.path());
    let again = super::document(&intake_file(catalogue.path(), &file(handed_in), name));
    assert_eq!(again, document);
    assert!(crate::program::bytes_below(catalogue.path()) == files);
    document
}

/// Every cell of a row stands in the record that is proposed for it, or in what is told of the row.
#[track_caller]
fn every_cell_is_found_again(catalogue: &Path, name: &str, handed_in: &str) {
    let bytes = fs::read(file(handed_in)).unwrap();
    let mut tables = keyblock::exchange::intake::open::tables(&bytes).unwrap();
    tables.sort_by_key(|table| std::cmp::Reverse(table.rows().len()));
    let proposed: toml::Table = inbox_text(catalogue, name, "proposed.toml")
        .parse()
        .unwrap();
    let rows = proposed["rows"].as_array().unwrap();
    for view in tables[0].rows() {
        let is_it = |row: &&toml::Value| row["row"].as_integer() == Some(i64::from(view.number()));
        let Some(row) = rows.iter().find(is_it) else {
            // A row without a cell is no row.
            assert!(
                view.cells().all(str::is_empty),
                "row {} is lost",
                view.number()
            );
            continue;
        };
        let mut texts = Vec::new();
        gather(row, &mut texts);
        for cell in view.cells().filter(|cell| !cell.is_empty()) {
            assert!(
                texts.iter().any(|text| text.contains(cell)),
                "{name}, row {}: {cell:?} is lost:\n{row:#?}",
                view.number()
            );
        }
    }
}

/// Every text in a value.
fn gather(value: &toml::Value, texts: &mut Vec<String>) {
    match value {
        toml::Value::String(text) => texts.push(text.clone()),
        toml::Value::Array(values) => values.iter().for_each(|value| gather(value, texts)),
        toml::Value::Table(table) => table.values().for_each(|value| gather(value, texts)),
        _ => {}
    }
}

#[test]
fn a_german_spreadsheet_with_mixed_units() {
    let document = proposed("lindenmark", "lindenmark.xlsx");
    let gant_light = row(&document, "1961-204");
    assert_eq!(gant_light["impression"], "7.10");
    assert_eq!(gant_light["read"]["date"], "1927");
    assert_eq!(
        gant_light["read"]["sizes"]["image"],
        serde_json::json!([232.0, 362.0])
    );
    assert_eq!(
        gant_light["read"]["credit"]["from"],
        "Dr. K. Ehrenfurth, Lindenmark"
    );
}

#[test]
fn a_french_list_with_states_that_were_split_since() {
    let document = proposed("saint-aubrac", "saint-aubrac.windows-1252");
    // Ambry's state III of W 4 is two states now, and so is Dreyloft's I of 9: neither is chosen.
    let memorial = row(&document, "2003.11.1");
    assert_eq!(memorial["design"], "7");
    assert_eq!(
        memorial["doubts"][0],
        "Ambry 1969 iii is state iv or v here"
    );
    let proof = row(&document, "2003.11.3");
    assert_eq!(proof["doubts"][1], "Dreyloft 1936 i is state i or ii here");
    assert_eq!(
        memorial["read"]["technique"],
        serde_json::json!(["colour-woodcut"])
    );
}

#[test]
fn records_in_lido() {
    let document = proposed("holmsted", "holmsted.xml");
    let gant_light = row(&document, "KKS 1934:118");
    assert_eq!(gant_light["impression"], "7.3");
    let salt_pans = row(&document, "KKS 1951:9");
    assert_eq!(salt_pans["design"], "16");
    assert_eq!(
        salt_pans["read"]["sizes"]["platemark"],
        serde_json::json!([120.0, 250.0])
    );
}
