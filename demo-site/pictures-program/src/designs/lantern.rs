//! No. r1, rejected: cut in a stiffer hand than the others.

use super::prelude::*;
use crate::parts::harbour::stones;

pub const ART: Art = Art {
    key: "r1",
    cut: lantern_cut,
    print: lantern_print,
};

fn lantern_cut(_: &Look, b: &Bench) -> Cuts {
    let dice = &mut Dice::new(b.seed);
    let tower = b.line(&[[36.0, 84.0], [38.5, 36.0], [61.5, 36.0], [64.0, 84.0]]);
    let mut t = b.cleared();
    t.leave(&b.area(0.0, 0.0, 100.0, 100.0));
    t.cut(&b.line(&[[36.0, 84.0], [38.5, 36.0], [52.0, 36.0], [52.0, 84.0]]));
    t.cut(&b.area(42.0, 21.0, 58.0, 32.0));
    let mut k = b.cleared();
    // Sky and water in ruled level lines.
    let mut y = 5.0;
    while y < 70.0 {
        k.leave(&b.bar(&[[3.0, y], [97.0, y]], 3.0));
        y += 1.55;
    }
    let lantern = b.line(&[
        [40.0, 36.0],
        [40.0, 33.6],
        [42.0, 33.0],
        [42.0, 20.6],
        [39.5, 20.6],
        [50.0, 10.0],
        [60.5, 20.6],
        [58.0, 20.6],
        [58.0, 33.0],
        [60.0, 33.6],
        [60.0, 36.0],
    ]);
    for shape in [&tower, &lantern] {
        k.cut(&outline(shape, 8.0));
        outlined(&mut k, shape, 6.0);
    }
    let joints = stones(b.bounds(34.0, 37.0, 66.0, 84.0), 34.0, 3.4, dice);
    k.within(&tower, |p| p.leave_all(&joints));
    let dark = b.line(&[[55.0, 36.0], [62.0, 36.0], [65.0, 84.0], [55.0, 84.0]]);
    shade_part(
        &mut k,
        &tower,
        &dark,
        Hatch {
            turn: 0.0,
            gap: 9.0,
            width: 5.0,
            stray: 0.1,
        },
        dice,
    );
    k.leave(&b.line(&[[39.5, 20.6], [50.0, 10.0], [60.5, 20.6]]));
    k.leave(&b.bar(&[[50.0, 10.0], [50.0, 5.4]], 6.0));
    for x in [45.3, 50.0, 54.7] {
        k.leave(&b.bar(&[[x, 21.0], [x, 33.0]], 4.0));
    }
    k.leave(&b.area(38.0, 33.4, 62.0, 36.0));
    for y in [45.0, 58.0] {
        k.leave(&b.area(46.4, y, 50.4, y + 6.0));
    }
    k.leave(&b.line(&[
        [45.0, 84.0],
        [45.0, 74.0],
        [48.5, 71.5],
        [52.0, 74.0],
        [52.0, 84.0],
    ]));
    k.cut(&b.area(3.0, 70.0, 34.0, 84.0));
    k.leave(&b.area(3.0, 69.4, 37.0, 70.4));
    k.leave(&b.area(63.0, 69.4, 97.0, 70.4));
    for side in [(3.0, 36.4), (63.8, 97.0)] {
        let mut y = 72.0;
        while y < 84.0 {
            k.leave(&b.bar(&[[side.0, y], [side.1, y]], 5.0));
            y += 1.8;
        }
    }
    let quay = b.area(3.0, 83.6, 97.0, 97.0);
    k.cut(&quay);
    k.leave_all(&stones(b.bounds(3.0, 83.6, 97.0, 97.0), 40.0, 4.0, dice));
    k.leave(&outline(&quay, 6.0));
    // A heavy border, which no accepted print has.
    for edge in [
        b.area(0.0, 0.0, 100.0, 2.6),
        b.area(0.0, 97.4, 100.0, 100.0),
        b.area(0.0, 0.0, 3.8, 100.0),
        b.area(96.2, 0.0, 100.0, 100.0),
    ] {
        k.leave(&edge);
    }
    b.cuts([("tone", t), ("key", k)])
}

fn lantern_print(_: &Look) -> Vec<Pass> {
    vec![
        Pass::block("tone", ink(0xa2_9c_6a)).from(Surface::PlankUpright, 0.4),
        Pass::block("key", ink(0x22_22_20)).from(Surface::EndGrain, 0.4),
    ]
}
