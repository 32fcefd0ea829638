//! The schemas with which editors check, and the templates that `keyblock start` creates.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::LazyLock;

use jsonschema::Validator;
use keyblock::read::shape::{
    CLAIM, Holds, OBSERVED, PRIVATE, RECORDS, STANDING, Shape, Takes, WAS,
};
use keyblock::read::{schema, start_files};
use serde_json::Value;

#[test]
fn every_record_of_the_example_passes_its_schema() {
    let example = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/example-catalogue");
    let mut checked = BTreeSet::new();
    for path in toml_files(&example) {
        let relative = path
            .strip_prefix(&example)
            .unwrap()
            .to_string_lossy()
            .into_owned();
        let kind = kind_of(&relative);
        let faults = faults(kind, &fs::read_to_string(&path).unwrap());
        assert!(faults.is_empty(), "{relative}: {faults:?}");
        checked.insert(kind);
    }
    let all = [
        "catalogue",
        "design",
        "exhibitions",
        "holder",
        "impression",
        "person",
    ];
    assert_eq!(checked.into_iter().collect::<Vec<_>>(), all);
}

/// Each faulty record differs from a sound one in one thing.
#[test]
fn a_schema_refuses_what_the_reader_refuses() {
    let sound = [
        (
            "catalogue",
            "title=\"A\"\nsiglum=\"A\"\nartist=\"a\"\nlanguage=\"en\"\naddress=\"https://a.example\"",
        ),
        ("design", "titles=[{text=\"A\"}]"),
        ("impression", "status=\"located\""),
        ("holder", "name=\"A\"\nkind=\"museum\""),
        ("person", "name=\"A\""),
        ("exhibitions", "[a]\ntitle=\"A\""),
        ("vocabulary", "[a]\nlabel=\"A\""),
    ];
    for (kind, record) in sound {
        assert_eq!(faults(kind, record), Vec::<String>::new(), "{kind}");
        // Unknown and missing keys, in every kind.
        assert_ne!(
            faults(kind, &format!("{record}\nnosuch=1")),
            Vec::<String>::new(),
            "{kind}"
        );
    }
    for kind in ["catalogue", "design", "impression", "holder", "person"] {
        assert_ne!(faults(kind, ""), Vec::<String>::new(), "{kind}");
    }
    for (kind, broken) in [
        ("exhibitions", "[a]\nplace=\"A\""),
        ("exhibitions", "[A]\ntitle=\"A\""),
        ("vocabulary", "[a]\nnote=\"A\""),
        ("vocabulary", "[a]\nlabel=\"A\"\naat=\"300041405\""),
    ] {
        assert_ne!(
            faults(kind, broken),
            Vec::<String>::new(),
            "{kind}: {broken}"
        );
    }
    let broken_beside = [
        ("catalogue", "ink=\"blue\""),
        ("catalogue", "dated=2026"),
        ("catalogue", "[pictures]\nquality=101"),
        ("design", "date=1927"),
        ("design", "date=\"c. 1927\""),
        ("design", "size={image=[212]}"),
        ("design", "size={image=[0,301]}"),
        (
            "design",
            "points=[{key=\"a\",ask=\"?\",kind=\"choice\",rests_on=\"matrix\"}]",
        ),
        (
            "design",
            "points=[{key=\"a\",ask=\"?\",kind=\"count\",rests_on=\"wall\"}]",
        ),
        ("design", "states=[{key=\"A state\"}]"),
        ("design", "printings=[{kind=\"artist\"}]"),
        ("design", "series=[{position=\"1\"}]"),
        ("design", "series={series=\"quays\",name=\"The Quays\"}"),
        (
            "design",
            "points=[{key=\"a\",ask=\"?\",kind=\"count\",rests_on=\"matrix\",strays=0.6}]",
        ),
        ("design", "reference_picture=\"14.1\""),
        ("impression", "holder=\"Harbour Museum\""),
        ("impression", "identified={state={key=2}}"),
        ("impression", "identified={or=[{certainty=\"sure\"}]}"),
        ("impression", "observed={moon={seen=\"present\"}}"),
        ("impression", "provenance=[{owner=\"a\",agent=\"b\"}]"),
        ("impression", "provenance=[{from=\"1962\"}]"),
        (
            "impression",
            "pictures=[{file=\"/etc/a.jpg\",rights=\"x\"}]",
        ),
        ("impression", "pictures=[{rights=\"x\"}]"),
        ("impression", "as_given={Medium=5}"),
        ("impression", "ids=[{id=\"UC 1\"}]"),
        ("impression", "sightings=[{by=\"editor\"}]"),
        ("holder", "country=\"Norway\""),
        ("holder", "isil=\"NO0000001\""),
        ("holder", "web=\"javascript:alert\""),
        ("person", "born=1903"),
    ];
    for (kind, line) in broken_beside {
        let (_, record) = sound.iter().find(|(name, _)| *name == kind).unwrap();
        let record = format!("{record}\n{line}");
        assert_ne!(
            faults(kind, &record),
            Vec::<String>::new(),
            "{kind}: {line}"
        );
    }
}

/// A date that the reader takes must pass the looser pattern of the schema: every date of the
/// published table (`tests/checks/edtf.csv`) does.
#[test]
fn a_schema_takes_every_date_that_the_reader_takes() {
    let table = include_str!("../checks/edtf.csv");
    for row in table.lines().skip(2) {
        let date = match row.strip_prefix('"') {
            Some(quoted) => quoted.split('"').next().unwrap(),
            None => row.split(',').next().unwrap(),
        };
        let record = format!("titles=[{{text=\"A\"}}]\ndate=\"{date}\"");
        assert_eq!(faults("design", &record), Vec::<String>::new(), "{date}");
    }
}

#[test]
fn every_template_names_its_schema_and_passes_it_as_it_stands_and_with_every_key_in_use() {
    let files = start_files();
    let schemas: BTreeSet<&str> = files
        .iter()
        .filter(|(path, _)| path.starts_with("schema/"))
        .map(|(path, _)| path.as_str())
        .collect();
    let mut templates = 0;
    for (path, text) in toml_templates(&files) {
        let first = text.lines().next().unwrap();
        let leads_to = first
            .strip_prefix("#:schema ")
            .unwrap_or_else(|| panic!("{path}: {first}"));
        let up = path.matches('/').count();
        let expected = if up == 0 {
            "./".to_owned()
        } else {
            "../".repeat(up)
        };
        let schema = leads_to
            .strip_prefix(&expected)
            .unwrap_or_else(|| panic!("{path}: {leads_to}"));
        assert!(schemas.contains(schema), "{path} leads to {schema}");
        assert_eq!(
            schema,
            format!("schema/{}.schema.json", kind_of(&path)),
            "{path}"
        );
        for text in [text.clone(), with_every_key(&text)] {
            let found = faults(kind_of(&path), &text);
            assert!(found.is_empty(), "{path}: {found:?}");
        }
        templates += 1;
    }
    assert_eq!(templates, 12);
}

#[test]
fn every_key_of_every_record_stands_in_a_template() {
    let mut met = BTreeSet::new();
    for (path, text) in toml_templates(&start_files()) {
        let record: toml::Table = with_every_key(&text).parse().unwrap();
        let (_, shape, holds) = RECORDS
            .iter()
            .find(|(name, ..)| *name == kind_of(&path))
            .unwrap();
        match holds {
            Holds::One => meet(shape, &record, &mut met),
            Holds::ManyByKey => {
                for record in record.values().filter_map(toml::Value::as_table) {
                    meet(shape, record, &mut met);
                }
            }
        }
    }
    let mut missing = Vec::new();
    for shape in all_shapes() {
        // `was` is a key that many tables share.
        for key in shape.own.iter().filter(|key| key.name != "was") {
            if !met.contains(&(shape.name, key.name)) {
                missing.push(format!("{}: {}", shape.name, key.name));
            }
        }
    }
    // The keys that many tables share need an example each, not one a table.
    for key in CLAIM.iter().chain(STANDING).chain([&PRIVATE, &WAS]) {
        if !met.iter().any(|(_, name)| *name == key.name) {
            missing.push(key.name.to_owned());
        }
    }
    assert!(missing.is_empty(), "no template shows {missing:#?}");
}

/// The errors of a record by its schema.
fn faults(kind: &str, record: &str) -> Vec<String> {
    let table: toml::Table = match record.parse() {
        Ok(table) => table,
        Err(fault) => return vec![fault.to_string()],
    };
    let value: Value = serde_json::to_value(table).unwrap();
    VALIDATORS[kind]
        .iter_errors(&value)
        .map(|fault| format!("{}: {fault}", fault.instance_path()))
        .collect()
}

/// The validators of all kinds; making one takes a while without optimisation.
static VALIDATORS: LazyLock<BTreeMap<&str, Validator>> = LazyLock::new(|| {
    let validator = |kind| jsonschema::validator_for(&schema::of_record(kind).unwrap()).unwrap();
    RECORDS
        .iter()
        .map(|(kind, ..)| (*kind, validator(kind)))
        .collect()
});

/// Which kind of record a file is, by its place.
fn kind_of(path: &str) -> &'static str {
    let parts: Vec<&str> = path.split('/').collect();
    match parts.as_slice() {
        ["catalogue.toml"] => "catalogue",
        [_, "exhibitions.toml"] => "exhibitions",
        [.., "design.toml"] => "design",
        [.., "impressions", _] => "impression",
        [_, "holders", _] => "holder",
        [_, "people", _] => "person",
        [_, "marks", _] => "mark",
        [_, "documents", _] => "document",
        [_, "series", _] => "series",
        [_, "pages", _] => "page",
        [_, "vocabulary", _] => "vocabulary",
        _ => panic!("{path} is no record"),
    }
}

fn toml_files(dir: &Path) -> Vec<PathBuf> {
    let mut files = Vec::new();
    for entry in fs::read_dir(dir).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            files.extend(toml_files(&path));
        } else if path
            .extension()
            .is_some_and(|extension| extension == "toml")
        {
            files.push(path);
        }
    }
    files
}

fn toml_templates(files: &[(String, Vec<u8>)]) -> Vec<(String, String)> {
    let is_record = |path: &str| {
        Path::new(path)
            .extension()
            .is_some_and(|extension| extension == "toml")
    };
    let text = |bytes: &[u8]| String::from_utf8(bytes.to_vec()).unwrap();
    files
        .iter()
        .filter(|(path, _)| is_record(path))
        .map(|(path, bytes)| (path.clone(), text(bytes)))
        .collect()
}

/// A template with its unused keys put to use: those that begin with `#` and no space.
fn with_every_key(template: &str) -> String {
    let used = |line: &str| {
        let indent = line.len() - line.trim_start().len();
        match line.trim_start().strip_prefix('#') {
            Some(rest) if !rest.starts_with([' ', ':']) && !rest.is_empty() => {
                format!("{}{rest}\n", &line[..indent])
            }
            _ => format!("{line}\n"),
        }
    };
    template.lines().map(used).collect()
}

/// Notes which keys of which tables a record uses, down to the last table.
fn meet(
    shape: &'static Shape,
    record: &toml::Table,
    met: &mut BTreeSet<(&'static str, &'static str)>,
) {
    for key in shape.keys() {
        if let Some(value) = record.get(key.name) {
            met.insert((shape.name, key.name));
            meet_value(&key.takes, value, met);
        }
    }
}

fn meet_value(
    takes: &'static Takes,
    value: &toml::Value,
    met: &mut BTreeSet<(&'static str, &'static str)>,
) {
    match (takes, value) {
        (Takes::Table(shape) | Takes::Tables(shape), toml::Value::Table(table)) => {
            meet(shape, table, met);
        }
        (Takes::Tables(_), toml::Value::Array(list)) => {
            for value in list {
                meet_value(takes, value, met);
            }
        }
        (Takes::Map(_, inner), toml::Value::Table(table)) => {
            for value in table.values() {
                meet_value(inner, value, met);
            }
        }
        (Takes::Observed, toml::Value::Table(table)) => meet(&OBSERVED, table, met),
        _ => {}
    }
}

fn all_shapes() -> Vec<&'static Shape> {
    let mut shapes: Vec<&'static Shape> = RECORDS.iter().map(|(_, shape, _)| *shape).collect();
    let mut next = 0;
    while let Some(shape) = shapes.get(next) {
        next += 1;
        for key in shape.keys() {
            let inner = match &key.takes {
                Takes::Map(_, inner) => *inner,
                takes => takes,
            };
            let table = match inner {
                Takes::Table(shape) | Takes::Tables(shape) => *shape,
                Takes::Observed => &OBSERVED,
                _ => continue,
            };
            if !shapes.iter().any(|known| std::ptr::eq(*known, table)) {
                shapes.push(table);
            }
        }
    }
    shapes
}
