//! The register: every address that the catalogue's editions have issued, and how each entry read in each edition.
//!
//! `keyblock issue` writes it to `register.toml`, one line for one address, from what readers may know: keys, numbers,
//! numerals and digests, no texts. A value that changes from edition to edition ([`Said`]) is kept with the edition
//! from which on it holds, so the account of every edition can be given from the register alone.
//!
//! Reading is in `read::register`, writing in `issue::register`, comparing in `study::issued`.

use std::collections::BTreeMap;
use std::fmt;

use super::edtf::Date;
use super::issued_address::IssuedAddress;
use super::key::Key;
use super::place::{Place, Placed};
use super::words::closed_list;

/// The form in which the register is written; a register of another form is refused.
pub const REGISTER_FORM: i64 = 1;

/// The name of its file in the catalogue's folder.
pub const REGISTER_FILE: &str = "register.toml";

closed_list! {
    /// What the register keeps of an entry for each edition.
    Aspect {
        /// The number of a design.
        Number = "number",
        /// The numeral of a state: "ii/iv", "i/i"; empty once it was withdrawn.
        Numeral = "numeral",
        /// The identification of an impression ([`super::issued_reading`], keys only).
        Identified = "identified",
        /// The holder of an impression, by key; empty where none is recorded.
        Holder = "holder",
        /// The impression with the page of the sheet, by key, where several records are of one sheet and this one has
        /// not the page; empty where it has its own.
        Sheet = "sheet",
        /// The standing, where it is not accepted.
        Standing = "standing",
        /// The impressions that a comparison shows, by key.
        Shows = "shows",
        /// The address that this one leads to: "design:15".
        Leads = "leads",
        /// The holder that took over a holder, by key.
        Successor = "successor",
        /// "yes" where the record is there and is not published any more.
        Unpublished = "unpublished",
    }
}

closed_list! {
    /// The subjects of an entry, for what was revised in it: groups of the keys of records.
    Subject {
        /// Titles.
        Titles = "titles",
        /// Names of holders, people, exhibitions.
        Name = "name",
        /// Dates of a design, of a life, of an exhibition.
        Date = "date",
        /// Makers, printers, users of a mark.
        Makers = "makers",
        /// Technique, support, paper.
        Technique = "technique",
        /// Sizes.
        Size = "size",
        /// Series.
        Series = "series",
        /// Subjects shown.
        Motif = "motif",
        /// Blocks and plates.
        Matrices = "matrices",
        /// States.
        States = "states",
        /// Printings.
        Printings = "printings",
        /// Variants.
        Variants = "variants",
        /// Points.
        Points = "points",
        /// Holder, owner, inventory number, status.
        Whereabouts = "whereabouts",
        /// Identification and opinions.
        Identification = "identification",
        /// Observations.
        Observations = "observations",
        /// The sheet: paper, size, kind, condition.
        Sheet = "sheet",
        /// Marks.
        Marks = "marks",
        /// Provenance and sightings.
        Provenance = "provenance",
        /// Exhibitions.
        Exhibitions = "exhibitions",
        /// Literature and older numbers.
        Literature = "literature",
        /// Pictures.
        Pictures = "pictures",
        /// Comparisons.
        Comparisons = "comparisons",
        /// Other records of the sheet, related designs, successors.
        Relations = "relations",
        /// Standing.
        Standing = "standing",
        /// Commentary, notes, the text of a page.
        Text = "text",
        /// Everything else.
        Particulars = "particulars",
    }
}

/// A value with the editions from which on it held: the place of the edition in [`Register::editions`], and the value
/// until the next. An empty value: nothing.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Said(BTreeMap<usize, String>);

impl Said {
    /// The value `value` from `edition` on.
    #[must_use]
    pub fn since(edition: usize, value: String) -> Said {
        Said(BTreeMap::from([(edition, value)]))
    }

    /// Adds that the value is `value` from `edition` on; nothing where it was that already.
    pub fn set(&mut self, edition: usize, value: &str) {
        if self.at(edition) != value {
            self.0.insert(edition, value.to_owned());
        }
    }

    /// Adds a value as it was read.
    pub fn insert(&mut self, edition: usize, value: String) {
        self.0.insert(edition, value);
    }

    /// The value in an edition; empty where nothing was said yet.
    #[must_use]
    pub fn at(&self, edition: usize) -> &str {
        let until = self.0.range(..=edition);
        until.last().map_or("", |(_, value)| value.as_str())
    }

    /// The last value; empty where there is none.
    #[must_use]
    pub fn last(&self) -> &str {
        self.0.values().last().map_or("", String::as_str)
    }

    /// The value before an edition and in it, where that edition changed it.
    #[must_use]
    pub fn change(&self, edition: usize) -> Option<(&str, &str)> {
        let now = self.0.get(&edition)?;
        let before = self.0.range(..edition).last();
        Some((before.map_or("", |(_, value)| value.as_str()), now))
    }

    /// The editions from which on each value held, with the value, in order.
    pub fn iter(&self) -> impl Iterator<Item = (usize, &str)> {
        self.0
            .iter()
            .map(|(edition, value)| (*edition, value.as_str()))
    }
}

/// An edition that was issued.
#[derive(Clone, Debug, PartialEq)]
pub struct IssuedEdition {
    /// Its name: "2".
    pub edition: Placed<String>,
    /// Its date, a day.
    pub dated: Placed<Date>,
    /// The address of the catalogue when it was issued, without a slash at the end. Ids of feeds are made from it.
    pub address: String,
    /// Why it was issued although records differed from what was committed.
    pub uncommitted: Option<String>,
}

impl IssuedEdition {
    /// Whether a date can be that of an edition: one day, "2026-10-15".
    #[must_use]
    pub fn can_be_dated(date: &Date) -> bool {
        let parts: Vec<&str> = date.as_str().split('-').collect();
        let is_number = |part: &&str| !part.is_empty() && part.bytes().all(|b| b.is_ascii_digit());
        parts.len() == 3 && parts.iter().all(is_number)
    }

    /// The word of its page's address: the nearest key to its name ("0.1" is `0-1`), else its place, from 1.
    #[must_use]
    pub fn key(&self, place: usize) -> Key {
        let place = (place + 1).to_string();
        let named = Key::nearest_form(&self.edition.value);
        named.unwrap_or_else(|| Key::nearest_form(&place).unwrap_or_else(Key::built_in_theme))
    }
}

/// An address that was issued, and how its entry read.
#[derive(Clone, Debug, PartialEq)]
pub struct IssuedEntry {
    /// The edition that first issued it, as a place in [`Register::editions`], and where the register lists it.
    pub since: Placed<usize>,
    /// How it read in each edition.
    pub said: BTreeMap<Aspect, Said>,
    /// What was revised in which edition. An edition without a subject: the entry was revised.
    pub revised: BTreeMap<usize, Vec<Subject>>,
    /// The digest of each subject, as the last edition published it.
    pub holds: BTreeMap<Subject, Digest>,
}

impl IssuedEntry {
    /// An entry that says nothing yet.
    #[must_use]
    pub fn new(since: usize, place: Place) -> IssuedEntry {
        IssuedEntry {
            since: Placed::new(since, place),
            said: BTreeMap::new(),
            revised: BTreeMap::new(),
            holds: BTreeMap::new(),
        }
    }

    /// How it read in an edition; empty where nothing was said of that.
    #[must_use]
    pub fn at(&self, aspect: Aspect, edition: usize) -> &str {
        self.said.get(&aspect).map_or("", |said| said.at(edition))
    }

    /// The address that it leads to, where its record has another key now.
    #[must_use]
    pub fn leads_to(&self) -> Option<IssuedAddress> {
        IssuedAddress::named(self.last(Aspect::Leads))
    }

    /// The last edition that published it under this address, as a place in [`Register::editions`]. `last` is the
    /// place of the last edition of all.
    #[must_use]
    pub fn last_published(&self, last: usize) -> usize {
        let since = |aspect| -> Option<usize> {
            let said: &Said = self.said.get(&aspect)?;
            let (edition, value) = said.0.last_key_value()?;
            (!value.is_empty()).then_some(*edition)
        };
        let ended = [Aspect::Unpublished, Aspect::Leads].map(since);
        let ended = ended.into_iter().flatten().min();
        ended.map_or(last, |edition| edition.saturating_sub(1))
    }

    /// How it read last.
    #[must_use]
    pub fn last(&self, aspect: Aspect) -> &str {
        self.said.get(&aspect).map_or("", Said::last)
    }
}

/// A digest of published values: 24 bits, which two values that differ share once in 16 million times.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Digest(u32);

impl Digest {
    /// Of a hash, its first 24 bits.
    #[must_use]
    pub fn of(hash: &[u8; 32]) -> Digest {
        let [a, b, c, ..] = *hash;
        Digest(u32::from_be_bytes([0, a, b, c]))
    }

    /// Reads six hexadecimal digits.
    #[must_use]
    pub fn parse(text: &str) -> Option<Digest> {
        let is_form = text.len() == 6 && text.bytes().all(|b| b.is_ascii_hexdigit());
        let number = is_form.then(|| u32::from_str_radix(text, 16).ok())??;
        Some(Digest(number))
    }
}

impl fmt::Display for Digest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:06x}", self.0)
    }
}

/// The register.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Register {
    /// The editions, in the order in which they were issued.
    pub editions: Vec<IssuedEdition>,
    /// Every address.
    pub entries: BTreeMap<IssuedAddress, IssuedEntry>,
}

impl Register {
    /// The last edition and its place.
    #[must_use]
    pub fn last(&self) -> Option<(usize, &IssuedEdition)> {
        self.editions.iter().enumerate().next_back()
    }

    /// An entry, by its address.
    #[must_use]
    pub fn entry(&self, address: &IssuedAddress) -> Option<&IssuedEntry> {
        self.entries.get(address)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_value_holds_until_the_next() {
        let mut numeral = Said::since(0, "ii/ii".to_owned());
        numeral.set(1, "ii/ii");
        numeral.set(2, "iii/iii");
        assert_eq!(
            ["ii/ii", "ii/ii", "iii/iii", "iii/iii"],
            [0, 1, 2, 5].map(|e| numeral.at(e))
        );
        assert_eq!(numeral.change(2), Some(("ii/ii", "iii/iii")));
        assert_eq!((numeral.change(1), numeral.iter().count()), (None, 2));
    }

    #[test]
    fn the_page_of_an_edition_has_the_nearest_key_to_its_name() {
        let edition = |name: &str| IssuedEdition {
            edition: Placed::new(name.to_owned(), Place::default()),
            dated: Placed::new(Date::parse("2026-10-15").unwrap(), Place::default()),
            address: String::new(),
            uncommitted: None,
        };
        let key = |name: &str, place| edition(name).key(place).to_string();
        assert_eq!(
            [key("2", 1), key("0.1", 0), key("第三版", 2)],
            ["2", "0-1", "3"]
        );
    }
}
