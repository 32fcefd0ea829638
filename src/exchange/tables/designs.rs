//! Tables of designs: the designs themselves, their titles, makers, subjects and relations, and the comparisons that
//! the catalogue recommends.

use super::cell::Cell;
use super::rows::numbered;
use super::table::{TableOf, Written};
use crate::exchange::format::Sources;
use crate::model::design::{Comparison, Design, Maker, Related, Title};
use crate::model::place::Placed;
use crate::page::Address;

pub(super) fn designs(sources: Sources<'_>) -> Written {
    let order = &sources.studies.order;
    TableOf::new("designs")
        .id("design", |design: &&Design| (&design.key).into())
        .integer("position", |design| (order.rank(&design.key) + 1).into())
        .required()
        .text("number", |design| (&design.number).into())
        .required()
        .text("title", |design| {
            design.title().map(|title| &title.text).into()
        })
        .date(["date", "date_earliest", "date_latest"], |design| {
            design.date.own()
        })
        .certainty_of("date_certainty", |design| &design.date)
        .list("technique", |design| Cell::placed(&design.technique))
        .list("support", |design| Cell::placed(&design.support))
        .list("series", |design| {
            Cell::list(
                design
                    .series
                    .iter()
                    .map(|place| place.of.value.as_str().to_owned()),
            )
        })
        .sizes(|design| &design.size)
        .key_of("reference_picture", "pictures", |design| {
            let key = design.reference_picture.as_ref();
            key.filter(|key| sources.pictures.contains_key(&key.value))
                .into()
        })
        .standing(|design| &design.standing)
        .address("address", |design| {
            sources.address(&Address::Design(design.key.clone()))
        })
        .required()
        .write(sources.designs())
}

pub(super) fn titles(sources: Sources<'_>) -> Written {
    type Row<'s> = (&'s Design, usize, &'s Title);
    let rows = sources.designs().flat_map(|d| numbered(d, &d.titles));
    TableOf::new("titles")
        .part_of("design", "designs", |row: &Row| (&row.0.key).into())
        .position(|row| row.1)
        .text("title", |row| (&row.2.text).into())
        .required()
        .text("language", |row| row.2.lang.as_ref().into())
        .word("kind", |row| Some(row.2.kind))
        .boolean("supplied", |row| row.2.supplied.into())
        .claim(sources, |row| &row.2.claim)
        .write(rows)
}

pub(super) fn makers(sources: Sources<'_>) -> Written {
    type Row<'s> = (&'s Design, usize, &'s Maker);
    let rows = sources.designs().flat_map(|d| numbered(d, &d.makers));
    TableOf::new("makers")
        .part_of("design", "designs", |row: &Row| (&row.0.key).into())
        .position(|row| row.1)
        .person_or_holder(sources, ["person", "holder"], |row| {
            Some(&row.2.person.value)
        })
        .text("role", |row| row.2.role.as_ref().into())
        .claim(sources, |row| &row.2.claim)
        .write(rows)
}

pub(super) fn subjects(sources: Sources<'_>) -> Written {
    type Row<'s> = (&'s Design, usize, &'s Placed<String>);
    let rows = sources.designs().flat_map(|d| numbered(d, &d.subjects));
    TableOf::new("subjects")
        .part_of("design", "designs", |row: &Row| (&row.0.key).into())
        .position(|row| row.1)
        .text("subject", |row| row.2.into())
        .required()
        .write(rows)
}

pub(super) fn related(sources: Sources<'_>) -> Written {
    type Row<'s> = (&'s Design, usize, &'s Related);
    let rows = sources.designs().flat_map(|d| numbered(d, &d.related));
    TableOf::new("related-designs")
        .part_of("design", "designs", |row: &Row| (&row.0.key).into())
        .position(|row| row.1)
        .key_of("other", "designs", |row| (&row.2.design).into())
        .required()
        .text("how", |row| row.2.how.as_ref().into())
        .write(rows)
}

pub(super) fn comparisons(sources: Sources<'_>) -> Written {
    type Row<'s> = (&'s Design, &'s Comparison);
    let rows = sources
        .designs()
        .flat_map(|d| d.comparisons.iter().map(move |comparison| (d, comparison)));
    TableOf::new("comparisons")
        .part_of("design", "designs", |row: &Row| (&row.0.key).into())
        .position(|row| row.1.number)
        .keys_of("impressions", "impressions", |row| {
            Cell::list(row.1.of.iter().map(|key| &key.value))
        })
        .required()
        .text("why", |row| row.1.why.as_ref().into())
        .address("address", |row| {
            sources.address(&Address::Comparison(row.0.key.clone(), row.1.number))
        })
        .required()
        .write(rows)
}
