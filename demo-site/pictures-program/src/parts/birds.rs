//! Birds: gull, swallow, heron.

use crate::engine::shape::{Path, Pt, blob, placed, turned};

/// A gull on the wing: `span` from tip to tip, `lift` how high the tips stand (-1 to 1), `turn`
/// its banking.
pub fn gull(at: Pt, span: f32, lift: f32, turn: f32) -> Path {
    let l = lift;
    let outline: [Pt; 16] = [
        [-0.52, -0.16 * l + 0.03],
        [-0.40, -0.20 * l - 0.01],
        [-0.24, -0.19 * l - 0.03],
        [-0.09, -0.05],
        [0.0, -0.065],
        [0.09, -0.05],
        [0.23, -0.21 * l - 0.03],
        [0.40, -0.23 * l],
        [0.54, -0.17 * l + 0.02],
        [0.38, -0.16 * l + 0.02],
        [0.24, -0.11 * l + 0.03],
        [0.10, 0.035],
        [0.03, 0.085],
        [-0.06, 0.05],
        [-0.22, -0.09 * l + 0.04],
        [-0.38, -0.14 * l + 0.03],
    ];
    turned(&placed(&blob(&outline), at[0], at[1], span), at, turn)
}

/// A swallow: swept wings and a forked tail.
pub fn swallow(at: Pt, span: f32, turn: f32) -> Path {
    let outline: [Pt; 15] = [
        [0.0, -0.20],
        [0.06, -0.12],
        [0.24, -0.14],
        [0.42, -0.02],
        [0.55, 0.20],
        [0.36, 0.06],
        [0.16, 0.00],
        [0.07, 0.05],
        [0.06, 0.16],
        [0.16, 0.42],
        [0.02, 0.22],
        [-0.10, 0.40],
        [-0.05, 0.12],
        [-0.08, 0.02],
        [-0.07, -0.10],
    ];
    let left: [Pt; 7] = [
        [-0.05, -0.11],
        [-0.22, -0.15],
        [-0.42, -0.05],
        [-0.56, 0.14],
        [-0.36, 0.03],
        [-0.14, -0.01],
        [-0.03, 0.03],
    ];
    let mut all = placed(&outline, at[0], at[1], span);
    let mut wing = placed(&left, at[0], at[1], span);
    // One outline: the left wing is let in where the body's left side begins.
    let tail = all.split_off(14);
    wing.reverse();
    all.extend(wing);
    all.extend(tail);
    turned(&all, at, turn)
}

/// A heron standing in profile, facing left, feet at the point given: body, and thin parts apart.
pub struct Heron {
    /// Neck, body, wing.
    pub body: Path,
    /// Bill and crest.
    pub head: Path,
    /// The legs as open lines.
    pub legs: Vec<Path>,
    /// The wing's quills as open lines.
    pub quills: Vec<Path>,
}

/// A heron `height` tall.
pub fn heron(feet: Pt, height: f32) -> Heron {
    let put = |points: &[Pt]| placed(points, feet[0], feet[1], height);
    let body = blob(&[
        [-0.250, -0.985],
        [-0.195, -1.000],
        [-0.150, -0.965],
        [-0.150, -0.915],
        [-0.185, -0.850],
        [-0.180, -0.790],
        [-0.130, -0.730],
        [-0.060, -0.690],
        [0.040, -0.640],
        [0.130, -0.560],
        [0.200, -0.460],
        [0.255, -0.345],
        [0.180, -0.370],
        [0.110, -0.375],
        [0.030, -0.390],
        [-0.050, -0.430],
        [-0.110, -0.500],
        [-0.160, -0.590],
        [-0.215, -0.680],
        [-0.245, -0.770],
        [-0.245, -0.860],
        [-0.225, -0.920],
    ]);
    Heron {
        body: put(&body),
        head: put(&[
            [-0.470, -0.925],
            [-0.250, -0.975],
            [-0.190, -0.985],
            [0.030, -0.930],
            [-0.150, -0.955],
            [-0.235, -0.935],
        ]),
        legs: vec![
            put(&[
                [-0.010, -0.410],
                [-0.020, -0.260],
                [0.000, -0.215],
                [-0.035, -0.005],
            ]),
            put(&[
                [0.055, -0.400],
                [0.060, -0.270],
                [0.085, -0.220],
                [0.060, 0.0],
            ]),
            put(&[[-0.035, -0.005], [-0.100, 0.012]]),
            put(&[[0.060, 0.0], [-0.005, 0.015]]),
        ],
        quills: (0..6)
            .map(|i| {
                let t = i as f32 * 0.034;
                put(&[
                    [-0.06 + t, -0.635 + t * 0.5],
                    [0.06 + t * 0.5, -0.525 + t * 0.6],
                    [0.20 - t * 0.3, -0.385 + t * 0.05],
                ])
            })
            .collect(),
    }
}
