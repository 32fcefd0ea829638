//! Publishes finished pages and pictures as a site on disk, all or nothing.
//!
//! In: every file of the site, by address, and the prepared files of its pictures. Out: the whole site. A
//! new site is staged beside the old one ([`staging`]), each page as it is made ([`publishing`]); at the end
//! the two are exchanged ([`swap`]). Files that did not change are linked, not written again. Where a
//! compile is killed, the last good site stays as it was, and the next compile removes the staged files.
//!
//! A folder is replaced only where it is empty or carries the mark of an earlier compile ([`mark`]), and only what
//! compiles made in it is deleted ([`old_site`]). Everything else there ([`foreign`]) is carried over to the new site
//! while the old one is cleared away ([`clear`]), or the compile is refused before the exchange.
//!
//! Everything that is done in the folder of the site goes through [`disk`]. The register of issued addresses is a file of
//! the catalogue, which [`register`] writes; [`together`] writes records, all of a command or none.
#![allow(
    clippy::disallowed_methods,
    reason = "this stage writes the site to disk"
)]

mod beside;
mod bundle;
mod clear;
mod disk;
mod fault;
mod foreign;
mod intact;
mod lock;
pub(crate) mod mark;
mod old_site;
mod publishing;
pub mod register;
mod staging;
mod swap;
mod target;
pub mod together;

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

pub use bundle::{Bundle, Bundled};
pub use fault::{InTheWay, PublishFault};
pub(crate) use fault::{free_in_megabytes, in_megabytes};
pub(crate) use intact::intact_site;
pub use lock::{Lock, LockFault};
pub use publishing::Published;
pub(crate) use publishing::Publishing;
pub(crate) use target::check_target;

use rayon::prelude::*;

/// The files of a site.
#[derive(Clone, Debug, Default)]
pub struct SiteParts<'a> {
    /// The bytes of each page and asset, by path relative to the site, with `/`.
    pub files: BTreeMap<&'a str, &'a [u8]>,
    /// Single pictures: the prepared file of each, by path relative to the site. The path follows from the
    /// picture's content, so a file never changes under its path.
    pub pictures: BTreeMap<String, PathBuf>,
    /// Packed files, by the folder of the site that they belong in.
    pub bundles: BTreeMap<String, Bundle>,
}

/// Publishes `parts` as the site in `target`.
///
/// Where nothing differs from the site that is there, it is left untouched.
///
/// # Errors
/// [`PublishFault`]; the site that was in `target` is unchanged.
pub fn publish(parts: &SiteParts<'_>, target: &Path) -> Result<Published, PublishFault> {
    let publishing = Publishing::begin(target)?;
    let files = parts.files.par_iter();
    files.for_each(|(path, bytes)| publishing.put(path, bytes));
    publishing.finish(&parts.pictures, &parts.bundles)
}

#[cfg(test)]
mod tests;
