//! No. 24, the thunderhead.

use super::prelude::*;
use crate::parts::boats::mast;
use crate::parts::houses::{row, spire};
use crate::parts::land::{hills, poplar};
use crate::parts::sea::ripples;
use crate::parts::sky::{curls, heap, rain};

pub const ART: Art = Art {
    key: "24",
    cut: thunder_cut,
    print: thunder_print,
};

fn thunder_cut(look: &Look, b: &Bench) -> Cuts {
    let dice = &mut Dice::new(b.seed);
    // The cloud tower leaves the image at the right; its anvil spreads to the left at the top.
    let ridge = [
        [-4.0, 67.0],
        [6.0, 63.0],
        [13.0, 64.5],
        [19.0, 56.0],
        [15.5, 48.0],
        [24.0, 42.0],
        [21.0, 33.0],
        [30.0, 27.0],
        [27.0, 19.5],
        [35.0, 14.5],
        [30.0, 10.0],
        [17.0, 8.0],
        [9.0, 5.0],
        [22.0, 2.0],
        [46.0, -3.0],
    ];
    let mut tower = heap(&b.line(&ridge), b.y(-4.0), 52.0, dice);
    tower.truncate(tower.len() - 2);
    tower.extend(b.line(&[[104.0, -4.0], [104.0, 73.0], [-4.0, 74.0]]));
    let inner = [
        heap(
            &b.line(&[
                [20.0, 62.0],
                [18.0, 50.0],
                [30.0, 42.0],
                [40.0, 46.0],
                [46.0, 56.0],
            ]),
            b.y(66.0),
            50.0,
            dice,
        ),
        heap(
            &b.line(&[
                [38.0, 44.0],
                [36.0, 30.0],
                [48.0, 20.0],
                [62.0, 24.0],
                [68.0, 36.0],
            ]),
            b.y(46.0),
            56.0,
            dice,
        ),
        heap(
            &b.line(&[
                [60.0, 60.0],
                [62.0, 46.0],
                [74.0, 36.0],
                [88.0, 42.0],
                [92.0, 56.0],
            ]),
            b.y(64.0),
            54.0,
            dice,
        ),
    ];
    let shore = b.y(80.0);

    let mut c = b.cleared();
    c.leave(&knifed(&tower, 1.6, 3));
    // The lit side of each bulge is cut down to the paper, stroke by stroke.
    for (i, bulge) in inner.iter().enumerate() {
        let (lit, rim) = lit_side(b, bulge);
        let strokes = pecks(bounds(&lit), 260, 36.0, 0.58 + 0.04 * i as f32, dice);
        let mut cuts = Plane::cleared(b.window);
        cuts.leave_all(&strokes);
        for (a, (r, s)) in c.data.iter_mut().zip(rim.data.iter().zip(&cuts.data)) {
            *a *= 1.0 - (0.85 * r).min(1.0) * s.max(0.55);
        }
    }
    let left_edge = b.line(&[
        [2.0, 66.0],
        [12.0, 58.0],
        [12.0, 46.0],
        [18.0, 32.0],
        [24.0, 18.0],
        [30.0, 10.0],
        [6.0, 6.0],
        [24.0, 0.0],
        [50.0, 0.0],
        [42.0, 14.0],
        [37.0, 28.0],
        [32.0, 42.0],
        [26.0, 56.0],
        [20.0, 68.0],
    ]);
    c.cut_within(&left_edge, |p| {
        p.leave_all(&pecks(bounds(&left_edge), 320, 40.0, 0.60, dice));
    });
    // The base of the cloud dissolves into rain.
    let rain_area = b.line(&[[24.0, 70.0], [103.0, 68.0], [103.0, 81.0], [12.0, 81.0]]);
    c.within(&rain_area, |p| {
        p.leave_all(&rain(
            [b.x(24.0), b.y(66.0), b.w + 40.0, b.y(76.0)],
            240,
            70.0,
            -0.3,
            5.0,
            dice,
        ));
    });
    let fork: Path = b.line(&[
        [63.2, 44.0],
        [61.4, 52.0],
        [63.6, 53.0],
        [60.4, 61.0],
        [62.6, 62.2],
        [59.4, 70.0],
        [60.6, 70.6],
        [58.2, 78.0],
        [61.6, 69.6],
        [60.8, 69.0],
        [64.4, 61.4],
        [62.4, 60.4],
        [65.4, 52.2],
        [63.4, 51.4],
        [64.8, 44.0],
    ]);
    let branch = tapered(
        &b.line(&[[61.6, 61.0], [64.0, 65.0], [63.2, 68.0], [65.6, 73.0]]),
        6.0,
        1.2,
    );
    let bolt = look.has_or("bolt", look.state >= 1);
    if bolt {
        c.cut(&fork);
        c.cut(&branch);
    }
    let mut l = b.cleared();
    l.leave(&b.area(-2.0, -2.0, 102.0, 80.0));
    let streaks = [
        (-8.0, 30.0, 26.0, 14.0),
        (-6.0, 14.0, 34.0, 16.0),
        (84.0, 6.0, 26.0, 12.0),
        (-6.0, 63.0, 28.0, 12.0),
    ];
    cut_streaks(&mut l, b, &streaks, 1.8, dice);
    for bulge in &inner {
        let (_, mut rim) = lit_side(b, bulge);
        rim.weigh(|_| 0.6);
        l.take(&rim);
    }
    if bolt {
        l.cut(&fork);
        l.cut(&branch);
    }
    let field = b.line(&[
        [20.0, 86.6],
        [44.0, 84.0],
        [56.0, 86.4],
        [50.0, 91.0],
        [24.0, 92.0],
    ]);
    l.leave(&field);

    let mut sea = b.cleared();
    sea.leave(&b.area(-2.0, 79.6, 102.0, 85.0));
    sea.cut_all(&ripples(
        b.bounds(0.0, 80.2, 100.0, 85.0),
        46,
        70.0,
        4.0,
        dice,
    ));
    let mut land = b.cleared();
    // Not used; without the numbers that it takes, all that is drawn after it would change.
    let _ = hills([-20.0, b.w + 20.0], b.y(92.0), b.y(8.0), 6, dice);
    let near = b.line(&[
        [-1.0, 86.5],
        [20.0, 85.2],
        [44.0, 83.6],
        [62.0, 84.6],
        [82.0, 83.4],
        [101.0, 85.6],
        [101.0, 101.0],
        [-1.0, 101.0],
    ]);
    land.leave(&knifed(&near, 2.0, 3));
    land.cut(&knifed(&field, 1.6, 3));
    for i in 0..5 {
        let y = 90.0 + 2.3 * i as f32;
        land.cut_all(&pecks(
            [0.0, b.y(y), b.w, b.y(y + 1.4)],
            26,
            70.0,
            0.005,
            dice,
        ));
    }
    let port = row([b.x(34.0), b.x(88.0)], b.y(84.4), b.y(4.8), b.x(3.2), dice);
    let mut r = b.cleared();
    for h in &port {
        let m = bounds(h);
        r.within(h, |p| {
            p.leave(&rect(m[0], m[1], m[2] - m[0], (m[3] - m[1]) * 0.45));
        });
    }
    let farm = b.line(&[
        [12.0, 93.0],
        [12.0, 90.4],
        [14.0, 87.8],
        [20.0, 87.6],
        [22.0, 90.2],
        [22.0, 93.0],
    ]);
    r.leave(&b.line(&[[11.4, 90.6], [14.0, 87.6], [20.0, 87.4], [22.4, 90.4]]));
    land.cut(&farm);

    let mut k = b.cleared();
    for bulge in &inner {
        let m = bounds(bulge);
        k.leave_all(&curls(
            &[
                [m[0] + 20.0, m[3] - 50.0],
                [(m[0] + m[2]) / 2.0, m[1] + 34.0],
                [m[2] - 20.0, m[3] - 60.0],
            ],
            26.0,
            40.0,
            11,
            dice,
        ));
    }
    let dark = b.line(&[
        [30.0, 62.0],
        [60.0, 58.0],
        [103.0, 56.0],
        [103.0, 73.0],
        [60.0, 76.0],
        [26.0, 74.0],
    ]);
    shade_part(
        &mut k,
        &tower,
        &dark,
        Hatch {
            turn: 0.30,
            gap: 9.0,
            width: 3.4,
            stray: 1.2,
        },
        dice,
    );
    if bolt {
        k.cut(&outline(&fork, 3.0));
        k.cut(&fork);
        k.cut(&branch);
    }
    for h in &port {
        k.leave(&outline(h, 1.5));
        let m = bounds(h);
        k.within(h, |p| {
            p.leave(&rect(m[0] + (m[2] - m[0]) * 0.6, m[1] + 6.0, m[2], m[3]));
        });
    }
    for x in [46.0, 71.0] {
        k.leave(&spire(b.at(x, 84.0), b.y(8.4), 9.0));
    }
    for x in [38.0, 52.0, 57.0, 78.0, 84.0] {
        k.leave_all(&mast(b.at(x, 84.0), b.y(5.6), 2.2, 12.0));
    }
    k.leave(&b.area(33.0, 84.2, 89.0, 84.8));
    k.leave(&gouged(
        &[[-10.0, shore - 2.0], [b.w + 10.0, shore - 1.0]],
        2.4,
    ));
    k.leave(&outline(&farm, 2.4));
    k.leave(&b.area(15.6, 90.6, 17.4, 93.0));
    for (x, h) in [
        (9.0, 8.4),
        (24.0, 7.2),
        (26.6, 8.8),
        (94.0, 9.0),
        (97.0, 7.0),
    ] {
        k.leave(&poplar(b.at(x, 93.4), b.y(h), dice));
    }
    for i in 0..7 {
        let x = 4.0 + 15.0 * i as f32;
        let hedge = b.curve(&[[x - 6.0, 101.0], [x - 1.0, 96.0], [x + 4.0, 92.6]]);
        k.leave(&tapered(&hedge, 6.0, 2.0));
    }
    k.leave_all(&pecks(b.below(93.0), 90, 28.0, 0.01, dice));
    b.cuts([
        ("light", l),
        ("cloud", c),
        ("sea", sea),
        ("land", land),
        ("roof", r),
        ("key", k),
    ])
}

/// The outline of a bulge moved towards the light, and what it has beyond the bulge.
fn lit_side(b: &Bench, bulge: &Path) -> (Path, Plane) {
    let lit = moved(bulge, -20.0, -15.0);
    let mut rim = b.cleared();
    rim.leave(&lit);
    rim.cut(bulge);
    (lit, rim)
}

fn thunder_print(look: &Look) -> Vec<Pass> {
    vec![
        Pass::block("light", ink(0xec_d6_a2)),
        Pass::block("cloud", ink(0x5b_54_72)).charged(evenly(
            look,
            "cloud",
            0.92,
            Fall {
                from: 600.0,
                to: -60.0,
                rest: 0.42,
            },
        )),
        Pass::block("sea", ink(0x3c_58_7c)),
        Pass::block("land", ink(0x6b_83_54)),
        Pass::block("roof", ink(0xb8_5c_42)),
        Pass::block("key", ink(0x22_22_2e)).charged(|_| 1.03),
    ]
}
