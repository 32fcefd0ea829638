//! The bytes of a photograph's file, and a guard so that a panic in a decoder does not end the program.

use std::fs::File;
use std::io::{ErrorKind, Read};
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::Path;

use crate::fault::Fault;

/// The bytes of a file that may be a picture within the limit.
pub fn read(path: &Path, pixel_limit: u64) -> Result<Vec<u8>, Fault> {
    let refused = |error: std::io::Error| match error.kind() {
        ErrorKind::NotFound | ErrorKind::NotADirectory => Fault::Missing,
        _ => Fault::Unopened(error.to_string()),
    };
    // Checked before opening: opening a pipe would wait until something writes into it.
    let about = std::fs::metadata(path).map_err(refused)?;
    if !about.is_file() {
        return Err(Fault::NotAFile);
    }
    // Uncompressed RGBA of 16 bits takes 8 bytes a pixel; the rest is for what else files carry.
    let limit = pixel_limit.saturating_mul(8).saturating_add(64 << 20);
    if about.len() > limit {
        return Err(Fault::TooManyBytes {
            bytes: about.len(),
            limit,
        });
    }
    let mut bytes = Vec::with_capacity(usize::try_from(about.len()).unwrap_or(0));
    File::open(path)
        .and_then(|file| file.take(limit).read_to_end(&mut bytes))
        .map_err(refused)?;
    Ok(bytes)
}

/// Runs a decoder. Decoders are third-party code that reads hostile bytes: a panic in one becomes a fault
/// of that picture, and the program goes on.
pub fn guarded<T>(decode: impl FnOnce() -> Result<T, Fault>) -> Result<T, Fault> {
    catch_unwind(AssertUnwindSafe(decode))
        .unwrap_or_else(|_| Err(Fault::Damaged("its content makes no sense".into())))
}
