//! A catalogue can add a language by its files of words alone, without code.

use crate::pages::{page, site_of};

/// The grammar of Hungarian: no plural after a number, articles `a` and `az`, the year before month and day,
/// `és` and `vagy` between the last of several, quotation marks \u{201e}…\u{201d} and \u{bb}…\u{ab} within.
const HUNGARIAN: &str = r#"
-- themes/laid/words/hu.ftl
designs = Művek
titles = Címek
states = Állapotok
articles-hu = a | az
list-and = { $before } és { $last }
list-or = { $before } vagy { $last }
quote-open = „
quote-close = ”
quote-single-open = »
quote-single-close = «
date-day = { $year }. { $month } { $day }.
count-impressions = { $n } levonat
-- themes/laid/words/hu-months.ftl
month-11 = november
-- catalogue.toml
title = "A metszetek"
siglum = "M"
artist = "artist"
language = "hu"
address = "https://prints.example.org"
dated = "2026-11-01"
"#;

const DESIGNS: &str = r#"
-- records/designs/1/design.toml
titles = [{ text = "A híd" }]
technique = ["woodcut", "etching", "aquatint"]
[[states]]
key = "dark"
[[states]]
key = "moonlit"
-- records/designs/1/design.md
"Este", 'reggel'.
-- records/designs/1/impressions/1.toml
status = "located"
holder = "museum"
-- records/designs/1/impressions/2.toml
status = "located"
holder = "museum"
identified = { state = ["dark", "moonlit"] }
-- records/designs/2/design.toml
titles = [{ text = "Csónak" }]
-- records/designs/3/design.toml
titles = [{ text = "Cukor" }]
-- records/holders/museum.toml
name = "Museum"
kind = "museum"
place = "Northport"
"#;

#[test]
fn a_language_given_only_as_files_of_words_is_whole() {
    let site = site_of(&[HUNGARIAN, DESIGNS]);
    let design = page(&site, "design/1/");
    assert!(design.contains("<html lang=\"hu\" "), "{design}");
    assert!(design.contains(">Állapotok</h2>"), "{design}");
    // A file of any name after the tag is one of the language.
    assert!(design.contains("2026. november 1."), "{design}");
    assert!(design.contains("„Este”, »reggel«."), "{design}");
    let holder = page(&site, "holder/museum/");
    assert!(holder.contains("2 levonat"), "{holder}");
    let sheet = page(&site, "impression/1.2/");
    assert!(sheet.contains(" vagy "), "{sheet}");
    // A word that the language lacks is English.
    assert!(
        design.contains("id=\"impressions\">Impressions<"),
        "{design}"
    );
}

/// Expected: CLDR's rules for Hungarian, in which `cs` is a letter after `c`; by code points Csónak would
/// stand before Cukor.
#[test]
fn its_titles_are_filed_by_its_articles_and_sorted_by_its_rules() {
    let site = site_of(&[HUNGARIAN, DESIGNS]);
    let titles = page(&site, "titles/");
    let at = |title: &str| {
        titles
            .find(&format!(">{title}<"))
            .unwrap_or_else(|| panic!("{titles}"))
    };
    assert!(at("Cukor") < at("Csónak") && at("Csónak") < at("A híd"));
    let english = site_of(&[DESIGNS]);
    let titles = page(&english, "titles/");
    let at = |title: &str| {
        titles
            .find(&format!(">{title}<"))
            .unwrap_or_else(|| panic!("{titles}"))
    };
    assert!(at("Csónak") < at("Cukor"));
}

#[test]
fn a_page_runs_from_right_to_left_where_its_language_does() {
    let arabic = "-- catalogue.toml\ntitle = \"T\"\nsiglum = \"T\"\nartist = \"artist\"\n\
                  language = \"ar\"\naddress = \"https://prints.example.org\"\n";
    let site = site_of(&[arabic]);
    assert!(page(&site, "").contains("<html lang=\"ar\" dir=\"rtl\" "));
    let site = site_of(&[DESIGNS]);
    assert!(page(&site, "").contains("<html lang=\"en\" "));
}
