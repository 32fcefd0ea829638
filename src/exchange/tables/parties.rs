//! Tables of holders, people, exhibitions and shared marks.

use super::cell::Cell;
use super::rows::numbered;
use super::table::{TableOf, Written};
use crate::exchange::format::Sources;
use crate::model::exhibition::{Exhibition, Venue};
use crate::model::holder::{FormerName, Holder, Successor};
use crate::model::mark::{MarkCondition, MarkRecord, RecordedUser};
use crate::model::person::{OtherName, Person};
use crate::page::Address;

pub(super) fn holders(sources: Sources<'_>) -> Written {
    fn successor<'r>(holder: &'r &Holder) -> Option<&'r Successor> {
        holder.successor.as_ref()
    }
    TableOf::new("holders")
        .id("holder", |holder: &&Holder| (&holder.key).into())
        .text("name", |holder| (&holder.name).into())
        .required()
        .word("kind", |holder| Some(holder.kind))
        .text("town", |holder| holder.town.as_ref().into())
        .text("country", |holder| holder.country.as_ref().into())
        .text("isil", |holder| holder.isil.as_ref().into())
        .text("web", |holder| holder.web.as_ref().into())
        .text("credit", |holder| holder.credit.as_ref().into())
        .key_of("successor", "holders", |holder| {
            successor(holder).map(|successor| &successor.holder).into()
        })
        .plain_date("successor_date", |holder| {
            let date = successor(holder).and_then(|successor| successor.date.as_ref());
            date.map(|date| &date.value)
        })
        .address("address", |holder| {
            sources.address(&Address::Holder(holder.key.clone()))
        })
        .required()
        .write(sources.public.holders.values())
}

pub(super) fn holder_names(sources: Sources<'_>) -> Written {
    type Row<'s> = (&'s Holder, usize, &'s FormerName);
    let holders = sources.public.holders.values();
    TableOf::new("holder-names")
        .part_of("holder", "holders", |row: &Row| (&row.0.key).into())
        .position(|row| row.1)
        .text("name", |row| (&row.2.name).into())
        .required()
        .plain_date("until", |row| row.2.until.as_ref().map(|date| &date.value))
        .write(holders.flat_map(|holder| numbered(holder, &holder.formerly)))
}

pub(super) fn people(sources: Sources<'_>) -> Written {
    TableOf::new("people")
        .id("person", |person: &&Person| (&person.key).into())
        .text("name", |person| (&person.name).into())
        .required()
        .text("sort", |person| person.sort.as_ref().into())
        .list("roles", |person| Cell::placed(&person.roles))
        .date(["born", "born_earliest", "born_latest"], |person| {
            person.born.as_ref().map(|date| &date.value)
        })
        .date(["died", "died_earliest", "died_latest"], |person| {
            person.died.as_ref().map(|date| &date.value)
        })
        .plain_date("active", |person| {
            person.active.as_ref().map(|date| &date.value)
        })
        .list("authority", |person| Cell::placed(&person.authority))
        .address("address", |person| {
            sources.address(&Address::Person(person.key.clone()))
        })
        .required()
        .write(sources.public.people.values())
}

pub(super) fn person_names(sources: Sources<'_>) -> Written {
    type Row<'s> = (&'s Person, usize, &'s OtherName);
    let people = sources.public.people.values();
    TableOf::new("person-names")
        .part_of("person", "people", |row: &Row| (&row.0.key).into())
        .position(|row| row.1)
        .text("name", |row| (&row.2.text).into())
        .required()
        .text("language", |row| row.2.lang.as_ref().into())
        .write(people.flat_map(|person| numbered(person, &person.names)))
}

pub(super) fn exhibitions(sources: Sources<'_>) -> Written {
    TableOf::new("exhibitions")
        .id("exhibition", |exhibition: &&Exhibition| {
            (&exhibition.key).into()
        })
        .text("title", |exhibition| (&exhibition.title).into())
        .required()
        .key_of("holder", "holders", |exhibition| match &exhibition.venue {
            Some(Venue::Holder(key)) => key.into(),
            _ => Cell::Empty,
        })
        .text("venue", |exhibition| match &exhibition.venue {
            Some(Venue::Named(name)) => name.into(),
            _ => Cell::Empty,
        })
        .text("town", |exhibition| exhibition.town.as_ref().into())
        .date(["date", "date_earliest", "date_latest"], |exhibition| {
            exhibition.date.as_ref().map(|date| &date.value)
        })
        .cited(["source", "source_document"], |exhibition| {
            exhibition.cite.as_ref().map(|cite| &cite.value)
        })
        .address("address", |exhibition| {
            sources.address(&Address::Exhibition(exhibition.key.clone()))
        })
        .required()
        .write(sources.public.exhibitions.values())
}

pub(super) fn shared_marks(sources: Sources<'_>) -> Written {
    TableOf::new("shared-marks")
        .id("mark", |mark: &&MarkRecord| (&mark.key).into())
        .word("kind", |mark| mark.kind.as_ref().map(|kind| kind.value))
        .text("text", |mark| mark.text.as_ref().into())
        .text("colour", |mark| mark.colour.as_ref().into())
        .size(["height_mm", "width_mm", "size_certainty"], |mark| {
            &mark.size
        })
        .key_of("picture", "pictures", |mark| {
            let key = mark.picture.as_ref();
            key.filter(|key| sources.pictures.contains_key(&key.value))
                .into()
        })
        .address("address", |mark| {
            sources.address(&Address::Mark(mark.key.clone()))
        })
        .required()
        .write(sources.public.marks.values())
}

pub(super) fn mark_users(sources: Sources<'_>) -> Written {
    type Row<'s> = (&'s MarkRecord, usize, &'s RecordedUser);
    let marks = sources.public.marks.values();
    TableOf::new("mark-users")
        .part_of("mark", "shared-marks", |row: &Row| (&row.0.key).into())
        .position(|row| row.1)
        .person_or_holder(sources, ["person", "holder"], |row| {
            Some(&row.2.person.value)
        })
        .date(["from", "from_earliest", "from_latest"], |row| {
            row.2.from.as_ref().map(|date| &date.value)
        })
        .date(["to", "to_earliest", "to_latest"], |row| {
            row.2.to.as_ref().map(|date| &date.value)
        })
        .claim(sources, |row| &row.2.claim)
        .write(marks.flat_map(|mark| numbered(mark, &mark.users)))
}

pub(super) fn mark_conditions(sources: Sources<'_>) -> Written {
    type Row<'s> = (&'s MarkRecord, usize, &'s MarkCondition);
    let marks = sources.public.marks.values();
    TableOf::new("mark-conditions")
        .id("condition", |row: &Row| {
            format!("{}/{}", row.0.key, row.2.key.value).into()
        })
        .key_of("mark", "shared-marks", |row| (&row.0.key).into())
        .required()
        .integer("position", |row| row.1.into())
        .required()
        .text("summary", |row| row.2.summary.as_ref().into())
        .date(["from", "from_earliest", "from_latest"], |row| {
            row.2.from.as_ref().map(|date| &date.value)
        })
        .date(["to", "to_earliest", "to_latest"], |row| {
            row.2.to.as_ref().map(|date| &date.value)
        })
        .write(marks.flat_map(|mark| numbered(mark, &mark.conditions)))
}
