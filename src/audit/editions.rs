//! Rules on the numbers of sheets, against the declared edition.

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::design::Design;
use crate::model::finding::Finding;
use crate::model::impression::{Impression, OtherSheet};
use crate::model::key::{ImpressionKey, Key};
use crate::model::place::Placed;
use crate::model::printing::Printing;
use crate::study::Studies;
use crate::study::candidates::{allowed_by, candidates};
use crate::study::editions::{
    EditionNumber, Numbering, numbers_met, only_printing, read_numbering, sheets_among,
};

use super::wording;

/// A numbering has no form that can be counted.
pub(super) fn numbering_form(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for (_, impression) in catalogue.impressions() {
        let Some(numbering) = &impression.numbering else {
            continue;
        };
        // An empty text is a finding of `read`.
        if read_numbering(&numbering.value).is_none() && !numbering.value.trim().is_empty() {
            findings.push(
                Finding::new(
                    Code::NumberingForm,
                    numbering.place,
                    format!(
                        "the numbering of {} has no form that can be counted",
                        catalogue.sheet_number(&impression.key)
                    ),
                )
                .help("write it as `12/50`, `12`, `XII/L` or `AP 3/10`; anything else written there is an inscription"),
            );
        }
    }
}

/// A number is above the edition, gives the size of an edition that no source declares, or on a sheet of a
/// printing that is not numbered.
pub(super) fn numbers(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for (design, impression) in catalogue.impressions() {
        let Some(numbering) = &impression.numbering else {
            continue;
        };
        let Some(Numbering::Edition(number)) = read_numbering(&numbering.value) else {
            continue;
        };
        if impression.standing.is_withdrawn() {
            continue;
        }
        let printing = only_printing(impression).and_then(|key| design.printing(key));
        let above = above_edition(catalogue, impression, numbering, number, printing);
        let is_above = above.is_some();
        findings.extend(above);
        if let Some(printing) = printing {
            // A number above the edition is one finding, not two.
            if !is_above {
                findings.extend(of_other_edition(
                    catalogue, impression, numbering, number, printing,
                ));
            }
            findings.extend(unexpected(design, impression, numbering, printing));
        }
    }
}

fn above_edition(
    catalogue: &Catalogue,
    impression: &Impression,
    numbering: &Placed<String>,
    number: EditionNumber,
    printing: Option<&Printing>,
) -> Option<Finding> {
    let key = catalogue.sheet_number(&impression.key);
    let found = |message: String| Finding::new(Code::NumberAboveEdition, numbering.place, message);
    let largest = printing.and_then(|p| p.edition.iter().max_by_key(|c| c.is.value));
    if let (Some(largest), Some(printing)) = (largest, printing)
        && number.number > largest.is.value
    {
        return Some(
                found(format!(
                    "{key} is numbered {}, but {} is declared to be of {}",
                    number.number,
                    wording::printing(&printing.key.value),
                    largest.is.value
                ))
                .saying("numbered")
                .beside(largest.is.place, wording::attributed(catalogue, &largest.claim, "declared"))
                .help("read the number again, add the source that declares a larger edition, or identify the sheet with another printing"),
            );
    }
    let of = number.of.filter(|of| number.number > *of)?;
    Some(
        found(format!(
            "{key} is numbered {} of an edition of {of}",
            number.number
        ))
        .help("read the number again"),
    )
}

fn of_other_edition(
    catalogue: &Catalogue,
    impression: &Impression,
    numbering: &Placed<String>,
    number: EditionNumber,
    printing: &Printing,
) -> Option<Finding> {
    let of = number.of?;
    let declared = printing.edition.0.first()?;
    // Roman numerals number a part of the edition that has a size of its own; the declared size is the whole.
    if number.is_roman || printing.edition.iter().any(|claim| claim.is.value == of) {
        return None;
    }
    Some(
        Finding::new(
            Code::NumberOfOtherEdition,
            numbering.place,
            format!(
                "{} is numbered as one of {of}, but {} is declared to be of {}",
                catalogue.sheet_number(&impression.key),
                wording::printing(&printing.key.value),
                declared.is.value
            ),
        )
        .saying("numbered")
        .beside(declared.is.place, wording::attributed(catalogue, &declared.claim, "declared"))
        .help("read the number again, add the claim to the printing's `edition`, or identify the sheet with another printing"),
    )
}

fn unexpected(
    design: &Design,
    impression: &Impression,
    numbering: &Placed<String>,
    printing: &Printing,
) -> Option<Finding> {
    if printing.numbered != Some(false) {
        return None;
    }
    Some(
        Finding::new(
            Code::NumberUnexpected,
            numbering.place,
            format!(
                "{} is numbered, but {} is said not to be numbered",
                design.sheet_number(impression),
                wording::printing(&printing.key.value)
            ),
        )
        .saying("numbered")
        .beside(printing.key.place, "said not to be numbered")
        .help("identify the sheet with another printing, or correct `numbered`"),
    )
}

/// Two distinct sheets of one printing have the same number.
pub(super) fn number_twice(catalogue: &Catalogue, studies: &Studies, findings: &mut Vec<Finding>) {
    for design in catalogue.designs.values() {
        for (printing, met) in numbers_met(design) {
            let of = wording::printing(printing);
            for records in met
                .values()
                .filter(|r| sheets_among(&studies.groups, r) > 1)
            {
                let Some((first, others)) = records.split_first() else {
                    continue;
                };
                let later = others
                    .iter()
                    .filter(|o| studies.groups.first_of(o) != studies.groups.first_of(first));
                let wear = studies
                    .designs
                    .get(&design.key)
                    .map(|study| &study.unlike_wear);
                findings.extend(later.filter_map(|other| {
                    let found = twice(design, Some(&of), first, other)?;
                    let mut unlike = wear.into_iter().flatten();
                    let are_two =
                        unlike.any(|u| u.records.contains(first) && u.records.contains(other));
                    // That they may be one sheet would be said in vain.
                    Some(if are_two {
                        found.help("read both numbers again: by their wear these are two sheets")
                    } else {
                        found
                    })
                }));
            }
        }
    }
}

/// Two distinct sheets have the same number, and the printing of one of them is not settled, so that they may be of one
/// edition. Where both give the size of the edition and it differs, they are not.
pub(super) fn number_twice_unidentified(
    catalogue: &Catalogue,
    studies: &Studies,
    findings: &mut Vec<Finding>,
) {
    for design in catalogue.designs.values() {
        let numbered: Vec<(&Impression, EditionNumber)> = design
            .impressions
            .values()
            .filter(|i| !i.standing.is_withdrawn())
            .filter_map(|i| match read_numbering(&i.numbering.as_ref()?.value)? {
                Numbering::Edition(number) => Some((i, number)),
                Numbering::Proof => None,
            })
            .collect();
        for (at, (other, again)) in numbered.iter().enumerate() {
            let before = numbered.get(..at).unwrap_or_default();
            let first = before.iter().find(|(first, number)| {
                let is_settled = only_printing(first).is_some() && only_printing(other).is_some();
                let sizes_fit = number.of.is_none() || again.of.is_none() || number.of == again.of;
                let is_one_number =
                    number.number == again.number && number.is_roman == again.is_roman;
                let is_one_sheet =
                    studies.groups.first_of(&first.key) == studies.groups.first_of(&other.key);
                !is_settled
                    && sizes_fit
                    && is_one_number
                    && !is_one_sheet
                    && may_share_printing(design, first, other)
            });
            findings
                .extend(first.and_then(|(first, _)| twice(design, None, &first.key, &other.key)));
        }
    }
}

/// Whether two sheets may be of one printing that is not said to be unnumbered; so they may where none is recorded.
fn may_share_printing(design: &Design, one: &Impression, two: &Impression) -> bool {
    let allowed = |impression: &Impression| -> Vec<&Key> {
        let candidates = match &impression.identified {
            Some(identified) => allowed_by(design, identified),
            None => candidates(design),
        };
        let printings = candidates.iter().filter_map(|c| c.printing);
        let numbered = printings.filter(|p| p.numbered != Some(false));
        numbered.map(|p| &p.key.value).collect()
    };
    let of_two = allowed(two);
    design.standing_printings().next().is_none()
        || allowed(one)
            .iter()
            .any(|printing| of_two.contains(printing))
}

fn twice(
    design: &Design,
    printing: Option<&str>,
    first: &ImpressionKey,
    other: &ImpressionKey,
) -> Option<Finding> {
    let record = |key: &ImpressionKey| design.impressions.get(&key.number);
    let (first, other) = (record(first)?, record(other)?);
    let sheet_numbers = [other, first].map(|sheet| design.sheet_number(sheet));
    let [other_number, first_number] = &sheet_numbers;
    let (number, again) = (first.numbering.as_ref()?, other.numbering.as_ref()?);
    let link = |links: fn(&Impression) -> &[OtherSheet]| {
        let names = |one: &Impression, two: &Impression| {
            links(one).iter().any(|o| o.impression.value == two.key)
        };
        names(first, other) || names(other, first)
    };
    let help = if link(|i| &i.not_same_as) {
        "read both numbers again; if one number was given to two sheets, say so in the notes"
    } else if link(|i| &i.maybe_same_as) {
        "settle whether the two records are one sheet: `same_as` or `not_same_as`"
    } else {
        "see whether the two records are one sheet (`same_as`), and read both numbers again"
    };
    Some(
        Finding::new(
            Code::NumberTwice,
            again.place,
            match printing {
                Some(printing) => format!(
                    "{other_number} has the same number of {printing} as {first_number}"
                ),
                None => format!(
                    "{other_number} has the same number as {first_number}, and they may be of one printing"
                ),
            },
        )
        .saying(other_number.clone())
        .beside(number.place, first_number.clone())
        .help(help),
    )
}
