//! How large files of records and single records may be. A record is held while it is read, the file throughout, so that
//! reading takes less than 300 MB. Measured with records of LIDO of 5.4 kB: the table takes 2.2 kB for each beside the file.

/// The largest file in UTF-8, in bytes: 50,000 records of LIDO of 3.3 kB each.
pub(super) const FILE_BYTES: u64 = 160 << 20;
/// The most text of one record, in bytes.
pub(super) const RECORD_BYTES: usize = 4 << 20;
/// The most elements, attributes and properties of one record.
pub(super) const RECORD_NODES: usize = 100_000;
/// The longest element, comment or text that a parser may have to hold, in bytes.
pub(super) const PART_BYTES: usize = RECORD_BYTES;
/// The longest name of a step in a path, in bytes; the rest of a longer one is in the column `further`.
pub(super) const STEP_BYTES: usize = 200;
/// The longest path to which steps are added, in bytes: every text of a record has one.
pub(super) const PATH_BYTES: usize = 600;
/// The deepest nesting of elements or objects.
pub(super) const DEPTH: usize = 64;
/// The most columns of a table of records; rarer paths share the column `further`.
pub(super) const COLUMNS: usize = 400;
/// The most paths that are counted; what comes later is in the column `further`.
pub(super) const PATHS: usize = 16_384;
/// The most columns of one path whose texts stand in a cell each; further ones share the last.
pub(super) const NUMBERED: usize = 9;
/// The most texts or addresses that a note names.
pub(super) const NAMED: usize = 20;
