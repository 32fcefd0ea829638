//! What a search finds, and what its index must never have. The script that reads the index is tested in
//! `tests/browser/search.test.mjs`.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use keyblock::page::Site;
use keyblock::read::shape::Shown;
use keyblock::study::search::folding::{fold, normalised};
use keyblock::study::search::words::words;
use rayon::prelude::*;
use serde_json::Value;

use crate::pages::{FERRY, site, site_of};
use crate::planted::{self, Leaf, NAME};
use crate::small;

/// `tests/checks/search_folding.json`: whether a reader who types the query should find the text. Source: our
/// rule, as its `about` says, beside the collation of ICU at primary strength.
#[test]
fn every_pair_of_the_check_is_found_or_not_as_it_says() {
    let check: Value = serde_json::from_str(include_str!("../checks/search_folding.json")).unwrap();
    let cases = check["cases"].as_array().unwrap();
    assert_eq!(cases.len(), 30);
    for case in cases {
        let [query, text, folded] = ["query", "text", "folded_text"].map(|key| {
            let text = case[key].as_str();
            text.unwrap()
        });
        assert_eq!(fold(&normalised(text)), folded, "{text}");
        let has = |word: &str| words(text).iter().any(|there| there.folded == word);
        let found = words(query).iter().all(|word| has(&word.folded));
        assert_eq!(Value::from(found), case["match"], "{query} in {text}");
    }
}

/// The files of the index of a site, as JSON.
fn index_of(site: &Site) -> BTreeMap<&str, Value> {
    let files = site.files.iter();
    let index = files.filter(|(path, _)| path.starts_with("search/") && path.ends_with(".json"));
    index
        .map(|(path, bytes)| (path.as_str(), serde_json::from_slice(bytes).unwrap()))
        .collect()
}

/// The terms of the index, with the arrays of their entries.
fn terms_of(site: &Site) -> BTreeMap<String, Value> {
    let index = index_of(site);
    let shards = index
        .iter()
        .filter(|(path, _)| path.starts_with("search/terms/"));
    let terms = shards.flat_map(|(_, shard)| shard["terms"].as_object().unwrap().clone());
    terms.collect()
}

/// The entries as they are shown, in order.
fn records_of(site: &Site) -> Vec<Value> {
    let index = index_of(site);
    let parts = 0..;
    let parts = parts.map_while(|at| index.get(format!("search/records/{at}.json").as_str()));
    parts
        .flat_map(|part| part["records"].as_array().unwrap().clone())
        .collect()
}

/// The addresses of the entries that have a term in a class: 0 for a number, then the name, a word of it, a fact,
/// a text.
fn addresses(site: &Site, term: &str, class: usize) -> Vec<String> {
    let terms = terms_of(site);
    let Some(places) = terms.get(term).and_then(|term| term.get(class + 1)) else {
        return Vec::new();
    };
    let records = records_of(site);
    let mut last = 0;
    let mut found = Vec::new();
    // Sets as small as these are lists.
    for step in places.as_array().into_iter().flatten() {
        let step = step.as_i64().unwrap();
        let more = if step < 0 {
            vec![1; usize::try_from(-step).unwrap()]
        } else {
            vec![step]
        };
        for step in more {
            last += step;
            let record = &records[usize::try_from(last).unwrap()];
            found.push(record[4].as_str().unwrap().to_owned());
        }
    }
    found
}

const EARLIER: &str = r#"
-- records/literature.bib
@book{first-list, author = {Willem, Ada}, title = {First List: the Prints}, year = {1950}}
-- records/designs/2/design.toml
titles = [{ text = "Ōsaka Bridge", lang = "en" }, { text = "大阪の橋", lang = "ja", kind = "original" }]
literature = [{ cite = "first-list", number = "W 4" }]
states = [{ key = "early", literature = [{ cite = "first-list", number = "II" }] }, { key = "late" }]
-- records/designs/2/design.md
The bridge at *Hafenstadt*, and [](design:1).
-- records/designs/2/impressions/1.toml
status = "located"
holder = "museum"
accession = "P 118/2"
former_accessions = [{ number = "1931-7" }]
marks = [{ kind = "seal", text = "渡", number = "L. 1852" }]
"#;

#[test]
fn numbers_are_indexed_as_people_write_them() {
    let site = site_of(&[FERRY, EARLIER]);
    for (key, address) in [
        ("1", "design/1/"),
        ("1.1", "impression/1.1/"),
        ("1.ii", "design/1/#state-moonlit"),
        ("1.ii.ii", "design/1/#state-moonlit"),
        ("1962.44", "impression/1.1/"),
        ("196244", "impression/1.1/"),
        ("p.118.2", "impression/2.1/"),
        ("p1182", "impression/2.1/"),
        ("1931.7", "impression/2.1/"),
        ("l.1852", "marks/#seal"),
    ] {
        assert_eq!(addresses(&site, key, 0), [address], "{key}");
    }
    // A number of an earlier catalogue leads to ours, then to its own row.
    for (key, addressed) in [
        ("w.4", ["design/2/", "lit/first-list/#w4"]),
        ("first.list.w.4", ["design/2/", "lit/first-list/#w4"]),
        ("willem.w.4", ["design/2/", "lit/first-list/#w4"]),
        ("willem.1950.w.4", ["design/2/", "lit/first-list/#w4"]),
        ("w.4.ii", ["design/2/#state-early", "lit/first-list/#w4ii"]),
    ] {
        assert_eq!(addresses(&site, key, 0), addressed, "{key}");
    }
    // A number without a letter is no number of ours because an earlier catalogue has it.
    assert!(addresses(&site, "4", 0).is_empty());
}

#[test]
fn names_facts_and_texts_are_indexed_each_as_what_it_is() {
    let site = site_of(&[FERRY, EARLIER]);
    assert_eq!(addresses(&site, "the.ferry", 1), ["design/1/"]);
    assert_eq!(addresses(&site, "harbour.museum", 1), ["holder/museum/"]);
    assert_eq!(addresses(&site, "osaka", 2), ["design/2/"]);
    assert_eq!(addresses(&site, "大阪", 2), ["design/2/"]);
    assert_eq!(addresses(&site, "の橋", 2), ["design/2/"]);
    assert_eq!(addresses(&site, "渡", 1), ["marks/#seal"]);
    let facts = addresses(&site, "museum", 3);
    assert!(facts.contains(&"impression/1.1/".to_owned()), "{facts:?}");
    assert_eq!(addresses(&site, "hafenstadt", 4), ["design/2/"]);
    // A link without a text is read as the short name of its record.
    assert_eq!(addresses(&site, "ferry", 4), ["design/2/"]);
}

#[test]
fn entries_stand_by_kind_in_the_order_of_results() {
    let site = site_of(&[FERRY, EARLIER]);
    let records = records_of(&site);
    let kinds: Vec<&str> = records
        .iter()
        .map(|record| record[0].as_str().unwrap())
        .collect();
    let mut in_order = kinds.clone();
    in_order.dedup();
    assert_eq!(
        in_order,
        [
            "design",
            "state",
            "printing",
            "impression",
            "mark",
            "holder",
            "person",
            "work",
            "earlier",
            "page",
            "term"
        ]
    );
    let index = &index_of(&site)["search/index.json"];
    assert_eq!(index["count"], records.len());
    assert_eq!(index["siglum"], "tp");
    for kind in index["kinds"].as_array().unwrap() {
        let first = usize::try_from(kind[1].as_u64().unwrap()).unwrap();
        assert_eq!(kinds.iter().position(|k| *k == kind[0]), Some(first));
    }
}

/// The site of the example, which has every kind of record.
fn example() -> Site {
    site(&Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/example-catalogue"))
}

#[test]
fn every_entry_leads_to_a_place_that_is_there() {
    let site = example();
    let records = records_of(&site);
    assert!(records.len() > 100, "{}", records.len());
    for record in records {
        let (page, fragment) = match record[4].as_str().unwrap().split_once('#') {
            Some((page, fragment)) => (page.to_owned(), fragment.to_owned()),
            None => (record[4].as_str().unwrap().to_owned(), String::new()),
        };
        let file = site.files.get(&format!("{page}index.html"));
        let text = String::from_utf8_lossy(file.unwrap_or_else(|| panic!("{record}")));
        let id = format!("id=\"{fragment}\"");
        assert!(fragment.is_empty() || text.contains(&id), "{record}");
    }
}

/// The words of every page of a site.
fn words_of_pages(site: &Site) -> BTreeSet<String> {
    let pages = site
        .files
        .iter()
        .filter(|(path, _)| path.ends_with(".html"));
    let mut all = BTreeSet::new();
    for (_, bytes) in pages {
        let page = std::str::from_utf8(bytes).unwrap();
        let mut text = String::new();
        let mut tag = None;
        for (at, sign) in page.char_indices() {
            match (sign, tag) {
                ('<', _) => tag = Some(at),
                ('>', Some(start)) => {
                    // Emphasis may stand within a word; everything else ends it.
                    let name = page[start..at].trim_start_matches(['<', '/']);
                    if !["i", "em", "b", "strong"].contains(&name) {
                        text.push(' ');
                    }
                    tag = None;
                }
                (sign, None) => text.push(sign),
                _ => {}
            }
        }
        for (entity, sign) in [
            ("&#39;", "'"),
            ("&quot;", "\""),
            ("&lt;", "<"),
            ("&gt;", ">"),
            ("&amp;", "&"),
        ] {
            text = text.replace(entity, sign);
        }
        all.extend(words(&text).into_iter().map(|word| word.folded));
    }
    all
}

/// The index is made of records; what it has must stand on pages too.
#[test]
fn every_word_of_the_index_stands_on_a_page() {
    for site in [example(), site_of(&[FERRY, EARLIER])] {
        let on_pages = words_of_pages(&site);
        let terms = terms_of(&site);
        let is_word = |term: &str, value: &Value| {
            let value = value.as_array().unwrap();
            // Numbers and whole names are put together from words; the beginnings of words are none.
            let as_word = value.iter().skip(3).any(Value::is_array);
            as_word && !term.ends_with('*')
        };
        let of_words = terms.iter().filter(|(term, value)| is_word(term, value));
        let missing: Vec<&String> = of_words
            .map(|(term, _)| term)
            .filter(|term| !on_pages.contains(*term))
            .collect();
        assert!(missing.is_empty(), "{missing:?}");
        assert!(terms.len() > 300, "{}", terms.len());
    }
}

/// The text of all files of the index.
fn text_of_index(site: &Site) -> String {
    let files = site
        .files
        .iter()
        .filter(|(path, _)| path.starts_with("search/"));
    let texts = files.map(|(_, bytes)| std::str::from_utf8(bytes).unwrap());
    texts.collect()
}

#[test]
fn what_is_private_is_not_in_the_index() {
    let private = r#"
-- records/holders/owner-a.toml
name = "Quillfeather"
kind = "private"
place = "Zwartehoek"
-- records/designs/1/impressions/1.toml
status = "located"
holder = "owner-a"
accession = "Kabinett 9931"
private = ["accession"]
[[provenance]]
owner = { name = "Vandersloot" }
private = ["owner"]
-- records/designs/1/impressions/2.toml
status = "located"
publish = false
condition = "Foxed at the Querlinck corner."
accession = "88-4417"
-- records/designs/1/impressions/2.md
A note by Ostrander.
"#;
    let text = text_of_index(&site_of(&[FERRY, private])).to_lowercase();
    for word in [
        "quillfeather",
        "zwartehoek",
        "9931",
        "kabinett",
        "vandersloot",
        "querlinck",
        "4417",
        "ostrander",
        "impression/1.2",
    ] {
        assert!(!text.contains(word), "{word}");
    }
    assert!(
        text.contains("private collection"),
        "the sheet itself is found"
    );
}

/// For every text that records declare (`planted.rs`): where the index has it, a page has it; where the record lists
/// it as private, neither has.
#[test]
fn the_index_has_no_declared_text_that_no_page_has() {
    let cases = planted::cases().into_iter();
    let cases: Vec<_> = cases
        .filter(|case| matches!(case.leaf, Leaf::Text(_)) && !case.path.contains("After "))
        .collect();
    let site_with = |file: &str, text: &str| {
        let folder = small::lay_down(&[planted::BASE, &format!("-- {file}\n{text}")]);
        site(folder.path())
    };
    let name = NAME.to_lowercase();
    let wrong: Vec<String> = cases
        .par_iter()
        .filter_map(|case| {
            let plain = site_with(case.file, &case.text);
            let is_told = |site: &Site| text_of_index(site).to_lowercase().contains(&name);
            if is_told(&plain) && !words_of_pages(&plain).contains(&name) {
                return Some(format!("{} is in the index and on no page", case.path));
            }
            if case.leaf != Leaf::Text(Shown::ToReaders) {
                return None;
            }
            let mut record: toml::Value = toml::from_str(&case.text).unwrap();
            planted::keep_private(&mut record);
            let kept = site_with(case.file, &toml::to_string(&record).unwrap());
            is_told(&kept).then(|| format!("{} is private and in the index", case.path))
        })
        .collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert!(cases.len() > 110, "only {} texts", cases.len());
}

#[test]
fn every_file_of_the_index_is_small_and_named_by_the_overview() {
    let site = example();
    let index = index_of(&site);
    let overview = &index["search/index.json"];
    let length = |list: &Value| list.as_array().unwrap().len();
    let mut expected: BTreeSet<String> = ["index.json", "narrow.json"].map(str::to_owned).into();
    expected.extend((0..length(&overview["terms"])).map(|at| format!("terms/{at}.json")));
    expected.extend((0..length(&overview["records"])).map(|at| format!("records/{at}.json")));
    for column in index["search/narrow.json"]["columns"].as_array().unwrap() {
        let by = column["by"].as_str().unwrap();
        let parts = 0..length(&column["parts"]);
        expected.extend(parts.map(|at| format!("narrow/{by}-{at}.json")));
    }
    let there: BTreeSet<String> = index
        .keys()
        .map(|path| path.trim_start_matches("search/").to_owned())
        .collect();
    assert_eq!(there, expected);
    for path in index.keys() {
        let bytes = site.files[*path].len();
        assert!(bytes < 30_000, "{path}: {bytes}");
    }
}

#[test]
fn readers_narrow_by_what_the_records_say() {
    let site = site_of(&[FERRY, EARLIER]);
    let index = index_of(&site);
    let columns = index["search/narrow.json"]["columns"].as_array().unwrap();
    let values = |by: &str| -> Vec<(String, String)> {
        let column = columns.iter().find(|column| column["by"] == by);
        let values = column.unwrap()["values"].as_array().unwrap();
        let text = |value: &Value, at: usize| value[at].as_str().unwrap().to_owned();
        values
            .iter()
            .map(|value| (text(value, 0), text(value, 1)))
            .collect()
    };
    let pair = |a: &str, b: &str| (a.to_owned(), b.to_owned());
    assert_eq!(values("state"), [pair("1", "i"), pair("2", "ii")]);
    assert_eq!(
        values("printing"),
        [pair("artist", "printed by the artist")]
    );
    assert_eq!(
        values("holder"),
        [pair("museum", "Northport, Harbour Museum")]
    );
}

/// A host serves `404.html` at any address, so its links begin at the host.
#[test]
fn the_page_for_a_missing_address_works_at_any_depth() {
    let settings = "-- catalogue.toml\ntitle = \"The Prints\"\nsiglum = \"TP\"\nartist = \"artist\"\nlanguage = \"de\"\n\
                    address = \"https://prints.example.org/some/where\"\n";
    let site = site_of(&[FERRY, settings]);
    let page = std::str::from_utf8(&site.files["404.html"]).unwrap();
    let links = page
        .split(['"'])
        .filter(|part| part.ends_with(".css") || part.ends_with(".js"));
    let mut count = 0;
    for link in links {
        assert!(link.starts_with("/some/where/assets/"), "{link}");
        count += 1;
    }
    assert!(count > 5);
    assert!(page.contains(r#"action="/some/where/search/""#));
    assert!(page.contains(r#"<meta name="robots" content="noindex">"#));
    assert!(page.contains(r#"data-folders="design impression"#));
    let search = std::str::from_utf8(&site.files["search/index.html"]).unwrap();
    assert!(!search.contains("noindex"));
}
