//! References to nothing: each is reported at its place, with what to write.
//!
//! One small catalogue is sound; each test breaks it in one way.

use keyblock::model::finding;

use crate::small::lay_down;

const SOUND: &str = r#"
-- records/designs/1/design.toml
titles = [{ text = "The Lock" }]
[[matrices]]
key = "key"
[[states]]
key = "before-moon"
[[states]]
key = "with-moon"
[[printings]]
key = "own"
kind = "artist"
states = "all"
[[variants]]
key = "mica"
-- records/designs/1/impressions/1.toml
status = "located"
holder = "harbour-museum"
-- records/holders/harbour-museum.toml
name = "Harbour Museum"
kind = "museum"
-- records/people/later-printer.toml
name = "The Later Printer"
-- records/literature.bib
@book{first-list, author = {Anonymous}, title = {A First List}, year = 1961}
-- records/exhibitions.toml
[northport-1962]
title = "Memorial"
-- records/pages/introduction.md
# Introduction
"#;

/// The findings of reading, as `path:line:column code: message; help`.
fn told(broken: &str) -> Vec<String> {
    let folder = lay_down(&[SOUND, broken]);
    let reading = keyblock::read::read(folder.path());
    let mut findings = reading.findings;
    let sources = &reading.catalogue.sources;
    finding::sort(&mut findings, sources);
    let line = |found: &finding::Finding| {
        let at = sources.position(found.at.place);
        let path = sources.path(found.at.place.file);
        let file = path.rsplit('/').next().unwrap();
        let (code, message) = (found.code.as_str(), &found.message);
        let help = found.help.as_deref().unwrap_or("-");
        format!("{file}:{}:{} {code}: {message}; {help}", at.line, at.column)
    };
    findings.iter().map(line).collect()
}

/// The same for a second impression with one key beside its status.
fn told_of_sheet(line: &str) -> String {
    let record = format!("-- records/designs/1/impressions/2.toml\nstatus = \"located\"\n{line}\n");
    told(&record).join("\n")
}

/// The same for a second design.
fn told_of_design(lines: &str) -> String {
    let record =
        format!("-- records/designs/2/design.toml\ntitles = [{{ text = \"A\" }}]\n{lines}\n");
    told(&record).join("\n")
}

/// The same for a text.
fn told_of_text(text: &str) -> String {
    told(&format!("-- records/designs/1/design.md\n{text}\n")).join("\n")
}

#[test]
fn ok_a_sound_catalogue_names_nothing_that_is_not_there() {
    assert_eq!(told(""), Vec::<String>::new());
}

#[test]
fn a_holder_is_told_with_the_nearest_key_or_the_file_to_add() {
    assert_eq!(
        told_of_sheet("holder = \"harbor-museum\""),
        "2.toml:2:10 holder-unknown: no holder has the key `harbor-museum`; write `harbour-museum`, or add records/holders/harbor-museum.toml"
    );
    assert_eq!(
        told_of_sheet("holder = \"town-library\""),
        "2.toml:2:10 holder-unknown: no holder has the key `town-library`; add records/holders/town-library.toml"
    );
    assert_eq!(
        told_of_sheet("holder = \"artist\""),
        "2.toml:2:10 holder-unknown: no holder has the key `artist`; a person has it; a holder needs records/holders/artist.toml"
    );
}

#[test]
fn people_and_parties_are_told_wherever_they_are_named() {
    assert_eq!(
        told_of_design("makers = [{ person = \"later-printr\" }]"),
        "design.toml:2:22 person-unknown: no person has the key `later-printr`; write `later-printer`, or add records/people/later-printr.toml"
    );
    for line in [
        "owner = \"nobody\"",
        "provenance = [{ agent = \"nobody\" }]",
        "provenance = [{ owner = \"artist\", by = \"nobody\" }]",
        "sightings = [{ date = \"2025\", by = \"nobody\" }]",
        "marks = [{ whose = \"nobody\" }]",
        "marks = [{ applied_by = \"nobody\" }]",
        "identified = { by = \"nobody\" }",
        "opinions = [{ said = \"II\", by = \"nobody\" }]",
        "sheet = { size = [{ is = [20, 30], by = \"nobody\" }] }",
    ] {
        let told = told_of_sheet(line);
        assert!(
            told.contains(" party-unknown: neither a person nor a holder has the key `nobody`"),
            "{line}: {told}"
        );
        assert_eq!(told.lines().count(), 1, "{told}");
    }
    for lines in [
        "[[states]]\nkey = \"a\"\ndate = [{ is = \"1927\", by = \"nobody\" }]",
        "[[printings]]\nkey = \"a\"\nkind = \"artist\"\nstates = \"all\"\nprinter = \"nobody\"",
        "[[printings]]\nkey = \"a\"\nkind = \"artist\"\nstates = \"all\"\npublisher = [{ is = \"nobody\" }]",
    ] {
        assert!(
            told_of_design(lines).contains(" party-unknown: "),
            "{lines}"
        );
    }
}

#[test]
fn literature_and_exhibitions_are_told_wherever_they_are_cited() {
    for line in [
        "literature = [{ cite = \"first-lst\" }]",
        "identified = { cite = \"first-lst\" }",
        "opinions = [{ said = \"II\", after = \"first-lst\" }]",
        "sightings = [{ date = \"2025\", cite = \"first-lst\" }]",
        "kind = [{ is = \"proof\", cite = \"first-lst\" }]",
    ] {
        let told = told_of_sheet(line);
        assert!(told.contains(" literature-unknown: the literature has no entry `first-lst`; write `first-list`, or add"), "{line}: {told}");
    }
    assert_eq!(
        told_of_sheet("exhibited = [{ exhibition = \"northport-1926\" }]"),
        "2.toml:2:29 exhibition-unknown: there is no exhibition `northport-1926`; write `northport-1962`, or add [northport-1926] to records/exhibitions.toml"
    );
}

#[test]
fn terms_are_told_by_their_list() {
    assert_eq!(
        told_of_design("technique = [\"woodcutt\"]"),
        "design.toml:2:14 term-unknown: `woodcutt` is no technique that the vocabulary has; write `woodcut`, or add [woodcutt] with a label to records/vocabulary/techniques.toml"
    );
    for (line, name) in [
        ("sheet = { paper = \"birch-bark\" }", "paper"),
        ("kind = \"birch-bark\"", "kind of impression"),
        (
            "provenance = [{ owner = \"artist\", how = \"birch-bark\" }]",
            "way of transfer",
        ),
    ] {
        let told = told_of_sheet(line);
        assert!(
            told.contains(&format!(
                " term-unknown: `birch-bark` is no {name} that the vocabulary has"
            )),
            "{line}: {told}"
        );
    }
    let own = "-- records/vocabulary/papers.toml\n[birch-bark]\nlabel = \"birch bark\"\n-- records/designs/1/impressions/2.toml\nstatus = \"located\"\nsheet = { paper = \"birch-bark\" }\n";
    assert_eq!(told(own), Vec::<String>::new());
}

#[test]
fn parts_of_a_design_are_told_beside_the_nearest_one() {
    assert_eq!(
        told_of_sheet("identified = { state = \"with-mon\" }"),
        "2.toml:2:24 state-unknown: design 1 has no state `with-mon`; write `with-moon`, or add a state with the key `with-mon` to the design"
    );
    assert_eq!(
        told_of_sheet("identified = { printing = \"memorial\" }"),
        "2.toml:2:27 printing-unknown: design 1 has no printing `memorial`; the design has `own`"
    );
    for (line, code) in [
        ("identified = { variant = \"gold\" }", "variant-unknown"),
        (
            "identified = { state = { dusk = \"with-moon\" } }",
            "matrix-unknown",
        ),
        (
            "identified = { state = { key = \"cut-down\" } }",
            "state-unknown",
        ),
        (
            "identified = { or = [{ state = \"cut-down\" }] }",
            "state-unknown",
        ),
        ("opinions = [{ state = \"cut-down\" }]", "state-unknown"),
        ("blocks = { dusk = \"printed\" }", "matrix-unknown"),
        ("observed = { moon = \"present\" }", "point-unknown"),
    ] {
        let told = told_of_sheet(line);
        assert!(
            told.contains(&format!(" {code}: ")) && told.lines().count() == 1,
            "{line}: {told}"
        );
    }
    for (lines, code) in [
        (
            "[[matrices]]\nkey = \"a\"\nonly_in = [\"mica\"]",
            "variant-unknown",
        ),
        (
            "[[states]]\nkey = \"a\"\nfollows = [\"b\"]",
            "state-unknown",
        ),
        (
            "[[states]]\nkey = \"a\"\nsplit_from = \"b\"",
            "state-unknown",
        ),
        (
            "[[printings]]\nkey = \"a\"\nkind = \"artist\"\nstates = [\"b\"]",
            "state-unknown",
        ),
        (
            "[[variants]]\nkey = \"a\"\nprintings = [\"b\"]",
            "printing-unknown",
        ),
        (
            "[[points]]\nkey = \"a\"\nask = \"?\"\nkind = \"count\"\nrests_on = \"matrix\"\nmatrix = \"b\"",
            "matrix-unknown",
        ),
    ] {
        let told = told_of_design(lines);
        assert!(
            told.contains(&format!(" {code}: ")) && told.lines().count() == 1,
            "{lines}: {told}"
        );
    }
}

#[test]
fn impressions_designs_and_pictures_are_told_with_what_there_is() {
    assert_eq!(
        told_of_sheet("same_as = [{ impression = \"1.7\" }]"),
        "2.toml:2:27 impression-unknown: there is no impression 1.7; the last impression recorded of design 1 is 1.2; add records/designs/1/impressions/7.toml"
    );
    for line in [
        "maybe_same_as = [{ impression = \"1.7\" }]",
        "not_same_as = [{ impression = \"1.7\" }]",
        "shares_sheet = \"1.7\"",
        "goes_with = [\"1.7\"]",
        "taken_from = \"1.7\"",
    ] {
        assert!(
            told_of_sheet(line).contains(" impression-unknown: "),
            "{line}"
        );
    }
    assert!(
        told_of_design("comparisons = [{ of = [\"1.1\", \"9.1\"] }]")
            .contains("there is no design `9` either")
    );
    assert!(
        told_of_design("related = [{ design = \"9\" }]")
            .contains(" design-unknown: no design has the key `9`")
    );
    assert!(
        told_of_design("reference_picture = \"1.1/recto\"")
            .contains(" picture-unknown: there is no picture 1.1/recto; 1.1 has no pictures")
    );
    assert!(
        told_of_sheet("standing = \"withdrawn\"\nsee = \"impression:1.9\"")
            .contains(":3:7 impression-unknown: ")
    );
    assert!(told_of_sheet("standing = \"withdrawn\"\nsee = \"1.1\"").contains(" link-unknown: "));
}

#[test]
fn holders_settings_and_exhibitions_are_looked_through_too() {
    let successor = told(
        "-- records/holders/old.toml\nname = \"Old\"\nkind = \"museum\"\nsuccessor = { holder = \"new\" }\n",
    );
    assert!(
        successor[0].contains(" holder-unknown: no holder has the key `new`"),
        "{successor:?}"
    );
    let venue = told(
        "-- records/exhibitions.toml\n[a]\ntitle = \"A\"\nvenue = \"harbour-musem\"\ncite = \"other-list\"\n",
    );
    assert!(
        venue[0].contains("write `harbour-museum`") && venue[1].contains(" literature-unknown: "),
        "{venue:?}"
    );
    let editors = told(
        "-- catalogue.toml\ntitle = \"A\"\nsiglum = \"A\"\nartist = \"artst\"\neditors = [\"nobody\"]\npages = [\"introducton\"]\nlanguage = \"en\"\naddress = \"https://a.example.org\"\n",
    );
    assert!(
        editors[0].contains("write `artist`")
            && editors[1].contains(" person-unknown: no person has the key `nobody`")
            && editors[2].contains(" page-unknown: ")
            && editors[2].contains("write `introduction`"),
        "{editors:?}"
    );
    let role = told("-- records/people/artist.toml\nname = \"A\"\nroles = [\"carvr\"]\n");
    assert!(
        role[0].contains(" term-unknown: `carvr` is no role") && role[0].contains("write `carver`"),
        "{role:?}"
    );
}

#[test]
fn a_state_that_follows_itself_is_told_where_the_circle_closes() {
    let circle = "[[states]]\nkey = \"a\"\nfollows = [\"c\"]\n[[states]]\nkey = \"b\"\n[[states]]\nkey = \"c\"";
    assert_eq!(
        told_of_design(circle),
        "design.toml:4:12 state-cycle: the state `a` follows `c`, which comes from it; name the states that were there before the change"
    );
    assert!(
        told_of_design("[[states]]\nkey = \"a\"\nfollows = [\"a\"]")
            .contains(" state-cycle: the state `a` follows itself")
    );
    let branches = "[[states]]\nkey = \"a\"\n[[states]]\nkey = \"b\"\n[[states]]\nkey = \"c\"\nfollows = [\"a\"]\n[[states]]\nkey = \"d\"\nfollows = [\"b\", \"c\"]";
    assert_eq!(told_of_design(branches), "");
}

#[test]
fn a_sheet_is_never_said_to_be_itself() {
    for line in [
        "same_as = [{ impression = \"1.2\" }]",
        "maybe_same_as = [{ impression = \"1.2\" }]",
        "goes_with = \"1.2\"",
    ] {
        assert!(
            told_of_sheet(line).contains(" same-as-itself: 1.2 is said to be "),
            "{line}"
        );
    }
}

#[test]
fn links_in_texts_are_told_at_their_target() {
    assert_eq!(
        told_of_text("See [the lock](design:9) and [](impression:1.1)."),
        "design.md:1:16 design-unknown: no design has the key `9`; add records/designs/9/design.toml"
    );
    assert_eq!(
        told_of_text("[](desing:1)"),
        "design.md:1:4 link-unknown: `desing:1` names no record of the catalogue and no address on the web; write `design:1`"
    );
    for (text, code) in [
        ("[](holder:nobody)", "holder-unknown"),
        ("[](person:nobody)", "person-unknown"),
        ("[](lit:nothing \"p. 12\")", "literature-unknown"),
        ("[](exhibition:nothing)", "exhibition-unknown"),
        ("[](page:nothing)", "page-unknown"),
        ("![](picture:1.1/recto)", "picture-unknown"),
        ("![](https://example.org/a.jpg)", "link-unknown"),
        ("[a](other.md)", "link-unknown"),
        ("[a]()", "link-unknown"),
        ("[a](javascript:alert)", "markup-cleaned"),
        ("<b>bold</b>", "markup-cleaned"),
    ] {
        let told = told_of_text(text);
        assert!(
            told.contains(&format!(" {code}: ")) && told.lines().count() == 1,
            "{text}: {told}"
        );
    }
    let good = "[](design:1) [](person:artist) [](lit:first-list \"p. 31\") [](exhibition:northport-1962) [](page:introduction) [](https://example.org) <a@example.org>";
    assert_eq!(told_of_text(good), "");
    let notes = told(
        "-- records/designs/1/impressions/1.md\n[](design:9)\n-- records/holders/harbour-museum.md\n[](design:9)\n-- records/people/artist.md\n[](design:9)\n-- records/pages/introduction.md\n# A\n[](design:9)\n",
    );
    assert_eq!(notes.len(), 4, "{notes:?}");
}

#[test]
fn a_page_without_a_heading_has_no_title() {
    let told = told("-- records/pages/about.md\nText only.\n");
    assert!(
        told[0].starts_with("about.md:1:1 value-empty: the page `about` has no heading"),
        "{told:?}"
    );
}

#[test]
fn a_broken_entry_of_the_literature_is_told_once_and_not_where_it_is_cited() {
    let told = told(
        "-- records/literature.bib\n@book{first-list, title = {A\n-- records/designs/1/impressions/1.toml\nstatus = \"located\"\nliterature = [{ cite = \"first-list\" }]\n",
    );
    assert_eq!(told.len(), 1, "{told:?}");
    assert!(told[0].contains(":1:1 bibtex-syntax: "), "{told:?}");
}

/// The catalogue that `keyblock start` creates has no errors, doubts or hints.
#[test]
fn a_new_catalogue_has_nothing_to_be_told() {
    let folder = tempfile::tempdir().unwrap();
    for (path, content) in keyblock::read::start_files() {
        let path = folder.path().join(path);
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(path, content).unwrap();
    }
    let reading = keyblock::read::read(folder.path());
    assert!(reading.findings.is_empty(), "{:#?}", reading.findings);
    let studies = keyblock::study::Studies::of(&reading.catalogue);
    let audited = keyblock::audit::audit(&reading.catalogue, &studies);
    assert!(audited.is_empty(), "{audited:#?}");
    assert_eq!(reading.catalogue.impressions().count(), 1);
}
