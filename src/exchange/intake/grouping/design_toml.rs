//! The record of a new design as `design.toml`, with what an editor should look at as comments.

use std::fmt::Write as _;

use super::new_design::NewDesign;
use crate::exchange::intake::toml_text::text_value as quoted;
use crate::model::series_place::SeriesRef;

/// The text of `design.toml`.
#[must_use]
pub fn design_toml(design: &NewDesign) -> String {
    let mut text = format!(
        "# Design {}, proposed from what was handed in.\n",
        design.key
    );
    for remark in &design.remarks {
        // One line, whatever the remark quotes.
        let words: Vec<&str> = remark.split_whitespace().collect();
        let words: String = words
            .join(" ")
            .chars()
            .filter(|sign| !sign.is_control())
            .collect();
        let _ = writeln!(text, "# Look at: {words}.");
    }
    text.push('\n');
    if let Some(number) = &design.number {
        let _ = writeln!(text, "number = {}", quoted(number));
    }
    text.push_str("titles = [\n");
    for title in &design.titles {
        let supplied = if title.is_supplied {
            ", supplied = true"
        } else {
            ""
        };
        let _ = writeln!(text, "  {{ text = {}{supplied} }},", quoted(&title.text));
    }
    text.push_str("]\n");
    match &design.dates[..] {
        [] => {}
        [one] => {
            let _ = writeln!(text, "date = {}", quoted(one.as_str()));
        }
        several => {
            let each = several
                .iter()
                .map(|date| format!("{{ is = {} }}", quoted(date.as_str())));
            let _ = writeln!(text, "date = [{}]", each.collect::<Vec<_>>().join(", "));
        }
    }
    if !design.makers.is_empty() {
        let each = design
            .makers
            .iter()
            .map(|(person, role)| format!("{{ person = \"{person}\", role = \"{role}\" }}"));
        let _ = writeln!(text, "makers = [{}]", each.collect::<Vec<_>>().join(", "));
    }
    if !design.technique.is_empty() {
        let each = design.technique.iter().map(|key| format!("\"{key}\""));
        let _ = writeln!(
            text,
            "technique = [{}]",
            each.collect::<Vec<_>>().join(", ")
        );
    }
    match &design.series {
        Some(SeriesRef::Record(key)) => {
            let _ = writeln!(text, "series = {{ series = \"{key}\" }}");
        }
        Some(SeriesRef::Named(name)) => {
            let _ = writeln!(text, "series = {{ name = {} }}", quoted(name));
        }
        None => {}
    }
    let sizes = [("image", design.image), ("matrix", design.matrix)];
    if sizes.iter().any(|(_, size)| size.is_some()) {
        text.push_str("\n[size]\n");
    }
    for (key, size) in sizes {
        if let Some(size) = size {
            let _ = writeln!(
                text,
                "{key} = [{}, {}]",
                mm(size.height_mm()),
                mm(size.width_mm())
            );
        }
    }
    text
}

/// Millimetres with at most one decimal, as records have them.
fn mm(mm: f64) -> String {
    let text = format!("{mm:.1}");
    text.strip_suffix(".0").map_or(text.clone(), str::to_owned)
}
