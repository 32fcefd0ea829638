//! Reports pictures whose rights nothing states: neither their own record, nor a default of the holder or the catalogue.

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::finding::{Finding, Severity};
use crate::model::key::{Key, PictureOwner};

/// One finding for each picture without rights. Where a record that may state them could not be read, its pictures are
/// not judged.
pub(crate) fn unstated(catalogue: &Catalogue, read: &[Finding]) -> Vec<Finding> {
    let is_faulty = |file| {
        let faults = read.iter().filter(|finding| finding.at.place.file == file);
        faults
            .into_iter()
            .any(|f| f.code.severity() == Severity::Error)
    };
    if is_faulty(catalogue.settings.place.file) {
        return Vec::new();
    }
    let mut findings = Vec::new();
    for (key, picture) in catalogue.pictures() {
        if catalogue
            .picture_terms(&key.owner, picture)
            .rights
            .is_some()
        {
            continue;
        }
        let holder = keeper(catalogue, &key.owner);
        let of_holder = holder.map(|key| catalogue.holders.get(key));
        let is_unjudged = match of_holder {
            Some(Some(holder)) => is_faulty(holder.place.file),
            // A holder without a record has a finding of its own.
            Some(None) => true,
            None => false,
        };
        if is_unjudged {
            continue;
        }
        let rights = "an SPDX or rightsstatements.org identifier, or free text";
        let help = if catalogue.is_in_private_hands(&key.owner) {
            format!(
                "add `rights`: {rights}; the sheet is in private hands, so no default reaches its pictures, unless its owner's own record has one and a consent that covers `pictures`"
            )
        } else {
            let holder = holder.map(|key| format!("in records/holders/{key}.toml or "));
            let holder = holder.unwrap_or_default();
            format!(
                "add `rights`: {rights}; or state them once for all pictures, as `rights` under [pictures] {holder}in catalogue.toml"
            )
        };
        let message = "a picture needs `rights`";
        findings.push(Finding::new(Code::KeyMissing, picture.place, message).help(help));
    }
    findings
}

fn keeper<'a>(catalogue: &'a Catalogue, owner: &PictureOwner) -> Option<&'a Key> {
    let holder = match owner {
        PictureOwner::Design(_) => None,
        PictureOwner::Impression(key) => catalogue.impression(key)?.holder.as_ref(),
        PictureOwner::Document(key) => catalogue.documents.get(key)?.holder.as_ref(),
    };
    holder.map(|holder| &holder.value)
}
