//! Notes beside the counts: how they were made, in the catalogue's own words first; sheets that belong
//! together; records that are not counted.

use std::collections::BTreeSet;

use serde::Serialize;

use crate::model::design::Design;
use crate::model::impression::Impression;
use crate::model::key::ImpressionKey;
use crate::page::phrases::enumeration;
use crate::page::phrases::readings;
use crate::page::setting::book::Here;
use crate::page::setting::export_links::ExportLink;
use crate::page::setting::html::CleanHtml;
use crate::study::census::{is_counted, is_of_own_matrices};
use crate::study::linked::ImpressionGroup;

/// The heading in `[principles]` under which a catalogue states which sheets it counts.
const COUNTS: &str = "counts";

/// The notes beside the counts of a page.
#[derive(Serialize)]
pub(super) struct CountingNotes {
    /// The catalogue's own statement of which sheets it counts; empty without one.
    principle: String,
    /// Impressions on one sheet of paper: "12a.1 and 12a.2".
    papers: Vec<CleanHtml>,
    /// Sheets of one set.
    sets: Vec<CleanHtml>,
    /// Records of recuts, reproductions and withdrawn sheets.
    apart: Vec<CleanHtml>,
    /// The same counts for other programs.
    files: Vec<ExportLink>,
}

/// The notes beside the counts of some designs.
pub(super) fn counting_notes(here: &Here<'_>, designs: &[&Design]) -> CountingNotes {
    let studies = here.book.studies;
    let keys: BTreeSet<_> = designs.iter().map(|design| &design.key).collect();
    let lines = |groups: &[ImpressionGroup]| -> Vec<CleanHtml> {
        let is_here = |group: &&ImpressionGroup| group.iter().any(|key| keys.contains(&key.design));
        let groups = groups.iter().filter(is_here);
        groups.filter_map(|group| line(here, group)).collect()
    };
    let principles = here.public().settings.principles.iter();
    let mut principles = principles.filter(|(heading, _)| heading == COUNTS);
    CountingNotes {
        principle: principles
            .next()
            .map_or_else(String::new, |(_, text)| text.clone()),
        papers: lines(&studies.papers),
        sets: lines(&studies.sets),
        apart: designs
            .iter()
            .copied()
            .flat_map(|design| design.impressions.values().map(move |i| (design, i)))
            .filter(|(design, impression)| !is_counted(design, impression))
            .map(|(design, impression)| not_counted(here, design, impression))
            .collect(),
        files: here.export_links(),
    }
}

/// The published impressions of a group; `None` for fewer than two.
fn line(here: &Here<'_>, group: &ImpressionGroup) -> Option<CleanHtml> {
    let is_published = |key: &&ImpressionKey| here.public().impression(key).is_some();
    let mut keys: Vec<_> = group.iter().filter(is_published).collect();
    keys.sort_by_key(|key| here.book.studies.order.impression_rank(key));
    let handles: Vec<_> = keys.iter().map(|key| here.impression(key)).collect();
    (handles.len() > 1).then(|| enumeration::together(here, &handles))
}

/// "7.20, recut"; "7.21, withdrawn, a reproduction", where its reading names such a printing alone.
fn not_counted(here: &Here<'_>, design: &Design, impression: &Impression) -> CleanHtml {
    let handle = here.impression(&impression.key);
    let withdrawn = if impression.standing.is_withdrawn() {
        CleanHtml::text(here.words().word("counted-withdrawn"))
    } else {
        CleanHtml::empty()
    };
    let reading = if is_of_own_matrices(design, impression.identified.as_ref()) {
        CleanHtml::empty()
    } else {
        readings::short(here, design, impression)
    };
    CleanHtml::join([&handle, &withdrawn, &reading], ", ")
}
