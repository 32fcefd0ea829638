//! Whether a site stands as it was published.

use std::fs;
use std::io;
use std::path::Path;

use rayon::prelude::*;

use super::mark::{self, Mark, MarkedBundle};
use super::staging::sibling;

/// A name for the site in `target` as its mark describes it: where two are the same, so is every file
/// that was published. `None` where there is no site, where a file of it is gone or has not the length
/// it was published with, or where a killed compile left one to clear away.
#[must_use]
pub fn standing(target: &Path) -> Option<String> {
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
    let all_stand = files
        .par_iter()
        .all(|(path, file)| mark.stands(target, path, file))
        && bundles
            .par_iter()
            .all(|(folder, bundle)| stands(&mark, target, folder, bundle));
    all_stand.then_some(name)
}

/// Whether the files in the folder of a bundle are as many and as long as were published there: those
/// of the bundle, and those listed one by one.
fn stands(mark: &Mark, target: &Path, folder: &str, bundle: &MarkedBundle) -> bool {
    let within = format!("{folder}/");
    let listed = mark.files.range(within.clone()..);
    let listed = listed.take_while(|(path, _)| path.starts_with(&within));
    let published = listed.fold((bundle.files, bundle.bytes), |(files, bytes), (_, file)| {
        (files + 1, bytes + file.bytes)
    });
    files_in(&target.join(folder)).is_ok_and(|there| there == published)
}

/// How many files are in a folder and those below it, and how many bytes they have. Hidden ones, which
/// some systems leave wherever somebody looks, do not count.
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
