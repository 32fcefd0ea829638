//! The order of printing of a design's sheets, as a diagram and in words (`docs/definitions.md`, "Order of printing").

use serde::Serialize;

use crate::model::design::Design;
use crate::model::key::{ImpressionKey, Key};
use crate::model::point::{PointKind, Value};
use crate::page::drawings::diagram::{Diagram, Line, LineStyle, LinkedText, Node, lay_out};
use crate::page::phrases::{dates, enumeration, matrices, values};
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences};
use crate::page::setting::words::Argument;
use crate::study::index::{PlaceAt, ValueAt};
use crate::study::printing_order::{Cycle, DatedBy, Place, Reason, Step, UnlikeWear, WearStep};

/// How many sheets a line of the diagram names.
const ON_A_LINE: usize = 2;
/// How many places are drawn. Of more, a drawing shows nothing any longer, and the words stand alone.
const DRAWN_AT_MOST: usize = 60;
/// How many sheets are named as printed before another in one sentence.
const NAMED_AT_MOST: usize = 12;

/// The order of printing of a design's sheets.
#[derive(Serialize)]
pub(super) struct OrderView {
    diagram: Option<Diagram>,
    /// What the kinds of line of the diagram say, where it has several.
    legend: Vec<LegendEntry>,
    /// The same in words, a line for each place.
    lines: Vec<CleanHtml>,
    /// What cannot be right, what is left out.
    remarks: Vec<CleanHtml>,
}

/// A kind of line of the diagram.
#[derive(Serialize)]
struct LegendEntry {
    class: &'static str,
    said: CleanHtml,
}

/// What orders two sheets, by the kind of the strongest reason.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum StepKind {
    Wear,
    States,
    Dates,
}

/// The order of printing; `None` where nothing is ordered and nothing is wrong.
pub(super) fn view(here: &Here<'_>, design: &Design) -> Option<OrderView> {
    let study = here.book.studies.designs.get(&design.key)?;
    let order = &study.printing_order;
    if order.places.is_empty() && study.unlike_wear.is_empty() {
        return None;
    }
    let told = Told {
        here,
        design,
        words: here.words(),
    };
    let nodes: Vec<Node> = order.places.iter().map(|place| told.node(place)).collect();
    let lines: Vec<Line> = order.steps.iter().map(|step| told.line(step)).collect();
    let is_drawn = !lines.is_empty() && nodes.len() <= DRAWN_AT_MOST;
    let said = here.words().word("order-of-printing");
    let mut kinds: Vec<StepKind> = order.steps.iter().map(kind).collect();
    kinds.sort();
    kinds.dedup();
    let entry = |kind: &StepKind| LegendEntry {
        class: style(*kind).class(),
        said: CleanHtml::text(here.words().word(kind.word())),
    };
    let in_words = order.places.indexes().map(|at| {
        let steps = order.steps.iter().filter(|step| step.after == at);
        told.place_in_words(&order.places[at], steps, |at| &order.places[at].sheets)
    });
    let cycles = order
        .places
        .iter()
        .filter_map(|place| Some((place, place.cycle.as_ref()?)));
    let cycles = cycles.map(|(place, cycle)| told.cycle_in_words(place, cycle));
    let unlike = study
        .unlike_wear
        .iter()
        .map(|found| told.unlike_wear(found));
    let contradicted = (!order.contradicted.is_empty()).then(|| {
        let sheets = told.sheets(&order.contradicted);
        told.sentence("order-without", &[("sheets", &sheets)])
    });
    Some(OrderView {
        diagram: is_drawn.then(|| lay_out(&nodes, &lines, said.to_owned())),
        legend: if is_drawn && kinds.len() > 1 {
            kinds.iter().map(entry).collect()
        } else {
            Vec::new()
        },
        lines: in_words.collect(),
        remarks: cycles.chain(unlike).chain(contradicted).collect(),
    })
}

/// The kind of a step: that of its first reason.
fn kind(step: &Step) -> StepKind {
    match step.reasons.first() {
        Some(Reason::Wear(_)) => StepKind::Wear,
        Some(Reason::States { .. }) => StepKind::States,
        Some(Reason::Dates { .. }) | None => StepKind::Dates,
    }
}

fn style(kind: StepKind) -> LineStyle {
    match kind {
        StepKind::Wear => LineStyle::Solid,
        StepKind::States => LineStyle::Dashed,
        StepKind::Dates => LineStyle::Dotted,
    }
}

impl StepKind {
    fn word(self) -> &'static str {
        match self {
            StepKind::Wear => "order-by-wear",
            StepKind::States => "order-by-states",
            StepKind::Dates => "order-by-dates",
        }
    }
}

/// What the words of one design's order are made from.
struct Told<'h, 'b> {
    here: &'h Here<'b>,
    design: &'h Design,
    words: &'b crate::page::setting::words::Words,
}

impl Told<'_, '_> {
    fn sentence(&self, id: &str, given: &[(&str, &CleanHtml)]) -> CleanHtml {
        as_sentences(&[self.words.html(id, None, given)])
    }

    fn sheets(&self, keys: &[ImpressionKey]) -> CleanHtml {
        let names: Vec<CleanHtml> = keys.iter().map(|key| self.here.impression(key)).collect();
        enumeration::together(self.here, &names)
    }

    /// What orders the sheets of a place, then the sheets, a few on a line.
    fn node(&self, place: &Place) -> Node {
        let plain = |text: String| {
            vec![LinkedText {
                text,
                href: String::new(),
            }]
        };
        let evidence = self
            .evidence(place)
            .into_iter()
            .map(|said| plain(said.plain()));
        let in_a_cycle = place.cycle.is_some();
        let in_a_cycle = in_a_cycle.then(|| plain(self.words.word("order-contradicts").to_owned()));
        let sheets: Vec<LinkedText> = place
            .sheets
            .iter()
            .map(|key| LinkedText {
                text: self.here.sheet_number(key),
                href: self.here.href(&Address::Impression(key.clone())),
            })
            .collect();
        Node {
            column: place.layer,
            row: None,
            lines: evidence
                .chain(in_a_cycle)
                .chain(sheets.chunks(ON_A_LINE).map(<[LinkedText]>::to_vec))
                .collect(),
        }
    }

    fn line(&self, step: &Step) -> Line {
        let reasons: Vec<String> = self
            .reasons(&step.reasons)
            .iter()
            .map(CleanHtml::plain)
            .collect();
        Line {
            from: step.before.index(),
            to: step.after.index(),
            style: style(kind(step)),
            said: reasons.join("; "),
        }
    }

    /// What orders the sheets of a place: "state iv", "crack: to the mast", "1956".
    fn evidence(&self, place: &Place) -> Vec<CleanHtml> {
        let state = place.state.as_ref().map(|state| {
            let numeral = self.here.numeral(&self.design.key, state);
            self.words.html("order-state", None, &[("state", &numeral)])
        });
        let stages = place.stages.iter().filter_map(|(point, stage)| {
            let stage = self.stage(point, *stage)?;
            let stage = CleanHtml::text(&stage);
            let point = CleanHtml::text(&point_name(point));
            Some(
                self.words
                    .html("order-stage", None, &[("point", &point), ("stage", &stage)]),
            )
        });
        let dates = place.dates.iter().map(|by| {
            let date = self.date(by);
            CleanHtml::text(&match by.printing {
                Some(_) => self
                    .words
                    .with("order-printed", &[("date", Argument::Text(&date))]),
                None => date,
            })
        });
        state.into_iter().chain(stages).chain(dates).collect()
    }

    /// "to the mast".
    fn stage(&self, point: &Key, stage: ValueAt) -> Option<String> {
        let point = self.design.point(point)?;
        let PointKind::Stage(stages) = &point.kind else {
            return None;
        };
        let stage = stages.get(stage.index())?.value.clone();
        Some(values::value(self.here, point, &Value::Word(stage)))
    }

    fn date(&self, by: &DatedBy) -> String {
        match by.printing {
            Some(_) => dates::throughout(&by.date, self.words),
            None => dates::once(&by.date, self.words),
        }
    }

    /// "1956 (Memorial portfolio)".
    fn dated(&self, by: &DatedBy) -> CleanHtml {
        let date = self.date(by);
        let text = match &by.printing {
            Some(printing) => {
                let printing = self.here.printing_name(self.design, printing);
                let given = [
                    ("date", Argument::Text(&date)),
                    ("printing", Argument::Text(&printing)),
                ];
                self.words.with("order-date-of-printing", &given)
            }
            None => self
                .words
                .with("order-date-of-sheet", &[("date", Argument::Text(&date))]),
        };
        CleanHtml::text(&text)
    }

    /// The reasons of a step, each in a few words.
    fn reasons(&self, reasons: &[Reason]) -> Vec<CleanHtml> {
        let of_each = reasons.iter().map(|reason| match reason {
            Reason::Wear(step) => self.wear(step),
            Reason::States { before, after } => {
                let numeral = |state: &Key| self.here.numeral(&self.design.key, state);
                let (before, after) = (numeral(before), numeral(after));
                let given = [("before", &before), ("after", &after)];
                self.words.html("order-reason-states", None, &given)
            }
            Reason::Dates { before, after } => {
                let (before, after) = (self.dated(before), self.dated(after));
                let given = [("before", &before), ("after", &after)];
                self.words.html("order-reason-dates", None, &given)
            }
        });
        of_each.collect()
    }

    /// "wear of the dusk block (crack: edge, then to the mast)".
    fn wear(&self, step: &WearStep) -> CleanHtml {
        let matrix = step.matrix.as_ref().map_or_else(
            || self.words.word("wear-of-no-matrix").to_owned(),
            |key| matrices::matrix_name(self.here, self.design, key),
        );
        let stage = |at| CleanHtml::text(&self.stage(&step.point, at).unwrap_or_default());
        let given = [
            ("matrix", &CleanHtml::text(&matrix)),
            ("point", &CleanHtml::text(&point_name(&step.point))),
            ("before", &stage(step.before)),
            ("after", &stage(step.after)),
        ];
        self.words.html("order-reason-wear", None, &given)
    }

    /// "7.12 (crack: to the mast). After 7.5: wear of the sky block (crack: edge, then to the mast)."
    fn place_in_words<'p>(
        &self,
        place: &Place,
        steps: impl Iterator<Item = &'p Step>,
        sheets_at: impl Fn(PlaceAt) -> &'p [ImpressionKey],
    ) -> CleanHtml {
        let evidence = CleanHtml::join(&self.evidence(place), "; ");
        let mut head = self.sheets(&place.sheets);
        if !evidence.is_empty() {
            head = head.then(" (").and(&evidence).then(")");
        }
        // What comes before for the same reasons stands in one sentence.
        let mut before: Vec<(&[Reason], Vec<ImpressionKey>)> = Vec::new();
        for step in steps {
            let sheets = sheets_at(step.before).iter().cloned();
            let mut known = before.iter_mut();
            match known.find(|(reasons, _)| *reasons == step.reasons.as_slice()) {
                Some((_, of_reasons)) => of_reasons.extend(sheets),
                None => before.push((&step.reasons, sheets.collect())),
            }
        }
        let after = before.iter().map(|(reasons, sheets)| {
            let why = CleanHtml::join(&self.reasons(reasons), "; ");
            let named = sheets.get(..NAMED_AT_MOST).unwrap_or(sheets);
            let more = sheets.len() - named.len();
            let mut before = self.sheets(named);
            if more > 0 {
                let more = self.words.count("order-more", more);
                before = before.then(" ").and(&CleanHtml::text(&more));
            }
            let given = [("before", &before), ("reasons", &why)];
            self.words.html("order-after", None, &given)
        });
        let sentences: Vec<CleanHtml> = std::iter::once(head).chain(after).collect();
        as_sentences(&sentences)
    }

    /// "7.1 and 7.2 cannot be put in order. 7.1 before 7.2: …; 7.2 before 7.1: …."
    fn cycle_in_words(&self, place: &Place, cycle: &Cycle) -> CleanHtml {
        let sheets = self.sheets(&place.sheets);
        let head = self
            .words
            .html("order-in-a-cycle", None, &[("sheets", &sheets)]);
        let steps = cycle.steps.iter().map(|step| {
            let why = CleanHtml::join(&self.reasons(&step.reasons), "; ");
            let before = self.here.impression(&step.before);
            let after = self.here.impression(&step.after);
            let given = [("before", &before), ("after", &after), ("reasons", &why)];
            self.words.html("order-cycle-step", None, &given)
        });
        let sentences: Vec<CleanHtml> = std::iter::once(head).chain(steps).collect();
        as_sentences(&sentences)
    }

    /// Whether one of two records says that they are two sheets.
    fn are_two(&self, a: &ImpressionKey, b: &ImpressionKey) -> bool {
        let public = self.here.public();
        let says = |one: &ImpressionKey, other: &ImpressionKey| {
            let record = public.impression(one);
            record.is_some_and(|record| {
                let mut others = record.not_same_as.iter();
                others.any(|of| of.impression.value == *other)
            })
        };
        says(a, b) || says(b, a)
    }

    /// "7.14 and 7.15 both have the number 12 of Memorial portfolio, but unlike wear: …."
    fn unlike_wear(&self, found: &UnlikeWear) -> CleanHtml {
        let [less, more] = &found.records;
        let steps: Vec<CleanHtml> = found.wear.iter().map(|step| self.wear(step)).collect();
        let number = if found.number.is_roman {
            crate::study::numerals::roman(found.number.number).to_uppercase()
        } else {
            found.number.number.to_string()
        };
        let printing = self.here.printing_name(self.design, &found.printing);
        let given = [
            ("one", &self.here.impression(less)),
            ("other", &self.here.impression(more)),
            ("number", &CleanHtml::text(&number)),
            ("printing", &CleanHtml::text(&printing)),
            ("wear", &CleanHtml::join(&steps, "; ")),
        ];
        let id = if self.are_two(less, more) {
            "order-unlike-wear-two"
        } else {
            "order-unlike-wear"
        };
        self.sentence(id, &given)
    }
}

fn point_name(point: &Key) -> String {
    point.as_str().replace('-', " ")
}
