//! The smallest catalogues: files in one literal, each below a line `-- path`.

use std::fs;
use std::path::Path;

use keyblock::audit::audit;
use keyblock::model::catalogue::Catalogue;
use keyblock::model::codes::Code;
use keyblock::model::finding::{self, Finding, Severity};
use keyblock::model::public::{Concealed, Public};
use keyblock::study::{PublishedStudies, Studies};

/// What every catalogue needs, unless the literal brings its own.
const GROUND: [(&str, &str); 2] = [
    (
        "catalogue.toml",
        "title = \"The Prints\"\nsiglum = \"TP\"\nartist = \"artist\"\nlanguage = \"en\"\n\
         address = \"https://prints.example.org\"\nlicence = \"CC-BY-4.0\"\n",
    ),
    (
        "records/people/artist.toml",
        "name = \"The Artist\"\nborn = \"1890\"\ndied = \"1950\"\n",
    ),
];

/// A sheet whose identification its own observation contradicts: a doubt, and no error.
pub const DOUBTFUL: &str = r#"
-- records/designs/1/design.toml
titles = [{ text = "The Ferry" }]
points = [{ key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" }]
states = [{ key = "dark", shows = { moon = "absent" } }, { key = "moonlit", shows = { moon = "present" } }]
-- records/designs/1/impressions/1.toml
status = "untraced"
identified = { state = "dark" }
observed = { moon = "present" }
"#;

/// Two museums in two countries.
pub const TWO_MUSEUMS: &str = r#"
-- records/holders/museum.toml
name = "Harbour Museum"
kind = "museum"
place = "Northport"
country = "NO"
-- records/holders/gallery.toml
name = "Town Gallery"
kind = "museum"
place = "Southport"
country = "SE"
"#;

/// Writes the files of `literals`, with those that every catalogue needs, into a folder of their own.
pub fn lay_down(literals: &[&str]) -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    let write = |path: &str, text: &str| {
        let path = folder.path().join(path);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, text).unwrap();
    };
    for (path, text) in GROUND {
        write(path, text);
    }
    for literal in literals {
        for file in format!("\n{literal}").split("\n-- ").skip(1) {
            let (path, text) = file.split_once('\n').unwrap();
            write(path.trim(), text);
        }
    }
    folder
}

/// Reads a catalogue that has no errors of its own.
pub fn sound(folder: &Path) -> Catalogue {
    let reading = keyblock::read::read(folder);
    let faults: Vec<&Finding> = reading
        .findings
        .iter()
        .filter(|f| f.severity() == Severity::Error)
        .collect();
    assert!(
        faults.is_empty(),
        "the literal itself is faulty: {faults:#?}"
    );
    reading.catalogue
}

/// The catalogue of a literal, and its studies.
pub fn studied(literals: &[&str]) -> (Catalogue, Studies) {
    let folder = lay_down(literals);
    let catalogue = sound(folder.path());
    let studies = Studies::of(&catalogue);
    (catalogue, studies)
}

/// The findings of the audit on a literal, in order.
pub fn audited(literals: &[&str]) -> (Catalogue, Vec<Finding>) {
    let (catalogue, studies) = studied(literals);
    let mut findings = audit(&catalogue, &studies);
    finding::sort(&mut findings, &catalogue.sources);
    (catalogue, findings)
}

/// The same as lines: `path:line:column code: message`.
pub fn audit_lines(literals: &[&str]) -> Vec<String> {
    let (catalogue, findings) = audited(literals);
    findings
        .iter()
        .map(|f| {
            let at = catalogue.sources.position(f.at.place);
            let path = catalogue.sources.path(f.at.place.file);
            let code = f.code.as_str();
            format!("{path}:{}:{} {code}: {}", at.line, at.column, f.message)
        })
        .collect()
}

/// The codes of the audit's findings.
pub fn codes(literals: &[&str]) -> Vec<Code> {
    let (_, findings) = audited(literals);
    findings.iter().map(|f| f.code).collect()
}

/// The catalogue of a literal as readers may know it, and its studies.
pub fn studied_for_readers(literals: &[&str]) -> (Public, PublishedStudies) {
    let folder = lay_down(literals);
    published(sound(folder.path()), "a private owner")
}

/// A catalogue as readers may know it, and its studies.
pub fn published(catalogue: Catalogue, private_owner: &str) -> (Public, PublishedStudies) {
    let of_everything = Studies::of(&catalogue);
    let concealed = Concealed::of(catalogue, private_owner);
    let studies = PublishedStudies::of(&concealed, of_everything);
    (concealed.into_public(), studies)
}
