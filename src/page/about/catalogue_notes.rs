//! What the catalogue says of itself: cautions, how to contribute, the data, changes.

use serde::Serialize;

use crate::model::words::ClosedList as _;
use crate::page::phrases::imprint;
use crate::page::phrases::rights;
use crate::page::setting::address::Overview;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::page::setting::words::Given;
use crate::page::texts::catalogue_pages;
use crate::page::texts::long_text::Said;
use crate::page::texts::markdown::{self, Standing};

#[derive(Serialize)]
struct View {
    title: String,
    /// What the page is about, where the catalogue does not say so itself.
    brief: Option<String>,
    /// What the catalogue says itself, in its own words, before the theme's.
    text: Option<CleanHtml>,
    parts: Vec<Said>,
}

/// A page that tells of the catalogue, opened by the catalogue's own page of the same key where there
/// is one.
pub(crate) fn leaf(
    here: &Here<'_>,
    overview: Overview,
    template: &'static str,
    parts: Vec<Said>,
) -> Leaf {
    let words = here.words();
    let title = catalogue_pages::title(here.public(), words, overview).to_owned();
    let own = catalogue_pages::opening(here.public(), overview);
    let view = View {
        title: title.clone(),
        brief: words
            .find(&format!("{}-brief", overview.word()))
            .filter(|_| own.is_none())
            .map(str::to_owned),
        text: own.map(|page| markdown::html(&page.note.text, here, Standing::Page)),
        parts,
    };
    Leaf::new(here.address, title, template, &view)
}

/// The cautions, in the order in which they are read (DESIGN.md section 10). A catalogue adds to
/// them in its settings and cannot take one away.
const CAUTIONS: [&str; 8] = [
    "caution-opinion",
    "caution-tones",
    "caution-provenance",
    "caution-rights",
    "caution-cultural-property",
    "caution-handling",
    "caution-privacy",
    "caution-titles",
];

/// The cautions.
pub(crate) fn cautions(here: &Here<'_>) -> Leaf {
    let settings = &here.public().settings;
    let mut parts: Vec<Said> = CAUTIONS.iter().map(|word| Said::word(here, word)).collect();
    if let (Some(rights), Some(part)) = (
        &settings.work_rights,
        parts.iter_mut().find(|p| p.id == "caution-rights"),
    ) {
        part.paragraphs.push(CleanHtml::text(rights));
    }
    let added: Vec<CleanHtml> = settings
        .cautions
        .iter()
        .map(|(_, text)| CleanHtml::text(text))
        .collect();
    if !added.is_empty() {
        let mut part = Said::new(here, "cautions-added", &CleanHtml::empty());
        part.paragraphs = added;
        parts.push(part);
    }
    leaf(here, Overview::Cautions, "pages/cautions.html", parts)
}

/// How to contribute: what to send, and what becomes public.
pub(crate) fn contribute(here: &Here<'_>) -> Leaf {
    let words = here.words();
    let how = match contact(here) {
        Some(contact) => words.html("contribute-how-text", None, &[("contact", &contact)]),
        None => CleanHtml::text(words.word("contribute-how-no-contact")),
    };
    let mut sheet = Said::word(here, "contribute-sheet");
    sheet.items = (1..)
        .map_while(|n| words.find(&format!("contribute-sheet-{n}")))
        .map(str::to_owned)
        .collect();
    let parts = vec![
        Said::new(here, "contribute-how", &how),
        sheet,
        Said::word(here, "contribute-sighting"),
        Said::word(here, "contribute-correction"),
        Said::word(here, "contribute-museum"),
        Said::word(here, "contribute-public"),
        Said::word(here, "contribute-rights"),
    ];
    leaf(here, Overview::Contribute, "pages/contribute.html", parts)
}

/// The data: what there is for machines today.
pub(crate) fn data(here: &Here<'_>) -> Leaf {
    let words = here.words();
    let settings = &here.public().settings;
    let get = match contact(here) {
        Some(contact) => words.html("data-get-text", None, &[("contact", &contact)]),
        None => CleanHtml::text(words.word("data-get-no-contact")),
    };
    let licence = match &settings.licence {
        Some(licence) => words.html(
            "data-licence-text",
            None,
            &[("licence", &CleanHtml::text(&rights::in_words(licence)))],
        ),
        None => CleanHtml::text(words.word("data-no-licence")),
    };
    let site = settings.address.value.trim_end_matches('/');
    let example = CleanHtml::text(&format!("{site}/design/…/"));
    let addresses = [("address", &CleanHtml::span("quotable", &example))];
    let addresses = words.html("data-addresses-text", None, &addresses);
    let beside = [
        &here.exports_described(),
        &CleanHtml::text(words.word("data-nothing-else")),
    ];
    let beside = CleanHtml::join(beside, " ");
    let parts = vec![
        Said::word(here, "data-records"),
        Said::new(here, "data-get", &get),
        Said::new(here, "data-beside", &beside),
        Said::new(here, "data-addresses", &addresses),
        Said::new(here, "data-licence", &licence),
    ];
    leaf(here, Overview::Data, "pages/data.html", parts)
}

/// Changes: until an edition is issued there is nothing to compare with.
pub(crate) fn changes(here: &Here<'_>) -> Leaf {
    let words = here.words();
    let edition = imprint::edition(here.public(), words);
    let current = if edition.is_empty() {
        words.word("changes-undated").to_owned()
    } else {
        words.with(
            "changes-current-text",
            &[("edition", Given::Text(&edition))],
        )
    };
    let parts = vec![
        Said::new(here, "changes-current", &CleanHtml::text(&current)),
        Said::word(here, "changes-later"),
    ];
    leaf(here, Overview::Changes, "pages/changes.html", parts)
}

/// The catalogue's contact, as a link where it is an address.
fn contact(here: &Here<'_>) -> Option<CleanHtml> {
    let contact = here.public().settings.contact.as_ref()?;
    let text = CleanHtml::text(contact);
    Some(match imprint::contact_href(contact) {
        Some(href) => CleanHtml::element("a", &[("class", "bare-address"), ("href", &href)], &text),
        None => text,
    })
}
