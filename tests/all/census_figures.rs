//! The figures of the census: the target of the link on each.

use keyblock::page::Site;

use crate::census_pages::{FERRY, part};
use crate::pages::{page, site, site_of};
use crate::program::{copy_of, keyblock, text};
use crate::small::lay_down;

/// The cells of figures in a piece of a page.
pub fn cells(piece: &str) -> impl Iterator<Item = &str> {
    let cells = piece.split("<td class=\"figure\">").skip(1);
    cells.map(|cell| cell.split("</td>").next().unwrap())
}

/// The text of a cell, without tags.
pub fn shown(cell: &str) -> String {
    let pieces = cell.split('<').enumerate();
    pieces
        .map(|(at, piece)| match piece.split_once('>') {
            Some((_, text)) if at > 0 => text,
            _ => piece,
        })
        .collect()
}

/// The target of a link on a page: a page and an id on it, both of which must exist.
fn target<'s>(site: &'s Site, from: &str, cell: &'s str) -> (String, &'s str) {
    let href = cell.split("<a href=\"").nth(1).expect(cell);
    let href = href.split('"').next().unwrap();
    let (to, fragment) = href.split_once('#').unwrap_or((href, ""));
    let mut at: Vec<&str> = from.split('/').filter(|step| !step.is_empty()).collect();
    for step in to.split('/').filter(|step| !step.is_empty()) {
        match step {
            ".." => drop(at.pop()),
            "." => {}
            step => at.push(step),
        }
    }
    let address = format!("{}/", at.join("/"));
    let id = format!("id=\"{fragment}\"");
    let there = page(site, &address);
    assert!(!fragment.is_empty(), "{from}: {href} leads to a whole page");
    assert!(there.contains(&id), "{from}: nothing at {href}");
    (address, fragment)
}

/// The addresses of the census pages of a site.
pub fn censuses(site: &Site) -> Vec<&str> {
    let pages = site.files.keys();
    pages
        .filter_map(|path| path.strip_suffix("index.html"))
        .filter(|address| address.ends_with("census/"))
        .collect()
}

/// A figure without a link has its records beside it.
#[test]
fn every_figure_leads_to_the_records_it_counts() {
    let folder = copy_of("demo-site");
    let site = site(folder.path());
    let mut figures = 0;
    for address in censuses(&site) {
        let text = page(&site, address);
        for kind in ["census", "crossing"] {
            let opening = format!("<table class=\"{kind}\">");
            let tables = text.split(&opening).skip(1);
            for table in tables.map(|table| table.split("</table>").next().unwrap()) {
                // The numbers declared and printed are not counts of records, so they have no link.
                let rows = table.split("<tr>").skip(1);
                let is_of_editions = table.contains("<th class=\"figure\" scope=\"col\">Declared");
                for cell in rows.flat_map(|row| cells(row).skip(if is_of_editions { 2 } else { 0 }))
                {
                    if shown(cell).contains(|c: char| ('1'..='9').contains(&c)) {
                        figures += 1;
                        match cell.split_once("<span class=\"of-cell\">") {
                            Some((_, beside)) => assert!(!shown(beside).is_empty(), "{cell}"),
                            None => drop(target(&site, address, cell)),
                        }
                    }
                }
            }
        }
    }
    assert!(figures > 400, "only {figures} figures");
}

#[test]
fn a_total_leads_to_all_sheets_and_a_status_to_its_own() {
    let site = site_of(&[FERRY]);
    let all = part(page(&site, "census/"), "by-design");
    let foot = &all[all.find("<tfoot>").unwrap()..];
    let leads: Vec<_> = cells(foot)
        .map(|cell| target(&site, "census/", cell).1)
        .collect();
    assert_eq!(leads, ["by-status", "status-located", "status-untraced"]);
    let row = &all[all.find("<tbody>").unwrap()..all.find("</tbody>").unwrap()];
    let leads: Vec<_> = cells(row)
        .map(|cell| target(&site, "census/", cell))
        .collect();
    assert!(leads.iter().all(|(page, _)| page == "design/1/census/"));
    assert_eq!(leads[2].1, "status-untraced");
}

#[test]
fn the_figures_of_a_series_lead_to_its_records_by_status() {
    let folder_of_two = "-- records/designs/2/design.toml\ntitles = [{ text = \"The Crane\" }]\n\
         series = { name = \"The Quays!\" }\n\
         -- records/designs/2/impressions/1.toml\nstatus = \"untraced\"\n";
    let site = site_of(&[FERRY, folder_of_two]);
    let series = part(page(&site, "census/"), "by-series");
    let leads: Vec<_> = cells(series)
        .filter(|cell| cell.contains("<a "))
        .map(|cell| target(&site, "census/", cell).1)
        .collect();
    // Two names with one form each keep a place of their own.
    assert_eq!(
        leads,
        [
            "series-the-quays",
            "series-the-quays.located",
            "series-the-quays.untraced",
            "series-2.",
            "series-2..untraced"
        ]
    );
    let untraced = &series[series.find("id=\"series-the-quays.untraced\"").unwrap()..];
    let untraced = untraced.split("</span>").next().unwrap();
    assert!(untraced.contains(">1.4</a>") && !untraced.contains(">1.1<"));
}

/// A design of the same series that is not, or no longer, accepted.
fn another(standing: &str) -> String {
    format!(
        "-- records/designs/2/design.toml\nnumber = \"R 1\"\ntitles = [{{ text = \"The Crane\" }}]\n\
         series = {{ name = \"=The Quays\" }}\nstanding = \"{standing}\"\nwhy = \"By another hand.\"\n\
         -- records/designs/2/impressions/1.toml\nstatus = \"located\"\nholder = \"museum\"\n\
         sightings = [{{ date = \"1975\" }}]\n"
    )
}

/// Works rejected as not by the artist stand apart in a catalogue raisonné (common practice, no source).
#[test]
fn what_is_not_accepted_stands_apart_and_in_no_total() {
    for standing in ["rejected", "withdrawn"] {
        let site = site_of(&[FERRY, &another(standing)]);
        let census = page(&site, "census/");
        assert!(census.contains("4 to 5 impressions of"), "{census}");
        assert!(!part(census, "by-design").contains("The Crane"));
        let apart = part(census, "set-apart");
        assert!(
            apart.contains("The Crane") && apart.contains("are in no total"),
            "{apart}"
        );
        assert!(apart.contains("href=\"../design/2/census/#status-located\""));
        for table in ["by-series", "by-status", "by-holder", "seen"] {
            let table = part(census, table);
            assert!(
                !table.contains("2.1") && !table.contains("1970–1979"),
                "{table}"
            );
        }
        let own = page(&site, "design/2/census/");
        assert!(own.contains("its impressions are in no total"), "{own}");
        // The page of a holder lists all of its sheets.
        assert!(page(&site, "holder/museum/").contains("The Crane"));
    }
    let doubtful = site_of(&[FERRY, &another("doubtful")]);
    let census = page(&doubtful, "census/");
    assert!(census.contains("5 to 6 impressions of"), "{census}");
    assert!(!census.contains("id=\"set-apart\""));
}

/// `census --json` counts the sheets of rejected and withdrawn designs and leaves out single withdrawn
/// impressions (docs/definitions.md, "Which records count"); a note beside the figure explains this.
#[test]
fn the_command_counts_what_is_not_accepted_and_says_so() {
    let folder = lay_down(&[FERRY, &another("rejected")]);
    let counted = |words: &[&str]| {
        let dir = text(folder.path());
        let counted = keyblock(&[&["census", "--in", dir], words].concat());
        assert_eq!(counted.code, Some(0), "{}", counted.err);
        counted.out
    };
    let document: serde_json::Value = serde_json::from_str(&counted(&["--json"])).unwrap();
    assert_eq!(document["sheets"]["at_most"], 6);
    let said = "Rejected or withdrawn, and counted all the same: R 1\n";
    assert!(counted(&[]).contains(said));
    assert!(counted(&["--series", "=The Quays"]).contains(said));
    assert!(!counted(&["1"]).contains("Rejected or withdrawn"));
}
