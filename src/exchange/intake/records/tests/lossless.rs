//! Every text of generated records is found again in a cell, and broken files never panic.

use std::fmt::Write as _;

use proptest::prelude::*;

use super::*;

/// An element or a property with an own text, or with others in it.
#[derive(Clone, Debug)]
enum Made {
    Text(&'static str, String),
    With(&'static str, Vec<Made>),
}

/// A tree of nodes with these names and numbered texts.
fn tree(names: &'static [&'static str]) -> impl Strategy<Value = Made> {
    let leaf = (
        prop::sample::select(names),
        "[a-zäß@\\[\\]/;:,()0-9 ]{0,12}[a-z0-9]",
    )
        .prop_map(|(name, text)| Made::Text(name, text));
    leaf.prop_recursive(6, 60, 6, move |inner| {
        (
            prop::sample::select(names),
            prop::collection::vec(inner, 1..6),
        )
            .prop_map(|(name, children)| Made::With(name, children))
    })
}

/// Makes the texts of a tree different from each other: `text 17`.
fn numbered(made: &mut Made, next: &mut u32, texts: &mut Vec<String>) {
    match made {
        Made::Text(_, text) => {
            *text = format!("{} {next}x", text.trim());
            *next += 1;
            texts.push(text.split_whitespace().collect::<Vec<_>>().join(" "));
        }
        Made::With(_, children) => {
            for child in children {
                numbered(child, next, texts);
            }
        }
    }
}

/// All cells of a table and its heading in one text.
fn all_cells(table: &Table) -> String {
    let headings = table.heading().map(str::to_owned);
    let cells = table
        .rows()
        .flat_map(|row| row.cells().map(str::to_owned).collect::<Vec<_>>());
    headings.chain(cells).collect::<Vec<_>>().join("\n")
}

const LIDO: &[&str] = &[
    "@type",
    "@lang",
    "@pref",
    "@source",
    "@label",
    "descriptiveMetadata",
    "administrativeMetadata",
    "titleWrap",
    "titleSet",
    "appellationValue",
    "repositorySet",
    "repositoryName",
    "legalBodyName",
    "workID",
    "inscriptions",
    "inscriptionTranscription",
    "descriptiveNoteValue",
    "objectMeasurementsSet",
    "displayObjectMeasurements",
    "objectMeasurements",
    "measurementsSet",
    "measurementType",
    "measurementUnit",
    "measurementValue",
    "extentMeasurements",
    "term",
    "conceptID",
    "eventSet",
    "event",
    "eventType",
    "eventActor",
    "displayActorInRole",
    "actorInRole",
    "actor",
    "nameActorSet",
    "roleActor",
    "attributionQualifierActor",
    "eventDate",
    "displayDate",
    "date",
    "earliestDate",
    "latestDate",
    "eventMethod",
    "eventMaterialsTech",
    "displayMaterialsTech",
    "materialsTech",
    "termMaterialsTech",
    "eventPlace",
    "displayPlace",
    "relatedWorkSet",
    "relatedWorkRelType",
    "object",
    "linkResource",
    "resourceRepresentation",
    "creditLine",
    "unheardOf",
];

fn xml(made: &Made, into: &mut String) {
    let (name, children) = match made {
        Made::Text(name, text) => {
            let name = name.trim_start_matches('@');
            write!(into, "<{name}>{text}</{name}>").unwrap();
            return;
        }
        Made::With(name, children) => (name.trim_start_matches('@'), children),
    };
    write!(into, "<{name}").unwrap();
    let mut attributes: Vec<&str> = Vec::new();
    for child in children {
        if let Made::Text(name, text) = child
            && let Some(name) = name.strip_prefix('@')
            && !attributes.contains(&name)
        {
            attributes.push(name);
            write!(into, " {name}=\"{text}\"").unwrap();
        }
    }
    into.push('>');
    let mut written: Vec<&str> = Vec::new();
    for child in children {
        if let Made::Text(name, _) = child
            && name.starts_with('@')
            && !written.contains(name)
        {
            written.push(name);
            continue;
        }
        xml(child, into);
    }
    write!(into, "</{name}>").unwrap();
}

const JSON: &[&str] = &[
    "id",
    "_label",
    "content",
    "value",
    "unit",
    "classified_as",
    "identified_by",
    "referred_to_by",
    "language",
    "produced_by",
    "part",
    "carried_out_by",
    "technique",
    "timespan",
    "begin_of_the_begin",
    "end_of_the_end",
    "dimension",
    "assigned_by",
    "made_of",
    "current_owner",
    "changed_ownership_through",
    "transferred_title_from",
    "transferred_title_to",
    "subject_of",
    "digitally_carried_by",
    "access_point",
    "representation",
    "digitally_shown_by",
    "label",
    "metadata",
    "requiredStatement",
    "none",
    "de",
    "homepage",
    "items",
    "body",
    "summary",
    "rights",
    "@value",
    "@language",
    "sequences",
    "unheard_of",
];

fn json(made: &Made) -> (String, serde_json::Value) {
    match made {
        Made::Text(name, text) => ((*name).to_owned(), text.as_str().into()),
        Made::With(name, children) => {
            let mut object = serde_json::Map::new();
            for (name, value) in children.iter().map(json) {
                // Several values of a name are a list.
                let values = object.entry(name).or_insert_with(|| serde_json::json!([]));
                values.as_array_mut().unwrap().push(value);
            }
            ((*name).to_owned(), object.into())
        }
    }
}

/// The texts that are not in a table.
fn lost(table: &Table, texts: &[String]) -> Vec<String> {
    let cells = all_cells(table);
    let lost = texts.iter().filter(|text| !cells.contains(text.as_str()));
    lost.cloned().collect()
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(300) })]

    #[test]
    fn every_text_of_a_record_of_lido_is_in_a_cell(trees in prop::collection::vec(tree(LIDO), 1..5)) {
        let mut file = String::from("<lido:lidoWrap xmlns:lido='http://www.lido-schema.org'>");
        let (mut next, mut texts) = (0, Vec::new());
        for mut made in trees {
            numbered(&mut made, &mut next, &mut texts);
            file.push_str("<lido:lido>");
            xml(&made, &mut file);
            file.push_str("</lido:lido>");
        }
        file.push_str("</lido:lidoWrap>");
        prop_assert_eq!(lost(&one(file.as_bytes()), &texts), [""; 0], "{}", file);
    }

    #[test]
    fn every_text_of_an_object_or_a_manifest_is_in_a_cell(
        trees in prop::collection::vec(tree(JSON), 1..6),
        class in prop::sample::select(&["HumanMadeObject", "Manifest"][..]),
    ) {
        let (mut next, mut texts) = (0, Vec::new());
        let mut object = serde_json::Map::new();
        for mut made in trees {
            numbered(&mut made, &mut next, &mut texts);
            let (name, value) = json(&made);
            let values = object.entry(name).or_insert_with(|| serde_json::json!([]));
            values.as_array_mut().unwrap().push(value);
        }
        object.insert("type".into(), class.into());
        // Neither is only named.
        let items = object.entry("items").or_insert_with(|| serde_json::json!([]));
        items.as_array_mut().unwrap().push(serde_json::json!({ "own": "x" }));
        let file = serde_json::Value::from(object).to_string();
        prop_assert_eq!(lost(&one(file.as_bytes()), &texts), [""; 0], "{}", file);
    }

    /// Files with some bytes changed or cut off: a table or a fault, never a panic.
    #[test]
    fn broken_files_are_refused_or_read(
        changes in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 0..8),
        end in any::<prop::sample::Index>(),
    ) {
        for sound in [
            &include_bytes!("../../../../../tests/checks/lido_print.xml")[..],
            include_bytes!("../../../../../tests/checks/linked_art_impression.json"),
            include_bytes!("../../../../../tests/intake/cromulent.json"),
            include_bytes!("../../../../../tests/intake/iiif-prezi3.json"),
        ] {
            let mut file = sound.to_vec();
            for (at, byte) in &changes {
                let at = at.index(file.len());
                file[at] = *byte;
            }
            let _ = open::tables(&file);
            file.truncate(end.index(file.len()));
            let _ = open::tables(&file);
        }
    }
}
