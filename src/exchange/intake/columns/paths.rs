//! What paths of open standards hold: the headings of tables of records (`records` makes them).
//!
//! | standard | path | holds |
//! |---|---|---|
//! | LIDO | `titleSet` | title |
//! | | `repositorySet/workID`; of a former repository or kind | accession; former accession |
//! | | `repositorySet/repositoryName/legalBodyName`, `repositorySet/displayRepository` | holder; of a former one provenance |
//! | | `displayState`, `displayEdition`, `sourceStateEdition` | state, numbering, literature |
//! | | `objectMeasurementsSet` | dimensions |
//! | | `objectMaterialsTechSet`, `event[production]/eventMaterialsTech` | medium |
//! | | `event[production]/eventActor`, `…/eventDate`; of creation, designing and publication too | maker, date |
//! | | `event[acquisition]`, `rightsWorkSet/creditLine` | credit |
//! | | `event[acquisition by another]`, `event[provenance]` | provenance |
//! | | `event[exhibition]` | exhibition |
//! | | `inscriptions[…]` | inscription; signature, numbering, watermark, marks where the kind says so |
//! | | `objectDescriptionSet[…]` | remarks; condition, provenance, literature … where the kind says so |
//! | | `relatedWorkSet[…]` | series, literature, exhibition … where the relation says so |
//! | | `resourceSet/rightsResource/rightsType`: its address, else its term | rights (in the picture) |
//! | | `recordInfoSet/recordInfoLink` | web |
//! | | `resourceSet/resourceRepresentation/linkResource` | photograph |
//! | | `lidoRecID`, `objectPublishedID`, `recordID` | id |
//! | Linked Art | `identified_by[accession number]`, `[call number]`, `[former accession number]` | accession; former accession |
//! | | `identified_by[primary name]`, `[name]` and other names | title |
//! | | `identified_by[identifier]` and other numbers, `id`, `equivalent/id` | id |
//! | | `produced_by/carried_out_by`, `…/timespan`, `…/technique` | maker, date, medium |
//! | | `made_of`, `classified_as[type of work]` | paper, medium |
//! | | `dimension` | dimensions |
//! | | `referred_to_by[…]` | what the statement is of; remarks where it does not say |
//! | | `changed_ownership_through`; `[by another]` | credit; provenance |
//! | | `current_custodian`, else `current_owner` | holder |
//! | | `representation`, `subject_of[web page]` | photograph, web |
//! | IIIF | `label`, `summary`, `description` | title, remarks |
//! | | `metadata/…`, `requiredStatement/…` | what the house's own label is a word for; a statement remarks |
//! | | `rights`, `license`; `attribution` | rights; remarks |
//! | | `items/image`, `homepage`, `id`, `provider/label` | photograph, web, id, holder |

use super::headings::{Said, said};
use super::holds::Holds;
use crate::exchange::intake::table::TableKind;

/// What said what a path holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum By {
    /// The standard.
    Path,
    /// A word in it that the house chose.
    Word,
}

/// What a path holds; `None` where it holds nothing that is read.
pub(super) fn held(kind: TableKind, heading: &str) -> Option<(Holds, By)> {
    let path = without_language(without_number(heading));
    match kind {
        TableKind::Lido => lido(path),
        TableKind::LinkedArt => linked_art(path),
        TableKind::Iiif => iiif(path),
        TableKind::Sheet | TableKind::SightingForm => None,
    }
}

/// `titleSet (2)`: the second column of a path.
fn without_number(heading: &str) -> &str {
    let open = heading
        .strip_suffix(')')
        .and_then(|rest| rest.rsplit_once(" ("));
    match open {
        Some((path, number)) if number.bytes().all(|byte| byte.is_ascii_digit()) => path,
        _ => heading,
    }
}

/// `titleSet@de`: the language of a path.
fn without_language(heading: &str) -> &str {
    match heading.rsplit_once('@') {
        Some((path, language)) if !language.contains(['/', ' ']) => path,
        _ => heading,
    }
}

/// A path without what stands in brackets, and the last of that.
fn bare(path: &str) -> (String, &str) {
    let (mut bare, mut inside, mut rest) = (String::new(), "", path);
    while let Some((before, after)) = rest.split_once('[') {
        bare.push_str(before);
        let Some((kind, behind)) = after.split_once(']') else {
            bare.push_str(after);
            return (bare, inside);
        };
        inside = kind;
        rest = behind;
    }
    bare.push_str(rest);
    (bare, inside)
}

/// What a word of the house says whole.
fn by_word(word: &str) -> Option<Holds> {
    match said(word)? {
        Said::Whole(holds) => Some(holds),
        Said::Part(_) => None,
    }
}

/// What a kind in brackets says, where it is one of these; else something else for certain.
fn kind_or(kind: &str, of: &[Holds], otherwise: Holds) -> (Holds, By) {
    match by_word(kind).filter(|holds| of.contains(holds)) {
        Some(holds) => (holds, By::Word),
        None => (otherwise, By::Path),
    }
}

const LIDO: &[(&str, Holds)] = &[
    ("lidoRecID", Holds::Id),
    ("objectPublishedID", Holds::Id),
    ("recordID", Holds::Id),
    ("titleSet", Holds::Title),
    ("displayState", Holds::State),
    ("displayEdition", Holds::Numbering),
    ("sourceStateEdition", Holds::Literature),
    ("objectMeasurementsSet", Holds::Dimensions),
    ("objectMaterialsTechSet", Holds::Medium),
    ("rightsWorkSet/creditLine", Holds::Credit),
    (
        "resourceSet/rightsResource/rightsType/conceptID",
        Holds::Rights,
    ),
    ("resourceSet/rightsResource/rightsType", Holds::Rights),
    ("recordInfoSet/recordInfoLink", Holds::Web),
];

/// Kinds of events by which a print comes into being.
const MAKING: [&str; 4] = ["production", "creation", "designing", "publication"];

fn lido(path: &str) -> Option<(Holds, By)> {
    let (bare, kind) = bare(path);
    let is_of_former = {
        let path = path.to_lowercase();
        let words = [
            "former", "ehemal", "alte ", "frühere", "ancien", "oud", "old ",
        ];
        words.iter().any(|word| path.contains(word))
    };
    let by_path = |holds| Some((holds, By::Path));
    match bare.as_str() {
        "repositorySet/workID" if is_of_former => by_path(Holds::FormerAccession),
        "repositorySet/workID" => by_path(Holds::Accession),
        "repositorySet/repositoryName/legalBodyName" | "repositorySet/displayRepository" => {
            by_path(if is_of_former {
                Holds::Provenance
            } else {
                Holds::Holder
            })
        }
        "resourceSet/resourceRepresentation/linkResource" => {
            (!kind.contains("thumb")).then_some((Holds::Photograph, By::Path))
        }
        "inscriptions" | "inscriptions/inscriptionDescription" => Some(kind_or(
            kind,
            &[
                Holds::Signature,
                Holds::Numbering,
                Holds::Watermark,
                Holds::Marks,
            ],
            Holds::Inscription,
        )),
        "objectDescriptionSet" => Some(kind_or(
            kind,
            &[
                Holds::Condition,
                Holds::Provenance,
                Holds::Literature,
                Holds::Exhibition,
                Holds::Watermark,
                Holds::Paper,
                Holds::State,
                Holds::Kind,
            ],
            Holds::Remarks,
        )),
        "relatedWorkSet/object/objectName" | "relatedWorkSet/displayObject" => {
            let of = [
                Holds::Series,
                Holds::Literature,
                Holds::Exhibition,
                Holds::CatalogueNumber,
            ];
            let holds = by_word(kind).filter(|holds| of.contains(holds))?;
            Some((holds, By::Word))
        }
        "event" => match kind {
            "acquisition" => by_path(Holds::Credit),
            "acquisition by another" | "provenance" => by_path(Holds::Provenance),
            "exhibition" => by_path(Holds::Exhibition),
            _ => None,
        },
        "event/eventActor" if MAKING.contains(&kind) => by_path(Holds::Maker),
        "event/eventDate" if MAKING.contains(&kind) => by_path(Holds::Date),
        "event/eventMaterialsTech" if MAKING.contains(&kind) => by_path(Holds::Medium),
        bare => {
            let found = LIDO.iter().find(|(known, _)| *known == bare);
            found.map(|(_, holds)| (*holds, By::Path))
        }
    }
}

const STATEMENTS: &[(&str, Holds)] = &[
    ("credit line", Holds::Credit),
    ("acquisition statement", Holds::Credit),
    ("dimensions statement", Holds::Dimensions),
    ("materials statement", Holds::Medium),
    ("edition statement", Holds::Numbering),
    ("inscription statement", Holds::Inscription),
    ("markings statement", Holds::Marks),
    ("watermarks statement", Holds::Watermark),
    ("condition statement", Holds::Condition),
    ("provenance statement", Holds::Provenance),
    ("exhibition statement", Holds::Exhibition),
    ("bibliography statement", Holds::Literature),
    ("rights statement", Holds::Rights),
    ("production statement", Holds::Remarks),
    ("physical statement", Holds::Remarks),
    ("description", Holds::Remarks),
    ("note", Holds::Remarks),
    ("", Holds::Remarks),
];

const LINKED_ART: &[(&str, Holds)] = &[
    ("id", Holds::Id),
    ("equivalent/id", Holds::Id),
    ("produced_by/carried_out_by", Holds::Maker),
    ("produced_by/technique", Holds::Medium),
    ("made_of", Holds::Paper),
    ("dimension", Holds::Dimensions),
    ("current_owner", Holds::Holder),
    ("current_custodian", Holds::Holder),
    ("representation", Holds::Photograph),
];

fn linked_art(path: &str) -> Option<(Holds, By)> {
    let (bare, kind) = bare(path);
    let by_path = |holds| Some((holds, By::Path));
    match (bare.as_str(), kind) {
        ("identified_by", "accession number" | "call number") => by_path(Holds::Accession),
        ("identified_by", "former accession number") => by_path(Holds::FormerAccession),
        ("identified_by", "sort name") => None,
        ("identified_by", "identifier") => by_path(Holds::Id),
        ("identified_by", kind) if kind.ends_with(" number") => by_path(Holds::Id),
        ("identified_by", kind) => match kind.strip_prefix("identifier: ") {
            Some(word) => Some(kind_or(
                word,
                &[
                    Holds::Accession,
                    Holds::FormerAccession,
                    Holds::CatalogueNumber,
                ],
                Holds::Id,
            )),
            None => by_path(Holds::Title),
        },
        ("referred_to_by", kind) => {
            let known = STATEMENTS.iter().find(|(known, _)| *known == kind);
            match known {
                Some((_, holds)) => by_path(*holds),
                None => Some((by_word(kind)?, By::Word)),
            }
        }
        ("produced_by/timespan", _) | ("produced_by/part/timespan", "printing" | "publishing") => {
            by_path(Holds::Date)
        }
        ("classified_as", "type of work") => by_path(Holds::Medium),
        ("changed_ownership_through", "") => by_path(Holds::Credit),
        ("changed_ownership_through", "by another") => by_path(Holds::Provenance),
        ("subject_of", "web page") => by_path(Holds::Web),
        (_, "") => {
            let found = LINKED_ART.iter().find(|(known, _)| *known == path);
            found.map(|(_, holds)| (*holds, By::Path))
        }
        _ => None,
    }
}

const IIIF: &[(&str, Holds)] = &[
    ("id", Holds::Id),
    ("label", Holds::Title),
    ("summary", Holds::Remarks),
    ("description", Holds::Remarks),
    ("rights", Holds::Rights),
    ("license", Holds::Rights),
    ("attribution", Holds::Remarks),
    ("items/image", Holds::Photograph),
    ("homepage", Holds::Web),
    ("provider/label", Holds::Holder),
];

fn iiif(path: &str) -> Option<(Holds, By)> {
    if let Some(label) = path.strip_prefix("metadata/") {
        return Some((by_word(label)?, By::Word));
    }
    if path == "requiredStatement" {
        return Some((Holds::Remarks, By::Path));
    }
    if let Some(label) = path.strip_prefix("requiredStatement/") {
        return Some(kind_or(
            label,
            &[Holds::Credit, Holds::Holder, Holds::Rights],
            Holds::Remarks,
        ));
    }
    let found = IIIF.iter().find(|(known, _)| *known == path);
    found.map(|(_, holds)| (*holds, By::Path))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn paths_hold_what_their_standard_says() {
        for (kind, path, holds) in [
            (TableKind::Lido, "titleSet@de", Some(Holds::Title)),
            (TableKind::Lido, "titleSet@de (2)", Some(Holds::Title)),
            (
                TableKind::Lido,
                "repositorySet/workID[inventory number]",
                Some(Holds::Accession),
            ),
            (
                TableKind::Lido,
                "repositorySet[former]/workID",
                Some(Holds::FormerAccession),
            ),
            (
                TableKind::Lido,
                "event[production]/eventActor",
                Some(Holds::Maker),
            ),
            (TableKind::Lido, "event[acquisition]/eventActor", None),
            (TableKind::Lido, "event[acquisition]", Some(Holds::Credit)),
            (
                TableKind::Lido,
                "inscriptions[Wasserzeichen]",
                Some(Holds::Watermark),
            ),
            (
                TableKind::Lido,
                "inscriptions[recto]",
                Some(Holds::Inscription),
            ),
            (
                TableKind::Lido,
                "objectDescriptionSet[Zustand]",
                Some(Holds::Condition),
            ),
            (TableKind::Lido, "objectWorkType", None),
            (
                TableKind::LinkedArt,
                "identified_by[accession number]",
                Some(Holds::Accession),
            ),
            (
                TableKind::LinkedArt,
                "identified_by[primary name]@fr",
                Some(Holds::Title),
            ),
            (
                TableKind::LinkedArt,
                "identified_by[identifier: Inv.-Nr.]",
                Some(Holds::Accession),
            ),
            (
                TableKind::LinkedArt,
                "referred_to_by[credit line]",
                Some(Holds::Credit),
            ),
            (
                TableKind::LinkedArt,
                "referred_to_by[Wasserzeichen]",
                Some(Holds::Watermark),
            ),
            (
                TableKind::LinkedArt,
                "produced_by/part[printing]/timespan",
                Some(Holds::Date),
            ),
            (TableKind::LinkedArt, "produced_by/carried_out_by/id", None),
            (TableKind::Iiif, "metadata/Datierung@de", Some(Holds::Date)),
            (
                TableKind::Iiif,
                "requiredStatement/Attribution@en",
                Some(Holds::Remarks),
            ),
            (TableKind::Iiif, "items/image", Some(Holds::Photograph)),
            (TableKind::Iiif, "seeAlso/id", None),
            (TableKind::Sheet, "titleSet", None),
        ] {
            let found = held(kind, path).map(|(holds, _)| holds);
            assert_eq!(found, holds, "{path}");
        }
    }
}
