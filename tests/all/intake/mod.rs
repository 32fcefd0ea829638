//! `keyblock intake`, run as a program: what it writes into the inbox, what it reports, and what it leaves alone.

/// Accepting: what is written, what stays in the inbox, what is kept from readers.
mod accepting;
/// Two runs at a time.
mod at_a_time;
/// The command: its files, a second run, wrong usage, faults of files.
mod command;
/// Our own forms come back.
mod own_forms;
/// Photographs that come with a file.
mod photographs;
/// Rows that an editor says are recorded impressions.
mod recorded;
/// The report: the page, the table, the text, the document.
mod report;
/// What compile, audit and proof make of the inbox: nothing.
mod unseen;

use std::fs;
use std::path::{Path, PathBuf};

use crate::program::{Ran, keyblock, text};
use crate::small::{TWO_MUSEUMS, lay_down};

/// Two designs, one of them with a sheet of the museum, and a second record that keeps its numbers and its owner private.
pub const FERRY: &str = r#"
-- records/designs/1/design.toml
number = "1"
titles = [{ text = "The Ferry" }]
date = "1912"
literature = [{ cite = "first-list", number = "9" }]
technique = "colour-woodcut"
states = [{ key = "dark" }, { key = "moonlit" }]
-- records/designs/2/design.toml
titles = [{ text = "The Lock" }]
technique = "colour-woodcut"
-- records/literature.bib
@book{first-list, author = {Willem, Ada}, title = {First List}, year = {1950}}
-- records/designs/1/impressions/1.toml
holder = "museum"
accession = "1950.3"
status = "located"
-- records/holders/owner-a.toml
name = "Hidden Owner"
kind = "private"
-- records/designs/1/impressions/2.toml
status = "untraced"
numbering = "7/60"
former_accessions = [{ holder = "museum", number = "1962.45" }]
private = ["numbering", "former_accessions"]
provenance = [{ owner = "owner-a", from = "1930" }]
"#;

/// A registrar's table with German headings: one sheet that is recorded, some that are not, hostile cells.
pub const HOLDINGS: &str = "\
Inv.-Nr.;Titel;Datierung;Technik;Blattmaß;Creditline;Bemerkung;Auflage;Willem 1950
1950.3;The Ferry;um 1912;Farbholzschnitt;24,1 x 17,8 cm;Geschenk A. Brook, 1950;;12/50;
1962.44;The Lock;1913;Farbholzschnitt auf Japanpapier;24,1 x 17,8 cm;Ankauf 1962;=HYPERLINK(\"http://example.org\");;
1962.45;<script>alert(1)</script> & Co;kurz vor Mittag;Farbholzschnitt;gerahmt;Ankauf 1962;\"Ein Fleck, \"\"braun\"\"\";7/60;9
1962.46;The Lock;1913;;241 x 178 mm;Ankauf 1962;;;
";

/// The catalogue with both museums, in a folder of its own.
pub fn catalogue() -> tempfile::TempDir {
    lay_down(&[TWO_MUSEUMS, FERRY])
}

/// A file beside the catalogue.
pub fn hand_in(folder: &Path, file: &str, bytes: impl AsRef<[u8]>) -> PathBuf {
    let to = folder.join("sent");
    fs::create_dir_all(&to).unwrap();
    fs::write(to.join(file), bytes).unwrap();
    to.join(file)
}

/// Runs `keyblock intake` on the catalogue.
pub fn intake(folder: &Path, words: &[&str]) -> Ran {
    keyblock(&[&["intake", "--in", text(folder)], words].concat())
}

/// Hands the registrar's table in as the museum.
pub fn museum(folder: &Path, more: &[&str]) -> Ran {
    let file = hand_in(folder, "holdings.csv", HOLDINGS);
    intake(folder, &[&[text(&file), "--as", "museum"], more].concat())
}

/// A file of the museum's folder in the inbox.
pub fn inbox(folder: &Path, file: &str) -> String {
    fs::read_to_string(folder.join("records/inbox/museum").join(file)).unwrap()
}
