//! No. 21, hail on the slipway.

use super::prelude::*;
use crate::parts::boats::mast;
use crate::parts::figures::{Pose, figure};
use crate::parts::houses::{row, tiles};
use crate::parts::sky::heap;

pub const ART: Art = Art {
    key: "21",
    cut: hail_cut,
    print: hail_print,
};

fn hail_cut(_: &Look, b: &Bench) -> Cuts {
    let dice = &mut Dice::new(b.seed);
    let sheds = [
        (
            b.line(&[
                [-1.0, 84.0],
                [-1.0, 46.0],
                [8.0, 44.0],
                [30.0, 52.0],
                [30.0, 80.0],
            ]),
            b.line(&[[-1.0, 48.0], [-1.0, 24.0], [16.0, 27.0], [33.5, 53.5]]),
        ),
        (
            b.line(&[[68.0, 78.0], [68.0, 50.0], [101.0, 48.0], [101.0, 86.0]]),
            b.line(&[[63.5, 52.5], [76.0, 25.0], [101.0, 24.0], [101.0, 50.0]]),
        ),
    ];
    let hail = |dice: &mut Dice, many: usize| -> Vec<Path> {
        (0..many)
            .map(|_| {
                let p = [dice.between(0.0, b.w), dice.between(0.0, b.h)];
                let near = p[1] / b.h;
                let l = mix(7.0, 16.0, dice.roll() * (0.4 + 0.6 * near));
                gouged(
                    &[p, [p[0] - l * 0.35, p[1] + l]],
                    mix(2.6, 5.4, dice.roll()),
                )
            })
            .collect()
    };
    let stones_of_ice = hail(&mut Dice::new(b.seed ^ 0x4A11), 620);

    let mut s = b.cleared();
    s.leave(&b.area(-2.0, -2.0, 102.0, 74.0));
    let streaks = [
        (26.0, 50.0, 50.0, 26.0),
        (20.0, 40.0, 40.0, 14.0),
        (-6.0, 12.0, 50.0, 16.0),
        (52.0, 8.0, 54.0, 13.0),
    ];
    cut_streaks(&mut s, b, &streaks, 2.0, dice);
    s.leave(&b.line(&[
        [-1.0, 84.0],
        [30.0, 78.0],
        [68.0, 77.0],
        [101.0, 84.0],
        [101.0, 88.0],
        [60.0, 84.0],
        [30.0, 85.0],
        [-1.0, 92.0],
    ]));
    let mut r = b.cleared();
    for (_, roof) in &sheds {
        r.leave(&knifed(roof, 1.2, 3));
    }
    let mut t = b.cleared();
    for (wall, _) in &sheds {
        t.leave(wall);
    }
    let mut k = b.cleared();
    let cloud = heap(
        &b.line(&[
            [-4.0, 13.0],
            [16.0, 6.0],
            [34.0, 9.0],
            [52.0, 3.0],
            [74.0, 7.0],
            [104.0, 2.0],
        ]),
        b.y(24.0),
        66.0,
        dice,
    );
    shade(
        &mut k,
        &cloud,
        Hatch {
            turn: 0.02,
            gap: 8.5,
            width: 4.0,
            stray: 1.2,
        },
        dice,
    );
    k.leave_all(&row(
        [b.x(28.0), b.x(72.0)],
        b.y(73.0),
        b.y(7.0),
        b.x(5.0),
        dice,
    ));
    for (x, h) in [(36.0, 24.0), (62.0, 20.0)] {
        k.leave_all(&mast(b.at(x, 73.0), b.y(h), 4.2, 36.0));
    }
    k.leave(&b.area(28.0, 72.4, 72.0, 74.0));
    frame(&mut k, &mut t, b, dice);
    for (i, (wall, roof)) in sheds.iter().enumerate() {
        k.cut(wall);
        k.cut(roof);
        k.leave(&outline(wall, 3.6));
        k.leave(&outline(roof, 4.4));
        let rows = tiles(bounds(roof), 11.0, dice);
        k.within(roof, |p| p.leave_all(&rows));
        let m = bounds(wall);
        shade(
            &mut k,
            wall,
            Hatch {
                turn: 0.25,
                gap: 12.0,
                width: 2.4,
                stray: 0.5,
            },
            dice,
        );
        let mouth = if i == 0 {
            b.line(&[[12.0, 84.0], [12.0, 58.0], [27.0, 60.0], [27.0, 81.0]])
        } else {
            b.line(&[[72.0, 80.0], [72.0, 59.0], [90.0, 57.0], [90.0, 84.0]])
        };
        k.leave(&mouth);
        k.cut_all(&pecks(
            [m[0], b.y(62.0), m[2], b.y(80.0)],
            16,
            24.0,
            0.25,
            dice,
        ));
        k.leave(&mouth);
    }
    for (x, y, h, pose, face) in [
        (22.5, 84.5, 84.0, Pose::Standing, 1.0),
        (76.0, 86.0, 88.0, Pose::Bent, -1.0),
        (80.5, 86.0, 92.0, Pose::Standing, -1.0),
    ] {
        for part in figure(b.at(x, y), h, pose, face) {
            set_off(&mut k, &part, 3.0);
        }
    }
    let ways = [
        b.line(&[[41.0, 84.0], [34.0, 101.0]]),
        b.line(&[[59.0, 84.0], [66.0, 101.0]]),
    ];
    for way in &ways {
        t.leave(&tapered(way, 15.0, 26.0));
        k.leave(&outline(&tapered(way, 15.0, 26.0), 3.0));
    }
    for i in 0..6 {
        let y = 85.5 + 2.7 * i as f32;
        let half = 12.0 + 1.3 * i as f32;
        k.leave(&b.bar(&[[50.0 - half, y], [50.0 + half, y + 0.2]], 5.0 + i as f32));
    }
    k.leave_all(&pecks(b.below(86.0), 90, 22.0, 0.01, dice));
    // Hail is bare paper, so it is cut from every block.
    for plane in [&mut s, &mut r, &mut t, &mut k] {
        plane.cut_all(&stones_of_ice);
    }
    let ground = hail(&mut Dice::new(b.seed ^ 0x6A11), 150);
    for g in &ground {
        let m = bounds(g);
        if m[1] > b.y(86.0) {
            k.leave(&outline(&ellipse(m[0], m[1], 4.0, 3.2), 1.6));
        }
    }
    b.cuts([("sky", s), ("roof", r), ("timber", t), ("key", k)])
}

fn hail_print(look: &Look) -> Vec<Pass> {
    let roof = if look.choice("roof") == "brown" {
        0x7c_5a_42
    } else {
        0xb4_50_3c
    };
    vec![
        Pass::block("sky", ink(0x7b_82_8a)).charged(evenly(
            look,
            "sky",
            0.94,
            Fall {
                from: -30.0,
                to: 560.0,
                rest: 0.3,
            },
        )),
        Pass::block("timber", ink(0xb9_8e_60)),
        Pass::block("roof", ink(roof)),
        Pass::block("key", ink(0x23_25_2a)).charged(|_| 1.04),
    ]
}

/// A hull in frame, seen from the bow: keel, ribs, ribbands, shores.
fn frame(k: &mut Plane, t: &mut Plane, b: &Bench, dice: &mut Dice) {
    let stem = b.line(&[[50.0, 86.0], [50.0, 36.0]]);
    for i in (0..7).rev() {
        let f = i as f32;
        let (spread, top, foot) = (7.0 + 2.9 * f, 42.0 - 0.3 * f + 0.25 * f * f, 85.0 - 1.3 * f);
        for side in [-1.0, 1.0] {
            let rib = b.curve(&[
                [50.0, foot],
                [50.0 + side * spread * 0.42, foot - 6.0],
                [50.0 + side * spread * 0.85, foot - 18.0],
                [50.0 + side * spread, top + 6.0],
                [50.0 + side * spread * 0.98, top],
            ]);
            let body = bar(&rib, 13.0 - f * 0.8);
            k.cut(&outline(&body, 2.5));
            set_off(t, &body, 3.0);
            k.leave(&outline(&body, 2.8));
            let dark: Path = rib.iter().map(|p| [p[0] + 3.4, p[1] + 1.5]).collect();
            k.within(&body, |p| p.leave(&bar(&dark, 5.0)));
        }
    }
    for side in [-1.0, 1.0] {
        for i in 0..4 {
            let y = 50.0 + 8.0 * i as f32;
            let reach = 25.0 - 1.6 * (i * i) as f32;
            let band = b.curve(&[
                [50.0, y + 2.5],
                [50.0 + side * reach * 0.5, y + 1.0],
                [50.0 + side * reach, y - 1.5],
            ]);
            k.leave(&bar(&band, 3.6));
        }
        k.leave(&b.bar(
            &[[50.0 + side * 20.0, 57.0], [50.0 + side * 27.0, 84.0]],
            7.0,
        ));
        k.leave(&b.bar(
            &[[50.0 + side * 14.0, 70.0], [50.0 + side * 19.0, 86.0]],
            6.0,
        ));
    }
    let post = bar(&stem, 17.0);
    t.leave(&post);
    outlined(k, &post, 3.4);
    k.leave(&b.bar(&[[50.5, 86.0], [50.5, 37.0]], 5.0));
    k.cut_all(&pecks(
        b.bounds(40.0, 45.0, 60.0, 84.0),
        10,
        15.0,
        0.25,
        dice,
    ));
    for (x, y, h, pose, face) in [
        (43.0, 87.5, 74.0, Pose::Swinging, 1.0),
        (60.0, 88.0, 70.0, Pose::Bent, -1.0),
    ] {
        for part in figure(b.at(x, y), h, pose, face) {
            k.cut(&outline(&part, 3.0));
            t.cut(&part);
            k.leave(&part);
        }
    }
}
