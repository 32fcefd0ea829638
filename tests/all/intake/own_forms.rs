//! Our own forms come back: a holder's sheets, and rows with what their lists offer.

use serde_json::{Value, json};

use super::{catalogue, hand_in, intake};
use crate::program::{keyblock, text};

#[test]
fn the_sheets_of_a_holder_come_back_as_they_are_recorded() {
    let folder = catalogue();
    let folder = folder.path();
    let site = folder.join("site");
    let ran = keyblock(&["compile", text(folder), "--to", text(&site)]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let sheets = site.join("holder/museum/sheets.xlsx");
    let ran = intake(folder, &[text(&sheets), "--as", "museum", "--json"]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let told: Value = serde_json::from_str(&ran.out).unwrap();
    let rows = told["rows"].as_array().unwrap();
    assert_eq!(rows.len(), 1, "{rows:?}");
    assert_eq!(rows[0]["impression"], "1.1");
    assert_eq!(rows[0]["doubts"], json!([]));
    // Only the words themselves are new: nothing that is recorded would change.
    for change in rows[0]["changes"].as_array().unwrap() {
        let key = change["key"].as_str().unwrap();
        assert!(key.starts_with("as_given."), "{change}");
    }
}

#[test]
fn what_the_lists_of_our_forms_offer_is_understood() {
    let folder = catalogue();
    let folder = folder.path();
    let table = "\
Accession number,Number in this catalogue,State in this catalogue,How acquired,Whereabouts,How seen,Impression in this catalogue
1970.1,1 – The Ferry,ii – moonlit,Gift,destroyed,from a photograph,
1970.2,1 – The Ferry,dark,Found in the attic,on loan,,
1950.3a,,,,,,1.1
1970.4,,,,,,9.9
";
    let file = hand_in(folder, "list.csv", table);
    let ran = intake(folder, &[text(&file), "--as", "museum", "--json"]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let told: Value = serde_json::from_str(&ran.out).unwrap();
    let holds: Vec<&str> = told["columns"]
        .as_array()
        .unwrap()
        .iter()
        .map(|column| column["holds"].as_str().unwrap())
        .collect();
    assert_eq!(
        holds,
        [
            "accession",
            "design",
            "own-state",
            "acquisition",
            "status",
            "basis",
            "impression"
        ]
    );
    let rows = &told["rows"];
    assert_eq!(rows[0]["design"], "1");
    assert_eq!(rows[0]["read"]["state"], "moonlit");
    assert_eq!(rows[0]["read"]["credit"]["how"], "gift");
    assert_eq!(rows[0]["unread"], json!({}));
    assert_eq!(rows[1]["read"]["state"], "dark");
    assert_eq!(
        rows[1]["unread"],
        json!({ "How acquired": "Found in the attic", "Whereabouts": "on loan" })
    );
    // The key names the record, whose number is corrected.
    assert_eq!(rows[2]["impression"], "1.1");
    let changes = rows[2]["changes"].as_array().unwrap();
    let number = changes
        .iter()
        .find(|change| change["key"] == "accession")
        .unwrap();
    assert_eq!(number["would_be"], "1950.3a");
    // One that there is not is told.
    assert_eq!(rows[3]["impression"], Value::Null);
    assert!(
        rows[3]["doubts"].to_string().contains("no impression"),
        "{}",
        rows[3]
    );

    let ran = intake(folder, &["--accept", "museum", "2"]);
    assert_eq!(ran.code, Some(0), "{}{}", ran.out, ran.err);
    let record =
        std::fs::read_to_string(folder.join("records/designs/1/impressions/3.toml")).unwrap();
    assert!(record.contains("status = \"destroyed\""), "{record}");
}
