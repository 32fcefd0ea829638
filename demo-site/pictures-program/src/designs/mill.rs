//! No. 12, the tide mill.

use super::etched::{aquatint, etch, modelled, plate_print, scratch};
use super::prelude::*;
use crate::parts::houses::tiles;
use crate::parts::land::willow;
use crate::parts::lines::{bitten, drawn, resin};
use crate::parts::sea::{broken, ripples};

pub const ART: Art = Art {
    key: "12",
    cut: mill_cut,
    print: plate_print,
};

fn mill_cut(look: &Look, b: &Bench) -> Cuts {
    let dice = &mut Dice::new(b.seed);
    let mut k = b.cleared();
    let mut a = b.cleared();
    mill(&mut k, &mut a, b, dice);
    pond(&mut k, &mut a, b, dice);
    if look.has("aquatint") {
        let mut sky = Plane::cleared(b.window);
        for i in 0..5 {
            let y = 3.0 + 7.0 * i as f32;
            aquatint(
                &mut sky,
                &b.curve(&[
                    [56.0, y],
                    [72.0, y - 2.0],
                    [88.0, y + 1.5],
                    [102.0, y - 2.0],
                    [102.0, y + 6.0],
                    [86.0, y + 7.5],
                    [70.0, y + 4.0],
                    [58.0, y + 6.0],
                ]),
                0.46 - 0.06 * i as f32,
            );
        }
        aquatint(&mut sky, &b.area(-2.0, -2.0, 102.0, 9.0), 0.34);
        sky.cut(&b.line(&[
            [16.0, 40.0],
            [20.0, 24.0],
            [38.0, 8.0],
            [58.0, 24.0],
            [60.0, 40.0],
        ]));
        a.add(&sky);
        resin(&mut a, b.seed);
        k.add(&a);
    }
    if look.has("heron") {
        heron_on_post(&mut k, b, dice);
    }
    if look.stage("scratch") > 0 {
        scratch(&mut k, b, [6.0, 78.0], [42.0, 74.0], look.stage("scratch"));
    }
    etch(b, k, look)
}

fn heron_on_post(k: &mut Plane, b: &Bench, dice: &mut Dice) {
    let bird = crate::parts::birds::heron(b.at(84.6, 56.4), b.y(10.0));
    k.cut(&outline(&bird.body, 4.0));
    k.cut(&bird.body);
    k.leave_all(&drawn(&bird.body, 1.7, dice));
    tone(k, &bird.body, 2, 3.0, 0.1, dice);
    k.leave(&bird.head);
    for leg in &bird.legs {
        k.leave(&bar(leg, 1.8));
    }
}

fn mill(k: &mut Plane, a: &mut Plane, b: &Bench, dice: &mut Dice) {
    let wall = b.line(&[
        [18.0, 66.0],
        [18.0, 40.0],
        [26.0, 27.0],
        [34.0, 40.0],
        [34.0, 66.0],
    ]);
    let side = b.line(&[[34.0, 66.0], [34.0, 40.0], [58.0, 40.0], [58.0, 66.0]]);
    let roof = b.line(&[[26.0, 27.0], [51.0, 26.0], [59.5, 40.6], [34.0, 40.6]]);
    let hoist = b.line(&[
        [40.0, 27.0],
        [40.0, 21.0],
        [45.0, 18.0],
        [50.0, 21.0],
        [50.0, 30.0],
        [42.0, 32.0],
    ]);
    for shape in [&wall, &side, &roof, &hoist] {
        k.leave_all(&drawn(shape, 2.6, dice));
    }
    // Weatherboards, each with its line of shadow.
    for i in 0..17 {
        let y = 28.5 + 2.25 * i as f32;
        let half = ((y - 27.0) / 13.0 * 8.0).min(8.0);
        k.leave(&bitten(
            &b.line(&[[26.0 - half, y], [26.0 + half, y]]),
            1.7,
            dice,
        ));
        if y > 40.5 {
            k.leave(&bitten(&b.line(&[[34.0, y], [58.0, y + 0.1]]), 1.6, dice));
        }
    }
    tone(k, &side, 2, 5.2, 0.13, dice);
    tone(k, &roof, 1, 5.0, 0.21, dice);
    let slates = tiles(bounds(&roof), 7.0, dice);
    k.within(&roof, |p| p.leave_all(&slates));
    tone(
        k,
        &b.line(&[[45.0, 18.0], [50.0, 21.0], [50.0, 30.0], [46.0, 31.0]]),
        2,
        4.5,
        0.2,
        dice,
    );
    aquatint(a, &side, 0.42);
    aquatint(a, &roof, 0.30);
    for (x, y) in [
        (22.0, 45.0),
        (28.0, 45.0),
        (39.0, 46.0),
        (51.0, 46.0),
        (25.0, 35.0),
    ] {
        let pane = b.area(x, y, x + 2.6, y + 4.6);
        modelled(k, &pane, (3, 2.8, 0.05), 1.8, dice);
    }
    let door = b.area(43.0, 52.0, 48.0, 63.0);
    k.cut(&door);
    tone(k, &door, 3, 3.2, 0.25, dice);
    wheel(k, b, dice);
    // The sluice under the mill: black water between piles.
    let race = b.line(&[[18.0, 66.0], [56.0, 66.0], [56.0, 71.5], [18.0, 71.0]]);
    tone(k, &race, 3, 3.8, 0.0, dice);
    aquatint(a, &race, 0.7);
    for i in 0..9 {
        let x = 18.0 + 4.7 * i as f32;
        let pile = b.area(x, 65.0, x + 1.2, 72.0);
        k.cut(&pile);
        k.leave_all(&drawn(&pile, 1.8, dice));
    }
}

fn wheel(k: &mut Plane, b: &Bench, dice: &mut Dice) {
    let c = b.at(63.0, 60.5);
    let r = b.y(11.6);
    k.cut(&ellipse(c[0], c[1], r * 0.98, r));
    for share in [1.0, 0.90, 0.24] {
        k.leave(&bitten(
            &arc(c[0], c[1], r * share * 0.98, r * share, 0.0, 1.01),
            2.6,
            dice,
        ));
    }
    for i in 0..16 {
        let t = i as f32 / 16.0 * core::f32::consts::TAU + 0.1;
        let (sin, cos) = (libm::sinf(t), libm::cosf(t));
        if i % 2 == 0 {
            k.leave(&bitten(
                &[
                    [c[0] + cos * r * 0.1, c[1] + sin * r * 0.1],
                    [c[0] + cos * r * 0.9, c[1] + sin * r * 0.9],
                ],
                2.8,
                dice,
            ));
        }
        k.leave(&bar(
            &[
                [c[0] + cos * r * 0.86, c[1] + sin * r * 0.86],
                [c[0] + cos * r * 1.07, c[1] + sin * r * 1.07],
            ],
            5.0,
        ));
    }
    let lower = arc(c[0], c[1], r * 0.96, r * 0.96, 0.02, 0.48);
    shade(
        k,
        &lower,
        Hatch {
            turn: 0.1,
            gap: 4.2,
            width: 1.3,
            stray: 0.6,
        },
        dice,
    );
    let water = b.line(&[[55.0, 69.0], [72.0, 69.0], [72.0, 74.0], [55.0, 74.0]]);
    k.cut(&water);
    k.leave_all(&ripples(
        b.bounds(54.0, 68.6, 74.0, 74.0),
        40,
        46.0,
        2.6,
        dice,
    ));
}

fn pond(k: &mut Plane, a: &mut Plane, b: &Bench, dice: &mut Dice) {
    // The causeway, and willows behind it.
    let bank = b.curve(&[
        [58.0, 66.0],
        [66.0, 66.5],
        [76.0, 65.0],
        [88.0, 64.0],
        [102.0, 62.5],
    ]);
    k.leave(&bitten(&bank, 3.0, dice));
    k.leave(&bitten(
        &b.curve(&[[70.0, 70.0], [80.0, 69.0], [90.0, 69.5], [102.0, 68.0]]),
        2.4,
        dice,
    ));
    let near = b.line(&[[72.0, 66.5], [102.0, 63.5], [102.0, 69.0], [72.0, 70.5]]);
    tone(k, &near, 2, 5.0, 0.18, dice);
    for (x, y, r) in [(92.0, 40.0, 128.0), (79.0, 46.0, 84.0), (7.0, 48.0, 90.0)] {
        for line in willow(b.at(x, y), r, 60, dice) {
            k.leave(&bitten(&line, 1.5, dice));
        }
        let trunk = b.curve(&[[x + 1.0, 65.0], [x, 56.0], [x + 0.8, y]]);
        k.leave(&tapered(&trunk, 10.0, 4.0));
        aquatint(a, &ellipse(b.x(x), b.y(y + 4.0), r * 0.7, r * 0.55), 0.24);
    }
    for (x, top) in [(75.0, 57.5), (79.5, 57.0), (84.5, 56.4)] {
        let post = b.area(x - 0.7, top, x + 0.9, 70.0);
        k.cut(&post);
        tone(k, &b.area(x + 0.1, top, x + 0.9, 70.0), 2, 2.6, 0.25, dice);
        k.leave_all(&drawn(&post, 2.0, dice));
    }
    k.leave(&bitten(&b.line(&[[74.0, 60.5], [86.0, 60.0]]), 4.4, dice));
    k.leave(&bitten(&b.line(&[[74.0, 64.0], [86.0, 63.5]]), 3.6, dice));
    // The reflection of the mill, in broken level lines.
    for i in 0..46 {
        let y = 72.0 + 0.6 * i as f32 + dice.about(0.2);
        let reach = if y < 88.0 {
            (18.0, 58.0)
        } else {
            (22.0 + (y - 88.0) * 0.6, 54.0 - (y - 88.0) * 0.8)
        };
        let line = b.line(&[
            [reach.0 + dice.about(2.0), y],
            [(reach.0 + reach.1) / 2.0, y + dice.about(0.2)],
            [reach.1 + dice.about(2.5), y],
        ]);
        k.leave(&bitten(&line, 2.0, dice));
    }
    for x in [75.0, 79.5, 84.5] {
        k.leave_all(&broken(
            b.x(x) - 6.0,
            b.x(x) + 7.0,
            b.y(70.5),
            b.y(84.0),
            dice,
        ));
    }
    k.leave_all(&ripples(
        [-10.0, b.y(72.0), b.w, b.h],
        120,
        100.0,
        2.2,
        dice,
    ));
    aquatint(
        a,
        &b.line(&[[14.0, 72.0], [60.0, 72.0], [56.0, 99.0], [20.0, 99.0]]),
        0.36,
    );
    aquatint(a, &b.area(-2.0, 84.0, 102.0, 102.0), 0.22);
    for i in 0..26 {
        let x = -2.0 + 1.1 * i as f32 + dice.about(0.8);
        let p = b.at(x, 101.0);
        k.leave(&tapered(
            &curve(&[
                p,
                [p[0] + dice.about(10.0), p[1] - 46.0],
                [p[0] + dice.about(34.0), p[1] - dice.between(70.0, 130.0)],
            ]),
            3.0,
            0.7,
        ));
    }
}
