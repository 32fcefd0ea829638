//! Records that `same_as` joins (docs/definitions.md, "The page of a sheet" and "Records that may be one sheet"): one
//! page with what all of them say, other addresses that lead there, and doubts where they contradict each other.

use keyblock::model::codes::Code;
use keyblock::model::finding::Finding;
use keyblock::page::Site;

use crate::concealed::difference;
use crate::pages::{page, site_of};
use crate::small::{audited, studied};

const GROUND: &str = r#"
-- records/holders/museum.toml
name = "Harbour Museum"
kind = "museum"
place = "Northport"
-- records/holders/library.toml
name = "Town Library"
kind = "library"
place = "Southport"
-- records/holders/old-museum.toml
name = "Old Museum"
kind = "museum"
successor = { holder = "museum", date = "1987" }
-- records/holders/house.toml
name = "Auction House"
kind = "trade"
-- records/people/collector.toml
name = "Col Lector"
-- records/people/other.toml
name = "Otto Other"
-- records/people/editor.toml
name = "Ed Itor"
-- records/literature.bib
@book{list, author = {Anonymous}, title = {A List}, year = {1961}}
-- records/exhibitions.toml
[early]
title = "Early show"
venue = "museum"
date = "1931-05-01/1931-06-30"
[meanwhile]
title = "Meanwhile show"
venue = "library"
date = "1931-06-15/1931-08-01"
[late]
title = "Late show"
venue = "museum"
date = "1955"
-- records/designs/1/pictures/1.jpg
Not opened by these tests.
-- records/designs/1/pictures/2.jpg
Not opened by these tests.
-- records/designs/1/design.toml
number = "R 1"
titles = [{ text = "The Ferry" }]
points = [{ key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" }]
states = [{ key = "dark", shows = { moon = "absent" } }, { key = "moonlit", shows = { moon = "present" } }]
printings = [{ key = "own", kind = "artist", states = "all", edition = 50 }]
"#;

/// The records of design 1, from the first.
fn records(of: &[&str]) -> String {
    let numbered = (1..).zip(of);
    let record =
        |(n, text): (u32, &&str)| format!("-- records/designs/1/impressions/{n}.toml\n{text}\n");
    numbered.map(record).collect()
}

fn site(of: &[&str]) -> Site {
    site_of(&[GROUND, &records(of)])
}

/// The doubts that joined records contradict each other.
fn doubts(of: &[&str]) -> Vec<Finding> {
    let (_, mut findings) = audited(&[GROUND, &records(of)]);
    findings.retain(|f| f.code == Code::SameSheetContradicted);
    findings
}

/// The message of the one doubt that two joined records give.
fn doubt(one: &str, other: &str) -> String {
    let same = format!("same_as = [{{ impression = \"1.1\" }}]\n{other}");
    let found = doubts(&[one, &same]);
    let [finding] = &found[..] else {
        panic!("{one}\n{same}\n{found:#?}");
    };
    // Without the link nothing says so.
    assert!(doubts(&[one, other]).is_empty());
    finding.message.clone()
}

/// Two joined records that nothing contradicts.
fn agree(one: &str, other: &str) {
    let same = format!("same_as = [{{ impression = \"1.1\" }}]\n{other}");
    let found = doubts(&[one, &same]);
    assert!(found.is_empty(), "{one}\n{same}\n{found:#?}");
}

/// The text of a page without its elements.
fn plain(html: &str) -> String {
    let mut out = String::new();
    let mut is_tag = false;
    for c in html.chars() {
        match c {
            '<' => is_tag = true,
            '>' => is_tag = false,
            _ if !is_tag => out.push(c),
            _ => {}
        }
    }
    out.split_whitespace().collect::<Vec<_>>().join(" ")
}

const FOUND: &str = r#"
status = "located"
holder = "museum"
accession = "1962.44"
numbering = "12/50"
identified = { state = "dark", printing = "own" }
exhibited = [{ exhibition = "late", at = "no. 9" }]
provenance = [
  { owner = "collector", to = "1950" },
  { owner = "museum", from = "1950", how = "gift", direct = true },
]
sightings = [{ date = "2018", by = "editor", basis = "first-hand" }]
pictures = [{ file = "pictures/1.jpg", rights = "CC0-1.0" }]
"#;

const REPORTED: &str = r#"
status = "untraced"
same_as = [{ impression = "1.2", why = "The tear is at the same place." }]
condition = "Torn at the left."
exhibited = [{ exhibition = "early", at = "no. 71" }, { exhibition = "late", at = "no. 9" }]
literature = [{ cite = "list", at = "p. 4" }]
observed = { moon = { is = "absent", basis = "photograph", certainty = "probable" } }
provenance = [
  { agent = "house", from = "1931-05-12", how = "sale", lot = "44" },
  { owner = "collector", to = "1950" },
]
sightings = [{ date = "1931", basis = "literature", cite = "list" }]
pictures = [{ file = "pictures/2.jpg", rights = "CC0-1.0" }]
"#;

#[test]
fn located_wins_over_untraced_then_the_first_number() {
    let page_of = |of: &[&str]| {
        let (_, studies) = studied(&[GROUND, &records(of)]);
        studies.joined.page_of(&"1.1".parse().unwrap()).to_string()
    };
    let all = |statuses: [&str; 3]| {
        let [one, two, three] = statuses.map(|s| format!("status = \"{s}\"\n"));
        page_of(&[
            &format!("{one}same_as = [{{ impression = \"1.2\" }}, {{ impression = \"1.3\" }}]"),
            &two,
            &three,
        ])
    };
    assert_eq!(all(["untraced", "untraced", "located"]), "1.3");
    assert_eq!(all(["untraced", "located", "located"]), "1.2");
    assert_eq!(all(["destroyed", "untraced", "located"]), "1.3");
    assert_eq!(all(["untraced", "stolen", "untraced"]), "1.2");
    assert_eq!(all(["untraced", "untraced", "untraced"]), "1.1");
    // A rejected record comes after all others; a withdrawn one is not joined.
    let same = "same_as = [{ impression = \"1.2\" }]\nstatus = \"located\"\n";
    let lost = "status = \"untraced\"";
    assert_eq!(
        page_of(&[&format!("{same}standing = \"rejected\""), lost]),
        "1.2"
    );
    assert_eq!(
        page_of(&[&format!("{same}standing = \"withdrawn\""), lost]),
        "1.1"
    );
}

#[test]
fn the_page_of_a_sheet_has_the_provenance_of_all_its_records() {
    let site = site(&[REPORTED, FOUND]);
    let text = plain(page(&site, "impression/1.2/"));
    let part = text.split("Earliest first").next().unwrap();
    let (_, part) = part.rsplit_once("Provenance").unwrap();
    let places = [
        "Auction House",
        "{R 1.1}",
        "Col Lector",
        "{R 1.2, R 1.1};",
        "Harbour Museum",
        "{R 1.2}.",
    ];
    let mut from = 0;
    for place in places {
        let at = part[from..]
            .find(place)
            .unwrap_or_else(|| panic!("{place} in {part}"));
        from += at + place.len();
    }
    assert_eq!(part.matches("Col Lector").count(), 1, "{part}");
}

#[test]
fn that_an_entry_came_straight_is_said_only_where_it_still_follows() {
    let one = "status = \"located\"\nprovenance = [\n{ owner = { name = \"First Owner\" }, from = \"1920\" },\n\
               { owner = { name = \"Third Owner\" }, from = \"1940\", direct = true }]";
    let other = "status = \"untraced\"\nsame_as = [{ impression = \"1.1\" }]\n\
                 provenance = [{ owner = { name = \"Second Owner\" }, from = \"1930\" }]";
    let text = plain(page(&site(&[one, other]), "impression/1.1/"));
    let (_, part) = text.split_once("First Owner").unwrap();
    let (before, _) = part.split_once("Third Owner").unwrap();
    assert!(before.contains("Second Owner"), "{part}");
    assert!(!before.contains(';'), "{part}");
    let alone = plain(page(&site(&[one]), "impression/1.1/"));
    assert!(
        alone.contains("First Owner, from 1920; Third Owner"),
        "{alone}"
    );
}

#[test]
fn the_page_of_a_sheet_has_sightings_exhibitions_literature_and_pictures_of_all_its_records() {
    let site = site(&[REPORTED, FOUND]);
    let html = page(&site, "impression/1.2/");
    let text = plain(html);
    let part = |from: &str, to: &str| {
        let (_, rest) = text
            .split_once(from)
            .unwrap_or_else(|| panic!("{from}: {text}"));
        rest.split(to).next().unwrap().to_owned()
    };
    let seen = part(" Recorded sightings ", " Exhibitions ");
    assert!(
        seen.find("1931").unwrap() < seen.find("2018").unwrap(),
        "{seen}"
    );
    assert!(
        seen.contains("{R 1.1}") && seen.contains("{R 1.2}"),
        "{seen}"
    );
    let shown = part(" Exhibitions ", " Literature ");
    assert!(shown.find("Early show").unwrap() < shown.find("Late show").unwrap());
    assert_eq!(shown.matches("Late show").count(), 1, "{shown}");
    assert!(shown.contains("no. 9 {R 1.2, R 1.1}"), "{shown}");
    assert!(shown.contains("no. 71 {R 1.1}"), "{shown}");
    assert!(part(" Literature ", " From record ").contains("p. 4 {R 1.1}"));
    for picture in ["1.1-recto", "1.2-recto"] {
        assert!(
            html.contains(&format!("picture/{picture}.jpg")),
            "{picture}"
        );
    }
    assert!(text.contains("Recto {R 1.1}"), "{text}");
}

#[test]
fn what_another_record_says_of_the_sheet_itself_stands_in_a_part_of_its_own() {
    let site = site(&[REPORTED, FOUND]);
    let text = plain(page(&site, "impression/1.2/"));
    let (own, other) = text.split_once("From record R 1.1").unwrap();
    assert!(own.contains("1962.44") && !own.contains("Torn at the left."));
    assert!(other.contains("Torn at the left."), "{other}");
    assert!(other.contains("from a photograph"), "{other}");
    assert!(
        other.contains("The same impression as R 1.1: The tear is at the same place."),
        "{other}"
    );
    assert!(
        own.contains("R 1.2 and R 1.1 describe the same impression."),
        "{own}"
    );
}

#[test]
fn the_address_of_another_record_leads_to_the_page_of_the_sheet() {
    let site = site(&[REPORTED, FOUND]);
    let html = page(&site, "impression/1.1/");
    assert!(
        html.contains("<meta http-equiv=\"refresh\" content=\"0; url=../../impression/1.2/\">"),
        "{html}"
    );
    assert!(
        html.contains(
            "<link rel=\"canonical\" href=\"https://prints.example.org/impression/1.2/\">"
        )
    );
    let text = plain(html);
    assert!(
        text.contains("R 1.1 and R 1.2 describe the same impression; see R 1.2."),
        "{text}"
    );
    for word in ["Torn at the left.", "Early show", "Col Lector"] {
        assert!(!html.contains(word), "{word}");
    }
}

#[test]
fn every_link_and_list_names_the_one_page() {
    let text = "-- records/pages/about.md\n# About\n\nSee [](impression:1.1) and [the sheet](impression:1.1).\n";
    let site = site_of(&[GROUND, &records(&[REPORTED, FOUND]), text]);
    // The rules for servers name the address that leads on, and data for programs that of every record.
    let is_data = |path: &str| {
        path.contains("redirects") || path.starts_with("data/") || path.ends_with(".xml")
    };
    let files = site.files.iter().filter(|(path, _)| !is_data(path));
    for (path, bytes) in files {
        let text = std::str::from_utf8(bytes).unwrap_or_default();
        assert!(!text.contains("impression/1.1/"), "{path} leads to 1.1");
    }
    // Both records name the collector, the exhibition and the work; each names the sheet once.
    for address in [
        "person/collector/",
        "exhibition/late/",
        "owners/",
        "exhibition/early/",
        "census/",
        "design/1/census/",
    ] {
        let html = page(&site, address);
        let links = html.matches("impression/1.2/\">R 1.2</a>").count();
        assert!(links >= 1, "{address} does not name the sheet");
    }
    for address in [
        "person/collector/",
        "exhibition/late/",
        "exhibition/early/",
        "lit/list/",
        "design/1/",
    ] {
        let text = plain(page(&site, address));
        assert!(!text.contains("R 1.1"), "{address}: {text}");
        let most = if address == "design/1/" { 6 } else { 2 };
        assert!(text.matches("R 1.2").count() <= most, "{address}: {text}");
    }
    // The page of the design collects what all records say of the sheet.
    let design = plain(page(&site, "design/1/"));
    for said in ["no. 71 (R 1.2)", "no. 9 (R 1.2)", "p. 4 (R 1.2)"] {
        assert_eq!(design.matches(said).count(), 1, "{said}: {design}");
    }
    assert!(page(&site, "page/about/").contains("impression/1.2/\">R 1.2</a>"));
    // The text of the page is told on the page of the sheet.
    assert!(page(&site, "impression/1.2/").contains("../../page/about/"));
}

#[test]
fn the_study_of_1933_to_1945_lists_a_sheet_once() {
    let one =
        "status = \"untraced\"\nsheet = { date = \"1930\" }\nsame_as = [{ impression = \"1.2\" }]";
    let other = "status = \"located\"\nholder = \"museum\"\nsheet = { date = \"1930\" }";
    let text = plain(page(&site(&[one, other]), "provenance/"));
    assert_eq!(text.matches("R 1.").count(), 1, "{text}");
    assert!(text.contains("R 1.2"), "{text}");
}

#[test]
fn an_unpublished_record_or_a_private_link_joins_nothing() {
    let found = "status = \"located\"\nholder = \"museum\"";
    let lost = "status = \"untraced\"\nprovenance = [{ owner = \"collector\", to = \"1930\" }]\n";
    let link = "same_as = [{ impression = \"1.2\" }]";
    let of = |first: &str| crate::concealed::site_of(&[GROUND, &records(&[first, found])]);
    let absent = of(lost);
    let private = of(&format!("{lost}{link}\nprivate = [\"same_as\"]"));
    assert_eq!(difference(&private, &absent), None);
    let text = |site: &crate::concealed::Site, at: &str| {
        String::from_utf8(site[&format!("{at}index.html")].clone()).unwrap()
    };
    let open = of(&format!("{lost}{link}"));
    assert!(text(&open, "impression/1.2/").contains("Col Lector"));
    let unpublished = of(&format!("{lost}{link}\npublish = false"));
    assert!(!unpublished.contains_key("impression/1.1/index.html"));
    let page = text(&unpublished, "impression/1.2/");
    assert!(!page.contains("Col Lector") && !page.contains("describe the same impression"));
}

#[test]
fn two_owners_at_once_are_a_doubt() {
    let had = |who: &str| {
        format!(
            "status = \"untraced\"\nprovenance = [{{ owner = \"{who}\", from = \"1930\", to = \"1940\" }}]"
        )
    };
    let told = doubt(&had("collector"), &had("other"));
    assert_eq!(
        told,
        "R 1.1 and R 1.2 are said to be one sheet, but R 1.1 was owned by Col Lector while R 1.2 was owned by Otto Other"
    );
    agree(&had("collector"), &had("collector"));
}

#[test]
fn two_states_are_a_doubt_where_both_are_certain() {
    let of = |state: &str, more: &str| {
        format!("status = \"untraced\"\nidentified = {{ state = \"{state}\"{more} }}")
    };
    let told = doubt(&of("dark", ""), &of("moonlit", ""));
    assert!(
        told.ends_with("R 1.1 is taken to be state i, R 1.2 state ii"),
        "{told}"
    );
    agree(
        &of("dark", ""),
        &of("moonlit", ", certainty = \"probable\""),
    );
}

#[test]
fn two_numbers_are_a_doubt() {
    let of = |number: &str| format!("status = \"untraced\"\nnumbering = \"{number}\"");
    let told = doubt(&of("12/50"), &of("13/50"));
    assert!(
        told.ends_with("R 1.1 is numbered 12/50, R 1.2 13/50"),
        "{told}"
    );
    agree(&of("12/50"), &of("12/50"));
}

#[test]
fn two_places_are_a_doubt() {
    let shown =
        |at: &str| format!("status = \"untraced\"\nexhibited = [{{ exhibition = \"{at}\" }}]");
    let told = doubt(&shown("early"), &shown("meanwhile"));
    assert!(told.contains("shown at the same time in"), "{told}");
    agree(&shown("early"), &shown("late"));
    let with = |holder: &str| format!("status = \"located\"\nholder = \"{holder}\"");
    let told = doubt(&with("museum"), &with("library"));
    assert!(
        told.contains("Harbour Museum") && told.contains("Town Library"),
        "{told}"
    );
    // A successor has what its predecessor had.
    agree(&with("museum"), &with("old-museum"));
}

#[test]
fn two_designs_are_a_doubt() {
    let other = "-- records/designs/2/design.toml\ntitles = [{ text = \"The Quay\" }]\n\
                 -- records/designs/2/impressions/1.toml\nstatus = \"untraced\"\nsame_as = [{ impression = \"1.1\" }]\n";
    let (_, findings) = audited(&[GROUND, &records(&["status = \"untraced\""]), other]);
    let found: Vec<&Finding> = findings
        .iter()
        .filter(|f| f.code == Code::SameSheetContradicted)
        .collect();
    assert_eq!(found.len(), 1, "{findings:#?}");
    assert!(found[0].message.ends_with("but they are of two designs"));
    assert!(found[0].help.as_deref().unwrap().contains("shares_sheet"));
}

#[test]
fn records_joined_through_others_are_held_to_the_same_reasons() {
    let found = doubts(&[
        "status = \"untraced\"\nnumbering = \"12/50\"\nsame_as = [{ impression = \"1.2\" }]",
        "status = \"untraced\"\nsame_as = [{ impression = \"1.3\" }]",
        "status = \"untraced\"\nnumbering = \"13/50\"",
    ]);
    assert_eq!(found.len(), 1, "{found:#?}");
    assert!(
        found[0]
            .message
            .starts_with("R 1.1 and R 1.3 are said to be one sheet")
    );
    // Withdrawn records are not compared.
    let withdrawn = doubts(&[
        "status = \"untraced\"\nnumbering = \"12/50\"\nsame_as = [{ impression = \"1.2\" }]",
        "status = \"untraced\"\nnumbering = \"13/50\"\nstanding = \"withdrawn\"",
    ]);
    assert!(withdrawn.is_empty(), "{withdrawn:#?}");
}
