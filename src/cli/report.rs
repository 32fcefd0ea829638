//! Prints findings for people: the message, the place underlined, the help.

use annotate_snippets::{AnnotationKind, Group, Level, Origin, Renderer, Snippet};

use crate::model::finding::{Finding, Label, Severity, Tally};
use crate::model::place::Sources;

/// Every finding as text, each followed by an empty line.
#[must_use]
pub fn findings(findings: &[Finding], sources: &Sources, colour: bool) -> String {
    let renderer = if colour {
        Renderer::styled()
    } else {
        Renderer::plain()
    };
    findings
        .iter()
        .map(|f| renderer.render(&[group(f, sources)]) + "\n\n")
        .collect()
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
        let file = piece[0].0.place.file;
        let text = sources.text(file);
        if text.is_empty() {
            group = group.element(Origin::path(sources.path(file)));
            continue;
        }
        let mut snippet = Snippet::source(text).path(sources.path(file));
        for (label, kind) in piece {
            let annotation = kind.span(within(label, text));
            snippet = snippet.annotation(match label.text.as_str() {
                "" => annotation,
                words => annotation.label(words),
            });
        }
        group = group.element(snippet);
    }
    match &finding.help {
        Some(help) => group.element(Level::HELP.message(help.as_str())),
        None => group,
    }
}

/// The places of a finding, file by file: those of one file are drawn in one piece.
fn pieces(finding: &Finding) -> Vec<Vec<(&Label, AnnotationKind)>> {
    let mut pieces = vec![vec![(&finding.at, AnnotationKind::Primary)]];
    for label in &finding.also {
        match pieces
            .iter_mut()
            .find(|piece| piece[0].0.place.file == label.place.file)
        {
            Some(piece) => piece.push((label, AnnotationKind::Context)),
            None => pieces.push(vec![(label, AnnotationKind::Context)]),
        }
    }
    pieces
}

/// The label's bytes, kept inside the text and on character boundaries.
fn within(label: &Label, text: &str) -> std::ops::Range<usize> {
    let span = label.place.span();
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
}
