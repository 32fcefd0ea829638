//! No. 7, "Gant Light, Rising Wind": key, dusk, sea, red and lamp blocks.

use super::prelude::*;
use super::shared::under_sail;
use crate::engine::ink::body_ink;
use crate::engine::shape::{inside, placed_xy};
use crate::parts::birds::gull;
use crate::parts::boats::{Sailer, cutter, lugger};
use crate::parts::houses::tiles;
use crate::parts::sea::{Breakers, breakers, broken, far};
use crate::parts::sky::{streak, wind};

pub const ART: Art = Art {
    key: "7",
    cut,
    print,
};

/// The headland's outline, in percent of the image.
const HEADLAND: [Pt; 17] = [
    [59.0, 60.5],
    [61.5, 58.0],
    [64.0, 55.5],
    [66.0, 52.0],
    [69.0, 50.5],
    [72.0, 46.0],
    [75.5, 44.0],
    [80.0, 43.2],
    [88.0, 42.4],
    [95.0, 40.0],
    [101.0, 38.8],
    [101.0, 75.0],
    [90.0, 73.5],
    [80.0, 72.4],
    [74.0, 70.8],
    [69.0, 66.5],
    [63.0, 62.8],
];

/// Everything that more than one block must agree on.
struct Scene {
    headland: Path,
    tower: Path,
    bands: [Path; 2],
    gallery: Vec<Path>,
    lantern: Path,
    house: Path,
    roof: Path,
    windows: [Path; 2],
    cutter: Sailer,
    smack: Sailer,
    far_boat: Sailer,
    waves: [Breakers; 3],
    gulls: Vec<Path>,
    planks: Vec<Path>,
    post: Path,
    buoy: Buoy,
    horizon: f32,
}

struct Buoy {
    body: Path,
    stripes: Vec<Path>,
    staff: Vec<Path>,
}

fn scene(b: &Bench, look: &Look) -> Scene {
    let dice = &mut Dice::new(b.seed);
    let waves = [
        breakers([-20.0, 1020.0], b.y(68.0), 92.0, 24.0, dice),
        breakers([-40.0, 1040.0], b.y(79.5), 165.0, 48.0, dice),
        breakers([90.0, 1080.0], b.y(94.5), 285.0, 88.0, dice),
    ];
    let places: [(Pt, f32, f32, f32); 5] = [
        ([47.0, 24.0], 62.0, 0.9, -0.03),
        ([55.5, 32.0], 44.0, 0.5, 0.05),
        ([39.0, 34.5], 36.0, 1.0, 0.02),
        ([60.0, 19.5], 34.0, 0.7, -0.05),
        ([31.5, 20.5], 40.0, 0.55, 0.06),
    ];
    let gulls = places
        .iter()
        .take(look.count("gulls", 3))
        .map(|&(at, span, lift, turn)| gull(b.at(at[0], at[1]), span, lift, turn))
        .collect();
    let planks = (0..7)
        .map(|i| {
            let t = i as f32 / 6.0;
            // Planks lie across the jetty, nearer ones broader; they run off the left edge.
            let y = mix(81.0, 99.5, t * t * 0.35 + t * 0.65);
            let right = mix(4.0, 23.5, t);
            knifed(
                &b.line(&[
                    [-1.0, y - 0.8],
                    [right, y - 0.2],
                    [right + 1.6, y + 1.6 + t],
                    [-1.0, y + 1.8 + t],
                ]),
                1.4,
                7,
            )
        })
        .collect();
    let x = b.x(65.5);
    let top = b.y(70.5);
    let foot = b.y(82.5);
    let lean = 5.0;
    let buoy = Buoy {
        body: knifed(
            &curve(&[
                [x - 13.0 + lean, top + 26.0],
                [x - 19.0, foot - 16.0],
                [x - 15.0, foot],
                [x + 16.0, foot],
                [x + 21.0, foot - 16.0],
                [x + 15.0 + lean, top + 26.0],
            ]),
            0.8,
            3,
        ),
        stripes: vec![
            vec![
                [x - 14.0 + lean, top + 27.0],
                [x + 16.0 + lean, top + 27.0],
                [x + 19.0, top + 41.0],
                [x - 18.0, top + 41.0],
            ],
            vec![
                [x - 19.0, top + 56.0],
                [x + 21.0, top + 56.0],
                [x + 18.0, top + 70.0],
                [x - 17.0, top + 70.0],
            ],
        ],
        staff: vec![
            bar(&[[x + lean, top + 27.0], [x + 2.0 * lean, top]], 3.4),
            ellipse(x + 2.0 * lean, top + 2.0, 7.0, 6.0),
            bar(
                &[[x - 9.0 + lean, top + 27.0], [x + 1.7 * lean, top + 6.0]],
                1.8,
            ),
            bar(
                &[[x + 12.0 + lean, top + 27.0], [x + 2.1 * lean, top + 6.0]],
                1.8,
            ),
        ],
    };
    let tower = b.line(&[[76.0, 44.5], [76.75, 17.0], [80.25, 17.0], [81.0, 44.0]]);
    let band = |top: f32, low: f32| {
        let inset = |y: f32| 76.0 + (44.5 - y) / 27.5 * 0.75;
        b.line(&[
            [inset(top), top],
            [157.0 - inset(top), top],
            [157.0 - inset(low), low],
            [inset(low), low],
        ])
    };
    Scene {
        headland: knifed(&b.line(&HEADLAND), 3.0, b.seed),
        bands: [band(22.0, 26.2), band(32.0, 36.4)],
        tower,
        gallery: vec![
            b.area(75.6, 15.8, 81.4, 17.2),
            b.area(76.0, 13.6, 81.0, 14.0),
            b.bar(&[[76.1, 13.7], [76.1, 16.0]], 1.6),
            b.bar(&[[77.3, 13.7], [77.3, 16.0]], 1.4),
            b.bar(&[[79.7, 13.7], [79.7, 16.0]], 1.4),
            b.bar(&[[80.9, 13.7], [80.9, 16.0]], 1.6),
            b.line(&[
                [76.7, 10.6],
                [77.5, 8.9],
                [78.5, 8.2],
                [79.5, 8.9],
                [80.3, 10.6],
            ]),
            b.bar(&[[78.5, 8.4], [78.5, 6.2]], 2.4),
        ],
        lantern: b.area(77.2, 10.5, 79.8, 15.9),
        house: b.line(&[[84.2, 43.2], [84.2, 38.0], [94.2, 37.4], [94.2, 41.0]]),
        roof: b.line(&[[83.5, 38.4], [86.0, 34.2], [92.8, 33.8], [95.0, 37.7]]),
        windows: [
            b.area(86.0, 38.9, 87.5, 41.4),
            b.area(90.6, 38.7, 92.1, 41.2),
        ],
        cutter: cutter(b.at(33.0, 65.0), 148.0, 0.035),
        smack: lugger(b.at(53.6, 60.6), 62.0, 0.02),
        far_boat: lugger(b.at(10.4, 58.8), 40.0, 0.015),
        waves,
        gulls,
        planks,
        post: knifed(
            &b.line(&[
                [6.2, 93.0],
                [6.0, 74.0],
                [7.0, 72.2],
                [9.4, 72.2],
                [10.2, 74.0],
                [10.3, 93.0],
            ]),
            1.6,
            9,
        ),
        buoy,
        horizon: b.y(58.0),
    }
}

fn cut(look: &Look, b: &Bench) -> Cuts {
    let s = scene(b, look);
    b.cuts([
        ("key", key(&s, b, look)),
        ("dusk", dusk(&s, b, look)),
        ("sea", sea(&s, b, look)),
        ("red", red(&s, b, look)),
        ("lamp", lamp(&s, b)),
    ])
}

fn key(s: &Scene, b: &Bench, look: &Look) -> Plane {
    let dice = &mut Dice::new(b.seed ^ 1);
    let mut k = b.cleared();
    for i in 0..17 {
        let y = b.y(4.0 + 2.9 * i as f32 + dice.about(1.2));
        let x = dice.between(-60.0, 620.0);
        k.leave(&wind(
            [x, y],
            dice.between(150.0, 380.0),
            dice.between(3.0, 12.0),
            dice.between(1.1, 2.5),
            dice,
        ));
    }
    // The lines of the sky pass behind what stands before it.
    for shape in [&s.tower, &s.lantern, &s.house, &s.roof, &s.headland] {
        k.cut(shape);
    }
    for sail in s.cutter.sails.iter().chain(&s.smack.sails).chain(&s.gulls) {
        k.cut(sail);
    }
    water(&mut k, s, b, dice);
    rock(&mut k, s, b, dice);
    lighthouse(&mut k, s, b, dice);
    // Surf at the foot of the rocks.
    k.cut(&surf(b));
    under_sail(&mut k, &s.far_boat, 0.7 * 1.3, None);
    under_sail(&mut k, &s.smack, 0.9 * 1.3, Some(0.9 * 0.55));
    under_sail(&mut k, &s.cutter, 1.5 * 1.3, Some(1.5 * 0.55));
    if look.has("buoy") {
        k.cut(&s.buoy.body);
        k.leave_all(&s.buoy.staff);
        k.leave(&outline(&s.buoy.body, 2.6));
        shade(
            &mut k,
            &rect(b.x(65.9), b.y(72.0), 20.0, 70.0),
            Hatch {
                turn: 0.24,
                gap: 4.5,
                width: 1.4,
                stray: 0.5,
            },
            dice,
        );
    }
    jetty(&mut k, s, b, dice);
    for g in &s.gulls {
        tip(&mut k, g);
    }
    if look.has("monogram") {
        monogram(&mut k, b);
    }
    k
}

/// Wing tips in black, so that the birds read against a pale sky too.
fn tip(k: &mut Plane, gull: &Path) {
    let b = bounds(gull);
    let span = b[2] - b[0];
    for end in [
        rect(b[0] - 2.0, b[1] - 9.0, span * 0.13, 40.0),
        rect(b[2] - span * 0.12, b[1] - 9.0, span * 0.13, 40.0),
    ] {
        k.within(gull, |p| p.leave(&end));
    }
}

fn rock(k: &mut Plane, s: &Scene, b: &Bench, dice: &mut Dice) {
    outlined(k, &s.headland, 3.2);
    let strata: Vec<Path> = (0..15)
        .map(|i| {
            let t = i as f32 / 14.0;
            let y = mix(45.5, 73.0, t);
            let x0 = mix(73.0, 62.0, (t * 2.2).min(1.0)) + (t - 0.45).max(0.0) * 16.0;
            gouged(
                &b.curve(&[
                    [x0 + dice.about(1.5), y + 1.0],
                    [x0 + 10.0, y - 0.8 + dice.about(0.6)],
                    [x0 + 20.0, y - 1.5 + dice.about(0.9)],
                    [103.0, y - 2.8 + dice.about(1.0)],
                ]),
                dice.between(1.8, 4.6),
            )
        })
        .collect();
    k.within(&s.headland, |p| p.leave_all(&strata));
    // The seaward face is in shadow: solid wedges between cracks, hatched towards the light.
    for face in [
        [
            [59.0, 60.5],
            [66.0, 52.3],
            [69.0, 50.6],
            [67.6, 57.0],
            [70.5, 62.0],
            [66.0, 63.5],
        ],
        [
            [69.5, 66.5],
            [72.0, 58.5],
            [75.0, 55.0],
            [74.2, 62.0],
            [78.0, 68.0],
            [75.0, 70.8],
        ],
        [
            [80.5, 72.0],
            [83.0, 62.5],
            [86.5, 58.0],
            [85.8, 65.0],
            [89.5, 70.5],
            [87.0, 73.0],
        ],
    ] {
        let wedge = knifed(&b.line(&face), 2.5, b.seed ^ 4);
        k.within(&s.headland, |p| p.leave(&wedge));
        k.cut_within(&wedge, |p| {
            p.leave_all(&pecks(bounds(&wedge), 26, 15.0, 0.56, dice));
        });
    }
    shade(
        k,
        &b.line(&[
            [70.0, 51.0],
            [74.0, 46.0],
            [78.0, 45.0],
            [75.0, 52.0],
            [72.0, 58.0],
        ]),
        Hatch {
            turn: 0.13,
            gap: 5.6,
            width: 1.7,
            stray: 1.0,
        },
        dice,
    );
    shade(
        k,
        &b.line(&[
            [84.0, 55.0],
            [92.0, 46.0],
            [101.0, 44.0],
            [101.0, 60.0],
            [90.0, 62.0],
        ]),
        Hatch {
            turn: 0.14,
            gap: 7.0,
            width: 1.9,
            stray: 1.4,
        },
        dice,
    );
    let grass: Vec<Path> = (0..70)
        .map(|_| {
            let x = dice.between(73.0, 100.0);
            let y = 44.3 - (x - 75.0) * 0.19 + dice.about(0.9);
            let p = b.at(x, y);
            gouged(
                &[
                    p,
                    [
                        p[0] + dice.between(5.0, 12.0),
                        p[1] - dice.between(4.0, 9.0),
                    ],
                ],
                1.9,
            )
        })
        .collect();
    k.leave_all(&grass);
}

fn lighthouse(k: &mut Plane, s: &Scene, b: &Bench, dice: &mut Dice) {
    outlined(k, &s.tower, 2.2);
    let dark_side = b.line(&[[79.0, 17.0], [80.25, 17.0], [81.0, 44.3], [79.4, 44.4]]);
    k.within(&s.tower, |p| p.leave(&dark_side));
    let between_lines = b.line(&[[78.0, 17.2], [79.2, 17.2], [79.6, 44.3], [78.1, 44.3]]);
    shade(
        k,
        &between_lines,
        Hatch {
            turn: 0.0,
            gap: 4.4,
            width: 1.7,
            stray: 0.4,
        },
        dice,
    );
    k.cut(&b.area(77.6, 28.2, 78.5, 30.4));
    k.leave(&outline(&b.area(77.6, 28.2, 78.5, 30.4), 1.2));
    k.leave(&b.area(77.75, 38.4, 78.7, 40.4));
    k.leave_all(&s.gallery);
    k.leave(&outline(&s.lantern, 1.8));
    k.leave(&b.bar(&[[78.5, 10.6], [78.5, 15.8]], 1.4));
    outlined(k, &s.house, 2.0);
    k.leave(&knifed(&s.roof, 1.0, 4));
    k.cut_within(&s.roof, |p| {
        p.leave_all(&tiles(bounds(&s.roof), 4.2, dice));
    });
    k.leave(&b.area(86.6, 31.8, 87.8, 34.6));
    k.leave(&b.area(91.4, 31.6, 92.4, 34.3));
    for w in &s.windows {
        k.leave(&outline(w, 1.8));
    }
    shade(
        k,
        &b.line(&[[92.4, 38.0], [94.2, 37.8], [94.2, 41.2], [92.6, 41.5]]),
        Hatch {
            turn: 0.0,
            gap: 3.0,
            width: 1.4,
            stray: 0.3,
        },
        dice,
    );
}

fn water(k: &mut Plane, s: &Scene, b: &Bench, dice: &mut Dice) {
    k.leave_all(&far([0.0, b.x(59.0)], s.horizon + 5.0, dice));
    k.leave_all(&far([0.0, b.x(58.0)], s.horizon + 15.0, dice));
    k.leave_all(&far([0.0, b.x(62.0)], s.horizon + 27.0, dice));
    for row in &s.waves {
        k.cut_all(&row.foam);
        k.leave_all(&row.hollows);
        for hollow in &row.hollows {
            let area = bounds(hollow);
            let cuts = pecks(area, 12, (area[3] - area[1]) * 0.34, 0.19, dice);
            k.cut_within(hollow, |p| p.leave_all(&cuts));
        }
        k.leave_all(&row.contours);
        k.cut_all(&row.foam);
        for foam in &row.foam {
            k.leave(&outline(foam, 1.5));
        }
    }
}

fn surf(b: &Bench) -> Path {
    knifed(
        &b.curve(&[
            [57.0, 61.5],
            [61.0, 61.2],
            [64.0, 63.8],
            [69.0, 67.3],
            [73.5, 71.3],
            [80.0, 72.9],
            [90.0, 74.0],
            [101.0, 75.4],
            [101.0, 78.0],
            [92.0, 76.4],
            [84.0, 75.8],
            [77.0, 75.2],
            [71.0, 73.0],
            [67.0, 69.8],
            [62.0, 66.0],
            [58.0, 63.4],
        ]),
        6.0,
        b.seed ^ 12,
    )
}

fn jetty(k: &mut Plane, s: &Scene, b: &Bench, dice: &mut Dice) {
    let deck = b.line(&[[-1.0, 79.6], [3.6, 79.8], [25.2, 101.0], [-1.0, 101.0]]);
    k.cut(&deck);
    for plank in &s.planks {
        k.leave(&outline(plank, 2.4));
        let bx = bounds(plank);
        let grain: Vec<Path> = (0..5)
            .map(|_| {
                let y = dice.between(bx[1], bx[3]);
                let x = dice.between(bx[0], bx[2]);
                gouged(
                    &[[x, y], [x + dice.between(30.0, 90.0), y + dice.about(2.0)]],
                    1.9,
                )
            })
            .collect();
        k.within(plank, |p| p.leave_all(&grain));
    }
    k.leave(&b.bar(&[[3.2, 79.8], [25.2, 101.0]], 7.0));
    k.leave(&tapered(
        &b.line(&[[13.2, 90.2], [13.0, 101.0]]),
        11.0,
        12.0,
    ));
    k.leave(&s.post);
    let light = b.line(&[[6.6, 74.4], [8.0, 74.0], [8.1, 92.4], [6.8, 92.6]]);
    let cuts: Vec<Path> = (0..16)
        .map(|_| {
            let p = b.at(dice.between(6.5, 8.3), dice.between(74.5, 88.0));
            gouged(
                &[p, [p[0] + dice.about(1.2), p[1] + dice.between(14.0, 40.0)]],
                2.5,
            )
        })
        .collect();
    k.cut_within(&light, |p| p.leave_all(&cuts));
    k.cut(&b.line(&[
        [6.3, 73.9],
        [7.0, 72.6],
        [9.4, 72.6],
        [10.0, 73.9],
        [8.0, 74.5],
    ]));
    for i in 0..4 {
        let y = 80.6 + 1.25 * i as f32;
        let turn = b.curve(&[[5.8, y], [7.4, y + 0.9], [9.2, y + 0.8], [10.6, y - 0.3]]);
        k.cut(&bar(&turn, 6.0));
        k.leave(&bar(&turn, 3.4));
    }
    k.leave(&bar(
        &b.curve(&[[10.4, 83.0], [13.0, 88.0], [16.4, 90.4]]),
        3.2,
    ));
}

fn monogram(k: &mut Plane, b: &Bench) {
    let frame = b.area(91.4, 82.6, 95.8, 89.0);
    outlined(k, &frame, 2.2);
    let c = b.at(93.6, 85.8);
    for line in crate::engine::script::monogram() {
        k.leave(&bar(&placed_xy(&line, c[0], c[1], 16.0, 15.0), 3.6));
    }
}

fn dusk(s: &Scene, b: &Bench, look: &Look) -> Plane {
    let dice = &mut Dice::new(b.seed ^ 2);
    let mut d = b.cleared();
    d.leave(&rect(-10.0, -10.0, b.w + 20.0, s.horizon + 10.0));
    // Gaps in the cloud near the horizon.
    for (x, y, w, h) in [
        (-4.0, 53.5, 46.0, 13.0),
        (22.0, 47.5, 40.0, 10.0),
        (-8.0, 43.0, 30.0, 8.0),
        (46.0, 54.5, 24.0, 9.0),
        (40.0, 40.8, 26.0, 6.0),
        (88.0, 29.0, 22.0, 9.0),
        (82.5, 22.5, 30.0, 6.0),
    ] {
        d.cut(&knifed(
            &streak(b.at(x, y), b.x(w), h * 2.1, dice),
            1.6,
            b.seed ^ 8,
        ));
    }
    if look.has("beam") {
        let beam = b.line(&[[77.4, 12.2], [77.4, 14.2], [-1.0, 21.0], [-1.0, 2.0]]);
        d.cut(&knifed(&beam, 1.2, b.seed ^ 31));
        let edge = b.line(&[[77.4, 11.8], [77.4, 14.6], [-1.0, 25.0], [-1.0, 0.5]]);
        let rays: Vec<Path> = (0..26)
            .map(|i| {
                let t = i as f32 / 25.0;
                let far_end = b.at(-1.0, mix(0.8, 24.0, t));
                let near = b.at(dice.between(20.0, 66.0), 0.0)[0];
                let from = b.at(77.4, 13.2);
                let share = (from[0] - near) / (from[0] - far_end[0]);
                gouged(
                    &[[near, from[1] + (far_end[1] - from[1]) * share], far_end],
                    2.4,
                )
            })
            .collect();
        d.cut_within(&edge, |p| p.leave_all(&rays));
    }
    for shape in s.gulls.iter().chain([&s.tower, &s.lantern, &s.house]) {
        d.cut(shape);
    }
    d.leave(&b.line(&[[79.0, 17.0], [80.3, 17.0], [81.0, 44.0], [79.3, 44.0]]));
    for boat in [&s.cutter, &s.smack, &s.far_boat] {
        for sail in &boat.sails {
            d.leave(sail);
        }
    }
    // The weather edge of the sail is lit.
    let sail = &s.cutter.sails[0];
    let edge: Path = sail.iter().map(|p| [p[0] - 26.0, p[1] + 2.0]).collect();
    d.cut_within(sail, |p| p.leave(&edge));
    d.cut(&s.headland);
    let shaded = b.line(&[
        [58.5, 61.0],
        [66.0, 51.8],
        [71.5, 47.0],
        [74.0, 52.0],
        [79.0, 56.0],
        [90.0, 57.0],
        [101.0, 52.0],
        [101.0, 76.0],
        [78.0, 73.0],
        [66.0, 64.0],
    ]);
    d.within(&s.headland, |p| p.leave(&knifed(&shaded, 5.0, b.seed ^ 14)));
    d.cut(&surf(b));
    for plank in &s.planks {
        d.tone(plank, 0.72);
    }
    d.leave(&s.post);
    crack(&mut d, b, look.stage("crack"));
    d
}

/// A split along the grain: no ink, from the left edge as far as its stage has it.
fn crack(d: &mut Plane, b: &Bench, stage: usize) {
    let reach = match stage {
        0 => return,
        1 => 7.0,
        2 => 33.0,
        _ => 76.0,
    };
    let mut line = Vec::new();
    let mut x = -1.0;
    while x < reach {
        let sway = 2.6 * (smooth(x / 6.0, 0.0, b.seed ^ 77) - 0.5)
            + 1.2 * (smooth(x / 1.7, 4.0, b.seed) - 0.5);
        line.push([b.x(x), b.y(29.0) + sway * 2.0]);
        x += 0.5;
    }
    d.cut(&tapered(&line, 3.4, 1.2));
}

fn sea(s: &Scene, b: &Bench, look: &Look) -> Plane {
    let dice = &mut Dice::new(b.seed ^ 3);
    let mut w = b.cleared();
    w.leave(&rect(-10.0, s.horizon, b.w + 20.0, b.h));
    w.cut_all(&far([0.0, b.x(60.0)], s.horizon + 9.0, dice));
    w.cut_all(&far([0.0, b.x(60.0)], s.horizon + 21.0, dice));
    w.cut_all(&far([0.0, b.x(66.0)], s.horizon + 38.0, dice));
    for row in &s.waves {
        w.cut_all(&row.foam);
        w.cut_all(&row.veins);
    }
    w.cut_all(&pecks(
        [0.0, s.horizon + 20.0, b.w, b.h],
        190,
        20.0,
        0.0,
        dice,
    ));
    for row in &s.waves {
        w.leave_all(&row.hollows);
        w.cut_all(&row.foam);
    }
    w.cut(&s.headland);
    w.cut(&surf(b));
    for boat in [&s.cutter, &s.smack, &s.far_boat] {
        for sail in &boat.sails {
            w.cut(sail);
        }
        w.cut(&boat.strake);
    }
    w.cut(&b.line(&[[-1.0, 79.4], [3.6, 79.6], [25.2, 101.0], [-1.0, 101.0]]));
    w.cut(&s.post);
    if look.has("buoy") {
        w.cut(&s.buoy.body);
    }
    if look.has("monogram") {
        w.cut(&b.area(91.4, 82.6, 95.8, 89.0));
    }
    w
}

fn red(s: &Scene, b: &Bench, look: &Look) -> Plane {
    let mut r = b.cleared();
    for band in &s.bands {
        r.leave(&knifed(band, 0.8, b.seed));
    }
    r.leave(&knifed(&s.cutter.strake, 0.5, b.seed));
    r.leave(&knifed(&s.roof, 0.8, b.seed));
    if look.has("buoy") {
        r.leave_all(&s.buoy.stripes);
    }
    r
}

fn lamp(s: &Scene, b: &Bench) -> Plane {
    let dice = &mut Dice::new(b.seed ^ 5);
    let mut l = b.cleared();
    l.leave(&s.lantern);
    for w in &s.windows {
        l.leave(w);
    }
    let light = b.at(36.2, 61.0);
    l.leave(&ellipse(light[0], light[1], 4.4, 5.2));
    l.leave_all(&broken(
        light[0] - 6.0,
        light[0] + 6.0,
        b.y(66.5),
        b.y(80.0),
        dice,
    ));
    l
}

fn print(look: &Look) -> Vec<Pass> {
    let turn = look.number as f32;
    let sky = look.choice("sky").to_owned();
    let dusk_ink = ink(0x66_65_8a);
    let sea_ink = match look.choice("sea") {
        "blue" => ink(0x3f_6f_96),
        "slate" => ink(0x5b_6a_7a),
        _ => ink(0x5d_82_7a),
    };
    let dusk = Pass::block("dusk", dusk_ink).charged(move |p| {
        let y = p[1] / 680.0;
        let base = match sky.as_str() {
            "even" => 0.86,
            "wiped" => {
                let along = p[0] * 0.32 + p[1];
                let streaks = cloud(along / 30.0, (p[0] - p[1] * 0.3) / 420.0 + turn, 3, 40);
                0.42 + 0.95 * step(0.25, 0.75, streaks) * (1.05 - 0.5 * y)
            }
            _ => 1.32 - 1.28 * step(0.0, 0.66, y + 0.04 * (smooth(p[0] / 240.0, turn, 3) - 0.5)),
        };
        // The brush is reloaded for the headland and for the jetty.
        let ashore = p[0] > 560.0 && inside(&HEADLAND, [p[0] / 10.0, y * 100.0]);
        if ashore || y > 0.68 { 0.95 } else { base }
    });
    let sea =
        Pass::block("sea", sea_ink).charged(|p| mix(0.62, 1.12, step(0.56, 1.0, p[1] / 680.0)));
    vec![
        Pass::block("key", ink(0x1c_24_3a)).charged(|_| 1.05),
        dusk,
        sea,
        Pass::block("red", ink(0xc8_3f_28)).from(Surface::Plank, 0.25),
        Pass::block("lamp", body_ink(0xe9_ad_3c)).from(Surface::Plank, 0.2),
    ]
}
