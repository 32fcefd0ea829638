//! No. 6, the ship chandlers' windows.

use super::prelude::*;
use super::shared::{Pavement, pave};
use crate::parts::boats::anchor;
use crate::parts::figures::{Pose, figure};
use crate::parts::harbour::coil;
use crate::parts::houses::{Gable, front, window};
use crate::parts::sea::broken;

pub const ART: Art = Art {
    key: "6",
    cut: shops_cut,
    print: shops_print,
};

/// The three shopfronts: left, right, eaves, top, gable.
const SHOPS: [(f32, f32, f32, f32, Gable); 3] = [
    (3.0, 35.0, 24.0, 7.0, Gable::Stepped),
    (35.0, 66.0, 20.0, 3.0, Gable::Bell),
    (66.0, 98.0, 26.0, 9.0, Gable::Stepped),
];

fn panes(b: &Bench) -> Vec<Path> {
    let mut all = Vec::new();
    for (row, y) in [20.0, 30.5, 41.0, 59.0].into_iter().enumerate() {
        for column in 0..6 {
            let x = 7.0 + 15.6 * column as f32 + if column % 2 == 1 { -1.8 } else { 0.6 };
            let tall = if row == 3 { 13.0 } else { 7.0 };
            let (pane, _) = window(b.x(x), b.y(y), b.x(8.2), b.y(tall));
            all.push(pane);
        }
    }
    all
}

fn shops_cut(look: &Look, b: &Bench) -> Cuts {
    let dice = &mut Dice::new(b.seed);
    let fronts: Vec<Path> = SHOPS
        .iter()
        .map(|s| front(b.x(s.0), b.x(s.1), b.y(s.2), b.y(s.3), b.y(77.5), s.4))
        .collect();
    let panes = panes(b);
    // The lit windows; the last two are those in the gables, which a later state lacks.
    let burning = [19, 20, 22, 9, 17, 0, 1];
    let lit: Vec<&Path> = burning
        .iter()
        .take(look.count("windows", 7))
        .filter_map(|&i| panes.get(i))
        .collect();
    let board = b.area(43.5, 39.5, 56.5, 51.0);
    let anchor = anchor(b.at(50.0, 45.2), b.y(4.4));
    let has_anchor = look.has_or("anchor", look.state == 0);

    let mut n = b.cleared();
    n.leave(&b.area(-2.0, -2.0, 102.0, 78.0));
    n.cut_all(&pecks(
        b.bounds(0.0, 0.0, 100.0, 24.0),
        70,
        34.0,
        0.02,
        dice,
    ));
    for pane in &lit {
        n.cut(pane);
    }
    n.cut(&board);
    let glow = b.at(50.0, 56.0);
    n.cut(&ellipse(glow[0], glow[1], 20.0, 24.0));
    let mut w = b.cleared();
    w.leave(&b.area(-2.0, 77.0, 102.0, 101.0));
    for f in &fronts {
        w.leave(f);
    }
    for pane in &lit {
        w.cut(pane);
    }
    w.cut(&board);
    w.cut_all(&lights(&lit, b, dice));

    let mut l = b.cleared();
    for pane in &lit {
        l.leave(pane);
    }
    l.leave(&ellipse(glow[0], glow[1], 13.0, 17.0));
    l.leave(&board);
    l.leave_all(&lights(&lit, b, dice));
    for x in [22.0, 73.0] {
        l.leave(&b.area(x, 68.4, x + 2.6, 71.4));
    }

    let mut r = b.cleared();
    if has_anchor {
        r.leave_all(&anchor);
    }
    r.leave(&b.area(35.6, 54.8, 46.0, 57.6));
    r.leave(&b.area(54.0, 54.8, 65.4, 57.6));
    r.leave(&b.line(&[[67.0, 55.6], [97.0, 55.6], [97.6, 58.2], [66.4, 58.2]]));
    r.leave(&b.area(13.6, 60.0, 19.4, 77.0));

    let mut k = b.cleared();
    for (f, s) in fronts.iter().zip(SHOPS) {
        k.leave(&outline(f, 4.2));
        let side = b.line(&[[s.1 - 6.0, s.3], [s.1, s.3], [s.1, 77.5], [s.1 - 4.0, 77.5]]);
        shade_part(
            &mut k,
            f,
            &side,
            Hatch {
                turn: 0.24,
                gap: 6.5,
                width: 2.8,
                stray: 0.6,
            },
            dice,
        );
        let bricks = pecks(bounds(f), 90, 15.0, 0.0, dice);
        k.within(f, |p| p.leave_all(&bricks));
        k.leave(&b.area(s.0 + 2.0, 53.4, s.1 - 2.0, 54.8));
    }
    for (i, pane) in panes.iter().enumerate() {
        outlined(&mut k, pane, 3.6);
        let m = bounds(pane);
        let (_, bars) = window(m[0], m[1], m[2] - m[0], m[3] - m[1]);
        if lit.iter().any(|p| **p == *pane) {
            k.leave_all(&bars);
            if i > 17 {
                goods(&mut k, m, dice);
            }
        } else {
            k.leave(&knifed(pane, 0.6, 3));
            k.cut_all(&pecks(
                [m[0] + 4.0, m[1] + 4.0, m[2] - 10.0, m[3] - 8.0],
                4,
                18.0,
                0.12,
                dice,
            ));
        }
    }
    outlined(&mut k, &board, 5.0);
    k.leave(&b.bar(&[[42.0, 38.0], [58.0, 38.0]], 5.0));
    k.leave(&b.bar(&[[45.0, 38.0], [45.0, 39.6]], 2.6));
    k.leave(&b.bar(&[[55.0, 38.0], [55.0, 39.6]], 2.6));
    if has_anchor {
        for part in &anchor {
            k.leave(&outline(part, 1.8));
        }
    }
    k.leave(&b.bar(&[[50.0, 52.0], [50.0, 54.0]], 2.6));
    k.leave(&b.line(&[[47.4, 53.6], [52.6, 53.6], [51.6, 52.4], [48.4, 52.4]]));
    k.leave(&outline(&b.area(48.0, 53.6, 52.0, 58.4), 2.4));
    doors(&mut k, b, dice);
    cobbles(&mut k, b, dice);
    for (x, y, r, n) in [
        (27.0, 79.0, 44.0, 4),
        (60.5, 79.6, 38.0, 4),
        (88.0, 79.0, 34.0, 3),
    ] {
        k.cut(&ellipse(b.x(x), b.y(y), r * 1.04, r * 0.42));
        k.leave_all(&coil(b.at(x, y), r, n));
    }
    b.cuts([
        ("night", n),
        ("wet", w),
        ("lamp", l),
        ("red", r),
        ("key", k),
    ])
}

/// Silhouettes of goods in a lit shop window.
fn goods(k: &mut Plane, m: [f32; 4], dice: &mut Dice) {
    let base = m[3] - 4.0;
    let mut x = m[0] + 6.0;
    while x < m[2] - 12.0 {
        let h = dice.between(10.0, 32.0);
        if dice.chance(0.5) {
            k.leave(&rect(x, base - h, 9.0, h));
        } else {
            k.leave(&ellipse(x + 5.0, base - h * 0.4, 6.0, h * 0.4));
        }
        x += 14.0;
    }
    k.leave(&bar(
        &[[m[0] + 4.0, m[1] + 20.0], [m[2] - 4.0, m[1] + 26.0]],
        1.8,
    ));
    for i in 0..3 {
        let x = m[0] + 10.0 + 15.0 * i as f32;
        k.leave(&ellipse(x, m[1] + 32.0, 4.0, 7.0));
    }
}

/// Lit windows thrown down on the wet stones.
fn lights(lit: &[&Path], b: &Bench, dice: &mut Dice) -> Vec<Path> {
    lit.iter()
        .flat_map(|pane| {
            let m = bounds(pane);
            let high = m[1] < b.y(50.0);
            let reach = if high { 90.0 } else { 99.5 };
            broken(
                m[0] + 2.0,
                m[2] - 2.0,
                b.y(if high { 84.0 } else { 79.5 }),
                b.y(reach),
                dice,
            )
        })
        .collect()
}

fn doors(k: &mut Plane, b: &Bench, dice: &mut Dice) {
    for x in [13.6, 47.0, 78.6] {
        let door = b.area(x, 60.0, x + 5.8, 77.2);
        k.leave(&outline(&door, 4.0));
        shade(
            k,
            &door,
            Hatch {
                turn: 0.25,
                gap: 6.0,
                width: 2.4,
                stray: 0.3,
            },
            dice,
        );
        k.leave(&b.area(x + 0.8, 61.6, x + 5.0, 65.0));
        k.leave(&b.area(x - 1.0, 76.6, x + 7.0, 78.4));
    }
    for x in [22.0, 73.0] {
        k.leave(&outline(&b.area(x, 68.4, x + 2.6, 71.4), 2.2));
        k.leave(&b.line(&[[x - 0.4, 68.4], [x + 1.3, 67.2], [x + 3.0, 68.4]]));
        k.leave(&b.bar(&[[x + 1.3, 66.0], [x + 1.3, 67.4]], 2.0));
    }
    k.leave_all(&figure(b.at(43.0, 80.5), 108.0, Pose::Standing, 1.0));
}

fn cobbles(k: &mut Plane, b: &Bench, dice: &mut Dice) {
    let cobbles = Pavement {
        top: 79.0,
        size: [9.0, 30.0],
        longest: 1.3,
        gap: [1.1, 3.0],
    };
    pave(b, cobbles, dice, |stone, _| {
        let ([x, y], size) = (stone.at, stone.size);
        let top = arc(
            x,
            y + size * 0.3,
            stone.length * 0.46,
            size * 0.3,
            0.52,
            0.98,
        );
        k.leave(&gouged(&top, 1.4 + 2.2 * stone.near));
    });
}

fn shops_print(look: &Look) -> Vec<Pass> {
    vec![
        Pass::block("lamp", ink(0xf0_bf_4a)).from(Surface::Plank, 0.2),
        Pass::block("red", ink(0xc4_43_30)).from(Surface::Plank, 0.25),
        Pass::block("wet", ink(0x8b_93_9f)).charged(evenly(
            look,
            "rain",
            0.9,
            Fall {
                from: 0.0,
                to: 1000.0,
                rest: 0.5,
            },
        )),
        Pass::block("night", ink(0x35_4a_7c)).charged(graded(
            look,
            Fall {
                from: -40.0,
                to: 1000.0,
                rest: 0.6,
            },
        )),
        Pass::block("key", ink(0x1b_1f_2c)).charged(|_| 1.05),
    ]
}
