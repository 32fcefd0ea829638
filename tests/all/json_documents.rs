//! The commands print for programs the documents that docs/JSON.md shows.

use std::fs;
use std::path::Path;

use serde_json::Value;

use crate::pictures::photograph;
use crate::program::{Ran, keyblock, text};
use crate::small::lay_down;

const QUAY: &str = r#"
-- records/designs/1/design.toml
titles = [{ text = "A Quay" }]
technique = "screenprint"
literature = [{ cite = "first-list", number = "9", relation = "covers-ours" }]
points = [
  { key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" },
  { key = "lamps", ask = "How many lamps?", kind = "count", rests_on = "matrix" },
  { key = "height", ask = "How tall?", kind = "measure", unit = "mm", tolerance = 2, rests_on = "matrix" },
]
states = [
  { key = "dark", shows = { moon = "absent", lamps = 2, height = 246 } },
  { key = "moonlit", shows = { moon = "present", lamps = 3, height = 232 } },
]
printings = [{ key = "own", kind = "artist", states = ["moonlit"] }]
settled = [{ code = "state-in-no-printing", why = "Known from one proof.", by = "artist", date = "2026-01" }]
reference_picture = "1.1/recto"
-- records/designs/1/impressions/1.toml
status = "untraced"
identified = { state = "dark" }
observed = { moon = "present" }
pictures = [{ file = "pictures/both.png", rights = "CC0-1.0" }]
-- records/literature.bib
@book{first-list, author = {Willem, Ada}, title = {First List}, year = {1950}}
-- records/designs/1/impressions/2.toml
status = "untraced"
former_accessions = [{ number = "1962.44" }]
identified = { state = "moonlit", printing = "own" }
maybe_same_as = [{ impression = "1.3", why = "the same fold" }]
sheet = { size = [310, 425] }
pictures = [{ file = "pictures/both.png", rights = "CC0-1.0" }]
-- records/designs/1/impressions/3.toml
status = "untraced"
sheet = { size = [309, 425] }
pictures = [{ file = "pictures/blank.png", rights = "CC0-1.0" }]
"#;

/// The list that a compile makes for other sites, without the table of folding and set in lines.
fn index_for_other_sites(folder: &str) -> Ran {
    let mut ran = keyblock(&["compile", folder]);
    let path = Path::new(folder).join("web/resolve/index.json");
    let index = fs::read(&path).unwrap_or_default();
    let mut index: Value = serde_json::from_slice(&index).unwrap_or_default();
    index["folding"] = serde_json::json!({ "a": "AÀÁ" });
    ran.out = format!("{index:#}\n");
    ran
}

/// A table with one sheet that is recorded under a former number, and one cell that is not understood.
fn handed_in(folder: &str) -> Ran {
    let file = Path::new(folder).join("holdings.csv");
    let table = "Accession number,Title,Date,Medium,Sheet size (cm),Credit line,Edition\n\
                 1962.44,A Quay,c. 1931,Screenprint on wove paper,31 x 42.5,\"Purchased, 1962\",12/50\n\
                 1970.2,The Mole,one evening,,,,\n";
    fs::write(&file, table).unwrap();
    keyblock(&[
        "intake",
        text(&file),
        "--as",
        "quay-museum",
        "--in",
        folder,
        "--json",
    ])
}

#[test]
fn the_documents_are_those_that_are_shown() {
    let folder = lay_down(&[QUAY]);
    photograph(folder.path(), "both.png", None);
    photograph(folder.path(), "blank.png", None);
    let folder = text(folder.path());
    let see = ["--see", "lamps!=3:probable", "height=246.5"];
    let documents = [
        keyblock(&["audit", folder, "--json"]),
        keyblock(&[&["identify", "1", "--in", folder, "--json"], see.as_slice()].concat()),
        keyblock(&["census", "1", "--in", folder, "--json"]),
        keyblock(&["census", "1", "--in", folder, "--doubts", "--json"]),
        keyblock(&["align", "1", "--in", folder, "--json"]),
        keyblock(&["resolve", "--in", folder, "--json", "TP 1 ii", "196244"]),
        keyblock(&[
            "terms",
            "techniques",
            "silkscreen",
            "--in",
            folder,
            "--json",
        ]),
        handed_in(folder),
        index_for_other_sites(folder),
    ];
    let page = Path::new(env!("CARGO_MANIFEST_DIR")).join("docs/JSON.md");
    let kept = fs::read_to_string(&page).unwrap();
    let mut shown = String::new();
    let mut documents = documents.iter();
    for (at, piece) in kept.split("```").enumerate() {
        if at > 0 {
            shown.push_str("```");
        }
        // Every second piece stands between fences.
        if at % 2 == 1 {
            let document = documents
                .next()
                .expect("docs/JSON.md shows more documents than there are");
            assert_eq!(document.code, Some(0), "{}", document.err);
            shown.push_str("json\n");
            shown.push_str(&document.out);
        } else {
            shown.push_str(piece);
        }
    }
    assert!(
        documents.next().is_none(),
        "docs/JSON.md shows fewer documents than there are"
    );
    if std::env::var_os("KEYBLOCK_BLESS").is_some() {
        fs::write(&page, shown).unwrap();
    } else {
        assert_eq!(
            kept, shown,
            "docs/JSON.md does not show what the commands print"
        );
    }
}
