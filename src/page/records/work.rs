//! The page of a work of the literature: its reference, its numbers beside this catalogue's, and the
//! records that cite it.

use serde::Serialize;

use crate::model::link::Target;
use crate::model::literature::Work;
use crate::model::occurrence::{MentionRole, RecordId};
use crate::page::indexes::concordance::{self, EarlierNumbers, OwnNumbers};
use crate::page::lists::list::List;
use crate::page::lists::mentions;
use crate::page::phrases::party_names::sorted_name;
use crate::page::phrases::source_names::full_reference;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::page::texts::markdown;
use crate::study::back_links::Mention;

#[derive(Serialize)]
struct View {
    title: String,
    reference: CleanHtml,
    authors: Vec<CleanHtml>,
    text: Option<CleanHtml>,
    theirs: Option<EarlierNumbers>,
    /// This catalogue's numbers, where the work numbers some.
    ours: Option<OwnNumbers>,
    lists: Vec<List>,
}

pub(crate) fn page(here: &Here<'_>, work: &Work) -> Leaf {
    let words = here.words();
    let none = Vec::new();
    let links = &here.book.studies.back_links;
    let mentions = links.works.get(&work.key).unwrap_or(&none);
    let cited = |wanted: fn(&RecordId) -> bool| {
        let wanted: Vec<Mention> = mentions
            .iter()
            .filter(|m| wanted(&m.from))
            .cloned()
            .collect();
        mentions::by_records(here, &wanted, |part| part == MentionRole::Cited)
    };
    let lists = [
        (
            "cited-in-designs",
            cited(|s| matches!(s, RecordId::Design(_))),
        ),
        (
            "cited-in-impressions",
            cited(|s| matches!(s, RecordId::Impression(_))),
        ),
        (
            "cited-in-exhibitions",
            cited(|s| !matches!(s, RecordId::Design(_) | RecordId::Impression(_))),
        ),
    ]
    .into_iter()
    .map(|(heading, lines)| List::new(CleanHtml::text(words.word(heading)), lines))
    .chain([mentions::list(here, &Target::Work(work.key.clone()))])
    .filter(List::has_lines)
    .collect();
    let title = work.short.clone();
    let theirs = concordance::earlier_numbers(here, &work.key);
    let view = View {
        reference: full_reference(work),
        authors: authors(here, work),
        text: markdown::note(here, work.note.as_ref()),
        ours: theirs
            .is_some()
            .then(|| concordance::own_numbers(here, std::slice::from_ref(&work.key))),
        theirs,
        lists,
        title: title.clone(),
    };
    Leaf::new(here.address, title, "pages/work.html", &view).described(work.full.clone())
}

/// The authors who have a page here.
fn authors(here: &Here<'_>, work: &Work) -> Vec<CleanHtml> {
    let people = &here.public().people;
    work.authors
        .split("; ")
        .filter_map(|author| people.values().find(|person| sorted_name(person) == author))
        .map(|person| here.person(&person.key))
        .collect()
}
