//! How the numbers of designs and the numerals of states read in each edition, where they read otherwise now.
//!
//! In: the register, and the catalogue as it is now. Out: [`FormerReading`]s of an entry whose value is another now,
//! the latest first. Editions that read alike are one reading.

use std::collections::BTreeMap;

use keyblock_model::issued_address::IssuedAddress;
use keyblock_model::register::{Aspect, IssuedEntry, Register};

/// A value that an entry had, and the editions that had it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FormerReading {
    /// The value: a number, or a numeral with its total.
    pub value: String,
    /// The editions, as places in [`Register::editions`], rising.
    pub editions: Vec<usize>,
}

/// The readings of every edition of a register.
#[derive(Clone, Debug)]
pub struct EditionReadings<'r> {
    register: &'r Register,
    /// The former address of each address that another leads to.
    former: BTreeMap<IssuedAddress, &'r IssuedAddress>,
}

impl<'r> EditionReadings<'r> {
    /// The readings of a register.
    #[must_use]
    pub fn of(register: &'r Register) -> EditionReadings<'r> {
        let former = register.entries.iter().filter_map(|(address, entry)| {
            let to = entry.leads_to()?;
            Some((to, address))
        });
        EditionReadings {
            register,
            former: former.collect(),
        }
    }

    /// The register.
    #[must_use]
    pub fn register(&self) -> &'r Register {
        self.register
    }

    /// What an entry said of one aspect in each edition; before its present address was issued, what its former
    /// address said. Empty where nothing was said.
    #[must_use]
    pub fn by_edition(&self, address: &IssuedAddress, aspect: Aspect) -> Vec<&'r str> {
        let line = self.line_of(address);
        let editions = 0..self.register.editions.len();
        editions
            .map(|edition| {
                let saying = line.iter().find(|entry| entry.since.value <= edition);
                saying.map_or("", |entry| entry.at(aspect, edition))
            })
            .collect()
    }

    /// The values that an entry had in editions and has no longer, the latest first. `is_now` says whether a value is
    /// still the present one.
    #[must_use]
    pub fn formerly(
        &self,
        address: &IssuedAddress,
        aspect: Aspect,
        is_now: impl Fn(&str) -> bool,
    ) -> Vec<FormerReading> {
        let mut readings: Vec<FormerReading> = Vec::new();
        let values = self.by_edition(address, aspect);
        for (edition, value) in values.into_iter().enumerate() {
            if value.is_empty() || is_now(value) {
                continue;
            }
            match readings.iter_mut().find(|reading| reading.value == value) {
                Some(reading) => reading.editions.push(edition),
                None => readings.push(FormerReading {
                    value: value.to_owned(),
                    editions: vec![edition],
                }),
            }
        }
        readings.sort_by_key(|reading| std::cmp::Reverse(reading.editions.last().copied()));
        readings
    }

    /// The entry of an address and those of its former addresses, the present first.
    fn line_of(&self, address: &IssuedAddress) -> Vec<&'r IssuedEntry> {
        let mut line: Vec<&IssuedEntry> = self.register.entries.get(address).into_iter().collect();
        let mut at = address;
        // No key is used again, so a line has no circle; that of a damaged register ends here.
        while let Some(former) = self
            .former
            .get(at)
            .filter(|_| line.len() <= self.register.editions.len())
        {
            line.extend(self.register.entries.get(*former));
            at = former;
        }
        line
    }
}
