//! Prints an examination for people.
//!
//! The output states with which candidates the sheet is consistent. It never states an identification.

use std::io::{self, Write};

use super::examination::Examination;
use super::see_option::OTHER;
use crate::model::certainty::Certainty;
use crate::model::design::Design;
use crate::model::point::PointKind;
use crate::study::identify::{Observed, WeighedCandidate};
use crate::study::index::CandidateAt;
use crate::study::numerals::numerals;
use crate::study::scale::{Allowed, Answer, ValueSet};
use crate::study::table::{CandidateRow, DiagnosticTable, PointColumn};

/// The least information, in bits, that a point must be expected to give to be asked for.
pub(super) const WORTH_LOOKING: f64 = 0.01;

/// Prints what was seen, which candidates remain, what excludes the others, and what to look at next.
pub(super) fn conclusion(
    examination: &Examination<'_>,
    colour: bool,
    out: &mut impl Write,
) -> io::Result<()> {
    let design = examination.design;
    let heading = |text: &str| {
        if colour {
            format!("\u{1b}[1m{text}\u{1b}[0m")
        } else {
            text.to_owned()
        }
    };
    let title = design.title().map_or("", |t| t.text.value.as_str());
    writeln!(out, "{}", heading(&format!("{}. {title}", design.number)))?;
    if examination.table.candidates.is_empty() {
        return writeln!(
            out,
            "\nNo states are recorded, so nothing can be told apart."
        );
    }
    if !examination.observed.is_empty() {
        writeln!(out, "\n{}", heading("Seen"))?;
        for observed in examination.observed {
            writeln!(out, "  {}", seen(design, examination.table, observed))?;
        }
    }
    let left: Vec<CandidateAt> = in_order(examination)
        .into_iter()
        .filter(|at| !is_excluded(examination, *at))
        .collect();
    if left.is_empty() {
        contradiction(
            examination,
            &heading("Consistent with nothing recorded"),
            out,
        )?;
    } else {
        writeln!(out, "\n{}", heading("Consistent with"))?;
        for at in &left {
            let Some(weighed) = examination.identified.candidates.get(*at) else {
                continue;
            };
            let name = name(examination, *at);
            writeln!(out, "{:>6}  {name}", percent(weighed.probability))?;
        }
        excluded(examination, &heading("Excluded"), out)?;
        next(examination, &left, &heading("Look next"), out)?;
    }
    writeln!(
        out,
        "\nThis is what the records of the catalogue allow; they may be incomplete. It is no authentication."
    )
}

fn in_order(examination: &Examination<'_>) -> Vec<CandidateAt> {
    examination.identified.by_probability()
}

fn is_excluded(examination: &Examination<'_>, at: CandidateAt) -> bool {
    let weighed = examination.identified.candidates.get(at);
    weighed.is_none_or(WeighedCandidate::is_excluded)
}

fn contradiction(
    examination: &Examination<'_>,
    heading: &str,
    out: &mut impl Write,
) -> io::Result<()> {
    writeln!(out, "\n{heading}")?;
    writeln!(out, "  Every state and printing is excluded. The nearest:")?;
    for at in examination.identified.nearest() {
        against(examination, at, out)?;
    }
    if examination.identified.may_be_mixed(examination.table) {
        writeln!(
            out,
            "  What speaks against them lies in different matrices: perhaps blocks in different conditions."
        )?;
    }
    writeln!(
        out,
        "  Look again at these points, or call one of them probable; it may be a state not yet described."
    )
}

fn excluded(examination: &Examination<'_>, heading: &str, out: &mut impl Write) -> io::Result<()> {
    let excluded: Vec<CandidateAt> = in_order(examination)
        .into_iter()
        .filter(|at| is_excluded(examination, *at))
        .collect();
    if excluded.is_empty() {
        return Ok(());
    }
    writeln!(out, "\n{heading}")?;
    for at in excluded {
        against(examination, at, out)?;
    }
    Ok(())
}

/// A candidate and the points that exclude it.
fn against(examination: &Examination<'_>, at: CandidateAt, out: &mut impl Write) -> io::Result<()> {
    writeln!(out, "  {}", name(examination, at))?;
    let weighed = examination.identified.candidates.get(at);
    for point in weighed.into_iter().flat_map(|w| &w.against) {
        let Some(column) = examination.table.points.get(*point) else {
            continue;
        };
        let shown = column
            .allows(at)
            .map(|allowed| allowed_words(examination.design, column, allowed));
        let seen = examination
            .observed
            .iter()
            .find(|o| o.point == *point)
            .map(|o| answer_words(examination.design, column, &o.answer));
        writeln!(
            out,
            "      {}: shows {}; {} was seen",
            column.key,
            shown.unwrap_or_default(),
            seen.unwrap_or_default()
        )?;
    }
    Ok(())
}

fn next(
    examination: &Examination<'_>,
    left: &[CandidateAt],
    heading: &str,
    out: &mut impl Write,
) -> io::Result<()> {
    let worth: Vec<_> = examination
        .next
        .iter()
        .filter(|next| next.bits >= WORTH_LOOKING && !examination.not_visible.contains(&next.point))
        .take(3)
        .collect();
    if !worth.is_empty() {
        writeln!(out, "\n{heading}")?;
        for next in worth {
            let Some(column) = examination.table.points.get(next.point) else {
                continue;
            };
            let ask = examination
                .design
                .point(&column.key)
                .map(|p| p.ask.value.as_str());
            writeln!(
                out,
                "  {}: {} ({:.2} bits)",
                column.key,
                ask.unwrap_or_default(),
                next.bits
            )?;
        }
        return Ok(());
    }
    if left.len() > 1 {
        writeln!(
            out,
            "\nNo point that is still to be looked at tells these apart."
        )?;
    }
    Ok(())
}

/// "iii/v buoy-gone, Printed by the artist".
fn name(examination: &Examination<'_>, at: CandidateAt) -> String {
    let row = examination.table.candidates.get(at);
    row.map(|row| row_name(examination.design, row))
        .unwrap_or_default()
}

fn row_name(design: &Design, row: &CandidateRow) -> String {
    let numeral = numerals(design)
        .get(&row.state)
        .map(ToString::to_string)
        .unwrap_or_default();
    let printing = row.printing.as_ref().map(|key| {
        let named = design.printing(key).and_then(|p| p.name.clone());
        format!(", {}", named.unwrap_or_else(|| format!("printing `{key}`")))
    });
    format!("{numeral} {}{}", row.state, printing.unwrap_or_default())
}

/// "beam: present", "sky: even or wiped (probable)".
fn seen(design: &Design, table: &DiagnosticTable, observed: &Observed) -> String {
    let Some(column) = table.points.get(observed.point) else {
        return String::new();
    };
    let certainty = match observed.certainty {
        Certainty::Certain => String::new(),
        uncertain => format!(" ({uncertain})"),
    };
    let words = answer_words(design, column, &observed.answer);
    format!("{}: {words}{certainty}", column.key)
}

fn answer_words(design: &Design, column: &PointColumn, answer: &Answer) -> String {
    match answer {
        Answer::OneOf(values) => values_words(column, values),
        Answer::Number(number) => with_unit(design, column, *number),
    }
}

fn allowed_words(design: &Design, column: &PointColumn, allowed: &Allowed) -> String {
    match allowed {
        Allowed::AnyOf(values) => values_words(column, values),
        Allowed::Number(number) => with_unit(design, column, *number),
    }
}

fn values_words(column: &PointColumn, values: &ValueSet) -> String {
    let words: Vec<String> = values
        .iter()
        .map(|at| match column.scale.value(*at) {
            Some(value) => value.to_string(),
            None => format!("{OTHER} number"),
        })
        .collect();
    words.join(" or ")
}

fn with_unit(design: &Design, column: &PointColumn, number: f64) -> String {
    let kind = design.point(&column.key).map(|p| &p.kind);
    match kind {
        Some(PointKind::Measure { unit, .. }) => format!("{number} {unit}"),
        _ => number.to_string(),
    }
}

/// "92 %"; "under 1 %" instead of "0 %", because the candidate is not excluded.
fn percent(probability: f64) -> String {
    let percent = probability * 100.0;
    if percent > 0.0 && percent < 1.0 {
        "< 1 %".to_owned()
    } else if percent > 99.0 && percent < 100.0 {
        "> 99 %".to_owned()
    } else {
        format!("{percent:.0} %")
    }
}
