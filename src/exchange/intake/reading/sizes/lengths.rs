//! Lengths side by side: `24 x 18 cm`, `9 1/2 × 7"`, `H. 24 cm; B. 18 cm`, `24 (h) x 18 (w)`.

use super::figures::{Figure, figure};
use super::labels::{AXES, Axis, BY, ORDERS, UNITS};
use super::measurement::{Order, Unit};
use crate::exchange::intake::reading::words::Words;

/// A length of a group.
#[derive(Clone, Copy, Debug)]
pub(super) struct Part {
    /// The number.
    pub figure: Figure,
    /// Its own unit.
    pub unit: Option<Unit>,
    /// Its own word for the axis.
    pub axis: Option<Axis>,
    /// The piece after it.
    pub end: usize,
}

/// Lengths that belong together.
#[derive(Clone, Debug)]
pub(super) struct Group {
    /// The lengths as they stand.
    pub parts: Vec<Part>,
    /// The order, where words give it.
    pub order: Option<Order>,
    /// The first piece of the first length.
    pub start: usize,
    /// The piece after all.
    pub end: usize,
}

impl Group {
    /// The unit of the lengths that have none of their own.
    pub fn unit(&self) -> Option<Unit> {
        self.parts.iter().rev().find_map(|part| part.unit)
    }
}

/// The group of lengths that begins at a piece. A single number is one only with a word for its
/// axis and a unit: `P. 1` is a page or a number.
pub(super) fn group(words: &Words<'_>, index: usize) -> Option<Group> {
    let (mut order, start) = match ORDERS.at(words, index) {
        Some(order) => (Some(order.is), past_colon(words, order.end)),
        None => (None, index),
    };
    let first = part(words, start)?;
    let mut parts = vec![first];
    let mut end = first.end;
    while let Some(next) = next_part(words, &parts, end) {
        end = next.end;
        parts.push(next);
        if parts.len() == 4 {
            break;
        }
    }
    if parts.len() == 1 && (first.axis.is_none() || first.unit.is_none()) {
        return None;
    }
    // `24 x 18 cm (B x H)`
    let at = if words.is_mark(end, &["(", ",", "["]) {
        end + 1
    } else {
        end
    };
    if let Some(behind) = ORDERS.at(words, at)
        && order.is_none()
        && part(words, past_colon(words, behind.end)).is_none()
    {
        order = Some(behind.is);
        end = behind.end;
    }
    Some(Group {
        parts,
        order,
        start,
        end,
    })
}

/// The piece after a colon, where one stands.
pub(super) fn past_colon(words: &Words<'_>, index: usize) -> usize {
    let mut at = index;
    while words.is_mark(at, &[":", "=", ")", "]"]) {
        at += 1;
    }
    at
}

/// The next length of a group: after a sign of multiplication, or with a word for its axis.
fn next_part(words: &Words<'_>, parts: &[Part], end: usize) -> Option<Part> {
    if let Some(by) = BY.at(words, end) {
        return part(words, by.end);
    }
    let mut at = end;
    while words.is_mark(at, &[",", ";", "/", "、"]) {
        at += 1;
    }
    let next = part(words, at)?;
    let is_new = |axis: Axis| parts.iter().all(|part| part.axis != Some(axis));
    let first_has_axis = parts.first().is_some_and(|part| part.axis.is_some());
    (first_has_axis && next.axis.is_some_and(is_new)).then_some(next)
}

/// A number with its unit and the word for its axis, before or behind it.
pub(super) fn part(words: &Words<'_>, index: usize) -> Option<Part> {
    let axis_before = AXES.at(words, index);
    let start = axis_before.map_or(index, |axis| past_colon(words, axis.end));
    let figure = figure(words, start)?;
    let mut part = Part {
        figure,
        unit: None,
        axis: axis_before.map(|axis| axis.is),
        end: figure.end,
    };
    if let Some(unit) = UNITS.at(words, part.end) {
        part.unit = Some(unit.is);
        part.end = unit.end;
        // `1' 2"`: feet and inches are one length.
        if unit.is == Unit::Foot
            && let Some(more) = self::figure_in_inches(words, part.end)
        {
            let feet = figure.over * 12;
            part.figure = Figure {
                over: feet * more.0.under + more.0.over,
                under: more.0.under,
                ..figure
            };
            part.unit = Some(Unit::Inch);
            part.end = more.1;
        }
    }
    if part.axis.is_none() {
        // `24 (h)`, `24 cm h.`
        let is_bracketed = words.is_mark(part.end, &["("]);
        let at = if is_bracketed { part.end + 1 } else { part.end };
        if let Some(axis) = AXES.at(words, at)
            && self::figure(words, past_colon(words, axis.end)).is_none()
            && ORDERS.at(words, at).is_none()
        {
            part.axis = Some(axis.is);
            part.end = axis.end;
            if is_bracketed && words.is_mark(part.end, &[")"]) {
                part.end += 1;
            }
            if part.unit.is_none()
                && let Some(unit) = UNITS.at(words, part.end)
            {
                part.unit = Some(unit.is);
                part.end = unit.end;
            }
        }
    }
    Some(part)
}

fn figure_in_inches(words: &Words<'_>, index: usize) -> Option<(Figure, usize)> {
    let at = if words.is_mark(index, &[",", "-"]) {
        index + 1
    } else {
        index
    };
    let inches = figure(words, at)?;
    let unit = UNITS.at(words, inches.end)?;
    (unit.is == Unit::Inch).then_some((inches, unit.end))
}
