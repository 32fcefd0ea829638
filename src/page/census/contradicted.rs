//! The contradicted sheets of a design and the states that fit what was seen on them: the counts go by the
//! identification, so a reader of one row learns of the sheets that may belong there.

use crate::model::design::Design;
use crate::model::impression::Impression;
use crate::page::key::candidates;
use crate::page::phrases::enumeration;
use crate::page::phrases::readings;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences};
use crate::study::DesignStudy;
use crate::study::evidence::{Evidence, Fit};
use crate::study::settle::settled;

/// "7.20 is identified as *iv*; what was seen fits *ii*.", a sentence for each; empty where none is contradicted.
pub(super) fn in_words(here: &Here<'_>, design: &Design, study: &DesignStudy) -> CleanHtml {
    let contradicted = study.contradictions.keys();
    let records = contradicted.filter_map(|number| design.impressions.get(number));
    let sentences: Vec<CleanHtml> = records
        .filter_map(|impression| sentence(here, design, study, impression))
        .collect();
    as_sentences(&sentences)
}

fn sentence(
    here: &Here<'_>,
    design: &Design,
    study: &DesignStudy,
    impression: &Impression,
) -> Option<CleanHtml> {
    let called = readings::state_alone(here, design, impression.identified.as_ref()?).some()?;
    let table = &study.table;
    let settled = settled(table, design, impression);
    let evidence = Evidence::of(table, &settled.observed, &settled.identified);
    let fits = |fit: Fit| {
        let apart = [Fit::Excluded, Fit::NoPrintingFits, Fit::NothingTold];
        !apart.contains(&fit)
    };
    let fitting: Vec<CleanHtml> = evidence
        .states
        .iter()
        .filter(|row| fits(row.fit))
        .map(|row| candidates::state_name(here, design, row.key.as_ref()))
        .collect();
    let sheet = here.impression(&impression.key);
    let words = here.words();
    Some(if fitting.is_empty() {
        let given = [("sheet", &sheet), ("called", &called)];
        words.html("contradicted-fits-none", None, &given)
    } else {
        let fitting = enumeration::either(here, &fitting);
        let given = [("sheet", &sheet), ("called", &called), ("states", &fitting)];
        words.html("contradicted-fits", None, &given)
    })
}
