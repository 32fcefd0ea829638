//! Which findings a command prints: the options that all commands with findings share.
//!
//! In: the arguments, and the findings of a catalogue. Out: the findings that were asked for, as text or, for programs, by
//! themselves. Exit codes and counts are of all findings, whatever is printed.

use std::fmt::Write as _;
use std::path::{Component, Path, PathBuf};

use super::report::{self, Layout};
use super::streams::say;
use super::voice::Remedy;
use crate::model::bulk::Extent;
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::place::Sources;
use crate::read::near::nearest;

/// Which findings are printed.
#[derive(Clone, Debug, Default, clap::Args)]
pub(super) struct FindingOptions {
    /// Print only the findings of a code, such as value-unknown; may be given several times
    #[arg(long = "code", value_name = "CODE", value_parser = code)]
    codes: Vec<Code>,
    /// Print only the findings in a file or folder of the catalogue; may be given several times
    #[arg(long = "file", value_name = "PATH")]
    files: Vec<PathBuf>,
    /// Print every finding; otherwise three of each code that has more than ten
    #[arg(long)]
    all: bool,
}

/// The code that an argument names.
fn code(word: &str) -> Result<Code, Remedy> {
    Code::from_word(word).ok_or_else(|| {
        let all = Code::ALL.iter().map(|code| code.as_str());
        Remedy(match nearest(word, all) {
            Some(near) => format!("write `{near}`"),
            None => "`keyblock audit` prints the code below each finding".to_owned(),
        })
    })
}

impl FindingOptions {
    /// Whether findings are printed as they are without these options.
    pub(super) fn are_default(&self) -> bool {
        self.codes.is_empty() && self.files.is_empty() && !self.all
    }

    /// Those of `items` whose finding was asked for.
    pub(super) fn asked<'f, T>(
        &self,
        dir: &Path,
        items: &'f [T],
        finding: impl Fn(&T) -> &Finding,
        sources: &Sources,
    ) -> Vec<&'f T> {
        let files = self.in_catalogue(dir);
        let is_asked = |item: &&'f T| self.is_asked(finding(item), &files, sources);
        items.iter().filter(is_asked).collect()
    }

    /// Whether one finding was asked for; `files` are the paths in the catalogue.
    fn is_asked(&self, finding: &Finding, files: &[String], sources: &Sources) -> bool {
        let path = sources.path(finding.at.place.file);
        (self.codes.is_empty() || self.codes.contains(&finding.code))
            && (files.is_empty() || files.iter().any(|file| is_within(path, file)))
    }

    /// The findings that were asked for, as text. Where some were not, a last line says so.
    pub(super) fn report(
        &self,
        dir: &Path,
        findings: &[Finding],
        sources: &Sources,
        colour: bool,
    ) -> String {
        let asked = self.asked(dir, findings, |finding| finding, sources);
        let layout = Layout {
            extent: if self.all {
                Extent::Whole
            } else {
                Extent::Short
            },
            of_asked_codes: !self.codes.is_empty(),
            colour,
        };
        let mut text = report::findings(asked.iter().copied(), sources, layout);
        if !self.codes.is_empty() || !self.files.is_empty() {
            let _ = writeln!(
                text,
                "asked for with {}: {} of {} findings\n",
                self.in_words(),
                asked.len(),
                findings.len()
            );
        }
        text
    }

    /// "--code value-unknown --file records/designs/14".
    fn in_words(&self) -> String {
        let codes = self
            .codes
            .iter()
            .map(|code| format!("--code {}", code.as_str()));
        let files = self.files.iter();
        let files = files.map(|file| format!("--file {}", file.display()));
        codes.chain(files).collect::<Vec<_>>().join(" ")
    }

    /// Says which of the files that were asked for the catalogue does not have; whether there are any.
    pub(super) fn say_unknown_files(&self, dir: &Path, sources: &Sources) -> bool {
        let files = self.in_catalogue(dir);
        let is_known = |file: &str| {
            let mut paths = sources.paths();
            paths.any(|(_, path)| is_within(path, file)) || dir.join(file).exists()
        };
        let unknown: Vec<&String> = files.iter().filter(|file| !is_known(file)).collect();
        for file in &unknown {
            say(format_args!(
                "keyblock: the catalogue has no file or folder `{file}`"
            ));
            let all = sources.paths().map(|(_, path)| path);
            match nearest(file, all) {
                Some(near) => say(format_args!("  the nearest is `{near}`")),
                None => say("  name it as findings do: records/designs/14/design.toml"),
            }
        }
        !unknown.is_empty()
    }

    /// The files as paths in the catalogue, which is in `dir`. Each may be named from there or from the current folder.
    fn in_catalogue(&self, dir: &Path) -> Vec<String> {
        self.files
            .iter()
            .map(|file| in_catalogue(dir, file))
            .collect()
    }
}

fn in_catalogue(dir: &Path, file: &Path) -> String {
    let from_here = || {
        let full = file.canonicalize().ok()?;
        let within = full.strip_prefix(dir.canonicalize().ok()?).ok()?;
        Some(slashed(within))
    };
    let is_from_catalogue = file.is_relative() && dir.join(file).exists();
    let named = if is_from_catalogue { None } else { from_here() };
    named.unwrap_or_else(|| slashed(file))
}

/// A path with strokes, without "." and without what ".." takes back.
fn slashed(path: &Path) -> String {
    let mut parts: Vec<String> = Vec::new();
    for part in path.components() {
        match part {
            Component::CurDir => {}
            Component::ParentDir if !parts.is_empty() => {
                parts.pop();
            }
            part => parts.push(part.as_os_str().to_string_lossy().into_owned()),
        }
    }
    parts.join("/")
}

/// Whether a path is `file`, or lies in it.
fn is_within(path: &str, file: &str) -> bool {
    file.is_empty()
        || path
            .strip_prefix(file)
            .is_some_and(|rest| rest.is_empty() || rest.starts_with('/'))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::place::Place;

    #[test]
    fn only_what_is_asked_for_is_printed_and_that_is_said() {
        let mut sources = Sources::default();
        let mut findings = Vec::new();
        for n in [1, 2, 14, 140] {
            let file = sources.add(format!("records/designs/{n}/design.toml"), "date = 1\n");
            for code in [Code::ValueType, Code::DateSyntax] {
                findings.push(Finding::new(
                    code,
                    Place::new(file, 7..8),
                    format!("wrong {n}"),
                ));
            }
        }
        let dir = Path::new("/nowhere-at-all");
        let of = |options: &FindingOptions| {
            let asked = options.asked(dir, &findings, |f| f, &sources).into_iter();
            let asked = asked.map(|f| format!("{} {}", f.message, f.code.as_str()));
            asked.collect::<Vec<_>>()
        };
        let mut options = FindingOptions {
            codes: vec![Code::DateSyntax],
            files: vec![
                "./records/designs/14/".into(),
                "records/designs/2/design.toml".into(),
            ],
            all: false,
        };
        assert_eq!(
            of(&options),
            ["wrong 2 date-syntax", "wrong 14 date-syntax"]
        );
        let text = options.report(dir, &findings, &sources, false);
        assert!(
            text.ends_with(
                "asked for with --code date-syntax --file ./records/designs/14/ \
                 --file records/designs/2/design.toml: 2 of 8 findings\n\n"
            ),
            "{text}"
        );
        options.codes.clear();
        assert_eq!(of(&options).len(), 4);
        options.files = vec!["records/designs/1".into()];
        assert_eq!(of(&options), ["wrong 1 value-type", "wrong 1 date-syntax"]);
        assert_eq!(of(&FindingOptions::default()).len(), 8);
        assert!(FindingOptions::default().are_default() && !options.are_default());
    }

    #[test]
    fn a_file_is_named_from_the_catalogue_or_from_the_current_folder() {
        let folder = tempfile::tempdir().unwrap();
        let dir = folder.path().join("prints");
        let record = dir.join("records/designs/14/design.toml");
        std::fs::create_dir_all(record.parent().unwrap()).unwrap();
        std::fs::write(&record, "").unwrap();
        let named = "records/designs/14/design.toml";
        assert_eq!(in_catalogue(&dir, Path::new(named)), named);
        assert_eq!(in_catalogue(&dir, &record), named);
        assert_eq!(
            in_catalogue(&dir, Path::new("records/designs/../designs/14")),
            "records/designs/14"
        );
        assert_eq!(in_catalogue(&dir, &dir), "");
        assert_eq!(in_catalogue(&dir, Path::new("none.toml")), "none.toml");
    }
}
