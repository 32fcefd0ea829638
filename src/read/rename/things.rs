//! The things whose keys can be changed: how a command names them, whether a catalogue has them, and whether a new key is
//! free.

use crate::model::catalogue::Catalogue;
use crate::model::former::Named;
use crate::model::key::Key;
use crate::model::link::Target;
use crate::model::occurrence::DesignPart;
use crate::read::refusal::Refusal;
use crate::read::values::names;
use crate::read::values::near::{either, meant, nearest};

/// The kinds, as a command names them.
pub const KINDS: &[&str] = &[
    "design",
    "holder",
    "person",
    "lit",
    "exhibition",
    "mark",
    "document",
    "series",
    "page",
    "picture",
    "matrix",
    "state",
    "printing",
    "variant",
    "point",
    "condition",
];

/// The thing of a kind that `key` names: `harbour-museum`; a picture with its record, `14.7/recto`; a part with its design or
/// mark, `14/cut-down`.
///
/// # Errors
/// [`Refusal`] where `key` does not have that form.
pub fn named(kind: &str, key: &str) -> Result<Named, Refusal> {
    let part = || {
        let (record, part) = key.split_once('/')?;
        Some((record.parse::<Key>().ok()?, part.parse::<Key>().ok()?))
    };
    let of_design =
        |part_kind: DesignPart| part().map(|(design, key)| Named::Part(design, part_kind, key));
    let (named, form) = match kind {
        "matrix" => (of_design(DesignPart::Matrix), "14/key-block"),
        "state" => (of_design(DesignPart::State), "14/cut-down"),
        "printing" => (of_design(DesignPart::Printing), "14/own"),
        "variant" => (of_design(DesignPart::Variant), "14/mica"),
        "point" => (
            part().map(|(design, key)| Named::Point(design, key)),
            "14/moon",
        ),
        "condition" => (
            part().map(|(mark, key)| Named::Condition(mark, key)),
            "studio-seal/chipped",
        ),
        kind => {
            let target = format!("{kind}:{key}").parse::<Target>().ok();
            let form = if kind == "picture" {
                "14.7/recto"
            } else {
                "harbour-museum"
            };
            (target.map(Named::Record), form)
        }
    };
    named.ok_or_else(|| {
        Refusal::usage(
            format!("`{key}` does not name a {kind}"),
            format!("write it like `{form}`"),
        )
    })
}

/// Checks that the catalogue has the thing, and that the new key is free.
pub(super) fn check(catalogue: &Catalogue, thing: &Named, new: &Key) -> Result<(), Refusal> {
    let old = thing.key();
    if !has(catalogue, thing) {
        let help = match (
            now(catalogue, thing),
            nearest(old.as_str(), keys(catalogue, thing)),
        ) {
            (Some(now), _) => format!("it is a former key; the present one is `{now}`"),
            (None, Some(near)) => format!("the nearest key is `{near}`"),
            (None, None) => match meant(old.as_str(), &names(catalogue, thing)).as_slice() {
                [] => "look at the keys of the records".to_owned(),
                keys => format!("the nearest key is {}", either(keys)),
            },
        };
        return Err(Refusal::usage(
            format!("there is nothing of this kind with the key `{old}`"),
            help,
        ));
    }
    if old == new {
        return Err(Refusal::usage(
            format!("`{old}` is the key already"),
            "name another key",
        ));
    }
    let then = thing.with_key(new);
    let taken = |by: &str| {
        Refusal::usage(
            format!("the key `{new}` is taken: {by}"),
            "choose a key that was never used",
        )
    };
    if has(catalogue, &then) {
        return Err(taken("another record has it"));
    }
    // A person and a holder may be named by the same references.
    let other = match &then {
        Named::Record(Target::Holder(key)) => Some(Named::Record(Target::Person(key.clone()))),
        Named::Record(Target::Person(key)) => Some(Named::Record(Target::Holder(key.clone()))),
        _ => None,
    };
    if other.is_some_and(|other| has(catalogue, &other)) {
        return Err(taken(
            "people and holders are named alike, and the other has it",
        ));
    }
    // Its own former key may become its key again.
    match now(catalogue, &then) {
        Some(of) if of != *old => Err(taken(&format!("it is a former key of `{of}`"))),
        _ => Ok(()),
    }
}

/// The records of the kind with their names; empty for a kind without names.
fn names<'c>(catalogue: &'c Catalogue, thing: &Named) -> Vec<(&'c str, Vec<String>)> {
    match thing {
        Named::Record(Target::Design(_)) => names::of_designs(catalogue),
        Named::Record(Target::Holder(_)) => names::of_holders(catalogue),
        Named::Record(Target::Person(_)) => names::of_people(catalogue),
        _ => Vec::new(),
    }
}

/// The present key of a thing that is named by a former one.
fn now(catalogue: &Catalogue, thing: &Named) -> Option<Key> {
    catalogue.former.key_of(thing).cloned()
}

/// Whether a catalogue has the thing under its present key.
fn has(catalogue: &Catalogue, thing: &Named) -> bool {
    keys(catalogue, thing).any(|key| key == thing.key().as_str())
}

/// The keys of all things of the kind, in the same record where it is a part.
fn keys<'c>(catalogue: &'c Catalogue, thing: &Named) -> Box<dyn Iterator<Item = &'c str> + 'c> {
    let of = |design: &Key| catalogue.designs.get(design).into_iter();
    match thing {
        Named::Record(target) => match target {
            Target::Design(_) => Box::new(catalogue.designs.keys().map(Key::as_str)),
            Target::Holder(_) => Box::new(catalogue.holders.keys().map(Key::as_str)),
            Target::Person(_) => Box::new(catalogue.people.keys().map(Key::as_str)),
            Target::Work(_) => Box::new(catalogue.literature.keys().map(Key::as_str)),
            Target::Exhibition(_) => Box::new(catalogue.exhibitions.keys().map(Key::as_str)),
            Target::Mark(_) => Box::new(catalogue.marks.keys().map(Key::as_str)),
            Target::Document(_) => Box::new(catalogue.documents.keys().map(Key::as_str)),
            Target::Series(_) => Box::new(catalogue.series.keys().map(Key::as_str)),
            Target::Page(_) => Box::new(catalogue.pages.keys().map(Key::as_str)),
            Target::Picture(key) => {
                let pictures = catalogue.pictures_of(&key.owner).iter();
                Box::new(pictures.map(|picture| picture.name.value.as_str()))
            }
            // Its number never changes.
            Target::Impression(_) => Box::new(std::iter::empty()),
        },
        Named::Part(design, part, _) => {
            let part = *part;
            Box::new(of(design).flat_map(move |design| -> Vec<&str> {
                match part {
                    DesignPart::Matrix => design.matrices.iter().map(|m| m.key.as_str()).collect(),
                    DesignPart::State => design.states.iter().map(|s| s.key.as_str()).collect(),
                    DesignPart::Printing => {
                        design.printings.iter().map(|p| p.key.as_str()).collect()
                    }
                    DesignPart::Variant => design.variants.iter().map(|v| v.key.as_str()).collect(),
                }
            }))
        }
        Named::Point(design, _) => Box::new(
            of(design).flat_map(|design| design.points.iter().map(|point| point.key.as_str())),
        ),
        Named::Condition(mark, _) => {
            let mark = catalogue.marks.get(mark).into_iter();
            Box::new(mark.flat_map(|mark| mark.conditions.iter().map(|c| c.key.as_str())))
        }
    }
}
