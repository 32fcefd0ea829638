//! The record that a new design would get.
//!
//! In: a proposed design with its rows. Out: [`NewDesign`]. What the rows say alike is taken;
//! where they differ, what most rows say stands first, and a comment tells the rest. Nobody is made up: a maker who is no
//! person of the catalogue is told in a comment.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::series_names::SeriesNames;
use super::titles::title_key;
use crate::exchange::intake::facts::{GivenMaker, GivenTitle};
use crate::exchange::intake::proposal::{DesignIs, ProposedDesign, ProposedRow};
use crate::exchange::intake::reading::dates::Act;
use crate::exchange::intake::reading::sizes::Measured;
use crate::model::catalogue::Catalogue;
use crate::model::edtf::Date;
use crate::model::key::Key;
use crate::model::series_place::SeriesRef;
use crate::model::size::Size;
use crate::study::search::words::number_parts;

/// The record of a new design.
#[derive(Clone, Debug, PartialEq)]
pub struct NewDesign {
    /// Its key.
    pub key: Key,
    /// The number that readers see, where it is not the key.
    pub number: Option<String>,
    /// Its titles, that of most rows first.
    pub titles: Vec<GivenTitle>,
    /// Its dates, that of most rows first.
    pub dates: Vec<Date>,
    /// How it was made: keys of the vocabulary.
    pub technique: Vec<Key>,
    /// The size of the image.
    pub image: Option<Size>,
    /// The size of the platemark or block.
    pub matrix: Option<Size>,
    /// Its makers with their roles, those who are people of the catalogue.
    pub makers: Vec<(Key, Key)>,
    /// Its series.
    pub series: Option<SeriesRef>,
    /// What is doubtful or was left out, a sentence each.
    pub remarks: Vec<String>,
}

/// The roles of those who make a design or its matrices; printers and publishers belong to a printing.
const OF_DESIGNS: [&str; 8] = [
    "artist",
    "designer",
    "after",
    "carver",
    "engraver",
    "etcher",
    "lithographer",
    "screen-maker",
];

/// Makes the records of new designs, with the people and series of a catalogue.
pub struct NewDesignMaker<'c> {
    people: BTreeMap<String, Vec<&'c Key>>,
    series: SeriesNames,
}

impl<'c> NewDesignMaker<'c> {
    /// With the people and series of this catalogue.
    #[must_use]
    pub fn of(catalogue: &'c Catalogue) -> NewDesignMaker<'c> {
        NewDesignMaker {
            people: people(catalogue),
            series: SeriesNames::of(catalogue),
        }
    }

    /// The record of a design that is new and has a key (`keyed`); `None` for any other.
    #[must_use]
    pub fn record(&self, design: &ProposedDesign, rows: &[ProposedRow]) -> Option<NewDesign> {
        if design.is != DesignIs::New {
            return None;
        }
        let key = design.key.clone()?;
        let rows = rows_of(design, rows);
        let mut remarks = design.doubts.clone();
        let number = design
            .number
            .clone()
            .filter(|number| number != key.as_str());
        let technique = said_of(&rows, "techniques", &mut remarks, technique);
        let sizes = |of: &[Measured], what: &str, remarks: &mut Vec<String>| {
            let size = |row: &ProposedRow| {
                let mut sizes = of.iter().filter_map(|of| row.facts.size_of(*of));
                let size = sizes.find(|size| !size.is_sight)?.size()?;
                Some((format!("{size} mm"), size))
            };
            said_of(&rows, what, remarks, size)
        };
        let image = sizes(&[Measured::Image], "images", &mut remarks);
        let matrix = sizes(
            &[Measured::Platemark, Measured::Block],
            "platemarks or blocks",
            &mut remarks,
        );
        Some(NewDesign {
            titles: titles(design, &rows),
            dates: dates(&rows, &mut remarks),
            technique: technique.into_iter().next().unwrap_or_default(),
            image: image.into_iter().next(),
            matrix: matrix.into_iter().next(),
            makers: self.makers(&rows, &mut remarks),
            series: self.series(&rows, &mut remarks),
            key,
            number,
            remarks,
        })
    }

    fn makers(&self, rows: &[&ProposedRow], remarks: &mut Vec<String>) -> Vec<(Key, Key)> {
        let mut given: Vec<&Arc<GivenMaker>> = Vec::new();
        for maker in rows.iter().flat_map(|row| &row.facts.makers) {
            if OF_DESIGNS.contains(&maker.role.as_str()) && !given.contains(&maker) {
                given.push(maker);
            }
        }
        let mut makers = Vec::new();
        for maker in given {
            let known = self.people.get(&name_key(&maker.name)).map(Vec::as_slice);
            match known {
                Some([one]) => {
                    let maker = ((*one).clone(), maker.role.clone());
                    if !makers.contains(&maker) {
                        makers.push(maker);
                    }
                }
                Some(_) => remarks.push(format!(
                    "several people of the catalogue have the name of the {}, \"{}\"",
                    maker.role, maker.name
                )),
                None => remarks.push(format!(
                    "no person of the catalogue has the name of the {}, \"{}\"",
                    maker.role, maker.name
                )),
            }
        }
        makers
    }

    fn series(&self, rows: &[&ProposedRow], remarks: &mut Vec<String>) -> Option<SeriesRef> {
        let said = said_of(rows, "series", remarks, |row| {
            let series = self.series.series(&row.facts)?;
            Some((series.as_str().to_owned(), series))
        });
        said.into_iter().next()
    }
}

/// The technique of a new design: that of most of its rows.
#[must_use]
pub fn technique_of_rows(design: &ProposedDesign, rows: &[ProposedRow]) -> Vec<Key> {
    let said = most_said(&rows_of(design, rows), technique);
    let most = said.into_iter().next();
    most.map(|said| said.value).unwrap_or_default()
}

fn rows_of<'r>(design: &ProposedDesign, rows: &'r [ProposedRow]) -> Vec<&'r ProposedRow> {
    design.rows.iter().filter_map(|at| rows.get(*at)).collect()
}

fn technique(row: &ProposedRow) -> Option<(String, Vec<Key>)> {
    let techniques = &row.facts.techniques;
    (!techniques.is_empty()).then(|| (in_words(techniques), techniques.clone()))
}

fn in_words(keys: &[Key]) -> String {
    let keys: Vec<&str> = keys.iter().map(Key::as_str).collect();
    keys.join(" and ")
}

/// A value that rows say.
struct SaidValue<T> {
    /// It in words.
    words: String,
    value: T,
    /// The numbers of the rows.
    rows: Vec<u32>,
}

/// The values that rows say, that of most rows first; of as many rows, that of the first row.
fn most_said<T>(
    rows: &[&ProposedRow],
    value: impl Fn(&ProposedRow) -> Option<(String, T)>,
) -> Vec<SaidValue<T>> {
    let mut said: Vec<SaidValue<T>> = Vec::new();
    let mut places: BTreeMap<String, usize> = BTreeMap::new();
    for row in rows {
        let Some((words, value)) = value(row) else {
            continue;
        };
        let place = *places.entry(words.clone()).or_insert_with(|| {
            let rows = Vec::new();
            said.push(SaidValue { words, value, rows });
            said.len() - 1
        });
        said[place].rows.push(row.row);
    }
    // The sort is stable: the first said stays before one of as many rows.
    said.sort_by_key(|said| std::cmp::Reverse(said.rows.len()));
    said
}

/// The same; where the rows differ, a remark tells which rows say what.
fn said_of<T>(
    rows: &[&ProposedRow],
    what: &str,
    remarks: &mut Vec<String>,
    value: impl Fn(&ProposedRow) -> Option<(String, T)>,
) -> Vec<T> {
    let said = most_said(rows, value);
    if said.len() > 1 {
        let each = said
            .iter()
            .take(MOST_TOLD)
            .map(|said| format!("{} ({})", said.words, rows_in_words(&said.rows)));
        remarks.push(format!(
            "the {what} differ: {}",
            each.collect::<Vec<_>>().join(", ")
        ));
    }
    said.into_iter().map(|said| said.value).collect()
}

/// How many values that differ a remark tells.
const MOST_TOLD: usize = 8;

fn rows_in_words(rows: &[u32]) -> String {
    let first: Vec<String> = rows.iter().take(4).map(u32::to_string).collect();
    let more = if rows.len() > 4 { " …" } else { "" };
    let word = if rows.len() == 1 { "row" } else { "rows" };
    format!("{word} {}{more}", first.join(", "))
}

/// The title of most rows, then further ones; a row without one adds none.
fn titles(design: &ProposedDesign, rows: &[&ProposedRow]) -> Vec<GivenTitle> {
    let said = most_said(rows, |row| {
        let title = row.facts.title.as_ref()?;
        Some((title_key(&title.text)?, GivenTitle::clone(title)))
    });
    let said = said.into_iter().map(|said| said.value);
    let settled = design.title.as_ref().filter(|_| design.is_settled);
    let settled = settled.map(|text| GivenTitle {
        text: text.clone(),
        is_supplied: false,
    });
    let mut titles: Vec<GivenTitle> = settled.into_iter().collect();
    for title in said {
        let is_known = titles
            .iter()
            .any(|known| title_key(&known.text) == title_key(&title.text));
        if !is_known {
            titles.push(title);
        }
    }
    if titles.is_empty() {
        titles.push(GivenTitle {
            text: "Untitled".to_owned(),
            is_supplied: true,
        });
    }
    titles
}

fn dates(rows: &[&ProposedRow], remarks: &mut Vec<String>) -> Vec<Date> {
    said_of(rows, "dates", remarks, |row| {
        let date = row.facts.date_of(Act::Created)?.date()?;
        Some((date.as_str().to_owned(), date.clone()))
    })
}

/// The people of the catalogue by every form of their names.
fn people(catalogue: &Catalogue) -> BTreeMap<String, Vec<&Key>> {
    let mut people: BTreeMap<String, Vec<&Key>> = BTreeMap::new();
    for person in catalogue.people.values() {
        let others = person.names.iter().map(|name| name.text.value.as_str());
        let forms = std::iter::once(person.name.value.as_str()).chain(person.sort.as_deref());
        for form in forms.chain(others) {
            let known = people.entry(name_key(form)).or_default();
            if known.last() != Some(&&person.key) {
                known.push(&person.key);
            }
        }
    }
    people
}

/// A name whatever the order of its parts: "Brook, Ada" and "Ada Brook".
fn name_key(name: &str) -> String {
    let mut parts = number_parts(name);
    parts.sort();
    parts.join(".")
}
