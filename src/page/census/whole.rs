//! The picture of the whole: a row of squares for each design, one a sheet, by printing and by how surely each sheet is
//! identified; of one design, a row for each printing. Beside each row stands the same in words.
//!
//! A sheet that may be of several printings stands after those of one. Where records may be one sheet each is a square:
//! as many as the upper end of the count.

use std::collections::{BTreeMap, BTreeSet};

use serde::Serialize;

use crate::model::design::Design;
use crate::model::key::{ImpressionKey, Key};
use crate::model::printing::PrintingKind;
use crate::page::drawings::squares::{self, Mark, Run, Squares};
use crate::page::setting::address::{Address, Fragment};
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, capitalised};
use crate::page::setting::words::Argument;
use crate::study::DesignStudy;

/// A row of the picture.
#[derive(Serialize)]
pub(super) struct WholeRow {
    /// The number of the design, or the name of the printing, as a link.
    name: CleanHtml,
    squares: Squares,
    /// The same in words.
    said: String,
    /// The number of sheets.
    figure: CleanHtml,
    /// Whether it has the sheets of many designs, and so the whole width.
    pub is_wide: bool,
}

/// The sheets that stand together in a row.
struct SheetGroup<'d> {
    /// The printing; `None` for several or none.
    printing: Option<&'d Key>,
    name: String,
    /// Whether the artist printed them.
    is_own: bool,
    /// How many are identified for certain, and how many are not.
    certain: usize,
    uncertain: usize,
    /// How many of them have no printing on record.
    unknown: usize,
}

impl<'d> SheetGroup<'d> {
    /// A group without sheets.
    fn named(printing: Option<&'d Key>, name: String, is_own: bool) -> SheetGroup<'d> {
        SheetGroup {
            printing,
            name,
            is_own,
            certain: 0,
            uncertain: 0,
            unknown: 0,
        }
    }

    fn sheets(&self) -> usize {
        self.certain + self.uncertain + self.unknown
    }

    fn runs(&self) -> [Run; 3] {
        let run = |mark, sheets, begins| Run {
            mark,
            is_first: self.is_own,
            sheets,
            begins,
        };
        [
            run(Mark::Filled, self.certain, true),
            run(Mark::Hollow, self.uncertain, self.certain == 0),
            run(
                Mark::Point,
                self.unknown,
                self.certain + self.uncertain == 0,
            ),
        ]
    }

    /// "Printed by the artist 9, 2 of them not certain".
    fn in_words(&self, here: &Here<'_>) -> String {
        let given = [
            ("printing", Argument::Text(&self.name)),
            ("sheets", Argument::Count(self.sheets())),
            ("uncertain", Argument::Count(self.uncertain)),
        ];
        here.words().with("whole-printing", &given)
    }
}

/// Whether so many rows stand in columns.
pub(super) fn is_dense(rows: usize) -> bool {
    rows > 60
}

/// A row for each accepted design of which an impression is known; one row for all designs among `ones`.
pub(super) fn of_designs(here: &Here<'_>, ones: &BTreeSet<Key>) -> Vec<WholeRow> {
    let is_known = |d: &&Design| {
        let study = here.book.studies.designs.get(&d.key);
        study.is_some_and(|study| study.census.sheets.at_most > 0)
    };
    let designs = here
        .designs_in_order()
        .filter(|d| !d.standing.is_set_apart() && !ones.contains(&d.key));
    let designs: Vec<&Design> = designs.filter(is_known).collect();
    let across = if is_dense(designs.len()) {
        squares::ACROSS_COLUMN
    } else {
        squares::ACROSS
    };
    let row = |design: &Design| {
        let study = here.book.studies.designs.get(&design.key)?;
        let groups = groups(here, design, study);
        let runs: Vec<Run> = groups.iter().flat_map(SheetGroup::runs).collect();
        let said: Vec<String> = groups.iter().map(|group| group.in_words(here)).collect();
        let page = Address::DesignCensus(design.key.clone());
        (!groups.is_empty()).then(|| WholeRow {
            name: here.link(&page, &CleanHtml::text(&design.number)),
            squares: squares::squares(&runs, across),
            is_wide: false,
            said: said.join("; "),
            figure: here.sheets(study.census.sheets),
        })
    };
    let rows = designs.into_iter().filter_map(row);
    rows.chain(of_ones(here, ones)).collect()
}

/// The sheets of designs of one sheet in a row: those that the artist printed first, then those of others.
fn of_ones(here: &Here<'_>, designs: &BTreeSet<Key>) -> Option<WholeRow> {
    let records = designs
        .iter()
        .filter_map(|key| here.public().designs.get(key));
    let groups: Vec<SheetGroup<'_>> = records
        .filter_map(|design| Some((design, here.book.studies.designs.get(&design.key)?)))
        .flat_map(|(design, study)| groups(here, design, study))
        .collect();
    let sum = |is_own: bool| {
        let of_them = groups.iter().filter(|group| group.is_own == is_own);
        let mut sum = SheetGroup::named(None, String::new(), is_own);
        for group in of_them {
            sum.certain += group.certain;
            sum.uncertain += group.uncertain;
            sum.unknown += group.unknown;
        }
        sum
    };
    let runs = [sum(true).runs(), sum(false).runs()].concat();
    (!designs.is_empty()).then(|| WholeRow {
        name: CleanHtml::link(
            "#one-each",
            &CleanHtml::text(here.words().word("whole-one-each")),
        ),
        squares: squares::squares(&runs, squares::ACROSS),
        is_wide: true,
        said: here.words().count("designs-of-one", designs.len()),
        figure: CleanHtml::text(&designs.len().to_string()),
    })
}

/// A row for each printing of a design.
pub(super) fn of_design(here: &Here<'_>, design: &Design) -> Vec<WholeRow> {
    let Some(study) = here.book.studies.designs.get(&design.key) else {
        return Vec::new();
    };
    let row = |group: SheetGroup<'_>| WholeRow {
        name: match group.printing {
            Some(key) => {
                let to = here.href_part(
                    &Address::Design(design.key.clone()),
                    Fragment::Printing(key),
                );
                CleanHtml::link(&to, &CleanHtml::text(&group.name))
            }
            None => CleanHtml::text(&group.name),
        },
        squares: squares::squares(&group.runs(), squares::ACROSS),
        said: group.in_words(here),
        is_wide: false,
        figure: CleanHtml::text(&group.sheets().to_string()),
    };
    groups(here, design, study).into_iter().map(row).collect()
}

/// The sheets of a design: by printing in the order of the record; then those of several; then those of none on record.
fn groups<'d>(here: &Here<'_>, design: &'d Design, study: &DesignStudy) -> Vec<SheetGroup<'d>> {
    let mut printings_of: BTreeMap<&ImpressionKey, Vec<Option<&Key>>> = BTreeMap::new();
    for row in &study.census.by.printing {
        for sheet in &row.allowing {
            printings_of
                .entry(sheet)
                .or_default()
                .push(row.key.as_ref());
        }
    }
    let is_firm = |sheet: &ImpressionKey| {
        let not_firm = study.firmness.among(std::slice::from_ref(sheet));
        not_firm.uncertain + not_firm.contradicted == 0
    };
    let words = here.words();
    let mut groups: Vec<SheetGroup<'d>> = design
        .printings
        .iter()
        .map(|printing| {
            let key = &printing.key.value;
            let is_own = printing.kind.own() == Some(&PrintingKind::Artist);
            let name = CleanHtml::text(&here.printing_name(design, key));
            SheetGroup::named(Some(key), capitalised(&name).plain(), is_own)
        })
        .collect();
    let mut several = SheetGroup::named(
        None,
        words.word("whole-several-printings").to_owned(),
        false,
    );
    let mut none = SheetGroup::named(None, words.word("whole-no-printing").to_owned(), false);
    for (sheet, printings) in printings_of {
        match printings.as_slice() {
            [Some(one)] => {
                let group = groups.iter_mut().find(|group| group.printing == Some(*one));
                let group = group.unwrap_or(&mut several);
                if is_firm(sheet) {
                    group.certain += 1;
                } else {
                    group.uncertain += 1;
                }
            }
            [None] => none.unknown += 1,
            _ => several.uncertain += 1,
        }
    }
    groups.extend([several, none]);
    groups.retain(|group| group.sheets() > 0);
    groups
}
