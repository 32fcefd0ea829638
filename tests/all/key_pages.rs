//! The identification key of a design, and its examination sheet.

use crate::pages::{FERRY, page, site_of};

#[test]
fn a_key_asks_and_says_what_a_sheet_is_consistent_with() {
    let site = site_of(&[FERRY]);
    let key = page(&site, "design/1/key/");
    assert!(key.contains("Is there a moon?"));
    assert!(key.contains("<span class=\"seen\">present</span>"));
    assert!(key.contains("consistent with state"));
    assert!(page(&site, "design/1/").contains("href=\"../../design/1/key/\""));
    let sheet = page(&site, "design/1/key/sheet/");
    assert!(sheet.contains("Is there a moon?"));
    assert!(sheet.contains("cannot be seen"));
}

#[test]
fn a_design_with_nothing_to_look_at_has_no_key() {
    let site = site_of(&[r#"
-- records/designs/2/design.toml
titles = [{ text = "The Lock" }]
[[states]]
key = "only"
"#]);
    assert!(!site.files.contains_key("design/2/key/index.html"));
    assert!(!page(&site, "design/2/").contains("key/"));
}

#[test]
fn a_key_asks_nothing_private() {
    let site = site_of(&[r#"
-- records/designs/3/design.toml
titles = [{ text = "The Bridge" }]
[[points]]
key = "lamps"
ask = "How many lamps?"
kind = "count"
rests_on = "matrix"
[[points]]
key = "nick"
ask = "Is there a nick in SECRET-PLACE?"
kind = "presence"
rests_on = "matrix"
box = [10, 10, 10, 10]
private = ["box"]
[[states]]
key = "one"
shows = { lamps = 2, nick = "absent" }
[[states]]
key = "two"
shows = { lamps = 4711, nick = "present" }
private = ["shows"]
-- records/designs/3/impressions/1.toml
status = "located"
publish = false
observed = { lamps = 815 }
"#]);
    for address in ["design/3/key/", "design/3/key/sheet/"] {
        let text = page(&site, address);
        assert!(text.contains("How many lamps?"));
        assert!(!text.contains("4711"), "what a state shows in private");
        assert!(!text.contains("815"), "what was seen on a sheet not shown");
    }
}
