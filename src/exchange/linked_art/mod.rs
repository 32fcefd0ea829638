//! Linked Art 1.0 (JSON-LD): designs, states, printings, matrices, impressions, series, holders, people, documents, and the
//! provenance of impressions.
//!
//! Source: the model and the API of linked.art (documentation and JSON schemas, snapshot of 2026-07-01). Prints in
//! it: *Object Production*, "Reproduction from an Identifiable Source", and *Aboutness*, "Physical Object and Visual
//! Work". A printed sheet is an object that *shows* a visual work; copies of one print show one work, which groups
//! them; its production *used* the block or plate.
//!
//! | here | Linked Art | why |
//! |---|---|---|
//! | impression | `HumanMadeObject` | it `shows` its design, and its state where that is certain and one |
//! | design | `VisualItem` | the work that all of its impressions show |
//! | state | `VisualItem`, `part_of` the design | one of the forms that make up the work; its `created_by` was `influenced_by` the states it was changed from |
//! | printing | `Activity`, classified as printing | the production of an impression is `part_of` it; `used_specific_object` names its matrices |
//! | block, plate, stone, screen | `HumanMadeObject` that `shows` the design | as the model's own example of a print and its plate |
//! | series | `Set` | its designs are `member_of` it; so are those of which printings came out in it |
//! | holder | `Group` | |
//! | person | `Person` | a record does not say whether it is a workshop |
//! | document | `HumanMadeObject`, and a `LinguisticObject` that it `carries` | the paper that is kept, and its words: what they are `about` is what the document tells of, which has them as `subject_of` |
//! | entry of the provenance | `Activity`, classified as provenance | with an `Acquisition` or a `TransferOfCustody` as its part, and a `Payment` where a price is recorded |
//! | technique | `technique` of the production, a process of the AAT | only of the built-in techniques whose process was looked up; the sheet is classified by the kind of print in any case |
//! | town of a holder, place of a sale | `Place`, without a record of its own | the catalogue names places and identifies none |
//!
//! **The model has no class for an edition, a state or the number of an impression** (its mapping of the cataloguing
//! categories says "not mapped"), so the table's third and fourth rows are our reading, and the numbers are said in a
//! statement (edition statement, AAT 300435435).
//!
//! **Nothing that is not certain is stated as a property.** The schemas offer no certainty, so a reading that is
//! probable, one of several, or somebody else's is an `AttributeAssignment` in `attributed_by`: who, when, what is
//! assigned, and the certainty as its name (*Assertions*, "Uncertain or Former Assignments"). What a document does not
//! tell for certain is assigned to its words, and its words to the record, in the same way. An entry of the
//! provenance that is not certain has no `part`; the sheet is assigned to it in the same way. A date has the bounds
//! that it certainly lies within, and its words.
//!
//! **Numbers of the AAT** come from the vocabularies (`content/vocabulary/`) where a term has one; a term without one
//! is named by its place in the catalogue's glossary. Numbers that the model itself asks for are in `concepts`.
//!
//! **One file is one record**, and its `id` is its own address, as the API asks: `design/14/linked-art.json`,
//! `design/14/state-cut-down/linked-art.json`. The provenance of a sheet is the exception: its entries have no keys,
//! so their addresses could not last, and four files a sheet would be many. They stand in one file as a `@graph`;
//! each is a record by itself.
//!
//! In: the book of pages. Out: JSON without white space. The vocabulary is named by the address of the context
//! (`CONTEXT`); nothing is fetched.
//!
//! | file | subject |
//! |---|---|
//! | `node` | the type that is written: a node with the properties of the model that are used here |
//! | `concepts` | types of the AAT and of the glossary, languages, units |
//! | `ids` | addresses of records, and references to them |
//! | `parts` | names, identifiers, statements, times, dimensions: the building blocks of every record |
//! | `impression` | impressions |
//! | `reading` | which state and printing a sheet is, certain or assigned |
//! | `design` | designs, states, printings, matrices |
//! | `series` | series |
//! | `agents` | holders and people |
//! | `document` | documents and their words |
//! | `evidence` | from a record to the documents that tell of it |
//! | `provenance` | the entries of a provenance |

mod agents;
mod concepts;
mod design;
mod document;
mod evidence;
mod identifiers;
mod ids;
mod impression;
mod node;
mod parts;
mod provenance;
mod reading;
mod series;

pub(super) use self::concepts::language_of_number;
pub(super) use self::ids::record as record_id;
use self::ids::{FILE, MEDIA_TYPE, PROVENANCE, WORDS};
pub(super) use self::impression::credit;
use self::node::Node;
use super::format::{Format, Sources};
use crate::page::{Address, DesignPart, Here, Subject};

/// The address of the context, which says what the properties mean. It is never fetched.
pub(super) const CONTEXT: &str = "https://linked.art/ns/v1/linked-art.json";

/// One record for each design, each of its parts, each sheet, each series, each holder, each person and each document.
pub(super) const RECORDS: Format = Format {
    name: "linked-art",
    file: FILE,
    folders: &[
        "design/…/",
        "impression/…/",
        "series/…/",
        "holder/…/",
        "person/…/",
        "document/…/",
        "design/…/state-…/",
        "design/…/printing-…/",
        "design/…/matrix-…/",
    ],
    media_type: MEDIA_TYPE,
    relation: "alternate",
    subjects,
    write,
};

/// One record for the words of each document that has any, or tells something.
pub(super) const TEXTS: Format = Format {
    name: "linked-art-words",
    file: WORDS,
    folders: &["document/…/"],
    media_type: MEDIA_TYPE,
    relation: "describedby",
    subjects: subjects_with_words,
    write: write_words,
};

/// One file for each sheet with a recorded provenance.
pub(super) const HISTORIES: Format = Format {
    name: "linked-art-provenance",
    file: PROVENANCE,
    folders: &["impression/…/"],
    media_type: MEDIA_TYPE,
    relation: "describedby",
    subjects: subjects_with_provenance,
    write: write_provenance,
};

fn subjects(sources: &Sources<'_>) -> Vec<Subject> {
    let public = sources.public;
    let designs = public.designs.values().flat_map(|design| {
        let address = Address::Design(design.key.clone());
        let states = design.states.iter();
        let states = states.map(|state| DesignPart::State(state.key.value.clone()));
        let printings = design.printings.iter();
        let printings = printings.map(|printing| DesignPart::Printing(printing.key.value.clone()));
        let matrices = design.matrices.iter();
        let matrices = matrices.map(|matrix| DesignPart::Matrix(matrix.key.value.clone()));
        let parts = states.chain(printings).chain(matrices);
        let parts = parts.map(|part| Subject::Part(design.key.clone(), part));
        std::iter::once(Subject::Page(address)).chain(parts)
    });
    let sheets = sheets(sources).map(|sheet| Subject::Page(Address::Impression(sheet)));
    let holders = public.holders.keys().cloned().map(Address::Holder);
    let people = public.people.keys().cloned().map(Address::Person);
    let agents = holders.chain(people).map(Subject::Page);
    let documents = public.documents.keys().cloned().map(Address::Document);
    let documents = documents.map(Subject::Page);
    let series = public.series.keys().cloned().map(Address::Series);
    let series = series.map(Subject::Page);
    designs
        .chain(sheets)
        .chain(series)
        .chain(agents)
        .chain(documents)
        .collect()
}

fn subjects_with_words(sources: &Sources<'_>) -> Vec<Subject> {
    let documents = sources.public.documents.values();
    documents
        .filter(|document| document::has_words(document))
        .map(|document| Subject::Page(Address::Document(document.key.clone())))
        .collect()
}

/// The sheets, each by the record whose page it has.
fn sheets<'a>(
    sources: &Sources<'a>,
) -> impl Iterator<Item = crate::model::key::ImpressionKey> + use<'a> {
    let joined = &sources.studies.joined;
    let all = sources.public.impressions();
    all.map(|(_, sheet)| sheet.key.clone())
        .filter(|key| joined.has_page(key))
}

fn subjects_with_provenance(sources: &Sources<'_>) -> Vec<Subject> {
    let public = sources.public;
    let has_entries = |key: &crate::model::key::ImpressionKey| {
        let design = public.designs.get(&key.design);
        let sheet = design.and_then(|design| Some((design, design.impressions.get(&key.number)?)));
        sheet.is_some_and(|(design, sheet)| {
            let records = sources.studies.joined.on_page(design, sheet);
            records.iter().any(|record| !record.provenance.is_empty())
        })
    };
    sheets(sources)
        .filter(has_entries)
        .map(|key| Subject::Page(Address::Impression(key)))
        .collect()
}

fn write(here: &Here<'_>, subject: &Subject) -> Option<Vec<u8>> {
    let public = here.public();
    let record = match subject {
        Subject::Page(Address::Impression(key)) => {
            let design = public.designs.get(&key.design)?;
            impression::record(here, design, design.impressions.get(&key.number)?)
        }
        Subject::Page(Address::Design(key)) => design::design(here, public.designs.get(key)?),
        Subject::Page(Address::Series(key)) => series::series(here, public.series.get(key)?)?,
        Subject::Page(Address::Holder(key)) => agents::holder(here, public.holders.get(key)?),
        Subject::Page(Address::Person(key)) => agents::person(here, public.people.get(key)?),
        Subject::Page(Address::Document(key)) => {
            document::document(here, public.documents.get(key)?)
        }
        Subject::Part(key, part) => {
            let design = public.designs.get(key)?;
            match part {
                DesignPart::State(state) => design::state(here, design, design.state(state)?),
                DesignPart::Printing(printing) => {
                    design::printing(here, design, design.printing(printing)?)
                }
                DesignPart::Matrix(matrix) => design::matrix(here, design, design.matrix(matrix)?),
            }
        }
        _ => return None,
    };
    bytes(&Node {
        context: Some(CONTEXT),
        ..record
    })
}

fn write_words(here: &Here<'_>, subject: &Subject) -> Option<Vec<u8>> {
    let Subject::Page(Address::Document(key)) = subject else {
        return None;
    };
    let record = document::words(here, here.public().documents.get(key)?);
    bytes(&Node {
        context: Some(CONTEXT),
        ..record
    })
}

fn write_provenance(here: &Here<'_>, subject: &Subject) -> Option<Vec<u8>> {
    let Subject::Page(Address::Impression(key)) = subject else {
        return None;
    };
    let design = here.public().designs.get(&key.design)?;
    let sheet = design.impressions.get(&key.number)?;
    let graph = provenance::entries(here, design, sheet);
    bytes(&provenance::Histories {
        context: CONTEXT,
        graph,
    })
}

fn bytes(record: &impl serde::Serialize) -> Option<Vec<u8>> {
    let mut bytes = serde_json::to_vec(record).ok()?;
    bytes.push(b'\n');
    Some(bytes)
}
