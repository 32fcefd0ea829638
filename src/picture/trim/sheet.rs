//! Finding the sheet on a photograph, where it lies on an even ground.
//!
//! In: pixels. Out: the part that the sheet takes, or nothing where that is not certain: the ground must be grey or black
//! and even along all edges of the photograph, the sheet must differ from it and fill a rectangle whose edges follow those of the
//! photograph, and nothing else may lie beside it (a colour target, a ruler, a shadow). Whole numbers only, so that every
//! processor finds the same.

use image::{Rgb, RgbImage};

/// A part of a picture in whole px: left, top, width, height.
pub type Part = [u32; 4];

/// How far a channel may be from the ground's to count as ground along the edges, of 255.
const EVEN: u8 = 18;

/// How far a channel must be from the ground's to count as something else.
const OTHER: u8 = 26;

/// The sheet on a photograph, if it is certain.
pub fn find(pixels: &RgbImage) -> Option<Part> {
    let (width, height) = pixels.dimensions();
    let band = (width.min(height) / 100).max(1);
    if width < 40 || height < 40 {
        return None;
    }
    let ground = even_ground(pixels, band).filter(|ground| is_neutral(*ground))?;
    let is_other = |pixel: &Rgb<u8>| apart(*pixel, ground) > OTHER;
    let mut rows = vec![0u32; height as usize];
    let mut columns = vec![0u32; width as usize];
    for (row, count) in pixels.rows().zip(&mut rows) {
        for (pixel, column) in row.zip(&mut columns) {
            if is_other(pixel) {
                *count += 1;
                *column += 1;
            }
        }
    }
    let (left, right) = stretch(&columns)?;
    let (top, bottom) = stretch(&rows)?;
    let (wide, high) = (right - left + 1, bottom - top + 1);
    let is_inset =
        left > band && top > band && right + band < width - 1 && bottom + band < height - 1;
    let is_large = u64::from(wide) * u64::from(high) * 7 > u64::from(width) * u64::from(height);
    // Inside, nearly everything differs from the ground; outside, nearly nothing does.
    let sum = |counts: &[u32], from: u32, to: u32| -> u64 {
        let part = counts.get(from as usize..=to as usize).unwrap_or_default();
        part.iter().map(|count| u64::from(*count)).sum()
    };
    let all = sum(&rows, 0, height - 1);
    let inside = pixels
        .enumerate_pixels()
        .filter(|(x, y, pixel)| {
            (left..=right).contains(x) && (top..=bottom).contains(y) && is_other(pixel)
        })
        .count() as u64;
    let area = u64::from(wide) * u64::from(high);
    let is_filled = inside * 100 >= area * 82;
    let is_alone = (all - inside) * 100 <= area;
    (is_inset && is_large && is_filled && is_alone).then_some([left, top, wide, high])
}

/// Whether a colour can be a ground: grey or black. Paper is lighter or warmer, and a photograph that ends with the sheet
/// has paper along its edges.
fn is_neutral(ground: [u8; 3]) -> bool {
    let [red, green, blue] = ground;
    let (most, least) = (red.max(green).max(blue), red.min(green).min(blue));
    most - least <= 14 && most <= 205
}

/// The colour along the edges, where it is even.
fn even_ground(pixels: &RgbImage, band: u32) -> Option<[u8; 3]> {
    let (width, height) = pixels.dimensions();
    let edge: Vec<&Rgb<u8>> = pixels
        .enumerate_pixels()
        .filter(|(x, y, _)| *x < band || *y < band || *x + band >= width || *y + band >= height)
        .map(|(_, _, pixel)| pixel)
        .collect();
    let middle = [0, 1, 2].map(|channel| {
        let mut values: Vec<u8> = edge.iter().map(|pixel| pixel.0[channel]).collect();
        values.sort_unstable();
        values.get(values.len() / 2).copied().unwrap_or_default()
    });
    let even = edge
        .iter()
        .filter(|pixel| apart(***pixel, middle) <= EVEN)
        .count();
    (even * 100 >= edge.len() * 98).then_some(middle)
}

/// The largest difference of a channel.
fn apart(pixel: Rgb<u8>, ground: [u8; 3]) -> u8 {
    let channels = pixel.0.iter().zip(ground);
    channels
        .map(|(one, other)| one.abs_diff(other))
        .max()
        .unwrap_or_default()
}

/// The first and the last line that differ from the ground along at least half as many pixels as most lines of the sheet
/// do. `None` where the edges are not sharp: where the count takes more than a fiftieth of the side from a tenth to nine
/// tenths, the sheet is turned or torn.
fn stretch(counts: &[u32]) -> Option<(u32, u32)> {
    let mut sorted: Vec<u32> = counts.iter().copied().filter(|count| *count > 0).collect();
    sorted.sort_unstable();
    let usual = *sorted.get(sorted.len() / 2)?;
    let at_least = |share: u32| {
        move |count: &&u32| u64::from(**count) * 10 >= u64::from(usual) * u64::from(share)
    };
    let first = |share| counts.iter().position(|count| at_least(share)(&count));
    let last = |share| counts.iter().rposition(|count| at_least(share)(&count));
    let soft = counts.len() / 50 + 1;
    let is_sharp = first(9)?.abs_diff(first(1)?) <= soft && last(9)?.abs_diff(last(1)?) <= soft;
    let place = |at: usize| u32::try_from(at).ok();
    is_sharp.then(|| Some((place(first(5)?)?, place(last(5)?)?)))?
}

#[cfg(test)]
mod tests {
    use super::*;

    const GROUND: [u8; 3] = [150, 150, 150];
    const PAPER: [u8; 3] = [238, 230, 210];

    fn photograph(sheet: impl Fn(u32, u32) -> Option<[u8; 3]>) -> RgbImage {
        RgbImage::from_fn(300, 200, |x, y| {
            let grain = u8::try_from((x * 7 + y * 13) % 9).unwrap();
            Rgb(sheet(x, y).unwrap_or(GROUND).map(|channel| channel - grain))
        })
    }

    fn in_part([left, top, width, height]: Part, x: u32, y: u32) -> bool {
        (left..left + width).contains(&x) && (top..top + height).contains(&y)
    }

    #[test]
    fn a_sheet_on_an_even_ground_is_found_to_the_pixel() {
        let sheet = [60, 30, 180, 140];
        let found = find(&photograph(|x, y| in_part(sheet, x, y).then_some(PAPER)));
        assert_eq!(found, Some(sheet));
    }

    #[test]
    fn a_print_that_holds_the_grey_of_the_ground_is_found_all_the_same() {
        let sheet = [60, 30, 180, 140];
        let found = find(&photograph(|x, y| {
            let is_grey = in_part([120, 80, 50, 40], x, y);
            (in_part(sheet, x, y) && !is_grey).then_some(PAPER)
        }));
        assert_eq!(found, Some(sheet));
    }

    #[test]
    fn what_is_not_certain_is_not_found() {
        let sheet = [60, 30, 180, 140];
        let turned = |x: u32, y: u32| in_part(sheet, x.saturating_sub(y / 10), y);
        let nothing: [(&str, RgbImage); 5] = [
            ("nothing but ground", photograph(|_, _| None)),
            (
                "a sheet that fills the photograph",
                photograph(|_, _| Some(PAPER)),
            ),
            (
                "a turned sheet",
                photograph(|x, y| turned(x, y).then_some(PAPER)),
            ),
            (
                "an image on paper that fills the photograph",
                photograph(|x, y| {
                    Some(if in_part(sheet, x, y) {
                        [60, 60, 60]
                    } else {
                        PAPER
                    })
                }),
            ),
            (
                "a colour target beside it",
                photograph(|x, y| {
                    let is_target = in_part([10, 150, 40, 30], x, y);
                    (in_part(sheet, x, y) || is_target).then_some(PAPER)
                }),
            ),
        ];
        for (what, pixels) in nothing {
            assert_eq!(find(&pixels), None, "{what}");
        }
    }
}
