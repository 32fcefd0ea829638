//! A person: names, dates, and everything the catalogue tells of them.

use serde::Serialize;

use super::address::{Address, Fragment};
use super::book::Here;
use super::dates;
use super::frame::Leaf;
use super::holder;
use super::html::CleanHtml;
use super::lists::List;
use super::markdown::{self, Standing};
use super::mentioned;
use super::people;
use crate::model::design::Design;
use crate::model::edtf::Date;
use crate::model::key::Key;
use crate::model::link::Target;
use crate::model::person::Person;
use crate::model::place::Placed;
use crate::model::vocabulary::List as Vocabulary;
use crate::study::back_links::{Mention, Part, Source};

#[derive(Serialize)]
struct View {
    title: String,
    roles: Vec<String>,
    also: Vec<CleanHtml>,
    brief: String,
    facts: Vec<Fact>,
    text: Option<CleanHtml>,
    designs: Vec<List>,
    lists: Vec<List>,
}

#[derive(Serialize)]
struct Fact {
    term: String,
    text: CleanHtml,
}

pub(super) fn page(here: &Here<'_>, person: &Person) -> Leaf {
    let words = here.words();
    let none = Vec::new();
    let links = &here.book.studies.back_links;
    let mentions = links.people.get(&person.key).unwrap_or(&none);
    let mut lists = vec![
        printings(
            here,
            &person.key,
            mentions,
            Part::Printer,
            "printed-by-them",
        ),
        printings(
            here,
            &person.key,
            mentions,
            Part::Publisher,
            "published-by-them",
        ),
        sheets(here, mentions, Part::Owner, "owned-by-them"),
        sheets(here, mentions, Part::Keeper, "kept-by-them"),
        sheets(here, mentions, Part::Agent, "handled-by-them"),
        holder::matrices(here, &person.key, mentions),
        writings(here, person),
    ];
    // Printer and publisher are told above, printing by printing.
    lists.extend(holder::named(here, mentions).into_iter().skip(2));
    let mentioned = mentioned::in_texts(here, &Target::Person(person.key.clone()));
    lists.push(List::new(
        CleanHtml::text(words.word("mentioned-in")),
        mentioned,
    ));
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
                other_name(here, &n.text, language)
            })
            .collect(),
        brief: here.life(person),
        facts: facts(here, person, mentions),
        text: person
            .note
            .as_ref()
            .and_then(|note| markdown::html(&note.text, here, Standing::Part).some()),
        designs: made(here, &person.key, mentions),
        lists: lists.into_iter().filter(List::has_lines).collect(),
        title: title.clone(),
    };
    let described = [
        title.clone(),
        here.life(person),
        people::roles(here, person),
    ]
    .into_iter()
    .filter(|s| !s.is_empty())
    .collect::<Vec<_>>()
    .join(", ");
    Leaf::new(here.address, title, "pages/person.html", &view).described(described)
}

/// Another form of a name, always an element of its own so that forms stand apart.
fn other_name(here: &Here<'_>, name: &str, language: Option<&str>) -> CleanHtml {
    let text = CleanHtml::text(name);
    let marked = here.in_language("span", &text, language);
    if marked == text {
        CleanHtml::element("span", &[], &text)
    } else {
        marked
    }
}

fn facts(here: &Here<'_>, person: &Person, mentions: &[Mention]) -> Vec<Fact> {
    let words = here.words();
    let mut facts = Vec::new();
    let mut fact = |term: &str, text: CleanHtml| {
        if !text.is_empty() {
            facts.push(Fact {
                term: words.word(term).to_owned(),
                text,
            });
        }
    };
    let date = |date: Option<&Placed<Date>>| {
        date.map_or_else(CleanHtml::empty, |d| dates::once_html(d, words))
    };
    fact("born", date(person.born.as_ref()));
    fact("died", date(person.died.as_ref()));
    if let Some(active) = &person.active {
        fact("active", dates::throughout_html(active, words));
    }
    let of_catalogue: Vec<CleanHtml> = [(Part::Artist, "is-artist"), (Part::Editor, "is-editor")]
        .into_iter()
        .filter(|(part, _)| {
            mentions
                .iter()
                .any(|m| m.part == *part && m.from == Source::Catalogue)
        })
        .map(|(_, word)| CleanHtml::text(words.word(word)))
        .collect();
    fact("in-this-catalogue", CleanHtml::join(&of_catalogue, ", "));
    let authority: Vec<CleanHtml> = person
        .authority
        .iter()
        .map(|address| holder::outward(address))
        .collect();
    fact("authority", CleanHtml::join(&authority, "; "));
    facts
}

/// The designs somebody made, a list for each role.
fn made(here: &Here<'_>, person: &Key, mentions: &[Mention]) -> Vec<List> {
    let mut by_role: Vec<(Option<Key>, List)> = Vec::new();
    for design in designs_of(here, mentions, Part::Maker) {
        let roles = design
            .makers
            .iter()
            .filter(|m| m.person.value == *person)
            .map(|m| m.role.as_ref().map(|r| r.value.clone()));
        let mut roles: Vec<Option<Key>> = roles.collect();
        if roles.is_empty() {
            // Made a state of it only.
            roles.push(None);
        }
        for role in roles {
            let line = here.design_and_date(&design.key);
            match by_role.iter_mut().find(|(known, _)| *known == role) {
                Some((_, list)) => list.lines.push(line),
                None => {
                    let heading = role.as_ref().map_or_else(
                        || here.words().word("made-by-them").to_owned(),
                        |role| {
                            let role = here.term(Vocabulary::Roles, role.as_str());
                            here.words()
                                .with("as-role", &[("role", super::words::Given::Text(&role))])
                        },
                    );
                    by_role.push((role, List::new(CleanHtml::text(&heading), vec![line])));
                }
            }
        }
    }
    by_role.into_iter().map(|(_, list)| list).collect()
}

fn designs_of<'a>(here: &Here<'a>, mentions: &[Mention], part: Part) -> Vec<&'a Design> {
    let mut designs: Vec<&Design> = mentions
        .iter()
        .filter(|m| m.part == part)
        .filter_map(|m| match &m.from {
            Source::Design(key) => here.public().designs.get(key),
            _ => None,
        })
        .collect();
    designs.dedup_by_key(|d| &d.key);
    designs
}

/// The printings somebody printed or published: "14, *The Last Ferry*: memorial edition, 1962".
fn printings(
    here: &Here<'_>,
    person: &Key,
    mentions: &[Mention],
    part: Part,
    heading: &str,
) -> List {
    let lines = designs_of(here, mentions, part)
        .into_iter()
        .map(|design| {
            let of_person = design.printings.iter().filter(|printing| {
                let said = if part == Part::Printer {
                    &printing.printer
                } else {
                    &printing.publisher
                };
                said.iter().any(|s| s.is.value == *person)
            });
            let names: Vec<CleanHtml> = of_person
                .map(|printing| {
                    let to = here.href_part(
                        &Address::Design(design.key.clone()),
                        Fragment::Printing(&printing.key),
                    );
                    let name = here.printing_name(design, &printing.key);
                    let name = CleanHtml::link(&to, &CleanHtml::text(&name));
                    let date = printing
                        .date
                        .own()
                        .map_or_else(String::new, |d| dates::once(d, here.words()));
                    CleanHtml::join([&name, &CleanHtml::text(&date)], ", ")
                })
                .collect();
            let design = here.design(&design.key);
            design.then(": ").and(&CleanHtml::join(&names, "; "))
        })
        .collect();
    List::new(CleanHtml::text(here.words().word(heading)), lines)
}

/// The impressions somebody had, with where they are now.
fn sheets(here: &Here<'_>, mentions: &[Mention], part: Part, heading: &str) -> List {
    let lines = mentions
        .iter()
        .filter(|m| m.part == part)
        .filter_map(|m| match &m.from {
            Source::Impression(key) => {
                let impression = here.public().impression(key)?;
                let now = CleanHtml::text(&here.whereabouts(impression));
                let now = here.words().html("now-at", None, &[("where", &now)]);
                Some(here.impression_of(key).then("; ").and(&now))
            }
            _ => None,
        })
        .collect();
    List::new(CleanHtml::text(here.words().word(heading)), lines)
}

/// What they wrote, as far as the literature is cited here.
fn writings(here: &Here<'_>, person: &Person) -> List {
    let name = people::sorted_name(person);
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
