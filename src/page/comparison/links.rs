//! Links to comparisons: the recorded ones, and the one that the reader chooses.

use crate::model::design::Design;
use crate::model::impression::Impression;
use crate::model::key::ImpressionKey;
use crate::page::phrases::enumeration;
use crate::page::plates::figures;
use crate::page::setting::address::Address;
use crate::page::setting::book::{Book, Here};
use crate::page::setting::html::CleanHtml;

/// The recorded comparisons: "14.2 and 14.7: before the moon and after".
pub(crate) fn recorded(here: &Here<'_>, design: &Design) -> Vec<CleanHtml> {
    design
        .comparisons
        .iter()
        .zip(1..)
        .map(|(comparison, place)| {
            let names: Vec<_> = comparison
                .of
                .iter()
                .map(|key| CleanHtml::span("handle", &CleanHtml::text(&key.value.to_string())))
                .collect();
            let all = enumeration::together(here, &names);
            let address = Address::Comparison(design.key.clone(), place);
            let link = CleanHtml::link(&here.href(&address), &all);
            match &comparison.why {
                Some(why) => link.then(": ").then(why),
                None => link,
            }
        })
        .collect()
}

/// The recorded comparisons of an impression with others.
pub(crate) fn with_sheet(
    here: &Here<'_>,
    design: &Design,
    impression: &Impression,
) -> Vec<CleanHtml> {
    design
        .comparisons
        .iter()
        .zip(1..)
        .filter(|(comparison, _)| comparison.of.iter().any(|k| k.value == impression.key))
        .map(|(comparison, place)| {
            let others: Vec<_> = comparison
                .of
                .iter()
                .filter(|k| k.value != impression.key)
                .map(|k| CleanHtml::span("handle", &CleanHtml::text(&k.value.to_string())))
                .collect();
            let all = enumeration::together(here, &others);
            let text = here
                .words()
                .html("compared-with", None, &[("others", &all)]);
            let address = Address::Comparison(design.key.clone(), place);
            let link = CleanHtml::link(&here.href(&address), &text);
            match &comparison.why {
                Some(why) => link.then(": ").then(why),
                None => link,
            }
        })
        .collect()
}

/// The sheets of a design that can be compared: those with a picture or an observation.
pub(crate) fn comparable<'d>(book: &Book<'_>, design: &'d Design) -> Vec<&'d Impression> {
    let has_picture = |sheet: &Impression| {
        let mut names = sheet.pictures.iter().map(|picture| &picture.name.value);
        names.any(|name| book.pictures.contains_key(&figures::key_of(sheet, name)))
    };
    design
        .impressions
        .values()
        .filter(|sheet| !sheet.standing.is_withdrawn())
        .filter(|sheet| !sheet.observed.is_empty() || has_picture(sheet))
        .collect()
}

/// Whether a design has a comparison to choose: at least two sheets that can be compared.
pub(crate) fn has_chosen(book: &Book<'_>, design: &Design) -> bool {
    comparable(book, design).len() > 1
}

/// The link to that comparison, with one sheet already chosen where it can be compared.
pub(crate) fn chosen_href(
    here: &Here<'_>,
    design: &Design,
    sheet: Option<&ImpressionKey>,
) -> Option<String> {
    let sheets = comparable(here.book, design);
    if sheets.len() < 2 {
        return None;
    }
    let page = here.href(&Address::ChosenComparison(design.key.clone()));
    match sheet {
        None => Some(page),
        Some(key) => sheets
            .iter()
            .any(|sheet| sheet.key == *key)
            .then(|| format!("{page}#of={key}")),
    }
}
