//! Pages about the catalogue: cautions, how to contribute.

use serde::Serialize;

use crate::model::words::ClosedList as _;
use crate::page::phrases::imprint;
use crate::page::setting::address::Overview;
use crate::page::setting::book::Here;
use crate::page::setting::forms;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::page::texts::catalogue_pages;
use crate::page::texts::long_text::TextPart;
use crate::page::texts::markdown::{self, Placement};

#[derive(Serialize)]
struct View {
    title: String,
    /// The description of the page, where the catalogue has no text of its own.
    brief: Option<String>,
    /// The catalogue's own text, before the theme's.
    text: Option<CleanHtml>,
    parts: Vec<TextPart>,
}

/// A page about the catalogue. The catalogue's own page with the same key stands at its head.
pub(crate) fn leaf(
    here: &Here<'_>,
    overview: Overview,
    template: &'static str,
    parts: Vec<TextPart>,
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
        text: own.map(|page| markdown::html(&page.note.text, here, Placement::Page)),
        parts,
    };
    Leaf::new(here.address, title, template, &view)
}

/// The cautions, in their order (`docs/trade.md`, "Cautions"). A catalogue can add to them in its
/// settings and cannot remove one.
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
    let mut parts: Vec<TextPart> = CAUTIONS
        .iter()
        .map(|word| TextPart::of_word(here, word))
        .collect();
    if let (Some(rights), Some(part)) = (
        &settings.work_rights,
        parts.iter_mut().find(|p| p.id == "caution-rights"),
    ) {
        part.paragraphs.push(CleanHtml::text(rights));
    }
    if let (Some(contact), Some(part)) = (
        contact(here),
        parts.iter_mut().find(|p| p.id == "caution-privacy"),
    ) {
        let to = [("contact", &contact)];
        part.paragraphs
            .push(here.words().html("contribute-how-text", None, &to));
    }
    let added: Vec<CleanHtml> = settings
        .cautions
        .iter()
        .map(|(_, text)| CleanHtml::text(text))
        .collect();
    if !added.is_empty() {
        let mut part = TextPart::new(here, "cautions-added", &CleanHtml::empty());
        part.paragraphs = added;
        parts.push(part);
    }
    leaf(here, Overview::Cautions, "pages/cautions.html", parts)
}

/// How to contribute: which data to send, and which of them become public.
pub(crate) fn contribute(here: &Here<'_>) -> Leaf {
    let words = here.words();
    let how = match contact(here) {
        Some(contact) => words.html("contribute-how-text", None, &[("contact", &contact)]),
        None => CleanHtml::text(words.word("contribute-how-no-contact")),
    };
    let mut sheet = TextPart::of_word(here, "contribute-sheet");
    sheet.items = (1..)
        .map_while(|n| words.find(&format!("contribute-sheet-{n}")))
        .map(CleanHtml::text)
        .collect();
    let paths = forms::in_general();
    let linked = |path: &str, word: &str| forms::linked(here, path, word);
    let table = linked(&paths.listing, "form-link-listing-general");
    let form = linked(&paths.sighting, "form-link-sighting-general");
    let table = words.html("contribute-table-text", None, &[("table", &table)]);
    let mail = words.html("contribute-mail-text", None, &[("form", &form)]);
    let parts = vec![
        TextPart::new(here, "contribute-how", &how),
        TextPart::new(here, "contribute-table", &table),
        TextPart::of_word(here, "contribute-records"),
        TextPart::new(here, "contribute-mail", &mail),
        TextPart::of_word(here, "contribute-happens"),
        sheet,
        TextPart::of_word(here, "contribute-correction"),
        TextPart::of_word(here, "contribute-public"),
        TextPart::of_word(here, "contribute-rights"),
    ];
    leaf(here, Overview::Contribute, "pages/contribute.html", parts)
}

/// The catalogue's contact, as a link where it is an address.
pub(super) fn contact(here: &Here<'_>) -> Option<CleanHtml> {
    let contact = here.public().settings.contact.as_ref()?;
    let text = CleanHtml::text(contact);
    Some(match imprint::contact_href(contact) {
        Some(href) => CleanHtml::element("a", &[("class", "bare-address"), ("href", &href)], &text),
        None => text,
    })
}
