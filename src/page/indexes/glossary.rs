//! The glossary: the principles of the catalogue, the trade's words as the theme explains them, and the
//! terms of the vocabularies.

use serde::Serialize;

use crate::model::key::Key;
use crate::model::vocabulary::List as Vocabulary;
use crate::model::words::ClosedList as _;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::page::setting::words::Argument;
use crate::study::order::Collator;

#[derive(Serialize)]
struct View {
    title: String,
    groups: Vec<Group>,
}

#[derive(Serialize)]
struct Group {
    id: String,
    heading: String,
    terms: Vec<Term>,
}

/// A term that the glossary explains.
#[derive(Serialize)]
pub(crate) struct Term {
    /// Its fragment.
    pub id: String,
    pub term: String,
    pub means: String,
    /// Other names for it: "also silkscreen, serigraph"; empty where there are none.
    pub also: String,
    /// The other names, one by one.
    #[serde(skip)]
    pub synonyms: Vec<String>,
    /// Its number in the Art & Architecture Thesaurus, as a link.
    aat: Option<CleanHtml>,
}

/// The groups of the theme's terms, in their order; groups that a theme adds follow.
const GROUPS: [&str; 8] = [
    "objects",
    "working",
    "sheet",
    "marks",
    "condition",
    "counting",
    "history",
    "words",
];

/// The vocabularies whose terms are explained. Subjects need no explanation.
const VOCABULARIES: [Vocabulary; 7] = [
    Vocabulary::Techniques,
    Vocabulary::Kinds,
    Vocabulary::Papers,
    Vocabulary::Transfers,
    Vocabulary::Roles,
    Vocabulary::Relations,
    Vocabulary::Documents,
];

pub(crate) fn page(here: &Here<'_>) -> Leaf {
    let title = here.words().word("glossary").to_owned();
    let view = View {
        title: title.clone(),
        groups: groups(here),
    };
    Leaf::new(here.address, title, "pages/glossary.html", &view)
}

/// Every term that the glossary explains, in its order.
pub(crate) fn explained(here: &Here<'_>) -> Vec<Term> {
    let terms = groups(here).into_iter().flat_map(|group| group.terms);
    terms.collect()
}

fn groups(here: &Here<'_>) -> Vec<Group> {
    let words = here.words();
    let added = words
        .beginning_with("terms-")
        .filter(|name| !GROUPS.contains(name));
    let own = GROUPS.iter().copied().chain(added).map(|name| Group {
        id: format!("group-{name}"),
        heading: words.word(&format!("terms-{name}")).to_owned(),
        terms: own_terms(here, name),
    });
    let explained = own
        .chain(VOCABULARIES.into_iter().map(|list| vocabulary(here, list)))
        .map(|group| in_order(here, group));
    let groups = std::iter::once(principles(here)).chain(explained);
    groups.filter(|group| !group.terms.is_empty()).collect()
}

/// The principles of the catalogue: what makes a state, what counts, how things are measured.
fn principles(here: &Here<'_>) -> Group {
    let words = here.words();
    let principles = here.public().settings.principles.iter();
    Group {
        id: "principles".to_owned(),
        heading: words.word("principles-of-catalogue").to_owned(),
        terms: principles
            .map(|(heading, text)| Term {
                id: Key::nearest_form(heading)
                    .map_or_else(String::new, |key| format!("principle-{key}")),
                term: words
                    .find(&format!("principle-{heading}"))
                    .unwrap_or(heading)
                    .to_owned(),
                means: text.clone(),
                also: String::new(),
                synonyms: Vec::new(),
                aat: None,
            })
            .collect(),
    }
}

/// The theme's terms of one group.
fn own_terms(here: &Here<'_>, group: &str) -> Vec<Term> {
    let words = here.words();
    let prefix = format!("term-{group}-");
    words
        .beginning_with(&prefix)
        .filter_map(|key| {
            Some(Term {
                id: key.to_owned(),
                term: words.find(&format!("{prefix}{key}"))?.to_owned(),
                means: words.find(&format!("means-{group}-{key}"))?.to_owned(),
                also: String::new(),
                synonyms: Vec::new(),
                aat: None,
            })
        })
        .collect()
}

/// The terms of a vocabulary that have an explanation.
fn vocabulary(here: &Here<'_>, list: Vocabulary) -> Group {
    let language = here.language();
    let terms = here
        .public()
        .vocabularies
        .terms(list)
        .filter_map(|(key, term)| {
            let synonyms = here.synonyms(list, key.as_str());
            Some(Term {
                id: format!("{}-{key}", list.word()),
                term: term.label(language)?.to_owned(),
                means: term.note(language)?.to_owned(),
                also: also(here, &synonyms),
                synonyms,
                aat: term.aat.map(thesaurus),
            })
        })
        .collect();
    Group {
        id: format!("group-{}", list.word()),
        heading: here
            .words()
            .word(&format!("terms-of-{}", list.word()))
            .to_owned(),
        terms,
    }
}

/// "also silkscreen, serigraph"; empty where there are no synonyms.
fn also(here: &Here<'_>, synonyms: &[String]) -> String {
    if synonyms.is_empty() {
        return String::new();
    }
    let names = synonyms.join(", ");
    here.words()
        .with("also-called", &[("names", Argument::Text(&names))])
}

/// "AAT 300041405", as a link to the thesaurus.
fn thesaurus(number: u32) -> CleanHtml {
    let address = format!("http://vocab.getty.edu/aat/{number}");
    CleanHtml::element(
        "a",
        &[("href", &address), ("rel", "noopener noreferrer external")],
        &CleanHtml::text(&format!("AAT {number}")),
    )
}

fn in_order(here: &Here<'_>, mut group: Group) -> Group {
    let collator = Collator::of_words(here.language());
    group.terms.sort_by(|a, b| {
        collator
            .compare(&a.term, &b.term)
            .then_with(|| a.id.cmp(&b.id))
    });
    group
}
