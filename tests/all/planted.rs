//! Tests every declared text key and reference key of records, one at a time: a private owner's name planted
//! in a text is found there, and a reference to nothing is reported there.
//!
//! The cases are made from the declarations (`read::shape`): each is the smallest record that has the
//! key, put together from what the shapes require. A key that is declared and not searched, or not
//! followed, fails here.

use std::collections::BTreeSet;

use keyblock::audit::audit;
use keyblock::model::codes::Code;
use keyblock::model::finding::{Finding, Severity};
use keyblock::model::occurrence::DesignPart;
use keyblock::model::vocabulary::List;
use keyblock::read::shape::{
    CLAIM, COMPARISON, Holds, IMPRESSION, KeyShape, MARK, MapKeys, OBSERVED, PARTY, PICTURE, POINT,
    PROVENANCE, RECORDS, SERIES_PLACE, Shape, Shown, Takes, Target,
};
use keyblock::study::Studies;
use rayon::prelude::*;
use toml::{Table, Value};

use crate::small::lay_down;

/// The records to which the cases refer, and the private owner whose name is planted.
pub const BASE: &str = r#"
-- records/holders/owner-a.toml
name = "Moulsworth"
kind = "private"
-- records/holders/museum.toml
name = "Harbour Museum"
kind = "museum"
-- records/literature.bib
@book{list, title = {A List}, author = {Anonymous}, year = {1961}}
-- records/exhibitions.toml
[show]
title = "A show"
-- records/series/views.toml
title = "Harbour Views"
-- records/marks/studio-seal.toml
conditions = [{ key = "whole" }]
-- records/pages/thanks.md
# Thanks
-- records/designs/1/design.toml
titles = [{ text = "The Ferry" }]
matrices = [{ key = "line" }]
points = [{ key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" }]
states = [{ key = "dark" }]
printings = [{ key = "own", kind = "artist", states = "all" }]
variants = [{ key = "pale" }]
-- records/designs/1/impressions/1.toml
status = "located"
-- records/designs/1/impressions/2.toml
status = "located"
-- records/designs/1/pictures/1.jpg
Not opened by these tests.
-- records/designs/2/design.toml
titles = [{ text = "The Quay" }]
-- records/designs/2/pictures/1.jpg
Not opened by these tests.
-- records/documents/pictures/1.jpg
Not opened by these tests.
"#;

/// The private owner's name, which is planted in texts.
pub const NAME: &str = "Moulsworth";

/// A key that tells it.
const NAMED_KEY: &str = "by-moulsworth";

/// A key that no record has, which is planted in references.
const NOBODY: &str = "nobody-here";

/// The thing that is planted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Leaf {
    /// The name, in a text.
    Text(Shown),
    /// The name, in a key that the record defines.
    OwnKey,
    /// A reference to nothing, which this code reports.
    Reference(Code),
}

/// A value with something planted in it.
#[derive(Clone, Debug)]
struct Planted {
    /// The keys that lead to it, joined by points.
    path: String,
    leaf: Leaf,
    value: Value,
}

impl Planted {
    fn new(path: impl Into<String>, leaf: Leaf, value: impl Into<Value>) -> Planted {
        Planted {
            path: path.into(),
            leaf,
            value: value.into(),
        }
    }

    /// The same below a key, with the value that `wrap` makes of it.
    fn below(self, key: &str, wrap: impl FnOnce(Value) -> Value) -> Planted {
        let path = match (key, self.path.as_str()) {
            (key, "") => key.to_owned(),
            ("", path) => path.to_owned(),
            (key, path) => format!("{key}.{path}"),
        };
        Planted {
            path,
            leaf: self.leaf,
            value: wrap(self.value),
        }
    }
}

/// Every table of a shape with one thing planted in it. `around`: the shapes it stands in; one that
/// holds itself is entered twice.
fn tables(shape: &'static Shape, around: &[&'static Shape]) -> Vec<Planted> {
    let is_within = around.iter().filter(|s| std::ptr::eq(**s, shape)).count();
    if is_within > 1 {
        return Vec::new();
    }
    let mut around = around.to_vec();
    around.push(shape);
    let mut all = Vec::new();
    for key in shape.keys() {
        for planted in values(key, &key.takes, &around) {
            all.push(planted.below(key.name, |value| {
                let mut table = minimal(shape);
                table.insert(key.name.to_owned(), value);
                complete(shape, key, &mut table);
                table.into()
            }));
        }
    }
    if shape.open {
        let table = |name: &str, text: String| Table::from_iter([(name.to_owned(), text.into())]);
        let text = Leaf::Text(Shown::ToReaders);
        let said = table("Medium", format!("as {NAME} said"));
        all.push(Planted::new("Medium", text, said));
        let name = format!("After {NAME}");
        let named = table(&name, "A text".to_owned());
        all.push(Planted::new(name, text, named));
    }
    all
}

/// The smallest table of a shape: the keys that it requires, with values of the types that it requires.
fn minimal(shape: &'static Shape) -> Table {
    let required = shape.keys().filter(|key| key.required);
    required
        .map(|key| (key.name.to_owned(), sample(&key.takes)))
        .collect()
}

/// Adds what a table with `key` needs beside it, which no declaration of a single key says.
fn complete(shape: &'static Shape, key: &KeyShape, table: &mut Table) {
    let mut add = |name: &str, value: Value| {
        table.entry(name).or_insert(value);
    };
    if std::ptr::eq(shape, &raw const POINT) {
        let kind = match key.name {
            "values" => "choice",
            "stages" => "stage",
            "unit" | "tolerance" => "measure",
            _ => return,
        };
        if kind == "measure" {
            add("unit", "mm".into());
            add("tolerance", 2.0.into());
        }
        table.insert("kind".to_owned(), kind.into());
    } else if std::ptr::eq(shape, &raw const PROVENANCE) {
        if !["owner", "agent", "keeper"].contains(&key.name) {
            add("owner", "artist".into());
        }
    } else if std::ptr::eq(shape, &raw const MARK) {
        if key.name == "condition" {
            add("mark", "studio-seal".into());
        }
    } else if std::ptr::eq(shape, &raw const SERIES_PLACE) {
        if !["series", "name"].contains(&key.name) {
            add("name", "Night Pieces".into());
        }
    } else if std::ptr::eq(shape, &raw const OBSERVED) {
        if !["is", "not"].contains(&key.name) {
            add("is", "present".into());
        }
    } else if std::ptr::eq(shape, &raw const IMPRESSION) {
        if key.name == "part" {
            add("accession", "1962.44".into());
        }
    } else if shape.name == PICTURE.name {
        add("rights", "CC0-1.0".into());
    } else if std::ptr::eq(shape, &raw const COMPARISON)
        && let Some(Value::Array(of)) = table.get_mut("of")
    {
        // A comparison is of two impressions or more.
        of.extend([Value::from("1.1"), Value::from("1.2")]);
    }
}

/// Every value of a key with one thing planted in it.
fn values(key: &KeyShape, takes: &'static Takes, around: &[&'static Shape]) -> Vec<Planted> {
    let text = || {
        let text = Leaf::Text(key.shown);
        Planted::new("", text, format!("as {NAME} said"))
    };
    let refers = |code, to: &str| Planted::new("", Leaf::Reference(code), to);
    let one = |name: &'static str| move |value| Table::from_iter([(name.to_owned(), value)]).into();
    match takes {
        Takes::Text | Takes::TermOrWords(_) => vec![text()],
        Takes::Web => {
            let address = "https://Moulsworth.example.org";
            vec![Planted::new("", Leaf::Text(key.shown), address)]
        }
        Takes::TextByLanguage => vec![text(), text().below("de", one("de"))],
        Takes::TextsByLanguage => {
            let list = |value| Value::Array(vec![value]);
            vec![
                text(),
                text().below("", list),
                text().below("", list).below("de", one("de")),
            ]
        }
        Takes::Refers(target, _) => vec![reference(*target)],
        Takes::Part(part) => vec![refers(unknown_part(*part), NOBODY)],
        Takes::MarkCondition => vec![refers(Code::MarkConditionUnknown, NOBODY)],
        Takes::Theme => vec![refers(Code::ThemeUnknown, NOBODY)],
        Takes::Term(_) => vec![refers(Code::TermUnknown, NOBODY)],
        Takes::Link(_) => vec![refers(Code::DesignUnknown, "design:nobody-here")],
        Takes::EvidenceTarget(_) => vec![refers(Code::DesignUnknown, "printing:nobody-here/own")],
        Takes::HolderOrWords(_) => vec![text(), refers(Code::HolderUnknown, NOBODY)],
        Takes::Party(_) => {
            let mut all = tables(&PARTY, around);
            all.push(refers(Code::PartyUnknown, NOBODY));
            all
        }
        Takes::Observed => tables(&OBSERVED, around),
        Takes::StateReading => {
            let state = || refers(Code::StateUnknown, NOBODY);
            let matrix = Planted::new(NOBODY, Leaf::Reference(Code::MatrixUnknown), {
                Table::from_iter([(NOBODY.to_owned(), Value::from("dark"))])
            });
            vec![state(), state().below("line", one("line")), matrix]
        }
        Takes::StatesPrinted => vec![refers(Code::StateUnknown, NOBODY)],
        Takes::Several(inner) => {
            let list = |value| Value::Array(vec![value]);
            let inner = values(key, inner, around).into_iter();
            inner.map(|planted| planted.below("", list)).collect()
        }
        Takes::Statements(inner) => {
            let mut all = values(key, inner, around);
            for planted in values(key, inner, around) {
                all.push(planted.below("is", one("is")));
            }
            for claim in CLAIM {
                for planted in values(claim, &claim.takes, around) {
                    all.push(planted.below(claim.name, |value| {
                        let is = ("is".to_owned(), sample(inner));
                        Table::from_iter([is, (claim.name.to_owned(), value)]).into()
                    }));
                }
            }
            all
        }
        Takes::TextOrTables(shape) => {
            let mut all = tables(shape, around);
            all.push(text());
            all
        }
        Takes::Table(shape) => tables(shape, around),
        Takes::Tables(shape) => {
            let list = |value| Value::Array(vec![value]);
            let all = tables(shape, around).into_iter();
            all.map(|planted| planted.below("", list)).collect()
        }
        Takes::Map(keys, inner) => {
            let mut all: Vec<Planted> = values(key, inner, around)
                .into_iter()
                .map(|planted| {
                    let name = sample_key(*keys);
                    planted.below(name, one(name))
                })
                .collect();
            let of_key = |leaf, name: &str| {
                let table = Table::from_iter([(name.to_owned(), sample(inner))]);
                Planted::new(name, leaf, table)
            };
            all.extend(match keys {
                MapKeys::Headings => Some(of_key(Leaf::Text(key.shown), "After Moulsworth")),
                MapKeys::Points => Some(of_key(Leaf::Reference(Code::PointUnknown), NOBODY)),
                MapKeys::Matrices => Some(of_key(Leaf::Reference(Code::MatrixUnknown), NOBODY)),
                MapKeys::Values => Some(of_key(Leaf::OwnKey, NAMED_KEY)),
            });
            all
        }
        Takes::Flag
        | Takes::Publish
        | Takes::Whole(..)
        | Takes::Above0
        | Takes::From0
        | Takes::Either(_)
        | Takes::Fraction(_)
        | Takes::Date
        | Takes::Size
        | Takes::Box
        | Takes::Colour
        | Takes::Language
        | Takes::Country
        | Takes::Isil
        | Takes::File
        | Takes::Word(_)
        | Takes::Ties
        | Takes::PointValues => Vec::new(),
        Takes::OwnKey => vec![Planted::new("", Leaf::OwnKey, NAMED_KEY)],
    }
}

fn reference(target: Target) -> Planted {
    let (code, to) = match target {
        Target::Design => (Code::DesignUnknown, NOBODY),
        Target::Impression => (Code::ImpressionUnknown, "nobody-here.7"),
        Target::Picture => (Code::PictureUnknown, "nobody-here.7/recto"),
        Target::Holder => (Code::HolderUnknown, NOBODY),
        Target::Person => (Code::PersonUnknown, NOBODY),
        Target::Party => (Code::PartyUnknown, NOBODY),
        Target::Work => (Code::LiteratureUnknown, NOBODY),
        Target::Cited => (Code::DocumentUnknown, "document:nobody-here"),
        Target::Exhibition => (Code::ExhibitionUnknown, NOBODY),
        Target::Mark => (Code::MarkUnknown, NOBODY),
        Target::Series => (Code::SeriesUnknown, NOBODY),
        Target::Page => (Code::PageUnknown, NOBODY),
    };
    Planted::new("", Leaf::Reference(code), to)
}

fn unknown_part(part: DesignPart) -> Code {
    match part {
        DesignPart::Matrix => Code::MatrixUnknown,
        DesignPart::State => Code::StateUnknown,
        DesignPart::Printing => Code::PrintingUnknown,
        DesignPart::Variant => Code::VariantUnknown,
    }
}

/// A key of a table whose keys are not declared, as design 1 has it.
fn sample_key(keys: MapKeys) -> &'static str {
    match keys {
        MapKeys::Headings => "A heading",
        MapKeys::Points => "moon",
        MapKeys::Matrices => "line",
        MapKeys::Values => "even",
    }
}

/// A value that is sound in the base catalogue.
fn sample(takes: &'static Takes) -> Value {
    let table = |shape| Value::Table(minimal(shape));
    match takes {
        Takes::Text
        | Takes::TextByLanguage
        | Takes::TextsByLanguage
        | Takes::TermOrWords(_)
        | Takes::HolderOrWords(_)
        | Takes::TextOrTables(_) => "A text".into(),
        Takes::Flag | Takes::Publish => true.into(),
        Takes::Whole(least, _) => i64::from(*least).into(),
        Takes::Above0 => 2.0.into(),
        Takes::From0 => 0.into(),
        Takes::Either(all) => sample(&all[0]),
        Takes::Fraction(most) => (*most).into(),
        Takes::Date => "1927".into(),
        Takes::Size => vec![212, 301].into(),
        Takes::Box => vec![0, 0, 10, 10].into(),
        Takes::Colour => "#1f3a4d".into(),
        Takes::Language => "en".into(),
        Takes::Country => "NO".into(),
        Takes::Isil => "NO-0000001".into(),
        Takes::Web => "https://prints.example.org".into(),
        Takes::File => "pictures/1.jpg".into(),
        Takes::OwnKey => "a".into(),
        Takes::Word(words) => words()[0].into(),
        Takes::Term(list) => match list {
            List::Techniques => "woodcut",
            List::Papers => "laid-paper",
            List::Kinds => "proof",
            List::Transfers => "gift",
            List::Roles => "artist",
            List::Documents => "letter",
            List::Relations => "copy",
            List::Subjects => "night",
        }
        .into(),
        Takes::Refers(target, _) => match target {
            Target::Design => "1",
            Target::Impression => "1.1",
            Target::Picture => "1.1/recto",
            Target::Holder => "museum",
            Target::Person | Target::Party => "artist",
            Target::Work | Target::Cited => "list",
            Target::Exhibition => "show",
            Target::Mark => "studio-seal",
            Target::Series => "views",
            Target::Page => "thanks",
        }
        .into(),
        Takes::Part(part) => match part {
            DesignPart::Matrix => "line",
            DesignPart::State => "dark",
            DesignPart::Printing => "own",
            DesignPart::Variant => "pale",
        }
        .into(),
        Takes::MarkCondition => "whole".into(),
        Takes::Theme => "laid".into(),
        Takes::Link(_) | Takes::EvidenceTarget(_) => "design:1".into(),
        Takes::Party(_) => "artist".into(),
        Takes::Ties => Value::Array(Vec::new()),
        Takes::PointValues | Takes::Observed => "present".into(),
        Takes::StateReading => "dark".into(),
        Takes::StatesPrinted => "all".into(),
        Takes::Several(inner) => Value::Array(vec![sample(inner)]),
        Takes::Statements(inner) => sample(inner),
        Takes::Table(shape) => table(shape),
        Takes::Tables(shape) => Value::Array(vec![table(shape)]),
        Takes::Map(keys, inner) => {
            Table::from_iter([(sample_key(*keys).to_owned(), sample(inner))]).into()
        }
    }
}

/// The file of a kind of record in which things are planted.
fn file(kind: &str) -> &'static str {
    match kind {
        "catalogue" => "catalogue.toml",
        "design" => "records/designs/2/design.toml",
        "impression" => "records/designs/1/impressions/3.toml",
        "holder" => "records/holders/planted.toml",
        "person" => "records/people/planted.toml",
        "mark" => "records/marks/planted.toml",
        "document" => "records/documents/planted.toml",
        "series" => "records/series/planted.toml",
        "exhibitions" => "records/exhibitions.toml",
        // The page itself stands beside it.
        "page" => "records/pages/thanks.toml",
        "vocabulary" => "records/vocabulary/techniques.toml",
        other => panic!("no record of the kind {other} is planted in"),
    }
}

/// A catalogue with something planted in it.
pub struct Case {
    /// Where: the kind of record, then the keys.
    pub path: String,
    pub leaf: Leaf,
    pub file: &'static str,
    pub text: String,
}

/// Every case, in the order of the declarations.
pub fn cases() -> Vec<Case> {
    let mut all = Vec::new();
    for (kind, shape, holds) in RECORDS {
        for planted in tables(shape, &[]) {
            let planted = planted.below(kind, |value| value);
            let record = match holds {
                Holds::One => planted.value,
                Holds::ManyByKey => Table::from_iter([
                    ("planted".to_owned(), planted.value),
                    // The exhibition that other records refer to stands in the same file.
                    ("show".to_owned(), minimal(shape).into()),
                ])
                .into(),
            };
            all.push(Case {
                path: planted.path,
                leaf: planted.leaf,
                file: file(kind),
                text: toml::to_string(&record).unwrap(),
            });
        }
    }
    all
}

/// The errors of a catalogue with `text` as one of its files: code, and the words at the place.
fn errors(file: &str, text: &str) -> Vec<(Code, String, String)> {
    let folder = lay_down(&[BASE, &format!("-- {file}\n{text}")]);
    let reading = keyblock::read::read(folder.path());
    let catalogue = reading.catalogue;
    let studies = Studies::of(&catalogue);
    let mut findings: Vec<Finding> = reading.findings;
    findings.extend(audit(&catalogue, &studies));
    let errors = findings.iter().filter(|f| f.severity() == Severity::Error);
    let told = errors.map(|finding| {
        let place = finding.at.place;
        let words = catalogue.sources.text(place.file).get(place.span());
        (
            finding.code,
            catalogue.sources.path(place.file).to_owned(),
            words.unwrap_or_default().trim_matches('"').to_owned(),
        )
    });
    told.collect()
}

/// Runs the cases that `wanted` selects. `check` returns the fault of a case, if it has one.
fn run(
    wanted: impl Fn(&Case) -> bool + Sync,
    check: impl Fn(&Case) -> Option<String> + Sync,
) -> (usize, String) {
    let cases: Vec<Case> = cases().into_iter().filter(wanted).collect();
    let wrong: Vec<String> = cases
        .par_iter()
        .filter_map(|case| {
            let wrong = check(case)?;
            Some(format!("{}: {wrong}\n{}", case.path, case.text))
        })
        .collect();
    (cases.len(), wrong.join("\n"))
}

#[test]
fn a_private_name_is_found_in_every_text_that_records_declare() {
    let (count, wrong) = run(
        |case| case.leaf == Leaf::Text(Shown::ToReaders),
        |case| {
            let errors = errors(case.file, &case.text);
            let expected = (
                Code::PrivateNamePublished,
                case.file.to_owned(),
                NAME.to_owned(),
            );
            (errors != [expected]).then(|| format!("{errors:?}"))
        },
    );
    assert!(wrong.is_empty(), "{wrong}");
    assert!(count > 110, "only {count} texts");
}

#[test]
fn a_private_name_is_found_in_every_key_that_records_define() {
    let (count, wrong) = run(
        |case| case.leaf == Leaf::OwnKey,
        |case| {
            let errors = errors(case.file, &case.text);
            let expected = (
                Code::PrivateNamePublished,
                case.file.to_owned(),
                NAME.to_lowercase(),
            );
            let rest: Vec<_> = errors.iter().filter(|error| **error != expected).collect();
            (!errors.contains(&expected)).then(|| format!("{rest:?}"))
        },
    );
    assert!(wrong.is_empty(), "{wrong}");
    assert!(count > 8, "only {count} keys");
}

#[test]
fn a_text_that_is_listed_as_private_publishes_no_name() {
    let (count, wrong) = run(
        |case| case.leaf == Leaf::Text(Shown::ToReaders) && !case.path.contains("After "),
        |case| {
            let mut record: Value = toml::from_str(&case.text).unwrap();
            assert!(keep_private(&mut record), "{}", case.text);
            let text = toml::to_string(&record).unwrap();
            let errors = errors(case.file, &text);
            let is_published = |code: Code| code == Code::PrivateNamePublished;
            let published = errors.iter().any(|(code, ..)| is_published(*code));
            published.then(|| format!("{errors:?} with\n{text}"))
        },
    );
    assert!(wrong.is_empty(), "{wrong}");
    assert!(count > 110, "only {count} texts");
}

/// Lists the key whose value has the planted name as private, in its own table.
pub fn keep_private(value: &mut Value) -> bool {
    match value {
        Value::Table(table) => {
            let has_name = |value: &Value| match value {
                Value::String(text) => text.contains(NAME),
                Value::Array(list) => {
                    let mut texts = list.iter().filter_map(Value::as_str);
                    texts.any(|text| text.contains(NAME))
                }
                _ => false,
            };
            let key = table.iter().find(|(_, value)| has_name(value));
            if let Some(key) = key.map(|(key, _)| key.clone()) {
                table.insert("private".to_owned(), key.into());
                return true;
            }
            table.iter_mut().any(|(_, value)| keep_private(value))
        }
        Value::Array(list) => list.iter_mut().any(keep_private),
        _ => false,
    }
}

/// A text that is never shown is declared with the reason, and is not searched.
#[test]
fn a_text_that_is_declared_as_never_shown_may_hold_any_name() {
    let (_, wrong) = run(
        |case| matches!(case.leaf, Leaf::Text(Shown::Never(_))),
        |case| {
            let errors = errors(case.file, &case.text);
            let published = errors
                .iter()
                .any(|(code, ..)| *code == Code::PrivateNamePublished);
            published.then(|| format!("{errors:?}"))
        },
    );
    assert!(wrong.is_empty(), "{wrong}");
    let never: BTreeSet<String> = cases()
        .into_iter()
        .filter(|case| matches!(case.leaf, Leaf::Text(Shown::Never(_))))
        .map(|case| case.path)
        .filter(|path| !path.ends_with("private"))
        .collect();
    // A key that joins this list is one whose text no page and no file of the site shows.
    let settled = RECORDS
        .iter()
        .flat_map(|(kind, ..)| ["digest", "why"].map(|key| format!("{kind}.settled.{key}")));
    let expected: BTreeSet<String> = settled.chain(["design.sort".to_owned()]).collect();
    assert_eq!(never, expected);
}

#[test]
fn a_reference_to_nothing_is_reported_for_every_reference_that_records_declare() {
    let (count, wrong) = run(
        |case| matches!(case.leaf, Leaf::Reference(_)),
        |case| {
            let Leaf::Reference(expected) = case.leaf else {
                return None;
            };
            let errors = errors(case.file, &case.text);
            let is_it = |(code, file, words): &(Code, String, String)| {
                *code == expected && file == case.file && words.contains(NOBODY)
            };
            let only = errors.len() == 1 && errors.iter().all(is_it);
            (!only).then(|| format!("{expected:?}, not {errors:?}"))
        },
    );
    assert!(wrong.is_empty(), "{wrong}");
    assert!(count > 100, "only {count} references");
}

/// The cases are sound: without anything planted, no record of them has an error.
#[test]
fn the_smallest_record_of_every_kind_is_sound() {
    for (kind, shape, holds) in RECORDS {
        let record = minimal(shape);
        let record = match holds {
            Holds::One => record,
            Holds::ManyByKey => Table::from_iter([("show".to_owned(), record.into())]),
        };
        let errors = errors(file(kind), &toml::to_string(&record).unwrap());
        assert_eq!(errors, [], "{kind}");
    }
}
