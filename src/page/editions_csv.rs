//! Declared editions against the numbers met, as a table for other programs: one edition a row.
//!
//! Columns: `design`, `printing` (their keys), `name` (of the printing), `declared` (empty: no size is),
//! `at_least`, `at_most` (sheets of the printing, proofs too), `met`, `missing`, `above`, `repeated` (how many
//! numbers; met and missing are empty where no number was ever met), `numbers_met`, `numbers_above`,
//! `numbers_repeated` (which, with spaces between).

use super::address::Address;
use super::book::Here;
use super::spreadsheet::Spreadsheet;
use crate::model::design::Design;
use crate::study::DesignStudy;
use crate::study::editions::EditionStudy;

/// The file's name, in the folder of a census page.
const NAME: &str = "editions.csv";

/// The name of the file beside the census of some designs; `None` where they have no editions.
pub(super) fn name(here: &Here<'_>, designs: &[&Design]) -> Option<&'static str> {
    editions(here, designs).next().map(|_| NAME)
}

/// Path and content of the table of some designs; `None` where they have no editions.
pub(super) fn file(
    here: &Here<'_>,
    page: &Address,
    designs: &[&Design],
) -> Option<(String, Vec<u8>)> {
    let name = name(here, designs)?;
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
    ]);
    for (design, study, edition) in editions(here, designs) {
        row(&mut table, here, design, study, edition);
    }
    Some((format!("{page}{name}"), table.bytes()))
}

fn editions<'h>(
    here: &'h Here<'_>,
    designs: &'h [&'h Design],
) -> impl Iterator<Item = (&'h Design, &'h DesignStudy, &'h EditionStudy)> {
    designs.iter().flat_map(|design| {
        let study = here.book.studies.designs.get(&design.key);
        let editions = study.into_iter().flat_map(|study| {
            let editions = study.editions.iter();
            editions.map(move |edition| (study, edition))
        });
        editions.map(|(study, edition)| (*design, study, edition))
    })
}

fn row(
    table: &mut Spreadsheet<13>,
    here: &Here<'_>,
    design: &Design,
    study: &DesignStudy,
    edition: &EditionStudy,
) {
    let mut known = study.census.by.printing.iter();
    let known = known.find(|row| row.key.as_ref() == Some(&edition.printing));
    let known = known.map(|row| row.sheets).unwrap_or_default();
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
    ]);
}
