//! People by letter, under every form of their names.

use serde::Serialize;

use crate::model::person::Person;
use crate::page::lists::list::{self, List};
use crate::page::lists::wall;
use crate::page::phrases::party_names::{roles, sorted_name};
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;

#[derive(Serialize)]
struct View {
    title: String,
    /// Parts stand close together, as in an index.
    index: bool,
    brief: String,
    letters: Vec<List>,
}

/// How many pictures stand for a person: of prints that they made, printed, published or owned.
const PICTURES: usize = 4;

pub(crate) fn page(here: &Here<'_>) -> Leaf {
    let people = &here.public().people;
    let mut entries = Vec::new();
    for person in people.values() {
        entries.push((sorted_name(person).to_owned(), line(here, person)));
        for other in &person.names {
            // A form that repeats the name in use needs no entry of its own.
            if other.text.value == person.name.value || other.text.value == sorted_name(person) {
                continue;
            }
            let language = other.lang.as_ref().map(|l| l.value.as_str());
            let name = here.in_language("span", &CleanHtml::text(&other.text), language);
            let person = here.link(
                &Address::Person(person.key.clone()),
                &CleanHtml::text(sorted_name(person)),
            );
            let see = here
                .words()
                .html("see-record", None, &[("record", &person)]);
            entries.push((other.text.value.clone(), name.then(", ").and(&see)));
        }
    }
    let title = here.words().word("people").to_owned();
    let view = View {
        index: true,
        title: title.clone(),
        brief: here.words().count("people-brief", people.len()),
        letters: list::by_letter(here, entries),
    };
    Leaf::new(here.address, title, "pages/people.html", &view)
}

/// "Morrowby, Edda, 1889–1958, artist, printer".
fn line(here: &Here<'_>, person: &Person) -> CleanHtml {
    let name = CleanHtml::link(
        &here.href(&Address::Person(person.key.clone())),
        &CleanHtml::text(sorted_name(person)),
    );
    let life = CleanHtml::text(&here.life(person));
    let line = CleanHtml::join(
        [&name, &life, &CleanHtml::quiet(&roles(here, person))],
        ", ",
    );
    let artist = here.public().settings.artist.as_ref();
    if artist.is_some_and(|artist| artist.value == person.key) {
        return line;
    }
    let mentions = here.book.studies.back_links.people.get(&person.key);
    let designs = wall::designs_of(here, mentions.map_or(&[], Vec::as_slice), PICTURES);
    line.and(&wall::row(here, &designs))
}
