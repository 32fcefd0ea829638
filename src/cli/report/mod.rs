//! Prints findings for people.
//!
//! In: findings in their order. Out: entries, and a table of codes. `model::bulk` decides which findings of a frequent
//! code are listed.

mod entry;
mod quotation;

use std::fmt::Write as _;

pub(super) use self::entry::quoted;
use self::entry::{Colours, entry};
use crate::model::bulk::{self, Extent, MOST_LISTED};
use crate::model::codes::Code;
use crate::model::finding::{Finding, Tally};
use crate::model::place::Sources;

/// The most values at fault that are given of one code.
const MOST_FAULTS: usize = 5;

/// The same where the findings of one code were asked for.
const MOST_FAULTS_OF_ONE: usize = 40;

/// How findings are printed.
#[derive(Clone, Copy, Debug)]
pub struct Layout {
    /// How many are listed.
    pub extent: Extent,
    /// Whether they are of the codes that somebody asked for: then more of the values at fault are given.
    pub of_asked_codes: bool,
    /// Whether with colour.
    pub colour: bool,
}

impl Layout {
    /// Without colour, of any codes.
    #[must_use]
    pub fn plain(extent: Extent) -> Layout {
        Layout {
            extent,
            of_asked_codes: false,
            colour: false,
        }
    }
}

/// Findings as text: entries, each followed by an empty line, and the table of their codes where there are more than
/// [`MOST_LISTED`].
#[must_use]
pub fn findings<'f>(
    findings: impl IntoIterator<Item = &'f Finding>,
    sources: &Sources,
    layout: Layout,
) -> String {
    let findings: Vec<&Finding> = findings.into_iter().collect();
    let colours = Colours::new(layout.colour);
    let most_faults = if layout.of_asked_codes {
        MOST_FAULTS_OF_ONE
    } else {
        MOST_FAULTS
    };
    let mut text: String = bulk::groups(findings.iter().copied(), sources, layout.extent)
        .iter()
        .map(|group| entry(group, sources, most_faults, colours) + "\n")
        .collect();
    if findings.len() > MOST_LISTED {
        text.push_str(&codes(&findings, colours));
        text.push('\n');
    }
    text
}

/// The table of codes: how many findings, the severity, the code, its meaning.
fn codes(findings: &[&Finding], colours: Colours) -> String {
    let counts = bulk::counts_by_code(findings.iter().copied());
    let widest = |width: &dyn Fn(&(Code, usize)) -> usize| counts.iter().map(width).max();
    let of_count = widest(&|(_, count)| count.to_string().len()).unwrap_or_default();
    let of_code = widest(&|(code, _)| code.as_str().len()).unwrap_or_default();
    let mut text = "Codes\n".to_owned();
    for (code, count) in counts {
        let severity = code.severity();
        let word = colours.of_severity(severity, &format!("{:<5}", severity.word()));
        let _ = writeln!(
            text,
            "  {count:>of_count$}  {word}  {:<of_code$}  {}",
            code.as_str(),
            code.meaning()
        );
    }
    text
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
    use crate::model::place::Place;

    fn short(findings: &[Finding], sources: &Sources) -> String {
        super::findings(findings, sources, Layout::plain(Extent::Short))
    }

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
        insta::assert_snapshot!(short(&[finding], &sources), @r#"
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
        let text = short(&[finding], &sources);
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
            assert!(short(&[finding], &sources).contains("a.toml"));
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
        let text = short(&[finding], &sources);
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
        insta::assert_snapshot!(short(&[finding], &sources), @r"
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

    /// Twelve sheets with a misspelt status, one with a status that means nothing, and one hint.
    fn in_bulk(sources: &mut Sources) -> Vec<Finding> {
        let mut all: Vec<Finding> = (1..=13)
            .map(|n| {
                let value = if n == 2 { "\"gone\"" } else { "\"locatd\"" };
                let path = format!("records/designs/{n}/impressions/1.toml");
                let file = sources.add(path, format!("status = {value}\n"));
                let place = Place::new(file, 9..9 + value.len());
                let message = format!("`status` takes no {value}");
                Finding::new(Code::ValueUnknown, place, message).help("it takes located, untraced")
            })
            .collect();
        let file = sources.add("records/list.csv", "");
        let hint = Finding::new(Code::FileUnexpected, Place::start_of(file), "no record");
        all.push(hint);
        all
    }

    #[test]
    fn more_than_ten_of_a_code_are_one_entry_with_the_values_by_frequency() {
        let mut sources = Sources::default();
        let all = in_bulk(&mut sources);
        insta::assert_snapshot!(short(&all, &sources), @r#"
        records/designs/1/impressions/1.toml:1:10
          Error    “status” takes no "locatd"
                   status = "locatd"
                            ‾‾‾‾‾‾‾‾
        records/designs/2/impressions/1.toml:1:10
          Error    “status” takes no "gone"
                   status = "gone"
                            ‾‾‾‾‾‾
        records/designs/3/impressions/1.toml:1:10
          Error    “status” takes no "locatd"
                   status = "locatd"
                            ‾‾‾‾‾‾‾‾
          More     10 more of this code; “--code value-unknown --all” lists them
          Found    12 × "locatd"
                    1 × "gone"
          Do       it takes located, untraced
          Code     value-unknown

        records/list.csv
          Hint     no record
          Code     file-unexpected

        Codes
          13  error  value-unknown    A word is not one of those that the key takes.
           1  hint   file-unexpected  A file is in a place where no record belongs.
        "#);
    }

    #[test]
    fn every_finding_has_an_entry_where_all_are_asked_for() {
        let mut sources = Sources::default();
        let all = in_bulk(&mut sources);
        let text = findings(&all, &sources, Layout::plain(Extent::Whole));
        assert_eq!(text.matches("  Code     value-unknown\n").count(), 13);
        assert_eq!(text.matches("  Code     file-unexpected\n").count(), 1);
        assert!(
            text.contains("\nCodes\n  13  error  value-unknown    "),
            "{text}"
        );
    }

    #[test]
    fn help_that_differs_stands_at_its_finding() {
        let mut sources = Sources::default();
        let mut all = in_bulk(&mut sources);
        all[1].help = Some("write “untraced”".to_owned());
        let text = short(&all, &sources);
        assert_eq!(text.matches("  Do       ").count(), 3, "{text}");
        assert_eq!(
            text.matches("  Do       write “untraced”\n").count(),
            1,
            "{text}"
        );
    }
}
