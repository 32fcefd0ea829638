//! The files of a site: pages and files for other programs.

use crate::exchange;
use crate::page::{self, Input, Site, Take, ThemeFault};

/// Makes every file of a site but its pictures, and hands out each: from several threads, in no order.
///
/// # Errors
/// [`ThemeFault`] where the theme is broken. Some files may have been handed out by then.
pub(super) fn each(input: &Input<'_>, take: &Take<'_>) -> Result<(), ThemeFault> {
    let book = page::book(input)?;
    page::each(&book, take)?;
    exchange::each(&book, take);
    Ok(())
}

/// Makes every file of a site but its pictures.
///
/// # Errors
/// [`ThemeFault`] where the theme is broken.
pub fn site(input: &Input<'_>) -> Result<Site, ThemeFault> {
    let ((), site) = Site::gathered(|take| each(input, take))?;
    Ok(site)
}
