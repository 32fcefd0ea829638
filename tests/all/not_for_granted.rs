//! Qualifications that pages must state, because readers would assume the contrary: an identification that is
//! not certain, a sheet that is not by the artist, a sheet that was stolen.

use crate::pages::{page, site_of};

/// A design with three identified sheets, one rejected with a sheet of its own, one sheet stolen.
const GATE: &str = r#"
-- records/holders/museum.toml
name = "Town Museum"
kind = "museum"
-- records/designs/1/design.toml
titles = [{ text = "The Gate" }]
points = [{ key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" }]
states = [{ key = "dark", shows = { moon = "absent" } }, { key = "moonlit", shows = { moon = "present" } }]
-- records/designs/1/impressions/1.toml
holder = "museum"
status = "located"
identified = { state = "dark" }
observed = { moon = "absent" }
-- records/designs/1/impressions/2.toml
holder = "museum"
status = "located"
identified = { state = "moonlit", certainty = "probable" }
-- records/designs/1/impressions/3.toml
holder = "museum"
status = "located"
identified = { state = "dark" }
observed = { moon = "present" }
-- records/designs/1/impressions/4.toml
status = "stolen"
-- records/designs/r1/design.toml
number = "R 1"
titles = [{ text = "The Wall" }]
standing = "rejected"
why = "By another hand."
-- records/designs/r1/impressions/1.toml
holder = "museum"
status = "located"
"#;

/// The text of a page without its tags.
fn words_of(page: &str) -> String {
    let pieces = page.split('<').filter_map(|piece| piece.split_once('>'));
    pieces.map(|(_, text)| text).collect()
}

#[test]
fn a_heading_says_how_sure_an_identification_is_and_what_speaks_against_it() {
    let site = site_of(&[GATE]);
    let heading = |address: &str| words_of(page(&site, address));
    assert!(heading("impression/1.1/").contains("State i/ii."));
    assert!(heading("impression/1.2/").contains("State ii/ii (probable)."));
    assert!(heading("impression/1.3/").contains("State i/ii (contradicted by what was seen)."));
}

/// A list that files a sheet under a state or a printing repeats what its caption says of the identification.
#[test]
fn lists_under_a_state_or_printing_say_how_sure_each_identification_is() {
    let loose = "-- records/exhibitions.toml\n[tower]\ntitle = \"In the Tower\"\n\
         -- records/designs/2/design.toml\ntitles = [{ text = \"The Mill\" }]\n\
         printings = [{ key = \"own\", name = \"Own printing\", kind = \"artist\" }, { key = \"late\", kind = \"posthumous\" }]\n\
         -- records/designs/2/impressions/1.toml\nholder = \"museum\"\nstatus = \"located\"\n\
         exhibited = [{ exhibition = \"tower\" }]\n\
         identified = { printing = \"own\", certainty = \"possible\" }\n";
    let site = site_of(&[GATE, loose]);
    let listed = words_of(page(&site, "design/1/"));
    for sheet in [
        "1.1 Town Museum",
        "1.2 (probable) Town Museum",
        "1.3 (contradicted by what was seen) ",
    ] {
        assert!(listed.contains(sheet), "{sheet}: {listed}");
    }
    assert!(words_of(page(&site, "design/2/")).contains("2.1 (possible) Town Museum"));
    let holder = words_of(page(&site, "holder/museum/"));
    for sheet in [
        "1.1i/ii",
        "1.2ii/ii (probable)",
        "1.3i/ii (contradicted by what was seen)",
    ] {
        assert!(holder.contains(sheet), "{sheet}: {holder}");
    }
    // Without a state the printing carries it.
    for address in ["holder/museum/", "exhibition/tower/"] {
        let list = words_of(page(&site, address));
        assert!(list.contains("2.1Own printing (possible)"), "{list}");
    }
}

#[test]
fn a_sheet_of_a_rejected_design_says_so_on_its_page_and_with_its_holder() {
    let site = site_of(&[GATE]);
    assert!(words_of(page(&site, "impression/r1.1/")).contains("Rejected. By another hand."));
    let holder = words_of(page(&site, "holder/museum/"));
    assert!(holder.contains("3 impressions of 1 design"), "{holder}");
    assert!(holder.contains("The Wall (rejected)"), "{holder}");
    assert!(!holder.contains("Not identified"), "{holder}");
}

#[test]
fn the_opening_page_counts_the_designs_that_are_accepted() {
    let site = site_of(&[GATE]);
    let opening = words_of(page(&site, ""));
    assert!(opening.contains("1 design."), "{opening}");
}

#[test]
fn a_stolen_sheet_carries_the_caution_and_no_other_does() {
    let site = site_of(&[GATE]);
    let is_cautioned = |address: &str| page(&site, address).contains("Recorded here as stolen.");
    assert!(is_cautioned("impression/1.4/"));
    assert!(!is_cautioned("impression/1.1/"));
}
