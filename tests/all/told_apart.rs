//! The statements of pages on the differences between states, on wear, and on conclusions from observations.

use crate::pages::{FERRY, page, site_of};

fn html(literals: &[&str], address: &str) -> String {
    page(&site_of(literals), address).to_owned()
}

/// Text as a reader hears it: without tags, white space folded.
fn text(html: &str) -> String {
    let mut plain = String::new();
    let mut within_tag = false;
    for c in html.chars() {
        match c {
            '<' => within_tag = true,
            '>' => within_tag = false,
            c if !within_tag => plain.push(c),
            _ => {}
        }
    }
    plain.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn a_state_says_by_which_points_it_is_told_from_the_one_before() {
    let told = text(&html(&[FERRY], "design/1/"));
    assert!(told.contains("Distinguished from i by moon."), "{told}");
    assert!(told.contains("These points together distinguish every state and printing: moon."));
}

#[test]
fn where_no_point_tells_two_states_apart_the_page_says_so() {
    let alike = FERRY.replace(
        "shows = { moon = \"present\" }",
        "shows = { moon = \"absent\" }",
    );
    let told = text(&html(&[&alike], "design/1/"));
    assert!(
        told.contains("Not distinguishable from i at any recorded point."),
        "{told}"
    );
    assert!(
        told.contains("No recorded point distinguishes state"),
        "{told}"
    );
}

#[test]
fn descent_is_drawn_where_it_branches_and_not_where_it_does_not() {
    let chain = html(&[FERRY], "design/1/");
    assert!(!chain.contains("<svg"));
    let branching = FERRY.replace(
        "[[printings]]",
        "[[states]]\nkey = \"foggy\"\nfollows = [\"dark\"]\nshows = { moon = \"present\" }\n[[printings]]",
    );
    let drawn = html(&[&branching], "design/1/");
    assert!(drawn.contains("<svg"));
    assert!(
        drawn.contains("aria-label=\"ii from i; iii from i\""),
        "{drawn}"
    );
}

const WORN: &str = r#"
-- records/designs/2/design.toml
titles = [{ text = "The Lock" }]
[[points]]
key = "crack"
ask = "How far does the crack run?"
kind = "stage"
stages = ["none", "edge"]
rests_on = "matrix"
[[states]]
key = "only"
-- records/designs/2/impressions/1.toml
status = "located"
observed = { crack = "edge" }
-- records/designs/2/impressions/2.toml
status = "located"
observed = { crack = "none" }
-- records/designs/2/impressions/3.toml
status = "located"
publish = false
observed = { crack = "none" }
"#;

#[test]
fn the_order_of_printing_is_drawn_and_said_without_sheets_that_are_not_shown() {
    let drawn = html(&[WORN], "design/2/");
    let told = text(&drawn);
    assert!(told.contains("2.2 (crack: none)."), "{told}");
    assert!(
        told.contains("2.1 (crack: edge). After 2.2: wear of the blocks (crack: none, then edge)."),
        "{told}"
    );
    assert!(drawn.contains("<path class=\"solid\" d=\"M"));
    assert!(!told.contains("2.3"));
}

#[test]
fn an_impression_gives_the_evidence_for_each_state() {
    let told = text(&html(&[FERRY], "impression/1.1/"));
    for line in [
        "i/ii fits best for, matrix Is there a moon? absent; recorded: absent",
        "ii/ii excluded excludes, matrix Is there a moon? absent; recorded: present",
        "It may be none of these: a recut, a reproduction, or a state or printing not yet described.",
    ] {
        assert!(told.contains(line), "{line}\n{told}");
    }
    // There is one printing, so nothing distinguishes printings.
    assert!(!told.contains("with i/ii"), "{told}");
}

/// Common practice, no source: a sheet cannot have been printed before its paper was made; a paper that was at hand
/// proves no printing.
#[test]
fn what_printings_record_stands_beside_what_the_sheet_has() {
    let record = r#"
-- records/designs/4/design.toml
titles = [{ text = "The Mole" }]
points = [{ key = "lamp", ask = "Is there a lamp?", kind = "presence", rests_on = "inking" }]
matrices = [{ key = "line", kind = "block" }, { key = "red", kind = "block" }]
[[printings]]
key = "own"
name = "Own printing"
kind = "artist"
date = "1927"
paper = ["laid-paper"]
inks = ["black", "blue-grey"]
numbered = false
matrices = ["line", "red"]
[[printings]]
key = "late"
name = "Late printing"
kind = "restrike"
date = "1962"
paper = ["wove-paper"]
inks = ["black", "cold grey"]
numbered = true
matrices = ["line"]
-- records/designs/4/impressions/1.toml
status = "located"
numbering = "3/50"
sheet = { inks = ["Cold grey"], paper = "wove-paper", paper_date = "1950/.." }
blocks = { line = "printed", red = "not-printed" }
"#;
    let told = text(&html(&[record], "impression/4.1/"));
    let (_, late) = told.split_once("Late printing ").unwrap_or_default();
    for line in [
        "for, blocks, not weighed Blocks printed: line block; recorded: line block",
        "for, paper, not weighed Paper: wove paper; recorded: wove paper",
        "for, inking, not weighed Inks: Cold grey; recorded: black and cold grey",
        "for, mark, not weighed Number: 3/50; recorded: numbered",
    ] {
        assert!(late.contains(line), "{line}\n{told}");
    }
    let (_, own) = told.split_once("Own printing excluded").unwrap_or_default();
    for line in [
        "excludes, paper Date of the paper: not before 1950; recorded: 1927",
        "against, paper, not weighed Paper: wove paper; recorded: laid paper",
        "against, inking, not weighed Inks: Cold grey; recorded: black and blue-grey",
        "against, mark, not weighed Number: 3/50; recorded: not numbered",
    ] {
        assert!(own.contains(line), "{line}\n{told}");
    }
}

/// Under an excluded printing only what excludes it is open; under one that is left everything is.
#[test]
fn what_does_not_exclude_an_excluded_printing_is_folded_away() {
    let record = r#"
-- records/designs/4/design.toml
titles = [{ text = "The Mole" }]
points = [
  { key = "moon", ask = "Is there a moon?", kind = "presence", rests_on = "matrix" },
  { key = "seal", ask = "Is there a seal?", kind = "presence", rests_on = "mark" },
  { key = "sky", ask = "Is the sky wiped?", kind = "presence", rests_on = "inking" },
]
states = [{ key = "only" }]
printings = [
  { key = "own", name = "Own printing", kind = "artist", states = "all", shows = { moon = "absent", seal = "present", sky = "absent" } },
  { key = "late", name = "Late printing", kind = "restrike", states = "all", shows = { moon = "present", seal = "absent", sky = "present" } },
]
-- records/designs/4/impressions/1.toml
status = "located"
observed = { moon = "present", seal = "present", sky = "present" }
"#;
    let page = html(&[record], "impression/4.1/");
    let (_, own) = page.split_once(">Own printing").unwrap();
    let (own, _) = own.split_once("</details>").unwrap();
    let (open, folded) = own.split_once("<details>").unwrap();
    let (open, folded) = (text(open), text(folded));
    assert!(open.contains("excludes, matrix Is there a moon?"), "{open}");
    assert!(!open.contains("seal") && !open.contains("sky"), "{open}");
    for line in [
        "two more observations",
        "for, mark Is there a seal?",
        "against, inking Is the sky wiped?",
    ] {
        assert!(folded.contains(line), "{line}\n{folded}");
    }
    assert_eq!(page.matches("<details>").count(), 1);
    let (_, late) = page.split_once(">Late printing").unwrap();
    let (late, _) = late.split_once("</ol>").unwrap();
    let late = text(late);
    for line in [
        "for, matrix Is there a moon?",
        "against, mark Is there a seal?",
    ] {
        assert!(late.contains(line), "{line}\n{late}");
    }
}

/// Common practice, no source: which inks are named of a sheet depends on who looked, so a missing one tells nothing.
#[test]
fn an_ink_that_is_not_named_of_a_sheet_tells_nothing() {
    let record = r#"
-- records/designs/4/design.toml
titles = [{ text = "The Mole" }]
points = [{ key = "lamp", ask = "Is there a lamp?", kind = "presence", rests_on = "inking" }]
[[printings]]
key = "own"
name = "Own printing"
kind = "artist"
inks = ["black", "blue-grey"]
pressed = "hand"
[[printings]]
key = "late"
name = "Late printing"
kind = "restrike"
inks = ["black", "cold grey"]
[[printings]]
key = "unsaid"
name = "Other printing"
kind = "restrike"
-- records/designs/4/impressions/1.toml
status = "located"
sheet = { inks = ["black"] }
-- records/designs/4/impressions/2.toml
status = "located"
sheet = { inks = ["black", "Blue grey"] }
"#;
    let told = text(&html(&[record], "impression/4.1/"));
    assert!(!told.contains("weighed Inks:"), "{told}");
    let told = text(&html(&[record], "impression/4.2/"));
    for line in [
        "for, inking, not weighed Inks: black and Blue grey; recorded: black and blue-grey",
        "against, inking, not weighed Inks: black and Blue grey; recorded: black and cold grey",
    ] {
        assert!(told.contains(line), "{line}\n{told}");
    }
    assert_eq!(told.matches("weighed Inks:").count(), 2, "{told}");
    let design = text(&html(&[record], "design/4/"));
    assert!(
        design.contains("In black and blue-grey. Rubbed by hand."),
        "{design}"
    );
}

/// Two points: of one the editor says why it decides, of the other how often sheets depart from what is recorded.
const DECIDING: &str = r#"
-- records/designs/4/design.toml
titles = [{ text = "The Mole" }]
points = [
  { key = "split", ask = "How far is the split?", kind = "stage", rests_on = "matrix", stages = ["none", "through"], decides = "The block split in one night & was never mended." },
  { key = "stamp", ask = "Is there a stamp?", kind = "presence", rests_on = "mark", strays = 0.12 },
  { key = "moon", ask = "Is there a moon?", kind = "presence", rests_on = "matrix", strays = 0.125 },
  { key = "lamp", ask = "Is there a lamp?", kind = "presence", rests_on = "matrix" },
]
states = [{ key = "dark", shows = { split = "none" } }, { key = "moonlit", shows = { split = "through" } }]
"#;

#[test]
fn the_page_of_a_point_says_why_it_decides_or_how_often_sheets_depart() {
    let german = "-- catalogue.toml\ntitle = \"Die Drucke\"\nsiglum = \"DD\"\nartist = \"artist\"\n\
                  language = \"de\"\naddress = \"https://prints.example.org\"\nlicence = \"CC-BY-4.0\"\n";
    for (literals, expected) in [
        (
            &[DECIDING][..],
            [
                "A certain answer here excludes every state and printing of which something else is recorded. Reason: \
                 The block split in one night &amp; was never mended.",
                "About 12 of 100 sheets depart from what is recorded here, so an answer is weighed and excludes nothing.",
                "About 125 of 1000 sheets depart",
            ],
        ),
        (
            &[DECIDING, german],
            [
                "Eine sichere Antwort schließt jeden Zustand und jeden Druck aus, für den hier anderes verzeichnet \
                 ist. Begründung: The block split in one night &amp; was never mended.",
                "Etwa 12 von 100 Blättern weichen hier von dem Verzeichneten ab; eine Antwort wird daher nur gewichtet \
                 und schließt nichts aus.",
                "Etwa 125 von 1000 Blättern weichen",
            ],
        ),
    ] {
        for (point, sentence) in ["split", "stamp", "moon"].into_iter().zip(expected) {
            let told = text(&html(literals, &format!("design/4/point/{point}/")));
            assert!(told.contains(sentence), "{sentence}\n{told}");
        }
        let silent = text(&html(literals, "design/4/point/lamp/"));
        assert!(
            !silent.contains("100 ") && !silent.contains("Reason"),
            "{silent}"
        );
    }
}

#[test]
fn an_impression_says_what_would_settle_it() {
    let open = FERRY.replace(
        "identified = { state = \"dark\", printing = \"own\" }\nobserved = { moon = \"absent\" }",
        "",
    );
    let told = text(&html(&[&open], "impression/1.1/"));
    assert!(
        told.contains("Nothing was seen at a point that distinguishes states or printings."),
        "{told}"
    );
    assert!(told.contains("Look next: Is there a moon?"), "{told}");
    // A point that is mounted over could be seen if the sheet were unmounted.
    let trimmed = open.replace(
        "accession = \"1962.44\"",
        "observed = { moon = \"not-visible\" }",
    );
    let told = text(&html(&[&trimmed], "impression/1.1/"));
    assert!(
        told.contains("If a conservator unmounts the sheet, look: Is there a moon?"),
        "{told}"
    );
    assert!(!told.contains("No recorded point"), "{told}");
}

/// A museum that follows an older catalogue, which knew one state less.
const AFTER: &str = r#"
-- records/literature.bib
@book{list-1961, author = {Verhoeven, A.}, title = {A List}, year = {1961}}
-- records/designs/3/design.toml
titles = [{ text = "The Weir" }]
[[states]]
key = "first"
literature = [{ cite = "list-1961", number = "I" }]
[[states]]
key = "second"
literature = [{ cite = "list-1961", number = "II", relation = "covers-ours" }]
[[states]]
key = "third"
literature = [{ cite = "list-1961", number = "II", relation = "covers-ours" }]
-- records/designs/3/impressions/1.toml
status = "located"
opinions = [{ said = "II/II", after = "list-1961", by = "museum" }, { said = "III", after = "list-1961" }]
-- records/holders/museum.toml
name = "Harbour Museum"
kind = "museum"
"#;

#[test]
fn an_opinion_after_another_catalogue_is_said_in_our_terms_too() {
    let told = text(&html(&[AFTER], "impression/3.1/"));
    assert!(told.contains("“II/II”, here ii/iii or iii/iii"), "{told}");
    assert!(
        told.contains("“III”, a number that is not in the concordance"),
        "{told}"
    );
}
