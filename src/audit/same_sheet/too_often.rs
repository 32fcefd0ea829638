//! Rule: more records are said to be one sheet than any sheet has. The page of each record names all others,
//! so that pages would grow with the square of their number.

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::study::Studies;

/// How many records may be one sheet. A sheet has one for each collection, sale or list in which it was not
/// recognised.
pub const MOST_RECORDS: usize = 100;

/// More than [`MOST_RECORDS`] records are joined by `same_as`.
pub(in crate::audit) fn too_often(
    catalogue: &Catalogue,
    studies: &Studies,
    findings: &mut Vec<Finding>,
) {
    for (first, records) in studies.groups.of_several() {
        if records.len() <= MOST_RECORDS {
            continue;
        }
        let mut links = records.iter().filter_map(|key| {
            let link = catalogue.impression(key)?.same_as.first()?;
            Some(link.impression.place)
        });
        let Some(place) = links.next() else { continue };
        let message = format!(
            "{} records are said to be the sheet {}, more than {MOST_RECORDS}",
            records.len(),
            catalogue.sheet_number(first)
        );
        findings.push(
            Finding::new(Code::SheetTooOften, place, message)
                .saying("the first of the links")
                .help("take away the links between records of different sheets"),
        );
    }
}
