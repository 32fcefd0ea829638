//! Setting: the building blocks of every kind of page.
//!
//! In: the public catalogue, its studies, pictures and theme. Out: the [`book`] that pages are made
//! from, and the types of their parts.
//!
//! | file | subject |
//! |---|---|
//! | `address` | addresses of pages and of places within them |
//! | `html` | the only text that is printed unescaped |
//! | `theme_fault` | a fault of a theme |
//! | `words` | the words of a language, from the theme's Fluent files |
//! | `template` | the theme's templates |
//! | `ink` | the block ink, legible on both papers |
//! | `pictures` | published pictures |
//! | `exports` | the files for other programs, as data |
//! | `redirects` | from the addresses of former keys to those of present ones |
//! | `book` | all data that pages are made from |
//! | `export_links` | links to them |
//! | `forms` | where the forms are that readers fill in |
//! | `leaf` | one page before it is framed |
//! | `reading_order` | the order of designs and sheets |
//! | `number_size` | the size of the number at the head of a page |

pub(crate) mod address;
pub(crate) mod book;
pub(crate) mod export_links;
pub(crate) mod exports;
pub(crate) mod forms;
pub(crate) mod html;
pub(crate) mod ink;
pub(crate) mod leaf;
pub(crate) mod number_size;
pub(crate) mod pictures;
pub(crate) mod reading_order;
pub(crate) mod redirects;
pub(crate) mod template;
pub(crate) mod theme_fault;
pub(crate) mod words;
