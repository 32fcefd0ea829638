//! Links to comparisons: the recorded ones, and the one that the reader chooses.

use std::collections::{BTreeMap, BTreeSet};

use super::sheets::ComparedSheet;
use crate::model::design::{Comparison, Design};
use crate::model::impression::Impression;
use crate::model::key::Key;
use crate::model::occurrence::{MentionRole, RecordId};
use crate::model::public::Public;
use crate::page::phrases::enumeration;
use crate::page::plates::figures;
use crate::page::setting::address::Address;
use crate::page::setting::book::{Book, Here};
use crate::page::setting::html::CleanHtml;
use crate::page::setting::pictures::Pictures;

/// The sheets of a recorded comparison, with their designs.
pub(super) fn sheets_of<'b>(here: &Here<'b>, comparison: &Comparison) -> Vec<ComparedSheet<'b>> {
    let public = here.public();
    let sheets = comparison.of.iter();
    sheets
        .filter_map(|key| {
            let design = public.designs.get(&key.value.design)?;
            Some((design, public.impression(&key.value)?))
        })
        .collect()
}

/// The comparisons that other designs record with a sheet of this one, each with the design.
fn by_others<'b>(
    here: &Here<'b>,
    sheets: impl Iterator<Item = &'b Impression>,
    of: &Key,
) -> BTreeMap<(&'b Key, usize), (&'b Design, &'b Comparison)> {
    let mut found = BTreeMap::new();
    for sheet in sheets {
        let mentions = here.book.studies.back_links.impressions.get(&sheet.key);
        for mention in mentions.into_iter().flatten() {
            let (MentionRole::Compared, RecordId::Design(key)) = (mention.role, &mention.from)
            else {
                continue;
            };
            let Some(design) = here.public().designs.get(key).filter(|d| d.key != *of) else {
                continue;
            };
            let with_it = design
                .comparisons
                .iter()
                .filter(|comparison| comparison.of.iter().any(|known| known.value == sheet.key));
            for comparison in with_it {
                found.insert((&design.key, comparison.number), (design, comparison));
            }
        }
    }
    found
}

/// The recorded comparisons: "14.2 and 14.7: before the moon and after"; those of the design, then those of others with
/// a sheet of it.
pub(crate) fn recorded(here: &Here<'_>, design: &Design) -> Vec<CleanHtml> {
    let own = design.comparisons.iter();
    let own = own.map(|comparison| (design, comparison));
    let sheets = here.public().designs.get(&design.key);
    let sheets = sheets.into_iter().flat_map(|d| d.impressions.values());
    let others = by_others(here, sheets, &design.key);
    own.chain(others.into_values())
        .map(|(design, comparison)| {
            let names: Vec<_> = comparison
                .of
                .iter()
                .map(|key| {
                    CleanHtml::span("handle", &CleanHtml::text(&here.sheet_number(&key.value)))
                })
                .collect();
            let all = enumeration::together(here, &names);
            let address = Address::Comparison(design.key.clone(), comparison.number);
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
    let own = design.comparisons.iter();
    let own = own
        .filter(|comparison| comparison.of.iter().any(|k| k.value == impression.key))
        .map(|comparison| (design, comparison));
    let sheet = here.public().impression(&impression.key);
    let others = by_others(here, sheet.into_iter(), &design.key);
    own.chain(others.into_values())
        .map(|(design, comparison)| {
            let others: Vec<_> = comparison
                .of
                .iter()
                .filter(|k| k.value != impression.key)
                .map(|k| CleanHtml::span("handle", &CleanHtml::text(&here.sheet_number(&k.value))))
                .collect();
            let all = enumeration::together(here, &others);
            let text = here
                .words()
                .html("compared-with", None, &[("others", &all)]);
            let address = Address::Comparison(design.key.clone(), comparison.number);
            let link = CleanHtml::link(&here.href(&address), &text);
            match &comparison.why {
                Some(why) => link.then(": ").then(why),
                None => link,
            }
        })
        .collect()
}

/// The sheets of a design that can be compared, by number.
pub(crate) fn comparable<'d>(
    book: &Book<'_>,
    design: &'d Design,
) -> impl Iterator<Item = &'d Impression> {
    let sheets = design.impressions.values();
    sheets.filter(|sheet| can_be_compared(book.pictures, sheet))
}

/// Whether a sheet can be compared: it has a picture or an observation.
fn can_be_compared(pictures: &Pictures, sheet: &Impression) -> bool {
    let is_shown = |name| pictures.contains_key(&figures::key_of(sheet, name));
    !sheet.standing.is_withdrawn()
        && (!sheet.observed.is_empty() || sheet.pictures.iter().any(|p| is_shown(&p.name.value)))
}

/// The designs that have a comparison to choose: at least two sheets that can be compared.
pub(crate) fn with_chosen(public: &Public, pictures: &Pictures) -> BTreeSet<Key> {
    let designs = public.designs.values();
    let designs = designs.filter(|design| {
        let sheets = design.impressions.values();
        let mut sheets = sheets.filter(|sheet| can_be_compared(pictures, sheet));
        sheets.nth(1).is_some()
    });
    designs.map(|design| design.key.clone()).collect()
}

/// The link to that comparison, with one sheet already chosen where it can be compared.
pub(crate) fn chosen_href(
    here: &Here<'_>,
    design: &Design,
    sheet: Option<&Impression>,
) -> Option<String> {
    if !here.book.chosen.contains(&design.key) {
        return None;
    }
    let page = here.href(&Address::ChosenComparison(design.key.clone()));
    match sheet {
        None => Some(page),
        Some(sheet) => {
            can_be_compared(here.book.pictures, sheet).then(|| format!("{page}#of={}", sheet.key))
        }
    }
}
