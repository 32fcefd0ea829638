//! Markdown: every link of any text leads somewhere or is told, at its place.

use proptest::prelude::*;

use super::{any_text, check_reading, explore, of_pieces, sound};

const PIECES: &[&str] = &[
    "[a](design:14)",
    "[](impression:14.1)",
    "[a](lit:first-list \"p. 3\")",
    "![a](picture:14.1/recto)",
    "[a][r]",
    "[r]: holder:harbour-museum\n",
    "[R]: <design:1> 'title'\n",
    "[^1]",
    "[^1]: A note\n",
    "<https://example.org>",
    "<a@example.org>",
    "[a](javascript:alert(1))",
    "[a](<java\tscript:x>)",
    "[a](other.md)",
    "[a](//example.org)",
    "<b>",
    "</b>",
    "<!--",
    "-->",
    "<script>",
    "&nbsp;",
    "&#81;",
    "&#x202e;",
    "# ",
    "## A\n",
    "===\n",
    "---\n",
    "> ",
    "- ",
    "1. ",
    "    ",
    "```\n",
    "`",
    "*",
    "**",
    "_",
    "~~",
    "|",
    "|---|:--:|\n",
    "\n",
    "\n\n",
    "\\",
    "[",
    "]",
    "(",
    ")",
    "![",
    "](",
    ": a term\n",
    "\"",
    "'",
    "\u{ad}",
    "design:14",
    "person:artist",
    "\t",
    " ",
];

#[test]
fn any_text_is_read_and_its_links_are_told() {
    let texts = prop_oneof![4 => of_pieces(PIECES, 40), 1 => any_text(300)];
    explore("markdown", 200, &texts, |text| {
        let mut files = sound();
        for path in [
            "records/pages/introduction.md",
            "records/designs/14/design.md",
        ] {
            files.insert(path.to_owned(), text.clone().into_bytes());
        }
        check_reading(&files)
    });
}
