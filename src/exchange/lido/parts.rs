//! The recurring parts of a record: concepts, names, actors, dates, measurements.

use crate::exchange::xml::Xml;
use crate::model::as_found::OtherId;
use crate::model::certainty::Certainty;
use crate::model::edtf::{Date, Edge};
use crate::model::key::Key;
use crate::model::provenance::Party;
use crate::model::size::Size;
use crate::model::vocabulary::List as Vocabulary;
use crate::page::{Address, Here, dates};

/// The kind of identifier: a web address (terminology of LIDO, from memory).
pub(super) const URI: (&str, &str) = ("lido:type", "http://terminology.lido-schema.org/lido00099");

/// The kind of identifier: one of this catalogue alone (from memory).
pub(super) const LOCAL: (&str, &str) =
    ("lido:type", "http://terminology.lido-schema.org/lido00100");

/// An identifier of a thing elsewhere: an address, or what its scheme gives.
pub(super) fn identifier(xml: &mut Xml, name: &str, other: &OtherId) {
    let kind = match other.address() {
        Some(_) => URI,
        None => LOCAL,
    };
    let source = ("lido:source", other.scheme.as_str());
    xml.text(name, &[kind, source], &other.id);
}

/// A concept: its address, where it has one, and its term.
pub(super) fn concept(xml: &mut Xml, name: &str, address: Option<&str>, term: &str) {
    xml.element(name, &[], |xml| {
        if let Some(address) = address {
            xml.text("conceptID", &[URI], address);
        }
        xml.some_text("term", &[], term);
    });
}

/// A term of a vocabulary, with its number in the AAT where that is known.
pub(super) fn term(xml: &mut Xml, here: &Here<'_>, name: &str, list: Vocabulary, key: &str) {
    let found = here.public().vocabularies.term(list, key);
    let aat = found.and_then(|term| term.aat);
    let address = aat.map(|number| format!("http://vocab.getty.edu/aat/{number}"));
    concept(xml, name, address.as_deref(), &here.term(list, key));
}

/// A name.
pub(super) fn appellation(xml: &mut Xml, name: &str, text: &str) {
    xml.element(name, &[], |xml| {
        xml.text("appellationValue", &[], text);
    });
}

/// A note in words under an element of its own.
pub(super) fn note(xml: &mut Xml, name: &str, attributes: &[(&str, &str)], text: &str) {
    if !text.is_empty() {
        xml.element(name, attributes, |xml| {
            xml.text("descriptiveNoteValue", &[], text);
        });
    }
}

/// The permanent address of a page.
pub(super) fn permanent(here: &Here<'_>, address: &Address) -> String {
    address.absolute(&here.public().settings.address.value)
}

/// A date in words, with the first and last day that it can mean.
pub(super) fn date(xml: &mut Xml, here: &Here<'_>, name: &str, date: &Date) {
    let words = dates::throughout(date, here.words());
    dated(xml, name, &words, date.earliest(), date.latest());
}

/// The time from one date to another, either of which may not be recorded.
pub(super) fn period(
    xml: &mut Xml,
    here: &Here<'_>,
    name: &str,
    from: Option<&Date>,
    to: Option<&Date>,
) {
    let words = here.words();
    let shown = [from, to].map(|date| date.map(|date| dates::once(date, words)));
    let shown = match &shown {
        [Some(from), Some(to)] if from == to => from.clone(),
        [None, None] => return,
        [from, to] => {
            let [from, to] = [from, to].map(|text| text.as_deref().unwrap_or("?"));
            format!("{from} – {to}")
        }
    };
    let earliest = from.map_or(Edge::Unknown, Date::earliest);
    let latest = to.map_or(Edge::Unknown, Date::latest);
    dated(xml, name, &shown, earliest, latest);
}

fn dated(xml: &mut Xml, name: &str, shown: &str, earliest: Edge, latest: Edge) {
    xml.element(name, &[], |xml| {
        xml.text("displayDate", &[], shown);
        let [earliest, latest] = [earliest, latest].map(day);
        if earliest.is_some() || latest.is_some() {
            xml.element("date", &[], |xml| {
                xml.some_text("earliestDate", &[], &earliest.unwrap_or_default());
                xml.some_text("latestDate", &[], &latest.unwrap_or_default());
            });
        }
    });
}

/// A day as ISO 8601 writes it; a year before 0 has a sign.
fn day(edge: Edge) -> Option<String> {
    let day = edge.day()?;
    let sign = if day.year < 0 { "-" } else { "" };
    let year = day.year.abs();
    Some(format!("{sign}{year:04}-{:02}-{:02}", day.month, day.day))
}

/// Somebody who took part in an event: a person or holder by key, in a role in words.
pub(super) fn actor(
    xml: &mut Xml,
    here: &Here<'_>,
    key: &Key,
    role: impl FnOnce(&mut Xml),
    certainty: Certainty,
) {
    let public = here.public();
    let (name, kind, address, ids) = match (public.holders.get(key), public.people.get(key)) {
        (Some(holder), _) => (
            here.holder_name(holder),
            "corporation",
            Address::Holder(key.clone()),
            &holder.ids,
        ),
        (None, Some(person)) => (
            person.name.value.clone(),
            "person",
            Address::Person(key.clone()),
            &person.ids,
        ),
        (None, None) => return,
    };
    let authority = public.people.get(key).map_or(&[][..], |p| &p.authority);
    xml.element("eventActor", &[], |xml| {
        xml.element("actorInRole", &[], |xml| {
            xml.element("actor", &[("lido:type", kind)], |xml| {
                xml.text("actorID", &[URI], &permanent(here, &address));
                for address in authority {
                    xml.text("actorID", &[URI], address);
                }
                for other in ids {
                    identifier(xml, "actorID", other);
                }
                appellation(xml, "nameActorSet", &name);
            });
            role(xml);
            qualifier(xml, here, certainty);
        });
    });
}

/// A party of the provenance: a record, or a name.
pub(super) fn party(
    xml: &mut Xml,
    here: &Here<'_>,
    party: &Party,
    role: &str,
    certainty: Certainty,
) {
    let in_role = |xml: &mut Xml| concept(xml, "roleActor", None, role);
    match party {
        Party::Record(key) => actor(xml, here, key, in_role, certainty),
        Party::Named(_) | Party::Undisclosed => {
            let name = here.party(party).plain();
            xml.element("eventActor", &[], |xml| {
                xml.element("actorInRole", &[], |xml| {
                    xml.element("actor", &[], |xml| {
                        appellation(xml, "nameActorSet", &name);
                    });
                    in_role(xml);
                    qualifier(xml, here, certainty);
                });
            });
        }
    }
}

/// How certain it is, where it is not.
fn qualifier(xml: &mut Xml, here: &Here<'_>, certainty: Certainty) {
    if certainty != Certainty::Certain {
        let word = here.words().listed("certainty", certainty);
        concept(xml, "attributionQualifierActor", None, word);
    }
}

/// A size in words and figures: `part` names what was measured.
pub(super) fn measured(xml: &mut Xml, here: &Here<'_>, size: &Size, part: &str) {
    let words = here.words();
    xml.element("objectMeasurementsSet", &[], |xml| {
        let shown = format!("{size} mm ({part})");
        xml.text("displayObjectMeasurements", &[], &shown);
        xml.element("objectMeasurements", &[], |xml| {
            let sides = [
                ("measured-height", "300055644", size.height_mm()),
                ("measured-width", "300055647", size.width_mm()),
            ];
            for (side, aat, length) in sides {
                xml.element("measurementsSet", &[], |xml| {
                    let address = format!("http://vocab.getty.edu/aat/{aat}");
                    let side = words.word(side);
                    concept(xml, "measurementType", Some(&address), side);
                    concept(xml, "measurementUnit", None, "mm");
                    xml.text("measurementValue", &[], &length.to_string());
                });
            }
            concept(xml, "extentMeasurements", None, part);
        });
    });
}
