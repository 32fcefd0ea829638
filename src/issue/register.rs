//! Writes the register: `register.toml` in the catalogue's folder.
//!
//! One line for one address, in the order of the kinds and of the numbers in keys, so that two versions of the file
//! merge line by line, and a comparison of versions shows what changed. What is read from the file and written again is
//! the same to the byte. The new file is written beside the old one and renamed, so that the register is whole at
//! every moment.

use std::fmt::Write as _;
use std::fs::{self, File};
use std::io::{self, Write as _};
use std::path::{Path, PathBuf};

use crate::model::issued_address::IssuedAddress;
use crate::model::register::{IssuedEntry, REGISTER_FILE, REGISTER_FORM, Register, Said};

const HEAD: &str = "\
# The register: every address that this catalogue has issued, and how each entry read in each edition.
# Only `keyblock issue` writes this file. Keep it with the records; do not change it by hand.
";

/// The text of a register.
#[must_use]
pub fn register_text(register: &Register) -> String {
    let mut text = format!("{HEAD}form = {REGISTER_FORM}\n\neditions = [\n");
    for edition in &register.editions {
        let uncommitted = edition.uncommitted.iter();
        let uncommitted = uncommitted.map(|why| format!(", uncommitted = {}", quoted(why)));
        let _ = writeln!(
            text,
            "  {{ edition = {}, dated = {}, address = {}{} }},",
            quoted(&edition.edition.value),
            quoted(edition.dated.value.as_str()),
            quoted(&edition.address),
            uncommitted.collect::<String>()
        );
    }
    text.push_str("]\n");
    let mut entries: Vec<(&IssuedAddress, &IssuedEntry)> = register.entries.iter().collect();
    entries.sort_by(|(a, _), (b, _)| a.in_file_order(b));
    let mut section = None;
    for (address, entry) in entries {
        if section.replace(address.kind()) != Some(address.kind()) {
            let _ = write!(text, "\n[{}]\n", address.kind());
        }
        let _ = writeln!(
            text,
            "{} = {}",
            quoted(&address.key()),
            line(register, entry)
        );
    }
    text
}

/// The value of an entry's line.
fn line(register: &Register, entry: &IssuedEntry) -> String {
    let mut parts = vec![format!(
        "since = {}",
        quoted(name(register, entry.since.value))
    )];
    for (aspect, said) in &entry.said {
        if let Some(value) = said_text(register, entry, said) {
            parts.push(format!("{aspect} = {value}"));
        }
    }
    if !entry.revised.is_empty() {
        let editions = entry.revised.iter().map(|(edition, subjects)| {
            let subjects: Vec<String> = subjects.iter().map(ToString::to_string).collect();
            (*edition, subjects.join(" "))
        });
        parts.push(format!("revised = {}", by_edition(register, editions)));
    }
    if !entry.holds.is_empty() {
        let holds: Vec<String> = entry
            .holds
            .iter()
            .map(|(s, d)| format!("{s}:{d}"))
            .collect();
        parts.push(format!("holds = {}", quoted(&holds.join(" "))));
    }
    format!("{{ {} }}", parts.join(", "))
}

/// A value that has held since the entry was first issued, or the values by edition.
fn said_text(register: &Register, entry: &IssuedEntry, said: &Said) -> Option<String> {
    let values: Vec<(usize, &str)> = said.iter().collect();
    match values.as_slice() {
        [] => None,
        [(edition, value)] if *edition == entry.since.value => Some(quoted(value)),
        _ => {
            let values = values
                .iter()
                .map(|(edition, value)| (*edition, (*value).to_owned()));
            Some(by_edition(register, values))
        }
    }
}

fn by_edition(register: &Register, values: impl Iterator<Item = (usize, String)>) -> String {
    let values = values.map(|(edition, value)| {
        format!("{} = {}", quoted(name(register, edition)), quoted(&value))
    });
    format!("{{ {} }}", values.collect::<Vec<_>>().join(", "))
}

fn name(register: &Register, edition: usize) -> &str {
    let edition = register.editions.get(edition);
    edition.map_or("", |edition| edition.edition.value.as_str())
}

/// A basic string of TOML.
fn quoted(text: &str) -> String {
    let mut out = String::with_capacity(text.len() + 2);
    out.push('"');
    for c in text.chars() {
        match c {
            '"' => out.push_str("\\\""),
            '\\' => out.push_str("\\\\"),
            '\n' => out.push_str("\\n"),
            '\t' => out.push_str("\\t"),
            '\r' => out.push_str("\\r"),
            c if c.is_control() => {
                let _ = write!(out, "\\u{:04X}", u32::from(c));
            }
            c => out.push(c),
        }
    }
    out.push('"');
    out
}

/// A register that is written beside the one it will replace. Where it is dropped before [`StagedRegister::put`],
/// nothing of it remains.
#[derive(Debug)]
pub struct StagedRegister {
    unfinished: PathBuf,
    target: PathBuf,
}

impl StagedRegister {
    /// Writes the register of the catalogue in `dir` to the disk, beside the present one.
    ///
    /// # Errors
    /// As the disk refuses; the present register is unchanged.
    pub fn write(dir: &Path, register: &Register) -> io::Result<StagedRegister> {
        let staged = StagedRegister {
            unfinished: dir.join(".register.toml.unfinished"),
            target: dir.join(REGISTER_FILE),
        };
        let mut file = File::create(&staged.unfinished)?;
        file.write_all(register_text(register).as_bytes())?;
        file.sync_all()?;
        Ok(staged)
    }

    /// Puts it in the place of the present one, in one step.
    ///
    /// # Errors
    /// As the disk refuses; the present register is unchanged.
    pub fn put(self) -> io::Result<()> {
        // Where the register is a link, the file that it names is replaced and the link stays.
        let target = fs::canonicalize(&self.target).unwrap_or_else(|_| self.target.clone());
        fs::rename(&self.unfinished, &target)?;
        let folder = target
            .parent()
            .filter(|folder| !folder.as_os_str().is_empty());
        // Not every system can write a folder to the disk; the register is whole in either case.
        let _ = File::open(folder.unwrap_or(Path::new("."))).and_then(|folder| folder.sync_all());
        Ok(())
    }
}

impl Drop for StagedRegister {
    fn drop(&mut self) {
        let _ = fs::remove_file(&self.unfinished);
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use super::*;
    use crate::model::edtf::Date;
    use crate::model::issued_address::IssuedKind;
    use crate::model::place::{Place, Placed};
    use crate::model::register::{Aspect, Digest, IssuedEdition, Subject};

    fn edition(name: &str, dated: &str) -> IssuedEdition {
        IssuedEdition {
            edition: Placed::new(name.to_owned(), Place::default()),
            dated: Placed::new(Date::parse(dated).unwrap(), Place::default()),
            address: "https://prints.example.org".to_owned(),
            uncommitted: (name == "2").then(|| "a \"proof\" for the press".to_owned()),
        }
    }

    fn register() -> Register {
        let mut register = Register {
            editions: vec![edition("1", "2024-06-01"), edition("2", "2026-10-15")],
            entries: BTreeMap::new(),
        };
        let mut add = |kind, key: &str, since, change: &dyn Fn(&mut IssuedEntry)| {
            let mut entry = IssuedEntry::new(since, Place::default());
            change(&mut entry);
            let address = IssuedAddress::parse(kind, key).unwrap();
            register.entries.insert(address, entry);
        };
        add(IssuedKind::Design, "10", 0, &|entry| {
            entry
                .said
                .insert(Aspect::Number, Said::since(0, "10 \\a".to_owned()));
        });
        add(IssuedKind::Design, "2", 0, &|entry| {
            let mut number = Said::since(0, "2".to_owned());
            number.set(1, "2a");
            entry.said.insert(Aspect::Number, number);
            entry
                .said
                .insert(Aspect::Standing, Said::since(1, "doubtful".to_owned()));
            entry
                .revised
                .insert(1, vec![Subject::Titles, Subject::States]);
            let digest = Digest::parse("00ff1c").unwrap();
            entry.holds.insert(Subject::Titles, digest);
        });
        add(IssuedKind::Impression, "2.7", 1, &|_| {});
        register
    }

    #[test]
    fn one_line_is_one_address_in_the_order_of_the_numbers() {
        let expected = "form = 1

editions = [
  { edition = \"1\", dated = \"2024-06-01\", address = \"https://prints.example.org\" },
  { edition = \"2\", dated = \"2026-10-15\", address = \"https://prints.example.org\", uncommitted = \"a \\\"proof\\\" for the press\" },
]

[design]
\"2\" = { since = \"1\", number = { \"1\" = \"2\", \"2\" = \"2a\" }, standing = { \"2\" = \"doubtful\" }, revised = { \"2\" = \"titles states\" }, holds = \"titles:00ff1c\" }
\"10\" = { since = \"1\", number = \"10 \\\\a\" }

[impression]
\"2.7\" = { since = \"2\" }
";
        assert_eq!(
            register_text(&register()).strip_prefix(HEAD),
            Some(expected)
        );
    }

    #[test]
    fn a_staged_register_that_is_dropped_leaves_the_old_one() {
        let dir = tempfile::tempdir().unwrap();
        let file = dir.path().join(REGISTER_FILE);
        fs::write(&file, "old").unwrap();
        drop(StagedRegister::write(dir.path(), &register()).unwrap());
        assert_eq!(fs::read_to_string(&file).unwrap(), "old");
        assert_eq!(fs::read_dir(dir.path()).unwrap().count(), 1);
        StagedRegister::write(dir.path(), &register())
            .unwrap()
            .put()
            .unwrap();
        assert_eq!(
            fs::read_to_string(&file).unwrap(),
            register_text(&register())
        );
        assert_eq!(fs::read_dir(dir.path()).unwrap().count(), 1);
    }
}
