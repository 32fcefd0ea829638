//! The subject of an entry that each key of a record belongs to.

use crate::model::register::Subject;

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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::read::shape::{DESIGN, IMPRESSION};

    /// Particulars are for holders, people and marks, and for what every kind of record may have: a page or an identifier
    /// elsewhere. Another new key of a design or an impression must be given a subject.
    #[test]
    fn every_key_of_a_design_and_of_an_impression_has_a_subject() {
        for shape in [&DESIGN, &IMPRESSION] {
            for key in shape.keys() {
                let is_silent = ["private", "settled", "was", "web", "ids"].contains(&key.name);
                assert!(
                    is_silent || subject(key.name) != Some(Subject::Particulars),
                    "`{}` of {} has no subject",
                    key.name,
                    shape.name
                );
            }
        }
    }
}
