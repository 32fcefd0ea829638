//! Measurements as the text that the grammar of sizes reads.

/// A length as a record has it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Measure {
    /// What was measured: `height`.
    pub kind: String,
    /// The number.
    pub value: String,
    /// Its unit.
    pub unit: String,
}

/// Lengths of one thing in words: `sheet: 166 x 243 mm` where they are one height and one width in one unit, else
/// `sheet: height: 166 mm, diameter: 12 mm`.
pub(super) fn in_words(of: &str, measures: &[Measure]) -> String {
    let the = |words: &[&str]| {
        let mut found = measures
            .iter()
            .filter(|measure| words.contains(&measure.kind.to_lowercase().trim()));
        let first = found.next();
        first.filter(|_| found.next().is_none())
    };
    let pair = the(&HEIGHTS).zip(the(&WIDTHS));
    let pair = pair.filter(|(height, width)| measures.len() == 2 && height.unit == width.unit);
    let each = measures.iter().map(|measure| {
        let kind = match measure.kind.as_str() {
            "" => String::new(),
            kind => format!("{kind}: "),
        };
        format!("{kind}{} {}", measure.value, measure.unit)
            .trim()
            .to_owned()
    });
    let lengths = pair.map_or_else(
        || each.collect::<Vec<_>>().join(", "),
        |(height, width)| format!("{} x {} {}", height.value, width.value, height.unit),
    );
    match of {
        "" => lengths.trim().to_owned(),
        _ => format!("{of}: {}", lengths.trim()),
    }
}

const HEIGHTS: [&str; 5] = ["height", "höhe", "hauteur", "hoogte", "高さ"];
const WIDTHS: [&str; 5] = ["width", "breite", "largeur", "breedte", "幅"];
