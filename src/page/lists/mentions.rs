//! Mentions: the pages and records that name a record.

use super::list::List;
use crate::model::key::ImpressionKey;
use crate::model::link::Target;
use crate::model::occurrence::{MentionRole, RecordId};
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::texts::catalogue_pages;
use crate::study::back_links::Mention;

/// The pages whose texts link to a record, by name.
pub(crate) fn in_texts(here: &Here<'_>, target: &Target) -> Vec<CleanHtml> {
    let addresses = here.book.mentions.get(target);
    addresses
        .into_iter()
        .flatten()
        .filter(|address| *address != here.address)
        .filter_map(|address| named(here, address))
        .collect()
}

/// The same as a list under its heading.
pub(crate) fn list(here: &Here<'_>, target: &Target) -> List {
    let heading = CleanHtml::text(here.words().word("mentioned-in"));
    List::new(heading, in_texts(here, target))
}

/// A link to a page, by the name of its record; `None` for pages without a record.
fn named(here: &Here<'_>, address: &Address) -> Option<CleanHtml> {
    Some(match address {
        Address::Design(key) => here.design(key),
        Address::Impression(key) => here.impression_of(key),
        Address::Holder(key) => here.holder_and_city(key),
        Address::Person(key) => here.person(key),
        Address::Work(key) => here.work(key, None),
        Address::Exhibition(key) => here.exhibition(key),
        Address::Mark(key) => here.mark(key),
        Address::Document(key) => here.document(key),
        Address::Series(key) => here.series_record(key),
        Address::Page(key) => {
            let title = &here.public().pages.get(key)?.title;
            here.link(address, &CleanHtml::text(title))
        }
        Address::Overview(overview) => {
            let page = catalogue_pages::opening(here.public(), *overview)?;
            here.link(address, &CleanHtml::text(&page.title))
        }
        Address::Opening
        | Address::NotFound
        | Address::DesignCensus(_)
        | Address::IdentificationKey(_)
        | Address::ExaminationSheet(_)
        | Address::ChosenComparison(_)
        | Address::Point(..)
        | Address::FieldNotes
        | Address::DesignList
        | Address::Comparison(..)
        | Address::SheetsCompared(_)
        | Address::Edition(_) => return None,
    })
}

/// The records that mention another in the given roles, each once, with its locator: "7.5, *The Last
/// Ferry*: no. 31". Impressions of one design stand together.
pub(crate) fn by_records(
    here: &Here<'_>,
    mentions: &[Mention],
    wanted: impl Fn(MentionRole) -> bool,
) -> Vec<CleanHtml> {
    // The mentions of one record stand together, and those of the records of one sheet are given together.
    let mut by_source: Vec<(&RecordId, Vec<&str>)> = Vec::new();
    for mention in mentions.iter().filter(|m| wanted(m.role)) {
        let known = if is_joined(here, &mention.from) {
            let mut sources = by_source.iter();
            sources.rposition(|(source, _)| is_one_sheet(here, source, &mention.from))
        } else {
            let last = by_source.len().checked_sub(1);
            last.filter(|last| *by_source[*last].0 == mention.from)
        };
        let at = known.unwrap_or_else(|| {
            by_source.push((&mention.from, Vec::new()));
            by_source.len() - 1
        });
        if let (Some((_, at)), Some(text)) = (by_source.get_mut(at), mention.at.as_deref())
            && !at.contains(&text)
        {
            at.push(text);
        }
    }
    let is_one_design = |a: &RecordId, b: &RecordId| match (a, b) {
        (RecordId::Impression(a), RecordId::Impression(b)) => a.design == b.design,
        _ => false,
    };
    by_source
        .chunk_by(|a, b| a.1.is_empty() && b.1.is_empty() && is_one_design(a.0, b.0))
        .filter_map(|chunk| {
            let name = match chunk {
                [(source, _)] => source_named(here, source)?,
                several => impressions_named(here, several.iter().map(|(source, _)| *source)),
            };
            let at = chunk.iter().flat_map(|(_, at)| at.iter().copied());
            let at = CleanHtml::text(&at.collect::<Vec<_>>().join("; "));
            Some(CleanHtml::join([&name, &at], ": ")).filter(|said| !said.is_empty())
        })
        .collect()
}

/// Whether a record is of a sheet that has others.
fn is_joined(here: &Here<'_>, record: &RecordId) -> bool {
    matches!(record, RecordId::Impression(key) if here.joined().is_joined(key))
}

/// Whether two records are the same, or two of one sheet.
fn is_one_sheet(here: &Here<'_>, one: &RecordId, other: &RecordId) -> bool {
    match (one, other) {
        (RecordId::Impression(one), RecordId::Impression(other)) => {
            here.joined().page_of(one) == here.joined().page_of(other)
        }
        _ => one == other,
    }
}

/// The published impressions of one design among some records, with its title once.
fn impressions_named<'s>(
    here: &Here<'_>,
    sources: impl Iterator<Item = &'s RecordId>,
) -> CleanHtml {
    let keys: Vec<&ImpressionKey> = sources
        .filter_map(|source| match source {
            RecordId::Impression(key) => Some(key),
            _ => None,
        })
        .filter(|key| here.public().impression(key).is_some())
        .collect();
    here.impressions_of(&keys)
}

/// A record that mentions another, as a link; `None` where it is not published.
fn source_named(here: &Here<'_>, source: &RecordId) -> Option<CleanHtml> {
    Some(match source {
        RecordId::Catalogue => CleanHtml::text(here.words().word("this-catalogue")),
        RecordId::Design(key) => here.design(key),
        RecordId::Impression(key) => {
            here.public().impression(key)?;
            here.impression_of(key)
        }
        RecordId::Holder(key) => here.holder_and_city(key),
        RecordId::Exhibition(key) => here.exhibition(key),
        RecordId::Person(key) => here.person(key),
        RecordId::Mark(key) => here.mark(key),
        RecordId::Document(key) => here.document(key),
        RecordId::Series(key) => here.series_record(key),
        RecordId::Work(key) => here.work(key, None),
        RecordId::Page(_) | RecordId::Term(..) => return None,
    })
}
