//! The tag of files that are loaded together: a short text that changes with their content, so that a browser never
//! mixes files of two compiles.

/// The tag of files with this content.
pub(super) fn tag<'a>(contents: impl IntoIterator<Item = &'a str>) -> String {
    let mut hash = blake3::Hasher::new();
    for content in contents {
        hash.update(content.as_bytes());
    }
    // Figures alone, so that no name stands in it by chance.
    let [a, b, c, d, ..] = *hash.finalize().as_bytes();
    u32::from_le_bytes([a, b, c, d]).to_string()
}
