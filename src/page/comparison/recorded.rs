//! The page of a recorded comparison: two to four impressions side by side, then their observations
//! point by point, those that differ first.

use serde::Serialize;

use super::observations::Observations;
use super::overlay;
use crate::model::design::{Comparison, Design};
use crate::model::impression::Impression;
use crate::page::plates::figures;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::page::setting::number_size::number_class;
use crate::page::setting::pictures::{Plate, Setting};
use crate::page::setting::words::Argument;

#[derive(Serialize)]
struct View {
    /// The page is as wide as the screen.
    wall: bool,
    number: String,
    number_class: &'static str,
    design: CleanHtml,
    title: String,
    brief: CleanHtml,
    plates: Vec<Plate>,
    heads: Vec<CleanHtml>,
    verdict: String,
    observations: Observations,
    /// The data of the script.
    data: CleanHtml,
}

pub(crate) fn page(here: &Here<'_>, design: &Design, comparison: &Comparison) -> Leaf {
    let words = here.words();
    let sheets: Vec<&Impression> = comparison
        .of
        .iter()
        .filter_map(|key| here.public().impression(&key.value))
        .collect();
    let observations = Observations::of(here, design, &sheets).differing_first();
    let view = View {
        wall: true,
        number: design.number.clone(),
        number_class: number_class(&design.number),
        design: here.design(&design.key),
        title: words.count("impressions-compared", sheets.len()),
        brief: CleanHtml::text(comparison.why.as_deref().unwrap_or_default()),
        plates: sheets.iter().map(|i| plate(here, design, i)).collect(),
        heads: sheets.iter().map(|i| here.impression_by(&i.key)).collect(),
        verdict: observations.in_words(here),
        observations,
        data: overlay::data(here, design, &sheets, Vec::new()),
    };
    let keys: Vec<String> = sheets.iter().map(|i| here.record_number(&i.key)).collect();
    let keys = keys.join(", ");
    let title = words.with("title-compared", &[("keys", Argument::Text(&keys))]);
    let siglum = &here.public().settings.siglum.value;
    let described = match &comparison.why {
        Some(why) => format!("{title}. {why}"),
        None => title.clone(),
    };
    Leaf::new(here.address, title, "pages/comparison.html", &view)
        .described(described)
        .cited_as(format!("{siglum} {keys}"))
}

/// The plate of a sheet; only the caption where it has no picture.
pub(crate) fn plate(here: &Here<'_>, design: &Design, impression: &Impression) -> Plate {
    figures::leading_picture(here, impression)
        .and_then(|key| figures::plate(here, &key, None, Setting::Abreast))
        .unwrap_or_else(|| Plate {
            image: None,
            stands_alone: false,
            href: None,
            viewer: None,
            caption: figures::caption_of_sheet(here, design, impression),
            credit: None,
        })
}
