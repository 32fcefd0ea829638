//! Records without what they keep private, read a second time where a file lists private fields.
//!
//! [`super::catalogue::Catalogue`] has them beside the full records; [`super::public`] puts them in their place.

use std::collections::BTreeMap;

use super::design::Design;
use super::document::Document;
use super::exhibition::Exhibition;
use super::holder::Holder;
use super::impression::Impression;
use super::key::{ImpressionKey, Key};
use super::mark::MarkRecord;
use super::occurrence::{Occurrences, RecordId};
use super::person::Person;
use super::place::Place;
use super::series::SeriesRecord;
use super::settings::Settings;

/// Records as they may be published, where that is less than what is recorded.
#[derive(Clone, Debug, Default)]
pub struct Redacted {
    /// The settings.
    pub settings: Option<Settings>,
    /// Designs (without their impressions).
    pub designs: BTreeMap<Key, Design>,
    /// Impressions.
    pub impressions: BTreeMap<ImpressionKey, Impression>,
    /// Holders.
    pub holders: BTreeMap<Key, Holder>,
    /// People.
    pub people: BTreeMap<Key, Person>,
    /// Exhibitions.
    pub exhibitions: BTreeMap<Key, Exhibition>,
    /// Marks.
    pub marks: BTreeMap<Key, MarkRecord>,
    /// Documents.
    pub documents: BTreeMap<Key, Document>,
    /// Series.
    pub series: BTreeMap<Key, SeriesRecord>,
    /// The texts and references of records that keep something from readers: a field listed as
    /// private, or a table marked `publish = false`.
    pub occurrences: BTreeMap<RecordId, Occurrences>,
    /// Every text that a record keeps private, with its place. None of them may appear in published
    /// text.
    pub texts: Vec<PrivateText>,
}

impl Redacted {
    /// Whether no record keeps anything from readers by a list of private fields, or in a table marked
    /// `publish = false`.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        let Redacted {
            settings,
            designs,
            impressions,
            holders,
            people,
            exhibitions,
            marks,
            documents,
            series,
            occurrences,
            texts,
        } = self;
        settings.is_none()
            && designs.is_empty()
            && impressions.is_empty()
            && holders.is_empty()
            && people.is_empty()
            && exhibitions.is_empty()
            && marks.is_empty()
            && documents.is_empty()
            && series.is_empty()
            && occurrences.is_empty()
            && texts.is_empty()
    }
}

/// A text that must not be published, and where it is recorded.
#[derive(Clone, Debug, PartialEq)]
pub struct PrivateText {
    /// The text.
    pub text: String,
    /// Where it is recorded.
    pub place: Place,
}
