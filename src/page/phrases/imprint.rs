//! The imprint of the catalogue: edition, contact, citation.

use percent_encoding::{NON_ALPHANUMERIC, utf8_percent_encode};

use super::dates;
use crate::model::public::Public;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::words::{Argument, Words};

/// "edition 0.1, 1 November 2026"; parts that are not recorded are left out.
pub(crate) fn edition(public: &Public, words: &Words) -> String {
    let settings = &public.settings;
    let edition = settings
        .edition
        .as_ref()
        .map(|e| words.with("edition", &[("edition", Argument::Text(e))]));
    let dated = settings.dated.as_ref().map(|d| dates::once(d, words));
    [edition, dated]
        .into_iter()
        .flatten()
        .collect::<Vec<_>>()
        .join(", ")
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
pub(crate) fn citation(
    cited: Option<&str>,
    public: &Public,
    words: &Words,
    canonical: &str,
) -> CleanHtml {
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
            &CleanHtml::text(&edition(public, words)),
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
