//! A rectangle on the reference picture, in fractional pixels.

use keyblock_model::boxes::PercentBox;
use keyblock_model::registration::Homography;

use crate::extent::Extent;

/// A part of the reference picture, in px of its master, edge to edge: the edge of the first pixel
/// lies at 0.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Area {
    /// From the left edge, in px.
    pub left: f64,
    /// From the top edge, in px.
    pub top: f64,
    /// Its width in px.
    pub width: f64,
    /// Its height in px.
    pub height: f64,
}

impl Area {
    /// A box on a picture of that size, both in px of the picture.
    pub fn on(part: PercentBox, picture: Extent) -> Area {
        let (width, height) = (f64::from(picture.width), f64::from(picture.height));
        let [left, top, wide, high] = part.percent();
        Area {
            left: left * width / 100.0,
            top: top * height / 100.0,
            width: wide * width / 100.0,
            height: high * height / 100.0,
        }
    }

    /// The same, moved in px of the reference.
    #[must_use]
    pub fn moved(self, (x, y): (f64, f64)) -> Area {
        Area {
            left: self.left + x,
            top: self.top + y,
            ..self
        }
    }

    /// The same with `margin` px of the reference on every side.
    #[must_use]
    pub fn with_margin(self, margin: f64) -> Area {
        Area {
            left: self.left - margin,
            top: self.top - margin,
            width: self.width + 2.0 * margin,
            height: self.height + 2.0 * margin,
        }
    }

    /// The largest extent of this shape that fits into `width` × `height` px.
    pub fn fitted(self, width: u32, height: u32) -> Extent {
        let scale = (f64::from(width) / self.width).min(f64::from(height) / self.height);
        self.scaled(scale)
    }

    /// Its extent where a px of the reference takes `scale` px; no side under 1.
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "clamped to what a JPEG can hold"
    )]
    pub fn scaled(self, scale: f64) -> Extent {
        let side = |length: f64| (length * scale).round().clamp(1.0, f64::from(u16::MAX)) as u32;
        Extent {
            width: side(self.width),
            height: side(self.height),
        }
    }

    /// How many px of the picture one px of the reference takes at the middle of the part, by area;
    /// `None` where the part lies at infinity.
    pub fn density(self, from_reference: &Homography) -> Option<f64> {
        let (x, y) = (
            self.left + self.width / 2.0 - 0.5,
            self.top + self.height / 2.0 - 0.5,
        );
        let middle = from_reference.apply(x, y)?;
        let right = from_reference.apply(x + 1.0, y)?;
        let below = from_reference.apply(x, y + 1.0)?;
        let area = (right.0 - middle.0) * (below.1 - middle.1)
            - (right.1 - middle.1) * (below.0 - middle.0);
        Some(area.abs().sqrt())
    }
}
