//! The events in the life of a sheet: its production, its acquisitions, its exhibitions.

use super::parts::{URI, actor, appellation, concept, date, note, party, period, permanent, term};
use crate::exchange::xml::Xml;
use crate::model::certainty::Certainty;
use crate::model::design::Design;
use crate::model::impression::{Exhibited, Impression};
use crate::model::printing::Printing;
use crate::model::provenance::{PartyRole, ProvenanceEntry};
use crate::model::vocabulary::List as Vocabulary;
use crate::page::{Address, Here, provenance_entry, venue};

/// The events of a sheet; `records` are all that tell of it, its own first.
pub(super) fn events(xml: &mut Xml, here: &Here<'_>, design: &Design, records: &[&Impression]) {
    xml.element("eventWrap", &[], |xml| {
        if let Some(sheet) = records.first() {
            production(xml, here, design, sheet);
        }
        for record in records {
            let entries = record.provenance.iter();
            for entry in entries.filter(|entry| entry.role == PartyRole::Owner) {
                acquisition(xml, here, entry);
            }
            for exhibited in &record.exhibited {
                exhibition(xml, here, exhibited);
            }
        }
    });
}

/// An event of a kind. The numbers are those of LIDO's terminology.
fn event(xml: &mut Xml, number: &str, word: &str, content: impl FnOnce(&mut Xml)) {
    xml.element("eventSet", &[], |xml| {
        xml.element("event", &[], |xml| {
            // Addresses of events come before the kind; `content` writes what comes after it.
            let address = format!("http://terminology.lido-schema.org/{number}");
            concept(xml, "eventType", Some(&address), word);
            content(xml);
        });
    });
}

/// The printing that a sheet was identified with, where it is one.
pub(super) fn printing<'d>(design: &'d Design, sheet: &Impression) -> Option<&'d Printing> {
    match sheet.identified.as_ref()?.printing.as_slice() {
        [only] => design.printing(only),
        _ => None,
    }
}

fn production(xml: &mut Xml, here: &Here<'_>, design: &Design, sheet: &Impression) {
    let printing = printing(design, sheet);
    let word = here.words().word("lido-production");
    event(xml, "lido00007", word, |xml| {
        for maker in &design.makers {
            let role = |xml: &mut Xml| {
                if let Some(role) = &maker.role {
                    term(
                        xml,
                        here,
                        "roleActor",
                        Vocabulary::Roles,
                        role.value.as_str(),
                    );
                }
            };
            actor(xml, here, &maker.person, role, maker.claim.certainty());
        }
        let roles = printing.map(|p| [(&p.printer, "printer"), (&p.publisher, "publisher")]);
        for (statements, role) in roles.into_iter().flatten() {
            if let Some(own) = statements.iter().next() {
                let role = |xml: &mut Xml| {
                    term(xml, here, "roleActor", Vocabulary::Roles, role);
                };
                actor(xml, here, &own.is.value, role, own.claim.certainty());
            }
        }
        let of_printing = printing.and_then(|printing| printing.date.own());
        let when = sheet.sheet.date.own().or(of_printing).or(design.date.own());
        if let Some(when) = when {
            date(xml, here, "eventDate", when);
        }
        if let Some(printing) = printing {
            let name = here.printing_name(design, &printing.key);
            concept(xml, "eventMethod", None, &name);
        }
        for technique in design.technique_of(sheet) {
            xml.element("eventMaterialsTech", &[], |xml| {
                xml.element("materialsTech", &[], |xml| {
                    let key = technique.value.as_str();
                    term(xml, here, "termMaterialsTech", Vocabulary::Techniques, key);
                });
            });
        }
    });
}

fn acquisition(xml: &mut Xml, here: &Here<'_>, entry: &ProvenanceEntry) {
    let words = here.words();
    event(xml, "lido00001", words.word("lido-acquisition"), |xml| {
        let role = words.word("role-owner");
        party(xml, here, &entry.party, role, entry.certainty());
        let [from, to] = [&entry.from, &entry.to].map(|date| date.as_ref().map(|d| &d.value));
        period(xml, here, "eventDate", from, to);
        if let Some(place) = &entry.at_place {
            xml.element("eventPlace", &[], |xml| {
                xml.text("displayPlace", &[], place);
            });
        }
        if let Some(how) = &entry.how {
            let key = how.value.as_str();
            term(xml, here, "eventMethod", Vocabulary::Transfers, key);
        }
        // The words of the page say more than the elements above only of a sale.
        if entry.lot.is_some() || entry.price.is_some() || entry.sold.is_some() {
            let text = provenance_entry(here, entry).plain();
            note(xml, "eventDescriptionSet", &[], &text);
        }
    });
}

fn exhibition(xml: &mut Xml, here: &Here<'_>, exhibited: &Exhibited) {
    let Some(exhibition) = here.public().exhibitions.get(&exhibited.exhibition.value) else {
        return;
    };
    let words = here.words();
    xml.element("eventSet", &[], |xml| {
        xml.element("event", &[], |xml| {
            let address = Address::Exhibition(exhibition.key.clone());
            xml.text("eventID", &[URI], &permanent(here, &address));
            let kind = "http://terminology.lido-schema.org/lido00225";
            concept(xml, "eventType", Some(kind), words.word("lido-exhibition"));
            appellation(xml, "eventName", &exhibition.title);
            if let Some(when) = &exhibition.date {
                date(xml, here, "eventDate", when);
            }
            let venue = venue(here, exhibition).plain();
            if !venue.is_empty() {
                xml.element("eventPlace", &[], |xml| {
                    xml.text("displayPlace", &[], &venue);
                });
            }
            let number = exhibited.at.as_deref().unwrap_or_default();
            note(xml, "eventDescriptionSet", &[], number);
            if exhibited.certainty() != Certainty::Certain {
                let doubt = words.listed("certainty", exhibited.certainty());
                note(xml, "eventDescriptionSet", &[], doubt);
            }
        });
    });
}
