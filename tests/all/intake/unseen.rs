//! Compile, audit and the served proof make nothing of the inbox.

use std::fs;

use super::{catalogue, museum};
use crate::program::{bytes_below, compile, keyblock, text};

#[test]
fn what_waits_in_the_inbox_changes_neither_site_nor_findings() {
    let folder = catalogue();
    let at = text(folder.path());
    compile(folder.path());
    let site = bytes_below(&folder.path().join("web"));
    let findings = keyblock(&["audit", at, "--all"]);
    museum(folder.path(), &[]);
    // What is no key, no record and no text must not be looked at either.
    let inbox = folder.path().join("records/inbox");
    fs::write(inbox.join("museum/design.toml"), "titles = 1").unwrap();
    fs::write(inbox.join("Not A Key.toml"), [0xff, 0xfe, 0]).unwrap();
    let again = keyblock(&["audit", at, "--all"]);
    assert_eq!((again.code, again.out), (findings.code, findings.out));
    compile(folder.path());
    assert!(
        site == bytes_below(&folder.path().join("web")),
        "the site changed"
    );
    for (path, bytes) in &site {
        let text = String::from_utf8_lossy(bytes);
        assert!(!text.contains("1962.45"), "{}", path.display());
    }
}
