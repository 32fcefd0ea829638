//! JSON Schemas of the records, with which editors complete and check records as they are written.
//!
//! In: the shapes. Out: one schema (draft 2020-12) for each kind of record, written by `keyblock start`.
//! A schema states what can be checked in one file. `keyblock audit` checks what depends on other files,
//! such as whether a holder exists. Where an exact pattern would be unreadable (dates), the schema is
//! looser than the reader: a record that the reader accepts always passes its schema.

use serde_json::{Map, Value, json};

use crate::model::document::EvidenceTarget;
use crate::model::link;
use crate::model::vocabulary::List;
use crate::read::records::vocabulary;
use crate::read::shape::{
    CLAIM, Holds, KeyShape, MapKeys, OBSERVED, POINT, PRIVATE, PROVENANCE, RECORDS, SERIES_PLACE,
    Shape, Takes, Target,
};

/// The pattern of keys (see [`crate::model::key::Key`]).
const KEY: &str = "[a-z0-9]+(-[a-z0-9]+)*";

/// Every schema as a file: its name and its text.
#[must_use]
pub fn files() -> Vec<(String, String)> {
    let file = |(name, shape, holds): &(&str, &'static Shape, Holds)| {
        let text = format!("{:#}\n", schema(name, shape, *holds));
        (format!("{name}.schema.json"), text)
    };
    RECORDS.iter().map(file).collect()
}

/// The schema of one kind of record, by the name it has in [`RECORDS`].
#[must_use]
pub fn of_record(name: &str) -> Option<Value> {
    let (name, shape, holds) = RECORDS.iter().find(|(record, ..)| *record == name)?;
    Some(schema(name, shape, *holds))
}

fn schema(name: &str, shape: &'static Shape, holds: Holds) -> Value {
    let mut definitions = Definitions::default();
    let record = definitions.refer(shape);
    let schema = match holds {
        Holds::One => record,
        Holds::ManyByKey => json!({
            "type": "object",
            "propertyNames": { "pattern": whole(KEY) },
            "additionalProperties": record,
        }),
    };
    with_definitions(name, schema, definitions)
}

/// A file that is no record and is read part by part: what stands at its head, and the lists of tables below.
pub struct FileShape {
    /// The keys of the table itself.
    pub table: &'static Shape,
    /// The lists of tables in it, each by its key.
    pub lists: &'static [(&'static str, FileShape)],
}

/// The schema of a file that is no record; `name` says which.
#[must_use]
pub fn of_file(name: &str, file: &'static FileShape) -> Value {
    let mut definitions = Definitions::default();
    let table = definitions.file_table(file);
    with_definitions(name, table, definitions)
}

/// A schema with its title and the tables that it refers to.
fn with_definitions(name: &str, mut schema: Value, definitions: Definitions) -> Value {
    let tables: Map<String, Value> = definitions
        .tables
        .into_iter()
        .map(|(_, name, table)| (name, table))
        .collect();
    if let Some(fields) = schema.as_object_mut() {
        fields.insert(
            "$schema".to_owned(),
            json!("https://json-schema.org/draft/2020-12/schema"),
        );
        fields.insert("title".to_owned(), json!(format!("Keyblock: {name}")));
        fields.insert("$defs".to_owned(), Value::Object(tables));
    }
    schema
}

/// The tables that a schema refers to, each once, so that shapes that contain themselves end.
#[derive(Default)]
struct Definitions {
    tables: Vec<(&'static Shape, String, Value)>,
}

impl Definitions {
    /// A reference to the schema of a table; makes that schema if it does not exist yet.
    fn refer(&mut self, shape: &'static Shape) -> Value {
        let known = self
            .tables
            .iter()
            .find(|(table, ..)| std::ptr::eq(*table, shape));
        let name = match known {
            Some((_, name, _)) => name.clone(),
            None => self.define(shape),
        };
        json!({ "$ref": format!("#/$defs/{name}") })
    }

    fn define(&mut self, shape: &'static Shape) -> String {
        let words = shape
            .name
            .trim_start_matches("a ")
            .trim_start_matches("an ")
            .trim_start_matches("the ");
        let base = words.replace(' ', "-");
        let taken = self
            .tables
            .iter()
            .filter(|(_, name, _)| *name == base || name.starts_with(&format!("{base}-of-")))
            .count();
        // Two tables may have the same name, as citations with and without a number do.
        let name = if taken == 0 {
            base
        } else {
            format!("{base}-of-{}", taken + 1)
        };
        self.tables.push((shape, name.clone(), Value::Null));
        let table = self.table(shape);
        if let Some(entry) = self
            .tables
            .iter_mut()
            .find(|(known, ..)| std::ptr::eq(*known, shape))
        {
            entry.2 = table;
        }
        name
    }

    /// The schema of a table of a file, with the lists of tables in it.
    fn file_table(&mut self, file: &'static FileShape) -> Value {
        let mut table = self.table(file.table);
        for (name, of) in file.lists {
            let rows = json!({ "type": "array", "items": self.file_table(of) });
            if let Some(properties) = table
                .pointer_mut("/properties")
                .and_then(Value::as_object_mut)
            {
                properties.insert((*name).to_owned(), rows);
            }
        }
        table
    }

    fn table(&mut self, shape: &'static Shape) -> Value {
        let properties: Map<String, Value> = shape
            .keys()
            .map(|key| (key.name.to_owned(), self.key(key)))
            .collect();
        let required: Vec<&str> = shape
            .keys()
            .filter(|key| key.required)
            .map(|key| key.name)
            .collect();
        let mut table = json!({
            "type": "object",
            "description": shape.name,
            "properties": properties,
            "required": required,
            "additionalProperties": if shape.open { json!({ "type": "string" }) } else { json!(false) },
        });
        if let (Some(fields), Some((rule, value))) = (table.as_object_mut(), rule(shape)) {
            fields.insert(rule.to_owned(), value);
        }
        table
    }

    fn key(&mut self, key: &'static KeyShape) -> Value {
        let mut value = match key.takes {
            Takes::Text if key.required => json!({ "type": "string", "pattern": "\\S" }),
            _ => self.value(&key.takes),
        };
        if let Some(fields) = value.as_object_mut() {
            fields.insert("description".to_owned(), json!(key.help));
        }
        value
    }

    fn value(&mut self, takes: &'static Takes) -> Value {
        match takes {
            Takes::Text | Takes::HolderOrWords(_) => json!({ "type": "string" }),
            Takes::Flag | Takes::Publish => json!({ "type": "boolean" }),
            Takes::Whole(least, most) => {
                json!({ "type": "integer", "minimum": least, "maximum": most })
            }
            Takes::Above0 => json!({ "type": "number", "exclusiveMinimum": 0 }),
            Takes::From0 => json!({ "type": "number", "minimum": 0 }),
            Takes::Fraction(most) => {
                json!({ "type": "number", "exclusiveMinimum": 0, "maximum": most })
            }
            Takes::Date => pattern("[-\\[{.0-9XY/][-0-9XYESTZ:+.,/?~%\\[\\]{}]*"),
            Takes::Size => json!({
                "type": "array", "minItems": 2, "maxItems": 2,
                "items": { "type": "number", "exclusiveMinimum": 0, "maximum": 20_000 },
            }),
            Takes::Box => percents(4),
            Takes::Colour => pattern("#[0-9a-fA-F]{6}"),
            Takes::Language => pattern("[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8})*"),
            Takes::Country => pattern("[A-Z]{2}"),
            Takes::Isil => json!({
                "type": "string", "maxLength": 16,
                "pattern": whole("([A-Z]{2}|[A-Za-z0-9]|[A-Za-z0-9]{3,4})-[-A-Za-z0-9/:]+"),
            }),
            Takes::Web => json!({ "type": "string", "pattern": "^https?://" }),
            Takes::File => json!({ "type": "string", "pattern": "^[^/]" }),
            Takes::OwnKey | Takes::Part(_) | Takes::MarkCondition | Takes::Theme => key(),
            Takes::Word(words) => json!({ "enum": words() }),
            Takes::Term(list) => any([built_in(*list), key()]),
            Takes::TermOrWords(list) => any([built_in(*list), json!({ "type": "string" })]),
            Takes::Refers(target, _) => reference(*target),
            Takes::Link(_) => pattern(&format!("({}):.+", link::Target::KINDS.join("|"))),
            Takes::EvidenceTarget(_) => {
                pattern(&format!("({}):.+", EvidenceTarget::KINDS.join("|")))
            }
            Takes::Party(_) => any([
                key(),
                json!({
                    "type": "object",
                    "properties": { "name": { "type": "string" }, PRIVATE.name: strings() },
                    "required": ["name"],
                    "additionalProperties": false,
                }),
            ]),
            Takes::TextByLanguage => any([
                json!({ "type": "string", "pattern": "\\S" }),
                json!({
                    "type": "object", "minProperties": 1, "additionalProperties": { "type": "string" },
                }),
            ]),
            Takes::TextsByLanguage => {
                let texts = one_or_several(&json!({ "type": "string", "pattern": "\\S" }));
                any([
                    texts.clone(),
                    json!({
                        "type": "object", "minProperties": 1, "additionalProperties": texts,
                    }),
                ])
            }
            Takes::Ties => json!({ "type": "array", "minItems": 4, "items": percents(4) }),
            Takes::PointValues => one_or_several(&point_value()),
            Takes::Observed => any([one_or_several(&point_value()), self.refer(&OBSERVED)]),
            Takes::StateReading => any([
                one_or_several(&key()),
                json!({ "type": "object", "propertyNames": { "pattern": whole(KEY) }, "additionalProperties": key() }),
            ]),
            Takes::StatesPrinted => any([json!({ "const": "all" }), one_or_several(&key())]),
            Takes::Either(all) => {
                json!({ "anyOf": all.iter().map(|takes| self.value(takes)).collect::<Vec<_>>() })
            }
            Takes::Several(inner) => one_or_several(&self.value(inner)),
            Takes::Statements(inner) => self.statements(inner),
            Takes::TextOrTables(shape) => {
                one_or_several(&any([json!({ "type": "string" }), self.refer(shape)]))
            }
            Takes::Table(shape) => self.refer(shape),
            Takes::Tables(shape) => one_or_several(&self.refer(shape)),
            Takes::Map(keys, inner) => self.map(*keys, inner),
        }
    }

    /// A bare value, or one or several values with their sources (`{ is, … }`).
    fn statements(&mut self, takes: &'static Takes) -> Value {
        let bare = self.value(takes);
        let mut properties: Map<String, Value> = CLAIM
            .iter()
            .chain([&PRIVATE])
            .map(|key| (key.name.to_owned(), self.key(key)))
            .collect();
        properties.insert("is".to_owned(), bare.clone());
        let statement = json!({
            "type": "object",
            "properties": properties,
            "required": ["is"],
            "additionalProperties": false,
        });
        any([bare, one_or_several(&statement)])
    }

    fn map(&mut self, keys: MapKeys, takes: &'static Takes) -> Value {
        let mut map = json!({
            "type": "object",
            "properties": { PRIVATE.name: strings() },
            "additionalProperties": self.value(takes),
        });
        if let (Some(fields), true) = (map.as_object_mut(), keys != MapKeys::Headings) {
            fields.insert("propertyNames".to_owned(), json!({ "pattern": whole(KEY) }));
        }
        map
    }
}

/// A condition between keys of a table, as a keyword of JSON Schema and its value.
fn rule(shape: &'static Shape) -> Option<(&'static str, Value)> {
    if std::ptr::eq(shape, &raw const POINT) {
        let needs = |kind: &str, keys: &[&str]| json!({ "if": { "properties": { "kind": { "const": kind } } }, "then": { "required": keys } });
        return Some((
            "allOf",
            json!([
                needs("choice", &["values"]),
                needs("stage", &["stages"]),
                needs("measure", &["unit", "tolerance"]),
            ]),
        ));
    }
    if std::ptr::eq(shape, &raw const PROVENANCE) {
        let one = |key: &str| json!({ "required": [key] });
        return Some(("oneOf", json!([one("owner"), one("agent"), one("keeper")])));
    }
    if std::ptr::eq(shape, &raw const SERIES_PLACE) {
        let one = |key: &str| json!({ "required": [key] });
        return Some(("oneOf", json!([one("series"), one("name")])));
    }
    None
}

fn reference(target: Target) -> Value {
    match target {
        Target::Impression => pattern(&format!("{KEY}\\.[1-9][0-9]*")),
        Target::Picture => pattern(&format!("({KEY}(\\.[1-9][0-9]*)?|document/{KEY})/{KEY}")),
        Target::Cited => pattern(&format!("(document:)?{KEY}")),
        _ => key(),
    }
}

/// The keys of the built-in terms, which an editor proposes.
fn built_in(list: List) -> Value {
    let vocabularies = vocabulary::built_in();
    let keys: Vec<&str> = vocabularies
        .terms(list)
        .map(|(key, _)| key.as_str())
        .collect();
    json!({ "enum": keys })
}

fn key() -> Value {
    pattern(KEY)
}

fn pattern(text: &str) -> Value {
    json!({ "type": "string", "pattern": whole(text) })
}

fn whole(pattern: &str) -> String {
    format!("^{pattern}$")
}

fn percents(count: usize) -> Value {
    json!({
        "type": "array", "minItems": count, "maxItems": count,
        "items": { "type": "number", "minimum": 0, "maximum": 100 },
    })
}

fn point_value() -> Value {
    json!({ "type": ["string", "number"] })
}

fn strings() -> Value {
    one_or_several(&json!({ "type": "string" }))
}

fn one_or_several(value: &Value) -> Value {
    any([value.clone(), json!({ "type": "array", "items": value })])
}

fn any<const N: usize>(values: [Value; N]) -> Value {
    json!({ "anyOf": Vec::from(values) })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_schema_is_a_schema_and_names_each_table_once() {
        for (name, shape, holds) in RECORDS {
            let schema = schema(name, shape, *holds);
            assert!(jsonschema::meta::is_valid(&schema), "{name}");
            assert!(jsonschema::validator_for(&schema).is_ok(), "{name}");
            let text = schema.to_string();
            for reference in text.split("\"$ref\":\"#/$defs/").skip(1) {
                let target = reference.split('"').next().unwrap();
                assert!(
                    schema["$defs"][target]["properties"].is_object(),
                    "{name} {target}"
                );
            }
        }
    }
}
