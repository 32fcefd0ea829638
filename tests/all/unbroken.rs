//! Two catalogues in which every text that records declare is planted, one after the other: 300 signs
//! without a break, by which no page may be widened, and words in Hebrew, which may not reorder what stands
//! around them.
//!
//! The tests write them to the folder that `KEYBLOCK_MADE` names; `tests/browser/unbroken.test.mjs` and
//! `tests/browser/direction.test.mjs` open each of their pages.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::fs;
use std::path::Path;

use keyblock::model::finding::Severity;
use keyblock::read::shape::Shown;
use toml::{Table, Value};

use crate::findings::judged;
use crate::planted::{BASE, Case, Leaf, NAME, cases};
use crate::small::lay_down;

/// The files of the catalogue, by path.
fn files() -> BTreeMap<String, String> {
    let mut files = BTreeMap::new();
    let mut merged: BTreeMap<&str, Table> = BTreeMap::new();
    let texts = cases().into_iter();
    let texts = texts.filter(|case| case.leaf == Leaf::Text(Shown::ToReaders));
    for (n, case) in texts.enumerate() {
        let mut record: Table = toml::from_str(&case.text).unwrap();
        for (_, value) in &mut record {
            stretch(value);
        }
        rename_keys(&mut record);
        let Some(path) = path(&case, n) else {
            // These files hold many records, or there is only one of them.
            let planted = record.remove("planted");
            if let Some(planted) = planted {
                record.insert(format!("planted-{n}"), planted);
            }
            merge(merged.entry(case.file).or_default(), record);
            continue;
        };
        files.insert(path, toml::to_string(&record).unwrap());
    }
    for (path, record) in merged {
        files.insert(path.to_owned(), toml::to_string(&record).unwrap());
    }
    let long = long();
    let note = format!(
        "# {long}\n\n{long}\n\n- {long}\n\n> {long}\n\n`{long}`\n\n    {long}\n\n\
         | {long} | b |\n|---|---|\n| {long} | b |\n\n\
         [{long}](https://prints.example.org/{long}) and <https://prints.example.org/{long}>[^1]\n\n\
         ![{long}](picture:1.1/recto)\n\n[^1]: {long}\n\n{long}\n: {long}\n"
    );
    for path in [
        "records/designs/1/design.md",
        "records/designs/1/impressions/1.md",
        "records/holders/museum.md",
        "records/people/artist.md",
        "records/pages/introduction.md",
        "records/pages/cite.md",
    ] {
        files.insert(path.to_owned(), note.clone());
    }
    files.insert("records/designs/1/design.toml".to_owned(), design(&long));
    for n in 1..=3 {
        let sheet = format!(
            "status = \"located\"\nholder = \"museum\"\naccession = \"{long}\"\ncondition = \"{long}\"\n\
             identified = {{ state = \"{}\", printing = \"own\", why = \"{long}\" }}\n\
             observed = {{ moon = \"{}\", sky = \"even\" }}\n\
             [[pictures]]\nfile = \"pictures/1.jpg\"\nrights = \"{long}\"\ncredit = \"{long}\"\n",
            ["dark", "lit", "dark"][n - 1],
            ["absent", "present", "absent"][n - 1],
        );
        files.insert(format!("records/designs/1/impressions/{n}.toml"), sheet);
    }
    let fields = ["author", "title", "publisher", "address", "note", "pages"];
    let fields = fields.map(|field| format!("  {field} = {{{long}}},\n"));
    let url = format!("  url = {{https://prints.example.org/{long}}},\n");
    let book = format!(
        "@book{{list, year = {{1961}},\n{}{url}}}\n",
        fields.concat()
    );
    files.insert("records/literature.bib".to_owned(), book);
    files
}

/// 300 signs without a place to break.
fn long() -> String {
    "Unbroken".repeat(38)[..300].to_owned()
}

/// A design with two states, so that it has a key, comparisons and a diagram.
fn design(long: &str) -> String {
    let mut record = format!(
        "titles = [{{ text = \"{long}\" }}, {{ text = \"{long}\", lang = \"de\" }}]\n\
         reference_picture = \"1.1/recto\"\nmatrices = [{{ key = \"line\", carries = \"{long}\" }}]\n\
         variants = [{{ key = \"pale\", summary = \"{long}\" }}]\n\
         printings = [{{ key = \"own\", name = \"{long}\", kind = \"artist\", states = \"all\" }}]\n\
         series = {{ name = \"{long}\", position = \"{long}\" }}\n\
         points = [\n\
         {{ key = \"moon\", ask = \"{long}\", kind = \"presence\", rests_on = \"matrix\", box = [1, 1, 50, 50] }},\n\
         {{ key = \"sky\", ask = \"{long}\", kind = \"choice\", rests_on = \"inking\", \
         values = {{ even = \"{long}\", wiped = \"{long}\" }} }},\n]\nstates = [\n"
    );
    for (key, moon, follows) in [
        ("dark", "absent", ""),
        ("lit", "present", "follows = [\"dark\"], "),
    ] {
        writeln!(
            record,
            "{{ key = \"{key}\", {follows}summary = \"{long}\", shows = {{ moon = \"{moon}\" }} }},"
        )
        .unwrap();
    }
    record + "]\n"
}

/// The file of a case's own; `None` where it shares one with others.
fn path(case: &Case, n: usize) -> Option<String> {
    match case.file {
        "catalogue.toml" | "records/exhibitions.toml" | "records/vocabulary/techniques.toml" => {
            None
        }
        "records/designs/2/design.toml" => Some(format!("records/designs/u{n}/design.toml")),
        "records/designs/1/impressions/3.toml" => {
            Some(format!("records/designs/1/impressions/{}.toml", n + 10))
        }
        of_party => Some(of_party.replace("planted", &format!("planted-{n}"))),
    }
}

/// Puts the long text into every value with the planted name.
fn stretch(value: &mut Value) {
    match value {
        Value::String(text) if text.starts_with("https:") && text.contains(NAME) => {
            *text = format!("https://prints.example.org/{}", long());
        }
        Value::String(text) if text.contains(NAME) => *text = long(),
        Value::Array(list) => list.iter_mut().for_each(stretch),
        Value::Table(table) => {
            for (_, value) in &mut *table {
                stretch(value);
            }
            rename_keys(table);
        }
        _ => {}
    }
}

/// Puts the long text into every key with the planted name: a heading that the catalogue chooses.
fn rename_keys(table: &mut Table) {
    let planted: Vec<String> = table
        .keys()
        .filter(|key| key.contains(NAME))
        .cloned()
        .collect();
    for key in planted {
        if let Some(value) = table.remove(&key) {
            table.insert(long(), value);
        }
    }
}

/// Adds the keys of a record to another of the same kind.
fn merge(into: &mut Table, from: Table) {
    for (key, value) in from {
        match (into.get_mut(&key), value) {
            (Some(Value::Table(into)), Value::Table(from)) => merge(into, from),
            (Some(Value::Array(into)), Value::Array(from)) => into.extend(from),
            (Some(known), value) if value.to_string().contains("Unbroken") => *known = value,
            (Some(_), _) => {}
            (None, value) => {
                into.insert(key, value);
            }
        }
    }
}

/// The same catalogue with words in Hebrew in place of each unbroken text.
fn in_hebrew(files: &BTreeMap<String, String>) -> BTreeMap<String, String> {
    let long = long();
    let hebrew = |text: &String| {
        let text = text.replace(&format!(".example.org/{long}"), ".example.org/a");
        // A key that TOML takes without quotes, alone and in a header.
        let text = text.replace(&format!("\n{long} ="), &format!("\n\"{HEBREW}\" ="));
        let text = match text.strip_prefix(&format!("{long} =")) {
            Some(rest) => format!("\"{HEBREW}\" ={rest}"),
            None => text,
        };
        text.replace(&long, HEBREW)
    };
    files
        .iter()
        .map(|(path, text)| (path.clone(), hebrew(text)))
        .collect()
}

/// "Peace, world", with a comma, digits and brackets, whose places depend on the direction.
const HEBREW: &str = "\u{5e9}\u{5dc}\u{5d5}\u{5dd}, \u{5e2}\u{5d5}\u{5dc}\u{5dd} (12)";

/// Lays a catalogue down, judges it, and copies it to the folder `name` of those that were asked for.
fn publish(name: &str, files: &BTreeMap<String, String>, sign: &str) {
    let folder = lay_down(&[BASE]);
    for (path, text) in files {
        let path = folder.path().join(path);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, text).unwrap();
    }
    let designs = fs::read_dir(folder.path().join("records/designs")).unwrap();
    let owners = designs
        .map(|design| design.unwrap().path())
        .chain([folder.path().join("records/documents")]);
    for owner in owners {
        let pictures = owner.join("pictures");
        fs::create_dir_all(&pictures).unwrap();
        image::RgbImage::new(24, 18)
            .save(pictures.join("1.jpg"))
            .unwrap();
    }
    let judged = judged(folder.path());
    let errors = judged
        .findings
        .iter()
        .filter(|f| f.severity() == Severity::Error);
    let told = errors.map(|finding| {
        let path = judged.catalogue.sources.path(finding.at.place.file);
        format!(
            "{path}: {}",
            finding.message.chars().take(200).collect::<String>()
        )
    });
    let errors: Vec<String> = told.collect();
    assert!(errors.is_empty(), "{errors:#?}");
    let occurrences = judged.catalogue.occurrences.values();
    let texts = occurrences.flat_map(|record| &record.texts);
    let planted = texts.filter(|text| text.words(&judged.catalogue.sources).contains(sign));
    let count = planted.count();
    assert!(count > 120, "only {count} texts are planted");
    if let Some(to) = std::env::var_os("KEYBLOCK_MADE") {
        let to = Path::new(&to).join(name);
        let _ = fs::remove_dir_all(&to);
        for file in crate::program::files_below(folder.path()) {
            let copy = to.join(file.strip_prefix(folder.path()).unwrap());
            fs::create_dir_all(copy.parent().unwrap()).unwrap();
            fs::copy(file, copy).unwrap();
        }
    }
}

#[test]
fn a_catalogue_of_unbroken_texts_can_be_published() {
    publish("unbroken", &files(), &long());
}

#[test]
fn a_catalogue_in_hebrew_can_be_published() {
    publish("hebrew", &in_hebrew(&files()), HEBREW);
}
