//! One time in a text: a day, a month, a season, a year, a decade, a century, or a part of these.

use super::calendar::{
    ABOUT_BEHIND, CENTURY, DECADE_BEFORE, DECADE_BEHIND, MONTHS, PARTS, Part, SEASONS,
};
use super::eras::{ERAS, LAST_LUNAR_YEAR};
use super::extent::{Bound, Extent};
use crate::exchange::intake::reading::numerals::{kanji_or_figures, ordinal};
use crate::exchange::intake::reading::outcome::Doubt;
use crate::exchange::intake::reading::words::{DASHES, Words};

/// A time found in a text.
#[derive(Clone, Debug)]
pub(super) struct Moment {
    /// The time.
    pub extent: Extent,
    /// What was named.
    pub named: Named,
    /// The piece after it.
    pub end: usize,
    /// What is doubtful in it.
    pub doubts: Vec<Doubt>,
    /// The other reading of a day whose month is not told.
    pub or: Option<Extent>,
    /// Whether it was told by an era.
    pub is_of_era: bool,
}

/// What was named.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Named {
    /// A year.
    Year(u32),
    /// A decade, by its first year.
    Decade(u32),
    /// A century, the nineteenth is 19.
    Century(u32),
    /// Something that has no parts.
    Finer,
}

impl Moment {
    fn of(extent: Extent, named: Named, end: usize) -> Moment {
        Moment {
            extent,
            named,
            end,
            doubts: Vec::new(),
            or: None,
            is_of_era: false,
        }
    }
}

/// The time that begins at a piece, with the qualifiers behind it.
pub(super) fn moment(words: &Words<'_>, index: usize) -> Option<Moment> {
    let mut found = match PARTS.at(words, index) {
        Some(part) => {
            let mut start = part.end;
            if words.is_mark(start, &DASHES) {
                start += 1;
            }
            match core(words, start).and_then(|whole| part_of(part.is, whole)) {
                Some(found) => found,
                None => core(words, index)?,
            }
        }
        None => core(words, index)?,
    };
    // 19世紀後半: in Japanese the part stands behind.
    if let Some(part) = PARTS.at(words, found.end)
        && is_han(words, found.end)
        && let Some(of_part) = part_of(part.is, found.clone())
    {
        found = Moment {
            end: part.end,
            ..of_part
        };
    }
    qualifiers_behind(words, &mut found);
    Some(found)
}

fn is_han(words: &Words<'_>, index: usize) -> bool {
    words.word(index).is_some_and(|w| !w.is_ascii())
}

fn qualifiers_behind(words: &Words<'_>, found: &mut Moment) {
    loop {
        let at = found.end;
        if words.is_mark(at, &["?"]) {
            found.extent.qualify(false, true);
            found.end += 1;
        } else if words.is_mark(at, &["(", "["])
            && words.is_mark(at + 1, &["?"])
            && words.is_mark(at + 2, &[")", "]"])
        {
            found.extent.qualify(false, true);
            found.end += 3;
        } else if let Some(about) = ABOUT_BEHIND.at(words, at) {
            // `1925 ca. 1930` is no "1925 circa".
            if year(words, about.end).is_some() {
                return;
            }
            found.extent.qualify(true, false);
            found.end = about.end;
        } else {
            return;
        }
    }
}

fn part_of(part: Part, whole: Moment) -> Option<Moment> {
    // The first and last years, or months, of a part: thirds by a convention of ours (common practice, no source),
    // halves and quarters exactly.
    let (first, count, unit): (u32, u32, fn(u32) -> String) = match whole.named {
        Named::Decade(first) => (first, 10, four_figures),
        Named::Century(number) => ((number - 1) * 100 + 1, 100, four_figures),
        Named::Year(_) => (1, 12, |month| format!("{month:02}")),
        Named::Finer => return None,
    };
    let (start, end, opens_softly, closes_softly) = match part {
        Part::Early => (0, thirds(count).0, false, true),
        Part::Mid => (thirds(count).0 + 1, thirds(count).1, true, true),
        Part::Late => (thirds(count).1 + 1, count - 1, true, false),
        Part::Half(half) => ((half - 1) * count / 2, half * count / 2 - 1, false, false),
        Part::Quarter(_) if count == 10 => return None,
        Part::Quarter(n) => ((n - 1) * count / 4, n * count / 4 - 1, false, false),
    };
    let bound = |offset: u32, is_soft: bool| {
        let body = unit(first + offset);
        let body = match whole.named {
            Named::Year(year) => format!("{}-{body}", four_figures(year)),
            _ => body,
        };
        if is_soft {
            Bound::about(body)
        } else {
            Bound::at(body)
        }
    };
    let extent = Extent {
        first: bound(start, opens_softly),
        last: bound(end, closes_softly),
    };
    let mut found = Moment {
        extent,
        named: Named::Finer,
        ..whole
    };
    if opens_softly || closes_softly {
        found.doubts.push(Doubt::PartByConvention);
    }
    Some(found)
}

/// The last of the first third, and of the second.
fn thirds(count: u32) -> (u32, u32) {
    match count {
        10 => (3, 6),
        100 => (32, 65),
        _ => (3, 7),
    }
}

fn four_figures(year: u32) -> String {
    format!("{year:04}")
}

fn core(words: &Words<'_>, index: usize) -> Option<Moment> {
    of_era(words, index)
        .or_else(|| in_figures(words, index))
        .or_else(|| with_month(words, index))
        .or_else(|| season(words, index))
        .or_else(|| decade_or_century(words, index))
        .or_else(|| year_and_more(words, index))
}

/// The year in four figures at a place: 1300 to 2099, since no print is older.
pub(super) fn year(words: &Words<'_>, index: usize) -> Option<u32> {
    let figures = words.figures(index)?;
    let number = words.number(index)?;
    (figures.len() == 4 && (1300..=2099).contains(&number)).then_some(number)
}

/// `Shōwa 18`, `昭和十八年五月`.
fn of_era(words: &Words<'_>, index: usize) -> Option<Moment> {
    let era = ERAS.at(words, index)?;
    let (of_era, mut end) = kanji_or_figures(words, era.end)?;
    let year = era.is.year(of_era);
    if words.word(end) == Some("年") {
        end += 1;
    }
    let Some(year) = year else {
        // The era and its number stay left over; the doubt says why.
        return None;
    };
    let mut found = months_in_kanji(words, year, end, year <= LAST_LUNAR_YEAR);
    found.is_of_era = true;
    Some(found)
}

/// A year, with the month and day in kanji that may follow it.
fn months_in_kanji(words: &Words<'_>, year: u32, end: usize, is_lunar: bool) -> Moment {
    let plain = Moment::of(Extent::point(four_figures(year)), Named::Year(year), end);
    if let Some(season) = SEASONS.at(words, end).filter(|_| is_han(words, end)) {
        let body = format!("{year:04}-{}", season.is);
        return Moment::of(Extent::point(body), Named::Finer, season.end);
    }
    let month = kanji_or_figures(words, end)
        .filter(|(month, at)| (1..=12).contains(month) && words.word(*at) == Some("月"));
    let Some((month, at)) = month else {
        return plain;
    };
    if is_lunar {
        return Moment {
            doubts: vec![Doubt::EraOutOfRange],
            ..plain
        };
    }
    let day = kanji_or_figures(words, at + 1)
        .filter(|(day, at)| (1..=31).contains(day) && words.word(*at) == Some("日"));
    if let Some((day, after)) = day {
        let body = format!("{year:04}-{month:02}-{day:02}");
        return Moment::of(Extent::point(body), Named::Finer, after + 1);
    }
    let body = format!("{year:04}-{month:02}");
    Moment::of(Extent::point(body), Named::Finer, at + 1)
}

/// `1925-05-12`, `12.5.1925`, `5/12/1925`, `05.1925`, `1925-05`.
fn in_figures(words: &Words<'_>, index: usize) -> Option<Moment> {
    let small = |at: usize, most: u32| {
        let figures = words.figures(at).filter(|figures| figures.len() <= 2)?;
        let number: u32 = figures.parse().ok()?;
        (1..=most).contains(&number).then_some(number)
    };
    let day = |year: u32, month: u32, day: u32| format!("{year:04}-{month:02}-{day:02}");
    if let Some(of) = year(words, index) {
        let is_iso = |at: usize| {
            words.is_close_mark(at, &["-"])
                && words.is_close(at + 1)
                && words.figures(at + 1).is_some_and(|f| f.len() == 2)
        };
        let month = small(index + 2, 12).filter(|_| is_iso(index + 1))?;
        if let Some(d) = small(index + 4, 31).filter(|_| is_iso(index + 3)) {
            let found = Moment::of(Extent::point(day(of, month, d)), Named::Finer, index + 5);
            return Some(found);
        }
        // `1925-05` is a month; `1905-07` may be a span, which `spans` takes with a doubt.
        if month > of % 100 {
            return None;
        }
        let body = format!("{of:04}-{month:02}");
        return Some(Moment::of(Extent::point(body), Named::Finer, index + 3));
    }
    let first = small(index, 31)?;
    let mark = words.at(index + 1)?.folded.clone();
    if !words.is_close_mark(index + 1, &[".", "/", "-"]) {
        return None;
    }
    if let Some(of) = year(words, index + 2).filter(|_| mark != "-" && first <= 12) {
        let body = format!("{of:04}-{first:02}");
        return Some(Moment::of(Extent::point(body), Named::Finer, index + 3));
    }
    let second = small(index + 2, 31)?;
    if !words.is_mark(index + 3, &[&mark]) {
        return None;
    }
    let of = year(words, index + 4)?;
    let end = index + 5;
    let at = |month, d| Extent::point(day(of, month, d));
    // With stops the day is first everywhere; with strokes it depends on the country.
    match (first <= 12, second <= 12) {
        (_, true) if mark == "." || first > 12 || first == second => {
            Some(Moment::of(at(second, first), Named::Finer, end))
        }
        (true, false) => Some(Moment::of(at(first, second), Named::Finer, end)),
        (true, true) => Some(Moment {
            or: Some(at(first, second)),
            doubts: vec![Doubt::DayOrMonth],
            ..Moment::of(at(second, first), Named::Finer, end)
        }),
        _ => None,
    }
}

/// `12 May 1925`, `12. Mai 1925`, `May 12th, 1925`, `May 1925`, `May–June 1925`.
fn with_month(words: &Words<'_>, index: usize) -> Option<Moment> {
    let small_day = |at: usize| words.number(at).filter(|day| (1..=31).contains(day));
    let after_day = |at: usize| {
        let is_ending = words.is_close(at)
            && (words
                .word(at)
                .is_some_and(|w| ["st", "nd", "rd", "th", "er", "e"].contains(&w))
                || words.is_mark(at, &["."]));
        let at = if is_ending { at + 1 } else { at };
        if words
            .word(at)
            .is_some_and(|w| ["of", "de", "van"].contains(&w))
        {
            at + 1
        } else {
            at
        }
    };
    let past = |at: usize, marks: &[&str]| if words.is_mark(at, marks) { at + 1 } else { at };
    if let Some(day) = small_day(index) {
        let month = MONTHS.at(words, after_day(index + 1))?;
        let at = past(month.end, &[","]);
        let of = year(words, at)?;
        let body = format!("{of:04}-{:02}-{day:02}", month.is);
        return Some(Moment::of(Extent::point(body), Named::Finer, at + 1));
    }
    let month = MONTHS.at(words, index)?;
    if let Some(day) = small_day(month.end) {
        let at = past(after_day(month.end + 1), &[","]);
        if let Some(of) = year(words, at) {
            let body = format!("{of:04}-{:02}-{day:02}", month.is);
            return Some(Moment::of(Extent::point(body), Named::Finer, at + 1));
        }
    }
    let at = past(month.end, &[",", "/", "-", "–"]);
    let (last, at) = match MONTHS.at(words, at).filter(|_| at > month.end) {
        Some(last) => (last.is, past(last.end, &[","])),
        None => (month.is, past(month.end, &[","])),
    };
    let at = if words
        .word(at)
        .is_some_and(|w| ["of", "de", "van"].contains(&w))
    {
        at + 1
    } else {
        at
    };
    let of = year(words, at)?;
    let extent = Extent {
        first: Bound::at(format!("{of:04}-{:02}", month.is)),
        last: Bound::at(format!("{of:04}-{last:02}")),
    };
    Some(Moment::of(extent, Named::Finer, at + 1))
}

/// `summer 1925`, `Winter 1925/26`.
fn season(words: &Words<'_>, index: usize) -> Option<Moment> {
    let season = SEASONS.at(words, index)?;
    let mut at = season.end;
    if words.is_mark(at, &[","]) {
        at += 1;
    }
    if words
        .word(at)
        .is_some_and(|w| ["of", "de", "van", "in", "des"].contains(&w))
    {
        at += 1;
    }
    let of = year(words, at)?;
    let body = format!("{of:04}-{}", season.is);
    let mut end = at + 1;
    // A winter has two years; EDTF names it by the first.
    let next = (of + 1) % 100;
    if season.is == 24
        && words.is_close_mark(end, &["/", "-", "–"])
        && (words.number(end + 1) == Some(next) || words.number(end + 1) == Some(of + 1))
    {
        end += 2;
    }
    Some(Moment::of(Extent::point(body), Named::Finer, end))
}

/// `19th century`, `XIXe siècle`, `19世紀`, `années 1930`.
fn decade_or_century(words: &Words<'_>, index: usize) -> Option<Moment> {
    if let Some(before) = DECADE_BEFORE.at(words, index) {
        let first = year(words, before.end).filter(|year| year % 10 == 0)?;
        let extent = Extent::point(format!("{}X", first / 10));
        return Some(Moment::of(extent, Named::Decade(first), before.end + 1));
    }
    let (number, at) = ordinal(words, index).or_else(|| {
        let number = words.number(index)?;
        (words.word(index + 1) == Some("世")).then_some((number, index + 1))
    })?;
    let century = CENTURY.at(words, at)?;
    if !(14..=21).contains(&number) {
        return None;
    }
    let extent = Extent::point(format!("{}XX", number - 1));
    Some(Moment::of(extent, Named::Century(number), century.end))
}

/// `1925`, `1930s`, `1930er Jahre`, `1925年5月`.
fn year_and_more(words: &Words<'_>, index: usize) -> Option<Moment> {
    let of = year(words, index)?;
    if of % 10 == 0
        && let Some(decade) = DECADE_BEHIND.at(words, index + 1)
        && words.is_close(index + 1)
    {
        let extent = Extent::point(format!("{}X", of / 10));
        return Some(Moment::of(extent, Named::Decade(of), decade.end));
    }
    if words.word(index + 1) == Some("年") {
        return Some(months_in_kanji(words, of, index + 2, false));
    }
    let extent = Extent::point(four_figures(of));
    Some(Moment::of(extent, Named::Year(of), index + 1))
}
