//! Addresses that an edition has issued: of records, of parts of designs, of points, comparisons and conditions.
//!
//! In: a kind and a key, as the register lists them ([`super::register`]). Out: an [`IssuedAddress`]. Which there are and how
//! each entry read is the register's.

use std::cmp::Ordering;
use std::fmt;

use super::key::{ImpressionKey, Key, NotAKey};
use super::link::Target;
use super::natural::natural_order;
use super::occurrence::DesignPart;
use super::words::{ClosedList as _, closed_list};

closed_list! {
    /// The kinds of addresses, in the order of the file; each is the name of a section.
    IssuedKind {
        /// The page of a design.
        Design = "design",
        /// A state: a place in the page of its design.
        State = "state",
        /// A printing.
        Printing = "printing",
        /// A variant.
        Variant = "variant",
        /// A block, plate, stone or screen.
        Matrix = "matrix",
        /// The page of a point.
        Point = "point",
        /// The page of a recorded comparison.
        Comparison = "comparison",
        /// The page of an impression.
        Impression = "impression",
        /// The image service of a picture.
        Picture = "picture",
        /// The page of a holder.
        Holder = "holder",
        /// The page of a person.
        Person = "person",
        /// The page of a work of the literature.
        Work = "lit",
        /// The page of an exhibition.
        Exhibition = "exhibition",
        /// The page of a mark.
        Mark = "mark",
        /// The page of a document.
        Document = "document",
        /// The page of a series.
        Series = "series",
        /// A condition of a mark: a place in its page.
        Condition = "condition",
        /// A page of the catalogue's own.
        Page = "page",
    }
}

/// An address that was issued.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum IssuedAddress {
    /// A record or a picture.
    Record(Target),
    /// A part of a design.
    Part(Key, DesignPart, Key),
    /// A point of a design.
    Point(Key, Key),
    /// A recorded comparison of a design, by its place in the record, from 1.
    Comparison(Key, usize),
    /// A condition of a mark.
    Condition(Key, Key),
}

impl IssuedAddress {
    /// Its kind.
    #[must_use]
    pub fn kind(&self) -> IssuedKind {
        match self {
            IssuedAddress::Record(target) => match target {
                Target::Design(_) => IssuedKind::Design,
                Target::Impression(_) => IssuedKind::Impression,
                Target::Holder(_) => IssuedKind::Holder,
                Target::Person(_) => IssuedKind::Person,
                Target::Work(_) => IssuedKind::Work,
                Target::Exhibition(_) => IssuedKind::Exhibition,
                Target::Mark(_) => IssuedKind::Mark,
                Target::Document(_) => IssuedKind::Document,
                Target::Series(_) => IssuedKind::Series,
                Target::Page(_) => IssuedKind::Page,
                Target::Picture(_) => IssuedKind::Picture,
            },
            IssuedAddress::Part(_, part, _) => match part {
                DesignPart::Matrix => IssuedKind::Matrix,
                DesignPart::State => IssuedKind::State,
                DesignPart::Printing => IssuedKind::Printing,
                DesignPart::Variant => IssuedKind::Variant,
            },
            IssuedAddress::Point(..) => IssuedKind::Point,
            IssuedAddress::Comparison(..) => IssuedKind::Comparison,
            IssuedAddress::Condition(..) => IssuedKind::Condition,
        }
    }

    /// The key under which the register lists it: "14", "14.7", "14/moon", "14/1".
    #[must_use]
    pub fn key(&self) -> String {
        match self {
            IssuedAddress::Record(target) => target.key().to_string(),
            IssuedAddress::Part(whole, _, key)
            | IssuedAddress::Point(whole, key)
            | IssuedAddress::Condition(whole, key) => format!("{whole}/{key}"),
            IssuedAddress::Comparison(design, place) => format!("{design}/{place}"),
        }
    }

    /// The address with this kind and key.
    ///
    /// # Errors
    /// [`NotAKey`] where the key is none of that kind.
    pub fn parse(kind: IssuedKind, key: &str) -> Result<IssuedAddress, NotAKey> {
        let part = |part: DesignPart| {
            let (design, key) = key.split_once('/').ok_or(NotAKey)?;
            Ok(IssuedAddress::Part(design.parse()?, part, key.parse()?))
        };
        match kind {
            IssuedKind::State => part(DesignPart::State),
            IssuedKind::Printing => part(DesignPart::Printing),
            IssuedKind::Variant => part(DesignPart::Variant),
            IssuedKind::Matrix => part(DesignPart::Matrix),
            IssuedKind::Point => {
                let (design, key) = key.split_once('/').ok_or(NotAKey)?;
                Ok(IssuedAddress::Point(design.parse()?, key.parse()?))
            }
            IssuedKind::Condition => {
                let (mark, key) = key.split_once('/').ok_or(NotAKey)?;
                Ok(IssuedAddress::Condition(mark.parse()?, key.parse()?))
            }
            IssuedKind::Comparison => {
                let (design, place) = key.split_once('/').ok_or(NotAKey)?;
                let place = place.parse().map_err(|_| NotAKey)?;
                Ok(IssuedAddress::Comparison(design.parse()?, place))
            }
            record => {
                let target = format!("{}:{key}", record.word()).parse()?;
                Ok(IssuedAddress::Record(target))
            }
        }
    }

    /// The address that the register names: "design:15"; `None` where it names none.
    #[must_use]
    pub fn named(text: &str) -> Option<IssuedAddress> {
        let (kind, key) = text.split_once(':')?;
        IssuedAddress::parse(IssuedKind::from_word(kind)?, key).ok()
    }

    /// The design that it is, or belongs to.
    #[must_use]
    pub fn design(&self) -> Option<&Key> {
        match self {
            IssuedAddress::Record(
                Target::Design(key) | Target::Impression(ImpressionKey { design: key, .. }),
            )
            | IssuedAddress::Part(key, ..)
            | IssuedAddress::Point(key, _)
            | IssuedAddress::Comparison(key, _) => Some(key),
            _ => None,
        }
    }

    /// The order of the file: by kind, then by key with numbers as numbers ("2" before "10").
    #[must_use]
    pub fn in_file_order(&self, other: &IssuedAddress) -> Ordering {
        let kinds = self.kind().cmp(&other.kind());
        kinds.then_with(|| natural_order(&self.key(), &other.key()))
    }
}

impl fmt::Display for IssuedAddress {
    /// As the register names the record that an address leads to: "design:14", "state:14/moon".
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}:{}", self.kind(), self.key())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn addresses_are_read_as_they_are_listed() {
        for (kind, key) in [
            (IssuedKind::Design, "14"),
            (IssuedKind::State, "14/no-moon"),
            (IssuedKind::Point, "14/lamps"),
            (IssuedKind::Comparison, "14/2"),
            (IssuedKind::Impression, "14.7"),
            (IssuedKind::Picture, "14.7/recto"),
            (IssuedKind::Work, "first-list"),
            (IssuedKind::Condition, "round-seal/chipped"),
        ] {
            let address = IssuedAddress::parse(kind, key).unwrap();
            assert_eq!((address.kind(), address.key().as_str()), (kind, key));
            assert_eq!(address.to_string(), format!("{kind}:{key}"));
        }
        for (kind, key) in [
            (IssuedKind::State, "14"),
            (IssuedKind::Comparison, "14/x"),
            (IssuedKind::Impression, "14"),
            (IssuedKind::Design, "a b"),
        ] {
            assert_eq!(IssuedAddress::parse(kind, key), Err(NotAKey), "{key}");
        }
    }
}
