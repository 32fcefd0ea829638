//! The cache of a catalogue.

/// The folder of a catalogue that holds the cache: results that are used again while their input stays
/// the same. It may be deleted at any time.
pub(super) const CACHE: &str = ".keyblock";
