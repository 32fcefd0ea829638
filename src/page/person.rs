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
use crate::model::key::Key;
use crate::model::link::Target;
use crate::model::person::Person;
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
    designs: List,
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
    // Where nothing else is known of a life, the line under the name says this already.
    let has_life = person.born.is_some() || person.died.is_some();
    if let Some(active) = person.active.as_ref().filter(|_| has_life) {
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

/// The designs somebody made, with their roles.
fn made(here: &Here<'_>, person: &Key, mentions: &[Mention]) -> List {
    let lines = designs_of(here, mentions, Part::Maker)
        .into_iter()
        .map(|design| {
            // Who made only a state of it has no role here.
            let mut roles: Vec<String> = Vec::new();
            for maker in design.makers.iter().filter(|m| m.person.value == *person) {
                let role = maker.role.as_ref();
                roles.extend(role.map(|r| here.term(Vocabulary::Roles, r.as_str())));
            }
            CleanHtml::join(
                [
                    &here.design_and_date(&design.key),
                    &Here::quiet(&roles.join(", ")),
                ],
                ", ",
            )
        })
        .collect();
    List::new(CleanHtml::text(here.words().word("made-by-them")), lines)
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
                let now = holder::now(here, impression);
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
