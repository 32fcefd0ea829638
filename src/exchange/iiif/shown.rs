//! The pictures of a page, and the pages that have any.

use crate::model::design::Design;
use crate::model::impression::Impression;
use crate::model::key::{PictureKey, PictureOwner};
use crate::page::{Address, Here, Pictures, Subject, figures, places};
use crate::study::joined::JoinedSheets;

/// The address of the context, which must stand first. It is never fetched.
pub(super) const CONTEXT: &str = "http://iiif.io/api/presentation/3/context.json";

/// The name of the file of a collection.
pub(super) const COLLECTION: &str = "collection.json";

/// The pictures that are recorded with a design and published.
pub(super) fn of_design<'a>(
    pictures: &'a Pictures,
    design: &'a Design,
) -> impl Iterator<Item = PictureKey> + use<'a> {
    let keys = design.pictures.iter().map(|picture| PictureKey {
        owner: PictureOwner::Design(design.key.clone()),
        name: picture.name.value.clone(),
    });
    keys.filter(|key| pictures.contains_key(key))
}

/// The published pictures of a sheet, by all of its records.
pub(super) fn of_sheet(
    pictures: &Pictures,
    joined: &JoinedSheets,
    design: &Design,
    sheet: &Impression,
) -> Vec<PictureKey> {
    let records = joined.on_page(design, sheet).into_iter();
    let keys = records.flat_map(|record| {
        let pictures = record.pictures.iter();
        pictures.map(|picture| figures::key_of(record, &picture.name))
    });
    keys.filter(|key| pictures.contains_key(key)).collect()
}

/// The sheets of a design with a published picture, each by the record whose page it has.
pub(super) fn sheets_with_pictures<'a>(
    pictures: &'a Pictures,
    joined: &'a JoinedSheets,
    design: &'a Design,
) -> impl Iterator<Item = &'a Impression> {
    let sheets = design.impressions.values();
    sheets
        .filter(|sheet| joined.has_page(&sheet.key))
        .filter(|sheet| !of_sheet(pictures, joined, design, sheet).is_empty())
}

/// The address of the collection of a page, where it has one.
pub(super) fn collection_id(here: &Here<'_>, page: &Address) -> Option<String> {
    let subject = Subject::Page(page.clone());
    let files = here.book.exports.files.get(&subject)?;
    let file = files.iter().find(|file| file.path.ends_with(COLLECTION))?;
    Some(format!("{}/{}", places::base(here), file.path))
}
