//! The imprint of the catalogue: edition, contact, citation.

use percent_encoding::{NON_ALPHANUMERIC, utf8_percent_encode};

use super::dates;
use crate::model::edtf::Date;
use crate::page::setting::book::Book;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::words::Argument;

/// The edition of the catalogue that a site is cited as.
///
/// Of a catalogue with a register it is the last edition that was issued: one that is named and not issued yet cannot be
/// cited.
#[derive(Clone, Copy, Debug)]
pub(crate) struct CitedEdition<'b> {
    /// Its name: "2".
    pub name: Option<&'b str>,
    /// Its date.
    pub dated: Option<&'b Date>,
    /// Whether the site says other things than the edition did.
    pub is_revised: bool,
}

impl<'b> CitedEdition<'b> {
    /// The edition as which the site of a book is cited.
    pub fn of(book: &'b Book<'_>) -> CitedEdition<'b> {
        let settings = &book.public.settings;
        let named = CitedEdition {
            name: settings.edition.as_deref(),
            dated: settings.dated.as_ref().map(|dated| &dated.value),
            is_revised: false,
        };
        let Some(editions) = &book.editions else {
            return named;
        };
        let Some((_, last)) = editions.register().last() else {
            return named;
        };
        CitedEdition {
            name: Some(&last.edition.value),
            dated: Some(&last.dated.value),
            is_revised: named.name != Some(last.edition.value.as_str())
                || !editions.since.is_empty(),
        }
    }
}

/// "edition 2, 1 November 2026"; "edition 2, 1 November 2026, as revised since" where the site says other things than the
/// edition did. Parts that are not recorded are left out.
pub(crate) fn edition(book: &Book<'_>) -> String {
    let words = &book.words;
    let cited = CitedEdition::of(book);
    let name = cited
        .name
        .map(|name| words.with("edition", &[("edition", Argument::Text(name))]));
    let dated = cited.dated.map(|date| dates::once(date, words));
    let revised = cited.is_revised;
    let revised = revised.then(|| words.word("edition-revised").to_owned());
    let parts = [name, dated, revised].into_iter().flatten();
    parts.collect::<Vec<_>>().join(", ")
}

/// The link of a contact that is a web or mail address.
pub(crate) fn contact_href(contact: &str) -> Option<String> {
    let has_space = contact.contains(char::is_whitespace);
    if contact.starts_with("https://") || contact.starts_with("http://") {
        Some(contact.to_owned())
    } else if !has_space && contact.split('@').filter(|part| !part.is_empty()).count() == 2 {
        Some(format!("mailto:{contact}"))
    } else {
        None
    }
}

/// The link of a contact for corrections to a page: to a mail address with the citation and edition as subject and the
/// page's address as text.
pub(crate) fn correction_href(
    contact: &str,
    cited: &str,
    edition: &str,
    canonical: &str,
) -> Option<String> {
    let href = contact_href(contact)?;
    if !href.starts_with("mailto:") {
        return Some(href);
    }
    let subject = if edition.is_empty() {
        cited.to_owned()
    } else {
        format!("{cited} ({edition})")
    };
    let encoded = |text: &str| utf8_percent_encode(text, NON_ALPHANUMERIC).to_string();
    Some(format!(
        "{href}?subject={}&body={}",
        encoded(&subject),
        encoded(canonical)
    ))
}

/// "CP 14.7, in The Editor (ed.), *The Colour Prints*, edition 0.1, 1 November 2026, https://…".
pub(crate) fn citation(cited: Option<&str>, book: &Book<'_>, canonical: &str) -> CleanHtml {
    let (public, words) = (book.public, &book.words);
    let settings = &public.settings;
    let editors: Vec<&str> = settings
        .editors
        .iter()
        .filter_map(|key| public.people.get(&key.value))
        .map(|person| person.name.value.as_str())
        .collect();
    let editors = match editors.len() {
        0 => CleanHtml::empty(),
        n => words.html(
            "cited-editors",
            Some(n),
            &[("names", &CleanHtml::text(&editors.join(", ")))],
        ),
    };
    let title = CleanHtml::element("cite", &[], &CleanHtml::text(&settings.title));
    let whole = CleanHtml::join(
        [
            &editors,
            &title,
            &CleanHtml::text(&edition(book)),
            &CleanHtml::text(canonical),
        ],
        ", ",
    );
    match cited {
        Some(cited) => words.html(
            "cited-in",
            None,
            &[("cited", &CleanHtml::text(cited)), ("whole", &whole)],
        ),
        None => whole,
    }
}
