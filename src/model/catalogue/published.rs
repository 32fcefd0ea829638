//! Single records as readers may see them: without the fields that a record keeps private.
//!
//! Findings need these beside the full records, and so does the work on pictures, which begins before anything is
//! concealed. Whatever is computed for readers is made from [`crate::public::Concealed`].

use super::{Catalogue, pictures_of_design, pictures_of_document, pictures_of_sheet};
use crate::design::Design;
use crate::document::Document;
use crate::exhibition::Exhibition;
use crate::holder::Holder;
use crate::impression::Impression;
use crate::key::{Key, PictureKey};
use crate::mark::MarkRecord;
use crate::occurrence::{Occurrences, RecordId};
use crate::person::Person;
use crate::picture::Picture;
use crate::series::SeriesRecord;
use crate::settings::Settings;

impl Catalogue {
    /// The settings without their private fields.
    #[must_use]
    pub fn published_settings(&self) -> &Settings {
        self.redacted.settings.as_ref().unwrap_or(&self.settings)
    }

    /// An impression without its private fields.
    #[must_use]
    pub fn published_impression<'a>(&'a self, impression: &'a Impression) -> &'a Impression {
        self.redacted
            .impressions
            .get(&impression.key)
            .unwrap_or(impression)
    }

    /// A design without its private fields. Its impressions are not filtered, and those of a
    /// redacted design are not there: take them from the design itself.
    fn published_design<'a>(&'a self, design: &'a Design) -> &'a Design {
        self.redacted.designs.get(&design.key).unwrap_or(design)
    }

    /// Every picture that may be published, with its key: those of [`crate::public::Concealed`].
    pub fn published_pictures(&self) -> impl Iterator<Item = (PictureKey, &Picture)> {
        let all = self.designs.values().flat_map(|design| {
            let sheets = design.impressions.values();
            let published = sheets
                .map(|sheet| self.published_impression(sheet))
                .filter(|sheet| sheet.publish);
            pictures_of_design(self.published_design(design))
                .chain(published.flat_map(pictures_of_sheet))
        });
        let documents = self.documents.keys();
        let documents = documents.filter_map(|key| self.published_document(key));
        all.chain(documents.flat_map(pictures_of_document))
            .filter(|(key, picture)| self.publishes(&key.owner, picture))
    }

    /// The texts and references that may be published, record by record: none of an impression or
    /// picture marked `publish = false`. A private holder's name is still among them; whether it may
    /// be published depends on consent ([`Holder::may_publish`]).
    pub fn published_occurrences(&self) -> impl Iterator<Item = (&RecordId, &Occurrences)> {
        self.occurrences.iter().map(|(record, recorded)| {
            let redacted = self.redacted.occurrences.get(record);
            (record, redacted.unwrap_or(recorded))
        })
    }

    /// A holder without its private fields.
    #[must_use]
    pub fn published_holder(&self, key: &Key) -> Option<&Holder> {
        let recorded = self.holders.get(key)?;
        Some(self.redacted.holders.get(key).unwrap_or(recorded))
    }

    /// A person without their private fields.
    #[must_use]
    pub fn published_person(&self, key: &Key) -> Option<&Person> {
        let recorded = self.people.get(key)?;
        Some(self.redacted.people.get(key).unwrap_or(recorded))
    }

    /// A mark without its private fields.
    #[must_use]
    pub fn published_mark(&self, key: &Key) -> Option<&MarkRecord> {
        let recorded = self.marks.get(key)?;
        Some(self.redacted.marks.get(key).unwrap_or(recorded))
    }

    /// A document without its private fields; `None` also where it is not published.
    #[must_use]
    pub fn published_document(&self, key: &Key) -> Option<&Document> {
        let recorded = self.documents.get(key)?;
        let published = self.redacted.documents.get(key).unwrap_or(recorded);
        published.publish.then_some(published)
    }

    /// A series without its private fields.
    #[must_use]
    pub fn published_series(&self, key: &Key) -> Option<&SeriesRecord> {
        let recorded = self.series.get(key)?;
        Some(self.redacted.series.get(key).unwrap_or(recorded))
    }

    /// An exhibition without its private fields.
    #[must_use]
    pub fn published_exhibition(&self, key: &Key) -> Option<&Exhibition> {
        let recorded = self.exhibitions.get(key)?;
        Some(self.redacted.exhibitions.get(key).unwrap_or(recorded))
    }
}
