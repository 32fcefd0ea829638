//! Prints findings for people.

mod entry;
mod quotation;

pub(super) use self::entry::quoted;
use self::entry::{Colours, entry};
use crate::model::finding::{Finding, Severity, Tally};
use crate::model::place::Sources;

/// The most findings that are printed for people; nobody reads more at once.
const MOST_PRINTED: usize = 5_000;

/// Every finding as text, each followed by an empty line. Of more than [`MOST_PRINTED`], errors come
/// before doubts and doubts before hints, and a last line says how many are left out.
#[must_use]
pub fn findings(findings: &[Finding], sources: &Sources, colour: bool) -> String {
    let colours = Colours::new(colour);
    let printed = worst(findings);
    let left_out = findings.len() - printed.len();
    let mut text: String = printed
        .iter()
        .map(|finding| entry(finding, sources, colours) + "\n")
        .collect();
    if left_out > 0 {
        let more =
            format!("{left_out} more are not printed: “keyblock audit --json” gives all\n\n");
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
        records/designs/14/impressions/7.toml:2:1
          Error    design 14 has no point “lamp”
                   lamp = 3
                   ‾‾‾‾ observed here
          Compare  records/designs/14/design.toml:2:7
                   key = "lamps"
                         ‾‾‾‾‾‾‾ the nearest point
          Do       write “lamps”, or add a point with the key “lamp” to the design
          Code     point-unknown
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
        insta::assert_snapshot!(text, @r"
        records/designs/14/pictures/9.jpg
          Hint     no record names this picture
          Code     picture-orphan
        ");
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
        assert!(text.contains("wrong") && text.contains("‾‾‾‾‾"), "{text}");
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
        a.toml:10002:1
          Error    twice
                   key = 2
                   ‾‾‾
          Compare  a.toml:1:1
                   key = 1
                   ‾‾‾ the first
          Code     key-twice
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
        assert_eq!(text.matches("Code     toml-syntax").count(), 1);
        assert_eq!(text.matches("  Hint ").count(), MOST_PRINTED - 1);
        assert!(text.ends_with("1 more are not printed: “keyblock audit --json” gives all\n\n"));
    }
}
