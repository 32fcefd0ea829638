//! Series: portfolios, parts and sets as published, and other prints that belong together.
//!
//! Here: the record of a series. Which series a design or a printing belongs to, and where in it: [`super::series_place`].

use std::borrow::Cow;

use super::certainty::Statements;
use super::design::{Title, TitleKind};
use super::edtf::Date;
use super::key::Key;
use super::note::Note;
use super::place::{Place, Placed};
use super::standing::RecordStanding;
use super::words::closed_list;

closed_list! {
    /// In what form a series was published.
    SeriesForm {
        /// Together, in a wrapper or case.
        Portfolio = "portfolio",
        /// In parts, one after the other.
        Parts = "parts",
        /// As a set of loose sheets.
        Set = "set",
        /// Bound or mounted in an album.
        Album = "album",
    }
}

/// A series.
#[derive(Clone, Debug, PartialEq)]
pub struct SeriesRecord {
    /// Its key: the name of its file.
    pub key: Key,
    /// Its titles.
    pub titles: Vec<Title>,
    /// The publisher: a person's or holder's key, the catalogue's own view first.
    pub publisher: Statements<Key>,
    /// When it was published, or its prints were made.
    pub date: Statements<Date>,
    /// In what form it was published; `None`: not known, or not published as a whole.
    pub issued: Option<Placed<SeriesForm>>,
    /// How many designs it has, as declared.
    pub number: Statements<u32>,
    /// What is to be said of it in a sentence or two.
    pub remark: Option<String>,
    /// Whether it is accepted, doubtful, rejected or withdrawn.
    pub standing: RecordStanding,
    /// The text beside the record.
    pub note: Option<Note>,
    /// Where it is recorded.
    pub place: Place,
}

impl SeriesRecord {
    /// The title readers see first: the usual one, else the first.
    #[must_use]
    pub fn title(&self) -> Option<&Title> {
        let mut titles = self.titles.iter();
        let usual = titles.find(|title| title.kind == TitleKind::Usual);
        usual.or_else(|| self.titles.first())
    }

    /// Its title as text; its key in words where it has none.
    #[must_use]
    pub fn name(&self) -> Cow<'_, str> {
        match self.title() {
            Some(title) => Cow::Borrowed(&title.text.value),
            None => Cow::Owned(self.key.as_str().replace('-', " ")),
        }
    }
}
