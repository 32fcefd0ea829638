//! Asks questions in the terminal about the points of a sheet, one at a time, the most informative first.
//!
//! In: a design, and lines of input. Out: the observations. "Cannot see" and "back" are always accepted;
//! the end of the input ends the questions.

use std::io::{self, BufRead, Write};

use super::see_option::{self, Fault};
use super::text::WORTH_LOOKING;
use crate::model::certainty::Certainty;
use crate::model::design::Design;
use crate::model::point::{Point, PointKind};
use crate::model::words::ClosedList;
use crate::study::identify::{Observed, identify};
use crate::study::index::PointAt;
use crate::study::next_point::next_points;
use crate::study::scale::Answer;
use crate::study::table::{DiagnosticTable, PointColumn};

/// One answer.
enum Reply {
    Seen(Observed),
    Back,
    End,
}

/// Asks until no point is left that would be informative.
pub(super) fn observations(
    design: &Design,
    table: &DiagnosticTable,
    input: &mut impl BufRead,
    out: &mut impl Write,
) -> io::Result<Vec<Observed>> {
    let mut asked: Vec<Observed> = Vec::new();
    writeln!(
        out,
        "Answer with a number or a word of the list; `2, 3` for either, `not 2`, and `2 :probable` or \
         `:possible`\nwhere you are not certain. An empty line: cannot see. `back`: the question before. `end`: enough.\n"
    )?;
    loop {
        let identified = identify(table, &asked);
        let next = next_points(table, &identified, &asked)
            .into_iter()
            .find(|next| next.bits >= WORTH_LOOKING);
        let Some(next) = next else {
            return Ok(asked);
        };
        let column = &table.points[next.point];
        let Some(point) = design.point(&column.key) else {
            return Ok(asked);
        };
        let left = identified.left().count();
        question(point, left, out)?;
        match reply(next.point, column, point, input, out)? {
            Reply::Seen(observed) => asked.push(observed),
            Reply::Back => {
                if asked.pop().is_none() {
                    writeln!(out, "  This is the first question.\n")?;
                }
            }
            Reply::End => return Ok(asked),
        }
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

/// Reads lines until one is an answer.
fn reply(
    at: PointAt,
    column: &PointColumn,
    point: &Point,
    input: &mut impl BufRead,
    out: &mut impl Write,
) -> io::Result<Reply> {
    loop {
        write!(out, "> ")?;
        out.flush()?;
        let mut line = String::new();
        if input.read_line(&mut line)? == 0 {
            writeln!(out)?;
            return Ok(Reply::End);
        }
        let reply = match line.trim() {
            "" | "cannot see" => Ok(Reply::Seen(Observed {
                point: at,
                answer: Answer::NotVisible,
                certainty: Certainty::Certain,
            })),
            "back" => Ok(Reply::Back),
            "end" => Ok(Reply::End),
            words => seen(at, column, point, words).map(Reply::Seen),
        };
        match reply {
            Ok(reply) => {
                writeln!(out)?;
                return Ok(reply);
            }
            Err(fault) => writeln!(out, "  {}; {}", fault.message, fault.help)?,
        }
    }
}

fn seen(at: PointAt, column: &PointColumn, point: &Point, words: &str) -> Result<Observed, Fault> {
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
        answer: see_option::answer(column, point, &words.join(","), is_complement)?,
        certainty,
    })
}

#[cfg(test)]
mod tests {
    use std::fs;

    use super::*;
    use crate::model::key::Key;
    use crate::study::index::ValueAt;

    const DESIGN: &str = r#"
titles = [{ text = "A Quay" }]
points = [
  { key = "moon", ask = "Is there a moon?", kind = "presence", rests_on = "matrix" },
  { key = "sky", ask = "How is the sky?", kind = "choice", rests_on = "matrix", values = { even = "one tone", back = "graded", wiped = "wiped" } },
  { key = "lamps", ask = "How many lamps?", kind = "count", rests_on = "matrix" },
]
states = [
  { key = "a", shows = { moon = "absent", sky = "even", lamps = 1 } },
  { key = "b", shows = { moon = "present", sky = "back", lamps = 1 } },
  { key = "c", shows = { moon = "present", sky = "wiped", lamps = 2 } },
]
"#;

    /// The observations from the lines of input, and the text that was printed.
    fn asked(lines: &str) -> (Vec<Observed>, String) {
        let folder = tempfile::tempdir().unwrap();
        let records = folder.path().join("records/designs/1");
        fs::create_dir_all(&records).unwrap();
        fs::write(records.join("design.toml"), DESIGN).unwrap();
        let catalogue = crate::read::read(folder.path()).catalogue;
        let key: Key = "1".parse().unwrap();
        let design = &catalogue.designs[&key];
        let table = DiagnosticTable::of(design);
        let mut out = Vec::new();
        let asked = observations(design, &table, &mut lines.as_bytes(), &mut out).unwrap();
        (asked, String::from_utf8(out).unwrap())
    }

    #[test]
    fn the_most_informative_point_is_asked_first_and_the_last_answer_ends() {
        let (asked, out) = asked("2\n");
        // The sky alone separates the three states.
        assert_eq!(asked.len(), 1);
        assert_eq!(asked[0].answer, Answer::OneOf([1].map(ValueAt::new).into()));
        assert!(
            out.contains("How is the sky? (3 left)\n  1  even: one tone"),
            "{out}"
        );
        assert!(!out.contains("moon"));
    }

    #[test]
    fn what_cannot_be_seen_is_passed_over_and_not_asked_again() {
        let (asked, out) = asked("\ncannot see\n2\n");
        let unseen = asked.iter().filter(|o| o.answer == Answer::NotVisible);
        assert_eq!((asked.len(), unseen.count()), (3, 2));
        assert_eq!(out.matches("How is the sky?").count(), 1);
    }

    #[test]
    fn back_asks_the_question_before_again() {
        let (asked, out) = asked("back\nnot 1 :probable\nback\nnot 1\n1\n");
        assert!(out.contains("This is the first question."), "{out}");
        assert_eq!(out.matches("How is the sky?").count(), 3);
        assert_eq!(asked[0].certainty, Certainty::Certain);
        assert_eq!(
            asked[0].answer,
            Answer::OneOf([1, 2].map(ValueAt::new).into())
        );
    }

    #[test]
    fn what_is_not_understood_is_said_and_asked_again() {
        let (asked, out) = asked("cloudy\n1, 3\nend\n");
        assert!(out.contains("`sky` has no value `cloudy`"), "{out}");
        assert_eq!(
            asked[0].answer,
            Answer::OneOf([0, 2].map(ValueAt::new).into())
        );
    }

    #[test]
    fn the_end_of_the_input_ends_the_questions() {
        let (asked, _) = asked("");
        assert!(asked.is_empty());
    }
}
