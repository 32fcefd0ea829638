//! Shapes: the keys of each kind of record, declared once.
//!
//! The reader (`table`), the texts and references of each record (`references`), the JSON Schemas and
//! the commented templates follow these declarations. A key that is not declared cannot be read, and a
//! key that is declared must be read (checked in development builds by `Fields::finish`).
//!
//! A declaration also gives the role in which a reference mentions a record, the key of a citation's
//! locator, and whether readers see a text ([`Shown`]). A text that they never see is declared with the
//! reason. Every other text is searched for names that must not be published.
//!
//! In: nothing. Out: a [`Shape`] for each kind of record and each nested table; [`RECORDS`] lists the
//! kinds. Not here: what the values become (`values`, `records`).

mod as_found;
mod citation;
mod declare;
mod design;
mod document;
mod example;
mod impression;
mod mark;
mod matrix;
mod others;
mod picture;
mod point;
mod series;
mod series_place;
mod sheet;
mod sizes;
mod states;

pub use as_found::{AS_GIVEN, OTHER_ID};
pub use citation::SHEET_CITATION;
pub use declare::{
    CLAIM, KeyShape, MapKeys, PARTY, PRIVATE, SETTLED_DOUBT, STANDING, Shape, Shown, Takes, Target,
    WAS, words,
};
pub use design::{COMPARISON, DESIGN, MAKER, RELATED, TITLE};
pub use document::{DOCUMENT, TELLING};
pub use impression::{
    EXHIBITED, FORMER_ACCESSION, IDENTIFICATION, IMPRESSION, MARK, MAYBE_SAME_SHEET, OBSERVED,
    OPINION, OTHER_SHEET, PROVENANCE, SAME_SHEET, SIGHTING,
};

pub use mark::{MARK_CONDITION, MARK_RECORD, MARK_USER};
pub use matrix::{MATRIX, MATRIX_NOW};
pub use others::{
    CATALOGUE, CONSENT, EXHIBITION, FORMER_NAME, HOLDER, OTHER_NAME, PAGE, PERSON,
    PICTURE_DEFAULTS, PICTURES, PRIVACY, SUCCESSOR, TERM,
};
pub use picture::{DESIGN_PICTURE, PICTURE, PICTURE_OF_DOCUMENT};
pub use point::POINT;
pub use series::SERIES;
pub use series_place::SERIES_PLACE;
pub use sheet::{CONDITION_NOTE, SHEET, WATERMARK};
pub use sizes::SIZE;
pub use states::{PRINTING, STATE, VARIANT};

pub(crate) use declare::{FURTHER, STATEMENT, may, must, settleable, unpublished};
pub(crate) use others::consent_covers;

/// The kinds of record: the name of the schema, the shape, and whether a file is one record or holds
/// many by key (`exhibitions.toml`, a vocabulary).
pub static RECORDS: &[(&str, &Shape, Holds)] = &[
    ("catalogue", &CATALOGUE, Holds::One),
    ("design", &DESIGN, Holds::One),
    ("impression", &IMPRESSION, Holds::One),
    ("holder", &HOLDER, Holds::One),
    ("person", &PERSON, Holds::One),
    ("mark", &MARK_RECORD, Holds::One),
    ("document", &DOCUMENT, Holds::One),
    ("series", &SERIES, Holds::One),
    ("page", &PAGE, Holds::One),
    ("exhibitions", &EXHIBITION, Holds::ManyByKey),
    ("vocabulary", &TERM, Holds::ManyByKey),
];

/// Whether a file is one record or holds many.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Holds {
    /// The file is one record.
    One,
    /// Each table of the file is a record; its key is the table's name.
    ManyByKey,
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Every shape that occurs in a record, each once.
    fn all_shapes() -> Vec<&'static Shape> {
        fn visit(shape: &'static Shape, seen: &mut Vec<&'static Shape>) {
            if seen.iter().any(|s| std::ptr::eq(*s, shape)) {
                return;
            }
            seen.push(shape);
            for key in shape.keys() {
                visit_takes(&key.takes, seen);
            }
        }
        fn visit_takes(takes: &'static Takes, seen: &mut Vec<&'static Shape>) {
            match takes {
                Takes::Table(shape) | Takes::Tables(shape) | Takes::TextOrTables(shape) => {
                    visit(shape, seen);
                }
                Takes::Several(inner) | Takes::Statements(inner) | Takes::Map(_, inner) => {
                    visit_takes(inner, seen);
                }
                Takes::Observed => visit(&OBSERVED, seen),
                Takes::Party(_) => visit(&PARTY, seen),
                _ => {}
            }
        }
        let mut seen = Vec::new();
        for (_, shape, _) in RECORDS {
            visit(shape, &mut seen);
        }
        seen
    }

    #[test]
    fn no_table_declares_a_key_twice() {
        for shape in all_shapes() {
            let mut names: Vec<_> = shape.keys().map(|k| k.name).collect();
            names.sort_unstable();
            let all = names.len();
            names.dedup();
            assert_eq!(names.len(), all, "{} declares a key twice", shape.name);
        }
    }

    /// Help shows examples of tables, so each must be one that can be read: valid TOML, with the keys that the table must
    /// have, and no other that it does not take.
    #[test]
    fn the_example_of_every_table_has_its_required_keys() {
        for shape in all_shapes() {
            let example = shape.example();
            let parsed: toml::Table = toml::from_str(&format!("a = {example}")).unwrap();
            let table = parsed["a"].as_table().unwrap();
            assert!(!table.is_empty(), "{}: {example}", shape.name);
            for key in table.keys() {
                assert!(shape.key(key).is_some(), "{}: {example}", shape.name);
            }
            let required = shape.keys().filter(|key| key.required).take(3);
            for key in required {
                assert!(table.contains_key(key.name), "{}: {example}", shape.name);
            }
        }
        assert_eq!(SAME_SHEET.example(), "{ impression = \"14.7\" }");
    }

    #[test]
    fn every_key_has_a_line_of_help() {
        for shape in all_shapes() {
            for key in shape.keys() {
                assert!(!key.help.is_empty(), "{}.{}", shape.name, key.name);
                assert!(!key.help.contains('\n'), "{}.{}", shape.name, key.name);
            }
        }
    }

    #[test]
    fn a_locator_is_a_text_of_the_same_table() {
        for shape in all_shapes() {
            for key in shape.keys() {
                if let Some(locator) = key.locator {
                    let declared = shape.key(locator).map(|key| &key.takes);
                    let name = (shape.name, key.name);
                    assert!(matches!(declared, Some(Takes::Text)), "{name:?}");
                }
            }
        }
    }

    /// Without these a record cannot be identified, named or counted.
    #[test]
    fn what_is_required_is_what_the_design_requires() {
        let required = |shape: &Shape| -> Vec<_> {
            shape
                .keys()
                .filter(|k| k.required)
                .map(|k| k.name)
                .collect()
        };
        assert_eq!(
            required(&CATALOGUE),
            ["title", "siglum", "artist", "language", "address"]
        );
        assert_eq!(required(&DESIGN), ["titles"]);
        for shape in [&MATRIX, &STATE, &VARIANT] {
            assert_eq!(required(shape), ["key"], "{}", shape.name);
        }
        assert_eq!(required(&PRINTING), ["key"]);
        assert_eq!(required(&POINT), ["key", "ask", "kind", "rests_on"]);
        assert_eq!(required(&IMPRESSION), ["status"]);
        // Its rights may be those of its holder or of the catalogue.
        assert_eq!(required(&PICTURE), ["file"]);
        assert_eq!(required(&OTHER_ID), ["scheme", "id"]);
        assert_eq!(required(&SIGHTING), ["date"]);
        assert_eq!(required(&HOLDER), ["name", "kind"]);
        assert_eq!(required(&PERSON), ["name"]);
        assert_eq!(required(&EXHIBITION), ["title"]);
        assert!(required(&DOCUMENT).is_empty());
        assert!(required(&SERIES).is_empty());
        assert!(required(&SERIES_PLACE).is_empty());
        assert_eq!(required(&TELLING), ["of", "says"]);
    }
}
