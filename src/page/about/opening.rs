//! The opening page: the title with one plate, then the prints by eye, then the three ways into the catalogue.

use serde::Serialize;

use crate::model::design::Design;
use crate::model::key::Key;
use crate::model::words::ClosedList as _;
use crate::page::lists::wall::{self, Wall};
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
    naming: Option<CleanHtml>,
    /// Prints by eye: all of them, or as many as the page holds.
    hung: Option<Wall>,
    /// The link to all prints, where the wall has not all of them.
    all: Option<CleanHtml>,
    ways: Vec<WayIn>,
}

/// A way into the catalogue, with a sentence about it.
#[derive(Serialize)]
struct WayIn {
    href: String,
    title: String,
    about: CleanHtml,
}

/// The most prints that the opening page shows by eye. More are chosen at equal distances, so that the wall goes
/// through the whole of the work.
const MOST_PRINTS: usize = 40;

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
        naming: naming(here),
        all: all_prints(here),
        hung: Wall::of(
            by_eye(here)
                .into_iter()
                .map(|d| wall::design(here, d))
                .collect(),
        ),
        ways: ways(here),
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

/// "A catalogue raisonné, with a census of all known impressions. Edited by The Editor."
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

/// The accepted designs that have a picture; where they are many, some of them at equal distances.
fn by_eye<'h>(here: &'h Here<'_>) -> Vec<&'h Design> {
    let pictured: Vec<&Design> = here
        .designs_in_order()
        .filter(|d| !d.standing.is_set_apart() && figures::design_picture(here, d).is_some())
        .collect();
    let shown = pictured.len().min(MOST_PRINTS);
    (0..shown)
        .filter_map(|at| pictured.get(at * pictured.len() / shown).copied())
        .collect()
}

/// "All 1,000 prints", where the wall has fewer.
fn all_prints(here: &Here<'_>) -> Option<CleanHtml> {
    let all = accepted_designs(here);
    let text = here.words().count("all-prints", all);
    let link = here.link(
        &Address::Overview(Overview::Designs),
        &CleanHtml::text(&text),
    );
    (all > by_eye(here).len() && here.book.overviews.contains(&Overview::Designs)).then_some(link)
}

/// Browse the prints, identify a sheet, the census: those that the catalogue has.
fn ways(here: &Here<'_>) -> Vec<WayIn> {
    let words = here.words();
    let [designs, identify] = if by_eye(here).is_empty() {
        ["way-designs-by-number", "way-identify-by-number"]
    } else {
        ["way-designs-about", "way-identify-about"]
    };
    let ways = [
        (Overview::Designs, CleanHtml::text(words.word(designs))),
        (Overview::Identify, CleanHtml::text(words.word(identify))),
        (Overview::Census, counts(here)),
    ];
    ways.into_iter()
        .filter(|(overview, _)| here.book.overviews.contains(overview))
        .map(|(overview, about)| WayIn {
            href: here.href(&Address::Overview(overview)),
            title: words.word(&format!("way-{}", overview.word())).to_owned(),
            about,
        })
        .collect()
}
