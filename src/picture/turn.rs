//! Turning a stored picture upright, a few rows at a time.
//!
//! A large photograph is never held twice: its rows are turned only when they are needed.

use image::metadata::Orientation;

/// How the rows of an upright picture are found in the picture as stored (CIPA DC-008, section 4.6.4
/// A, Orientation).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Turn {
    /// Whether stored rows are upright columns.
    swapped: bool,
    /// Whether upright rows run from the last stored pixel to the first.
    from_right: bool,
    /// Whether the first upright row is the last stored.
    from_below: bool,
}

impl Turn {
    /// The turn that an orientation asks for.
    pub fn of(orientation: Orientation) -> Turn {
        let (swapped, from_right, from_below) = match orientation {
            Orientation::NoTransforms => (false, false, false),
            Orientation::FlipHorizontal => (false, true, false),
            Orientation::Rotate180 => (false, true, true),
            Orientation::FlipVertical => (false, false, true),
            Orientation::Rotate90FlipH => (true, false, false),
            Orientation::Rotate90 => (true, true, false),
            Orientation::Rotate270FlipH => (true, true, true),
            Orientation::Rotate270 => (true, false, true),
        };
        Turn {
            swapped,
            from_right,
            from_below,
        }
    }

    /// Whether it exchanges width and height.
    pub fn is_swapped(self) -> bool {
        self.swapped
    }

    /// Whether the picture is stored upright.
    pub fn is_none(self) -> bool {
        !self.swapped && !self.from_right && !self.from_below
    }

    /// Upright rows `first` to `first + count` of RGB pixels stored in rows of `width`.
    pub fn rows(self, stored: &[u8], width: usize, first: usize, count: usize) -> Vec<u8> {
        let lines = stored.chunks_exact(width.max(1) * 3);
        let height = lines.len();
        let mut out = Vec::new();
        if !self.swapped {
            out.reserve_exact(width * count * 3);
            for y in first..first + count {
                let row = if self.from_below { height - 1 - y } else { y };
                let line = lines.clone().nth(row).unwrap_or_default();
                if self.from_right {
                    let backwards = line.chunks_exact(3).rev();
                    out.extend(backwards.flatten());
                } else {
                    out.extend_from_slice(line);
                }
            }
            return out;
        }
        // Stored columns are upright rows: each stored line gives one pixel to each of them. Lines are
        // read one after another, because that is how they lie in memory.
        out.resize(height * count * 3, 0);
        let start = if self.from_below {
            width - first - count
        } else {
            first
        };
        for (row, line) in lines.enumerate() {
            let x = if self.from_right {
                height - 1 - row
            } else {
                row
            };
            let part = &line[start * 3..(start + count) * 3];
            for (column, pixel) in part.chunks_exact(3).enumerate() {
                let y = if self.from_below {
                    count - 1 - column
                } else {
                    column
                };
                let at = (y * height + x) * 3;
                out[at..at + 3].copy_from_slice(pixel);
            }
        }
        out
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use image::{DynamicImage, Rgb, RgbImage};

    #[test]
    fn rows_are_those_of_the_picture_turned_whole() {
        let stored = RgbImage::from_fn(7, 5, |x, y| {
            Rgb([u8::try_from(x).unwrap(), u8::try_from(y).unwrap(), 9])
        });
        for code in 1..=8 {
            let orientation = Orientation::from_exif(code).unwrap();
            let mut turned = DynamicImage::ImageRgb8(stored.clone());
            turned.apply_orientation(orientation);
            let turned = turned.into_rgb8();
            let turn = Turn::of(orientation);
            let height = turned.height() as usize;
            let mut rows = turn.rows(stored.as_raw(), 7, 0, 2);
            rows.extend(turn.rows(stored.as_raw(), 7, 2, height - 2));
            assert_eq!(&rows, turned.as_raw(), "orientation {code}");
            assert_eq!(turn.is_none(), code == 1);
        }
    }
}
