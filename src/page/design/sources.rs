//! Sources on a design: literature, concordance, exhibitions, related designs.

use std::collections::BTreeMap;

use serde::Serialize;

use crate::model::design::Design;
use crate::model::edtf::Day;
use crate::model::impression::Impression;
use crate::model::key::Key;
use crate::model::literature::Relation;
use crate::model::occurrence::{MentionRole, RecordId};
use crate::model::vocabulary::List;
use crate::page::phrases::claims;
use crate::page::phrases::earlier_numbers::{self, NumberedPart};
use crate::page::phrases::venues::exhibition_in_full;
use crate::page::setting::address::{Address, Fragment};
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, capitalised};

use crate::study::concordance;

/// The concordance of one design.
#[derive(Serialize)]
pub(super) struct Concordance {
    works: Vec<CleanHtml>,
    rows: Vec<Row>,
}

#[derive(Serialize)]
struct Row {
    ours: CleanHtml,
    theirs: Vec<CleanHtml>,
}

/// The works that the record of the design names, then those that the records of its sheets name.
pub(super) fn literature(
    here: &Here<'_>,
    design: &Design,
    sheets: &[&Impression],
) -> Vec<CleanHtml> {
    let own = design
        .literature
        .iter()
        .chain(&design.known_from)
        .map(|c| earlier_numbers::citation(here, c, NumberedPart::Design));
    let of_sheets = sheets.iter().flat_map(|sheet| {
        let records = here.joined().on_page(design, sheet);
        let citations = records.into_iter().flat_map(|record| &record.literature);
        let mut lines: Vec<CleanHtml> = Vec::new();
        for citation in citations {
            let line = earlier_numbers::citation(here, citation, NumberedPart::Design)
                .then(" (")
                .and(&here.impression(&sheet.key))
                .then(")");
            // Several records of one sheet may name one work.
            if !here.joined().is_joined(&sheet.key) || !lines.contains(&line) {
                lines.push(line);
            }
        }
        lines
    });
    own.chain(of_sheets).collect()
}

/// The catalogue's numbers beside those of earlier catalogues; `None` where no earlier catalogue numbers
/// the design or its parts, and where only one of them is numbered.
pub(super) fn concordance(here: &Here<'_>, design: &Design) -> Option<Concordance> {
    let rows = here.book.concordance.get(&design.key)?;
    let works: Vec<_> = here
        .book
        .studies
        .concordance
        .works
        .iter()
        .filter(|work| rows.iter().any(|row| row.cells.contains_key(*work)))
        .collect();
    // One row says no more than the literature above it.
    if works.is_empty() || rows.len() < 2 {
        return None;
    }
    let rows = rows
        .iter()
        .map(|row| Row {
            ours: our_number(here, design, &row.ours.part),
            theirs: works
                .iter()
                .map(|work| {
                    let cells = row.cells.get(*work).map(Vec::as_slice).unwrap_or_default();
                    let part = NumberedPart::from(&row.ours.part);
                    let said = cells.iter();
                    let said = said.map(|cell| their_number(here, work, cell, part));
                    let said: Vec<CleanHtml> = said.collect();
                    if said.is_empty() {
                        CleanHtml::text("–")
                    } else {
                        CleanHtml::join(&said, "; ")
                    }
                })
                .collect(),
        })
        .collect();
    Some(Concordance {
        works: works.into_iter().map(|w| here.work(w, None)).collect(),
        rows,
    })
}

/// "14", "14 *iii*", "14 Memorial edition".
pub(super) fn our_number(
    here: &Here<'_>,
    design: &Design,
    part: &concordance::DesignPart,
) -> CleanHtml {
    let address = Address::Design(design.key.clone());
    let number = CleanHtml::text(&design.number);
    match part {
        concordance::DesignPart::Whole => here.link(&address, &number),
        concordance::DesignPart::State(state) => CleanHtml::link(
            &here.href_part(&address, Fragment::State(state)),
            &number.then(" ").and(&here.numeral(&design.key, state)),
        ),
        concordance::DesignPart::Printing(printing) => CleanHtml::link(
            &here.href_part(&address, Fragment::Printing(printing)),
            &number.then(" ").then(&here.printing_name(design, printing)),
        ),
    }
}

/// "22", or "II (includes this state)"; the number leads to its row in the list of the work.
pub(super) fn their_number(
    here: &Here<'_>,
    work: &Key,
    cell: &concordance::OtherNumber,
    part: NumberedPart,
) -> CleanHtml {
    let number = here.row_of(work, &cell.fragment(), &cell.number);
    match cell.relation {
        Relation::Same => number,
        relation => number
            .then(" (")
            .then(earlier_numbers::relation(here.words(), relation, part))
            .then(")"),
    }
}

/// The exhibitions of the design's sheets in order of date, each once with its numbers and sheets.
pub(super) fn exhibitions(
    here: &Here<'_>,
    design: &Design,
    sheets: &[&Impression],
) -> Vec<CleanHtml> {
    let mut shown: BTreeMap<(bool, Option<Day>, &Key), Vec<CleanHtml>> = BTreeMap::new();
    let records = sheets.iter().copied();
    let records = records.flat_map(|sheet| here.joined().on_page(design, sheet));
    for impression in records {
        for exhibited in &impression.exhibited {
            let key = &exhibited.exhibition.value;
            let exhibition = here.public().exhibitions.get(key);
            let date = exhibition.and_then(|e| e.date.as_ref());
            let day = date.and_then(|d| d.earliest().day());
            let sheet = CleanHtml::text("(")
                .and(&here.impression(&impression.key))
                .then(")");
            let at = exhibited.at.as_deref().unwrap_or_default();
            let certainty = claims::this_sheet(here, exhibited.certainty()).unwrap_or_default();
            let said = CleanHtml::join(&[at, certainty].map(CleanHtml::text), ", ");
            let said = CleanHtml::join([&said, &sheet], " ");
            let lines = shown.entry((day.is_none(), day, key)).or_default();
            // Several records of one sheet may name one exhibition.
            if !here.joined().is_joined(&impression.key) || !lines.contains(&said) {
                lines.push(said);
            }
        }
    }
    shown
        .into_iter()
        .map(|((_, _, key), said)| {
            let exhibition = here.public().exhibitions.get(key);
            exhibition_in_full(here, key, exhibition)
                .then(", ")
                .and(&CleanHtml::join(&said, "; "))
        })
        .collect()
}

/// The related designs with their relation, and the designs that name this one as related.
pub(super) fn related(here: &Here<'_>, design: &Design) -> Vec<CleanHtml> {
    let mut lines: Vec<CleanHtml> = design
        .related
        .iter()
        .map(|related| {
            let link = here.design(&related.design.value);
            match &related.how {
                Some(how) => {
                    let how = here.term(List::Relations, how.value.as_str());
                    capitalised(&CleanHtml::text(&how)).then(": ").and(&link)
                }
                None => link,
            }
        })
        .collect();
    let mentions = here.book.studies.back_links.designs.get(&design.key);
    for mention in mentions.into_iter().flatten() {
        if mention.role != MentionRole::Related {
            continue;
        }
        let RecordId::Design(other) = &mention.from else {
            continue;
        };
        if !design.related.iter().any(|r| r.design.value == *other) {
            lines.push(
                CleanHtml::text(here.words().word("named-as-related-by"))
                    .then(" ")
                    .and(&here.design(other)),
            );
        }
    }
    lines
}
