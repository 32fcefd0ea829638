//! The page of a person: names, dates, and their roles in the catalogue.

use std::collections::BTreeSet;

use serde::Serialize;

use super::holder_lists;
use crate::model::design::Design;
use crate::model::document::EvidenceTarget;
use crate::model::key::{ImpressionKey, Key};
use crate::model::link::Target;
use crate::model::occurrence::{MentionRole, RecordId};
use crate::model::person::Person;
use crate::model::vocabulary::List as Vocabulary;
use crate::page::lists::facts::Fact;
use crate::page::lists::list::List;
use crate::page::lists::mentions;
use crate::page::lists::run_on::{self, RunOn};
use crate::page::phrases::dates;
use crate::page::phrases::document_names::told_of;
use crate::page::phrases::identifiers;
use crate::page::phrases::party_names::{roles, sorted_name};
use crate::page::setting::address::{Address, Fragment};
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, capitalised};
use crate::page::setting::leaf::Leaf;
use crate::page::texts::markdown;
use crate::study::back_links::Mention;
use crate::study::order::Collator;

#[derive(Serialize)]
struct View {
    title: String,
    roles: Vec<String>,
    also: Vec<CleanHtml>,
    brief: String,
    facts: Vec<Fact>,
    text: Option<CleanHtml>,
    /// Designs, printings and sheets, run on.
    run_on: Vec<RunOn>,
    lists: Vec<List>,
}

pub(crate) fn page(here: &Here<'_>, person: &Person) -> Leaf {
    let none = Vec::new();
    let links = &here.book.studies.back_links;
    let mentions = links.people.get(&person.key).unwrap_or(&none);
    let mut run_on = vec![made(here, &person.key, mentions)];
    for (role, heading) in [
        (MentionRole::Printer, "printed-by-them"),
        (MentionRole::Publisher, "published-by-them"),
    ] {
        run_on.push(printings(here, &person.key, mentions, role, heading));
    }
    for (role, heading) in [
        (MentionRole::Owner, "owned-by-them"),
        (MentionRole::Keeper, "kept-by-them"),
        (MentionRole::Agent, "handled-by-them"),
    ] {
        run_on.push(sheets(here, mentions, role, heading));
    }
    run_on.retain(|part| !part.lines.is_empty());
    let mut lists = vec![
        holder_lists::matrices(here, &person.key, mentions),
        writings(here, person),
    ];
    let told = told_of(here, &EvidenceTarget::Person(person.key.clone()));
    let heading = CleanHtml::text(here.words().word("documents-on-them"));
    lists.push(List::new(heading, told));
    // Printings are listed above.
    lists.extend(holder_lists::named(here, mentions).into_iter().skip(2));
    lists.push(mentions::list(here, &Target::Person(person.key.clone())));
    let title = person.name.value.clone();
    let view = View {
        roles: person
            .roles
            .iter()
            .map(|role| here.term(Vocabulary::Roles, role.as_str()))
            .collect(),
        also: person
            .names
            .iter()
            .filter(|n| n.text.value != title)
            .map(|n| {
                let language = n.lang.as_ref().map(|l| l.value.as_str());
                here.element_in_language("span", &CleanHtml::text(&n.text), language)
            })
            .collect(),
        brief: here.life(person),
        facts: facts(here, person, mentions),
        text: markdown::note(here, person.note.as_ref()),
        run_on,
        lists: lists.into_iter().filter(List::has_lines).collect(),
        title: title.clone(),
    };
    let described = [title.clone(), here.life(person), roles(here, person)]
        .into_iter()
        .filter(|s| !s.is_empty())
        .collect::<Vec<_>>()
        .join(", ");
    Leaf::new(here.address, title, "pages/person.html", &view).described(described)
}

fn facts(here: &Here<'_>, person: &Person, mentions: &[Mention]) -> Vec<Fact> {
    let words = here.words();
    let mut facts = Vec::new();
    let mut fact = |term: &str, text: CleanHtml| facts.extend(Fact::one(words.word(term), text));
    // Without other dates the line under the name says this already.
    let has_life = person.born.is_some() || person.died.is_some();
    if let Some(active) = person.active.as_ref().filter(|_| has_life) {
        fact("active", dates::throughout_html(active, words));
    }
    let of_catalogue: Vec<CleanHtml> = [
        (MentionRole::Artist, "is-artist"),
        (MentionRole::Editor, "is-editor"),
    ]
    .into_iter()
    .filter(|(role, _)| {
        mentions
            .iter()
            .any(|m| m.role == *role && m.from == RecordId::Catalogue)
    })
    .map(|(_, word)| CleanHtml::text(words.word(word)))
    .collect();
    fact("in-this-catalogue", CleanHtml::join(&of_catalogue, ", "));
    let authority: Vec<CleanHtml> = person
        .authority
        .iter()
        .map(|address| CleanHtml::web_address(address))
        .collect();
    fact("authority", CleanHtml::join(&authority, "; "));
    fact(
        "identifiers",
        CleanHtml::join(&identifiers::lines(&person.ids), "; "),
    );
    facts
}

/// The designs a person made, by series: "*The Quays* 14, *The Last Ferry*, 1927". The roles of most of
/// them stand once, beside the heading.
fn made(here: &Here<'_>, person: &Key, mentions: &[Mention]) -> RunOn {
    let words = here.words();
    let mut designs: Vec<(&Design, String)> = designs_of(here, mentions, MentionRole::Maker)
        .into_iter()
        .map(|design| (design, roles_in(here, person, design)))
        .collect();
    // Designs without series come last; the sort is stable.
    designs.sort_by_key(|(design, _)| design.series.is_empty());
    let usual = most_common(designs.iter().map(|(_, roles)| roles.as_str())).to_owned();
    let is_always = designs.iter().all(|(_, roles)| *roles == usual);
    let items = designs.iter().map(|(design, roles)| {
        // A design of several series stands once, with the first.
        let lead = match design.series.first() {
            Some(place) => here.series(&place.of.value),
            None => CleanHtml::text(words.word("in-no-series")),
        };
        let roles = if *roles == usual {
            CleanHtml::empty()
        } else {
            CleanHtml::quiet(roles)
        };
        let item = CleanHtml::join([&here.design_and_date(&design.key), &roles], ", ");
        (lead, item)
    });
    let note = match usual.as_str() {
        "" => CleanHtml::empty(),
        _ if is_always => CleanHtml::text(&usual),
        _ => words.html("unless-said", None, &[("what", &CleanHtml::text(&usual))]),
    };
    RunOn {
        heading: CleanHtml::text(words.word("made-by-them")),
        note: note.some(),
        lines: run_on::under_leads(items),
    }
}

/// The roles of a person in a design: "artist, carver"; empty for the maker of a state only.
fn roles_in(here: &Here<'_>, person: &Key, design: &Design) -> String {
    let own = design.makers.iter().filter(|m| m.person.value == *person);
    let roles: Vec<String> = own
        .filter_map(|maker| maker.role.as_ref())
        .map(|role| here.term(Vocabulary::Roles, role.as_str()))
        .collect();
    roles.join(", ")
}

/// The most frequent text, the first among equals.
fn most_common<'t>(texts: impl Iterator<Item = &'t str>) -> &'t str {
    let mut counts: Vec<(&str, usize)> = Vec::new();
    for text in texts {
        match counts.iter_mut().find(|(known, _)| *known == text) {
            Some((_, count)) => *count += 1,
            None => counts.push((text, 1)),
        }
    }
    let most = counts
        .into_iter()
        .reduce(|best, next| if next.1 > best.1 { next } else { best });
    most.map_or("", |(text, _)| text)
}

fn designs_of<'a>(here: &Here<'a>, mentions: &[Mention], role: MentionRole) -> Vec<&'a Design> {
    let mut designs: Vec<&Design> = mentions
        .iter()
        .filter(|m| m.role == role)
        .filter_map(|m| match &m.from {
            RecordId::Design(key) => here.public().designs.get(key),
            _ => None,
        })
        .collect();
    designs.dedup_by_key(|d| &d.key);
    designs
}

/// The printings a person printed or published, by name: "Memorial edition 14, *The Last Ferry*, 1962".
fn printings(
    here: &Here<'_>,
    person: &Key,
    mentions: &[Mention],
    role: MentionRole,
    heading: &str,
) -> RunOn {
    let mut items = Vec::new();
    for design in designs_of(here, mentions, role) {
        let of_person = design.printings.iter().filter(|printing| {
            let said = if role == MentionRole::Printer {
                &printing.printer
            } else {
                &printing.publisher
            };
            said.iter().any(|s| s.is.value == *person)
        });
        for printing in of_person {
            let to = here.href_part(
                &Address::Design(design.key.clone()),
                Fragment::Printing(&printing.key),
            );
            let date = printing.date.own();
            let date = date.map_or_else(CleanHtml::empty, |d| dates::once_html(d, here.words()));
            let item = CleanHtml::link(&to, &here.design_name(design));
            items.push((
                CleanHtml::text(&here.printing_name(design, &printing.key)),
                CleanHtml::join([&item, &date], ", "),
            ));
        }
    }
    RunOn {
        heading: CleanHtml::text(here.words().word(heading)),
        note: None,
        lines: run_on::under_leads(items),
    }
}

/// The impressions a person had, by their present place: "Northport, Harbour Museum 14.1, 14.7, *The
/// Last Ferry*".
fn sheets(here: &Here<'_>, mentions: &[Mention], role: MentionRole, heading: &str) -> RunOn {
    let collator = Collator::of_words(here.language());
    let mut keys: Vec<(bool, String, CleanHtml, &ImpressionKey)> = Vec::new();
    for mention in mentions.iter().filter(|m| m.role == role) {
        let RecordId::Impression(key) = &mention.from else {
            continue;
        };
        let page = here.joined().page_of(key);
        let Some(impression) = here.public().impression(page) else {
            continue;
        };
        let place = here.whereabouts(impression);
        let lead = match &impression.holder {
            Some(holder) => here.link(
                &Address::Holder(holder.value.clone()),
                &CleanHtml::text(&place),
            ),
            None => capitalised(&CleanHtml::text(&place)),
        };
        keys.push((impression.holder.is_none(), place, lead, key));
    }
    // The sort is stable: impressions at one place keep the order of the catalogue.
    keys.sort_by(|a, b| a.0.cmp(&b.0).then_with(|| collator.compare(&a.1, &b.1)));
    let mut seen = BTreeSet::new();
    keys.retain(|(_, _, _, key)| seen.insert(here.joined().page_of(key)));
    let items = keys
        .chunk_by(|a, b| a.2 == b.2 && a.3.design == b.3.design)
        .filter_map(|chunk| {
            let (_, _, lead, _) = chunk.first()?;
            let of_design: Vec<&ImpressionKey> = chunk.iter().map(|(_, _, _, key)| *key).collect();
            Some((lead.clone(), here.impressions_of(&of_design)))
        });
    let lines = run_on::under_leads(items);
    RunOn {
        heading: CleanHtml::text(here.words().word(heading)),
        note: CleanHtml::text(here.words().word("by-where-now")).some(),
        lines,
    }
}

/// The works of a person among the literature cited.
fn writings(here: &Here<'_>, person: &Person) -> List {
    let name = sorted_name(person);
    let mut works: Vec<_> = here
        .public()
        .literature
        .values()
        .filter(|work| work.authors.split("; ").any(|author| author == name))
        .collect();
    works.sort_by_key(|work| (work.year, &work.key));
    let lines = works
        .into_iter()
        .map(|work| {
            let title = CleanHtml::element("cite", &[], &CleanHtml::text(&work.title));
            CleanHtml::join([&here.work(&work.key, None), &title], ". ")
        })
        .collect();
    List::new(CleanHtml::text(here.words().word("writings")), lines)
}
