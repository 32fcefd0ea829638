//! The file that was handed in: its bytes, its name, and the house whose folder it belongs in.

use std::fs;
use std::io::Read as _;
use std::path::{Component, Path, PathBuf};

use super::fault::IntakeFault;
use crate::exchange::intake::table::FILE_BYTES;
use crate::model::key::Key;

/// The longest name of a file that is kept, in bytes.
const LONGEST_NAME: usize = 120;

/// A file that was handed in.
#[derive(Clone, Debug)]
pub struct HandedIn {
    /// Its name, fit for the inbox.
    pub file: String,
    /// What it holds.
    pub bytes: Vec<u8>,
    /// The house: the name that was given, else that of the folder of the inbox in which it lies, else made of the file's.
    pub name: Key,
}

impl HandedIn {
    /// Reads a file. `name` is the house, where one is named.
    ///
    /// # Errors
    /// [`IntakeFault`] where it is no plain file, is too large or cannot be read, is a file that intake wrote, or gives no
    /// name.
    pub fn read(dir: &Path, file: &Path, name: Option<&str>) -> Result<HandedIn, IntakeFault> {
        // A link that the user names is followed; what it leads to must be a plain file.
        let about = fs::metadata(file).map_err(|error| unreadable(file, &error))?;
        if !about.is_file() {
            let message = format!("`{}` is no file", file.display());
            return Err(IntakeFault::usage(
                message,
                "name the file that was handed in",
            ));
        }
        let in_inbox = in_inbox(dir, file)?;
        let shown = file.file_name().map(|name| name.to_string_lossy());
        let shown = kept_name(&shown.unwrap_or_default());
        let name = match name {
            Some(name) => name.parse().map_err(|_| {
                let message = format!("`{name}` is no name for the inbox");
                let help = match Key::nearest_form(name) {
                    Some(near) => format!(
                        "names have lower-case letters and digits, joined by hyphens: --as {near}"
                    ),
                    None => {
                        "names have lower-case letters and digits, joined by hyphens".to_owned()
                    }
                };
                IntakeFault::usage(message, help)
            })?,
            None => match in_inbox {
                Some(name) => name,
                None => of_stem(file)?,
            },
        };
        let too_large = || {
            let mib = FILE_BYTES >> 20;
            let message = format!(
                "`{}` is larger than the {mib} MiB that are read",
                file.display()
            );
            IntakeFault::not_done(message, "split the table into several files")
        };
        if about.len() > FILE_BYTES {
            return Err(too_large());
        }
        let mut bytes = Vec::new();
        let opened = fs::File::open(file);
        let read = opened.and_then(|file| file.take(FILE_BYTES + 1).read_to_end(&mut bytes));
        read.map_err(|error| unreadable(file, &error))?;
        if bytes.len() as u64 > FILE_BYTES {
            return Err(too_large());
        }
        Ok(HandedIn {
            file: shown,
            bytes,
            name,
        })
    }
}

fn unreadable(file: &Path, error: &std::io::Error) -> IntakeFault {
    let message = format!("`{}` cannot be read: {error}", file.display());
    match error.kind() {
        std::io::ErrorKind::NotFound => {
            let message = format!("there is no file `{}`", file.display());
            IntakeFault::usage(message, "name the file that was handed in")
        }
        _ => IntakeFault::not_done(message, "nothing was written"),
    }
}

/// The house in whose folder of the inbox the file lies, as a file that was handed in; `None` where it lies elsewhere.
fn in_inbox(dir: &Path, file: &Path) -> Result<Option<Key>, IntakeFault> {
    let inbox: Option<PathBuf> = fs::canonicalize(dir.join("records/inbox")).ok();
    let within = inbox.and_then(|inbox| {
        let full = fs::canonicalize(file).ok()?;
        full.strip_prefix(inbox).ok().map(Path::to_owned)
    });
    let Some(within) = within else {
        return Ok(None);
    };
    let parts = within.components().filter_map(|part| match part {
        Component::Normal(part) => part.to_str(),
        _ => None,
    });
    let parts: Vec<&str> = parts.collect();
    if let [name, "handed-in", .., _] | [name, "accepted", _, _] = parts[..]
        && let Ok(name) = name.parse()
    {
        return Ok(Some(name));
    }
    let message = format!("`{}` is a file of the inbox", file.display());
    let help = "name the file that was handed in; the inbox keeps it in the folder `handed-in`";
    Err(IntakeFault::usage(message, help))
}

/// A name for the inbox from the name of the file.
fn of_stem(file: &Path) -> Result<Key, IntakeFault> {
    let stem = file.file_stem().map(|stem| stem.to_string_lossy());
    stem.and_then(|stem| Key::nearest_form(&stem))
        .ok_or_else(|| {
            let message = format!(
                "the name of `{}` gives no name for the inbox",
                file.display()
            );
            IntakeFault::usage(message, "name the house that hands in, with --as")
        })
}

/// A name without what a file system or a page would stumble over.
fn kept_name(name: &str) -> String {
    let is_bad = |c: char| c.is_control() || "/\\:*?\"<>|".contains(c);
    let mut kept: String = name
        .chars()
        .map(|c| if is_bad(c) { '_' } else { c })
        .collect();
    if kept.starts_with('.') || kept.is_empty() {
        kept.insert(0, '_');
    }
    // The end is kept, since it tells the kind of the file.
    while kept.len() > LONGEST_NAME {
        kept.remove(0);
    }
    kept
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_name_of_a_file_is_kept_where_it_can_be() {
        assert_eq!(kept_name("Bestand März.xlsx"), "Bestand März.xlsx");
        assert_eq!(kept_name("a\nb:c.csv"), "a_b_c.csv");
        assert_eq!(kept_name(".csv"), "_.csv");
        assert!(kept_name(&format!("{}.csv", "ü".repeat(200))).ends_with("ü.csv"));
    }

    #[test]
    fn a_file_of_the_inbox_names_its_house_and_what_intake_wrote_is_refused() {
        let dir = tempfile::tempdir().unwrap();
        let inbox = dir.path().join("records/inbox/harbour");
        fs::create_dir_all(inbox.join("handed-in")).unwrap();
        for file in ["handed-in/list.csv", "report.csv"] {
            fs::write(inbox.join(file), "Nr\n1\n").unwrap();
        }
        let kept = HandedIn::read(dir.path(), &inbox.join("handed-in/list.csv"), None).unwrap();
        assert_eq!(kept.name.as_str(), "harbour");
        let ours = HandedIn::read(dir.path(), &inbox.join("report.csv"), None).unwrap_err();
        assert!(ours.is_usage);
        let file = dir.path().join("Bestand 2024.csv");
        fs::write(&file, "Nr\n1\n").unwrap();
        let read = |name| HandedIn::read(dir.path(), &file, name);
        assert_eq!(read(None).unwrap().name.as_str(), "bestand-2024");
        assert_eq!(read(Some("harbour")).unwrap().name.as_str(), "harbour");
        let refused = read(Some("Harbour Museum")).unwrap_err();
        assert!(refused.is_usage && refused.help.ends_with("--as harbour-museum"));
        assert!(
            HandedIn::read(dir.path(), dir.path(), None)
                .unwrap_err()
                .is_usage
        );
    }
}
