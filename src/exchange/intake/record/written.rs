//! Keys and tables as text.

use std::fmt::Write as _;

use super::draft::{RecordDraft, Withheld};
use super::parts::{Entry, Part, Sections};
use super::sections::sections;
use super::values::inline;
use crate::exchange::intake::toml_text::key_text;
use crate::model::impression::Impression;

/// The text of a record: its keys in the order of the template, then its tables. Reading it gives the same impression.
#[must_use]
pub fn written(impression: &Impression) -> String {
    written_sections(impression, &sections(impression, &Withheld::default()))
}

impl RecordDraft {
    /// The text of the record, with what it keeps from readers.
    #[must_use]
    pub fn text(&self) -> String {
        let sections = sections(&self.impression, &self.withheld);
        written_sections(&self.impression, &sections)
    }
}

fn written_sections(impression: &Impression, sections: &Sections) -> String {
    let key = &impression.key;
    let mut text = if impression.as_given.is_some() {
        format!(
            "# Impression {key}, as its holder hands it in: [as_given] has the holder's own words.\n\n"
        )
    } else {
        format!("# Impression {key}.\n\n")
    };
    lines(&mut text, &sections.root);
    for part in &sections.parts {
        match part {
            Part::Table(name, entries) => {
                let _ = writeln!(text, "\n[{name}]");
                lines(&mut text, entries);
            }
            Part::List(name, tables) => {
                for entries in tables {
                    let _ = writeln!(text, "\n[[{name}]]");
                    lines(&mut text, entries);
                }
            }
        }
    }
    text
}

/// The keys of a table on one line, in braces.
#[must_use]
pub fn written_inline(entries: &[Entry]) -> String {
    inline(entries)
}

fn lines(text: &mut String, entries: &[Entry]) {
    for Entry { key, value } in entries {
        text.push_str(&key_text(key));
        text.push_str(" = ");
        text.push_str(value);
        text.push('\n');
    }
}
