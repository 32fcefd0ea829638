//! No. 17, the heron.

use super::prelude::*;
use crate::parts::birds::heron;
use crate::parts::land::reed;
use crate::parts::sea::{broken, lens, ripples};
use crate::parts::sky::disc;

pub const ART: Art = Art {
    key: "17",
    cut: heron_cut,
    print: heron_print,
};

fn heron_cut(look: &Look, b: &Bench) -> Cuts {
    let dice = &mut Dice::new(b.seed);
    let bird = heron(b.at(50.0, 82.0), b.y(52.0));
    // The last three of the nine reeds were cut away later.
    let stand = [
        (9.0, 88.0, 58.0, 26.0),
        (14.5, 90.0, 64.0, -14.0),
        (20.0, 91.0, 50.0, 40.0),
        (26.0, 92.0, 62.0, 10.0),
        (5.0, 90.0, 42.0, -10.0),
        (29.5, 94.0, 40.0, 44.0),
        (11.5, 95.0, 54.0, 60.0),
        (22.5, 95.0, 58.0, -24.0),
        (17.0, 96.0, 46.0, -40.0),
    ];
    let mut reeds = Vec::new();
    for (i, (x, y, h, lean)) in stand.into_iter().enumerate() {
        let parts = reed(b.at(x, y), b.y(h), lean, dice);
        if i < look.count("reeds", 9) {
            reeds.extend(parts);
        }
    }
    let far_dyke = knifed(
        &b.line(&[
            [-1.0, 61.0],
            [24.0, 60.2],
            [60.0, 60.8],
            [101.0, 59.8],
            [101.0, 63.0],
            [-1.0, 63.2],
        ]),
        1.4,
        3,
    );

    let mut s = b.cleared();
    s.leave(&b.area(-2.0, -2.0, 102.0, 62.0));
    let streaks = [
        (-8.0, 51.0, 70.0, 22.0),
        (38.0, 46.5, 70.0, 16.0),
        (-6.0, 37.0, 44.0, 12.0),
        (56.0, 33.0, 52.0, 13.0),
    ];
    cut_streaks(&mut s, b, &streaks, 1.6, dice);
    if look.has_or("moon", look.state >= 1) {
        s.cut(&knifed(&disc(b.at(77.0, 16.5), b.x(7.2)), 1.6, b.seed));
    }
    crack(&mut s, b, look.stage("crack"));
    // Pools on the flat, printed in the colour of the sky.
    for (x, y, l, t) in [
        (20.0, 66.0, 420.0, 9.0),
        (54.0, 70.0, 380.0, 11.0),
        (-4.0, 73.5, 330.0, 13.0),
        (48.0, 78.5, 430.0, 16.0),
        (60.0, 87.0, 360.0, 18.0),
    ] {
        s.leave(&knifed(&lens(b.x(x), b.x(x) + l, b.y(y), t * 2.0), 2.0, 3));
    }
    s.cut(&bird.body);
    s.within(&bird.body, |p| p.leave(&wing(&bird.body)));

    let mut f = b.cleared();
    f.leave(&b.area(-2.0, 62.0, 102.0, 101.0));
    f.cut_all(&ripples(b.below(64.0), 46, 170.0, 7.0, dice));
    f.cut_all(&pecks(b.below(80.0), 260, 15.0, 0.21, dice));
    f.leave(&far_dyke);
    f.cut(&bird.body);
    f.within(&bird.body, |p| p.leave(&wing(&bird.body)));

    let mut r = b.cleared();
    r.leave_all(&reeds);
    r.leave(&far_dyke);
    // The bill alone: the crest behind it is black.
    r.leave(&[bird.head[0], bird.head[1], bird.head[5]]);
    for i in 0..30 {
        let p = b.at(dice.between(0.0, 100.0), dice.between(84.0, 100.0));
        let l = dice.between(20.0, 60.0);
        r.leave(&gouged(
            &curve(&[
                p,
                [p[0] + dice.about(9.0), p[1] - l * 0.6],
                [p[0] + dice.about(26.0), p[1] - l],
            ]),
            if i % 3 == 0 { 4.0 } else { 2.6 },
        ));
    }

    let mut k = b.cleared();
    for tree in 0..16 {
        let x = 40.0 + 3.6 * tree as f32 + dice.about(1.5);
        let p = b.at(x, 60.6);
        k.leave(&ellipse(
            p[0],
            p[1] - 7.0,
            dice.between(5.0, 12.0),
            dice.between(7.0, 15.0),
        ));
    }
    k.leave(&b.area(-1.0, 60.9, 101.0, 61.7));
    k.leave(&b.line(&[[83.0, 61.0], [83.4, 52.0], [84.6, 52.0], [85.0, 61.0]]));
    k.cut(&outline(&bird.body, 7.0));
    k.cut(&bird.body);
    heron_key(&mut k, &bird, b, dice);
    for part in &reeds {
        k.leave(&outline(part, 1.3));
        let shadow = moved(part, 2.6, 1.0);
        k.within(part, |p| p.leave(&shadow));
    }
    k.leave_all(&broken(b.x(45.0), b.x(60.0), b.y(82.8), b.y(94.0), dice));
    k.leave_all(&ripples(b.below(66.0), 34, 110.0, 4.6, dice));
    b.cuts([("sky", s), ("frost", f), ("reed", r), ("key", k)])
}

/// The folded wing: the back half of the body.
fn wing(body: &Path) -> Path {
    let m = bounds(body);
    let at = |x: f32, y: f32| [mix(m[0], m[2], x), mix(m[1], m[3], y)];
    blob(&[
        at(0.40, 0.47),
        at(0.62, 0.52),
        at(1.02, 0.86),
        at(1.05, 1.05),
        at(0.62, 1.02),
        at(0.40, 0.90),
        at(0.31, 0.66),
    ])
}

fn heron_key(k: &mut Plane, bird: &crate::parts::birds::Heron, b: &Bench, dice: &mut Dice) {
    k.leave(&outline(&bird.body, 3.4));
    let m = bounds(&bird.body);
    let (w, h) = (m[2] - m[0], m[3] - m[1]);
    // Black at the bend of the wing and in the tail; the throat's dashes; the plume.
    let flank = rect(m[0] + w * 0.34, m[1] + h * 0.70, w * 0.7, h * 0.4);
    shade_part(
        k,
        &bird.body,
        &flank,
        Hatch {
            turn: 0.12,
            gap: 7.5,
            width: 3.8,
            stray: 0.8,
        },
        dice,
    );
    for quill in &bird.quills {
        k.within(&bird.body, |p| p.leave(&gouged(&curve(quill), 5.0)));
    }
    for i in 0..7 {
        let y = m[1] + h * (0.16 + 0.055 * i as f32);
        let x = m[0] + w * (0.06 + 0.012 * (i * i) as f32 * 0.5);
        k.leave(&gouged(&[[x + 6.0, y], [x + 11.0, y + 13.0]], 3.6));
    }
    k.leave(&outline(&bird.head, 1.8));
    let crest = bounds(&bird.head);
    k.leave(&tapered(
        &curve(&[
            [m[0] + w * 0.05, m[1] + 9.0],
            [m[0] + w * 0.20, m[1] + 3.0],
            [crest[2], crest[1] + (crest[3] - crest[1]) * 0.7],
        ]),
        9.0,
        1.0,
    ));
    k.leave(&ellipse(m[0] + w * 0.085, m[1] + h * 0.055, 3.4, 3.0));
    for leg in &bird.legs {
        k.leave(&bar(leg, b.w * 0.0085));
    }
}

fn crack(s: &mut Plane, b: &Bench, stage: usize) {
    let reach = match stage {
        0 => return,
        1 => 12.0,
        _ => 101.0,
    };
    let n = 80;
    let line: Path = (0..=n)
        .map(|i| {
            let x = -1.0 + (reach + 1.0) * i as f32 / n as f32;
            [
                b.x(x),
                b.y(43.0) + 5.0 * (smooth(x / 7.0, 0.0, b.seed ^ 77) - 0.5),
            ]
        })
        .collect();
    s.cut(&tapered(&line, 4.0, 2.4));
}

fn heron_print(look: &Look) -> Vec<Pass> {
    vec![
        Pass::block("sky", ink(0x7d_95_ad)).charged(evenly(
            look,
            "sky",
            0.92,
            Fall {
                from: -20.0,
                to: 640.0,
                rest: 0.22,
            },
        )),
        Pass::block("frost", ink(0xc3_c7_cc)),
        Pass::block("reed", ink(0xc9_95_46)).from(Surface::Plank, 0.3),
        Pass::block("key", ink(0x24_25_2b)).charged(|_| 1.04),
    ]
}
