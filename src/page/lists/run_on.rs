//! Entries run on, as print catalogues set what is many and short: a lead (a series, a city, a
//! printing), then what stands under it, one after the other.

use serde::Serialize;

use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::study::order::Collator;

/// A part set run on.
#[derive(Serialize)]
pub(crate) struct RunOn {
    /// The heading.
    pub heading: CleanHtml,
    /// What is true of all of it where nothing else is said.
    pub note: Option<CleanHtml>,
    /// Its paragraphs.
    pub lines: Vec<RunOnLine>,
}

/// A lead and what stands under it.
#[derive(Serialize)]
pub(crate) struct RunOnLine {
    /// The lead; empty where nothing is said.
    pub lead: CleanHtml,
    /// What stands under it.
    pub items: Vec<CleanHtml>,
}

/// Items under their leads, the leads by name; under one lead they keep their order.
pub(crate) fn by_lead(here: &Here<'_>, items: Vec<(CleanHtml, CleanHtml)>) -> Vec<RunOnLine> {
    let collator = Collator::of_words(here.language());
    let mut named: Vec<(String, (CleanHtml, CleanHtml))> = items
        .into_iter()
        .map(|item| (item.0.plain(), item))
        .collect();
    // Two leads that collate alike must not alternate: their bytes decide.
    named.sort_by(|(a, _), (b, _)| collator.compare(a, b).then_with(|| a.cmp(b)));
    under_leads(named.into_iter().map(|(_, item)| item))
}

/// Items under their leads, in the order in which the leads are first met.
pub(crate) fn under_leads(
    items: impl IntoIterator<Item = (CleanHtml, CleanHtml)>,
) -> Vec<RunOnLine> {
    let mut lines: Vec<RunOnLine> = Vec::new();
    for (lead, item) in items {
        match lines.iter_mut().find(|line| line.lead == lead) {
            Some(line) => line.items.push(item),
            None => lines.push(RunOnLine {
                lead,
                items: vec![item],
            }),
        }
    }
    lines
}
