//! The keys of what others record of the same thing: a holder's own description, and identifiers elsewhere.

use super::declare::{KeyShape, Shape, Takes, may, must, plain};

/// A holder's own description of a sheet: any names of fields beside these keys.
pub static AS_GIVEN: Shape = Shape {
    open: true,
    ..plain(
        "a holder's own description",
        &[
            may("seen", Takes::Date, "when it was seen"),
            may(
                "source",
                Takes::Text,
                "where it was taken from: an address on the web, or words",
            ),
            may(
                "lang",
                Takes::Language,
                "the language of its names and texts, BCP 47",
            ),
        ],
    )
};

/// An identifier of the record elsewhere.
pub static OTHER_ID: Shape = plain(
    "an identifier",
    &[
        must(
            "scheme",
            Takes::Text,
            "who gives it: an authority file, a database, a union catalogue",
        ),
        must(
            "id",
            Takes::Text,
            "the identifier as it is written there; an address on the web becomes a link",
        ),
    ],
);

/// The key of a record in which it names its identifiers elsewhere.
pub(super) const IDS: KeyShape = may(
    "ids",
    Takes::Tables(&OTHER_ID),
    "identifiers under which it is known elsewhere",
);
