//! Things of schema.org: what a record of a page is made of.

use serde::Serialize;

use crate::model::as_found::OtherId;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;

/// Anything that a page is about. What is empty is not written.
#[derive(Default, Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Thing {
    #[serde(rename = "@type")]
    pub(super) kind: &'static str,
    #[serde(rename = "@id", skip_serializing_if = "Option::is_none")]
    pub(super) id: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) name: Option<String>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) alternate_name: Vec<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) description: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) url: Option<String>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) same_as: Vec<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) image: Option<String>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) identifier: Vec<Thing>,
    #[serde(rename = "propertyID", skip_serializing_if = "Option::is_none")]
    pub(super) property_id: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) value: Option<Value>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) unit_code: Option<&'static str>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) creator: Vec<Thing>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) date_created: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) date_modified: Option<String>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) artform: Vec<String>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) artwork_surface: Vec<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) height: Option<Box<Thing>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) width: Option<Box<Thing>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) credit_text: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) example_of_work: Option<Box<Thing>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) is_part_of: Option<Box<Thing>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) in_language: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) birth_date: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) death_date: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) address: Option<Box<Thing>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) address_locality: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) address_country: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) license: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) version: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) is_accessible_for_free: Option<bool>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) distribution: Vec<Thing>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) content_url: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) encoding_format: Option<&'static str>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) item_list_element: Vec<Thing>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) position: Option<usize>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) item: Option<String>,
}

/// The value of a property: a number or a text.
#[derive(Serialize)]
#[serde(untagged)]
pub(super) enum Value {
    Number(f64),
    Text(String),
}

impl Thing {
    pub(super) fn new(kind: &'static str) -> Thing {
        Thing {
            kind,
            ..Thing::default()
        }
    }

    /// The thing that a page is about, named by the address of the page.
    pub(super) fn of_page(
        here: &Here<'_>,
        kind: &'static str,
        page: &Address,
        name: &str,
    ) -> Thing {
        let address = page.absolute(&here.public().settings.address.value);
        Thing {
            id: Some(address.clone()),
            url: Some(address),
            name: Some(name.to_owned()),
            ..Thing::new(kind)
        }
    }

    /// A reference to such a thing.
    pub(super) fn reference(
        here: &Here<'_>,
        kind: &'static str,
        page: &Address,
        name: &str,
    ) -> Thing {
        Thing {
            url: None,
            ..Thing::of_page(here, kind, page, name)
        }
    }

    /// An identifier: what it is, and its value.
    pub(super) fn identifier(property: &str, value: &str) -> Thing {
        Thing {
            property_id: Some(property.to_owned()),
            value: Some(Value::Text(value.to_owned())),
            ..Thing::new("PropertyValue")
        }
    }
}

/// The identifiers of a record elsewhere that are no addresses.
pub(super) fn identifiers(ids: &[OtherId]) -> impl Iterator<Item = Thing> {
    let plain = ids.iter().filter(|other| other.address().is_none());
    plain.map(|other| Thing::identifier(&other.scheme, &other.id))
}

/// Those that are.
pub(super) fn addresses(ids: &[OtherId]) -> impl Iterator<Item = String> {
    ids.iter()
        .filter_map(|other| other.address().map(str::to_owned))
}
