//! No. 12a, the tide mill, small plate.

use super::etched::{etch, plate_print};
use super::prelude::*;
use crate::parts::land::willow;
use crate::parts::lines::{bitten, drawn};
use crate::parts::sea::ripples;

pub const ART: Art = Art {
    key: "12a",
    cut: small_mill_cut,
    print: plate_print,
};

fn small_mill_cut(look: &Look, b: &Bench) -> Cuts {
    let dice = &mut Dice::new(b.seed);
    let mut k = b.cleared();
    let wall = b.line(&[
        [66.0, 74.0],
        [66.0, 55.0],
        [73.0, 44.0],
        [80.0, 55.0],
        [80.0, 74.0],
    ]);
    let side = b.line(&[[38.0, 74.0], [38.0, 56.0], [66.0, 55.0], [66.0, 74.0]]);
    let roof = b.line(&[[66.0, 55.4], [73.0, 44.0], [45.0, 45.0], [36.8, 56.4]]);
    for shape in [&wall, &side, &roof] {
        k.leave_all(&drawn(shape, 3.6, dice));
    }
    for (shape, depth, gap, turn) in [
        (&side, 2, 9.0, 0.13),
        (&roof, 1, 8.0, 0.2),
        (&wall, 1, 10.0, 0.0),
    ] {
        for i in 0..depth {
            shade(
                &mut k,
                shape,
                Hatch {
                    turn: turn + 0.1 * i as f32,
                    gap,
                    width: 2.2,
                    stray: 1.4,
                },
                dice,
            );
        }
    }
    for (x, y) in [(44.0, 60.0), (56.0, 60.0), (71.0, 60.0)] {
        k.leave(&b.area(x, y, x + 3.4, y + 5.6));
    }
    let c = b.at(31.0, 69.0);
    let r = b.y(12.0);
    k.leave(&bitten(&arc(c[0], c[1], r, r, 0.0, 1.01), 4.2, dice));
    k.leave(&bitten(
        &arc(c[0], c[1], r * 0.84, r * 0.84, 0.0, 1.01),
        2.6,
        dice,
    ));
    for i in 0..8 {
        let t = i as f32 / 8.0 * core::f32::consts::TAU + 0.2;
        k.leave(&bitten(
            &[c, [c[0] + r * libm::cosf(t), c[1] + r * libm::sinf(t)]],
            3.0,
            dice,
        ));
    }
    k.cut(&b.line(&[[20.0, 76.0], [40.0, 75.0], [40.0, 84.0], [20.0, 84.0]]));
    k.leave(&bitten(
        &b.curve(&[[-2.0, 73.0], [14.0, 74.0], [24.0, 75.0]]),
        3.4,
        dice,
    ));
    k.leave(&bitten(
        &b.curve(&[[80.0, 74.0], [90.0, 73.4], [102.0, 72.0]]),
        3.4,
        dice,
    ));
    for line in willow(b.at(9.0, 58.0), 130.0, 34, dice) {
        k.leave(&bitten(&line, 2.3, dice));
    }
    k.leave_all(&ripples([-10.0, b.y(78.0), b.w, b.h], 60, 140.0, 3.4, dice));
    for i in 0..13 {
        let y = 78.5 + 1.25 * i as f32;
        let wide = 20.0 - 0.9 * i as f32;
        let line = b.line(&[
            [59.0 - wide + dice.about(2.0), y],
            [59.0, y + dice.about(0.3)],
            [59.0 + wide + dice.about(2.0), y],
        ]);
        k.leave(&bitten(&line, 2.4, dice));
    }
    // The sky: a few long lines, and birds far off.
    for (x, y, l) in [
        (10.0, 16.0, 360.0),
        (48.0, 9.0, 420.0),
        (30.0, 24.0, 300.0),
        (66.0, 28.0, 300.0),
        (4.0, 33.0, 240.0),
    ] {
        k.leave(&bitten(
            &curve(&[
                b.at(x, y),
                [b.x(x) + l * 0.5, b.y(y - 3.0)],
                [b.x(x) + l, b.y(y)],
            ]),
            2.2,
            dice,
        ));
    }
    for (x, y) in [(58.0, 20.0), (63.0, 17.0), (69.0, 22.0)] {
        let p = b.at(x, y);
        k.leave(&bitten(
            &curve(&[[p[0] - 15.0, p[1] - 6.0], p, [p[0] + 17.0, p[1] - 8.0]]),
            3.0,
            dice,
        ));
    }
    etch(b, k, look)
}
