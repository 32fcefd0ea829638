//! Former keys and former numerals: by what records and states were cited before.
//!
//! In: single former names, each with what had it. Out: the names of a catalogue with them, so that a reference to a former
//! edition is still understood. A former name of something that is not there is left out.

use super::names::{DesignNames, FormerNumeral, References, StateNames};
use crate::model::key::Key;
use crate::model::link::Target;
use crate::study::concordance::DesignPart;

impl References {
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

    /// Adds the place that a state had in an earlier edition of the catalogue, where it is not the present one.
    pub fn add_former_numeral(&mut self, design: &Key, state: &Key, edition: &str, place: u32) {
        if let Some(state) = self.state_of(design, state)
            && state.place != Some(place)
        {
            state.formerly.push(FormerNumeral {
                edition: edition.to_owned(),
                place,
            });
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
                was: Vec::new(),
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
        references.add_former_numeral(&key("14"), &key("lamps"), "1", 1);
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
            readings(&resolver, "TP 14 i (edition 1)"),
            ["certain TP 14 ii/ii edition"]
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
