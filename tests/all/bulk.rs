//! Findings in bulk: a mistake that stands in a thousand records is told in a few lines; and help that says what can be
//! written.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::fs;
use std::path::Path;

use keyblock::read::{Inputs, read_inputs};
use serde_json::Value;

use crate::program::{command, keyblock, text};
use crate::small::lay_down;

/// Writes a catalogue of `designs` designs and a third more sheets, with four mistakes in every record: a technique and a
/// status that are misspelt, a holder that is none, and a size as text.
fn mistaken(designs: usize) -> tempfile::TempDir {
    let folder = lay_down(&[
        "-- records/holders/harbour-museum.toml\nname = \"Harbour Museum\"\nkind = \"museum\"\n",
    ]);
    for design in 1..=designs {
        let dir = folder.path().join(format!("records/designs/{design}"));
        fs::create_dir_all(dir.join("impressions")).unwrap();
        let record =
            format!("titles = [{{ text = \"Print {design}\" }}]\ntechnique = [\"ething\"]\n");
        fs::write(dir.join("design.toml"), record).unwrap();
        let sheets = if design % 3 == 0 { 2 } else { 1 };
        for sheet in 1..=sheets {
            let status = if design % 7 == 0 { "here" } else { "locatd" };
            let record = format!(
                "holder = \"harbor-museum\"\naccession = \"{design}.{sheet}\"\nstatus = \"{status}\"\n\n[sheet]\nsize = \"230 x 290\"\n"
            );
            fs::write(dir.join(format!("impressions/{sheet}.toml")), record).unwrap();
        }
    }
    folder
}

/// The places in a report, in its order.
fn places(report: &str) -> Vec<&str> {
    let lines = report.lines().filter(|line| line.starts_with("records/"));
    lines.map(|line| line.split(':').next().unwrap()).collect()
}

#[test]
fn four_mistakes_in_1200_designs_are_told_in_less_than_100_lines() {
    let folder = mistaken(1_200);
    let ran = keyblock(&["audit", text(folder.path())]);
    assert_eq!((ran.code, ran.err.as_str()), (Some(1), ""));
    let report = &ran.out;
    assert!(report.lines().count() < 100, "{report}");
    // Three of each, then how many more, by which values, and what to do.
    for (code, more, of_all) in [
        ("term-unknown", 1_197, 1_200),
        ("value-unknown", 1_597, 1_600),
        ("holder-unknown", 1_597, 1_600),
        ("size-syntax", 1_597, 1_600),
    ] {
        let line =
            format!("  More     {more} more of this code; “--code {code} --all” lists them\n");
        assert!(report.contains(&line), "{line}{report}");
        assert_eq!(report.matches(&format!("  Code     {code}\n")).count(), 1);
        assert!(
            report.contains(&format!("  {of_all}  error  {code} ")),
            "{report}"
        );
    }
    assert!(
        report.contains("  Found    1372 × \"locatd\"\n            228 × \"here\"\n"),
        "{report}"
    );
    assert!(
        report.contains("  Do       write [230, 290]: millimetres"),
        "{report}"
    );
    assert!(
        report.contains("  Do       write “harbour-museum”, or add"),
        "{report}"
    );
    assert!(report.ends_with("\n6000 errors\n"), "{report}");
    // Numbers in names are numbers: 1, 2, 3, not 1, 10, 100.
    let places = places(report);
    assert_eq!(
        places.first(),
        Some(&"records/designs/1/design.toml"),
        "{places:?}"
    );
    let of_techniques = ["1", "2", "3"].map(|n| format!("records/designs/{n}/design.toml"));
    assert_eq!(places.get(..3).unwrap(), of_techniques, "{places:?}");
}

#[test]
fn a_report_is_narrowed_by_code_and_file_and_whole_with_all() {
    let folder = mistaken(12);
    let dir = text(folder.path());
    let of_one = keyblock(&["audit", dir, "--code", "term-unknown"]);
    assert_eq!(of_one.code, Some(1));
    assert_eq!(places(&of_one.out).len(), 3, "{}", of_one.out);
    assert!(!of_one.out.contains("size-syntax"), "{}", of_one.out);
    assert!(
        of_one
            .out
            .contains("\nasked for with --code term-unknown: 12 of 60 findings\n"),
        "{}",
        of_one.out
    );
    assert!(of_one.out.ends_with("\n60 errors\n"), "{}", of_one.out);

    let all = keyblock(&["audit", dir, "--code", "term-unknown", "--all"]);
    let expected: Vec<String> = (1..=12)
        .map(|n| format!("records/designs/{n}/design.toml"))
        .collect();
    assert_eq!(places(&all.out), expected);

    let of_file = keyblock(&["audit", dir, "--file", "records/designs/1"]);
    assert_eq!(
        places(&of_file.out),
        [
            "records/designs/1/design.toml",
            "records/designs/1/impressions/1.toml",
            "records/designs/1/impressions/1.toml",
            "records/designs/1/impressions/1.toml"
        ]
    );
    // Four findings need no table.
    assert!(!of_file.out.contains("\nCodes\n"), "{}", of_file.out);

    let none = keyblock(&["audit", dir, "--file", "records/designs/1/desing.toml"]);
    assert_eq!((none.code, none.out.as_str()), (Some(2), ""));
    assert_eq!(
        none.err,
        "keyblock: the catalogue has no file or folder “records/designs/1/desing.toml”\n  \
         the nearest is “records/designs/1/design.toml”\n"
    );
}

#[test]
fn a_document_for_programs_has_every_finding_unless_it_is_narrowed() {
    let folder = mistaken(12);
    let dir = text(folder.path());
    let document = |words: &[&str]| -> Value {
        let ran = keyblock(&[&["audit", dir, "--json"], words].concat());
        assert_eq!(ran.code, Some(1), "{}", ran.err);
        serde_json::from_str(&ran.out).unwrap()
    };
    let count = |document: &Value| document["findings"].as_array().unwrap().len();
    let whole = document(&[]);
    assert_eq!((count(&whole), &whole["counts"]["error"]), (60, &60.into()));
    let narrowed = document(&["--code", "size-syntax", "--file", "records/designs/3"]);
    assert_eq!(
        (count(&narrowed), &narrowed["counts"]["error"]),
        (2, &2.into())
    );
}

#[test]
fn compile_issue_and_proof_take_the_same_options() {
    let folder = mistaken(12);
    let dir = text(folder.path());
    for name in ["compile", "issue"] {
        let ran = keyblock(&[name, dir, "--code", "size-syntax"]);
        assert_eq!(ran.code, Some(1));
        assert_eq!(places(&ran.err).len(), 3, "{name}: {}", ran.err);
        assert!(
            ran.err
                .contains("asked for with --code size-syntax: 16 of 60 findings\n"),
            "{name}: {}",
            ran.err
        );
    }
    for name in ["audit", "compile", "issue", "proof"] {
        let help = keyblock(&[name, "--help"]).out;
        for option in ["--code <CODE>", "--file <PATH>", "--all"] {
            assert!(help.contains(option), "{name}: {help}");
        }
    }
}

#[test]
fn a_repeated_compile_prints_what_is_asked_for() {
    // Two sheets whose observation contradicts them: doubts, no errors.
    let folder = lay_down(&[crate::small::DOUBTFUL]);
    let dir = text(folder.path());
    let first = keyblock(&["compile", dir]);
    assert_eq!(first.code, Some(0), "{}", first.err);
    assert!(
        first
            .err
            .contains("  Code     identification-contradicted\n"),
        "{}",
        first.err
    );
    let narrowed = keyblock(&["compile", dir, "--code", "term-unknown"]);
    assert!(!narrowed.err.contains("  Code     "), "{}", narrowed.err);
    let again = keyblock(&["compile", dir]);
    assert_eq!(again.err, first.err);
}

#[test]
fn a_command_among_the_records_finds_the_catalogue_above() {
    let folder = mistaken(2);
    let below = folder.path().join("records/designs/2/impressions");
    let run = |words: &[&str]| {
        let output = command(words).current_dir(&below).output().unwrap();
        let text = |bytes: Vec<u8>| String::from_utf8(bytes).unwrap();
        (
            output.status.code(),
            text(output.stdout),
            text(output.stderr),
        )
    };
    let named = keyblock(&["audit", text(folder.path())]);
    let (code, out, err) = run(&["audit"]);
    assert_eq!((code, &out), (Some(1), &named.out));
    let above = folder.path().canonicalize().unwrap();
    assert_eq!(
        err,
        format!("keyblock: the catalogue is in “{}”\n", above.display())
    );
    // A file may be named from there.
    let (_, out, _) = run(&["audit", "--file", "1.toml"]);
    assert!(
        places(&out)
            .iter()
            .all(|place| *place == "records/designs/2/impressions/1.toml"),
        "{out}"
    );
    let (code, out, _) = run(&["census", "2"]);
    assert!(code == Some(0) && out.contains("Print 2"), "{out}");
    // A folder that is named is the catalogue, whatever stands above.
    let (_, out, err) = run(&["audit", "."]);
    assert!(out.contains("  Code     file-missing\n"), "{out}");
    assert_eq!(err, "");
}

/// The findings on a catalogue of these files: code, message, help.
fn told(literal: &str) -> Vec<(&'static str, String, String)> {
    let ground = "-- catalogue.toml\ntitle = \"The Prints\"\nsiglum = \"TP\"\nartist = \"artist\"\nlanguage = \"en\"\naddress = \"https://prints.example.org\"\nlicence = \"CC-BY-4.0\"\n-- records/people/artist.toml\nname = \"The Artist\"\n";
    let mut files: BTreeMap<String, Vec<u8>> = BTreeMap::new();
    for file in format!("\n{ground}{}", literal.trim_start())
        .split("\n-- ")
        .skip(1)
    {
        let (path, text) = file.split_once('\n').unwrap();
        files.insert(path.trim().to_owned(), format!("{text}\n").into_bytes());
    }
    let reading = read_inputs(Path::new("/nowhere-at-all"), &Inputs::of_bytes(&files));
    let findings = reading.findings.into_iter();
    findings
        .map(|f| (f.code.as_str(), f.message, f.help.unwrap_or_default()))
        .collect()
}

/// The help of the one finding of a code.
fn help(literal: &str, code: &str) -> String {
    let told = told(literal);
    let mut of_code = told.iter().filter(|(of, ..)| *of == code);
    match (of_code.next(), of_code.next()) {
        (Some((.., help)), None) => help.clone(),
        _ => panic!("{code}: {told:#?}"),
    }
}

const MILL: &str = "
-- records/designs/mill/design.toml
number = \"2\"
titles = [{ text = \"The Mill by the Weir\" }]
points = [
    { key = \"moon\", ask = \"A moon?\", kind = \"presence\", rests_on = \"matrix\" },
    { key = \"lamps\", ask = \"Lamps?\", kind = \"cuont\", rests_on = \"matrix\" },
]
states = [{ key = \"dark\" }, { key = \"lit\" }]
-- records/holders/harbour-museum.toml
name = \"Museum of the Harbour\"
kind = \"museum\"
-- records/designs/mill/impressions/1.toml
";

#[test]
fn a_state_that_is_named_by_a_number_is_told_with_its_key() {
    let of = |state: &str, code: &str| {
        let record = format!("{MILL}status = \"untraced\"\nidentified = {{ state = {state} }}\n");
        help(&record, code)
    };
    let first = "write \"dark\": it is state 1 in the order of the record";
    assert_eq!(of("1", "value-type"), first);
    assert_eq!(of("[1]", "value-type"), first);
    assert_eq!(of("9", "value-type"), "the design has dark, lit");
    for numeral in ["\"2\"", "\"ii\""] {
        assert_eq!(
            of(numeral, "state-unknown"),
            "write \"lit\": it is state 2 in the order of the record; the design has `dark`, `lit`"
        );
    }
    assert_eq!(
        help(
            &format!("{MILL}status = \"untraced\"\nidentified = {{ printing = 1 }}\n"),
            "value-type"
        ),
        "write the key of the printing in quotes, as the design has it; numbers and numerals are computed"
    );
}

#[test]
fn every_point_is_listed_also_a_faulty_one() {
    let record = format!("{MILL}status = \"untraced\"\nobserved = {{ cloud = \"present\" }}\n");
    assert_eq!(help(&record, "point-unknown"), "its points are lamps, moon");
    let record = format!("{MILL}status = \"untraced\"\nobserved = {{ lamp = 2 }}\n");
    assert_eq!(
        help(&record, "point-unknown"),
        "write `lamps`, or add a point with the key `lamp` to the design"
    );
}

#[test]
fn a_list_of_tables_is_shown_and_can_be_read_as_it_is_shown() {
    let record = format!("{MILL}status = \"untraced\"\nmarks = [\"signed\"]\nsheet = \"laid\"\n");
    let told = told(&record);
    let helps: Vec<&String> = told
        .iter()
        .filter(|(code, ..)| *code == "value-type")
        .map(|(.., help)| help)
        .collect();
    let [sheet, marks] = helps.as_slice() else {
        panic!("{told:#?}");
    };
    let mut mended = format!("{MILL}status = \"untraced\"\n");
    for help in [marks, sheet] {
        let line = help.strip_prefix("write it like this: ").unwrap();
        writeln!(mended, "{line}").unwrap();
    }
    assert!(marks.contains("marks = [{ "), "{marks}");
    let told = self::told(&mended);
    assert!(
        !told
            .iter()
            .any(|(code, ..)| *code == "value-type" || *code == "key-missing"),
        "{mended}\n{told:#?}"
    );
}

#[test]
fn a_key_that_is_to_be_added_is_told_with_its_words() {
    let help = help(&format!("{MILL}accession = \"1\"\n"), "key-missing");
    assert!(
        help.starts_with("add `status`: where it stands; one of located, "),
        "{help}"
    );
    assert!(help.contains("untraced"), "{help}");
}

#[test]
fn a_design_that_is_named_by_its_number_or_title_is_told_by_its_key() {
    let of = |see: &str, code: &str| {
        help(
            &format!("{MILL}status = \"untraced\"\nsee = \"{see}\"\n"),
            code,
        )
    };
    assert_eq!(
        of("design:2", "design-unknown"),
        "number 2 is `mill`: write `mill`"
    );
    assert_eq!(
        of("impression:2.1", "impression-unknown"),
        "number 2 is `mill`: write `mill.1`"
    );
    assert_eq!(
        of("design:the-mill", "design-unknown"),
        "write `mill`, or add records/designs/the-mill/design.toml"
    );
    assert_eq!(
        of("design:3", "design-unknown"),
        "add records/designs/3/design.toml"
    );
}

#[test]
fn a_holder_that_is_named_by_its_name_or_a_part_of_its_key_is_told_by_its_key() {
    for written in ["harbour", "museum-of-the-harbour", "harbor-museum"] {
        let record = format!("{MILL}status = \"located\"\nholder = \"{written}\"\n");
        assert_eq!(
            help(&record, "holder-unknown"),
            format!("write `harbour-museum`, or add records/holders/{written}.toml")
        );
    }
    let record = format!("{MILL}status = \"located\"\nholder = \"southport\"\n");
    assert_eq!(
        help(&record, "holder-unknown"),
        "add records/holders/southport.toml"
    );
}

#[test]
fn a_size_with_a_cross_is_told_as_a_list_and_can_be_read_so() {
    for (written, code) in [
        ("[230 x 290]", "toml-syntax"),
        ("\"230 x 290\"", "size-syntax"),
        ("[\"230 x 290 mm\"]", "size-syntax"),
        ("\"23 × 29 cm\"", "size-syntax"),
    ] {
        let record =
            |size: &str| format!("{MILL}status = \"untraced\"\nsheet = {{ size = {size} }}\n");
        let help = help(&record(written), code);
        assert!(help.contains("230, 290"), "{written}: {help}");
        assert!(!help.contains('"'), "{written}: {help}");
        let told = told(&record("[230, 290]"));
        assert!(!told.iter().any(|(of, ..)| *of == code), "{told:#?}");
    }
}

#[test]
fn commands_tell_a_design_by_its_number_and_list_no_more_than_twenty() {
    let folder = lay_down(&[&format!("{MILL}status = \"untraced\"\n")]);
    for n in 10..40 {
        let dir = folder.path().join(format!("records/designs/{n}"));
        fs::create_dir_all(&dir).unwrap();
        fs::write(dir.join("design.toml"), "titles = [{ text = \"Print\" }]\n").unwrap();
    }
    let run = |design: &str| keyblock(&["identify", design, "--in", text(folder.path())]).err;
    assert!(run("2").contains("the design with the key “mill” has the number 2\n"));
    assert_eq!(
        run("the mill"),
        "keyblock: there is no design “the mill”\n  the nearest is “mill” (number 2)\n"
    );
    let listed = run("nothing");
    assert!(listed.ends_with(", 29 and 11 more\n"), "{listed}");
}
