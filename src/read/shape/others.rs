//! The keys of the catalogue's settings, and of the records to which designs and impressions refer:
//! holders, people, exhibitions, terms.

use super::as_found::IDS;
use super::declare::{
    KeyShape, MapKeys, SETTLED, Shape, Takes, Target, WAS, may, must, plain, words,
};
use crate::model::holder::HolderKind;
use crate::model::occurrence::MentionRole;
use crate::model::vocabulary::CountingClass;
use crate::model::vocabulary::List;

/// `catalogue.toml`.
pub static CATALOGUE: Shape = plain(
    "the catalogue",
    &[
        must("title", Takes::Text, "the title of the catalogue"),
        must(
            "siglum",
            Takes::Text,
            "its short form in citations: \"XY\" in \"XY 14.7\"",
        ),
        must(
            "artist",
            Takes::Refers(Target::Person, MentionRole::Artist),
            "the artist, a person's key",
        ),
        may(
            "editors",
            Takes::Several(&Takes::Refers(Target::Person, MentionRole::Editor)),
            "the editors, people's keys",
        ),
        may(
            "pages",
            Takes::Several(&Takes::Refers(Target::Page, MentionRole::Listed)),
            "its own pages in the order of its lists; those not named follow",
        ),
        may("edition", Takes::Text, "the edition, as text"),
        may("dated", Takes::Date, "the date of the edition"),
        must(
            "language",
            Takes::Language,
            "the language of the catalogue's own text",
        ),
        must("address", Takes::Web, "where it is published"),
        may(
            "licence",
            Takes::Text,
            "the licence of its text and data, an SPDX identifier or words",
        ),
        may(
            "work_rights",
            Takes::Text,
            "the rights in the works themselves",
        ),
        may("contact", Takes::Text, "where to write to"),
        may(
            "oai_gateway",
            Takes::Web,
            "the gateway through which harvesters read oai.xml (OAI-PMH)",
        ),
        may(
            "theme",
            Takes::Theme,
            "the theme; laid where nothing is said",
        ),
        may(
            "ink",
            Takes::Colour,
            "the block ink: numerals, links, what differs",
        ),
        may(
            "principles",
            Takes::Map(MapKeys::Headings, &Takes::Text),
            "what makes a state, what counts, how things are measured",
        ),
        may(
            "privacy",
            Takes::Table(&PRIVACY),
            "what stands in place of what is private",
        ),
        may(
            "pictures",
            Takes::Table(&PICTURES),
            "how pictures are published",
        ),
        may(
            "cautions",
            Takes::Map(MapKeys::Headings, &Takes::Text),
            "what the catalogue adds to the cautions",
        ),
        SETTLED,
    ],
);

/// `[privacy]` of the catalogue.
pub static PRIVACY: Shape = plain(
    "the privacy table",
    &[may(
        "private_owner",
        Takes::Text,
        "what readers see in place of a private owner's name",
    )],
);

/// `[pictures]` of the catalogue.
pub static PICTURES: Shape = plain(
    "the pictures table",
    &[
        may(
            "quality",
            Takes::Whole(1, 100),
            "the JPEG quality of published pictures",
        ),
        may(
            "largest",
            LARGEST,
            "the longest published side, px; masters may be larger",
        ),
        may(
            "memory",
            // Less than 64 MiB is too little for a photograph; a TiB is more than machines have.
            Takes::Whole(64, 1_048_576),
            "the memory that pictures may take at once, MiB; 1024 where nothing is said",
        ),
        DEFAULT_RIGHTS,
        DEFAULT_CREDIT,
        DEFAULT_PUBLISH,
    ],
);

/// `[pictures]` of a holder.
pub static PICTURE_DEFAULTS: Shape = plain(
    "the pictures table of a holder",
    &[DEFAULT_RIGHTS, DEFAULT_CREDIT, DEFAULT_PUBLISH],
);

const DEFAULT_RIGHTS: KeyShape = may(
    "rights",
    Takes::Text,
    "the rights in every picture that says nothing of its own: an identifier, or free text",
);

const DEFAULT_CREDIT: KeyShape = may(
    "credit",
    Takes::Text,
    "the credit line of every picture that has none of its own",
);

/// A flag, because the texts beside it are published with the pictures that say otherwise.
const DEFAULT_PUBLISH: KeyShape = may(
    "publish",
    Takes::Flag,
    "false: a picture is published only where it says so itself",
);

/// The bounds of a published side, in px. A picture below 200 px shows too little, and browsers do not
/// show one above 20,000 px.
pub(super) const LARGEST: Takes = Takes::Whole(200, 20_000);

/// `holders/KEY.toml`.
pub static HOLDER: Shape = plain(
    "a holder",
    &[
        must("name", Takes::Text, "its name"),
        must(
            "kind",
            Takes::Word(words::<HolderKind>),
            "what kind of holder it is",
        ),
        may("place", Takes::Text, "the town"),
        may(
            "country",
            Takes::Country,
            "the country, ISO 3166-1: two capital letters",
        ),
        may(
            "isil",
            Takes::Isil,
            "its code in ISO 15511, where it has one",
        ),
        may("web", Takes::Web, "its address on the web"),
        IDS,
        may("credit", Takes::Text, "its credit line"),
        may(
            "pictures",
            Takes::Table(&PICTURE_DEFAULTS),
            "what holds for the photographs of its sheets, where they say nothing of their own",
        ),
        may("formerly", Takes::Tables(&FORMER_NAME), "names it had"),
        may("successor", Takes::Table(&SUCCESSOR), "who took it over"),
        may(
            "consent",
            Takes::Table(&CONSENT),
            "a private owner's consent to be named",
        ),
        WAS,
        SETTLED,
    ],
);

/// A former name of a holder.
pub static FORMER_NAME: Shape = plain(
    "a former name",
    &[
        must("name", Takes::Text, "the name"),
        may("until", Takes::Date, "until when"),
    ],
);

/// The successor of a holder.
pub static SUCCESSOR: Shape = plain(
    "a successor",
    &[
        must(
            "holder",
            Takes::Refers(Target::Holder, MentionRole::Successor),
            "the holder that took it over",
        ),
        may("date", Takes::Date, "when"),
    ],
);

/// A private owner's consent.
pub static CONSENT: Shape = plain(
    "a consent",
    &[
        may("date", Takes::Date, "when it was given"),
        must(
            "covers",
            Takes::Several(&Takes::Word(consent_covers)),
            "what it covers",
        ),
        may("withdrawn", Takes::Date, "when it was withdrawn"),
    ],
);

/// What a consent can cover: the two fields that a private holder keeps back by default, and photographs of its sheets
/// on the terms of its own record.
pub(crate) fn consent_covers() -> Vec<&'static str> {
    vec!["name", "place", "pictures"]
}

/// `people/KEY.toml`.
pub static PERSON: Shape = plain(
    "a person",
    &[
        must("name", Takes::Text, "the name as read"),
        may("sort", Takes::Text, "the name as sorted: \"Artist, The\""),
        may(
            "roles",
            Takes::Several(&Takes::Term(List::Roles)),
            "what they did",
        ),
        may("born", Takes::Date, "when they were born"),
        may("died", Takes::Date, "when they died"),
        may("active", Takes::Date, "when they worked"),
        may(
            "names",
            Takes::Tables(&OTHER_NAME),
            "other forms of the name",
        ),
        may(
            "authority",
            Takes::Several(&Takes::Web),
            "addresses of authority records",
        ),
        IDS,
        WAS,
        SETTLED,
    ],
);

/// Another form of a name.
pub static OTHER_NAME: Shape = plain(
    "a name",
    &[
        must("text", Takes::Text, "the name"),
        may("lang", Takes::Language, "its language and script"),
    ],
);

/// One table of `exhibitions.toml`.
pub static EXHIBITION: Shape = plain(
    "an exhibition",
    &[
        must("title", Takes::Text, "its title"),
        may(
            "venue",
            Takes::HolderOrWords(MentionRole::Exhibited),
            "where: a holder's key, or words",
        ),
        may("place", Takes::Text, "the town"),
        may("date", Takes::Date, "when"),
        may(
            "cite",
            Takes::Refers(Target::Cited, MentionRole::Cited),
            "its catalogue",
        ),
        WAS,
        SETTLED,
    ],
);

/// `pages/KEY.toml`, beside a page of the catalogue's own.
pub static PAGE: Shape = plain("a page", &[WAS, SETTLED]);

/// One table of `vocabulary/LIST.toml`.
pub static TERM: Shape = Shape {
    name: "a term",
    own: TERM_KEYS,
    claim: false,
    standing: false,
    open: false,
    private: true,
};

const TERM_KEYS: &[KeyShape] = &[
    must(
        "label",
        Takes::TextByLanguage,
        "the term as readers see it, or a table of it by language",
    ),
    may(
        "synonyms",
        Takes::TextsByLanguage,
        "other names by which it is found, or a table of them by language",
    ),
    may(
        "note",
        Takes::TextByLanguage,
        "what it means, for the glossary",
    ),
    may(
        "aat",
        Takes::Whole(1, u32::MAX),
        "its number in the Art & Architecture Thesaurus",
    ),
    may(
        "class",
        Takes::Word(words::<CountingClass>),
        "for a kind of impression: with which others it is counted; other where nothing is said",
    ),
    SETTLED,
];
