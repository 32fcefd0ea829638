//! Groups of columns that several tables have: dates, sizes, standings, claims, parties.
//!
//! Each is added to a table under a name, after which its columns are called: the date `date` gives `date`,
//! `date_earliest` and `date_latest`.

use super::cell::Cell;
use super::table::TableOf;
use crate::exchange::format::Sources;
use crate::model::certainty::{Claim, Statements};
use crate::model::edtf::Date;
use crate::model::key::Key;
use crate::model::literature::Cited;
use crate::model::provenance::Party;
use crate::model::size::{Size, Sizes};
use crate::model::standing::RecordStanding;
use crate::page::ColumnKind;

/// The names of the columns of a date: as recorded, first and last day.
pub(super) type DateNames = [&'static str; 3];

/// The names of the columns of a size: height, width, certainty.
pub(super) type SizeNames = [&'static str; 3];

impl<'s, R> TableOf<'s, R> {
    /// Adds a date: as it is recorded, and the first and last day that it can cover.
    pub fn date<F>(self, [name, earliest, latest]: DateNames, date: F) -> Self
    where
        F: for<'r> Fn(&'r R) -> Option<&'r Date> + Copy + 's,
    {
        self.plain_date(name, date)
            .column(earliest, ColumnKind::Day, move |row| {
                Cell::day(date(row).and_then(|date| date.earliest().day()))
            })
            .column(latest, ColumnKind::Day, move |row| {
                Cell::day(date(row).and_then(|date| date.latest().day()))
            })
    }

    /// Adds a date as it is recorded.
    pub fn plain_date<F>(self, name: &'static str, date: F) -> Self
    where
        F: for<'r> Fn(&'r R) -> Option<&'r Date> + 's,
    {
        self.column(name, ColumnKind::Date, move |row| date(row).into())
    }

    /// Adds the catalogue's own view of a size in millimetres, and how certain it is.
    pub fn size<F>(self, [height, width, certainty]: SizeNames, size: F) -> Self
    where
        F: for<'r> Fn(&'r R) -> &'r Statements<Size> + Copy + 's,
    {
        self.number(height, move |row| {
            size(row).own().map(Size::height_mm).into()
        })
        .number(width, move |row| size(row).own().map(Size::width_mm).into())
        .certainty_of(certainty, size)
    }

    /// Adds the sizes of image and matrix.
    pub fn sizes<F>(self, sizes: F) -> Self
    where
        F: for<'r> Fn(&'r R) -> &'r Sizes + Copy + 's,
    {
        self.size(
            ["image_height_mm", "image_width_mm", "image_certainty"],
            move |row| &sizes(row).image,
        )
        .size(
            ["matrix_height_mm", "matrix_width_mm", "matrix_certainty"],
            move |row| &sizes(row).matrix,
        )
    }

    /// Adds the standing of a record, why, and the records to see instead.
    pub fn standing<F>(self, standing: F) -> Self
    where
        F: for<'r> Fn(&'r R) -> &'r RecordStanding + Copy + 's,
    {
        self.word("standing", move |row| Some(standing(row).standing))
            .text("standing_why", move |row| standing(row).why.as_ref().into())
            .list("see", move |row| Cell::placed(&standing(row).see))
    }

    /// Adds how certain the catalogue's own view is.
    pub fn certainty_of<T: 'static, F>(self, name: &'static str, statements: F) -> Self
    where
        F: for<'r> Fn(&'r R) -> &'r Statements<T> + 's,
    {
        self.word(name, move |row| {
            let own = statements(row).0.first();
            own.map(|own| own.claim.certainty())
        })
    }

    /// Adds how certain a statement is, what it rests on, and who made it when.
    pub fn claim<F>(self, sources: Sources<'s>, claim: F) -> Self
    where
        F: for<'r> Fn(&'r R) -> &'r Claim + Copy + 's,
    {
        self.word("certainty", move |row| Some(claim(row).certainty()))
            .word("basis", move |row| {
                let basis = claim(row).basis.as_ref();
                basis.map(|basis| basis.value)
            })
            .person_or_holder(sources, ["by_person", "by_holder"], move |row| {
                claim(row).by.as_ref().map(|by| &by.value)
            })
            .plain_date("stated", move |row| {
                claim(row).date.as_ref().map(|date| &date.value)
            })
            .cited(["source", "source_document"], move |row| {
                claim(row).cite.as_ref().map(|cite| &cite.value)
            })
            .text("source_at", move |row| claim(row).at.as_ref().into())
    }

    /// Adds a work of the literature or a document, of which one column has the key.
    pub fn cited<F>(self, [work, document]: [&'static str; 2], cited: F) -> Self
    where
        F: for<'r> Fn(&'r R) -> Option<&'r Cited> + Copy + 's,
    {
        self.key_of(work, "literature", move |row| {
            cited(row).and_then(Cited::work).into()
        })
        .key_of(document, "documents", move |row| {
            cited(row).and_then(Cited::document).into()
        })
    }

    /// Adds a person or holder, of whom one column has the key.
    pub fn person_or_holder<F>(
        self,
        sources: Sources<'s>,
        [person, holder]: [&'static str; 2],
        key: F,
    ) -> Self
    where
        F: for<'r> Fn(&'r R) -> Option<&'r Key> + Copy + 's,
    {
        // As on pages: of a key that both have, the holder is meant.
        let is_holder = move |key: &&Key| sources.public.holders.contains_key(*key);
        self.key_of(person, "people", move |row| {
            key(row).filter(|key| !is_holder(key)).into()
        })
        .key_of(holder, "holders", move |row| {
            key(row).filter(is_holder).into()
        })
    }

    /// Adds several parties of one sheet: people, holders, and names without a record, each as a list.
    pub fn parties<F>(
        self,
        sources: Sources<'s>,
        [person, holder, name]: [&'static str; 3],
        parties: F,
    ) -> Self
    where
        F: for<'r> Fn(&'r R) -> &'r [Party] + Copy + 's,
    {
        // As on pages: of a key that both have, the holder is meant.
        let is_holder = move |key: &Key| sources.public.holders.contains_key(key);
        let keys = move |row: &R, wants_holder: bool| {
            let records = parties(row).iter().filter_map(|party| match party {
                Party::Record(key) => Some(&key.value),
                Party::Named(_) | Party::Undisclosed => None,
            });
            Cell::list(records.filter(|key| is_holder(key) == wants_holder))
        };
        self.keys_of(person, "people", move |row| keys(row, false))
            .keys_of(holder, "holders", move |row| keys(row, true))
            .list(name, move |row| {
                Cell::list(parties(row).iter().filter_map(|party| match party {
                    Party::Named(name) => Some(name.as_str()),
                    Party::Record(_) | Party::Undisclosed => None,
                }))
            })
    }

    /// Adds a party: a person, a holder, or a name without a record.
    pub fn party<F>(
        self,
        sources: Sources<'s>,
        [person, holder, name]: [&'static str; 3],
        party: F,
    ) -> Self
    where
        F: for<'r> Fn(&'r R) -> Option<&'r Party> + Copy + 's,
    {
        self.person_or_holder(sources, [person, holder], move |row| match party(row) {
            Some(Party::Record(key)) => Some(&key.value),
            _ => None,
        })
        .text(name, move |row| match party(row) {
            Some(Party::Named(name)) => name.into(),
            _ => Cell::Empty,
        })
    }
}
