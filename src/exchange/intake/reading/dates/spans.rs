//! Spans, alternatives, before and after: the time that begins at a place of a text.

use super::calendar::{
    ABOUT, AND, BETWEEN, DECADE_BEHIND, OR, PERHAPS, RELATIONS, RELATIONS_BEHIND, Relation, TO,
};
use super::extent::{Extent, Time};
use super::moments::{Moment, Named, moment, year};
use crate::exchange::intake::reading::outcome::Doubt;
use crate::exchange::intake::reading::words::{DASHES, Words};

/// A time found in a text.
#[derive(Clone, Debug)]
pub(super) struct TimeFound {
    /// The time.
    pub time: Time,
    /// The piece after it.
    pub end: usize,
    /// What is doubtful in it.
    pub doubts: Vec<Doubt>,
    /// Whether it was told by an era.
    pub is_of_era: bool,
}

/// The time that begins at a piece.
pub(super) fn time(words: &Words<'_>, index: usize) -> Option<TimeFound> {
    let found = between(words, index).or_else(|| with_relation(words, index))?;
    // A time that EDTF cannot say, such as a day that does not exist, was not understood.
    found.time.date().is_some().then_some(found)
}

/// The qualifiers before a time, and the piece after them.
struct Before {
    is_approximate: bool,
    is_uncertain: bool,
    end: usize,
}

fn qualifiers_before(words: &Words<'_>, index: usize) -> Before {
    let mut before = Before {
        is_approximate: false,
        is_uncertain: false,
        end: index,
    };
    loop {
        if let Some(about) = ABOUT.at(words, before.end) {
            before.is_approximate = true;
            before.end = about.end;
        } else if let Some(perhaps) = PERHAPS.at(words, before.end) {
            before.is_uncertain = true;
            before.end = perhaps.end;
        } else {
            return before;
        }
    }
}

/// `between 1925 and 1930`, `von 1925 bis 1930`, `de 1925 à 1930`.
fn between(words: &Words<'_>, index: usize) -> Option<TimeFound> {
    let before = qualifiers_before(words, index);
    let start = BETWEEN.at(words, before.end)?.end;
    let (first, _) = qualified(words, start)?;
    let joined = AND
        .at(words, first.end)
        .or_else(|| TO.at(words, first.end))
        .map(|found| found.end)?;
    let (second, _) = qualified(words, joined)?;
    let mut extent = Extent {
        first: first.extent.first,
        last: second.extent.last,
    };
    extent.qualify(before.is_approximate, before.is_uncertain);
    Some(TimeFound {
        time: Time::Extent(extent),
        end: second.end,
        doubts: [first.doubts, second.doubts].concat(),
        is_of_era: first.is_of_era,
    })
}

/// A moment with the qualifiers before it; whether there were any.
fn qualified(words: &Words<'_>, index: usize) -> Option<(Moment, bool)> {
    let before = qualifiers_before(words, index);
    let mut found = moment(words, before.end)?;
    found
        .extent
        .qualify(before.is_approximate, before.is_uncertain);
    Some((found, before.is_approximate || before.is_uncertain))
}

fn with_relation(words: &Words<'_>, index: usize) -> Option<TimeFound> {
    let before = qualifiers_before(words, index);
    let Some(relation) = RELATIONS.at(words, before.end) else {
        return plain(words, index);
    };
    let (mut first, _) = qualified(words, relation.end)?;
    first
        .extent
        .qualify(before.is_approximate, before.is_uncertain);
    let time = match relation.is {
        Relation::Before => Time::UpTo(first.extent.last),
        Relation::After => Time::From(first.extent.first),
        Relation::Since => Time::Since(first.extent.first),
        Relation::Until => Time::Until(first.extent.last),
    };
    Some(TimeFound {
        time,
        end: first.end,
        doubts: first.doubts,
        is_of_era: first.is_of_era,
    })
}

fn plain(words: &Words<'_>, index: usize) -> Option<TimeFound> {
    let (first, is_qualified) = qualified(words, index)?;
    if let Some(other) = first.or.clone() {
        return Some(TimeFound {
            time: Time::OneOf(vec![first.extent, other]),
            end: first.end,
            doubts: first.doubts,
            is_of_era: false,
        });
    }
    if let Some(relation) = RELATIONS_BEHIND.at(words, first.end) {
        let time = match relation.is {
            Relation::Before | Relation::Until => Time::UpTo(first.extent.last),
            Relation::After | Relation::Since => Time::From(first.extent.first),
        };
        return Some(TimeFound {
            time,
            end: relation.end,
            doubts: first.doubts,
            is_of_era: first.is_of_era,
        });
    }
    if let Some(found) = alternatives(words, &first, index) {
        return Some(found);
    }
    Some(
        span(words, &first, is_qualified).unwrap_or_else(|| TimeFound {
            time: Time::Extent(first.extent.clone()),
            end: first.end,
            doubts: first.doubts.clone(),
            is_of_era: first.is_of_era,
        }),
    )
}

/// `1925 or 1926`, `1925 oder 26`, `1925, 1926 or 1927`. A qualifier before the first holds for all.
fn alternatives(words: &Words<'_>, first: &Moment, index: usize) -> Option<TimeFound> {
    let before = qualifiers_before(words, index);
    let mut members = vec![first.extent.clone()];
    let mut doubts = first.doubts.clone();
    let mut end = first.end;
    let mut pending = 0;
    loop {
        let or = OR.at(words, end).map(|or| or.end);
        let comma = words.is_mark(end, &[","]).then_some(end + 1);
        let Some(start) = or.or(comma) else { break };
        let next = qualified(words, start).map(|(m, _)| m).or_else(|| {
            let year = short_year(words, first, start)?;
            let extent = Extent::point(format!("{year:04}"));
            Some(Moment {
                extent,
                named: Named::Year(year),
                end: start + 1,
                doubts: Vec::new(),
                or: None,
                is_of_era: false,
            })
        });
        let Some(mut next) = next else { break };
        next.extent
            .qualify(before.is_approximate, before.is_uncertain);
        end = next.end;
        members.push(next.extent);
        doubts.extend(next.doubts);
        if or.is_some() {
            pending = members.len();
        }
    }
    // Only what an "or" closes is a list of alternatives.
    (pending == members.len()).then_some(TimeFound {
        time: Time::OneOf(members),
        end,
        doubts,
        is_of_era: first.is_of_era,
    })
}

/// A year written short behind another: the 5 of `1830–5`, the 26 of `1925 or 26`.
fn short_year(words: &Words<'_>, first: &Moment, index: usize) -> Option<u32> {
    let Named::Year(from) = first.named else {
        return None;
    };
    let figures = words.figures(index)?;
    let number = words.number(index)?;
    let is_part_of_more = words.is_close_mark(index + 1, &[".", "/", "×"])
        && words.is_close(index + 2)
        && words.figures(index + 2).is_some();
    if is_part_of_more {
        return None;
    }
    match figures.len() {
        1 => Some(from / 10 * 10 + number),
        2 => Some(from / 100 * 100 + number),
        _ => None,
    }
    .filter(|year| *year != from)
}

/// `1830–5`, `1830–1835`, `1925/26`, `1930s–40s`, `1925 to 1930`.
fn span(words: &Words<'_>, first: &Moment, is_qualified: bool) -> Option<TimeFound> {
    let at = first.end;
    let is_dash = words.is_mark(at, &DASHES);
    let is_stroke = words.is_close_mark(at, &["/"]) && words.is_close(at + 1);
    let start = if is_dash || is_stroke {
        at + 1
    } else {
        TO.at(words, at)?.end
    };
    let mut doubts = first.doubts.clone();
    let is_short = words.figures(start).is_some_and(|f| f.len() <= 2)
        && year(words, start + 2).is_none()
        && words.number(start).is_some();
    let short = is_short.then(|| short_end(words, first, start, is_dash, &mut doubts));
    let (mut last, end, is_last_short, is_last_qualified) =
        if let Some((extent, end)) = short.flatten() {
            (extent, end, true, false)
        } else {
            let (second, is_second_qualified) = qualified(words, start)?;
            doubts.extend(second.doubts);
            (second.extent, second.end, false, is_second_qualified)
        };
    let mut opening = first.extent.clone();
    let mut end = end;
    if is_last_short && words.is_mark(end, &["?"]) {
        // `1830–35?`: the sign stands behind the whole.
        opening.qualify(false, true);
        last.qualify(false, true);
        end += 1;
    }
    if is_qualified && !is_last_qualified {
        // `c.1830–5`: the word before the span holds for both ends.
        last.qualify(opening.first.is_approximate, opening.first.is_uncertain);
    }
    let extent = Extent {
        first: opening.first,
        last: last.last,
    };
    let found = TimeFound {
        time: Time::Extent(extent),
        end,
        doubts,
        is_of_era: first.is_of_era,
    };
    // An end before the beginning is no span: the beginning stands alone and the rest is left over.
    found.time.date().is_some().then_some(found)
}

fn short_end(
    words: &Words<'_>,
    first: &Moment,
    start: usize,
    is_dash: bool,
    doubts: &mut Vec<Doubt>,
) -> Option<(Extent, usize)> {
    if let Named::Decade(from) = first.named {
        let number = words.number(start).filter(|n| n % 10 == 0)?;
        let behind = DECADE_BEHIND.at(words, start + 1)?;
        let decade = from / 100 * 10 + number / 10;
        return Some((Extent::point(format!("{decade}X")), behind.end));
    }
    let Named::Year(from) = first.named else {
        return None;
    };
    let mut year = short_year(words, first, start)?;
    let number = words.number(start)?;
    let is_hyphen = words.is_mark(start - 1, &["-"]);
    let has_two = words.figures(start).is_some_and(|f| f.len() == 2);
    if year < from {
        // `1898–02`
        if !(is_dash && has_two && year + 100 - from <= 50) {
            return None;
        }
        year += 100;
        doubts.push(Doubt::NextCentury);
    } else if is_hyphen && has_two && (1..=12).contains(&number) {
        doubts.push(Doubt::MonthOrSpan);
    }
    Some((Extent::point(format!("{year:04}")), start + 1))
}
