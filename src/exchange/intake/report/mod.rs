//! Reports: what was understood of a file, for the editor, for the registrar who sent it, and for programs.
//!
//! In: a [`Reported`] file: its table, what it proposes, the catalogue. Out: text and bytes. Nothing is decided here.
//!
//! | file | subject |
//! |---|---|
//! | `reported` | the file that is reported |
//! | `account` | how much of each column was understood; how many rows and designs are what |
//! | `words` | columns, doubts and notes in the words of a print room |
//! | `facts` | what was understood of a row, in words |
//! | `row` | a row as it is told to the registrar |
//! | `text` | the report on a terminal |
//! | `page` | one page to mail back, with the template `page.html` |
//! | `table` | one row for each row, for a spreadsheet program |
//! | `document` | the document for programs |
//! | `proposed` | `proposed.toml`: the records as they would be written |
//!
//! The page and the table may be sent to the holder: of records of the catalogue they show only what readers may know. The
//! text, the document and `proposed.toml` are for the editors.

mod account;
mod document;
mod facts;
mod page;
mod proposed;
mod reported;
mod row;
mod table;
mod text;
mod words;

pub use account::{Account, ColumnAccount, DesignCounts, RowCounts, UnreadValue};
pub use document::IntakeDocument;
pub use page::page;
pub use proposed::proposed;
pub use reported::Reported;
pub use table::table;
pub use text::text;
