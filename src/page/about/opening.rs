//! The opening page: a description of the catalogue, one plate, and links to its parts.

use serde::Serialize;

use crate::model::design::Design;
use crate::model::key::Key;
use crate::model::words::ClosedList as _;
use crate::page::phrases::enumeration;
use crate::page::phrases::sheet_counts;
use crate::page::phrases::{dates, imprint};
use crate::page::plates::figures;
use crate::page::setting::address::{Address, Overview};
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences, capitalised};
use crate::page::setting::leaf::Leaf;
use crate::page::setting::pictures::{Plate, Setting};
use crate::page::setting::words::Argument;
use crate::page::texts::catalogue_pages;
use crate::page::texts::markdown;

#[derive(Serialize)]
struct View {
    hang: Vec<String>,
    artist: CleanHtml,
    title: String,
    brief: CleanHtml,
    plate: Option<Plate>,
    introduction: Option<CleanHtml>,
    introduction_href: Option<String>,
    counts: CleanHtml,
    naming: Option<CleanHtml>,
    begin: Vec<EntryLink>,
    series: Vec<EntryLink>,
}

/// A link to a part of the catalogue, with its number of entries.
#[derive(Serialize)]
struct EntryLink {
    text: CleanHtml,
    count: String,
}

pub(crate) fn page(here: &Here<'_>) -> Leaf {
    let settings = &here.public().settings;
    let words = here.words();
    let edition = imprint::CitedEdition::of(here.book);
    let mut hang = Vec::new();
    hang.extend(edition.name.map(|edition| {
        let edition = words.with("edition", &[("edition", Argument::Text(edition))]);
        capitalised(&CleanHtml::text(&edition)).plain()
    }));
    hang.extend(edition.dated.map(|date| dates::once(date, words)));
    if edition.is_revised {
        hang.push(words.word("edition-revised").to_owned());
    }
    let introduction = here.public().pages.get(catalogue_pages::INTRODUCTION);
    let title = settings.title.value.clone();
    let view = View {
        hang,
        artist: settings
            .artist
            .as_ref()
            .map_or_else(CleanHtml::empty, |key| artist(here, &key.value)),
        title: title.clone(),
        brief: brief(here),
        plate: plate(here),
        introduction: introduction
            .and_then(|page| markdown::first_paragraph(&page.note.text, here).some()),
        introduction_href: introduction.map(|page| here.href(&Address::of_page(&page.key))),
        counts: counts(here),
        naming: naming(here),
        begin: begin(here),
        series: series(here),
    };
    let described = format!("{title}. {}", view.brief.plain());
    Leaf::new(here.address, title, "pages/opening.html", &view).described(described)
}

/// "The Artist, 1903–1958".
fn artist(here: &Here<'_>, key: &Key) -> CleanHtml {
    let name = here.person(key);
    match here.public().people.get(key).map(|p| here.life(p)) {
        Some(life) if !life.is_empty() => name.then(", ").then(&life),
        _ => name,
    }
}

/// "A catalogue raisonné, with a census of the impressions known. Edited by The Editor."
fn brief(here: &Here<'_>) -> CleanHtml {
    let words = here.words();
    let editors: Vec<_> = here
        .public()
        .settings
        .editors
        .iter()
        .map(|key| here.person(&key.value))
        .collect();
    let edited = if editors.is_empty() {
        CleanHtml::empty()
    } else {
        let all = enumeration::together(here, &editors);
        words.html("edited-by", None, &[("editors", &all)])
    };
    as_sentences(&[CleanHtml::text(words.word("what-it-is")), edited])
}

/// The plate: a picture of the accepted design with the most states, the first among equals.
fn plate(here: &Here<'_>) -> Option<Plate> {
    let shown = here.designs_in_order().filter_map(|design| {
        let is_accepted = design.standing.standing == crate::model::words::Standing::Accepted;
        let key = figures::design_picture(here, design).filter(|_| is_accepted)?;
        Some((design, key))
    });
    let weight = |design: &Design| (design.standing_states().count(), design.impressions.len());
    let (design, key) = shown.reduce(|best, next| {
        if weight(next.0) > weight(best.0) {
            next
        } else {
            best
        }
    })?;
    let mut plate = figures::plate(here, &key, None, Setting::Wide)?;
    plate.href = Some(here.href(&Address::Design(design.key.clone())));
    let name = here.design(&design.key);
    plate.caption = CleanHtml::element("p", &[], &name).and(&plate.caption);
    Some(plate)
}

/// "29 designs; 188 impressions known, with 26 holders."
fn counts(here: &Here<'_>) -> CleanHtml {
    let words = here.words();
    let sheets = here.book.studies.accepted.sheets;
    let parts = [
        words.count("count-designs", accepted_designs(here)),
        if sheets.at_most == 0 {
            String::new()
        } else {
            sheet_counts::known(here, sheets)
        },
        match here.public().holders.len() {
            0 => String::new(),
            n => words.count("count-holders", n),
        },
    ];
    let sentences: Vec<_> = parts.iter().map(|text| CleanHtml::text(text)).collect();
    as_sentences(&sentences)
}

/// The number of accepted designs.
fn accepted_designs(here: &Here<'_>) -> usize {
    let designs = here.public().designs.values();
    designs.filter(|d| !d.standing.is_set_apart()).count()
}

/// How sheets are cited, with an example.
fn naming(here: &Here<'_>) -> Option<CleanHtml> {
    let (_, impression) = here.public().impressions().next()?;
    let example = here.impression(&impression.key);
    Some(
        here.words()
            .html("how-sheets-are-named", None, &[("example", &example)]),
    )
}

fn begin(here: &Here<'_>) -> Vec<EntryLink> {
    let words = here.words();
    let public = here.public();
    let count = |overview: Overview| match overview {
        Overview::Designs => accepted_designs(here).to_string(),
        Overview::Holders => public.holders.len().to_string(),
        Overview::Census => sheet_counts::figure(here.book.studies.accepted.sheets),
        _ => String::new(),
    };
    let ways = [
        Overview::Designs,
        Overview::Census,
        Overview::Holders,
        Overview::Chronology,
        Overview::Concordance,
    ];
    let mut begin: Vec<EntryLink> = ways
        .into_iter()
        .filter(|o| here.book.overviews.contains(o))
        .map(|o| EntryLink {
            text: here.link(
                &Address::Overview(o),
                &CleanHtml::text(words.word(o.word())),
            ),
            count: count(o),
        })
        .collect();
    begin.extend(
        catalogue_pages::in_order(public)
            .into_iter()
            .map(|page| EntryLink {
                text: here.link(&Address::of_page(&page.key), &CleanHtml::text(&page.title)),
                count: String::new(),
            }),
    );
    begin
}

/// The series in the order of their first designs, with the years they span.
fn series(here: &Here<'_>) -> Vec<EntryLink> {
    let mut found: Vec<(&str, usize, Vec<i64>)> = Vec::new();
    for design in here.designs_in_order() {
        let Some(series) = &design.series else {
            continue;
        };
        let name = series.name.value.as_str();
        let at = found.iter().position(|(known, _, _)| *known == name);
        let at = at.unwrap_or_else(|| {
            found.push((name, 0, Vec::new()));
            found.len() - 1
        });
        if let Some((_, count, years)) = found.get_mut(at) {
            *count += 1;
            if let Some(date) = design.date.own() {
                let edges = [date.earliest(), date.latest()];
                years.extend(edges.iter().filter_map(|e| e.day()).map(|d| d.year));
            }
        }
    }
    found
        .into_iter()
        .map(|(name, count, years)| {
            let link = CleanHtml::element("i", &[], &here.gathered(Overview::Series, name, name));
            let span = match (years.iter().min(), years.iter().max()) {
                (Some(first), Some(last)) if first == last => first.to_string(),
                (Some(first), Some(last)) => format!("{first}–{last}"),
                _ => String::new(),
            };
            EntryLink {
                text: CleanHtml::join([&link, &CleanHtml::text(&span)], ", "),
                count: here.words().count("count-designs", count),
            }
        })
        .collect()
}
