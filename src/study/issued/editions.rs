//! The editions of a catalogue, for its pages: the account of each, what changed since the last, and how entries read.
//!
//! In: the catalogue as readers may know it, with its register, and its studies. Out: [`Editions`]; `None` before the
//! first edition.

use crate::Studies;
use keyblock_model::catalogue::Catalogue;
use keyblock_model::place::Placed;
use keyblock_model::register::{IssuedEdition, Register};

use super::account::EditionAccount;
use super::advance::advanced;
use super::present::Present;
use super::readings::EditionReadings;

/// The editions of a catalogue.
pub struct Editions<'r> {
    /// How entries read in each edition.
    pub readings: EditionReadings<'r>,
    /// The register with one more edition: the catalogue as it is now.
    pub next: Register,
    /// The account of each edition.
    pub accounts: Vec<EditionAccount>,
    /// What changed since the last edition.
    pub since: EditionAccount,
}

impl<'r> Editions<'r> {
    /// The editions of a catalogue that readers may know.
    #[must_use]
    pub fn of(catalogue: &'r Catalogue, studies: &Studies) -> Option<Editions<'r>> {
        let register = catalogue.register.as_ref()?;
        let (last, edition) = register.last()?;
        let present = Present::of(catalogue, studies);
        // Only its place matters: the changes since are not an edition.
        let now = IssuedEdition {
            edition: Placed::new(String::new(), edition.edition.place),
            ..edition.clone()
        };
        let next = advanced(register, &present, now, &|address| catalogue.leads(address));
        let accounts = 0..register.editions.len();
        Some(Editions {
            readings: EditionReadings::of(register),
            accounts: accounts
                .map(|edition| EditionAccount::of(register, edition))
                .collect(),
            since: EditionAccount::of(&next, last + 1),
            next,
        })
    }

    /// The register.
    #[must_use]
    pub fn register(&self) -> &'r Register {
        self.readings.register()
    }

    /// The editions with their places and accounts, the latest first.
    pub fn latest_first(
        &self,
    ) -> impl Iterator<Item = (usize, &'r IssuedEdition, &EditionAccount)> {
        let editions = self
            .register()
            .editions
            .iter()
            .zip(&self.accounts)
            .enumerate();
        editions
            .rev()
            .map(|(place, (edition, account))| (place, edition, account))
    }
}
