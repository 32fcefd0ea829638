//! The keys of `series/KEY.toml`.

use super::declare::{SETTLED, Shape, Takes, Target, WAS, may, standing, words};
use super::design::TITLE;
use crate::model::occurrence::MentionRole;
use crate::model::series::SeriesForm;

/// `series/KEY.toml`.
pub static SERIES: Shape = standing(
    "a series",
    &[
        may("title", Takes::Text, "its title"),
        may(
            "titles",
            Takes::Tables(&TITLE),
            "its titles, where it has several, in place of `title`",
        ),
        may(
            "publisher",
            Takes::Statements(&Takes::Refers(Target::Party, MentionRole::SeriesPublisher)),
            "who published it",
        ),
        may(
            "date",
            Takes::Statements(&Takes::Date),
            "when it was published, or its prints were made",
        ),
        may(
            "issued",
            Takes::Word(words::<SeriesForm>),
            "in what form it was published",
        ),
        may(
            "number",
            Takes::Statements(&Takes::Whole(1, 10_000)),
            "how many designs it has, as declared",
        ),
        may("note", Takes::Text, "what is to be said of it"),
        WAS,
        SETTLED,
    ],
);
