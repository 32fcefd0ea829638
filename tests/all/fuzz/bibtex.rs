//! Literature: however a file is mangled, what can be read is read, and the rest is told at its place.

use proptest::prelude::*;

use super::{any_text, check_reading, explore, of_pieces, sound};

const PIECES: &[&str] = &[
    "@book{a,",
    "@inbook{b,",
    "@string{",
    "@preamble{",
    "@comment{",
    "@xdata{c,",
    "@article(d,",
    "}",
    "{",
    "\n@",
    "\n",
    ",",
    "=",
    "#",
    "\"",
    " title = {A title}",
    " title = ",
    " year = 1961",
    " date = {1961-05/..}",
    " date = {19XX}",
    " author = {Ray, C. and others}",
    " author = \"M\u{fc}ller, {J.}\"",
    " editor = {{A Society}}",
    " pages = {1--2, 7}",
    " crossref = {b}",
    " crossref = {a}",
    " xdata = {c, d}",
    " ids = {x, y}",
    " np = {Northport}",
    " address = np",
    " month = jan",
    " volume = {2}",
    " edition = 2",
    " url = {https://example.org/a_b%20c}",
    " doi = {10.1000/182}",
    "\\\"o",
    "\\'{e}",
    "\\a{",
    "\\&",
    "\\",
    "$x^2$",
    "$",
    "~",
    "--",
    "%",
    " note = ",
    "np",
    " number = {7}",
    " editortype = {compiler}",
    " langid = {german}",
    " pagetotal = {3}",
    "first-list",
];

#[test]
fn any_literature_is_read_or_told() {
    let texts = prop_oneof![4 => of_pieces(PIECES, 40), 1 => any_text(200)];
    explore("bibtex", 60, &texts, |text| {
        let mut files = sound();
        files.insert(
            "records/literature.bib".to_owned(),
            text.clone().into_bytes(),
        );
        check_reading(&files)
    });
}
