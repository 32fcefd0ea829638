//! No. 10, unloading oranges at night.

use super::prelude::*;
use crate::parts::boats::anchor;
use crate::parts::figures::{Pose, figure};
use crate::parts::harbour::stones;
use crate::parts::sea::lens;

pub const ART: Art = Art {
    key: "10",
    cut: oranges_cut,
    print: oranges_print,
};

fn oranges_cut(look: &Look, b: &Bench) -> Cuts {
    let dice = &mut Dice::new(b.seed);
    let mut ship = b.curve(&[[-1.0, 26.0], [14.0, 26.5], [30.0, 24.0], [46.5, 18.0]]);
    ship.extend(b.curve(&[
        [46.5, 18.0],
        [43.5, 34.0],
        [40.5, 52.0],
        [37.5, 68.0],
        [35.0, 80.0],
    ]));
    ship.extend(b.line(&[[-1.0, 81.0]]));
    let arc_lamp = b.at(58.0, 16.0);
    let cone: Path = vec![
        [arc_lamp[0] - 9.0, arc_lamp[1] + 10.0],
        [arc_lamp[0] + 9.0, arc_lamp[1] + 10.0],
        b.at(90.0, 82.0),
        b.at(40.0, 82.0),
    ];
    let quay = b.line(&[
        [33.0, 80.5],
        [44.0, 73.0],
        [101.0, 70.0],
        [101.0, 101.0],
        [-1.0, 101.0],
        [-1.0, 82.0],
    ]);
    let open = look.count("crates", 5);
    let boxes: Vec<(Path, Path)> = [
        (61.0, 71.5, 13.0),
        (77.0, 70.5, 13.0),
        (69.0, 80.5, 15.0),
        (86.0, 79.5, 14.5),
        (56.0, 87.5, 16.0),
    ]
    .iter()
    .take(open)
    .map(|&(x, y, w)| crate_of(b, x, y, w))
    .collect();

    let mut n = b.cleared();
    n.leave(&b.area(-2.0, -2.0, 102.0, 101.0));
    n.cut(&knifed(&cone, 1.4, 3));
    let rays: Vec<Path> = (0..26)
        .map(|i| {
            let t = i as f32 / 25.0;
            let foot = b.at(mix(30.0, 99.0, t), 84.0);
            gouged(
                &[
                    toward(arc_lamp, foot, dice.between(0.15, 0.45)),
                    toward(arc_lamp, foot, dice.between(0.7, 1.0)),
                ],
                3.0,
            )
        })
        .collect();
    n.cut_all(&rays);
    n.cut(&ellipse(arc_lamp[0], arc_lamp[1] + 4.0, 34.0, 34.0));
    n.cut(&b.line(&[
        [36.0, 80.5],
        [46.0, 74.0],
        [94.0, 71.5],
        [101.0, 78.0],
        [101.0, 92.0],
        [50.0, 97.0],
        [30.0, 88.0],
    ]));
    n.cut(&ship);
    n.cut_all(&pecks(b.bounds(0.0, 0.0, 100.0, 20.0), 36, 30.0, 0.0, dice));

    let mut h = b.cleared();
    h.leave(&knifed(&ship, 1.4, 3));
    h.cut(&bar(
        &b.curve(&[[-1.0, 33.0], [14.0, 33.5], [30.0, 31.0], [45.4, 26.0]]),
        4.0,
    ));
    h.cut_all(&pecks(b.bounds(0.0, 40.0, 40.0, 78.0), 40, 60.0, 0.0, dice));
    let lit_side = b.line(&[[38.0, 30.0], [46.5, 20.0], [35.5, 80.0], [29.0, 80.0]]);
    h.cut_within(&lit_side, |p| {
        p.leave_all(&pecks(bounds(&lit_side), 46, 40.0, 0.26, dice));
    });

    let mut d = b.cleared();
    d.leave(&quay);
    d.leave(&b.line(&[[-1.0, 18.0], [20.0, 18.0], [20.0, 26.5], [-1.0, 26.5]]));
    d.cut_all(&pecks(
        b.bounds(36.0, 74.0, 100.0, 100.0),
        46,
        60.0,
        0.0,
        dice,
    ));
    let mut o = b.cleared();
    let mut l = b.cleared();
    l.leave(&ellipse(arc_lamp[0], arc_lamp[1] + 4.0, 12.0, 12.0));
    l.leave(&cone);
    for i in 0..5 {
        l.leave(&ellipse(
            b.x(4.0 + 7.0 * i as f32),
            b.y(43.0 - 0.4 * i as f32),
            7.5,
            7.5,
        ));
        h.cut(&ellipse(
            b.x(4.0 + 7.0 * i as f32),
            b.y(43.0 - 0.4 * i as f32),
            8.0,
            8.0,
        ));
    }
    l.leave(&b.area(4.0, 20.0, 7.0, 23.0));
    l.leave(&b.area(11.0, 20.0, 14.0, 23.0));

    let mut k = b.cleared();
    steamer(&mut k, b, &ship, arc_lamp, dice);
    k.leave(&outline(&quay, 3.4));
    k.leave_all(&stones(b.below(90.0), 26.0, 2.0, dice));
    for (x, y, hgt, pose, face) in [
        (46.0, 84.0, 74.0, Pose::Carrying, 1.0),
        (52.5, 79.0, 62.0, Pose::Standing, -1.0),
        (94.5, 77.0, 60.0, Pose::Carrying, -1.0),
        (42.0, 94.0, 84.0, Pose::Bent, 1.0),
    ] {
        let person = figure(b.at(x, y), hgt, pose, face);
        k.leave_all(&person);
        d.leave(&lens(b.x(x) - 10.0, b.x(x) + 46.0, b.y(y) + 2.0, 6.0));
    }
    // Closed crates behind, then the open ones with their fruit.
    for (x, y, w) in [(66.0, 63.0, 11.0), (78.0, 62.0, 11.0), (89.0, 63.5, 11.0)] {
        let shut = b.area(x, y, x + w, y + 8.5);
        outlined(&mut k, &shut, 2.6);
        shade(
            &mut k,
            &shut,
            Hatch {
                turn: 0.0,
                gap: 8.0,
                width: 2.2,
                stray: 0.4,
            },
            dice,
        );
        d.leave(&shut);
        n.cut(&shut);
    }
    for (front_face, top) in &boxes {
        for plane in [&mut n, &mut d, &mut k, &mut o] {
            plane.cut(front_face);
            plane.cut(top);
        }
        k.leave(&outline(front_face, 3.0));
        let m = bounds(front_face);
        for i in 1..3 {
            let y = mix(m[1], m[3], i as f32 / 3.0);
            k.leave(&bar(&[[m[0], y], [m[2], y]], 2.6));
        }
        shade(
            &mut k,
            &rect(m[0], m[1], (m[2] - m[0]) * 0.3, m[3] - m[1]),
            Hatch {
                turn: 0.25,
                gap: 5.0,
                width: 2.0,
                stray: 0.4,
            },
            dice,
        );
        d.within(front_face, |p| {
            p.leave(&rect(m[0], m[1], (m[2] - m[0]) * 0.5, m[3] - m[1]));
        });
        k.leave(&knifed(top, 0.8, 3));
        for fruit in fruits(top) {
            let mm = bounds(&fruit);
            let (cx, cy, r) = (
                (mm[0] + mm[2]) / 2.0,
                (mm[1] + mm[3]) / 2.0,
                (mm[2] - mm[0]) / 2.0,
            );
            k.cut(&ellipse(cx, cy, r, r));
            o.leave(&fruit);
            k.leave(&gouged(&arc(cx, cy, r, r, 0.02, 0.45), 2.2));
        }
        k.leave(&outline(top, 3.0));
    }
    // Two oranges that rolled away.
    for (x, y) in [(50.0, 91.5), (74.5, 95.0)] {
        let p = b.at(x, y);
        let round = ellipse(p[0], p[1], 8.0, 8.0);
        d.cut(&round);
        o.leave(&round);
        k.leave(&gouged(&arc(p[0], p[1], 8.0, 8.0, 0.0, 0.5), 2.4));
    }
    b.cuts([
        ("night", n),
        ("hull", h),
        ("deck", d),
        ("lamp", l),
        ("orange", o),
        ("key", k),
    ])
}

fn crate_of(b: &Bench, x: f32, y: f32, w: f32) -> (Path, Path) {
    let deep = w * 0.42;
    let tall = w * 0.62;
    (
        knifed(&b.area(x, y, x + w, y + tall), 0.7, 3),
        b.line(&[
            [x, y],
            [x + w, y],
            [x + w * 0.9 + 1.6, y - deep],
            [x + w * 0.1 + 1.6, y - deep],
        ]),
    )
}

fn fruits(top: &Path) -> Vec<Path> {
    let m = bounds(top);
    let r = (m[2] - m[0]) / 11.0;
    let mut out = Vec::new();
    for line in 0..3 {
        let t = line as f32 / 2.0;
        let y = mix(m[1] + r * 1.1, m[3] - r * 0.9, t);
        let inset = mix(0.13, 0.03, t) * (m[2] - m[0]) + r;
        let many = 4 + line;
        for i in 0..many {
            let x = mix(m[0] + inset, m[2] - inset, i as f32 / (many - 1) as f32);
            out.push(ellipse(x, y, r * 0.84, r * 0.84));
        }
    }
    out
}

fn steamer(k: &mut Plane, b: &Bench, ship: &Path, lamp_at: Pt, dice: &mut Dice) {
    k.leave(&outline(ship, 5.0));
    let dark = b.line(&[
        [-1.0, 62.0],
        [20.0, 60.0],
        [33.0, 54.0],
        [35.5, 80.0],
        [-1.0, 81.0],
    ]);
    k.within(ship, |p| p.leave(&dark));
    k.cut_within(&dark, |p| {
        p.leave_all(&pecks(bounds(&dark), 50, 50.0, 0.0, dice));
    });
    for i in 0..7 {
        let y = 34.0 + 5.5 * i as f32;
        let line = b.curve(&[
            [-1.0, y],
            [16.0, y],
            [30.0, y - 2.5],
            [44.0 - 0.9 * i as f32, y - 7.5],
        ]);
        k.within(ship, |p| p.leave(&tapered(&line, 1.8, 1.2)));
    }
    for i in 0..5 {
        k.leave(&bar(
            &arc(
                b.x(4.0 + 7.0 * i as f32),
                b.y(43.0 - 0.4 * i as f32),
                9.0,
                9.0,
                0.0,
                1.01,
            ),
            2.6,
        ));
    }
    // Anchor in its hawse, and the rail.
    k.leave_all(&anchor(b.at(38.5, 40.0), b.y(5.0)));
    for i in 0..12 {
        let t = i as f32 / 11.0;
        let x = mix(-1.0, 45.0, t);
        let y = 26.0 - 7.4 * (t - 0.3).max(0.0) * 1.3;
        k.leave(&b.bar(&[[x, y - 4.0], [x, y]], 2.0));
    }
    k.leave(&bar(
        &b.curve(&[[-1.0, 22.0], [14.0, 22.4], [30.0, 19.8], [46.5, 13.8]]),
        2.4,
    ));
    k.leave(&outline(&b.area(-2.0, 12.0, 18.0, 25.0), 3.0));
    k.leave(&b.area(-2.0, 11.0, 19.5, 12.8));
    k.leave(&b.line(&[[3.0, 11.0], [3.4, -2.0], [11.6, -2.0], [12.0, 11.0]]));
    k.cut(&b.area(3.3, 2.0, 11.8, 4.6));
    k.leave(&tapered(&b.line(&[[26.0, 24.0], [26.6, -2.0]]), 11.0, 8.0));
    k.leave(&tapered(&b.line(&[[26.4, 20.0], [72.0, 5.0]]), 8.0, 5.0));
    k.leave(&b.bar(&[[26.6, 2.0], [72.0, 5.0]], 1.8));
    k.leave(&b.bar(&[[72.0, 5.0], [72.0, 47.0]], 2.0));
    k.leave(&outline(
        &b.line(&[
            [69.0, 52.0],
            [72.0, 47.0],
            [75.0, 52.0],
            [75.0, 57.0],
            [69.0, 57.0],
        ]),
        2.4,
    ));
    k.leave(&b.bar(&[[69.0, 54.5], [75.0, 54.5]], 2.0));
    k.leave(&b.line(&[
        [56.0, 14.6],
        [58.0, 12.4],
        [60.0, 14.6],
        [59.4, 16.0],
        [56.6, 16.0],
    ]));
    k.leave(&bar(&[[lamp_at[0], -5.0], [lamp_at[0], b.y(13.0)]], 2.4));
}

fn oranges_print(look: &Look) -> Vec<Pass> {
    vec![
        Pass::block("lamp", ink(0xf6_dc_8e))
            .from(Surface::Plank, 0.2)
            .charged(|p| mix(1.15, 0.45, step(120.0, 620.0, p[1]))),
        Pass::block("orange", ink(0xe8_7f_25)).from(Surface::Plank, 0.2),
        Pass::block("deck", ink(0xa2_a2_a0)),
        Pass::block("hull", ink(0x3c_69_58)),
        Pass::block("night", ink(0x2c_3a_5c)).charged(evenly(
            look,
            "night",
            0.96,
            Fall {
                from: -60.0,
                to: 700.0,
                rest: 0.55,
            },
        )),
        Pass::block("key", ink(0x18_1b_24)).charged(|_| 1.05),
    ]
}
