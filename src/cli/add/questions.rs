//! Asks in the terminal what is known of a new record, a line for each key.
//!
//! In: the kind of the record, what is given, and lines of input. Out: what is given with the answers. An empty line leaves a
//! key out; an answer with which the record would have an error is refused, with the reason, and asked again; the end of
//! the input ends the questions.

use std::io::{self, BufRead, Write};

use super::kinds::RecordKind;
use crate::cli::report;
use crate::read::next_record::{Given, RecordPlan};
use crate::read::refusal::Refusal;

/// Asks for every key of the kind that may be given.
pub(super) fn answers(
    kind: &RecordKind,
    mut given: Vec<Given>,
    planned: impl Fn(&[Given]) -> Result<RecordPlan, Refusal>,
    input: &mut impl BufRead,
    out: &mut impl Write,
) -> io::Result<Vec<Given>> {
    writeln!(out, "An empty line leaves a key out.\n")?;
    for question in kind.questions {
        let has = |key: &str| given.iter().any(|given| given.key == key);
        if question.only_with.is_some_and(|key| !has(key)) {
            continue;
        }
        loop {
            write!(out, "{}\n> ", report::quoted(question.ask))?;
            out.flush()?;
            let mut line = String::new();
            if input.read_line(&mut line)? == 0 {
                writeln!(out)?;
                return Ok(given);
            }
            let Some(answer) = question.given(&line) else {
                break;
            };
            let with_answer: Vec<Given> = given.iter().cloned().chain([answer]).collect();
            match planned(&with_answer) {
                Ok(_) => {
                    given = with_answer;
                    break;
                }
                Err(refusal) => {
                    let told = format!("  {}; {}", refusal.message, refusal.help);
                    writeln!(out, "{}", report::quoted(&told))?;
                }
            }
        }
    }
    writeln!(out)?;
    Ok(given)
}

#[cfg(test)]
mod tests {
    use std::fs;

    use super::super::kinds::{DESIGN, HOLDER, IMPRESSION};
    use super::*;
    use crate::read::Inputs;
    use crate::read::next_record::{NewRecord, plan};

    /// The text of the planned record, and what was printed, for lines of input.
    fn asked(
        kind: &RecordKind,
        new: &NewRecord,
        given: Vec<Given>,
        lines: &str,
    ) -> (String, String) {
        let folder = tempfile::tempdir().unwrap();
        let records = folder.path().join("records");
        fs::create_dir_all(records.join("designs/1")).unwrap();
        fs::create_dir_all(records.join("holders")).unwrap();
        let design = "titles = [{ text = \"A Quay\" }]\n";
        fs::write(records.join("designs/1/design.toml"), design).unwrap();
        let museum = "name = \"Harbour Museum\"\nkind = \"museum\"\n";
        fs::write(records.join("holders/harbour-museum.toml"), museum).unwrap();
        fs::create_dir_all(records.join("series")).unwrap();
        fs::write(records.join("series/quays.toml"), "title = \"The Quays\"\n").unwrap();
        let inputs = Inputs::of(folder.path());
        let planned = |given: &[Given]| plan(folder.path(), &inputs, new, given);
        let mut out = Vec::new();
        let given = answers(kind, given, planned, &mut lines.as_bytes(), &mut out).unwrap();
        let text = planned(&given).unwrap().text;
        (text, String::from_utf8(out).unwrap())
    }

    #[test]
    fn an_answer_that_would_be_an_error_is_asked_again() {
        let new = NewRecord::Impression {
            design: "1".parse().unwrap(),
        };
        let lines = "harbor-museum\nharbour-museum\nP 12\nhere\n\nproof\n";
        let (text, out) = asked(&IMPRESSION, &new, Vec::new(), lines);
        assert!(
            out.contains("no holder has the key “harbor-museum”"),
            "{out}"
        );
        assert_eq!(out.matches("Who keeps it?").count(), 2, "{out}");
        assert_eq!(out.matches("Its status:").count(), 2, "{out}");
        for line in [
            "holder = \"harbour-museum\"",
            "accession = \"P 12\"",
            "status = \"located\"",
            "kind = \"proof\"",
        ] {
            assert!(
                text.lines().any(|there| there.starts_with(line)),
                "{line}\n{text}"
            );
        }
    }

    #[test]
    fn a_private_owner_gets_a_key_that_says_nothing() {
        let name = "Owner Harbour";
        let new = NewRecord::Holder {
            key: None,
            of_name: "owner-harbour".parse().ok(),
        };
        let (text, _) = asked(&HOLDER, &new, vec![Given::text("name", name)], "private\n");
        assert!(text.contains("# holder:keeper-a "), "{text}");
        assert!(text.contains("\nkind = \"private\""), "{text}");
    }

    #[test]
    fn the_number_in_a_series_is_asked_of_a_design_of_one() {
        let new = NewRecord::Design { number: None };
        let (text, out) = asked(&DESIGN, &new, Vec::new(), "The Crane\n\n\nquay\nquays\n3\n");
        assert!(
            out.contains("no series is called “quay”; did you mean “quays”?"),
            "{out}"
        );
        assert!(
            text.contains("\n[series]\nseries = \"quays\"\nposition = \"3\"\n"),
            "{text}"
        );
        let (text, out) = asked(&DESIGN, &new, Vec::new(), "The Crane\n\n\n\n");
        assert!(!out.contains("Its number there"), "{out}");
        assert!(text.contains("\n#[series]\n"), "{text}");
    }

    #[test]
    fn the_end_of_the_input_ends_the_questions() {
        let new = NewRecord::Impression {
            design: "1".parse().unwrap(),
        };
        let (text, _) = asked(&IMPRESSION, &new, Vec::new(), "");
        assert!(text.contains("\nstatus = \"untraced\""), "{text}");
    }
}
