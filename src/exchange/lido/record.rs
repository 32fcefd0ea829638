//! The record of a sheet: its parts in their order, and of these its kind, rights, the record itself, and pictures.

use super::events::events;
use super::identification::identification;
use super::parts::{LOCAL, URI, appellation, concept, identifier, permanent, term};
use super::relations::relations;
use crate::exchange::xml::Xml;
use crate::model::design::Design;
use crate::model::impression::Impression;
use crate::model::key::{ImpressionKey, PictureKey, PictureOwner};
use crate::model::picture::Picture;
use crate::model::vocabulary::List as Vocabulary;
use crate::page::{Address, Here, dates, rights};

/// The address of prints in the AAT.
const PRINTS: &str = "http://vocab.getty.edu/aat/300041273";

/// What stands in the record of a sheet.
pub(super) fn content(xml: &mut Xml, here: &Here<'_>, design: &Design, sheet: &Impression) {
    let settings = &here.public().settings;
    let records = here.joined().on_page(design, sheet);
    let language = [("xml:lang", settings.language.value.as_str())];
    let address = |key: &ImpressionKey| permanent(here, &Address::Impression(key.clone()));
    xml.text("lidoRecID", &[URI], &address(&sheet.key));
    for record in &records {
        xml.text("objectPublishedID", &[URI], &address(&record.key));
    }
    for other in records.iter().flat_map(|record| &record.ids) {
        identifier(xml, "objectPublishedID", other);
    }
    xml.element("descriptiveMetadata", &language, |xml| {
        classification(xml, here, sheet);
        identification(xml, here, design, &records);
        events(xml, here, design, &records);
        relations(xml, here, design, &records);
    });
    xml.element("administrativeMetadata", &language, |xml| {
        if let Some(rights) = &settings.work_rights {
            xml.element("rightsWorkWrap", &[], |xml| {
                xml.element("rightsWorkSet", &[], |xml| {
                    concept(xml, "rightsType", None, rights);
                });
            });
        }
        record_of(xml, here, sheet, &records);
        resources(xml, here, &records);
    });
}

fn classification(xml: &mut Xml, here: &Here<'_>, sheet: &Impression) {
    xml.element("objectClassificationWrap", &[], |xml| {
        xml.element("objectWorkTypeWrap", &[], |xml| {
            let word = here.words().word("lido-print");
            concept(xml, "objectWorkType", Some(PRINTS), word);
        });
        if let Some(kind) = sheet.kind.own() {
            xml.element("classificationWrap", &[], |xml| {
                let key = kind.as_str();
                term(xml, here, "classification", Vocabulary::Kinds, key);
            });
        }
    });
}

fn record_of(xml: &mut Xml, here: &Here<'_>, sheet: &Impression, records: &[&Impression]) {
    let settings = &here.public().settings;
    xml.element("recordWrap", &[], |xml| {
        xml.text("recordID", &[LOCAL], &sheet.key.to_string());
        let item = here.words().word("lido-item");
        concept(xml, "recordType", None, item);
        xml.element("recordSource", &[], |xml| {
            appellation(xml, "legalBodyName", &settings.title);
            let site = permanent(here, &Address::Opening);
            xml.text("legalBodyWeblink", &[], &site);
        });
        if let Some(licence) = &settings.licence {
            xml.element("recordRights", &[], |xml| {
                let address = rights::uri(licence);
                let name = rights::in_words(licence);
                concept(xml, "rightsType", address.as_deref(), &name);
            });
        }
        xml.element("recordInfoSet", &[], |xml| {
            let page = permanent(here, &Address::Impression(sheet.key.clone()));
            let html = [("lido:formatResource", "text/html")];
            xml.text("recordInfoLink", &html, &page);
            if let Some(dated) = &settings.dated {
                xml.text("recordMetadataDate", &[], dated.as_str());
            }
        });
        for web in records.iter().filter_map(|record| record.web.as_ref()) {
            let kind = [("lido:type", here.words().word("holders-page"))];
            xml.element("recordInfoSet", &kind, |xml| {
                let html = [("lido:formatResource", "text/html")];
                xml.text("recordInfoLink", &html, web);
            });
        }
    });
}

fn resources(xml: &mut Xml, here: &Here<'_>, records: &[&Impression]) {
    let pictures: Vec<_> = records
        .iter()
        .flat_map(|record| record.pictures.iter().map(|picture| (&record.key, picture)))
        .filter_map(|(key, picture)| {
            let key = PictureKey {
                owner: PictureOwner::Impression(key.clone()),
                name: picture.name.value.clone(),
            };
            let published = here.book.pictures.get(&key)?;
            let file = published.sizes.last()?;
            Some((key.to_string(), picture, file.address.as_str()))
        })
        .collect();
    if pictures.is_empty() {
        return;
    }
    xml.element("resourceWrap", &[], |xml| {
        for (key, picture, file) in pictures {
            resource(xml, here, &key, picture, file);
        }
    });
}

fn resource(xml: &mut Xml, here: &Here<'_>, key: &str, picture: &Picture, file: &str) {
    let words = here.words();
    let site = permanent(here, &Address::Opening);
    xml.element("resourceSet", &[], |xml| {
        xml.text("resourceID", &[LOCAL], key);
        xml.element("resourceRepresentation", &[], |xml| {
            let jpeg = [("lido:formatResource", "image/jpeg")];
            xml.text("linkResource", &jpeg, &format!("{site}{file}"));
        });
        let side = words.listed("side", picture.side);
        concept(xml, "resourcePerspective", None, side);
        let caption = picture.caption.as_deref().unwrap_or_default();
        xml.some_text("resourceDescription", &[], caption);
        let light = picture.light.as_deref().unwrap_or_default();
        xml.some_text("resourceDescription", &[], light);
        if let Some(date) = &picture.date {
            xml.element("resourceDateTaken", &[], |xml| {
                let shown = dates::throughout(&date.value, words);
                xml.text("displayDate", &[], &shown);
            });
        }
        if let Some(by) = &picture.by {
            xml.element("resourceSource", &[], |xml| {
                appellation(xml, "legalBodyName", &here.party(by).plain());
            });
        }
        xml.element("rightsResource", &[], |xml| {
            let address = rights::uri(picture.rights_text());
            let name = rights::in_words(picture.rights_text());
            concept(xml, "rightsType", address.as_deref(), &name);
            let credit = picture.credit.as_deref().unwrap_or_default();
            xml.some_text("creditLine", &[], credit);
        });
    });
}
