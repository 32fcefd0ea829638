//! Boxes on pictures: percent of a picture in records, pixels in pictures.

use std::num::NonZeroU32;

/// A box in percent of a picture's width and height, as records write it.
///
/// Invariant: inside the picture and not empty, so no stage needs to check it again.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PercentBox {
    left: f64,
    top: f64,
    width: f64,
    height: f64,
}

/// Why four numbers do not make a box.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotABox {
    /// Width or height is zero or negative.
    Empty,
    /// It reaches beyond the picture.
    Outside,
}

/// A box in whole pixels of one picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PixelBox {
    /// Pixels from the left edge.
    pub left: u32,
    /// Pixels from the top edge.
    pub top: u32,
    /// Width in pixels, at least 1.
    pub width: u32,
    /// Height in pixels, at least 1.
    pub height: u32,
}

impl PercentBox {
    /// A box from `[left, top, width, height]`, all in percent.
    ///
    /// # Errors
    /// [`NotABox`] where it is empty, reaches outside the picture, or a number is not finite.
    pub fn new(left: f64, top: f64, width: f64, height: f64) -> Result<PercentBox, NotABox> {
        if !(width > 0.0 && height > 0.0) {
            return Err(NotABox::Empty);
        }
        let inside = |from: f64, length: f64| from >= 0.0 && from + length <= 100.0 + 1e-9;
        if inside(left, width) && inside(top, height) {
            Ok(PercentBox {
                left,
                top,
                width,
                height,
            })
        } else {
            Err(NotABox::Outside)
        }
    }

    /// `[left, top, width, height]`, in percent.
    #[must_use]
    pub fn percent(self) -> [f64; 4] {
        [self.left, self.top, self.width, self.height]
    }

    /// The pixels it covers on a picture of `width` × `height` px, rounded outwards: a strip may
    /// show a little more than the point, never less.
    #[must_use]
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "every value lies between 0 and a u32 by the type's invariant"
    )]
    pub fn on_picture(self, width: NonZeroU32, height: NonZeroU32) -> PixelBox {
        let stretch = |from: f64, length: f64, side: NonZeroU32| {
            let side_px = f64::from(side.get());
            let first = ((from * side_px / 100.0).floor() as u32).min(side.get() - 1);
            let last = (((from + length) * side_px / 100.0).ceil() as u32).min(side.get());
            (first, (last - first).max(1))
        };
        let (left, box_width) = stretch(self.left, self.width, width);
        let (top, box_height) = stretch(self.top, self.height, height);
        PixelBox {
            left,
            top,
            width: box_width,
            height: box_height,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ok_a_box_rounds_outwards() {
        let side = NonZeroU32::new(10).unwrap();
        let pixels = PercentBox::new(5.0, 0.0, 10.0, 100.0)
            .unwrap()
            .on_picture(side, side);
        assert_eq!(
            pixels,
            PixelBox {
                left: 0,
                top: 0,
                width: 2,
                height: 10
            }
        );
    }

    #[test]
    fn err_a_box_outside_or_empty() {
        assert_eq!(
            PercentBox::new(90.0, 0.0, 20.0, 10.0),
            Err(NotABox::Outside)
        );
        assert_eq!(PercentBox::new(0.0, 0.0, 0.0, 10.0), Err(NotABox::Empty));
        assert_eq!(
            PercentBox::new(f64::NAN, 0.0, 1.0, 1.0),
            Err(NotABox::Outside)
        );
        assert_eq!(
            PercentBox::new(0.0, 0.0, f64::NAN, 1.0),
            Err(NotABox::Empty)
        );
    }
}
