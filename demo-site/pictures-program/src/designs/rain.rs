//! No. 18, rain from seaward.

use super::prelude::*;
use super::shared::under_sail;
use crate::parts::birds::gull;
use crate::parts::boats::lugger;
use crate::parts::sea::breakers;
use crate::parts::sky::{heap, rain};

pub const ART: Art = Art {
    key: "18",
    cut: rain_cut,
    print: rain_print,
};

fn rain_cut(_: &Look, b: &Bench) -> Cuts {
    let dice = &mut Dice::new(b.seed);
    let shower = b.line(&[[34.0, -2.0], [102.0, -2.0], [102.0, 74.0], [14.0, 74.0]]);
    let bank = heap(
        &b.line(&[
            [-4.0, 30.0],
            [8.0, 21.0],
            [20.0, 23.0],
            [31.0, 12.0],
            [44.0, 10.0],
            [60.0, 4.0],
            [104.0, 1.0],
        ]),
        b.y(41.0),
        62.0,
        dice,
    );
    let luggers = [
        lugger(b.at(43.0, 73.6), 116.0, 0.022),
        lugger(b.at(63.0, 72.8), 74.0, 0.018),
    ];

    let mut s = b.cleared();
    s.leave(&b.area(-2.0, -2.0, 102.0, 72.2));
    let streaks = [
        (-8.0, 58.0, 46.0, 40.0),
        (-4.0, 12.0, 36.0, 34.0),
        (-6.0, 46.0, 26.0, 18.0),
    ];
    cut_streaks(&mut s, b, &streaks, 2.0, dice);
    let drops = rain(
        [b.x(10.0), -60.0, b.w + 120.0, b.y(66.0)],
        330,
        150.0,
        -0.42,
        3.1,
        dice,
    );
    s.cut_within(&shower, |p| p.leave_all(&drops));
    for boat in &luggers {
        s.cut(&boat.strake);
    }

    let mut w = b.cleared();
    w.leave(&b.area(-2.0, 72.0, 102.0, 101.0));
    let rows = [
        breakers([-30.0, 1030.0], b.y(80.0), 90.0, 18.0, dice),
        breakers([-60.0, 1060.0], b.y(94.0), 170.0, 40.0, dice),
    ];
    for row in &rows {
        w.cut_all(&row.foam);
        w.cut_all(&row.veins);
    }
    w.cut_all(&pecks(
        b.bounds(30.0, 73.0, 100.0, 90.0),
        160,
        15.0,
        0.0,
        dice,
    ));
    for boat in &luggers {
        for sail in &boat.sails {
            w.leave(sail);
        }
    }

    let mut k = b.cleared();
    shade(
        &mut k,
        &bank,
        Hatch {
            turn: 0.31,
            gap: 8.0,
            width: 4.2,
            stray: 1.4,
        },
        dice,
    );
    let core = heap(
        &b.line(&[[38.0, 20.0], [50.0, 13.0], [68.0, 8.0], [104.0, 5.0]]),
        b.y(26.0),
        54.0,
        dice,
    );
    k.leave(&core);
    let drops = rain(
        [b.x(10.0), -60.0, b.w + 120.0, b.y(60.0)],
        240,
        130.0,
        -0.42,
        3.0,
        dice,
    );
    k.cut_within(&shower, |p| p.leave_all(&drops));
    for row in &rows {
        k.leave_all(&row.hollows);
        k.leave_all(&row.contours);
        k.cut_all(&row.foam);
        for foam in &row.foam {
            k.leave(&outline(foam, 1.4));
        }
    }
    k.leave(&b.area(-1.0, 71.6, 101.0, 72.4));
    for boat in &luggers {
        under_sail(&mut k, boat, 2.4, Some(1.2));
    }
    beacon(&mut k, b, dice);
    b.cuts([("sky", s), ("sea", w), ("key", k)])
}

fn beacon(k: &mut Plane, b: &Bench, dice: &mut Dice) {
    k.cut(&ellipse(b.x(14.0), b.y(74.0), 82.0, 20.0));
    let bank = b.curve(&[
        [3.0, 76.0],
        [8.0, 73.4],
        [15.0, 72.2],
        [22.0, 73.6],
        [27.0, 76.0],
    ]);
    shade(
        k,
        &bank,
        Hatch {
            turn: 0.0,
            gap: 5.0,
            width: 2.6,
            stray: 0.8,
        },
        dice,
    );
    for (p, q) in [
        ([12.2, 73.6], [13.7, 49.0]),
        ([16.0, 73.6], [14.5, 49.0]),
        ([12.5, 68.0], [15.0, 60.0]),
        ([15.6, 68.0], [13.3, 60.0]),
        ([12.6, 67.4], [15.7, 67.4]),
        ([13.1, 59.4], [15.1, 59.4]),
    ] {
        k.leave(&b.bar(&[p, q], 5.0));
    }
    k.leave(&b.line(&[[12.2, 49.4], [16.0, 49.4], [15.4, 44.0], [12.8, 44.0]]));
    k.leave(&ellipse(b.x(14.1), b.y(42.0), 13.0, 12.0));
    k.cut(&b.line(&[[13.4, 48.0], [14.8, 48.0], [14.6, 45.4], [13.6, 45.4]]));
    for (x, y) in [(22.0, 55.0), (26.0, 50.0), (7.0, 58.0)] {
        k.leave(&gull(b.at(x, y), 30.0, 0.8, 0.03));
    }
}

fn rain_print(look: &Look) -> Vec<Pass> {
    vec![
        Pass::block("sky", ink(0x80_88_90)).charged(evenly(
            look,
            "sky",
            0.95,
            Fall {
                from: -20.0,
                to: 480.0,
                rest: 0.3,
            },
        )),
        Pass::block("sea", ink(0x6c_78_56)),
        Pass::block("key", ink(0x25_29_2e)).charged(|_| 1.03),
    ]
}
