//! Shapes: closed outlines, and strokes that swell and taper.
//!
//! Coordinates are *design units*: the long side of the printed image is 1000. A shape is a list
//! of points, implicitly closed. Curves are flattened here; `plane` fills polygons only.

use super::noise::{Dice, mix, smooth};

/// A point in design units, `x` to the right and `y` down.
pub type Pt = [f32; 2];

/// A closed outline, or an open line where a function says so.
pub type Path = Vec<Pt>;

/// A rectangle by its corner and its extent.
pub fn rect(x: f32, y: f32, w: f32, h: f32) -> Path {
    vec![[x, y], [x + w, y], [x + w, y + h], [x, y + h]]
}

/// An ellipse with its axes along the sheet.
pub fn ellipse(cx: f32, cy: f32, rx: f32, ry: f32) -> Path {
    let n = 12 + (rx.max(ry) * 0.6) as usize;
    (0..n.min(160))
        .map(|i| {
            let a = i as f32 / n.min(160) as f32 * core::f32::consts::TAU;
            [cx + rx * libm::cosf(a), cy + ry * libm::sinf(a)]
        })
        .collect()
}

/// An arc of an ellipse as an open line, angles in turns, clockwise from the right.
pub fn arc(cx: f32, cy: f32, rx: f32, ry: f32, from: f32, to: f32) -> Path {
    let n = 8 + (rx.max(ry) * (to - from).abs() * 1.5) as usize;
    (0..=n)
        .map(|i| {
            let a = mix(from, to, i as f32 / n as f32) * core::f32::consts::TAU;
            [cx + rx * libm::cosf(a), cy + ry * libm::sinf(a)]
        })
        .collect()
}

/// A smooth line through all the points, its ends included.
pub fn curve(points: &[Pt]) -> Path {
    through(points, false)
}

/// A smooth closed outline through all the points.
pub fn blob(points: &[Pt]) -> Path {
    through(points, true)
}

fn through(points: &[Pt], closed: bool) -> Path {
    let n = points.len();
    if n < 3 {
        return points.to_vec();
    }
    let at = |i: isize| -> Pt {
        if closed {
            points[i.rem_euclid(n as isize) as usize]
        } else {
            points[i.clamp(0, n as isize - 1) as usize]
        }
    };
    let spans = if closed { n } else { n - 1 };
    let mut out = Vec::with_capacity(spans * 8);
    for i in 0..spans as isize {
        let (a, b, c, d) = (at(i - 1), at(i), at(i + 1), at(i + 2));
        let length = distance(b, c);
        let steps = (length / 4.0).clamp(3.0, 40.0) as usize;
        for s in 0..steps {
            let t = s as f32 / steps as f32;
            out.push([
                catmull(a[0], b[0], c[0], d[0], t),
                catmull(a[1], b[1], c[1], d[1], t),
            ]);
        }
    }
    if !closed {
        out.push(points[n - 1]);
    }
    out
}

fn catmull(a: f32, b: f32, c: f32, d: f32, t: f32) -> f32 {
    let (t2, t3) = (t * t, t * t * t);
    0.5 * (2.0 * b
        + (c - a) * t
        + (2.0 * a - 5.0 * b + 4.0 * c - d) * t2
        + (3.0 * b - a - 3.0 * c + d) * t3)
}

/// Whether a point lies inside a closed outline (the crossing rule).
pub fn inside(shape: &[Pt], p: Pt) -> bool {
    let mut within = false;
    for (i, a) in shape.iter().enumerate() {
        let b = shape[(i + 1) % shape.len()];
        if (a[1] > p[1]) != (b[1] > p[1])
            && p[0] < a[0] + (p[1] - a[1]) / (b[1] - a[1]) * (b[0] - a[0])
        {
            within = !within;
        }
    }
    within
}

/// The distance between two points.
pub fn distance(a: Pt, b: Pt) -> f32 {
    let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
    (dx * dx + dy * dy).sqrt()
}

/// Points at even steps along a line, both ends included.
pub fn even(line: &[Pt], spacing: f32) -> Path {
    let Some(&first) = line.first() else {
        return Vec::new();
    };
    let mut out = vec![first];
    let mut left = spacing;
    for pair in line.windows(2) {
        let length = distance(pair[0], pair[1]);
        let mut at = left;
        while at < length {
            let t = at / length;
            out.push([
                mix(pair[0][0], pair[1][0], t),
                mix(pair[0][1], pair[1][1], t),
            ]);
            at += spacing;
        }
        left = at - length;
    }
    if let Some(&last) = line.last()
        && out
            .last()
            .is_some_and(|&p| distance(p, last) > spacing * 0.2)
    {
        out.push(last);
    }
    out
}

/// The outline as a knife leaves it: straight little facets that stray by up to `stray` units.
pub fn knifed(path: &[Pt], stray: f32, seed: u32) -> Path {
    let Some(&first) = path.first() else {
        return Vec::new();
    };
    let mut closed = path.to_vec();
    closed.push(first);
    let mut out = Vec::new();
    for pair in closed.windows(2) {
        let length = distance(pair[0], pair[1]);
        let pieces = (length / 7.0).ceil().max(1.0) as usize;
        for i in 0..pieces {
            let t = i as f32 / pieces as f32;
            let p = [
                mix(pair[0][0], pair[1][0], t),
                mix(pair[0][1], pair[1][1], t),
            ];
            out.push(strayed(p, stray, seed));
        }
    }
    out
}

/// A point moved a little by a field that is the same for every shape of the block.
pub fn strayed(p: Pt, stray: f32, seed: u32) -> Pt {
    let (x, y) = (p[0] / 9.0, p[1] / 9.0);
    let (far_x, far_y) = (p[0] / 43.0, p[1] / 43.0);
    [
        p[0] + stray * (smooth(x, y, seed) + smooth(far_x, far_y, seed ^ 7) - 1.0),
        p[1] + stray * (smooth(x, y, seed ^ 91) + smooth(far_x, far_y, seed ^ 55) - 1.0),
    ]
}

/// A stroke along a line whose full width at a share `t` of its length is `width(t)`.
pub fn stroke(line: &[Pt], width: impl Fn(f32) -> f32) -> Path {
    let total: f32 = line.windows(2).map(|w| distance(w[0], w[1])).sum();
    if total <= 0.0 {
        return Vec::new();
    }
    let (mut left, mut right) = (Vec::new(), Vec::new());
    let mut run = 0.0;
    for i in 0..line.len() {
        if i > 0 {
            run += distance(line[i - 1], line[i]);
        }
        let before = line[i.saturating_sub(1)];
        let after = line[(i + 1).min(line.len() - 1)];
        let d = distance(before, after).max(1e-4);
        let normal = [-(after[1] - before[1]) / d, (after[0] - before[0]) / d];
        let half = 0.5 * width(run / total);
        left.push([line[i][0] + normal[0] * half, line[i][1] + normal[1] * half]);
        right.push([line[i][0] - normal[0] * half, line[i][1] - normal[1] * half]);
    }
    right.reverse();
    left.extend(right);
    left
}

/// A stroke of one width.
pub fn bar(line: &[Pt], width: f32) -> Path {
    stroke(line, |_| width)
}

/// A stroke that swells in the middle and ends in points, as a V-gouge leaves it.
pub fn gouged(line: &[Pt], width: f32) -> Path {
    let fine = even(line, (width * 1.5).clamp(2.0, 8.0));
    stroke(&fine, |t| {
        width * libm::sinf(core::f32::consts::PI * t.clamp(0.02, 0.98)).sqrt()
    })
}

/// A stroke that begins full and runs out to a point.
pub fn tapered(line: &[Pt], from: f32, to: f32) -> Path {
    let fine = even(line, 5.0);
    stroke(&fine, |t| mix(from, to, t))
}

/// The shape moved by `(dx, dy)`.
pub fn moved(path: &[Pt], dx: f32, dy: f32) -> Path {
    path.iter().map(|p| [p[0] + dx, p[1] + dy]).collect()
}

/// The shape scaled about the origin, then moved: the way stock parts are placed.
pub fn placed(path: &[Pt], x: f32, y: f32, scale: f32) -> Path {
    path.iter()
        .map(|p| [x + p[0] * scale, y + p[1] * scale])
        .collect()
}

/// As [`placed`], facing the other way where `scale_x` is negative.
pub fn placed_xy(path: &[Pt], x: f32, y: f32, scale_x: f32, scale_y: f32) -> Path {
    path.iter()
        .map(|p| [x + p[0] * scale_x, y + p[1] * scale_y])
        .collect()
}

/// The shape turned about a point, in turns, clockwise.
pub fn turned(path: &[Pt], about: Pt, turns: f32) -> Path {
    let a = turns * core::f32::consts::TAU;
    let (sin, cos) = (libm::sinf(a), libm::cosf(a));
    path.iter()
        .map(|p| {
            let (x, y) = (p[0] - about[0], p[1] - about[1]);
            [about[0] + x * cos - y * sin, about[1] + x * sin + y * cos]
        })
        .collect()
}

/// The shape mirrored in a horizontal line, squeezed by `squeeze`: its reflection in water.
pub fn reflected(path: &[Pt], water: f32, squeeze: f32) -> Path {
    path.iter()
        .map(|p| [p[0], water + (water - p[1]) * squeeze])
        .collect()
}

/// A line that wanders: `from` to `to` in `pieces`, straying by up to `stray` units.
pub fn wandering(from: Pt, to: Pt, pieces: usize, stray: f32, dice: &mut Dice) -> Path {
    let mut points = vec![from];
    for i in 1..pieces {
        let t = i as f32 / pieces as f32;
        points.push([
            mix(from[0], to[0], t) + dice.about(stray),
            mix(from[1], to[1], t) + dice.about(stray),
        ]);
    }
    points.push(to);
    curve(&points)
}
