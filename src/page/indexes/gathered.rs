//! Designs by series, subject and technique, and impressions by paper: a list for each, the target of
//! links from entries.

use std::collections::BTreeMap;

use serde::Serialize;

use crate::model::key::{ImpressionKey, Key};
use crate::model::vocabulary::List as Vocabulary;
use crate::model::words::ClosedList as _;
use crate::page::lists::list::List;
use crate::page::lists::series_members::{hung, missing};
use crate::page::lists::wall::{self, Hung};
use crate::page::phrases::series_names::published;
use crate::page::setting::address::Overview;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences};
use crate::page::setting::leaf::Leaf;
use crate::study::order::Collator;

#[derive(Serialize)]
struct View {
    /// Parts stand close together, as in an index.
    index: bool,
    title: String,
    lists: Vec<List>,
}

fn leaf(here: &Here<'_>, overview: Overview, template: &'static str, lists: Vec<List>) -> Leaf {
    let title = here.words().word(overview.word()).to_owned();
    let view = View {
        index: true,
        title: title.clone(),
        lists,
    };
    Leaf::new(here.address, title, template, &view)
}

/// The series, each in its own order, under its title; one with a record leads to its page and says who published it.
pub(crate) fn series(here: &Here<'_>) -> Leaf {
    let lists = here.book.studies.series.iter().map(|(of, study)| {
        let record = of.key().and_then(|key| here.public().series.get(key));
        let name = here.series_name(of);
        let heading = match record {
            Some(record) => here.series_record(&record.key),
            None => CleanHtml::text(&name),
        };
        let note = record.map_or_else(CleanHtml::empty, |record| {
            let missing = CleanHtml::text(&missing(here, study));
            as_sentences(&[published(here, record), missing])
        });
        let mut list = List::of_wall(heading, hung(here, study)).at(id_of(&name));
        list.note = note.some();
        list
    });
    let lists = in_order(here, lists.collect());
    leaf(here, Overview::Series, "pages/series.html", lists)
}

/// The subjects, terms and free words.
pub(crate) fn subjects(here: &Here<'_>) -> Leaf {
    let mut by_subject: BTreeMap<&str, Vec<Hung>> = BTreeMap::new();
    for design in here.designs_in_order() {
        for subject in &design.subjects {
            by_subject
                .entry(subject)
                .or_default()
                .push(wall::design(here, design));
        }
    }
    let lists = by_subject
        .into_iter()
        .map(|(subject, hung)| {
            let name = here
                .public()
                .vocabularies
                .term(Vocabulary::Subjects, subject)
                .and_then(|term| term.label(here.language()))
                .unwrap_or(subject);
            List::of_wall(CleanHtml::text(name), hung).at(id_of(subject))
        })
        .collect();
    leaf(
        here,
        Overview::Subjects,
        "pages/subjects.html",
        in_order(here, lists),
    )
}

/// The techniques.
pub(crate) fn techniques(here: &Here<'_>) -> Leaf {
    let mut by_technique: BTreeMap<&Key, Vec<Hung>> = BTreeMap::new();
    for design in here.designs_in_order() {
        for technique in &design.technique {
            by_technique
                .entry(&technique.value)
                .or_default()
                .push(wall::design(here, design));
        }
    }
    let lists = by_technique
        .into_iter()
        .map(|(technique, hung)| {
            let name = here.term(Vocabulary::Techniques, technique.as_str());
            List::of_wall(CleanHtml::text(&name), hung).at(id_of(technique.as_str()))
        })
        .collect();
    leaf(
        here,
        Overview::Techniques,
        "pages/techniques.html",
        in_order(here, lists),
    )
}

/// The papers, with the impressions on each under their designs.
pub(crate) fn papers(here: &Here<'_>) -> Leaf {
    let mut by_paper: BTreeMap<&Key, Vec<Vec<&ImpressionKey>>> = BTreeMap::new();
    for (_, impression) in here.impressions_in_order() {
        let Some(paper) = &impression.sheet.paper else {
            continue;
        };
        let designs = by_paper.entry(&paper.value).or_default();
        match designs.last_mut() {
            Some(keys)
                if keys
                    .first()
                    .is_some_and(|k| k.design == impression.key.design) =>
            {
                keys.push(&impression.key);
            }
            _ => designs.push(vec![&impression.key]),
        }
    }
    let lists = by_paper
        .into_iter()
        .map(|(paper, designs)| {
            let row = pictures_on(here, &designs);
            let lines = designs.into_iter().filter_map(|keys| {
                let design = here.design(&keys.first()?.design);
                Some(design.then(": ").and(&here.handles(keys)))
            });
            let lines = row.some().into_iter().chain(lines).collect();
            let name = here.term(Vocabulary::Papers, paper.as_str());
            List::new(CleanHtml::text(&name), lines).at(id_of(paper.as_str()))
        })
        .collect();
    leaf(
        here,
        Overview::Papers,
        "pages/papers.html",
        in_order(here, lists),
    )
}

/// How many sheets stand for a paper.
const SHEETS_OF_PAPER: usize = 6;

/// A row of pictures of sheets on one paper: the first of each design.
fn pictures_on(here: &Here<'_>, designs: &[Vec<&ImpressionKey>]) -> CleanHtml {
    let sheets = designs.iter().filter_map(|keys| {
        let design = here.public().designs.get(&keys.first()?.design)?;
        let mut pictured = keys.iter().filter_map(|key| {
            let hung = wall::impression(here, design, here.public().impression(key)?);
            hung.image.is_some().then_some(hung)
        });
        pictured.next()
    });
    let sheets: Vec<Hung> = sheets.take(SHEETS_OF_PAPER).collect();
    wall::row(here, &sheets)
}

/// The id of a list, to which `Here::gathered` links.
fn id_of(name: &str) -> Option<String> {
    Key::nearest_form(name).map(|key| key.to_string())
}

fn in_order(here: &Here<'_>, mut lists: Vec<List>) -> Vec<List> {
    let collator = Collator::of_words(here.language());
    lists.sort_by_cached_key(|list| list.heading.plain());
    lists.sort_by(|a, b| collator.compare(&a.heading.plain(), &b.heading.plain()));
    lists
}
