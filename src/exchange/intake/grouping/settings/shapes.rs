//! The keys of `designs.toml`. The file is read as one tree (`read`), which keeps the place of each text in a list; the schema
//! follows the shapes, and tests hold the two together.

use crate::read::schema::FileShape;
use crate::read::shape::{Shape, Takes, may, must, unpublished};

/// `designs.toml`.
pub static FILE: FileShape = FileShape {
    table: &HEAD,
    lists: &[(
        "designs",
        FileShape {
            table: &DESIGN,
            lists: &[],
        },
    )],
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

    /// A value of each key, as the reader takes it.
    fn value(takes: &Takes) -> &'static str {
        match takes {
            Takes::Flag => "true",
            _ => "\"1\"",
        }
    }

    #[test]
    fn the_reader_takes_every_declared_key() {
        for key in HEAD.own {
            let (_, faults) = read(&format!("{} = {}\n", key.name, value(&key.takes)));
            assert_eq!(faults, [], "{}", key.name);
        }
        let lines = DESIGN.own.iter();
        let lines = lines.map(|key| format!("{} = {}\n", key.name, value(&key.takes)));
        let (settings, faults) = read(&format!("[[designs]]\n{}", lines.collect::<String>()));
        assert_eq!(faults, []);
        assert_eq!(settings.designs.len(), 1);
    }

    /// The help on an unknown key names those that are read.
    #[test]
    fn the_reader_takes_no_key_that_is_not_declared() {
        let offered = |text: &str| -> Vec<String> {
            let (_, faults) = read(text);
            let help = faults.into_iter().find_map(|fault| fault.help).unwrap();
            let keys = help.strip_prefix("write one of: ").unwrap();
            keys.split(", ").map(str::to_owned).collect()
        };
        for key in offered("nosuch = 1\n") {
            let is_list = FILE.lists.iter().any(|(name, _)| *name == key);
            assert!(is_list || HEAD.key(&key).is_some(), "{key}");
        }
        for (name, of) in FILE.lists {
            for key in offered(&format!("[[{name}]]\nis = \"1\"\nnosuch = 1\n")) {
                assert!(of.table.key(&key).is_some(), "{name}: {key}");
            }
        }
    }
}
