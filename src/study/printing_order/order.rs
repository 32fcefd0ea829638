//! The order of a design's sheets: its places, the steps between them with their reasons, its cycles.

use std::collections::{BTreeMap, BTreeSet};

use super::evidence::{DaysOf, Evidence, Ground, Placing, ended_before};
use super::reason::{DatedBy, Reason};
use super::relation::Relation;
use crate::census::Groups;
use crate::index::{Indexed, PlaceAt, ValueAt};
use keyblock_model::design::Design;
use keyblock_model::key::{ImpressionKey, Key};

/// The order in which the sheets of a design were printed, as far as it is known.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PrintingOrder {
    /// The places, by layer, then by sheet. Sheets that nothing orders have none.
    pub places: Indexed<PlaceAt, Place>,
    /// The fewest steps from which all others follow, by place.
    pub steps: Vec<Step>,
    /// The sheets left out because what was seen on them contradicts their identification, in order.
    pub contradicted: Vec<ImpressionKey>,
}

/// Sheets that one thing places: sheets with the same evidence, or those of a cycle.
#[derive(Clone, Debug, PartialEq)]
pub struct Place {
    /// The sheets, in order, each by its first record.
    pub sheets: Vec<ImpressionKey>,
    /// The length of the longest chain of steps that leads here.
    pub layer: usize,
    /// The stages of wear that order them, at the points in the record's order; none for a cycle.
    pub stages: Vec<(Key, ValueAt)>,
    /// The state that orders them.
    pub state: Option<Key>,
    /// The dates that order them: their own, that of their printing.
    pub dates: Vec<DatedBy>,
    /// Where the sheets are a cycle: the shortest one among them.
    pub cycle: Option<Cycle>,
}

/// A step of the order: the sheets of one place were printed before those of another.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// The place that comes first.
    pub before: PlaceAt,
    /// The place that comes after it.
    pub after: PlaceAt,
    /// The reasons, at least one: wear in the order of the points, states, dates.
    pub reasons: Vec<Reason>,
}

/// Sheets each of which would have been printed before the next, and the last before the first.
#[derive(Clone, Debug, PartialEq)]
pub struct Cycle {
    /// The steps, at least two. Each begins with the sheet with which the one before ends.
    pub steps: Vec<CycleStep>,
}

/// A step of a cycle.
#[derive(Clone, Debug, PartialEq)]
pub struct CycleStep {
    /// The sheet that would have been printed first.
    pub before: ImpressionKey,
    /// The sheet that would have been printed after it.
    pub after: ImpressionKey,
    /// The reasons, at least one.
    pub reasons: Vec<Reason>,
}

/// Sheets with the same evidence. A sheet has several only where its records disagree.
struct Class {
    sheets: Vec<ImpressionKey>,
    evidence: BTreeSet<Evidence>,
}

/// The order of printing of a design's sheets. `groups` says which of its records are one sheet.
///
/// ```
/// # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
/// # use literal::{catalogue, key};
/// # use keyblock::study::census::Groups;
/// # use keyblock::study::index::PlaceAt;
/// # use keyblock::study::printing_order::{Reason, printing_order};
/// let catalogue = catalogue(r#"
/// -- records/designs/1/design.toml
/// titles = [{ text = "The Ferry" }]
/// matrices = [{ key = "block" }]
/// points = [{ key = "crack", ask = "How far?", kind = "stage", stages = ["none", "edge"], rests_on = "matrix" }]
/// states = [{ key = "only" }]
/// -- records/designs/1/impressions/1.toml
/// status = "located"
/// observed = { crack = "edge" }
/// -- records/designs/1/impressions/2.toml
/// status = "located"
/// observed = { crack = "none" }
/// "#);
/// let order = printing_order(&Groups::of(&catalogue), &catalogue.designs[&key("1")]);
/// assert_eq!(order.places[PlaceAt::new(0)].sheets[0].to_string(), "1.2");
/// let [step] = order.steps.as_slice() else { panic!("{order:?}") };
/// assert!(matches!(&step.reasons[0], Reason::Wear(wear) if wear.point == key("crack")));
/// ```
#[must_use]
pub fn printing_order(groups: &Groups, design: &Design) -> PrintingOrder {
    let ground = Ground::of(design);
    let mut sheets: BTreeMap<ImpressionKey, (ImpressionKey, BTreeSet<Evidence>)> = BTreeMap::new();
    let mut contradicted = Vec::new();
    for impression in design.impressions.values() {
        match ground.placing(impression) {
            Placing::Outside => {}
            Placing::Contradicted => contradicted.push(impression.key.clone()),
            Placing::By(evidence) => {
                let sheet = sheets.entry(groups.first_of(&impression.key));
                let (_, of_sheet) =
                    sheet.or_insert_with(|| (impression.key.clone(), BTreeSet::new()));
                of_sheet.insert(evidence);
            }
        }
    }
    let classes = classes(&ground, sheets.into_values());
    let classes = classes_by_what_orders(&ground, classes);
    PrintingOrder {
        contradicted,
        ..ordered(&ground, &classes)
    }
}

/// The sheets, those with the same evidence together; those without any are left out.
fn classes(
    ground: &Ground<'_>,
    sheets: impl Iterator<Item = (ImpressionKey, BTreeSet<Evidence>)>,
) -> Vec<Class> {
    let mut by_evidence: BTreeMap<_, Vec<ImpressionKey>> = BTreeMap::new();
    for (sheet, mut evidence) in sheets {
        evidence.retain(|e| !e.is_empty());
        if evidence.is_empty() {
            continue;
        }
        // Of two sheets whose records disagree in the same way, each would come before the other.
        let disagrees = is_before(ground, &evidence, &evidence);
        let alone = disagrees.then(|| sheet.clone());
        by_evidence
            .entry((evidence, alone))
            .or_default()
            .push(sheet);
    }
    let mut classes: Vec<Class> = by_evidence
        .into_iter()
        .map(|((evidence, _), mut sheets)| {
            sheets.sort();
            Class { sheets, evidence }
        })
        .collect();
    classes.sort_by(|a, b| a.sheets.cmp(&b.sheets));
    classes
}

/// The classes anew, by such evidence alone as gives some step: a date that all sheets share orders none of them.
fn classes_by_what_orders(ground: &Ground<'_>, classes: Vec<Class>) -> Vec<Class> {
    let all: BTreeSet<&Evidence> = classes.iter().flat_map(|c| &c.evidence).collect();
    let either = |holds: &dyn Fn(&Evidence, &Evidence) -> bool, one: &Evidence| {
        all.iter()
            .any(|other| holds(one, other) || holds(other, one))
    };
    let what_orders = |evidence: &Evidence| {
        let wear = evidence.wear.iter().enumerate().map(|(at, seen)| {
            let seen = seen.clone()?;
            let is_less = |a: &Evidence, b: &Evidence| ground.is_less_worn(at, a, b);
            either(&is_less, evidence).then_some(seen)
        });
        let is_of_earlier = |a: &Evidence, b: &Evidence| ground.is_of_earlier_state(a, b);
        let ended_before = |a: &Evidence, b: &Evidence| ended_before(a, b).is_some();
        let by_own = Evidence {
            own_date: evidence.own_date.clone(),
            ..Evidence::default()
        };
        let by_printing = Evidence {
            printing: evidence.printing.clone(),
            ..Evidence::default()
        };
        Evidence {
            wear: wear.collect(),
            state: evidence.state.filter(|_| either(&is_of_earlier, evidence)),
            own_date: by_own
                .own_date
                .clone()
                .filter(|_| either(&ended_before, &by_own)),
            printing: by_printing
                .printing
                .clone()
                .filter(|_| either(&ended_before, &by_printing)),
        }
    };
    let known: BTreeMap<Evidence, Evidence> = all
        .iter()
        .map(|evidence| ((*evidence).clone(), what_orders(evidence)))
        .collect();
    let sheets = classes.into_iter().flat_map(|class| {
        let evidence = class.evidence.iter().filter_map(|e| known.get(e).cloned());
        let evidence: BTreeSet<Evidence> = evidence.collect();
        let sheets = class.sheets.into_iter();
        sheets.map(move |sheet| (sheet, evidence.clone()))
    });
    self::classes(ground, sheets)
}

/// Whether some record of the one sheet says that it was printed before the other.
fn is_before(ground: &Ground<'_>, one: &BTreeSet<Evidence>, other: &BTreeSet<Evidence>) -> bool {
    one.iter()
        .any(|a| other.iter().any(|b| ground.is_before(a, b)))
}

/// Why sheets of the one class were printed before those of the other, each reason once.
fn reasons(ground: &Ground<'_>, one: &Class, other: &Class) -> Vec<Reason> {
    let mut found: Vec<Reason> = Vec::new();
    for a in &one.evidence {
        for b in &other.evidence {
            for reason in ground.reasons(a, b) {
                if !found.contains(&reason) {
                    found.push(reason);
                }
            }
        }
    }
    found
}

fn ordered(ground: &Ground<'_>, classes: &[Class]) -> PrintingOrder {
    let relation = Relation::of(classes.len(), |a, b| {
        match (classes.get(a), classes.get(b)) {
            (Some(a), Some(b)) => is_before(ground, &a.evidence, &b.evidence),
            _ => false,
        }
    });
    let reduction = relation.reduction();
    let members = |set: usize| {
        let set = reduction.sets.get(set).into_iter().flatten();
        set.filter_map(|at| classes.get(*at))
    };
    let mut places: Vec<(usize, Place)> = (0..reduction.sets.len())
        .map(|set| {
            let layer = reduction.layers.get(set).copied().unwrap_or_default();
            let members: Vec<&Class> = members(set).collect();
            let place = match members.as_slice() {
                [only] => place_of(ground, only, layer),
                several => Place {
                    sheets: sorted(several.iter().flat_map(|c| c.sheets.clone())),
                    cycle: reduction
                        .sets
                        .get(set)
                        .map(|set| cycle(ground, classes, &relation.shortest_cycle(set))),
                    ..Place::at(layer)
                },
            };
            (set, place)
        })
        .collect();
    // What is joined to nothing has no place in an order.
    let is_joined = |set: usize| reduction.steps.iter().any(|(a, b)| *a == set || *b == set);
    places.retain(|(set, place)| place.cycle.is_some() || is_joined(*set));
    places.sort_by(|(_, a), (_, b)| (a.layer, &a.sheets).cmp(&(b.layer, &b.sheets)));
    let renumbered: BTreeMap<usize, PlaceAt> = (0..)
        .zip(&places)
        .map(|(new, (set, _))| (*set, PlaceAt::new(new)))
        .collect();
    let mut steps: Vec<Step> = reduction
        .steps
        .iter()
        .filter_map(|(before, after)| {
            let mut why: Vec<Reason> = Vec::new();
            for one in members(*before) {
                for other in members(*after) {
                    let further = reasons(ground, one, other).into_iter();
                    let further: Vec<Reason> = further.filter(|r| !why.contains(r)).collect();
                    why.extend(further);
                }
            }
            Some(Step {
                before: *renumbered.get(before)?,
                after: *renumbered.get(after)?,
                reasons: why,
            })
        })
        .collect();
    steps.sort_by_key(|step| (step.before, step.after));
    PrintingOrder {
        places: places.into_iter().map(|(_, place)| place).collect(),
        steps,
        contradicted: Vec::new(),
    }
}

impl Place {
    fn at(layer: usize) -> Place {
        Place {
            sheets: Vec::new(),
            layer,
            stages: Vec::new(),
            state: None,
            dates: Vec::new(),
            cycle: None,
        }
    }
}

fn place_of(ground: &Ground<'_>, class: &Class, layer: usize) -> Place {
    let mut place = Place {
        sheets: class.sheets.clone(),
        ..Place::at(layer)
    };
    for evidence in &class.evidence {
        for (point, seen) in ground.points().zip(&evidence.wear) {
            let stage = seen.as_ref().map(|seen| (point.clone(), seen.stage));
            place
                .stages
                .extend(stage.filter(|s| !place.stages.contains(s)));
        }
        let state = evidence.state.and_then(|at| ground.state_key(at)).cloned();
        place.state = place.state.or(state);
        let dates = [&evidence.own_date, &evidence.printing].into_iter();
        for dated in dates.flatten().filter_map(DaysOf::dated) {
            if !place.dates.contains(&dated) {
                place.dates.push(dated);
            }
        }
    }
    place
}

/// A cycle of classes, told of the first sheet of each.
fn cycle(ground: &Ground<'_>, classes: &[Class], found: &[usize]) -> Cycle {
    let ends = found.iter().skip(1).chain(found.first());
    let steps = found.iter().zip(ends).filter_map(|(before, after)| {
        let (one, other) = (classes.get(*before)?, classes.get(*after)?);
        Some(CycleStep {
            before: one.sheets.first()?.clone(),
            after: other.sheets.first()?.clone(),
            reasons: reasons(ground, one, other),
        })
    });
    Cycle {
        steps: steps.collect(),
    }
}

fn sorted(sheets: impl Iterator<Item = ImpressionKey>) -> Vec<ImpressionKey> {
    let mut sheets: Vec<ImpressionKey> = sheets.collect();
    sheets.sort();
    sheets
}
