//! The subject of an entry that each key of a record belongs to.

use keyblock_model::register::Subject;

/// The subject that a key of a record belongs to; `None` for keys that are told otherwise (a number), or that readers
/// do not see.
#[must_use]
pub fn subject(key: &str) -> Option<Subject> {
    Some(match key {
        "number" | "sort" | "publish" | "consent" => return None,
        "titles" => Subject::Titles,
        "name" | "names" | "formerly" | "title" => Subject::Name,
        "date" | "born" | "died" | "active" => Subject::Date,
        "makers" | "users" => Subject::Makers,
        "technique" | "support" => Subject::Technique,
        "size" => Subject::Size,
        "series" => Subject::Series,
        "subjects" => Subject::Motif,
        "matrices" => Subject::Matrices,
        "states" => Subject::States,
        "printings" => Subject::Printings,
        "variants" => Subject::Variants,
        "points" => Subject::Points,
        "holder" | "owner" | "accession" | "part" | "former_accessions" | "credit" | "status" => {
            Subject::Whereabouts
        }
        "identified" | "opinions" => Subject::Identification,
        "observed" | "blocks" => Subject::Observations,
        "kind" | "numbering" | "taken_from" | "without" | "sheet" | "condition" | "as_given" => {
            Subject::Sheet
        }
        "marks" => Subject::Marks,
        "provenance" | "provenance_line" | "sightings" => Subject::Provenance,
        "exhibited" => Subject::Exhibitions,
        "literature" | "known_from" | "cite" | "reference" => Subject::Literature,
        "pictures" | "reference_picture" | "picture" => Subject::Pictures,
        "comparisons" => Subject::Comparisons,
        "same_as" | "maybe_same_as" | "not_same_as" | "shares_sheet" | "goes_with" | "related"
        | "successor" => Subject::Relations,
        "standing" | "see" | "why" => Subject::Standing,
        _ => Subject::Particulars,
    })
}
