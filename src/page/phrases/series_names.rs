//! Names of series, and the places of designs and printings in them.

use crate::model::key::Key;
use crate::model::series::SeriesRecord;
use crate::model::series_place::{SeriesPlace, SeriesRef};
use crate::page::phrases::claims;
use crate::page::phrases::dates;
use crate::page::setting::address::{Address, Overview};
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;

impl Here<'_> {
    /// The title of a series; its key in words where it has none.
    pub fn series_title(&self, series: &SeriesRecord) -> CleanHtml {
        match series.title() {
            Some(title) => self.title(title),
            None => CleanHtml::element("i", &[], &CleanHtml::text(&series.name())),
        }
    }

    /// A series by its title, as a link to its page; one without a record as a link to its list.
    pub fn series(&self, series: &SeriesRef) -> CleanHtml {
        match series {
            SeriesRef::Record(key) => self.series_record(key),
            SeriesRef::Named(name) => {
                CleanHtml::element("i", &[], &self.gathered(Overview::Series, name, name))
            }
        }
    }

    /// A series that has a record, by its title, as a link to its page.
    pub fn series_record(&self, key: &Key) -> CleanHtml {
        match self.public().series.get(key) {
            Some(series) => self.link(&Address::Series(key.clone()), &self.series_title(series)),
            None => CleanHtml::text(key.as_str()),
        }
    }

    /// The name of a series as text, by which lists sort it.
    pub fn series_name(&self, series: &SeriesRef) -> String {
        match series {
            SeriesRef::Record(key) => {
                let record = self.public().series.get(key);
                record.map_or_else(|| key.to_string(), |record| record.name().into_owned())
            }
            SeriesRef::Named(name) => name.clone(),
        }
    }
}

/// "*Crossings*, no. 1".
pub(crate) fn place(here: &Here<'_>, place: &SeriesPlace) -> CleanHtml {
    let name = here.series(&place.of.value);
    match &place.position {
        Some(position) => here.words().html(
            "place-in-series",
            None,
            &[
                ("series", &name),
                ("position", &CleanHtml::text(&position.value)),
            ],
        ),
        None => name,
    }
}

/// "Dorn & Halyard, 1938": who published a series, and when, by the catalogue's own view.
pub(crate) fn published(here: &Here<'_>, series: &SeriesRecord) -> CleanHtml {
    let publisher = claims::stated(here, &series.publisher, |key| here.person_or_holder(key));
    let publisher = publisher.map(|stated| stated.value).unwrap_or_default();
    CleanHtml::join([&publisher, &date(here, series)], ", ")
}

/// When a series was published, or its prints were made; empty where no date is recorded.
fn date(here: &Here<'_>, series: &SeriesRecord) -> CleanHtml {
    let date = series.date.own();
    date.map_or_else(CleanHtml::empty, |date| {
        dates::throughout_html(date, here.words())
    })
}
