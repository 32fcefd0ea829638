//! Sheets of several designs that can be compared: those that bear one mark, and those with a watermark.

use super::sheets::ComparedSheet;
use crate::model::impression::Impression;
use crate::model::key::ImpressionKey;
use crate::page::plates::figures;
use crate::page::setting::address::{Address, ComparedBy};
use crate::page::setting::book::{Book, Here};

/// The most sheets that one page compares; beyond that it would be too heavy to load.
pub(crate) const MOST: usize = 120;

/// The sheets of a group that have a picture, in the order of the catalogue; each sheet once.
pub(crate) fn sheets<'b>(book: &Book<'b>, by: &ComparedBy) -> Vec<ComparedSheet<'b>> {
    let designs = book.studies.order.keys().iter();
    let designs = designs.filter_map(|key| book.public.designs.get(key));
    designs
        .flat_map(|design| {
            design
                .impressions
                .values()
                .map(move |sheet| (design, sheet))
        })
        .filter(|(_, sheet)| is_of(sheet, by) && is_shown(book, sheet))
        .collect()
}

/// Whether a group has two sheets to compare.
pub(crate) fn has_page(book: &Book<'_>, by: &ComparedBy) -> bool {
    sheets(book, by).len() > 1
}

/// The link to the comparison of a group, where it has one.
pub(crate) fn href(here: &Here<'_>, by: &ComparedBy) -> Option<String> {
    has_page(here.book, by).then(|| here.href(&Address::SheetsCompared(by.clone())))
}

/// The link to the comparison of a group, of which `all` are the sheets, with the first of `chosen`; `None` where fewer than
/// two of these can be compared.
pub(crate) fn chosen_href(
    here: &Here<'_>,
    by: &ComparedBy,
    all: &[ComparedSheet<'_>],
    chosen: &[&ImpressionKey],
) -> Option<String> {
    /// The most sheets that are shown at once (`MOST` in `assets/compare.js`).
    const AT_ONCE: usize = 4;
    let page = here.href(&Address::SheetsCompared(by.clone()));
    let listed = all.iter().take(MOST).map(|(_, sheet)| &sheet.key);
    let keys = listed.filter(|key| chosen.contains(key)).take(AT_ONCE);
    let keys: Vec<String> = keys.map(ImpressionKey::to_string).collect();
    (keys.len() > 1).then(|| format!("{page}#of={}", keys.join(",")))
}

fn is_of(sheet: &Impression, by: &ComparedBy) -> bool {
    match by {
        ComparedBy::Mark(key) => sheet.marks.iter().any(|mark| {
            let record = mark.record.as_ref();
            record.is_some_and(|record| record.value == *key)
        }),
        ComparedBy::Watermark => !sheet.sheet.watermark.is_empty(),
    }
}

fn is_shown(book: &Book<'_>, sheet: &Impression) -> bool {
    let mut pictures = sheet.pictures.iter();
    !sheet.standing.is_withdrawn()
        && book.studies.joined.has_page(&sheet.key)
        && pictures.any(|picture| {
            let key = figures::key_of(sheet, &picture.name.value);
            book.pictures.contains_key(&key)
        })
}
