//! Citations as JSON of the Citation Style Language (schema `csl-data.json`, version 1.0.2).

use serde::Serialize;

use super::item::{CitedItem, Name, items};
use super::{FOLDERS, RELATION, subjects};
use crate::exchange::format::Format;
use crate::page::{Here, Subject};

pub(in crate::exchange) const FORMAT: Format = Format {
    name: "csl-json",
    file: "citation.json",
    folders: FOLDERS,
    media_type: "application/vnd.citationstyles.csl+json",
    relation: RELATION,
    subjects,
    write,
};

fn write(here: &Here<'_>, subject: &Subject) -> Option<Vec<u8>> {
    let items = items(here, subject);
    let items: Vec<CslItem<'_>> = items.iter().map(CslItem::of).collect();
    let mut json = serde_json::to_vec_pretty(&items).ok()?;
    json.push(b'\n');
    (!items.is_empty()).then_some(json)
}

/// An item, with the names of the schema.
#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
struct CslItem<'a> {
    id: &'a str,
    r#type: &'static str,
    title: &'a str,
    title_short: &'a str,
    container_title: &'a str,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    editor: Vec<CslName<'a>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    edition: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    note: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    issued: Option<CslDate<'a>>,
    #[serde(rename = "URL")]
    url: &'a str,
    language: &'a str,
}

#[derive(Serialize)]
#[serde(untagged)]
enum CslName<'a> {
    Parts { family: &'a str, given: &'a str },
    Literal { literal: &'a str },
}

#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
struct CslDate<'a> {
    date_parts: [&'a [u32]; 1],
}

impl CslItem<'_> {
    fn of(item: &CitedItem) -> CslItem<'_> {
        fn name(name: &Name) -> CslName<'_> {
            match name {
                Name::Parts { family, given } => CslName::Parts { family, given },
                Name::Whole(literal) => CslName::Literal { literal },
            }
        }
        CslItem {
            id: &item.id,
            r#type: "entry",
            title: &item.title,
            title_short: &item.short,
            container_title: &item.catalogue,
            editor: item.editors.iter().map(name).collect(),
            edition: item.edition.as_deref(),
            note: item.revised.as_deref(),
            issued: (!item.date.is_empty()).then_some(CslDate {
                date_parts: [&item.date],
            }),
            url: &item.url,
            language: &item.language,
        }
    }
}
