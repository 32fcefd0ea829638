//! The identification key of a design: what a sheet on the table can be.
//!
//! The page is a key of the printed tradition, usable without script and on paper: couplets, then
//! the points with their details. A script (`assets/key.js`) sets the same key as a form, in which
//! points are answered in any order; its markup waits in a `template`, so that no control stands on
//! the page that does nothing.
//!
//! Everything is made from the published design; only how many sheets are known of each candidate
//! is taken from the study, which counts what is not shown.

use serde::Serialize;

use super::address::{Address, Fragment};
use super::book::Here;
use super::design::number_class;
use super::figures;
use super::frame::Leaf;
use super::html::{CleanHtml, as_sentences};
use super::key_couplets::{self, CoupletLine};
use super::key_data;
use super::key_points::{self, Detailed};
use super::words::Given;
use crate::model::certainty::Certainty;
use crate::model::design::Design;
use crate::model::impression::Impression;
use crate::model::key::PictureOwner;
use crate::model::point::{Observation, PointKind, Seen};
use crate::model::words::ClosedList as _;
use crate::study::candidates::candidates;
use crate::study::couplets::couplets;
use crate::study::identify::is_printed;
use crate::study::table::{CandidateRow, DiagnosticTable};

#[derive(Serialize)]
struct View {
    number: String,
    number_class: &'static str,
    design: CleanHtml,
    title: String,
    brief: String,
    sheet: String,
    couplets: Vec<CoupletLine>,
    /// What the key says where no point narrows the candidates: all of them.
    all: CleanHtml,
    points: Vec<Detailed>,
    details_from: Option<CleanHtml>,
    candidates: Vec<CleanHtml>,
    data: CleanHtml,
}

/// Whether a design has a key: something that a sheet can be, and something to look at.
pub(super) fn has_key(design: &Design) -> bool {
    !design.points.is_empty() && !candidates(design).is_empty()
}

/// The diagnostic table of the published design.
pub(super) fn table(here: &Here<'_>, design: &Design) -> DiagnosticTable {
    let book = here.book;
    let table = DiagnosticTable::of(book.public, &book.studies.groups, design);
    match book.studies.designs.get(&design.key) {
        Some(study) => table.with_priors_of(&study.table),
        None => table,
    }
}

pub(super) fn page(here: &Here<'_>, design: &Design) -> Leaf {
    let words = here.words();
    let table = table(here, design);
    let names: Vec<CleanHtml> = table
        .candidates
        .iter()
        .map(|row| candidate_name(here, design, row))
        .collect();
    let title = words.word("identification-key").to_owned();
    let view = View {
        number: design.number.clone(),
        number_class: number_class(&design.number),
        design: here.design(&design.key),
        title: title.clone(),
        brief: words.count("key-candidates", table.candidates.len()),
        sheet: here.href(&Address::ExaminationSheet(design.key.clone())),
        couplets: key_couplets::lines(here, design, &table, &couplets(&table), &names),
        all: key_couplets::together(here, &names),
        points: key_points::all(here, design, &table),
        details_from: details_from(here, design),
        data: key_data::data(here, &table),
        candidates: names,
    };
    let name = here.design_name(design).plain();
    let leaf_title = words.with("key-of", &[("design", Given::Text(&name))]);
    let siglum = &here.public().settings.siglum.value;
    Leaf::new(here.address, leaf_title, "pages/key.html", &view)
        .cited_as(format!("{siglum} {}, {title}", design.number))
}

/// "state *iii*/v (Printed by the artist)", leading to both.
pub(super) fn candidate_name(here: &Here<'_>, design: &Design, row: &CandidateRow) -> CleanHtml {
    let state = here.state_of(&design.key, &row.state);
    let state = if design.standing_states().count() == 1 {
        state
    } else {
        here.words()
            .html("state-reading", None, &[("state", &state)])
    };
    match &row.printing {
        None => state,
        Some(key) => {
            let address = Address::Design(design.key.clone());
            let to = here.href_part(&address, Fragment::Printing(key));
            let name = CleanHtml::text(&here.printing_name(design, key));
            state.then(" (").and(&CleanHtml::link(&to, &name)).then(")")
        }
    }
}

/// "Details from 7.5, Northport, Harbour Museum. Photograph: …": whose picture it is.
pub(super) fn details_from(here: &Here<'_>, design: &Design) -> Option<CleanHtml> {
    let key = key_points::reference(here, design)?;
    let picture = here.public().picture(&key)?;
    let source = match &key.owner {
        PictureOwner::Impression(key) => {
            let impression = here.public().impression(key)?;
            let whose = figures::holder_and_number(here, impression);
            CleanHtml::join([&here.impression(key), &whose], ", ")
        }
        PictureOwner::Design(design) => here.design(design),
    };
    let from = here
        .words()
        .html("details-from", None, &[("picture", &source)]);
    Some(as_sentences(&[from, figures::credit(here, picture)]))
}

/// Where the key stands, with what a record says was seen on a sheet: `…/key/#see=moon=present`.
pub(super) fn examined(here: &Here<'_>, design: &Design, impression: &Impression) -> String {
    let answers: Vec<String> = impression
        .observed
        .iter()
        .filter_map(|observation| answer(design, impression, observation))
        .collect();
    let key = here.href(&Address::IdentificationKey(design.key.clone()));
    match answers.as_slice() {
        [] => key,
        answers => format!("{key}#see={}", answers.join(",")),
    }
}

/// "lamps=2|3:probable", as `key.js` reads it.
fn answer(design: &Design, impression: &Impression, observation: &Observation) -> Option<String> {
    let point = design.point(&observation.point.value)?;
    let (sign, values) = match &observation.seen {
        Seen::OneOf(values) => ("=", values),
        Seen::NoneOf(values) => ("!=", values),
        Seen::NotVisible | Seen::NotApplicable => return None,
    };
    let is_measure = matches!(point.kind, PointKind::Measure { .. });
    let is_told = is_printed(impression, point) && !values.is_empty();
    if !is_told || (is_measure && (sign == "!=" || values.len() > 1)) {
        return None;
    }
    let values: Vec<String> = values.iter().map(|v| v.value.to_string()).collect();
    let sure = match observation.claim.certainty() {
        Certainty::Certain => String::new(),
        doubt => format!(":{}", doubt.word()),
    };
    Some(format!(
        "{}{sign}{}{sure}",
        point.key.value,
        values.join("|")
    ))
}
