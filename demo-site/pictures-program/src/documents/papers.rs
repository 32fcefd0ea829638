//! The written documents.

use super::Words;
use super::leaf::{Ink, Leaf};
use super::writing::{Style, Way, width};
use crate::engine::paper::Make;
use crate::engine::photo::{Photograph, Table};
use crate::engine::plane::Window;
use crate::engine::shape::{Pt, curve};

/// Type with a small `x` of a height, its capitals 1.44 times as tall.
const fn print(x_height: f32) -> Style {
    Style {
        way: Way::Type,
        x_height,
        broad: x_height * 0.215,
        fine: x_height * 0.100,
        lean: 0.0,
        spaced: x_height * 0.06,
        wide: 1.0,
    }
}

/// The same, its letters spaced.
const fn spaced(x_height: f32, space: f32) -> Style {
    Style {
        spaced: space,
        ..print(x_height)
    }
}

const fn typewriter(x_height: f32) -> Style {
    Style {
        way: Way::Typewriter,
        x_height,
        broad: x_height * 0.23,
        fine: x_height * 0.23,
        lean: 0.0,
        spaced: 0.0,
        wide: 1.0,
    }
}

/// A joined hand.
const fn joined(x_height: f32, broad: f32, lean: f32, wide: f32) -> Style {
    Style {
        way: Way::Joined,
        x_height,
        broad,
        fine: broad * 0.42,
        lean,
        spaced: 0.0,
        wide,
    }
}

/// A hand that lifts the pen after every letter.
const fn unjoined(x_height: f32, broad: f32, lean: f32) -> Style {
    Style {
        way: Way::Unjoined,
        x_height,
        broad,
        fine: broad * 0.55,
        lean,
        spaced: x_height * 0.06,
        wide: 1.0,
    }
}

/// A leaf of a printer's work-book: ruled paper, iron ink gone brown.
pub fn ledger(words: &Words) -> Photograph {
    const COLUMNS: [f32; 5] = [17.0, 70.0, 107.0, 141.0, 169.0];
    let leaf = Leaf {
        key: words.key,
        size: [212.0, 168.0],
        make: Make::Wove,
        tone: 0xec_e1_c6,
        table: Table::Slate,
        longest: 1300,
    };
    let [w, h] = leaf.size;
    let line = |i: usize| 23.0 + 11.0 * i as f32;
    let mark = |window: Window| {
        let mut rules = Ink::new(window, 0x8f_a8_bd, 0.2, &["rules", words.key]);
        for i in 0..13 {
            rules.rule([0.0, line(i) + 1.2], [w, line(i) + 1.2], 0.28);
        }
        let mut red = Ink::new(window, 0xc0_62_55, 0.2, &["red", words.key]);
        for x in [13.0, 66.0, 103.0, 137.0, 165.0] {
            red.rule([x, 0.0], [x, h], 0.26);
        }
        red.rule([13.8, 0.0], [13.8, h], 0.26);
        let mut pen = Ink::new(window, 0x3a_2a_22, 0.12, &["orle", words.key]);
        let hand = unjoined(2.8, 0.68, 0.30);
        for i in 0..words.lines.len() {
            let columns = words.columns(i);
            let y = line(i);
            match columns[..] {
                [left, right] => {
                    pen.write(&hand, left, [COLUMNS[0], y]);
                    pen.write_to(&hand, right, [w - 12.0, y]);
                }
                _ => {
                    for (text, x) in columns.iter().zip(COLUMNS) {
                        pen.write(&hand, text, [x, y]);
                    }
                }
            }
        }
        // The sum is ruled off above and below.
        pen.rule([68.0, line(7) + 2.0], [164.0, line(7) + 1.6], 0.4);
        pen.rule([68.0, line(8) + 2.4], [164.0, line(8) + 2.1], 0.4);
        pen.rule([68.0, line(8) + 3.3], [164.0, line(8) + 3.0], 0.4);
        vec![rules.mark(), red.mark(), pen.mark()]
    };
    leaf.photograph(
        |paper| {
            paper.fox(26, [0.0, h * 0.6, w, h]);
            paper.creases.push(([w, h - 26.0], [w - 24.0, h]));
        },
        mark,
    )
}

/// A typed agreement, signed, with a note in pen at the foot.
pub fn contract(words: &Words) -> Photograph {
    let leaf = Leaf {
        key: words.key,
        size: [200.0, 272.0],
        make: Make::Wove,
        tone: 0xee_e9_db,
        table: Table::Grey,
        longest: 1620,
    };
    let [w, h] = leaf.size;
    let mark = |window: Window| {
        let mut ribbon = Ink::new(window, 0x20_22_2a, 0.22, &["typed", words.key]);
        let mut heir = Ink::new(window, 0x2b_3a_70, 0.1, &["heir", words.key]);
        let mut printer = Ink::new(window, 0x2a_26_24, 0.1, &["printer", words.key]);
        let face = typewriter(1.86);
        let signatures = words.lines.len() - 2;
        let mut y = 33.0;
        for (i, text) in words.lines.iter().enumerate() {
            if i == 0 {
                ribbon.write_amid(&face, text, [w * 0.5, y]);
                let half = width(&face, text) * 0.5;
                ribbon.rule([w * 0.5 - half, y + 1.8], [w * 0.5 + half, y + 1.8], 0.3);
                y += 14.0;
            } else if i < signatures {
                let clause = text.chars().nth(1) == Some('.');
                if clause {
                    y += 3.0;
                }
                ribbon.write(&face, text, [30.0, y]);
                y += 8.3;
            } else if i == signatures {
                y += 11.0;
                let columns = words.columns(i);
                let hand = joined(3.7, 0.62, 0.42, 1.1);
                heir.write(&hand, columns[0], [34.0, y]);
                heir.stroke(
                    &curve(&[[36.0, y + 3.6], [58.0, y + 2.2], [84.0, y + 3.2]]),
                    0.36,
                );
                printer.write(&joined(3.2, 0.50, 0.0, 1.12), columns[1], [114.0, y - 0.6]);
                y += 15.0;
            } else {
                printer.write(&joined(2.4, 0.42, 0.0, 1.1), text, [30.0, y]);
            }
        }
        vec![ribbon.mark(), heir.mark(), printer.mark()]
    };
    leaf.photograph(
        |paper| {
            for third in [h / 3.0, h * 2.0 / 3.0 + 1.5] {
                paper.creases.push(([0.0, third], [w, third + 0.8]));
            }
            paper.fox(7, [0.0, 0.0, w, h * 0.2]);
        },
        mark,
    )
}

/// A dealer's printed invoice, filled in with a pen.
pub fn invoice(words: &Words) -> Photograph {
    let leaf = Leaf {
        key: words.key,
        size: [165.0, 205.0],
        make: Make::Laid,
        tone: 0xec_e5_d2,
        table: Table::Linen,
        longest: 1400,
    };
    let [w, h] = leaf.size;
    let right = w - 17.0;
    let mark = |window: Window| {
        let mut type_ink = Ink::new(window, 0x28_44_38, 0.10, &["letterhead", words.key]);
        let mut pen = Ink::new(window, 0x23_2b_4c, 0.1, &["marlof", words.key]);
        let hand = joined(2.6, 0.54, 0.44, 1.2);
        type_ink.write_amid(&spaced(4.6, 1.1), &words.lines[0], [w * 0.5, 27.0]);
        type_ink.write_amid(&spaced(2.2, 0.35), &words.lines[1], [w * 0.5, 36.0]);
        type_ink.write_amid(&spaced(1.7, 0.22), &words.lines[2], [w * 0.5, 42.5]);
        type_ink.rule([17.0, 48.0], [right, 48.0], 0.6);
        type_ink.rule([17.0, 49.4], [right, 49.4], 0.2);
        let line = |i: usize| 64.0 + 14.2 * (i as f32 - 3.0);
        for i in 3..words.lines.len() {
            let y = line(i);
            type_ink.rule([17.0, y + 1.6], [right, y + 1.6], 0.16);
            let columns = words.columns(i);
            if let [left, end] = columns[..] {
                pen.write_to(&hand, end, [right - 1.0, y]);
                if i == 3 {
                    // The number is written after printed words.
                    let printed = "Rechnung Nr. ";
                    let x = type_ink.write(&print(2.1), printed, [17.0, y]);
                    pen.write(&hand, left.trim_start_matches(printed), [x + 1.0, y]);
                } else {
                    pen.write(&hand, left, [17.0, y]);
                }
            } else {
                pen.write(&hand, columns[0], [17.0, y]);
            }
        }
        // The sum.
        pen.rule([right - 22.0, line(9) + 3.0], [right, line(9) + 2.6], 0.35);
        pen.rule(
            [right - 22.0, line(10) + 3.0],
            [right, line(10) + 2.6],
            0.35,
        );
        // The column of the amounts.
        type_ink.rule([right - 27.0, line(6)], [right - 27.0, line(10) + 5.0], 0.2);
        vec![type_ink.mark(), pen.mark()]
    };
    leaf.photograph(
        |paper| {
            paper.creases.push(([0.0, h * 0.5], [w, h * 0.5 + 0.6]));
            paper.fox(9, [w * 0.5, 0.0, w, h * 0.5]);
        },
        mark,
    )
}

/// A letter in violet ink on thin paper, folded twice.
pub fn letter(words: &Words) -> Photograph {
    let leaf = Leaf {
        key: words.key,
        size: [168.0, 216.0],
        make: Make::Wove,
        tone: 0xe9_e4_d8,
        table: Table::Slate,
        longest: 1500,
    };
    let [w, h] = leaf.size;
    let mark = |window: Window| {
        let mut pen = Ink::new(window, 0x33_28_4c, 0.1, &["perelaz", words.key]);
        let hand = joined(2.8, 0.56, 0.16, 1.04);
        let last = words.lines.len() - 1;
        let mut y = 24.0;
        for (i, text) in words.lines.iter().enumerate() {
            if i == 0 {
                pen.write_to(&hand, text, [w - 18.0, y]);
                y += 15.0;
            } else if i == last {
                y += 4.0;
                pen.write_to(&hand, text, [w - 26.0, y]);
            } else {
                let begins = ["The paper", "On Monday", "Do not"]
                    .iter()
                    .any(|b| text.starts_with(b));
                pen.write(&hand, text, [if begins { 24.0 } else { 17.0 }, y]);
                y += 11.3;
            }
        }
        vec![pen.mark()]
    };
    leaf.photograph(
        |paper| {
            paper.creases.push(([0.0, h * 0.5], [w, h * 0.5 - 0.7]));
            paper.fold = true;
            paper.tide = Some(h - 11.0);
        },
        mark,
    )
}

/// A leaflet set in type, folded in four, with a librarian's cross in blue pencil.
pub fn leaflet(words: &Words) -> Photograph {
    let leaf = Leaf {
        key: words.key,
        size: [148.0, 186.0],
        make: Make::Wove,
        tone: 0xdf_dd_c4,
        table: Table::Linen,
        longest: 1400,
    };
    let [w, h] = leaf.size;
    let (left, right) = (17.0, w - 17.0);
    let mark = |window: Window| {
        let mut ink = Ink::new(window, 0x24_24_26, 0.12, &["type", words.key]);
        let mut blue = Ink::new(window, 0x3f_5f_a8, 0.7, &["pencil", words.key]);
        for (inset, wide) in [(8.0, 0.9), (9.7, 0.25)] {
            let corners = [
                [inset, inset],
                [w - inset, inset],
                [w - inset, h - inset],
                [inset, h - inset],
                [inset, inset],
            ];
            for side in corners.windows(2) {
                ink.rule(side[0], side[1], wide);
            }
        }
        ink.write_amid(&spaced(3.0, 0.62), &words.lines[0], [w * 0.5, 27.0]);
        ink.write_amid(&print(2.05), &words.lines[1], [w * 0.5, 37.0]);
        ink.write_amid(&print(2.05), &words.lines[2], [w * 0.5, 45.0]);
        ink.write_amid(&spaced(2.2, 0.3), &words.lines[3], [w * 0.5, 55.0]);
        ornament(&mut ink, [w * 0.5, 63.0]);
        let face = print(1.88);
        let mut y = 77.0;
        let last = words.lines.len() - 1;
        for i in 4..last {
            let columns = words.columns(i);
            if let [text, price] = columns[..] {
                let indent = if text.starts_with("10") || text.starts_with("11") {
                    0.0
                } else {
                    1.6
                };
                let end = ink.write(&face, text, [left + indent, y]);
                let price_at = right - width(&face, price);
                ink.write(&face, price, [price_at, y]);
                leaders(&mut ink, end + 2.0, price_at - 1.5, y);
                if text.starts_with('8') {
                    let (x, top) = (left - 5.2, y - 3.2);
                    blue.stroke(&[[x, top], [x + 4.0, y + 0.6]], 0.55);
                    blue.stroke(&[[x + 3.8, top - 0.4], [x + 0.2, y + 0.8]], 0.55);
                }
            } else {
                ink.write(&print(1.7), columns[0], [left + 5.4, y]);
            }
            y += 11.2;
        }
        ink.rule([w * 0.5 - 14.0, y - 2.5], [w * 0.5 + 14.0, y - 2.5], 0.25);
        ink.write_amid(&print(1.7), &words.lines[last], [w * 0.5, y + 6.0]);
        vec![ink.mark(), blue.mark()]
    };
    leaf.photograph(
        |paper| {
            paper.fold = true;
            paper.creases.push(([0.0, h * 0.5], [w, h * 0.5 + 0.5]));
            paper.fox(12, [0.0, 0.0, w, h]);
        },
        mark,
    )
}

/// Three small lozenges in a row.
fn ornament(ink: &mut Ink, at: Pt) {
    for (dx, r) in [(-6.0, 0.9), (0.0, 1.5), (6.0, 0.9)] {
        let x = at[0] + dx;
        let lozenge = [
            [x - r * 1.6, at[1]],
            [x, at[1] - r],
            [x + r * 1.6, at[1]],
            [x, at[1] + r],
        ];
        ink.plane().tone(&lozenge, 0.95);
    }
}

/// Dots that lead from a line's end to its price.
fn leaders(ink: &mut Ink, from: f32, to: f32, y: f32) {
    let mut x = (from / 2.2).ceil() * 2.2;
    while x < to {
        ink.rule([x, y - 0.25], [x + 0.36, y - 0.25], 0.36);
        x += 2.2;
    }
}

/// A dealer's printed label, filled in.
pub fn label(words: &Words) -> Photograph {
    let leaf = Leaf {
        key: words.key,
        size: [124.0, 92.0],
        make: Make::Wove,
        tone: 0xe2_d2_ac,
        table: Table::Grey,
        longest: 1200,
    };
    let [w, h] = leaf.size;
    let mark = |window: Window| {
        let mut ink = Ink::new(window, 0x5a_22_1c, 0.12, &["type", words.key]);
        let mut pen = Ink::new(window, 0x2c_26_24, 0.12, &["pen", words.key]);
        let mut pencil = Ink::new(window, 0x50_4e_50, 0.75, &["pencil", words.key]);
        for (inset, wide) in [(4.0, 0.8), (5.6, 0.25)] {
            let corners = [
                [inset, inset],
                [w - inset, inset],
                [w - inset, h - inset],
                [inset, h - inset],
                [inset, inset],
            ];
            for side in corners.windows(2) {
                ink.rule(side[0], side[1], wide);
            }
        }
        ink.write_amid(&spaced(3.5, 0.95), &words.lines[0], [w * 0.5, 17.0]);
        ink.write_amid(&spaced(1.8, 0.8), &words.lines[1], [w * 0.5, 23.0]);
        ink.write_amid(&print(1.75), &words.lines[2], [w * 0.5, 28.5]);
        ink.rule([12.0, 31.5], [w - 12.0, 31.5], 0.25);
        let hand = joined(2.5, 0.56, 0.5, 1.22);
        let number = "No. ";
        let x = ink.write(&print(2.1), number, [12.0, 40.5]);
        pen.write(
            &hand,
            words.lines[3].trim_start_matches(number),
            [x + 1.5, 40.5],
        );
        for (text, y) in words.lines[4..7].iter().zip([49.5, 58.5, 67.0]) {
            let style = if y > 60.0 {
                joined(2.1, 0.48, 0.5, 1.16)
            } else {
                hand
            };
            pen.write(&style, text, [12.0, y]);
            ink.rule([12.0, y + 1.5], [w - 12.0, y + 1.5], 0.14);
        }
        pen.write(&hand, &words.lines[7], [12.0, 77.5]);
        pencil.write(&unjoined(2.1, 0.46, 0.28), &words.lines[8], [50.0, 80.5]);
        vec![ink.mark(), pen.mark(), pencil.mark()]
    };
    leaf.photograph(
        |paper| {
            paper.fox(14, [0.0, h * 0.4, w, h]);
            // The rust mark in the upper edge.
            paper.fox(5, [w * 0.62, 0.0, w * 0.66, 2.4]);
            paper.tide = Some(h - 9.0);
            paper.creases.push(([w - 15.0, 0.0], [w, 12.0]));
        },
        mark,
    )
}

/// A typescript with two words underlined in pen and initialled.
pub fn interview(words: &Words) -> Photograph {
    let leaf = Leaf {
        key: words.key,
        size: [206.0, 160.0],
        make: Make::Wove,
        tone: 0xe9_e0_c8,
        table: Table::Slate,
        longest: 1400,
    };
    let [w, h] = leaf.size;
    let mark = |window: Window| {
        let mut ribbon = Ink::new(window, 0x24_23_2c, 0.24, &["typed", words.key]);
        let mut pen = Ink::new(window, 0x26_3f_86, 0.1, &["pavlo", words.key]);
        let face = typewriter(1.95);
        let left = 27.0;
        for (i, text) in words.lines.iter().enumerate() {
            let y = 19.0 + 11.0 * i as f32;
            if i == 0 {
                ribbon.write_amid(&face, text, [w * 0.5, y]);
                continue;
            }
            ribbon.write(&face, text, [left, y]);
            // He underlined what became of them and put his initials beside it.
            let told = "усі вісім";
            if let Some((before, _)) = text.split_once(told) {
                let from = left + width(&face, before);
                let to = from + width(&face, told);
                let under = [
                    [from - 0.6, y + 2.3],
                    [(from + to) * 0.5, y + 2.0],
                    [to + 0.8, y + 2.5],
                ];
                pen.stroke(&curve(&under), 0.42);
                pen.write(&unjoined(3.0, 0.46, 0.3), "П. П.", [w - 22.0, y + 0.4]);
            }
        }
        vec![ribbon.mark(), pen.mark()]
    };
    leaf.photograph(
        |paper| {
            paper.creases.push(([0.0, 14.0], [17.0, 0.0]));
            paper.fox(6, [0.0, 0.0, w, h]);
        },
        mark,
    )
}
