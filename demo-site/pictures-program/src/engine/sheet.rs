//! One sheet, printed: paper, then each pass of each block in its order, then marks.
//!
//! Everything is laid down on the flat sheet, in millimetres; the photograph is taken of the result
//! (`photo`). Cut surfaces are shared by all impressions of a state, so only what differs from sheet
//! to sheet (ink, register, paper, pressure) is computed here.

use std::collections::BTreeMap;

use super::colour::{Colour, blend, hex, scaled, times};
use super::grain::Surface;
use super::ink::Pass;
use super::noise::{cloud, mix, smooth, step};
use super::paper::Paper;
use super::plane::{Plane, Window};
use super::shape::Pt;

/// A cut surface with what every impression from it shares.
pub struct Surfaced {
    cover: Plane,
    rim: Plane,
    lack: Plane,
}

/// The cut surfaces of a design in one condition, by matrix and cut.
pub type Blocks = BTreeMap<(&'static str, &'static str), Surfaced>;

/// Adds grain and ink rim to the cut planes that the passes use.
pub fn surfaced(
    cuts: &BTreeMap<&'static str, Plane>,
    passes: &[Pass],
    seed_of: impl Fn(&str) -> u32,
) -> Blocks {
    let mut blocks = Blocks::new();
    for pass in passes {
        let key = (pass.matrix, pass.cut);
        let Some(cover) = cuts.get(pass.cut) else {
            continue;
        };
        if blocks.contains_key(&key) {
            continue;
        }
        let seed = seed_of(pass.matrix);
        let surface = pass.surface;
        let lack = Plane::drawn(cover.window, |p| surface.lack(p, seed));
        let radius = (cover.window.scale * 1.3).round().max(1.0) as usize;
        let soft = cover.softened(radius);
        let mut rim = cover.clone();
        for (r, s) in rim.data.iter_mut().zip(&soft.data) {
            *r *= 1.0 - s;
        }
        blocks.insert(
            key,
            Surfaced {
                cover: cover.clone(),
                rim,
                lack,
            },
        );
    }
    blocks
}

/// How this sheet was pulled.
#[derive(Clone, Copy, Debug)]
pub struct Pull {
    /// Film of ink, 1 being a full charge.
    pub film: f32,
    /// Share of dry, speckled ink.
    pub dry: f32,
    /// How strongly the grain shows, as a factor.
    pub grain: f32,
    /// How strongly the rubbing shows.
    pub rub: f32,
    /// How far out of register blocks may lie, in design units.
    pub stray: f32,
    /// How far the colours have faded since, `0..1`.
    pub faded: f32,
    /// The seed of what is accidental on this sheet.
    pub seed: u32,
}

/// A film of something laid over the sheet after printing: a stamp, a pencil line.
pub struct Mark {
    /// Where it lies, in millimetres of the sheet.
    pub cover: Plane,
    /// Its colour.
    pub colour: Colour,
    /// Whether it skips in the hollows of the paper, as pencil does.
    pub dry: f32,
}

/// All that is needed to lay down one side of one sheet.
pub struct Plan<'a> {
    /// Width and height of the sheet, mm.
    pub size: Pt,
    /// Where the image lies: left, top, width, height, mm. It may reach beyond a trimmed sheet.
    pub image: [f32; 4],
    /// Width and height of the image in design units.
    pub canvas: Pt,
    /// The metal plate's edge: left, top, width, height, mm.
    pub platemark: Option<[f32; 4]>,
    /// The press has sunk the plate's edge into the paper; not so on a counterproof.
    pub sunk: bool,
    /// A second impression on the same sheet, so many millimetres to the right.
    pub twin: Option<f32>,
    /// The paper.
    pub paper: &'a Paper,
    /// Cut surfaces.
    pub blocks: &'a Blocks,
    /// Passes in printing order, those not printed left out.
    pub passes: &'a [Pass],
    /// The pull.
    pub pull: Pull,
    /// The picture reads the other way round (a counterproof).
    pub mirrored: bool,
    /// The side away from the ink is wanted.
    pub verso: bool,
    /// Marks on the wanted side.
    pub marks: &'a [Mark],
}

/// The flat sheet: colour in linear light, and how much of each pixel is paper.
pub struct Laid {
    /// The part of the sheet shown, in millimetres.
    pub window: Window,
    /// Colours row by row.
    pub colour: Vec<Colour>,
    /// `0..1`: 0 beyond the sheet's edge.
    pub paper: Vec<f32>,
}

struct Offset {
    dx: f32,
    dy: f32,
    turn: f32,
}

/// Lays the sheet down over the window (in millimetres of the sheet).
pub fn lay(plan: &Plan, window: Window) -> Laid {
    let offsets: Vec<Offset> = plan.passes.iter().map(|p| offset(plan, p.matrix)).collect();
    let fibres = fibre_plane(plan.paper, window);
    let mut colour = Vec::with_capacity(window.w * window.h);
    let mut cover = Vec::with_capacity(window.w * window.h);
    for py in 0..window.h {
        for px in 0..window.w {
            let p = window.at(px, py);
            let inside = edge(plan, p, window.scale);
            cover.push(inside);
            if inside <= 0.0 {
                colour.push([0.0; 3]);
                continue;
            }
            let at = py * window.w + px;
            let mut paper = plan.paper.at(p);
            paper = scaled(paper, 1.0 + fibres[at] + folds(plan, p));
            colour.push(if plan.verso {
                verso(plan, &offsets, p, paper)
            } else {
                recto(plan, &offsets, p, paper)
            });
        }
    }
    for mark in plan.marks {
        press(mark, plan.paper, &mut colour);
    }
    Laid {
        window,
        colour,
        paper: cover,
    }
}

/// How far a block lies out of register on this sheet.
fn offset(plan: &Plan, matrix: &str) -> Offset {
    let seed = super::noise::seed(&["register", matrix]) ^ plan.pull.seed;
    let roll = |i: i32| super::noise::unit(i, 77, seed) + super::noise::unit(i, 78, seed) - 1.0;
    // Other blocks are registered on the key block or the plate, which stray least.
    let share = if matrix == "key" || matrix == "plate" {
        0.12
    } else {
        1.0
    };
    Offset {
        dx: roll(1) * plan.pull.stray * share,
        dy: roll(2) * plan.pull.stray * share,
        turn: roll(3) * plan.pull.stray * share * 0.0006,
    }
}

fn design_point(plan: &Plan, p: Pt) -> Pt {
    let [left, top, width, height] = plan.image;
    let x = (p[0] - left) / width;
    let x = if plan.mirrored { 1.0 - x } else { x };
    [x * plan.canvas[0], (p[1] - top) / height * plan.canvas[1]]
}

fn recto(plan: &Plan, offsets: &[Offset], p: Pt, bare: Colour) -> Colour {
    let mut paper = bare;
    // On an uncut sheet of two, the right half repeats the left.
    let home = match plan.twin {
        Some(shift) if p[0] > plan.size[0] * 0.5 => [p[0] - shift, p[1]],
        _ => p,
    };
    if let Some(plate) = plan.platemark {
        if plan.sunk {
            paper = scaled(paper, 1.0 + embossed(plate, home));
        }
        if !on_plate(plate, home) {
            return paper;
        }
    }
    let d = design_point(plan, home);
    if d[0] < -40.0 || d[1] < -40.0 || d[0] > plan.canvas[0] + 40.0 || d[1] > plan.canvas[1] + 40.0
    {
        return paper;
    }
    let printed = printed(plan, offsets, p, d, paper);
    if plan.pull.faded <= 0.0 {
        return printed;
    }
    // Light takes reds and yellows first; what is left drifts towards the paper.
    let tired = [0, 1, 2].map(|i| {
        let share = plan.pull.faded * [0.42, 0.50, 0.55][i];
        mix(printed[i], paper[i] * [0.97, 0.93, 0.82][i], share)
    });
    blend(printed, tired, 0.9)
}

fn printed(plan: &Plan, offsets: &[Offset], p: Pt, d: Pt, paper: Colour) -> Colour {
    let pull = &plan.pull;
    let swirl = 6.3 * smooth(p[0] / 55.0, p[1] / 55.0, pull.seed ^ 61);
    let (sin, cos) = (libm::sinf(swirl), libm::cosf(swirl));
    let (along, across) = (p[0] * cos + p[1] * sin, p[1] * cos - p[0] * sin);
    let rubbed = smooth(across / 2.1, along / 22.0, pull.seed ^ 62) - 0.5;
    let pressure = cloud(p[0] / 38.0, p[1] / 38.0, 2, pull.seed ^ 63) - 0.5;
    let speck = 0.65 * smooth(p[0] / 0.42, p[1] / 0.42, pull.seed ^ 64)
        + 0.35 * smooth(p[0] / 1.1, p[1] / 1.1, pull.seed ^ 65);
    let mut colour = paper;
    for (pass, offset) in plan.passes.iter().zip(offsets) {
        let Some(block) = plan.blocks.get(&(pass.matrix, pass.cut)) else {
            continue;
        };
        let x = d[0] + offset.dx + (d[1] - 400.0) * offset.turn;
        let y = d[1] + offset.dy - (d[0] - 400.0) * offset.turn;
        let window = block.cover.window;
        let (px, py) = ((x - window.x) * window.scale, (y - window.y) * window.scale);
        let cover = block.cover.sample(px, py);
        if cover <= 0.003 {
            continue;
        }
        let charge = pass.charge.as_ref().map_or(1.0, |c| c([x, y]));
        if charge <= 0.003 {
            continue;
        }
        if pass.surface == Surface::Copper {
            let wet = 1.0 + 0.12 * pressure;
            colour = pass
                .ink
                .over(colour, (cover * charge * pull.film * wet).min(1.1));
            continue;
        }
        let lack = block.lack.sample(px, py) * pass.grain * pull.grain;
        let rim = block.rim.sample(px, py);
        let film = pull.film
            * charge
            * (1.0 - 0.75 * lack)
            * (1.0 + pull.rub * (0.30 * rubbed + 0.22 * pressure))
            * (1.0 + 0.30 * rim);
        let hungry = pull.dry * (0.26 + 0.55 * lack + 0.5 * pressure - 0.4 * rim);
        let wetted = step(hungry - 0.10, hungry + 0.16, speck);
        colour = pass.ink.over(colour, (film * cover * wetted).min(1.15));
    }
    colour
}

fn verso(plan: &Plan, offsets: &[Offset], p: Pt, bare: Colour) -> Colour {
    let through = [plan.size[0] - p[0], p[1]];
    let seen = recto(plan, offsets, through, [1.0; 3]);
    let grey = (seen[0] + seen[1] + seen[2]) / 3.0;
    let dim = mix(1.0, mix(grey, 1.0, 0.1), 0.20);
    let tint = [dim * 1.0, dim * 0.995, dim * 0.985];
    times(bare, tint)
}

/// Metal has rounded corners, so that it does not cut the paper.
fn on_plate(plate: [f32; 4], p: Pt) -> bool {
    const ROUND: f32 = 2.2;
    let [left, top, width, height] = plate;
    let dx = (left + ROUND - p[0])
        .max(p[0] - left - width + ROUND)
        .max(0.0);
    let dy = (top + ROUND - p[1])
        .max(p[1] - top - height + ROUND)
        .max(0.0);
    dx * dx + dy * dy <= ROUND * ROUND
}

/// The press has sunk the plate into the paper: a bevel lit from the upper left.
fn embossed(plate: [f32; 4], p: Pt) -> f32 {
    let [left, top, width, height] = plate;
    let (dl, dr) = (p[0] - left, left + width - p[0]);
    let (dt, db) = (p[1] - top, top + height - p[1]);
    if dl < -2.0 || dr < -2.0 || dt < -2.0 || db < -2.0 {
        return 0.0;
    }
    let ridge = |distance: f32| {
        let slope = 1.0 - step(0.0, 1.1, distance.abs());
        let lip = 1.0 - step(0.0, 2.0, (distance + 0.9).abs());
        slope * 0.9 + lip * 0.2
    };
    -0.16 * ridge(dl) + 0.10 * ridge(dr) - 0.16 * ridge(dt) + 0.10 * ridge(db)
}

fn folds(plan: &Plan, p: Pt) -> f32 {
    let mut shade = 0.0;
    if plan.paper.fold {
        let d = p[0] - plan.size[0] * 0.5 - 0.3 * (smooth(p[1] / 9.0, 0.0, 5) - 0.5);
        shade += 0.10 * step(-3.0, 0.0, d) * (1.0 - step(0.0, 0.5, d));
        shade -= 0.09 * (1.0 - step(0.0, 1.0, (d - 0.6).abs()));
    }
    for &(a, b) in &plan.paper.creases {
        let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
        let length = (dx * dx + dy * dy).sqrt().max(1e-3);
        let t = ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (length * length);
        if (0.0..=1.0).contains(&t) {
            let wave = 1.2 * (smooth(t * length / 14.0, a[0], 9) - 0.5);
            let d = ((p[0] - a[0]) * dy - (p[1] - a[1]) * dx) / length + wave;
            shade += 0.11 * (1.0 - step(0.0, 0.8, (d + 0.35).abs()));
            shade -= 0.13 * (1.0 - step(0.0, 0.6, (d - 0.35).abs()));
        }
    }
    shade
}

/// How much of a pixel is paper, by the distance to the sheet's own edge.
fn edge(plan: &Plan, p: Pt, scale: f32) -> f32 {
    let paper = plan.paper;
    let distance = (p[0] - paper.edge_stray(p[1], 0))
        .min(plan.size[0] - p[0] - paper.edge_stray(p[1], 1))
        .min(p[1] - paper.edge_stray(p[0], 2))
        .min(plan.size[1] - p[1] - paper.edge_stray(p[0], 3));
    (distance * scale + 0.5).clamp(0.0, 1.0)
}

fn fibre_plane(paper: &Paper, window: Window) -> Vec<f32> {
    let mut dark = Plane::cleared(window);
    let mut light = Plane::cleared(window);
    for (line, shade) in paper.fibre_lines() {
        let shape = super::shape::bar(&line, 0.22);
        let plane = if shade < 0.0 { &mut dark } else { &mut light };
        plane.tone(&shape, shade.abs());
    }
    dark.data
        .iter()
        .zip(&light.data)
        .map(|(d, l)| l - d)
        .collect()
}

fn press(mark: &Mark, paper: &Paper, colour: &mut [Colour]) {
    let window = mark.cover.window;
    for py in 0..window.h {
        for px in 0..window.w {
            let at = py * window.w + px;
            let cover = mark.cover.data[at];
            if cover <= 0.003 {
                continue;
            }
            let tooth = paper.tooth(window.at(px, py));
            let skip = 1.0 - mark.dry * step(0.35, 0.85, tooth);
            let ink = blend([1.0; 3], mark.colour, cover * skip);
            colour[at] = times(colour[at], ink);
        }
    }
}

/// Graphite.
pub fn graphite() -> Colour {
    hex(0x4b_4a_4c)
}
