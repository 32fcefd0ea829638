//! The concordance of this catalogue's numbers with those of earlier catalogues, in both directions, down
//! to states and printings (`docs/definitions.md`, "Older numbers").
//!
//! The name of the earlier catalogue stands in every row, so that a reader finds "Verhoeven 22" in the page as it is
//! cited.

use std::collections::BTreeSet;

use serde::Serialize;

use super::own_editions;
use crate::model::design::Design;
use crate::model::key::Key;
use crate::model::literature::Relation;
use crate::page::lists::table::Table;
use crate::page::phrases::earlier_numbers::relation;
use crate::page::setting::address::{Address, Fragment};
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::study::concordance::{
    ConcordanceRow, DesignPart, EarlierNumber, OtherNumber, OwnEntry, ReverseRow,
};

#[derive(Serialize)]
struct View {
    title: String,
    brief: String,
    ours: OwnNumbers,
    theirs: Vec<EarlierNumbers>,
    /// What earlier editions of this catalogue called entries and states.
    own_editions: Option<Table>,
}

/// This catalogue's numbers, with those of one or several works beside them.
#[derive(Serialize)]
pub(crate) struct OwnNumbers {
    works: Vec<CleanHtml>,
    rows: Vec<Row>,
    /// Whether some of them are in one of the works only, so that a dash stands for another.
    has_dash: bool,
    /// The designs that none of the works numbers, where they are too many for a row each.
    without: Vec<CleanHtml>,
    /// How many they are, in words.
    without_number: String,
}

/// So many designs without a number elsewhere still have a row each.
const ROWS: usize = 20;

#[derive(Serialize)]
struct Row {
    ours: CleanHtml,
    is_part: bool,
    /// The number in each work; empty where it does not describe it.
    cells: Vec<CleanHtml>,
}

/// One earlier catalogue, from its numbers to this catalogue's.
#[derive(Serialize)]
pub(crate) struct EarlierNumbers {
    id: String,
    work: CleanHtml,
    label: String,
    rows: Vec<EarlierNumberRows>,
}

/// A number of an earlier catalogue, with every entry of this one that it stands for.
#[derive(Serialize)]
struct EarlierNumberRows {
    /// Its address on the page of the work; `None` on other pages.
    id: Option<String>,
    number: CleanHtml,
    ours: Vec<EarlierNumberRow>,
}

#[derive(Serialize)]
struct EarlierNumberRow {
    relation: String,
    ours: CleanHtml,
}

pub(crate) fn page(here: &Here<'_>) -> Leaf {
    let words = here.words();
    let works = &here.book.studies.concordance.works;
    let title = words.word("concordance").to_owned();
    let view = View {
        brief: words.count("concordance-brief", works.len()),
        ours: own_numbers(here, works),
        theirs: works
            .iter()
            .filter_map(|work| earlier_numbers(here, work))
            .collect(),
        own_editions: own_editions::table(here),
        title: title.clone(),
    };
    Leaf::new(here.address, title, "pages/concordance.html", &view)
}

/// The numbers of this catalogue beside those of `works`: every design, and those of its states and printings that one
/// of them numbers. Where many designs have no number there, these run on below the others.
pub(crate) fn own_numbers(here: &Here<'_>, works: &[Key]) -> OwnNumbers {
    let all = here.book.studies.concordance.rows.iter();
    let all = all.filter(|row| here.public().designs.contains_key(&row.ours.design));
    let is_numbered = |row: &&ConcordanceRow| works.iter().any(|work| row.cells.contains_key(work));
    let numbered: BTreeSet<&Key> = all
        .clone()
        .filter(is_numbered)
        .map(|row| &row.ours.design)
        .collect();
    let is_whole = |row: &&ConcordanceRow| row.ours.part == DesignPart::Whole;
    let without: Vec<&Key> = all
        .clone()
        .filter(|row| is_whole(row) && !numbered.contains(&row.ours.design))
        .map(|row| &row.ours.design)
        .collect();
    let without = if without.len() > ROWS {
        without
    } else {
        Vec::new()
    };
    let is_row = |row: &&ConcordanceRow| {
        is_numbered(row)
            || is_whole(row) && (without.is_empty() || numbered.contains(&row.ours.design))
    };
    let rows = all.filter(is_row).map(|row| Row {
        ours: our_number(here, &row.ours),
        is_part: row.ours.part != DesignPart::Whole,
        cells: works
            .iter()
            .map(|work| their_numbers(here, row, work))
            .collect(),
    });
    let rows: Vec<Row> = rows.collect();
    OwnNumbers {
        works: works.iter().map(|work| here.work(work, None)).collect(),
        has_dash: rows
            .iter()
            .flat_map(|row| &row.cells)
            .any(CleanHtml::is_empty),
        rows,
        without_number: here
            .words()
            .count("in-none-of-the-catalogues", without.len()),
        without: without
            .into_iter()
            .filter_map(|key| here.public().designs.get(key))
            .map(|design| design_number(here, design))
            .collect(),
    }
}

/// The numbers of an earlier catalogue; `None` where it numbers no design of this one.
pub(crate) fn earlier_numbers(here: &Here<'_>, work: &Key) -> Option<EarlierNumbers> {
    let is_here = |row: &&&ReverseRow| here.public().designs.contains_key(&row.ours.design);
    let is_its_page = *here.address == Address::Work(work.clone());
    let numbers = here.book.studies.concordance.numbers_of(work);
    let rows = numbers.iter().map(|number| EarlierNumberRows {
        id: Some(number.fragment.clone()).filter(|id| is_its_page && !id.is_empty()),
        number: their_number(here, work, number),
        ours: number
            .rows
            .iter()
            .filter(is_here)
            .map(|row| EarlierNumberRow {
                relation: relation(here.words(), row.relation, (&row.ours.part).into()).to_owned(),
                ours: our_number(here, &row.ours),
            })
            .collect(),
    });
    let rows: Vec<EarlierNumberRows> = rows.filter(|row| !row.ours.is_empty()).collect();
    (!rows.is_empty()).then(|| EarlierNumbers {
        id: format!("from-{work}"),
        work: here.work(work, None),
        label: here.work(work, None).plain(),
        rows,
    })
}

/// "Verhoeven 22"; a link to the row on the page of the work.
fn their_number(here: &Here<'_>, work: &Key, number: &EarlierNumber<'_>) -> CleanHtml {
    here.earlier_number(work, &number.cited(), &number.fragment)
}

/// "14, *The Last Ferry*", "14, state *iii*/iv", "14, memorial edition".
fn our_number(here: &Here<'_>, ours: &OwnEntry) -> CleanHtml {
    let Some(design) = here.public().designs.get(&ours.design) else {
        return CleanHtml::text(ours.design.as_str());
    };
    let number = || design_number(here, design);
    match &ours.part {
        DesignPart::Whole => here.design(&design.key),
        DesignPart::State(state) => {
            let numeral = here.state_of(&design.key, state);
            let is_only = design.standing_states().count() == 1;
            let state = if is_only {
                numeral
            } else {
                here.words()
                    .html("state-reading", None, &[("state", &numeral)])
            };
            number().then(", ").and(&state)
        }
        DesignPart::Printing(printing) => {
            let to = here.href_part(
                &Address::Design(design.key.clone()),
                Fragment::Printing(printing),
            );
            let name = CleanHtml::text(&here.printing_name(design, printing));
            number().then(", ").and(&CleanHtml::link(&to, &name))
        }
    }
}

/// The number of a design as a link to it.
fn design_number(here: &Here<'_>, design: &Design) -> CleanHtml {
    CleanHtml::link(
        &here.href(&Address::Design(design.key.clone())),
        &CleanHtml::text(&design.number),
    )
}

/// The numbers of a work for one entry of this catalogue, with the relation where the two do not describe
/// the same thing.
fn their_numbers(here: &Here<'_>, row: &ConcordanceRow, work: &Key) -> CleanHtml {
    let cell = |cell: &OtherNumber| {
        let number = here.earlier_number(work, &cell.cited(), &cell.fragment());
        if cell.relation == Relation::Same {
            number
        } else {
            let relation = relation(here.words(), cell.relation, (&row.ours.part).into());
            number
                .then(" ")
                .and(&CleanHtml::quiet(&format!("({relation})")))
        }
    };
    let cells: Vec<CleanHtml> = row
        .cells
        .get(work)
        .into_iter()
        .flatten()
        .map(cell)
        .collect();
    CleanHtml::join(&cells, "; ")
}
