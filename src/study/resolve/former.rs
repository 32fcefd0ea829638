//! Former keys and former numerals: by what records and states were cited before.
//!
//! In: single former names, each with what had it. Out: the names of a catalogue with them, so that a reference to a former
//! edition is still understood. A former name of something that is not there is left out.

use super::names::{DesignNames, FormerNumber, FormerNumeral, References, StateNames};
use crate::concordance::DesignPart;
use crate::issued::readings::EditionReadings;
use crate::numerals::from_roman;
use keyblock_model::catalogue::Catalogue;
use keyblock_model::former::Named;
use keyblock_model::issued_address::IssuedAddress;
use keyblock_model::key::Key;
use keyblock_model::link::Target;
use keyblock_model::occurrence::DesignPart as RecordPart;
use keyblock_model::register::Aspect;

impl References {
    /// Adds every former name of a catalogue: the keys that its records say they had, and the numbers and numerals in
    /// its register that are others now.
    pub(super) fn add_former_names(&mut self, catalogue: &Catalogue) {
        for former in catalogue.former.public() {
            let was = &former.was.value;
            match &former.of {
                Named::Record(record) => self.add_former_key(record, &DesignPart::Whole, was),
                Named::Part(design, part, key) => {
                    let part = match part {
                        RecordPart::State => DesignPart::State(key.clone()),
                        RecordPart::Printing => DesignPart::Printing(key.clone()),
                        _ => continue,
                    };
                    self.add_former_key(&Target::Design(design.clone()), &part, was);
                }
                Named::Point(..) | Named::Condition(..) => {}
            }
        }
        let Some(register) = &catalogue.register else {
            return;
        };
        let readings = EditionReadings::of(register);
        let editions: Vec<&str> = register
            .editions
            .iter()
            .map(|e| e.edition.as_str())
            .collect();
        for design in &mut self.designs {
            let keys: Vec<Key> = keys(&design.key, &design.was);
            let whole = keys.iter().cloned().map(Target::Design);
            let whole: Vec<IssuedAddress> = whole.map(IssuedAddress::Record).collect();
            let others = editions.iter().zip(said(&readings, &whole, Aspect::Number));
            let others =
                others.filter(|(_, number)| !number.is_empty() && *number != design.number);
            design.formerly = others
                .map(|(edition, number)| FormerNumber {
                    edition: (*edition).to_owned(),
                    number: number.to_owned(),
                })
                .collect();
            for state in &mut design.states {
                let of_state = self::keys(&state.key, &state.was);
                let addresses = keys.iter().flat_map(|design| {
                    let states = of_state.iter().cloned();
                    states
                        .map(|state| IssuedAddress::Part(design.clone(), RecordPart::State, state))
                });
                let addresses: Vec<IssuedAddress> = addresses.collect();
                let said = said(&readings, &addresses, Aspect::Numeral);
                for (edition, numeral) in editions.iter().zip(said) {
                    let place = numeral.split('/').next().and_then(from_roman);
                    state.add_former_place(edition, place);
                }
            }
        }
    }

    /// Adds a key that a record had before; of a design also a key that one of its states or printings had.
    pub fn add_former_key(&mut self, record: &Target, part: &DesignPart, was: &Key) {
        let former = match (record, part) {
            (Target::Design(key), DesignPart::Whole) => self.names_of(key).map(|d| &mut d.was),
            (Target::Design(key), DesignPart::State(state)) => {
                self.state_of(key, state).map(|state| &mut state.was)
            }
            (Target::Design(key), DesignPart::Printing(printing)) => {
                let printings = self.names_of(key).map(|design| &mut design.printings);
                let mut printings = printings.into_iter().flatten();
                let printing = printings.find(|one| one.key == *printing);
                printing.map(|printing| &mut printing.was)
            }
            (Target::Work(key), _) => {
                let work = self.works.iter_mut().find(|work| work.key == *key);
                work.map(|work| &mut work.was)
            }
            (other, _) => {
                let (list, key) = match other {
                    Target::Holder(key) => (&mut self.holders, key),
                    Target::Person(key) => (&mut self.people, key),
                    Target::Exhibition(key) => (&mut self.exhibitions, key),
                    Target::Mark(key) => (&mut self.marks, key),
                    Target::Document(key) => (&mut self.documents, key),
                    Target::Series(key) => (&mut self.series, key),
                    _ => return,
                };
                let names = list.iter_mut().find(|names| names.key == *key);
                names.map(|names| &mut names.was)
            }
        };
        if let Some(former) = former
            && !former.iter().any(|key| key == was.as_str())
        {
            former.push(was.to_string());
        }
    }

    fn names_of(&mut self, design: &Key) -> Option<&mut DesignNames> {
        self.designs.iter_mut().find(|names| names.key == *design)
    }

    fn state_of(&mut self, design: &Key, state: &Key) -> Option<&mut StateNames> {
        let states = &mut self.names_of(design)?.states;
        states.iter_mut().find(|names| names.key == *state)
    }
}

/// The present key, then the former ones.
fn keys(present: &Key, was: &[String]) -> Vec<Key> {
    let former = was.iter().filter_map(|key| key.parse().ok());
    std::iter::once(present.clone()).chain(former).collect()
}

/// What the first of some addresses that says anything says in each edition. The register knows former keys only
/// once an edition was issued with the present ones.
fn said<'r>(
    readings: &EditionReadings<'r>,
    addresses: &[IssuedAddress],
    aspect: Aspect,
) -> Vec<&'r str> {
    let mut said: Vec<&str> = Vec::new();
    for address in addresses {
        let of_address = readings.by_edition(address, aspect);
        said.resize(of_address.len().max(said.len()), "");
        for (known, one) in said.iter_mut().zip(of_address) {
            if known.is_empty() {
                *known = one;
            }
        }
    }
    said
}

impl StateNames {
    /// Adds the place that it had in an earlier edition of the catalogue, where it had another than now.
    fn add_former_place(&mut self, edition: &str, place: Option<u32>) {
        if let Some(place) = place.filter(|place| self.place != Some(*place)) {
            self.formerly.push(FormerNumeral {
                edition: edition.to_owned(),
                place,
            });
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::names::QueryWords;
    use super::super::resolver::Resolver;
    use super::*;

    fn key(text: &str) -> Key {
        text.parse().unwrap()
    }

    /// A design whose second state was the first in edition 1, and whose key and that of this state were others.
    fn renumbered() -> Resolver {
        let state = |key: &str, place| StateNames {
            key: key.parse().unwrap(),
            place: Some(place),
            was: Vec::new(),
            formerly: Vec::new(),
        };
        let mut references = References {
            siglum: "TP".to_owned(),
            address: "https://prints.example.org".to_owned(),
            words: QueryWords {
                edition: vec!["edition".to_owned()],
                ..QueryWords::default()
            },
            designs: vec![DesignNames {
                key: key("14"),
                number: "14".to_owned(),
                titles: Vec::new(),
                former: Vec::new(),
                ids: Vec::new(),
                was: Vec::new(),
                formerly: vec![FormerNumber {
                    edition: "1".to_owned(),
                    number: "12".to_owned(),
                }],
                states: vec![state("before-lamps", 1), state("lamps", 2)],
                printings: Vec::new(),
                impressions: vec![1],
                joined: std::collections::BTreeMap::new(),
            }],
            ..References::default()
        };
        let design = Target::Design(key("14"));
        references.add_former_key(&design, &DesignPart::Whole, &key("mill"));
        let lamps = DesignPart::State(key("lamps"));
        references.add_former_key(&design, &lamps, &key("lit"));
        references.designs[0].states[1].add_former_place("1", Some(1));
        Resolver::new(references)
    }

    fn readings(resolver: &Resolver, text: &str) -> Vec<String> {
        let told = resolver.resolve(text).into_iter().map(|reading| {
            let target = resolver.references().target(reading.meant).unwrap();
            let why = reading.why.word();
            format!("{} {} {why}", reading.certainty, target.label)
        });
        told.collect()
    }

    #[test]
    fn a_former_key_leads_to_the_record_that_had_it() {
        let resolver = renumbered();
        for (text, expected) in [
            ("mill", "certain TP 14 former-key"),
            ("design:mill", "certain TP 14 former-key"),
            ("impression:mill.1", "certain TP 14.1 former-key"),
            ("14 lit", "certain TP 14 ii/ii former-key"),
            (
                "https://prints.example.org/design/mill/#state-lit",
                "certain TP 14 ii/ii former-key",
            ),
        ] {
            assert_eq!(readings(&resolver, text), [expected], "{text}");
        }
    }

    #[test]
    fn a_numeral_of_an_edition_is_that_of_the_edition() {
        let resolver = renumbered();
        assert_eq!(
            readings(&resolver, "TP 12 i (edition 1)"),
            ["certain TP 14 ii/ii edition"]
        );
        assert_eq!(
            readings(&resolver, "TP 12 (edition 1)"),
            ["certain TP 14 edition"]
        );
        assert_eq!(readings(&resolver, "TP 12"), ["possible TP 14 edition"]);
        // In that edition it had another number.
        assert_eq!(
            readings(&resolver, "TP 14 (edition 1)"),
            Vec::<String>::new()
        );
        // Without an edition it is probably the present one.
        assert_eq!(
            readings(&resolver, "TP 14 i"),
            ["probable TP 14 i/ii number", "possible TP 14 ii/ii edition"]
        );
        assert_eq!(
            readings(&resolver, "TP 14 ii"),
            ["certain TP 14 ii/ii number"]
        );
    }
}
