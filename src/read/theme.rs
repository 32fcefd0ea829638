//! The theme: the built-in one, overridden file by file by the catalogue's own.
//!
//! In: the catalogue's folder and the name of its theme. Out: every file of the theme. A catalogue
//! whose theme is `laid` may override single files of it in `themes/laid/`.

use std::borrow::Cow;
use std::fs;
use std::path::Path;

use include_dir::{Dir, include_dir};

use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::place::Place;
pub use crate::model::theme::Theme;

/// The name of the built-in theme.
pub(crate) const BUILT_IN_THEME: &str = "laid";

static LAID: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/themes/laid");

/// The largest file that a theme may have, in bytes: ten times a typeface of one script.
const LARGEST: u64 = 16 * 1024 * 1024;

/// The theme `name` of the catalogue in `dir`, and findings on files that cannot be read. The findings
/// are placed at the start of the catalogue's first file, because a theme's files are not records.
#[must_use]
pub fn theme(dir: &Path, name: &Key) -> (Theme, Vec<Finding>) {
    let mut theme = built_in();
    let mut findings = Vec::new();
    let own = dir.join("themes").join(name.as_str());
    if let Ok(root) = dir.canonicalize() {
        add_folder(&root, &own, "", 0, &mut theme, &mut findings);
    }
    (theme, findings)
}

/// The built-in theme.
#[must_use]
pub fn built_in() -> Theme {
    let mut theme = Theme::default();
    add_built_in(&LAID, &mut theme);
    theme
}

fn add_built_in(folder: &Dir<'static>, theme: &mut Theme) {
    for file in folder.files() {
        if let Some(path) = file.path().to_str() {
            let path = path.replace('\\', "/");
            theme.files.insert(path, Cow::Borrowed(file.contents()));
        }
    }
    for folder in folder.dirs() {
        add_built_in(folder, theme);
    }
}

fn add_folder(
    root: &Path,
    folder: &Path,
    prefix: &str,
    depth: usize,
    theme: &mut Theme,
    findings: &mut Vec<Finding>,
) {
    let Ok(entries) = fs::read_dir(folder) else {
        return;
    };
    let mut names: Vec<_> = entries.flatten().map(|entry| entry.file_name()).collect();
    names.sort();
    for name in names {
        let full = folder.join(&name);
        let shown = name.to_string_lossy();
        if shown.starts_with('.') || shown.ends_with('~') {
            continue;
        }
        let path = format!("{prefix}{shown}");
        let mut fault = |code, what: &str| {
            let message = format!("the theme's file {path} {what}");
            findings.push(Finding::new(code, Place::default(), message));
        };
        match full.canonicalize() {
            Ok(target) if !target.starts_with(root) => {
                fault(
                    Code::PathLeaves,
                    "is a link that leads out of the catalogue",
                );
            }
            Ok(target) if target.is_dir() => {
                // Deeper nesting is taken for a link that forms a circle.
                if depth < 8 {
                    add_folder(root, &full, &format!("{path}/"), depth + 1, theme, findings);
                }
            }
            Ok(target) if target.is_file() => {
                let size = fs::metadata(&target).map_or(0, |about| about.len());
                if size > LARGEST {
                    fault(Code::FileTooLarge, "is larger than 16 MB");
                    continue;
                }
                match fs::read(&target) {
                    Ok(content) => {
                        theme.files.insert(path, Cow::Owned(content));
                    }
                    Err(_) => fault(Code::FileUnreadable, "cannot be read"),
                }
            }
            _ => fault(Code::FileUnreadable, "cannot be read"),
        }
    }
}

/// The catalogue's own themes, without the built-in one.
pub(super) fn own_themes(dir: &Path) -> Vec<String> {
    let Ok(entries) = fs::read_dir(dir.join("themes")) else {
        return Vec::new();
    };
    let mut names: Vec<String> = entries
        .flatten()
        .filter(|entry| entry.path().is_dir())
        .filter_map(|entry| entry.file_name().into_string().ok())
        .collect();
    names.sort();
    names
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_catalogue_overrides_single_files_and_keeps_the_rest() {
        let dir = tempfile::tempdir().unwrap();
        let own = dir.path().join("themes/laid/assets");
        fs::create_dir_all(&own).unwrap();
        fs::write(own.join("own.css"), "a{}").unwrap();
        let name = "laid".parse().unwrap();
        let (theme, findings) = theme(dir.path(), &name);
        assert_eq!(findings, []);
        assert_eq!(theme.text("assets/own.css"), Some("a{}"));
        for path in built_in().files.keys() {
            assert!(theme.files.contains_key(path), "{path}");
        }
    }

    #[cfg(unix)]
    #[test]
    fn a_theme_takes_nothing_from_outside_the_catalogue() {
        let outside = tempfile::tempdir().unwrap();
        fs::write(outside.path().join("secret"), "s").unwrap();
        let dir = tempfile::tempdir().unwrap();
        let own = dir.path().join("themes/laid");
        fs::create_dir_all(&own).unwrap();
        std::os::unix::fs::symlink(outside.path().join("secret"), own.join("leak.css")).unwrap();
        let (theme, findings) = theme(dir.path(), &"laid".parse().unwrap());
        assert!(!theme.files.contains_key("leak.css"));
        assert_eq!(findings.len(), 1);
        assert_eq!(findings[0].code, Code::PathLeaves);
    }
}
