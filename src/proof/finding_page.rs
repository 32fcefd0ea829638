//! The page of a proof that shows the record of a finding, at the part that the finding is about.
//!
//! In: the path and the text of a record's file, and the line of the finding. Out: an address within the proof.
//! A record's page is named like its file, so no record has to be read, and a file that cannot be read has an address too.

use crate::page::Site;

/// The tables of a design's record whose entries have a place on its page, with what their ids begin with.
const PARTS: [(&str, &str); 5] = [
    ("[[points]]", "point"),
    ("[[states]]", "state"),
    ("[[printings]]", "printing"),
    ("[[variants]]", "variant"),
    ("[[matrices]]", "matrix"),
];

/// The address of the page, from the root of the proof: `/design/14/#point-moon`. `None` where the file belongs to no
/// page that is there.
pub(super) fn address(site: &Site, path: &str, text: &str, line: usize) -> Option<String> {
    let folder = folder(path)?;
    let html = site.files.get(&format!("{folder}index.html"))?;
    let part = part(text, line)
        .filter(|id| String::from_utf8_lossy(html).contains(&format!("id=\"{id}\"")))
        .map(|id| format!("#{id}"));
    Some(format!("/{folder}{}", part.unwrap_or_default()))
}

/// Whether a file's record has its page at an address, from the root of the proof: `/design/14/`.
pub(super) fn is_shown_at(path: &str, address: &str) -> bool {
    folder(path).is_some_and(|folder| folder == address.trim_start_matches('/'))
}

/// The folder of the page of a file's record: `design/14/` for `records/designs/14/design.toml`.
fn folder(path: &str) -> Option<String> {
    let parts: Vec<&str> = path.split('/').collect();
    let name = |file: &str| file.split('.').next().unwrap_or_default().to_owned();
    Some(match parts.as_slice() {
        ["catalogue.toml"] => String::new(),
        ["records", "literature.bib"] => "literature/".to_owned(),
        ["records", "exhibitions.toml"] => "exhibitions/".to_owned(),
        ["records", "designs", design, "impressions", file] => {
            format!("impression/{design}.{}/", name(file))
        }
        ["records", "designs", design, ..] => format!("design/{design}/"),
        ["records", "holders", file] => format!("holder/{}/", name(file)),
        ["records", "people", file] => format!("person/{}/", name(file)),
        ["records", "marks", file] => format!("mark/{}/", name(file)),
        ["records", "pages", file] => format!("page/{}/", name(file)),
        _ => return None,
    })
}

/// The id of the part of a design in whose table a line stands.
fn part(text: &str, line: usize) -> Option<String> {
    let is_head = |line: &&str| line.trim_start().starts_with('[');
    let lines: Vec<&str> = text.lines().collect();
    let above = lines.get(..line.min(lines.len()))?;
    let begins = above.iter().rposition(is_head)?;
    let (_, kind) = PARTS
        .iter()
        .find(|(head, _)| above.get(begins).is_some_and(|l| l.trim() == *head))?;
    let table = lines.iter().skip(begins + 1).take_while(|l| !is_head(l));
    let key = table.filter_map(|line| {
        let (name, value) = line.split_once('=')?;
        (name.trim() == "key").then(|| value.trim().trim_matches('"'))
    });
    key.take(1).last().map(|key| format!("{kind}-{key}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    const DESIGN: &str = "titles = []\n[[points]]\nkey = \"moon\"\nask = \"?\"\n\n[[states]]\nshows = { moon = \"x\" }\nkey = \"dark\"\n";

    fn site() -> Site {
        let mut site = Site::default();
        for (path, text) in [
            ("index.html", ""),
            ("design/14/index.html", "<p id=\"state-dark\">"),
            ("impression/14.1/index.html", ""),
            ("holder/museum/index.html", ""),
            ("literature/index.html", ""),
        ] {
            site.files.insert(path.to_owned(), text.into());
        }
        site
    }

    #[test]
    fn a_finding_leads_to_the_page_of_its_record() {
        let at = |path: &str, line| address(&site(), path, DESIGN, line);
        let is = |address: &str| Some(address.to_owned());
        assert_eq!(at("catalogue.toml", 9), is("/"));
        assert_eq!(at("records/designs/14/design.toml", 1), is("/design/14/"));
        assert_eq!(at("records/designs/14/design.md", 1), is("/design/14/"));
        assert_eq!(
            at("records/designs/14/impressions/1.toml", 1),
            is("/impression/14.1/")
        );
        assert_eq!(at("records/holders/museum.toml", 1), is("/holder/museum/"));
        assert_eq!(at("records/literature.bib", 1), is("/literature/"));
        assert!(is_shown_at(
            "records/designs/14/impressions/1.toml",
            "/impression/14.1/"
        ));
        assert!(!is_shown_at(
            "records/designs/14/impressions/1.toml",
            "/design/14/"
        ));
        assert!(is_shown_at("catalogue.toml", "/"));
        assert!(!is_shown_at("themes/laid/pages/text.html", "/"));
        // No page, and no record.
        assert_eq!(at("records/designs/15/design.toml", 1), None);
        assert_eq!(at("themes/laid/pages/text.html", 1), None);
    }

    #[test]
    fn it_leads_to_the_part_whose_table_holds_the_line_where_the_page_shows_it() {
        let at = |line| address(&site(), "records/designs/14/design.toml", DESIGN, line).unwrap();
        assert_eq!(at(7), "/design/14/#state-dark");
        assert_eq!(at(8), "/design/14/#state-dark");
        // The page has no place for the point.
        assert_eq!(at(4), "/design/14/");
        assert_eq!(at(99), "/design/14/#state-dark");
    }
}
