//! Small people, as silhouettes.

use crate::engine::shape::{Path, Pt, blob, ellipse, placed_xy};

/// What a figure is doing.
#[derive(Clone, Copy, PartialEq)]
pub enum Pose {
    /// Standing or walking, with a long coat.
    Standing,
    /// Bent over work.
    Bent,
    /// Carrying a load on the shoulder.
    Carrying,
    /// Swinging a mallet overhead.
    Swinging,
}

/// A figure `height` tall with its feet at the point, facing right (left where `facing` is -1).
pub fn figure(feet: Pt, height: f32, pose: Pose, facing: f32) -> Vec<Path> {
    let put = |points: &[Pt]| placed_xy(points, feet[0], feet[1], height * facing, height);
    let head = |x: f32, y: f32| {
        let p = put(&[[x, y]])[0];
        ellipse(p[0], p[1], height * 0.062, height * 0.075)
    };
    match pose {
        Pose::Standing => vec![
            head(0.02, -0.92),
            put(&[[-0.07, -0.97], [0.10, -0.97], [0.09, -0.94], [-0.06, -0.94]]),
            blob(&put(&[
                [-0.12, -0.78],
                [-0.03, -0.85],
                [0.09, -0.83],
                [0.13, -0.68],
                [0.12, -0.45],
                [0.15, -0.28],
                [-0.14, -0.28],
                [-0.13, -0.5],
            ])),
            put(&[[-0.10, -0.32], [0.01, -0.32], [-0.02, 0.0], [-0.12, 0.0]]),
            put(&[[0.01, -0.32], [0.12, -0.32], [0.15, 0.0], [0.05, 0.0]]),
        ],
        Pose::Bent => vec![
            head(0.31, -0.62),
            blob(&put(&[
                [-0.14, -0.50],
                [-0.05, -0.66],
                [0.12, -0.70],
                [0.27, -0.64],
                [0.25, -0.52],
                [0.08, -0.45],
                [0.03, -0.34],
                [-0.13, -0.34],
            ])),
            put(&[[0.18, -0.60], [0.26, -0.56], [0.27, -0.26], [0.21, -0.26]]),
            put(&[[-0.13, -0.38], [0.0, -0.38], [-0.02, 0.0], [-0.12, 0.0]]),
            put(&[[-0.04, -0.38], [0.05, -0.38], [0.13, 0.0], [0.04, 0.0]]),
        ],
        Pose::Carrying => vec![
            head(0.06, -0.86),
            put(&[[-0.26, -1.06], [0.16, -1.10], [0.20, -0.92], [-0.20, -0.86]]),
            blob(&put(&[
                [-0.11, -0.76],
                [0.0, -0.82],
                [0.12, -0.76],
                [0.10, -0.5],
                [0.08, -0.36],
                [-0.09, -0.36],
                [-0.10, -0.55],
            ])),
            put(&[[-0.08, -0.40], [0.02, -0.40], [-0.08, 0.0], [-0.18, 0.0]]),
            put(&[[-0.02, -0.40], [0.08, -0.40], [0.19, 0.0], [0.09, 0.0]]),
        ],
        Pose::Swinging => vec![
            head(0.05, -0.86),
            blob(&put(&[
                [-0.10, -0.74],
                [0.0, -0.80],
                [0.11, -0.74],
                [0.08, -0.5],
                [0.08, -0.38],
                [-0.09, -0.38],
            ])),
            put(&[[0.06, -0.76], [0.12, -0.70], [0.34, -0.98], [0.30, -1.02]]),
            put(&[[0.24, -1.10], [0.40, -1.00], [0.36, -0.92], [0.20, -1.02]]),
            put(&[[-0.09, -0.42], [0.0, -0.42], [-0.06, 0.0], [-0.16, 0.0]]),
            put(&[[0.0, -0.42], [0.08, -0.42], [0.16, 0.0], [0.07, 0.0]]),
        ],
    }
}
