//! What a sheet shows and to what it is related: its design, other sheets.

use super::parts::{URI, appellation, concept, permanent, term};
use crate::exchange::xml::Xml;
use crate::model::design::Design;
use crate::model::impression::Impression;
use crate::model::key::ImpressionKey;
use crate::model::vocabulary::List as Vocabulary;
use crate::page::{Address, Here};

pub(super) fn relations(xml: &mut Xml, here: &Here<'_>, design: &Design, records: &[&Impression]) {
    let words = here.words();
    xml.element("objectRelationWrap", &[], |xml| {
        if !design.subjects.is_empty() {
            xml.element("subjectWrap", &[], |xml| {
                for subject in &design.subjects {
                    xml.element("subjectSet", &[], |xml| {
                        xml.element("subject", &[], |xml| {
                            let key = subject.value.as_str();
                            term(xml, here, "subjectConcept", Vocabulary::Subjects, key);
                        });
                    });
                }
            });
        }
        xml.element("relatedWorksWrap", &[], |xml| {
            let entry = Address::Design(design.key.clone());
            let name = here.design_title(design).plain();
            related(xml, here, &entry, &name, words.word("lido-impression-of"));
            for (key, relation) in records.iter().flat_map(|record| other_sheets(record)) {
                let address = Address::Impression(here.joined().page_of(key).clone());
                let name = here.sheet_number(key);
                related(xml, here, &address, &name, words.word(relation));
            }
        });
    });
}

/// The other sheets that a record names, with the word for the relation.
fn other_sheets(record: &Impression) -> Vec<(&ImpressionKey, &'static str)> {
    let mut all = Vec::new();
    let taken_from = record.taken_from.iter();
    all.extend(taken_from.map(|key| (&key.value, "lido-counterproof-of")));
    let maybe = record.maybe_same_as.iter();
    all.extend(maybe.map(|other| (&other.impression.value, "lido-maybe-same")));
    let sharing = record.shares_sheet.iter();
    all.extend(sharing.map(|key| (&key.value, "lido-shares-sheet")));
    let set = record.goes_with.iter();
    all.extend(set.map(|key| (&key.value, "lido-goes-with")));
    all
}

fn related(xml: &mut Xml, here: &Here<'_>, address: &Address, name: &str, relation: &str) {
    xml.element("relatedWorkSet", &[], |xml| {
        xml.element("relatedWork", &[], |xml| {
            xml.element("object", &[], |xml| {
                let address = permanent(here, address);
                xml.text("objectID", &[URI], &address);
                appellation(xml, "objectName", name);
            });
        });
        concept(xml, "relatedWorkRelType", None, relation);
    });
}
