//! No. 15, the dredger in fog.

use super::etched::{aquatint, etch, inked_plate};
use super::prelude::*;
use crate::engine::shape::reflected;
use crate::parts::harbour::crane;
use crate::parts::lines::{bitten, drawn, resin};
use crate::parts::sea::ripples;

pub const ART: Art = Art {
    key: "15",
    cut: dredger_cut,
    print: fog_print,
};

fn fog_print(look: &Look) -> Vec<Pass> {
    inked_plate(look, [300.0, 140.0])
}

fn dredger_cut(look: &Look, b: &Bench) -> Cuts {
    let dice = &mut Dice::new(b.seed);
    let mut k = b.cleared();
    // Fog: three tones, their edges stopped out in long soft banks.
    let mut a = b.cleared();
    aquatint(&mut a, &b.area(-2.0, -2.0, 102.0, 102.0), 0.13);
    aquatint(
        &mut a,
        &b.curve(&[
            [-4.0, 30.0],
            [16.0, 26.0],
            [40.0, 31.0],
            [66.0, 27.0],
            [90.0, 31.0],
            [104.0, 28.0],
            [104.0, 70.0],
            [70.0, 73.0],
            [34.0, 69.0],
            [-4.0, 72.0],
        ]),
        0.24,
    );
    aquatint(
        &mut a,
        &b.curve(&[
            [-4.0, 58.0],
            [20.0, 55.0],
            [50.0, 57.0],
            [78.0, 54.0],
            [104.0, 57.0],
            [104.0, 104.0],
            [-4.0, 104.0],
        ]),
        0.36,
    );
    aquatint(
        &mut a,
        &b.curve(&[
            [-4.0, 84.0],
            [26.0, 81.0],
            [60.0, 85.0],
            [104.0, 82.0],
            [104.0, 104.0],
            [-4.0, 104.0],
        ]),
        0.48,
    );
    let mut bank = a.softened((b.window.scale * 9.0) as usize + 1);
    let hull = b.line(&[
        [20.0, 55.0],
        [24.0, 53.5],
        [66.0, 53.5],
        [71.0, 51.5],
        [69.0, 60.0],
        [66.0, 64.0],
        [26.0, 64.0],
        [22.5, 61.0],
    ]);
    let house = b.line(&[[30.0, 53.8], [30.0, 46.0], [40.0, 46.0], [40.0, 53.8]]);
    let frame = [
        b.line(&[
            [46.0, 54.0],
            [50.5, 30.5],
            [52.5, 30.5],
            [57.0, 54.0],
            [54.6, 54.0],
            [51.5, 36.0],
            [48.4, 54.0],
        ]),
        b.line(&[[33.0, 46.5], [33.6, 31.0], [37.4, 31.0], [38.0, 46.5]]),
        b.bar(&[[51.5, 33.0], [79.0, 66.0]], 15.0),
        b.bar(&[[51.5, 31.5], [66.0, 53.0]], 2.4),
        b.bar(&[[51.0, 31.0], [38.0, 47.0]], 2.2),
        b.bar(&[[51.0, 31.0], [25.0, 54.0]], 2.2),
        b.bar(
            &[[60.0, 53.0], [60.0, 44.0], [66.0, 44.0], [66.0, 53.0]],
            3.0,
        ),
        b.bar(&[[24.0, 54.0], [24.0, 40.0]], 3.0),
    ];
    let mut dark = b.cleared();
    aquatint(&mut dark, &hull, 0.93);
    aquatint(&mut dark, &house, 0.86);
    for part in &frame {
        aquatint(&mut dark, part, 0.88);
    }
    for i in 0..15 {
        let t = i as f32 / 14.0;
        let p = b.at(mix(51.0, 78.0, t) + 1.2, mix(31.6, 65.0, t) - 0.9);
        aquatint(
            &mut dark,
            &[
                [p[0] - 5.0, p[1] - 8.0],
                [p[0] + 11.0, p[1] - 3.0],
                [p[0] + 8.0, p[1] + 8.0],
                [p[0] - 4.0, p[1] + 5.0],
            ],
            0.9,
        );
    }
    for x in [32.0, 36.0] {
        dark.cut(&b.area(x, 48.0, x + 1.8, 50.4));
    }
    // The smoke hangs low and thins out.
    let mut smoke = b.cleared();
    for i in 0..14 {
        let t = i as f32 / 13.0;
        let p = b.at(35.5 - 26.0 * t, 29.0 - 11.0 * t * t + dice.about(1.5));
        aquatint(
            &mut smoke,
            &ellipse(p[0], p[1], 16.0 + 40.0 * t, 11.0 + 15.0 * t),
            0.62 * (1.0 - 0.75 * t),
        );
    }
    let smoke = smoke.softened((b.window.scale * 5.0) as usize + 1);
    // The reflection, straight below and softened.
    let mut mirror = b.cleared();
    for shape in std::iter::once(&hull)
        .chain(std::iter::once(&house))
        .chain(&frame[..2])
    {
        let down = reflected(shape, b.y(64.5), 0.9);
        aquatint(&mut mirror, &down, 0.62);
    }
    let streaks = ripples(b.below(66.0), 120, 90.0, 5.0, dice);
    mirror.cut_all(&streaks);
    let mirror = mirror.softened((b.window.scale * 2.0) as usize + 1);
    let mut far = b.cleared();
    if look.has_or("crane", look.state == 0) {
        let crane = crane(b.at(81.5, 50.0), b.at(87.5, 31.0), b.y(9.0), 7.5);
        for line in &crane.lines {
            aquatint(&mut far, line, 0.52);
        }
        for part in &crane.body {
            aquatint(&mut far, part, 0.48);
        }
        aquatint(
            &mut far,
            &b.line(&[[76.0, 56.0], [76.0, 54.4], [95.0, 53.8], [95.0, 56.4]]),
            0.40,
        );
        far = far.softened(1);
    }
    for other in [&smoke, &mirror, &far, &dark] {
        for (x, o) in bank.data.iter_mut().zip(&other.data) {
            *x = x.max(*o);
        }
    }
    resin(&mut bank, b.seed);
    k.add(&bank);
    for part in std::iter::once(&hull).chain(std::iter::once(&house)) {
        k.leave_all(&drawn(part, 1.8, dice));
    }
    for _ in 0..46 {
        let p = b.at(dice.between(0.0, 90.0), dice.between(67.0, 99.0));
        k.leave(&bitten(
            &[p, [p[0] + dice.between(20.0, 90.0), p[1] + dice.about(1.0)]],
            1.4,
            dice,
        ));
    }
    if look.has_or("scoring", look.state >= 2) {
        k.leave(&bitten(&b.line(&[[0.5, 1.0], [99.5, 99.0]]), 4.6, dice));
        k.leave(&bitten(&b.line(&[[99.5, 1.5], [0.5, 98.5]]), 4.6, dice));
        k.leave(&bitten(&b.line(&[[2.0, 1.0], [99.5, 97.0]]), 2.0, dice));
    }
    etch(b, k, look)
}
