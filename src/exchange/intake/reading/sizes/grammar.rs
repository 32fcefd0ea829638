//! The list of measurements in a cell.

use super::figures::Figure;
use super::labels::{AND, Axis, MEASURED, REMARKS, Remark};
use super::lengths::{Group, group, part};
use super::measurement::{Assumed, Length, Measured, Measurement, Order, Unit};
use crate::exchange::intake::reading::outcome::{Doubt, Progress, Reading, bounded};
use crate::exchange::intake::reading::words::Words;
use crate::model::size::Mm;

/// Reads a cell of sizes; `assumed` is what the heading of its column says.
///
/// ```
/// # use keyblock::exchange::intake::reading::sizes::{sizes, Assumed, Measured};
/// let reading = sizes("image: 9 1/2 × 7 in.", Assumed::default());
/// assert_eq!(reading.is[0].of, [Measured::Image]);
/// assert_eq!(reading.is[0].size().unwrap().to_string(), "241.3 × 177.8");
/// assert_eq!(reading.is[0].height.unwrap().tolerance_mm, 6.35); // a quarter of an inch
/// ```
#[must_use]
pub fn sizes(text: &str, assumed: Assumed) -> Reading<Vec<Measurement>> {
    bounded(text, |words, progress| read(words, progress, assumed))
}

/// Reads a cell that has one length, of a column of heights or widths.
#[must_use]
pub fn length(text: &str, unit: Option<Unit>) -> Reading<Option<Length>> {
    bounded(text, |words, progress| {
        let found = part(words, 0)?;
        progress.read(0, found.end);
        let Some(unit) = found.unit.or(unit) else {
            progress.doubt(Doubt::UnitUnsaid);
            return None;
        };
        let figure = decided(found.figure, unit, progress);
        let length = in_mm(figure, figure.under, unit);
        if Mm::new(length.mm).is_none() {
            progress.doubt(Doubt::LengthImpossible);
            return None;
        }
        Some(length)
    })
}

/// The words before a size that wait for it.
#[derive(Default)]
struct Waiting {
    of: Vec<Measured>,
    remarks: Vec<Remark>,
    pieces: Vec<(usize, usize)>,
}

fn read(words: &Words<'_>, progress: &mut Progress, assumed: Assumed) -> Vec<Measurement> {
    let mut found: Vec<Measurement> = Vec::new();
    // The piece after the last measurement, and whether a word said what it is of.
    let mut last: Option<(usize, bool)> = None;
    let mut waiting = Waiting::default();
    let mut at = 0;
    while at < words.len() {
        if let Some(lengths) = group(words, at) {
            for (start, end) in waiting.pieces.drain(..) {
                progress.read(start, end);
            }
            progress.read(at, lengths.end);
            let is_labelled = !waiting.of.is_empty();
            let mut measurement = measured(words, progress, &lengths, assumed);
            measurement.of = std::mem::take(&mut waiting.of);
            for remark in waiting.remarks.drain(..) {
                remarked(&mut measurement, remark);
            }
            let is_again = !is_labelled
                && found
                    .last_mut()
                    .is_some_and(|before| is_restated(before, &measurement, progress));
            if is_again {
                last = last.map(|(_, labelled)| (lengths.end, labelled));
            } else {
                found.push(measurement);
                last = Some((lengths.end, is_labelled));
            }
            at = lengths.end;
        } else if let Some(label) = MEASURED.at(words, at) {
            // `24 x 18 cm (sheet)`: behind an unlabelled size, unless another size follows it.
            let is_behind = last.is_some_and(|(end, is_labelled)| {
                let is_bracketed = at == end + 1 && words.is_mark(end, &["(", "["]);
                let is_next = at == end || (at == end + 1 && words.is_mark(end, &[","]));
                let follows = words.is_mark(label.end, &[":"]) || group(words, label.end).is_some();
                !is_labelled && (is_bracketed || (is_next && !follows))
            });
            if let Some(measurement) = found.last_mut().filter(|_| is_behind) {
                measurement.of.push(label.is);
                last = Some((label.end, true));
                progress.read(at, label.end);
            } else {
                waiting.of.push(label.is);
                waiting.pieces.push((at, label.end));
            }
            at = label.end;
        } else if let Some(remark) = REMARKS.at(words, at) {
            // A remark behind a size is of it, one before a size of that.
            let is_behind = waiting.of.is_empty()
                && last.is_some()
                && group(words, remark.end).is_none()
                && !words.is_mark(remark.end, &[":"]);
            if let Some(measurement) = found.last_mut().filter(|_| is_behind) {
                remarked(measurement, remark.is);
                progress.read(at, remark.end);
                last = last.map(|(_, labelled)| (remark.end, labelled));
            } else {
                waiting.remarks.push(remark.is);
                waiting.pieces.push((at, remark.end));
            }
            at = remark.end;
        } else if let Some(and) = AND.at(words, at).filter(|_| !waiting.of.is_empty()) {
            waiting.pieces.push((at, and.end));
            at = and.end;
        } else {
            at += 1;
        }
    }
    // `unconfirmed` alone says that no size is known.
    if waiting.of == [Measured::Unsaid] {
        for (start, end) in waiting.pieces {
            progress.read(start, end);
        }
    }
    for measurement in &mut found {
        if measurement.of.is_empty() {
            measurement.of.extend(assumed.of);
        }
        if measurement.of.is_empty() {
            measurement.of.push(Measured::Unsaid);
        }
        if measurement.of.contains(&Measured::Unsaid) {
            progress.doubt(Doubt::MeasuredUnsaid);
        }
    }
    found
}

fn remarked(measurement: &mut Measurement, remark: Remark) {
    match remark {
        Remark::Each => measurement.is_of_each = true,
        Remark::Sight => measurement.is_sight = true,
        Remark::About => measurement.is_approximate = true,
        Remark::Irregular => measurement.is_irregular = true,
    }
}

/// The measurement that a group of lengths gives.
fn measured(
    words: &Words<'_>,
    progress: &mut Progress,
    lengths: &Group,
    assumed: Assumed,
) -> Measurement {
    let unit = lengths.unit().or(assumed.unit);
    if unit.is_none() {
        progress.doubt(Doubt::UnitUnsaid);
    }
    let order = lengths.order.or(assumed.order);
    let axes = axes(lengths, order);
    if axes.first() == Some(&Axis::Width) && axes.contains(&Axis::Height) {
        progress.doubt(Doubt::WidthFirst);
    }
    // Of "9 1/2 × 7" both were measured to the half.
    let finest = lengths.parts.iter().map(|part| part.figure.under).max();
    let finest = finest.unwrap_or(1);
    let span = |index: usize| words.at(index).map(|piece| piece.span.clone());
    let at = match (span(lengths.start), span(lengths.end - 1)) {
        (Some(first), Some(last)) => first.start..last.end,
        _ => 0..0,
    };
    let mut measurement = Measurement {
        unit,
        at,
        ..Measurement::default()
    };
    let mut placed: Vec<(Axis, f64)> = Vec::new();
    for (part, axis) in lengths.parts.iter().zip(axes) {
        let Some(unit) = part.unit.or(unit) else {
            placed.push((axis, part.figure.value()));
            continue;
        };
        let figure = decided(part.figure, unit, progress);
        placed.push((axis, figure.value()));
        let finest = if figure.under == part.figure.under {
            finest
        } else {
            figure.under
        };
        let length = in_mm(figure, finest, unit);
        if Mm::new(length.mm).is_none() {
            progress.doubt(Doubt::LengthImpossible);
            continue;
        }
        match axis {
            Axis::Height => measurement.height = Some(length),
            Axis::Width => measurement.width = Some(length),
            Axis::Depth => measurement.depth = Some(length),
            Axis::Diameter => measurement.diameter = Some(length),
        }
    }
    placed.sort_by_key(|(axis, _)| match axis {
        Axis::Height => 0,
        Axis::Width => 1,
        Axis::Depth => 2,
        Axis::Diameter => 3,
    });
    measurement.figures = placed.into_iter().map(|(_, figure)| figure).collect();
    measurement
}

/// The axis of each length: its own word, else the next that is free, height first unless the order is another.
fn axes(lengths: &Group, order: Option<Order>) -> Vec<Axis> {
    let usual = match order {
        Some(Order::WidthFirst) => [Axis::Width, Axis::Height, Axis::Depth],
        _ => [Axis::Height, Axis::Width, Axis::Depth],
    };
    let said: Vec<Axis> = lengths.parts.iter().filter_map(|part| part.axis).collect();
    let mut free = usual.into_iter().filter(|axis| !said.contains(axis));
    let axis = lengths
        .parts
        .iter()
        .map(|part| part.axis.or_else(|| free.next()).unwrap_or(Axis::Depth));
    axis.collect()
}

/// A number whose separator may be of thousands, decided: no print is measured to thousandths of a millimetre or
/// centimetre.
fn decided(figure: Figure, unit: Unit, progress: &mut Progress) -> Figure {
    if figure.has_three_decimals && matches!(unit, Unit::Millimetre | Unit::Centimetre) {
        progress.doubt(Doubt::ThousandsOrDecimals);
        return figure.without_separator();
    }
    figure
}

/// A length to a millionth of a millimetre: 19 times 25.4 by 2 is 241.3 mm, not 241.29999999999998.
fn without_binary_rest(mm: f64) -> f64 {
    (mm * 1e6).round() / 1e6
}

#[expect(
    clippy::cast_precision_loss,
    reason = "the denominator has at most seven figures"
)]
fn in_mm(figure: Figure, finest: u64, unit: Unit) -> Length {
    Length {
        mm: without_binary_rest(figure.times(unit.mm())),
        tolerance_mm: without_binary_rest(unit.mm() / (2.0 * finest as f64)),
    }
}

/// Whether a size is the one before again in another unit: `24.1 x 17.8 cm (9 1/2 x 7 in.)`. The finer one is kept.
fn is_restated(before: &mut Measurement, next: &Measurement, progress: &mut Progress) -> bool {
    let (Some(unit), Some(next_unit)) = (before.unit, next.unit) else {
        return false;
    };
    let pairs: Vec<(Option<Length>, Option<Length>)> =
        before.axes().into_iter().zip(next.axes()).collect();
    let has_same_axes = pairs.iter().all(|(a, b)| a.is_some() == b.is_some());
    if unit == next_unit || !has_same_axes {
        return false;
    }
    let agrees = pairs
        .iter()
        .all(|pair| matches!(pair, (Some(a), Some(b)) if a.agrees(*b)) || *pair == (None, None));
    if !agrees {
        progress.doubt(Doubt::UnitsContradict);
        return true;
    }
    let tolerance = |m: &Measurement| {
        m.axes()
            .into_iter()
            .flatten()
            .map(|l| l.tolerance_mm)
            .fold(0.0, f64::max)
    };
    if tolerance(next) < tolerance(before) {
        before.unit = next.unit;
        before.figures.clone_from(&next.figures);
        before.height = next.height;
        before.width = next.width;
        before.depth = next.depth;
        before.diameter = next.diameter;
    }
    true
}
