//! The size of a picture, and sizes of the same shape.

use image::RgbImage;

/// Width and height in px.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Extent {
    pub width: u32,
    pub height: u32,
}

impl Extent {
    /// The size of a picture.
    pub fn of(picture: &RgbImage) -> Self {
        Self {
            width: picture.width(),
            height: picture.height(),
        }
    }

    /// The size of it laid on its side.
    pub fn turned(self) -> Self {
        Self {
            width: self.height,
            height: self.width,
        }
    }

    /// The same as a pair.
    pub fn size(self) -> crate::tiles::Size {
        (self.width, self.height)
    }

    /// How many pixels it has.
    pub fn pixels(self) -> usize {
        self.width as usize * self.height as usize
    }

    /// The same shape at another width, at least a pixel high.
    pub fn at_width(self, width: u32) -> Self {
        let height = (u64::from(self.height) * u64::from(width) + u64::from(self.width) / 2)
            / u64::from(self.width.max(1));
        Self {
            width,
            height: u32::try_from(height).unwrap_or(u32::MAX).max(1),
        }
    }

    /// The same shape with no side above `largest`; unchanged where none is.
    pub fn within(self, largest: u32) -> Self {
        let longest = self.width.max(self.height);
        if longest <= largest {
            return self;
        }
        // Rounded down, so that the height that follows from it stays within as well.
        let width = u64::from(self.width) * u64::from(largest) / u64::from(longest);
        let fitted = self.at_width(u32::try_from(width).unwrap_or(u32::MAX).max(1));
        Self {
            width: fitted.width,
            height: fitted.height.min(largest),
        }
    }
}
