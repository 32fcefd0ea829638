//! Marks with records of their own: their pages, what sheets take from them, and what is private of them.

use keyblock::model::codes::Code;
use keyblock::study::marks::{MarkIdentity, shared};

use crate::pages::{page, site_of};
use crate::small::{codes, studied};

const SEAL: &str = r#"
-- records/literature.bib
@book{repertory, author = {Stamper, S.}, title = {Marks}, year = {1950}}
-- records/people/dealer.toml
name = "Dora Dealer"
-- records/marks/studio-seal.toml
kind = "seal"
text = "TA"
size = [9, 8]
colour = "red"
reference = { cite = "repertory", at = "p. 4", number = "S. 12" }
users = [{ person = "artist", from = "1927", to = "1950" }, { person = "dealer", from = "1951", to = "1960" }]
conditions = [{ key = "whole", summary = "The frame whole.", to = "1936" }, { key = "chipped", summary = "The frame chipped.", from = "1936" }]
-- records/marks/studio-seal.md
Kept in [](person:dealer)'s desk.
-- records/designs/1/design.toml
titles = [{ text = "The Ferry" }]
printings = [{ key = "own", name = "Own printing", kind = "artist", date = "1937" }, { key = "late", name = "Late printing", kind = "posthumous", date = "1955" }]
-- records/designs/1/impressions/1.toml
status = "untraced"
identified = { printing = "own" }
marks = [{ mark = "studio-seal", condition = "chipped", applied_by = "artist", applied = "1938", note = "Very faint." }]
-- records/designs/1/impressions/2.toml
status = "untraced"
identified = { printing = "late" }
marks = [{ mark = "studio-seal", place = "lower right" }]
-- records/pages/seals.md
# Seals
See [](mark:studio-seal).
"#;

#[test]
fn a_mark_has_a_page_with_users_conditions_printings_and_sheets() {
    let site = site_of(&[SEAL]);
    let html = page(&site, "mark/studio-seal/");
    for told in [
        "Seal “TA”",
        "9 × 8 mm",
        "no. S. 12",
        "Dora Dealer",
        "1951",
        "The frame chipped",
        "Own printing",
        "Late printing",
        "alone it establishes neither a user nor a date",
        "href=\"../../impression/1.1/\"",
        "href=\"../../impression/1.2/\"",
        "Kept in ",
        "id=\"condition-chipped\"",
    ] {
        assert!(html.contains(told), "no {told:?} in {html}");
    }
    let mentioned = html.contains("href=\"../../page/seals/\"");
    assert!(mentioned, "the page whose text links to it is named");
}

#[test]
fn a_mark_of_one_user_has_no_caution() {
    let alone = SEAL.replace(
        ", { person = \"dealer\", from = \"1951\", to = \"1960\" }",
        "",
    );
    let site = site_of(&[&alone]);
    let html = page(&site, "mark/studio-seal/");
    assert!(!html.contains("alone it establishes"));
}

#[test]
fn a_sheet_takes_from_the_record_what_its_mark_does_not_say() {
    let site = site_of(&[SEAL]);
    let html = page(&site, "impression/1.1/");
    for told in [
        "href=\"../../mark/studio-seal/\"",
        "“TA”",
        "red",
        "condition: ",
        "mark/studio-seal/#condition-chipped",
        "Very faint.",
    ] {
        assert!(html.contains(told), "no {told:?} in {html}");
    }
}

#[test]
fn the_index_has_one_entry_for_a_recorded_mark() {
    let site = site_of(&[SEAL]);
    let html = page(&site, "marks/");
    let (_, seals) = html.split_once("id=\"seal\"").expect("seals are listed");
    let (seals, _) = seals.split_once("</section>").unwrap();
    assert_eq!(seals.matches("<li>").count(), 1, "{seals}");
    assert!(seals.contains("1.1") && seals.contains("1.2"), "{seals}");
}

#[test]
fn those_who_used_a_mark_and_works_that_have_it_lead_back_to_it() {
    let site = site_of(&[SEAL]);
    for address in ["person/dealer/", "lit/repertory/"] {
        let html = page(&site, address);
        assert!(
            html.contains("href=\"../../mark/studio-seal/\""),
            "{address}"
        );
    }
}

#[test]
fn users_of_the_record_share_the_mark_though_no_sheet_names_them() {
    let (catalogue, _) = studied(&[SEAL]);
    let [mark] = shared(&catalogue).try_into().unwrap();
    let key = "studio-seal".parse().unwrap();
    assert_eq!(mark.identity, MarkIdentity::Record(key));
    let users: Vec<_> = mark
        .users
        .iter()
        .map(|u| (u.key.as_str(), u.sheets.len()))
        .collect();
    assert_eq!(users, [("artist", 1), ("dealer", 0)]);
}

#[test]
fn a_private_user_is_nowhere_in_the_site() {
    let private = SEAL.replace(
        "{ person = \"dealer\",",
        "{ private = [\"person\"], person = \"dealer\",",
    );
    let absent = SEAL.replace(
        ", { person = \"dealer\", from = \"1951\", to = \"1960\" }",
        "",
    );
    let (private, absent) = (site_of(&[&private]), site_of(&[&absent]));
    for address in [
        "mark/studio-seal/",
        "impression/1.1/",
        "marks/",
        "person/dealer/",
    ] {
        assert_eq!(page(&private, address), page(&absent, address), "{address}");
    }
}

#[test]
fn a_mark_with_its_record_private_acts_as_absent() {
    let named = "{ mark = \"studio-seal\", place";
    let private = SEAL.replace(
        named,
        "{ private = [\"mark\"], mark = \"studio-seal\", place",
    );
    let absent = SEAL.replace(named, "{ place");
    let (private, absent) = (site_of(&[&private]), site_of(&[&absent]));
    for address in ["mark/studio-seal/", "impression/1.2/", "marks/"] {
        assert_eq!(page(&private, address), page(&absent, address), "{address}");
    }
}

#[test]
fn a_mark_within_its_time_is_no_doubt_and_one_outside_it_is() {
    let of_marks = |literal: &str| {
        let found = codes(&[literal]);
        let of_marks = [
            Code::MarkOutOfTime,
            Code::MarkUserUnlisted,
            Code::MarkOtherKind,
        ];
        found
            .into_iter()
            .filter(|c| of_marks.contains(c))
            .collect::<Vec<_>>()
    };
    assert_eq!(of_marks(SEAL), []);
    let early = SEAL.replace("applied = \"1938\"", "applied = \"1930\"");
    assert_eq!(of_marks(&early), [Code::MarkOutOfTime]);
    let loose = SEAL.replace("applied = \"1938\"", "applied = \"1935~\"");
    assert_eq!(of_marks(&loose), []);
}
