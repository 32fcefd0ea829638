//! The gallery of a design: every photographed sheet, to be filtered by state, printing and kind of
//! holder, with or without a script (`assets/sift.css`, `assets/laid.js`).

use serde::Serialize;

use super::figures;
use crate::model::design::Design;
use crate::model::holder::HolderKind;
use crate::model::impression::{Impression, StateReading};
use crate::model::key::Key;
use crate::model::words::ClosedList as _;
use crate::page::phrases::readings;
use crate::page::setting::book::Here;
use crate::page::setting::pictures::{Plate, Setting};

/// The largest number of answers to one question that the style sheet distinguishes.
const MOST_ANSWERS: usize = 48;

/// The gallery.
#[derive(Serialize)]
pub(crate) struct Gallery {
    questions: Vec<Question>,
    sheets: Vec<GallerySheet>,
}

/// One filter of the gallery.
#[derive(Serialize)]
struct Question {
    name: &'static str,
    /// The first letter of its answers' ids.
    letter: char,
    legend: String,
    all: String,
    answers: Vec<Answer>,
}

#[derive(Serialize)]
struct Answer {
    id: String,
    value: String,
    text: String,
}

/// A sheet with the answers that apply to it.
#[derive(Serialize)]
struct GallerySheet {
    classes: String,
    /// Its key in the addresses of comparisons, where it can be compared.
    key: Option<String>,
    plate: Plate,
}

/// The answers that apply to a sheet: places of states, printings and the kind of holder, from 1; 0 for
/// not recorded.
struct SheetPlaces {
    states: Vec<usize>,
    printings: Vec<usize>,
    holder: usize,
}

/// The fragment of an address that filters by state and printing, by their places in the record from 1,
/// 0 for not recorded: `only=s3,p1` (read by `assets/laid.js`).
pub(crate) fn choice(state: usize, printing: usize) -> String {
    format!("only=s{state},p{printing}")
}

impl Gallery {
    /// Whether it has a sheet of a state and a printing, and can be filtered by both.
    pub fn has(&self, state: usize, printing: usize) -> bool {
        let wanted = [format!("s{state}"), format!("p{printing}")];
        let is_asked = |name: &str| self.questions.iter().any(|q| q.name == name);
        let has_all = |sheet: &GallerySheet| {
            let mut classes = wanted.iter();
            classes.all(|class| sheet.classes.split(' ').any(|known| known == class))
        };
        is_asked("state") && is_asked("printing") && self.sheets.iter().any(has_all)
    }
}

/// The gallery of a design; `None` where fewer than two sheets have a photograph.
pub(crate) fn gallery(
    here: &Here<'_>,
    design: &Design,
    impressions: &[&Impression],
) -> Option<Gallery> {
    let mut shown = Vec::new();
    for impression in impressions {
        let Some(key) = figures::leading_picture(here, impression) else {
            continue;
        };
        if let Some(plate) = figures::plate(here, &key, None, Setting::Gallery) {
            shown.push((sheet_places(here, design, impression), impression, plate));
        }
    }
    if shown.len() < 2 {
        return None;
    }
    let is_met = |of: &dyn Fn(&SheetPlaces) -> Vec<usize>, place: usize| {
        shown.iter().any(|(facts, ..)| of(facts).contains(&place))
    };
    let states = |facts: &SheetPlaces| facts.states.clone();
    let printings = |facts: &SheetPlaces| facts.printings.clone();
    let holders = |facts: &SheetPlaces| vec![facts.holder];
    let words = here.words();
    let not_said = |prefix: char| Answer {
        id: format!("{prefix}0"),
        value: "-".to_owned(),
        text: words.word("not-said").to_owned(),
    };
    let mut questions = Vec::new();
    let mut ask = |name: &'static str,
                   letter,
                   word: &str,
                   mut answers: Vec<Answer>,
                   with_none: Option<Answer>| {
        answers.extend(with_none);
        if answers.len() > 1 {
            questions.push(Question {
                name,
                letter,
                legend: words.word(word).to_owned(),
                all: words.word("all-of-them").to_owned(),
                answers,
            });
        }
    };
    let state_answers = places(&design.states)
        .filter(|(place, _)| is_met(&states, *place))
        .map(|(place, state)| Answer {
            id: format!("s{place}"),
            value: state.key.value.to_string(),
            text: here.numeral(&design.key, &state.key.value).plain(),
        })
        .collect();
    let none = is_met(&states, 0).then(|| not_said('s'));
    ask("state", 's', "state", state_answers, none);
    let printing_answers = places(&design.printings)
        .filter(|(place, _)| is_met(&printings, *place))
        .map(|(place, printing)| Answer {
            id: format!("p{place}"),
            value: printing.key.value.to_string(),
            text: here.printing_name(design, &printing.key.value),
        })
        .collect();
    let none = is_met(&printings, 0).then(|| not_said('p'));
    ask("printing", 'p', "printing", printing_answers, none);
    let holder_answers = places(HolderKind::ALL)
        .filter(|(place, _)| is_met(&holders, *place))
        .map(|(place, kind)| Answer {
            id: format!("k{place}"),
            value: kind.word().to_owned(),
            text: words.listed("kind-of-holder", *kind).to_owned(),
        })
        .collect();
    let none = is_met(&holders, 0).then(|| not_said('k'));
    ask("kind", 'k', "holder", holder_answers, none);

    let sheets = shown
        .into_iter()
        .map(|(facts, impression, plate)| GallerySheet {
            classes: classes(&facts),
            // Whatever has a photograph can be compared, where the design has a comparison to choose.
            key: here
                .book
                .chosen
                .contains(&design.key)
                .then(|| impression.key.to_string()),
            plate,
        })
        .collect();
    Some(Gallery { questions, sheets })
}

/// Items with their places from 1, at most [`MOST_ANSWERS`].
fn places<T>(items: &[T]) -> impl Iterator<Item = (usize, &T)> {
    items
        .iter()
        .enumerate()
        .map(|(at, item)| (at + 1, item))
        .take(MOST_ANSWERS)
}

fn sheet_places(here: &Here<'_>, design: &Design, impression: &Impression) -> SheetPlaces {
    let state_place = |key: &Key| place_of(design.states.iter().map(|s| &s.key.value), key);
    let printing_place = |key: &Key| place_of(design.printings.iter().map(|p| &p.key.value), key);
    let mut states = Vec::new();
    let mut printings = Vec::new();
    for reading in impression.identified.iter().flat_map(readings::all) {
        let keys: Vec<&Key> = match &reading.state {
            Some(StateReading::OneOf(states)) => states.iter().map(|s| &s.value).collect(),
            Some(StateReading::ByMatrix(pairs)) => pairs.iter().map(|(_, s)| &s.value).collect(),
            None => Vec::new(),
        };
        states.extend(keys.into_iter().map(state_place));
        printings.extend(
            reading
                .printing
                .iter()
                .map(|key| printing_place(&key.value)),
        );
    }
    for list in [&mut states, &mut printings] {
        list.sort_unstable();
        list.dedup();
        if list.is_empty() {
            list.push(0);
        }
    }
    let kind = impression
        .holder
        .as_ref()
        .and_then(|key| here.public().holders.get(&key.value))
        .map(|holder| holder.kind);
    let holder = kind.map_or(0, |kind| {
        HolderKind::ALL
            .iter()
            .position(|known| *known == kind)
            .map_or(0, |at| at + 1)
    });
    SheetPlaces {
        states,
        printings,
        holder,
    }
}

/// The place of a key among others, from 1; 0 where it is not among them.
fn place_of<'k>(mut keys: impl Iterator<Item = &'k Key>, key: &Key) -> usize {
    keys.position(|known| known == key).map_or(0, |at| at + 1)
}

fn classes(facts: &SheetPlaces) -> String {
    let mut classes: Vec<String> = facts.states.iter().map(|n| format!("s{n}")).collect();
    classes.extend(facts.printings.iter().map(|n| format!("p{n}")));
    classes.push(format!("k{}", facts.holder));
    classes.join(" ")
}
