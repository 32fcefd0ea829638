//! The sheets of the census by the numbers under which holders keep or kept them.
//!
//! In: a catalogue. Out: [`SheetNumbers`], made once. Two numbers are one where their letters and figures are
//! (`study::search::words::number_key`); the part of a number that a record has is respected.

use std::collections::HashMap;

use crate::model::catalogue::Catalogue;
use crate::model::impression::Impression;
use crate::model::key::{ImpressionKey, Key};
use crate::study::search::words::{number_key, without_stops};

/// How a record has a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum NumberFit {
    /// It is its number, with its part where it has one.
    Whole,
    /// It is its number, and the record is one part of it.
    OfParts,
    /// It is a number that it had before.
    Former,
    /// It is its number but for the punctuation: "196244" for "1962.44".
    Unpunctuated,
}

/// A sheet with a number.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NumberedSheet {
    /// The record.
    pub impression: ImpressionKey,
    /// Whose number it is.
    pub holder: Option<Key>,
    /// How it has it.
    pub fit: NumberFit,
    /// The number as recorded.
    pub number: String,
    /// Whether the record keeps the number, its holder or itself from readers.
    pub is_private: bool,
}

/// The sheets of a census by number.
#[derive(Debug, Default)]
pub struct SheetNumbers {
    sheets: Vec<NumberedSheet>,
    by_key: HashMap<String, Vec<usize>>,
}

impl SheetNumbers {
    /// Those of a catalogue; withdrawn records are left out.
    #[must_use]
    pub fn of(catalogue: &Catalogue) -> SheetNumbers {
        let mut numbers = SheetNumbers::default();
        for (_, sheet) in catalogue.impressions() {
            if !sheet.standing.is_withdrawn() {
                numbers.add_sheet(catalogue, sheet);
            }
        }
        numbers
    }

    fn add_sheet(&mut self, catalogue: &Catalogue, sheet: &Impression) {
        let public = catalogue.published_impression(sheet);
        let holder = sheet.holder.as_ref().map(|key| &key.value);
        let is_hidden = !public.publish
            || holder.is_some_and(|key| public.holder.is_none() || has_hidden_name(catalogue, key));
        if let Some(number) = &sheet.accession {
            let is_private = is_hidden || public.accession.is_none();
            let whole = sheet.accession_and_part().unwrap_or_default();
            self.add(sheet, holder, NumberFit::Whole, &whole, is_private);
            if sheet.part.is_some() {
                self.add(sheet, holder, NumberFit::OfParts, &number.value, is_private);
            }
        }
        for former in &sheet.former_accessions {
            let holder = former.holder.as_ref().map(|key| &key.value);
            let is_private = is_hidden || !public.former_accessions.contains(former);
            self.add(sheet, holder, NumberFit::Former, &former.number, is_private);
        }
    }

    fn add(
        &mut self,
        sheet: &Impression,
        holder: Option<&Key>,
        fit: NumberFit,
        number: &str,
        is_private: bool,
    ) {
        let Some(key) = number_key(number) else {
            return;
        };
        let at = self.sheets.len();
        self.sheets.push(NumberedSheet {
            impression: sheet.key.clone(),
            holder: holder.cloned(),
            fit,
            number: number.to_owned(),
            is_private,
        });
        let bare = without_stops(&key);
        if bare != key {
            self.by_key.entry(bare).or_default().push(at);
        }
        self.by_key.entry(key).or_default().push(at);
    }

    /// The sheets that have a number, in the order of the records. A sheet whose number differs in its punctuation alone is
    /// found with [`NumberFit::Unpunctuated`].
    #[must_use]
    pub fn with(&self, number: &str) -> Vec<NumberedSheet> {
        let Some(key) = number_key(number) else {
            return Vec::new();
        };
        let bare = without_stops(&key);
        let places = |key: &String| self.by_key.get(key).into_iter().flatten().copied();
        let mut found: Vec<(usize, bool)> = places(&key).map(|at| (at, true)).collect();
        found.extend(places(&bare).map(|at| (at, false)));
        found.sort_unstable();
        found.dedup_by_key(|(at, _)| *at);
        let sheets = found.into_iter().filter_map(|(at, _)| {
            let sheet = self.sheets.get(at)?.clone();
            let is_same = number_key(&sheet.number).as_ref() == Some(&key);
            // A former number without its punctuation says too little.
            match (is_same, sheet.fit) {
                (true, _) => Some(sheet),
                (false, NumberFit::Whole) => Some(NumberedSheet {
                    fit: NumberFit::Unpunctuated,
                    ..sheet
                }),
                (false, _) => None,
            }
        });
        sheets.collect()
    }

    /// The record that a holder keeps under a number: the only one that has it whole.
    #[must_use]
    pub fn kept_as(
        &self,
        catalogue: &Catalogue,
        holder: &Key,
        number: &str,
    ) -> Option<ImpressionKey> {
        let with = self.with(number);
        let whole = with.iter().filter(|sheet| {
            let is_theirs = sheet
                .holder
                .as_ref()
                .is_some_and(|h| catalogue.are_one_house(h, holder));
            is_theirs && sheet.fit == NumberFit::Whole
        });
        let mut keys: Vec<&ImpressionKey> = whole.map(|sheet| &sheet.impression).collect();
        keys.dedup();
        match keys[..] {
            [one] => Some(one.clone()),
            _ => None,
        }
    }
}

/// Whether a holder's name is kept from readers.
fn has_hidden_name(catalogue: &Catalogue, holder: &Key) -> bool {
    let recorded = catalogue.holders.get(holder);
    let published = catalogue.published_holder(holder);
    recorded.map(|holder| &holder.name.value) != published.map(|holder| &holder.name.value)
}
