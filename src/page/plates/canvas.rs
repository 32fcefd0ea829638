//! The canvas of a picture (IIIF Presentation API 3.0): its address and size, the places of points on it, and
//! the content states that open such a place (IIIF Content State API 1.0).
//!
//! A canvas has the pixels of the largest published form of its picture. `exchange` writes the manifests; this
//! file says where canvases and manifests are, for the links on pages.

use std::fmt::Write as _;

use percent_encoding::{AsciiSet, NON_ALPHANUMERIC, utf8_percent_encode};
use serde::Serialize;

use super::viewer::{ViewerPicture, between_published, published_size, viewer_picture};
use crate::model::design::Design;
use crate::model::key::{Key, PictureKey, PictureOwner};
use crate::model::point::Point;
use crate::model::registration::Registration;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::exports::Subject;
use crate::page::setting::pictures::{PublishedPicture, PublishedSize};
use crate::picture::tiles;

/// The name of the file of a manifest.
pub(crate) const MANIFEST: &str = "manifest.json";

/// The media type of manifests and collections (section 6.2 of the Presentation API).
pub(crate) const MANIFEST_TYPE: &str =
    "application/ld+json;profile=\"http://iiif.io/api/presentation/3/context.json\"";

/// A mapped box within so much of its longer side of an upright rectangle is given as one: at 1 in 50 the slant
/// of an edge is smaller than what a reader can see in a frame around a detail.
const UPRIGHT: f64 = 0.02;

/// The address of the canvas of a picture. It follows from the picture's key alone, and not from the page that
/// shows the picture, so that it stays where records are joined. It is an identifier: no file is there, as the
/// standard allows, because the manifest has the whole canvas.
pub(crate) fn canvas_id(here: &Here<'_>, key: &PictureKey) -> String {
    format!("{}/picture/{key}/canvas", base(here))
}

/// The address of the catalogue without a slash at the end.
pub(crate) fn base<'h>(here: &Here<'h>) -> &'h str {
    here.public().settings.address.value.trim_end_matches('/')
}

/// The page that shows a picture: that of the sheet, or of the design.
pub(crate) fn page_of(here: &Here<'_>, key: &PictureKey) -> Address {
    match &key.owner {
        PictureOwner::Impression(record) => {
            Address::Impression(here.joined().page_of(record).clone())
        }
        PictureOwner::Design(design) => Address::Design(design.clone()),
        PictureOwner::Document(document) => Address::Document(document.clone()),
    }
}

/// The address of the manifest that has the canvas of a picture.
pub(crate) fn manifest_id(here: &Here<'_>, page: &Address) -> String {
    format!("{}{MANIFEST}", page.absolute(base(here)))
}

/// Whether a page has a manifest.
pub(crate) fn has_manifest(here: &Here<'_>, page: &Address) -> bool {
    let files = here.book.exports.files.get(&Subject::Page(page.clone()));
    files.is_some_and(|files| files.iter().any(|file| file.path.ends_with(MANIFEST)))
}

/// Width and height of a canvas in px.
pub(crate) fn canvas_size(published: &PublishedPicture) -> Option<(u32, u32)> {
    published_size(published)
}

/// A file of a picture, as other programs get it.
pub(crate) struct PictureFile {
    /// Its full address.
    pub address: String,
    /// Width in px.
    pub width: u32,
    /// Height in px.
    pub height: u32,
}

/// The largest file that shows the whole of a picture: of an image service its size `max`.
pub(crate) fn largest_file(here: &Here<'_>, key: &PictureKey) -> Option<PictureFile> {
    let published = here.book.pictures.get(key)?;
    let Some(service) = service_id(here, key) else {
        return Some(file_of(here, published.sizes.last()?));
    };
    let widths: Vec<_> = published
        .sizes
        .iter()
        .map(|size| (size.width, size.height))
        .collect();
    let tiles = &published.tiles;
    let (width, height) = tiles::largest_whole((tiles.width, tiles.height), &widths);
    Some(PictureFile {
        address: format!("{service}/full/max/0/default.jpg"),
        width,
        height,
    })
}

/// The smallest file of a picture that is at least so wide, else its largest.
pub(crate) fn file_at_least(here: &Here<'_>, key: &PictureKey, width: u32) -> Option<PictureFile> {
    let sizes = &here.book.pictures.get(key)?.sizes;
    let wide_enough = sizes.iter().find(|size| size.width >= width);
    Some(file_of(here, wide_enough.or(sizes.last())?))
}

fn file_of(here: &Here<'_>, size: &PublishedSize) -> PictureFile {
    PictureFile {
        address: format!("{}/{}", base(here), size.address),
        width: size.width,
        height: size.height,
    }
}

/// The address of the image service of a picture; `None` where it has no tiles.
pub(crate) fn service_id(here: &Here<'_>, key: &PictureKey) -> Option<String> {
    let tiles = &here.book.pictures.get(key)?.tiles;
    (tiles.side > 0).then(|| format!("{}/{}", base(here), tiles.address))
}

/// A part of a canvas, in its px; edges at whole numbers.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Region {
    /// The smallest upright rectangle around it: left, top, width, height.
    pub bounds: [u32; 4],
    /// Its corners, clockwise from the upper left, where it is not such a rectangle itself.
    pub corners: Option<[(u32, u32); 4]>,
}

/// The place of a point on a picture: its box on the reference picture, and on a picture that is aligned with it
/// the same box under the map of the alignment. `None` where the picture is not aligned, or does not show the
/// point: those are the pictures of which no detail was cut (docs/definitions.md, "Strips and tones").
pub(crate) fn region(
    here: &Here<'_>,
    design: &Design,
    point: &Point,
    key: &PictureKey,
) -> Option<Region> {
    let area = point.area?.percent();
    let reference = &design.reference_picture.as_ref()?.value;
    let pictures = here.book.pictures;
    let (picture, reference_picture) = (pictures.get(key)?, pictures.get(reference)?);
    let (width, height) = published_size(reference_picture)?;
    let [left, top, wide, high] = area.map(|percent| percent / 100.0);
    let (width, height) = (f64::from(width), f64::from(height));
    let (x, y) = (left * width, top * height);
    let (right, bottom) = (x + wide * width, y + high * height);
    let corners = [(x, y), (right, y), (right, bottom), (x, bottom)];
    if key == reference {
        return Region::of(corners, picture);
    }
    let alignments = here.book.alignments;
    let details = alignments.details.get(key)?;
    details.get(&point.key.value)?;
    let Some(Registration::Aligned(aligned)) = alignments.registrations.get(key) else {
        return None;
    };
    let onto_picture = between_published(picture, &aligned.matrix, reference_picture)?.inverse()?;
    let mut mapped = corners;
    for corner in &mut mapped {
        *corner = onto_picture.apply(corner.0, corner.1)?;
    }
    Region::of(mapped, picture)
}

impl Region {
    /// A region from its corners; what lies outside of the picture is cut off. `None` where nothing is left.
    fn of(corners: [(f64, f64); 4], picture: &PublishedPicture) -> Option<Region> {
        let (width, height) = published_size(picture)?;
        let within = corners.map(|(x, y)| {
            (
                x.clamp(0.0, f64::from(width)),
                y.clamp(0.0, f64::from(height)),
            )
        });
        let xs = within.map(|corner| corner.0);
        let ys = within.map(|corner| corner.1);
        let least = |of: [f64; 4]| of.into_iter().fold(f64::INFINITY, f64::min);
        let most = |of: [f64; 4]| of.into_iter().fold(0.0, f64::max);
        let (left, top, right, bottom) = (least(xs), least(ys), most(xs), most(ys));
        let bounds = [
            pixel(left),
            pixel(top),
            pixel(right).checked_sub(pixel(left))?,
            pixel(bottom).checked_sub(pixel(top))?,
        ];
        if bounds[2] == 0 || bounds[3] == 0 {
            return None;
        }
        let upright = [(left, top), (right, top), (right, bottom), (left, bottom)];
        let allowed = UPRIGHT * (right - left).max(bottom - top);
        let is_upright = within.iter().zip(&upright).all(|(corner, upright)| {
            (corner.0 - upright.0).abs() <= allowed && (corner.1 - upright.1).abs() <= allowed
        });
        Some(Region {
            bounds,
            corners: (!is_upright).then(|| within.map(|(x, y)| (pixel(x), pixel(y)))),
        })
    }

    /// `x,y,width,height`, as in a fragment `#xywh=` (Media Fragments URI 1.0).
    pub(crate) fn xywh(&self) -> String {
        self.bounds.map(|number| number.to_string()).join(",")
    }

    /// Its outline as an SVG, where it is no upright rectangle.
    pub(crate) fn outline(&self) -> Option<String> {
        let mut path = String::new();
        for (at, (x, y)) in self.corners?.into_iter().enumerate() {
            let _ = write!(path, "{}{x},{y}", if at == 0 { 'M' } else { 'L' });
        }
        Some(format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\"><path d=\"{path}Z\"/></svg>"
        ))
    }
}

/// The nearest whole pixel of a number that is at least 0 and no larger than a picture.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "clamped to the picture before"
)]
fn pixel(at: f64) -> u32 {
    at.round() as u32
}

/// A content state: the target of an annotation that is implied (section 2.2.3 of the standard).
#[derive(Serialize)]
struct ContentState<'a> {
    id: String,
    r#type: &'static str,
    #[serde(rename = "partOf")]
    part_of: [StateManifest<'a>; 1],
}

#[derive(Serialize)]
struct StateManifest<'a> {
    id: &'a str,
    r#type: &'static str,
}

/// The content state that opens a picture, or a part of it, as the value of a parameter `iiif-content`.
pub(crate) fn content_state(here: &Here<'_>, key: &PictureKey, region: Option<&Region>) -> String {
    let canvas = canvas_id(here, key);
    let manifest = manifest_id(here, &page_of(here, key));
    let state = ContentState {
        id: match region {
            Some(region) => format!("{canvas}#xywh={}", region.xywh()),
            None => canvas,
        },
        r#type: "Canvas",
        part_of: [StateManifest {
            id: &manifest,
            r#type: "Manifest",
        }],
    };
    encoded(&serde_json::to_string(&state).unwrap_or_default())
}

/// The link to the page that shows a picture, which opens it at a region.
pub(crate) fn place_href(here: &Here<'_>, key: &PictureKey, region: Option<&Region>) -> String {
    let page = here.href(&page_of(here, key));
    format!("{page}?iiif-content={}", content_state(here, key, region))
}

/// The link to the place of a point on a picture; `None` where the picture does not show it.
pub(crate) fn point_href(
    here: &Here<'_>,
    design: &Design,
    point: &Key,
    key: &PictureKey,
) -> Option<String> {
    let region = region(here, design, design.point(point)?, key)?;
    Some(place_href(here, key, Some(&region)))
}

/// A picture on the page that shows its sheet or design, with the addresses of its canvas and manifest, by which
/// content states name it (`assets/place.js`).
#[derive(Serialize)]
struct PlacedPicture {
    #[serde(flatten)]
    picture: ViewerPicture,
    canvas: String,
    manifest: String,
}

/// The viewer's data of a picture as JSON, for an attribute.
pub(crate) fn attribute(here: &Here<'_>, key: &PictureKey) -> Option<String> {
    let placed = PlacedPicture {
        picture: viewer_picture(here, key)?,
        canvas: canvas_id(here, key),
        manifest: manifest_id(here, &page_of(here, key)),
    };
    serde_json::to_string(&placed).ok()
}

/// The characters that `encodeURIComponent` leaves as they are, beside letters and digits (ECMA-262).
const COMPONENT: &AsciiSet = &NON_ALPHANUMERIC
    .remove(b'-')
    .remove(b'_')
    .remove(b'.')
    .remove(b'!')
    .remove(b'~')
    .remove(b'*')
    .remove(b'\'')
    .remove(b'(')
    .remove(b')');

/// The content-state encoding (section 6 of the standard): `encodeURIComponent`, then base64url without padding.
fn encoded(state: &str) -> String {
    const SIGNS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
    let text = utf8_percent_encode(state, COMPONENT).to_string();
    let mut out = String::with_capacity(text.len().div_ceil(3) * 4);
    for three in text.as_bytes().chunks(3) {
        let byte = |at: usize| three.get(at).copied().map_or(0, u32::from);
        let bits = byte(0) << 16 | byte(1) << 8 | byte(2);
        // Two bytes take three signs, one takes two: what is left are the padding's places.
        for sign in 0..=three.len() {
            let at = bits >> (18 - 6 * sign) & 63;
            out.push(char::from(SIGNS[at as usize]));
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::page::setting::pictures::Tiles;

    /// Section 6.3.2 of the IIIF Content State API 1.0: the condensed example and its encoding.
    #[test]
    fn the_example_of_the_standard_is_encoded_as_there() {
        let condensed = r#"{"id":"https://example.org/object1/canvas7#xywh=1000,2000,1000,2000","type":"Canvas","partOf":[{"id":"https://example.org/object1/manifest","type":"Manifest"}]}"#;
        let expected = "JTdCJTIyaWQlMjIlM0ElMjJodHRwcyUzQSUyRiUyRmV4YW1wbGUub3JnJTJGb2JqZWN0MSUyRmNhbnZhczclMjN4eXdoJTNEMTAwMCUyQzIwMDAlMkMxMDAwJTJDMjAwMCUyMiUyQyUyMnR5cGUlMjIlM0ElMjJDYW52YXMlMjIlMkMlMjJwYXJ0T2YlMjIlM0ElNUIlN0IlMjJpZCUyMiUzQSUyMmh0dHBzJTNBJTJGJTJGZXhhbXBsZS5vcmclMkZvYmplY3QxJTJGbWFuaWZlc3QlMjIlMkMlMjJ0eXBlJTIyJTNBJTIyTWFuaWZlc3QlMjIlN0QlNUQlN0Q";
        assert_eq!(encoded(condensed), expected);
        let state = ContentState {
            id: "https://example.org/object1/canvas7#xywh=1000,2000,1000,2000".to_owned(),
            r#type: "Canvas",
            part_of: [StateManifest {
                id: "https://example.org/object1/manifest",
                r#type: "Manifest",
            }],
        };
        assert_eq!(serde_json::to_string(&state).unwrap(), condensed);
    }

    /// RFC 4648, section 10: the test vectors of base64, without padding.
    #[test]
    fn every_length_is_encoded() {
        let vectors = [
            ("", ""),
            ("f", "Zg"),
            ("fo", "Zm8"),
            ("foo", "Zm9v"),
            ("foob", "Zm9vYg"),
            ("fooba", "Zm9vYmE"),
            ("foobar", "Zm9vYmFy"),
        ];
        for (text, expected) in vectors {
            assert_eq!(encoded(text), expected);
        }
    }

    fn picture(width: u32, height: u32) -> PublishedPicture {
        PublishedPicture {
            width,
            height,
            sizes: vec![PublishedSize {
                width,
                height,
                address: "picture/one.jpg".to_owned(),
            }],
            tiles: Tiles::default(),
        }
    }

    #[test]
    fn an_upright_box_is_a_rectangle_and_a_slanted_one_keeps_its_corners() {
        let upright = [(10.2, 20.0), (110.0, 19.8), (109.6, 60.4), (9.9, 60.0)];
        let region = Region::of(upright, &picture(200, 100)).unwrap();
        assert_eq!(
            (region.xywh().as_str(), region.outline()),
            ("10,20,100,40", None)
        );
        let slanted = [(10.0, 20.0), (110.0, 30.0), (106.0, 70.0), (6.0, 60.0)];
        let region = Region::of(slanted, &picture(200, 100)).unwrap();
        assert_eq!(region.xywh(), "6,20,104,50");
        let outline = region.outline().unwrap();
        assert!(outline.contains("M10,20L110,30L106,70L6,60Z"), "{outline}");
    }

    #[test]
    fn what_lies_outside_of_the_picture_is_cut_off() {
        let half = [(-50.0, 10.0), (50.0, 10.0), (50.0, 90.0), (-50.0, 90.0)];
        let region = Region::of(half, &picture(200, 100)).unwrap();
        assert_eq!(region.xywh(), "0,10,50,80");
        let outside = [(210.0, 10.0), (250.0, 10.0), (250.0, 90.0), (210.0, 90.0)];
        assert_eq!(Region::of(outside, &picture(200, 100)), None);
    }
}
