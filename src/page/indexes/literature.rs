//! The literature: earlier catalogues first, then all other works cited, by author and year.

use serde::Serialize;

use crate::model::literature::Work;
use crate::page::lists::list::List;
use crate::page::phrases::source_names::linked_reference;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::study::order::Collator;

#[derive(Serialize)]
struct View {
    title: String,
    lists: Vec<List>,
}

pub(crate) fn page(here: &Here<'_>) -> Leaf {
    let words = here.words();
    let collator = Collator::of_words(here.language());
    let earlier = &here.book.studies.concordance.works;
    let literature = &here.public().literature;
    let mut others: Vec<&Work> = literature
        .values()
        .filter(|work| !earlier.contains(&work.key))
        .collect();
    others.sort_by(|a, b| {
        collator
            .compare(sorted_under(a), sorted_under(b))
            .then_with(|| a.year.cmp(&b.year))
            .then_with(|| a.key.cmp(&b.key))
    });
    let earlier = earlier.iter().filter_map(|key| literature.get(key));
    let lists = [
        (
            "earlier-catalogues",
            earlier.map(|w| linked_reference(here, w)).collect(),
        ),
        (
            "literature-cited",
            others
                .into_iter()
                .map(|w| linked_reference(here, w))
                .collect(),
        ),
    ]
    .into_iter()
    .map(|(heading, lines)| List::new(CleanHtml::text(words.word(heading)), lines))
    .filter(List::has_lines)
    .collect();
    let title = words.word("literature").to_owned();
    let view = View {
        title: title.clone(),
        lists,
    };
    Leaf::new(here.address, title, "pages/literature.html", &view)
}

fn sorted_under(work: &Work) -> &str {
    if work.authors.is_empty() {
        &work.title
    } else {
        &work.authors
    }
}
