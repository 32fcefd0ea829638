//! Exhibitions with place and dates.

use super::dates;
use crate::model::exhibition::{Exhibition, Venue};
use crate::model::key::Key;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;

/// "*Memorial exhibition*, Harbour Museum, Northport, March to May 1962".
pub(crate) fn exhibition_in_full(
    here: &Here<'_>,
    key: &Key,
    exhibition: Option<&Exhibition>,
) -> CleanHtml {
    let title = here.exhibition(key);
    let Some(exhibition) = exhibition else {
        return title;
    };
    CleanHtml::join([&title, &venue_and_date(here, exhibition)], ", ")
}

/// "Harbour Museum, Northport, March to May 1962".
pub(crate) fn venue_and_date(here: &Here<'_>, exhibition: &Exhibition) -> CleanHtml {
    let (venue, says_town) = match &exhibition.venue {
        Some(Venue::Holder(key)) => (here.holder_and_city(&key.value), true),
        Some(Venue::Named(name)) => (CleanHtml::text(name), false),
        None => (CleanHtml::empty(), false),
    };
    let town = exhibition
        .town
        .as_ref()
        .filter(|_| !says_town)
        .map_or_else(CleanHtml::empty, |town| CleanHtml::text(town));
    let date = exhibition.date.as_ref().map_or_else(CleanHtml::empty, |d| {
        dates::throughout_html(&d.value, here.words())
    });
    CleanHtml::join([&venue, &town, &date], ", ")
}

/// The place of an exhibition: house and town.
pub(crate) fn venue(here: &Here<'_>, exhibition: &Exhibition) -> CleanHtml {
    let venue = exhibition
        .venue
        .as_ref()
        .map_or_else(CleanHtml::empty, |venue| match venue {
            Venue::Holder(holder) => here.holder_and_city(&holder.value),
            Venue::Named(name) => CleanHtml::text(name),
        });
    let town = exhibition.town.as_deref().unwrap_or_default();
    CleanHtml::join([&venue, &CleanHtml::text(town)], ", ")
}
