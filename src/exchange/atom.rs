//! The feed of changes: Atom (RFC 4287), one for the catalogue, beside the page of changes.
//!
//! An entry for each edition, one for each design that it changed, and one for each other record: whoever follows one print
//! or one museum sees it. The records of the first edition have none: everything in it was new. Records have entries for the last [`EDITIONS_IN_FULL`]
//! editions; those before stand on the pages of their editions, so that the feed does not grow with the catalogue's age.
//!
//! Ids are the addresses of the editions' pages as they were issued, kept by the register, and never change, even where
//! the catalogue moves to another address. Dates are those of the editions, never the clock's; an edition is dated to a
//! day, and Atom asks for a time, so each is the beginning of its day in universal time.

use std::collections::BTreeMap;
use std::fmt::Write as _;

use super::format::{Format, Sources};
use crate::model::issued_address::IssuedAddress;
use crate::model::link::Target;
use crate::model::register::IssuedEdition;
use crate::page::changes_in_words::{
    Told, design_name, edition_and_date, edition_name, holder_line, of_design, of_record,
    of_sheets, record_name, record_place,
};
use crate::page::{Address, Here, Overview, Subject, escape_into};
use crate::study::issued::account::EditionAccount;

/// How many editions, counted from the last, have entries for single records.
const EDITIONS_IN_FULL: usize = 3;

pub(super) const FORMAT: Format = Format {
    name: "atom",
    file: "feed.atom",
    folders: &["changes/"],
    media_type: "application/atom+xml",
    relation: "alternate",
    subjects,
    write,
};

fn subjects(sources: &Sources<'_>) -> Vec<Subject> {
    let register = sources.public.register.as_ref();
    let is_issued = register.is_some_and(|register| register.last().is_some());
    let page = is_issued.then_some(Subject::Page(Address::Overview(Overview::Changes)));
    page.into_iter().collect()
}

fn write(here: &Here<'_>, subject: &Subject) -> Option<Vec<u8>> {
    let Subject::Page(page @ Address::Overview(Overview::Changes)) = subject else {
        return None;
    };
    let editions = here.book.editions.as_ref()?;
    let register = editions.register();
    let first = register.editions.first()?;
    let (last_place, last) = register.last()?;
    let settings = &here.public().settings;
    let words = here.words();
    let base = settings.address.value.as_str();
    let mut feed = String::from("<?xml version=\"1.0\" encoding=\"utf-8\"?>\n");
    let language = escaped(&settings.language.value);
    let _ = writeln!(
        feed,
        "<feed xmlns=\"http://www.w3.org/2005/Atom\" xml:lang=\"{language}\">"
    );
    element(
        &mut feed,
        "id",
        &format!("{}/{page}{}", first.address, FORMAT.file),
    );
    let title = [(
        "title",
        crate::page::Argument::Text(settings.title.value.as_str()),
    )];
    element(&mut feed, "title", &words.with("feed-title", &title));
    element(&mut feed, "updated", &updated(last));
    let own = format!("{}{}", page.absolute(base), FORMAT.file);
    link(&mut feed, "self", FORMAT.media_type, &own);
    link(&mut feed, "alternate", "text/html", &page.absolute(base));
    let editors = settings.editors.iter();
    let editors = editors.filter_map(|key| here.public().people.get(&key.value));
    let mut authors: Vec<&str> = editors.map(|person| person.name.value.as_str()).collect();
    if authors.is_empty() {
        authors.push(&settings.title.value);
    }
    for author in authors {
        let _ = writeln!(feed, "<author><name>{}</name></author>", escaped(author));
    }
    if let Some(licence) = &settings.licence {
        element(&mut feed, "rights", licence);
    }
    for (place, edition, account) in editions.latest_first() {
        let told = Told {
            register,
            edition: place,
        };
        let page = Address::Edition(edition.key(place));
        let id = format!("{}/{page}", edition.address);
        let entry = Entry {
            id: &id,
            title: &in_capital(&edition_and_date(words, edition)),
            edition,
            href: &page.absolute(base),
            summary: &summary(here, place, account),
        };
        entry.write(&mut feed);
        if place == 0 || last_place - place >= EDITIONS_IN_FULL {
            continue;
        }
        let order = &here.book.studies.order;
        let mut designs: Vec<_> = account.designs.iter().collect();
        designs.sort_by_key(|design| (order.rank(&design.design), design.design.clone()));
        for design in designs {
            let (number, title) = design_name(here, &design.design);
            let name = match title.plain() {
                title if title.is_empty() => number,
                title => format!("{number}. {title}"),
            };
            let own = of_design(here, told, design).some();
            let changes = own.into_iter().chain(of_sheets(here, told, design));
            let changes: Vec<String> = changes.map(|change| change.plain()).collect();
            let is_there = here.public().designs.contains_key(&design.design);
            let at = if is_there {
                Address::Design(design.design.clone())
            } else {
                page.clone()
            };
            let entry = Entry {
                id: &format!("{id}#edition-design-{}", design.design),
                title: &format!("{name} ({})", edition_name(words, edition)),
                edition,
                href: &at.absolute(base),
                summary: &changes.join(" "),
            };
            entry.write(&mut feed);
        }
        for record in records(here, &page, account) {
            let entry = Entry {
                id: &format!("{id}#edition-{}", record.place),
                title: &format!("{} ({})", record.name, edition_name(words, edition)),
                edition,
                href: &record.page.absolute(base),
                summary: &record.changes.join(" "),
            };
            entry.write(&mut feed);
        }
    }
    feed.push_str("</feed>\n");
    Some(feed.into_bytes())
}

/// What an edition changed in a record other than a design.
struct ChangedRecord {
    /// Its place on the page of the edition, after the id of the account.
    place: String,
    name: String,
    /// Its page; that of the edition where it has none.
    page: Address,
    /// What changed, in sentences.
    changes: Vec<String>,
}

/// The records that an edition changed: holders with what changed of their sheets, people, literature, exhibitions, marks
/// and pages.
fn records(here: &Here<'_>, edition: &Address, account: &EditionAccount) -> Vec<ChangedRecord> {
    let mut changed: BTreeMap<IssuedAddress, Vec<String>> = BTreeMap::new();
    for record in &account.records {
        let of_it = changed.entry(record.address.clone()).or_default();
        of_it.push(of_record(here, record).plain());
    }
    for (key, changes) in &account.holders {
        let address = IssuedAddress::Record(Target::Holder(key.clone()));
        let of_it = changed.entry(address).or_default();
        of_it.push(holder_line(here, changes).plain());
    }
    let mut records: Vec<_> = changed.into_iter().collect();
    records.sort_by(|(a, _), (b, _)| a.in_file_order(b));
    let records = records.into_iter().map(|(address, changes)| {
        let present = here.public().leads(&address);
        let present = present.unwrap_or_else(|| address.clone());
        let page = match &present {
            IssuedAddress::Record(target) if here.public().has_address(&present) => {
                here.target(target).map(|(page, _)| page)
            }
            _ => None,
        };
        ChangedRecord {
            place: match &address {
                // The changes of its sheets have a place already.
                IssuedAddress::Record(Target::Holder(key)) if account.holders.contains_key(key) => {
                    format!("holder-{key}")
                }
                address => record_place(address),
            },
            name: record_name(here, &address).plain(),
            page: page.unwrap_or_else(|| edition.clone()),
            changes,
        }
    });
    records.collect()
}

/// A title with a capital.
fn in_capital(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(|c| c.to_uppercase().to_string());
    first.unwrap_or_default() + letters.as_str()
}

/// "Changes in 4 designs." What an edition holds for readers of the feed, in a line.
fn summary(here: &Here<'_>, place: usize, account: &EditionAccount) -> String {
    let added = crate::page::changes_in_words::added(here, account).plain();
    if place == 0 {
        let added = [("added", crate::page::Argument::Text(added.as_str()))];
        return here.words().with("feed-first", &added);
    }
    here.words().count("feed-edition", account.designs.len())
}

/// An entry of the feed.
struct Entry<'a> {
    id: &'a str,
    title: &'a str,
    edition: &'a IssuedEdition,
    href: &'a str,
    summary: &'a str,
}

impl Entry<'_> {
    fn write(&self, feed: &mut String) {
        feed.push_str("<entry>\n");
        element(feed, "id", self.id);
        element(feed, "title", self.title);
        element(feed, "updated", &updated(self.edition));
        link(feed, "alternate", "text/html", self.href);
        element(feed, "summary", self.summary);
        feed.push_str("</entry>\n");
    }
}

/// The date of an edition as RFC 3339 writes a moment.
fn updated(edition: &IssuedEdition) -> String {
    format!("{}T00:00:00Z", edition.dated.value.as_str())
}

fn element(feed: &mut String, name: &str, text: &str) {
    let _ = writeln!(feed, "<{name}>{}</{name}>", escaped(text));
}

fn link(feed: &mut String, relation: &str, media_type: &str, href: &str) {
    let href = escaped(href);
    let _ = writeln!(
        feed,
        "<link rel=\"{relation}\" type=\"{media_type}\" href=\"{href}\"/>"
    );
}

fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    // XML 1.0 has no place for most control characters, escaped or not.
    let is_kept = |c: &char| !c.is_control() || matches!(c, '\n' | '\t');
    let text: String = text.chars().filter(is_kept).collect();
    escape_into(&mut out, &text);
    out
}
