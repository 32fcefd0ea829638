//! Texts: Markdown, the longer texts of the theme, and the catalogue's own pages.
//!
//! | file | subject |
//! |---|---|
//! | `markdown` | Markdown to clean HTML |
//! | `long_text` | longer texts of the theme, in parts with a heading |
//! | `catalogue_pages` | the order of the catalogue's own pages |
//! | `catalogue_page` | one of them |
//! | `plain_text` | Markdown as the words that readers see |

pub(crate) mod catalogue_page;
pub(crate) mod catalogue_pages;
pub(crate) mod lines;
pub(crate) mod long_text;
pub(crate) mod markdown;
pub(crate) mod plain_text;
