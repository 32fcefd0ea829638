//! The tables of a record that are of one kind: numbers, citations, marks, pictures, provenance, sightings.

use super::draft::Withheld;
use super::parts::Entry;
use super::values::{self, Keys, list, number, party, word};
use crate::model::as_found::OtherId;
use crate::model::impression::{Exhibited, FormerAccession, OtherSheet};
use crate::model::literature::{Citation, Relation};
use crate::model::mark::{Mark, MarkKind};
use crate::model::picture::{Picture, View};
use crate::model::provenance::{PartyRole, ProvenanceEntry, Sighting};
use crate::model::words::Side;

type Tables = Vec<Vec<Entry>>;

fn each<T>(all: &[T], table: impl Fn(&T, &mut Keys)) -> Tables {
    let tables = all.iter().map(|one| {
        let mut keys = Keys::default();
        table(one, &mut keys);
        keys.0
    });
    tables.collect()
}

pub(super) fn former_accessions(all: &[FormerAccession]) -> Tables {
    each(all, |former, keys| {
        keys.word("holder", former.holder.as_ref());
        keys.text("number", Some(&former.number));
        keys.date("until", former.until.as_ref());
    })
}

pub(super) fn ids(all: &[OtherId]) -> Tables {
    each(all, |id, keys| {
        keys.placed("scheme", Some(&id.scheme));
        keys.placed("id", Some(&id.id));
    })
}

pub(super) fn exhibited(all: &[Exhibited]) -> Tables {
    each(all, |shown, keys| {
        keys.word("exhibition", Some(&shown.exhibition));
        keys.text("at", shown.at.as_deref());
        keys.word("this_sheet", shown.this_sheet.as_ref());
        keys.flag("illustrated", shown.illustrated);
    })
}

pub(super) fn citations(all: &[Citation]) -> Tables {
    each(all, |citation, keys| {
        keys.word("cite", Some(&citation.cite));
        keys.text("at", citation.at.as_deref());
        keys.text("number", citation.number.as_deref());
        if citation.relation != Relation::Same {
            keys.add("relation", Some(word(&citation.relation)));
        }
        keys.flag("illustrated", citation.illustrated);
        keys.word("this_sheet", citation.this_sheet.as_ref());
    })
}

pub(super) fn other_sheets(all: &[OtherSheet]) -> Tables {
    each(all, |other, keys| {
        keys.word("impression", Some(&other.impression));
        keys.text("why", other.why.as_deref());
    })
}

pub(super) fn marks(all: &[Mark], withheld: &Withheld) -> Tables {
    each(all, |mark, keys| {
        keys.word("mark", mark.record.as_ref());
        keys.word("condition", mark.condition.as_ref());
        keys.word("kind", mark.kind.as_ref());
        keys.text("medium", mark.medium.as_deref());
        keys.text("text", mark.text.as_deref());
        keys.text("place", mark.at.as_deref());
        keys.add("side", mark.side.as_ref().map(word));
        keys.word("whose", mark.whose.as_ref());
        keys.word("applied_by", mark.applied_by.as_ref());
        keys.date("applied", mark.applied.as_ref());
        keys.text("colour", mark.colour.as_deref());
        keys.text("number", mark.number.as_deref());
        keys.text("note", mark.note.as_deref());
        keys.0.extend(values::claim(&mark.claim));
        let is_signature = mark.kind.as_ref().map(|kind| kind.value) == Some(MarkKind::Signature);
        let words = [("text", mark.text.is_some()), ("note", mark.note.is_some())];
        let words: Vec<String> = words
            .into_iter()
            .filter(|(_, is_there)| *is_there)
            .map(|(key, _)| word(&key))
            .collect();
        if withheld.marks && !is_signature && !words.is_empty() {
            keys.add("private", Some(list(words)));
        }
    })
}

pub(super) fn pictures(all: &[Picture]) -> Tables {
    each(all, |picture, keys| {
        keys.placed("file", Some(&picture.file));
        if picture.name.as_str() != picture.side.to_string() {
            keys.word("name", Some(&picture.name));
        }
        keys.add(
            "side",
            Some(word(&picture.side)).filter(|_| picture.side != Side::Recto),
        );
        keys.add(
            "view",
            Some(word(&picture.view)).filter(|_| picture.view != View::Whole),
        );
        keys.text("caption", picture.caption.as_deref());
        keys.date("date", picture.date.as_ref());
        keys.add("by", picture.by.as_ref().map(|by| party(by, false)));
        keys.text("light", picture.light.as_deref());
        keys.add("px_per_mm", picture.px_per_mm.map(number));
        let numbers = |numbers: [f64; 4]| list(numbers.map(number));
        keys.add("box", picture.area.map(|area| numbers(area.percent())));
        keys.flag("mirrored", picture.mirrored.then_some(true));
        let ties = picture.ties.iter().map(|tie| numbers(*tie));
        keys.add("ties", (!picture.ties.is_empty()).then(|| list(ties)));
        let bare = picture.bare_paper.map(|area| numbers(area.percent()));
        keys.add("bare_paper", bare);
        keys.add(
            "largest",
            picture.largest.map(|largest| largest.to_string()),
        );
        let rights = picture.rights.as_ref();
        keys.placed("rights", rights.filter(|rights| !rights.trim().is_empty()));
        keys.text("credit", picture.credit.as_deref());
        keys.flag("publish", picture.publish);
    })
}

pub(super) fn provenance(all: &[ProvenanceEntry]) -> Tables {
    each(all, |entry, keys| {
        let role = match entry.role {
            PartyRole::Owner => "owner",
            PartyRole::Agent => "agent",
            PartyRole::Keeper => "keeper",
        };
        keys.add(role, Some(party(&entry.party, false)));
        keys.date("from", entry.from.as_ref());
        keys.date("to", entry.to.as_ref());
        keys.word("how", entry.how.as_ref());
        keys.text("place", entry.at_place.as_deref());
        keys.text("lot", entry.lot.as_deref());
        keys.text("price", entry.price.as_deref());
        keys.flag("direct", entry.direct);
        keys.flag("sold", entry.sold);
        keys.word("this_sheet", entry.this_sheet.as_ref());
        keys.0.extend(values::claim(&entry.claim));
    })
}

pub(super) fn sightings(all: &[Sighting], withheld: &Withheld) -> Tables {
    each(all, |sighting, keys| {
        keys.date("date", Some(&sighting.date));
        let by = sighting.by.as_ref();
        keys.add("by", by.map(|by| party(by, withheld.seen_by)));
        keys.word("basis", sighting.basis.as_ref());
        keys.word("cite", sighting.cite.as_ref());
        keys.text("at", sighting.at.as_deref());
    })
}
