//! The description of all tables: a Data Package with a Table Schema for each (<https://datapackage.org>, version 2.0).
//!
//! In: the declarations of the tables, the size and hash of each file. Out: `data/datapackage.json`, in which the
//! meanings are in the language of the catalogue.

use std::fmt::Write as _;

use serde::Serialize;

use super::cell;
use super::table::Written;
use crate::model::key::Key;
use crate::page::{Address, Book, ColumnKind, ColumnNotes, Here, Overview, column_meaning, rights};

/// The folder of the tables, which is that of the page about the data.
pub(super) const FOLDER: &str = "data/";

/// The name of the file.
pub(super) const FILE: &str = "datapackage.json";

/// The table as the description needs it.
pub(super) struct Described {
    name: &'static str,
    key: Vec<&'static str>,
    columns: Vec<ColumnNotes>,
    bytes: usize,
    hash: String,
}

impl Described {
    /// Of a table that was written: the size and the SHA-256 of its CSV.
    pub fn of(written: &Written) -> Described {
        let hash = hmac_sha256::Hash::hash(&written.csv);
        let hash = hash.iter().fold(String::new(), |mut hex, byte| {
            let _ = write!(hex, "{byte:02x}");
            hex
        });
        Described {
            name: written.name,
            key: written.key.clone(),
            columns: written.columns.clone(),
            bytes: written.csv.len(),
            hash: format!("sha256:{hash}"),
        }
    }
}

/// The description of the tables, as JSON.
pub(super) fn description(book: &Book<'_>, tables: &[Described]) -> Vec<u8> {
    let here = Here {
        book,
        address: &Address::Overview(Overview::Data),
        root: "",
    };
    let mut bytes = serde_json::to_vec_pretty(&package(&here, tables)).unwrap_or_default();
    bytes.push(b'\n');
    bytes
}

#[derive(Serialize)]
struct Package {
    #[serde(rename = "$schema")]
    schema: &'static str,
    name: String,
    id: String,
    title: String,
    description: String,
    homepage: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    version: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    created: Option<String>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    contributors: Vec<Contributor>,
    sources: [Source; 1],
    #[serde(skip_serializing_if = "Vec::is_empty")]
    licenses: Vec<Licence>,
    resources: Vec<Resource>,
}

#[derive(Serialize)]
struct Contributor {
    title: String,
    roles: [&'static str; 1],
}

#[derive(Serialize)]
struct Source {
    title: String,
    path: String,
}

#[derive(Serialize)]
struct Licence {
    name: String,
    path: String,
    title: String,
}

#[derive(Serialize)]
struct Resource {
    name: &'static str,
    #[serde(rename = "type")]
    kind: &'static str,
    path: String,
    title: String,
    description: String,
    format: &'static str,
    mediatype: &'static str,
    encoding: &'static str,
    bytes: usize,
    hash: String,
    schema: Schema,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct Schema {
    fields: Vec<Field>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    primary_key: Vec<&'static str>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    foreign_keys: Vec<ForeignKey>,
}

#[derive(Serialize)]
struct Field {
    name: &'static str,
    #[serde(rename = "type")]
    kind: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    format: Option<&'static str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    delimiter: Option<&'static str>,
    #[serde(rename = "rdfType", skip_serializing_if = "Option::is_none")]
    rdf_type: Option<&'static str>,
    description: String,
    #[serde(skip_serializing_if = "Constraints::is_empty")]
    constraints: Constraints,
}

#[derive(Serialize)]
struct Constraints {
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    required: bool,
    #[serde(rename = "enum", skip_serializing_if = "Vec::is_empty")]
    words: Vec<&'static str>,
}

impl Constraints {
    fn is_empty(&self) -> bool {
        !self.required && self.words.is_empty()
    }
}

#[derive(Serialize)]
struct ForeignKey {
    fields: [&'static str; 1],
    reference: Reference,
}

#[derive(Serialize)]
struct Reference {
    /// Left out for the table itself.
    #[serde(skip_serializing_if = "Option::is_none")]
    resource: Option<&'static str>,
    fields: [&'static str; 1],
}

fn package(here: &Here<'_>, tables: &[Described]) -> Package {
    let public = here.public();
    let settings = &public.settings;
    let words = here.words();
    let base = settings.address.value.trim_end_matches('/');
    let editors = settings.editors.iter();
    let editors = editors.filter_map(|key| public.people.get(&key.value));
    let name = Key::nearest_form(&settings.title.value);
    let day = settings.dated.as_ref().map(|date| date.as_str());
    // A whole day alone: the standard asks for a time, and a year has none.
    let day =
        day.filter(|day| day.len() == 10 && day.bytes().all(|b| b == b'-' || b.is_ascii_digit()));
    let licence = settings.licence.as_deref();
    Package {
        schema: "https://datapackage.org/profiles/2.0/datapackage.json",
        name: name.map_or_else(|| "catalogue".to_owned(), |name| name.to_string()),
        id: format!("{base}/{FOLDER}{FILE}"),
        title: settings.title.value.clone(),
        description: words.word("package-description").to_owned(),
        homepage: format!("{base}/{FOLDER}"),
        version: settings.edition.clone(),
        created: day.map(|day| format!("{day}T00:00:00Z")),
        contributors: editors
            .map(|person| Contributor {
                title: person.name.value.clone(),
                roles: ["editor"],
            })
            .collect(),
        sources: [Source {
            title: settings.title.value.clone(),
            path: format!("{base}/"),
        }],
        licenses: licence
            .and_then(|licence| {
                Some(Licence {
                    name: licence.to_owned(),
                    path: rights::uri(licence)?,
                    title: rights::in_words(licence),
                })
            })
            .into_iter()
            .collect(),
        resources: tables
            .iter()
            .map(|table| resource(here, table, tables))
            .collect(),
    }
}

fn resource(here: &Here<'_>, table: &Described, tables: &[Described]) -> Resource {
    let words = here.words();
    let key_of = |name: &str| {
        let other = tables.iter().find(|other| other.name == name)?;
        match other.key[..] {
            [key] => Some(key),
            _ => None,
        }
    };
    let foreign = table.columns.iter().filter_map(|column| {
        // A list of keys is no foreign key of the standard; its description says what it holds.
        let other = column
            .references
            .filter(|_| column.kind != ColumnKind::List)?;
        Some(ForeignKey {
            fields: [column.name],
            reference: Reference {
                resource: Some(other).filter(|other| *other != table.name),
                fields: [key_of(other)?],
            },
        })
    });
    Resource {
        name: table.name,
        kind: "table",
        path: format!("{}.csv", table.name),
        title: words.word(&format!("table-{}", table.name)).to_owned(),
        description: words
            .word(&format!("table-{}-about", table.name))
            .to_owned(),
        format: "csv",
        mediatype: "text/csv",
        encoding: "utf-8",
        bytes: table.bytes,
        hash: table.hash.clone(),
        schema: Schema {
            fields: table
                .columns
                .iter()
                .map(|column| field(here, table.name, column))
                .collect(),
            primary_key: table.key.clone(),
            foreign_keys: foreign.collect(),
        },
    }
}

fn field(here: &Here<'_>, table: &str, column: &ColumnNotes) -> Field {
    let (kind, format) = match column.kind {
        // The text of the standard has a type `list`, its published profile has not.
        ColumnKind::Text | ColumnKind::Date | ColumnKind::List => ("string", None),
        ColumnKind::Address => ("string", Some("uri")),
        ColumnKind::Integer => ("integer", None),
        ColumnKind::Number => ("number", None),
        ColumnKind::Boolean => ("boolean", None),
        ColumnKind::Day => ("date", None),
    };
    let is = |kind| column.kind == kind;
    Field {
        name: column.name,
        kind,
        format,
        delimiter: is(ColumnKind::List).then_some(cell::DELIMITER),
        rdf_type: is(ColumnKind::Date).then_some("http://id.loc.gov/datatypes/edtf/EDTF"),
        description: column_meaning(here.words(), table, column.name),
        constraints: Constraints {
            required: column.is_required,
            words: column.words.clone(),
        },
    }
}
