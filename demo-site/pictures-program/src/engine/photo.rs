//! The photograph: a sheet on a table, slightly turned, in uneven light.

use super::colour::{Colour, Encoder, blend, hex, scaled};
use super::noise::{Dice, cloud, smooth, step, unit};
use super::plane::Window;
use super::shape::Pt;
use super::sheet::Laid;

/// What lies under the sheet.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Table {
    /// Grey card.
    Grey,
    /// Darker card.
    Slate,
    /// Unbleached linen.
    Linen,
}

/// How one photograph was taken.
pub struct Shot {
    /// Width and height of the photograph, px.
    pub size: [usize; 2],
    /// Table or, for a detail, nothing but the sheet.
    pub table: Option<Table>,
    /// The camera stood exactly above: no turn, no perspective.
    pub straight: bool,
    /// Light falling flat from the side, showing the paper's surface.
    pub raking: bool,
    /// The seed of what is accidental in the photograph.
    pub seed: u32,
}

/// Eight bits a channel, row by row.
pub struct Photograph {
    /// Width, px.
    pub width: usize,
    /// Height, px.
    pub height: usize,
    /// Red, green, blue.
    pub rgb: Vec<u8>,
}

/// Takes the photograph.
pub fn take(laid: &Laid, shot: &Shot) -> Photograph {
    let [width, height] = shot.size;
    let mut dice = Dice::new(shot.seed ^ 0xCA3E);
    let corners = corners(laid.window, shot, &mut dice);
    let to_sheet = Projection::to_rectangle(corners, laid.window.w as f32, laid.window.h as f32);
    let light = Light::new(&mut dice);
    let mut seen: Vec<Colour> = Vec::with_capacity(width * height);
    for y in 0..height {
        for x in 0..width {
            let at = to_sheet.apply([x as f32 + 0.5, y as f32 + 0.5]);
            let (ink, cover) = sample(laid, at);
            let mut colour = ink;
            if cover < 1.0 {
                let ground = ground(shot, [x as f32, y as f32], at, laid);
                colour = blend(ground, ink, cover);
            }
            let (u, v) = (x as f32 / width as f32, y as f32 / height as f32);
            let mut fall = light.at(u, v);
            if shot.raking {
                fall *= raking(at, u);
            }
            seen.push(scaled(colour, fall));
        }
    }
    let seen = lens(&seen, width, height, 0.14);
    develop(&seen, shot)
}

/// Where the sheet's corners fall in the photograph, clockwise from upper left.
fn corners(sheet: Window, shot: &Shot, dice: &mut Dice) -> [Pt; 4] {
    let [width, height] = shot.size.map(|v| v as f32);
    let (w, h) = (sheet.w as f32, sheet.h as f32);
    // A detail is taken a little closer than its box, so that no edge of the scan shows.
    let scale = if shot.table.is_some() { 1.0 } else { 1.03 };
    let calm = match (shot.straight, shot.table.is_some()) {
        (true, _) => 0.0,
        (false, true) => 1.0,
        (false, false) => 0.3,
    };
    let turn = (dice.about(0.017) + if dice.chance(0.5) { 0.003 } else { -0.003 }) * calm;
    let (sin, cos) = (libm::sinf(turn), libm::cosf(turn));
    let shift = [dice.about(0.006) * width, dice.about(0.006) * height];
    [[-0.5, -0.5], [0.5, -0.5], [0.5, 0.5], [-0.5, 0.5]].map(|[a, b]| {
        let (x, y) = (a * w * scale, b * h * scale);
        [
            width * 0.5 + x * cos - y * sin + (shift[0] + dice.about(0.007) * width) * calm,
            height * 0.5 + x * sin + y * cos + (shift[1] + dice.about(0.007) * height) * calm,
        ]
    })
}

/// A projective map, row by row, last element 1 before inversion.
struct Projection([f32; 9]);

impl Projection {
    /// The map that takes four corners of a photograph to a rectangle `w` by `h` at the origin.
    ///
    /// The closed form for a square to a quadrilateral (Heckbert 1989), inverted by its adjugate.
    fn to_rectangle(c: [Pt; 4], w: f32, h: f32) -> Self {
        let (sx, sy) = (
            c[0][0] - c[1][0] + c[2][0] - c[3][0],
            c[0][1] - c[1][1] + c[2][1] - c[3][1],
        );
        let (dx1, dx2) = (c[1][0] - c[2][0], c[3][0] - c[2][0]);
        let (dy1, dy2) = (c[1][1] - c[2][1], c[3][1] - c[2][1]);
        let determinant = dx1 * dy2 - dx2 * dy1;
        let g = (sx * dy2 - dx2 * sy) / determinant;
        let k = (dx1 * sy - sx * dy1) / determinant;
        let m = [
            (c[1][0] - c[0][0] + g * c[1][0]) / w,
            (c[3][0] - c[0][0] + k * c[3][0]) / h,
            c[0][0],
            (c[1][1] - c[0][1] + g * c[1][1]) / w,
            (c[3][1] - c[0][1] + k * c[3][1]) / h,
            c[0][1],
            g / w,
            k / h,
            1.0,
        ];
        Self([
            m[4] * m[8] - m[5] * m[7],
            m[2] * m[7] - m[1] * m[8],
            m[1] * m[5] - m[2] * m[4],
            m[5] * m[6] - m[3] * m[8],
            m[0] * m[8] - m[2] * m[6],
            m[2] * m[3] - m[0] * m[5],
            m[3] * m[7] - m[4] * m[6],
            m[1] * m[6] - m[0] * m[7],
            m[0] * m[4] - m[1] * m[3],
        ])
    }

    fn apply(&self, p: Pt) -> Pt {
        let m = &self.0;
        let d = m[6] * p[0] + m[7] * p[1] + m[8];
        [
            (m[0] * p[0] + m[1] * p[1] + m[2]) / d,
            (m[3] * p[0] + m[4] * p[1] + m[5]) / d,
        ]
    }
}

/// Colour and cover of the flat sheet between its pixels.
fn sample(laid: &Laid, at: Pt) -> (Colour, f32) {
    let (x, y) = (at[0] - 0.5, at[1] - 0.5);
    let (fx, fy) = (x.floor(), y.floor());
    let (u, v) = (x - fx, y - fy);
    let (mut colour, mut cover) = ([0.0; 3], 0.0);
    for (dx, dy, weight) in [
        (0, 0, (1.0 - u) * (1.0 - v)),
        (1, 0, u * (1.0 - v)),
        (0, 1, (1.0 - u) * v),
        (1, 1, u * v),
    ] {
        let (ix, iy) = (fx as isize + dx, fy as isize + dy);
        if ix < 0 || iy < 0 || ix as usize >= laid.window.w || iy as usize >= laid.window.h {
            continue;
        }
        let i = iy as usize * laid.window.w + ix as usize;
        let share = weight * laid.paper[i];
        cover += share;
        for (sum, part) in colour.iter_mut().zip(laid.colour[i]) {
            *sum += share * part;
        }
    }
    if cover > 0.0 {
        colour = scaled(colour, 1.0 / cover);
    }
    (colour, cover)
}

/// The table with the sheet's shadow on it.
fn ground(shot: &Shot, p: Pt, at: Pt, laid: &Laid) -> Colour {
    let size = shot.size[0].max(shot.size[1]) as f32 / 1000.0;
    let (x, y) = (p[0] / size, p[1] / size);
    let table = shot.table.unwrap_or(Table::Grey);
    let (base, texture) = match table {
        Table::Grey => (
            hex(0x8d_8d_8b),
            0.05 * (cloud(x / 2.2, y / 2.2, 2, shot.seed) - 0.5),
        ),
        Table::Slate => (
            hex(0x5c_5e_60),
            0.06 * (cloud(x / 1.8, y / 1.8, 2, shot.seed) - 0.5),
        ),
        Table::Linen => (hex(0xa9_9f_8e), weave(x, y, shot.seed)),
    };
    let mut colour = scaled(base, 1.0 + texture);
    // The lamp stands at the upper left, so the shadow falls to the lower right.
    let reach = 9.0 * size;
    let shadow = |dx: f32, dy: f32, soft: f32| {
        let (w, h) = (laid.window.w as f32, laid.window.h as f32);
        let inside = (at[0] - dx)
            .min(w + dx - at[0])
            .min((at[1] - dy).min(h + dy - at[1]));
        step(-soft, soft, inside)
    };
    let deep = shadow(reach * 0.25, reach * 0.3, reach * 0.35);
    let wide = shadow(reach * 0.7, reach * 0.8, reach * 1.9);
    colour = scaled(colour, 1.0 - 0.45 * deep - 0.25 * wide);
    colour
}

fn weave(x: f32, y: f32, seed: u32) -> f32 {
    let warp = x / 2.6 + 0.35 * smooth(x / 14.0, y / 30.0, seed);
    let weft = y / 2.6 + 0.35 * smooth(x / 30.0, y / 14.0, seed ^ 1);
    let over = (warp.floor() as i32 + weft.floor() as i32) & 1;
    let thread = if over == 0 { weft } else { warp };
    let rib = libm::sinf((thread - thread.floor()) * core::f32::consts::PI);
    let slub = smooth(x / 40.0, weft.floor(), seed ^ 2) + smooth(warp.floor(), y / 40.0, seed ^ 3);
    0.20 * (rib - 0.6) + 0.07 * (slub - 1.0)
}

/// The light: a lamp at one side, a window at the other, darker towards the corners of the lens.
struct Light {
    tilt: Pt,
    spot: Pt,
    level: f32,
}

impl Light {
    fn new(dice: &mut Dice) -> Self {
        Self {
            tilt: [-0.055 + dice.about(0.03), -0.035 + dice.about(0.03)],
            spot: [dice.between(0.2, 0.5), dice.between(0.15, 0.45)],
            level: dice.between(0.92, 0.965),
        }
    }

    fn at(&self, u: f32, v: f32) -> f32 {
        let (x, y) = (u - 0.5, v - 0.5);
        let (sx, sy) = (u - self.spot[0], v - self.spot[1]);
        let bloom = 1.0 / (1.0 + 5.0 * (sx * sx + sy * sy));
        self.level
            * (1.0 + self.tilt[0] * x * 2.0 + self.tilt[1] * y * 2.0)
            * (0.965 + 0.045 * bloom)
            * (1.0 - 0.10 * (x * x + y * y))
    }
}

fn raking(at: Pt, u: f32) -> f32 {
    let fine = smooth(at[0] / 2.6, at[1] / 3.0, 71) - smooth((at[0] + 2.0) / 2.6, at[1] / 3.0, 71);
    let broad = cloud(at[0] / 90.0, at[1] / 120.0, 2, 72) - 0.5;
    (1.12 - 0.55 * u) * (1.0 + 0.10 * fine + 0.22 * broad)
}

/// A touch of blur: each pixel gives `share` of itself to its four neighbours together.
fn lens(seen: &[Colour], width: usize, height: usize, share: f32) -> Vec<Colour> {
    let mut out = Vec::with_capacity(seen.len());
    for y in 0..height {
        for x in 0..width {
            let here = seen[y * width + x];
            let mut round = [0.0; 3];
            let beside = [
                y * width + x.saturating_sub(1),
                y * width + (x + 1).min(width - 1),
                y.saturating_sub(1) * width + x,
                (y + 1).min(height - 1) * width + x,
            ];
            for at in beside {
                for channel in 0..3 {
                    round[channel] += 0.25 * seen[at][channel];
                }
            }
            out.push(blend(here, round, share * 2.0));
        }
    }
    out
}

/// White balance, sensor noise, eight bits.
fn develop(seen: &[Colour], shot: &Shot) -> Photograph {
    let encoder = Encoder::new();
    let [width, height] = shot.size;
    let warm = 0.012 * (unit(3, 4, shot.seed) - 0.4);
    let balance = [1.0 + warm, 1.0, 1.0 - warm];
    let mut rgb = Vec::with_capacity(seen.len() * 3);
    for (i, colour) in seen.iter().enumerate() {
        let (x, y) = ((i % width) as i32, (i / width) as i32);
        let grain = unit(x, y, shot.seed ^ 81) + unit(x, y, shot.seed ^ 82) - 1.0;
        for channel in 0..3 {
            let value = encoder.value(colour[channel] * balance[channel]) + 1.3 * grain;
            rgb.push((value + 0.5).clamp(0.0, 255.0) as u8);
        }
    }
    Photograph { width, height, rgb }
}
