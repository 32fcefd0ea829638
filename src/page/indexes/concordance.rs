//! The concordance of this catalogue's numbers with those of earlier catalogues, in both directions, down
//! to states (`docs/definitions.md`, "Older numbers").

use serde::Serialize;

use super::own_editions::{self, OwnEditions};
use crate::model::key::Key;
use crate::model::literature::Relation;
use crate::page::setting::address::{Address, Fragment};
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::study::concordance::{ConcordanceRow, DesignPart, OtherNumber, OwnEntry, ReverseRow};

#[derive(Serialize)]
struct View {
    title: String,
    brief: String,
    works: Vec<CleanHtml>,
    rows: Vec<Row>,
    reverse: Vec<EarlierNumbers>,
    /// What earlier editions of this catalogue called entries and states.
    own_editions: Option<OwnEditions>,
}

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
    rows: Vec<EarlierNumberRow>,
}

#[derive(Serialize)]
struct EarlierNumberRow {
    number: String,
    part: String,
    relation: String,
    ours: CleanHtml,
}

pub(crate) fn page(here: &Here<'_>) -> Leaf {
    let words = here.words();
    let concordance = &here.book.studies.concordance;
    let title = words.word("concordance").to_owned();
    let rows: Vec<Row> = concordance
        .rows
        .iter()
        .filter(|row| here.public().designs.contains_key(&row.ours.design))
        .map(|row| Row {
            ours: our_number(here, &row.ours),
            is_part: row.ours.part != DesignPart::Whole,
            cells: concordance
                .works
                .iter()
                .map(|work| their_numbers(here, row, work))
                .collect(),
        })
        .collect();
    let view = View {
        brief: words.count("concordance-brief", concordance.works.len()),
        works: concordance
            .works
            .iter()
            .map(|work| here.work(work, None))
            .collect(),
        rows,
        reverse: concordance
            .works
            .iter()
            .filter_map(|work| earlier_numbers(here, work))
            .collect(),
        own_editions: own_editions::table(here),
        title: title.clone(),
    };
    Leaf::new(here.address, title, "pages/concordance.html", &view)
}

/// The numbers of an earlier catalogue; `None` where it numbers no design of this one.
pub(crate) fn earlier_numbers(here: &Here<'_>, work: &Key) -> Option<EarlierNumbers> {
    let rows: Vec<EarlierNumberRow> = here
        .book
        .studies
        .concordance
        .reverse
        .get(work)?
        .iter()
        .filter(|row| here.public().designs.contains_key(&row.ours.design))
        .map(|row| earlier_number_row(here, row))
        .collect();
    let label = here.work(work, None).plain();
    (!rows.is_empty()).then(|| EarlierNumbers {
        id: format!("from-{work}"),
        work: here.work(work, None),
        label,
        rows,
    })
}

fn earlier_number_row(here: &Here<'_>, row: &ReverseRow) -> EarlierNumberRow {
    EarlierNumberRow {
        number: row.number.clone().unwrap_or_default(),
        part: row.part.clone().unwrap_or_default(),
        relation: here.words().listed("relation", row.relation).to_owned(),
        ours: our_number(here, &row.ours),
    }
}

/// "14, *The Last Ferry*", "14, state *iii*/iv", "14, memorial edition".
fn our_number(here: &Here<'_>, ours: &OwnEntry) -> CleanHtml {
    let Some(design) = here.public().designs.get(&ours.design) else {
        return CleanHtml::text(ours.design.as_str());
    };
    let number = || {
        CleanHtml::link(
            &here.href(&Address::Design(design.key.clone())),
            &CleanHtml::text(&design.number),
        )
    };
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

/// The numbers of a work for one entry of this catalogue, with the relation where the two do not describe
/// the same thing.
fn their_numbers(here: &Here<'_>, row: &ConcordanceRow, work: &Key) -> CleanHtml {
    let cell = |cell: &OtherNumber| {
        let number = CleanHtml::text(&cell.number);
        if cell.relation == Relation::Same {
            number
        } else {
            let relation = here.words().listed("relation", cell.relation);
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
