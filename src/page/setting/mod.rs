//! Setting: what every page is made with, whatever it is about.
//!
//! In: the public catalogue, its studies, pictures and theme. Out: the [`book`] that pages are set from,
//! and the types that pages are put together of.
//!
//! | file | subject |
//! |---|---|
//! | `address` | where each page stands, and the places within pages |
//! | `html` | the only text that is printed unescaped |
//! | `theme_fault` | what is wrong with a theme |
//! | `words` | the words of a language, from the theme's Fluent files |
//! | `template` | the theme's templates |
//! | `ink` | the block ink, legible on both papers |
//! | `pictures` | pictures as pages show them |
//! | `exports` | the files for other programs, as data |
//! | `book` | everything a page may need, and one page's view of it |
//! | `export_links` | links to them |
//! | `leaf` | one page, ready to be framed |
//! | `reading_order` | the order in which readers meet designs and sheets |
//! | `number_size` | how large the number at the head of a page is set |

pub(crate) mod address;
pub(crate) mod book;
pub(crate) mod export_links;
pub(crate) mod exports;
pub(crate) mod html;
pub(crate) mod ink;
pub(crate) mod leaf;
pub(crate) mod number_size;
pub(crate) mod pictures;
pub(crate) mod reading_order;
pub(crate) mod template;
pub(crate) mod theme_fault;
pub(crate) mod words;
