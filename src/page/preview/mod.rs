//! Preview: what the head of a page says of it to other programs: search engines, and programs that show a link
//! with a picture and a sentence.
//!
//! In: a page before it is framed. Out: the fields of its frame. No page of a kind says anything for itself here, so
//! none can be forgotten.
//!
//! | file | subject |
//! |---|---|
//! | `open_graph` | title, sentence and picture of a link to the page (Open Graph) |
//! | `trail` | the pages above a page |
//! | `schema_org` | the record of the page in the vocabulary of schema.org |

pub(crate) mod open_graph;
pub(crate) mod schema_org;
mod trail;
