//! Prints readings for people.

use std::io::{self, Write};

use super::document::entries;
use crate::press::references::ResolvedCatalogue;
use crate::study::resolve::reading::Reading;

/// Prints each reference with its readings, a line each: how certain, what, where, why.
pub(super) fn write(
    catalogue: &ResolvedCatalogue,
    results: &[(&str, Vec<Reading>)],
    colour: bool,
    out: &mut impl Write,
) -> io::Result<()> {
    for (at, (asked, readings)) in results.iter().enumerate() {
        if at > 0 {
            writeln!(out)?;
        }
        if colour {
            writeln!(out, "\u{1b}[1m{asked}\u{1b}[0m")?;
        } else {
            writeln!(out, "{asked}")?;
        }
        let readings = entries(catalogue, readings);
        if readings.is_empty() {
            writeln!(out, "  not understood")?;
        }
        let width = |text: &str| text.chars().count();
        let label = readings.iter().map(|r| width(&r.label)).max().unwrap_or(0);
        let address = readings
            .iter()
            .map(|r| width(&r.address))
            .max()
            .unwrap_or(0);
        for reading in readings {
            writeln!(
                out,
                "  {:8}  {:label$}  {:address$}  {}",
                reading.certainty, reading.label, reading.address, reading.why,
            )?;
        }
    }
    Ok(())
}
