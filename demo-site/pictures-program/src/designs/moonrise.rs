//! No. 20, moonrise at ebb.

use super::prelude::*;
use crate::parts::birds::gull;
use crate::parts::boats::{cutter, dinghy};
use crate::parts::land::hills;
use crate::parts::sea::{broken, ripples};
use crate::parts::sky::disc;

pub const ART: Art = Art {
    key: "20",
    cut: moonrise_cut,
    print: moonrise_print,
};

fn moonrise_cut(look: &Look, b: &Bench) -> Cuts {
    let dice = &mut Dice::new(b.seed);
    let moon = b.at(73.0, 37.0);
    let radius = b.y(6.6);
    let horizon = 47.5;
    let shore = hills([-20.0, b.w + 20.0], b.y(horizon + 0.6), b.y(5.0), 9, dice);
    // Channels winding towards the moon.
    let channel = |points: &[Pt], from: f32, to: f32| tapered(&b.curve(points), from, to);
    let channels = [
        channel(
            &[
                [60.0, 103.0],
                [50.0, 90.0],
                [64.0, 80.0],
                [50.0, 71.0],
                [62.0, 63.0],
                [68.0, 57.0],
                [72.0, 49.0],
            ],
            120.0,
            16.0,
        ),
        channel(
            &[
                [-4.0, 84.0],
                [14.0, 80.0],
                [30.0, 83.0],
                [46.0, 76.0],
                [55.0, 70.0],
            ],
            44.0,
            14.0,
        ),
        channel(
            &[[104.0, 66.0], [90.0, 63.0], [80.0, 66.0], [70.0, 60.0]],
            26.0,
            9.0,
        ),
        channel(
            &[
                [-4.0, 62.0],
                [10.0, 58.0],
                [24.0, 60.0],
                [40.0, 55.0],
                [56.0, 53.0],
            ],
            18.0,
            6.0,
        ),
        channel(&[[104.0, 54.0], [92.0, 53.0], [82.0, 54.6]], 12.0, 5.0),
    ];
    let smacks = [
        cutter(b.at(20.0, 70.0), 168.0, -0.045),
        cutter(b.at(37.5, 62.5), -112.0, -0.04),
    ];
    let (boat, inside, thwarts) = dinghy(b.at(77.0, 80.0), 128.0);

    let mut s = b.cleared();
    s.leave(&b.area(-2.0, -2.0, 102.0, horizon + 0.6));
    s.cut(&knifed(&disc(moon, radius), 1.2, 3));
    let streaks = [
        (52.0, 42.4, 54.0, 13.0),
        (80.0, 34.0, 30.0, 8.0),
        (-6.0, 40.0, 52.0, 12.0),
        (34.0, 31.0, 30.0, 8.0),
        (4.0, 20.0, 44.0, 10.0),
    ];
    cut_streaks(&mut s, b, &streaks, 1.4, dice);
    s.leave(&shore);

    let mut m = b.cleared();
    m.leave(&b.area(-2.0, horizon, 102.0, 101.0));
    for c in &channels {
        m.cut(&knifed(c, 3.0, b.seed));
    }
    m.cut_all(&pecks(b.below(56.0), 130, 44.0, 0.0, dice));
    for smack in &smacks {
        m.leave(&smack.hull);
    }
    let mut w = b.cleared();
    for c in &channels {
        w.leave(&knifed(c, 3.0, b.seed));
    }
    w.cut_all(&broken(
        moon[0] - 26.0,
        moon[0] - 2.0,
        b.y(50.0),
        b.y(64.0),
        dice,
    ));
    for c in &channels[..2] {
        let bx = bounds(c);
        let glints = ripples([bx[0], bx[1], bx[2], bx[3]], 36, 70.0, 5.0, dice);
        w.cut_within(c, |p| p.leave_all(&glints));
    }
    let mut l = b.cleared();
    l.leave(&knifed(&disc(moon, radius), 1.2, 3));
    let path = broken(moon[0] - 30.0, moon[0] + 4.0, b.y(49.0), b.y(66.0), dice);
    for c in &channels {
        l.within(c, |p| p.leave_all(&path));
    }
    for x in [31.0, 52.0, 55.0] {
        l.leave(&b.area(x, horizon - 1.4, x + 0.5, horizon - 0.3));
    }

    let mut k = b.cleared();
    shade(
        &mut k,
        &shore,
        Hatch {
            turn: 0.0,
            gap: 4.2,
            width: 2.6,
            stray: 0.6,
        },
        dice,
    );
    k.leave(&b.area(-1.0, horizon - 0.1, 101.0, horizon + 0.9));
    for c in &channels[..3] {
        let low = moved(c, 0.0, 5.0);
        let mut edge = b.cleared();
        edge.leave(&low);
        edge.cut(&knifed(c, 3.0, b.seed));
        k.add(&edge);
    }
    for smack in &smacks {
        for spar in &smack.spars {
            k.leave(spar);
        }
        k.leave(&smack.hull);
        let mm = bounds(&smack.hull);
        k.cut(&bar(&smack.strake, 1.6));
        // The sails are lowered; the hull casts a shadow on the mud.
        k.leave(&knifed(
            &[
                [mm[0] - 10.0, mm[3] - 2.0],
                [mm[2] + 16.0, mm[3] - 4.0],
                [mm[2] - 10.0, mm[3] + 8.0],
                [mm[0] + 10.0, mm[3] + 9.0],
            ],
            2.0,
            3,
        ));
        k.leave_all(&broken(
            mm[0] + 10.0,
            mm[2] - 20.0,
            mm[3] + 12.0,
            mm[3] + 52.0,
            dice,
        ));
    }
    for i in 0..15 {
        // Withies along the channel.
        let t = i as f32 / 14.0;
        let p = b.at(
            mix(96.0, 71.0, t.sqrt()) - 6.0 * libm::sinf(t * 3.0),
            mix(86.0, 51.0, t),
        );
        let h = mix(92.0, 8.0, t.sqrt());
        k.leave(&tapered(
            &[p, [p[0] + h * 0.06, p[1] - h]],
            mix(5.0, 1.2, t),
            mix(2.2, 0.7, t),
        ));
        k.leave(&gouged(
            &[
                [p[0] + h * 0.05, p[1] - h * 0.94],
                [p[0] + h * 0.17, p[1] - h * 1.05],
            ],
            mix(4.0, 1.0, t),
        ));
    }
    k.leave_all(&pecks(b.below(66.0), 80, 60.0, 0.0, dice));
    if look.has_or("dinghy", look.state == 0) {
        for plane in [&mut m, &mut w, &mut k, &mut l] {
            plane.cut(&outline(&boat, 5.0));
            plane.cut(&boat);
        }
        k.leave(&boat);
        k.cut(&knifed(&inside, 0.8, 3));
        m.leave(&inside);
        k.leave_all(&thwarts);
        k.cut_all(&pecks(
            b.bounds(71.0, 80.6, 83.0, 82.6),
            12,
            40.0,
            0.0,
            dice,
        ));
        k.leave(&bar(
            &b.curve(&[[70.4, 78.6], [68.0, 81.0], [69.0, 84.0]]),
            2.0,
        ));
        k.leave_all(&broken(b.x(71.0), b.x(84.0), b.y(83.6), b.y(89.0), dice));
    }
    for (x, y, s) in [(48.0, 22.0, 34.0), (53.5, 18.0, 26.0), (44.0, 27.0, 24.0)] {
        k.leave(&gull(b.at(x, y), s, 0.9, 0.02));
    }
    b.cuts([
        ("sky", s),
        ("mud", m),
        ("water", w),
        ("moon", l),
        ("key", k),
    ])
}

fn moonrise_print(look: &Look) -> Vec<Pass> {
    let glow = |p: Pt| {
        let (dx, dy) = (p[0] - 730.0, (p[1] - 254.0) * 1.3);
        1.0 - 0.35 / (1.0 + (dx * dx + dy * dy) / (110.0 * 110.0))
    };
    let brushed = evenly(
        look,
        "sky",
        0.95,
        Fall {
            from: -40.0,
            to: 420.0,
            rest: 0.34,
        },
    );
    vec![
        Pass::block("moon", ink(0xf4_dc_8c)).from(Surface::Plank, 0.2),
        Pass::block("water", ink(0xaf_bf_c9)),
        Pass::block("mud", ink(0x6c_58_5e)).charged(|p| mix(0.72, 1.1, step(320.0, 680.0, p[1]))),
        Pass::block("sky", ink(0x3c_56_6c)).charged(move |p| brushed(p) * glow(p)),
        Pass::block("key", ink(0x1e_22_2c)).charged(|_| 1.04),
    ]
}
