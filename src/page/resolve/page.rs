//! The page where readers paste references, one a line, and get permanent addresses.

use std::cmp::Reverse;
use std::collections::BTreeMap;

use serde::Serialize;

use crate::model::certainty::Certainty;
use crate::model::literature::Relation;
use crate::model::words::ClosedList;
use crate::page::phrases::earlier_numbers::{self, NumberedPart};
use crate::page::setting::address::{Address, Overview};
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::page::setting::words::Words;
use crate::page::texts::catalogue_pages;
use crate::page::texts::markdown::{self, Placement};
use crate::study::resolve::names::Fate;

#[derive(Serialize)]
struct View {
    title: String,
    brief: Option<String>,
    /// The catalogue's own text, before the form.
    text: Option<CleanHtml>,
    /// References to this catalogue, as examples.
    examples: String,
    /// What to do without scripts.
    no_script: CleanHtml,
    /// What other sites may use.
    about: CleanHtml,
    /// The words of the script.
    data: CleanHtml,
}

/// The words of the script, without what stands before the last part of their ids.
#[derive(Serialize)]
struct ScriptWords {
    why: BTreeMap<String, String>,
    relation: BTreeMap<String, String>,
    certainty: BTreeMap<&'static str, String>,
    stands: BTreeMap<&'static str, String>,
    see: String,
    found: BTreeMap<&'static str, String>,
}

pub(crate) fn page(here: &Here<'_>) -> Leaf {
    let words = here.words();
    let overview = Overview::Resolve;
    let title = catalogue_pages::title(here.public(), words, overview).to_owned();
    let own = catalogue_pages::opening(here.public(), overview);
    let view = View {
        title: title.clone(),
        brief: Some(words.word("resolve-brief").to_owned()).filter(|_| own.is_none()),
        text: own.map(|page| markdown::html(&page.note.text, here, Placement::Page)),
        examples: examples(here).join("\n"),
        no_script: no_script(here),
        about: about(here),
        data: CleanHtml::data(&script_words(words)),
    };
    Leaf::new(here.address, title, "pages/resolve.html", &view)
}

fn no_script(here: &Here<'_>) -> CleanHtml {
    let words = here.words();
    let indexes = CleanHtml::link(
        &here.href(&Address::Overview(Overview::Search)),
        &CleanHtml::text(words.word("resolve-indexes")),
    );
    words.html("resolve-no-script", None, &[("indexes", &indexes)])
}

fn about(here: &Here<'_>) -> CleanHtml {
    let path = format!("{}index.json", Address::Overview(Overview::Resolve));
    let file = CleanHtml::link(&here.href_file(&path), &CleanHtml::text(&path));
    here.words()
        .html("resolve-about-text", None, &[("file", &file)])
}

/// A design, a state, a sheet and a number of an earlier catalogue, where there are some.
fn examples(here: &Here<'_>) -> Vec<String> {
    let siglum = &here.public().settings.siglum.value;
    let studies = here.book.studies;
    let mut examples = Vec::new();
    // The design with the most states; of equal ones the first.
    let fullest = here
        .designs_in_order()
        .min_by_key(|design| Reverse(design.standing_states().count()));
    if let Some(design) = fullest {
        let state = design.standing_states().last();
        let numeral = state.and_then(|state| studies.numeral(&design.key, &state.key.value));
        examples.push(match numeral.filter(|numeral| !numeral.is_only()) {
            Some(numeral) => format!("{siglum} {} {}", design.number, numeral.roman()),
            None => format!("{siglum} {}", design.number),
        });
        if let Some(impression) = design.impressions.values().next() {
            examples.push(format!("{siglum} {}", here.record_number(&impression.key)));
        }
        let numbers = studies.concordance.pairs();
        let mut numbers = numbers.filter(|(_, row)| row.ours.design == design.key);
        let earlier = numbers.find_map(|(work, row)| {
            let number = row.number.as_ref()?;
            Some(format!("{} {number}", here.cited_work(work)))
        });
        examples.extend(earlier);
    }
    examples
}

fn script_words(words: &Words) -> ScriptWords {
    const ARGUMENTS: [&str; 5] = ["edition", "text", "work", "number", "record"];
    fn all<T: ClosedList>(words: &Words, list: &str) -> BTreeMap<&'static str, String> {
        let all = T::ALL.iter();
        all.map(|value| (value.word(), words.listed(list, *value).to_owned()))
            .collect()
    }
    let found = BTreeMap::from([
        ("found", words.left_open("resolve-found", &["n", "of"])),
        ("nothing", words.word("resolve-nothing").to_owned()),
    ]);
    let why = WHY.iter().map(|why| {
        let text = words.left_open(&format!("resolve-why-{why}"), &ARGUMENTS);
        ((*why).to_owned(), text)
    });
    ScriptWords {
        why: why.collect(),
        relation: relations(words),
        certainty: all::<Certainty>(words, "certainty"),
        stands: all::<Fate>(words, "stands"),
        see: words.left_open("resolve-see", &["records"]),
        found,
    }
}

/// How an earlier number relates to each part of this catalogue: "covers-ours state".
fn relations(words: &Words) -> BTreeMap<String, String> {
    let parts = NumberedPart::ALL.into_iter();
    let all = parts.flat_map(|part| Relation::ALL.iter().map(move |relation| (part, *relation)));
    all.map(|(part, relation)| {
        let id = format!("{} {}", relation.word(), part.word());
        (
            id,
            earlier_numbers::relation(words, relation, part).to_owned(),
        )
    })
    .collect()
}

/// The ends of the ids of the reasons.
const WHY: &[&str] = &[
    "accession",
    "bare-accession",
    "beginning",
    "earlier",
    "earlier-not-there",
    "edition",
    "elsewhere",
    "former-accession",
    "former-key",
    "former-name",
    "former-title",
    "isil",
    "joined",
    "key",
    "name",
    "not-there",
    "number",
    "other-total",
    "row",
    "title",
];
