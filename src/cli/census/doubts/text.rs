//! Prints the pairs for people: one after the other, each reason on a line.

use std::io::{self, Write};

use super::pairs::{DesignPairs, bearing_word, stated_why, verdict};
use crate::audit::same_sheet;
use crate::cli::plural::counted;
use crate::model::catalogue::Catalogue;
use crate::study::Studies;

pub(super) fn pairs(
    catalogue: &Catalogue,
    studies: &Studies,
    found: &[DesignPairs<'_>],
    colour: bool,
    out: &mut impl Write,
) -> io::Result<()> {
    if found.is_empty() {
        return writeln!(out, "No two records are suspected to describe one sheet.");
    }
    let heading = |text: &str| {
        if colour {
            format!("\u{1b}[1m{text}\u{1b}[0m")
        } else {
            text.to_owned()
        }
    };
    for DesignPairs { design, pairs } in found {
        let title = design.title().map_or("", |t| t.text.value.as_str());
        writeln!(out, "{}", heading(&format!("{}. {title}", design.number)))?;
        for pair in pairs {
            let [one, other] = pair
                .records
                .each_ref()
                .map(|key| catalogue.sheet_number(key));
            writeln!(out, "\n{one} and {other}: {}", verdict(pair))?;
            if pair.is_stated {
                let why = stated_why(catalogue, &pair.records);
                let why = why.map(|why| format!(": {why}")).unwrap_or_default();
                writeln!(out, "  {:<15} that they may be one{why}", "the record says")?;
            }
            for reason in &pair.reasons {
                let words = same_sheet::reason(catalogue, studies, &pair.records, reason);
                writeln!(out, "  {:<15} {words}", bearing_word(reason.bearing))?;
            }
        }
        writeln!(out)?;
    }
    writeln!(
        out,
        "{}. To settle one, write in one of its records `same_as`, `maybe_same_as` or `not_same_as`, with \
         a `why`.",
        counted_pairs(found)
    )
}

/// "4 pairs, 1 of them not yet stated in any record".
pub(super) fn counted_pairs(found: &[DesignPairs<'_>]) -> String {
    let all = || found.iter().flat_map(|of| &of.pairs);
    let unsaid = all().filter(|pair| !pair.is_stated).count();
    let pairs = counted(all().count(), "pair", "pairs");
    match unsaid {
        0 => pairs,
        n => format!("{pairs}, {n} of them not yet stated in any record"),
    }
}
