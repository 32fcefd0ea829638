//! No. 9, snow on the coal quay.

use super::prelude::*;
use crate::parts::boats::{hull, mast};
use crate::parts::figures::{Pose, figure};
use crate::parts::harbour::{bollard, lamp, wagon};
use crate::parts::houses::row;
use crate::parts::sea::{broken, ripples};

pub const ART: Art = Art {
    key: "9",
    cut: snow_cut,
    print: snow_print,
};

fn snow_cut(look: &Look, b: &Bench) -> Cuts {
    let dice = &mut Dice::new(b.seed);
    let roofs = row(
        [b.x(38.0), b.w + 20.0],
        b.y(49.0),
        b.y(15.0),
        b.x(17.0),
        dice,
    );
    let heap = b.curve(&[
        [-3.0, 64.0],
        [4.0, 52.0],
        [12.0, 44.5],
        [18.0, 42.0],
        [25.0, 46.0],
        [32.0, 52.0],
        [40.0, 57.5],
        [46.0, 61.0],
    ]);
    let mut coal = heap.clone();
    coal.extend(b.line(&[[30.0, 66.0], [-3.0, 72.0]]));
    let caps = b.curve(&[
        [-3.0, 60.0],
        [5.0, 50.0],
        [12.0, 43.0],
        [18.0, 40.6],
        [24.0, 43.0],
        [31.0, 50.0],
        [22.0, 49.0],
        [17.0, 46.5],
        [12.0, 50.5],
        [4.0, 58.0],
        [-3.0, 66.0],
    ]);
    let quay_edge = b.curve(&[
        [20.0, 101.0],
        [34.0, 84.0],
        [44.0, 72.0],
        [52.0, 61.0],
        [57.0, 52.0],
    ]);

    let mut s = b.cleared();
    s.leave(&b.area(-2.0, -2.0, 102.0, 50.0));
    // Water right of the quay, and the blue of shadowed snow.
    let mut basin = quay_edge.clone();
    basin.extend(b.line(&[[101.0, 50.0], [101.0, 101.0]]));
    s.leave(&basin);
    s.cut_all(&ripples(
        b.bounds(40.0, 62.0, 100.0, 100.0),
        40,
        90.0,
        7.0,
        dice,
    ));
    for h in &roofs {
        let m = bounds(h);
        s.cut(&knifed(
            &[
                [m[0] - 3.0, m[1] + (m[3] - m[1]) * 0.4],
                [(m[0] + m[2]) / 2.0, m[1] - 4.0],
                [m[2] + 3.0, m[1] + (m[3] - m[1]) * 0.4],
            ],
            2.0,
            3,
        ));
    }
    s.cut(&caps);
    for (x, y, l) in [
        (6.0, 76.0, 120.0),
        (2.0, 84.0, 150.0),
        (10.0, 92.0, 130.0),
        (24.0, 72.0, 70.0),
        (4.0, 97.0, 160.0),
    ] {
        let p = b.at(x, y);
        s.leave(&gouged(
            &curve(&[p, [p[0] + l * 0.4, p[1] - 10.0], [p[0] + l, p[1] - 26.0]]),
            9.0,
        ));
    }

    let mut o = b.cleared();
    let mut k = b.cleared();
    quay_far(&mut k, &mut o, &roofs, b, dice);
    k.leave(&knifed(&coal, 5.0, 3));
    k.cut(&knifed(&caps, 4.0, 4));
    let sparkle = pecks(b.bounds(0.0, 46.0, 44.0, 70.0), 90, 15.0, 0.1, dice);
    k.cut_within(&coal, |p| p.leave_all(&sparkle));
    k.leave_all(&figure(b.at(33.0, 63.0), 60.0, Pose::Bent, -1.0));
    k.leave(&tapered(&quay_edge, 13.0, 3.0));
    let shadow_side: Path = quay_edge
        .iter()
        .map(|p| [p[0] + 12.0, p[1] + 6.0])
        .collect();
    let mut wall = quay_edge.clone();
    wall.extend(shadow_side.iter().rev().map(|p| [p[0] + 14.0, p[1] + 20.0]));
    shade(
        &mut k,
        &wall,
        Hatch {
            turn: 0.25,
            gap: 5.5,
            width: 3.4,
            stray: 0.5,
        },
        dice,
    );
    for (x, y, size) in [
        (24.5, 92.5, 74.0),
        (35.0, 79.0, 54.0),
        (43.0, 69.5, 40.0),
        (48.5, 62.0, 29.0),
        (52.0, 56.6, 20.0),
    ] {
        let (body, cap) = bollard(b.at(x, y), size);
        k.cut(&outline(&body, 6.0));
        k.leave(&knifed(&body, 0.9, 3));
        let m = bounds(&body);
        k.cut_all(&pecks(
            [
                m[0] + size * 0.1,
                m[1] + size * 0.3,
                m[0] + size * 0.32,
                m[3] - 8.0,
            ],
            5,
            size * 0.3,
            0.25,
            dice,
        ));
        k.cut(&cap);
        s.cut(&cap);
        k.leave(&outline(&cap, 1.6));
        s.cut(&body);
    }
    if look.has_or("wagon", look.state == 0) {
        let (body, wheels) = wagon(b.at(54.0, 71.5), b.x(24.0));
        for part in std::iter::once(&body).chain(&wheels) {
            s.cut(&outline(part, 5.0));
            k.cut(&outline(part, 6.0));
        }
        k.leave(&knifed(&body, 0.8, 3));
        k.leave_all(&wheels);
        let m = bounds(&body);
        let cover = blob(&[
            [m[0] - 4.0, m[1] + 6.0],
            [m[0] + 30.0, m[1] - 26.0],
            [m[0] + 90.0, m[1] - 36.0],
            [m[2] - 30.0, m[1] - 24.0],
            [m[2] + 5.0, m[1] + 7.0],
            [m[2] - 60.0, m[1] + 16.0],
        ]);
        k.cut(&cover);
        s.cut(&cover);
        o.leave(&cover);
        k.leave(&outline(&cover, 3.0));
        shade(
            &mut k,
            &cover,
            Hatch {
                turn: 0.11,
                gap: 8.0,
                width: 2.0,
                stray: 1.0,
            },
            dice,
        );
        k.cut_all(&pecks(
            [m[0] + 10.0, m[1] + 22.0, m[2] - 20.0, m[3] - 20.0],
            10,
            26.0,
            0.0,
            dice,
        ));
    }
    for x in [12.0, 46.0] {
        let high = if x < 20.0 { 48.0 } else { 27.0 };
        let y = if x < 20.0 { 87.0 } else { 63.0 };
        let (post, glass) = lamp(b.at(x, y), b.y(high));
        s.cut(&glass);
        k.cut(&glass);
        o.leave(&glass);
        k.leave_all(&post);
        k.leave(&outline(&glass, 2.4));
        let m = bounds(&glass);
        s.cut(&ellipse(
            (m[0] + m[2]) / 2.0,
            (m[1] + m[3]) / 2.0,
            (m[2] - m[0]) * 1.1,
            (m[2] - m[0]) * 1.2,
        ));
    }
    let tracks = [
        b.curve(&[[4.0, 101.0], [20.0, 82.0], [34.0, 68.0], [44.0, 58.0]]),
        b.curve(&[[-1.0, 92.0], [12.0, 80.0], [26.0, 68.0], [40.0, 57.0]]),
    ];
    for t in &tracks {
        k.leave(&tapered(t, 3.4, 1.2));
    }
    b.cuts([("sky", s), ("ochre", o), ("key", k)])
}

fn quay_far(k: &mut Plane, o: &mut Plane, roofs: &[Path], b: &Bench, dice: &mut Dice) {
    for h in roofs {
        let m = bounds(h);
        let face = rect(
            m[0],
            m[1] + (m[3] - m[1]) * 0.38,
            m[2] - m[0],
            (m[3] - m[1]) * 0.62,
        );
        k.leave(&outline(h, 3.0));
        k.within(h, |p| p.leave(&face));
        k.cut_all(&pecks(bounds(&face), 16, 15.0, 0.0, dice));
        for i in 0..3 {
            let pane = rect(m[0] + 16.0 + 40.0 * i as f32, m[3] - 46.0, 11.0, 15.0);
            if dice.chance(0.45) {
                k.cut(&pane);
                o.leave(&pane);
            }
        }
    }
    k.leave(&b.area(38.0, 48.4, 101.0, 50.0));
    for (x, h) in [(68.0, 39.0), (80.0, 45.0), (92.0, 36.0)] {
        k.leave_all(&mast(b.at(x, 58.0), b.y(h), 7.0, 74.0));
        let side = hull(b.at(x - 9.0, 55.5), b.x(17.0), b.y(4.4), 6.0);
        k.leave(&knifed(&side, 0.8, 3));
        k.cut(&bar(&[b.at(x - 8.6, 55.2), b.at(x + 8.0, 55.2)], 3.0));
        k.leave_all(&broken(
            b.x(x) - 4.0,
            b.x(x) + 3.0,
            b.y(61.0),
            b.y(84.0),
            dice,
        ));
    }
    o.leave(&b.area(63.0, 45.0, 65.6, 48.6));
}

fn snow_print(look: &Look) -> Vec<Pass> {
    let flecked = look.choice("sky") == "flecked";
    let turn = look.number as f32 * 11.0;
    vec![
        Pass::block("sky", ink(0x85_86_a2)).charged(move |p| {
            let base = 1.02 - 0.35 * step(0.0, 480.0, p[1]);
            if flecked && p[1] < 500.0 {
                let dab = smooth(p[0] / 7.5 + turn, p[1] / 7.5, 51);
                base * (1.05 - 0.95 * step(0.70, 0.80, dab))
            } else {
                base
            }
        }),
        Pass::block("ochre", ink(0xdc_a1_43)).from(Surface::Plank, 0.25),
        Pass::block("key", ink(0x1f_25_38)).charged(|_| 1.04),
    ]
}
