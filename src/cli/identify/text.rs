//! Prints an examination for people: what was seen, the evidence for each state and each printing, and what
//! would change the answer.
//!
//! The two answers stand apart, with their evidence and without percentages. The output never states an
//! identification.

use std::io::{self, Write};

use super::examination::Examination;
use super::wording::Names;
use crate::model::words::ClosedList;
use crate::study::evidence::{
    Bearing, Evidence, EvidenceRow, Fit, MOST_OVERTURNING, Overturning, weighs,
};
use crate::study::index::{CandidateAt, PointAt};

/// The least information, in bits, that a point must be expected to give to be asked for.
pub(super) const WORTH_LOOKING: f64 = 0.01;

/// Prints what was seen, the evidence, what to look at next, and what would change the answer.
pub(super) fn conclusion(
    examination: &Examination<'_>,
    colour: bool,
    out: &mut impl Write,
) -> io::Result<()> {
    let design = examination.design;
    let title = design.title().map_or("", |t| t.text.value.as_str());
    let mut page = Page {
        examination,
        names: Names {
            design,
            table: examination.table,
        },
        colour,
        out,
    };
    let heading = page.bold(&format!("{}. {title}", design.number));
    writeln!(page.out, "{heading}")?;
    if examination.table.candidates.is_empty() {
        return writeln!(
            page.out,
            "\nNo states and no printings are recorded, so there is nothing to compare the sheet with."
        );
    }
    let evidence = examination.evidence();
    page.seen()?;
    if evidence.best.is_none() {
        page.contradiction()?;
    }
    page.axis(&Axis::State, &evidence)?;
    page.axis(&Axis::Printing, &evidence)?;
    page.unrecorded(&evidence)?;
    page.next()?;
    if evidence.tells() {
        page.overturning(&evidence)?;
    }
    page.always()
}

/// The two answers.
enum Axis {
    State,
    Printing,
}

struct Page<'a, W> {
    examination: &'a Examination<'a>,
    names: Names<'a>,
    colour: bool,
    out: &'a mut W,
}

impl<W: Write> Page<'_, W> {
    fn bold(&self, text: &str) -> String {
        if self.colour {
            format!("\u{1b}[1m{text}\u{1b}[0m")
        } else {
            text.to_owned()
        }
    }

    fn heading(&mut self, text: &str) -> io::Result<()> {
        let text = self.bold(text);
        writeln!(self.out, "\n{text}")
    }

    fn seen(&mut self) -> io::Result<()> {
        if self.examination.observed.is_empty() {
            return Ok(());
        }
        self.heading("Seen")?;
        for observed in self.examination.observed {
            let (ask, seen) = (
                self.names.question(observed.point),
                self.names.seen(observed),
            );
            writeln!(self.out, "  {ask} {seen}")?;
        }
        Ok(())
    }

    /// Every candidate is excluded: those that the fewest points exclude.
    fn contradiction(&mut self) -> io::Result<()> {
        self.heading("Nothing recorded fits")?;
        writeln!(
            self.out,
            "  What was seen excludes every state and printing. The fewest points exclude:"
        )?;
        for at in self.examination.identified.nearest() {
            writeln!(self.out, "  {}", self.names.candidate(at))?;
            for point in &self.examination.identified.candidates[at].excluded_by {
                self.line(Bearing::Excludes, at, *point)?;
            }
        }
        if self
            .examination
            .identified
            .may_be_mixed(self.examination.table)
        {
            writeln!(
                self.out,
                "  These points lie on different matrices: the matrices may be in different states."
            )?;
        }
        writeln!(
            self.out,
            "  Check these points again. If they stand, it may be a state not yet described."
        )
    }

    fn axis(&mut self, axis: &Axis, evidence: &Evidence) -> io::Result<()> {
        let rows = match axis {
            Axis::State => &evidence.states,
            Axis::Printing => &evidence.printings,
        };
        if rows.len() < 2 {
            return Ok(());
        }
        let (heading, records) = match axis {
            Axis::State => ("State", "states"),
            Axis::Printing => ("Printing", "printings"),
        };
        self.heading(heading)?;
        if !Evidence::distinguishes(rows) {
            return writeln!(
                self.out,
                "  What was seen does not distinguish the {records}."
            );
        }
        for row in rows {
            let name = match axis {
                Axis::State => self.names.state(row.key.as_ref()),
                Axis::Printing => self.printing_with_states(row),
            };
            writeln!(self.out, "  {name}: {}", row.fit.in_english())?;
            for (bearing, point) in row.bearings() {
                self.line(bearing, row.best, point)?;
            }
        }
        Ok(())
    }

    /// "Printed by the artist, with i/v dark-sky or iii/v buoy-gone".
    fn printing_with_states(&self, row: &EvidenceRow) -> String {
        let table = self.examination.table;
        let printing = self.names.printing(row.key.as_ref());
        let of_row = table.printings.iter().find(|other| other.key == row.key);
        let with = of_row.map_or(&[][..], |of_row| row.with_states(of_row));
        let states: Vec<String> = with
            .iter()
            .filter_map(|at| table.candidates[*at].state.as_ref())
            .map(|state| self.names.state(Some(state)))
            .collect();
        if states.is_empty() || row.fit == Fit::Excluded {
            return printing;
        }
        format!("{printing}, with {}", states.join(" or "))
    }

    /// "for  matrix  Is there a moon? present; recorded: present".
    fn line(&mut self, bearing: Bearing, candidate: CandidateAt, point: PointAt) -> io::Result<()> {
        let column = &self.examination.table.points[point];
        let recorded = column
            .allows(candidate)
            .map(|allowed| self.names.allowed(point, allowed))
            .unwrap_or_default();
        let mut observed = self.examination.observed.iter();
        let observed = observed.find(|o| o.point == point);
        let seen = observed.map(|o| self.names.seen(o)).unwrap_or_default();
        let is_weighed = bearing == Bearing::Excludes
            || observed.is_some_and(|o| weighs(self.examination.table, o, candidate));
        let weight = if is_weighed { "" } else { ", not weighed" };
        writeln!(
            self.out,
            "      {bearing} ({}{weight}): {} {seen}; recorded: {recorded}",
            column.evidence,
            self.names.question(point),
        )
    }

    /// The points seen at which nothing is recorded of the only candidate left.
    fn unrecorded(&mut self, evidence: &Evidence) -> io::Result<()> {
        let (Some(best), false) = (evidence.best, evidence.unrecorded.is_empty()) else {
            return Ok(());
        };
        let name = self.names.candidate(best);
        writeln!(
            self.out,
            "\nOnly {name} fits what is recorded; what it shows is not recorded at:"
        )?;
        for point in &evidence.unrecorded {
            writeln!(self.out, "  {}", self.names.question(*point))?;
        }
        Ok(())
    }

    fn next(&mut self) -> io::Result<()> {
        let worth = self.examination.next.iter();
        let worth: Vec<PointAt> = worth
            .filter(|next| next.bits >= WORTH_LOOKING)
            .take(3)
            .map(|next| next.point)
            .collect();
        if worth.is_empty() {
            if self.examination.identified.left().count() > 1 {
                writeln!(
                    self.out,
                    "\nNo recorded point that is still to be examined distinguishes those that remain."
                )?;
            }
            return Ok(());
        }
        self.heading("Look next")?;
        for point in worth {
            let key = &self.examination.table.points[point].key;
            writeln!(self.out, "  {key}: {}", self.names.question(point))?;
        }
        Ok(())
    }

    fn overturning(&mut self, evidence: &Evidence) -> io::Result<()> {
        let points = self.examination.overturning(evidence);
        let (Some(best), false) = (evidence.best, points.is_empty()) else {
            return Ok(());
        };
        self.heading("What would change this")?;
        let name = self.names.candidate(best);
        let alike = match evidence.alike {
            0 | 1 => String::new(),
            alike => format!(", the first of {alike} that weigh the same,"),
        };
        writeln!(self.out, "  {name}{alike} is recorded with:")?;
        for overturning in points.iter().take(MOST_OVERTURNING) {
            let line = self.overturning_line(overturning);
            writeln!(self.out, "      {line}")?;
        }
        match points.len().saturating_sub(MOST_OVERTURNING) {
            0 => Ok(()),
            1 => writeln!(self.out, "      and one more point"),
            more => writeln!(self.out, "      and {more} more points"),
        }
    }

    fn overturning_line(&self, overturning: &Overturning) -> String {
        let expected = self.names.allowed(overturning.point, &overturning.expected);
        let ask = self.names.question(overturning.point);
        let effect = if overturning.would_exclude {
            "anything else excludes it"
        } else {
            "anything else speaks against it"
        };
        let again = if overturning.is_uncertain {
            " (not seen for certain: look again)"
        } else {
            ""
        };
        format!("{ask} {expected}; {effect}{again}")
    }

    /// What always holds, whatever was seen.
    fn always(&mut self) -> io::Result<()> {
        writeln!(
            self.out,
            "\nIt may be none of these: a recut, a reproduction, or a state or printing not yet described."
        )?;
        for row in &self.examination.table.printings {
            let design = self.examination.design;
            let printing = row.key.as_ref().and_then(|key| design.printing(key));
            let kind = printing.and_then(|p| p.kind.own().filter(|kind| !kind.is_counted()));
            let (Some(kind), [at]) = (kind, row.candidates.as_slice()) else {
                continue;
            };
            let name = self.names.printing(row.key.as_ref());
            let shown: Vec<String> = row
                .shown
                .iter()
                .filter_map(|point| {
                    let allowed = self.examination.table.points[*point].allows(*at)?;
                    let ask = self.names.question(*point);
                    Some(format!("{ask} {}", self.names.allowed(*point, allowed)))
                })
                .collect();
            let told = if shown.is_empty() {
                "nothing is recorded that distinguishes it".to_owned()
            } else {
                shown.join("; ")
            };
            writeln!(self.out, "  {name} ({}): {told}", kind.word())?;
        }
        writeln!(
            self.out,
            "\nLevel with the best: what was seen is at most 3 times as likely for the best; behind: at most 20 times; far\nbehind: \
             at most 150 times; very far behind: more. The chances of error behind these figures are working \
             assumptions.\nThis is what the records of the catalogue allow; they may be incomplete. It is not an authentication."
        )
    }
}
