//! Dates as museums write them, each with its reading. Tests only.
//!
//! Forms: those of 15,000 records of one museum's open data, with invented years; further languages from docs/trade.md,
//! "Tables that others hand in". EDTF strings are of ISO 8601-2:2019 Annex A as `tests/checks/edtf.csv` has them. Years of eras from memory.

use super::{Act, When, dates};
use crate::model::edtf::{Date, Day};
use crate::model::words::ClosedList;

/// The statements in one line: `created 1925; printed later`.
fn said(text: &str) -> String {
    let statements = dates(text).is;
    let told = statements.iter().map(|statement| {
        let when = match &statement.when {
            When::Date(date) => date.as_str(),
            When::NotKnown => "unknown",
            When::Later => "later",
        };
        format!("{} {when}", statement.act.word())
    });
    told.collect::<Vec<_>>().join("; ")
}

fn left(text: &str) -> String {
    dates(text).left_over(text).join(" | ")
}

/// Every form of a museum's `dateText` met ten times or more, in the order of its count.
#[test]
fn the_forms_of_one_museum_are_read_whole() {
    for (text, reading) in [
        ("1925", "created 1925"),
        ("date not known", "created unknown"),
        ("1925–1931", "created 1925/1931"),
        ("published 1819", "published 1819"),
        ("1925–31", "created 1925/1931"),
        ("c.1830", "created 1830~"),
        ("1925, printed 1970", "created 1925; printed 1970"),
        (
            "1964–5, enlarged version 1990",
            "created 1964/1965; enlarged 1990",
        ),
        (
            "1964–1965, enlarged version 1990",
            "created 1964/1965; enlarged 1990",
        ),
        ("published 1807–19", "published 1807/1819"),
        ("c.1830–1835", "created 1830~/1835~"),
        ("1925, printed after 1950", "created 1925; printed [1950..]"),
        ("1825, published 1827", "created 1825; published 1827"),
        ("1961–1963, 1970", "created {1961..1963,1970}"),
        ("c.1830–35", "created 1830~/1835~"),
        ("1930, reproduced 1975", "created 1930; reproduced 1975"),
        ("1810, reprinted c.1870", "created 1810; reprinted 1870~"),
        ("1961–1963, printed 1972", "created 1961/1963; printed 1972"),
        ("1810, reprinted 1870", "created 1810; reprinted 1870"),
        ("1925, 1930", "created {1925,1930}"),
        ("c. 1830", "created 1830~"),
        ("c. 1830, printed 1970", "created 1830~; printed 1970"),
        (
            "1807–1819, published 1821",
            "created 1807/1819; published 1821",
        ),
        (
            "1807–1819, reprinted 1870",
            "created 1807/1819; reprinted 1870",
        ),
        (
            "first published 1807, reprinted 1870",
            "first-published 1807; reprinted 1870",
        ),
        (
            "1830–1840; printed 1970s",
            "created 1830/1840; printed 197X",
        ),
        ("first published 1807", "first-published 1807"),
        ("c.1930, 1931", "created {1930~,1931}"),
        (
            "published 1807, reprinted 1870–1873",
            "published 1807; reprinted 1870/1873",
        ),
        ("1925, printed later", "created 1925; printed later"),
    ] {
        assert_eq!(said(text), reading, "{text}");
        assert_eq!(left(text), "", "{text}");
    }
}

/// Dates as a museum cataloguer sends them, and their like in five languages.
#[test]
fn dates_in_five_languages_are_read_whole() {
    for (text, reading) in [
        ("c.1830–5", "created 1830~/1835~"),
        (
            "published 1819, reprinted c.1870",
            "published 1819; reprinted 1870~",
        ),
        ("um 1912", "created 1912~"),
        ("Shōwa 18", "created 1943"),
        ("Showa 18 (1943)", "created 1943"),
        ("昭和18年", "created 1943"),
        ("昭和十八年五月", "created 1943-05"),
        ("大正元年", "created 1912"),
        ("明治45年", "created 1912"),
        ("Meiji 6", "created 1873"),
        ("平成2年頃", "created 1990~"),
        ("令和元年", "created 2019"),
        ("1925年作、1950年後摺", "created 1925; reprinted 1950"),
        ("1925年5月12日", "created 1925-05-12"),
        ("1925年夏", "created 1925-22"),
        ("1930年代", "created 193X"),
        ("1925年頃", "created 1925~"),
        ("1925年以前", "created [..1925]"),
        ("制作年不詳", "created unknown"),
        ("19世紀後半", "created 1851/1900"),
        ("early 1930s", "created 1930/1933~"),
        ("late 1930s", "created 1937~/1939"),
        ("mid-1930s", "created 1934~/1936~"),
        ("early 1925", "created 1925-01/1925-04~"),
        ("?1925 or 1926", "created [1925?,1926?]"),
        ("1925 or 26", "created [1925,1926]"),
        ("1925, 1926 or 1927", "created [1925,1926,1927]"),
        ("1925 oder 1926", "created [1925,1926]"),
        ("1925?", "created 1925?"),
        ("1925 (?)", "created 1925?"),
        ("c.1925?", "created 1925%"),
        ("1830–35?", "created 1830?/1835?"),
        ("1927?–1931", "created 1927?/1931"),
        ("probably 1925", "created 1925?"),
        ("n.d.", "created unknown"),
        ("o. J.", "created unknown"),
        ("o.J.", "created unknown"),
        ("s.d.", "created unknown"),
        ("z.j.", "created unknown"),
        ("vers 1900", "created 1900~"),
        ("ca. 1900", "created 1900~"),
        ("omstreeks 1900", "created 1900~"),
        ("before 1925", "created [..1925]"),
        ("vor 1925", "created [..1925]"),
        ("après 1925", "created [1925..]"),
        ("na 1925", "created [1925..]"),
        ("by 1925", "created [..1925]"),
        ("since 1925", "created 1925/.."),
        ("bis 1925", "created ../1925"),
        ("between 1925 and 1930", "created 1925/1930"),
        ("zwischen 1925 und 1930", "created 1925/1930"),
        ("entre 1925 et 1930", "created 1925/1930"),
        ("tussen 1925 en 1930", "created 1925/1930"),
        ("von 1925 bis 1930", "created 1925/1930"),
        ("de 1925 à 1930", "created 1925/1930"),
        ("1925 to 1930", "created 1925/1930"),
        ("1925/26", "created 1925/1926"),
        ("1925 / 1930", "created {1925,1930}"),
        ("1930s–40s", "created 193X/194X"),
        ("1930er Jahre", "created 193X"),
        ("Anfang der 1930er Jahre", "created 1930/1933~"),
        ("années 1930", "created 193X"),
        ("jaren 1930", "created 193X"),
        ("19th century", "created 18XX"),
        ("19. Jahrhundert", "created 18XX"),
        ("XIXe siècle", "created 18XX"),
        ("19de eeuw", "created 18XX"),
        ("first half of the 19th century", "created 1801/1850"),
        ("2. Hälfte 19. Jh.", "created 1851/1900"),
        ("début du XIXe siècle", "created 1801/1833~"),
        ("last quarter 19th century", "created 1876/1900"),
        ("summer 1925", "created 1925-22"),
        ("Sommer 1925", "created 1925-22"),
        ("Winter 1925/26", "created 1925-24"),
        ("été 1925", "created 1925-22"),
        ("May 1925", "created 1925-05"),
        ("May–June 1925", "created 1925-05/1925-06"),
        ("12 May 1925", "created 1925-05-12"),
        ("May 12th, 1925", "created 1925-05-12"),
        ("12. Mai 1925", "created 1925-05-12"),
        ("12 août 1925", "created 1925-08-12"),
        ("12 mei 1925", "created 1925-05-12"),
        ("12.5.1925", "created 1925-05-12"),
        ("31/5/1925", "created 1925-05-31"),
        ("5/31/1925", "created 1925-05-31"),
        ("1925-05-12", "created 1925-05-12"),
        ("1925-05", "created 1925-05"),
        ("05/1925", "created 1925-05"),
        (
            "1925 entstanden, gedruckt 1950",
            "created 1925; printed 1950",
        ),
        ("1925, 1950 gedruckt", "created 1925; printed 1950"),
        (
            "entworfen 1925, gedruckt um 1950",
            "created 1925; printed 1950~",
        ),
        ("gravé en 1790, publié 1819", "created 1790; published 1819"),
        ("1925, tirage posthume 1970", "created 1925; reprinted 1970"),
        (
            "ontworpen 1925, herdrukt 1970",
            "created 1925; reprinted 1970",
        ),
        (
            "designed and published 1925",
            "created 1925; published 1925",
        ),
        ("1925, this impression c.1950", "created 1925; pulled 1950~"),
        ("Published: 1925", "published 1925"),
        ("n.d. [c.1925]", "created 1925~"),
    ] {
        assert_eq!(said(text), reading, "{text}");
        assert_eq!(left(text), "", "{text}");
    }
}

#[test]
fn words_that_were_not_understood_are_left_over() {
    for (text, reading, leftover) in [
        ("early summer 1925", "created 1925-22", "early"),
        (
            "1925, after a lost drawing",
            "created 1925",
            "after a lost drawing",
        ),
        ("published by Brook 1925", "published 1925", "by Brook"),
        ("Meiji 50", "", "Meiji 50"),
        // A span that ends before it begins is two dates and a dash.
        ("1931–1925", "created {1931,1925}", "–"),
        ("30 February 1925", "created 1925-02", "30"),
        ("soon", "", "soon"),
        ("", "", ""),
    ] {
        assert_eq!(said(text), reading, "{text}");
        assert_eq!(left(text), leftover, "{text}");
    }
}

#[test]
fn what_is_doubtful_is_told() {
    use crate::exchange::intake::reading::Doubt;
    for (text, reading, doubt) in [
        ("1905-07", "created 1905/1907", Doubt::MonthOrSpan),
        (
            "5/6/1925",
            "created [1925-06-05,1925-05-06]",
            Doubt::DayOrMonth,
        ),
        ("1898–02", "created 1898/1902", Doubt::NextCentury),
        ("early 1930s", "created 1930/1933~", Doubt::PartByConvention),
        (
            "Shōwa 18 (1944)",
            "created {1943,1944}",
            Doubt::ErasContradict,
        ),
        ("[1925]", "created 1925", Doubt::DateSupplied),
        (
            "1925, 1930",
            "created {1925,1930}",
            Doubt::DatesWithoutWords,
        ),
        ("明治5年3月", "created 1872", Doubt::EraOutOfRange),
    ] {
        assert_eq!(said(text), reading, "{text}");
        assert!(dates(text).doubts.contains(&doubt), "{text}");
    }
    for text in ["1905–07", "1905-06-07", "1925–31", "6.6.1925"] {
        assert_eq!(dates(text).doubts, [], "{text}");
    }
}

/// The days that a reading covers, as ISO 8601-2 bounds them (`tests/checks/edtf.csv`): what the words mean, told in
/// days.
#[test]
fn readings_cover_the_days_that_the_words_mean() {
    let day = |year, month, day| Day { year, month, day };
    for (text, earliest, latest) in [
        ("um 1927", Some(day(1927, 1, 1)), Some(day(1927, 12, 31))),
        ("1930s", Some(day(1930, 1, 1)), Some(day(1939, 12, 31))),
        ("after 1950", Some(day(1950, 1, 1)), None),
        ("before 1984", None, Some(day(1984, 12, 31))),
        ("1925–31", Some(day(1925, 1, 1)), Some(day(1931, 12, 31))),
        ("昭和18年2月", Some(day(1943, 2, 1)), Some(day(1943, 2, 28))),
        (
            "February 1904",
            Some(day(1904, 2, 1)),
            Some(day(1904, 2, 29)),
        ),
    ] {
        let reading = dates(text).is;
        let date = reading[0].when.date().unwrap();
        assert_eq!(date.earliest().day(), earliest, "{text}");
        assert_eq!(date.latest().day(), latest, "{text}");
    }
}

/// The first and the last year of each era: 1868, 1912, 1926, 1989 and 2019 (from memory).
#[test]
fn the_years_that_carry_two_eras_are_one_year() {
    for (last, first, year) in [
        ("Meiji 45", "Taishō 1", "1912"),
        ("Taishō 15", "Shōwa 1", "1926"),
        ("Shōwa 64", "Heisei 1", "1989"),
        ("Heisei 31", "Reiwa 1", "2019"),
    ] {
        for text in [last, first] {
            assert_eq!(said(text), format!("created {year}"), "{text}");
        }
    }
}

/// An EDTF date of a year, a decade, a month or a day is read as itself.
#[test]
fn edtf_of_points_is_read_as_itself() {
    for text in ["1985", "1985-04", "1985-04-12", "1984?", "1927~"] {
        assert_eq!(Date::parse(text).unwrap().as_str(), text);
        assert_eq!(said(text), format!("created {text}"));
    }
}

#[test]
fn every_act_has_words() {
    for act in Act::ALL {
        let text = match act {
            Act::Created => "made 1925",
            Act::Published => "published 1925",
            Act::FirstPublished => "first published 1925",
            Act::Printed => "printed 1925",
            Act::Reprinted => "reprinted 1925",
            Act::Reproduced => "reproduced 1925",
            Act::Enlarged => "enlarged version 1925",
            Act::Pulled => "pulled 1925",
        };
        assert_eq!(dates(text).is[0].act, *act, "{text}");
    }
}
