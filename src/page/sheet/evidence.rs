//! The evidence on a sheet: what its observations say of each state and each printing, what would change that, and
//! what could be seen if the sheet were unmounted (`docs/definitions.md`, "The two axes and their grades" and
//! "What a sheet's page adds").

use std::collections::BTreeSet;

use serde::Serialize;

use super::evidence_line::{LineView, line_weight};
use super::printing_record;
use super::told::{self, DocumentLine};
use crate::model::design::Design;
use crate::model::document::EvidenceTarget;
use crate::model::impression::{Impression, StateReading};
use crate::model::key::Key;
use crate::model::point::{EvidenceKind, Point};
use crate::page::key::candidates;
use crate::page::key::prefilled::examined;
use crate::page::key::recorded::{self, RecordedCopy};
use crate::page::phrases::enumeration;
use crate::page::phrases::evidence_words;
use crate::page::phrases::readings;
use crate::page::phrases::values;
use crate::page::plates::strips;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences, capitalised};
use crate::study::agree::departure;
use crate::study::evidence::{
    Bearing, Evidence, EvidenceRow, Fit, MOST_OVERTURNING, Overturning, overturning, weighs,
};
use crate::study::index::{CandidateAt, PointAt};
use crate::study::next_point::NextPoint;
use crate::study::printing_record::{RecordedEvidence, RecordedKind, recorded_evidence};
use crate::study::settle::{Settled, settled};
use crate::study::table::DiagnosticTable;
use crate::study::tellings::DocumentStatement;

/// Points expected to give less than this, in bits, are not suggested.
const SETTLES: f64 = 0.01;

/// The evidence on a sheet.
#[derive(Serialize)]
pub(super) struct SheetEvidence {
    /// What holds of the whole: nothing was seen that tells, everything is excluded, the sheet departs.
    remarks: CleanHtml,
    /// The states, then the printings.
    axes: Vec<AxisView>,
    change: Option<ChangeView>,
    /// The points to look at next, in sentences; empty where none would decide more.
    next: CleanHtml,
    /// What the catalogue records of recuts and reproductions of the design.
    copies: Vec<RecordedCopy>,
    /// The link to the identification key, with the observations filled in.
    key: String,
}

/// The states, or the printings.
#[derive(Serialize)]
struct AxisView {
    heading: String,
    rows: Vec<RowView>,
}

/// A state, or a printing, with its evidence.
#[derive(Serialize)]
struct RowView {
    name: CleanHtml,
    fit: String,
    is_excluded: bool,
    lines: Vec<LineView>,
    /// What documents tell of it.
    documents: Vec<DocumentLine>,
    /// Under an excluded state or printing: what else was seen of it.
    folded: Vec<LineView>,
    /// What the fold is called; empty where there is none.
    more: String,
}

impl SheetEvidence {
    /// The statements of documents that it shows.
    pub(super) fn documents(&self) -> Vec<DocumentStatement> {
        let rows = self.axes.iter().flat_map(|axis| &axis.rows);
        let lines = rows.flat_map(|row| &row.documents);
        lines.map(|line| line.statement.clone()).collect()
    }
}

/// What would change the answer.
#[derive(Serialize)]
struct ChangeView {
    best: CleanHtml,
    lines: Vec<CleanHtml>,
    more: String,
}

/// The evidence on a sheet; `None` where the design has fewer than two candidates or no points.
pub(super) fn of_sheet(
    here: &Here<'_>,
    design: &Design,
    impression: &Impression,
) -> Option<SheetEvidence> {
    if !candidates::has_key(design) {
        return None;
    }
    let table = candidates::table(here, design)?;
    if table.candidates.len() < 2 {
        return None;
    }
    let settled = settled(table, design, impression);
    let page = Page {
        here,
        design,
        impression,
        table,
        evidence: Evidence::of(table, &settled.observed, &settled.identified),
        settled,
    };
    Some(SheetEvidence {
        remarks: page.remarks(),
        axes: page.axes(),
        change: page.change(),
        next: page.next(),
        copies: recorded::copies(here, design, table),
        key: examined(here, design, impression),
    })
}

struct Page<'p, 'h> {
    here: &'p Here<'h>,
    design: &'p Design,
    impression: &'p Impression,
    table: &'p DiagnosticTable,
    settled: Settled,
    evidence: Evidence,
}

impl Page<'_, '_> {
    fn remarks(&self) -> CleanHtml {
        let words = self.here.words();
        let mut sentences = Vec::new();
        if self.evidence.best.is_none() {
            sentences.push(CleanHtml::text(words.word("seen-excludes-all")));
            if self.settled.identified.may_be_mixed(self.table) {
                sentences.push(CleanHtml::text(words.word("perhaps-mixed")));
            }
        } else if self.settled.observed.iter().all(|o| !o.answer.is_telling()) {
            sentences.push(CleanHtml::text(words.word("seen-nothing-telling")));
        } else if !self.evidence.tells() {
            sentences.push(CleanHtml::text(words.word("evidence-tells-nothing")));
        }
        let departing: Vec<CleanHtml> = departure(self.design, self.impression)
            .iter()
            .filter_map(|clash| self.design.point(&clash.point))
            .map(|point| strips::ask(self.here, self.design, point))
            .collect();
        if !departing.is_empty() {
            let points = CleanHtml::join(&departing, " ");
            sentences.push(words.html("evidence-departs", None, &[("points", &points)]));
        }
        if is_mixed(self.impression) {
            sentences.push(CleanHtml::text(words.word("mixed-and-key")));
        }
        if let (Some(best), false) = (self.evidence.best, self.evidence.unrecorded.is_empty()) {
            let candidate = self.candidate(best);
            let points = self.questions(self.evidence.unrecorded.iter().copied());
            let given = [("candidate", &candidate), ("points", &points)];
            sentences.push(words.html("evidence-unrecorded", None, &given));
        }
        as_sentences(&sentences)
    }

    fn axes(&self) -> Vec<AxisView> {
        let words = self.here.words();
        let axis = |heading: &str, rows: Vec<RowView>| AxisView {
            heading: words.word(heading).to_owned(),
            rows,
        };
        let mut axes = Vec::new();
        if Evidence::distinguishes(&self.evidence.states) {
            let rows = self.evidence.states.iter();
            let rows = rows.map(|row| {
                let documents = row.key.as_ref().map(|key| self.told_of_state(key));
                RowView {
                    documents: documents.unwrap_or_default(),
                    ..self.row(row, self.state_name(row.key.as_ref()))
                }
            });
            axes.push(axis("state", rows.collect()));
        }
        let recorded = recorded_evidence(self.design, self.impression);
        let has_recorded = self.table.printings.len() > 1 && !recorded.is_empty();
        let printings = self.evidence.printings.iter();
        let printings = printings.filter_map(|row| row.key.as_ref());
        let has_told = self.table.printings.len() > 1
            && printings
                .flat_map(|key| self.told_of_printing(key))
                .any(|line| line.is_on_sheet);
        if has_recorded || has_told || Evidence::distinguishes(&self.evidence.printings) {
            let rows = self.evidence.printings.iter();
            let rows = rows.map(|row| {
                let view = self.row(row, self.printing_with_states(row));
                self.with_recorded(view, row, &recorded)
            });
            axes.push(axis("printing", rows.collect()));
        }
        for row in axes.iter_mut().flat_map(|axis| &mut axis.rows) {
            self.fold(row);
        }
        let rows = axes.iter_mut().flat_map(|axis| &mut axis.rows);
        let mut shown: BTreeSet<PointAt> = BTreeSet::new();
        for line in rows.flat_map(|row| &mut row.lines) {
            let is_first = line.point.is_none_or(|point| shown.insert(point));
            line.detail = line.detail.take().filter(|_| is_first);
        }
        axes
    }

    /// Folds away what does not exclude a row that is excluded. Where nothing on the sheet excludes it by itself, what is
    /// against it stays in view.
    fn fold(&self, row: &mut RowView) {
        if !row.is_excluded {
            return;
        }
        let has = |bearing: Bearing| row.lines.iter().any(|line| line.bearing == bearing);
        let kept = if has(Bearing::Excludes) {
            Bearing::Excludes
        } else {
            Bearing::Against
        };
        let lines = std::mem::take(&mut row.lines);
        (row.lines, row.folded) = lines.into_iter().partition(|line| line.bearing == kept);
        for line in &mut row.folded {
            line.detail = None;
        }
        let folded = row.folded.len() + row.documents.len();
        if folded > 0 {
            row.more = self.here.words().count("evidence-folded", folded);
        }
    }

    /// A row of a printing with what the printing's own record says for or against it.
    fn with_recorded(
        &self,
        mut view: RowView,
        row: &EvidenceRow,
        recorded: &[RecordedEvidence],
    ) -> RowView {
        let Some(key) = &row.key else {
            return view;
        };
        let of_row = || recorded.iter().filter(|evidence| evidence.printing == *key);
        if !Evidence::distinguishes(&self.evidence.printings) {
            view.fit.clear();
        }
        if of_row().any(|evidence| evidence.bearing == Bearing::Excludes) {
            view.fit = evidence_words::fit(self.here.words(), Fit::Excluded);
            view.is_excluded = true;
        }
        let (here, design) = (self.here, self.design);
        // Where a point asks for the paper, its line says as much.
        let asked = view.lines.iter().filter_map(|line| line.point);
        let has_paper = asked
            .filter_map(|at| self.point(at))
            .any(|point| point.evidence() == EvidenceKind::Paper);
        let told: Vec<RecordedEvidence> = recorded
            .iter()
            .filter(|evidence| evidence.kind != RecordedKind::Paper || !has_paper)
            .cloned()
            .collect();
        let lines = printing_record::lines(here, design, self.impression, &told, key);
        view.lines.extend(lines);
        view.documents = self.told_of_printing(key);
        view
    }

    fn told_of_state(&self, key: &Key) -> Vec<DocumentLine> {
        let of = EvidenceTarget::State(self.design.key.clone(), key.clone());
        told::lines(self.here, self.impression, &of)
    }

    fn told_of_printing(&self, key: &Key) -> Vec<DocumentLine> {
        let of = EvidenceTarget::Printing(self.design.key.clone(), key.clone());
        told::lines(self.here, self.impression, &of)
    }

    fn row(&self, row: &EvidenceRow, name: CleanHtml) -> RowView {
        let words = self.here.words();
        RowView {
            name,
            fit: evidence_words::fit(words, row.fit),
            is_excluded: matches!(row.fit, Fit::Excluded | Fit::NoPrintingFits),
            lines: row
                .bearings()
                .filter_map(|(bearing, point)| self.line(bearing, row.best, point))
                .collect(),
            documents: Vec::new(),
            folded: Vec::new(),
            more: String::new(),
        }
    }

    fn line(&self, bearing: Bearing, candidate: CandidateAt, at: PointAt) -> Option<LineView> {
        let (here, words) = (self.here, self.here.words());
        let point = self.point(at)?;
        let observation = self
            .impression
            .observed
            .iter()
            .find(|o| o.point.value == point.key.value)?;
        let allowed = self.table.points[at].allows(candidate)?;
        let mut weighed = self.settled.observed.iter().filter(|o| o.point == at);
        let is_weighed = weighed.any(|observed| weighs(self.table, observed, candidate));
        Some(LineView {
            point: Some(at),
            bearing,
            bearing_word: evidence_words::bearing(words, bearing),
            kind: evidence_words::kind(words, point.evidence()),
            weight: line_weight(here, bearing, is_weighed),
            ask: strips::ask(here, self.design, point),
            seen: values::seen(here, point, &observation.seen),
            recorded: recorded::allowed(here, point, &self.table.points[at], allowed),
            detail: strips::detail_on(here, self.design, self.impression, point),
        })
    }

    fn change(&self) -> Option<ChangeView> {
        let words = self.here.words();
        let best = self.evidence.best.filter(|_| self.evidence.tells())?;
        let points: Vec<NextPoint> = [self.settled.next.as_slice(), &self.settled.hidden].concat();
        let found = overturning(self.table, &self.settled.observed, &self.evidence, &points);
        let lines: Vec<CleanHtml> = found
            .iter()
            .take(MOST_OVERTURNING)
            .filter_map(|overturning| self.overturning_line(overturning))
            .collect();
        if lines.is_empty() {
            return None;
        }
        let best = capitalised(&self.candidate(best));
        Some(ChangeView {
            best: match self.evidence.alike {
                0 | 1 => best,
                alike => best.then(&words.count("evidence-first-of-alike", alike)),
            },
            lines,
            more: match found.len().saturating_sub(MOST_OVERTURNING) {
                0 => String::new(),
                more => words.count("evidence-more-points", more),
            },
        })
    }

    fn overturning_line(&self, overturning: &Overturning) -> Option<CleanHtml> {
        let words = self.here.words();
        let at = overturning.point;
        let point = self.point(at)?;
        let expected = recorded::allowed(
            self.here,
            point,
            &self.table.points[at],
            &overturning.expected,
        );
        let given = [
            ("ask", &strips::ask(self.here, self.design, point)),
            ("recorded", &CleanHtml::text(&expected)),
        ];
        let effect = if overturning.would_exclude {
            "evidence-would-exclude"
        } else {
            "evidence-would-weigh"
        };
        let line = words.html(effect, None, &given);
        let hidden = self.settled.hidden.iter().any(|hidden| hidden.point == at);
        let note = match (overturning.is_uncertain, hidden) {
            (true, _) => "evidence-look-again",
            (false, true) => "evidence-if-unmounted",
            (false, false) => return Some(line),
        };
        Some(line.then(" (").then(words.word(note)).then(")"))
    }

    fn next(&self) -> CleanHtml {
        let words = self.here.words();
        let mut sentences = Vec::new();
        let worth = |points: &[NextPoint], most: usize| {
            let worth = points.iter().filter(|next| next.bits >= SETTLES);
            self.questions(worth.take(most).map(|next| next.point))
                .some()
        };
        if let Some(points) = worth(&self.settled.next, 2) {
            sentences.push(words.html("would-settle", None, &[("points", &points)]));
        }
        if let Some(points) = worth(&self.settled.hidden, 3) {
            sentences.push(words.html("would-settle-unmounted", None, &[("points", &points)]));
        }
        if sentences.is_empty() && self.settled.identified.left().count() > 1 {
            sentences.push(CleanHtml::text(words.word("nothing-would-settle")));
        }
        as_sentences(&sentences)
    }

    fn point(&self, at: PointAt) -> Option<&Point> {
        self.design.point(&self.table.points.get(at)?.key)
    }

    /// The questions of points, one after the other.
    fn questions(&self, points: impl Iterator<Item = PointAt>) -> CleanHtml {
        let points = points.filter_map(|at| self.point(at));
        let asks = points.map(|point| strips::ask(self.here, self.design, point));
        CleanHtml::join(&asks.collect::<Vec<_>>(), " ")
    }

    fn candidate(&self, at: CandidateAt) -> CleanHtml {
        candidates::candidate_name(self.here, self.design, &self.table.candidates[at])
    }

    fn state_name(&self, key: Option<&Key>) -> CleanHtml {
        candidates::state_name(self.here, self.design, key)
    }

    /// "Printed by the artist, with *i*/v or *iii*/v".
    fn printing_with_states(&self, row: &EvidenceRow) -> CleanHtml {
        let name = candidates::printing_name(self.here, self.design, row.key.as_ref());
        let mut rows = self.table.printings.iter();
        let of_row = rows.find(|other| other.key == row.key);
        let with = of_row.map_or(&[][..], |of_row| row.with_states(of_row));
        let states: Vec<CleanHtml> = with
            .iter()
            .filter_map(|at| self.table.candidates[*at].state.as_ref())
            .map(|state| self.here.state_of(&self.design.key, state))
            .collect();
        if states.is_empty() || row.fit == Fit::Excluded || self.table.states.len() < 2 {
            return name;
        }
        let states = enumeration::either(self.here, &states);
        let given = [("printing", &name), ("states", &states)];
        self.here.words().html("printing-with-states", None, &given)
    }
}

/// Whether some reading takes the sheet to be from blocks in different conditions.
fn is_mixed(impression: &Impression) -> bool {
    let identified = impression.identified.iter();
    identified
        .flat_map(readings::all)
        .any(|reading| matches!(reading.state, Some(StateReading::ByMatrix(_))))
}
