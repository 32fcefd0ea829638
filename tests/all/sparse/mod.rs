//! Catalogues of which little is recorded: what their pages say, and a large one that can be published.

use std::fmt::Write as _;
use std::fs;
use std::path::Path;

use crate::program::{compile, files_below};
use crate::small::{TWO_MUSEUMS, lay_down};

mod catalogue;

/// A photograph for a design, and a record that names it.
fn photographed(folder: &tempfile::TempDir, design: usize) {
    let own = folder.path().join(format!("records/designs/{design}"));
    fs::create_dir_all(own.join("pictures")).unwrap();
    let photograph = image::RgbImage::from_pixel(40, 30, image::Rgb([200, 190, 170]));
    photograph.save(own.join("pictures/1.png")).unwrap();
    let picture = "\n[[pictures]]\nfile = \"pictures/1.png\"\nrights = \"CC0-1.0\"\n";
    let record = own.join("impressions/1.toml");
    let text = fs::read_to_string(&record).unwrap();
    fs::write(record, text + picture).unwrap();
}

/// The folder of a compiled catalogue.
fn site(literal: &str) -> tempfile::TempDir {
    let folder = lay_down(&[TWO_MUSEUMS, literal]);
    compile(folder.path());
    folder
}

/// A page of it, without tags and with single spaces.
fn said(site: &tempfile::TempDir, path: &str) -> String {
    let mut html = page(site, path);
    for block in ["td", "th", "dt", "dd", "p", "li", "h1", "h2", "h3"] {
        html = html.replace(&format!("</{block}>"), " ");
    }
    let mut out = String::new();
    let mut is_tag = false;
    for c in html.chars() {
        match c {
            '<' => is_tag = true,
            '>' => is_tag = false,
            c if !is_tag => out.push(c),
            _ => {}
        }
    }
    out.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The sheet of a page: its markup between head and foot.
fn page(site: &tempfile::TempDir, path: &str) -> String {
    let file = site.path().join("web").join(path).join("index.html");
    let html = fs::read_to_string(file).unwrap();
    let (_, sheet) = html.split_once("<main").unwrap();
    let (sheet, _) = sheet.split_once("</main>").unwrap();
    format!("<main{sheet}")
}

/// The catalogue of 1,200 designs has no error. It is copied to the folder that `KEYBLOCK_MADE` names, where
/// `tests/browser/sparse.test.mjs` compiles it.
#[test]
fn a_large_sparse_catalogue_can_be_published() {
    let folder = tempfile::tempdir().unwrap();
    catalogue::lay_down(folder.path());
    let judged = crate::findings::judged(folder.path());
    let is_error = |f: &&keyblock::model::finding::Finding| {
        f.severity() == keyblock::model::finding::Severity::Error
    };
    let errors: Vec<_> = judged.findings.iter().filter(is_error).collect();
    assert!(errors.is_empty(), "{errors:#?}");
    assert_eq!(judged.catalogue.designs.len(), catalogue::DESIGNS);
    let designs = judged.catalogue.designs.values();
    let sheets: usize = designs.map(|design| design.impressions.len()).sum();
    assert_eq!(sheets, catalogue::SHEETS);
    if let Some(to) = std::env::var_os("KEYBLOCK_MADE") {
        let to = Path::new(&to).join("sparse");
        let _ = fs::remove_dir_all(&to);
        for file in files_below(folder.path()) {
            let copy = to.join(file.strip_prefix(folder.path()).unwrap());
            fs::create_dir_all(copy.parent().unwrap()).unwrap();
            fs::copy(file, copy).unwrap();
        }
    }
}

#[test]
fn titles_are_filed_by_letter_with_numbers_in_their_order() {
    let site = site(
        r#"
-- records/designs/1/design.toml
titles = [{ text = "Plate 10" }]
-- records/designs/2/design.toml
titles = [{ text = "Plate 2" }]
-- records/designs/3/design.toml
titles = [{ text = "[The Gate]" }]
-- records/designs/4/design.toml
titles = [{ text = "‘A Ferry’" }]
-- records/designs/5/design.toml
titles = [{ text = "no title", supplied = true }]
"#,
    );
    let titles = said(&site, "titles/");
    let expected = "F ‘A Ferry’ 4 G [The Gate] 3 N [no title] 5 P Plate 2 2 Plate 10 1";
    assert!(titles.contains(expected), "{titles}");
    // Brackets that the record has are not doubled, and what they enclose is not in italic.
    assert!(page(&site, "titles/").contains("\">[The Gate]</a>"));
}

#[test]
fn designs_of_one_title_follow_by_number_with_what_tells_them_apart() {
    let site = site(
        r#"
-- records/designs/10/design.toml
titles = [{ text = "Landscape" }]
date = "1961"
-- records/designs/9/design.toml
titles = [{ text = "Landscape" }]
date = "1962"
size = { image = [212, 301] }
-- records/designs/11/design.toml
titles = [{ text = "Landscape" }]
date = "1962"
-- records/designs/11/impressions/1.toml
status = "untraced"
sheet = { image = [90, 60] }
-- records/designs/12/design.toml
titles = [{ text = "Landscape" }]
"#,
    );
    let titles = said(&site, "titles/");
    let expected = "L Landscape: 9, 1962, 212 × 301 mm; 10, 1961; 11, 1962, 90 × 60 mm; 12";
    assert!(titles.contains(expected), "{titles}");
}

#[test]
fn a_print_stands_once_in_a_year_and_again_in_the_years_of_its_states() {
    let site = site(
        r#"
-- records/designs/1/design.toml
titles = [{ text = "The Ferry" }]
date = "1927/1928"
states = [{ key = "a", date = "1927/1928" }, { key = "b", date = "1927-05" }, { key = "c", date = "1930" }]
printings = [{ key = "own", kind = "artist", states = "all", date = "1930" }]
-- records/designs/2/design.toml
titles = [{ text = "The Quay" }]
date = "1927"
states = [{ key = "only", date = "1927" }]
"#,
    );
    let years = said(&site, "chronology/");
    let expected = "1927 2, The Quay \
        1, The Ferry (between 1927 and 1928): state i; state ii (May 1927) 1930";
    assert!(years.contains(expected), "{years}");
    let later = "1930 1, The Ferry: state iii; printed by the artist";
    assert!(years.contains(later), "{years}");
}

/// Twelve sheets of one museum, each with `more` from `n`.
fn twelve_sheets(more: impl Fn(usize) -> String) -> tempfile::TempDir {
    let mut literal =
        String::from("-- records/designs/1/design.toml\ntitles = [{ text = \"The Ferry\" }]\n");
    for n in 1..=12 {
        write!(
            literal,
            "-- records/designs/1/impressions/{n}.toml\nstatus = \"located\"\nholder = \"museum\"\naccession = \"P{n:02}\"\n{}",
            more(n)
        )
        .unwrap();
    }
    site(&literal)
}

#[test]
fn sheets_of_one_holder_say_what_differs() {
    let site = twelve_sheets(|n| {
        let size = format!(
            "[sheet]\nimage = [200, {}]\npaper = \"laid-paper\"\n",
            100 + n / 7
        );
        let date = if n == 3 { "date = \"1931\"\n" } else { "" };
        format!("credit = \"Purchased {}\"\n{size}{date}", 1950 + n)
    });
    let design = said(&site, "design/1/");
    for expected in [
        "1.1 Harbour Museum (P01), 200 × 100 mm (image), Purchased 1951",
        "1.3 P03, 200 × 100 mm (image), 1931, Purchased 1953",
        "1.12 P12, 200 × 101 mm (image), Purchased 1962",
    ] {
        assert!(design.contains(expected), "{expected}: {design}");
    }
    // All are on one paper, so none names it.
    assert!(
        !design.contains("aid paper") && !design.contains("the same"),
        "{design}"
    );
}

#[test]
fn sheets_of_which_nothing_is_told_are_numbers_and_a_note() {
    let site = twelve_sheets(|_| String::new());
    let design = said(&site, "design/1/");
    assert!(
        design.contains("1.1 Harbour Museum (P01) 1.2 P02 1.3 P03"),
        "{design}"
    );
    let note = "1.12 P12 nothing else is recorded that tells these 12 impressions apart";
    assert!(design.contains(note), "{design}");
    // Where the number in the edition tells them apart, nothing is added.
    let site = twelve_sheets(|n| format!("numbering = \"{n}/12\"\ncredit = \"Gift {n}\"\n"));
    let design = said(&site, "design/1/");
    assert!(design.contains("1.2 P02, 2/12 1.3 P03, 3/12"), "{design}");
    assert!(!design.contains("nothing else"), "{design}");
}

#[test]
fn a_support_alone_is_no_technique() {
    let site = site(
        r#"
-- records/designs/1/design.toml
titles = [{ text = "The Ferry" }]
support = ["paper"]
-- records/designs/2/design.toml
titles = [{ text = "The Quay" }]
support = ["paper"]
technique = ["etching"]
"#,
    );
    let alone = said(&site, "design/1/");
    assert!(
        alone.contains("Support Paper") && !alone.contains("Technique"),
        "{alone}"
    );
    let both = said(&site, "design/2/");
    assert!(
        both.contains("Technique Etching, on paper") && !both.contains("Support"),
        "{both}"
    );
}

#[test]
fn a_design_without_a_plate_gives_date_and_technique_once() {
    let site = site(
        r#"
-- records/designs/1/design.toml
titles = [{ text = "The Ferry" }]
date = "1927"
technique = ["etching"]
"#,
    );
    let design = said(&site, "design/1/");
    assert_eq!(design.matches("1927").count(), 1, "{design}");
    assert_eq!(
        design.to_lowercase().matches("etching").count(),
        1,
        "{design}"
    );
}

#[test]
fn columns_that_no_row_fills_are_left_out() {
    let sheets = r#"
-- records/designs/1/design.toml
titles = [{ text = "The Ferry" }]
states = [{ key = "only" }]
-- records/designs/1/impressions/1.toml
status = "located"
holder = "museum"
-- records/designs/1/impressions/2.toml
status = "located"
holder = "museum"
"#;
    let heads = |site: &tempfile::TempDir, path: &str| -> Vec<String> {
        let html = page(site, path);
        let cells = html.split("scope=\"col\">").skip(1);
        cells
            .map(|cell| cell.split("</th>").next().unwrap().to_owned())
            .collect()
    };
    let bare = site(sheets);
    assert_eq!(heads(&bare, "holder/museum/"), ["Design", "Impression"]);
    let more = "accession = \"P1\"\nidentified = { state = \"only\" }\n";
    let filled = site(&format!("{sheets}{more}"));
    assert_eq!(
        heads(&filled, "holder/museum/"),
        ["Design", "Impression", "Accession no.", "State"]
    );
}

/// `n` designs, the first with two sheets, the others with one.
fn many_designs(n: usize) -> String {
    let mut literal = String::new();
    for design in 1..=n {
        write!(
            literal,
            "-- records/designs/{design}/design.toml\ntitles = [{{ text = \"Print {design}\" }}]\n"
        )
        .unwrap();
        for sheet in 1..=if design == 1 { 2 } else { 1 } {
            write!(
                literal,
                "-- records/designs/{design}/impressions/{sheet}.toml\nstatus = \"located\"\nholder = \"museum\"\n"
            )
            .unwrap();
        }
    }
    literal
}

#[test]
fn many_designs_of_one_sheet_run_on_in_the_census() {
    let few = said(&site(&many_designs(20)), "census/");
    assert!(
        few.contains("20 Print 20 1 1") && !few.contains("Known in one impression"),
        "{few}"
    );
    let many = said(&site(&many_designs(30)), "census/");
    let rows = "1 Print 1 2 2 29 designs known in one impression each 29 29 All 31 31";
    assert!(many.contains(rows), "{many}");
    assert!(
        many.contains("Known in one impression Located 2.1 3.1 4.1"),
        "{many}"
    );
    assert!(!many.contains("Print 20"), "{many}");
}

#[test]
fn the_census_of_an_only_sheet_is_one_line() {
    let site = site(&many_designs(2));
    let census = said(&site, "design/2/census/");
    let line = "The only impression known 2.1: located; Norway; Northport, Harbour Museum.";
    assert!(census.contains(line), "{census}");
    // Figures elsewhere still lead to their places.
    let html = page(&site, "design/2/census/");
    for id in ["by-status", "by-holder", "by-country", "holder-museum"] {
        assert!(html.contains(&format!("id=\"{id}\"")), "{id}: {html}");
    }
    assert!(!html.contains("<table"), "{html}");
}

#[test]
fn designs_that_no_catalogue_numbers_run_on_in_the_concordance() {
    let work = "-- records/literature.bib\n@book{list, title = {A List}, author = {Quill, Ines}, year = {1967}}\n";
    let numbered = "-- records/designs/31/design.toml\ntitles = [{ text = \"Print 31\" }]\nliterature = [{ cite = \"list\", number = \"7\" }]\n";
    let site = site(&format!("{}{work}{numbered}", many_designs(30)));
    let concordance = said(&site, "concordance/");
    assert!(
        concordance.contains("30 designs have no number there: 1, 2, 3, 4"),
        "{concordance}"
    );
    assert!(concordance.contains("31, Print 31"), "{concordance}");
    assert!(
        !concordance.contains("not described there"),
        "{concordance}"
    );
}

#[test]
fn designs_without_pictures_stand_in_words_where_most_have_none() {
    let site = site(&many_designs(3));
    let designs = page(&site, "designs/");
    assert!(designs.contains("<ol class=\"named\">") && !designs.contains("class=\"hung\""));
    assert!(!designs.contains("no photograph"));
    assert!(said(&site, "designs/").contains("1 Print 1 2 Print 2 3 Print 3"));
}

#[test]
fn a_wall_keeps_the_places_of_few_prints_without_a_photograph() {
    let designs = |n: usize| lay_down(&[TWO_MUSEUMS, &many_designs(n)]);
    let half = designs(2);
    photographed(&half, 1);
    compile(half.path());
    let wall = page(&half, "designs/");
    assert!(
        wall.contains("<span class=\"none\">no photograph</span>"),
        "{wall}"
    );
    assert!(!wall.contains("class=\"named\""), "{wall}");
    // Of three, one hangs, and two are named after it.
    let less = designs(3);
    photographed(&less, 2);
    compile(less.path());
    let wall = page(&less, "designs/");
    let (hung, named) = wall.split_once("<ol class=\"named\">").unwrap();
    assert!(
        hung.contains("Print 2") && !hung.contains("Print 1"),
        "{wall}"
    );
    assert!(
        named.contains("Print 1") && named.contains("Print 3"),
        "{wall}"
    );
    assert!(!wall.contains("no photograph"), "{wall}");
}

#[test]
fn a_sheet_without_a_plate_gives_number_and_holder_once() {
    let site = site(&format!("{}accession = \"P7\"\n", many_designs(1)));
    let sheet = said(&site, "impression/1.2/");
    assert_eq!(sheet.matches("Harbour Museum").count(), 1, "{sheet}");
    assert_eq!(sheet.matches("P7").count(), 1, "{sheet}");
    assert!(page(&site, "impression/1.2/").contains("href=\"../../holder/museum/\""));
}
