//! Rules: records are said to be one sheet, and what they record contradicts it. `same_as` is held to the same reasons
//! as a suggestion (docs/definitions.md, "Records that may be one sheet").

use std::collections::BTreeSet;

use super::too_often::MOST_RECORDS;
use super::{REASONS_GIVEN, wording};
use crate::audit::wording::person_or_holder;
use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::impression::{Impression, Status};
use crate::model::key::{ImpressionKey, Key};
use crate::model::place::{Place, Placed};
use crate::study::Studies;
use crate::study::same_sheet::joined;
use crate::study::same_sheet::reason::Bearing;

/// Two records are joined by `same_as`, perhaps through others, and a reason contradicts or excludes that they are one
/// sheet: two owners at one time, two states, two numbers, two places, and the like.
pub(in crate::audit) fn contradicted(
    catalogue: &Catalogue,
    studies: &Studies,
    findings: &mut Vec<Finding>,
) {
    let mut told = BTreeSet::new();
    for pair in joined::contradicted(catalogue, &studies.groups, MOST_RECORDS) {
        let strongest: Vec<_> = pair
            .with(Bearing::Excludes)
            .chain(pair.with(Bearing::Contradicts))
            .take(REASONS_GIVEN)
            .collect();
        let words: Vec<String> = strongest
            .iter()
            .map(|reason| wording::reason(catalogue, studies, &pair.records, reason))
            .collect();
        let Some([here, there]) = strongest.first().map(|reason| reason.places) else {
            continue;
        };
        findings.push(finding(
            catalogue,
            &pair.records,
            [here, there],
            &words.join("; "),
        ));
        told.insert(pair.records);
    }
    in_two_places(catalogue, studies, &told, findings);
}

/// Two located records of one sheet are with two holders, and nothing that was `told` contradicts already that they are
/// one.
fn in_two_places(
    catalogue: &Catalogue,
    studies: &Studies,
    told: &BTreeSet<[ImpressionKey; 2]>,
    findings: &mut Vec<Finding>,
) {
    for (_, keys) in studies.groups.of_several() {
        let located = keys.iter().filter_map(|key| {
            let record = catalogue.impression(key)?;
            let stands = !record.standing.is_withdrawn();
            let holder = record.holder.as_ref()?;
            (stands && record.status.value == Status::Located).then_some((record, holder))
        });
        let mut located: Vec<(&Impression, &Placed<Key>)> = located.collect();
        if located.len() < 2 || keys.len() > MOST_RECORDS {
            continue;
        }
        let (first, holder) = located.remove(0);
        for (other, there) in located {
            if catalogue.are_one_house(&holder.value, &there.value) {
                continue;
            }
            let name = |key: &Placed<Key>| person_or_holder(catalogue, &key.value);
            let words = format!(
                "{} is with {}, {} with {}",
                first.key,
                name(holder),
                other.key,
                name(there)
            );
            let records = [first.key.clone(), other.key.clone()];
            if told.contains(&records) {
                continue;
            }
            findings.push(finding(
                catalogue,
                &records,
                [holder.place, there.place],
                &words,
            ));
        }
    }
}

/// Two records of two designs are said to be one sheet.
pub(in crate::audit) fn of_two_designs(
    catalogue: &Catalogue,
    _: &Studies,
    findings: &mut Vec<Finding>,
) {
    for (design, impression) in catalogue.impressions() {
        for other in &impression.same_as {
            let key = &other.impression.value;
            let Some(there) = catalogue
                .impression(key)
                .filter(|_| key.design != design.key)
            else {
                continue;
            };
            findings.push(
                Finding::new(
                    Code::SameSheetContradicted,
                    other.impression.place,
                    format!(
                        "{} and {} are said to be one sheet, but they are of two designs",
                        design.sheet_number(impression),
                        catalogue.sheet_number(key)
                    ),
                )
                .saying("said to be the same sheet")
                .beside(there.place, catalogue.sheet_number(key))
                .help(
                    "write `shares_sheet` where both are printed on one paper; else take away `same_as`",
                ),
            );
        }
    }
}

fn finding(
    catalogue: &Catalogue,
    [one, other]: &[ImpressionKey; 2],
    [here, there]: [Place; 2],
    words: &str,
) -> Finding {
    let [first, second] = [one, other].map(|record| catalogue.sheet_number(record));
    let mut finding = Finding::new(
        Code::SameSheetContradicted,
        there,
        format!("{first} and {second} are said to be one sheet, but {words}"),
    )
    .saying(second)
    .beside(here, first);
    if let Some(link) = link(catalogue, one, other) {
        finding = finding.beside(link, "said to be the same sheet");
    }
    finding.help(
        "look again at both: correct what is wrong, or call what is not certain `probable`; if they are two sheets, \
         write `not_same_as` in place of `same_as`",
    )
}

/// The place where one of the two says that they are one; `None` where others join them.
fn link(catalogue: &Catalogue, one: &ImpressionKey, other: &ImpressionKey) -> Option<Place> {
    let says = |from: &ImpressionKey, to: &ImpressionKey| {
        let mut links = catalogue.impression(from)?.same_as.iter();
        let link = links.find(|link| link.impression.value == *to)?;
        Some(link.impression.place)
    };
    says(one, other).or_else(|| says(other, one))
}
