//! The designs, by eye and in words: a wall of pictures by number, and on a page of its own a list by number with a line
//! about each, then by date. Rejected and withdrawn designs keep their numbers and stand apart.

use serde::Serialize;

use crate::model::design::Design;
use crate::model::edtf::Day;
use crate::model::words::ClosedList as _;
use crate::page::design::brief;
use crate::page::lists::entry::Entry;
use crate::page::lists::wall::{self, Wall};
use crate::page::phrases::dates;
use crate::page::phrases::sheet_counts;
use crate::page::setting::address::{Address, Overview};
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences};
use crate::page::setting::leaf::Leaf;
use crate::page::setting::words::Argument;
use crate::page::texts::catalogue_pages;

#[derive(Serialize)]
struct WallView {
    title: String,
    brief: CleanHtml,
    /// The link to the list.
    list: String,
    /// The link to the designs by date.
    by_date: String,
    /// Whether some design has a picture.
    is_pictured: bool,
    accepted: Option<Wall>,
    apart: Option<Wall>,
}

#[derive(Serialize)]
struct ListView {
    title: String,
    brief: CleanHtml,
    /// The link to the wall.
    by_eye: String,
    /// Whether some design has a picture.
    is_pictured: bool,
    accepted: Vec<Entry>,
    apart: Vec<Entry>,
    years: Vec<Year>,
}

/// The designs that begin in one year.
#[derive(Serialize)]
struct Year {
    when: CleanHtml,
    designs: Vec<CleanHtml>,
}

/// The designs as a wall.
pub(crate) fn page(here: &Here<'_>) -> Leaf {
    let [accepted, apart] = by_standing(here);
    let hung =
        |designs: &[&Design]| Wall::of(designs.iter().map(|d| wall::design(here, d)).collect());
    let accepted_wall = hung(&accepted);
    let is_pictured = |wall: &Wall| !wall.hung.is_empty();
    let list = here.href(&Address::DesignList);
    let view = WallView {
        title: title(here),
        brief: brief(here, accepted.len()),
        by_date: format!("{list}#by-date"),
        list,
        is_pictured: accepted_wall.as_ref().is_some_and(is_pictured),
        accepted: accepted_wall,
        apart: hung(&apart),
    };
    let title = view.title.clone();
    let described = view.brief.plain();
    Leaf::new(here.address, title, "pages/designs.html", &view).described(described)
}

/// The designs in words, by number and by date.
pub(crate) fn list(here: &Here<'_>) -> Leaf {
    let [accepted, apart] = by_standing(here);
    let entries: Vec<Entry> = accepted.iter().map(|d| entry(here, d)).collect();
    let view = ListView {
        is_pictured: entries.iter().any(|entry| entry.image.is_some()),
        title: title(here),
        brief: brief(here, accepted.len()),
        by_eye: here.href(&Address::Overview(Overview::Designs)),
        years: by_date(here, &accepted),
        accepted: entries,
        apart: apart.iter().map(|d| entry(here, d)).collect(),
    };
    let title = here
        .words()
        .with("as-list", &[("title", Argument::Text(&view.title))]);
    let described = view.brief.plain();
    Leaf::new(here.address, title, "pages/design-list.html", &view).described(described)
}

fn title(here: &Here<'_>) -> String {
    catalogue_pages::title(here.public(), here.words(), Overview::Designs).to_owned()
}

/// The designs that count, then those that are rejected or withdrawn, each in the order of the catalogue.
fn by_standing<'h>(here: &'h Here<'_>) -> [Vec<&'h Design>; 2] {
    let (apart, accepted) = here
        .designs_in_order()
        .partition(|d| d.standing.is_set_apart());
    [accepted, apart]
}

/// "29 prints. Also by date, technique, series."
fn brief(here: &Here<'_>, count: usize) -> CleanHtml {
    let words = here.words();
    let list = here.href(&Address::DesignList);
    let text = CleanHtml::text(words.word("by-date"));
    let by_date = if *here.address == Address::DesignList {
        CleanHtml::link("#by-date", &text)
    } else {
        CleanHtml::link(&format!("{list}#by-date"), &text)
    };
    let others = [
        Overview::Techniques,
        Overview::Series,
        Overview::Subjects,
        Overview::Titles,
    ];
    let others = others
        .into_iter()
        .filter(|o| here.book.overviews.contains(o))
        .map(|o| {
            let id = format!("by-{}", o.word());
            let text = words.find(&id).unwrap_or_default();
            here.link(&Address::Overview(o), &CleanHtml::text(text))
        });
    let ways: Vec<_> = std::iter::once(by_date).chain(others).collect();
    let all = CleanHtml::join(&ways, ", ");
    as_sentences(&[
        CleanHtml::text(&words.count("designs-by-number", count)),
        words.html("also", None, &[("ways", &all)]),
    ])
}

/// A design for the list, with its original title and all that is counted of it.
fn entry(here: &Here<'_>, design: &Design) -> Entry {
    Entry {
        original: original_title(here, design),
        ..Entry::of_design(here, design, about(here, design))
    }
}

/// The original title, where the title in use is another.
fn original_title(here: &Here<'_>, design: &Design) -> Option<CleanHtml> {
    use crate::model::design::TitleKind;
    let in_use = design.title()?;
    let original = design
        .titles
        .iter()
        .find(|t| t.kind == TitleKind::Original)
        .filter(|t| t.text.value != in_use.text.value)?;
    let language = original.lang.as_ref().map(|l| l.value.as_str());
    Some(here.in_language("span", &CleanHtml::text(&original.text), language))
}

/// "1927. Colour woodcut from five blocks. Five states, four printings. 18 impressions known."
fn about(here: &Here<'_>, design: &Design) -> CleanHtml {
    let words = here.words();
    let states = match design.standing_states().count() {
        0 => String::new(),
        1 => words.word("only-state").to_owned(),
        n => words.count("count-states", n),
    };
    let printings = match design.standing_printings().count() {
        0 | 1 => String::new(),
        n => words.count("count-printings", n),
    };
    let census = here
        .book
        .studies
        .designs
        .get(&design.key)
        .map(|study| study.census.sheets)
        .filter(|sheets| sheets.at_most > 0)
        .map_or_else(
            || words.word("no-impression-known").to_owned(),
            |sheets| sheet_counts::known(here, sheets),
        );
    let facts = [states, printings].map(|text| CleanHtml::text(&text));
    brief::brief(here, design).then(" ").and(&as_sentences(&[
        CleanHtml::join(&facts, ", "),
        CleanHtml::text(&census),
    ]))
}

/// The designs by the first day of their dates; undated ones last.
fn by_date(here: &Here<'_>, designs: &[&Design]) -> Vec<Year> {
    let mut dated: Vec<(Option<Day>, &Design)> = designs
        .iter()
        .map(|d| (d.date.own().and_then(|date| date.earliest().day()), *d))
        .collect();
    dated.sort_by_key(|(day, design)| {
        let rank = here.book.studies.order.rank(&design.key);
        (day.is_none(), *day, rank)
    });
    let mut years: Vec<(Option<i64>, Year)> = Vec::new();
    for (day, design) in dated {
        let year = day.map(|d| d.year);
        let exact = design
            .date
            .own()
            .map_or_else(CleanHtml::empty, |d| dates::once_html(d, here.words()));
        let name = here.design(&design.key);
        let heading = year.map_or_else(
            || CleanHtml::text(here.words().word("undated")),
            |y| CleanHtml::text(&y.to_string()),
        );
        let line = if exact.is_empty() || exact.plain() == heading.plain() {
            name
        } else {
            name.then(", ").and(&exact)
        };
        match years.last_mut() {
            Some((last, entry)) if *last == year => entry.designs.push(line),
            _ => years.push((
                year,
                Year {
                    when: heading,
                    designs: vec![line],
                },
            )),
        }
    }
    years.into_iter().map(|(_, year)| year).collect()
}
