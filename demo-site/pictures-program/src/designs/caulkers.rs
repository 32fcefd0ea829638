//! No. 13, the caulkers.

use super::etched::{aquatint, etch, modelled, plate_print};
use super::prelude::*;
use crate::parts::figures::{Pose, figure};
use crate::parts::lines::{between, bitten, drawn, resin};
use crate::parts::sky::{curls, smoke};

pub const ART: Art = Art {
    key: "13",
    cut: caulkers_cut,
    print: plate_print,
};

fn caulkers_cut(look: &Look, b: &Bench) -> Cuts {
    let dice = &mut Dice::new(b.seed);
    let mut k = b.cleared();
    let mut a = b.cleared();
    let top = b.curve(&[
        [-3.0, 4.0],
        [22.0, 10.0],
        [48.0, 12.0],
        [76.0, 7.0],
        [103.0, -4.0],
    ]);
    let keel = b.curve(&[
        [-3.0, 40.0],
        [18.0, 62.0],
        [42.0, 70.0],
        [68.0, 66.0],
        [86.0, 50.0],
        [98.0, 22.0],
        [103.0, -3.0],
    ]);
    let mut belly = top.clone();
    belly.extend(keel.iter().rev());
    for line in between(&top, &keel, 22, 3.0, dice) {
        k.leave(&line);
    }
    // Butts of the planks, trenails in pairs.
    for _ in 0..70 {
        let p = b.at(dice.between(0.0, 96.0), dice.between(10.0, 66.0));
        k.within(&belly, |q| {
            q.leave(&bar(&[[p[0], p[1] - 7.0], [p[0] + 4.0, p[1] + 7.0]], 2.0));
        });
    }
    k.within(&belly, |q| {
        q.leave_all(&stipple(
            b.bounds(0.0, 0.0, 100.0, 72.0),
            180,
            1.5,
            &mut Dice::new(b.seed ^ 9),
        ));
    });
    let under: Path = keel
        .iter()
        .copied()
        .chain(
            keel.iter()
                .rev()
                .map(|p| [p[0] - b.x(2.0), p[1] - b.y(22.0)]),
        )
        .collect();
    k.within(&belly, |q| {
        tone(q, &under, 3, 6.0, 0.10, dice);
        q.keep(&under);
    });
    let middle: Path = top
        .iter()
        .map(|p| [p[0], p[1] + b.y(16.0)])
        .chain(keel.iter().rev().copied())
        .collect();
    k.within(&belly, |q| {
        tone(q, &middle, 1, 8.0, 0.19, dice);
        q.keep(&middle);
    });
    let mut hold = Plane::cleared(b.window);
    aquatint(&mut hold, &belly, 0.28);
    aquatint(&mut hold, &under, 0.62);
    hold.keep(&belly);
    a.add(&hold);
    k.leave(&bitten(&top, 3.6, dice));
    k.leave(&bitten(&keel, 5.0, dice));
    // Ground and far sheds under the hull.
    let ground = b.curve(&[[-3.0, 86.0], [30.0, 83.0], [60.0, 84.0], [103.0, 82.0]]);
    k.leave(&bitten(&ground, 2.4, dice));
    for shed in [
        b.line(&[
            [76.0, 80.0],
            [76.0, 70.0],
            [84.0, 62.0],
            [92.0, 70.0],
            [92.0, 80.0],
        ]),
        b.line(&[[92.0, 80.0], [92.0, 66.0], [102.0, 60.0], [102.0, 80.0]]),
    ] {
        k.cut(&shed);
        k.leave_all(&drawn(&shed, 2.0, dice));
        tone(&mut k, &shed, 1, 6.0, 0.25, dice);
        aquatint(&mut a, &shed, 0.24);
    }
    for (foot, head, y) in [
        (6.0, 12.0, 52.0),
        (22.0, 25.0, 65.0),
        (40.0, 40.0, 70.0),
        (60.0, 56.0, 69.0),
        (78.0, 70.0, 64.0),
    ] {
        let prop = b.bar(&[[foot, 88.0], [head, y]], 13.0);
        k.cut(&prop);
        a.cut(&prop);
        tone(
            &mut k,
            &b.bar(&[[foot + 0.5, 88.0], [head + 0.5, y]], 6.0),
            2,
            3.4,
            0.2,
            dice,
        );
        k.leave_all(&drawn(&prop, 2.6, dice));
        tone(
            &mut k,
            &b.area(foot - 2.6, 87.0, foot + 2.8, 90.0),
            2,
            3.6,
            0.0,
            dice,
        );
    }
    // The staging and the four at work.
    let plank = b.line(&[[10.0, 76.0], [64.0, 77.5], [64.0, 79.2], [10.0, 77.8]]);
    k.cut(&plank);
    k.leave_all(&drawn(&plank, 2.6, dice));
    for x in [13.0, 30.0, 48.0, 61.0] {
        k.leave(&bitten(&b.line(&[[x, 77.6], [x - 1.6, 88.0]]), 4.2, dice));
        k.leave(&bitten(&b.line(&[[x, 77.6], [x + 1.8, 88.0]]), 4.2, dice));
    }
    for (x, y, h, pose, face) in [
        (17.0, 76.2, 104.0, Pose::Swinging, 1.0),
        (33.0, 76.8, 98.0, Pose::Swinging, -1.0),
        (50.0, 77.2, 100.0, Pose::Bent, 1.0),
        (71.0, 89.0, 112.0, Pose::Bent, 1.0),
    ] {
        for part in figure(b.at(x, y), h, pose, face) {
            a.cut(&outline(&part, 5.0));
            k.cut(&outline(&part, 5.0));
            a.cut(&part);
            modelled(&mut k, &part, (3, 3.2, 0.13), 1.8, dice);
        }
    }
    pitch_pot(&mut k, &mut a, b, dice);
    for i in 0..90 {
        let p = b.at(dice.between(-2.0, 100.0), dice.between(87.0, 100.0));
        k.leave(&bitten(
            &[p, [p[0] + dice.between(10.0, 46.0), p[1] + dice.about(3.0)]],
            1.6,
            dice,
        ));
        if i % 6 == 0 {
            k.leave(&bitten(
                &curve(&[p, [p[0] + 7.0, p[1] - 5.0], [p[0] + 16.0, p[1]]]),
                2.0,
                dice,
            ));
        }
    }
    // These tones were bitten from the first.
    resin(&mut a, b.seed);
    k.add(&a);
    foul(&mut k, b, look.stage("foul"));
    etch(b, k, look)
}

fn pitch_pot(k: &mut Plane, a: &mut Plane, b: &Bench, dice: &mut Dice) {
    let plume = [
        b.at(83.5, 80.0),
        b.at(86.0, 72.0),
        b.at(84.0, 60.0),
        b.at(90.0, 46.0),
        b.at(87.0, 32.0),
    ];
    for puff in smoke(&plume, 9.0, 46.0, dice) {
        k.cut(&puff);
        a.cut(&puff);
    }
    k.leave_all(&curls(&plume, 10.0, 44.0, 26, dice));
    let pot = blob(&b.line(&[
        [78.5, 82.5],
        [83.5, 81.2],
        [88.5, 82.5],
        [88.0, 87.5],
        [83.5, 90.0],
        [79.0, 87.5],
    ]));
    modelled(k, &pot, (3, 3.0, 0.08), 3.0, dice);
    for (x0, x1) in [(77.0, 83.5), (90.0, 83.5), (83.5, 83.5)] {
        k.leave(&bitten(&b.line(&[[x0, 94.0], [x1, 74.0]]), 3.2, dice));
    }
    for i in 0..12 {
        let x = 79.0 + 0.8 * i as f32;
        let p = b.at(x, 94.5);
        let flame = curve(&[
            p,
            [p[0] + dice.about(8.0), p[1] - 14.0],
            [p[0] + dice.about(6.0), p[1] - dice.between(20.0, 34.0)],
        ]);
        k.leave(&bitten(&flame, 2.2, dice));
    }
    for (p, q) in [([76.0, 95.0], [91.0, 93.6]), ([78.0, 93.2], [90.0, 95.8])] {
        k.leave(&bitten(&b.line(&[p, q]), 6.0, dice));
    }
}

/// Foul biting: acid that came through the ground, first in spots, then in a patch.
fn foul(k: &mut Plane, b: &Bench, stage: usize) {
    let dice = &mut Dice::new(b.seed ^ 0xF0);
    let area = b.bounds(86.5, 2.0, 97.5, 11.5);
    if stage >= 1 {
        k.leave_all(&stipple(area, 46, 1.9, dice));
    }
    if stage >= 2 {
        let mut patch = Plane::cleared(k.window);
        aquatint(
            &mut patch,
            &ellipse(
                (area[0] + area[2]) / 2.0,
                (area[1] + area[3]) / 2.0,
                b.x(5.0),
                b.y(4.2),
            ),
            0.7,
        );
        patch.weigh(|p| cloud(p[0] / 9.0, p[1] / 9.0, 3, 77) * 1.5);
        resin(&mut patch, b.seed ^ 4);
        k.add(&patch);
        k.leave_all(&stipple(area, 90, 2.2, dice));
    }
}
