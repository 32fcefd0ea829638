//! The file of a photograph, and a guard so that a panic in a decoder does not end the program.
//!
//! A file may be larger than all the memory that pictures may take, so it is read in pieces wherever its kind
//! allows.

use std::fs::File;
use std::io::{BufReader, ErrorKind, Read, Seek, SeekFrom, Take};
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::Path;
use std::time::SystemTime;

use crate::fault::Fault;

/// A file that may be a picture within the limit, opened.
pub struct PictureFile {
    file: File,
    bytes: u64,
    modified: Option<SystemTime>,
}

/// Reads a file from its start. A file has one position: no two readers of it are used in turns.
pub type FileReader<'a> = BufReader<&'a File>;

impl PictureFile {
    /// Opens a file.
    ///
    /// # Errors
    /// Missing, not a file, not to be opened, or above the limit.
    pub fn open(path: &Path, pixel_limit: u64) -> Result<Self, Fault> {
        // Checked before opening: opening a pipe would wait until something writes into it.
        let about = std::fs::metadata(path).map_err(|error| refused(&error))?;
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
        let file = File::open(path).map_err(|error| refused(&error))?;
        let about = file.metadata().map_err(|error| refused(&error))?;
        Ok(Self {
            bytes: about.len().min(limit),
            modified: about.modified().ok(),
            file,
        })
    }

    /// Its length in bytes.
    pub fn bytes(&self) -> u64 {
        self.bytes
    }

    /// A reader from the start.
    ///
    /// # Errors
    /// Where the disk fails.
    pub fn reader(&self) -> Result<FileReader<'_>, Fault> {
        let mut file = &self.file;
        file.rewind().map_err(|error| refused(&error))?;
        Ok(BufReader::with_capacity(64 << 10, file))
    }

    /// A reader of a part.
    ///
    /// # Errors
    /// Where the disk fails.
    pub fn part(&self, offset: u64, length: u64) -> Result<Take<FileReader<'_>>, Fault> {
        let mut file = &self.file;
        file.seek(SeekFrom::Start(offset))
            .map_err(|error| refused(&error))?;
        let buffer = usize::try_from(length).unwrap_or(usize::MAX);
        let reader = BufReader::with_capacity(buffer.clamp(1, 16 << 10), file);
        Ok(reader.take(length))
    }

    /// Adds its content to a hash.
    ///
    /// # Errors
    /// Where the disk fails.
    pub fn hash_into(&self, hasher: &mut blake3::Hasher) -> Result<(), Fault> {
        let mut file = &self.file;
        file.rewind()
            .and_then(|()| hasher.update_reader(file.take(self.bytes)))
            .map_err(|error| refused(&error))?;
        Ok(())
    }

    /// The hash of its content.
    ///
    /// # Errors
    /// Where the disk fails.
    pub fn hash(&self) -> Result<blake3::Hash, Fault> {
        let mut hasher = blake3::Hasher::new();
        self.hash_into(&mut hasher)?;
        Ok(hasher.finalize())
    }

    /// Its content.
    ///
    /// # Errors
    /// Where the disk fails.
    pub fn whole(&self) -> Result<Vec<u8>, Fault> {
        let mut bytes = Vec::with_capacity(usize::try_from(self.bytes).unwrap_or(0));
        let mut file = &self.file;
        file.rewind()
            .and_then(|()| file.take(self.bytes).read_to_end(&mut bytes))
            .map_err(|error| refused(&error))?;
        Ok(bytes)
    }

    /// Checks that nothing was written to the file since it was opened: otherwise what was made of it may be
    /// of two versions.
    ///
    /// # Errors
    /// [`Fault::Changed`].
    pub fn is_unchanged(&self) -> Result<(), Fault> {
        let about = self.file.metadata().map_err(|error| refused(&error))?;
        if about.len() == self.bytes && about.modified().ok() == self.modified {
            Ok(())
        } else {
            Err(Fault::Changed)
        }
    }
}

fn refused(error: &std::io::Error) -> Fault {
    match error.kind() {
        ErrorKind::NotFound | ErrorKind::NotADirectory => Fault::Missing,
        _ => Fault::Unopened(error.to_string()),
    }
}

/// Runs a decoder. Decoders are third-party code that reads hostile bytes: a panic in one becomes a fault
/// of that picture, and the program goes on.
pub fn guarded<T>(decode: impl FnOnce() -> Result<T, Fault>) -> Result<T, Fault> {
    catch_unwind(AssertUnwindSafe(decode))
        .unwrap_or_else(|_| Err(Fault::Damaged("its content makes no sense".into())))
}
