//! Months, seasons, and the small words around dates.

use std::sync::LazyLock;

use crate::exchange::intake::reading::phrases::Phrases;

/// The months: 1 to 12.
pub(super) static MONTHS: LazyLock<Phrases<u32>> = LazyLock::new(|| {
    Phrases::of(&[
        (1, "january|jan.|januar|jänner|janvier|janv.|januari"),
        (2, "february|feb.|februar|février|févr.|fév.|februari"),
        (3, "march|mar.|märz|maerz|mars|maart|mrt."),
        (4, "april|apr.|avril|avr."),
        (5, "may|mai|mei"),
        (6, "june|jun.|juni|juin"),
        (7, "july|jul.|juli|juillet|juil."),
        (8, "august|aug.|août|aout|augustus"),
        (9, "september|sept.|sep.|septembre"),
        (10, "october|oct.|oktober|okt.|octobre"),
        (11, "november|nov.|novembre"),
        (12, "december|dec.|dezember|dez.|décembre|déc."),
    ])
});

/// The seasons in EDTF: 21 to 24, of no hemisphere.
pub(super) static SEASONS: LazyLock<Phrases<u32>> = LazyLock::new(|| {
    Phrases::of(&[
        (
            21,
            "spring|frühling|frühjahr|fruehjahr|printemps|lente|voorjaar|春",
        ),
        (22, "summer|sommer|été|zomer|夏"),
        (23, "autumn|fall|herbst|automne|herfst|najaar|秋"),
        (24, "winter|hiver|冬"),
    ])
});

/// "Circa".
pub(super) static ABOUT: LazyLock<Phrases<()>> = LazyLock::new(|| {
    Phrases::of(&[(
        (),
        "c.|ca.|cca.|circa|about|approximately|approx.|around|um|um die|etwa|gegen|zirka|vers|env.|environ|autour de|\
         omstreeks|omstr.|rond|ongeveer|約|およそ|~",
    )])
});

/// "Circa" behind a date.
pub(super) static ABOUT_BEHIND: LazyLock<Phrases<()>> =
    LazyLock::new(|| Phrases::of(&[((), "年頃|年ごろ|年代頃|頃|ごろ|circa|ca.|~")]));

/// "Probably".
pub(super) static PERHAPS: LazyLock<Phrases<()>> = LazyLock::new(|| {
    Phrases::of(&[(
        (),
        "?|probably|prob.|possibly|perhaps|presumably|wohl|wahrscheinlich|vermutlich|möglicherweise|vielleicht|\
         probablement|sans doute|peut-être|possiblement|waarschijnlijk|vermoedelijk|mogelijk|misschien|推定",
    )])
});

/// The relation to a point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Relation {
    /// Before or by it.
    Before,
    /// After it.
    After,
    /// From it on.
    Since,
    /// Up to it.
    Until,
}

/// "Before", "after", "since", "until" before a date.
pub(super) static RELATIONS: LazyLock<Phrases<Relation>> = LazyLock::new(|| {
    Phrases::of(&[
        (
            Relation::Before,
            "before|by|not after|no later than|not later than|ante|vor|spätestens|nicht nach|avant|au plus tard|\
             voor|uiterlijk|niet na",
        ),
        (
            Relation::After,
            "after|not before|no earlier than|not earlier than|post|nach|frühestens|nicht vor|après|au plus tôt|na|\
             niet voor",
        ),
        (
            Relation::Since,
            "since|from|seit|ab|depuis|à partir de|sinds|vanaf",
        ),
        (Relation::Until, "until|till|up to|bis|jusqu'en|jusqu'à|tot"),
    ])
});

/// The same behind a date.
pub(super) static RELATIONS_BEHIND: LazyLock<Phrases<Relation>> = LazyLock::new(|| {
    Phrases::of(&[
        (
            Relation::Before,
            "年以前|以前|or earlier|or before|oder früher|ou avant|of eerder",
        ),
        (
            Relation::After,
            "年以後|年以降|以後|以降|or later|or after|oder später|ou après|of later",
        ),
    ])
});

/// Words between the ends of a span.
pub(super) static TO: LazyLock<Phrases<()>> =
    LazyLock::new(|| Phrases::of(&[((), "to|until|till|bis|à|au|tot|t/m|through|から|～|〜|~")]));

/// Words before a span whose ends a word joins: "between … and …".
pub(super) static BETWEEN: LazyLock<Phrases<()>> =
    LazyLock::new(|| Phrases::of(&[((), "between|from|zwischen|von|entre|de|tussen|van")]));

/// "And".
pub(super) static AND: LazyLock<Phrases<()>> =
    LazyLock::new(|| Phrases::of(&[((), "and|und|et|en|&|と")]));

/// "Or".
pub(super) static OR: LazyLock<Phrases<()>> =
    LazyLock::new(|| Phrases::of(&[((), "or|oder|ou|of|または|或いは|か")]));

/// A part of a decade, a century or a year.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Part {
    /// The first third.
    Early,
    /// The second third.
    Mid,
    /// The last third.
    Late,
    /// A half, 1 or 2.
    Half(u32),
    /// A quarter, 1 to 4.
    Quarter(u32),
}

/// Words for parts.
pub(super) static PARTS: LazyLock<Phrases<Part>> = LazyLock::new(|| {
    Phrases::of(&[
        (
            Part::Early,
            "early|beginning of|begin|anfang|anfang der|anfang des|frühe|frühes|frühen|début|début du|début des|\
             vroege|begin van de|初期|初頭",
        ),
        (
            Part::Mid,
            "mid|middle of|mitte|mitte der|mitte des|milieu|milieu du|milieu des|midden|midden van de|中期|中頃",
        ),
        (
            Part::Late,
            "late|end of|ende|ende der|ende des|späte|spätes|späten|fin|fin du|fin des|eind|einde van de|late|末期|末",
        ),
        (
            Part::Half(1),
            "first half of the|first half of|first half|1st half|1. hälfte|erste hälfte|erste hälfte des|1. hälfte des|\
             première moitié du|première moitié|1e moitié|eerste helft|eerste helft van de|1e helft|前半",
        ),
        (
            Part::Half(2),
            "second half of the|second half of|second half|2nd half|2. hälfte|zweite hälfte|zweite hälfte des|\
             2. hälfte des|seconde moitié du|seconde moitié|deuxième moitié|2e moitié|tweede helft|\
             tweede helft van de|2e helft|後半",
        ),
        (
            Part::Quarter(1),
            "first quarter of the|first quarter|1st quarter|1. viertel|erstes viertel|premier quart du|premier quart|\
             1er quart|eerste kwart",
        ),
        (
            Part::Quarter(2),
            "second quarter of the|second quarter|2nd quarter|2. viertel|zweites viertel|deuxième quart|2e quart|\
             tweede kwart",
        ),
        (
            Part::Quarter(3),
            "third quarter of the|third quarter|3rd quarter|3. viertel|drittes viertel|troisième quart|3e quart|\
             derde kwart",
        ),
        (
            Part::Quarter(4),
            "last quarter of the|last quarter|fourth quarter|4th quarter|4. viertel|letztes viertel|dernier quart du|\
             dernier quart|4e quart|laatste kwart",
        ),
    ])
});

/// Words for a decade behind its first year: `1930s`, `1930er Jahre`.
pub(super) static DECADE_BEHIND: LazyLock<Phrases<()>> =
    LazyLock::new(|| Phrases::of(&[((), "s|'s|er|er jahre|er jahren|年代")]));

/// Words for a decade before its first year: `années 1930`.
pub(super) static DECADE_BEFORE: LazyLock<Phrases<()>> =
    LazyLock::new(|| Phrases::of(&[((), "années|les années|des années|jaren|de jaren|décennie")]));

/// Words for a century behind its number.
pub(super) static CENTURY: LazyLock<Phrases<()>> = LazyLock::new(|| {
    Phrases::of(&[(
        (),
        "century|cent.|c.|jahrhundert|jahrhunderts|jh.|jhs.|jhdt.|siècle|s.|eeuw|世紀",
    )])
});
