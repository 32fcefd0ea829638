//! The examination sheet of a design: its points on paper, to be ticked in front of a print.
//!
//! The points stand in the order in which the key would ask them of a sheet not yet examined: those expected to
//! give most information first. Beside them is room for what no point asks: sizes and the instrument, inscriptions
//! and marks of both sides, a sketch of the watermark, the condition, and what could not be seen.

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
use crate::study::next_point::next_points;
use crate::study::table::DiagnosticTable;

#[derive(Serialize)]
struct View {
    number: String,
    number_class: &'static str,
    design: CleanHtml,
    title: String,
    key: String,
    details_from: Option<CleanHtml>,
    /// The points, those expected to give most information first.
    points: Vec<KeyPoint>,
}

pub(crate) fn page(here: &Here<'_>, design: &Design) -> Leaf {
    let words = here.words();
    let nothing = DiagnosticTable::default();
    let table = candidates::table(here, design).unwrap_or(&nothing);
    let detailed = points::all(here, design, table);
    let in_order = next_points(table, &identify(table, &[]), &[]);
    let points = in_order
        .iter()
        .filter_map(|next| detailed.get(next.point.index()))
        .cloned()
        .collect();
    let title = words.word("examination-sheet").to_owned();
    let view = View {
        number: design.number.clone(),
        number_class: number_class(&design.number),
        design: here.design(&design.key),
        key: here.href(&Address::IdentificationKey(design.key.clone())),
        details_from: points::details_from(here, design),
        points,
        title: title.clone(),
    };
    let name = here.design_name(design).plain();
    let leaf_title = words.with("examination-sheet-of", &[("design", Argument::Text(&name))]);
    let siglum = &here.public().settings.siglum.value;
    Leaf::new(here.address, leaf_title, "pages/examination.html", &view)
        .cited_as(format!("{siglum} {}, {title}", design.number))
}
