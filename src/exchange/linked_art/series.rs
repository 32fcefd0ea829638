//! Series.

use super::concepts::{EDITION, NOTE, PRODUCTION};
use super::design::{certain_time, dates_in_words, stands};
use super::evidence;
use super::ids;
use super::node::Node;
use super::parts::{self, NameKind, statement};
use crate::model::document::EvidenceTarget;
use crate::model::series::SeriesRecord;
use crate::model::series_place::SeriesRef;
use crate::page::html::CleanHtml;
use crate::page::{Address, Here, claims};

/// The record of a series: a set, of which its designs are members.
pub(super) fn series(here: &Here<'_>, series: &SeriesRecord) -> Option<Node> {
    let words = here.words();
    let form = series.issued.as_ref();
    let form = form.map_or("", |form| words.listed("series-form", form.value));
    let number = series.number.iter().map(|number| {
        let designs = usize::try_from(number.is.value).unwrap_or(usize::MAX);
        let said = CleanHtml::text(&words.count("series-designs", designs));
        claims::with_claim(here, said, &number.claim).plain()
    });
    let publisher = series.publisher.iter().map(|publisher| {
        let name = here.person_or_holder(&publisher.is.value);
        let said = words.html("published-by", None, &[("publisher", &name)]);
        claims::with_claim(here, said, &publisher.claim).plain()
    });
    let statements = [
        statement(EDITION, form),
        statement(EDITION, number.collect::<Vec<_>>().join("; ")),
        statement(PRODUCTION, publisher.collect::<Vec<_>>().join("; ")),
        statement(NOTE, series.remark.as_deref().unwrap_or_default()),
        dates_in_words(here, &series.date),
        stands(here, &series.standing),
    ];
    let page = Address::Series(series.key.clone());
    let created = certain_time(here, &series.date).map(|timespan| {
        Box::new(Node {
            timespan: Some(timespan),
            ..Node::new("Creation")
        })
    });
    let evidence = evidence::about(here, EvidenceTarget::Series(series.key.clone()));
    Some(Node {
        identified_by: titles(here, series),
        referred_to_by: statements.into_iter().flatten().collect(),
        created_by: created,
        attributed_by: evidence.attributed_by,
        subject_of: parts::subject_of(here, &page, None)
            .into_iter()
            .chain(evidence.subject_of)
            .collect(),
        ..ids::series(here, &SeriesRef::Record(series.key.clone()))?
    })
}

/// The titles: the one in use is the primary name.
fn titles(here: &Here<'_>, series: &SeriesRecord) -> Vec<Node> {
    let Some(in_use) = series.title() else {
        return vec![parts::primary_name(here.series_title(series).plain())];
    };
    let titles = series.titles.iter().map(|title| {
        let kind = match title.kind {
            _ if std::ptr::eq(in_use, title) => NameKind::Primary,
            crate::model::design::TitleKind::Former => NameKind::Former,
            _ => NameKind::Alternate,
        };
        let language = title.lang.as_ref().map(|lang| lang.value.as_str());
        parts::name_in(title.text.value.as_str(), kind, language)
    });
    titles.collect()
}
