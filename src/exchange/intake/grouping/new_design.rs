//! The record that a new design would get.
//!
//! In: a proposed design with its rows. Out: [`NewDesign`], and its text as `design.toml`. What the rows say alike is taken;
//! where they differ, what most rows say stands first, and a comment tells the rest. Nobody is made up: a maker who is no
//! person of the catalogue is told in a comment.

use std::collections::BTreeMap;
use std::fmt::Write as _;

use super::series_names::SeriesNames;
use super::titles::title_key;
use crate::exchange::intake::facts::{GivenMaker, GivenTitle};
use crate::exchange::intake::proposal::{DesignIs, ProposedDesign, ProposedRow};
use crate::exchange::intake::reading::dates::Act;
use crate::exchange::intake::reading::sizes::Measured;
use crate::exchange::intake::toml_text::text_value as quoted;
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

/// The record of a design that is new and has a key (`keyed`); `None` for any other.
#[must_use]
pub fn new_design(
    design: &ProposedDesign,
    rows: &[ProposedRow],
    catalogue: &Catalogue,
) -> Option<NewDesign> {
    if design.is != DesignIs::New {
        return None;
    }
    let key = design.key.clone()?;
    let rows: Vec<&ProposedRow> = design.rows.iter().filter_map(|at| rows.get(*at)).collect();
    let mut remarks = design.doubts.clone();
    let number = design
        .number
        .clone()
        .filter(|number| number != key.as_str());
    let technique = most_said(&rows, "techniques", &mut remarks, |row| {
        let techniques = &row.facts.techniques;
        (!techniques.is_empty()).then(|| (in_words(techniques), techniques.clone()))
    });
    let sizes = |of: &[Measured], what: &str, remarks: &mut Vec<String>| {
        let size = |row: &ProposedRow| {
            let mut sizes = of.iter().filter_map(|of| row.facts.size_of(*of));
            let size = sizes.find(|size| !size.is_sight)?.size()?;
            Some((format!("{size} mm"), size))
        };
        most_said(&rows, what, remarks, size)
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
        makers: makers(&rows, catalogue, &mut remarks),
        series: series(&rows, catalogue, &mut remarks),
        key,
        number,
        remarks,
    })
}

fn in_words(keys: &[Key]) -> String {
    let keys: Vec<&str> = keys.iter().map(Key::as_str).collect();
    keys.join(" and ")
}

/// The values that rows say, that of most rows first; of as many rows, that of the first row. Where they differ, a remark
/// tells which rows say what.
fn most_said<T>(
    rows: &[&ProposedRow],
    what: &str,
    remarks: &mut Vec<String>,
    value: impl Fn(&ProposedRow) -> Option<(String, T)>,
) -> Vec<T> {
    let mut said: Vec<(String, T, Vec<u32>)> = Vec::new();
    let mut places: BTreeMap<String, usize> = BTreeMap::new();
    for row in rows {
        let Some((words, value)) = value(row) else {
            continue;
        };
        let place = *places.entry(words.clone()).or_insert_with(|| {
            said.push((words, value, Vec::new()));
            said.len() - 1
        });
        said[place].2.push(row.row);
    }
    // The sort is stable: the first said stays before one of as many rows.
    said.sort_by_key(|(_, _, rows)| std::cmp::Reverse(rows.len()));
    if said.len() > 1 {
        let each = said
            .iter()
            .take(MOST_TOLD)
            .map(|(words, _, rows)| format!("{words} ({})", rows_in_words(rows)));
        remarks.push(format!(
            "the {what} differ: {}",
            each.collect::<Vec<_>>().join(", ")
        ));
    }
    said.into_iter().map(|(_, value, _)| value).collect()
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
    let mut ignored = Vec::new();
    let said = most_said(rows, "titles", &mut ignored, |row| {
        let title = row.facts.title.as_ref()?;
        Some((title_key(&title.text)?, title.clone()))
    });
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
    most_said(rows, "dates", remarks, |row| {
        let date = row.facts.date_of(Act::Created)?.date()?;
        Some((date.as_str().to_owned(), date.clone()))
    })
}

fn makers(
    rows: &[&ProposedRow],
    catalogue: &Catalogue,
    remarks: &mut Vec<String>,
) -> Vec<(Key, Key)> {
    let mut given: Vec<&GivenMaker> = Vec::new();
    for maker in rows.iter().flat_map(|row| &row.facts.makers) {
        if OF_DESIGNS.contains(&maker.role.as_str()) && !given.contains(&maker) {
            given.push(maker);
        }
    }
    let mut makers = Vec::new();
    if given.is_empty() {
        return makers;
    }
    let people = people(catalogue);
    for maker in given {
        let known = people.get(&name_key(&maker.name)).map(Vec::as_slice);
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

fn series(
    rows: &[&ProposedRow],
    catalogue: &Catalogue,
    remarks: &mut Vec<String>,
) -> Option<SeriesRef> {
    let names = SeriesNames::of(catalogue);
    let said = most_said(rows, "series", remarks, |row| {
        let series = names.series(&row.facts)?;
        Some((series.as_str().to_owned(), series))
    });
    said.into_iter().next()
}

/// The text of `design.toml`.
#[must_use]
pub fn design_toml(design: &NewDesign) -> String {
    let mut text = format!(
        "# Design {}, proposed from what was handed in.\n",
        design.key
    );
    for remark in &design.remarks {
        // One line, whatever the remark quotes.
        let words: Vec<&str> = remark.split_whitespace().collect();
        let words: String = words
            .join(" ")
            .chars()
            .filter(|sign| !sign.is_control())
            .collect();
        let _ = writeln!(text, "# Look at: {words}.");
    }
    text.push('\n');
    if let Some(number) = &design.number {
        let _ = writeln!(text, "number = {}", quoted(number));
    }
    text.push_str("titles = [\n");
    for title in &design.titles {
        let supplied = if title.is_supplied {
            ", supplied = true"
        } else {
            ""
        };
        let _ = writeln!(text, "  {{ text = {}{supplied} }},", quoted(&title.text));
    }
    text.push_str("]\n");
    match &design.dates[..] {
        [] => {}
        [one] => {
            let _ = writeln!(text, "date = {}", quoted(one.as_str()));
        }
        several => {
            let each = several
                .iter()
                .map(|date| format!("{{ is = {} }}", quoted(date.as_str())));
            let _ = writeln!(text, "date = [{}]", each.collect::<Vec<_>>().join(", "));
        }
    }
    if !design.makers.is_empty() {
        let each = design
            .makers
            .iter()
            .map(|(person, role)| format!("{{ person = \"{person}\", role = \"{role}\" }}"));
        let _ = writeln!(text, "makers = [{}]", each.collect::<Vec<_>>().join(", "));
    }
    if !design.technique.is_empty() {
        let each = design.technique.iter().map(|key| format!("\"{key}\""));
        let _ = writeln!(
            text,
            "technique = [{}]",
            each.collect::<Vec<_>>().join(", ")
        );
    }
    match &design.series {
        Some(SeriesRef::Record(key)) => {
            let _ = writeln!(text, "series = {{ series = \"{key}\" }}");
        }
        Some(SeriesRef::Named(name)) => {
            let _ = writeln!(text, "series = {{ name = {} }}", quoted(name));
        }
        None => {}
    }
    let sizes = [("image", design.image), ("matrix", design.matrix)];
    if sizes.iter().any(|(_, size)| size.is_some()) {
        text.push_str("\n[size]\n");
    }
    for (key, size) in sizes {
        if let Some(size) = size {
            let _ = writeln!(
                text,
                "{key} = [{}, {}]",
                mm(size.height_mm()),
                mm(size.width_mm())
            );
        }
    }
    text
}

/// Millimetres with at most one decimal, as records have them.
fn mm(mm: f64) -> String {
    let text = format!("{mm:.1}");
    text.strip_suffix(".0").map_or(text.clone(), str::to_owned)
}
