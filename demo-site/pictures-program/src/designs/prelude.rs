//! What nearly every design imports.

pub use super::inking::{Fall, evenly, graded};
pub use super::shared::cut_streaks;
pub use super::{Art, Bench, Cuts};
pub use crate::engine::grain::Surface;
pub use crate::engine::ink::{Pass, ink};
pub use crate::engine::noise::{Dice, cloud, mix, smooth, step};
pub use crate::engine::plane::Plane;
pub use crate::engine::shape::{
    Path, Pt, arc, bar, blob, curve, ellipse, gouged, knifed, moved, placed, rect, tapered,
    wandering,
};
pub use crate::look::Look;
pub use crate::parts::lines::{
    Hatch, bounds, clear, outline, outlined, pecks, set_off, shade, shade_part, stipple, tone,
    toward,
};
