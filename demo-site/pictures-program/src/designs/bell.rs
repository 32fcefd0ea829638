//! No. 19, the fog bell.

use super::prelude::*;
use crate::parts::sea::ripples;

pub const ART: Art = Art {
    key: "19",
    cut: bell_cut,
    print: bell_print,
};

fn bell_cut(_: &Look, b: &Bench) -> Cuts {
    let dice = &mut Dice::new(b.seed);
    let mut f = b.block();
    // The fog is thinner in long lens-shaped patches.
    let streaks = [
        (-10.0, 66.0, 70.0, 22.0),
        (50.0, 74.0, 60.0, 26.0),
        (-14.0, 84.0, 90.0, 24.0),
        (40.0, 91.0, 70.0, 20.0),
        (60.0, 38.0, 50.0, 14.0),
        (-8.0, 30.0, 40.0, 14.0),
    ];
    cut_streaks(&mut f, b, &streaks, 2.4, dice);
    let mut k = b.cleared();
    let timber = |p: Pt, q: Pt, w: f32| b.bar(&[p, q], w);
    let mut beams = vec![
        timber([38.0, 22.0], [33.0, 80.0], 27.0),
        timber([62.0, 22.0], [67.0, 80.0], 27.0),
        timber([33.0, 24.0], [67.0, 24.0], 29.0),
        timber([36.5, 46.0], [63.5, 46.0], 15.0),
        timber([38.0, 38.0], [45.0, 26.0], 13.0),
        timber([62.0, 38.0], [55.0, 26.0], 13.0),
    ];
    for x in [22.0, 42.0, 58.0, 80.0] {
        beams.push(timber([x, 70.0], [x + (x - 50.0) * 0.06, 101.0], 24.0));
    }
    beams.push(timber([12.0, 70.5], [90.0, 70.5], 33.0));
    beams.push(timber([22.0, 92.0], [42.0, 76.0], 11.0));
    beams.push(timber([58.0, 76.0], [80.0, 92.0], 11.0));
    beams.push(timber([18.0, 86.0], [84.0, 86.0], 12.0));
    for beam in &beams {
        k.cut(&outline(beam, 7.0));
        f.leave(beam);
        k.leave(&knifed(beam, 1.4, 3));
        // Light from the left along each timber, and its grain.
        let m = bounds(beam);
        let upright = m[3] - m[1] > m[2] - m[0];
        let cuts = if upright {
            pecks(
                [m[0] + 3.0, m[1], m[0] + (m[2] - m[0]) * 0.42, m[3]],
                ((m[3] - m[1]) / 9.0) as usize,
                34.0,
                0.25,
                dice,
            )
        } else {
            pecks(
                [m[0], m[1] + 3.0, m[2], m[1] + (m[3] - m[1]) * 0.45],
                ((m[2] - m[0]) / 9.0) as usize,
                34.0,
                0.0,
                dice,
            )
        };
        k.cut_within(beam, |p| p.leave_all(&cuts));
    }
    // The roof over the bell.
    let roof = b.line(&[[28.0, 23.0], [40.0, 16.0], [60.0, 16.0], [72.0, 23.0]]);
    k.cut(&outline(&roof, 7.0));
    k.leave(&knifed(&roof, 1.2, 4));
    k.cut_all(&pecks(
        b.bounds(32.0, 17.0, 66.0, 22.0),
        22,
        40.0,
        0.0,
        dice,
    ));
    bell(&mut k, b, dice);
    for (x, side) in [(72.0, 0.0), (77.0, 0.0)] {
        k.leave(&b.bar(&[[x, 72.0], [x + 1.5 + side, 101.0]], 5.4));
    }
    for i in 0..9 {
        let y = 75.0 + 3.2 * i as f32;
        k.leave(&b.bar(
            &[[72.2 + 0.1 * i as f32, y], [77.2 + 0.1 * i as f32, y]],
            4.2,
        ));
    }
    perched(&mut k, b.at(46.0, 16.0), b.x(9.0));
    k.leave_all(&ripples(b.below(90.0), 26, 90.0, 4.0, dice));
    // Another pier head, nearly gone.
    for x in [4.0, 9.0, 14.0] {
        f.leave(&b.line(&[[x, 56.0], [x + 1.6, 56.0], [x + 1.6, 72.0], [x, 72.0]]));
    }
    b.cuts([("fog", f), ("key", k)])
}

fn bell(k: &mut Plane, b: &Bench, dice: &mut Dice) {
    let mut body = b.curve(&[
        [38.5, 57.0],
        [40.6, 52.0],
        [41.6, 44.0],
        [44.0, 37.5],
        [47.0, 34.8],
        [53.0, 34.8],
        [56.0, 37.5],
        [58.4, 44.0],
        [59.4, 52.0],
        [61.5, 57.0],
    ]);
    body.extend(b.curve(&[[61.5, 57.0], [50.0, 59.2], [38.5, 57.0]]));
    k.cut(&outline(&body, 9.0));
    k.leave(&knifed(&body, 1.0, 3));
    let glint = b.curve(&[
        [42.6, 53.0],
        [43.4, 45.0],
        [46.0, 38.4],
        [48.0, 36.6],
        [46.4, 42.0],
        [45.4, 53.6],
    ]);
    k.cut_within(&glint, |p| {
        p.leave_all(&pecks(bounds(&glint), 46, 22.0, 0.26, dice));
    });
    for y in [50.4, 52.2] {
        k.cut(&bar(
            &b.curve(&[[40.6, y], [50.0, y + 1.8], [59.4, y]]),
            3.0,
        ));
    }
    k.leave(&b.bar(&[[50.0, 26.0], [50.0, 35.0]], 10.0));
    k.leave(&b.area(45.6, 32.4, 54.4, 34.6));
    k.leave(&b.bar(&[[50.0, 58.0], [50.0, 61.5]], 6.0));
    k.leave(&ellipse(b.x(50.0), b.y(62.0), 11.0, 11.0));
    k.leave(&bar(
        &b.curve(&[[50.0, 62.0], [57.0, 65.0], [64.0, 67.0]]),
        2.4,
    ));
}

/// A gull that has folded its wings.
fn perched(k: &mut Plane, at: Pt, s: f32) {
    let put = |points: &[Pt]| placed(points, at[0], at[1], s);
    let body = blob(&put(&[
        [-0.42, -0.62],
        [-0.30, -0.74],
        [-0.16, -0.66],
        [-0.08, -0.46],
        [0.20, -0.40],
        [0.66, -0.20],
        [0.20, -0.10],
        [-0.10, -0.10],
        [-0.30, -0.30],
        [-0.36, -0.48],
    ]));
    k.cut(&outline(&body, 4.0));
    outlined(k, &body, 3.2);
    k.leave(&put(&[[-0.40, -0.60], [-0.58, -0.55], [-0.40, -0.53]]));
    k.leave(&curve(&put(&[
        [-0.05, -0.36],
        [0.25, -0.36],
        [0.68, -0.20],
        [0.30, -0.22],
        [0.05, -0.26],
    ])));
    k.leave(&bar(&put(&[[0.0, -0.10], [0.0, 0.0]]), 2.6));
    k.leave(&bar(&put(&[[0.10, -0.10], [0.10, 0.0]]), 2.6));
}

fn bell_print(look: &Look) -> Vec<Pass> {
    vec![
        Pass::block("fog", ink(0xb5_a9_9b)).charged(evenly(
            look,
            "fog-tone",
            0.9,
            Fall {
                from: 120.0,
                to: 1000.0,
                rest: 0.15,
            },
        )),
        Pass::block("key", ink(0x3a_3a_3e)).charged(|_| 0.98),
    ]
}
