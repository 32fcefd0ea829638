//! `keyblock terms`, run as a program, and where synonyms are found: in help, in the glossary, in the search.

use serde_json::Value;

use crate::pages::{page, site_of};
use crate::program::{keyblock, text};
use crate::small::lay_down;

const RECORDS: &str = r#"
-- records/designs/2/design.toml
titles = [{ text = "The Quay" }]
technique = ["screenprint", "screenprint"]
subjects = ["harbour", "fog"]
-- records/designs/10/design.toml
titles = [{ text = "The Lock" }]
technique = ["screenprint", "sand-print"]
-- records/designs/2/impressions/1.toml
status = "untraced"
kind = "proof"
publish = false
-- records/vocabulary/techniques.toml
[sand-print]
label = { en = "sand print", uk = "Друк піском" }
synonyms = ["grit print"]
[etching]
label = "bitten print"
"#;

#[test]
fn a_term_is_found_by_synonym_label_and_meaning_in_any_language() {
    let folder = lay_down(&[RECORDS]);
    let folder = text(folder.path());
    let found = |list: &str, words: &str| -> Vec<String> {
        let ran = keyblock(&["terms", list, words, "--in", folder, "--json"]);
        assert_eq!(ran.code, Some(0), "{}", ran.err);
        let document: Value = serde_json::from_str(&ran.out).unwrap();
        let lists = document["lists"].as_array().unwrap();
        let terms = lists
            .iter()
            .flat_map(|list| list["terms"].as_array().unwrap());
        terms
            .map(|term| term["key"].as_str().unwrap().to_owned())
            .collect()
    };
    assert_eq!(
        found("techniques", "Silkscreen"),
        ["screenprint", "photo-screenprint"]
    );
    assert_eq!(found("techniques", "serigrafie")[0], "screenprint");
    assert_eq!(found("techniques", "Друк піском"), ["sand-print"]);
    assert_eq!(found("techniques", "grit"), ["sand-print", "carborundum"]);
    assert_eq!(found("papers", "Bütten")[0], "handmade-paper");
    assert_eq!(found("papers", "screenprint"), [""; 0]);
}

#[test]
fn every_term_says_where_it_comes_from_and_what_uses_it() {
    let folder = lay_down(&[RECORDS]);
    let ran = keyblock(&["terms", "--in", text(folder.path()), "--json"]);
    let document: Value = serde_json::from_str(&ran.out).unwrap();
    let term = |list: &str, key: &str| -> Value {
        let lists = document["lists"].as_array().unwrap();
        let list = lists.iter().find(|one| one["list"] == list).unwrap();
        let terms = list["terms"].as_array().unwrap();
        terms
            .iter()
            .find(|term| term["key"] == key)
            .unwrap()
            .clone()
    };
    let screenprint = term("techniques", "screenprint");
    // A record counts once, and 2 stands before 10.
    assert_eq!(
        screenprint["used_by"],
        serde_json::json!(["design:2", "design:10"])
    );
    assert_eq!(screenprint["origin"], "built-in");
    // Source: tests/checks/aat_terms.csv.
    assert_eq!(screenprint["aat"], 300_178_688);
    let own = term("techniques", "sand-print");
    assert_eq!(own["origin"], "own");
    assert_eq!(own["synonyms"]["en"], serde_json::json!(["grit print"]));
    assert_eq!(term("techniques", "etching")["origin"], "redefined");
    // Commands count what is not published too, and free words are no terms.
    assert_eq!(
        term("kinds", "proof")["used_by"],
        serde_json::json!(["impression:2.1"])
    );
    assert_eq!(
        term("subjects", "harbour")["used_by"],
        serde_json::json!(["design:2"])
    );
    let people = keyblock(&["terms", "techniques", "grit", "--in", text(folder.path())]);
    assert!(people.out.contains("sand-print  (own)"), "{}", people.out);
    assert!(
        people.out.contains("used in 1 record: design:10"),
        "{}",
        people.out
    );
}

#[test]
fn an_unknown_list_is_refused_with_the_lists_and_where_the_word_stands() {
    let folder = tempfile::tempdir().unwrap();
    let folder = text(folder.path());
    let ran = keyblock(&["terms", "silkscreen", "--in", folder]);
    assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""));
    assert!(
        ran.err.contains("“keyblock terms techniques silkscreen”"),
        "{}",
        ran.err
    );
    assert!(ran.err.contains("techniques, papers, kinds"), "{}", ran.err);
    let ran = keyblock(&["terms", "technique", "--in", folder]);
    assert!(ran.err.contains("write “techniques”"), "{}", ran.err);
    // Without a catalogue there are the built-in terms.
    let ran = keyblock(&["terms", "papers", "--in", folder]);
    assert_eq!(ran.code, Some(0));
    assert!(
        ran.out.contains("laid-paper") && ran.err.contains("no catalogue"),
        "{}",
        ran.err
    );
    let ran = keyblock(&["terms", "--in", folder]);
    assert_eq!(ran.code, Some(0));
    for list in ["techniques (", "papers (", "subjects ("] {
        assert!(ran.out.contains(list), "{list}");
    }
}

#[test]
fn the_glossary_gives_synonyms_in_its_language_and_a_private_one_nowhere() {
    let site = site_of(&[
        RECORDS,
        "-- records/vocabulary/papers.toml\n[rice]\nlabel = \"rice paper\"\nnote = \"Made of pith.\"\nsynonyms = [\"pith sheet\"]\nprivate = [\"synonyms\"]\n",
    ]);
    let glossary = page(&site, "glossary/");
    assert!(
        glossary
            .contains("also screen print, silkscreen, silk-screen print, serigraph, serigraphy")
    );
    assert!(!glossary.contains("Siebdruck") && glossary.contains("rice paper"));
    assert!(
        site.files
            .values()
            .all(|file| !String::from_utf8_lossy(file).contains("pith sheet"))
    );
}
