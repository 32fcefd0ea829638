//! Checks whether a site is still as it was published.

use std::fs;
use std::io;
use std::path::Path;

use rayon::prelude::*;

use super::beside;
use super::mark::{self, MarkedBundle};
use super::old_site::OldSite;

/// A name for the site in `target`, the hash of its mark: two sites with one name have the same files.
///
/// `None` where the site is not intact: where there is none, where a file is missing or has another content
/// than it was published with, or where a killed compile left a folder beside it. Pages and assets are read only
/// where they are newer than the mark; pictures are told by their lengths. Files that no compile made do not
/// matter.
#[must_use]
pub fn intact_site(target: &Path) -> Option<String> {
    let target = &fs::canonicalize(target).ok()?;
    if beside::next(target).exists() || beside::last(target).exists() {
        return None;
    }
    let site = OldSite::read(target)?;
    let bytes = fs::read(target.join(mark::NAME)).ok()?;
    let name = blake3::hash(&bytes).to_hex().to_string();
    let files: Vec<_> = site.mark().files.iter().collect();
    let bundles: Vec<_> = site.mark().bundles.iter().collect();
    let is_intact = files
        .par_iter()
        .all(|(path, file)| site.is_as_published(path, file))
        && bundles
            .par_iter()
            .all(|(folder, bundle)| has_bundle(&site, folder, bundle));
    is_intact.then_some(name)
}

/// Whether the files of a bundle are there, in sum as long as they were published.
fn has_bundle(site: &OldSite, folder: &str, bundle: &MarkedBundle) -> bool {
    if bundle.paths.is_empty() {
        return has_unnamed_bundle(site, folder, bundle);
    }
    let folder = site.folder().join(folder);
    let lengths = bundle.paths.iter().map(|path| {
        let about = fs::symlink_metadata(folder.join(path)).ok()?;
        about.is_file().then_some(about.len())
    });
    lengths.sum::<Option<u64>>() == Some(bundle.bytes)
}

/// The same for a bundle whose files an earlier version did not name: whether the files in its folder are as many,
/// and in sum as long, as those of the bundle and those listed one by one.
fn has_unnamed_bundle(site: &OldSite, folder: &str, bundle: &MarkedBundle) -> bool {
    let within = format!("{folder}/");
    let listed = site.mark().files.range(within.clone()..);
    let listed = listed.take_while(|(path, _)| path.starts_with(&within));
    let published = listed.fold((bundle.files, bundle.bytes), |(files, bytes), (_, file)| {
        (files + 1, bytes + file.bytes)
    });
    files_in(&site.folder().join(folder)).is_ok_and(|found| found == published)
}

/// How many files are in a folder and those below it, and the sum of their lengths in bytes. Hidden files
/// do not count: some systems leave them in every folder that is opened.
fn files_in(folder: &Path) -> io::Result<(usize, u64)> {
    let mut sum = (0, 0);
    for entry in fs::read_dir(folder)? {
        let entry = entry?;
        if entry.file_name().as_encoded_bytes().starts_with(b".") {
            continue;
        }
        let about = entry.metadata()?;
        let (files, bytes) = if about.is_dir() {
            files_in(&entry.path())?
        } else {
            (1, about.len())
        };
        sum = (sum.0 + files, sum.1 + bytes);
    }
    Ok(sum)
}
