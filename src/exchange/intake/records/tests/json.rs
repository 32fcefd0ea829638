//! Objects of Linked Art and manifests of IIIF.

use super::*;
use crate::exchange::intake::reading::makers;
use crate::exchange::intake::reading::sizes::{Assumed, sizes};

/// Two prints as the reference library of the model writes them, in a page of the API (`tests/reference/intake_files.py`).
const CROMULENT: &[u8] = include_bytes!("../../../../../tests/intake/cromulent.json");
/// Two manifests as the reference library of the API writes them, in a collection.
const PREZI: &[u8] = include_bytes!("../../../../../tests/intake/iiif-prezi3.json");

#[test]
fn objects_of_the_reference_library_are_read() {
    let table = one(CROMULENT);
    assert_eq!(table.kind, TableKind::LinkedArt);
    assert_eq!(table.rows().len(), 2);
    insta::assert_snapshot!(told(&table, 0).join("\n"), @r#"
    identified_by[primary name]@de (title): Schleuse am Kai
    identified_by[accession number] (accession): HM 1970.12
    identified_by[local number] (id): obj-HM 1970.12
    referred_to_by[credit line] (credit): Schenkung C. Mill, 1970
    referred_to_by[materials statement] (medium): Radierung auf Bütten
    referred_to_by[edition statement] (numbering): Nr. 12 von 50
    referred_to_by[condition statement] (condition): fleckig
    dimension (dimensions): 241 x 178 mm
    changed_ownership_through (credit): gift from C. Mill, 1970
    id (id): https://harbour-museum.example.org/object/HM 1970.12
    _label: Schleuse am Kai
    classified_as[type of work] (medium): Print
    classified_as/id: http://vocab.getty.edu/aat/300041273
    identified_by[primary name]/id@de: http://lod.example.org/museum/Name/0
    identified_by[accession number]/id: http://lod.example.org/museum/Identifier/0
    identified_by[local number]/id: http://lod.example.org/museum/Identifier/1
    referred_to_by[credit line]/id: http://lod.example.org/museum/LinguisticObject/0
    referred_to_by[materials statement]/id: http://lod.example.org/museum/LinguisticObject/1
    referred_to_by[edition statement]/id: http://lod.example.org/museum/LinguisticObject/2
    referred_to_by[condition statement]/id: http://lod.example.org/museum/LinguisticObject/3
    dimension/id: http://lod.example.org/museum/Dimension/0; http://lod.example.org/museum/Dimension/1
    made_of (paper): paper
    made_of/id: http://vocab.getty.edu/aat/300014109
    produced_by/timespan (date): um 1912
    produced_by/carried_out_by (maker): Ada Brook
    produced_by/technique (medium): etching (printing process)
    produced_by/id: http://lod.example.org/museum/Production/0
    produced_by/timespan/id: http://lod.example.org/museum/TimeSpan/0
    produced_by/timespan/identified_by[display name]/id: http://lod.example.org/museum/Name/1
    produced_by/timespan/begin_of_the_begin: 1912-01-01T00:00:00Z
    produced_by/timespan/end_of_the_end: 1912-12-31T23:59:59Z
    produced_by/part/id: http://lod.example.org/museum/Production/1
    produced_by/part/technique/id: http://vocab.getty.edu/aat/300053241
    produced_by/part/carried_out_by/id: https://harbour-museum.example.org/person/brook
    current_owner (holder): Harbour Museum
    current_owner/id: https://harbour-museum.example.org/
    changed_ownership_through/id: http://lod.example.org/museum/Acquisition/0
    changed_ownership_through/classified_as/id: http://vocab.getty.edu/aat/300417637
    changed_ownership_through/classified_as: gift (method of acquisition)
    changed_ownership_through/timespan/id: http://lod.example.org/museum/TimeSpan/1
    changed_ownership_through/timespan/identified_by[display name]/id: http://lod.example.org/museum/Name/2
    changed_ownership_through/timespan/identified_by[display name]: 1970
    changed_ownership_through/transferred_title_from/id: https://harbour-museum.example.org/person/mill
    changed_ownership_through/transferred_title_from: C. Mill
    changed_ownership_through/transferred_title_to/id: https://harbour-museum.example.org/
    changed_ownership_through/transferred_title_to: Harbour Museum
    "#);
    assert_eq!(
        notes(&table),
        [
            "2 texts stand around the records and belong to none: id: https://harbour-museum.example.org/page/1; next: https://harbour-museum.example.org/page/2"
        ]
    );
    let size = &sizes(&held(&table, 1, Holds::Dimensions)[0], Assumed::default()).is[0];
    assert_eq!(size.size().unwrap().to_string(), "300 × 205.5");
}

#[test]
fn manifests_of_the_reference_library_are_read() {
    let table = one(PREZI);
    assert_eq!(table.kind, TableKind::Iiif);
    assert_eq!(table.rows().len(), 2);
    insta::assert_snapshot!(told(&table, 0).join("\n"), @r#"
    id (id): https://harbour-museum.example.org/iiif/HM-1970.12/manifest.json
    label@de (title): Schleuse am Kai
    label@en (title): Schleuse am Kai (en)
    metadata/Inv.-Nr. (accession): HM 1970.12
    metadata/Datierung@de (date): um 1912
    metadata/Date@en (date): c. 1912
    metadata/Technik@de (medium): Radierung auf Bütten
    metadata/Maße@de (dimensions): Platte: 24,1 x 17,8 cm
    requiredStatement/Creditzeile@de (credit): Schenkung C. Mill, 1970
    rights (rights): http://creativecommons.org/publicdomain/zero/1.0/
    provider/id: https://harbour-museum.example.org/
    provider/label@de (holder): Hafenmuseum
    homepage (web): https://harbour-museum.example.org/object/HM%201970.12
    homepage/label@de: Objekt
    homepage/format: text/html
    items/id: https://harbour-museum.example.org/iiif/HM-1970.12/canvas/1
    items/label@de: recto
    items/height: 2410
    items/width: 1780
    items/items/id: https://harbour-museum.example.org/iiif/HM-1970.12/page/1
    items/items/items/id: https://harbour-museum.example.org/iiif/HM-1970.12/annotation/1
    items/items/items/motivation: painting
    items/image (photograph): https://harbour-museum.example.org/iiif/HM-1970.12/full/max/0/default.jpg
    items/items/items/body/height: 2410
    items/items/items/body/width: 1780
    items/items/items/body/format: image/jpeg
    items/items/items/target: https://harbour-museum.example.org/iiif/HM-1970.12/canvas/1
    further: metadata/label@en: Accession number
    "#);
    assert_eq!(
        notes(&table),
        [
            "2 texts stand around the records and belong to none: id: https://harbour-museum.example.org/iiif/prints; label/de: Graphik"
        ]
    );
}

/// A record that the published schemas accept (`tests/checks/`).
#[test]
fn a_record_that_the_schemas_accept_is_read() {
    let table = one(include_bytes!(
        "../../../../../tests/checks/linked_art_impression.json"
    ));
    for (holds, cells) in [
        (Holds::Accession, vec!["1951.12.3"]),
        (Holds::Title, vec!["Design 14, impression 7"]),
        (Holds::Numbering, vec!["Edition of 50, numbered 12/50"]),
        (Holds::Remarks, vec!["Second state of three"]),
        (Holds::Dimensions, vec!["212 x 301 mm"]),
        (Holds::Maker, vec!["Artist"]),
        (Holds::Date, vec!["1927?/1931"]),
        (
            Holds::Medium,
            vec!["prints (visual works)", "woodcut (process)"],
        ),
        (Holds::Paper, vec!["paper"]),
        (Holds::Holder, vec!["Harbour Museum"]),
        (Holds::Web, vec!["https://example.org/14/7/"]),
        (Holds::Photograph, vec!["https://example.org/iiif/14-7"]),
        (Holds::Id, vec!["https://example.org/14/7"]),
    ] {
        assert_eq!(held(&table, 0, holds), cells, "{holds}");
    }
}

/// Multiple makers as parts with their roles (linked.art, *Object Production*, "Multiple Artists"); a printing and a
/// publication with their dates; sizes by what was measured (*Physical Characteristics*, "Measurements of Dimensions").
#[test]
fn parts_of_a_production_keep_their_roles_and_dates() {
    let length = |kind: u32, value: &str, of: &str| {
        format!(
            r#"{{"type":"Dimension","value":{value},"unit":{{"id":"http://vocab.getty.edu/aat/300379098"}},
            "classified_as":[{{"id":"http://vocab.getty.edu/aat/{kind}"}}],
            "assigned_by":[{{"type":"AttributeAssignment","technique":[{{"type":"Type","_label":"{of}"}}]}}]}}"#
        )
    };
    let part = |kind: &str, name: &str, year: &str| {
        let time = match year {
            "" => String::new(),
            year => format!(
                r#","timespan":{{"type":"TimeSpan","begin_of_the_begin":"{year}-01-01T00:00:00Z","end_of_the_end":"{year}-12-31T23:59:59Z"}}"#
            ),
        };
        format!(
            r#"{{"type":"Production","classified_as":[{kind}],"carried_out_by":[{{"type":"Person","_label":"{name}"}}]{time}}}"#
        )
    };
    let record = format!(
        r#"{{"type":"HumanMadeObject","produced_by":{{"type":"Production","part":[{},{},{}]}},"dimension":[{},{},{},{}]}}"#,
        part(r#"{"type":"Type","_label":"engraver"}"#, "C. Mill", ""),
        part(
            r#"{"id":"http://vocab.getty.edu/aat/300053319"}"#,
            "D. Lock",
            "1925"
        ),
        part(
            r#"{"id":"http://vocab.getty.edu/aat/300054686"}"#,
            "Weir & Co.",
            "1926"
        ),
        length(300_055_644, "24.1", "plate"),
        length(300_055_647, "17.8", "plate"),
        length(300_055_644, "32", "sheet"),
        length(300_055_647, "25", "sheet"),
    );
    let table = one(record.as_bytes());
    assert_eq!(
        held(&table, 0, Holds::Date),
        ["printed 1925", "published 1926"]
    );
    let makers = makers::makers(&held(&table, 0, Holds::Maker)[0], &lexicon()).is;
    let makers: Vec<String> = makers
        .iter()
        .map(|m| format!("{} {}", m.role, m.name))
        .collect();
    assert_eq!(
        makers,
        [
            "engraver C. Mill",
            "printer D. Lock",
            "publisher Weir & Co."
        ]
    );
    assert_eq!(
        held(&table, 0, Holds::Dimensions),
        ["plate: 24.1 x 17.8 cm; sheet: 32 x 25 cm"]
    );
}

/// Version 2.1 of the API (specification, section 3.1): texts, objects with a language, lists of them.
#[test]
fn manifests_of_version_2_are_read() {
    let manifest = r#"{"@context":"http://iiif.io/api/presentation/2/context.json","@id":"https://example.org/1/manifest","@type":"sc:Manifest",
        "label":"Schleuse","description":{"@value":"Ein Kai","@language":"de"},"attribution":"Hafenmuseum","license":"https://example.org/terms",
        "metadata":[{"label":"Inv.-Nr.","value":"HM 1"},{"label":[{"@value":"Date","@language":"en"},{"@value":"Datierung","@language":"de"}],"value":[{"@value":"c. 1912","@language":"en"},{"@value":"um 1912","@language":"de"}]}],
        "sequences":[{"canvases":[{"@id":"https://example.org/c","label":"recto","images":[{"resource":{"@id":"https://example.org/1.jpg","@type":"dctypes:Image"}}]}]}]}"#;
    let table = one(manifest.as_bytes());
    for (holds, cells) in [
        (Holds::Title, vec!["Schleuse"]),
        (Holds::Remarks, vec!["Ein Kai", "Hafenmuseum"]),
        (Holds::Accession, vec!["HM 1"]),
        (Holds::Date, vec!["c. 1912", "um 1912"]),
        (Holds::Rights, vec!["https://example.org/terms"]),
        (Holds::Photograph, vec!["https://example.org/1.jpg"]),
        (Holds::Id, vec!["https://example.org/1/manifest"]),
    ] {
        assert_eq!(held(&table, 0, holds), cells, "{holds}");
    }
}

#[test]
fn records_come_singly_in_lists_in_lines_and_in_graphs() {
    let record = |number: u8| {
        format!(
            r#"{{"type":"HumanMadeObject","identified_by":[{{"type":"Identifier","content":"{number}","classified_as":[{{"id":"http://vocab.getty.edu/aat/300312355"}}]}}]}}"#
        )
    };
    let (a, b) = (record(1), record(2));
    for file in [
        format!("[{a},{b}]"),
        format!("{a}\n{b}\n"),
        format!("\u{feff}{a}\r\n{b}"),
        format!(r#"{{"@graph":[{a},{b}]}}"#),
        format!(r#"{{"orderedItems":[{a},{b}],"type":"OrderedCollectionPage"}}"#),
        format!(
            r#"{{"type":"OrderedCollectionPage","orderedItems":[{{"type":"Create","object":{a}}},{{"type":"Update","object":{b}}}]}}"#
        ),
        format!(r#"{{"type":"Set","members":[{a},{b}]}}"#),
    ] {
        let table = one(file.as_bytes());
        assert_eq!(
            table.heading().collect::<Vec<_>>(),
            ["identified_by[accession number]"],
            "{file}"
        );
        let rows: Vec<(u32, &str)> = table
            .rows()
            .map(|row| (row.number(), row.cell(0)))
            .collect();
        assert_eq!(rows, [(1, "1"), (2, "2")], "{file}");
        assert_eq!(notes(&table), [""; 0], "{file}");
    }
    let utf_16: Vec<u8> = std::iter::once(0xfeff)
        .chain(a.encode_utf16())
        .flat_map(u16::to_le_bytes)
        .collect();
    assert_eq!(one(&utf_16).rows().len(), 1);
}

#[test]
fn what_is_only_named_or_no_sheet_is_told() {
    let file = r#"[{"type":"HumanMadeObject","id":"https://example.org/1","_label":"x","made_of":[{"_label":"paper"}]},
        {"type":"HumanMadeObject","id":"https://example.org/2","_label":"y"},
        {"type":"Person","id":"https://example.org/p","_label":"Ada Brook"},
        {"type":"Collection","label":{"en":["Prints"]},"items":[{"type":"Manifest","id":"https://example.org/m","label":{"en":["z"]}}]}]"#;
    let table = one(file.as_bytes());
    assert_eq!(table.rows().len(), 1);
    assert_eq!(
        notes(&table),
        [
            "2 records are named by their addresses alone and were not read: https://example.org/2, https://example.org/m",
            "1 records of the class Person describe no sheet and make no rows",
            "1 texts stand around the records and belong to none: label/en: Prints",
        ]
    );
    let both = r#"[{"type":"HumanMadeObject","made_of":[{"_label":"paper"}]},{"type":"Manifest","label":{"none":["z"]},"items":[]},{"type":"Manifest","metadata":[{"label":"a","value":"b"}]}]"#;
    let kinds: Vec<_> = open::tables(both.as_bytes())
        .unwrap()
        .iter()
        .map(|t| (t.kind, t.rows().len()))
        .collect();
    assert_eq!(kinds, [(TableKind::LinkedArt, 1), (TableKind::Iiif, 1)]);
}

/// Who keeps a sheet is its holder (linked.art, *Objects: Provenance*, "Custody"), the statement on the picture its first
/// licence; the others stay in columns that hold nothing.
#[test]
fn a_sheet_has_one_holder_and_one_statement_of_rights() {
    let loaned = r#"{"type":"HumanMadeObject","current_owner":[{"type":"Group","_label":"City"}],"current_custodian":[{"type":"Group","_label":"Museum"}]}"#;
    let table = one(loaned.as_bytes());
    assert_eq!(held(&table, 0, Holds::Holder), ["Museum"]);
    assert_eq!(
        told(&table, 0),
        [
            "current_owner[beside the custodian]: City",
            "current_custodian (holder): Museum"
        ]
    );
    let manifest = r#"{"type":"Manifest","items":[{"type":"Canvas","id":"c"}],"rights":"https://example.org/a","license":"https://example.org/b",
        "provider":[{"label":{"de":["Hafenmuseum"],"en":["Harbour Museum"]}}]}"#;
    let table = one(manifest.as_bytes());
    assert_eq!(held(&table, 0, Holds::Holder), ["Hafenmuseum"]);
    assert_eq!(held(&table, 0, Holds::Rights), ["https://example.org/a"]);
}
