//! The limits of what is read, in one place. Each is far above what a catalogue needs, and low enough
//! that hostile or broken files exhaust neither memory nor time. What exceeds a limit is an error
//! that names the limit (docs/definitions.md, "Limits").

/// The largest text file that is read, in bytes: a hundred times the largest record known.
pub(crate) const LARGEST_TEXT: u64 = 4 * 1024 * 1024;

/// The largest register that is read, in bytes. An address takes about 150: that of 20,000 impressions, each with
/// two pictures, has some 8 MB.
pub(crate) const LARGEST_REGISTER: u64 = 64 * 1024 * 1024;

/// How deep folders may lie in each other below `records/`; pictures may be kept in subfolders.
pub(crate) const DEEPEST_FOLDER: usize = 24;

/// How deep the lists, tables and parts of dotted keys of a record may lie in each other, the quotations,
/// lists and emphases of a text, and the braces of the literature. The deepest record that has a meaning
/// takes six.
pub(crate) const DEEPEST_NESTING: usize = 32;

/// How many items a list of a record may have. Lists are compared item by item where a record of a few
/// dozen states is the largest known.
pub(crate) const MOST_ITEMS: usize = 1000;

/// How many candidates a design may have: states, each once for every printing that contains it. All
/// pairs of them are compared.
pub(crate) const MOST_CANDIDATES: usize = 1000;

/// How many answers the candidates of a design may have together: candidates times points. 200 states at
/// 200 points have 40,000.
pub(crate) const MOST_ANSWERS: usize = 50_000;

/// The longest text that an abbreviation of the literature may stand for, in bytes, with all that it
/// names in turn.
pub(crate) const LONGEST_ABBREVIATION: usize = 64 * 1024;

/// In how many ways an entry of the literature may take fields from others. An entry and the entries of
/// a chain count one each; where two of them share a third, it counts twice.
pub(crate) const MOST_WAYS: usize = 64;

/// How many faults of syntax are told of one file. A file with more is not of the kind that its name says.
pub(crate) const MOST_SYNTAX_FAULTS: usize = 100;

/// How many findings of each severity are told of one file while it is read.
pub(crate) const MOST_FINDINGS: usize = 1000;

/// A number of bytes in whole megabytes, for messages.
pub(crate) fn megabytes(bytes: u64) -> u64 {
    bytes / 1_000_000
}
