//! The examination sheet of a design: its points on paper, to be ticked in front of a print.
//!
//! First the points of the smallest set that separates every pair that can be separated, then the
//! others; within each group, those expected to give most information on a sheet not yet examined.

use serde::Serialize;

use super::candidates;
use super::points::{self, KeyPoint};
use crate::model::design::Design;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::page::setting::number_size::number_class;
use crate::page::setting::words::Argument;
use crate::study::identify::identify;
use crate::study::index::PointAt;
use crate::study::next_point::next_points;
use crate::study::separate::separability;
use crate::study::table::DiagnosticTable;

#[derive(Serialize)]
struct View {
    number: String,
    number_class: &'static str,
    design: CleanHtml,
    title: String,
    key: String,
    details_from: Option<CleanHtml>,
    /// The points of the smallest set, then the others, each sorted by expected information.
    groups: Vec<Group>,
}

#[derive(Serialize)]
struct Group {
    heading: String,
    /// The number of its first point, from 1.
    start: usize,
    points: Vec<KeyPoint>,
}

pub(crate) fn page(here: &Here<'_>, design: &Design) -> Leaf {
    let words = here.words();
    let nothing = DiagnosticTable::default();
    let table = candidates::table(here, design).unwrap_or(&nothing);
    let (needed, others) = in_best_order(table);
    let detailed = points::all(here, design, table);
    let points = |places: &[PointAt]| -> Vec<KeyPoint> {
        let found = places
            .iter()
            .filter_map(|place| detailed.get(place.index()));
        found.cloned().collect()
    };
    let group = |heading: &str, start: usize, places: &[PointAt]| Group {
        heading: words.word(heading).to_owned(),
        start,
        points: points(places),
    };
    let mut groups = vec![
        group("sheet-first", 1, &needed),
        group("sheet-then", 1 + needed.len(), &others),
    ];
    groups.retain(|group| !group.points.is_empty());
    let title = words.word("examination-sheet").to_owned();
    let view = View {
        number: design.number.clone(),
        number_class: number_class(&design.number),
        design: here.design(&design.key),
        key: here.href(&Address::IdentificationKey(design.key.clone())),
        details_from: points::details_from(here, design),
        groups,
        title: title.clone(),
    };
    let name = here.design_name(design).plain();
    let leaf_title = words.with("examination-sheet-of", &[("design", Argument::Text(&name))]);
    let siglum = &here.public().settings.siglum.value;
    Leaf::new(here.address, leaf_title, "pages/examination.html", &view)
        .cited_as(format!("{siglum} {}, {title}", design.number))
}

/// The points of the smallest set, then the others, each with the most telling first.
fn in_best_order(table: &DiagnosticTable) -> (Vec<PointAt>, Vec<PointAt>) {
    let nothing_seen = identify(table, &[]);
    let order = next_points(table, &nothing_seen, &[]);
    let needed = separability(table).smallest_set;
    order
        .iter()
        .map(|next| next.point)
        .partition(|point| needed.contains(point))
}
