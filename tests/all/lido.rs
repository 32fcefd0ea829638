//! The records of sheets in LIDO 1.1 and in the OAI-PMH static repository, held to the rules of their standards.
//!
//! No package registry carries the XML Schema of LIDO. [`ORDER`] has the order of its elements, as far as the records use
//! them, from the schema of the CIDOC Working Group LIDO (version 1.1, CC BY 4.0); two records that this schema accepts
//! are in `tests/checks/`.

use std::collections::{BTreeMap, BTreeSet};

use keyblock::page::Site;
use quick_xml::Reader;
use quick_xml::events::{BytesStart, Event};

use crate::data_tables::SITE;
use crate::pages::{FERRY, page, site_of};

const MINIMAL: &str = include_str!("../checks/lido_minimal.xml");
const PRINT: &str = include_str!("../checks/lido_print.xml");

/// An element of a document; the prefix `lido:` is left out of its name.
#[derive(Clone, Debug, Default)]
struct Element {
    name: String,
    attributes: BTreeMap<String, String>,
    children: Vec<Element>,
    text: String,
}

impl Element {
    /// All elements of a name below it, in order.
    fn all<'e>(&'e self, name: &str) -> Vec<&'e Element> {
        let mut found = Vec::new();
        for child in &self.children {
            if child.name == name {
                found.push(child);
            }
            found.extend(child.all(name));
        }
        found
    }

    /// The first element of a name below it.
    fn first(&self, name: &str) -> &Element {
        let all = self.all(name);
        all.first()
            .unwrap_or_else(|| panic!("no {name} in {}", self.name))
    }

    fn texts(&self, name: &str) -> Vec<&str> {
        self.all(name).iter().map(|e| e.text.as_str()).collect()
    }

    /// Every text below it.
    fn whole_text(&self) -> String {
        let below = self.children.iter().map(Element::whole_text);
        std::iter::once(self.text.trim().to_owned())
            .chain(below)
            .collect()
    }
}

/// The root of a document, with entities resolved.
fn parse(xml: &str) -> Element {
    let mut reader = Reader::from_str(xml);
    reader.config_mut().expand_empty_elements = true;
    let mut open = vec![Element::default()];
    let element = |start: &BytesStart<'_>| Element {
        name: start.name().0.trim_start_matches("lido:").to_owned(),
        attributes: start
            .attributes()
            .map(|attribute| {
                let attribute = attribute.unwrap();
                let key = attribute.key.0.to_owned();
                let value = attribute.value.as_ref();
                (
                    key,
                    quick_xml::escape::unescape(value).unwrap().into_owned(),
                )
            })
            .collect(),
        ..Element::default()
    };
    loop {
        match reader.read_event().unwrap() {
            Event::Start(start) => open.push(element(&start)),
            Event::End(_) => {
                let closed = open.pop().unwrap();
                open.last_mut().unwrap().children.push(closed);
            }
            Event::Text(text) => {
                open.last_mut().unwrap().text.push_str(&text);
            }
            Event::GeneralRef(name) => {
                let text = quick_xml::escape::unescape(&format!("&{};", &*name))
                    .unwrap()
                    .into_owned();
                open.last_mut().unwrap().text.push_str(&text);
            }
            Event::Eof => break,
            _ => {}
        }
    }
    assert_eq!(open.len(), 1);
    open.remove(0).children.remove(0)
}

/// The elements that may stand in an element, in their order; `!` before those that must.
const ORDER: &[(&str, &str)] = &[
    (
        "lido",
        "!lidoRecID objectPublishedID category applicationProfile !descriptiveMetadata !administrativeMetadata",
    ),
    (
        "descriptiveMetadata",
        "!objectClassificationWrap !objectIdentificationWrap eventWrap objectRelationWrap",
    ),
    (
        "objectClassificationWrap",
        "!objectWorkTypeWrap classificationWrap",
    ),
    ("objectWorkTypeWrap", "!objectWorkType"),
    ("objectWorkType", "conceptID !term"),
    ("classificationWrap", "classification"),
    (
        "objectIdentificationWrap",
        "!titleWrap inscriptionsWrap repositoryWrap displayStateEditionWrap objectDescriptionWrap objectMeasurementsWrap objectMaterialsTechWrap",
    ),
    ("titleWrap", "!titleSet"),
    ("titleSet", "!appellationValue sourceAppellation"),
    (
        "inscriptions",
        "inscriptionTranscription inscriptionDescription",
    ),
    (
        "inscriptionDescription",
        "descriptiveNoteID descriptiveNoteValue sourceDescriptiveNote",
    ),
    ("repositoryWrap", "repositorySet"),
    (
        "repositorySet",
        "displayRepository repositoryName workID repositoryLocation sourceRepositorySet",
    ),
    (
        "repositoryName",
        "legalBodyID legalBodyName legalBodyWeblink",
    ),
    (
        "displayStateEditionWrap",
        "displayState displayEdition sourceStateEdition",
    ),
    (
        "objectDescriptionSet",
        "descriptiveNoteID descriptiveNoteValue sourceDescriptiveNote",
    ),
    (
        "objectMeasurementsSet",
        "displayObjectMeasurements objectMeasurements",
    ),
    (
        "objectMeasurements",
        "measurementsSet extentMeasurements qualifierMeasurements formatMeasurements shapeMeasurements scaleMeasurements",
    ),
    (
        "measurementsSet",
        "!measurementType !measurementUnit !measurementValue",
    ),
    (
        "objectMaterialsTechSet",
        "displayMaterialsTech materialsTech",
    ),
    ("eventSet", "displayEvent event"),
    (
        "event",
        "eventID !eventType roleInEvent eventName eventActor culture eventDate periodName eventPlace eventMethod eventMaterialsTech eventObjectMeasurements thingPresent relatedEventSet eventDescriptionSet",
    ),
    ("eventActor", "displayActorInRole actorInRole"),
    (
        "actorInRole",
        "!actor roleActor attributionQualifierActor extentActor sourceActorInRole",
    ),
    (
        "actor",
        "actorID !nameActorSet nationalityActor vitalDatesActor vitalPlaceActor genderActor",
    ),
    ("eventDate", "displayDate date"),
    ("date", "earliestDate latestDate"),
    ("eventPlace", "displayPlace place"),
    ("eventMaterialsTech", "displayMaterialsTech materialsTech"),
    (
        "materialsTech",
        "termMaterialsTech extentMaterialsTech sourceMaterialsTech",
    ),
    (
        "eventDescriptionSet",
        "descriptiveNoteID descriptiveNoteValue sourceDescriptiveNote",
    ),
    ("objectRelationWrap", "subjectWrap relatedWorksWrap"),
    ("subjectSet", "displaySubject subject"),
    (
        "subject",
        "extentSubject subjectConcept subjectActor subjectDate subjectEvent subjectPlace subjectObject",
    ),
    (
        "relatedWorkSet",
        "displayRelatedWork relatedWork relatedWorkRelType sourceRelatedWorkSet",
    ),
    ("relatedWork", "displayObject object"),
    (
        "object",
        "objectWebResource objectID objectType objectName objectNote",
    ),
    (
        "administrativeMetadata",
        "rightsWorkWrap !recordWrap resourceWrap",
    ),
    (
        "recordWrap",
        "!recordID !recordType !recordSource recordRights recordInfoSet collection",
    ),
    ("recordType", "conceptID !term"),
    (
        "recordSource",
        "legalBodyID !legalBodyName legalBodyWeblink",
    ),
    (
        "recordInfoSet",
        "recordInfoID recordInfoLink recordMetadataDate",
    ),
    (
        "resourceSet",
        "resourceID resourceRepresentation resourceType resourceRelType resourcePerspective resourceDescription resourceDateTaken resourceSource rightsResource",
    ),
    (
        "resourceRepresentation",
        "!linkResource resourceMeasurementsSet",
    ),
    (
        "rightsResource",
        "rightsType rightsDate rightsHolder creditLine",
    ),
];

/// Elements that hold a text, and that may stand in several others.
const CONCEPTS: &str = "classification roleActor attributionQualifierActor eventType eventMethod termMaterialsTech \
    subjectConcept relatedWorkRelType rightsType resourcePerspective measurementType measurementUnit extentMeasurements";

/// What a record breaks of the rules.
fn faults(record: &Element) -> Vec<String> {
    let mut faults = Vec::new();
    let name = record.name.clone();
    let order = ORDER.iter().find(|(of, _)| *of == name);
    let allowed: Vec<&str> = match order {
        Some((_, allowed)) => allowed.split(' ').collect(),
        None if CONCEPTS.split(' ').any(|concept| concept == name) => vec!["conceptID", "term"],
        None => Vec::new(),
    };
    let place = |child: &str| {
        allowed
            .iter()
            .position(|a| a.trim_start_matches('!') == child)
    };
    let children: Vec<String> = record
        .children
        .iter()
        .map(|child| child.name.clone())
        .collect();
    if !allowed.is_empty() {
        let places: Vec<Option<usize>> = children.iter().map(|child| place(child)).collect();
        if let Some(at) = places.iter().position(Option::is_none) {
            faults.push(format!("{name} holds {}", children[at]));
        }
        if !places.is_sorted() {
            faults.push(format!("{name} in another order: {children:?}"));
        }
        for must in allowed.iter().filter_map(|a| a.strip_prefix('!')) {
            if !children.iter().any(|child| child == must) {
                faults.push(format!("{name} without {must}"));
            }
        }
    }
    let needs = match name.as_str() {
        "lidoRecID" | "objectPublishedID" | "recordID" | "conceptID" | "actorID"
        | "legalBodyID" | "objectID" | "resourceID" | "eventID" => Some("lido:type"),
        "descriptiveMetadata" | "administrativeMetadata" => Some("xml:lang"),
        _ => None,
    };
    if let Some(needs) = needs.filter(|needs| !record.attributes.contains_key(*needs)) {
        faults.push(format!("{name} without {needs}"));
    }
    if record.whole_text().trim().is_empty() && name != "relatedWorksWrap" {
        faults.push(format!("{name} is empty"));
    }
    faults.extend(record.children.iter().flat_map(self::faults));
    faults
}

/// The rules accept the two records that the schema accepts, and refuse each of them without something required.
#[test]
fn the_rules_accept_sound_records_and_refuse_broken_ones() {
    for sound in [MINIMAL, PRINT] {
        assert_eq!(faults(&parse(sound)), Vec::<String>::new());
    }
    let broken = [
        (
            MINIMAL,
            " lido:type=\"http://terminology.lido-schema.org/lido00100\">https",
            ">https",
        ),
        (
            MINIMAL,
            "<lido:descriptiveMetadata xml:lang=\"en\">",
            "<lido:descriptiveMetadata>",
        ),
        (MINIMAL, "<lido:term>prints (visual works)</lido:term>", ""),
        (
            MINIMAL,
            "<lido:appellationValue>Design 14, impression 7</lido:appellationValue>",
            "",
        ),
        (MINIMAL, "<lido:term>item</lido:term>", ""),
        (
            MINIMAL,
            "<lido:appellationValue>The catalogue of an invented printmaker</lido:appellationValue>",
            "",
        ),
        (
            PRINT,
            "<lido:displayState>second state of three</lido:displayState>",
            "<lido:state>ii</lido:state>",
        ),
        (
            PRINT,
            "<lido:measurementValue>212</lido:measurementValue>",
            "",
        ),
    ];
    for (sound, from, to) in broken {
        assert!(sound.contains(from), "{from}");
        assert!(
            !faults(&parse(&sound.replacen(from, to, 1))).is_empty(),
            "{from}"
        );
    }
}

/// The records of a file beside a design, by the permanent address of the sheet.
fn records(site: &Site, design: &str) -> BTreeMap<String, Element> {
    let file = std::str::from_utf8(&site.files[&format!("design/{design}/lido.xml")]).unwrap();
    let wrap = parse(file);
    assert_eq!(wrap.attributes["xmlns"], "http://www.lido-schema.org");
    let records = wrap.children.into_iter();
    records
        .map(|record| (record.first("lidoRecID").text.clone(), record))
        .collect()
}

/// The designs of the demonstration that have records, without those at former addresses, which have copies.
fn designs() -> impl Iterator<Item = &'static str> {
    let designs = SITE.files.keys().filter_map(|path| {
        let rest = path.strip_prefix("design/")?;
        rest.strip_suffix("/lido.xml")
    });
    designs.filter(|design| {
        let page = page(&SITE, &format!("design/{design}/"));
        !page.contains("http-equiv=\"refresh\"")
    })
}

#[test]
fn every_sheet_of_the_demonstration_has_a_record_that_keeps_the_rules() {
    let mut all = 0;
    for design in designs() {
        for (address, record) in records(&SITE, design) {
            all += 1;
            assert_eq!(faults(&record), Vec::<String>::new(), "{address}");
            let path = address
                .strip_prefix("https://perelaz.example.org/prints/")
                .unwrap();
            assert!(page(&SITE, path).contains("impression"), "{address}");
            // The page of the sheet here, then its holder's own page of it.
            let mut links = vec![address.as_str()];
            if path == "impression/14.3/" {
                links.push("https://kelder-museum.example.org/collection/1987-0462");
            }
            assert_eq!(record.texts("recordInfoLink"), links);
        }
        let link = page(&SITE, &format!("design/{design}/"));
        assert!(link.contains("<a href=\"./lido.xml\""), "{design}");
    }
    assert!(all > 150, "{all}");
}

/// A sheet with everything that a record tells, some of it hostile.
const WHOLE: &str = "\
-- records/designs/1/impressions/2.toml
status = \"located\"
holder = \"museum\"
accession = \"<1962> & 45\"
numbering = \"12/50\"
kind = \"edition\"
identified = { state = \"moonlit\", printing = \"own\", certainty = \"probable\" }
sheet.size = [212, 301.5]
sheet.margins = \"Bell\\u0007 and ]]> <b>bold</b>\"
marks = [{ kind = \"stamp\", text = \"A & B\", medium = \"ink\", side = \"verso\" }]
provenance = [
  { owner = { name = \"B. Buyer\" }, from = \"1931\", to = \"1958\", how = \"purchase\" },
  { agent = { name = \"C. Dealer\" }, from = \"1958\" },
  { owner = \"museum\", from = \"1962\", how = \"gift\" },
]
exhibited = [{ exhibition = \"show\", at = \"no. 7\" }]
maybe_same_as = [{ impression = \"1.1\" }]
-- records/exhibitions.toml
[show]
title = \"The Show\"
venue = \"museum\"
date = \"1970\"
";

#[test]
fn a_record_tells_state_edition_events_and_relations() {
    let site = site_of(&[FERRY, WHOLE]);
    let records = records(&site, "1");
    let record = records
        .iter()
        .find(|(address, _)| address.ends_with("/impression/1.2/"))
        .unwrap()
        .1;
    assert_eq!(faults(record), Vec::<String>::new());
    assert_eq!(record.texts("displayState"), ["ii/ii (probable)"]);
    let edition = record.texts("displayEdition")[0];
    assert!(edition.contains("12/50"), "{edition}");
    assert_eq!(record.texts("workID"), ["<1962> & 45"]);
    assert_eq!(record.texts("measurementValue"), ["212", "301.5"]);
    assert_eq!(record.texts("inscriptionTranscription"), ["12/50", "A & B"]);
    let margins = record.first("objectDescriptionWrap").whole_text();
    assert_eq!(margins, "Bell\u{fffd} and ]]> <b>bold</b>");
    let kinds = record.all("eventType");
    let kinds: Vec<&str> = kinds
        .iter()
        .map(|kind| kind.first("conceptID").text.rsplit('/').next().unwrap())
        .collect();
    assert_eq!(kinds, ["lido00007", "lido00001", "lido00001", "lido00225"]);
    let bought = &record.all("event")[1];
    assert_eq!(bought.first("nameActorSet").whole_text(), "B. Buyer");
    assert_eq!(bought.texts("earliestDate"), ["1931-01-01"]);
    assert_eq!(bought.texts("latestDate"), ["1958-12-31"]);
    let related = record.all("relatedWorkSet");
    let related: Vec<&str> = related
        .iter()
        .map(|set| {
            set.first("objectID")
                .text
                .rsplit_once("org/")
                .map_or("", |(_, path)| path)
        })
        .collect();
    assert!(
        related.iter().any(|path| path.ends_with("design/1/")),
        "{related:?}"
    );
    assert!(
        related.iter().any(|path| path.ends_with("impression/1.1/")),
        "{related:?}"
    );
}

#[test]
fn withdrawn_sheets_have_no_record_and_two_records_of_a_sheet_have_one() {
    let withdrawn = "-- records/designs/1/impressions/3.toml\nstatus = \"located\"\nstanding = \"withdrawn\"\nwhy = \"A copy.\"\n\
        -- records/designs/1/impressions/4.toml\nstatus = \"untraced\"\nsame_as = [{ impression = \"1.1\" }]\n";
    let records = records(&site_of(&[FERRY, withdrawn]), "1");
    let addresses: Vec<&str> = records
        .keys()
        .map(|address| address.rsplit("/impression/").next().unwrap())
        .collect();
    assert_eq!(addresses, ["1.1/"]);
    let record = records.values().next().unwrap();
    let published = record.texts("objectPublishedID");
    assert_eq!(published.len(), 2);
    assert!(published[1].ends_with("/impression/1.4/"));
}

/// The specification of 2004-04-23: the parts of the file, each record once in each format, with one datestamp.
#[test]
fn the_static_repository_has_every_record_in_both_formats() {
    let file = std::str::from_utf8(&SITE.files["oai.xml"]).unwrap();
    let repository = parse(file);
    assert_eq!(repository.name, "Repository");
    assert_eq!(
        repository.attributes["xmlns"],
        "http://www.openarchives.org/OAI/2.0/static-repository"
    );
    let parts: Vec<&str> = repository
        .children
        .iter()
        .map(|part| part.name.as_str())
        .collect();
    assert_eq!(
        parts,
        [
            "Identify",
            "ListMetadataFormats",
            "ListRecords",
            "ListRecords"
        ]
    );
    let identify = &repository.children[0];
    let told: Vec<(&str, &str)> = identify
        .children
        .iter()
        .map(|e| (e.name.as_str(), e.text.as_str()))
        .collect();
    assert_eq!(
        told,
        [
            ("oai:repositoryName", "The Prints of Oryna Perelaz"),
            ("oai:baseURL", "https://perelaz.example.org/prints/oai.xml"),
            ("oai:protocolVersion", "2.0"),
            ("oai:adminEmail", "census@perelaz.example.org"),
            ("oai:earliestDatestamp", "2026-10-15"),
            ("oai:deletedRecord", "no"),
            ("oai:granularity", "YYYY-MM-DD"),
        ]
    );
    assert_eq!(
        repository.children[1].texts("oai:metadataPrefix"),
        ["oai_dc", "lido"]
    );
    let mut identifiers = Vec::new();
    for (list, prefix) in repository.children[2..].iter().zip(["oai_dc", "lido"]) {
        assert_eq!(list.attributes["metadataPrefix"], prefix);
        let found = list.texts("oai:identifier");
        let unique: BTreeSet<&str> = found.iter().copied().collect();
        assert_eq!(unique.len(), found.len());
        let dates: BTreeSet<&str> = list.texts("oai:datestamp").into_iter().collect();
        assert_eq!(dates, BTreeSet::from(["2026-10-15"]));
        identifiers.push(found);
    }
    assert_eq!(identifiers[0], identifiers[1]);
    assert!(identifiers[0].contains(&"oai:perelaz.example.org:prints/impression/7.5"));
    let lido: usize = designs()
        .map(|design| {
            let file = &SITE.files[&format!("design/{design}/lido.xml")];
            parse(std::str::from_utf8(file).unwrap()).children.len()
        })
        .sum();
    assert_eq!(identifiers[1].len(), lido);
    for record in repository.children[3].all("lido") {
        assert_eq!(faults(record), Vec::<String>::new());
    }
    for record in repository.children[2].all("oai_dc:dc") {
        assert!(
            record
                .children
                .iter()
                .all(|element| element.name.starts_with("dc:"))
        );
        assert!(!record.texts("dc:title").is_empty() && !record.texts("dc:identifier").is_empty());
    }
}

/// The protocol requires a mail address and a date; without them there is no file, and the page of the data is silent.
#[test]
fn without_a_mail_address_there_is_no_static_repository() {
    let site = site_of(&[FERRY]);
    assert!(!site.files.contains_key("oai.xml"));
    assert!(!page(&site, "data/").contains("oai.xml"));
    assert!(page(&SITE, "data/").contains("oai.xml"));
}
