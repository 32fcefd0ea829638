//! The JSON Schemas of the files that editors correct in an intake: those in `docs/schemas` are the present ones, what intake
//! writes passes them, and so does what an editor may write; a slip does not. Judged by the crate `jsonschema`.

use std::fs;
use std::path::Path;

use jsonschema::Validator;
use keyblock::exchange::intake::schemas;
use serde_json::Value;

use crate::intake::{catalogue, hand_in, inbox, intake, museum};
use crate::program::text;

/// The validator of a file: "columns", "values", "designs".
fn validator(file: &str) -> Validator {
    let name = format!("intake-{file}");
    let mut all = schemas::files().into_iter();
    let (_, schema) = all.find(|(known, _)| *known == name).unwrap();
    jsonschema::validator_for(&schema).unwrap()
}

fn faults(validator: &Validator, toml: &str) -> Vec<String> {
    let table: toml::Table = toml.parse().unwrap();
    let value: Value = serde_json::to_value(table).unwrap();
    let faults = validator.iter_errors(&value);
    faults
        .map(|fault| format!("{}: {fault}", fault.instance_path()))
        .collect()
}

/// `KEYBLOCK_BLESS=1 cargo test --test all intake_schemas::` writes them anew.
#[test]
fn the_schemas_that_are_shown_are_the_present_ones() {
    for (name, schema) in schemas::files() {
        assert!(jsonschema::meta::is_valid(&schema), "{name}");
        let path =
            Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("docs/schemas/{name}.schema.json"));
        let present = format!("{schema:#}\n");
        if std::env::var_os("KEYBLOCK_BLESS").is_some() {
            fs::write(&path, &present).unwrap();
        }
        let shown = fs::read_to_string(&path).unwrap_or_default();
        assert!(
            shown == present,
            "{} is not the present schema",
            path.display()
        );
    }
}

#[test]
fn what_intake_writes_passes() {
    for handed_in in [
        None,
        Some("lindenmark.xlsx"),
        Some("holmsted.xml"),
        Some("list.csv"),
    ] {
        let catalogue = catalogue();
        let ran = match handed_in {
            None => museum(catalogue.path(), &[]),
            Some(name) => {
                let from = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/intake");
                let bytes = fs::read(from.join(name)).unwrap();
                let file = hand_in(catalogue.path(), name, bytes);
                intake(catalogue.path(), &[text(&file), "--as", "museum"])
            }
        };
        assert_eq!(ran.code, Some(0), "{handed_in:?}: {}", ran.err);
        for file in ["columns", "values", "designs"] {
            let written = inbox(catalogue.path(), &format!("{file}.toml"));
            let faults = faults(&validator(file), &written);
            assert!(faults.is_empty(), "{handed_in:?}: {file}.toml: {faults:?}");
        }
    }
}

/// What the readers take beside what the program writes.
#[test]
fn what_an_editor_may_write_passes() {
    for (file, written) in [
        ("columns", ""),
        ("columns", "holder = \"museum\"\nseen = \"2026-01~\"\n"),
        (
            "columns",
            "[[columns]]\nheading = \"\"\nholds = \"title\"\nsure = \"by-hand\"\n",
        ),
        (
            "values",
            &reads("created = [\"1912~\", \"later\"], printed = \"not-known\""),
        ),
        ("values", &reads("sheet = [241, 178]")),
        (
            "values",
            &reads("sheet = [[241, 178], { size = [24.5, 17], within = [0.5, 0] }]"),
        ),
        (
            "values",
            &reads("image = { size = [241, 178], within = 1, sight = true }"),
        ),
        (
            "values",
            &reads("technique = \"woodcut\", makers = [{ name = \"A. B.\", role = \"carver\" }]"),
        ),
        ("designs", "leave_out = \"1962.44\"\n"),
        (
            "designs",
            "[[designs]]\nis = [\"14\", \"15\"]\nsheets = [\"row 7\"]\nsettled = true\n",
        ),
    ] {
        let faults = faults(&validator(file), written);
        assert!(faults.is_empty(), "{written}: {faults:?}");
    }
}

#[test]
fn a_slip_does_not_pass() {
    for (file, written) in [
        (
            "columns",
            "[[columns]]\nheading = \"A\"\nholds = \"nothing-known\"\n",
        ),
        ("columns", "[[columns]]\nholds = \"title\"\n"),
        ("columns", "house = \"museum\"\n"),
        (
            "values",
            "[[columns]]\nheading = \"A\"\nholds = \"title\"\n[[columns.values]]\nis = \" \"\n",
        ),
        ("values", &reads("created = \"about 1912\"")),
        ("values", &reads("sheet = [241]")),
        (
            "values",
            &reads("image = { size = [241, 178], within = -1 }"),
        ),
        ("values", &reads("nosuch = \"a\"")),
        ("designs", "[[designs]]\nsheets = [\"row 7\"]\n"),
        ("designs", "[[designs]]\nis = \"new\"\nsettled = \"yes\"\n"),
        ("designs", "[[design]]\nis = \"new\"\n"),
    ] {
        assert!(!faults(&validator(file), written).is_empty(), "{written}");
    }
}

/// `values.toml` with one value that reads so.
fn reads(table: &str) -> String {
    format!(
        "[[columns]]\nheading = \"A\"\nholds = \"date\"\n[[columns.values]]\nis = \"a\"\nreads = {{ {table} }}\n"
    )
}
