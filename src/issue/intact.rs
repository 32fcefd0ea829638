//! Checks whether a site is still as it was published.

use std::fs;
use std::io;
use std::path::Path;

use rayon::prelude::*;

use super::mark::{self, Mark, MarkedBundle};
use super::staging::sibling;

/// A name for the site in `target`, the hash of its mark: two sites with one name have the same files.
///
/// `None` where the site is not intact: where there is none, where a file is missing or has another length
/// than it was published with, or where a killed compile left a folder beside it. Contents are not read.
#[must_use]
pub fn intact_site(target: &Path) -> Option<String> {
    let target = &fs::canonicalize(target).ok()?;
    if ["last", "next"]
        .iter()
        .any(|what| sibling(target, what).exists())
    {
        return None;
    }
    let bytes = fs::read(target.join(mark::NAME)).ok()?;
    let name = blake3::hash(&bytes).to_hex().to_string();
    let mark: Mark = serde_json::from_slice(&bytes).ok()?;
    let files: Vec<_> = mark.files.iter().collect();
    let bundles: Vec<_> = mark.bundles.iter().collect();
    let is_intact = files
        .par_iter()
        .all(|(path, file)| mark.has(target, path, file))
        && bundles
            .par_iter()
            .all(|(folder, bundle)| has_bundle(&mark, target, folder, bundle));
    is_intact.then_some(name)
}

/// Whether the files in the folder of a bundle are as many, and in sum as long, as were published there:
/// those of the bundle and those listed one by one.
fn has_bundle(mark: &Mark, target: &Path, folder: &str, bundle: &MarkedBundle) -> bool {
    let within = format!("{folder}/");
    let listed = mark.files.range(within.clone()..);
    let listed = listed.take_while(|(path, _)| path.starts_with(&within));
    let published = listed.fold((bundle.files, bundle.bytes), |(files, bytes), (_, file)| {
        (files + 1, bytes + file.bytes)
    });
    files_in(&target.join(folder)).is_ok_and(|found| found == published)
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
