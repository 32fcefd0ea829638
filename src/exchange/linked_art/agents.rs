//! Holders and people.

use super::concepts::{self, ACTIVE, LOCAL_NUMBER, MUSEUM, NOTE, OCCUPATION};
use super::evidence;
use super::identifiers;
use super::ids;
use super::node::Node;
use super::parts::{self, NameKind, name_in, statement};
use crate::model::document::EvidenceTarget;
use crate::model::holder::{Holder, HolderKind};
use crate::model::person::Person;
use crate::model::vocabulary::List;
use crate::page::{Address, Here, dates};

/// The record of a holder. A private owner without consent has the words that readers see in place of the name, and
/// no town: the public catalogue has nothing else of them.
pub(super) fn holder(here: &Here<'_>, holder: &Holder) -> Node {
    let page = Address::Holder(holder.key.clone());
    let name = here.holder_name(holder);
    let words = here.words();
    let former = holder.formerly.iter().map(|former| Node {
        referred_to_by: former
            .until
            .as_ref()
            .and_then(|until| {
                let until = dates::once_html(&until.value, words);
                let said = words.html("date-until", None, &[("date", &until)]);
                statement(NOTE, said.plain())
            })
            .into_iter()
            .collect(),
        ..name_in(former.name.value.as_str(), NameKind::Former, None)
    });
    let isil = holder.isil.iter().map(|isil| Node {
        label: Some("ISIL".to_owned()),
        ..parts::identifier(isil.value.as_str(), LOCAL_NUMBER)
    });
    let town = holder.town.as_ref().map(|town| town.value.as_str());
    let country = holder.country.as_ref();
    let country = country.map(|country| here.country(&country.value));
    let place: Vec<&str> = [town, country].into_iter().flatten().collect();
    let successor = holder.successor.as_ref().and_then(|successor| {
        Some(Node {
            identified_by: vec![parts::display(words.word("continued-by"))],
            timespan: successor
                .date
                .as_ref()
                .and_then(|date| parts::timespan(here, &date.value)),
            assigned: vec![ids::agent(here, &successor.holder.value)?],
            ..Node::new("AttributeAssignment")
        })
    });
    let is_museum = holder.kind == HolderKind::Museum;
    Node {
        identified_by: std::iter::once(parts::primary_name(name.as_str()))
            .chain(former)
            .chain(isil)
            .chain(identifiers::nodes(&holder.ids))
            .collect(),
        equivalent: identifiers::equivalents("Group", &holder.ids),
        classified_as: is_museum.then(|| MUSEUM.node()).into_iter().collect(),
        referred_to_by: statement(NOTE, place.join(", ")).into_iter().collect(),
        residence: ids::place(
            format!("{}#place", ids::record(here, &page)),
            place.join(", "),
        )
        .into_iter()
        .collect(),
        attributed_by: successor.into_iter().collect(),
        subject_of: parts::subject_of(here, &page, None),
        ..Node::at("Group", ids::record(here, &page), name)
    }
}

/// The record of a person.
pub(super) fn person(here: &Here<'_>, person: &Person) -> Node {
    let page = Address::Person(person.key.clone());
    let name = person.name.value.as_str();
    let sorted = person.sort.as_deref();
    let sorted = sorted.map(|sorted| name_in(sorted, NameKind::Sort, None));
    let others = person.names.iter().map(|other| {
        let language = other.lang.as_ref().map(|lang| lang.value.as_str());
        name_in(other.text.value.as_str(), NameKind::Alternate, language)
    });
    let roles = person.roles.iter().map(|role| Node {
        classified_as: vec![OCCUPATION.bare()],
        ..concepts::term(here, "Type", List::Roles, role.as_str())
    });
    let event = |kind: &'static str, date: Option<&crate::model::edtf::Date>| {
        Node {
            timespan: Some(parts::timespan(here, date?)?),
            ..Node::new(kind)
        }
        .boxed()
    };
    let date = |date: &Option<crate::model::place::Placed<crate::model::edtf::Date>>| {
        date.as_ref().map(|date| date.value.clone())
    };
    let (born, died) = (date(&person.born), date(&person.died));
    let active = person.active.as_ref().and_then(|active| {
        Some(Node {
            classified_as: vec![ACTIVE.node()],
            timespan: Some(parts::lasting(here, &active.value)?),
            ..Node::new("Activity")
        })
    });
    let evidence = evidence::about(here, EvidenceTarget::Person(person.key.clone()));
    Node {
        identified_by: std::iter::once(parts::primary_name(name))
            .chain(sorted)
            .chain(others)
            .chain(identifiers::nodes(&person.ids))
            .collect(),
        classified_as: roles.collect(),
        equivalent: person
            .authority
            .iter()
            .map(|authority| Node {
                id: Some(authority.value.clone()),
                ..Node::new("Person")
            })
            .chain(identifiers::equivalents("Person", &person.ids))
            .collect(),
        born: event("Birth", born.as_ref()),
        died: event("Death", died.as_ref()),
        carried_out: active.into_iter().collect(),
        attributed_by: evidence.attributed_by,
        subject_of: parts::subject_of(here, &page, None)
            .into_iter()
            .chain(evidence.subject_of)
            .collect(),
        ..Node::at("Person", ids::record(here, &page), name)
    }
}
