//! Designs, states and printings that a row names in this catalogue's own terms: by number, numeral, name or key.
//!
//! In: the text of a cell, and for a part the design. Out: everything that the text may name, and what is doubtful about it.
//! A number or numeral of an earlier edition of the catalogue counts, and is told.

use super::names::CatalogueNames;
use crate::exchange::intake::reading::choices;
use crate::exchange::intake::reading::states::{SaidState, StateRemark, states};
use crate::model::key::Key;
use crate::study::numerals::roman;
use crate::study::resolve::lookup::name_key;
use crate::study::resolve::names::DesignNames;
use crate::study::resolve::part::{After, parts_of};
use crate::study::resolve::reading::{Meant, Why};

/// What a name may mean.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Named {
    /// The keys: none where nothing has the name, several where several have it.
    pub keys: Vec<Key>,
    /// What is doubtful, in words.
    pub doubts: Vec<String>,
}

impl CatalogueNames<'_> {
    /// The designs that a number or key names: "14", "no. 14", "OP 14", "the-lock", "14.7" (impression 7 of it).
    #[must_use]
    pub fn design(&self, text: &str) -> Named {
        let asked = self.reader.read(text);
        let parts = match &asked.link {
            Some(("design" | "impression", parts)) => parts.clone(),
            _ => asked.number,
        };
        for end in (1..=parts.len()).rev() {
            let (name, rest) = parts.split_at(end);
            let named = self.design_of_parts(&name.join("."), text);
            let has_rest = |key: &Key| {
                let Some((at, names, _)) = self.named(key) else {
                    return false;
                };
                let found = parts_of(&self.reader, (at, names), After::Number, rest, None);
                !found.is_empty()
            };
            if rest.is_empty() && !named.keys.is_empty() || named.keys.iter().any(has_rest) {
                return named;
            }
        }
        Named::default()
    }

    fn design_of_parts(&self, name: &str, text: &str) -> Named {
        let mut named = Named::default();
        let add = |named: &mut Named, at: usize| {
            if let Some(key) = self.key_of(at).filter(|key| !named.keys.contains(key)) {
                named.keys.push(key.clone());
            }
        };
        for at in self.lookup.numbers.get(name).into_iter().flatten() {
            add(&mut named, *at);
        }
        let keyed = self.lookup.keys.get(name);
        if named.keys.is_empty() {
            for keyed in keyed.into_iter().flatten() {
                add(&mut named, keyed.design);
                if keyed.is_former {
                    named
                        .doubts
                        .push(format!("\"{text}\" is a key that the design no longer has"));
                }
            }
        }
        if named.keys.is_empty() {
            for (at, edition) in self.lookup.former_numbers.get(name).into_iter().flatten() {
                add(&mut named, *at);
                named
                    .doubts
                    .push(format!("\"{text}\" was its number in edition {edition}"));
            }
        }
        for key in &named.keys {
            let design = self.catalogue.designs.get(key);
            if design.is_some_and(|design| design.standing.is_withdrawn()) {
                named
                    .doubts
                    .push(format!("{} is withdrawn", self.in_words(key)));
            }
        }
        named
    }

    /// The states of a design that a numeral or key names: "iii", "III/V", "state 3", "ii or iii", "cut-down".
    #[must_use]
    pub fn state(&self, design: &Key, text: &str) -> Named {
        let whole = self.one_state(design, text);
        if !whole.keys.is_empty() {
            return whole;
        }
        chosen(text, |part| self.one_state(design, part)).unwrap_or(whole)
    }

    fn one_state(&self, design: &Key, text: &str) -> Named {
        let Some((at, names, _)) = self.named(design) else {
            return Named::default();
        };
        let by_key = |key: &str| name_key(key) == name_key(text);
        let keyed = names.states.iter();
        let mut keyed =
            keyed.filter(|s| by_key(s.key.as_str()) || s.was.iter().any(|was| by_key(was)));
        if let Some(state) = keyed.next() {
            return Named {
                keys: vec![state.key.clone()],
                doubts: Vec::new(),
            };
        }
        let said = said_state(text);
        let Some(said) = said else {
            let doubts = vec![format!(
                "\"{text}\" is no state of {}",
                self.in_words(design)
            )];
            return Named {
                keys: Vec::new(),
                doubts,
            };
        };
        self.numerals(design, (at, names), &said, text)
    }

    fn numerals(
        &self,
        design: &Key,
        named: (usize, &DesignNames),
        said: &SaidState,
        text: &str,
    ) -> Named {
        let (_, names) = named;
        let mut found = Named::default();
        let standing: Vec<&Key> = names
            .states
            .iter()
            .filter(|s| s.place.is_some())
            .map(|s| &s.key)
            .collect();
        if said.remark == Some(StateRemark::Only) && said.states.is_empty() {
            match standing[..] {
                [only] => found.keys.push(only.clone()),
                _ => found.doubts.push(format!(
                    "the row says \"{text}\", and {} has {} states",
                    self.in_words(design),
                    standing.len()
                )),
            }
            return found;
        }
        if said.remark.is_some() {
            found.doubts.push(format!(
                "\"{text}\" is no state that the catalogue describes"
            ));
            return found;
        }
        for number in &said.states {
            let mut rest = vec!["state".to_owned(), roman(*number)];
            rest.extend(said.of.map(roman));
            let mut is_known = false;
            for (meant, why) in parts_of(&self.reader, named, After::Title, &rest, None) {
                let Meant::State(_, state) = meant else {
                    continue;
                };
                let Some(state) = names.states.get(state) else {
                    continue;
                };
                is_known = true;
                match why {
                    Why::OtherTotal => found.doubts.push(format!(
                        "the row says \"{text}\", and {} has {} states",
                        self.in_words(design),
                        standing.len()
                    )),
                    Why::Edition(edition) => found.doubts.push(format!(
                        "state {} of edition {edition} is now `{}`",
                        roman(*number),
                        state.key
                    )),
                    _ => {}
                }
                if !found.keys.contains(&state.key) {
                    found.keys.push(state.key.clone());
                }
            }
            if !is_known {
                let design = self.in_words(design);
                found
                    .doubts
                    .push(format!("{design} has no state {}", roman(*number)));
            }
        }
        found
    }

    /// The printings of a design that a name or key names.
    #[must_use]
    pub fn printing(&self, design: &Key, text: &str) -> Named {
        let whole = self.one_printing(design, text);
        if !whole.keys.is_empty() {
            return whole;
        }
        chosen(text, |part| self.one_printing(design, part)).unwrap_or(whole)
    }

    fn one_printing(&self, design: &Key, text: &str) -> Named {
        let Some((_, names, _)) = self.named(design) else {
            return Named::default();
        };
        let is_it = |name: &str| name_key(name) == name_key(text);
        let keys: Vec<Key> = names
            .printings
            .iter()
            .filter(|printing| {
                is_it(printing.key.as_str())
                    || printing.name.as_deref().is_some_and(is_it)
                    || printing.was.iter().any(|was| is_it(was))
            })
            .map(|printing| printing.key.clone())
            .collect();
        let doubts = match keys.len() {
            0 => vec![format!(
                "\"{text}\" is no printing of {}",
                self.in_words(design)
            )],
            1 => Vec::new(),
            _ => vec![format!(
                "several printings of {} are called \"{text}\"",
                self.in_words(design)
            )],
        };
        Named { keys, doubts }
    }
}

/// What a cell of our own forms names, where it was chosen from their lists: "iii – moonlit", several divided by semicolons.
/// The key behind the dash counts; where it is none, the numeral or name before it. `None` where the cell was not chosen.
fn chosen(text: &str, mut named: impl FnMut(&str) -> Named) -> Option<Named> {
    let parts: Vec<choices::Named<'_>> = choices::named(text).collect();
    if parts.len() < 2 && parts.iter().all(|part| part.key.is_none()) {
        return None;
    }
    let mut all = Named::default();
    for part in parts {
        let by_key = part.key.map(&mut named);
        let by_key = by_key.filter(|found| !found.keys.is_empty());
        let found = by_key.unwrap_or_else(|| named(part.shown));
        all.doubts.extend(found.doubts);
        for key in found.keys {
            if !all.keys.contains(&key) {
                all.keys.push(key);
            }
        }
    }
    Some(all)
}

/// The state that a cell of this catalogue's own states says; a bare figure is one.
fn said_state(text: &str) -> Option<SaidState> {
    let alone = text.trim().parse::<u32>().ok();
    if let Some(number) = alone.filter(|number| (1..100).contains(number)) {
        return Some(SaidState {
            states: vec![number],
            ..SaidState::default()
        });
    }
    let mut said = states(text).is.into_iter().filter_map(|said| said.state);
    said.next()
}
