//! A row as a record that can be compared with others: what `study::same_sheet` reads of an impression.
//!
//! In: a row and who hands it in. Out: an [`Impression`] with the facts that are certain of it. It is compared and never
//! written: the record that a row proposes is made elsewhere, and may be compared in its place.

use keyblock::exchange::intake::columns::Holds;
use keyblock::exchange::intake::facts::GivenSize;
use keyblock::exchange::intake::handing::HandingIn;
use keyblock::exchange::intake::proposal::ProposedRow;
use keyblock::exchange::intake::reading::dates::Act;
use keyblock::exchange::intake::reading::sizes::Measured;
use keyblock::model::certainty::{Claim, Statement, Statements};
use keyblock::model::impression::{
    FormerAccession, Identification, Impression, StateReading, Status,
};
use keyblock::model::key::{ImpressionKey, Key};
use keyblock::model::place::{Place, Placed};
use keyblock::model::sheet::{Measuring, Sheet};
use keyblock::model::size::Size;

/// The row as a record with a key.
#[must_use]
pub fn comparable(row: &ProposedRow, handing: &HandingIn, key: ImpressionKey) -> Impression {
    let facts = &row.facts;
    let holder = row.holder(handing);
    let former = facts.texts.get(Holds::FormerAccession);
    let former = former.map(|number| FormerAccession {
        holder: holder.map(placed),
        number: number.to_owned(),
        until: None,
    });
    Impression {
        holder: holder.map(placed),
        accession: row.accession.as_ref().map(placed),
        former_accessions: former.into_iter().collect(),
        status: placed(&Status::Located),
        kind: stated(facts.kind.as_ref()),
        numbering: facts.numbering.as_ref().map(placed),
        identified: identified(row),
        sheet: sheet(row),
        ..Impression::blank(key)
    }
}

fn sheet(row: &ProposedRow) -> Sheet {
    let size = |of| row.facts.size_of(of).and_then(GivenSize::size);
    let sizes = |size: Option<Size>| stated(size.as_ref());
    let paper = match &row.facts.papers[..] {
        [paper] => Some(placed(paper)),
        _ => None,
    };
    let pulled = row.facts.date_of(Act::Pulled).and_then(|when| when.date());
    Sheet {
        size: sizes(size(Measured::Sheet)),
        image: sizes(size(Measured::Image)),
        platemark: sizes(size(Measured::Platemark)),
        unsaid: sizes(size(Measured::Unsaid)),
        measuring: Measuring {
            sight: row.facts.sizes.iter().any(|size| size.is_sight),
            ..Measuring::default()
        },
        paper,
        date: stated(pulled),
        ..Sheet::default()
    }
}

/// The state and printing that the row names in this catalogue's terms.
fn identified(row: &ProposedRow) -> Option<Identification> {
    let named = &row.named;
    if named.states.is_empty() && named.printings.is_empty() {
        return None;
    }
    let each = |keys: &[Key]| keys.iter().map(placed).collect::<Vec<_>>();
    let state = (!named.states.is_empty()).then(|| StateReading::OneOf(each(&named.states)));
    Some(Identification {
        state,
        printing: each(&named.printings),
        variant: None,
        kind: None,
        why: None,
        claim: Claim::default(),
        or: Vec::new(),
        place: Place::default(),
    })
}

fn placed<T: Clone>(value: &T) -> Placed<T> {
    Placed::new(value.clone(), Place::default())
}

fn stated<T: Clone>(value: Option<&T>) -> Statements<T> {
    let statement = value.map(|value| Statement {
        is: placed(value),
        claim: Claim::default(),
    });
    Statements(statement.into_iter().collect())
}
