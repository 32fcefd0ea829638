//! The `info.json` of each published picture, which describes its image service (IIIF Image API 3.0,
//! level 0, section 5). Its tiles are files beside it (`picture::tiles`).

use serde::Serialize;

use super::format::{Format, Sources};
use crate::page::{Here, PublishedPicture, Subject, rights};
use crate::picture::tiles;

/// One file for each published picture, in the folder of its tiles.
pub(super) const FORMAT: Format = Format {
    name: "image-service",
    file: "info.json",
    folders: &["picture/…/"],
    // IIIF Image API 3.0, section 5.1.
    media_type: "application/ld+json;profile=\"http://iiif.io/api/image/3/context.json\"",
    relation: "describedby",
    subjects,
    write,
};

fn subjects(sources: &Sources<'_>) -> Vec<Subject> {
    let with_tiles = sources.pictures.iter().filter(|(_, p)| p.tiles.side > 0);
    with_tiles
        .map(|(key, _)| Subject::Picture(key.clone()))
        .collect()
}

fn write(here: &Here<'_>, subject: &Subject) -> Option<Vec<u8>> {
    let Subject::Picture(key) = subject else {
        return None;
    };
    let picture = here.book.pictures.get(key)?;
    let public = here.public();
    let base = public.settings.address.value.trim_end_matches('/');
    let rights = public
        .picture(key)
        .and_then(|p| rights::uri(p.rights_text()));
    let mut bytes = serde_json::to_vec(&Info::of(picture, base, rights)).unwrap_or_default();
    bytes.push(b'\n');
    Some(bytes)
}

/// The description of a service.
#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct Info {
    #[serde(rename = "@context")]
    context: &'static str,
    id: String,
    #[serde(rename = "type")]
    kind: &'static str,
    protocol: &'static str,
    profile: &'static str,
    width: u32,
    height: u32,
    #[serde(skip_serializing_if = "Option::is_none")]
    max_width: Option<u32>,
    #[serde(skip_serializing_if = "Option::is_none")]
    max_height: Option<u32>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    sizes: Vec<Size>,
    tiles: [TileSet; 1],
    #[serde(skip_serializing_if = "Option::is_none")]
    rights: Option<String>,
}

#[derive(Serialize)]
struct Size {
    width: u32,
    height: u32,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct TileSet {
    width: u32,
    height: u32,
    scale_factors: Vec<u32>,
}

impl Info {
    fn of(picture: &PublishedPicture, base: &str, rights: Option<String>) -> Info {
        let service = &picture.tiles;
        let size = (service.width, service.height);
        let widths: Vec<_> = picture.sizes.iter().map(|s| (s.width, s.height)).collect();
        let largest = tiles::largest_whole(size, &widths);
        // The largest size is offered as `max` and is not listed: listed, it would have a second address and
        // need a second file.
        let others = tiles::listed_sizes(size, &widths).into_iter();
        let limit = Some(largest).filter(|largest| *largest != size);
        Info {
            context: "http://iiif.io/api/image/3/context.json",
            id: format!("{base}/{}", service.address),
            kind: "ImageService3",
            protocol: "http://iiif.io/api/image",
            profile: "level0",
            width: service.width,
            height: service.height,
            max_width: limit.map(|(width, _)| width),
            max_height: limit.map(|(_, height)| height),
            sizes: others
                .map(|(width, height)| Size { width, height })
                .collect(),
            tiles: [TileSet {
                width: service.side,
                height: service.side,
                scale_factors: service.factors.clone(),
            }],
            rights,
        }
    }
}
