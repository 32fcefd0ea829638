//! IIIF Presentation API 3.0: manifests of sheets, designs and documents, and collections above them.
//!
//! Source: the specification (appendix A for what each resource must have), snapshot of 2026-05-21.
//!
//! A sheet with pictures has a manifest, with a canvas for each; so has a design with pictures of its own (drawings,
//! blocks), and so has a document with pictures. Above them stand a collection of each design, of each holder's sheets, of
//! the designs of each series, of all designs, and of all documents. A canvas has the
//! pixels of the published picture and is painted by its image service, or by its largest file where it has no tiles.
//!
//! **Points are annotations.** On the reference picture a point's box is the rectangle that the record gives. On a
//! picture that is aligned with it, the box is mapped by the alignment: an upright rectangle, or the outline of the
//! mapped corners as an SVG where it is not upright. A picture that is not aligned, or does not show the point, has
//! none. The body says the question, and what was seen on this sheet; where nothing was recorded, the question alone.
//!
//! **The words of a document are annotations** with the motivation `supplementing`: the transcription in the languages of the
//! document, each translation in its own, as plain text with the lines that they have.
//!
//! Labels are maps of languages: titles in every language that the record gives, names of the interface in the
//! catalogue's. `rights` is given where the record's statement has an address that the standard allows; the words of
//! every statement are in `requiredStatement`. Rights and credits that all pictures of a manifest share stand once.
//!
//! Canvases, annotations and pages of annotations have addresses and no files of their own; the manifest has them
//! whole, as the standard allows. Addresses: docs/definitions.md, "Addresses of data".
//!
//! | file | subject |
//! |---|---|
//! | `types` | the types that are written |
//! | `shown` | the pictures of a page, and the pages that have any |
//! | `manifest` | manifests |
//! | `annotations` | points, and the words of documents, as annotations |
//! | `collection` | collections |
//! | `words` | labels, credits and rights |

mod annotations;
mod collection;
mod manifest;
mod shown;
mod types;
mod words;

use std::collections::BTreeSet;

use self::shown::{COLLECTION, of_design, sheets_with_pictures};
use super::format::{Format, Sources};
use super::issued::IssuedSheets;
use crate::model::key::Key;
use crate::page::{Address, Here, Overview, Subject, figures, places};

/// A manifest for each sheet, each design and each document with pictures.
pub(super) const MANIFESTS: Format = Format {
    name: "iiif-manifest",
    file: places::MANIFEST,
    folders: &["impression/…/", "design/…/", "document/…/"],
    media_type: places::MANIFEST_TYPE,
    relation: "alternate",
    subjects: subjects_of_manifests,
    write: write_manifest,
};

/// A collection for each design, each series and each holder with a manifest below it, one of all designs, and one of all documents.
pub(super) const COLLECTIONS: Format = Format {
    name: "iiif-collection",
    file: COLLECTION,
    folders: &[
        "designs/",
        "documents/",
        "design/…/",
        "series/…/",
        "holder/…/",
    ],
    media_type: places::MANIFEST_TYPE,
    relation: "alternate",
    subjects: subjects_of_collections,
    write: write_collection,
};

fn subjects_of_manifests(sources: &Sources<'_>) -> Vec<Subject> {
    let designs = sources.public.designs.values().flat_map(|design| {
        let own = of_design(sources.pictures, design).next().is_some();
        let own = own.then(|| Address::Design(design.key.clone()));
        let joined = &sources.studies.joined;
        let sheets = sheets_with_pictures(sources.pictures, joined, design);
        let sheets = sheets.map(|sheet| Address::Impression(sheet.key.clone()));
        own.into_iter().chain(sheets)
    });
    let documents = sources.public.documents.values();
    let documents = documents
        .filter(|document| !figures::document_pictures(sources.pictures, document).is_empty())
        .map(|document| Address::Document(document.key.clone()));
    designs.chain(documents).map(Subject::Page).collect()
}

fn subjects_of_collections(sources: &Sources<'_>) -> Vec<Subject> {
    let (pictures, joined) = (sources.pictures, &sources.studies.joined);
    let mut all = Vec::new();
    // A collection that an edition issued stays, though it may be empty.
    let issued = IssuedSheets::of(sources.public);
    let mut holders = BTreeSet::new();
    for holder in &issued.pictured_holders {
        // Beside a holder that was taken over stands the collection of its last successor.
        let last = sources.public.last_successor(holder);
        holders.insert(last.unwrap_or(holder).clone());
    }
    for design in sources.public.designs.values() {
        let sheets: Vec<_> = sheets_with_pictures(pictures, joined, design).collect();
        let has_own = of_design(pictures, design).next().is_some();
        if !sheets.is_empty() || has_own || issued.pictured_designs.contains(&design.key) {
            all.push(Address::Design(design.key.clone()));
        }
        let of_sheets = sheets.iter().filter_map(|sheet| sheet.holder.as_ref());
        holders.extend(of_sheets.map(|holder| holder.value.clone()));
    }
    // A key without a record is an error, told elsewhere.
    holders.retain(|holder| sources.public.holders.contains_key(holder));
    let has_collection: BTreeSet<Address> = all.iter().cloned().collect();
    if !all.is_empty() {
        all.push(Address::Overview(Overview::Designs));
    }
    let mut documents = sources.public.documents.values();
    let has_pictures =
        documents.any(|document| !figures::document_pictures(pictures, document).is_empty());
    // The page of all documents is there as long as there is one.
    let is_listed = !sources.public.documents.is_empty();
    if has_pictures || (issued.has_pictured_documents && is_listed) {
        all.push(Address::Overview(Overview::Documents));
    }
    for (of, series) in &sources.studies.series {
        let mut designs = series.members.iter().map(|member| &member.design);
        let is_shown = |design: &Key| has_collection.contains(&Address::Design(design.clone()));
        if let Some(key) = of.key().filter(|_| designs.any(is_shown)) {
            all.push(Address::Series(key.clone()));
        }
    }
    all.extend(holders.into_iter().map(Address::Holder));
    all.into_iter().map(Subject::Page).collect()
}

fn write_manifest(here: &Here<'_>, subject: &Subject) -> Option<Vec<u8>> {
    let Subject::Page(page) = subject else {
        return None;
    };
    bytes(&match page {
        Address::Impression(key) => {
            let design = here.public().designs.get(&key.design)?;
            manifest::of_sheet(here, design, design.impressions.get(&key.number)?)
        }
        Address::Document(key) => manifest::of_document(here, here.public().documents.get(key)?),
        Address::Design(key) => manifest::of_design(here, here.public().designs.get(key)?),
        _ => return None,
    })
}

fn write_collection(here: &Here<'_>, subject: &Subject) -> Option<Vec<u8>> {
    let Subject::Page(page) = subject else {
        return None;
    };
    bytes(&match page {
        Address::Design(key) => collection::of_design(here, here.public().designs.get(key)?),
        Address::Holder(key) => collection::of_holder(here, here.public().holders.get(key)?),
        Address::Series(key) => collection::of_series(here, here.public().series.get(key)?),
        Address::Overview(Overview::Designs) => collection::of_all(here),
        Address::Overview(Overview::Documents) => collection::of_documents(here),
        _ => return None,
    })
}

fn bytes(resource: &impl serde::Serialize) -> Option<Vec<u8>> {
    let mut bytes = serde_json::to_vec(resource).ok()?;
    bytes.push(b'\n');
    Some(bytes)
}
