//! What tells the sheets of one holder apart in a list, where kind, number and the like do not: size, paper and inks, date,
//! credit line. Each is given only where it is not the same for all.

use std::collections::BTreeSet;

use crate::model::impression::Impression;
use crate::model::vocabulary::List;
use crate::page::phrases::dates;
use crate::page::phrases::sizes;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;

/// What is added to the sheets of a list.
pub(super) struct Differences {
    /// To each sheet, in their order.
    pub of_sheets: Vec<Vec<CleanHtml>>,
    /// To all: that nothing is recorded that tells them apart.
    pub note: Option<CleanHtml>,
}

/// So many sheets without a difference need a note that none is recorded.
const NOTED: usize = 3;

/// The differences of some sheets, of which `said` is what the list says of each anyway.
pub(super) fn differences(
    here: &Here<'_>,
    sheets: &[&Impression],
    said: &[CleanHtml],
) -> Differences {
    let mut of_sheets = vec![Vec::new(); sheets.len()];
    let distinct: BTreeSet<&CleanHtml> = said.iter().collect();
    let are_alike = distinct.len() < sheets.len();
    let facts: [fn(&Here<'_>, &Impression) -> CleanHtml; 4] = [size, paper, date, credit];
    for fact in facts.into_iter().filter(|_| are_alike) {
        let facts: Vec<CleanHtml> = sheets.iter().map(|sheet| fact(here, sheet)).collect();
        if facts.iter().all(|one| Some(one) == facts.first()) {
            continue;
        }
        for (of_sheet, fact) in of_sheets.iter_mut().zip(facts) {
            of_sheet.extend(fact.some());
        }
    }
    let is_silent = of_sheets.iter().all(Vec::is_empty) && distinct.len() == 1;
    let note = (is_silent && sheets.len() >= NOTED).then(|| {
        let words = here.words();
        CleanHtml::quiet(&words.count("only-numbers-differ", sheets.len()))
    });
    Differences { of_sheets, note }
}

/// "212 × 301 mm (image)": the first size that is recorded.
fn size(here: &Here<'_>, impression: &Impression) -> CleanHtml {
    let sheet = &impression.sheet;
    let sizes = [
        (&sheet.image, "of-image"),
        (&sheet.platemark, "of-platemark"),
        (&sheet.size, "of-sheet"),
    ];
    let first = sizes
        .into_iter()
        .find_map(|(size, of)| Some((size.own()?, of)));
    first.map_or_else(CleanHtml::empty, |(size, of)| {
        sizes::with_part(here, size, of)
    })
}

/// "laid paper, black, blue".
fn paper(here: &Here<'_>, impression: &Impression) -> CleanHtml {
    let sheet = &impression.sheet;
    let paper = sheet.paper.as_ref().map_or_else(CleanHtml::empty, |paper| {
        CleanHtml::text(&here.term(List::Papers, paper.value.as_str()))
    });
    let inks = sheet.inks.iter().map(|ink| CleanHtml::text(&ink.value));
    let parts: Vec<CleanHtml> = std::iter::once(paper).chain(inks).collect();
    CleanHtml::join(&parts, ", ")
}

/// When it was pulled.
fn date(here: &Here<'_>, impression: &Impression) -> CleanHtml {
    let date = impression.sheet.date.own();
    date.map_or_else(CleanHtml::empty, |date| {
        dates::once_html(date, here.words())
    })
}

fn credit(_: &Here<'_>, impression: &Impression) -> CleanHtml {
    CleanHtml::text(impression.credit.as_deref().unwrap_or_default())
}
