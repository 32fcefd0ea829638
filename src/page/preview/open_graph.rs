//! What a link to a page shows: title, sentence and picture (the Open Graph protocol, ogp.me; from memory).

use serde::Serialize;

use crate::model::key::PictureKey;
use crate::page::plates::canvas::file_at_least;
use crate::page::plates::figures;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::leaf::Leaf;

/// The width in px that programs ask for in the picture of a link: twice the 600 px that they show (common practice,
/// no source).
const WIDTH: u32 = 1200;

/// The preview of a page.
#[derive(Serialize)]
pub(crate) struct LinkPreview {
    title: String,
    /// The language of the catalogue, with `_` for `-`.
    locale: String,
    image: Option<PreviewImage>,
}

/// The picture of a link.
#[derive(Serialize)]
pub(crate) struct PreviewImage {
    /// Its full address.
    pub address: String,
    width: u32,
    height: u32,
}

/// The preview of `leaf`; `None` of the page for an address that leads to nothing.
pub(crate) fn of_page(here: &Here<'_>, leaf: &Leaf) -> Option<LinkPreview> {
    (*here.address != Address::NotFound).then(|| LinkPreview {
        title: leaf.title.clone(),
        locale: here.language().replace('-', "_"),
        image: image(here),
    })
}

/// The picture of a link to a page: of a sheet its leading one, of a design and everything below it that of the design.
pub(crate) fn image(here: &Here<'_>) -> Option<PreviewImage> {
    let key = picture(here)?;
    let file = file_at_least(here, &key, WIDTH)?;
    Some(PreviewImage {
        address: file.address,
        width: file.width,
        height: file.height,
    })
}

fn picture(here: &Here<'_>) -> Option<PictureKey> {
    let designs = &here.public().designs;
    match here.address {
        Address::Impression(key) => {
            let page = here.joined().page_of(key);
            figures::leading_picture(here, here.public().impression(page)?)
        }
        Address::Design(key)
        | Address::DesignCensus(key)
        | Address::IdentificationKey(key)
        | Address::ExaminationSheet(key)
        | Address::ChosenComparison(key)
        | Address::Point(key, _)
        | Address::Comparison(key, _) => figures::design_picture(here, designs.get(key)?),
        Address::Opening => {
            let mut designs = here.designs_in_order();
            designs.find_map(|design| figures::design_picture(here, design))
        }
        _ => None,
    }
}
