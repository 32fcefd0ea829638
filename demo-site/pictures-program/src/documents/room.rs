//! The photograph of the workshop: her room, two prints on the wall, tools on the table, a caption in the margin.
//!
//! The scene is a plane whose values are brightness. Its units: the picture is 1500 wide and 1000 high. On the wall a millimetre
//! is [`ON_WALL`] units, so that the unknown print can be measured by the known one beside it.

use super::Words;
use super::leaf::{Ink, Leaf};
use super::writing::{Style, Way};
use crate::engine::colour::{Colour, blend, encoded, hex, linear, scaled, times};
use crate::engine::noise::{Dice, cloud, mix, seed, smooth, step, unit};
use crate::engine::paper::{Make, Paper};
use crate::engine::photo::{Photograph, Table, take};
use crate::engine::plane::{Plane, Window};
use crate::engine::shape::{Path, Pt, arc, bar, blob, curve, ellipse, rect, turned};
use crate::engine::sheet::Laid;

/// Width and height of the scene.
const SCENE: Pt = [1500.0, 1000.0];
/// Where it is printed on the leaf: left, top, width, height, mm.
const PRINT: [f32; 4] = [6.0, 6.0, 141.0, 94.0];
/// Units of the scene to a millimetre on the wall.
const ON_WALL: f32 = 1.25;
/// The sheet with the high water, and its image on it, mm.
const NEW: Pinned = Pinned {
    at: [425.0, 150.0],
    size: [250.0, 312.0],
    turn: -0.0022,
};
const NEW_IMAGE: [f32; 4] = [35.0, 32.0, 180.0, 240.0];
/// The sheet of no. 24.
const KNOWN: Pinned = Pinned {
    at: [800.0, 140.0],
    size: [425.0, 330.0],
    turn: 0.0016,
};

/// A sheet pinned to the wall.
struct Pinned {
    /// Its upper left corner in the scene.
    at: Pt,
    /// Width and height, mm.
    size: Pt,
    /// How far it hangs askew, in turns.
    turn: f32,
}

impl Pinned {
    /// A point of the sheet, mm from its upper left corner, in the scene.
    fn point(&self, x: f32, y: f32) -> Pt {
        let p = [self.at[0] + x * ON_WALL, self.at[1] + y * ON_WALL];
        turned(&[p], self.at, self.turn)[0]
    }

    /// A line on the sheet.
    fn line(&self, points: &[Pt]) -> Path {
        points.iter().map(|p| self.point(p[0], p[1])).collect()
    }

    /// The point of the sheet under a point of the scene, mm.
    fn under(&self, p: Pt) -> Pt {
        let back = turned(&[p], self.at, -self.turn)[0];
        [
            (back[0] - self.at[0]) / ON_WALL,
            (back[1] - self.at[1]) / ON_WALL,
        ]
    }

    fn outline(&self) -> Path {
        let [w, h] = self.size;
        // The lower corners stand off the wall.
        self.line(&[
            [0.0, 0.0],
            [w, 0.0],
            [w + 0.8, h - 1.5],
            [w * 0.5, h + 1.2],
            [-0.6, h - 1.0],
        ])
    }
}

/// The photograph, with its margin and its caption.
pub fn photograph(words: &Words) -> Photograph {
    let leaf = Leaf {
        key: words.key,
        size: [153.0, 122.0],
        make: Make::Wove,
        tone: 0xea_e3_d0,
        table: Table::Grey,
        longest: 1560,
    };
    let (size, window) = leaf.frame();
    let seed = seed(&["room", words.key]);
    let scale = window.scale * PRINT[2] / SCENE[0];
    let view = Window {
        x: 0.0,
        y: 0.0,
        w: (SCENE[0] * scale).ceil() as usize,
        h: (SCENE[1] * scale).ceil() as usize,
        scale,
    };
    let scene = lens(&scene(view, words, seed));
    let mut paper = Paper::new(Make::Wove, leaf.tone, leaf.size, seed);
    paper.creases.push(([153.0, 12.0], [140.0, 0.0]));
    let caption = caption(words, window);
    let mut colour = Vec::with_capacity(window.w * window.h);
    let mut cover = Vec::with_capacity(window.w * window.h);
    for py in 0..window.h {
        for px in 0..window.w {
            let p = window.at(px, py);
            cover.push(deckled(leaf.size, p, window.scale, seed));
            let bare = scaled(paper.at(p), 1.0 + crease(&paper, p));
            let (u, v) = ((p[0] - PRINT[0]) / PRINT[2], (p[1] - PRINT[1]) / PRINT[3]);
            let seen = if (0.0..=1.0).contains(&u) && (0.0..=1.0).contains(&v) {
                let light = scene.sample(u * scene.window.w as f32, v * scene.window.h as f32);
                times(silver(light, [px, py], [u, v], seed), scaled(bare, 1.28))
            } else {
                bare
            };
            let ink = caption.data[py * window.w + px];
            colour.push(times(seen, blend([1.0; 3], hex(0x33_3a_5a), ink * 0.92)));
        }
    }
    let laid = Laid {
        window,
        colour,
        paper: cover,
    };
    take(&laid, &leaf.shot(size))
}

/// The lines under the picture, in ink.
fn caption(words: &Words, window: Window) -> Plane {
    let hand = Style {
        way: Way::Unjoined,
        x_height: 1.72,
        broad: 0.36,
        fine: 0.24,
        lean: 0.2,
        spaced: -0.02,
        wide: 1.0,
    };
    let mut ink = Ink::new(window, 0, 0.1, &["teape", words.key]);
    for (i, text) in words.lines.iter().enumerate() {
        ink.write(&hand, text, [PRINT[0] + 2.0, 107.5 + 6.6 * i as f32]);
    }
    ink.mark().cover
}

/// The wavy edge in which such prints were cut.
fn deckled(size: Pt, p: Pt, scale: f32, seed: u32) -> f32 {
    let wave = |along: f32, side: f32| {
        0.35 + 0.22 * libm::sinf(along * 2.6 + side) + 0.25 * smooth(along / 1.9, side, seed)
    };
    let edge = (p[0] - wave(p[1], 0.0))
        .min(size[0] - p[0] - wave(p[1], 1.7))
        .min(p[1] - wave(p[0], 3.1))
        .min(size[1] - p[1] - wave(p[0], 4.9));
    (edge * scale + 0.5).clamp(0.0, 1.0)
}

/// A crease's light and shade.
fn crease(paper: &Paper, p: Pt) -> f32 {
    let mut shade = 0.0;
    for &(a, b) in &paper.creases {
        let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
        let length = (dx * dx + dy * dy).sqrt();
        let d = ((p[0] - a[0]) * dy - (p[1] - a[1]) * dx) / length;
        shade += 0.16 * (1.0 - step(0.0, 0.35, (d + 0.15).abs()));
        shade -= 0.10 * (1.0 - step(0.0, 0.35, (d - 0.15).abs()));
    }
    shade
}

/// Brightness as a silver print shows it: the film's curve and grain, the lens darker at its edge, brown in the shadows.
fn silver(light: f32, px: [usize; 2], [u, v]: [f32; 2], seed: u32) -> Colour {
    let (x, y) = (px[0] as f32, px[1] as f32);
    let grain = 0.5 * (unit(px[0] as i32, px[1] as i32, seed) - 0.5)
        + (cloud(x / 1.9, y / 1.9, 2, seed ^ 9) - 0.5);
    let edge = 1.0 - 0.34 * ((u - 0.48) * (u - 0.48) + (v - 0.46) * (v - 0.46));
    let exposed = (light * edge + 0.045 * grain).clamp(0.0, 1.0);
    let printed = mix(0.12, 0.97, step(-0.14, 0.98, exposed));
    let tone = linear(printed);
    blend(hex(0x1d_17_13), [0.80, 0.76, 0.68], tone)
}

/// A little softness of the lens.
fn lens(scene: &Plane) -> Plane {
    let mut soft = scene.softened(1);
    for (s, sharp) in soft.data.iter_mut().zip(&scene.data) {
        *s = mix(*s, *sharp, 0.35);
    }
    soft
}

fn scene(view: Window, words: &Words, seed: u32) -> Plane {
    let mut dice = Dice::new(seed);
    // Plaster, lit from the window at the left.
    let mut s = Plane::drawn(view, |p| {
        let fall = mix(0.70, 0.40, step(250.0, 1500.0, p[0] + 0.25 * p[1]));
        let plaster = 0.05 * (cloud(p[0] / 90.0, p[1] / 70.0, 4, seed) - 0.5)
            + 0.03 * (cloud(p[0] / 9.0, p[1] / 9.0, 2, seed ^ 1) - 0.5);
        fall + plaster
    });
    cracks(&mut s);
    rail(&mut s);
    window(&mut s);
    shadowed(&mut s, &NEW.outline(), [9.0, 13.0], 7, 0.55);
    shadowed(&mut s, &KNOWN.outline(), [9.0, 13.0], 7, 0.55);
    new_print(&mut s, &mut dice);
    if let Some(known) = &words.on_the_wall {
        known_print(&mut s, known);
    }
    apron(&mut s);
    table(&mut s, seed, &mut dice);
    s
}

/// Darkens what lies behind a shape: its shadow, moved and softened.
fn shadowed(s: &mut Plane, shape: &[Pt], by: Pt, soft: usize, dark: f32) {
    let mut shadow = Plane::cleared(s.window);
    let moved: Path = shape.iter().map(|p| [p[0] + by[0], p[1] + by[1]]).collect();
    shadow.leave(&moved);
    let shadow = shadow.softened(soft);
    for (light, dark_here) in s.data.iter_mut().zip(&shadow.data) {
        *light *= 1.0 - dark * dark_here;
    }
}

fn cracks(s: &mut Plane) {
    let lines: [&[Pt]; 3] = [
        &[
            [1180.0, 0.0],
            [1192.0, 46.0],
            [1180.0, 92.0],
            [1196.0, 128.0],
        ],
        &[
            [700.0, 700.0],
            [748.0, 640.0],
            [742.0, 590.0],
            [772.0, 560.0],
        ],
        &[[380.0, 0.0], [392.0, 40.0], [384.0, 70.0]],
    ];
    for line in lines {
        s.tone(&bar(&curve(line), 1.6), 0.26);
    }
}

/// A rail with pegs; from one hangs a rubbing spoon, from another a coil of cord.
fn rail(s: &mut Plane) {
    let board = rect(395.0, 74.0, 1120.0, 24.0);
    shadowed(s, &board, [4.0, 9.0], 4, 0.5);
    s.tone(&board, 0.25);
    s.tone(&rect(395.0, 74.0, 1120.0, 4.0), 0.42);
    for i in 0..7 {
        let x = 440.0 + 158.0 * i as f32;
        s.tone(&ellipse(x, 88.0, 6.5, 7.5), 0.14);
        s.tone(&ellipse(x - 2.0, 85.5, 2.2, 2.6), 0.5);
    }
}

/// The north window, with a gable and masts beyond it.
fn window(s: &mut Plane) {
    s.tone(&rect(16.0, 40.0, 330.0, 640.0), 0.70);
    s.tone(&rect(40.0, 66.0, 282.0, 580.0), 0.97);
    // A neighbour's stepped gable and a mast, pale in the glare.
    let gable = [
        [40.0, 646.0],
        [40.0, 470.0],
        [74.0, 470.0],
        [74.0, 432.0],
        [104.0, 432.0],
        [104.0, 394.0],
        [134.0, 394.0],
        [134.0, 360.0],
        [166.0, 360.0],
        [166.0, 394.0],
        [196.0, 394.0],
        [196.0, 432.0],
        [226.0, 432.0],
        [226.0, 470.0],
        [258.0, 470.0],
        [258.0, 646.0],
    ];
    s.tone(&gable, 0.80);
    for (x, y) in [
        (96.0, 500.0),
        (146.0, 500.0),
        (196.0, 500.0),
        (96.0, 570.0),
        (196.0, 570.0),
    ] {
        s.tone(&rect(x, y, 22.0, 34.0), 0.68);
    }
    s.tone(&bar(&[[290.0, 646.0], [286.0, 210.0]], 5.0), 0.74);
    s.tone(&bar(&[[252.0, 330.0], [318.0, 296.0]], 3.2), 0.76);
    for end in [[322.0, 470.0], [262.0, 646.0]] {
        s.tone(&bar(&[[286.0, 214.0], end], 1.6), 0.80);
    }
    // Frame and bars stand against the light.
    for x in [34.0, 176.0, 318.0] {
        s.tone(&rect(x, 58.0, 11.0, 596.0), 0.30);
        s.tone(&rect(x, 58.0, 2.4, 596.0), 0.52);
    }
    for y in [58.0, 250.0, 446.0, 642.0] {
        s.tone(&rect(34.0, y, 295.0, 10.0), 0.30);
    }
    // The sill, with a jar and a shell on it.
    s.tone(&rect(4.0, 652.0, 356.0, 22.0), 0.80);
    s.tone(&rect(4.0, 674.0, 356.0, 16.0), 0.34);
    s.tone(&rect(74.0, 586.0, 46.0, 66.0), 0.46);
    s.tone(&rect(80.0, 600.0, 12.0, 46.0), 0.74);
    s.tone(&ellipse(97.0, 586.0, 23.0, 5.0), 0.28);
    for (dx, dy) in [
        (-18.0, -96.0),
        (-4.0, -112.0),
        (10.0, -100.0),
        (22.0, -84.0),
    ] {
        s.tone(&bar(&[[97.0, 588.0], [97.0 + dx, 586.0 + dy]], 4.0), 0.26);
    }
    s.tone(
        &blob(&[
            [214.0, 651.0],
            [222.0, 632.0],
            [242.0, 626.0],
            [262.0, 640.0],
            [266.0, 651.0],
        ]),
        0.52,
    );
}

/// The sheet that no museum has: a quay wall, the plate with its line, and the water under it.
fn new_print(s: &mut Plane, dice: &mut Dice) {
    s.tone(&NEW.outline(), 0.82);
    let [x0, y0, w, h] = NEW_IMAGE;
    let at = |u: f32, v: f32| NEW.point(x0 + u * w, y0 + v * h);
    let area =
        |u0: f32, v0: f32, u1: f32, v1: f32| vec![at(u0, v0), at(u1, v0), at(u1, v1), at(u0, v1)];
    // Stones.
    s.tone(&area(0.0, 0.0, 1.0, 1.0), 0.50);
    let courses = [0.0, 0.09, 0.19, 0.285, 0.39, 0.48, 0.57];
    for (i, pair) in courses.windows(2).enumerate() {
        let mut u = if i % 2 == 0 { -0.06 } else { -0.17 };
        while u < 1.0 {
            let next = u + 0.22 + dice.about(0.05);
            let stone = area(
                (u + 0.012).max(0.0),
                pair[0] + 0.008,
                (next - 0.012).min(1.0),
                pair[1] - 0.008,
            );
            s.tone(&stone, 0.62 + dice.about(0.09));
            u = next;
        }
    }
    // The line, at two thirds of the height from the foot, and the plate that it crosses.
    s.tone(&area(0.0, 0.328, 1.0, 0.338), 0.20);
    let centre = at(0.56, 0.333);
    let r = 0.135 * w * ON_WALL;
    s.tone(&ellipse(centre[0], centre[1], r, r), 0.22);
    s.tone(&ellipse(centre[0], centre[1], r * 0.90, r * 0.90), 0.76);
    s.tone(
        &bar(
            &arc(centre[0], centre[1], r * 0.72, r * 0.72, 0.0, 1.0),
            1.6,
        ),
        0.32,
    );
    s.tone(
        &bar(
            &[
                [centre[0] - r * 0.9, centre[1]],
                [centre[0] + r * 0.9, centre[1]],
            ],
            3.4,
        ),
        0.20,
    );
    for k in 0..5 {
        let x = centre[0] - r * 0.42 + k as f32 * r * 0.21;
        s.tone(
            &bar(
                &[
                    [x, centre[1] - r * 0.34],
                    [x + r * 0.10, centre[1] - r * 0.34],
                ],
                2.2,
            ),
            0.30,
        );
        s.tone(
            &bar(
                &[
                    [x, centre[1] + r * 0.36],
                    [x + r * 0.09, centre[1] + r * 0.36],
                ],
                2.2,
            ),
            0.30,
        );
    }
    // A ladder at the left goes down into the water.
    for u in [0.13, 0.24] {
        s.tone(&bar(&[at(u, 0.05), at(u, 0.60)], 4.2), 0.18);
    }
    for k in 0..7 {
        let v = 0.09 + 0.075 * k as f32;
        s.tone(&bar(&[at(0.13, v), at(0.24, v)], 3.2), 0.18);
    }
    // The water, a hand below the line, with the plate and the ladder broken in it.
    s.tone(&area(0.0, 0.47, 1.0, 1.0), 0.33);
    s.tone(&area(0.0, 0.466, 1.0, 0.476), 0.70);
    let glint = at(0.56, 0.60);
    s.tone(&ellipse(glint[0], glint[1], r * 0.62, r * 0.72), 0.52);
    for u in [0.13, 0.24] {
        s.tone(&bar(&[at(u, 0.48), at(u, 0.70)], 4.6), 0.20);
    }
    for _ in 0..90 {
        let v = 0.485 + 0.505 * dice.roll() * dice.between(0.55, 1.0);
        let u = dice.between(-0.02, 0.94);
        let long = dice.between(0.04, 0.20) * (0.5 + v);
        let (a, b) = (
            at(u.max(0.0), v),
            at((u + long).min(1.0), v + dice.about(0.004)),
        );
        let middle = [(a[0] + b[0]) * 0.5, (a[1] + b[1]) * 0.5 + 1.2];
        let tone = if dice.chance(0.7) { 0.54 } else { 0.22 };
        s.tone(&bar(&curve(&[a, middle, b]), dice.between(1.2, 2.6)), tone);
    }
    // The wood beside the image did not print quite clean.
    s.tone(&area(-0.004, 1.0, 1.0, 1.004), 0.60);
    pins(s, &NEW);
    lit(s, &NEW);
}

/// A sheet whose photograph is at hand.
fn known_print(s: &mut Plane, known: &Photograph) {
    let [w, h] = KNOWN.size;
    let border = crate::layout::BORDER * w.max(h);
    let outline = KNOWN.outline();
    let mut there = Plane::cleared(s.window);
    there.leave(&outline);
    let brightness = |x: f32, y: f32| {
        let (x, y) = (
            x.clamp(2.5, w - 2.5) + border,
            y.clamp(2.5, h - 2.5) + border,
        );
        let px = (x / (w + 2.0 * border) * known.width as f32) as usize;
        let py = (y / (h + 2.0 * border) * known.height as f32) as usize;
        let i = 3 * (py.min(known.height - 1) * known.width + px.min(known.width - 1));
        // Film of the time saw little red.
        let [r, g, b] = [0, 1, 2].map(|c| linear(f32::from(known.rgb[i + c]) / 255.0));
        encoded(0.14 * r + 0.46 * g + 0.40 * b)
    };
    for py in 0..s.window.h {
        for px in 0..s.window.w {
            let i = py * s.window.w + px;
            if there.data[i] <= 0.0 {
                continue;
            }
            let [x, y] = KNOWN.under(s.window.at(px, py));
            let mut sum = 0.0;
            for dy in [-0.36, 0.0, 0.36] {
                for dx in [-0.36, 0.0, 0.36] {
                    sum += brightness(x + dx, y + dy);
                }
            }
            let seen = (sum / 9.0).clamp(0.0, 1.0);
            s.data[i] = mix(s.data[i], 0.10 + 0.80 * seen, there.data[i]);
        }
    }
    pins(s, &KNOWN);
    lit(s, &KNOWN);
}

fn pins(s: &mut Plane, sheet: &Pinned) {
    let [w, h] = sheet.size;
    for (x, y) in [
        (5.0, 5.0),
        (w - 5.0, 5.0),
        (5.0, h - 6.0),
        (w - 5.0, h - 6.0),
    ] {
        let [px, py] = sheet.point(x, y);
        s.tone(&ellipse(px + 2.0, py + 2.4, 4.4, 4.2), 0.40);
        s.tone(&ellipse(px, py, 4.2, 4.0), 0.16);
        s.tone(&ellipse(px - 1.2, py - 1.3, 1.4, 1.4), 0.85);
    }
}

/// The light on a sheet falls off to the right and towards its lower corners, which bend away.
fn lit(s: &mut Plane, sheet: &Pinned) {
    let mut there = Plane::cleared(s.window);
    there.leave(&sheet.outline());
    let [w, h] = sheet.size;
    for py in 0..s.window.h {
        for px in 0..s.window.w {
            let i = py * s.window.w + px;
            if there.data[i] <= 0.0 {
                continue;
            }
            let p = s.window.at(px, py);
            let [x, y] = sheet.under(p);
            let fall = mix(1.10, 0.86, step(380.0, 1500.0, p[0]));
            let curl = 1.0 - 0.16 * step(0.86 * h, h, y) * (0.4 + 0.6 * step(0.5 * w, w, x));
            s.data[i] *= mix(1.0, fall * curl, there.data[i]);
        }
    }
}

/// An apron on the last peg.
fn apron(s: &mut Plane) {
    let cloth = blob(&[
        [1400.0, 92.0],
        [1380.0, 150.0],
        [1372.0, 330.0],
        [1362.0, 560.0],
        [1380.0, 640.0],
        [1430.0, 652.0],
        [1490.0, 640.0],
        [1512.0, 560.0],
        [1506.0, 300.0],
        [1480.0, 150.0],
        [1452.0, 96.0],
    ]);
    shadowed(s, &cloth, [12.0, 12.0], 9, 0.5);
    s.tone(&cloth, 0.17);
    let folds: [&[Pt]; 4] = [
        &[[1412.0, 110.0], [1400.0, 300.0], [1392.0, 610.0]],
        &[[1430.0, 104.0], [1428.0, 320.0], [1424.0, 630.0]],
        &[[1448.0, 110.0], [1462.0, 320.0], [1460.0, 630.0]],
        &[[1462.0, 140.0], [1484.0, 320.0], [1490.0, 600.0]],
    ];
    for (i, fold) in folds.iter().enumerate() {
        let tone = [0.30, 0.26, 0.10, 0.08][i];
        s.tone(&bar(&curve(fold), 9.0), tone);
    }
}

/// The table with the slab, two rollers, the block, tins and a pile of paper.
fn table(s: &mut Plane, seed: u32, dice: &mut Dice) {
    let top = [
        [150.0, 742.0],
        [1500.0, 742.0],
        [1500.0, 1000.0],
        [0.0, 1000.0],
        [0.0, 960.0],
    ];
    shadowed(s, &rect(150.0, 720.0, 1350.0, 30.0), [0.0, 0.0], 12, 0.4);
    let mut wood = Plane::drawn(s.window, |p| {
        let fall = mix(0.62, 0.36, step(100.0, 1450.0, p[0]));
        let depth = (p[1] - 700.0) / 300.0;
        let grain = 0.10 * (cloud(p[0] / 260.0, p[1] / (5.0 + 5.0 * depth), 3, seed ^ 5) - 0.5);
        let spill = 0.10 * step(0.62, 0.85, cloud(p[0] / 60.0, p[1] / 22.0, 3, seed ^ 6));
        fall + grain - spill
    });
    let mut there = Plane::cleared(s.window);
    there.leave(&top);
    for ((light, wood), there) in s.data.iter_mut().zip(&mut wood.data).zip(&there.data) {
        *light = mix(*light, *wood, *there);
    }
    s.tone(&bar(&[[150.0, 743.0], [1500.0, 743.0]], 3.0), 0.62);
    for y in [812.0, 902.0] {
        let x = 150.0 - (y - 742.0) * 0.62;
        s.tone(&bar(&[[x, y], [1500.0, y + 4.0]], 1.6), 0.20);
    }

    // A pile of paper, torn edges towards us.
    let pile = [
        [196.0, 806.0],
        [470.0, 800.0],
        [486.0, 872.0],
        [172.0, 880.0],
    ];
    shadowed(s, &pile, [12.0, 10.0], 6, 0.5);
    s.tone(
        &[
            [172.0, 880.0],
            [486.0, 872.0],
            [486.0, 888.0],
            [172.0, 897.0],
        ],
        0.60,
    );
    for i in 0..5 {
        let y = 882.0 + 3.1 * i as f32;
        s.tone(&bar(&[[173.0, y + 1.0], [486.0, y - 8.0]], 0.9), 0.38);
    }
    s.tone(&pile, 0.88);

    // The slab with ink rolled out on it.
    let slab = [
        [556.0, 806.0],
        [800.0, 804.0],
        [826.0, 886.0],
        [540.0, 890.0],
    ];
    shadowed(s, &slab, [12.0, 12.0], 6, 0.55);
    s.tone(
        &[
            [540.0, 890.0],
            [826.0, 886.0],
            [826.0, 906.0],
            [540.0, 911.0],
        ],
        0.30,
    );
    s.tone(&slab, 0.66);
    s.tone(
        &blob(&[
            [584.0, 824.0],
            [690.0, 816.0],
            [770.0, 826.0],
            [784.0, 864.0],
            [690.0, 874.0],
            [580.0, 868.0],
        ]),
        0.16,
    );
    for i in 0..6 {
        let x = 606.0 + 28.0 * i as f32;
        s.tone(&bar(&[[x, 826.0], [x - 4.0, 866.0]], 5.0), 0.24);
    }
    roller(s, [690.0, 852.0], 0.30, 96.0);
    roller(s, [858.0, 942.0], -0.06, 80.0);

    // The block, face up, with a gouge across it.
    let face = [
        [936.0, 802.0],
        [1196.0, 798.0],
        [1236.0, 888.0],
        [926.0, 894.0],
    ];
    shadowed(s, &face, [14.0, 14.0], 6, 0.55);
    s.tone(
        &[
            [926.0, 894.0],
            [1236.0, 888.0],
            [1236.0, 920.0],
            [926.0, 927.0],
        ],
        0.34,
    );
    s.tone(&face, 0.50);
    for i in 0..26 {
        let t = i as f32 / 26.0;
        let y = mix(806.0, 884.0, t);
        let (l, r) = (mix(944.0, 936.0, t), mix(1190.0, 1228.0, t));
        let from = dice.between(l, r - 60.0);
        let to = (from + dice.between(30.0, 150.0)).min(r);
        let tone = if dice.chance(0.6) { 0.24 } else { 0.66 };
        s.tone(
            &bar(
                &curve(&[[from, y], [(from + to) * 0.5, y + dice.about(3.0)], [to, y]]),
                2.4,
            ),
            tone,
        );
    }
    shadowed(
        s,
        &bar(&[[1010.0, 846.0], [1176.0, 822.0]], 9.0),
        [5.0, 7.0],
        3,
        0.5,
    );
    s.tone(&bar(&[[1010.0, 846.0], [1092.0, 834.0]], 3.6), 0.74);
    s.tone(
        &bar(
            &curve(&[
                [1092.0, 834.0],
                [1120.0, 829.0],
                [1150.0, 825.0],
                [1180.0, 822.0],
            ]),
            14.0,
        ),
        0.22,
    );
    s.tone(&bar(&[[1098.0, 830.0], [1172.0, 819.0]], 2.6), 0.52);

    // Tins of ink, one open, and a jar of tools.
    tin(s, [1296.0, 800.0], 46.0, 70.0, true);
    tin(s, [1382.0, 820.0], 38.0, 56.0, false);
    tin(s, [1452.0, 792.0], 40.0, 84.0, false);

    // The horn spoon with which she rubbed.
    let spoon = blob(&[
        [364.0, 942.0],
        [386.0, 930.0],
        [414.0, 934.0],
        [424.0, 946.0],
        [408.0, 958.0],
        [378.0, 957.0],
    ]);
    shadowed(s, &spoon, [8.0, 8.0], 4, 0.5);
    s.tone(
        &bar(
            &curve(&[[414.0, 946.0], [470.0, 950.0], [540.0, 946.0]]),
            10.0,
        ),
        0.20,
    );
    s.tone(&spoon, 0.28);
    s.tone(
        &blob(&[
            [380.0, 940.0],
            [396.0, 935.0],
            [410.0, 941.0],
            [396.0, 944.0],
        ]),
        0.66,
    );
}

/// A roller seen from above: its cylinder, its fork and its handle, turned.
fn roller(s: &mut Plane, at: Pt, turns: f32, long: f32) {
    let place = |points: &[Pt]| -> Path {
        let moved: Path = points
            .iter()
            .map(|p| [at[0] + p[0], at[1] + p[1] * 0.62])
            .collect();
        turned(&moved, at, turns * 0.12)
    };
    let half = long * 0.5;
    let body = place(&[[-half, -20.0], [half, -20.0], [half, 20.0], [-half, 20.0]]);
    shadowed(s, &body, [9.0, 10.0], 4, 0.55);
    s.tone(
        &bar(
            &place(&[
                [-half - 7.0, 0.0],
                [-half - 7.0, 44.0],
                [half + 7.0, 44.0],
                [half + 7.0, 0.0],
            ]),
            4.2,
        ),
        0.64,
    );
    s.tone(&bar(&place(&[[0.0, 44.0], [0.0, 72.0]]), 6.0), 0.62);
    s.tone(&body, 0.12);
    s.tone(
        &place(&[
            [-half + 2.0, -14.0],
            [half - 2.0, -14.0],
            [half - 2.0, -7.0],
            [-half + 2.0, -7.0],
        ]),
        0.36,
    );
    let handle = place(&[
        [-9.0, 70.0],
        [9.0, 70.0],
        [12.0, 108.0],
        [8.0, 142.0],
        [-8.0, 142.0],
        [-12.0, 108.0],
    ]);
    shadowed(s, &handle, [7.0, 8.0], 4, 0.5);
    s.tone(&handle, 0.24);
    s.tone(&bar(&place(&[[-5.0, 76.0], [-6.0, 134.0]]), 3.4), 0.52);
}

fn tin(s: &mut Plane, at: Pt, r: f32, high: f32, open: bool) {
    let [x, y] = at;
    let body = rect(x - r, y, r * 2.0, high);
    shadowed(s, &body, [16.0, 8.0], 7, 0.5);
    s.tone(&body, 0.34);
    s.tone(&ellipse(x, y + high, r, r * 0.27), 0.30);
    s.tone(&rect(x - r * 0.86, y + 4.0, r * 0.30, high - 4.0), 0.66);
    s.tone(&rect(x + r * 0.45, y + 4.0, r * 0.5, high - 2.0), 0.20);
    s.tone(&rect(x - r, y + high * 0.34, r * 2.0, high * 0.36), 0.52);
    s.tone(
        &rect(x + r * 0.45, y + high * 0.34, r * 0.55, high * 0.36),
        0.36,
    );
    s.tone(&ellipse(x, y, r, r * 0.27), 0.72);
    s.tone(
        &ellipse(x, y, r * 0.90, r * 0.22),
        if open { 0.08 } else { 0.50 },
    );
    if open {
        shadowed(
            s,
            &bar(&[[x - 4.0, y + 3.0], [x + 44.0, y - 92.0]], 8.0),
            [6.0, 4.0],
            3,
            0.3,
        );
        s.tone(&bar(&[[x - 6.0, y + 4.0], [x + 40.0, y - 90.0]], 7.0), 0.68);
    }
}
