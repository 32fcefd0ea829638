//! No. 18, rain from seaward.

use super::prelude::*;
use crate::parts::birds::gull;
use crate::parts::boats::lugger;
use crate::parts::sea::breakers;
use crate::parts::sky::{heap, rain, streak};

pub const ART: Art = Art {
    key: "18",
    cut: rain_cut,
    print: rain_print,
};

fn rain_cut(_: &Look, b: &Bench) -> Cuts {
    let mut dice = Dice::new(b.seed);
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
        &mut dice,
    );
    let luggers = [
        lugger(b.at(43.0, 73.6), 116.0, 0.022),
        lugger(b.at(63.0, 72.8), 74.0, 0.018),
    ];

    let mut s = b.cleared();
    s.leave(&b.area(-2.0, -2.0, 102.0, 72.2));
    s.cut(&knifed(
        &streak(b.at(-8.0, 58.0), b.x(46.0), 40.0, &mut dice),
        2.0,
        3,
    ));
    s.cut(&knifed(
        &streak(b.at(-4.0, 12.0), b.x(36.0), 34.0, &mut dice),
        2.0,
        3,
    ));
    s.cut(&knifed(
        &streak(b.at(-6.0, 46.0), b.x(26.0), 18.0, &mut dice),
        2.0,
        3,
    ));
    let drops = rain(
        [b.x(10.0), -60.0, b.w + 120.0, b.y(66.0)],
        330,
        150.0,
        -0.42,
        3.1,
        &mut dice,
    );
    s.cut_within(&shower, |p| p.leave_all(&drops));
    for boat in &luggers {
        s.cut(&boat.strake);
    }

    let mut w = b.cleared();
    w.leave(&b.area(-2.0, 72.0, 102.0, 101.0));
    let rows = [
        breakers([-30.0, 1030.0], b.y(80.0), 90.0, 18.0, &mut dice),
        breakers([-60.0, 1060.0], b.y(94.0), 170.0, 40.0, &mut dice),
    ];
    for row in &rows {
        w.cut_all(&row.foam);
        w.cut_all(&row.veins);
    }
    w.cut_all(&pecks(
        [b.x(30.0), b.y(73.0), b.w, b.y(90.0)],
        160,
        15.0,
        0.0,
        &mut dice,
    ));
    for boat in &luggers {
        for sail in &boat.sails {
            w.leave(sail);
        }
    }

    let mut k = b.cleared();
    let lines = crate::parts::lines::hatch(
        &bank,
        Hatch {
            turn: 0.31,
            gap: 8.0,
            width: 4.2,
            stray: 1.4,
        },
        &mut dice,
    );
    k.within(&bank, |p| p.leave_all(&lines));
    let core = heap(
        &b.line(&[[38.0, 20.0], [50.0, 13.0], [68.0, 8.0], [104.0, 5.0]]),
        b.y(26.0),
        54.0,
        &mut dice,
    );
    k.leave(&core);
    let drops = rain(
        [b.x(10.0), -60.0, b.w + 120.0, b.y(60.0)],
        240,
        130.0,
        -0.42,
        3.0,
        &mut dice,
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
        for sail in &boat.sails {
            k.cut(sail);
            k.leave(&outline(sail, 2.4));
        }
        for seam in &boat.seams {
            k.leave(&bar(seam, 1.2));
        }
        k.leave_all(&boat.spars);
        k.leave(&boat.hull);
        k.cut(&boat.strake);
    }
    beacon(&mut k, b, &mut dice);
    Cuts::from([
        ("sky", b.trimmed(s)),
        ("sea", b.trimmed(w)),
        ("key", b.trimmed(k)),
    ])
}

fn beacon(k: &mut Plane, b: &Bench, dice: &mut Dice) {
    k.cut(&ellipse(b.x(14.0), b.y(74.0), 82.0, 20.0));
    let bank = curve(&b.line(&[
        [3.0, 76.0],
        [8.0, 73.4],
        [15.0, 72.2],
        [22.0, 73.6],
        [27.0, 76.0],
    ]));
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
        k.leave(&bar(&b.line(&[p, q]), 5.0));
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
        Pass::new("sky", "sky", ink(0x80_88_90)).charged(evenly(
            look,
            "sky",
            0.95,
            Fall {
                from: -20.0,
                to: 480.0,
                rest: 0.3,
            },
        )),
        Pass::new("sea", "sea", ink(0x6c_78_56)),
        Pass::new("key", "key", ink(0x25_29_2e)).charged(|_| 1.03),
    ]
}
