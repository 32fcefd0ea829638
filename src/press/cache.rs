//! The cache of a catalogue.

/// The folder of a catalogue that holds the cache: what need not be made again while its input stays the
/// same. It may be deleted at any time.
pub(super) const CACHE: &str = ".keyblock";
