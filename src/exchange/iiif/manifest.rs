//! Manifests of sheets, of designs and of documents.

use super::shown::{CONTEXT, collection_id};
use super::types::{
    Canvas, Entry, Image, Label, Manifest, Page, Painting, Reference, Resource, Service,
};
use super::words::{self, Rights};
use super::{annotations, shown};
use crate::exchange::linked_art;
use crate::model::design::Design;
use crate::model::document::Document;
use crate::model::impression::Impression;
use crate::model::key::{PictureKey, PictureOwner};
use crate::page::{Address, Here, Overview, dates, document_names, figures, places, readings};

/// The manifest of a sheet: a canvas for each of its pictures.
pub(super) fn of_sheet(here: &Here<'_>, design: &Design, sheet: &Impression) -> Manifest {
    let joined = here.joined();
    let keys = shown::of_sheet(here.book.pictures, joined, design, sheet);
    let records = joined.on_page(design, sheet);
    let credit = linked_art::credit(here, sheet);
    let canvases = keys.iter().filter_map(|key| {
        let record = match &key.owner {
            PictureOwner::Impression(record) => here.record_number(record),
            PictureOwner::Design(_) | PictureOwner::Document(_) => return None,
        };
        let picture = here.public().picture(key)?;
        let what = match &picture.caption {
            Some(caption) => caption.clone(),
            None => figures::side_and_view(here, picture),
        };
        let annotated = annotations::of_picture(here, design, &records, key);
        let rights = Rights::of(here, key, credit.as_deref());
        Some((
            Canvas {
                annotations: annotated.into_iter().collect(),
                ..canvas(here, key, format!("{record}, {what}"))?
            },
            rights,
        ))
    });
    let page = Address::Impression(sheet.key.clone());
    let number = format!(
        "{} {}",
        here.public().settings.siglum.value,
        here.sheet_number(&sheet.key)
    );
    let leading = figures::leading_picture(here, sheet);
    manifest(
        here,
        Resource {
            label: words::titled(here, design, &number),
            metadata: facts(here, design, sheet),
            thumbnail: leading
                .map(|key| words::thumbnail(here, &key))
                .unwrap_or_default(),
            homepage: homepages(here, &page, &number, &records),
            ..resource(here, &page, &number)
        },
        canvases.collect(),
    )
}

/// The manifest of the pictures that are recorded with a design.
pub(super) fn of_design(here: &Here<'_>, design: &Design) -> Manifest {
    let keys: Vec<PictureKey> = shown::of_design(here.book.pictures, design).collect();
    let number = format!("{} {}", here.public().settings.siglum.value, design.number);
    let canvases = keys.iter().filter_map(|key| {
        let picture = here.public().picture(key)?;
        let of = picture.of.map(|of| here.words().listed("picture-of", of));
        let what = picture.caption.as_deref().or(of);
        let what = what.unwrap_or_else(|| here.words().word("picture-of-illustration"));
        let canvas = canvas(here, key, what.to_owned())?;
        Some((canvas, Rights::of(here, key, None)))
    });
    let page = Address::Design(design.key.clone());
    manifest(
        here,
        Resource {
            label: words::titled(here, design, &number),
            thumbnail: keys
                .first()
                .map(|key| words::thumbnail(here, key))
                .unwrap_or_default(),
            ..resource(here, &page, &number)
        },
        canvases.collect(),
    )
}

/// The manifest of a document: a canvas for each of its pages, its words on the first.
pub(super) fn of_document(here: &Here<'_>, document: &Document) -> Manifest {
    let keys = figures::document_pictures(here.book.pictures, document);
    let canvases = keys.iter().enumerate().filter_map(|(at, key)| {
        let picture = here.public().picture(key)?;
        let what = match &picture.caption {
            Some(caption) => caption.clone(),
            None => figures::side_and_view(here, picture),
        };
        let words = if at == 0 {
            annotations::of_words(here, document, key)
        } else {
            None
        };
        let canvas = Canvas {
            annotations: words.into_iter().collect(),
            ..canvas(here, key, what)?
        };
        Some((canvas, Rights::of(here, key, None)))
    });
    let page = Address::Document(document.key.clone());
    let name = here.document_name(document).plain();
    let words = here.words();
    let kept = document_names::kept(here, document).plain();
    let rights = document.rights.as_ref();
    let rights = rights.filter(|_| document.transcription.is_some());
    let rights = rights.map(|rights| figures::rights_in_words(here, rights));
    let facts = [
        words::entry(here, words.word("document-kept"), kept),
        words::entry(
            here,
            words.word("document-rights"),
            rights.unwrap_or_default(),
        ),
    ];
    let brief = document_names::brief(here, document).plain();
    manifest(
        here,
        Resource {
            label: words::own(here, name.as_str()),
            summary: if brief.is_empty() {
                Label::new()
            } else {
                words::own(here, brief)
            },
            metadata: facts.into_iter().flatten().collect(),
            thumbnail: keys
                .first()
                .map(|key| words::thumbnail(here, key))
                .unwrap_or_default(),
            ..resource(here, &page, &name)
        },
        canvases.collect(),
    )
}

/// A manifest. Rights that all canvases share are given once.
fn manifest(here: &Here<'_>, resource: Resource, canvases: Vec<(Canvas, Rights)>) -> Manifest {
    let first = canvases.first().map(|(_, rights)| rights.clone());
    let shared = first.filter(|first| canvases.iter().all(|(_, rights)| rights == first));
    let items = canvases.into_iter().map(|(canvas, rights)| {
        let own = if shared.is_some() {
            Rights::default()
        } else {
            rights
        };
        Canvas {
            required_statement: own.statement,
            rights: own.address,
            ..canvas
        }
    });
    let items = items.collect();
    let shared = shared.unwrap_or_default();
    Manifest {
        resource: Resource {
            required_statement: shared.statement,
            rights: shared.address,
            provider: words::provider(here),
            ..resource
        },
        items,
    }
}

/// What every manifest has: its address, its page, its record in Linked Art, the collection that it is part of.
fn resource(here: &Here<'_>, page: &Address, name: &str) -> Resource {
    let above = match page {
        Address::Impression(key) => Address::Design(key.design.clone()),
        Address::Document(_) => Address::Overview(Overview::Documents),
        page => page.clone(),
    };
    let above = collection_id(here, &above).map(|id| Reference {
        id,
        r#type: "Collection",
        ..Reference::default()
    });
    Resource {
        context: CONTEXT,
        id: places::manifest_id(here, page),
        r#type: "Manifest",
        homepage: vec![words::homepage(here, page, words::own(here, name))],
        see_also: vec![words::linked_art(here, page)],
        part_of: above.into_iter().collect(),
        ..Resource::default()
    }
}

/// The page of a sheet in this catalogue, and its holder's own pages of it by each of its records.
fn homepages(
    here: &Here<'_>,
    page: &Address,
    number: &str,
    records: &[&Impression],
) -> Vec<Reference> {
    let own = words::homepage(here, page, words::own(here, number));
    let label = words::own(here, here.words().word("holders-page"));
    let elsewhere = records.iter().filter_map(|record| record.web.as_ref());
    let elsewhere = elsewhere.map(|web| words::homepage_elsewhere(web, label.clone()));
    std::iter::once(own).chain(elsewhere).collect()
}

/// Number, state and printing, holder and accession number of a sheet.
fn facts(here: &Here<'_>, design: &Design, sheet: &Impression) -> Vec<Entry> {
    let words = here.words();
    let reading = readings::short(here, design, sheet).plain();
    let holder = sheet.holder.as_ref();
    let holder = holder.map_or_else(String::new, |holder| {
        here.holder_and_city(&holder.value).plain()
    });
    let accession = sheet.accession_and_part();
    [
        words::entry(here, words.word("identification"), reading),
        words::entry(here, words.word("holder"), holder),
        words::entry(here, words.word("accession"), accession.unwrap_or_default()),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// Who took a picture, when, and in which light.
fn taken(here: &Here<'_>, key: &PictureKey) -> Vec<Entry> {
    let words = here.words();
    let Some(picture) = here.public().picture(key) else {
        return Vec::new();
    };
    let by = picture.by.as_ref().map(|by| here.party(by).plain());
    let date = picture.date.as_ref();
    let date = date.map(|date| dates::throughout(&date.value, words));
    let light = picture.light.clone();
    [
        ("picture-by", by),
        ("picture-date", date),
        ("picture-light", light),
    ]
    .into_iter()
    .filter_map(|(word, value)| words::entry(here, words.word(word), value?))
    .collect()
}

/// The canvas of a picture, with the picture on it.
fn canvas(here: &Here<'_>, key: &PictureKey, label: String) -> Option<Canvas> {
    let id = places::canvas_id(here, key);
    let (width, height) = places::canvas_size(here.book.pictures.get(key)?)?;
    let file = places::largest_file(here, key)?;
    let service = places::service_id(here, key).map(|id| Service {
        id,
        r#type: "ImageService3",
        profile: "level0",
    });
    let painting = Painting {
        id: format!("{id}/picture/painting"),
        r#type: "Annotation",
        motivation: "painting",
        body: Image {
            id: file.address,
            r#type: "Image",
            format: "image/jpeg",
            width: file.width,
            height: file.height,
            service: service.into_iter().collect(),
        },
        target: id.clone(),
    };
    Some(Canvas {
        r#type: "Canvas",
        label: words::own(here, label),
        metadata: taken(here, key),
        required_statement: None,
        rights: None,
        width,
        height,
        thumbnail: words::thumbnail(here, key),
        items: [Page {
            id: format!("{id}/picture"),
            r#type: "AnnotationPage",
            label: super::types::Label::new(),
            items: vec![painting],
        }],
        annotations: Vec::new(),
        id,
    })
}
