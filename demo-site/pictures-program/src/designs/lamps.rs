//! No. 26, the lamps going out.

use super::prelude::*;
use crate::parts::boats::{hull, mast};
use crate::parts::harbour::{lamp, stones};
use crate::parts::houses::row;
use crate::parts::sea::{broken, ripples};
use crate::parts::sky::star;

pub const ART: Art = Art {
    key: "26",
    cut: lamps_cut,
    print: lamps_print,
};

fn lamps_cut(_: &Look, b: &Bench) -> Cuts {
    let dice = &mut Dice::new(b.seed);
    let mut n = b.block();
    for (x, y, s) in [
        (12.0, 8.0, 8.0),
        (27.0, 15.0, 5.0),
        (40.0, 6.0, 6.0),
        (52.0, 18.0, 9.0),
        (64.0, 9.0, 5.0),
        (78.0, 14.0, 7.0),
        (90.0, 7.0, 6.0),
        (86.0, 26.0, 5.0),
        (35.0, 28.0, 5.0),
        (19.0, 30.0, 7.0),
        (68.0, 29.0, 6.0),
        (50.0, 33.0, 4.5),
    ] {
        n.cut(&star(b.at(x, y), s));
    }
    n.cut_all(&ripples(b.below(74.0), 46, 80.0, 4.4, dice));
    n.cut_all(&pecks(
        b.bounds(0.0, 36.0, 100.0, 41.0),
        40,
        60.0,
        0.0,
        dice,
    ));
    let mut k = b.cleared();
    let back = row([-20.0, b.w + 20.0], b.y(60.0), b.y(20.0), b.x(15.0), dice);
    for h in &back {
        k.leave(&outline(h, 2.6));
        shade(
            &mut k,
            h,
            Hatch {
                turn: 0.25,
                gap: 6.5,
                width: 3.4,
                stray: 0.6,
            },
            dice,
        );
    }
    let front = row([-20.0, b.x(46.0)], b.y(73.0), b.y(30.0), b.x(19.0), dice);
    let right = row(
        [b.x(70.0), b.w + 30.0],
        b.y(73.0),
        b.y(38.0),
        b.x(22.0),
        dice,
    );
    for h in front.iter().chain(&right) {
        k.cut(&outline(h, 5.0));
        k.leave(&knifed(h, 1.0, 3));
        let m = bounds(h);
        // The only light: one edge of each roof.
        let edge: Path = h.iter().map(|p| [p[0] - 4.0, p[1] + 5.0]).collect();
        let mut rim = b.cleared();
        rim.leave(h);
        rim.cut(&edge);
        let strokes = pecks(m, ((m[2] - m[0]) * 0.8) as usize, 15.0, 0.18, dice);
        let mut cuts = b.cleared();
        cuts.leave_all(&strokes);
        for (a, (r, c)) in k.data.iter_mut().zip(rim.data.iter().zip(&cuts.data)) {
            *a *= 1.0 - r * c;
        }
        for i in 0..3 {
            let pane = rect(m[0] + 18.0 + 34.0 * i as f32, m[3] - 74.0, 15.0, 21.0);
            k.cut_within(h, |p| p.leave(&outline(&pane, 1.8)));
        }
    }
    k.leave(&knifed(
        &b.line(&[[-1.0, 72.0], [101.0, 72.6], [101.0, 78.0], [-1.0, 76.6]]),
        1.2,
        3,
    ));
    k.cut_all(&stones(b.bounds(0.0, 73.2, 100.0, 76.8), 17.0, 1.6, dice));
    for (x, y, h) in [(52.0, 73.0, 40.0), (64.0, 72.8, 30.0), (38.0, 78.0, 62.0)] {
        let (post, glass) = lamp(b.at(x, y), b.y(h));
        for part in &post {
            k.cut(&outline(part, 4.0));
        }
        n.cut(&outline(&glass, 2.0));
        k.cut(&glass);
        k.leave_all(&post);
        k.leave(&outline(&glass, 3.0));
    }
    let barge = knifed(&hull(b.at(44.0, 84.0), b.x(52.0), b.y(7.6), 9.0), 1.0, 3);
    k.cut(&outline(&barge, 5.0));
    n.cut(&outline(&barge, 2.0));
    k.leave(&barge);
    k.cut(&bar(
        &b.curve(&[[45.0, 85.4], [62.0, 86.4], [80.0, 86.4], [96.0, 84.6]]),
        2.8,
    ));
    k.leave(&b.area(49.0, 80.4, 60.0, 85.4));
    k.leave(&b.line(&[[62.0, 85.4], [66.0, 82.4], [84.0, 82.4], [88.0, 85.4]]));
    k.leave_all(&mast(b.at(70.0, 84.0), b.y(17.0), 5.0, 50.0));
    k.leave_all(&broken(b.x(45.0), b.x(96.0), b.y(92.4), b.y(100.0), dice));
    for x in [38.0, 52.0, 10.0] {
        k.leave_all(&broken(
            b.x(x) - 5.0,
            b.x(x) + 6.0,
            b.y(79.0),
            b.y(96.0),
            dice,
        ));
    }
    k.leave_all(&ripples(b.below(78.0), 40, 70.0, 4.4, dice));
    b.cuts([("night", n), ("key", k)])
}

fn lamps_print(_: &Look) -> Vec<Pass> {
    vec![
        Pass::block("night", ink(0x5c_4e_46))
            .from(Surface::Pine, 0.5)
            .charged(|p| mix(1.1, 0.8, step(0.0, 700.0, p[1]))),
        Pass::block("key", ink(0x1c_1a_1a))
            .from(Surface::Plank, 0.4)
            .charged(|_| 1.03),
    ]
}
