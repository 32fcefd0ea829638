//! Prints findings for people: the message, the place underlined, the help.

use std::ops::Range;

use annotate_snippets::{AnnotationKind, Group, Level, Origin, Renderer, Snippet};

use crate::model::finding::{Finding, Label, Severity, Tally};
use crate::model::place::Sources;

/// The most findings that are printed for people; nobody reads more at once.
const MOST_PRINTED: usize = 5_000;

/// The longest piece of a file that is searched for the lines to draw, in bytes. Places further apart
/// than this are drawn in pieces of their own, and longer lines are cut.
const LONGEST_PIECE: usize = 64 * 1024;

/// Every finding as text, each followed by an empty line. Of more than [`MOST_PRINTED`], errors come
/// before doubts and doubts before hints, and a last line says how many are left out.
#[must_use]
pub fn findings(findings: &[Finding], sources: &Sources, colour: bool) -> String {
    let renderer = if colour {
        Renderer::styled()
    } else {
        Renderer::plain()
    };
    let printed = worst(findings);
    let left_out = findings.len() - printed.len();
    let mut text: String = printed
        .iter()
        .map(|f| renderer.render(&[group(f, sources)]) + "\n\n")
        .collect();
    if left_out > 0 {
        let more =
            format!("{left_out} more are not printed: `keyblock audit --json` gives all\n\n");
        text.push_str(&more);
    }
    text
}

/// The findings to print, in their order: all of them, or the [`MOST_PRINTED`] of the worst severity.
fn worst(findings: &[Finding]) -> Vec<&Finding> {
    if findings.len() <= MOST_PRINTED {
        return findings.iter().collect();
    }
    let tally = Tally::of(findings);
    let mut room = MOST_PRINTED;
    let mut room_for = [tally.errors, tally.doubts, tally.hints].map(|of_severity| {
        let taken = of_severity.min(room);
        room -= taken;
        taken
    });
    let has_room = |finding: &&Finding| {
        let [errors, doubts, hints] = &mut room_for;
        let left = match finding.severity() {
            Severity::Error => errors,
            Severity::Doubt => doubts,
            Severity::Hint => hints,
        };
        let has_room = *left > 0;
        *left = left.saturating_sub(1);
        has_room
    };
    findings.iter().filter(has_room).collect()
}

fn group<'a>(finding: &'a Finding, sources: &'a Sources) -> Group<'a> {
    let level = match finding.severity() {
        Severity::Error => Level::ERROR,
        Severity::Doubt => Level::WARNING.with_name("doubt"),
        Severity::Hint => Level::INFO.with_name("hint"),
    };
    let title = level
        .primary_title(finding.message.as_str())
        .id(finding.code.as_str());
    let mut group = Group::with_title(title);
    for piece in pieces(finding) {
        let file = piece.labels[0].0.place.file;
        let text = sources.text(file);
        if text.is_empty() {
            group = group.element(Origin::path(sources.path(file)));
            continue;
        }
        group = draw(group, &piece, sources);
    }
    match &finding.help {
        Some(help) => group.element(Level::HELP.message(help.as_str())),
        None => group,
    }
}

/// Draws the lines of one piece. Only they are handed to the renderer, which otherwise would search the
/// whole file for each finding.
fn draw<'a>(group: Group<'a>, piece: &Piece<'a>, sources: &'a Sources) -> Group<'a> {
    let place = piece.labels[0].0.place;
    let (path, text) = (sources.path(place.file), sources.text(place.file));
    let (line, begins) = sources.line_at(place.file, within(&piece.span, text).start);
    let last = within(&piece.span, text).end;
    let ends = text
        .get(last..)
        .and_then(|rest| rest.find('\n'))
        .map_or(text.len(), |at| last + at);
    let part = if ends - begins <= LONGEST_PIECE {
        begins..ends
    } else {
        excerpt(text, &piece.span, begins..ends)
    };
    let is_cut = part != (begins..ends);
    let mut snippet = Snippet::source(text.get(part.clone()).unwrap_or_default()).line_start(line);
    for (label, kind) in &piece.labels {
        let span = within(&label.place.span(), text);
        let inside = |at: usize| at.clamp(part.start, part.end) - part.start;
        let annotation = kind.span(inside(span.start)..inside(span.end));
        snippet = snippet.annotation(match label.text.as_str() {
            "" => annotation,
            words => annotation.label(words),
        });
    }
    if is_cut {
        let at = sources.position(place);
        let origin = Origin::path(path).line(at.line).char_column(at.column);
        group.element(origin).element(snippet)
    } else {
        group.element(snippet.path(path))
    }
}

/// The part of a very long line, or of very many lines, around the beginning of a place.
fn excerpt(text: &str, span: &Range<usize>, lines: Range<usize>) -> Range<usize> {
    const BEFORE: usize = 60;
    const AFTER: usize = 200;
    let begins = span.start.saturating_sub(BEFORE).max(lines.start);
    let ends = (span.start + AFTER).min(lines.end);
    let part = within(&(begins..ends), text);
    let line = text.get(part.clone()).unwrap_or_default();
    let after = span.start.saturating_sub(part.start).min(line.len());
    let rest = line.get(after..).and_then(|rest| rest.find('\n'));
    part.start..rest.map_or(part.end, |at| part.start + after + at)
}

/// Places of a finding that are drawn together: in one file, and near each other.
struct Piece<'a> {
    labels: Vec<(&'a Label, AnnotationKind)>,
    /// The bytes from the first to the last of them.
    span: Range<usize>,
}

impl<'a> Piece<'a> {
    fn of(label: &'a Label, kind: AnnotationKind) -> Piece<'a> {
        Piece {
            labels: vec![(label, kind)],
            span: label.place.span(),
        }
    }

    fn span_with(&self, label: &Label) -> Range<usize> {
        let span = label.place.span();
        self.span.start.min(span.start)..self.span.end.max(span.end)
    }

    fn takes(&self, label: &Label) -> bool {
        self.labels[0].0.place.file == label.place.file
            && self.span_with(label).len() <= LONGEST_PIECE
    }
}

/// The places of a finding in pieces.
fn pieces(finding: &Finding) -> Vec<Piece<'_>> {
    let mut pieces = vec![Piece::of(&finding.at, AnnotationKind::Primary)];
    for label in &finding.also {
        match pieces.iter_mut().find(|piece| piece.takes(label)) {
            Some(piece) => {
                piece.span = piece.span_with(label);
                piece.labels.push((label, AnnotationKind::Context));
            }
            None => pieces.push(Piece::of(label, AnnotationKind::Context)),
        }
    }
    pieces
}

/// The bytes, kept inside the text and on character boundaries.
fn within(span: &Range<usize>, text: &str) -> Range<usize> {
    let mut start = span.start.min(text.len());
    while !text.is_char_boundary(start) {
        start -= 1;
    }
    let mut end = span.end.clamp(start, text.len());
    while !text.is_char_boundary(end) {
        end += 1;
    }
    start..end
}

/// "2 errors, 1 doubt, 4 hints"; "nothing found" where there is nothing.
#[must_use]
pub fn tally(tally: Tally) -> String {
    let part = |n: usize, one: &str| match n {
        0 => None,
        1 => Some(format!("1 {one}")),
        _ => Some(format!("{n} {one}s")),
    };
    let parts: Vec<String> = [
        part(tally.errors, "error"),
        part(tally.doubts, "doubt"),
        part(tally.hints, "hint"),
    ]
    .into_iter()
    .flatten()
    .collect();
    if parts.is_empty() {
        "nothing found".to_owned()
    } else {
        parts.join(", ")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::codes::Code;
    use crate::model::place::Place;

    #[test]
    fn a_finding_shows_its_place_and_what_it_clashes_with() {
        let mut sources = Sources::default();
        let sheet = sources.add(
            "records/designs/14/impressions/7.toml",
            "[observed]\nlamp = 3\n",
        );
        let design = sources.add(
            "records/designs/14/design.toml",
            "[[points]]\nkey = \"lamps\"\n",
        );
        let finding = Finding::new(
            Code::PointUnknown,
            Place::new(sheet, 11..15),
            "design 14 has no point `lamp`",
        )
        .saying("observed here")
        .beside(Place::new(design, 17..24), "the nearest point")
        .help("write `lamps`, or add a point with the key `lamp` to the design");
        insta::assert_snapshot!(findings(&[finding], &sources, false), @r#"
        error[point-unknown]: design 14 has no point `lamp`
         --> records/designs/14/impressions/7.toml:2:1
          |
        2 | lamp = 3
          | ^^^^ observed here
          |
         ::: records/designs/14/design.toml:2:7
          |
        2 | key = "lamps"
          |       ------- the nearest point
          |
          = help: write `lamps`, or add a point with the key `lamp` to the design
        "#);
    }

    #[test]
    fn a_finding_about_a_file_without_text_names_the_file() {
        let mut sources = Sources::default();
        let file = sources.add("records/designs/14/pictures/9.jpg", "");
        let finding = Finding::new(
            Code::PictureOrphan,
            Place::start_of(file),
            "no record names this picture",
        );
        let text = findings(&[finding], &sources, false);
        assert!(
            text.starts_with("hint[picture-orphan]: no record names this picture"),
            "{text}"
        );
        assert!(text.contains("records/designs/14/pictures/9.jpg"), "{text}");
    }

    #[test]
    fn places_outside_their_text_are_drawn_inside() {
        let mut sources = Sources::default();
        let file = sources.add("a.toml", "Ōsaka");
        for span in [1..1, 0..1, 3..99, 99..120] {
            let finding = Finding::new(Code::TomlSyntax, Place::new(file, span), "broken");
            assert!(findings(&[finding], &sources, false).contains("a.toml"));
        }
    }

    #[test]
    fn a_very_long_line_is_cut_around_the_place() {
        let mut sources = Sources::default();
        let text = format!(
            "a = 1\nb = [{}wrong, {}]\n",
            "1, ".repeat(40_000),
            "2, ".repeat(40_000)
        );
        let at = text.find("wrong").unwrap();
        let file = sources.add("a.toml", text);
        let finding = Finding::new(Code::ValueType, Place::new(file, at..at + 5), "no number");
        let text = findings(&[finding], &sources, false);
        assert!(text.len() < 1_000, "{} bytes", text.len());
        assert!(text.contains("a.toml:2:120006"), "{text}");
        assert!(text.contains("wrong") && text.contains("^^^^^"), "{text}");
    }

    #[test]
    fn places_far_apart_in_one_file_are_drawn_apart() {
        let mut sources = Sources::default();
        let text = format!("key = 1\n{}key = 2\n", "# a comment\n".repeat(10_000));
        let second = text.rfind("key").unwrap();
        let file = sources.add("a.toml", text);
        let finding = Finding::new(
            Code::KeyTwice,
            Place::new(file, second..second + 3),
            "twice",
        )
        .beside(Place::new(file, 0..3), "the first");
        insta::assert_snapshot!(findings(&[finding], &sources, false), @r"
        error[key-twice]: twice
             --> a.toml:10002:1
              |
        10002 | key = 2
              | ^^^
              |
             ::: a.toml:1:1
              |
            1 | key = 1
              | --- the first
        ");
    }

    #[test]
    fn of_many_findings_the_worst_are_printed_and_the_rest_is_counted() {
        let mut sources = Sources::default();
        let file = sources.add("a.toml", "a = 1\n");
        let of = |code| Finding::new(code, Place::new(file, 0..1), "something");
        let mut all = vec![of(Code::FileUnexpected); MOST_PRINTED];
        all.push(of(Code::TomlSyntax));
        let text = findings(&all, &sources, false);
        assert_eq!(text.matches("error[toml-syntax]").count(), 1);
        assert_eq!(text.matches("hint[").count(), MOST_PRINTED - 1);
        assert!(text.ends_with("1 more are not printed: `keyblock audit --json` gives all\n\n"));
    }
}
