//! The record of a sheet: what it is, where it is, its state and printing, sizes, marks, relations, rights, pictures.

use super::events::{self, printing};
use super::parts::{LOCAL, URI, appellation, concept, identifier, measured, note, permanent, term};
use crate::exchange::xml::Xml;
use crate::model::design::{Design, TitleKind};
use crate::model::impression::{Impression, Status};
use crate::model::key::{ImpressionKey, Key, PictureKey, PictureOwner};
use crate::model::mark::Mark;
use crate::model::picture::Picture;
use crate::model::register::Subject;
use crate::model::vocabulary::List as Vocabulary;
use crate::model::words::Standing;
use crate::page::{
    Address, Here, dates, imprint, papers, readings, rights, standing_note, unqualified_state,
};

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
        events::events(xml, here, design, &records);
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

fn identification(xml: &mut Xml, here: &Here<'_>, design: &Design, records: &[&Impression]) {
    xml.element("objectIdentificationWrap", &[], |xml| {
        titles(xml, here, design);
        inscriptions(xml, here, records);
        repositories(xml, here, records);
        if let Some(sheet) = records.first() {
            state_and_edition(xml, here, design, sheet);
        }
        descriptions(xml, here, design, records);
        measurements(xml, here, records);
        materials(xml, here, records);
    });
}

fn titles(xml: &mut Xml, here: &Here<'_>, design: &Design) {
    xml.element("titleWrap", &[], |xml| {
        let preferred = design.title();
        for title in &design.titles {
            let is_preferred = preferred.is_some_and(|first| std::ptr::eq(first, title));
            let pref = if is_preferred {
                "preferred"
            } else {
                "alternate"
            };
            let mut of_text = Vec::new();
            of_text.extend(title.lang.as_ref().map(|lang| ("xml:lang", lang.as_str())));
            let mut of_set = vec![("lido:pref", pref)];
            if title.kind != TitleKind::Usual {
                of_set.push(("lido:type", here.words().listed("title-kind", title.kind)));
            }
            xml.element("titleSet", &of_set, |xml| {
                xml.text("appellationValue", &of_text, &title.text);
            });
        }
        if design.titles.is_empty() {
            appellation(xml, "titleSet", &design.number);
        }
    });
}

fn inscriptions(xml: &mut Xml, here: &Here<'_>, records: &[&Impression]) {
    let words = here.words();
    let numbers = records
        .iter()
        .filter_map(|record| record.numbering.as_ref());
    let numbers: Vec<_> = numbers.collect();
    let marks: Vec<_> = records.iter().flat_map(|record| &record.marks).collect();
    if numbers.is_empty() && marks.is_empty() {
        return;
    }
    xml.element("inscriptionsWrap", &[], |xml| {
        for number in numbers {
            let kind = [("lido:type", words.word("lido-numbering"))];
            xml.element("inscriptions", &kind, |xml| {
                xml.text("inscriptionTranscription", &[], number);
            });
        }
        for mark in marks {
            inscription(xml, here, mark);
        }
    });
}

fn inscription(xml: &mut Xml, here: &Here<'_>, mark: &Mark) {
    let words = here.words();
    let mark = here.public().described_mark(mark);
    let kind = mark
        .kind
        .as_ref()
        .map(|kind| words.listed("mark", kind.value));
    let kind: Vec<_> = kind.map(|kind| ("lido:type", kind)).into_iter().collect();
    let name = |key: Option<&Key>| key.map(|key| here.person_or_holder(key).plain());
    let described = [
        mark.medium.clone(),
        mark.colour.clone(),
        mark.at.clone(),
        mark.side.map(|side| words.listed("side", side).to_owned()),
        name(mark.whose.as_ref().map(|whose| &whose.value)),
        mark.number.clone(),
        mark.note.clone(),
    ];
    let described: Vec<String> = described.into_iter().flatten().collect();
    xml.element("inscriptions", &kind, |xml| {
        if let Some(text) = &mark.text {
            xml.some_text("inscriptionTranscription", &[], text);
        }
        note(xml, "inscriptionDescription", &[], &described.join(", "));
    });
}

fn repositories(xml: &mut Xml, here: &Here<'_>, records: &[&Impression]) {
    let current = records.first().filter(|sheet| sheet.holder.is_some());
    let former: Vec<_> = records
        .iter()
        .flat_map(|record| &record.former_accessions)
        .collect();
    if current.is_none() && former.is_empty() {
        return;
    }
    xml.element("repositoryWrap", &[], |xml| {
        if let Some(sheet) = current {
            let kind = match sheet.status.value {
                Status::Located => "current",
                Status::Untraced | Status::Destroyed | Status::Stolen => "former",
            };
            let holder = sheet.holder.as_ref().map(|holder| &holder.value);
            let number = sheet.accession_and_part();
            repository(xml, here, kind, holder, number.as_deref());
        }
        for former in former {
            let holder = former.holder.as_ref().map(|holder| &holder.value);
            repository(xml, here, "former", holder, Some(&former.number));
        }
    });
}

fn repository(
    xml: &mut Xml,
    here: &Here<'_>,
    kind: &str,
    holder: Option<&Key>,
    number: Option<&str>,
) {
    let holder = holder.and_then(|key| here.public().holders.get(key));
    xml.element("repositorySet", &[("lido:type", kind)], |xml| {
        if let Some(holder) = holder {
            xml.element("repositoryName", &[], |xml| {
                let address = permanent(here, &Address::Holder(holder.key.clone()));
                xml.text("legalBodyID", &[URI], &address);
                if let Some(isil) = &holder.isil {
                    xml.text("legalBodyID", &[LOCAL, ("lido:source", "ISIL")], isil);
                }
                let name = here.holder_name(holder);
                appellation(xml, "legalBodyName", &name);
            });
        }
        xml.some_text("workID", &[], number.unwrap_or_default());
        let town = holder.and_then(|holder| holder.town.as_ref());
        if let Some(town) = town {
            xml.element("repositoryLocation", &[], |xml| {
                appellation(xml, "namePlaceSet", town);
            });
        }
    });
}

/// The state, the printing and the number in the edition, as this edition of the catalogue reads them.
fn state_and_edition(xml: &mut Xml, here: &Here<'_>, design: &Design, sheet: &Impression) {
    let words = here.words();
    let Some(reading) = &sheet.identified else {
        return;
    };
    let doubts = readings::doubts(here, design, sheet, reading).plain();
    let in_doubt = |text: String| match (text.as_str(), doubts.as_str()) {
        ("", _) | (_, "") => text,
        _ => format!("{text} {doubts}"),
    };
    let states = unqualified_state(here, design, reading).plain();
    let declared = printing(design, sheet).and_then(|printing| printing.edition.own());
    let edition = [
        readings::printing_alone(here, design, reading),
        sheet
            .numbering
            .as_ref()
            .map_or_else(String::new, |n| n.value.clone()),
        declared.map_or_else(String::new, |n| {
            words.count("lido-declared", usize::try_from(*n).unwrap_or(usize::MAX))
        }),
    ];
    let edition: Vec<&str> = edition
        .iter()
        .map(String::as_str)
        .filter(|t| !t.is_empty())
        .collect();
    let settings = &here.public().settings;
    let source = format!("{} {}", settings.siglum.value, design.number);
    let source = match imprint::edition(here.book) {
        edition if edition.is_empty() => source,
        edition => format!("{source}, {edition}"),
    };
    xml.element("displayStateEditionWrap", &[], |xml| {
        xml.some_text("displayState", &[], &in_doubt(states));
        xml.some_text("displayEdition", &[], &in_doubt(edition.join(", ")));
        xml.text("sourceStateEdition", &[], &source);
    });
}

fn descriptions(xml: &mut Xml, here: &Here<'_>, design: &Design, records: &[&Impression]) {
    let words = here.words();
    let stands = records.iter().map(|record| &record.standing);
    let stands = std::iter::once(&design.standing).chain(stands);
    let stands = stands.filter(|stands| stands.standing != Standing::Accepted);
    let stands: Vec<String> = stands
        .filter_map(|stands| Some(standing_note::note(here, stands)?.plain()))
        .collect();
    let conditions = records.iter().flat_map(|record| {
        let notes = papers::condition(here, record);
        notes.into_iter().map(|note| ("condition", note.plain()))
    });
    let written = records.iter().flat_map(|record| {
        let margins = record.sheet.margins.as_deref();
        let line = record
            .provenance_line
            .as_ref()
            .map(|line| line.value.as_str());
        [
            ("lido-margins", margins),
            (
                "lido-sizes-given-as",
                record.sheet.measuring.said.as_deref(),
            ),
            ("provenance", line),
        ]
    });
    let written = written.filter_map(|(kind, text)| {
        let text = text.filter(|text| !text.is_empty())?;
        Some((kind, text.to_owned()))
    });
    let written: Vec<(&str, String)> = conditions.chain(written).collect();
    if written.is_empty() && stands.is_empty() {
        return;
    }
    xml.element("objectDescriptionWrap", &[], |xml| {
        for text in &stands {
            let kind = [("lido:type", words.listed("subject", Subject::Standing))];
            note(xml, "objectDescriptionSet", &kind, text);
        }
        for (kind, text) in written {
            let kind = [("lido:type", words.word(kind))];
            note(xml, "objectDescriptionSet", &kind, &text);
        }
    });
}

fn measurements(xml: &mut Xml, here: &Here<'_>, records: &[&Impression]) {
    let sizes: Vec<_> = records
        .iter()
        .flat_map(|record| {
            let sizes = papers::sizes(&record.sheet).into_iter();
            sizes.filter_map(|(size, of)| Some((of, size.own()?)))
        })
        .collect();
    if sizes.is_empty() {
        return;
    }
    xml.element("objectMeasurementsWrap", &[], |xml| {
        for (of, size) in sizes {
            measured(xml, here, size, here.words().word(of));
        }
    });
}

fn materials(xml: &mut Xml, here: &Here<'_>, records: &[&Impression]) {
    let papers = records
        .iter()
        .filter_map(|record| record.sheet.paper.as_ref());
    let papers: Vec<_> = papers.collect();
    let watermarks = records.iter().flat_map(|record| {
        let watermarks = record.sheet.watermark.iter();
        watermarks.map(|watermark| {
            let shown = papers::watermark(here, watermark);
            here.words()
                .html("watermark", None, &[("watermark", &shown)])
        })
    });
    let measured = records.iter().flat_map(|record| {
        let sheet = &record.sheet;
        [
            papers::colour(sheet),
            papers::chain_lines(here, sheet),
            papers::laid_lines(here, sheet),
            papers::thickness(here, sheet),
            papers::mounted_on(here, sheet),
        ]
    });
    let told: Vec<String> = measured
        .chain(watermarks)
        .filter_map(|told| Some(told.some()?.plain()))
        .collect();
    if papers.is_empty() && told.is_empty() {
        return;
    }
    xml.element("objectMaterialsTechWrap", &[], |xml| {
        for paper in papers {
            xml.element("objectMaterialsTechSet", &[], |xml| {
                xml.element("materialsTech", &[], |xml| {
                    let key = paper.value.as_str();
                    term(xml, here, "termMaterialsTech", Vocabulary::Papers, key);
                });
            });
        }
        for shown in told {
            xml.element("objectMaterialsTechSet", &[], |xml| {
                xml.text("displayMaterialsTech", &[], &shown);
            });
        }
    });
}

fn relations(xml: &mut Xml, here: &Here<'_>, design: &Design, records: &[&Impression]) {
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
