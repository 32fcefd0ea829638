//! What identifies a sheet: its titles, marks, holders, state and edition, description, sizes and paper.

use super::events::printing;
use super::parts::{LOCAL, URI, appellation, measured, note, permanent, term};
use crate::exchange::xml::Xml;
use crate::model::design::{Design, TitleKind};
use crate::model::impression::{Impression, Status};
use crate::model::key::Key;
use crate::model::mark::Mark;
use crate::model::register::Subject;
use crate::model::vocabulary::List as Vocabulary;
use crate::model::words::Standing;
use crate::page::{Address, Here, imprint, papers, readings, standing_note, unqualified_state};

pub(super) fn identification(
    xml: &mut Xml,
    here: &Here<'_>,
    design: &Design,
    records: &[&Impression],
) {
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
