//! What stands on a quay.

use crate::engine::noise::Dice;
use crate::engine::shape::{Path, Pt, bar, curve, ellipse, knifed, rect, tapered};

/// A lattice jib crane: mast at the foot point, jib to a head point; all as closed strokes.
pub struct Crane {
    /// Cabin and machinery house.
    pub body: Vec<Path>,
    /// Mast, jib, lattice, stays.
    pub lines: Vec<Path>,
    /// Where the hook hangs.
    pub hook: Pt,
}

/// A crane with its pivot at `foot`, its jib's head at `head`, the hook `drop` below the head.
pub fn crane(foot: Pt, head: Pt, drop: f32, scale: f32) -> Crane {
    let s = scale;
    let body = vec![
        vec![
            [foot[0] - 3.4 * s, foot[1] - 4.4 * s],
            [foot[0] + 1.6 * s, foot[1] - 4.4 * s],
            [foot[0] + 2.4 * s, foot[1] - 2.6 * s],
            [foot[0] + 2.4 * s, foot[1]],
            [foot[0] - 3.4 * s, foot[1]],
        ],
        rect(foot[0] - 1.4 * s, foot[1], 2.8 * s, 2.0 * s),
        vec![
            [foot[0] - 1.6 * s, foot[1] + 1.8 * s],
            [foot[0] + 1.6 * s, foot[1] + 1.8 * s],
            [foot[0] + 3.2 * s, foot[1] + 7.0 * s],
            [foot[0] + 2.2 * s, foot[1] + 7.0 * s],
            [foot[0], foot[1] + 3.4 * s],
            [foot[0] - 2.2 * s, foot[1] + 7.0 * s],
            [foot[0] - 3.2 * s, foot[1] + 7.0 * s],
        ],
    ];
    let root = [foot[0] + 1.8 * s, foot[1] - 1.6 * s];
    let peak = [foot[0] - 1.2 * s, foot[1] - 8.6 * s];
    let (dx, dy) = (head[0] - root[0], head[1] - root[1]);
    let length = (dx * dx + dy * dy).sqrt().max(1.0);
    let normal = [-dy / length, dx / length];
    let wide = 0.95 * s;
    let side = |t: f32, k: f32| {
        let spread = wide * k * (1.0 - 0.85 * (2.0 * t - 0.55).abs().min(1.0));
        [
            root[0] + dx * t + normal[0] * spread,
            root[1] + dy * t + normal[1] * spread,
        ]
    };
    let chord = |k: f32| -> Path { (0..=12).map(|i| side(i as f32 / 12.0, k)).collect() };
    let mut lines = vec![bar(&chord(1.0), 0.34 * s), bar(&chord(-1.0), 0.34 * s)];
    for i in 0..12 {
        let (a, b) = (i as f32 / 12.0, (i + 1) as f32 / 12.0);
        let k = if i % 2 == 0 { 1.0 } else { -1.0 };
        lines.push(bar(&[side(a, k), side(b, -k)], 0.2 * s));
    }
    lines.push(bar(
        &[[foot[0] - 2.6 * s, foot[1] - 4.4 * s], peak],
        0.36 * s,
    ));
    lines.push(bar(
        &[[foot[0] + 1.0 * s, foot[1] - 4.4 * s], peak],
        0.36 * s,
    ));
    lines.push(bar(&[peak, head], 0.16 * s + 0.4));
    lines.push(bar(&[peak, side(0.6, -1.0)], 0.14 * s + 0.4));
    let hook = [head[0], head[1] + drop];
    lines.push(bar(&[head, hook], 0.14 * s + 0.5));
    lines.push(ellipse(head[0], head[1], 0.55 * s, 0.55 * s));
    Crane { body, lines, hook }
}

/// A hook at the end of a chain.
pub fn hook(at: Pt, size: f32) -> Path {
    let line = curve(&[
        [at[0], at[1]],
        [at[0], at[1] + size * 0.5],
        [at[0] + size * 0.35, at[1] + size * 0.8],
        [at[0], at[1] + size * 1.1],
        [at[0] - size * 0.35, at[1] + size * 0.85],
    ]);
    tapered(&line, size * 0.28, size * 0.14)
}

/// A lamp standard with a lantern; `(post, lantern glass)`.
pub fn lamp(foot: Pt, height: f32) -> (Vec<Path>, Path) {
    let [x, y] = foot;
    let h = height;
    let top = y - h;
    let glass = vec![
        [x - h * 0.055, top],
        [x + h * 0.055, top],
        [x + h * 0.035, top + h * 0.13],
        [x - h * 0.035, top + h * 0.13],
    ];
    let post = vec![
        tapered(&[[x, y], [x, top + h * 0.13]], h * 0.045, h * 0.022),
        rect(x - h * 0.05, y - h * 0.05, h * 0.10, h * 0.05),
        rect(x - h * 0.03, y - h * 0.16, h * 0.06, h * 0.02),
        bar(
            &[
                [x - h * 0.09, top + h * 0.20],
                [x + h * 0.09, top + h * 0.20],
            ],
            h * 0.014,
        ),
        vec![
            [x - h * 0.075, top],
            [x, top - h * 0.065],
            [x + h * 0.075, top],
        ],
        ellipse(x, top - h * 0.07, h * 0.014, h * 0.018),
        rect(x - h * 0.045, top + h * 0.125, h * 0.09, h * 0.014),
    ];
    (post, glass)
}

/// A mooring bollard; the snow cap is apart.
pub fn bollard(foot: Pt, size: f32) -> (Path, Path) {
    let [x, y] = foot;
    let s = size;
    let body = vec![
        [x - s * 0.32, y],
        [x - s * 0.26, y - s * 0.7],
        [x - s * 0.46, y - s * 0.82],
        [x - s * 0.44, y - s * 1.02],
        [x + s * 0.44, y - s * 1.02],
        [x + s * 0.46, y - s * 0.82],
        [x + s * 0.26, y - s * 0.7],
        [x + s * 0.32, y],
    ];
    let cap = crate::engine::shape::blob(&[
        [x - s * 0.5, y - s * 0.95],
        [x - s * 0.3, y - s * 1.28],
        [x + s * 0.1, y - s * 1.36],
        [x + s * 0.45, y - s * 1.15],
        [x + s * 0.5, y - s * 0.93],
        [x, y - s * 0.99],
    ]);
    (body, cap)
}

/// A barrel standing: outline, hoops, staves.
pub fn barrel(foot: Pt, width: f32, height: f32) -> (Path, Vec<Path>, Vec<Path>) {
    let [x, y] = foot;
    let (w, h) = (width * 0.5, height);
    let side = |t: f32| w * (0.82 + 0.18 * 4.0 * t * (1.0 - t));
    let mut outline: Path = (0..=8)
        .map(|i| [x - side(i as f32 / 8.0), y - h * i as f32 / 8.0])
        .collect();
    outline.extend(curve(&[
        [x - side(1.0), y - h],
        [x, y - h * 1.07],
        [x + side(1.0), y - h],
    ]));
    outline.extend(
        (0..=8)
            .rev()
            .map(|i| [x + side(i as f32 / 8.0), y - h * i as f32 / 8.0]),
    );
    outline.extend(curve(&[
        [x + side(0.0), y],
        [x, y + h * 0.06],
        [x - side(0.0), y],
    ]));
    let hoop = |t: f32| -> Path {
        let s = side(t);
        curve(&[
            [x - s, y - h * t],
            [x, y - h * t + h * 0.065],
            [x + s, y - h * t],
        ])
    };
    let hoops = [0.14, 0.32, 0.68, 0.86].map(hoop).to_vec();
    let staves = (1..6)
        .map(|i| {
            let k = i as f32 / 3.0 - 1.0;
            let bow = h * 0.05 * (1.0 - k * k);
            curve(&[
                [x + side(0.02) * k, y + bow],
                [x + side(0.5) * k, y - h * 0.5 + bow],
                [x + side(0.98) * k, y - h * 0.96 + bow],
            ])
        })
        .collect();
    (outline, hoops, staves)
}

/// A barrel lying with its head towards us: rim, inner circle, and the joints of the head.
pub fn barrel_end(at: Pt, radius: f32) -> (Path, Path, Vec<Path>) {
    let rim = ellipse(at[0], at[1], radius, radius);
    let inner = ellipse(at[0], at[1], radius * 0.84, radius * 0.84);
    let joints = (-2..=2)
        .map(|i| {
            let x = i as f32 * radius * 0.3;
            let reach = (0.7 * radius * radius - x * x).max(0.0).sqrt();
            vec![[at[0] + x, at[1] - reach], [at[0] + x, at[1] + reach]]
        })
        .collect();
    (rim, inner, joints)
}

/// Courses of stone over a box: the joints as thin strokes.
pub fn stones(area: [f32; 4], course: f32, width: f32, dice: &mut Dice) -> Vec<Path> {
    let [left, top, right, bottom] = area;
    let mut joints = Vec::new();
    let mut y = top;
    while y < bottom {
        let next = y + course * dice.between(0.85, 1.15);
        if y > top {
            joints.push(knifed(
                &bar(&[[left, y], [right, y + dice.about(1.0)]], width),
                0.7,
                5,
            ));
        }
        let mut x = left + dice.roll() * course * 2.0;
        while x < right {
            joints.push(bar(
                &[[x, y], [x + dice.about(0.8), next.min(bottom)]],
                width,
            ));
            x += course * dice.between(1.4, 2.6);
        }
        y = next;
    }
    joints
}

/// A coil of rope lying on the ground: rings from the outside in.
pub fn coil(at: Pt, radius: f32, rings: usize) -> Vec<Path> {
    (0..rings)
        .map(|i| {
            let t = i as f32 / rings as f32;
            let r = radius * (1.0 - 0.75 * t);
            bar(
                &crate::engine::shape::arc(
                    at[0],
                    at[1] - radius * 0.12 * t,
                    r,
                    r * 0.38,
                    0.0,
                    1.01,
                ),
                radius * 0.07,
            )
        })
        .collect()
}

/// A round basket, and what fills it.
pub fn basket(at: Pt, width: f32) -> (Path, Path) {
    let (w, h) = (width * 0.5, width * 0.42);
    let mut body = curve(&[
        [at[0] - w, at[1] - h],
        [at[0] - w * 0.9, at[1] - h * 0.3],
        [at[0] - w * 0.7, at[1]],
    ]);
    body.extend(curve(&[
        [at[0] + w * 0.7, at[1]],
        [at[0] + w * 0.9, at[1] - h * 0.3],
        [at[0] + w, at[1] - h],
    ]));
    (body, ellipse(at[0], at[1] - h, w, h * 0.42))
}

/// A wagon for coal on its rails: body, and wheels.
pub fn wagon(foot: Pt, width: f32) -> (Path, Vec<Path>) {
    let [x, y] = foot;
    let (w, h) = (width, width * 0.5);
    let body = vec![
        [x, y - h * 1.15],
        [x + w, y - h * 1.15],
        [x + w * 0.93, y - h * 0.3],
        [x + w * 0.07, y - h * 0.3],
    ];
    let wheels = vec![
        ellipse(x + w * 0.24, y - h * 0.18, h * 0.19, h * 0.19),
        ellipse(x + w * 0.76, y - h * 0.18, h * 0.19, h * 0.19),
        rect(x + w * 0.04, y - h * 0.36, w * 0.92, h * 0.10),
    ];
    (body, wheels)
}
