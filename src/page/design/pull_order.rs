//! The order of printing of a design's sheets by wear, as a diagram and in words
//! (`docs/definitions.md`, "Order of printing").

use serde::Serialize;

use crate::model::design::Design;
use crate::model::key::ImpressionKey;
use crate::model::point::{PointKind, Value};
use crate::page::drawings::diagram::{Diagram, LinkedText, Node, lay_out};
use crate::page::phrases::enumeration;
use crate::page::phrases::matrices;
use crate::page::phrases::values;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences};
use crate::study::index::PullAt;
use crate::study::wear::{Pull, Wear, wear};

/// How many sheets a line of the diagram names.
const ON_A_LINE: usize = 2;

/// The order of printing by the wear of one matrix.
#[derive(Serialize)]
pub(super) struct PullOrder {
    /// "Wear of the sky block, states *iii* to *v*: crack".
    heading: CleanHtml,
    diagram: Option<Diagram>,
    /// The same in words, a line for each pull.
    lines: Vec<CleanHtml>,
}

/// The order of printing that wear shows, one for each matrix.
pub(super) fn all(here: &Here<'_>, design: &Design) -> Vec<PullOrder> {
    let found = wear(design);
    found
        .iter()
        .map(|wear| pull_order(here, design, wear))
        .collect()
}

fn pull_order(here: &Here<'_>, design: &Design, wear: &Wear) -> PullOrder {
    let words = here.words();
    let nodes: Vec<Node> = wear
        .pulls
        .iter()
        .map(|pull| Node {
            column: pull.layer,
            row: None,
            lines: lines_of(here, design, wear, pull),
        })
        .collect();
    let said: Vec<CleanHtml> = wear
        .pulls
        .indexes()
        .filter_map(|at| pull_in_words(here, design, wear, at))
        .collect();
    let cycles = wear.cycles.iter().map(|cycle| {
        let sheets = sheets(here, cycle);
        as_sentences(&[words.html("wear-in-a-circle", None, &[("sheets", &sheets)])])
    });
    let heading = heading(here, design, wear);
    let before = wear.before.iter().map(|(a, b)| (a.index(), b.index()));
    let before: Vec<(usize, usize)> = before.collect();
    let diagram = (!before.is_empty()).then(|| lay_out(&nodes, &before, heading.plain()));
    PullOrder {
        diagram,
        lines: said.into_iter().chain(cycles).collect(),
        heading,
    }
}

fn heading(here: &Here<'_>, design: &Design, wear: &Wear) -> CleanHtml {
    let words = here.words();
    let matrix = wear.matrix.as_ref().map_or_else(
        || words.word("wear-of-no-matrix").to_owned(),
        |key| matrices::matrix_name(here, design, key),
    );
    let matrix = CleanHtml::text(&matrix);
    let states: Vec<CleanHtml> = wear
        .states
        .iter()
        .map(|state| here.numeral(&design.key, state))
        .collect();
    let states = enumeration::together(here, &states);
    if design.standing_states().count() == wear.states.len() {
        return words.html("wear-of", None, &[("matrix", &matrix)]);
    }
    words.html(
        "wear-of-in",
        None,
        &[("matrix", &matrix), ("states", &states)],
    )
}

/// The observed stages, then the sheets, a few on a line.
fn lines_of(here: &Here<'_>, design: &Design, wear: &Wear, pull: &Pull) -> Vec<Vec<LinkedText>> {
    let stages = stages(here, design, wear, pull).into_iter().map(|stage| {
        vec![LinkedText {
            text: stage,
            href: String::new(),
        }]
    });
    let words: Vec<LinkedText> = pull
        .sheets
        .iter()
        .map(|key| LinkedText {
            text: here.sheet_number(key),
            href: here.href(&Address::Impression(key.clone())),
        })
        .collect();
    stages
        .chain(words.chunks(ON_A_LINE).map(<[LinkedText]>::to_vec))
        .collect()
}

/// The observed stages: "crack: to the mast".
fn stages(here: &Here<'_>, design: &Design, wear: &Wear, pull: &Pull) -> Vec<String> {
    let points = wear.points.iter().zip(&pull.stages);
    let said = points.filter_map(|(point, stage)| {
        let point = design.point(point)?;
        let PointKind::Stage(stages) = &point.kind else {
            return None;
        };
        let stage = stages.get((*stage)?.index())?.value.clone();
        let seen = values::value(here, point, &Value::Word(stage));
        let name = point.key.value.as_str().replace('-', " ");
        Some(format!("{name}: {seen}"))
    });
    said.collect()
}

/// "7.12: crack to the mast. After 7.5 and 7.9."
fn pull_in_words(here: &Here<'_>, design: &Design, wear: &Wear, at: PullAt) -> Option<CleanHtml> {
    let pull = wear.pulls.get(at)?;
    let stages: Vec<CleanHtml> = stages(here, design, wear, pull)
        .iter()
        .map(|stage| CleanHtml::text(stage))
        .collect();
    let first = sheets(here, &pull.sheets)
        .then(" (")
        .and(&CleanHtml::join(&stages, "; "))
        .then(")");
    let before: Vec<ImpressionKey> = wear
        .before
        .iter()
        .filter(|(_, to)| *to == at)
        .filter_map(|(from, _)| wear.pulls.get(*from))
        .flat_map(|pull| pull.sheets.clone())
        .collect();
    if before.is_empty() {
        return Some(as_sentences(&[first]));
    }
    let before = sheets(here, &before);
    let pulled = here
        .words()
        .html("pulled-after", None, &[("before", &before)]);
    Some(as_sentences(&[first.then(" ").and(&pulled)]))
}

fn sheets(here: &Here<'_>, keys: &[ImpressionKey]) -> CleanHtml {
    let names: Vec<CleanHtml> = keys.iter().map(|key| here.impression(key)).collect();
    enumeration::together(here, &names)
}
