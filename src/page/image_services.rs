//! The `info.json` of each published picture: what its image service offers (IIIF Image API 3.0, level
//! 0, section 5). Its tiles are files beside it (`picture::tiles`).

use serde::Serialize;

use super::rights;
use super::{Input, PublishedPicture};
use crate::model::key::PictureKey;
use crate::picture::tiles;

/// Path and content of every `info.json`.
pub(super) fn files<'a>(input: &Input<'a>) -> impl Iterator<Item = (String, Vec<u8>)> + 'a {
    let base = input.public.settings.address.value.trim_end_matches('/');
    let public = input.public;
    let file = move |(key, picture): (&PictureKey, &PublishedPicture)| {
        let rights = public.picture(key).and_then(|p| rights::uri(&p.rights));
        let info = Info::of(picture, base, rights);
        let mut bytes = serde_json::to_vec(&info).unwrap_or_default();
        bytes.push(b'\n');
        (format!("{}/info.json", picture.tiles.address), bytes)
    };
    input.pictures.iter().map(file)
}

/// What a service says of itself.
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
        // The largest is `max` and not listed: its other form would have to be a file too.
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
