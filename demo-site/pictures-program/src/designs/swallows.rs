//! No. 23, swallows under the swing bridge.

use super::prelude::*;
use crate::engine::shape::reflected;
use crate::parts::birds::swallow;
use crate::parts::boats::mast;
use crate::parts::harbour::stones;
use crate::parts::houses::row;
use crate::parts::sea::{broken, ripples};

pub const ART: Art = Art {
    key: "23",
    cut: swallows_cut,
    print: swallows_print,
};

fn swallows_cut(look: &Look, b: &Bench) -> Cuts {
    let dice = &mut Dice::new(b.seed);
    let pier = b.line(&[[58.0, 26.0], [86.0, 25.0], [84.0, 66.0], [60.0, 66.0]]);
    let mut s = b.cleared();
    s.leave(&b.area(-2.0, -2.0, 102.0, 62.0));
    let streaks = [
        (-6.0, 44.0, 60.0, 22.0),
        (10.0, 52.0, 50.0, 12.0),
        (80.0, 40.0, 30.0, 18.0),
        (-4.0, 35.0, 36.0, 9.0),
    ];
    cut_streaks(&mut s, b, &streaks, 1.8, dice);
    let town = row([-10.0, b.w + 20.0], b.y(62.5), b.y(8.0), b.x(9.0), dice);
    let mut r = b.cleared();
    r.leave_all(&town);
    r.leave(&knifed(&pier, 1.4, 3));
    let mut w = b.cleared();
    w.leave(&b.area(-2.0, 62.0, 102.0, 101.0));
    let m = bounds(&pier);
    w.leave(&rect(
        m[0] + (m[2] - m[0]) * 0.62,
        m[1],
        (m[2] - m[0]) * 0.36,
        m[3] - m[1],
    ));
    w.cut_all(&ripples(b.below(65.0), 70, 130.0, 8.0, dice));

    let mut iron = b.cleared();
    let under = b.line(&[
        [-2.0, -2.0],
        [102.0, -2.0],
        [102.0, 15.0],
        [86.0, 21.0],
        [56.0, 24.5],
        [30.0, 20.0],
        [-2.0, 8.0],
    ]);
    iron.leave(&knifed(&under, 1.0, 3));
    // Seen from below: girders run to one side, cross-beams between them, sky through the gaps.
    for i in 0..8 {
        let x = -2.0 + 13.0 * i as f32;
        let gap = b.line(&[
            [x, 1.6],
            [x + 8.6, 2.4],
            [x + 9.6, 7.0 + 0.6 * i as f32],
            [x + 1.6, 5.4 + 0.7 * i as f32],
        ]);
        iron.cut(&knifed(&gap, 1.2, 4));
        let second = b.line(&[
            [x + 2.0, 8.4 + 0.65 * i as f32],
            [x + 9.6, 9.8 + 0.5 * i as f32],
            [x + 10.2, 13.6 + 0.5 * i as f32],
            [x + 3.0, 11.4 + 0.7 * i as f32],
        ]);
        if i > 0 {
            iron.cut(&knifed(&second, 1.2, 4));
        }
    }
    let mut k = b.cleared();
    truss(&mut k, &under, b, dice);
    for h in &town {
        k.leave(&outline(h, 2.2));
        let m = bounds(h);
        shade(
            &mut k,
            &rect(
                m[0] + (m[2] - m[0]) * 0.55,
                m[1],
                (m[2] - m[0]) * 0.45,
                m[3] - m[1],
            ),
            Hatch {
                turn: 0.25,
                gap: 5.0,
                width: 2.0,
                stray: 0.4,
            },
            dice,
        );
    }
    k.leave(&b.area(-1.0, 62.0, 101.0, 63.2));
    for x in [14.0, 26.0, 45.0] {
        k.leave_all(&mast(b.at(x, 62.5), b.y(20.0), 4.6, 36.0));
    }
    outlined(&mut k, &pier, 4.4);
    let m = bounds(&pier);
    let joints = stones(m, 26.0, 2.2, dice);
    k.within(&pier, |p| p.leave_all(&joints));
    for i in 0..5 {
        let from = 0.55 + 0.09 * i as f32;
        let strip = rect(
            m[0] + (m[2] - m[0]) * from,
            m[1],
            (m[2] - m[0]) * 0.5,
            m[3] - m[1],
        );
        shade_part(
            &mut k,
            &pier,
            &strip,
            Hatch {
                turn: 0.0,
                gap: 11.0,
                width: 3.0,
                stray: 0.6,
            },
            dice,
        );
    }
    k.leave(&b.line(&[[55.0, 24.0], [89.0, 22.6], [87.6, 28.6], [56.6, 29.6]]));
    k.cut(&b.bar(&[[56.6, 26.4], [88.0, 25.2]], 4.0));
    let reflection = reflected(&pier, b.y(66.0), 0.75);
    let mr = bounds(&reflection);
    k.leave_all(&broken(
        mr[0] + 4.0,
        mr[2] - 4.0,
        b.y(66.5),
        b.y(94.0),
        dice,
    ));
    iron.leave_all(&broken(
        mr[0] - 6.0,
        mr[2] + 6.0,
        b.y(67.0),
        b.y(97.0),
        dice,
    ));
    for _ in 0..5 {
        let x = dice.between(0.0, b.x(50.0));
        iron.leave_all(&broken(
            x,
            x + dice.between(60.0, 170.0),
            b.y(84.0),
            b.y(99.5),
            dice,
        ));
    }
    k.leave_all(&ripples(b.below(66.0), 34, 120.0, 5.0, dice));
    let flock = [
        (22.0, 42.0, 62.0, 0.10),
        (38.0, 37.0, 48.0, -0.16),
        (14.0, 55.0, 50.0, 0.22),
        (33.0, 52.0, 72.0, -0.06),
        (46.0, 47.0, 40.0, 0.30),
        (24.0, 65.0, 58.0, -0.22),
        (53.0, 57.0, 54.0, 0.14),
    ];
    for (x, y, span, turn) in flock.into_iter().take(look.count("swallows", 7)) {
        let bird = swallow(b.at(x, y), span, turn);
        set_off(&mut k, &bird, 2.6);
    }
    b.cuts([
        ("sky", s),
        ("brick", r),
        ("water", w),
        ("iron", iron),
        ("key", k),
    ])
}

fn truss(k: &mut Plane, under: &Path, b: &Bench, dice: &mut Dice) {
    let girder = |k: &mut Plane, p: Pt, q: Pt, w: f32| k.leave(&b.bar(&[p, q], w));
    for (y0, y1, w) in [(0.6, 0.8, 8.0), (7.2, 11.4, 9.0), (8.2, 24.0, 0.0)] {
        if w > 0.0 {
            girder(k, [-2.0, y0], [102.0, y1], w);
        }
    }
    let lower = b.curve(&[
        [-2.0, 8.4],
        [30.0, 20.2],
        [56.0, 24.6],
        [86.0, 21.2],
        [102.0, 15.0],
    ]);
    k.leave(&bar(&lower, 11.0));
    let upper: Path = lower.iter().map(|p| [p[0], p[1] - b.y(2.6)]).collect();
    k.leave(&bar(&upper, 4.0));
    for i in 0..22 {
        let at = |t: f32| lower[((t * (lower.len() - 1) as f32) as usize).min(lower.len() - 1)];
        let (p, q) = (at(i as f32 / 22.0), at((i + 1) as f32 / 22.0));
        let lift = b.y(2.6);
        let line = if i % 2 == 0 {
            [p, [q[0], q[1] - lift]]
        } else {
            [[p[0], p[1] - lift], q]
        };
        k.leave(&bar(&line, 3.6));
    }
    for i in 0..9 {
        let x = -4.0 + 13.0 * i as f32;
        k.within(under, |q| {
            q.leave(&b.bar(&[[x, -2.0], [x + 5.0, 26.0]], 10.0));
            q.leave(&b.bar(&[[x + 5.0, 2.0], [x + 12.0, 12.0]], 3.6));
            q.leave(&b.bar(&[[x + 12.0, 2.0], [x + 4.0, 12.0]], 3.6));
        });
    }
    for p in lower.iter().step_by(3) {
        k.cut(&ellipse(p[0], p[1], 1.7, 1.7));
    }
    shade(
        k,
        &b.line(&[
            [56.0, 20.0],
            [102.0, 9.0],
            [102.0, 15.0],
            [86.0, 21.0],
            [56.0, 24.5],
        ]),
        Hatch {
            turn: 0.2,
            gap: 5.5,
            width: 2.2,
            stray: 0.6,
        },
        dice,
    );
}

fn swallows_print(look: &Look) -> Vec<Pass> {
    vec![
        Pass::block("sky", ink(0xf0_da_98)).charged(evenly(
            look,
            "sky",
            0.92,
            Fall {
                from: 640.0,
                to: 60.0,
                rest: 0.35,
            },
        )),
        Pass::block("brick", ink(0xbd_7a_5a)),
        Pass::block("water", ink(0x6c_93_ae)),
        Pass::block("iron", ink(0x4a_5a_52)),
        Pass::block("key", ink(0x1f_24_26)).charged(|_| 1.04),
    ]
}
