//! Linked Art: every record obeys the rules of the published schemas, says what the catalogue says, and states nothing
//! that is not certain.
//!
//! The schemas are in no registry. `tests/checks/linked_art_rules.csv` is flattened from them, and the checker here is
//! checked with a record that passes them, and with faults put into it. `tests/reference/linked_data.py` reads the
//! compiled demonstration with a JSON-LD processor and with the reference library of the model.

use std::collections::BTreeMap;
use std::path::Path;

use keyblock::page::Site;
use serde_json::{Value, json};

use crate::pages::{site, site_of};

const RULES: &str = include_str!("../checks/linked_art_rules.csv");
const SAMPLE: &str = include_str!("../checks/linked_art_impression.json");
const AAT: &str = include_str!("../checks/aat_terms.csv");

/// A property of a class: whether it is required, whether it is a list, and its values.
struct Rule<'a> {
    required: bool,
    list: bool,
    values: Vec<&'a str>,
}

/// The rules of each record and embedded class, by name and property.
fn rules() -> BTreeMap<&'static str, BTreeMap<&'static str, Rule<'static>>> {
    let mut rules: BTreeMap<_, BTreeMap<_, _>> = BTreeMap::new();
    for line in RULES.lines().skip(2) {
        let [record, property, required, list, values] =
            line.splitn(5, ',').collect::<Vec<_>>()[..]
        else {
            panic!("{line}");
        };
        let rule = Rule {
            required: required == "required",
            list: list == "list",
            values: values.split('|').collect(),
        };
        rules.entry(record).or_default().insert(property, rule);
    }
    rules
}

/// The faults of a node that is to be of a class.
fn faults(node: &Value, class: &str, at: &str, found: &mut Vec<String>) {
    let all = rules();
    let Some(properties) = all.get(class) else {
        found.push(format!("{at}: no rules for {class}"));
        return;
    };
    let Some(object) = node.as_object() else {
        found.push(format!("{at}: not an object"));
        return;
    };
    for (property, rule) in properties {
        if rule.required && !object.contains_key(*property) {
            found.push(format!("{at}: {property} is missing"));
        }
    }
    for (property, value) in object {
        let at = format!("{at}/{property}");
        let Some(rule) = properties.get(property.as_str()) else {
            found.push(format!("{at}: no such property of {class}"));
            continue;
        };
        if property == "@context" {
            let context = "https://linked.art/ns/v1/linked-art.json";
            if value != context {
                found.push(format!("{at}: {value}"));
            }
            continue;
        }
        match (rule.list, value) {
            (true, Value::Array(items)) => {
                if items.is_empty() {
                    found.push(format!("{at}: empty"));
                }
                for item in items {
                    value_faults(item, &rule.values, &at, found);
                }
            }
            (false, Value::Array(_)) | (true, _) => found.push(format!("{at}: one or several")),
            (false, one) => value_faults(one, &rule.values, &at, found),
        }
    }
}

/// The faults of a value that may be of several kinds.
fn value_faults(value: &Value, kinds: &[&str], at: &str, found: &mut Vec<String>) {
    if kinds == [""] {
        return;
    }
    let mut tried = Vec::new();
    for kind in kinds {
        let mut own = Vec::new();
        one_kind(value, kind, at, &mut own);
        if own.is_empty() {
            return;
        }
        tried.push(own);
    }
    // The faults of the kind that fits best.
    tried.sort_by_key(Vec::len);
    found.extend(tried.into_iter().next().unwrap_or_default());
}

fn one_kind(value: &Value, kind: &str, at: &str, found: &mut Vec<String>) {
    let mut expect = |holds: bool| {
        if !holds {
            found.push(format!("{at}: {value} is no {kind}"));
        }
    };
    if let Some(constant) = kind.strip_prefix("string =") {
        return expect(value == constant);
    }
    match kind {
        "string" => expect(value.as_str().is_some_and(|text| !text.is_empty())),
        "string uri" => expect(
            value
                .as_str()
                .is_some_and(|text| text.starts_with("http://") || text.starts_with("https://")),
        ),
        "string date-time" => expect(value.as_str().is_some_and(is_moment)),
        "number" => expect(value.is_number()),
        _ => match kind.strip_suffix("Ref") {
            Some(class) => {
                let keys = value.as_object().into_iter().flatten();
                let mut keys = keys.map(|(key, _)| key.as_str());
                let class = match class {
                    "Unit" => "MeasurementUnit",
                    "InfoObject" => "InformationObject",
                    class => class,
                };
                expect(
                    keys.all(|key| ["id", "type", "_label", "equivalent"].contains(&key))
                        && value["id"]
                            .as_str()
                            .is_some_and(|id| id.starts_with("http"))
                        && (class == "Any" || value["type"] == class),
                );
            }
            None => faults(value, &format!("{kind} (embedded)"), at, found),
        },
    }
}

/// RFC 3339, whole seconds in UTC.
fn is_moment(text: &str) -> bool {
    let form = "0000-00-00T00:00:00Z";
    text.len() == form.len()
        && std::iter::zip(text.chars(), form.chars())
            .all(|(c, f)| if f == '0' { c.is_ascii_digit() } else { c == f })
}

/// The faults of a record.
fn record_faults(record: &Value) -> Vec<String> {
    let class = match record["type"].as_str().unwrap_or_default() {
        "Activity" if is_provenance(record) => "Activity (provenance)",
        "Activity" => "Event/Activity",
        class => class,
    };
    let mut found = Vec::new();
    faults(
        record,
        class,
        record["id"].as_str().unwrap_or("?"),
        &mut found,
    );
    found
}

fn is_provenance(record: &Value) -> bool {
    let kinds = record["classified_as"].as_array().into_iter().flatten();
    let mut ids = kinds.filter_map(|kind| kind["id"].as_str());
    ids.any(|id| id == "http://vocab.getty.edu/aat/300055863")
}

/// Source: `tests/checks/linked_art_impression.json`, which passes the published schemas; the faults are those that
/// the schemas refuse in it (CHECKS, "Linked Art").
#[test]
fn the_checker_passes_what_the_schemas_pass_and_refuses_what_they_refuse() {
    let sample: Value = serde_json::from_str(SAMPLE).unwrap();
    assert_eq!(record_faults(&sample), Vec::<String>::new());
    let broken: [(&str, fn(&mut Value)); 8] = [
        ("no label", |r| {
            drop(r.as_object_mut().unwrap().remove("_label"));
        }),
        ("no id", |r| drop(r.as_object_mut().unwrap().remove("id"))),
        ("an unknown property", |r| r["colour"] = json!("red")),
        ("one where a list is due", |r| {
            r["shows"] = r["shows"][0].clone();
        }),
        ("a year", |r| {
            r["produced_by"]["timespan"]["begin_of_the_begin"] = json!("1927");
        }),
        ("a text as number", |r| {
            r["dimension"][0]["value"] = json!("212");
        }),
        ("a wrong class", |r| {
            r["shows"][0]["type"] = json!("HumanMadeObject");
        }),
        ("no content", |r| {
            drop(
                r["identified_by"][0]
                    .as_object_mut()
                    .unwrap()
                    .remove("content"),
            );
        }),
    ];
    for (what, fault) in broken {
        let mut record = sample.clone();
        fault(&mut record);
        assert!(!record_faults(&record).is_empty(), "{what}");
    }
}

/// Every record of a site: those in files of their own, and those of each graph.
fn records(site: &Site) -> Vec<(String, Value)> {
    let mut records = Vec::new();
    for (path, bytes) in &site.files {
        if path.ends_with("/linked-art.json") || path.ends_with("/words.json") {
            records.push((path.clone(), serde_json::from_slice(bytes).unwrap()));
        } else if path.starts_with("impression/") && path.ends_with("/provenance.json") {
            let graph: Value = serde_json::from_slice(bytes).unwrap();
            for mut record in graph["@graph"].as_array().unwrap().clone() {
                record["@context"] = graph["@context"].clone();
                records.push((path.clone(), record));
            }
        }
    }
    records
}

fn example() -> Site {
    site(&Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/example-catalogue"))
}

fn record(site: &Site, folder: &str) -> Value {
    let path = format!("{folder}linked-art.json");
    let bytes = site.files.get(&path).unwrap_or_else(|| panic!("no {path}"));
    serde_json::from_slice(bytes).unwrap()
}

#[test]
fn every_record_obeys_the_schemas_and_is_found_at_its_own_address() {
    let site = example();
    let records = records(&site);
    assert!(records.len() > 20, "only {} records", records.len());
    let base = "https://prints.example.org/catalogue/";
    let mut known = Vec::new();
    for (path, record) in &records {
        assert_eq!(record_faults(record), Vec::<String>::new(), "{path}");
        let id = record["id"].as_str().unwrap();
        assert!(id.starts_with(&format!("{base}{path}")), "{id} in {path}");
        known.push(id.to_owned());
    }
    // Whatever a record refers to within the catalogue is there: another record, a page, or a file.
    let mut references = 0;
    for (path, record) in &records {
        each_id(record, &mut |id| {
            let Some(local) = id.strip_prefix(base) else {
                return;
            };
            references += 1;
            let place = local.split('#').next().unwrap();
            let is_file = site.files.contains_key(place);
            let is_page = site.files.contains_key(&format!("{place}index.html"));
            let is_picture = place.starts_with("picture/");
            assert!(is_file || is_page || is_picture, "{path} refers to {id}");
        });
    }
    assert!(references > 100, "only {references} references");
}

fn each_id(value: &Value, take: &mut dyn FnMut(&str)) {
    match value {
        Value::Array(items) => items.iter().for_each(|item| each_id(item, take)),
        Value::Object(object) => {
            for (key, value) in object {
                match value {
                    Value::String(id) if key == "id" => take(id),
                    value => each_id(value, take),
                }
            }
        }
        _ => {}
    }
}

/// A number of the thesaurus is written only if it was looked up.
#[test]
fn every_number_of_the_thesaurus_was_looked_up() {
    let site = example();
    let mut numbers = 0;
    for (path, record) in records(&site) {
        each_id(&record, &mut |id| {
            let Some(number) = id.strip_prefix("http://vocab.getty.edu/aat/") else {
                return;
            };
            numbers += 1;
            // Languages are in a table of their own (`concepts.rs`, with its source).
            let is_language = number.starts_with("300388") || number.starts_with("300389");
            let is_listed = AAT.contains(&format!(",{number},"));
            assert!(is_listed || is_language, "{number} in {path}");
        });
    }
    assert!(numbers > 100, "only {numbers} numbers");
}

#[test]
fn a_sheet_shows_its_design_and_its_state_where_that_is_certain() {
    let site = example();
    let base = "https://prints.example.org/catalogue/";
    let shown = |folder: &str| -> Vec<String> {
        let record = record(&site, folder);
        let shows = record["shows"].as_array().unwrap().clone();
        let ids = shows.iter().map(|shown| shown["id"].as_str().unwrap());
        ids.map(|id| id.strip_prefix(base).unwrap().to_owned())
            .collect()
    };
    assert_eq!(
        shown("impression/14.1/"),
        [
            "design/14/linked-art.json",
            "design/14/state-two-lamps/linked-art.json"
        ]
    );
    // 14.2 is one of two states, probably; 14.3 possibly of one.
    for folder in ["impression/14.2/", "impression/14.3/"] {
        assert_eq!(shown(folder), ["design/14/linked-art.json"], "{folder}");
        let record = record(&site, folder);
        let assigned = record["attributed_by"].as_array().unwrap();
        let states = assigned.iter().find(|a| a["assigned_property"] == "shows");
        let states = states.unwrap();
        assert!(!states["assigned"].as_array().unwrap().is_empty());
        let name = states["identified_by"][0]["content"].as_str().unwrap();
        assert!(
            name.contains("probable") || name.contains("possible"),
            "{name}"
        );
    }
    let either = &record(&site, "impression/14.2/")["attributed_by"][0];
    assert_eq!(either["assigned"].as_array().unwrap().len(), 2);
    assert_eq!(either["carried_out_by"][0]["_label"], "The Editor");
    let state = record(&site, "design/14/state-two-lamps/");
    assert_eq!(
        state["part_of"][0]["id"],
        format!("{base}design/14/linked-art.json")
    );
    let before = &state["created_by"]["influenced_by"][0]["id"];
    assert_eq!(
        *before,
        format!("{base}design/14/state-with-moon/linked-art.json")
    );
}

#[test]
fn a_sheet_has_its_numbers_sizes_times_and_keeper() {
    let site = example();
    let sheet = record(&site, "impression/14.1/");
    let identifiers = sheet["identified_by"].as_array().unwrap();
    let of_type = |number: &str| {
        let id = format!("http://vocab.getty.edu/aat/{number}");
        let mut found = identifiers
            .iter()
            .filter(|i| i["classified_as"][0]["id"] == id.as_str());
        found.next().unwrap()
    };
    let accession = of_type("300312355");
    assert_eq!(accession["content"], "1962.44");
    let by = &accession["assigned_by"][0]["carried_out_by"][0]["_label"];
    assert_eq!(*by, "Harbour Museum");
    assert_eq!(of_type("300404621")["content"], "CP 14.1");
    let heights: Vec<f64> = sheet["dimension"]
        .as_array()
        .unwrap()
        .iter()
        .filter(|d| d["classified_as"][0]["_label"] == "Height")
        .map(|d| d["value"].as_f64().unwrap())
        .collect();
    assert_eq!(heights, [255.0, 211.5]);
    assert_eq!(sheet["current_custodian"][0]["_label"], "Harbour Museum");
    // The process of a colour woodcut (tests/checks/aat_terms.csv).
    let process = &sheet["produced_by"]["technique"][0]["id"];
    assert_eq!(*process, "http://vocab.getty.edu/aat/300053296");
    let museum = record(&site, "holder/harbour-museum/");
    assert_eq!(museum["residence"][0]["type"], "Place");
    // "About 1927": the bounds are those of the year, and the words tell the doubt.
    let parts = sheet["produced_by"]["part"].as_array().unwrap();
    let printed = parts
        .iter()
        .find(|part| part.get("timespan").is_some())
        .unwrap();
    let time = &printed["timespan"];
    assert_eq!(time["begin_of_the_begin"], "1927-01-01T00:00:00Z");
    assert_eq!(time["end_of_the_end"], "1927-12-31T23:59:59Z");
    assert_eq!(time["identified_by"][0]["content"], "about 1927");
    let printing = printed["part_of"]["id"].as_str().unwrap();
    assert!(printing.ends_with("design/14/printing-own/linked-art.json"));
    let used = printed["used_specific_object"].as_array().unwrap();
    assert_eq!(used.len(), 2);
}

#[test]
fn a_provenance_tells_transfers_and_keeps_its_doubts() {
    let site = site_of(&[r#"
-- records/designs/1/design.toml
titles = [{ text = "The Ferry" }]
-- records/designs/1/impressions/1.toml
status = "located"
holder = "museum"
[[provenance]]
owner = "artist"
to = "1931"
[[provenance]]
agent = { name = "A Dealer" }
from = "1931"
how = "sale"
lot = "12"
[[provenance]]
owner = { name = "A Collector" }
from = "1931"
how = "purchase"
place = "Southport"
price = "f 35"
[[provenance]]
keeper = "museum"
from = "1950"
to = "1955"
how = "loan"
[[provenance]]
owner = "museum"
from = "1955-03-02"
how = "gift"
direct = true
[[provenance]]
owner = { name = "Somebody Else" }
from = "1960"
this_sheet = "possible"
-- records/holders/museum.toml
name = "Harbour Museum"
kind = "museum"
"#]);
    let bytes = &site.files["impression/1.1/provenance.json"];
    let graph: Value = serde_json::from_slice(bytes).unwrap();
    let entries = graph["@graph"].as_array().unwrap();
    assert_eq!(entries.len(), 6);
    let part = |at: usize| &entries[at]["part"][0];
    assert_eq!(part(0)["type"], "Acquisition");
    assert_eq!(part(0)["transferred_title_to"][0]["_label"], "The Artist");
    // The dealer handled the sheet, and owned nothing.
    assert!(entries[1].get("part").is_none());
    assert_eq!(entries[1]["carried_out_by"][0]["_label"], "A Dealer");
    let lot = entries[1]["identified_by"].as_array().unwrap();
    assert!(
        lot.iter()
            .any(|i| i["type"] == "Identifier" && i["content"] == "lot 12")
    );
    assert_eq!(part(2)["transferred_title_to"][0]["type"], "Group");
    let sale = &entries[2];
    assert_eq!(sale["took_place_at"][0]["_label"], "Southport");
    let payment = &sale["part"][1];
    assert_eq!(payment["type"], "Payment");
    assert_eq!(payment["referred_to_by"][0]["content"], "f 35");
    assert_eq!(payment["paid_from"][0]["_label"], "A Collector");
    assert!(payment.get("paid_to").is_none(), "not said to be direct");
    assert!(
        part(2).get("transferred_title_from").is_none(),
        "not said to be direct"
    );
    assert_eq!(part(3)["type"], "TransferOfCustody");
    let bounds = &entries[4]["timespan"];
    assert_eq!(bounds["begin_of_the_begin"], "1955-03-02T00:00:00Z");
    // What may concern another sheet states nothing of this one.
    let doubted = &entries[5];
    assert!(doubted.get("part").is_none());
    let sheet = "https://prints.example.org/impression/1.1/linked-art.json";
    assert_eq!(doubted["attributed_by"][0]["assigned"][0]["id"], sheet);
    let said = &doubted["attributed_by"][0]["identified_by"][0]["content"];
    assert!(said.as_str().unwrap().contains("possibly"), "{said}");
    for (path, record) in records(&site) {
        assert_eq!(record_faults(&record), Vec::<String>::new(), "{path}");
    }
}

#[test]
fn a_private_owner_is_neutral_in_every_record() {
    let site = example();
    let owner = record(&site, "holder/owner-a/");
    assert_eq!(owner["_label"], "Private collection, Switzerland");
    assert_eq!(owner["type"], "Group");
    for (path, record) in records(&site) {
        let text = record.to_string();
        assert!(!text.contains("must never be published"), "{path}");
    }
}

#[test]
fn a_person_leads_to_the_authorities() {
    let site = site_of(&[r#"
-- records/designs/1/design.toml
titles = [{ text = "The Ferry" }]
makers = [{ person = "artist" }]
-- records/people/artist.toml
name = "The Artist"
born = "1890-04"
died = "1950~"
authority = ["https://authority.example.org/17"]
"#]);
    let person = record(&site, "person/artist/");
    assert_eq!(record_faults(&person), Vec::<String>::new());
    assert_eq!(
        person["equivalent"][0]["id"],
        "https://authority.example.org/17"
    );
    let born = &person["born"]["timespan"];
    assert_eq!(born["begin_of_the_begin"], "1890-04-01T00:00:00Z");
    assert_eq!(born["end_of_the_end"], "1890-04-30T23:59:59Z");
    assert_eq!(
        person["died"]["timespan"]["identified_by"][0]["content"],
        "about 1950"
    );
}

/// A ledger that tells one thing for certain and one as probable, with words in two languages.
const LEDGER: &str = r#"
-- records/designs/1/design.toml
titles = [{ text = "A Quay" }]
states = [{ key = "dark" }, { key = "moonlit" }]
printings = [{ key = "own", kind = "artist", states = "all" }]
-- records/designs/1/impressions/1.toml
status = "located"
holder = "museum"
-- records/designs/1/impressions/2.toml
status = "untraced"
publish = false
-- records/holders/museum.toml
name = "Harbour Museum"
kind = "museum"
-- records/documents/ledger.toml
kind = "ledger"
title = "Ledger"
date = "1931-05"
by = [{ name = "A printer" }, "artist"]
holder = "museum"
shelfmark = "MS 14"
lang = "uk"
rights = "CC0-1.0"
tells = [
  { of = ["printing:1/own", "design:1"], says = "Forty sheets were printed.", at = "leaf 3" },
  { of = ["state:1/dark", "impression:1.1"], says = "One was dark.", certainty = "probable" },
  { of = "person:artist", says = "The artist paid." },
]
-- records/documents/ledger.md
A leaf of *four*.
-- records/documents/ledger.transcription.md
12. травня
сорок аркушів

Сплачено
-- records/documents/ledger.en.md
12 May
forty sheets

Paid
-- records/documents/note.toml
title = "A note"
"#;

#[test]
fn a_document_is_a_paper_that_carries_words_about_what_it_tells_of() {
    let site = site_of(&[LEDGER]);
    for (path, record) in records(&site) {
        assert_eq!(record_faults(&record), Vec::<String>::new(), "{path}");
    }
    let base = "https://prints.example.org/";
    let paper = record(&site, "document/ledger/");
    assert_eq!(paper["type"], "HumanMadeObject");
    assert_eq!(
        paper["current_custodian"][0]["id"],
        format!("{base}holder/museum/linked-art.json")
    );
    let number = &paper["identified_by"][1];
    assert_eq!(number["content"], "MS 14");
    // Source: tests/checks/aat_terms.csv, "call number".
    assert_eq!(
        number["classified_as"][0]["id"],
        "http://vocab.getty.edu/aat/300311706"
    );
    let made = &paper["produced_by"];
    assert_eq!(
        made["timespan"]["begin_of_the_begin"],
        "1931-05-01T00:00:00Z"
    );
    assert_eq!(
        made["carried_out_by"][1]["id"],
        format!("{base}person/artist/linked-art.json")
    );
    assert_eq!(made["carried_out_by"][0]["_label"], "A printer");
    let words = &paper["carries"][0];
    assert_eq!(words["id"], format!("{base}document/ledger/words.json"));

    let words: Value = serde_json::from_slice(&site.files["document/ledger/words.json"]).unwrap();
    assert_eq!(words["content"], "12. травня\nсорок аркушів\n\nСплачено");
    // Source: the languages of the AAT, as in `concepts.rs`: Ukrainian.
    assert_eq!(
        words["language"][0]["id"],
        "http://vocab.getty.edu/aat/300389489"
    );
    let ids = |things: &Value| -> Vec<String> {
        let things = things.as_array().unwrap().iter();
        let ids = things.map(|thing| thing["id"].as_str().unwrap());
        ids.map(|id| id.strip_prefix(base).unwrap().to_owned())
            .collect()
    };
    assert_eq!(
        ids(&words["about"]),
        [
            "design/1/printing-own/linked-art.json",
            "design/1/linked-art.json",
            "person/artist/linked-art.json"
        ]
    );
    // What is not certain is assigned.
    let assigned = &words["attributed_by"][0];
    assert_eq!(
        ids(&assigned["assigned"]),
        [
            "design/1/state-dark/linked-art.json",
            "impression/1.1/linked-art.json"
        ]
    );
    assert_eq!(assigned["assigned_property"], "about");
    assert_eq!(
        assigned["identified_by"][0]["content"],
        "What it tells: probable"
    );
    // A document without words and without a statement carries none.
    let note = record(&site, "document/note/");
    assert!(note.get("carries").is_none());
    assert!(!site.files.contains_key("document/note/words.json"));
}

/// Source: the documentation of the model, "Texts and Documents", "Aboutness" (`about`), and CIDOC CRM P129, whose inverse
/// is `subject_of`; what the schema embeds there is in `tests/checks/linked_art_rules.csv`.
#[test]
fn what_a_document_tells_of_leads_to_its_words() {
    let site = site_of(&[LEDGER]);
    let base = "https://prints.example.org/";
    let words = format!("{base}document/ledger/words.json");
    // The files of each text of which a record is the subject.
    let texts = |record: &Value| -> Vec<(String, Vec<String>)> {
        let texts = record["subject_of"].as_array().unwrap().iter();
        texts
            .map(|text| {
                let name = text["_label"].as_str().unwrap_or_default().to_owned();
                let files = text["digitally_carried_by"].as_array().unwrap().iter();
                let files = files.map(|file| file["access_point"][0]["id"].as_str().unwrap());
                (name, files.map(str::to_owned).collect())
            })
            .collect()
    };
    let ledger = (
        "Ledger".to_owned(),
        vec![format!("{base}document/ledger/"), words.clone()],
    );
    for folder in ["design/1/printing-own/", "design/1/", "person/artist/"] {
        let record = record(&site, folder);
        assert!(texts(&record).contains(&ledger), "{folder}: {record}");
        assert!(record.get("attributed_by").is_none(), "{folder}");
    }
    // Ukrainian, as in the test of the document.
    let design = record(&site, "design/1/");
    let text = design["subject_of"].as_array().unwrap().last().unwrap();
    let language = &text["language"][0]["id"];
    assert_eq!(*language, "http://vocab.getty.edu/aat/300389489");
    for folder in ["design/1/state-dark/", "impression/1.1/"] {
        let record = record(&site, folder);
        assert!(!texts(&record).contains(&ledger), "{folder}: {record}");
        let assigned = &record["attributed_by"][0];
        assert_eq!(assigned["assigned_property"], "subject_of");
        assert_eq!(assigned["assigned"][0]["id"], words);
        let name = &assigned["identified_by"][0]["content"];
        assert_eq!(*name, "What documents tell: probable");
        let said = &assigned["referred_to_by"][0]["content"];
        assert_eq!(*said, "One was dark (probable)");
    }
    // The other way round, of every document.
    let mut both_ways = 0;
    for (path, about) in records(&site) {
        for of in about["about"].as_array().into_iter().flatten() {
            let of = of["id"].as_str().unwrap().strip_prefix(base).unwrap();
            let of: Value = serde_json::from_slice(&site.files[of]).unwrap();
            let files = texts(&of).into_iter().flat_map(|(_, files)| files);
            assert!(files.into_iter().any(|file| file == about["id"]), "{path}");
            both_ways += 1;
        }
    }
    assert_eq!(both_ways, 3);
    // A state of which nothing is told has its place on the page alone.
    let moonlit = record(&site, "design/1/state-moonlit/");
    assert_eq!(moonlit["subject_of"].as_array().unwrap().len(), 1);
}
