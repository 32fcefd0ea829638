//! Pixels from rows: the whole of a picture, or the picture scaled down as its rows arrive.
//!
//! A picture that is scaled is never held whole: bands of rows are scaled to the new width as they are read, and
//! the result to the new height. With Lanczos in two directions that is what scaling the whole does; only the
//! order of the directions, and with it the rounding between them, is another.

use image::RgbImage;
use rayon::prelude::*;

use crate::extent::Extent;
use crate::fault::Fault;
use crate::samples::Samples;
use crate::scaling::{scale, scale_into};

/// How many rows are read before they are converted and scaled.
const BAND: u32 = 64;

/// A picture whose rows are read one after another from the top.
pub trait Rows {
    /// How its pixels are stored.
    fn samples(&self) -> &Samples;

    /// Reads the next row as it is stored.
    ///
    /// # Errors
    /// Cut short or damaged.
    fn next_row(&mut self, row: &mut [u8]) -> Result<(), Fault>;

    /// Reads what follows the last row.
    ///
    /// # Errors
    /// Cut short or damaged.
    fn finish(&mut self) -> Result<(), Fault> {
        Ok(())
    }
}

/// The pixels of a picture of size `stored`, scaled to `to`.
///
/// # Errors
/// Where its rows cannot be read.
pub fn rgb(rows: &mut dyn Rows, stored: Extent, to: Extent) -> Result<RgbImage, Fault> {
    let narrow = Extent {
        width: to.width,
        height: stored.height,
    };
    let mut pixels = vec![0; narrow.pixels() * 3];
    let mut filled = 0;
    bands(rows, stored, |band, high| {
        let part = &mut pixels[filled..filled + to.width as usize * 3 * high as usize];
        filled += part.len();
        if to.width == stored.width {
            part.copy_from_slice(band);
            return Ok(());
        }
        let of_height = |extent: Extent| Extent {
            height: high,
            ..extent
        };
        scale_into(of_height(stored), band, of_height(narrow), part)
    })?;
    if to.height == stored.height {
        return RgbImage::from_raw(to.width, to.height, pixels).ok_or_else(size_differs);
    }
    scale(narrow, &pixels, to)
}

fn size_differs() -> Fault {
    Fault::Damaged("its size is not the one it states".into())
}

/// The brightness of a picture of size `stored`, a byte a pixel; `brightness` makes it of RGB.
///
/// # Errors
/// Where its rows cannot be read.
pub fn grey(
    rows: &mut dyn Rows,
    stored: Extent,
    brightness: impl Fn(&[u8]) -> u8,
) -> Result<Vec<u8>, Fault> {
    let mut grey = Vec::with_capacity(stored.pixels());
    bands(rows, stored, |band, _| {
        grey.extend(band.chunks_exact(3).map(&brightness));
        Ok(())
    })?;
    Ok(grey)
}

/// Reads all rows and keeps none.
///
/// # Errors
/// Where its rows cannot be read.
pub fn examine(rows: &mut dyn Rows, stored: Extent) -> Result<(), Fault> {
    bands(rows, stored, |_, _| Ok(()))
}

/// Bytes of memory that [`rgb`] takes at most: the bands, and the result or what it is scaled from.
pub fn memory(samples: &Samples, stored: Extent, to: Extent) -> u64 {
    let row = u64::from(stored.width) * (samples.bytes() as u64 + 3 + 4);
    let bands = row * u64::from(BAND.min(stored.height));
    let narrow = if to.height == stored.height {
        0
    } else {
        3 * u64::from(to.width) * u64::from(stored.height)
    };
    bands + narrow + 3 * to.pixels() as u64
}

/// Reads all rows, converts them to RGB and hands them out in bands, each with its number of rows.
fn bands(
    rows: &mut dyn Rows,
    stored: Extent,
    mut take: impl FnMut(&[u8], u32) -> Result<(), Fault>,
) -> Result<(), Fault> {
    let samples = rows.samples().clone();
    let (raw_row, rgb_row) = (
        stored.width as usize * samples.bytes(),
        stored.width as usize * 3,
    );
    let most = BAND.min(stored.height);
    let mut raw = vec![0; raw_row * most as usize];
    let mut rgb = vec![0; rgb_row * most as usize];
    let mut done = 0;
    while done < stored.height {
        let high = most.min(stored.height - done);
        let raw = &mut raw[..raw_row * high as usize];
        let rgb = &mut rgb[..rgb_row * high as usize];
        for row in raw.chunks_exact_mut(raw_row) {
            rows.next_row(row)?;
        }
        // A thread of the pool that waits for others could be given a picture that waits for the memory which
        // this one holds.
        if rayon::current_thread_index().is_some() {
            samples.to_rgb(raw, rgb);
        } else {
            raw.par_chunks_exact(raw_row)
                .zip(rgb.par_chunks_exact_mut(rgb_row))
                .for_each(|(raw, rgb)| samples.to_rgb(raw, rgb));
        }
        take(rgb, high)?;
        done += high;
    }
    rows.finish()
}
