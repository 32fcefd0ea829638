//! Mentions: the ways back, from a record to the pages and records that name it.

use super::address::Address;
use super::book::Here;
use super::html::CleanHtml;
use super::own_pages;
use crate::model::key::ImpressionKey;
use crate::model::link::Target;
use crate::study::back_links::{Mention, Part, Source};

/// The pages whose texts link to a record, each by its name.
pub(super) fn in_texts(here: &Here<'_>, target: &Target) -> Vec<CleanHtml> {
    let addresses = here.book.mentions.get(target);
    addresses
        .into_iter()
        .flatten()
        .filter(|address| *address != here.address)
        .filter_map(|address| named(here, address))
        .collect()
}

/// A page by the name of its record, as a link; nothing for pages that are no record's.
fn named(here: &Here<'_>, address: &Address) -> Option<CleanHtml> {
    Some(match address {
        Address::Design(key) => here.design(key),
        Address::Impression(key) => here.impression_of(key),
        Address::Holder(key) => here.holder_and_city(key),
        Address::Person(key) => here.person(key),
        Address::Work(key) => here.work(key, None),
        Address::Exhibition(key) => here.exhibition(key),
        Address::Page(key) => {
            let title = &here.public().pages.get(key)?.title;
            here.link(address, &CleanHtml::text(title))
        }
        Address::Overview(overview) => {
            let page = own_pages::opening(here.public(), *overview)?;
            here.link(address, &CleanHtml::text(&page.title))
        }
        Address::Opening
        | Address::DesignCensus(_)
        | Address::IdentificationKey(_)
        | Address::ExaminationSheet(_)
        | Address::Comparison(..) => return None,
    })
}

/// The records that mention another in the given parts, each once, with where in the other it is
/// said: "7.5, no. 31".
pub(super) fn by_records(
    here: &Here<'_>,
    mentions: &[Mention],
    wanted: impl Fn(Part) -> bool,
) -> Vec<CleanHtml> {
    // The mentions of one record stand together.
    let mut by_source: Vec<(&Source, Vec<&str>)> = Vec::new();
    for mention in mentions.iter().filter(|m| wanted(m.part)) {
        let is_new = by_source
            .last()
            .is_none_or(|(source, _)| **source != mention.from);
        if is_new {
            by_source.push((&mention.from, Vec::new()));
        }
        if let (Some((_, at)), Some(text)) = (by_source.last_mut(), mention.at.as_deref())
            && !at.contains(&text)
        {
            at.push(text);
        }
    }
    by_source
        .into_iter()
        .filter_map(|(source, at)| {
            let name = source_named(here, source)?;
            let at = CleanHtml::text(&at.join("; "));
            Some(CleanHtml::join([&name, &at], ": "))
        })
        .collect()
}

/// A record that mentions another, as a link. Nothing for one that is not published.
fn source_named(here: &Here<'_>, source: &Source) -> Option<CleanHtml> {
    Some(match source {
        Source::Catalogue => CleanHtml::text(here.words().word("this-catalogue")),
        Source::Design(key) => here.design(key),
        Source::Impression(key) => {
            here.public().impression(key)?;
            here.impression_of(key)
        }
        Source::Holder(key) => here.holder_and_city(key),
        Source::Exhibition(key) => here.exhibition(key),
    })
}

impl Here<'_> {
    /// "14.7, *The Last Ferry*": an impression with the title of its design.
    pub fn impression_of(&self, key: &ImpressionKey) -> CleanHtml {
        let title = self
            .public()
            .designs
            .get(&key.design)
            .map_or_else(CleanHtml::empty, |design| self.design_title(design));
        CleanHtml::join([&self.impression(key), &title], ", ")
    }
}
