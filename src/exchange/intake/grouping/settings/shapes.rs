//! The keys of `designs.toml`. The file is read as one tree (`read`), which keeps the place of each text in a list; the schema
//! follows the shapes, and tests hold the two together.

use crate::read::schema::FileShape;
use crate::read::shape::{Shape, Takes, may, must, unpublished};

/// `designs.toml`.
pub static FILE: FileShape = FileShape {
    table: &HEAD,
    lists: &[
        (
            "sheets",
            FileShape {
                table: &SHEET,
                lists: &[],
            },
        ),
        (
            "designs",
            FileShape {
                table: &DESIGN,
                lists: &[],
            },
        ),
    ],
};

const TEXTS: Takes = Takes::Several(&Takes::Text);

/// What stands above the designs.
static HEAD: Shape = unpublished(
    "the head of designs.toml",
    &[
        may(
            "leave_out",
            TEXTS,
            "sheets of which no record is to be made: accession numbers, or \"row 7\"",
        ),
        may(
            "unplaced",
            TEXTS,
            "sheets of which nothing tells the design (told, not read)",
        ),
    ],
);

/// What is said of a single sheet.
static SHEET: Shape = unpublished(
    "a sheet",
    &[
        must(
            "sheet",
            Takes::Text,
            "its accession number, or its row (\"row 7\")",
        ),
        may(
            "is",
            Takes::Text,
            "the recorded impression that it is (\"14.7\")",
        ),
        may("is_not", TEXTS, "the recorded impressions that it is not"),
        may("why", Takes::Text, "the editor's reason"),
        may(
            "may_be",
            TEXTS,
            "the recorded impressions that it may be, and why (told, not read)",
        ),
    ],
);

/// A design.
static DESIGN: Shape = unpublished(
    "a design",
    &[
        must(
            "is",
            TEXTS,
            "the key of a design of the catalogue, or \"new\"; a list where it may be one of several",
        ),
        may(
            "key",
            Takes::Text,
            "the key that a new design would get (told, not read)",
        ),
        may(
            "number",
            Takes::Text,
            "the number that readers see, of a new design",
        ),
        may("title", Takes::Text, "its title"),
        may(
            "sheets",
            TEXTS,
            "its sheets: accession numbers, or \"row 7\" where there is none",
        ),
        may(
            "added",
            TEXTS,
            "sheets that were proposed for it since it was settled (told, not read)",
        ),
        may("settled", Takes::Flag, "true: an editor judged it"),
        may("digest", Takes::Text, "written by Keyblock"),
        may(
            "why",
            TEXTS,
            "why the sheets are one design (told, not read)",
        ),
        may("splits", TEXTS, "why others are not of it (told, not read)"),
        may("doubts", TEXTS, "what to look at (told, not read)"),
    ],
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::exchange::intake::grouping::settings::read;

    /// A value of each key, as the reader takes it; `named` is a record that a list names.
    fn value(takes: &Takes, named: &str) -> String {
        match takes {
            Takes::Flag => "true".to_owned(),
            _ => format!("\"{named}\""),
        }
    }

    /// A record that a list names: an impression, or a design.
    fn named(list: &str) -> &'static str {
        if list == "sheets" { "1.1" } else { "1" }
    }

    #[test]
    fn the_reader_takes_every_declared_key() {
        for key in HEAD.own {
            let (_, faults) = read(&format!("{} = {}\n", key.name, value(&key.takes, "1")));
            assert_eq!(faults, [], "{}", key.name);
        }
        for (name, of) in FILE.lists {
            let lines = of.table.own.iter();
            let value = |takes| value(takes, named(name));
            let lines = lines.map(|key| format!("{} = {}\n", key.name, value(&key.takes)));
            let (_, faults) = read(&format!("[[{name}]]\n{}", lines.collect::<String>()));
            assert_eq!(faults, [], "{name}");
        }
    }

    /// The help on an unknown key names those that are read.
    #[test]
    fn the_reader_takes_no_key_that_is_not_declared() {
        let offered = |text: &str| -> Vec<String> {
            let (_, faults) = read(text);
            let helps: Vec<String> = faults.into_iter().filter_map(|fault| fault.help).collect();
            let mut keys = helps
                .iter()
                .filter_map(|help| help.strip_prefix("write one of: "));
            let keys = keys.next().unwrap();
            keys.split(", ").map(str::to_owned).collect()
        };
        for key in offered("nosuch = 1\n") {
            let is_list = FILE.lists.iter().any(|(name, _)| *name == key);
            assert!(is_list || HEAD.key(&key).is_some(), "{key}");
        }
        for (name, of) in FILE.lists {
            for key in offered(&format!(
                "[[{name}]]\nis = \"{}\"\nnosuch = 1\n",
                named(name)
            )) {
                assert!(of.table.key(&key).is_some(), "{name}: {key}");
            }
        }
    }
}
