//! How large files, rows and texts may be, so that no file takes more than some 300 MB of memory.
//!
//! 50,000 rows of 20 columns are a million cells and some 20 MB of text.

/// The largest file, in bytes.
pub const FILE_BYTES: u64 = 48 << 20;
/// The most that a ZIP archive may unpack to, in bytes; it is unpacked as it is read and never held.
pub(in crate::exchange::intake) const UNPACKED_BYTES: u64 = 512 << 20;
/// The most files in a ZIP archive.
pub(in crate::exchange::intake) const PACKED_FILES: u64 = 4_000;
/// The longest element or text of an XML document, in bytes.
pub(in crate::exchange::intake) const NODE_BYTES: u64 = 1 << 20;
/// The most text in all cells of a file, in bytes; the same again for texts that cells share.
pub(in crate::exchange::intake) const TEXT_BYTES: u64 = 48 << 20;
/// The most cells of a file, empty ones between others included.
pub(in crate::exchange::intake) const CELLS: u64 = 8_000_000;
/// The most rows of a sheet; spreadsheet programs have no more.
pub(in crate::exchange::intake) const ROWS: u64 = 1_048_576;
/// The most columns of a sheet; spreadsheet programs have no more.
pub(in crate::exchange::intake) const COLUMNS: u64 = 16_384;
/// The most texts that cells share.
pub(in crate::exchange::intake) const SHARED_TEXTS: u64 = 2_000_000;
/// The most rows that a note names; more are counted.
pub(in crate::exchange::intake) const NAMED_ROWS: usize = 20;
