//! The sheet of paper on its page and in the files: how it was measured, its paper and watermarks, its condition, and what
//! is said of its photographs.

use crate::pages::{FERRY, page, site_of};

const SHEET: &str = r#"
-- records/people/editor.toml
name = "Ed Itor"
-- records/literature.bib
@book{marks, author = {Second, Sam}, title = {Marks in Paper}, year = {1987}}
-- records/exhibitions.toml
[show]
title = "Prints of the Port"
-- records/designs/1/impressions/2.toml
status = "located"
condition = [
  { what = "foxing", where = "lower margin", how = "in raking light", by = "editor", date = "2024" },
  "A tear at the left.",
]
literature = [{ cite = "marks", at = "p. 5", illustrated = true, this_sheet = "probable" }]
exhibited = [{ exhibition = "show", illustrated = false }]
pictures = [{ file = "pictures/2.jpg", rights = "CC0-1.0", date = "1939-08", by = { name = "A guest" }, light = "one lamp", px_per_mm = 4 }]
[sheet]
size = [240, 320]
unsaid = { is = [9, 12], certainty = "possible" }
support = [260, 340]
frame = [400, 500]
by = "editor"
measured = "2024"
how = "a steel rule"
sight = true
said = "9 1/2 x 12 1/2 in."
paper = "laid-paper"
colour = "cream"
chain_lines = 25.5
laid_lines = 9
thickness = 0.12
watermark = [{ text = "an anchor", reference = [{ cite = "marks", number = "40" }], place = "lower left" }, "countermark AB"]
mounted_on = "grey card"
-- records/designs/1/pictures/2.jpg
no picture
"#;

/// The text of a page without its tags, spaces as one.
fn text(page: &str) -> String {
    let mut out = String::new();
    let mut rest = page;
    while let Some((before, after)) = rest.split_once('<') {
        out.push_str(before);
        out.push(' ');
        rest = after.split_once('>').map_or("", |(_, rest)| rest);
    }
    out.push_str(rest);
    let words: Vec<&str> = out.split_whitespace().collect();
    words
        .join(" ")
        .replace(" ,", ",")
        .replace("( ", "(")
        .replace(" )", ")")
}

#[test]
fn a_page_says_how_a_sheet_was_measured_and_what_its_paper_is() {
    let site = site_of(&[FERRY, SHEET]);
    let text = text(page(&site, "impression/1.2/"));
    for said in [
        "240 × 320 mm (sheet)",
        "9 × 12 mm (part not stated) (possible)",
        "260 × 340 mm (secondary support)",
        "400 × 500 mm (frame)",
        "Measured: Ed Itor, 2024, a steel rule, within a mount or frame, so the sheet may be larger",
        "Given as “9 1/2 x 12 1/2 in.”",
        "cream; chain lines 25.5 mm apart; 9 laid lines to the centimetre; 0.12 mm thick",
        "watermark: an anchor, lower left (Second 1987, no. 40); watermark: countermark AB",
        "laid down on grey card",
        "Foxing, lower margin (in raking light, Ed Itor, 2024)",
        "A tear at the left.",
        "p. 5, illustrated, probably this impression",
        "Prints of the Port, not illustrated",
        "By A guest, August 1939, one lamp.",
    ] {
        assert!(text.contains(said), "{said:?} is not in {text}");
    }
}

#[test]
fn a_watermark_is_listed_with_its_number_and_without_its_place() {
    let site = site_of(&[FERRY, SHEET]);
    let text = text(page(&site, "marks/"));
    assert!(
        text.contains("an anchor (Second 1987, no. 40): 1.2"),
        "{text}"
    );
    assert!(text.contains("countermark AB: 1.2"));
}
