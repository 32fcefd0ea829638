//! The sheets of a comparison as they stand beside each other: the plate of each, and links to its other photographs.

use serde::Serialize;

use super::sheets::ComparedSheet;
use crate::page::plates::figures;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::pictures::{Plate, Setting};

/// A sheet of a comparison.
#[derive(Serialize)]
pub(super) struct Column {
    plate: Plate,
    /// Links to its other photographs, for readers without scripts; the script lets them be shown in place of the plate.
    others: Vec<CleanHtml>,
}

/// The column of a sheet; only the caption where it has no picture.
pub(super) fn column(here: &Here<'_>, (design, impression): ComparedSheet<'_>) -> Column {
    let pictures = figures::pictures_of_sheet(here, impression);
    let plate = pictures
        .first()
        .and_then(|key| figures::plate(here, key, None, Setting::Abreast))
        .unwrap_or_else(|| Plate {
            image: None,
            stands_alone: false,
            href: None,
            viewer: None,
            caption: figures::caption_of_sheet(here, design, impression),
            credit: None,
        });
    let others = pictures.iter().skip(1).filter_map(|key| {
        let picture = here.public().picture(key)?;
        let file = here.book.pictures.get(key)?.sizes.last()?;
        let text = CleanHtml::text(&figures::shown(here, picture));
        Some(CleanHtml::link(
            &format!("{}{}", here.root, file.address),
            &text,
        ))
    });
    Column {
        plate,
        others: others.collect(),
    }
}
