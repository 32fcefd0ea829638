//! How the ink is spread on a block: gradations, even tones and wiping, as the records name them.

use crate::engine::noise::{cloud, smooth, step};
use crate::engine::shape::Pt;
use crate::look::Look;

/// Where a gradation runs: full at `from`, gone at `to`, in design units down the sheet.
#[derive(Clone, Copy)]
pub struct Fall {
    /// Where the ink is fullest.
    pub from: f32,
    /// Where it ends.
    pub to: f32,
    /// What is left there, `0..1`.
    pub rest: f32,
}

/// A brushed gradation, slightly different on every sheet.
pub fn graded(look: &Look, fall: Fall) -> impl Fn(Pt) -> f32 + Send + Sync + use<> {
    let turn = look.number as f32 * 3.7;
    move |p| {
        let wave = 0.09 * (cloud(p[0] / 330.0, turn, 2, 31) - 0.5) * (fall.to - fall.from).abs();
        let t = (p[1] + wave - fall.from) / (fall.to - fall.from);
        let brush = 1.0 + 0.10 * (smooth(p[0] / 150.0, p[1] / 3.4, 33) - 0.5);
        (1.28 - (1.28 - fall.rest) * step(0.0, 1.0, t)) * brush
    }
}

/// `graded` where the point says so, else an even tone of the given strength.
pub fn evenly(
    look: &Look,
    point: &str,
    strength: f32,
    fall: Fall,
) -> impl Fn(Pt) -> f32 + Send + Sync + use<> {
    let brushed = graded(look, fall);
    let how = look.choice(point).to_owned();
    let turn = look.number as f32;
    move |p| match how.as_str() {
        "graded" | "lifting" => brushed(p),
        "rubbed" | "streaked" | "wiped" => {
            let streaks = cloud(p[0] / 210.0 + turn, p[1] / 7.5, 3, 37);
            strength * (0.35 + 1.0 * step(0.28, 0.72, streaks))
        }
        _ => strength,
    }
}
