//! The folders of a catalogue that hold its own files, in which no site may be published.

use std::fmt;
use std::fs;
use std::path::{Path, PathBuf};

use super::cache;

/// The folders within a catalogue whose files are read or written by its keepers.
const OWN: [&str; 3] = ["records", "themes", "schema"];

/// Why a folder cannot take the site of a catalogue. Displayed, it is one phrase.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SourceClash {
    /// It is the catalogue's folder.
    IsCatalogue,
    /// The catalogue is in it.
    HoldsCatalogue,
    /// It is this folder of the catalogue, or in it.
    Within(String),
}

impl fmt::Display for SourceClash {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            SourceClash::IsCatalogue => f.write_str("it is the folder of the catalogue itself"),
            SourceClash::HoldsCatalogue => f.write_str("the catalogue is in it"),
            SourceClash::Within(folder) => {
                write!(f, "the catalogue keeps its own files in `{folder}`")
            }
        }
    }
}

/// Why the site of the catalogue in `dir` cannot be published in `target`; `None` where it can. Links are followed.
#[must_use]
pub fn source_clash(dir: &Path, target: &Path) -> Option<SourceClash> {
    let (catalogue, target) = (resolved(dir), resolved(target));
    if target == catalogue {
        return Some(SourceClash::IsCatalogue);
    }
    if catalogue.starts_with(&target) {
        return Some(SourceClash::HoldsCatalogue);
    }
    let own = OWN.map(|name| dir.join(name));
    let folder = own.into_iter().chain([cache::root(dir)]).find(|folder| {
        let folder = resolved(folder);
        target.starts_with(&folder) || folder.starts_with(&target)
    })?;
    let name = folder.file_name().unwrap_or_default().to_string_lossy();
    Some(SourceClash::Within(name.into_owned()))
}

/// A path without links and without `..`, as far as it exists.
fn resolved(path: &Path) -> PathBuf {
    if let Ok(path) = fs::canonicalize(path) {
        return path;
    }
    match (path.parent(), path.file_name()) {
        (Some(above), Some(name)) => resolved(above).join(name),
        // It ends in `..`.
        (Some(below), None) => {
            let below = resolved(below);
            below.parent().map_or(below.clone(), Path::to_owned)
        }
        (None, _) => path.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn within(folder: &str) -> SourceClash {
        SourceClash::Within(folder.to_owned())
    }

    #[test]
    fn no_site_goes_among_the_files_of_its_catalogue() {
        let folder = tempfile::tempdir().unwrap();
        let dir = folder.path().join("prints");
        fs::create_dir_all(dir.join("records/pages")).unwrap();
        let clash = |target: &str| source_clash(&dir, &dir.join(target));
        for target in ["", ".", "records/..", "web/..", "../prints"] {
            assert_eq!(clash(target), Some(SourceClash::IsCatalogue), "{target:?}");
        }
        for target in ["..", "../", "../..", "../nowhere/.."] {
            assert_eq!(
                clash(target),
                Some(SourceClash::HoldsCatalogue),
                "{target:?}"
            );
        }
        for target in [
            "records",
            "records/",
            "records/pages/web",
            "web/../records/new",
        ] {
            assert_eq!(clash(target), Some(within("records")), "{target:?}");
        }
        assert_eq!(clash("themes/laid/web"), Some(within("themes")));
        assert_eq!(clash("schema"), Some(within("schema")));
        assert_eq!(clash(".keyblock/web"), Some(within(".keyblock")));
        for target in [
            "web",
            "records-site",
            "public/web",
            "../elsewhere",
            "../prints-web",
        ] {
            assert_eq!(clash(target), None, "{target:?}");
        }
    }

    #[cfg(unix)]
    #[test]
    fn a_link_to_records_is_records() {
        use std::os::unix::fs::symlink;
        let folder = tempfile::tempdir().unwrap();
        let dir = folder.path().join("prints");
        fs::create_dir(&dir).unwrap();
        let kept = folder.path().join("kept");
        fs::create_dir(&kept).unwrap();
        symlink(&kept, dir.join("records")).unwrap();
        symlink(&dir, folder.path().join("same")).unwrap();
        assert_eq!(
            source_clash(&dir, &kept.join("web")),
            Some(within("records"))
        );
        let same = folder.path().join("same");
        assert_eq!(source_clash(&dir, &same), Some(SourceClash::IsCatalogue));
        assert_eq!(source_clash(&same, &dir.join("web")), None);
    }
}
