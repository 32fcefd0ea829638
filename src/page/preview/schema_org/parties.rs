//! People, and holders that are institutions.

use super::certain::plain;
use super::thing::{Thing, addresses, identifiers};
use crate::model::edtf::Date;
use crate::model::holder::{Holder, HolderKind};
use crate::model::person::Person;
use crate::model::place::Placed;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;

pub(super) fn person(here: &Here<'_>, person: &Person) -> Thing {
    let page = Address::Person(person.key.clone());
    let day = |date: &Option<Placed<Date>>| date.as_ref().and_then(|date| plain(&date.value));
    Thing {
        alternate_name: person.names.iter().map(|n| n.text.value.clone()).collect(),
        birth_date: day(&person.born),
        death_date: day(&person.died),
        identifier: identifiers(&person.ids).collect(),
        same_as: person
            .authority
            .iter()
            .map(|a| a.value.clone())
            .chain(addresses(&person.ids))
            .collect(),
        ..Thing::of_page(here, "Person", &page, &person.name.value)
    }
}

/// A holder; `None` of a private one.
pub(super) fn holder(here: &Here<'_>, holder: &Holder) -> Option<Thing> {
    let kind = match holder.kind {
        HolderKind::Museum => "Museum",
        HolderKind::Library => "Library",
        HolderKind::Archive => "ArchiveOrganization",
        HolderKind::Foundation | HolderKind::Trade | HolderKind::Unknown => "Organization",
        HolderKind::Private => return None,
    };
    let page = Address::Holder(holder.key.clone());
    let town = holder.town.as_ref().map(|town| town.value.clone());
    let country = holder.country.as_ref().map(|code| code.value.clone());
    let address = (town.is_some() || country.is_some()).then(|| {
        Box::new(Thing {
            address_locality: town,
            address_country: country,
            ..Thing::new("PostalAddress")
        })
    });
    let isil = holder.isil.iter();
    Some(Thing {
        alternate_name: holder
            .formerly
            .iter()
            .map(|f| f.name.value.clone())
            .collect(),
        identifier: isil
            .map(|isil| Thing::identifier("ISIL", &isil.value))
            .chain(identifiers(&holder.ids))
            .collect(),
        same_as: holder
            .web
            .iter()
            .map(|web| web.value.clone())
            .chain(addresses(&holder.ids))
            .collect(),
        address,
        ..Thing::of_page(here, kind, &page, &here.holder_name(holder))
    })
}
