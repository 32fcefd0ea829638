//! The pages of small catalogues: content that they must have, and content that they must never have.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use keyblock::model::theme::Theme;
use keyblock::page::{
    Alignments, Input, Pictures, PublishedPicture, PublishedSize, Site, ThemeFault, Tiles,
};

use crate::small;

/// A design with two states and an impression, for literals that need one.
pub const FERRY: &str = r#"
-- records/designs/1/design.toml
titles = [{ text = "The Ferry", lang = "en" }]
[[points]]
key = "moon"
ask = "Is there a moon?"
kind = "presence"
rests_on = "matrix"
[[states]]
key = "dark"
shows = { moon = "absent" }
[[states]]
key = "moonlit"
shows = { moon = "present" }
[[printings]]
key = "own"
kind = "artist"
states = "all"
-- records/designs/1/impressions/1.toml
status = "located"
holder = "museum"
accession = "1962.44"
identified = { state = "dark", printing = "own" }
observed = { moon = "absent" }
-- records/holders/museum.toml
name = "Harbour Museum"
kind = "museum"
place = "Northport"
"#;

fn example() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/example-catalogue")
}

/// The site of a catalogue on disk, every picture published in one size.
fn try_site(folder: &Path, change: impl FnOnce(&mut Theme)) -> Result<Site, ThemeFault> {
    // Pages are made of the sound records even where others have errors.
    let catalogue = keyblock::read::read(folder).catalogue;
    let (mut theme, _) = keyblock::read::theme(folder, &catalogue.settings.theme.value);
    change(&mut theme);
    let owner = keyblock::page::private_owner(&theme, catalogue.published_settings());
    let (public, studies) = small::published(catalogue, &owner);
    let pictures: Pictures = public
        .pictures()
        .map(|(key, _)| {
            let address = format!("picture/{}.jpg", key.to_string().replace('/', "-"));
            let size = PublishedSize {
                width: 480,
                height: 320,
                address,
            };
            let picture = PublishedPicture {
                width: 480,
                height: 320,
                sizes: vec![size],
                tiles: Tiles::default(),
            };
            (key, picture)
        })
        .collect();
    let exports = keyblock::exchange::exports(&public, &studies, &pictures);
    keyblock::press::site(&Input {
        public: &public,
        studies: &studies,
        pictures: &pictures,
        alignments: &Alignments::default(),
        exports: &exports,
        theme: &theme,
    })
}

pub fn site(folder: &Path) -> Site {
    try_site(folder, |_| ()).unwrap()
}

/// The site of a literal that has no errors.
pub fn site_of(literals: &[&str]) -> Site {
    let folder = small::lay_down(literals);
    small::sound(folder.path());
    site(folder.path())
}

/// The same in a theme that `change` makes of the built-in one.
pub fn site_with(literals: &[&str], change: impl FnOnce(&mut Theme)) -> Site {
    let folder = small::lay_down(literals);
    small::sound(folder.path());
    try_site(folder.path(), change).unwrap()
}

/// The text of a page.
pub fn page<'s>(site: &'s Site, address: &str) -> &'s str {
    let file = site
        .files
        .get(&format!("{address}index.html"))
        .unwrap_or_else(|| panic!("no page at {address:?}"));
    std::str::from_utf8(file).unwrap()
}

fn html_pages(site: &Site) -> impl Iterator<Item = (&str, &str)> {
    site.files
        .iter()
        .filter(|(path, _)| path.ends_with(".html"))
        .map(|(path, text)| (path.as_str(), std::str::from_utf8(text).unwrap()))
}

/// The values of an attribute on a page, unescaped.
fn attribute(page: &str, name: &str) -> Vec<String> {
    page.split(&format!(" {name}=\""))
        .skip(1)
        .filter_map(|rest| rest.split('"').next())
        .map(|value| value.replace("&#39;", "'").replace("&amp;", "&"))
        .collect()
}

#[test]
fn the_state_table_says_what_stays_and_what_changes() {
    let site = site(&example());
    let design = page(&site, "design/14/");
    // Readers see a ditto mark and a wedge; a screen reader hears the words.
    assert!(design.contains(
        "<td class=\"same\"><span class=\"ditto\" aria-hidden=\"true\">″</span>\
         <span class=\"unseen\">present, unchanged</span></td>"
    ));
    assert!(design.contains(
        "<td class=\"changed\"><span class=\"wedge\" aria-hidden=\"true\"></span>\
         <span class=\"unseen\">changed: </span>2</td>"
    ));
    // A value after a column without one is not marked as a change.
    assert!(design.contains("<td>212 mm</td>"));
    assert!(design.contains("</span>204 mm</td>"));
}

#[test]
fn a_state_is_no_ditto_of_a_column_it_does_not_follow() {
    let site = site_of(&[r#"
-- records/designs/1/design.toml
titles = [{ text = "The Ferry" }]
points = [{ key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" }]
[[states]]
key = "dark"
shows = { moon = "absent" }
[[states]]
key = "moonlit"
shows = { moon = "present" }
[[states]]
key = "other-branch"
follows = ["dark"]
shows = { moon = "absent" }
"#]);
    let design = page(&site, "design/1/");
    assert!(design.contains("<td>absent</td>"));
    assert!(!design.contains("absent, unchanged"));
    assert!(design.contains("Follows <span class=\"numeral\">i</span>."));
}

#[test]
fn a_private_name_is_on_no_page() {
    let site = site(&example());
    for (path, bytes) in &site.files {
        let text = String::from_utf8_lossy(bytes);
        assert!(!text.contains("must never be published"), "{path}");
    }
    assert!(page(&site, "impression/14.2/").contains("Private collection"));
}

#[test]
fn private_fields_and_unpublished_sheets_are_on_no_page() {
    let site = site_of(&[
        FERRY,
        r#"
-- records/designs/1/impressions/2.toml
status = "located"
holder = "museum"
accession = "SECRET-NUMBER"
condition = "SECRET-CONDITION"
private = ["accession", "condition"]
-- records/designs/1/impressions/3.toml
status = "located"
publish = false
condition = "SECRET-SHEET"
maybe_same_as = [{ impression = "1.1", why = "SECRET-REASON" }]
-- records/designs/1/impressions/4.toml
status = "untraced"
[[provenance]]
owner = { name = "SECRET-OWNER" }
private = ["owner"]
"#,
    ]);
    for (path, bytes) in &site.files {
        assert!(!String::from_utf8_lossy(bytes).contains("SECRET"), "{path}");
    }
    assert!(!site.files.contains_key("impression/1.3/index.html"));
}

#[test]
fn a_supplied_title_stands_in_brackets_and_upright() {
    let site = site_of(&[r#"
-- records/designs/1/design.toml
titles = [
  { text = "Harbour in Fog", lang = "en", supplied = true },
  { text = "Гавань", lang = "uk", kind = "original" },
]
"#]);
    let design = page(&site, "design/1/");
    assert!(design.contains("<h1>[Harbour in Fog]</h1>"));
    assert!(design.contains("<span lang=\"uk\">Гавань</span>"));
    let wall = page(&site, "designs/");
    assert!(wall.contains("<bdi>[Harbour in Fog]</bdi>"), "{wall}");
    let list = page(&site, "designs/list/");
    assert!(list.contains(">[Harbour in Fog]</a>"), "{list}");
}

#[test]
fn hostile_text_is_harmless_wherever_it_stands() {
    let hostile = "<img src=x onerror=alert(1)><script>alert(2)</script>";
    let record = format!(
        r#"
-- records/designs/1/design.toml
number = "1\"><b>"
titles = [{{ text = "{hostile}", lang = "en" }}]
subjects = ["{hostile}"]
[[states]]
key = "one"
summary = "{hostile}"
-- records/designs/1/design.md
# {hostile}

{hostile} and [a](javascript:alert(3)) and [b](JaVaScRiPt:alert(4)) and [c](data:text/html,x)
and ![d](https://elsewhere.example/e.png) and ![e](data:image/svg+xml,x) and <javascript:alert(5)>
and [f](https://elsewhere.example/?a=1&b="2" "title") and [](design:1 "{hostile}").

<div onclick="alert(6)">

<style>body {{ display: none }}</style>

| a | b |
|---|---|
| <iframe src="x"></iframe> | [g](vbscript:x) |

A note.[^n]

[^n]: {hostile}
-- records/designs/1/impressions/1.toml
status = "located"
accession = "{hostile}"
condition = "{hostile}"
[[marks]]
kind = "inscription"
text = "{hostile}"
"#
    );
    // The links themselves are errors that keep such a catalogue from being published at all.
    let site = site(small::lay_down(&[&record]).path());
    for (path, text) in html_pages(&site) {
        // The theme's scripts and style sheets, and none from a record.
        let scripts = match path {
            "404.html" | "search/index.html" | "resolve/index.html" => 2,
            _ => 1,
        };
        // Data blocks run nothing, and no markup begins in them.
        let mut parts = text.split("<script type=\"application/");
        let before = parts.next().unwrap().to_owned();
        let text = &parts.fold(before, |text, part| {
            let (data, after) = part.split_once("</script>").unwrap();
            let (_, data) = data.split_once('>').unwrap();
            assert!(!data.contains('<'), "{path}: {data}");
            text + after
        });
        assert_eq!(text.matches("<script").count(), scripts, "{path}");
        for never in [
            "<img src=x",
            " onerror=a",
            "<iframe",
            "<style",
            "<div onclick",
            "\"><b>",
            "<b>x",
        ] {
            let found = text.contains(never) && !escaped_only(text, never);
            assert!(!found, "{path} has {never}");
        }
        for href in attribute(text, "href") {
            let lower = href.to_lowercase();
            for scheme in ["javascript:", "data:", "vbscript:"] {
                assert!(!lower.starts_with(scheme), "{path} links to {href}");
            }
        }
        for src in attribute(text, "src") {
            let own = if path == "404.html" { "/assets/" } else { "./" };
            assert!(
                src.starts_with("../") || src.starts_with(own),
                "{path} loads {src}"
            );
        }
    }
    let design = page(&site, "design/1/");
    assert!(design.contains("&lt;script&gt;alert(2)&lt;/script&gt;"));
    assert!(design.contains("href=\"https://elsewhere.example/?a=1&amp;b=&quot;2&quot;\""));
}

/// Whether `needle` occurs only as escaped text, with its `<` escaped.
fn escaped_only(text: &str, needle: &str) -> bool {
    !needle.starts_with('<')
        && text.match_indices(needle).all(|(at, _)| {
            text[..at].rfind("&lt;").unwrap_or(0) > text[..at].rfind('<').unwrap_or(0)
        })
}

#[test]
fn every_link_of_the_example_leads_somewhere_and_stays_below_the_catalogue() {
    let site = site(&example());
    let mut pictures = 0;
    for (path, text) in html_pages(&site) {
        let folder: Vec<&str> = path.split('/').collect();
        let folder = &folder[..folder.len() - 1];
        let ids: BTreeSet<String> = attribute(text, "id").into_iter().collect();
        assert_eq!(
            ids.len(),
            attribute(text, "id").len(),
            "{path}: an id stands twice"
        );
        for link in attribute(text, "href")
            .into_iter()
            .chain(attribute(text, "src"))
        {
            if link.contains("://") || link.starts_with("mailto:") {
                continue;
            }
            // A host serves this page at any address, so its links begin with the path of the catalogue.
            let link = match path {
                "404.html" if !link.starts_with('#') => {
                    link.strip_prefix("/catalogue").unwrap().to_owned()
                }
                _ => link,
            };
            let (to, fragment) = link.split_once('#').unwrap_or((&link, ""));
            let mut at: Vec<&str> = folder.to_vec();
            for part in to.split('/') {
                match part {
                    "." | "" => {}
                    ".." => assert!(at.pop().is_some(), "{path}: {link} leaves the catalogue"),
                    part => at.push(part),
                }
            }
            let target = match (to.is_empty(), to.ends_with('/')) {
                (true, _) => path.to_owned(),
                (false, true) => {
                    at.push("index.html");
                    at.join("/")
                }
                (false, false) => at.join("/"),
            };
            if target.starts_with("picture/") {
                pictures += 1;
                continue;
            }
            let Some(bytes) = site.files.get(&target) else {
                panic!("{path}: {link} leads to nothing ({target})");
            };
            // Answers that the script of an identification key reads; the key has no place for each.
            if fragment.starts_with("see=") {
                assert!(target.ends_with("/key/index.html"), "{path}: {link}");
            } else if fragment.starts_with("of=") {
                // Sheets that the script of the comparisons reads.
                assert!(target.ends_with("/comparison/index.html"), "{path}: {link}");
            } else if !fragment.is_empty() {
                let there = String::from_utf8_lossy(bytes);
                let id = format!(" id=\"{fragment}\"");
                assert!(there.contains(&id), "{path}: {link} has no such place");
            }
        }
    }
    assert!(pictures > 0, "the example has a picture, and pages show it");
}

#[test]
fn every_page_carries_the_caution_and_a_strict_policy() {
    let site = site(&example());
    for (path, text) in html_pages(&site) {
        assert!(
            text.contains("not an authentication, an appraisal or an opinion on title"),
            "{path}"
        );
        let policy = attribute(text, "content")
            .into_iter()
            .find(|value| value.contains("default-src"))
            .unwrap_or_else(|| panic!("{path} has no policy"));
        assert!(policy.contains("default-src 'none'"), "{path}");
        assert!(
            !policy.contains("unsafe") && !policy.contains("http"),
            "{path}"
        );
        assert!(text.contains("<html lang=\"en\" "), "{path}");
        for event in [" onclick=", " onload=", " style=\""] {
            assert!(!text.contains(event), "{path} has{event}");
        }
    }
}

#[test]
fn the_number_of_threads_leaves_no_trace() {
    let folder = example();
    let with = |threads| {
        let pool = rayon::ThreadPoolBuilder::new().num_threads(threads).build();
        pool.unwrap().install(|| site(&folder).files)
    };
    assert!(
        with(1) == with(4),
        "pages differ with the number of threads"
    );
}

#[test]
fn a_withdrawn_sheet_keeps_a_page_that_leads_on() {
    let site = site_of(&[
        FERRY,
        r#"
-- records/designs/1/impressions/2.toml
status = "located"
standing = "withdrawn"
see = "impression:1.1"
why = "The sheet is a reproduction."
-- records/designs/1/impressions/3.toml
status = "located"
holder = "museum"
same_as = [{ impression = "1.1", why = "the same number" }]
"#,
    ]);
    let withdrawn = page(&site, "impression/1.2/");
    assert!(withdrawn.contains(
        "<p class=\"standing\">Withdrawn. The sheet is a reproduction. \
         See <a href=\"../../impression/1.1/\">1.1</a>.</p>"
    ));
    let same = page(&site, "impression/1.3/");
    assert!(same.contains("url=../../impression/1.1/"));
    let joined = page(&site, "impression/1.1/");
    assert!(joined.contains("<span class=\"handle\">1.3</span> describe the same impression."));
    assert!(
        joined
            .contains("The same impression as <span class=\"handle\">1.3</span>: the same number.")
    );
    let design = page(&site, "design/1/");
    assert!(
        !design.contains("impression/1.2/"),
        "a withdrawn sheet is not listed"
    );
    assert!(
        !design.contains("impression/1.3/"),
        "one sheet is listed once"
    );
}

#[test]
fn a_comparison_tells_what_differs_from_what_cannot_be_told() {
    let site = site_of(&[r#"
-- records/designs/1/design.toml
titles = [{ text = "The Ferry" }]
points = [
  { key = "stamp", ask = "A stamp?", kind = "presence", rests_on = "mark" },
  { key = "mast", ask = "A mast?", kind = "presence", rests_on = "matrix" },
  { key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" },
]
comparisons = [{ of = ["1.1", "1.2"], why = "Before the moon and after." }]
-- records/designs/1/impressions/1.toml
status = "located"
observed = { moon = "absent", stamp = "not-visible", mast = "present" }
-- records/designs/1/impressions/2.toml
status = "located"
observed = { moon = "present", stamp = "absent", mast = "present" }
"#]);
    let text = page(&site, "design/1/comparison/1/");
    assert!(text.contains("They differ at one of the 3 points recorded."));
    let at = |needle: &str| text.find(needle).unwrap_or_else(|| panic!("no {needle:?}"));
    assert!(at("A moon?") < at("A stamp?") && at("A stamp?") < at("A mast?"));
    assert!(
        text.contains("<td class=\"verdict\">cannot be told</td>"),
        "a trimmed sheet is never read as absent"
    );
    assert!(text.contains("<td class=\"verdict\">agree</td>"));
}

#[test]
fn a_german_catalogue_speaks_german() {
    let site = site_of(&[
        FERRY,
        "
-- catalogue.toml
title = \"Die Drucke\"
siglum = \"DD\"
artist = \"artist\"
language = \"de\"
address = \"https://drucke.example.org\"
dated = \"2026-11-01\"
",
    ]);
    let design = page(&site, "design/1/");
    assert!(design.contains("<html lang=\"de\" "));
    assert!(design.contains(">Zustände</h2>"));
    assert!(design.contains("1. November 2026"));
    // The title is marked as English.
    assert!(design.contains("<i lang=\"en\">The Ferry</i>"));
}

#[test]
fn own_pages_stand_in_the_order_of_the_catalogue() {
    let settings = |more: &str| {
        format!(
            "-- catalogue.toml\ntitle = \"The Prints\"\nsiglum = \"TP\"\nartist = \"artist\"\nlanguage = \"en\"\naddress = \"https://prints.example.org\"\n{more}"
        )
    };
    let pages = "-- records/pages/thanks.md\n# Acknowledgements\nThanks.\n\
                 -- records/pages/life.md\n# A working life\nShe lived.\n\
                 -- records/pages/introduction.md\n# Introduction\nHere.\n";
    let in_order = |more: &str| -> Vec<String> {
        let site = site_of(&[&settings(more), pages]);
        let page = page(&site, "");
        let contents = page.split("id=\"page_contents\"").nth(1).unwrap();
        let own = attribute(contents, "href").into_iter();
        own.filter_map(|href| Some(href.strip_prefix("./page/")?.to_owned()))
            .collect()
    };
    assert_eq!(in_order(""), ["introduction/", "life/", "thanks/"]);
    assert_eq!(
        in_order("pages = [\"life\", \"thanks\"]\n"),
        ["life/", "thanks/", "introduction/"]
    );
}

#[test]
fn a_page_of_the_catalogues_own_opens_the_themes() {
    let own = "-- records/pages/cite.md\n# Citing us\nSay it plainly.\n\
               -- records/designs/1/design.md\nSee [](page:cite).\n";
    let site = site_of(&[FERRY, own]);
    let cite = page(&site, "cite/");
    assert!(cite.contains("<h1>Citing us</h1>"), "{cite}");
    let (before, after) = cite.split_once("Say it plainly.").unwrap();
    assert!(!before.contains("id=\"cite-whole\""), "{cite}");
    assert!(after.contains("id=\"cite-whole\""), "{cite}");
    let design = page(&site, "design/1/");
    assert!(
        design.contains("<a href=\"../../cite/\">Citing us</a>"),
        "{design}"
    );
    assert!(!site.files.contains_key("page/cite/index.html"));
}

#[test]
fn a_broken_template_is_named_with_its_line() {
    let folder = small::lay_down(&[FERRY]);
    let broken = |path: &str, text: &'static str| {
        let path = path.to_owned();
        try_site(folder.path(), move |theme| {
            theme.files.insert(path, text.as_bytes().into());
        })
        .unwrap_err()
    };
    let fault = broken("pages/text.html", "<p>\n{% if %}\n");
    assert_eq!((fault.file.as_str(), fault.line), ("pages/text.html", 2));
    let fault = broken("pages/designs.html", "<p>\n\n{{ page.no.such }}");
    assert_eq!((fault.file.as_str(), fault.line), ("pages/designs.html", 3));
}

#[test]
fn a_theme_changes_one_template_and_one_word() {
    let folder = small::lay_down(&[FERRY]);
    let change = |path: &str, text: &str| {
        let path = folder.path().join("themes/laid").join(path);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, text).unwrap();
    };
    change("words/en.ftl", "states = Conditions\n");
    change("pages/text.html", "never used");
    let site = site(folder.path());
    let design = page(&site, "design/1/");
    assert!(design.contains(">Conditions</h2>"));
    assert!(design.contains(">Printings</h2>"));
}

/// Readers cite by the number of the design; the address has its key.
#[test]
fn a_sheet_is_cited_by_the_number_of_its_design() {
    let site = site_of(&[
        FERRY,
        "-- records/designs/r1/design.toml\nnumber = \"R 1\"\ntitles = [{ text = \"The Copy\" }]\n\
         -- records/designs/r1/impressions/2.toml\nstatus = \"untraced\"\n",
    ]);
    let (_, sheet) = crate::markup::tags(page(&site, "impression/r1.2/"));
    assert!(sheet.contains("R 1.2"), "{sheet}");
    let design = page(&site, "design/r1/");
    let (_, text) = crate::markup::tags(design);
    assert!(text.contains("R 1.2"), "{text}");
    assert!(!text.contains("r1.2"), "{text}");
    assert!(design.contains("impression/r1.2/"));
}

/// A picture that shows something else than its sheet's whole recto: its caption stands beside it, and in place of the
/// side in the alternative text.
#[test]
fn a_caption_stands_in_place_of_the_side_of_a_picture() {
    let pictures = r#"
-- records/designs/1/impressions/1.toml
status = "located"
holder = "museum"
[[pictures]]
file = "pictures/1.jpg"
rights = "CC0-1.0"
caption = "The lower <right> part only"
-- records/designs/1/impressions/2.toml
status = "located"
holder = "museum"
[[pictures]]
file = "pictures/1.jpg"
rights = "CC0-1.0"
-- records/designs/1/pictures/1.jpg
no picture
"#;
    let site = site_of(&[FERRY, pictures]);
    for address in ["design/1/", "impression/1.1/"] {
        let html = page(&site, address);
        assert!(
            html.contains("The lower &lt;right&gt; part only</p>"),
            "{address}: {html}"
        );
        let alts = attribute(html, "alt");
        let captioned = "Impression 1.1: The lower &lt;right&gt; part only".to_owned();
        assert!(alts.contains(&captioned), "{address}: {alts:?}");
        assert!(!html.contains("Recto of impression 1.1"), "{address}");
    }
    assert!(page(&site, "design/1/").contains("Recto of impression 1.2"));
    assert!(page(&site, "impression/1.2/").contains("<p>Recto</p>"));
}

/// What a drawing shows may be told too.
#[test]
fn a_caption_of_a_designs_own_picture_stands_in_place_of_its_kind() {
    let design = FERRY.replace(
        "[[points]]",
        "pictures = [{ file = \"pictures/1.jpg\", of = \"drawing\", rights = \"CC0-1.0\", caption = \"A study of the bow\" }]\n[[points]]",
    );
    let site = site_of(&[&design, "-- records/designs/1/pictures/1.jpg\nno picture\n"]);
    let html = page(&site, "design/1/");
    assert!(html.contains("A study of the bow"), "{html}");
    let alts = attribute(html, "alt");
    let captioned = "A study of the bow: The Ferry".to_owned();
    assert!(alts.contains(&captioned), "{alts:?}");
}

/// The cautions claim no more than the program ensures.
#[test]
fn the_cautions_name_what_is_said_against_what_was_seen_and_who_is_named_without_consent() {
    let said = |language: &str, contact: &str| {
        let settings = format!(
            "-- catalogue.toml\ntitle = \"T\"\nsiglum = \"T\"\nartist = \"artist\"\nlanguage = \"{language}\"\n\
             address = \"https://prints.example.org\"\n{contact}\n"
        );
        let site = site_of(&[FERRY, &settings]);
        let text = crate::markup::tags(page(&site, "cautions/")).1;
        let words: Vec<&str> = text.split_whitespace().collect();
        words.join(" ")
    };
    let write = "contact = \"editors@prints.example.org\"";
    let english = said("en", write);
    for words in [
        "unless it says “contradicted by what was seen”, and it gives the reasons.",
        "The name and place of a private collection are published only where its owner’s consent is recorded.",
        "Other people in the records, former owners among them, are named without consent.",
        "The name of a person who objects is removed.",
        "Write to editors@prints.example.org.",
    ] {
        assert!(english.contains(words), "{words}: {english}");
    }
    assert!(!said("en", "").contains("Write to"));
    let german = said("de", write);
    for words in [
        "sofern nicht „im Widerspruch zum Gesehenen“ dabeisteht",
        "darunter frühere Eigentümer, werden ohne Einwilligung genannt.",
        "Schreiben Sie an editors@prints.example.org",
    ] {
        assert!(german.contains(words), "{words}: {german}");
    }
}
