//! Records of LIDO.

use super::*;
use crate::exchange::intake::reading::sizes::{Assumed, sizes};
use crate::exchange::intake::reading::{credit, dates, makers};

/// A print in an invented museum's hand. Elements and their order: lido-v1.1.xsd (`tests/checks/lido_elements.csv`).
const SLUICE: &str = r#"<?xml version="1.0" encoding="UTF-8"?>
<lido:lidoWrap xmlns:lido="http://www.lido-schema.org"><lido:lido>
 <lido:lidoRecID lido:type="http://terminology.lido-schema.org/lido00100" lido:source="Hafenmuseum">HM-obj-1</lido:lidoRecID>
 <lido:descriptiveMetadata xml:lang="de">
  <lido:objectClassificationWrap><lido:objectWorkTypeWrap><lido:objectWorkType>
   <lido:conceptID lido:type="http://terminology.lido-schema.org/lido00099">http://vocab.getty.edu/aat/300041273</lido:conceptID>
   <lido:term xml:lang="de">Druckgraphik</lido:term><lido:term xml:lang="en">print</lido:term>
  </lido:objectWorkType></lido:objectWorkTypeWrap></lido:objectClassificationWrap>
  <lido:objectIdentificationWrap>
   <lido:titleWrap>
    <lido:titleSet><lido:appellationValue xml:lang="de" lido:pref="preferred">Schleuse &amp; Kai</lido:appellationValue></lido:titleSet>
    <lido:titleSet lido:type="Alter Titel"><lido:appellationValue>Die Schleuse</lido:appellationValue></lido:titleSet>
   </lido:titleWrap>
   <lido:inscriptionsWrap>
    <lido:inscriptions lido:type="Signatur"><lido:inscriptionTranscription>Brook 1912</lido:inscriptionTranscription>
     <lido:inscriptionDescription><lido:descriptiveNoteValue>Bleistift, unten rechts</lido:descriptiveNoteValue></lido:inscriptionDescription></lido:inscriptions>
   </lido:inscriptionsWrap>
   <lido:repositoryWrap>
    <lido:repositorySet lido:type="current">
     <lido:repositoryName><lido:legalBodyID lido:type="URI" lido:source="ISIL">XX-Hafen</lido:legalBodyID>
      <lido:legalBodyName><lido:appellationValue>Hafenmuseum</lido:appellationValue></lido:legalBodyName></lido:repositoryName>
     <lido:workID lido:type="Inventarnummer">HM 1970.12</lido:workID>
    </lido:repositorySet>
    <lido:repositorySet lido:type="former">
     <lido:repositoryName><lido:legalBodyName><lido:appellationValue>Sammlung Mill</lido:appellationValue></lido:legalBodyName></lido:repositoryName>
     <lido:workID>M 7</lido:workID>
    </lido:repositorySet>
   </lido:repositoryWrap>
   <lido:displayStateEditionWrap><lido:displayState>ii/iii</lido:displayState><lido:displayEdition>12/50</lido:displayEdition></lido:displayStateEditionWrap>
   <lido:objectDescriptionWrap>
    <lido:objectDescriptionSet lido:type="Zustand"><lido:descriptiveNoteValue>fleckig</lido:descriptiveNoteValue></lido:objectDescriptionSet>
   </lido:objectDescriptionWrap>
   <lido:objectMeasurementsWrap><lido:objectMeasurementsSet>
    <lido:objectMeasurements>
     <lido:measurementsSet><lido:measurementType><lido:term>Höhe</lido:term></lido:measurementType><lido:measurementUnit><lido:term>mm</lido:term></lido:measurementUnit><lido:measurementValue>241</lido:measurementValue></lido:measurementsSet>
     <lido:measurementsSet><lido:measurementType><lido:term>Breite</lido:term></lido:measurementType><lido:measurementUnit><lido:term>mm</lido:term></lido:measurementUnit><lido:measurementValue>178</lido:measurementValue></lido:measurementsSet>
     <lido:extentMeasurements><lido:term>Platte</lido:term></lido:extentMeasurements>
    </lido:objectMeasurements></lido:objectMeasurementsSet>
    <lido:objectMeasurementsSet><lido:displayObjectMeasurements>Blatt: 32 x 25 cm</lido:displayObjectMeasurements>
    <lido:objectMeasurements><lido:measurementsSet><lido:measurementType><lido:term>Höhe</lido:term></lido:measurementType><lido:measurementUnit><lido:term>cm</lido:term></lido:measurementUnit><lido:measurementValue>32</lido:measurementValue></lido:measurementsSet></lido:objectMeasurements>
   </lido:objectMeasurementsSet></lido:objectMeasurementsWrap>
  </lido:objectIdentificationWrap>
  <lido:eventWrap>
   <lido:eventSet><lido:event>
    <lido:eventType><lido:conceptID lido:type="URI">http://terminology.lido-schema.org/lido00007</lido:conceptID><lido:term>Herstellung</lido:term></lido:eventType>
    <lido:eventActor><lido:displayActorInRole>Brook, Ada (1880-1950), Künstlerin</lido:displayActorInRole><lido:actorInRole>
     <lido:actor lido:type="person"><lido:actorID lido:type="URI">https://example.org/brook</lido:actorID>
      <lido:nameActorSet><lido:appellationValue lido:pref="alternate">A. B.</lido:appellationValue><lido:appellationValue lido:pref="preferred">Brook, Ada</lido:appellationValue></lido:nameActorSet></lido:actor>
     <lido:roleActor><lido:term>Künstlerin</lido:term></lido:roleActor></lido:actorInRole></lido:eventActor>
    <lido:eventActor><lido:actorInRole><lido:actor><lido:nameActorSet><lido:appellationValue>Lock, D.</lido:appellationValue></lido:nameActorSet></lido:actor>
     <lido:roleActor><lido:term>Drucker</lido:term></lido:roleActor></lido:actorInRole></lido:eventActor>
    <lido:eventDate><lido:displayDate>um 1912</lido:displayDate><lido:date><lido:earliestDate>1907</lido:earliestDate><lido:latestDate>1917</lido:latestDate></lido:date></lido:eventDate>
    <lido:eventMaterialsTech><lido:materialsTech>
     <lido:termMaterialsTech lido:type="technique"><lido:term>Radierung</lido:term></lido:termMaterialsTech>
     <lido:termMaterialsTech lido:type="material"><lido:term>Bütten</lido:term></lido:termMaterialsTech></lido:materialsTech></lido:eventMaterialsTech>
   </lido:event></lido:eventSet>
   <lido:eventSet><lido:event>
    <lido:eventType><lido:term>Veröffentlichung</lido:term></lido:eventType>
    <lido:eventActor><lido:actorInRole><lido:actor><lido:nameActorSet><lido:appellationValue>Weir &amp; Co.</lido:appellationValue></lido:nameActorSet></lido:actor></lido:actorInRole></lido:eventActor>
    <lido:eventDate><lido:date><lido:earliestDate>1914</lido:earliestDate><lido:latestDate>1914</lido:latestDate></lido:date></lido:eventDate>
   </lido:event></lido:eventSet>
   <lido:eventSet><lido:event>
    <lido:eventType><lido:conceptID lido:type="URI">http://terminology.lido-schema.org/lido00001</lido:conceptID></lido:eventType>
    <lido:eventActor><lido:actorInRole><lido:actor><lido:nameActorSet><lido:appellationValue>C. Mill</lido:appellationValue></lido:nameActorSet></lido:actor><lido:roleActor><lido:term>Schenker</lido:term></lido:roleActor></lido:actorInRole></lido:eventActor>
    <lido:eventDate><lido:displayDate>1970</lido:displayDate></lido:eventDate>
    <lido:eventMethod><lido:term>gift</lido:term></lido:eventMethod>
   </lido:event></lido:eventSet>
  </lido:eventWrap>
 </lido:descriptiveMetadata>
 <lido:administrativeMetadata xml:lang="de">
  <lido:rightsWorkWrap><lido:rightsWorkSet><lido:creditLine>Schenkung C. Mill, 1970</lido:creditLine></lido:rightsWorkSet></lido:rightsWorkWrap>
  <lido:recordWrap><lido:recordID lido:type="local">1</lido:recordID><lido:recordType><lido:term>item</lido:term></lido:recordType>
   <lido:recordSource><lido:legalBodyName><lido:appellationValue>Hafenmuseum</lido:appellationValue></lido:legalBodyName></lido:recordSource>
   <lido:recordInfoSet><lido:recordInfoLink>https://example.org/1</lido:recordInfoLink></lido:recordInfoSet></lido:recordWrap>
  <lido:resourceWrap><lido:resourceSet>
   <lido:resourceRepresentation lido:type="image_thumb"><lido:linkResource>https://example.org/1-small.jpg</lido:linkResource></lido:resourceRepresentation>
   <lido:resourceRepresentation lido:type="image_master"><lido:linkResource lido:formatResource="image/jpeg">https://example.org/1.jpg</lido:linkResource></lido:resourceRepresentation>
  </lido:resourceSet></lido:resourceWrap>
 </lido:administrativeMetadata>
</lido:lido></lido:lidoWrap>"#;

#[test]
fn a_record_is_a_row_with_a_column_for_each_path() {
    let table = one(SLUICE.as_bytes());
    assert_eq!(table.kind, TableKind::Lido);
    insta::assert_snapshot!(told(&table, 0).join("\n"), @r#"
    lidoRecID (id): HM-obj-1
    objectWorkType/conceptID: http://vocab.getty.edu/aat/300041273
    objectWorkType@de: Druckgraphik
    objectWorkType@en: print
    titleSet@de (title): Schleuse & Kai
    titleSet[Alter Titel] (title): Die Schleuse
    inscriptions[Signatur] (signature): Brook 1912
    inscriptions[Signatur]/inscriptionDescription (signature): Bleistift, unten rechts
    repositorySet/repositoryName/legalBodyID: XX-Hafen
    repositorySet/repositoryName/legalBodyName (holder): Hafenmuseum
    repositorySet/workID[Inventarnummer] (accession): HM 1970.12
    repositorySet[former]/repositoryName/legalBodyName (provenance): Sammlung Mill
    repositorySet[former]/workID (former-accession): M 7
    displayState (state): ii/iii
    displayEdition (numbering): 12/50
    objectDescriptionSet[Zustand] (condition): fleckig
    objectMeasurementsSet (dimensions): Platte: 241 x 178 mm; Blatt: 32 x 25 cm
    event[production]/eventType/conceptID: http://terminology.lido-schema.org/lido00007
    event[production]/eventType: Herstellung
    event[production]/eventActor (maker): Brook, Ada (Künstlerin); Lock, D. (Drucker)
    event[production]/eventActor/displayActorInRole: Brook, Ada (1880-1950), Künstlerin
    event[production]/eventActor/actor/actorID: https://example.org/brook
    event[production]/eventActor/actor/nameActorSet: A. B.
    event[production]/eventDate (date): um 1912
    event[production]/eventDate/date/earliestDate: 1907
    event[production]/eventDate/date/latestDate: 1917
    event[production]/eventMaterialsTech (medium): Radierung, Bütten
    event[publication]/eventType: Veröffentlichung
    event[publication]/eventActor (maker): Weir & Co. (publisher)
    event[publication]/eventDate (date): published 1914
    event[acquisition] (credit): gift from C. Mill, 1970
    event[acquisition]/eventType/conceptID: http://terminology.lido-schema.org/lido00001
    rightsWorkSet/creditLine (credit): Schenkung C. Mill, 1970
    recordID (id): 1
    recordType: item
    recordSource/legalBodyName: Hafenmuseum
    recordInfoSet/recordInfoLink (web): https://example.org/1
    resourceSet/resourceRepresentation[image_thumb]/linkResource: https://example.org/1-small.jpg
    resourceSet/resourceRepresentation[image_master]/linkResource (photograph): https://example.org/1.jpg
    further: lidoRecID@source: Hafenmuseum; descriptiveMetadata@lang: de; repositorySet/repositoryName/legalBodyID@source: ISIL; objectMeasurementsSet/objectMeasurements: Höhe: 32 cm; event[production]/eventActor/actor@type: person; event[production]/eventActor/actor/nameActorSet@pref: alternate; event[production]/eventMaterialsTech/materialsTech/termMaterialsTech[technique]: –; event[production]/eventMaterialsTech/materialsTech/termMaterialsTech[material]: –; event[acquisition]/eventActor: C. Mill (Schenker); administrativeMetadata@lang: de; resourceSet/resourceRepresentation[image_master]/linkResource@formatResource: image/jpeg
    "#);
    assert_eq!(notes(&table), [""; 0]);
}

/// What the grammars of cells read of the composed cells.
#[test]
fn composed_cells_are_what_the_grammars_read() {
    let table = one(SLUICE.as_bytes());
    let lexicon = lexicon();
    let cells = |holds| held(&table, 0, holds);
    let people: Vec<String> = cells(Holds::Maker)
        .iter()
        .flat_map(|cell| makers::makers(cell, &lexicon).is)
        .map(|maker| format!("{} {}", maker.role, maker.name))
        .collect();
    assert_eq!(
        people,
        [
            "artist Brook, Ada",
            "printer Lock, D.",
            "publisher Weir & Co."
        ]
    );
    let sizes: Vec<String> = cells(Holds::Dimensions)
        .iter()
        .flat_map(|cell| sizes(cell, Assumed::default()).is)
        .map(|size| format!("{:?} {}", size.of, size.size().unwrap()))
        .collect();
    assert_eq!(sizes, ["[Platemark] 241 × 178", "[Sheet] 320 × 250"]);
    for cell in cells(Holds::Credit) {
        let credit = credit::credit(&cell, &lexicon).is;
        assert_eq!(credit.how.unwrap().as_str(), "gift", "{cell}");
        assert_eq!(
            (credit.from.as_deref(), credit.year),
            (Some("C. Mill"), Some(1970)),
            "{cell}"
        );
    }
    assert_eq!(cells(Holds::Date), ["um 1912", "published 1914"]);
    for cell in cells(Holds::Date) {
        let reading = dates::dates(&cell);
        assert_eq!(reading.is.len(), 1, "{cell}");
        assert_eq!(reading.left_over(&cell), [""; 0]);
    }
}

/// A record that the published schema accepts (`tests/checks/`), by that a file may be one record without a wrap.
#[test]
fn a_record_that_the_schema_accepts_is_read() {
    let table = one(include_bytes!("../../../../../tests/checks/lido_print.xml"));
    for (holds, cells) in [
        (Holds::Accession, vec!["1951.12.3"]),
        (Holds::Title, vec!["Design 14, impression 7"]),
        (Holds::State, vec!["second state of three"]),
        (Holds::Numbering, vec!["12/50"]),
        (Holds::Dimensions, vec!["212 x 301 mm (image)"]),
        (Holds::Maker, vec!["the invented printmaker"]),
        (Holds::Date, vec!["1927 (?) to 1931"]),
        (Holds::Medium, vec!["woodcut (process)"]),
        (Holds::Holder, vec!["Harbour Museum"]),
        (Holds::Id, vec!["https://example.org/14/7", "14.7"]),
    ] {
        assert_eq!(held(&table, 0, holds), cells, "{holds}");
    }
}

/// Version 1.0 has texts where 1.1 has concepts (lido-v1.0.xsd, `measurementType`, `measurementUnit`).
#[test]
fn measurements_of_the_older_version_are_read() {
    let record = "<lido:lido xmlns:lido='http://www.lido-schema.org'><lido:descriptiveMetadata><lido:objectMeasurementsWrap>\
        <lido:objectMeasurementsSet><lido:objectMeasurements>\
        <lido:measurementsSet><lido:measurementType>height</lido:measurementType><lido:measurementUnit>cm</lido:measurementUnit><lido:measurementValue>24.1</lido:measurementValue></lido:measurementsSet>\
        <lido:measurementsSet><lido:measurementType>diameter</lido:measurementType><lido:measurementUnit>cm</lido:measurementUnit><lido:measurementValue>3</lido:measurementValue></lido:measurementsSet>\
        </lido:objectMeasurements></lido:objectMeasurementsSet></lido:objectMeasurementsWrap></lido:descriptiveMetadata></lido:lido>";
    let table = one(record.as_bytes());
    assert_eq!(
        told(&table, 0),
        ["objectMeasurementsSet (dimensions): height: 24.1 cm, diameter: 3 cm"]
    );
}

/// Blocks in several languages give each path its language; a former owner's acquisition is provenance.
#[test]
fn languages_and_earlier_owners_are_kept_apart() {
    let block = |language: &str, title: &str, role: &str| {
        format!(
            "<descriptiveMetadata xml:lang='{language}'><titleWrap><titleSet><appellationValue>{title}</appellationValue></titleSet></titleWrap>\
             <repositoryWrap><repositorySet><repositoryName><legalBodyName><appellationValue>Museum</appellationValue></legalBodyName></repositoryName><workID>1</workID><workID>2</workID></repositorySet></repositoryWrap>\
             <eventWrap><eventSet><event><eventType><term>Acquisition</term></eventType>\
             <eventActor><actorInRole><actor><nameActorSet><appellationValue>B. Buyer</appellationValue></nameActorSet></actor><roleActor><term>{role}</term></roleActor></actorInRole></eventActor>\
             <eventMethod><term>purchase</term></eventMethod></event></eventSet></eventWrap></descriptiveMetadata>"
        )
    };
    let record = format!(
        "<lido xmlns='http://www.lido-schema.org'>{}{}</lido>",
        block("de", "Wehr", "Eigentümer"),
        block("en", "Weir", "owner")
    );
    let table = one(record.as_bytes());
    assert_eq!(held(&table, 0, Holds::Title), ["Wehr", "Weir"]);
    assert_eq!(held(&table, 0, Holds::Accession), ["1", "2", "1", "2"]);
    assert_eq!(held(&table, 0, Holds::Credit), [""; 0]);
    assert_eq!(
        held(&table, 0, Holds::Provenance),
        ["B. Buyer, purchase", "B. Buyer, purchase"]
    );
    let headings: Vec<&str> = table.heading().take(2).collect();
    assert_eq!(
        headings,
        [
            "titleSet@de",
            "repositorySet/repositoryName/legalBodyName@de"
        ]
    );
}

/// Answers of OAI-PMH have records of LIDO in their metadata (OAI-PMH 2.0, section 4.5); what stands around them is told.
#[test]
fn records_are_found_in_answers_of_harvesters() {
    let answer = "<OAI-PMH xmlns='http://www.openarchives.org/OAI/2.0/'><ListRecords>\
        <record><header><identifier>oai:x:1</identifier></header><metadata><lido:lido xmlns:lido='http://www.lido-schema.org'><lido:lidoRecID>1</lido:lidoRecID></lido:lido></metadata></record>\
        <record><header><identifier>oai:x:2</identifier></header><metadata><lido:lido xmlns:lido='http://www.lido-schema.org'><lido:lidoRecID>2</lido:lidoRecID></lido:lido></metadata></record>\
        </ListRecords></OAI-PMH>";
    let table = one(answer.as_bytes());
    let rows: Vec<(u32, &str)> = table
        .rows()
        .map(|row| (row.number(), row.cell(0)))
        .collect();
    assert_eq!(rows, [(1, "1"), (2, "2")]);
    assert_eq!(
        notes(&table),
        [
            "2 texts stand around the records and belong to none: identifier: oai:x:1; identifier: oai:x:2"
        ]
    );
}

/// Every name in our paths is an element of the schema (`tests/checks/lido_elements.csv`).
#[test]
fn names_in_paths_are_elements_of_the_schema() {
    // Of SKOS, and of the IIIF API.
    const OTHERS: [&str; 3] = ["prefLabel", "requiredStatement", "seeAlso"];
    let elements = include_str!("../../../../../tests/checks/lido_elements.csv");
    let is_element = |name: &str| {
        elements
            .lines()
            .any(|line| line.ends_with(&format!(",{name}")))
    };
    for source in [
        include_str!("../../columns/paths.rs"),
        include_str!("../lido/composed.rs"),
        include_str!("../lido/steps.rs"),
    ] {
        // Texts in quotation marks that look like names of elements: a small letter, then a capital.
        let quoted = source.split('"').skip(1).step_by(2);
        let names = quoted
            .flat_map(|text| text.split('/'))
            .filter(|name| name.bytes().all(|byte| byte.is_ascii_alphabetic()))
            .filter(|name| name.starts_with(|c: char| c.is_ascii_lowercase()))
            .filter(|name| name.bytes().any(|byte| byte.is_ascii_uppercase()));
        for name in names.filter(|name| !OTHERS.contains(name)) {
            assert!(is_element(name), "{name}");
        }
    }
}

/// The address of a statement of rights before its name (lido-v1.1.xsd, `rightsType`: `conceptID`, then `term`).
#[test]
fn the_rights_in_a_picture_are_their_address() {
    let record = "<lido xmlns='http://www.lido-schema.org'><administrativeMetadata><resourceWrap><resourceSet><rightsResource>\
        <rightsType><conceptID type='URI'>https://example.org/licence</conceptID><term>free</term></rightsType></rightsResource>\
        </resourceSet></resourceWrap></administrativeMetadata></lido>";
    let table = one(record.as_bytes());
    assert_eq!(
        held(&table, 0, Holds::Rights),
        ["https://example.org/licence"]
    );
}
