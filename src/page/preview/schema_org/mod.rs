//! The record of a page in the vocabulary of schema.org, as JSON-LD in the page: designs and impressions
//! (`VisualArtwork`), people, holders, the catalogue, its data (`Dataset`), and for every page the pages above it
//! (`BreadcrumbList`).
//!
//! Source: types and properties as in PyPI `msgspec-schemaorg` 0.2.1, made from the vocabulary, with which the tests read
//! the blocks. A search engine needs few facts and no doubts: a date is given only where it is a plain year, month or day
//! and the catalogue is certain of it, a maker only where that is certain. Linked Art, beside the page, has the rest.
//! A private owner has no record here.
//!
//! The block is data and never run, which the Content-Security-Policy of pages allows; no text in it can end it.

mod artworks;
mod certain;
mod parties;
mod thing;

use serde::Serialize;

use super::trail;
use crate::page::phrases::rights;
use crate::page::setting::address::{Address, Overview};
use crate::page::setting::book::Here;
use crate::page::setting::exports::Subject;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::page::setting::words::Argument;
use artworks::{design, impression};
use certain::plain;
use parties::{holder, person};
use thing::Thing;

/// The block of a page.
#[derive(Serialize)]
struct Block {
    #[serde(rename = "@context")]
    context: &'static str,
    #[serde(rename = "@graph")]
    graph: Vec<Thing>,
}

/// The block of a page; `None` where the page is about nothing of its own: one that only leads to another, or the page
/// of an address that leads to nothing.
pub(crate) fn of_page(here: &Here<'_>, leaf: &Leaf) -> Option<CleanHtml> {
    if leaf.stands_at.is_some() || *here.address == Address::NotFound {
        return None;
    }
    let graph: Vec<Thing> = thing(here)
        .into_iter()
        .chain(breadcrumbs(here, leaf))
        .collect();
    (!graph.is_empty()).then(|| {
        CleanHtml::data(&Block {
            context: "https://schema.org",
            graph,
        })
    })
}

/// What a page is about.
fn thing(here: &Here<'_>) -> Option<Thing> {
    let public = here.public();
    match here.address {
        Address::Opening => Some(catalogue(here)),
        Address::Design(key) => Some(design(here, public.designs.get(key)?)),
        Address::Impression(key) => {
            let design = public.designs.get(&key.design)?;
            Some(impression(
                here,
                design,
                design.impressions.get(&key.number)?,
            ))
        }
        Address::Person(key) => Some(person(here, public.people.get(key)?)),
        Address::Holder(key) => holder(here, public.holders.get(key)?),
        Address::Overview(Overview::Data) => Some(dataset(here)),
        _ => None,
    }
}

/// The pages above, and the page itself.
fn breadcrumbs(here: &Here<'_>, leaf: &Leaf) -> Option<Thing> {
    let base = &here.public().settings.address.value;
    let above = trail::above(here);
    let last = (leaf.title.clone(), here.address.absolute(base));
    if above.is_empty() {
        return None;
    }
    let steps = above
        .into_iter()
        .map(|step| (step.name, step.address.absolute(base)));
    let steps = steps.chain([last]).zip(1..);
    let steps = steps.map(|((name, address), position)| Thing {
        position: Some(position),
        name: Some(name),
        item: Some(address),
        ..Thing::new("ListItem")
    });
    Some(Thing {
        item_list_element: steps.collect(),
        ..Thing::new("BreadcrumbList")
    })
}

/// The catalogue.
fn catalogue(here: &Here<'_>) -> Thing {
    let settings = &here.public().settings;
    Thing {
        in_language: Some(settings.language.value.clone()),
        license: settings.licence.as_deref().and_then(rights::uri),
        ..Thing::of_page(here, "WebSite", &Address::Opening, &settings.title.value)
    }
}

/// The data of the catalogue, with the files that the page about them links to.
fn dataset(here: &Here<'_>) -> Thing {
    let settings = &here.public().settings;
    let base = settings.address.value.trim_end_matches('/');
    let title = [("title", Argument::Text(&settings.title.value))];
    let editors = settings.editors.iter();
    let editors = editors.filter_map(|key| {
        let person = here.public().people.get(&key.value)?;
        let page = Address::Person(key.value.clone());
        Some(Thing::reference(here, "Person", &page, &person.name.value))
    });
    let files = &here.book.exports.files;
    let subject = Subject::Page(here.address.clone());
    let files = files.get(&subject).into_iter().flatten().map(|file| {
        let id = format!("format-{}", file.format);
        Thing {
            name: Some(here.words().word(&id).to_owned()),
            content_url: Some(format!("{base}/{}", file.path)),
            encoding_format: Some(file.media_type),
            ..Thing::new("DataDownload")
        }
    });
    Thing {
        description: Some(here.words().with("dataset-description", &title)),
        creator: editors.collect(),
        license: settings.licence.as_deref().and_then(rights::uri),
        version: settings.edition.clone(),
        date_modified: settings.dated.as_ref().and_then(|date| plain(date)),
        in_language: Some(settings.language.value.clone()),
        is_accessible_for_free: Some(true),
        distribution: files.collect(),
        ..Thing::of_page(here, "Dataset", here.address, &settings.title.value)
    }
}
