//! What files carry beside pixels and is read here: the colour profile and the orientation. Both are read under
//! a limit, because a small file can hold what unpacks to gigabytes.

use std::io::Read;

use flate2::read::ZlibDecoder;
use image::metadata::Orientation;

/// The most bytes that a colour profile may have once unpacked. The largest that a press or a scanner comes with
/// have three million.
pub const PROFILE_LIMIT: u64 = 16 << 20;

/// The most bytes of an Exif block that are read. JPEG files hold 65,533 at most.
pub const EXIF_LIMIT: u64 = 1 << 20;

/// The colour profile of a file.
#[derive(Debug, PartialEq, Eq)]
pub enum EmbeddedProfile {
    /// None: the colours are taken for sRGB.
    None,
    /// An ICC profile as the file has it.
    Icc(Vec<u8>),
    /// One that is damaged or above the limit.
    Unusable,
    /// The pixels are sRGB already, converted as they are unpacked.
    Applied,
}

impl EmbeddedProfile {
    /// A profile stored as it is, `length` bytes long, if it is not above the limit.
    pub fn read(from: impl Read, length: u64) -> EmbeddedProfile {
        if length > PROFILE_LIMIT {
            return EmbeddedProfile::Unusable;
        }
        let mut profile = Vec::new();
        match from.take(length).read_to_end(&mut profile) {
            Ok(read) if read as u64 == length => EmbeddedProfile::Icc(profile),
            _ => EmbeddedProfile::Unusable,
        }
    }

    /// A profile compressed with zlib.
    pub fn inflated(from: impl Read) -> EmbeddedProfile {
        let limit = usize::try_from(PROFILE_LIMIT).unwrap_or(usize::MAX);
        let mut unpacked = ZlibDecoder::new(from);
        let (mut profile, mut filled) = (vec![0; 1 << 16], 0);
        loop {
            match unpacked.read(&mut profile[filled..]) {
                Ok(0) => break,
                Ok(read) => filled += read,
                Err(_) => return EmbeddedProfile::Unusable,
            }
            if filled == profile.len() {
                if filled >= limit {
                    return EmbeddedProfile::Unusable;
                }
                // Doubled, but never beyond the limit.
                profile.reserve_exact(filled.min(limit - filled));
                profile.resize(profile.capacity().min(limit), 0);
            }
        }
        profile.truncate(filled);
        EmbeddedProfile::Icc(profile)
    }

    /// Bytes that it takes in memory with everything made of it: a table of two bytes a number becomes one of
    /// eight, beside the file's own and the library's copy.
    pub fn memory(&self) -> u64 {
        match self {
            EmbeddedProfile::Icc(profile) => 16 * profile.len() as u64,
            _ => 0,
        }
    }
}

/// The orientation that an Exif block states, with or without the prefix that it has in JPEG files: some
/// programs write it into other kinds as well. A broken tag turns nothing.
pub fn orientation(exif: &[u8]) -> Orientation {
    let block = exif.strip_prefix(b"Exif\0\0").unwrap_or(exif);
    Orientation::from_exif_chunk(block).unwrap_or(Orientation::NoTransforms)
}
