//! The texts of a catalogue that readers see.
//!
//! In: the texts of every record as it may be published. Out: the published ones among them;
//! those of a private holder only where consent covers them.

use crate::model::catalogue::Catalogue;
use crate::model::occurrence::{RecordId, TextAt};

/// Every text that readers see, record by record.
pub(super) fn texts(catalogue: &Catalogue) -> Vec<&TextAt> {
    let records = catalogue.published_occurrences();
    let texts = records.flat_map(|(record, occurrences)| {
        let is_published = move |text: &&TextAt| match record {
            RecordId::Holder(key) => holder_publishes(catalogue, key, text.key),
            _ => true,
        };
        occurrences.texts.iter().filter(is_published)
    });
    texts.collect()
}

/// Whether the text of a holder's key is published: the place and the name where consent covers them,
/// and the rest with the name ([`crate::model::public`]).
fn holder_publishes(catalogue: &Catalogue, holder: &crate::model::key::Key, key: &str) -> bool {
    let Some(holder) = catalogue.published_holder(holder) else {
        return false;
    };
    match key {
        "place" => holder.may_publish("place"),
        _ => holder.may_publish("name") && !holder.name.is_empty(),
    }
}
