//! Walls: small pictures of designs and impressions side by side, each a link to its page.
//!
//! A picture is one file, 480 px wide or the part cut to the image, and is loaded when it comes into view, so a wall of
//! a thousand prints stays light.

use std::collections::BTreeSet;

use serde::Serialize;
use tera::Context;

use crate::model::design::Design;
use crate::model::impression::Impression;
use crate::model::key::Key;
use crate::model::occurrence::RecordId;
use crate::page::phrases::readings;
use crate::page::plates::figures;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::pictures::SmallImage;
use crate::study::back_links::Mention;

/// One picture of a wall, with what stands below it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub(crate) struct Hung {
    /// The page that it leads to.
    pub href: String,
    /// The picture; `None` where there is none that may be shown. The place then says so.
    pub image: Option<SmallImage>,
    /// The place in a series, before the number: "3.".
    pub place: String,
    /// "7", "7.4".
    pub number: String,
    /// The title of a design; the state and printing of an impression.
    pub title: CleanHtml,
    /// Number and title as plain text, for a picture that stands alone.
    pub name: String,
    /// The date of a design; the accession number and the credit line of an impression.
    pub note: CleanHtml,
}

/// Prints by eye. Where fewer than half of them have a picture, those without stand in words, in columns below the
/// others: a wall of empty places shows nothing.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub(crate) struct Wall {
    /// Those that hang side by side.
    pub hung: Vec<Hung>,
    /// Those that are only named, in groups that fit a screen.
    pub named: Vec<NamedGroup>,
}

/// Prints that are only named.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub(crate) struct NamedGroup {
    /// The numbers of the first and the last, "61–120", where there are several groups; else empty.
    pub range: String,
    /// The prints.
    pub prints: Vec<Hung>,
}

/// So many prints are read in columns without scrolling back.
const OF_GROUP: usize = 60;

impl Wall {
    /// The wall of some prints; `None` for none.
    pub fn of(prints: Vec<Hung>) -> Option<Wall> {
        if prints.is_empty() {
            return None;
        }
        let pictured = prints.iter().filter(|print| print.image.is_some());
        if pictured.count() * 2 >= prints.len() {
            return Some(Wall {
                hung: prints,
                named: Vec::new(),
            });
        }
        let (hung, named): (Vec<Hung>, Vec<Hung>) =
            prints.into_iter().partition(|print| print.image.is_some());
        let groups = named.chunks(OF_GROUP).map(|group| NamedGroup {
            range: match group {
                [first, .., last] if named.len() > OF_GROUP => {
                    format!("{}–{}", first.number, last.number)
                }
                [only] if named.len() > OF_GROUP => only.number.clone(),
                _ => String::new(),
            },
            prints: group.to_vec(),
        });
        let named = groups.collect();
        Some(Wall { hung, named })
    }
}

/// A design: number, title, date.
pub(crate) fn design(here: &Here<'_>, design: &Design) -> Hung {
    let picture = figures::design_picture(here, design);
    let date = CleanHtml::text(&here.design_date(design));
    Hung {
        href: here.href(&Address::Design(design.key.clone())),
        image: picture.and_then(|key| figures::small(here, &key)),
        place: String::new(),
        number: design.number.clone(),
        title: here.design_title(design),
        name: here.design_name(design).plain(),
        note: CleanHtml::join([&date, &here.standing(design)], " "),
    }
}

/// An impression: number, state and printing, accession number, credit line.
pub(crate) fn impression(here: &Here<'_>, design: &Design, impression: &Impression) -> Hung {
    let picture = figures::leading_picture(here, impression);
    let told = [impression.accession_and_part(), impression.credit.clone()];
    let told = told.into_iter().flatten();
    let told: Vec<_> = told.map(|t| CleanHtml::text(&t)).collect();
    Hung {
        href: here.href(&Address::Impression(impression.key.clone())),
        image: picture.and_then(|key| figures::small(here, &key)),
        place: String::new(),
        number: here.sheet_number(&impression.key),
        // A link within the link of the picture would be no HTML.
        title: CleanHtml::text(&readings::short(here, design, impression).plain()),
        name: here.impression_of(&impression.key).plain(),
        note: CleanHtml::join(&told, ". "),
    }
}

/// A row of pictures alone, each named by its number and title: for a line of an index. Empty where there are none.
pub(crate) fn row(here: &Here<'_>, hung: &[Hung]) -> CleanHtml {
    let shown: Vec<&Hung> = hung.iter().filter(|hung| hung.image.is_some()).collect();
    if shown.is_empty() {
        return CleanHtml::empty();
    }
    let mut context = Context::new();
    context.insert("row", &shown);
    let row = here.book.templates.part("part.row", &context);
    row.unwrap_or_else(|_| CleanHtml::empty())
}

/// The accepted designs that mention a record, or whose impressions do, in the order of the catalogue: at most `most`.
pub(crate) fn designs_of(here: &Here<'_>, mentions: &[Mention], most: usize) -> Vec<Hung> {
    let keys: BTreeSet<&Key> = mentions
        .iter()
        .filter_map(|mention| match &mention.from {
            RecordId::Design(key) => Some(key),
            RecordId::Impression(key) => Some(&key.design),
            _ => None,
        })
        .collect();
    here.designs_in_order()
        .filter(|d| keys.contains(&d.key) && !d.standing.is_set_apart())
        .take(most)
        .map(|d| design(here, d))
        .collect()
}
