//! Former keys: what records and their parts were called before (`was`, docs/definitions.md, "Former keys").
//!
//! A key is an address, so a record whose key had to change names its former keys. A reference that still
//! names one is read as naming the record, and the addresses of the former key lead to those of the present
//! one. No key is used again, so a former key names one thing for good.

use std::collections::BTreeMap;

use super::key::{ImpressionKey, Key, PictureKey, PictureOwner};
use super::link::Target;
use super::occurrence::DesignPart;
use super::place::Placed;

/// A thing that has a key: a record, or a part of one.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Named {
    /// A record or a picture. An impression has no former key: its number never changes, and its design's key
    /// changes with the design.
    Record(Target),
    /// A part of the design with the first key.
    Part(Key, DesignPart, Key),
    /// A point of the design with the first key.
    Point(Key, Key),
    /// A condition of the mark with the first key.
    Condition(Key, Key),
}

impl Named {
    /// A thing of the same kind, in the same record where it is a part, with the key `key`.
    #[must_use]
    pub fn with_key(&self, key: &Key) -> Named {
        let key = key.clone();
        match self {
            Named::Record(target) => Named::Record(match target {
                Target::Design(_) => Target::Design(key),
                Target::Impression(sheet) => Target::Impression(ImpressionKey {
                    design: key,
                    number: sheet.number,
                }),
                Target::Holder(_) => Target::Holder(key),
                Target::Person(_) => Target::Person(key),
                Target::Work(_) => Target::Work(key),
                Target::Exhibition(_) => Target::Exhibition(key),
                Target::Mark(_) => Target::Mark(key),
                Target::Document(_) => Target::Document(key),
                Target::Series(_) => Target::Series(key),
                Target::Page(_) => Target::Page(key),
                Target::Picture(picture) => Target::Picture(PictureKey {
                    owner: picture.owner.clone(),
                    name: key,
                }),
            }),
            Named::Part(design, part, _) => Named::Part(design.clone(), *part, key),
            Named::Point(design, _) => Named::Point(design.clone(), key),
            Named::Condition(mark, _) => Named::Condition(mark.clone(), key),
        }
    }

    /// Its own key; of a picture its name, of an impression the key of its design.
    #[must_use]
    pub fn key(&self) -> &Key {
        match self {
            Named::Record(target) => match target {
                Target::Design(key)
                | Target::Holder(key)
                | Target::Person(key)
                | Target::Work(key)
                | Target::Exhibition(key)
                | Target::Mark(key)
                | Target::Document(key)
                | Target::Series(key)
                | Target::Page(key) => key,
                Target::Impression(sheet) => &sheet.design,
                Target::Picture(picture) => &picture.name,
            },
            Named::Part(_, _, key) | Named::Point(_, key) | Named::Condition(_, key) => key,
        }
    }
}

/// A former key, with the thing that had it.
#[derive(Clone, Debug, PartialEq)]
pub struct FormerKey {
    /// The thing, by its present key.
    pub of: Named,
    /// The key that it had.
    pub was: Placed<Key>,
    /// Whether readers may know it. A former key that the record lists as private still resolves references,
    /// and has no address.
    pub is_public: bool,
}

/// The former keys of a catalogue.
#[derive(Clone, Debug, Default)]
pub struct FormerKeys {
    all: Vec<FormerKey>,
    /// The present key of each thing, by what it was.
    present: BTreeMap<Named, Key>,
    /// The former keys of each thing that readers may know.
    public: BTreeMap<Named, Vec<Key>>,
}

impl FormerKeys {
    /// An index of `all`. Where two things had one key, the first has it.
    #[must_use]
    pub fn new(all: Vec<FormerKey>) -> FormerKeys {
        let mut present = BTreeMap::new();
        let mut public: BTreeMap<Named, Vec<Key>> = BTreeMap::new();
        for former in &all {
            if former.is_public {
                let of = public.entry(former.of.clone()).or_default();
                of.push(former.was.value.clone());
            }
            let was = former.of.with_key(&former.was.value);
            present
                .entry(was)
                .or_insert_with(|| former.of.key().clone());
        }
        FormerKeys {
            all,
            present,
            public,
        }
    }

    /// Every former key, in the order of reading.
    pub fn iter(&self) -> impl Iterator<Item = &FormerKey> {
        self.all.iter()
    }

    /// The former keys that readers may know, in the order of reading.
    pub fn public(&self) -> impl Iterator<Item = &FormerKey> {
        self.all.iter().filter(|former| former.is_public)
    }

    /// The former keys of a thing that readers may know.
    #[must_use]
    pub fn public_of(&self, thing: &Named) -> &[Key] {
        self.public.get(thing).map_or(&[], Vec::as_slice)
    }

    /// Whether no record has a former key.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.all.is_empty()
    }

    /// The record that `target` names by a former key, by its present key; `None` where no part of the key is
    /// a former one. A picture may be named by a former key of its design, by a former name of its own, or by
    /// both.
    #[must_use]
    pub fn record(&self, target: &Target) -> Option<Target> {
        if self.is_empty() {
            return None;
        }
        match target {
            Target::Impression(sheet) => Some(Target::Impression(self.impression(sheet)?)),
            Target::Picture(picture) => {
                let owner = match &picture.owner {
                    PictureOwner::Design(key) => self.design(key).map(PictureOwner::Design),
                    PictureOwner::Impression(key) => {
                        self.impression(key).map(PictureOwner::Impression)
                    }
                    PictureOwner::Document(key) => {
                        let was = Named::Record(Target::Document(key.clone()));
                        self.key_of(&was).cloned().map(PictureOwner::Document)
                    }
                };
                let by_owner = PictureKey {
                    owner: owner.clone().unwrap_or_else(|| picture.owner.clone()),
                    name: picture.name.clone(),
                };
                let name = self.key_of(&Named::Record(Target::Picture(by_owner.clone())));
                if owner.is_none() && name.is_none() {
                    return None;
                }
                Some(Target::Picture(PictureKey {
                    name: name.cloned().unwrap_or(by_owner.name),
                    owner: by_owner.owner,
                }))
            }
            other => {
                let was = Named::Record(other.clone());
                let key = self.key_of(&was)?;
                match was.with_key(key) {
                    Named::Record(target) => Some(target),
                    _ => None,
                }
            }
        }
    }

    /// The present key of a thing that is named by a former one; `None` where the key is not a former one.
    /// The record of a part is named by its present key.
    #[must_use]
    pub fn key_of(&self, was: &Named) -> Option<&Key> {
        self.present.get(was)
    }

    fn design(&self, key: &Key) -> Option<Key> {
        let was = Named::Record(Target::Design(key.clone()));
        self.key_of(&was).cloned()
    }

    fn impression(&self, sheet: &ImpressionKey) -> Option<ImpressionKey> {
        Some(ImpressionKey {
            design: self.design(&sheet.design)?,
            number: sheet.number,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::super::place::Place;
    use super::*;

    fn former(of: &str, was: &str) -> FormerKey {
        FormerKey {
            of: Named::Record(of.parse().unwrap()),
            was: Placed::new(was.parse().unwrap(), Place::default()),
            is_public: true,
        }
    }

    #[test]
    fn a_former_key_of_a_design_is_one_of_its_sheets_and_pictures_too() {
        let keys = FormerKeys::new(vec![
            former("design:14", "mill"),
            former("picture:14.7/recto", "front"),
            former("holder:town-museum", "museum"),
        ]);
        let now = |text: &str| {
            let now = keys.record(&text.parse().unwrap());
            now.map(|target| target.to_string())
        };
        for (was, is) in [
            ("design:mill", Some("design:14")),
            ("impression:mill.7", Some("impression:14.7")),
            ("picture:mill.7/front", Some("picture:14.7/recto")),
            ("picture:14.7/front", Some("picture:14.7/recto")),
            ("picture:mill.7/verso", Some("picture:14.7/verso")),
            ("picture:mill/drawing", Some("picture:14/drawing")),
            ("holder:museum", Some("holder:town-museum")),
            ("person:museum", None),
            ("design:14", None),
            ("impression:14.7", None),
            ("picture:14.8/front", None),
        ] {
            assert_eq!(now(was).as_deref(), is, "{was}");
        }
    }
}
