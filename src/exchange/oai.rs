//! An OAI-PMH static repository (Open Archives Initiative, specification of 2004-04-23): one file with the record of
//! each sheet as Dublin Core and as LIDO. A gateway that others run answers harvesters from it.
//!
//! It is made where the catalogue has a mail address as contact and a date of edition, both of which the protocol
//! requires. The datestamp of every record is the date of the edition. Records that were withdrawn are absent
//! (`deletedRecord` is `no`, as the specification requires). `baseURL` is the address at the gateway that
//! the setting `oai_gateway` names; without one, that of the file itself.

use url::Url;

use super::format::{Format, Sources};
use super::lido;
use super::xml::Xml;
use crate::model::design::Design;
use crate::model::impression::Impression;
use crate::model::settings::Settings;
use crate::model::vocabulary::List as Vocabulary;
use crate::page::{Address, Here, Subject, dates, imprint, readings, rights, unqualified_state};

pub(super) const FORMAT: Format = Format {
    name: "oai",
    file: "oai.xml",
    folders: &[""],
    media_type: "text/xml",
    relation: "alternate",
    subjects,
    write,
};

/// The namespaces of the file, declared once.
const NAMESPACES: [(&str, &str); 7] = [
    (
        "xmlns",
        "http://www.openarchives.org/OAI/2.0/static-repository",
    ),
    ("xmlns:oai", "http://www.openarchives.org/OAI/2.0/"),
    (
        "xmlns:oai_dc",
        "http://www.openarchives.org/OAI/2.0/oai_dc/",
    ),
    ("xmlns:dc", "http://purl.org/dc/elements/1.1/"),
    ("xmlns:lido", lido::NAMESPACE),
    ("xmlns:xsi", "http://www.w3.org/2001/XMLSchema-instance"),
    (
        "xsi:schemaLocation",
        "http://www.openarchives.org/OAI/2.0/static-repository http://www.openarchives.org/OAI/2.0/static-repository.xsd",
    ),
];

/// A format of metadata: prefix, schema, namespace.
struct Metadata {
    prefix: &'static str,
    schema: &'static str,
    namespace: &'static str,
}

static FORMATS: [Metadata; 2] = [
    Metadata {
        prefix: "oai_dc",
        schema: "http://www.openarchives.org/OAI/2.0/oai_dc.xsd",
        namespace: "http://www.openarchives.org/OAI/2.0/oai_dc/",
    },
    Metadata {
        prefix: "lido",
        schema: lido::SCHEMA,
        namespace: lido::NAMESPACE,
    },
];

/// The most sheets that stand in LIDO too. A record takes 1.1 kB in Dublin Core and some ten in LIDO (the demonstration): with
/// more sheets the file would pass 50 MB, which a gateway reads whole. The same records stand beside the designs.
const MOST_IN_LIDO: usize = 5_000;

/// What the protocol asks of the catalogue.
struct Required<'s> {
    mail: &'s str,
    /// The date of the edition, its first day.
    day: String,
    /// The beginning of every identifier: `oai:HOST:`, and the path of a catalogue that has one.
    scheme: String,
}

impl<'s> Required<'s> {
    /// `None` where something is missing.
    fn of(settings: &'s Settings) -> Option<Required<'s>> {
        let mail = settings.contact.as_deref()?;
        let is_mail = imprint::contact_href(mail).is_some_and(|href| href.starts_with("mailto:"));
        let day = settings.dated.as_ref()?.earliest().day()?;
        let address = Url::parse(&settings.address.value).ok()?;
        let host = address.host_str()?;
        let path = address.path().trim_matches('/');
        let path = if path.is_empty() {
            String::new()
        } else {
            format!("{path}/")
        };
        (is_mail && (0..=9999).contains(&day.year)).then(|| Required {
            mail,
            day: format!("{:04}-{:02}-{:02}", day.year, day.month, day.day),
            scheme: format!("oai:{host}:{path}"),
        })
    }
}

fn subjects(sources: &Sources<'_>) -> Vec<Subject> {
    let has_sheets = sources.public.impressions().next().is_some();
    let required = Required::of(&sources.public.settings).filter(|_| has_sheets);
    required
        .map(|_| Subject::Page(Address::Opening))
        .into_iter()
        .collect()
}

fn write(here: &Here<'_>, _: &Subject) -> Option<Vec<u8>> {
    let required = Required::of(&here.public().settings)?;
    let formats = formats(here.public().impressions().count());
    let mut xml = Xml::document();
    xml.element("Repository", &NAMESPACES, |xml| {
        xml.line();
        identify(xml, here, &required);
        xml.element("ListMetadataFormats", &[], |xml| {
            for format in formats {
                xml.element("oai:metadataFormat", &[], |xml| {
                    xml.text("oai:metadataPrefix", &[], format.prefix);
                    xml.text("oai:schema", &[], format.schema);
                    xml.text("oai:metadataNamespace", &[], format.namespace);
                });
            }
        });
        xml.line();
        for format in formats {
            xml.element("ListRecords", &[("metadataPrefix", format.prefix)], |xml| {
                xml.line();
                records(xml, here, &required, format);
            });
            xml.line();
        }
    });
    xml.line();
    Some(xml.bytes())
}

/// The formats of the records of so many sheets.
fn formats(sheets: usize) -> &'static [Metadata] {
    let all: &[Metadata] = &FORMATS;
    if sheets > MOST_IN_LIDO {
        &all[..1]
    } else {
        all
    }
}

fn identify(xml: &mut Xml, here: &Here<'_>, required: &Required<'_>) {
    let settings = &here.public().settings;
    let gateway = settings.oai_gateway.as_ref();
    let gateway = gateway.map(|gateway| gateway.value.as_str());
    xml.element("Identify", &[], |xml| {
        xml.text("oai:repositoryName", &[], &settings.title);
        xml.text("oai:baseURL", &[], &base_url(&settings.address, gateway));
        xml.text("oai:protocolVersion", &[], "2.0");
        xml.text("oai:adminEmail", &[], required.mail);
        xml.text("oai:earliestDatestamp", &[], &required.day);
        xml.text("oai:deletedRecord", &[], "no");
        xml.text("oai:granularity", &[], "YYYY-MM-DD");
    });
    xml.line();
}

/// The address at which harvesters ask: that of the gateway, a slash, and the address of the file without its scheme
/// (section 2, "Static Repository base URL"); without a gateway the address of the file.
fn base_url(address: &str, gateway: Option<&str>) -> String {
    let file = format!("{}/{}", address.trim_end_matches('/'), FORMAT.file);
    match (gateway, file.split_once("://")) {
        (Some(gateway), Some((_, location))) => format!("{gateway}/{location}"),
        _ => file,
    }
}

fn records(xml: &mut Xml, here: &Here<'_>, required: &Required<'_>, format: &Metadata) {
    let sources = Sources::of(here.book);
    let place = format!("{} {}", format.namespace, format.schema);
    let place = [("xsi:schemaLocation", place.as_str())];
    let namespace = ("xmlns", lido::NAMESPACE);
    for design in sources.designs() {
        for sheet in lido::sheets(&sources, design) {
            xml.element("oai:record", &[], |xml| {
                xml.element("oai:header", &[], |xml| {
                    let identifier = format!("{}impression/{}", required.scheme, sheet.key);
                    xml.text("oai:identifier", &[], &identifier);
                    xml.text("oai:datestamp", &[], &required.day);
                });
                xml.element("oai:metadata", &[], |xml| match format.prefix {
                    "lido" => lido::record(xml, here, design, sheet, &[namespace, place[0]]),
                    _ => xml.element("oai_dc:dc", &place, |xml| {
                        dublin_core(xml, here, design, sheet);
                    }),
                });
            });
            xml.line();
        }
    }
}

/// The record of a sheet in the fifteen elements of Dublin Core.
fn dublin_core(xml: &mut Xml, here: &Here<'_>, design: &Design, sheet: &Impression) {
    let (public, words) = (here.public(), here.words());
    let settings = &public.settings;
    let at = |address: Address| address.absolute(&settings.address.value);
    let number = format!("{} {}", settings.siglum.value, design.sheet_number(sheet));
    let title = here.design_title(design).plain();
    let mut text = |name: &str, text: &str| xml.some_text(name, &[], text);
    text("dc:title", &format!("{title}, {number}"));
    for maker in &design.makers {
        text(
            "dc:creator",
            &here.person_or_holder(&maker.person.value).plain(),
        );
    }
    for subject in &design.subjects {
        text("dc:subject", &here.subject(&subject.value).plain());
    }
    if let Some(reading) = &sheet.identified {
        let state = unqualified_state(here, design, reading).plain();
        let printing = readings::printing_alone(here, design, reading);
        let doubts = readings::doubts(here, design, sheet, reading).plain();
        let parts = [state, printing, doubts];
        let parts: Vec<&str> = parts
            .iter()
            .map(String::as_str)
            .filter(|p| !p.is_empty())
            .collect();
        text("dc:description", &parts.join("; "));
    }
    let date = sheet.sheet.date.own();
    let date = date.or_else(|| design.date.own());
    if let Some(date) = date {
        text("dc:date", &dates::throughout(date, words));
    }
    text("dc:type", "PhysicalObject");
    text("dc:type", words.word("lido-print"));
    for technique in design.technique_of(sheet) {
        text(
            "dc:format",
            &here.term(Vocabulary::Techniques, technique.value.as_str()),
        );
    }
    if let Some(size) = sheet.sheet.size.own() {
        text(
            "dc:format",
            &format!("{size} mm ({})", words.word("of-sheet")),
        );
    }
    text("dc:identifier", &at(Address::Impression(sheet.key.clone())));
    text("dc:identifier", &number);
    for other in &sheet.ids {
        text("dc:identifier", &other.id);
    }
    let accession = sheet.accession_and_part().unwrap_or_default();
    let place = here.whereabouts(sheet);
    let source = [place.as_str(), accession.as_str()];
    let source: Vec<&str> = source.into_iter().filter(|part| !part.is_empty()).collect();
    text("dc:source", &source.join(", "));
    text("dc:relation", &at(Address::Design(design.key.clone())));
    if let Some(web) = &sheet.web {
        text("dc:relation", web);
    }
    if let Some(licence) = &settings.licence {
        text(
            "dc:rights",
            &rights::uri(licence).unwrap_or_else(|| licence.clone()),
        );
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The specification's example of a gateway and a file, with our name of the file.
    #[test]
    fn the_base_address_is_that_of_the_gateway_and_the_file_without_its_scheme() {
        let address = "http://an.oa.org/ma";
        assert_eq!(base_url(address, None), "http://an.oa.org/ma/oai.xml");
        assert_eq!(
            base_url(address, Some("http://gateway.institution.org/oai")),
            "http://gateway.institution.org/oai/an.oa.org/ma/oai.xml"
        );
    }

    #[test]
    fn a_large_catalogue_is_harvested_in_dublin_core_alone() {
        let prefixes = |sheets| {
            formats(sheets)
                .iter()
                .map(|format| format.prefix)
                .collect::<Vec<_>>()
        };
        assert_eq!(prefixes(MOST_IN_LIDO), ["oai_dc", "lido"]);
        assert_eq!(prefixes(MOST_IN_LIDO + 1), ["oai_dc"]);
    }
}
