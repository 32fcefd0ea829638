//! Makes every published file of one photograph from its pixels in one pass: its tiles (`tiles` lists
//! them) and the whole picture in the widths that pages offer.
//!
//! A level is worked through in bands of one row of tiles. Each band is turned upright, brought to
//! sRGB, encoded as tiles, and halved into the next level, so the largest level is never held a second
//! time. Bands and tiles run in parallel; the result does not depend on their order.

use std::borrow::Cow;

use image::RgbImage;
use rayon::prelude::*;

use crate::codec::{self, EncodedPicture};
use crate::colour::ToSrgb;
use crate::extent::Extent;
use crate::fault::Fault;
use crate::scaling::{self, scale};
use crate::tiles::{self, SIDE};
use crate::turn::Turn;

/// The largest form of a picture that is published, as its file stores it.
pub struct Base {
    /// RGB in the colours of the file.
    pub pixels: RgbImage,
    /// The turn that makes it upright.
    pub turn: Turn,
    /// The conversion to sRGB, where it is not in sRGB.
    pub to_srgb: Option<ToSrgb>,
}

/// The files made of a picture.
pub struct PyramidFiles {
    /// Its tiles as JPEG files, in the order of [`tiles::tiles`].
    pub tiles: Vec<Vec<u8>>,
    /// The widths asked for, in their order.
    pub widths: Vec<EncodedPicture>,
}

impl Base {
    fn stored(&self) -> Extent {
        Extent::of(&self.pixels)
    }

    /// Its size once upright.
    pub fn extent(&self) -> Extent {
        if self.turn.is_swapped() {
            self.stored().turned()
        } else {
            self.stored()
        }
    }

    /// The picture turned upright and converted to sRGB.
    ///
    /// # Errors
    /// Where its colour profile proves unusable.
    pub fn whole(&self) -> Result<RgbImage, Fault> {
        let Extent { width, height } = self.extent();
        let rgb = self.rows(0, height)?.into_owned();
        RgbImage::from_raw(width, height, rgb)
            .ok_or_else(|| Fault::Damaged("it cannot be turned".into()))
    }

    /// The picture scaled, turned upright and converted to sRGB.
    fn scaled(&self, to: Extent) -> Result<RgbImage, Fault> {
        if to == self.extent() {
            return self.whole();
        }
        let as_stored = if self.turn.is_swapped() {
            to.turned()
        } else {
            to
        };
        let small = Base {
            pixels: scale(self.stored(), self.pixels.as_raw(), as_stored)?,
            turn: self.turn,
            to_srgb: self.to_srgb.clone(),
        };
        small.whole()
    }
}

/// Where the rows of a level come from.
trait Rows: Sync {
    /// Rows `first` to `first + count`, upright RGB in sRGB.
    fn rows(&self, first: u32, count: u32) -> Result<Cow<'_, [u8]>, Fault>;
}

impl Rows for Base {
    fn rows(&self, first: u32, count: u32) -> Result<Cow<'_, [u8]>, Fault> {
        let stored = self.pixels.as_raw();
        let (width, first, count) = (self.pixels.width() as usize, first as usize, count as usize);
        let upright: Cow<'_, [u8]> = if self.turn.is_none() {
            let rows = stored.get(first * width * 3..(first + count) * width * 3);
            Cow::Borrowed(rows.unwrap_or_default())
        } else {
            Cow::Owned(self.turn.rows(stored, width, first, count))
        };
        match &self.to_srgb {
            Some(to_srgb) => Ok(Cow::Owned(to_srgb.convert(&upright))),
            None => Ok(upright),
        }
    }
}

/// A level made by halving: upright RGB in sRGB.
struct Level {
    extent: Extent,
    rgb: Vec<u8>,
}

impl Rows for Level {
    fn rows(&self, first: u32, count: u32) -> Result<Cow<'_, [u8]>, Fault> {
        let stride = self.extent.width as usize * 3;
        let rows = self
            .rgb
            .get(first as usize * stride..(first + count) as usize * stride);
        Ok(Cow::Borrowed(rows.unwrap_or_default()))
    }
}

/// Makes everything: the tiles, and the `widths`, none larger than the picture.
///
/// # Errors
/// Where the scaler or the encoder fails, which is not expected for a decoded picture.
pub fn make(base: Base, widths: &[Extent], quality: u8) -> Result<PyramidFiles, Fault> {
    let whole = base.extent();
    let factors = tiles::factors(whole.size());
    let wanted_of = |factor: u32| -> Vec<(usize, Extent)> {
        let wanted = widths.iter().copied().enumerate();
        wanted
            .filter(|(_, width)| source_of(*width, whole, &factors) == factor)
            .collect()
    };

    let mut made: Vec<(usize, EncodedPicture)> = Vec::with_capacity(widths.len());
    let (first, scaled) = rayon::join(
        || level(&base, whole, quality),
        || encoded(&wanted_of(1), quality, |to| base.scaled(to)),
    );
    let (mut tiles, mut next) = first?;
    made.extend(scaled?);
    drop(base);
    for &factor in factors.iter().skip(1) {
        let Some(source) = next else { break };
        let (of_level, scaled) = rayon::join(
            || level(&source, source.extent, quality),
            || {
                encoded(&wanted_of(factor), quality, |to| {
                    scale(source.extent, &source.rgb, to)
                })
            },
        );
        let (of_level, halved) = of_level?;
        tiles.extend(of_level);
        made.extend(scaled?);
        next = halved;
    }
    made.sort_by_key(|(place, _)| *place);
    Ok(PyramidFiles {
        tiles,
        widths: made.into_iter().map(|(_, rendered)| rendered).collect(),
    })
}

/// How many bands of a level are worked on at once. More would keep more processors busy, and the memory that a
/// picture needs may not depend on how many there are.
const BANDS_AT_ONCE: usize = 4;

/// Bytes of memory that [`make`] takes at most for a picture of size `whole`, with the picture itself.
pub fn memory(whole: Extent, widths: &[Extent]) -> u64 {
    let pixels = |extent: Extent| extent.pixels() as u64;
    let factors = tiles::factors(whole.size());
    let half = 3 * pixels(Extent {
        width: whole.width.div_ceil(2),
        height: whole.height.div_ceil(2),
    });
    // Of each band: turned, converted, and cut into tiles.
    let row = u64::from(whole.width) * 3;
    let bands = (BANDS_AT_ONCE as u64 * u64::from(SIDE)).min(u64::from(whole.height)) * row * 3;
    // Of each width that is scaled from the picture itself: scaled in one direction, then whole, turned and
    // converted.
    let scaled = widths
        .iter()
        .filter(|width| source_of(**width, whole, &factors) == 1)
        .map(|width| scaling::memory(whole, *width) + 6 * pixels(*width));
    // A JPEG of noise in the best quality takes two bytes a pixel; all levels have a third more pixels.
    let encoded = 2 * (pixels(whole) + pixels(whole) / 3)
        + widths.iter().map(|width| 2 * pixels(*width)).sum::<u64>();
    3 * pixels(whole) + half + bands + scaled.sum::<u64>() + encoded + (1 << 20)
}

/// The level that a width is scaled from: the smallest that is half as wide again. Coarser
/// levels come from box averaging; the Lanczos step from 1.5× hides its aliasing.
fn source_of(width: Extent, whole: Extent, factors: &[u32]) -> u32 {
    let is_enough = |factor: &&u32| whole.width.div_ceil(**factor) * 2 >= width.width * 3;
    factors.iter().rev().find(is_enough).copied().unwrap_or(1)
}

fn encoded(
    wanted: &[(usize, Extent)],
    quality: u8,
    scaled: impl Fn(Extent) -> Result<RgbImage, Fault> + Sync,
) -> Result<Vec<(usize, EncodedPicture)>, Fault> {
    wanted
        .par_iter()
        .map(|&(place, extent)| {
            let rendered = codec::encode_picture(&scaled(extent)?, quality)?;
            Ok((place, rendered))
        })
        .collect()
}

/// The tiles of one level in their order, and the level after it; none after the last.
fn level(
    source: &impl Rows,
    extent: Extent,
    quality: u8,
) -> Result<(Vec<Vec<u8>>, Option<Level>), Fault> {
    let Extent { width, height } = extent;
    if width.max(height) <= SIDE {
        let only = codec::encode(&source.rows(0, height)?, width, height, quality)?;
        return Ok((vec![only], None));
    }
    let half = Extent {
        width: width.div_ceil(2),
        height: height.div_ceil(2),
    };
    let mut next = Level {
        extent: half,
        rgb: vec![0; half.pixels() * 3],
    };
    let half_band = half.width as usize * 3 * (SIDE / 2) as usize;
    let mut tiles: Vec<Vec<u8>> = Vec::new();
    let groups = next.rgb.chunks_mut(half_band * BANDS_AT_ONCE);
    for (group, rows) in groups.zip((0..height.div_ceil(SIDE)).step_by(BANDS_AT_ONCE)) {
        let bands: Vec<Vec<Vec<u8>>> = group
            .par_chunks_mut(half_band)
            .zip((rows..height.div_ceil(SIDE)).into_par_iter())
            .map(|(half, row)| {
                let first = row * SIDE;
                let count = SIDE.min(height - first);
                let rows = source.rows(first, count)?;
                halve(&rows, width as usize, half);
                tiles_of(&rows, width, count, quality)
            })
            .collect::<Result<_, Fault>>()?;
        tiles.extend(bands.into_iter().flatten());
    }
    Ok((tiles, Some(next)))
}

/// The tiles of a band, from left to right.
fn tiles_of(rows: &[u8], width: u32, height: u32, quality: u8) -> Result<Vec<Vec<u8>>, Fault> {
    (0..width.div_ceil(SIDE))
        .into_par_iter()
        .map(|column| {
            let first = column * SIDE;
            let across = SIDE.min(width - first);
            let (from, to) = (first as usize * 3, (first + across) as usize * 3);
            let mut tile = Vec::with_capacity((to - from) * height as usize);
            for row in rows.chunks_exact(width as usize * 3) {
                tile.extend_from_slice(row.get(from..to).unwrap_or_default());
            }
            codec::encode(&tile, across, height, quality)
        })
        .collect()
}

/// Halves rows of RGB pixels `width` px wide: each pixel is the mean of a square of four, rounded to
/// nearest; at an odd edge, of those there are.
fn halve(rows: &[u8], width: usize, half: &mut [u8]) {
    let stride = width * 3;
    for (pair, out) in rows
        .chunks(stride * 2)
        .zip(half.chunks_mut(width.div_ceil(2) * 3))
    {
        let (above, below) = pair.split_at(stride.min(pair.len()));
        let below = if below.is_empty() { above } else { below };
        let squares = above.chunks_exact(6).zip(below.chunks_exact(6));
        for ((a, b), mean) in squares.zip(out.chunks_exact_mut(3)) {
            for channel in 0..3 {
                let sum = u16::from(a[channel])
                    + u16::from(a[channel + 3])
                    + u16::from(b[channel])
                    + u16::from(b[channel + 3]);
                mean[channel] = ((sum + 2) / 4).to_le_bytes()[0];
            }
        }
        if width % 2 == 1 {
            let last = above.iter().zip(below).skip(stride - 3);
            let ends = out.iter_mut().skip(width / 2 * 3);
            for ((&a, &b), mean) in last.zip(ends) {
                *mean = (u16::from(a) + u16::from(b)).div_ceil(2).to_le_bytes()[0];
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_pixel_is_the_mean_of_those_it_stands_for() {
        let grey = |values: &[u8]| values.iter().flat_map(|v| [*v; 3]).collect::<Vec<u8>>();
        let rows = grey(&[0, 4, 10, 8, 4, 11, 1, 2, 5]);
        let mut half = vec![0; 2 * 2 * 3];
        halve(&rows, 3, &mut half);
        // (0 + 4 + 8 + 4) / 4, (10 + 11) / 2 upwards; (1 + 2) / 2 upwards, 5 alone.
        assert_eq!(half, grey(&[4, 11, 2, 5]));
    }

    #[test]
    fn a_width_is_scaled_from_the_smallest_level_that_is_large_enough() {
        let extent = |width| Extent { width, height: 100 };
        let source = |width| source_of(extent(width), extent(6000), &[1, 2, 4, 8, 16]);
        assert_eq!([1920, 2001, 960, 480].map(source), [2, 1, 4, 8]);
    }
}
