//! The catalogues that come with the program: what the audit says of them.

use std::path::{Path, PathBuf};

use keyblock::audit::audit;
use keyblock::model::codes::Code;
use keyblock::model::finding;
use keyblock::study::Studies;

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// What the audit finds: file and code, in order. What the reader finds is not asked here.
fn found(folder: &Path) -> Vec<(String, Code)> {
    let catalogue = keyblock::read::read(folder).catalogue;
    let mut findings = audit(&catalogue, &Studies::of(&catalogue));
    finding::sort(&mut findings, &catalogue.sources);
    findings
        .iter()
        .map(|f| (catalogue.sources.path(f.at.place.file).to_owned(), f.code))
        .collect()
}

#[test]
fn the_example_raises_nothing() {
    assert_eq!(found(&root().join("tests/example-catalogue")), []);
}

/// The demonstration was given doubts to show what a doubt looks like; the audit names each, and
/// finds nothing else but the sheets to look at again since state i of design 7 was described, and
/// two clean-wiped printings of design 12 that nothing separates.
#[test]
fn the_demonstration_raises_the_doubts_it_was_given_and_no_others() {
    let expected = [
        ("15", Code::NumberTwice),
        ("16", Code::NumberAboveEdition),
        ("20", Code::IdentificationContradicted),
        ("4", Code::LookAgain),
    ]
    .map(|(n, code)| (format!("records/designs/7/impressions/{n}.toml"), code))
    .into_iter()
    .chain([(
        "records/designs/9/impressions/6.toml".to_owned(),
        Code::DatedBeforeState,
    )]);
    let gap = (
        "records/designs/12/design.toml".to_owned(),
        Code::PrintingsInseparable,
    );
    let expected: Vec<_> = [gap].into_iter().chain(expected).collect();
    assert_eq!(found(&root().join("demo-site")), expected);
}
