//! What is not published until an editor decides (docs/trade.md, "Private owners").
//!
//! A museum's own words about its sheet are public as it publishes them, its credit line with the donor's name among
//! them. Not published by default:
//! - cells of columns that were not recognised, remarks, and rights: such columns of a house's own files hold values,
//!   places and names that were never meant for readers. A cell that says nothing which another does not say is public
//!   with that other one;
//! - the name of somebody who saw the sheet and has no record here;
//! - what an editor said that the sheet is not, and why: it was said to intake alone, and may rest on what is private;
//! - of a sheet in private hands, or whose holder is not known: the credit line, the page on the web, the provenance, the
//!   words of marks other than signatures, and the cells in which these stand, since each may name the owner;
//! - whatever names somebody whom the catalogue keeps private.

use std::cell::OnceCell;

use super::draft::Withheld;
use super::given::GivenNames;
use crate::exchange::intake::columns::{ColumnReading, Holds};
use crate::model::as_found::GivenField;
use crate::model::catalogue::Catalogue;
use crate::model::holder::HolderKind;
use crate::model::impression::Impression;
use crate::model::key::Key;
use crate::model::provenance::Party;
use crate::study::search::words::number_parts;

/// What of an impression is withheld.
pub(super) fn withheld(
    impression: &Impression,
    columns: &[ColumnReading],
    names: &GivenNames,
    catalogue: &Catalogue,
    tells_private: &dyn Fn(&str) -> bool,
) -> Withheld {
    let seen_by = impression
        .sightings
        .iter()
        .any(|sighting| matches!(sighting.by, Some(Party::Named(_))));
    let holder = impression.holder.as_ref().map(|holder| &holder.value);
    let is_private = is_in_private_hands(holder, catalogue);
    let is_kept = |column: &ColumnReading| match column.holds {
        Holds::SeenBy => seen_by,
        holds => is_never_public(holds) || (is_private && may_name_the_owner(holds)),
    };
    let kept: Vec<&str> = columns
        .iter()
        .filter(|column| is_kept(column))
        .filter_map(|column| names.name(column.column))
        .collect();
    let fields = impression.as_given.iter().flat_map(|given| &given.fields);
    let fields: Vec<&GivenField> = fields.collect();
    let is_of_kept = |field: &GivenField| kept.contains(&field.name.value.as_str());
    // The words of the public fields, made where a field is to be kept.
    let public = OnceCell::new();
    let is_public = |field: &GivenField| {
        let public: &Vec<String> = public.get_or_init(|| {
            let public = fields.iter().filter(|field| !is_of_kept(field));
            public.map(|field| words_of(&field.text)).collect()
        });
        let words = words_of(&field.text);
        public.iter().any(|other| other.contains(&words))
    };
    let is_given_kept = |field: &GivenField| {
        (is_of_kept(field) && (is_private || !is_public(field))) || tells_private(&field.text)
    };
    let given: Vec<String> = fields
        .iter()
        .filter(|field| is_given_kept(field))
        .map(|field| field.name.value.clone())
        .collect();
    let mut keys = Vec::new();
    let mut keep = |key, text: Option<&str>| {
        let is_kept = text.is_some_and(|text| is_private || tells_private(text));
        keys.extend(is_kept.then_some(key));
    };
    keep("credit", impression.credit.as_deref());
    keep("web", impression.web.as_deref().map(String::as_str));
    let line = impression.provenance_line.as_deref();
    keep("provenance_line", line.map(String::as_str));
    let named = impression
        .provenance
        .iter()
        .filter_map(|entry| match &entry.party {
            Party::Named(name) => Some(name.value.as_str()),
            Party::Record(_) | Party::Undisclosed => None,
        });
    let names: Vec<&str> = named.collect();
    let names = names.join("; ");
    keep(
        "provenance",
        (!impression.provenance.is_empty()).then_some(names.as_str()),
    );
    let words_of_marks = impression
        .marks
        .iter()
        .flat_map(|mark| [mark.text.as_deref(), mark.note.as_deref()]);
    let marks = is_private || words_of_marks.flatten().any(tells_private);
    if impression
        .condition
        .iter()
        .any(|noted| tells_private(&noted.what))
    {
        keys.push("condition");
    }
    if !impression.not_same_as.is_empty() {
        keys.push("not_same_as");
    }
    Withheld {
        keys,
        given,
        seen_by,
        marks,
    }
}

/// Columns that no house publishes as they are, or of which it is not known what they hold.
fn is_never_public(holds: Holds) -> bool {
    matches!(holds, Holds::Unknown | Holds::Remarks | Holds::Rights)
}

/// Columns that may name an owner.
fn may_name_the_owner(holds: Holds) -> bool {
    matches!(
        holds,
        Holds::Credit
            | Holds::Provenance
            | Holds::Holder
            | Holds::Department
            | Holds::Web
            | Holds::Marks
            | Holds::Inscription
            | Holds::Photograph
    )
}

/// The words of a text, each between two stops.
fn words_of(text: &str) -> String {
    format!(".{}.", number_parts(text).join("."))
}

/// Whether the holder is a private owner without consent, or is not known.
fn is_in_private_hands(holder: Option<&Key>, catalogue: &Catalogue) -> bool {
    let Some(holder) = holder.and_then(|holder| catalogue.holders.get(holder)) else {
        return true;
    };
    holder.kind == HolderKind::Private
}
