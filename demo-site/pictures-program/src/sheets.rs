//! From an impression's record to its paper, its pull and its marks.
//!
//! In: a design and an impression as the library reads them, and the [`Look`] and [`Layout`] made of them.
//! Out: what `engine::sheet` lays down.

use keyblock::model::design::Design;
use keyblock::model::impression::Impression;
use keyblock::model::mark::{Mark as MarkRecord, MarkKind};
use keyblock::model::picture::Picture;
use keyblock::model::words::Side;

use crate::engine::ink::Pass;
use crate::engine::noise::{Dice, seed};
use crate::engine::paper::{Make, Paper};
use crate::engine::plane::Window;
use crate::engine::script;
use crate::engine::sheet::{Mark, Pull};
use crate::layout::{Layout, is_intaglio};
use crate::look::Look;
use crate::words::Words;

/// The seed of everything that is accidental on one sheet.
pub fn sheet_seed(design: &Design, look: &Look) -> u32 {
    seed(&["sheet", design.key.as_str(), &look.number.to_string()])
}

/// The paper that the record names, with the damage that its condition describes.
pub fn paper(design: &Design, impression: &Impression, look: &Look, layout: &Layout) -> Paper {
    let named = impression.sheet.paper.as_ref().map_or("", |p| p.as_str());
    let words = Words::of(&format!("{named} {}", look.choice("paper")));
    let has = |word| words.has(&[word]);
    let (make, tone) = match look.printing() {
        "quillam" => (Make::Wove, 0xf2_e6_c6),
        "memorial" => (Make::Wove, 0xef_ee_e9),
        "rope-walk" => (Make::Wove, 0xf6_f5_f2),
        "orle" => (Make::Wove, 0xee_e3_cd),
        "lindmarsh" | "cancellation" => (Make::Wove, 0xf2_f1_ed),
        _ if is_intaglio(design) => (Make::Laid, 0xe8_dd_c6),
        _ => (Make::Japan, 0xee_e2_c8),
    };
    let (make, tone) = if has("wrapping") {
        (Make::Wove, 0xb9_9a_70)
    } else if has("card") {
        (Make::Wove, 0xd8_cc_b4)
    } else if has("simili") {
        (Make::Wove, tone)
    } else if has("laid") {
        (Make::Laid, tone)
    } else if has("japan") || has("mulberry") {
        (Make::Japan, tone)
    } else if has("wove") {
        (Make::Wove, tone)
    } else {
        (make, tone)
    };
    let seed = sheet_seed(design, look);
    let mut paper = Paper::new(make, tone, layout.sheet, seed);
    let mut dice = Dice::new(seed ^ 0x70E);
    let age = dice.between(0.965, 1.0);
    paper.tone = [
        paper.tone[0] * age,
        paper.tone[1] * age * age,
        paper.tone[2] * age * age * age,
    ];
    let roomy = layout.image[0] > 12.0;
    paper.deckle = make != Make::Wove && roomy && dice.chance(0.6);
    damage(&mut paper, &condition(impression), layout, &mut dice);
    paper
}

fn condition(impression: &Impression) -> Words {
    let notes = impression.condition.iter().map(|note| match &note.at {
        Some(at) => format!("{} {at}", note.what),
        None => note.what.clone(),
    });
    Words::of_condition(&notes.collect::<Vec<_>>().join("; "))
}

/// Damages the paper as its condition says. Where the condition names an edge, the damage is put
/// there.
fn damage(paper: &mut Paper, condition: &Words, layout: &Layout, dice: &mut Dice) {
    let has = |words: &[&str]| condition.has(words);
    let [w, h] = layout.sheet;
    let mut region = [0.0, 0.0, w, h];
    if has(&["left"]) {
        region[2] = w * 0.22;
    } else if has(&["right"]) {
        region[0] = w * 0.78;
    }
    if has(&["upper", "top"]) {
        region[3] = h * 0.25;
    } else if has(&["lower", "foot"]) {
        region[1] = h * 0.75;
    }
    let [left, top, iw, ih] = layout.image;
    let opening = [left - 4.0, top - 4.0, left + iw + 4.0, top + ih + 4.0];
    if has(&["foxing", "foxed"]) {
        let is_light =
            condition.has_after("light", &["fox", "foxing"]) || has(&["slight", "spot", "spots"]);
        paper.fox(if is_light { 16 } else { 60 }, region);
    }
    if condition.has_after("mat", &["burn"]) || has(&["mount", "mounted"]) {
        paper.burn = Some((opening, 0.7));
    }
    let light_stain = condition.has_after("light", &["stain", "stained"]);
    if light_stain || condition.has_after("light", &["struck"]) || has(&["faded"]) {
        paper.burn = Some((opening, 0.95));
    }
    if has(&["toned", "browned"]) {
        paper.tone = [
            paper.tone[0] * 0.95,
            paper.tone[1] * 0.89,
            paper.tone[2] * 0.78,
        ];
    }
    let is_stained = has(&["stain", "stains", "stained"]) && !light_stain;
    if has(&["tide"]) || is_stained {
        paper.tide = Some(h - dice.between(12.0, 30.0));
    }
    paper.fold = has(&["fold", "folds", "folded"]);
    let is_torn = has(&["tear", "tears", "torn"]);
    if is_torn || has(&["crease", "creases", "creased"]) {
        let from = [
            dice.between(region[0], region[2]),
            if region[1] > 0.0 { h } else { 0.0 },
        ];
        let length = if is_torn { 18.0 } else { 46.0 };
        let down = if region[1] > 0.0 { -1.0 } else { 1.0 };
        paper
            .creases
            .push((from, [from[0] + length * 0.5, from[1] + down * length]));
    }
}

/// How this sheet was printed, by its printing and its kind.
pub fn pull(design: &Design, impression: &Impression, look: &Look, layout: &Layout) -> Pull {
    let seed = sheet_seed(design, look);
    let mut dice = Dice::new(seed ^ 0x1A1);
    let mm = 1.0 / layout.unit;
    let mut pull = match look.printing() {
        "quillam" => hand(1.0, 0.10, 0.5, 0.14, 0.16 * mm),
        "memorial" => hand(0.95, 0.16, 0.6, 0.16, 0.22 * mm),
        "rope-walk" => hand(1.08, 0.10, 0.4, 0.16, 0.3 * mm),
        "orle" | "lindmarsh" | "cancellation" => hand(1.0, 0.05, 0.5, 0.1, 0.0),
        _ => Pull {
            film: dice.between(0.92, 1.04),
            dry: dice.between(0.25, 0.55),
            grain: dice.between(0.85, 1.25),
            rub: dice.between(0.45, 0.8),
            stray: dice.between(0.35, 0.75) * mm,
            faded: 0.0,
            seed,
        },
    };
    pull.seed = seed;
    match look.kind() {
        "trial-proof" | "working-proof" => {
            pull.dry += 0.25;
            pull.stray *= 1.6;
            pull.grain *= 1.15;
        }
        "counterproof" => {
            pull.film *= 0.45;
            pull.dry += 0.25;
        }
        "maculature" => pull.film *= 0.38,
        _ => {}
    }
    let condition = condition(impression);
    if condition.has(&["faded"]) {
        pull.faded = 0.75;
    } else if condition.has_after("light", &["struck"]) {
        pull.faded = 0.5;
    }
    pull
}

fn hand(film: f32, dry: f32, grain: f32, rub: f32, stray: f32) -> Pull {
    Pull {
        film,
        dry,
        grain,
        rub,
        stray,
        faded: 0.0,
        seed: 0,
    }
}

/// The passes in the inks of their printing: every printer mixed his own.
pub fn inked(passes: Vec<Pass>, look: &Look) -> Vec<Pass> {
    let mut dice = Dice::new(seed(&["shelf", look.printing(), &look.number.to_string()]));
    passes
        .into_iter()
        .map(|mut pass| {
            pass.ink = match look.printing() {
                "quillam" => pass.ink.mixed(0x20_34_58, 0.07),
                "memorial" => pass.ink.mixed(0x9f_b4_d0, 0.12),
                "rope-walk" => {
                    let mut ink = pass.ink.mixed(0x3a_3a_3a, 0.10);
                    ink.body = (ink.body + 0.3).min(0.8);
                    ink
                }
                "lindmarsh" | "cancellation" => pass.ink.mixed(0x10_14_1c, 0.7),
                _ => pass.ink.mixed(
                    if dice.chance(0.5) {
                        0xc8_8a_50
                    } else {
                        0x6a_7a_8c
                    },
                    dice.between(0.0, 0.08),
                ),
            };
            pass
        })
        .collect()
}

/// The marks of one side, from the record's `marks` and `numbering`.
pub fn marks(
    impression: &Impression,
    look: &Look,
    layout: &Layout,
    verso: bool,
    window: Window,
    seed: u32,
) -> Vec<Mark> {
    let side = if verso { Side::Verso } else { Side::Recto };
    let mut marks = Vec::new();
    for (mark, turn) in impression.marks.iter().zip(1..) {
        if mark.side.unwrap_or(Side::Recto) == side {
            marks.extend(one(mark, layout, verso, window, seed ^ turn));
        }
    }
    if !verso && let Some(numbering) = &impression.numbering {
        let at = [layout.image[0] + 2.0, under(layout)];
        marks.push(script::pencil(window, numbering, at, 3.6, seed ^ 0x99));
    }
    if !verso
        && look.kind().ends_with("-proof")
        && look.kind() != "artists-proof"
        && layout.image[0] > 9.0
    {
        let at = [
            layout.image[0] * 0.5,
            layout.image[1] + layout.image[3] * 0.7,
        ];
        marks.push(script::thumb(window, at, seed));
    }
    marks
}

/// How much of the sheet the detail of a mark shows, mm.
const AROUND_MARK: f32 = 26.0;

/// The part of its side of the sheet that the detail of a mark shows: left, top, width, height. A detail shows a mark
/// where it has the name of the mark's record. It is moved so that it stays on the sheet.
pub fn around_mark(
    impression: &Impression,
    picture: &Picture,
    layout: &Layout,
) -> Option<[f32; 4]> {
    let named = |mark: &&MarkRecord| {
        let record = mark.record.as_ref();
        record.is_some_and(|key| key.value == picture.name.value)
    };
    let mark = impression.marks.iter().find(named)?;
    let place = Words::of(mark.at.as_deref().unwrap_or_default());
    let [x, y] = spot(&place, layout, picture.side == Side::Verso);
    let [w, h] = layout.sheet;
    let within = |centre: f32, length: f32| {
        (centre - AROUND_MARK / 2.0).clamp(0.0, (length - AROUND_MARK).max(0.0))
    };
    Some([within(x, w), within(y, h), AROUND_MARK, AROUND_MARK])
}

fn one(mark: &MarkRecord, layout: &Layout, verso: bool, window: Window, seed: u32) -> Vec<Mark> {
    let Some(kind) = &mark.kind else {
        return Vec::new();
    };
    let words = mark.text.as_deref().unwrap_or("Name of Owner");
    let medium = Words::of(mark.medium.as_deref().unwrap_or_default());
    let place = Words::of(mark.at.as_deref().unwrap_or_default());
    let at = spot(&place, layout, verso);
    let violet = Words::of(mark.colour.as_deref().unwrap_or_default()).has(&["violet"]);
    let blue = if violet { 0x5d_3f_86 } else { 0x2c_33_55 };
    match kind.value {
        MarkKind::Signature if medium.has(&["stamp", "stamped"]) => {
            vec![script::stamped(
                window,
                words,
                writing(at, words, 4.6, layout, &place),
                4.6,
            )]
        }
        MarkKind::Signature | MarkKind::Inscription => {
            let is_signature = kind.value == MarkKind::Signature;
            let height = if is_signature { 4.8 } else { 3.4 };
            vec![script::pencil(
                window,
                words,
                writing(at, words, height, layout, &place),
                height,
                seed,
            )]
        }
        MarkKind::Seal => vec![script::seal(window, at, 9.0, 0xb3_2a_20, seed)],
        MarkKind::Stamp if medium.has(&["blind"]) => script::blind(window, at, 8.0).into(),
        MarkKind::Collector => {
            let is_vaels = mark.whose.as_ref().is_some_and(|w| w.as_str() == "vael");
            vec![script::collector(window, at, blue, !is_vaels)]
        }
        MarkKind::Stamp => vec![script::oval(
            window,
            at,
            if violet || verso { 0x5d_3f_86 } else { blue },
            seed,
        )],
    }
}

/// The baseline under the image, or just inside it where there is no margin.
fn under(layout: &Layout) -> f32 {
    let bottom = layout.image[1] + layout.image[3];
    let below = layout.platemark().map_or(bottom, |p| p[1] + p[3]);
    if layout.sheet[1] - below > 9.0 {
        below + 7.0
    } else {
        bottom.min(layout.sheet[1]) - 4.0
    }
}

/// Words for the middle of an edge.
const CENTRE: &[&str] = &["centre", "center", "central"];

/// Where a mark's centre lies, from the words of its place.
fn spot(place: &Words, layout: &Layout, verso: bool) -> [f32; 2] {
    let [w, h] = layout.sheet;
    let (left, right) = (
        layout.image[0].max(3.0),
        (layout.image[0] + layout.image[2]).min(w - 3.0),
    );
    let across = |l: f32, r: f32| {
        if place.has(&["left"]) {
            l
        } else if place.has(&["right"]) || !place.has(CENTRE) {
            r
        } else {
            w * 0.5
        }
    };
    if verso {
        let y = if place.has(&["upper", "top"]) {
            20.0
        } else if place.has(&["lower", "foot"]) {
            h - 22.0
        } else {
            h * 0.45
        };
        return [across(26.0, w - 30.0), y];
    }
    let y = if place.has(&["upper", "top"]) {
        (layout.image[1] * 0.5).max(6.0)
    } else {
        under(layout)
    };
    [across(left + 9.0, right - 9.0), y]
}

/// The left end of a line of writing whose place names the side it belongs to.
fn writing(at: [f32; 2], words: &str, height: f32, layout: &Layout, place: &Words) -> [f32; 2] {
    let width = script::width_of(words, height);
    let x = if place.has(&["left"]) {
        at[0] - 8.0
    } else if place.has(CENTRE) {
        at[0] - width / 2.0
    } else {
        at[0] + 6.0 - width
    };
    [
        x.clamp(2.0, (layout.sheet[0] - width - 2.0).max(2.0)),
        at[1],
    ]
}
