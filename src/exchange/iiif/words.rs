//! Labels, credits and rights.

use super::types::{Entry, Label, Reference};
use crate::exchange::linked_art;
use crate::model::design::{Design, TitleKind};
use crate::model::key::PictureKey;
use crate::page::{Address, Here, figures, places, rights};

/// A text in the language of the catalogue.
pub(super) fn own(here: &Here<'_>, text: impl Into<String>) -> Label {
    Label::from([(here.language().to_owned(), vec![text.into()])])
}

/// A label and its value, both in the language of the catalogue; `None` without a value.
pub(super) fn entry(here: &Here<'_>, label: &str, value: impl Into<String>) -> Option<Entry> {
    let value = value.into();
    (!value.is_empty()).then(|| Entry {
        label: own(here, label),
        value: own(here, value),
    })
}

/// The titles of a design that are in use, in each language, with `before` and `after` around each: "OP 7.5, Gant
/// Light". A title without a language is under `none`.
pub(super) fn titled(here: &Here<'_>, design: &Design, before: &str) -> Label {
    let mut label = Label::new();
    let usual = design.title();
    let others = design.titles.iter();
    let others = others.filter(|title| !usual.is_some_and(|usual| std::ptr::eq(usual, *title)));
    let used = others.filter(|title| title.kind != TitleKind::Former);
    for title in usual.into_iter().chain(used) {
        let language = title.lang.as_ref().map_or("none", |lang| &lang.value);
        let text = format!("{before}, {}", title.text.value);
        label.entry(language.to_owned()).or_default().push(text);
    }
    if label.is_empty() {
        label = own(here, before);
    }
    label
}

/// A link to the page of a resource.
pub(super) fn homepage(here: &Here<'_>, page: &Address, label: Label) -> Reference {
    Reference {
        id: page.absolute(places::base(here)),
        r#type: "Text",
        label,
        format: Some("text/html"),
        language: vec![here.language().to_owned()],
        ..Reference::default()
    }
}

/// A page about the object elsewhere: the holder's own page of a sheet.
pub(super) fn homepage_elsewhere(address: &str, label: Label) -> Reference {
    Reference {
        id: address.to_owned(),
        r#type: "Text",
        label,
        format: Some("text/html"),
        ..Reference::default()
    }
}

/// The record of a page in Linked Art, which is to be seen also.
pub(super) fn linked_art(here: &Here<'_>, page: &Address) -> Reference {
    Reference {
        id: linked_art::record_id(here, page),
        r#type: "Dataset",
        format: Some("application/ld+json"),
        profile: Some(linked_art::CONTEXT),
        ..Reference::default()
    }
}

/// The catalogue, as the provider of every resource.
pub(super) fn provider(here: &Here<'_>) -> Vec<Reference> {
    let title = &here.public().settings.title.value;
    let id = Address::Opening.absolute(places::base(here));
    vec![Reference {
        id,
        r#type: "Agent",
        label: own(here, title.as_str()),
        homepage: vec![homepage(here, &Address::Opening, own(here, title.as_str()))],
        ..Reference::default()
    }]
}

/// A small file of a picture, in the width that a list of pictures shows.
pub(super) fn thumbnail(here: &Here<'_>, key: &PictureKey) -> Vec<Reference> {
    let file = places::file_at_least(here, key, 240);
    let file = file.map(|file| Reference {
        id: file.address,
        r#type: "Image",
        format: Some("image/jpeg"),
        width: Some(file.width),
        height: Some(file.height),
        ..Reference::default()
    });
    file.into_iter().collect()
}

/// The credit and the rights of a picture: what must be shown with it, and the address of the rights where they have
/// one.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Rights {
    pub statement: Option<Entry>,
    pub address: Option<String>,
}

impl Rights {
    /// The rights of a picture. `credit` is the credit line of the sheet.
    pub fn of(here: &Here<'_>, key: &PictureKey, credit: Option<&str>) -> Rights {
        let Some(picture) = here.public().picture(key) else {
            return Rights::default();
        };
        let photograph = figures::credit(here, picture).plain();
        let lines = credit
            .into_iter()
            .map(|credit| format!("{}.", credit.trim_end_matches('.')));
        let lines = lines.chain([photograph]);
        let label = here.words().word("credit-line");
        Rights {
            statement: entry(here, label, lines.collect::<Vec<_>>().join(" ")),
            address: rights::uri(picture.rights_text()),
        }
    }
}
