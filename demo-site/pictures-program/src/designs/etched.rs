//! What the etched and drypoint plates share: tones, scratches, and the film of ink left by wiping.

use super::prelude::*;
use crate::parts::lines::drawn;

/// Brings a shape to a tone, for `parts::lines::resin` to break into grain.
pub fn aquatint(plane: &mut Plane, shape: &[Pt], depth: f32) {
    let mut other = Plane::cleared(plane.window);
    other.leave(shape);
    for (a, o) in plane.data.iter_mut().zip(&other.data) {
        *a = a.max(o * depth);
    }
}

/// Clears a shape, shades it with cross-hatching and draws its outline.
pub fn modelled(
    plane: &mut Plane,
    shape: &[Pt],
    (depth, gap, turn): (usize, f32, f32),
    outline: f32,
    dice: &mut Dice,
) {
    plane.cut(shape);
    tone(plane, shape, depth, gap, turn, dice);
    plane.leave_all(&drawn(shape, outline, dice));
}

/// Finishes a plate: the bitten work, trimmed to the image, and the whole surface for its film.
pub fn etch(b: &Bench, mut lines: Plane, _: &Look) -> Cuts {
    lines.keep(&b.area(0.0, 0.0, 100.0, 100.0));
    let edge = outline(&b.area(0.0, 0.0, 100.0, 100.0), 1.6);
    lines.leave(&edge);
    Cuts::from([("lines", lines), ("film", b.plate())])
}

/// A scratch across the plate, in percent of the image, harsher with its stage.
pub fn scratch(k: &mut Plane, b: &Bench, from: Pt, to: Pt, stage: usize) {
    let width = if stage > 1 { 2.6 } else { 1.3 };
    let line = crate::engine::shape::even(&[b.at(from[0], from[1]), b.at(to[0], to[1])], 6.0);
    k.leave(&crate::engine::shape::stroke(&line, |t| {
        width * (0.6 + 0.4 * libm::sinf(t * 3.1))
    }));
}

/// The film on a wiped plate at a design point, for a choice of wiping.
fn film(how: &str, p: Pt, turn: f32, bright: Pt) -> f32 {
    let streak = cloud(
        (p[0] + p[1] * 0.35) / 260.0 + turn,
        (p[1] - p[0] * 0.35) / 26.0,
        3,
        71,
    );
    let soft = cloud(p[0] / 210.0, p[1] / 210.0 + turn, 2, 73);
    match how {
        "clean" => 0.035 + 0.03 * soft,
        "heavy" => {
            let (dx, dy) = (p[0] - bright[0], p[1] - bright[1]);
            let near = 1.0 / (1.0 + (dx * dx + dy * dy) / (210.0 * 210.0));
            (0.30 + 0.34 * soft + 0.24 * streak) * (1.0 - 0.92 * near)
        }
        _ => 0.10 + 0.10 * soft + 0.15 * (streak - 0.3).max(0.0),
    }
}

/// One pull of a plate: the film first, then the lines that hold their ink.
pub fn plate_print(look: &Look) -> Vec<Pass> {
    inked_plate(look, [230.0, 180.0])
}

/// The same with another place wiped bright.
pub fn inked_plate(look: &Look, bright: Pt) -> Vec<Pass> {
    let how = match look.choice("tone") {
        "" if look.printing() == "own" => "film".to_owned(),
        "" => "clean".to_owned(),
        told => told.to_owned(),
    };
    let turn = look.number as f32 * 1.7;
    let dark = ink(0x2a_22_1d);
    vec![
        Pass::new("plate", "film", ink(0x5a_48_3a))
            .from(Surface::Copper, 0.0)
            .charged(move |p| film(&how, p, turn, bright)),
        Pass::new("plate", "lines", dark).from(Surface::Copper, 0.0),
    ]
}
