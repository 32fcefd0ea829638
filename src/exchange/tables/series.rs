//! The tables of series, and of the places that designs and printings have in them.

use super::cell::Cell;
use super::rows::part;
use super::table::{TableOf, Written};
use crate::exchange::format::Sources;
use crate::model::design::Design;
use crate::model::printing::Printing;
use crate::model::series::SeriesRecord;
use crate::model::series_place::{SeriesPlace, SeriesRef};
use crate::page::Address;

pub(super) fn series(sources: Sources<'_>) -> Written {
    TableOf::new("series")
        .id("series", |series: &&SeriesRecord| (&series.key).into())
        .text("title", |series| {
            series.title().map(|title| &title.text).into()
        })
        .list("other_titles", |series| {
            let in_use = series.title();
            let others = series.titles.iter();
            let others =
                others.filter(|title| !in_use.is_some_and(|in_use| std::ptr::eq(in_use, *title)));
            Cell::list(others.map(|title| title.text.value.clone()))
        })
        .word("issued", |series| {
            series.issued.as_ref().map(|form| form.value)
        })
        .person_or_holder(
            sources,
            ["publisher_person", "publisher_holder"],
            |series| series.publisher.own(),
        )
        .certainty_of("publisher_certainty", |series| &series.publisher)
        .date(["date", "date_earliest", "date_latest"], |series| {
            series.date.own()
        })
        .certainty_of("date_certainty", |series| &series.date)
        .integer("designs", |series| series.number.own().into())
        .certainty_of("designs_certainty", |series| &series.number)
        .text("remark", |series| series.remark.as_ref().into())
        .standing(|series| &series.standing)
        .address("address", |series| {
            sources.address(&Address::Series(series.key.clone()))
        })
        .required()
        .write(sources.public.series.values())
}

/// A place in a series: that of a design, or of one of its printings.
type PlaceRow<'s> = (&'s Design, Option<&'s Printing>, usize, &'s SeriesPlace);

pub(super) fn places(sources: Sources<'_>) -> Written {
    let of_design = |design| {
        let own = SeriesPlaces(design, None).rows();
        let printings = Design::standing_printings(design);
        let of_printings = printings.flat_map(move |p| SeriesPlaces(design, Some(p)).rows());
        own.into_iter().chain(of_printings)
    };
    TableOf::new("series-places")
        .key_of("design", "designs", |row: &PlaceRow<'_>| {
            (&row.0.key).into()
        })
        .required()
        .key_of("printing", "printings", |row| match row.1 {
            Some(printing) => part(row.0, &printing.key),
            None => Cell::Empty,
        })
        .integer("position", |row| row.2.into())
        .required()
        .key_of("series", "series", |row| row.3.of.value.key().into())
        .text("name", |row| match &row.3.of.value {
            SeriesRef::Record(_) => Cell::Empty,
            SeriesRef::Named(name) => name.as_str().into(),
        })
        .text("series_position", |row| row.3.position.as_ref().into())
        .write(sources.designs().flat_map(of_design))
}

/// The places of a design, or of one of its printings.
struct SeriesPlaces<'s>(&'s Design, Option<&'s Printing>);

impl<'s> SeriesPlaces<'s> {
    fn rows(self) -> Vec<PlaceRow<'s>> {
        let SeriesPlaces(design, printing) = self;
        let places = printing.map_or(&design.series, |printing| &printing.series);
        let rows = (1..).zip(places);
        rows.map(|(at, place)| (design, printing, at, place))
            .collect()
    }
}
