//! Run-on entries, as print catalogues set long lists of short items: a lead (a series, a city, a
//! printing), then its items in one paragraph.

use serde::Serialize;

use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::study::order::Collator;

/// A part of run-on entries.
#[derive(Serialize)]
pub(crate) struct RunOn {
    /// The heading.
    pub heading: CleanHtml,
    /// A remark that applies to every entry without its own.
    pub note: Option<CleanHtml>,
    /// Its paragraphs.
    pub lines: Vec<RunOnLine>,
}

/// A lead with its items.
#[derive(Serialize)]
pub(crate) struct RunOnLine {
    /// The lead; may be empty.
    pub lead: CleanHtml,
    /// Its items.
    pub items: Vec<CleanHtml>,
}

/// Items grouped under their leads, the leads sorted by name; items of one lead keep their order.
pub(crate) fn by_lead(here: &Here<'_>, items: Vec<(CleanHtml, CleanHtml)>) -> Vec<RunOnLine> {
    let collator = Collator::of_words(here.language());
    let mut named: Vec<(String, (CleanHtml, CleanHtml))> = items
        .into_iter()
        .map(|item| (item.0.plain(), item))
        .collect();
    // Leads that collate as equal are sorted by their bytes, so that their items do not alternate.
    named.sort_by(|(a, _), (b, _)| collator.compare(a, b).then_with(|| a.cmp(b)));
    under_leads(named.into_iter().map(|(_, item)| item))
}

/// Items grouped under their leads, in the order in which the leads first occur.
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
