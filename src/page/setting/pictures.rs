//! Published pictures as pages need them: files, sizes, captions.

use std::collections::{BTreeMap, BTreeSet};

use serde::Serialize;

use super::html::CleanHtml;
use crate::model::key::{Key, PictureKey};
use crate::model::registration::Registration;
pub use crate::picture::Tone;

/// The pictures that may be published.
pub type Pictures = BTreeMap<PictureKey, PublishedPicture>;

/// The results of alignment for each picture that may be published.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Alignments {
    /// How each whole picture of the reference's side is aligned with its design's reference picture.
    pub registrations: BTreeMap<PictureKey, Registration>,
    /// The part of a picture that shows a point, cut along the reference's axes, by point.
    pub details: BTreeMap<PictureKey, BTreeMap<Key, PublishedSize>>,
    /// The small form of a picture, cut to the image or to the sheet, where it could be cut.
    pub small: BTreeMap<PictureKey, PublishedSize>,
    /// The pictures that show the whole sheet on an even ground of their own.
    pub on_ground: BTreeSet<PictureKey>,
    /// The tone of a point's part of a picture, relative to its bare paper, by point.
    pub tones: BTreeMap<PictureKey, BTreeMap<Key, Tone>>,
}

/// A picture that may be published.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PublishedPicture {
    /// Width in px of the photograph, upright.
    pub width: u32,
    /// Height in px of the photograph, upright.
    pub height: u32,
    /// Its files, smallest first; at least one.
    pub sizes: Vec<PublishedSize>,
    /// Its tiles.
    pub tiles: Tiles,
}

/// A picture as an image service of static files (IIIF Image API 3.0, level 0).
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Tiles {
    /// The address of the service, relative to the catalogue, without a slash at the end.
    pub address: String,
    /// Width in px of the largest published form.
    pub width: u32,
    /// Height in px of the largest published form.
    pub height: u32,
    /// The side of a tile in px.
    pub side: u32,
    /// How many times each level is reduced: 1, 2, 4 ….
    pub factors: Vec<u32>,
}

/// One file of a picture.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PublishedSize {
    /// Width in px.
    pub width: u32,
    /// Height in px.
    pub height: u32,
    /// Its address, relative to the catalogue: `picture/NAME.jpg`.
    pub address: String,
}

/// The position of a picture on a page, which decides how wide the browser shows it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Setting {
    /// The leading plate, across margin and text.
    Leading,
    /// The plate of the opening page, beside its title.
    Wide,
    /// One of a gallery.
    Gallery,
    /// Two to four abreast.
    Abreast,
}

impl Setting {
    /// The attribute `sizes`, which follows the columns of the theme's `sheet.css`.
    fn sizes(self) -> &'static str {
        match self {
            Setting::Leading => "(max-width: 46em) 100vw, 44rem",
            Setting::Wide => "(max-width: 46em) 100vw, 36rem",
            Setting::Gallery => "(max-width: 46em) 44vw, 15rem",
            Setting::Abreast => "(max-width: 46em) 100vw, 30rem",
        }
    }

    /// Whether it stands at the top of its page, so that the browser must load it at once.
    fn is_at_the_top(self) -> bool {
        matches!(self, Setting::Leading | Setting::Wide)
    }
}

/// The attributes of an `img` element.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Image {
    /// The file for browsers that do not read `srcset`: the middle size.
    pub src: String,
    /// All files with their widths.
    pub srcset: String,
    /// How wide it will be shown.
    pub sizes: &'static str,
    /// Width in px of the largest file.
    pub width: u32,
    /// Height in px of the largest file.
    pub height: u32,
    /// The alternative text.
    pub alt: String,
    /// Whether the browser may load it when it scrolls into view.
    pub lazy: bool,
}

impl Image {
    /// A single file.
    pub fn of_size(size: &PublishedSize, root: &str, alt: String, setting: Setting) -> Image {
        let src = format!("{root}{}", size.address);
        Image {
            srcset: format!("{src} {}w", size.width),
            src,
            sizes: setting.sizes(),
            width: size.width,
            height: size.height,
            alt,
            lazy: !setting.is_at_the_top(),
        }
    }

    /// `picture` on a page whose root is `root`.
    pub fn new(
        picture: &PublishedPicture,
        root: &str,
        alt: String,
        setting: Setting,
    ) -> Option<Image> {
        let largest = picture.sizes.last()?;
        let middle = picture.sizes.get(picture.sizes.len() / 2)?;
        let srcset: Vec<String> = picture
            .sizes
            .iter()
            .map(|size| format!("{root}{} {}w", size.address, size.width))
            .collect();
        Some(Image {
            src: format!("{root}{}", middle.address),
            srcset: srcset.join(", "),
            sizes: setting.sizes(),
            width: largest.width,
            height: largest.height,
            alt,
            lazy: !setting.is_at_the_top(),
        })
    }
}

/// A small picture in a wall or a list: one file.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SmallImage {
    /// The file.
    pub src: String,
    /// Its width in px.
    pub width: u32,
    /// Its height in px.
    pub height: u32,
}

impl SmallImage {
    /// The file of one size on a page whose root is `root`.
    pub fn new(size: &PublishedSize, root: &str) -> SmallImage {
        SmallImage {
            src: format!("{root}{}", size.address),
            width: size.width,
            height: size.height,
        }
    }
}

/// A picture with its caption and credit.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Plate {
    /// The picture; `None` where none may be shown. The page then states that.
    pub image: Option<Image>,
    /// The page or file that it links to.
    pub href: Option<String>,
    /// The viewer's data (`plates::viewer`), where the viewer may open the picture on the page.
    #[serde(rename = "closer")]
    pub viewer: Option<String>,
    /// Whether it stands without a ground of the page's: it has one of its own, or is cut to what it shows.
    pub stands_alone: bool,
    /// The caption: what the picture shows, its holder and accession number.
    pub caption: CleanHtml,
    /// The credit: the owner of the photograph, and the rights.
    pub credit: Option<CleanHtml>,
}
