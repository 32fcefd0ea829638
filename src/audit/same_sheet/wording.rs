//! The reasons for and against one sheet, in words: [`agrees`] has those for, [`differs`] those against.

mod agrees;
mod differs;

use super::private;
use crate::audit::wording;
use crate::model::catalogue::Catalogue;
use crate::model::design::Design;
use crate::model::key::{ImpressionKey, Key};
use crate::model::place::Place;
use crate::model::size::Size;
use crate::study::Studies;
use crate::study::same_sheet::reason::{Evidence, MeasuredPart, PartyIdentity, Reason};
use crate::study::tolerance::PaperMeasure;

/// A reason as a phrase that can stand alone. It gives only the kind of what a record keeps private.
#[must_use]
pub fn reason(
    catalogue: &Catalogue,
    studies: &Studies,
    records: &[ImpressionKey; 2],
    reason: &Reason,
) -> String {
    if reason.is_private {
        return format!("{} kept private", reason.evidence.kind().what);
    }
    let words = in_words(catalogue, studies, records, reason, Disclosure::Public);
    private::left_out(catalogue, &words)
}

/// A reason as a phrase that can stand alone, private values included: for editors.
#[must_use]
pub fn reason_in_full(
    catalogue: &Catalogue,
    studies: &Studies,
    records: &[ImpressionKey; 2],
    reason: &Reason,
) -> String {
    in_words(catalogue, studies, records, reason, Disclosure::Full)
}

/// How much of the records may be named.
#[derive(Clone, Copy, PartialEq)]
enum Disclosure {
    /// Private values too.
    Full,
    /// What may be published.
    Public,
}

fn in_words(
    catalogue: &Catalogue,
    studies: &Studies,
    records: &[ImpressionKey; 2],
    reason: &Reason,
    disclosure: Disclosure,
) -> String {
    let Some(design) = catalogue.designs.get(&records[0].design) else {
        return String::new();
    };
    let wording = ReasonWording {
        catalogue,
        studies,
        design,
        records,
        places: reason.places,
        disclosure,
    };
    match &reason.evidence {
        Evidence::Shared(tie) => wording.shared(tie),
        Evidence::LastKnown(tie) => wording.last_known(tie),
        evidence if reason.bearing.is_for() => wording.agrees(evidence),
        evidence => wording.differs(evidence),
    }
}

/// A pair of records, and what is needed to put a reason about it into words.
struct ReasonWording<'a> {
    catalogue: &'a Catalogue,
    studies: &'a Studies,
    design: &'a Design,
    records: &'a [ImpressionKey; 2],
    places: [Place; 2],
    disclosure: Disclosure,
}

impl ReasonWording<'_> {
    /// The two records, as readers cite them.
    fn numbers(&self) -> [String; 2] {
        let numbers = self.records.each_ref();
        numbers.map(|record| self.catalogue.sheet_number(record))
    }

    /// The text, as recorded on the sheet or in the record of the mark, of the mark that a reason is about, from
    /// whichever record of the sheet has it.
    fn mark_text(&self) -> Option<String> {
        let catalogue = self.catalogue;
        let records = self.design.impressions.values();
        let mut marks = records.flat_map(|record| match self.disclosure {
            Disclosure::Full => &record.marks,
            Disclosure::Public => &catalogue.published_impression(record).marks,
        });
        let mark = marks.find(|mark| mark.place == self.places[0])?;
        let record = mark.record.as_ref().and_then(|key| match self.disclosure {
            Disclosure::Full => catalogue.marks.get(&key.value),
            Disclosure::Public => catalogue.published_mark(&key.value),
        });
        mark.described(record).text.clone()
    }

    fn exhibition<'a>(&'a self, key: &'a Key) -> &'a str {
        let exhibition = match self.disclosure {
            Disclosure::Full => self.catalogue.exhibitions.get(key),
            Disclosure::Public => self.catalogue.published_exhibition(key),
        };
        let title = exhibition.map_or(key.as_str(), |exhibition| exhibition.title.value.as_str());
        if title.is_empty() {
            private::LEFT_OUT
        } else {
            title
        }
    }

    fn holder(&self, key: &Key) -> String {
        let is_hidden = private::has_hidden_name(self.catalogue, key);
        if self.disclosure == Disclosure::Public && is_hidden {
            return private::LEFT_OUT.to_owned();
        }
        wording::person_or_holder(self.catalogue, key)
    }

    fn name(&self, who: &PartyIdentity) -> String {
        match who {
            PartyIdentity::Record(key) => self.holder(key),
            PartyIdentity::Named(name) => name.clone(),
        }
    }
}

fn in_mm([one, other]: &[Size; 2]) -> String {
    if one == other {
        format!("{one} mm on both")
    } else {
        format!("{one} and {other} mm")
    }
}

/// "the chain lines are 25 and 25.5 mm apart".
fn paper_in_words(measure: PaperMeasure, [one, other]: &[f64; 2]) -> String {
    let (what, unit) = match measure {
        PaperMeasure::ChainLines => ("the chain lines are", "mm apart"),
        PaperMeasure::LaidLines => ("the laid lines are", "to the centimetre"),
        PaperMeasure::Thickness => ("the papers are", "mm thick"),
    };
    if one.total_cmp(other).is_eq() {
        format!("{what} {one} {unit} on both")
    } else {
        format!("{what} {one} and {other} {unit}")
    }
}

fn part_word(part: MeasuredPart) -> &'static str {
    match part {
        MeasuredPart::Image => "image",
        MeasuredPart::Platemark => "platemark",
    }
}
