//! Collections: of a design, of a holder's sheets, of a series, of all designs, and of all documents.

use super::shown::{CONTEXT, collection_id};
use super::types::{Collection, Label, Reference, Resource};
use super::{shown, words};
use crate::model::design::Design;
use crate::model::holder::Holder;
use crate::model::series::SeriesRecord;
use crate::model::series_place::SeriesRef;
use crate::page::{Address, Here, Overview, figures, places};

/// The manifests of a design's sheets, after that of its own pictures.
pub(super) fn of_design(here: &Here<'_>, design: &Design) -> Collection {
    let page = Address::Design(design.key.clone());
    let number = number(here, &design.number);
    let own = places::has_manifest(here, &page).then(|| Reference {
        id: places::manifest_id(here, &page),
        r#type: "Manifest",
        label: words::own(here, here.words().word("drawings-and-blocks")),
        ..Reference::default()
    });
    let joined = here.joined();
    let sheets = shown::sheets_with_pictures(here.book.pictures, joined, design);
    let sheets = sheets.map(|sheet| {
        let label = sheet_label(here, &here.sheet_number(&sheet.key));
        let page = Address::Impression(sheet.key.clone());
        let leading = figures::leading_picture(here, sheet);
        Reference {
            thumbnail: leading
                .map(|key| words::thumbnail(here, &key))
                .unwrap_or_default(),
            ..manifest(here, &page, label)
        }
    });
    collection(
        here,
        &page,
        words::titled(here, design, &number),
        own.into_iter().chain(sheets).collect(),
        Some(&Address::Overview(Overview::Designs)),
    )
}

/// The manifests of the sheets that a holder keeps.
pub(super) fn of_holder(here: &Here<'_>, holder: &Holder) -> Collection {
    let sheets = here.sheets_in_order();
    let items = sheets
        .filter(|(_, sheet)| {
            let keeper = sheet.holder.as_ref();
            keeper.is_some_and(|keeper| keeper.value == holder.key)
        })
        .filter_map(|(design, sheet)| {
            let page = Address::Impression(sheet.key.clone());
            let number = number(here, &here.sheet_number(&sheet.key));
            places::has_manifest(here, &page)
                .then(|| manifest(here, &page, words::titled(here, design, &number)))
        });
    let page = Address::Holder(holder.key.clone());
    let name = here.holder_name(holder);
    let items = items.collect();
    collection(here, &page, words::own(here, name), items, None)
}

/// The collections of the designs of a series, in its order.
pub(super) fn of_series(here: &Here<'_>, series: &SeriesRecord) -> Collection {
    let of = SeriesRef::Record(series.key.clone());
    let study = here.book.studies.series.get(&of);
    let members = study.map_or(&[][..], |study| &study.members);
    let designs = members.iter().map(|member| &member.design);
    let designs = designs.filter_map(|key| here.public().designs.get(key));
    let page = Address::Series(series.key.clone());
    let title = here.series_title(series).plain();
    let items = designs.filter_map(|design| below(here, design)).collect();
    collection(here, &page, words::own(here, &title), items, None)
}

/// The collections of all designs, in the order of the catalogue.
pub(super) fn of_all(here: &Here<'_>) -> Collection {
    let items = here
        .designs_in_order()
        .filter_map(|design| below(here, design));
    let title = here.public().settings.title.value.as_str();
    let page = Address::Overview(Overview::Designs);
    let items = items.collect();
    collection(here, &page, words::own(here, title), items, None)
}

/// The manifests of all documents that have pictures, by their keys.
pub(super) fn of_documents(here: &Here<'_>) -> Collection {
    let documents = here.public().documents.values();
    let items = documents.filter_map(|document| {
        let page = Address::Document(document.key.clone());
        let leading = figures::document_pictures(here.book.pictures, document);
        let name = here.document_name(document).plain();
        places::has_manifest(here, &page).then(|| Reference {
            thumbnail: leading
                .first()
                .map(|key| words::thumbnail(here, key))
                .unwrap_or_default(),
            ..manifest(here, &page, words::own(here, name))
        })
    });
    let title = here.words().word("documents");
    let page = Address::Overview(Overview::Documents);
    let items = items.collect();
    collection(here, &page, words::own(here, title), items, None)
}

/// The collection of a design in another; `None` where it has none.
fn below(here: &Here<'_>, design: &Design) -> Option<Reference> {
    let page = Address::Design(design.key.clone());
    let picture = figures::design_picture(here, design);
    Some(Reference {
        id: collection_id(here, &page)?,
        r#type: "Collection",
        label: words::titled(here, design, &number(here, &design.number)),
        thumbnail: picture
            .map(|key| words::thumbnail(here, &key))
            .unwrap_or_default(),
        ..Reference::default()
    })
}

fn manifest(here: &Here<'_>, page: &Address, label: Label) -> Reference {
    Reference {
        id: places::manifest_id(here, page),
        r#type: "Manifest",
        label,
        ..Reference::default()
    }
}

/// "OP 7.5".
fn number(here: &Here<'_>, number: &str) -> String {
    format!("{} {number}", here.public().settings.siglum.value)
}

fn sheet_label(here: &Here<'_>, sheet: &str) -> Label {
    words::own(here, number(here, sheet))
}

fn collection(
    here: &Here<'_>,
    page: &Address,
    label: Label,
    items: Vec<Reference>,
    above: Option<&Address>,
) -> Collection {
    let above = above.and_then(|above| collection_id(here, above));
    let has_record = !matches!(page, Address::Overview(_));
    Collection {
        resource: Resource {
            context: CONTEXT,
            id: collection_id(here, page).unwrap_or_default(),
            r#type: "Collection",
            homepage: vec![words::homepage(here, page, label.clone())],
            label,
            provider: words::provider(here),
            see_also: has_record
                .then(|| words::linked_art(here, page))
                .into_iter()
                .collect(),
            part_of: above
                .map(|id| Reference {
                    id,
                    r#type: "Collection",
                    ..Reference::default()
                })
                .into_iter()
                .collect(),
            ..Resource::default()
        },
        items,
    }
}
