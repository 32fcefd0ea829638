//! The points asked for in the terminal: one at a time, the most telling first.
//!
//! In: a design, and lines typed. Out: what was seen. "Cannot see" and "back" are always possible;
//! the end of the input ends the questions.

use std::io::{self, BufRead, Write};

use super::Asked;
use super::say::WORTH_LOOKING;
use super::see::{self, Fault};
use crate::model::certainty::Certainty;
use crate::model::design::Design;
use crate::model::point::{Point, PointKind};
use crate::model::words::ClosedList;
use crate::study::identify::{Observed, identify};
use crate::study::next_point::next_points;
use crate::study::table::{DiagnosticTable, PointColumn};

/// What was typed.
enum Typed {
    Seen(Observed),
    CannotSee,
    Back,
    End,
}

/// Asks until nothing that is left to look at would tell more.
pub(super) fn observations(
    design: &Design,
    table: &DiagnosticTable,
    input: &mut impl BufRead,
    out: &mut impl Write,
) -> io::Result<Asked> {
    // Each point asked for, and what was seen there.
    let mut asked: Vec<(usize, Option<Observed>)> = Vec::new();
    writeln!(
        out,
        "Answer with a number or a word of the list; `2, 3` for either, `not 2`, and `2 :probable` or \
         `:possible`\nwhere you are not certain. An empty line: cannot see. `back`: the question before. `end`: enough.\n"
    )?;
    loop {
        let so_far = so_far(&asked);
        let identified = identify(table, &so_far.observed);
        let next = next_points(table, &identified, &so_far.observed)
            .into_iter()
            .find(|next| asked.iter().all(|(at, _)| *at != next.point))
            .filter(|next| next.bits >= WORTH_LOOKING);
        let Some(next) = next else {
            return Ok(so_far);
        };
        let Some((column, point)) = table
            .points
            .get(next.point)
            .and_then(|column| Some((column, design.point(&column.key)?)))
        else {
            return Ok(so_far);
        };
        let left = identified.left().count();
        question(point, left, out)?;
        match typed(next.point, column, point, input, out)? {
            Typed::Seen(observed) => asked.push((next.point, Some(observed))),
            Typed::CannotSee => asked.push((next.point, None)),
            Typed::Back => {
                if asked.pop().is_none() {
                    writeln!(out, "  This is the first question.\n")?;
                }
            }
            Typed::End => return Ok(so_far),
        }
    }
}

fn so_far(asked: &[(usize, Option<Observed>)]) -> Asked {
    let not_visible = asked.iter().filter(|(_, observed)| observed.is_none());
    Asked {
        observed: asked.iter().filter_map(|(_, o)| o.clone()).collect(),
        not_visible: not_visible.map(|(point, _)| *point).collect(),
    }
}

fn question(point: &Point, left: usize, out: &mut impl Write) -> io::Result<()> {
    writeln!(out, "{} ({left} left)", point.ask.value)?;
    match &point.kind {
        PointKind::Choice(values) => {
            for (number, value) in (1..).zip(values) {
                let (key, what) = (&value.key.value, &value.description);
                writeln!(out, "  {number}  {key}: {what}")?;
            }
        }
        PointKind::Presence | PointKind::Stage(_) => {
            for (number, word) in (1..).zip(point.kind.words().into_iter().flatten()) {
                writeln!(out, "  {number}  {word}")?;
            }
        }
        PointKind::Count => writeln!(out, "  the number counted")?,
        PointKind::Measure { unit, tolerance } => {
            writeln!(out, "  in {unit}, to within {tolerance} {unit}")?;
        }
    }
    Ok(())
}

/// Reads lines until one is understood.
fn typed(
    at: usize,
    column: &PointColumn,
    point: &Point,
    input: &mut impl BufRead,
    out: &mut impl Write,
) -> io::Result<Typed> {
    loop {
        write!(out, "> ")?;
        out.flush()?;
        let mut line = String::new();
        if input.read_line(&mut line)? == 0 {
            writeln!(out)?;
            return Ok(Typed::End);
        }
        let understood = match line.trim() {
            "" | "cannot see" => Ok(Typed::CannotSee),
            "back" => Ok(Typed::Back),
            "end" => Ok(Typed::End),
            words => seen(at, column, point, words).map(Typed::Seen),
        };
        match understood {
            Ok(typed) => {
                writeln!(out)?;
                return Ok(typed);
            }
            Err(fault) => writeln!(out, "  {}; {}", fault.message, fault.help)?,
        }
    }
}

fn seen(at: usize, column: &PointColumn, point: &Point, words: &str) -> Result<Observed, Fault> {
    let (values, certainty) = match words.rsplit_once(':') {
        Some((values, word)) if Certainty::from_word(word.trim()).is_some() => {
            let certainty = Certainty::from_word(word.trim());
            (values.trim(), certainty.unwrap_or(Certainty::Certain))
        }
        _ => (words, Certainty::Certain),
    };
    let (values, is_complement) = match values.strip_prefix("not ") {
        Some(values) => (values.trim(), true),
        None => (values, false),
    };
    let listed = point.kind.words();
    let words: Vec<&str> = values
        .split(',')
        .map(|value| {
            let value = value.trim();
            let number = value.parse::<usize>().ok();
            let of_list = number
                .and_then(|n| n.checked_sub(1))
                .and_then(|n| listed.as_ref()?.get(n).copied());
            of_list.unwrap_or(value)
        })
        .collect();
    Ok(Observed {
        point: at,
        answer: see::answer(column, point, &words.join(","), is_complement)?,
        certainty,
    })
}
