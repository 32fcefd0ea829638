//! No. 1, the ice.

use super::prelude::*;
use crate::parts::boats::mast;
use crate::parts::houses::{Gable, front, row, window};
use crate::parts::land::floe;
use crate::parts::sea::ripples;

pub const ART: Art = Art {
    key: "1",
    cut: ice_cut,
    print: ice_print,
};

fn ice_cut(look: &Look, b: &Bench) -> Cuts {
    let dice = &mut Dice::new(b.seed);
    let mut k = b.block();
    // The sky in level gouge marks, closer towards the roofs, where it is paler.
    for i in 0..30 {
        let t = i as f32 / 29.0;
        let y = b.y(1.5 + 41.0 * t);
        k.cut_all(&pecks(
            [-20.0, y, b.w, y + 8.0],
            5 + (15.0 * t) as usize,
            70.0 + 60.0 * t,
            0.0,
            dice,
        ));
    }
    for (x, h, w) in [(14.0, 33.0, 5.0), (22.0, 36.0, 5.6), (31.0, 27.0, 4.4)] {
        k.leave_all(&mast(b.at(x, 47.0), b.y(h), w, 46.0));
    }
    k.leave_all(&row(
        [-10.0, b.x(58.0)],
        b.y(49.0),
        b.y(11.0),
        b.x(9.0),
        dice,
    ));
    for i in 0..13 {
        let at = b.at(2.0 + 4.3 * i as f32, 45.6 + dice.about(0.6));
        k.cut(&rect(at[0], at[1], 6.0, 9.0));
    }
    tollhouse(&mut k, b, dice);
    // Water, then the steps over it, then ice.
    k.leave(&b.area(-2.0, 49.0, 62.0, 101.0));
    k.cut_all(&ripples(
        b.bounds(0.0, 50.0, 50.0, 72.0),
        46,
        70.0,
        3.6,
        dice,
    ));
    for i in 0..8 {
        let i = i as f32;
        let y = 47.0 + i * 3.7;
        let left = 63.0 - i * 4.7;
        k.leave(&b.line(&[
            [left, y],
            [101.0, y - 1.6],
            [101.0, y + 4.0],
            [left - 2.0, y + 4.0],
        ]));
        k.cut(&knifed(
            &b.line(&[
                [left, y],
                [101.0, y - 1.6],
                [101.0, y - 0.1],
                [left - 1.7, y + 1.6],
            ]),
            1.6,
            b.seed,
        ));
        let riser = b.line(&[
            [left - 1.5, y + 1.8],
            [101.0, y],
            [101.0, y + 1.9],
            [left - 2.0, y + 3.7],
        ]);
        let marks = pecks(bounds(&riser), 44, 13.0, 0.26, dice);
        k.cut_within(&riser, |p| p.leave_all(&marks));
    }
    k.leave(&b.area(-2.0, 77.0, 102.0, 101.0));
    k.cut_all(&ripples(b.below(76.0), 60, 90.0, 3.4, dice));
    for (x, y, rx, ry) in [
        (12.0, 63.0, 8.0, 2.4),
        (27.0, 71.0, 9.0, 3.0),
        (7.0, 76.0, 9.0, 3.2),
        (46.0, 80.5, 13.0, 3.6),
        (22.0, 84.5, 13.0, 4.2),
        (76.0, 83.0, 12.0, 3.6),
        (60.0, 91.0, 17.0, 4.8),
        (14.0, 95.0, 15.0, 4.6),
        (90.0, 94.0, 12.0, 4.4),
    ] {
        ice_plate(&mut k, &floe(b.at(x, y), b.x(rx), b.y(ry), dice), dice);
    }
    match look.stage("corner") {
        0 => {}
        1 => k.cut(&knifed(
            &[
                [-9.0, -9.0],
                [26.0, -9.0],
                [20.0, 9.0],
                [8.0, 24.0],
                [-9.0, 27.0],
            ],
            4.0,
            8,
        )),
        _ => k.cut(&knifed(
            &[
                [-9.0, -9.0],
                [94.0, -9.0],
                [80.0, 8.0],
                [44.0, 38.0],
                [30.0, 62.0],
                [-9.0, 84.0],
            ],
            6.0,
            8,
        )),
    }
    b.cuts([("block", k)])
}

fn ice_plate(k: &mut Plane, plate: &[Pt], dice: &mut Dice) {
    let low = moved(plate, 4.0, 13.0);
    k.cut(&low);
    shade(
        k,
        &low,
        Hatch {
            turn: 0.22,
            gap: 5.5,
            width: 2.6,
            stray: 0.6,
        },
        dice,
    );
    k.leave(&outline(plate, 4.0));
    k.cut(&knifed(plate, 1.4, 3));
    let marks = pecks(bounds(plate), 7, 34.0, 0.02, dice);
    k.within(plate, |p| p.leave_all(&marks));
}

fn tollhouse(k: &mut Plane, b: &Bench, dice: &mut Dice) {
    let house = front(
        b.x(57.0),
        b.x(97.0),
        b.y(22.0),
        b.y(6.0),
        b.y(49.5),
        Gable::Stepped,
    );
    k.leave(&outline(&house, 9.0));
    k.cut(&knifed(&house, 1.8, b.seed));
    let shadow = b.line(&[[84.0, 4.0], [101.0, 4.0], [101.0, 50.0], [88.0, 50.0]]);
    shade_part(
        k,
        &house,
        &shadow,
        Hatch {
            turn: 0.24,
            gap: 8.0,
            width: 4.4,
            stray: 0.8,
        },
        dice,
    );
    let joints = pecks(b.bounds(58.0, 10.0, 84.0, 47.0), 26, 20.0, 0.0, dice);
    k.within(&house, |p| p.leave_all(&joints));
    for x in [64.0, 78.0] {
        let (pane, bars) = window(b.x(x), b.y(25.5), b.x(9.0), b.y(9.0));
        k.leave(&outline(&pane, 6.0));
        k.leave(&pane);
        k.cut_all(&bars);
    }
    k.leave(&ellipse(b.x(77.0), b.y(16.0), 20.0, 20.0));
    k.cut(&ellipse(b.x(77.0), b.y(16.0), 12.0, 12.0));
    let mut door = b.curve(&[
        [70.0, 41.5],
        [72.5, 38.5],
        [77.0, 37.2],
        [81.5, 38.5],
        [84.0, 41.5],
    ]);
    door.extend(b.line(&[[84.0, 50.0], [70.0, 50.0]]));
    k.leave(&door);
    k.cut_all(&pecks(
        b.bounds(71.0, 40.0, 83.0, 49.0),
        22,
        24.0,
        0.25,
        dice,
    ));
    // The bracket lamp, dark on the pale sky.
    k.cut(&ellipse(b.x(50.5), b.y(31.0), 40.0, 40.0));
    k.leave(&b.bar(&[[57.0, 27.0], [50.5, 27.5]], 6.0));
    k.leave(&bar(
        &b.curve(&[[57.0, 31.0], [54.0, 29.5], [51.5, 27.5]]),
        4.0,
    ));
    k.leave(&b.line(&[[48.4, 29.4], [52.6, 29.4], [51.8, 34.0], [49.2, 34.0]]));
    k.cut(&b.line(&[[49.4, 30.0], [51.6, 30.0], [51.1, 33.2], [49.9, 33.2]]));
    k.leave(&b.line(&[[47.9, 29.4], [50.5, 27.4], [53.1, 29.4]]));
}

fn ice_print(_: &Look) -> Vec<Pass> {
    vec![
        Pass::block("block", ink(0x1d_2a_44))
            .from(Surface::Lino, 0.5)
            .charged(|_| 1.05),
    ]
}
