//! The key of a new record: the next number, or a key that was never used.
//!
//! A number or key counts as used where a record, a file, the register or a former key (`was`) has it. What was deleted before
//! an edition issued it is not known.

use std::collections::{BTreeMap, BTreeSet};

use super::planned::{Given, NewRecord, path_of};
use crate::model::catalogue::Catalogue;
use crate::model::former::Named;
use crate::model::issued_address::IssuedAddress;
use crate::model::key::{ImpressionKey, Key};
use crate::model::link::Target;
use crate::read::files::inputs::Inputs;
use crate::read::refusal::Refusal;

/// The record that is to be added. Adds its number to what is given, where that is not its key.
///
/// # Errors
/// [`Refusal`] where its key or number is or was that of another record.
pub(super) fn target(
    catalogue: &Catalogue,
    inputs: &Inputs,
    new: &NewRecord,
    given: &mut Vec<Given>,
) -> Result<Target, Refusal> {
    let used = Used { catalogue, inputs };
    match new {
        NewRecord::Impression { design } => Ok(Target::Impression(ImpressionKey {
            design: design.clone(),
            number: used.next_impression(design)?,
        })),
        NewRecord::Design { number: None } => {
            let next = used.last_design() + 1;
            let key = next.to_string().parse();
            let key = key.map_err(|_| no_key(&next.to_string()))?;
            Ok(Target::Design(key))
        }
        NewRecord::Design {
            number: Some(number),
        } => {
            let key = Key::nearest_form(number).ok_or_else(|| no_key(number))?;
            let mut same = catalogue.designs.values();
            if let Some(other) = same.find(|design| design.number == *number) {
                let message = format!("design `{}` has the number {number}", other.key);
                return Err(Refusal::usage(message, "name another number"));
            }
            if key.as_str() != number {
                given.push(Given::text("number", number));
            }
            used.free(Target::Design(key), "name another number")
        }
        NewRecord::Holder { key: Some(key), .. } => used.free(Target::Holder(key.clone()), ANOTHER),
        NewRecord::Holder { key: None, of_name } => {
            let is_private = given
                .iter()
                .any(|given| given.key == "kind" && given.value == "\"private\"");
            if is_private {
                let name = given.iter().find(|given| given.key == "name");
                let name = name.map_or("", |given| given.value.as_str());
                return used.neutral(name);
            }
            let name = given.iter().find(|given| given.key == "name");
            let name = name.map_or("", |given| given.value.as_str());
            let key = of_name.clone().ok_or_else(|| no_key(name))?;
            used.free(Target::Holder(key), ANOTHER)
        }
        NewRecord::Person { key } => used.free(Target::Person(key.clone()), ANOTHER),
        NewRecord::Document { key } => used.free(Target::Document(key.clone()), ANOTHER),
        NewRecord::Mark { key } => used.free(Target::Mark(key.clone()), ANOTHER),
        NewRecord::Series { key } => used.free(Target::Series(key.clone()), ANOTHER),
    }
}

const ANOTHER: &str = "name another key with --key";

fn no_key(text: &str) -> Refusal {
    Refusal::usage(
        format!("{text} gives no key"),
        "name one with --key: lower-case letters and digits, joined by single hyphens",
    )
}

/// Keys of designs that no record has or had, each given once.
pub struct FreeDesignKeys<'c> {
    used: Used<'c>,
    last: u32,
    given: BTreeSet<Key>,
}

impl<'c> FreeDesignKeys<'c> {
    /// Those of a catalogue with its files.
    #[must_use]
    pub fn of(catalogue: &'c Catalogue, inputs: &'c Inputs) -> FreeDesignKeys<'c> {
        let used = Used { catalogue, inputs };
        FreeDesignKeys {
            last: used.last_design(),
            used,
            given: BTreeSet::new(),
        }
    }

    /// The key of the next whole number.
    pub fn next_key(&mut self) -> Option<Key> {
        loop {
            self.last = self.last.checked_add(1)?;
            let key: Key = self.last.to_string().parse().ok()?;
            if self.given.insert(key.clone()) {
                return Some(key);
            }
        }
    }

    /// The key of a number that readers see, where neither the number nor the key was used.
    pub fn key_of(&mut self, number: &str) -> Option<Key> {
        let key = Key::nearest_form(number)?;
        let mut designs = self.used.catalogue.designs.values();
        let is_free = !designs.any(|design| design.number == number)
            && self.used.taken(&Target::Design(key.clone())).is_none();
        (is_free && self.given.insert(key.clone())).then_some(key)
    }
}

/// Keys of impressions that no record has or had, each given once: those after the last of each design.
#[derive(Clone, Debug, Default)]
pub struct FreeImpressionKeys {
    last: BTreeMap<Key, u32>,
}

impl FreeImpressionKeys {
    /// Those of a catalogue with its files.
    #[must_use]
    pub fn of(catalogue: &Catalogue, inputs: &Inputs) -> FreeImpressionKeys {
        let last = Used { catalogue, inputs }.last_impressions();
        FreeImpressionKeys { last }
    }

    /// The key of the next impression of a design; `None` where there is no higher number.
    pub fn next_key(&mut self, design: &Key) -> Option<ImpressionKey> {
        let last = self.last.entry(design.clone()).or_insert(0);
        *last = last.checked_add(1)?;
        Some(ImpressionKey {
            design: design.clone(),
            number: *last,
        })
    }
}

/// What is used already.
struct Used<'c> {
    catalogue: &'c Catalogue,
    inputs: &'c Inputs,
}

impl Used<'_> {
    /// The addresses that editions issued.
    fn issued(&self) -> impl Iterator<Item = &IssuedAddress> {
        let register = self.catalogue.register.iter();
        register.flat_map(|register| register.entries.keys())
    }

    /// The highest number of an impression of each design that has or had one, under its present key or a former one.
    fn last_impressions(&self) -> BTreeMap<Key, u32> {
        let mut last: BTreeMap<Key, u32> = BTreeMap::new();
        let mut met = |design: Key, number: u32| {
            let last = last.entry(design).or_default();
            *last = number.max(*last);
        };
        for (key, design) in &self.catalogue.designs {
            if let Some(number) = design.impressions.keys().next_back() {
                met(key.clone(), *number);
            }
        }
        for path in self.inputs.locations.keys() {
            if let Some((design, number)) = impression_of_path(path) {
                met(design, number);
            }
        }
        let present: BTreeMap<&Key, &Key> = self
            .catalogue
            .former
            .iter()
            .filter_map(|former| match &former.of {
                Named::Record(Target::Design(key)) => Some((&former.was.value, key)),
                _ => None,
            })
            .collect();
        for address in self.issued() {
            let IssuedAddress::Record(Target::Impression(key)) = address else {
                continue;
            };
            met(key.design.clone(), key.number);
            if let Some(design) = present.get(&key.design) {
                met((*design).clone(), key.number);
            }
        }
        last
    }

    fn next_impression(&self, design: &Key) -> Result<u32, Refusal> {
        let last = self.last_impressions();
        let last = last.get(design).copied().unwrap_or(0);
        last.checked_add(1).ok_or_else(|| {
            Refusal::usage(
                format!(
                    "an impression of design `{design}` has the highest number that there can be"
                ),
                "look at the files in its folder",
            )
        })
    }

    /// The highest whole number that is the key or number of a design; 0 where there is none.
    fn last_design(&self) -> u32 {
        let number = |text: &str| text.parse::<u32>().ok();
        let recorded = self.catalogue.designs.values();
        let recorded = recorded.flat_map(|d| [d.key.to_string(), d.number.clone()]);
        let folders = self.inputs.locations.keys().filter_map(|path| {
            let rest = path.strip_prefix("records/designs/")?;
            Some(rest.split('/').next()?.to_owned())
        });
        let issued = self.issued().filter_map(IssuedAddress::design);
        let was = self.catalogue.former.iter().filter_map(|former| {
            let is_design = matches!(former.of, Named::Record(Target::Design(_)));
            is_design.then_some(&former.was.value)
        });
        let all = recorded
            .chain(folders)
            .chain(issued.map(Key::to_string))
            .chain(was.map(Key::to_string));
        all.filter_map(|text| number(&text)).max().unwrap_or(0)
    }

    /// The record, where no other has or had its key.
    fn free(&self, target: Target, help: &str) -> Result<Target, Refusal> {
        match self.taken(&target) {
            None => Ok(target),
            Some(by) => Err(Refusal::usage(
                format!("the key `{}` is taken: {by}", target.key()),
                help,
            )),
        }
    }

    /// By what a key is taken.
    fn taken(&self, target: &Target) -> Option<String> {
        let catalogue = self.catalogue;
        let is_recorded = match target {
            Target::Design(key) => catalogue.designs.contains_key(key),
            // People and holders are named by the same references.
            Target::Holder(key) | Target::Person(key) => catalogue.has_party(key),
            Target::Document(key) => catalogue.documents.contains_key(key),
            Target::Mark(key) => catalogue.marks.contains_key(key),
            Target::Series(key) => catalogue.series.contains_key(key),
            _ => false,
        };
        let path = path_of(target);
        if is_recorded || self.inputs.locations.contains_key(&path) {
            return Some("a record has it".to_owned());
        }
        if let Some(of) = catalogue.former.key_of(&Named::Record(target.clone())) {
            return Some(format!("it is a former key of `{of}`"));
        }
        let address = IssuedAddress::Record(target.clone());
        let is_issued = self.issued().any(|issued| *issued == address);
        is_issued.then(|| "an edition issued it for a record that is gone".to_owned())
    }

    /// A key that says nothing of a private owner: "owner-a", "owner-b" …, without a word of the name.
    fn neutral(&self, name: &str) -> Result<Target, Refusal> {
        let name = name.to_lowercase();
        let words: Vec<&str> = name.split(|c: char| !c.is_alphanumeric()).collect();
        let stems = ["owner", "keeper", "party"];
        let stem = stems.iter().find(|stem| !words.contains(*stem));
        let stem = stem.unwrap_or(&"owner");
        let targets = (1..)
            .map(letters)
            .filter(|part| !words.contains(&part.as_str()));
        let mut targets = targets.filter_map(|part| {
            let key = format!("{stem}-{part}").parse().ok()?;
            Some(Target::Holder(key))
        });
        let free = targets.find(|target| self.taken(target).is_none());
        free.ok_or_else(|| no_key("the name"))
    }
}

/// The impression to which a file belongs by its path, whatever it holds: 14 and 7 of
/// `records/designs/14/impressions/7.md`.
fn impression_of_path(path: &str) -> Option<(Key, u32)> {
    let (design, rest) = path.strip_prefix("records/designs/")?.split_once('/')?;
    let name = rest.strip_prefix("impressions/")?;
    let number = name.split('.').next()?.parse().ok()?;
    Some((design.parse().ok()?, number))
}

/// "a" for 1, "z" for 26, "aa" for 27.
fn letters(mut number: u32) -> String {
    let mut letters = Vec::new();
    while number > 0 {
        let place = u8::try_from((number - 1) % 26).unwrap_or_default();
        letters.push(char::from(b'a' + place));
        number = (number - 1) / 26;
    }
    letters.into_iter().rev().collect()
}

#[cfg(test)]
mod tests {
    use super::letters;

    #[test]
    fn letters_count_on_after_z() {
        let all: Vec<String> = [1, 2, 26, 27, 52, 53].map(letters).into();
        assert_eq!(all, ["a", "b", "z", "aa", "az", "ba"]);
    }
}
