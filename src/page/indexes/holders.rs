//! Holders by city, then by name; private owners and the trade apart.

use serde::Serialize;

use crate::model::holder::{Holder, HolderKind};
use crate::model::key::Key;
use crate::page::lists::list::List;
use crate::page::setting::address::{Address, Overview};
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::page::setting::words::Argument;
use crate::page::texts::catalogue_pages;
use crate::study::order::Collator;

#[derive(Serialize)]
struct View {
    title: String,
    /// Parts stand close together, as in an index.
    index: bool,
    brief: String,
    cities: Vec<List>,
    apart: Vec<List>,
}

pub(crate) fn page(here: &Here<'_>) -> Leaf {
    let words = here.words();
    let holders = &here.public().holders;
    let is_public = |h: &Holder| !matches!(h.kind, HolderKind::Private | HolderKind::Trade);
    let cities = cities(here, is_public);
    let number_of_cities = cities.iter().filter(|list| list.id.is_some()).count();
    let apart = [
        (HolderKind::Private, "holders-private"),
        (HolderKind::Trade, "holders-trade"),
    ]
    .into_iter()
    .map(|(kind, heading)| {
        let heading = CleanHtml::text(words.word(heading));
        List::new(heading, lines(here, |h| h.kind == kind))
    })
    .filter(List::has_lines)
    .collect();
    let title = catalogue_pages::title(here.public(), words, Overview::Holders).to_owned();
    let brief = words.with(
        "holders-brief",
        &[
            (
                "holders",
                Argument::Text(&words.count("count-holders", holders.len())),
            ),
            (
                "cities",
                Argument::Text(&words.count("count-cities", number_of_cities)),
            ),
        ],
    );
    let view = View {
        index: true,
        title: title.clone(),
        brief,
        cities,
        apart,
    };
    Leaf::new(here.address, title, "pages/holders.html", &view)
}

/// A list for each city; holders without one last.
fn cities(here: &Here<'_>, wanted: impl Fn(&Holder) -> bool) -> Vec<List> {
    let collator = Collator::of_words(here.language());
    let mut towns: Vec<(&str, Option<&str>)> = here
        .public()
        .holders
        .values()
        .filter(|h| wanted(h))
        .filter_map(|h| Some((h.town.as_ref()?.as_str(), country_of(h))))
        .collect();
    towns.sort_by(|a, b| collator.compare(a.0, b.0).then_with(|| a.cmp(b)));
    towns.dedup();
    let mut lists: Vec<List> = towns
        .into_iter()
        .map(|(town, country)| {
            let lines = lines(here, |h| {
                wanted(h)
                    && h.town.as_ref().is_some_and(|t| t.as_str() == town)
                    && country_of(h) == country
            });
            let mut list = List::new(CleanHtml::text(town), lines).at(Some(city_id(town, country)));
            list.note = country.map(|c| CleanHtml::text(here.country(c)));
            list
        })
        .collect();
    let elsewhere = lines(here, |h| wanted(h) && h.town.is_none());
    if !elsewhere.is_empty() {
        let heading = CleanHtml::text(here.words().word("holders-without-place"));
        lists.push(List::new(heading, elsewhere));
    }
    lists
}

fn country_of(holder: &Holder) -> Option<&str> {
    holder.country.as_ref().map(|c| c.as_str())
}

/// The id of a city on this page.
fn city_id(town: &str, country: Option<&str>) -> String {
    let name = format!("{town} {}", country.unwrap_or_default());
    let key = Key::nearest_form(&name).map_or_else(String::new, |k| k.to_string());
    format!("city-{key}")
}

/// A line for each holder, by name, and one for each former name, with a link.
fn lines(here: &Here<'_>, wanted: impl Fn(&Holder) -> bool) -> Vec<CleanHtml> {
    let collator = Collator::of_words(here.language());
    let mut lines: Vec<(String, CleanHtml)> = Vec::new();
    for holder in here.public().holders.values().filter(|h| wanted(h)) {
        lines.push((here.holder_name(holder), line(here, holder)));
        for former in &holder.formerly {
            let see =
                here.words()
                    .html("see-record", None, &[("record", &here.holder(&holder.key))]);
            let line = CleanHtml::text(&former.name).then(", ").and(&see);
            lines.push((former.name.value.clone(), line));
        }
    }
    lines.sort_by(|a, b| collator.compare(&a.0, &b.0).then_with(|| a.1.cmp(&b.1)));
    lines.into_iter().map(|(_, line)| line).collect()
}

/// "Harbour Museum, museum 31".
fn line(here: &Here<'_>, holder: &Holder) -> CleanHtml {
    let name = CleanHtml::link(
        &here.href(&Address::Holder(holder.key.clone())),
        &CleanHtml::text(&here.holder_name(holder)),
    );
    let is_told = matches!(holder.kind, HolderKind::Private | HolderKind::Trade);
    let kind = if is_told {
        CleanHtml::empty()
    } else {
        CleanHtml::quiet(here.words().listed("holder-kind", holder.kind))
    };
    let now = holder
        .successor
        .as_ref()
        .map_or_else(CleanHtml::empty, |s| {
            let name = here.holder(&s.holder.value);
            here.words().html("now-part-of", None, &[("holder", &name)])
        });
    let line = CleanHtml::join([&name, &kind, &now], ", ");
    let rows = &here.book.studies.accepted.by.holder;
    let sheets = rows
        .iter()
        .find(|row| row.key.as_ref() == Some(&holder.key));
    match sheets {
        Some(row) => line.and(&CleanHtml::count(&here.sheets(row.sheets))),
        None => line,
    }
}
