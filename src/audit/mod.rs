//! Finds what is wrong or doubtful in the records of a catalogue, taken together.
//!
//! A rule is a small function over the model and the studies. It adds findings, each with the place of the
//! value at fault, the place it clashes with, and what to do. Rules correct nothing. They draw no
//! contradiction from a loose date (approximate, uncertain or a season:
//! [`crate::model::edtf::Date::is_loose`]) or from a statement that is not certain.
//!
//! In: [`Catalogue`] and [`Studies`]. Out: findings, in no particular order (`finding::sort`).
//! Not here: whether the records can be read at all, and whether what they name exists (`read`).

use rayon::prelude::*;

use crate::model::catalogue::Catalogue;
use crate::model::finding::Finding;
use crate::study::Studies;

mod after_catalogue;
mod before_print;
mod dates;
mod design_numbers;
mod destruction;
mod editions;
mod firm;
mod identification;
mod identified_before;
mod issued_addresses;
mod life_dates;
mod mark_records;
mod marks_alone;
mod papers;
mod printing_order;
pub mod private_names;
mod provenance;
mod provenance_text;
mod published;
mod rights;
pub mod same_sheet;
mod separability;
mod series;
pub mod settled;
mod shared_marks;
mod signs;
mod size_slips;
mod sizes;
mod states;
mod successors;
mod whereabouts;
mod wording;

/// A rule: adds what it finds in the whole catalogue.
type Rule = fn(&Catalogue, &Studies, &mut Vec<Finding>);

/// Every rule.
const RULES: &[Rule] = &[
    states::shows_other,
    states::shows_conflict,
    states::no_difference,
    states::in_no_printing,
    separability::states,
    separability::printings,
    separability::could_be_settled,
    shared_marks::relied_on,
    mark_records::out_of_time,
    mark_records::user_unlisted,
    mark_records::other_kind,
    marks_alone::printings,
    marks_alone::certain,
    printing_order::backwards,
    printing_order::unlike_wear,
    identification::contradicted,
    identification::not_in_printing,
    identification::withdrawn,
    identification::look_again,
    identified_before::look_again,
    dates::before_state,
    dates::outside_printing,
    dates::paper_too_late,
    dates::backwards,
    destruction::after_destruction,
    life_dates::printings,
    life_dates::makers,
    life_dates::witnesses,
    editions::numbering_form,
    editions::numbers,
    editions::number_twice,
    editions::number_twice_unidentified,
    design_numbers::number_twice,
    whereabouts::status,
    after_catalogue::dated_later,
    series::above_declared,
    series::position_twice,
    series::named_by_title,
    sizes::disagree,
    sizes::larger_than_sheet,
    papers::larger_than_frame,
    papers::wove_with_lines,
    size_slips::sheets,
    size_slips::other_figures,
    size_slips::parts,
    provenance::order,
    provenance::overlap,
    provenance_text::beyond_entries,
    provenance_text::note_beyond_entries,
    before_print::known_before_print,
    successors::after_the_end,
    same_sheet::same_and_not,
    same_sheet::too_often,
    same_sheet::unsettled,
    same_sheet::contradicted,
    same_sheet::of_two_designs,
    private_names::name_published,
    rights::unsaid,
    issued_addresses::vanished,
    issued_addresses::reused,
    issued_addresses::replaced,
    signs::invisible,
    signs::direction,
];

/// Applies every rule.
#[must_use]
pub fn audit(catalogue: &Catalogue, studies: &Studies) -> Vec<Finding> {
    RULES
        .par_iter()
        .map(|rule| {
            let mut findings = Vec::new();
            rule(catalogue, studies, &mut findings);
            findings
        })
        .collect::<Vec<_>>()
        .concat()
}
