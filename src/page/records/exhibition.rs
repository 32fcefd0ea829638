//! The page of an exhibition: place, dates, and the sheets shown.

use std::collections::BTreeSet;

use serde::Serialize;

use crate::model::exhibition::Exhibition;
use crate::model::impression::Impression;
use crate::model::link::Target;
use crate::page::lists::checklist::{self, ChecklistHeads};
use crate::page::lists::list::List;
use crate::page::lists::mentions;
use crate::page::lists::table::Table;
use crate::page::phrases::claims;
use crate::page::phrases::dates;
use crate::page::phrases::venues;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;

#[derive(Serialize)]
struct View {
    title: String,
    brief: CleanHtml,
    catalogue: Option<CleanHtml>,
    shown: Option<Table>,
    lists: Vec<List>,
}

pub(crate) fn page(here: &Here<'_>, exhibition: &Exhibition) -> Leaf {
    let words = here.words();
    let shown = |i: &Impression| {
        i.exhibited
            .iter()
            .find(|e| e.exhibition.value == exhibition.key)
            .map(|e| {
                let at = CleanHtml::text(e.at.as_deref().unwrap_or_default());
                let certainty = claims::this_sheet(here, e.certainty()).unwrap_or_default();
                CleanHtml::join([&at, &CleanHtml::text(certainty)], ", ").plain()
            })
    };
    let joined = here.joined();
    let page_of = |i: &Impression| here.public().impression(joined.page_of(&i.key));
    // A sheet with several records is listed once, by the record whose page it has where that was shown.
    let mut listed = BTreeSet::new();
    let sheets = here.impressions_in_order().filter(|(_, impression)| {
        let is_told = || {
            let by_page = page_of(impression).is_some_and(|page| shown(page).is_some());
            by_page && !joined.has_page(&impression.key)
        };
        shown(impression).is_some()
            && !is_told()
            && listed.insert(joined.page_of(&impression.key).clone())
    });
    let heads = ChecklistHeads {
        number: "number-there",
        remark: "now-kept",
    };
    let groups = checklist::checklist(
        here,
        &heads,
        sheets,
        |i| shown(i).unwrap_or_default(),
        |i| holder(here, page_of(i).unwrap_or(i)),
    );
    let lists = [mentions::list(
        here,
        &Target::Exhibition(exhibition.key.clone()),
    )];
    let when = exhibition
        .date
        .as_ref()
        .map_or_else(CleanHtml::empty, |date| dates::throughout_html(date, words));
    let title = exhibition.title.value.clone();
    let view = View {
        brief: CleanHtml::join([&venues::venue(here, exhibition), &when], ", "),
        catalogue: exhibition
            .cite
            .as_ref()
            .map(|cite| here.cited(&cite.value, None)),
        shown: groups,
        lists: lists.into_iter().filter(List::has_lines).collect(),
        title: title.clone(),
    };
    let described = CleanHtml::join([&CleanHtml::text(&title), &view.brief], ", ").plain();
    Leaf::new(here.address, title, "pages/exhibition.html", &view).described(described)
}

/// The present place of the sheet.
fn holder(here: &Here<'_>, impression: &Impression) -> CleanHtml {
    match &impression.holder {
        Some(holder) => here.holder_and_city(&holder.value),
        None => CleanHtml::text(here.status(impression.status.value)),
    }
}
