//! Editions declared or really printed against the numbers met, as a table (CSV), one edition a row.
//!
//! Columns: `design`, `printing` (their keys), `name` (of the printing), `declared` (empty where no
//! size is declared), `at_least`, `at_most` (sheets of the printing, proofs included), `met`, `missing`,
//! `above`, `repeated` (counts of numbers; met and missing are empty where no number was ever met),
//! `numbers_met`, `numbers_above`, `numbers_repeated` (the numbers, separated by spaces), `printed` (how many were really
//! printed; empty where that is not recorded).

use super::format::{Format, Sources};
use super::spreadsheet::Spreadsheet;
use crate::model::design::Design;
use crate::page::{Address, Here, Overview, Subject};
use crate::study::editions::EditionStudy;

/// One table of all editions, and one for each design that has any, in the folders of their census pages.
pub(super) const FORMAT: Format = Format {
    name: "editions-csv",
    file: "editions.csv",
    folders: &["census/", "design/…/census/"],
    media_type: "text/csv",
    relation: "alternate",
    subjects,
    write,
};

fn subjects(sources: &Sources<'_>) -> Vec<Subject> {
    let studies = &sources.studies.designs;
    let designs = sources.public.designs.keys().filter(|key| {
        let study = studies.get(*key);
        study.is_some_and(|study| !study.editions.is_empty())
    });
    let designs: Vec<Address> = designs
        .map(|key| Address::DesignCensus(key.clone()))
        .collect();
    let all = (!designs.is_empty()).then_some(Address::Overview(Overview::Census));
    designs.into_iter().chain(all).map(Subject::Page).collect()
}

fn write(here: &Here<'_>, subject: &Subject) -> Option<Vec<u8>> {
    let designs: Vec<&Design> = match subject {
        Subject::Page(Address::Overview(Overview::Census)) => here.designs_in_order().collect(),
        Subject::Page(Address::DesignCensus(key)) => vec![here.public().designs.get(key)?],
        _ => return None,
    };
    let mut table = Spreadsheet::new([
        "design",
        "printing",
        "name",
        "declared",
        "at_least",
        "at_most",
        "met",
        "missing",
        "above",
        "repeated",
        "numbers_met",
        "numbers_above",
        "numbers_repeated",
        "printed",
    ]);
    for design in designs {
        let Some(study) = here.book.studies.designs.get(&design.key) else {
            continue;
        };
        for edition in &study.editions {
            row(&mut table, here, design, edition);
        }
    }
    Some(table.bytes())
}

fn row(table: &mut Spreadsheet<14>, here: &Here<'_>, design: &Design, edition: &EditionStudy) {
    let known = edition.sheets;
    let listed = |numbers: &[u32]| {
        let numbers: Vec<String> = numbers.iter().map(ToString::to_string).collect();
        numbers.join(" ")
    };
    let [met, above]: [Vec<u32>; 2] = [edition.within().collect(), edition.above().collect()];
    let figure = |n: usize| {
        if edition.is_numbered() {
            n.to_string()
        } else {
            String::new()
        }
    };
    let missing = match edition.declared {
        Some(_) => figure(edition.missing().len()),
        None => String::new(),
    };
    table.row([
        design.key.as_str(),
        edition.printing.as_str(),
        &here.printing_name(design, &edition.printing),
        &edition.declared.map_or_else(String::new, |n| n.to_string()),
        &known.at_least.to_string(),
        &known.at_most.to_string(),
        &figure(met.len()),
        &missing,
        &above.len().to_string(),
        &edition.repeated.len().to_string(),
        &listed(&met),
        &listed(&above),
        &listed(&edition.repeated),
        &edition.printed.map_or_else(String::new, |n| n.to_string()),
    ]);
}
