//! The facts that exclude that two records are one sheet: two numbers, two lots, two places at one time, a
//! loss.
//!
//! In: two records. Out: reasons that exclude. What counts as certain: `docs/trade.md, "Same sheet or two"`.

use crate::census::editions::{Numbering, read_numbering};
use crate::same_sheet::days::{firm, lasted};
use crate::same_sheet::facts::CatalogueFacts;
use crate::same_sheet::reason::{Bearing, Evidence, PartyIdentity, Reason};
use crate::same_sheet::record::ComparedRecord;
use crate::same_sheet::texts::plain_number;
use keyblock_model::exhibition::{Exhibition, Venue};
use keyblock_model::impression::{Impression, Status};
use keyblock_model::place::Place;
use keyblock_model::provenance::{PartyRole, ProvenanceEntry};

pub(super) fn compare(
    facts: &CatalogueFacts<'_>,
    one: &ComparedRecord<'_>,
    other: &ComparedRecord<'_>,
    reasons: &mut Vec<Reason>,
) {
    let (one, other) = (one.impression, other.impression);
    let found = [
        numbers(one, other),
        accessions(facts, one, other),
        lots(facts, one, other),
        exhibits(facts, one, other),
        destroyed(one, other),
        said_beside(one, other),
    ];
    let found = found.into_iter().flatten();
    reasons
        .extend(found.map(|(evidence, places)| Reason::new(Bearing::Excludes, evidence, places)));
}

type Exclusion = Option<(Evidence, [Place; 2])>;

/// Two numbers in one script, or one of the edition and one of a proof. A number in roman numerals
/// beside one in figures may number a set within the edition.
fn numbers(one: &Impression, other: &Impression) -> Exclusion {
    let (a, b) = (one.numbering.as_ref()?, other.numbering.as_ref()?);
    let is_apart = match (read_numbering(&a.value)?, read_numbering(&b.value)?) {
        (Numbering::Edition(a), Numbering::Edition(b)) => {
            let other_size = matches!((a.of, b.of), (Some(a), Some(b)) if a != b);
            a.is_roman == b.is_roman && (a.number != b.number || other_size)
        }
        (Numbering::Proof, Numbering::Proof) => false,
        _ => true,
    };
    let evidence = Evidence::OtherNumber([a.value.clone(), b.value.clone()]);
    is_apart.then_some((evidence, [a.place, b.place]))
}

/// A public holder that gives two things two numbers, or says of two that they are two parts of one; renumbering leaves
/// a former number behind.
fn accessions(facts: &CatalogueFacts<'_>, one: &Impression, other: &Impression) -> Exclusion {
    let (holder, there) = (one.holder.as_ref()?, other.holder.as_ref()?);
    let (a, b) = (one.accession.as_ref()?, other.accession.as_ref()?);
    let was = |impression: &Impression, number: &str| {
        let mut former = impression.former_accessions.iter();
        former.any(|f| f.number.trim() == number)
    };
    let part =
        |impression: &Impression| impression.part.as_ref().map(|p| p.value.trim().to_owned());
    let are_two_parts = part(one)
        .zip(part(other))
        .is_some_and(|(one, other)| one != other);
    let are_two_numbers = a.value.trim() != b.value.trim()
        && !was(one, b.value.trim())
        && !was(other, a.value.trim());
    let is_apart = holder.value == there.value
        && facts.is_lasting(&holder.value)
        && (are_two_numbers || a.value.trim() == b.value.trim() && are_two_parts);
    let numbers = [one, other].map(|sheet| sheet.accession_and_part().unwrap_or_default());
    let evidence = Evidence::OtherAccession {
        holder: holder.value.clone(),
        numbers,
    };
    is_apart.then_some((evidence, [a.place, b.place]))
}

/// Two lots of one sale on one day, where both sales are certain.
fn lots(facts: &CatalogueFacts<'_>, one: &Impression, other: &Impression) -> Exclusion {
    let sold = |entry: &&ProvenanceEntry| {
        entry.role == PartyRole::Agent && entry.lot.is_some() && entry.is_certain()
    };
    let mut pairs = one.provenance.iter().filter(sold).flat_map(|a| {
        let there = other.provenance.iter().filter(sold);
        there.map(move |b| (a, b))
    });
    pairs.find_map(|(a, b)| {
        let (agent, there) = (PartyIdentity::of(&a.party)?, PartyIdentity::of(&b.party)?);
        let (day, again) = (firm(a.from.as_ref())?, firm(b.from.as_ref())?);
        let lots = [a.lot.clone()?, b.lot.clone()?];
        let is_apart = !facts.are_different(&agent, &there)
            && day.0 == day.1
            && day == again
            && lots[0].trim() != lots[1].trim();
        let date = a.from.as_ref()?.value.clone();
        let evidence = Evidence::OtherLot { agent, date, lots };
        is_apart.then_some((evidence, [a.place, b.place]))
    })
}

/// Two numbers of one exhibition, or two exhibitions that ran in two places at one time.
fn exhibits(facts: &CatalogueFacts<'_>, one: &Impression, other: &Impression) -> Exclusion {
    for a in one.exhibited.iter().filter(|shown| shown.is_certain()) {
        for b in other.exhibited.iter().filter(|shown| shown.is_certain()) {
            let places = [a.exhibition.place, b.exhibition.place];
            let keys = [a.exhibition.value.clone(), b.exhibition.value.clone()];
            if keys[0] == keys[1] {
                let numbers =
                    [a.at.as_deref(), b.at.as_deref()].map(|at| at.and_then(plain_number));
                let [Some(x), Some(y)] = numbers else {
                    continue;
                };
                if x != y {
                    let [exhibition, _] = keys;
                    let at = [x, y];
                    return Some((Evidence::OtherExhibit { exhibition, at }, places));
                }
                continue;
            }
            let shows = [&keys[0], &keys[1]].map(|key| facts.catalogue.exhibitions.get(key));
            if let [Some(x), Some(y)] = shows
                && are_elsewhere(facts, x, y)
                && ran_together(x, y)
            {
                return Some((Evidence::TwoPlaces(keys), places));
            }
        }
    }
    None
}

fn are_elsewhere(facts: &CatalogueFacts<'_>, one: &Exhibition, other: &Exhibition) -> bool {
    let venue = |exhibition: &Exhibition| {
        exhibition.venue.as_ref().map(|venue| match venue {
            Venue::Holder(key) => PartyIdentity::Record(key.value.clone()),
            Venue::Named(name) => PartyIdentity::Named(name.trim().to_owned()),
        })
    };
    match (venue(one), venue(other)) {
        (Some(one), Some(other)) => facts.are_different(&one, &other),
        _ => false,
    }
}

fn ran_together(one: &Exhibition, other: &Exhibition) -> bool {
    let ran = |exhibition: &Exhibition| lasted(&exhibition.date.as_ref()?.value);
    match (ran(one), ran(other)) {
        (Some(a), Some(b)) => a.0.max(b.0) <= a.1.min(b.1),
        _ => false,
    }
}

fn destroyed(one: &Impression, other: &Impression) -> Exclusion {
    let statuses = [&one.status, &other.status];
    let is_apart = matches!(
        statuses.map(|s| s.value),
        [Status::Destroyed, Status::Located] | [Status::Located, Status::Destroyed]
    );
    is_apart.then_some((Evidence::Destroyed, statuses.map(|s| s.place)))
}

/// Two on one paper, two of one set, or a counterproof and what it was taken from.
fn said_beside(one: &Impression, other: &Impression) -> Exclusion {
    let named = |from: &Impression, to: &Impression| {
        from.shares_sheet
            .iter()
            .chain(&from.goes_with)
            .chain(&from.taken_from)
            .find(|key| key.value == to.key)
            .map(|key| key.place)
    };
    let (here, there) = (named(one, other), named(other, one));
    if here.is_none() && there.is_none() {
        return None;
    }
    let places = [here.unwrap_or(one.place), there.unwrap_or(other.place)];
    Some((Evidence::SaidBeside, places))
}
