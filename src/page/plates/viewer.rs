//! The data of the viewer (`assets/viewer.js`) for a picture, and its scale in millimetres of the print
//! a pixel.

use serde::Serialize;

use crate::model::design::Design;
use crate::model::impression::Impression;
use crate::model::key::{PictureKey, PictureOwner};
use crate::model::picture::{Picture, View};
use crate::model::registration::Homography;
use crate::model::size::Size;
use crate::model::words::Side;
use crate::page::setting::book::Here;
use crate::page::setting::pictures::PublishedPicture;
use crate::study::sizes::of_sheet;

/// The largest relative difference between the scales along the two sides of an image. Where it is larger,
/// the box or the size does not belong to this image (the block was cut down since, or the box follows the
/// platemark), and no scale is given.
const MOST_APART: f64 = 0.03;

/// A picture with the data that the viewer needs.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub(crate) struct ViewerPicture {
    /// Width in px of its largest published form; every other number is in these pixels.
    pub width: u32,
    /// Height in px.
    pub height: u32,
    /// Its files: width in px and relative address, smallest first.
    sizes: Vec<(u32, String)>,
    /// Its tiles, where it has any.
    #[serde(skip_serializing_if = "Option::is_none")]
    tiles: Option<TileData>,
    /// Millimetres of the print a pixel, where that is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mm: Option<f64>,
}

#[derive(Clone, Debug, PartialEq, Serialize)]
struct TileData {
    address: String,
    side: u32,
    factors: Vec<u32>,
}

/// The viewer's data of a picture; `None` where it may not be shown.
pub(crate) fn viewer_picture(here: &Here<'_>, key: &PictureKey) -> Option<ViewerPicture> {
    let published = here.book.pictures.get(key)?;
    let (width, height) = published_size(published)?;
    let sizes = published
        .sizes
        .iter()
        .map(|size| (size.width, format!("{}{}", here.root, size.address)));
    let tiles = &published.tiles;
    Some(ViewerPicture {
        width,
        height,
        sizes: sizes.collect(),
        tiles: has_tiles(published).then(|| TileData {
            address: format!("{}{}", here.root, tiles.address),
            side: tiles.side,
            factors: tiles.factors.clone(),
        }),
        mm: mm_a_pixel(here, key),
    })
}

fn has_tiles(published: &PublishedPicture) -> bool {
    let tiles = &published.tiles;
    tiles.side > 0 && !tiles.factors.is_empty() && tiles.width > 0 && tiles.height > 0
}

/// Width and height in px of a picture's largest published form.
pub(crate) fn published_size(published: &PublishedPicture) -> Option<(u32, u32)> {
    if has_tiles(published) {
        return Some((published.tiles.width, published.tiles.height));
    }
    let largest = published.sizes.last()?;
    Some((largest.width, largest.height))
}

/// The map from a picture's published pixels to those of another, with edges of pixels at whole numbers
/// as on a page. `map` maps the pixels of one photograph to the other's, with centres at whole numbers.
pub(crate) fn between_published(
    from: &PublishedPicture,
    map: &Homography,
    to: &PublishedPicture,
) -> Option<Homography> {
    let half = |by: f64| Homography::new([1.0, 0.0, by, 0.0, 1.0, by, 0.0, 0.0, 1.0]);
    to_photograph(from)?
        .then(&half(-0.5)?)?
        .then(map)?
        .then(&half(0.5)?)?
        .then(&to_photograph(to)?.inverse()?)
}

/// The map from a picture's published pixels to its photograph's, with edges at whole numbers.
fn to_photograph(published: &PublishedPicture) -> Option<Homography> {
    let (width, height) = published_size(published)?;
    let across = f64::from(published.width) / f64::from(width);
    let down = f64::from(published.height) / f64::from(height);
    Homography::new([across, 0.0, 0.0, 0.0, down, 0.0, 0.0, 0.0, 1.0])
}

/// Millimetres of the print a pixel of a picture's largest published form: as the record says; else from the box around its
/// image and the size of that image; else by alignment with the reference picture; else, for a sheet
/// without measurements, from its box and the size that its state, its printing or the design records.
fn mm_a_pixel(here: &Here<'_>, key: &PictureKey) -> Option<f64> {
    let of_sheet = |impression: &Impression| impression.sheet.image.own().copied();
    let own = owner(here, key).and_then(of_sheet);
    let design = design_of(key).and_then(|design| here.public().designs.get(design));
    let of_design = design.and_then(|design| image_size(design, owner(here, key)));
    by_scale(here, key)
        .or_else(|| own.and_then(|size| by_box(here, key, size)))
        .or_else(|| through_reference(here, key))
        .or_else(|| by_box(here, key, of_design.filter(|_| own.is_none())?))
}

/// The size of the image on a sheet, by its state and printing; of a picture of the design, the design's. `None`
/// where the states that a sheet may be of differ in size.
fn image_size(design: &Design, impression: Option<&Impression>) -> Option<Size> {
    let Some(impression) = impression else {
        return design.size.image.own().copied();
    };
    match of_sheet(design, impression, |sizes| &sizes.image).as_slice() {
        [only] => only.own().copied(),
        _ => None,
    }
}

/// The design that a picture belongs to; `None` for a picture of a document.
fn design_of(key: &PictureKey) -> Option<&crate::model::key::Key> {
    match &key.owner {
        PictureOwner::Impression(impression) => Some(&impression.design),
        PictureOwner::Design(design) => Some(design),
        PictureOwner::Document(_) => None,
    }
}

fn owner<'b>(here: &Here<'b>, key: &PictureKey) -> Option<&'b Impression> {
    match &key.owner {
        PictureOwner::Impression(impression) => here.public().impression(impression),
        PictureOwner::Design(_) | PictureOwner::Document(_) => None,
    }
}

pub(crate) fn is_whole_recto(picture: &Picture) -> bool {
    picture.view == View::Whole && picture.side == Side::Recto
}

/// By the pixels that the record counts in a millimetre of the file.
fn by_scale(here: &Here<'_>, key: &PictureKey) -> Option<f64> {
    let scale = here.public().picture(key)?.px_per_mm?;
    let published = here.book.pictures.get(key)?;
    let (width, _) = published_size(published)?;
    Some(f64::from(published.width) / f64::from(width) / scale)
}

fn by_box(here: &Here<'_>, key: &PictureKey, size: Size) -> Option<f64> {
    let picture = here.public().picture(key)?;
    let (width, height) = published_size(here.book.pictures.get(key)?)?;
    let [_, _, box_width, box_height] = picture.area.filter(|_| is_whole_recto(picture))?.percent();
    let across = size.width_mm() / (f64::from(width) * box_width / 100.0);
    let down = size.height_mm() / (f64::from(height) * box_height / 100.0);
    let mean = f64::midpoint(across, down);
    ((across - down).abs() <= MOST_APART * mean).then_some(mean)
}

fn through_reference(here: &Here<'_>, key: &PictureKey) -> Option<f64> {
    let design = here.public().designs.get(design_of(key)?)?;
    let reference = &design.reference_picture.as_ref()?.value;
    if reference == key {
        return None;
    }
    let map = here
        .book
        .alignments
        .registrations
        .get(key)?
        .onto_reference()?;
    let (from, to) = (
        here.book.pictures.get(key)?,
        here.book.pictures.get(reference)?,
    );
    let map = between_published(from, &map, to)?;
    let (width, height) = published_size(from)?;
    let (x, y) = (f64::from(width) / 2.0, f64::from(height) / 2.0);
    Some(mm_a_pixel(here, reference)? * magnification(&map, x, y)?)
}

/// The magnification of lengths by a map at a place.
fn magnification(map: &Homography, x: f64, y: f64) -> Option<f64> {
    let at = map.apply(x, y)?;
    let right = map.apply(x + 1.0, y)?;
    let below = map.apply(x, y + 1.0)?;
    let area = (right.0 - at.0) * (below.1 - at.1) - (right.1 - at.1) * (below.0 - at.0);
    Some(area.abs().sqrt())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::page::setting::pictures::{PublishedSize, Tiles};

    fn published(photograph: (u32, u32), tiles: (u32, u32)) -> PublishedPicture {
        PublishedPicture {
            width: photograph.0,
            height: photograph.1,
            sizes: vec![PublishedSize {
                width: tiles.0,
                height: tiles.1,
                address: "picture/one.jpg".to_owned(),
            }],
            tiles: Tiles::default(),
        }
    }

    #[test]
    fn corners_lie_on_corners_whatever_the_published_sizes() {
        let (small, large) = (
            published((400, 200), (100, 50)),
            published((800, 400), (800, 400)),
        );
        // Twice as large about the edges: as photographs, what lies at x lies at 2x + 1/2.
        let map = Homography::scaling(2.0, 2.0).unwrap();
        let laid = between_published(&small, &map, &large).unwrap();
        for (from, to) in [((0.0, 0.0), (0.0, 0.0)), ((100.0, 50.0), (800.0, 400.0))] {
            let at = laid.apply(from.0, from.1).unwrap();
            assert!(
                (at.0 - to.0).abs() < 1e-9 && (at.1 - to.1).abs() < 1e-9,
                "{at:?}"
            );
        }
        assert!((magnification(&laid, 50.0, 25.0).unwrap() - 8.0).abs() < 1e-9);
    }
}
