//! The form for a mail: lines "Label: " to fill in, in the words of the columns of the table.
//!
//! It is read by [`crate::exchange::intake::sighting_form`].

use std::fmt::Write as _;

use super::columns::{COLUMNS, FormColumn};
use crate::model::design::Design;
use crate::page::{Address, Argument, Here, Overview};

/// The columns that a report has, the most telling first.
const REPORTED: [&str; 22] = [
    "design",
    "title",
    "seen",
    "seen-by",
    "basis",
    "holder",
    "accession",
    "state",
    "printing",
    "kind",
    "numbering",
    "image",
    "sheet",
    "paper",
    "watermark",
    "signature",
    "inscription",
    "marks",
    "provenance",
    "photograph",
    "publish",
    "remarks",
];

/// The form; of one design with its number and title filled in. Lines that begin with `#` are not read back. Lines end as
/// those of mails do.
pub(super) fn form(here: &Here<'_>, design: Option<&Design>) -> String {
    let words = here.words();
    let settings = &here.public().settings;
    let contact = settings.contact.as_deref();
    let contact = contact.unwrap_or(words.word("form-help-no-contact"));
    let how = words.with("sighting-how", &[("contact", Argument::Text(contact))]);
    let page = match design {
        Some(design) => Address::Design(design.key.clone()),
        None => Address::Overview(Overview::Contribute),
    };
    let mut text = String::new();
    for paragraph in [
        words.word("sighting-title"),
        &settings.title,
        &page.absolute(&settings.address.value),
        "",
        &how,
        words.word("sighting-private"),
        words.word("sighting-several"),
    ] {
        text.push_str(&wrapped(paragraph));
    }
    text.push('\n');
    let columns = REPORTED.iter();
    let columns = columns.filter_map(|name| COLUMNS.iter().find(|column| column.name == *name));
    for column in columns {
        let label = words.word(&column.heading()).to_owned();
        let value = design.map_or_else(String::new, |design| prefilled(column, design));
        let colon = if label.ends_with('?') { "" } else { ":" };
        let _ = writeln!(text, "{label}{colon} {value}");
    }
    text.replace('\n', "\r\n")
}

/// What is known beforehand of a sheet of a design.
fn prefilled(column: &FormColumn, design: &Design) -> String {
    match (column.name, design.title()) {
        ("design", _) => design.number.clone(),
        ("title", Some(title)) => title.text.value.clone(),
        _ => String::new(),
    }
}

/// A paragraph in lines of at most 72 signs that begin with `#`.
fn wrapped(paragraph: &str) -> String {
    let mut text = String::from("#");
    let mut width = 1;
    for word in paragraph.split_whitespace() {
        let length = word.chars().count();
        if width > 1 && width + 1 + length > 72 {
            text.push_str("\n#");
            width = 1;
        }
        text.push(' ');
        text.push_str(word);
        width += 1 + length;
    }
    text.push('\n');
    text
}
