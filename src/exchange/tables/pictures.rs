//! The table of the pictures that are published, with their files, rights and credits.

use super::cell::Cell;
use super::table::{TableOf, Written};
use crate::exchange::format::Sources;
use crate::model::key::{PictureKey, PictureOwner};
use crate::model::picture::Picture;
use crate::page::{PublishedPicture, rights};

/// A published picture and its record.
struct Row<'s> {
    key: &'s PictureKey,
    record: &'s Picture,
    published: &'s PublishedPicture,
}

impl Row<'_> {
    /// Width and height of its largest published form.
    fn size(&self) -> (u32, u32) {
        let tiles = &self.published.tiles;
        let largest = self.published.sizes.last();
        match largest {
            Some(largest) if tiles.side == 0 => (largest.width, largest.height),
            _ => (tiles.width, tiles.height),
        }
    }
}

pub(super) fn pictures(sources: Sources<'_>) -> Written {
    let base = sources.public.settings.address.value.trim_end_matches('/');
    let rows = sources.pictures.iter().filter_map(|(key, published)| {
        let record = sources.public.picture(key)?;
        Some(Row {
            key,
            record,
            published,
        })
    });
    TableOf::new("pictures")
        .id("picture", |row: &Row| row.key.into())
        .key_of("design", "designs", |row| match &row.key.owner {
            PictureOwner::Design(key) => key.into(),
            PictureOwner::Impression(key) => (&key.design).into(),
            PictureOwner::Document(_) => Cell::Empty,
        })
        .key_of("document", "documents", |row| match &row.key.owner {
            PictureOwner::Document(key) => key.into(),
            PictureOwner::Design(_) | PictureOwner::Impression(_) => Cell::Empty,
        })
        .key_of("impression", "impressions", |row| match &row.key.owner {
            PictureOwner::Design(_) | PictureOwner::Document(_) => Cell::Empty,
            PictureOwner::Impression(key) => key.into(),
        })
        .word("side", |row| match &row.key.owner {
            PictureOwner::Design(_) | PictureOwner::Document(_) => None,
            PictureOwner::Impression(_) => Some(row.record.side),
        })
        .word("view", |row| match &row.key.owner {
            PictureOwner::Design(_) | PictureOwner::Document(_) => None,
            PictureOwner::Impression(_) => Some(row.record.view),
        })
        .word("shows", |row| row.record.of)
        .text("caption", |row| row.record.caption.as_ref().into())
        .plain_date("date", |row| {
            row.record.date.as_ref().map(|date| &date.value)
        })
        .party(sources, ["by_person", "by_holder", "by_name"], |row| {
            row.record.by.as_ref()
        })
        .text("light", |row| row.record.light.as_ref().into())
        .number("px_per_mm", |row| row.record.px_per_mm.into())
        .boolean("mirrored", |row| row.record.mirrored.into())
        .integer("width_px", |row| row.size().0.into())
        .required()
        .integer("height_px", |row| row.size().1.into())
        .required()
        .address("file", |row| {
            let largest = row.published.sizes.last();
            largest
                .map(|size| format!("{base}/{}", size.address))
                .into()
        })
        .address("service", |row| match &row.published.tiles {
            tiles if tiles.side == 0 => Cell::Empty,
            tiles => format!("{base}/{}", tiles.address).into(),
        })
        .text("rights", |row| row.record.rights.as_ref().into())
        .address("rights_address", |row| {
            rights::uri(row.record.rights_text()).into()
        })
        .text("credit", |row| row.record.credit.as_ref().into())
        .cited(["source", "source_document"], |row| {
            row.record.cite.as_ref().map(|cite| &cite.value)
        })
        .text("source_at", |row| row.record.at.as_ref().into())
        .write(rows)
}
