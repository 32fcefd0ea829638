//! Rule: a number that means two designs. Readers cite by number and commands take numbers and keys, so each must name
//! one design.

use std::collections::BTreeMap;

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::design::Design;
use crate::model::finding::Finding;
use crate::study::Studies;

/// Two designs have one number, without regard to case and spaces, or the number of one is the key of another.
pub(super) fn number_twice(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    let mut numbered: BTreeMap<String, &Design> = BTreeMap::new();
    for design in catalogue.designs.values() {
        let number = plain(&design.number);
        let keyed = catalogue
            .designs
            .values()
            .find(|other| other.key != design.key && plain(other.key.as_str()) == number);
        if let Some(other) = keyed {
            findings.push(finding(design, other, "key"));
        } else if let Some(other) = numbered.get(&number) {
            findings.push(finding(design, other, "number"));
        }
        numbered.entry(number).or_insert(design);
    }
}

fn plain(text: &str) -> String {
    let letters = text.chars().filter(|c| !c.is_whitespace());
    letters.flat_map(char::to_lowercase).collect()
}

fn finding(design: &Design, other: &Design, of_other: &str) -> Finding {
    Finding::new(
        Code::DesignNumberTwice,
        design.number_place,
        format!(
            "the number of design `{}`, {}, is also the {of_other} of design `{}`",
            design.key, design.number, other.key
        ),
    )
    .beside(other.number_place, format!("design `{}`", other.key))
    .help("give each design a number of its own, such as `12a`, that is no other design's key")
}
