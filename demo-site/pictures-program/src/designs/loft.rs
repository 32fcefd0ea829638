//! No. 11, the sail loft.

use super::etched::{aquatint, etch, modelled, plate_print};
use super::prelude::*;
use crate::parts::figures::{Pose, figure};
use crate::parts::lines::{between, bitten, drawn, resin};

pub const ART: Art = Art {
    key: "11",
    cut: loft_cut,
    print: plate_print,
};

fn loft_cut(look: &Look, b: &Bench) -> Cuts {
    let dice = &mut Dice::new(b.seed);
    let mut k = b.cleared();
    let mut a = b.cleared();
    let end = b.at(54.0, 47.0);
    // Floorboards and roof run to one point at the far gable.
    let gable = b.line(&[
        [38.0, 62.0],
        [38.0, 40.0],
        [54.0, 24.0],
        [70.0, 40.0],
        [70.0, 62.0],
    ]);
    for i in 0..15 {
        let foot = b.at(-30.0 + 11.5 * i as f32, 101.0);
        let t = (foot[1] - b.y(62.0)) / (foot[1] - end[1]);
        k.leave(&bitten(
            &[foot, [mix(foot[0], end[0], t), b.y(62.0)]],
            1.6,
            dice,
        ));
    }
    let slope_left = b.line(&[
        [-2.0, 52.0],
        [-2.0, -2.0],
        [30.0, -2.0],
        [54.0, 24.0],
        [38.0, 40.0],
    ]);
    let slope_right = b.line(&[
        [102.0, 50.0],
        [102.0, -2.0],
        [72.0, -2.0],
        [54.0, 24.0],
        [70.0, 40.0],
    ]);
    let skylight = b.line(&[[8.0, 12.0], [24.0, 3.0], [37.0, 18.0], [22.0, 27.0]]);
    tone(&mut k, &slope_left, 2, 7.5, 0.09, dice);
    tone(&mut k, &slope_right, 3, 6.4, -0.10, dice);
    aquatint(&mut a, &slope_right, 0.62);
    aquatint(&mut a, &slope_left, 0.40);
    for plane in [&mut k, &mut a] {
        plane.cut(&skylight);
    }
    k.leave_all(&drawn(&skylight, 3.6, dice));
    for t in [0.33, 0.66] {
        let p = [
            mix(skylight[0][0], skylight[1][0], t),
            mix(skylight[0][1], skylight[1][1], t),
        ];
        let q = [
            mix(skylight[3][0], skylight[2][0], t),
            mix(skylight[3][1], skylight[2][1], t),
        ];
        k.leave(&bitten(&[p, q], 3.0, dice));
    }
    k.leave_all(&drawn(&gable, 2.4, dice));
    tone(&mut k, &gable, 1, 6.0, 0.25, dice);
    let far_window = b.area(50.0, 34.0, 58.0, 44.0);
    k.cut(&far_window);
    k.leave_all(&drawn(&far_window, 2.2, dice));
    trusses(&mut k, b, dice);
    // A slanting shaft of light from the skylight.
    let shaft = b.line(&[[10.0, 14.0], [36.0, 18.0], [64.0, 101.0], [16.0, 101.0]]);
    let floor = b.line(&[
        [38.0, 62.0],
        [70.0, 62.0],
        [102.0, 88.0],
        [102.0, 101.0],
        [-2.0, 101.0],
        [-2.0, 86.0],
    ]);
    tone(
        &mut k,
        &b.line(&[
            [70.0, 62.0],
            [102.0, 84.0],
            [102.0, 101.0],
            [62.0, 101.0],
            [52.0, 66.0],
        ]),
        2,
        8.0,
        0.02,
        dice,
    );
    aquatint(&mut a, &floor, 0.22);
    sails(&mut k, &mut a, b, dice);
    let mut light = b.cleared();
    light.tone(&shaft, 0.75);
    for (cell, l) in a.data.iter_mut().zip(&light.data) {
        *cell *= 1.0 - l;
    }
    bench(&mut k, b, dice);
    if look.has("aquatint") {
        resin(&mut a, b.seed);
        k.add(&a);
    }
    etch(b, k, look)
}

fn trusses(k: &mut Plane, b: &Bench, dice: &mut Dice) {
    for (left, right, foot, peak, wide) in [
        (38.0, 70.0, 40.5, 24.0, 5.0),
        (27.0, 82.0, 40.0, 11.0, 9.0),
        (6.0, 104.0, 38.0, -14.0, 17.0),
    ] {
        let beams = [
            vec![b.at(left, foot), b.at(right, foot)],
            vec![b.at(left, foot), b.at(54.0, peak)],
            vec![b.at(right, foot), b.at(54.0, peak)],
            vec![b.at(54.0, peak), b.at(54.0, foot)],
            vec![
                b.at(mix(left, 54.0, 0.5), mix(foot, peak, 0.5)),
                b.at(54.0, foot),
            ],
            vec![
                b.at(mix(right, 54.0, 0.5), mix(foot, peak, 0.5)),
                b.at(54.0, foot),
            ],
        ];
        for beam in beams {
            let body = bar(&beam, wide);
            k.cut(&body);
            k.leave_all(&drawn(&body, 1.8, dice));
            let under: Path = beam
                .iter()
                .map(|p| [p[0] + wide * 0.12, p[1] + wide * 0.25])
                .collect();
            shade(
                k,
                &bar(&under, wide * 0.5),
                Hatch {
                    turn: 0.14,
                    gap: 3.6,
                    width: 1.5,
                    stray: 0.3,
                },
                dice,
            );
        }
    }
}

fn sails(k: &mut Plane, a: &mut Plane, b: &Bench, dice: &mut Dice) {
    let hung = [
        (
            b.line(&[[66.0, 30.0], [70.0, 45.0], [66.0, 60.0], [70.0, 76.0]]),
            b.line(&[[95.0, 18.0], [90.0, 42.0], [97.0, 66.0], [93.0, 88.0]]),
            17,
        ),
        (
            b.line(&[[44.0, 36.0], [42.0, 48.0], [46.0, 58.0], [42.0, 68.0]]),
            b.line(&[[66.0, 32.0], [60.0, 46.0], [64.0, 60.0], [58.0, 71.0]]),
            11,
        ),
        (
            b.line(&[[-2.0, 40.0], [7.0, 52.0], [2.0, 68.0], [10.0, 82.0]]),
            b.line(&[[33.0, 38.0], [27.0, 54.0], [33.0, 70.0], [26.0, 80.0]]),
            15,
        ),
    ];
    for (i, (left, right, count)) in hung.into_iter().enumerate() {
        let (left, right) = (curve(&left), curve(&right));
        let mut cloth = left.clone();
        let foot = curve(&[
            left[left.len() - 1],
            [
                (left[left.len() - 1][0] + right[right.len() - 1][0]) / 2.0,
                left[left.len() - 1][1] + 34.0,
            ],
            right[right.len() - 1],
        ]);
        cloth.extend(foot);
        cloth.extend(right.iter().rev());
        k.cut(&cloth);
        a.cut(&cloth);
        k.leave_all(&drawn(&cloth, 2.6, dice));
        let folds = between(&left, &right, count, 2.2, dice);
        k.within(&cloth, |p| p.leave_all(&folds));
        // The side away from the skylight is darker.
        let shady: Path = right
            .iter()
            .map(|p| [p[0] - b.x(9.0), p[1]])
            .chain(right.iter().rev().copied())
            .collect();
        k.within(&cloth, |p| {
            tone(p, &shady, 2, 7.0, 0.02, dice);
            p.keep(&shady);
        });
        let deep = 0.32 + 0.12 * i as f32;
        let mut stop = Plane::cleared(a.window);
        aquatint(&mut stop, &shady, deep);
        stop.keep(&cloth);
        a.add(&stop);
        k.leave(&bar(&[left[0], right[0]], 4.0));
        k.leave(&bitten(
            &[left[0], [left[0][0] + 10.0, left[0][1] - b.y(30.0)]],
            2.0,
            dice,
        ));
        k.leave(&bitten(
            &[right[0], [right[0][0] - 8.0, right[0][1] - b.y(30.0)]],
            2.0,
            dice,
        ));
    }
}

fn bench(k: &mut Plane, b: &Bench, dice: &mut Dice) {
    let cloth = blob(&b.line(&[
        [14.0, 86.0],
        [26.0, 82.0],
        [44.0, 83.0],
        [60.0, 87.0],
        [72.0, 93.0],
        [64.0, 99.0],
        [40.0, 97.5],
        [22.0, 99.0],
        [12.0, 93.0],
    ]));
    k.cut(&cloth);
    k.leave_all(&drawn(&cloth, 2.4, dice));
    for i in 0..9 {
        let x = 17.0 + 6.0 * i as f32;
        let fold = b.curve(&[[x, 86.0], [x + 4.0, 90.0], [x + 1.0, 94.0], [x + 6.0, 98.0]]);
        k.within(&cloth, |p| p.leave(&bitten(&fold, 2.0, dice)));
    }
    for (x, y, h, pose, face) in [
        (30.0, 88.5, 150.0, Pose::Bent, 1.0),
        (57.0, 88.0, 138.0, Pose::Bent, -1.0),
    ] {
        for part in figure(b.at(x, y), h, pose, face) {
            modelled(k, &part, (3, 3.6, 0.12), 2.0, dice);
        }
    }
    let seat = b.area(22.0, 88.0, 66.0, 89.6);
    k.cut(&seat);
    tone(k, &seat, 2, 3.4, 0.0, dice);
    for x in [25.0, 62.0] {
        k.leave(&bitten(&b.line(&[[x, 89.6], [x - 0.6, 97.0]]), 4.5, dice));
    }
}
