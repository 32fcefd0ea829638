//! Prints the counts for people.

use std::fmt::Write as _;
use std::io::{self, Write};

use super::scope::ScopedCensus;
use super::scope::series_name;
use crate::model::catalogue::Catalogue;
use crate::model::design::Design;
use crate::model::key::Key;
use crate::model::words::ClosedList as _;
use crate::study::DesignStudy;
use crate::study::census::{CensusRows, Row, Sheets};
use crate::study::numerals::Numeral;
use crate::study::survival::{NoEstimate, Survival};

/// Prints the census of a design, a series or everything.
pub(super) fn census(
    catalogue: &Catalogue,
    census: &ScopedCensus<'_>,
    colour: bool,
    out: &mut impl Write,
) -> io::Result<()> {
    let (design, counts) = (census.design(), census.census());
    let title = match census {
        ScopedCensus::Design(design, _) => {
            let title = design.title().map_or("", |t| t.text.value.as_str());
            format!("{}. {title}", design.number)
        }
        ScopedCensus::Series(of, _) => series_name(catalogue, of),
        ScopedCensus::Everything(_) => catalogue.settings.title.value.clone(),
    };
    let heading = |text: &str| {
        if colour {
            format!("\u{1b}[1m{text}\u{1b}[0m")
        } else {
            text.to_owned()
        }
    };
    writeln!(out, "{}", heading(&title))?;
    writeln!(out, "Known: {}", in_words(counts.sheets))?;
    let apart = set_apart(catalogue, census);
    if !apart.is_empty() {
        writeln!(
            out,
            "Rejected or withdrawn, and counted all the same: {}",
            apart.join(", ")
        )?;
    }
    for (of, lines) in tables(catalogue, design, &counts.by) {
        writeln!(out, "\n{}", heading(of))?;
        for (name, sheets) in lines {
            writeln!(out, "{:>7}  {name}", figure(sheets))?;
        }
    }
    if let Some((design, study)) = design {
        let editions = editions(design, study);
        if !editions.is_empty() {
            writeln!(out, "\n{}\n{}", heading("Editions"), editions.trim_end())?;
        }
        writeln!(
            out,
            "\n{}\n{}",
            heading("Estimated total"),
            survival(&study.survival)
        )?;
    }
    Ok(())
}

/// The numbers of the designs counted together that are rejected or withdrawn: pages count them apart.
fn set_apart<'c>(catalogue: &'c Catalogue, census: &'c ScopedCensus<'_>) -> Vec<&'c str> {
    if census.design().is_some() {
        return Vec::new();
    }
    census
        .designs(catalogue)
        .filter(|design| design.standing.is_set_apart() && !design.impressions.is_empty())
        .map(|design| design.number.as_str())
        .collect()
}

/// The tables, each with its heading and its rows (name and count). Tables without information are left out.
fn tables(
    catalogue: &Catalogue,
    design: Option<(&Design, &DesignStudy)>,
    by: &CensusRows,
) -> Vec<(&'static str, Vec<(String, Sheets)>)> {
    let state = |key: &Key| {
        let numeral = design.and_then(|(_, study)| study.numerals.get(key));
        numeral.map_or_else(|| key.to_string(), |n| format!("{} {key}", roman(*n)))
    };
    let printing = |key: &Key| {
        let printing = design.and_then(|(design, _)| design.printing(key));
        let name = printing.and_then(|p| p.name.as_ref());
        name.map_or_else(|| key.to_string(), ToString::to_string)
    };
    let holder = |key: &Key| match catalogue.published_holder(key) {
        Some(holder) if holder.may_publish("name") => match &holder.town {
            Some(town) => format!("{}, {}", town.value, holder.name.value),
            None => holder.name.value.clone(),
        },
        _ => key.to_string(),
    };
    let mut tables = vec![
        (
            "By status",
            lines(&by.status, |status| status.word().to_owned()),
        ),
        (
            "By class",
            lines(&by.class, |class| class.word().to_owned()),
        ),
        ("By impression type", lines(&by.kind, ToString::to_string)),
        ("By state", lines(&by.state, state)),
        ("By printing", lines(&by.printing, printing)),
        ("By country", lines(&by.country, Clone::clone)),
        ("By town", lines(&by.city, Clone::clone)),
        ("By holder", lines(&by.holder, holder)),
    ];
    tables.retain(|(_, lines)| !lines.is_empty());
    tables
}

fn roman(numeral: Numeral) -> String {
    numeral.to_string()
}

/// The rows; none where nothing is recorded of any sheet.
fn lines<K>(rows: &[Row<K>], name: impl Fn(&K) -> String) -> Vec<(String, Sheets)> {
    if rows.iter().all(|row| row.key.is_none()) {
        return Vec::new();
    }
    let named = |row: &Row<K>| {
        row.key
            .as_ref()
            .map_or_else(|| "not recorded".to_owned(), &name)
    };
    rows.iter().map(|row| (named(row), row.sheets)).collect()
}

/// "12", "4–6": a count in a column.
fn figure(sheets: Sheets) -> String {
    if sheets.is_certain() {
        sheets.at_most.to_string()
    } else {
        format!("{}–{}", sheets.at_least, sheets.at_most)
    }
}

/// "24 impressions", "20 to 22 impressions".
fn in_words(sheets: Sheets) -> String {
    let Sheets {
        at_least,
        at_most,
        exact,
    } = sheets;
    let bound = if exact {
        ""
    } else {
        " (the lower figure is a bound)"
    };
    match (sheets.is_certain(), at_most) {
        (true, 1) => "1 impression".to_owned(),
        (true, n) => format!("{n} impressions"),
        (false, n) => format!("{at_least} to {n} impressions{bound}"),
    }
}

/// One line a printing of which a size is declared, the number printed is recorded, or a number was met.
fn editions(design: &Design, study: &DesignStudy) -> String {
    let mut text = String::new();
    for edition in &study.editions {
        let name = design
            .printing(&edition.printing)
            .and_then(|p| p.name.as_ref())
            .map_or_else(|| edition.printing.to_string(), ToString::to_string);
        let sizes = [
            edition.declared.map(|n| format!("of {n} declared")),
            edition.printed.map(|n| format!("of {n} printed")),
        ];
        let sizes: Vec<String> = sizes.into_iter().flatten().collect();
        let sizes = if sizes.is_empty() {
            "no size recorded".to_owned()
        } else {
            sizes.join(", ")
        };
        let known = figure(edition.sheets);
        let met = edition.within().count();
        let _ = write!(
            text,
            "  {name}: known {known}, {sizes}; {met} numbers recorded"
        );
        let mut list = |what: &str, numbers: &[u32]| {
            if !numbers.is_empty() {
                let numbers: Vec<String> = numbers.iter().map(ToString::to_string).collect();
                let _ = write!(text, "; {what} {}", numbers.join(", "));
            }
        };
        list("recorded twice", &edition.repeated);
        list("above every declared size", &edition.outside);
        text.push('\n');
    }
    text
}

/// The estimate with its basis, or the reason why there is none.
fn survival(survival: &Survival) -> String {
    let met = survival.met;
    let ground = format!(
        "Based on {} impressions recorded on at least one occasion, of which {} on one and {} on two.",
        met.sheets, met.once, met.twice
    );
    let conclusion = match survival.estimate {
        Ok(estimate) => format!(
            "An estimated {:.0} impressions or more existed to be recorded, including any since destroyed (95% interval: \
             {:.0} to {:.0}; Chao1, bias-corrected), if occasions are independent and all impressions equally likely to \
             be recorded.",
            estimate.sheets, estimate.low, estimate.high
        ),
        Err(why) => format!("No estimate: {}.", no_estimate(why)),
    };
    format!("  {ground}\n  {conclusion}")
}

/// Why there is no estimate.
fn no_estimate(why: NoEstimate) -> String {
    match why {
        NoEstimate::SizeRecorded => {
            "the number printed is declared or recorded, which says more".to_owned()
        }
        NoEstimate::NeverMet(1) => "one known impression has no recorded occasion".to_owned(),
        NoEstimate::NeverMet(sheets) => {
            format!("{sheets} known impressions have no recorded occasion")
        }
        NoEstimate::TooFew => "at least five impressions with a recorded occasion are needed".to_owned(),
        NoEstimate::AllMetOnce => {
            "no impression is recorded on a second occasion".to_owned()
        }
        NoEstimate::TooFewMetOnce => {
            "at least two impressions recorded on one occasion only are needed; this does not show that there are no others"
                .to_owned()
        }
    }
}
