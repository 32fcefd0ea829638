//! Boats, masts, anchors.

use crate::engine::shape::{Path, Pt, arc, bar, curve, placed_xy, tapered, turned};

/// A boat under sail, in parts that go to different blocks.
pub struct Sailer {
    /// The hull.
    pub hull: Path,
    /// The painted strake along it.
    pub strake: Path,
    /// Sails, the largest first.
    pub sails: Vec<Path>,
    /// Spars and rigging, as closed strokes.
    pub spars: Vec<Path>,
    /// Seams across the sails, as open lines.
    pub seams: Vec<Path>,
}

/// A gaff cutter sailing to the right (to the left where `scale` is negative), `scale` units
/// long, waterline at the point, heeling by `heel` turns.
pub fn cutter(at: Pt, scale: f32, heel: f32) -> Sailer {
    let put = |points: &[Pt]| {
        turned(
            &placed_xy(points, at[0], at[1], scale, scale.abs()),
            at,
            heel,
        )
    };
    let mut hull = curve(&[
        [-0.50, -0.115],
        [-0.2, -0.075],
        [0.15, -0.085],
        [0.52, -0.17],
    ]);
    hull.extend(curve(&[
        [0.52, -0.17],
        [0.46, -0.04],
        [0.36, 0.05],
        [0.0, 0.085],
        [-0.34, 0.06],
        [-0.46, -0.02],
        [-0.50, -0.115],
    ]));
    let mut strake = curve(&[
        [-0.49, -0.085],
        [-0.2, -0.047],
        [0.15, -0.055],
        [0.495, -0.125],
    ]);
    strake.extend([
        [0.465, -0.075],
        [0.15, -0.015],
        [-0.2, -0.010],
        [-0.475, -0.045],
    ]);
    let main = sail(
        [-0.46, -0.19],
        [0.055, -0.16],
        [0.075, -0.72],
        [-0.30, -0.93],
        0.05,
    );
    let jib = sail(
        [0.13, -0.20],
        [0.62, -0.24],
        [0.10, -0.90],
        [0.10, -0.90],
        0.05,
    );
    let top = vec![[-0.27, -0.94], [0.085, -0.76], [0.095, -1.12]];
    Sailer {
        hull: put(&hull),
        strake: put(&strake),
        sails: vec![put(&main), put(&jib), put(&top)],
        spars: vec![
            tapered(
                &put(&[[0.08, -0.06], [0.10, -1.20]]),
                scale.abs() * 0.024,
                scale.abs() * 0.010,
            ),
            bar(&put(&[[-0.54, -0.17], [0.10, -0.145]]), scale.abs() * 0.016),
            bar(&put(&[[0.085, -0.71], [-0.33, -0.96]]), scale.abs() * 0.014),
            bar(&put(&[[0.48, -0.15], [0.74, -0.245]]), scale.abs() * 0.018),
            bar(&put(&[[0.10, -1.17], [0.74, -0.245]]), scale.abs() * 0.005),
            bar(&put(&[[0.10, -0.9], [-0.18, -0.08]]), scale.abs() * 0.004),
        ],
        seams: (1..6)
            .map(|i| {
                let t = i as f32 / 6.0;
                put(&curve(&[
                    [-0.46 + 0.50 * t, -0.19 + 0.03 * t],
                    [-0.40 + 0.42 * t, -0.52 + 0.08 * t],
                    [-0.30 + 0.36 * t, -0.92 + 0.19 * t],
                ]))
            })
            .collect(),
    }
}

/// A two-masted lugger, squarer sails; placed as [`cutter`].
pub fn lugger(at: Pt, scale: f32, heel: f32) -> Sailer {
    let put = |points: &[Pt]| {
        turned(
            &placed_xy(points, at[0], at[1], scale, scale.abs()),
            at,
            heel,
        )
    };
    let mut hull = curve(&[[-0.50, -0.13], [0.0, -0.08], [0.50, -0.16]]);
    hull.extend(curve(&[
        [0.50, -0.16],
        [0.42, 0.04],
        [0.0, 0.07],
        [-0.42, 0.05],
        [-0.50, -0.13],
    ]));
    let fore = sail(
        [0.02, -0.18],
        [0.40, -0.20],
        [0.36, -0.80],
        [0.04, -0.92],
        0.05,
    );
    let mizzen = sail(
        [-0.52, -0.18],
        [-0.20, -0.17],
        [-0.22, -0.56],
        [-0.46, -0.66],
        0.04,
    );
    Sailer {
        hull: put(&hull),
        strake: put(&[
            [-0.49, -0.10],
            [0.0, -0.05],
            [0.49, -0.12],
            [0.47, -0.07],
            [0.0, -0.01],
            [-0.47, -0.06],
        ]),
        sails: vec![put(&fore), put(&mizzen)],
        spars: vec![
            tapered(
                &put(&[[0.24, -0.08], [0.25, -0.98]]),
                scale.abs() * 0.026,
                scale.abs() * 0.012,
            ),
            tapered(
                &put(&[[-0.30, -0.08], [-0.29, -0.72]]),
                scale.abs() * 0.022,
                scale.abs() * 0.010,
            ),
            bar(&put(&[[0.38, -0.80], [0.02, -0.94]]), scale.abs() * 0.016),
            bar(&put(&[[-0.20, -0.56], [-0.48, -0.68]]), scale.abs() * 0.014),
            bar(&put(&[[0.25, -0.96], [0.50, -0.16]]), scale.abs() * 0.005),
        ],
        seams: (1..5)
            .map(|i| {
                let t = i as f32 / 5.0;
                put(&[
                    [0.02 + 0.38 * t, -0.18],
                    [0.04 + 0.32 * t, -0.90 + 0.10 * t],
                ])
            })
            .collect(),
    }
}

/// A four-cornered sail whose free edges belly by `belly`.
fn sail(clew: Pt, tack: Pt, throat: Pt, peak: Pt, belly: f32) -> Path {
    let middle =
        |a: Pt, b: Pt, dx: f32, dy: f32| [(a[0] + b[0]) / 2.0 + dx, (a[1] + b[1]) / 2.0 + dy];
    let mut out = curve(&[clew, middle(clew, tack, 0.0, belly * 0.7), tack]);
    out.extend(curve(&[
        tack,
        middle(tack, throat, belly * 0.3, 0.0),
        throat,
    ]));
    out.extend([peak]);
    out.extend(curve(&[peak, middle(peak, clew, belly * 1.2, 0.0), clew]));
    out
}

/// A barge or a boat seen from the side: hull with sheer, bow to the right.
pub fn hull(left: Pt, length: f32, depth: f32, sheer: f32) -> Path {
    let at = |x: f32, y: f32| [left[0] + x * length, left[1] + y];
    let mut out = curve(&[
        at(0.0, 0.0),
        at(0.3, sheer),
        at(0.7, sheer),
        at(1.02, -sheer * 0.6),
    ]);
    out.extend(curve(&[
        at(1.02, -sheer * 0.6),
        at(0.985, depth * 0.5),
        at(0.93, depth),
        at(0.5, depth * 1.02),
        at(0.06, depth),
        at(0.0, depth * 0.4),
        at(0.0, 0.0),
    ]));
    out
}

/// A small open boat in perspective, bow to the left: outside, inside and thwarts.
pub fn dinghy(at: Pt, length: f32) -> (Path, Path, Vec<Path>) {
    let put = |points: &[Pt]| placed_xy(points, at[0], at[1], length, length);
    let mut outside = curve(&[[-0.52, -0.10], [-0.2, -0.155], [0.2, -0.15], [0.5, -0.10]]);
    outside.extend(curve(&[
        [0.5, -0.10],
        [0.47, 0.06],
        [0.2, 0.13],
        [-0.2, 0.12],
        [-0.42, 0.02],
        [-0.52, -0.10],
    ]));
    let mut inside = curve(&[
        [-0.45, -0.095],
        [-0.15, -0.135],
        [0.2, -0.13],
        [0.46, -0.09],
    ]);
    inside.extend(curve(&[
        [0.46, -0.09],
        [0.2, -0.02],
        [-0.15, -0.02],
        [-0.45, -0.095],
    ]));
    let thwarts = vec![
        put(&[
            [-0.16, -0.128],
            [-0.09, -0.132],
            [-0.10, -0.022],
            [-0.17, -0.025],
        ]),
        put(&[
            [0.12, -0.135],
            [0.19, -0.130],
            [0.19, -0.020],
            [0.12, -0.018],
        ]),
    ];
    (put(&outside), put(&inside), thwarts)
}

/// A bare mast with stays to both sides.
pub fn mast(foot: Pt, height: f32, width: f32, spread: f32) -> Vec<Path> {
    let head = [foot[0], foot[1] - height];
    let cross = [
        [head[0] - spread * 0.35, head[1] + height * 0.3],
        [head[0] + spread * 0.35, head[1] + height * 0.3],
    ];
    let mut out = vec![
        tapered(&[foot, head], width, width * 0.4),
        bar(&cross, width * 0.45),
    ];
    for side in [-1.0, 1.0] {
        for (share, reach) in [(0.0, 1.0), (0.3, 0.7)] {
            out.push(bar(
                &[
                    [head[0], head[1] + height * share],
                    [foot[0] + side * spread * reach, foot[1]],
                ],
                width * 0.16 + 0.5,
            ));
        }
    }
    out
}

/// An anchor, its shank upright, about twice `size` tall.
pub fn anchor(at: Pt, size: f32) -> Vec<Path> {
    let [x, y] = at;
    let s = size;
    vec![
        bar(&[[x, y - s * 0.75], [x, y + s * 0.95]], s * 0.17),
        bar(
            &[[x - s * 0.42, y - s * 0.48], [x + s * 0.42, y - s * 0.48]],
            s * 0.15,
        ),
        bar(
            &arc(x, y - s * 0.88, s * 0.15, s * 0.15, 0.0, 1.01),
            s * 0.1,
        ),
        bar(
            &arc(x, y + s * 0.25, s * 0.72, s * 0.68, 0.03, 0.47),
            s * 0.18,
        ),
        vec![
            [x - s * 0.92, y + s * 0.45],
            [x - s * 0.66, y + s * 0.10],
            [x - s * 0.48, y + s * 0.52],
        ],
        vec![
            [x + s * 0.92, y + s * 0.45],
            [x + s * 0.66, y + s * 0.10],
            [x + s * 0.48, y + s * 0.52],
        ],
    ]
}
