//! Records of open standards as tables: LIDO, Linked Art, manifests of IIIF.
//!
//! In: the bytes of a file. Out: a table of each standard in it, as sheets give one: a row for each record, a column for each
//! path. Nothing is fetched; what the file only names by its address is told in a note. Documents that declare entities are
//! refused, and every size is bounded.
//!
//! **Nothing is lost.** Every text of a record stands in a cell: in one that is composed of several texts, because a grammar
//! reads it whole (`Name (role)`, `sheet: 166 x 243 mm`), or under its own path. Exceptions are structure: classes (`type`),
//! `@context`, namespaces, kinds of identifiers, "preferred", "current", the addresses and labels of concepts that a heading or
//! a composed cell names in our words (height and width by their order), and the form of numbers in JSON. Several texts of one
//! path are joined by "; "; accession numbers, titles, pages and pictures have a column each. The number of a row is that of the record in
//! the file. Attributes that only say how a record was made, the ends of very long paths, and the rarest paths of a file with
//! very many are in the column `further`.
//!
//! | file | subject |
//! |---|---|
//! | `limits` | how large files and records may be |
//! | `node` | a record as a tree |
//! | `xml`, `json` | the records of a document, one at a time |
//! | `row` | a record as texts under paths |
//! | `sheet` | rows as a table |
//! | `reading` | what a standard reads, then what is left |
//! | `measures` | sizes in words |
//! | `lido`, `linked_art`, `iiif` | the standards |
//! | `file` | which of them a file holds, and its tables |

mod file;
mod iiif;
mod json;
mod lido;
mod limits;
mod linked_art;
mod measures;
mod node;
mod reading;
mod row;
mod sheet;
#[cfg(test)]
mod tests;
mod xml;

pub use file::tables;
