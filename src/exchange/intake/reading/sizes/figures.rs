//! Numbers with decimals and fractions: `24.1`, `24,1`, `9 1/2`, `9½`, `9-1/2`.

use crate::exchange::intake::reading::words::{PieceKind, Words};

/// A number as a fraction, exactly as written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Figure {
    /// The number is this …
    pub over: u64,
    /// … divided by this, which also says how finely it was measured.
    pub under: u64,
    /// The piece after it.
    pub end: usize,
    /// Whether three figures follow a single separator: `1.200` is 1200 or 1.2.
    pub has_three_decimals: bool,
}

impl Figure {
    /// The number.
    #[expect(
        clippy::cast_precision_loss,
        reason = "at most nine figures before and six after the separator"
    )]
    pub fn value(self) -> f64 {
        self.over as f64 / self.under as f64
    }

    /// The number times a length, in one division: 241 tenths of 10 mm are 241 mm exactly.
    #[expect(
        clippy::cast_precision_loss,
        reason = "at most nine figures before and six after the separator"
    )]
    pub fn times(self, length: f64) -> f64 {
        self.over as f64 * length / self.under as f64
    }

    /// The same figures without their separator: `1.200` as 1200.
    pub fn without_separator(self) -> Figure {
        Figure {
            under: 1,
            has_three_decimals: false,
            ..self
        }
    }
}

/// The number that begins at a piece.
pub(super) fn figure(words: &Words<'_>, index: usize) -> Option<Figure> {
    let piece = words.at(index)?;
    if let PieceKind::Fraction(over, under) = piece.kind {
        return Some(of(u64::from(over), u64::from(under), index + 1));
    }
    let whole = u64::from(words.number(index)?);
    if let Some((over, under, end)) = fraction(words, index)
        && over < under
    {
        return Some(of(over, under, end));
    }
    // `9½`, `9 ½`
    if let Some(PieceKind::Fraction(over, under)) = words.at(index + 1).map(|p| p.kind) {
        let (over, under) = (u64::from(over), u64::from(under));
        return Some(of(whole * under + over, under, index + 2));
    }
    // `9 1/2`, `9-1/2`
    let start = if words.is_close_mark(index + 1, &["-", "‐", "–"]) && words.is_close(index + 2)
    {
        index + 2
    } else {
        index + 1
    };
    if let Some((over, under, end)) = fraction(words, start)
        && over < under
        && (start > index + 1 || !words.is_close(start))
    {
        return Some(of(whole * under + over, under, end));
    }
    // `24.1`, `24,1`, `24・1`
    if words.is_close_mark(index + 1, &[".", ",", "·"]) && words.is_close(index + 2) {
        let decimals = words.figures(index + 2)?;
        if decimals.len() <= 6 {
            let under = 10_u64.pow(u32::try_from(decimals.len()).ok()?);
            let after: u64 = decimals.parse().ok()?;
            return Some(Figure {
                has_three_decimals: decimals.len() == 3 && whole > 0,
                ..of(whole * under + after, under, index + 3)
            });
        }
    }
    Some(of(whole, 1, index + 1))
}

fn of(over: u64, under: u64, end: usize) -> Figure {
    Figure {
        over,
        under,
        end,
        has_three_decimals: false,
    }
}

/// `1/2`, `7⁄16`: a fraction with a denominator of rules and tapes.
fn fraction(words: &Words<'_>, index: usize) -> Option<(u64, u64, usize)> {
    let over = words.number(index)?;
    if !words.is_close_mark(index + 1, &["/", "⁄"]) || !words.is_close(index + 2) {
        return None;
    }
    let under = words.number(index + 2)?;
    let is_usual = [2, 3, 4, 5, 6, 8, 10, 12, 16, 32, 64].contains(&under);
    is_usual.then_some((u64::from(over), u64::from(under), index + 3))
}
