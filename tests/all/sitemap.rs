//! The site map: every page once, none that only leads elsewhere, absolute addresses.

use std::collections::BTreeSet;

use crate::pages::{FERRY, site_of};

/// The texts of all elements of a name.
fn texts(xml: &str, name: &str) -> Vec<String> {
    let opening = format!("<{name}>");
    let parts = xml.split(&opening).skip(1);
    let texts = parts.map(|rest| rest.split("</").next().unwrap());
    texts.map(|text| text.replace("&amp;", "&")).collect()
}

fn settings(address: &str) -> String {
    format!(
        "-- catalogue.toml\ntitle = \"Prints\"\nsiglum = \"P\"\nartist = \"a\"\nlanguage = \"en\"\n\
         address = \"{address}\"\nedition = \"3\"\ndated = \"2026-10-15\"\n\
         -- records/people/a.toml\nname = \"A. Artist\"\n"
    )
}

/// Two records of one sheet: the second has no page of its own.
const JOINED: &str = "-- records/designs/1/impressions/2.toml\nstatus = \"untraced\"\n\
    same_as = [{ impression = \"1.1\" }]\n";

#[test]
fn every_page_stands_in_the_site_map_once_and_none_that_leads_elsewhere() {
    let site = site_of(&[FERRY, JOINED, &settings("https://prints.example.org/all/")]);
    let map = std::str::from_utf8(&site.files["sitemap.xml"]).unwrap();
    let listed = texts(map, "loc");
    let unique: BTreeSet<&str> = listed.iter().map(String::as_str).collect();
    assert_eq!(unique.len(), listed.len());
    let base = "https://prints.example.org/all/";
    let pages = site
        .files
        .keys()
        .filter_map(|path| path.strip_suffix("index.html"));
    let others = ["search/", "impression/1.2/"];
    let expected: BTreeSet<String> = pages
        .filter(|page| !others.contains(page))
        .map(|page| format!("{base}{page}"))
        .collect();
    let found: BTreeSet<String> = listed.iter().cloned().collect();
    assert_eq!(found, expected);
    assert!(found.contains(base) && found.contains(&format!("{base}impression/1.1/")));
    let dates: BTreeSet<String> = texts(map, "lastmod").into_iter().collect();
    assert_eq!(dates, BTreeSet::from(["2026-10-15".to_owned()]));
    assert!(!site.files.contains_key("robots.txt"));
}

/// RFC 9309, section 2.3: `robots.txt` is read at the root of a host, and nowhere else.
#[test]
fn at_the_root_of_a_host_a_file_for_robots_names_the_site_map() {
    let site = site_of(&[FERRY, &settings("https://prints.example.org")]);
    let robots = std::str::from_utf8(&site.files["robots.txt"]).unwrap();
    assert_eq!(
        robots,
        "User-agent: *\nAllow: /\n\nSitemap: https://prints.example.org/sitemap.xml\n"
    );
}
