//! Keys of records, of parts of records and of terms, and links to records.

use std::str::FromStr;

use super::links;
use super::near::nearest;
use super::text::{str_in, telling_text};
use crate::model::codes::Code;
use crate::model::document::EvidenceTarget;
use crate::model::finding::Finding;
use crate::model::key::{ImpressionKey, Key, PictureKey};
use crate::model::link::Target;
use crate::model::literature::Cited;
use crate::model::place::{Place, Placed};
use crate::read::faults::{Faults, Node};

/// A key.
pub(crate) fn key<'t>(faults: &mut Faults<'t>, node: &'t Node<'t>) -> Option<Placed<Key>> {
    let text = str_in(faults, node, "a key in quotes")?;
    key_from(faults, text.value, text.place)
}

/// The key of a term. Words in its place are reported together with unknown terms, once the terms of the catalogue are
/// known (`references::resolve`).
pub(crate) fn term<'t>(faults: &mut Faults<'t>, node: &'t Node<'t>) -> Option<Placed<Key>> {
    let text = str_in(faults, node, "a key in quotes")?;
    let key = text.value.parse().ok()?;
    Some(Placed::new(key, text.place))
}

/// A work of the literature by its key, or a document as `document:KEY`.
pub(crate) fn cited<'t>(faults: &mut Faults<'t>, node: &'t Node<'t>) -> Option<Placed<Cited>> {
    let text = str_in(faults, node, "a key in quotes")?;
    match text.value.split_once(':') {
        None => {
            let key = key_from(faults, text.value, text.place)?;
            Some(Placed::new(Cited::Work(key.value), key.place))
        }
        Some(("document", key)) => {
            let key = key_from(faults, key, text.place)?;
            Some(Placed::new(Cited::Document(key.value), key.place))
        }
        Some((kind, key)) => {
            let message = format!("\"{}\" is no key of the literature", text.value);
            let help = if kind == "lit" {
                format!("write \"{key}\"")
            } else {
                "write the key of an entry of the literature, or document: and the key of a document"
                    .to_owned()
            };
            faults.push(Finding::new(Code::KeyForm, text.place, message).help(help));
            None
        }
    }
}

/// What a document tells something of: a record or a part of a design.
pub(crate) fn evidence_target<'t>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
) -> Option<Placed<EvidenceTarget>> {
    let text = str_in(faults, node, "a record in quotes")?;
    let target = text.value.parse().ok();
    if target.is_none() {
        let message = format!(
            "\"{}\" names nothing of which a document can tell",
            text.value
        );
        let kind = text.value.split_once(':').map(|(kind, _)| kind);
        let near = kind.and_then(|kind| nearest(kind, EvidenceTarget::KINDS.iter().copied()));
        let help = match (kind, near) {
            (Some("state"), _) => {
                "write the design and the state: \"state:14/cut-down\"".to_owned()
            }
            (Some("printing"), _) => {
                "write the design and the printing: \"printing:14/own\"".to_owned()
            }
            (Some("impression"), _) => {
                "write the design and the number: \"impression:14.7\"".to_owned()
            }
            (Some(kind), Some(near)) if kind != near => {
                format!("write \"{}\"", text.value.replacen(kind, near, 1))
            }
            _ => format!(
                "write one of {}: and its key",
                EvidenceTarget::KINDS.join(":, ")
            ),
        };
        faults.push(Finding::new(Code::LinkUnknown, text.place, message).help(help));
    }
    target.map(|target| Placed::new(target, text.place))
}

/// A key from text at `place`.
pub(crate) fn key_from(faults: &mut Faults<'_>, text: &str, place: Place) -> Option<Placed<Key>> {
    if let Ok(key) = text.parse() {
        Some(Placed::new(key, place))
    } else {
        let finding = Finding::new(Code::KeyForm, place, format!("\"{text}\" is not a key"));
        faults.push(finding.help(key_help(text)));
        None
    }
}

/// How to turn a text into a key.
pub(crate) fn key_help(text: &str) -> String {
    let rule = "keys are lower-case letters and digits, joined by single hyphens";
    match Key::nearest_form(text) {
        Some(near) => format!("{rule}: `{near}`"),
        None => rule.to_owned(),
    }
}

/// The key of an impression: `14.7`.
pub(crate) fn impression_key<'t>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
) -> Option<Placed<ImpressionKey>> {
    compound_key(
        faults,
        node,
        "impression",
        "a design's key, a point and a number from 1: \"14.7\"",
    )
}

/// The key of a picture: `14.7/recto`.
pub(crate) fn picture_key<'t>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
) -> Option<Placed<PictureKey>> {
    compound_key(
        faults,
        node,
        "picture",
        "an impression's or design's key, a stroke and the picture's name: \"14.7/recto\"; of a document's picture \"document/\" stands before: \"document/ledger/leaf-3\"",
    )
}

fn compound_key<'t, T: FromStr>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
    what: &str,
    help: &str,
) -> Option<Placed<T>> {
    let text = str_in(faults, node, "a key in quotes")?;
    let key = text.value.parse().ok();
    if key.is_none() {
        let finding = Finding::new(
            Code::KeyForm,
            text.place,
            format!("\"{}\" is not a key of an {what}", text.value)
                .replace("an picture", "a picture"),
        );
        faults.push(finding.help(format!("write {help}")));
    }
    key.map(|key| Placed::new(key, text.place))
}

/// A record, named as in links. A text that is not such a name is reported, and still returned.
pub(crate) fn link<'t>(faults: &mut Faults<'t>, node: &'t Node<'t>) -> Option<Placed<String>> {
    let text = telling_text(faults, node)?;
    if text.value.parse::<Target>().is_err() {
        faults.push(links::nowhere(&text.value, text.place));
    }
    Some(text)
}
