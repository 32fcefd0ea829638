//! Published keys, tables and trees carried through the couplets.

use std::collections::BTreeMap;

use keyblock::study::couplets::{Couplets, Goal, Lead, LeadCondition, couplets};
use keyblock::study::index::{CandidateAt, CoupletAt, PointAt, ValueAt};
use keyblock::study::scale::Scale;
use keyblock::study::table::DiagnosticTable;
use serde_json::Value as Json;

use super::{design, table};

/// What candidates show: candidate by candidate, the value at each point of which something is known.
type Shown = Vec<(String, BTreeMap<String, String>)>;

/// A point and its values, in the order of the record.
type Choice<'t> = (&'t str, Vec<&'t str>);

/// A design with the choices for points and a state for each candidate.
fn design_of(choices: &[Choice<'_>], shown: &Shown) -> String {
    let point = |(point, values): &Choice<'_>| {
        let values: Vec<String> = values.iter().map(|v| format!("{v} = \"{v}\"")).collect();
        format!(
            "{{ key = \"{point}\", ask = \"?\", kind = \"choice\", rests_on = \"matrix\", values = {{ {} }} }}",
            values.join(", ")
        )
    };
    let state = |(name, at): &(String, BTreeMap<String, String>)| {
        let shows: Vec<String> = at
            .iter()
            .map(|(point, v)| format!("{point} = \"{v}\""))
            .collect();
        format!("{{ key = \"{name}\", shows = {{ {} }} }}", shows.join(", "))
    };
    let points: Vec<String> = choices.iter().map(point).collect();
    let states: Vec<String> = shown.iter().map(state).collect();
    design(&format!(
        "points = [\n{}\n]\nstates = [\n{}\n]",
        points.join(",\n"),
        states.join(",\n")
    ))
}

fn point_name(table: &DiagnosticTable, at: PointAt) -> &str {
    table.points[at].key.as_str()
}

fn candidate_name(table: &DiagnosticTable, at: CandidateAt) -> &str {
    table.candidates[at].state.as_ref().unwrap().as_str()
}

/// The lead that a reader follows who sees `value`.
fn lead_for<'k>(
    table: &DiagnosticTable,
    key: &'k Couplets,
    at: CoupletAt,
    value: &str,
) -> Option<&'k Lead> {
    let couplet = &key.couplets[at];
    let Scale::Words(words) = &table.points[couplet.point].scale else {
        return None;
    };
    let seen = ValueAt::new(words.iter().position(|word| word.as_str() == value)?);
    couplet.leads.iter().find(|lead| match &lead.condition {
        LeadCondition::AnyOf(values) => values.contains(&seen),
        LeadCondition::Within(_) => false,
    })
}

/// The candidates to which the answers lead, and the points asked on the way.
fn followed<'t>(
    table: &'t DiagnosticTable,
    key: &Couplets,
    answers: &BTreeMap<String, String>,
) -> (Vec<&'t str>, Vec<&'t str>) {
    let (mut at, mut asked) = (CoupletAt::new(0), Vec::new());
    loop {
        let point = point_name(table, key.couplets[at].point);
        asked.push(point);
        let lead = lead_for(table, key, at, &answers[point]).unwrap();
        let Goal::Couplet(next) = lead.goal else {
            let found = lead.candidates.iter().map(|c| candidate_name(table, *c));
            return (found.collect(), asked);
        };
        at = next;
    }
}

/// A printed key of which the table knows no more than the key itself asks comes back couplet for couplet: the same
/// questions under the same numbers, with the same leads and ends. Each question of the published key divides what is
/// left most evenly, so a key by expected information has to ask it where the author did.
#[test]
fn a_published_key_of_oaks_comes_back_couplet_for_couplet() {
    // Source: `tests/checks/oak_key.json` (a key of oaks, looked up).
    let published: Json = serde_json::from_str(include_str!("../../checks/oak_key.json")).unwrap();
    let published = published["couplets"].as_array().unwrap();
    let text = |json: &Json| json.as_str().map(str::to_owned);
    // What the key tells of each species: the answers on the way to it.
    let mut shown: Shown = Vec::new();
    let mut ways: Vec<(u64, BTreeMap<String, String>)> = vec![(1, BTreeMap::new())];
    while let Some((number, way)) = ways.pop() {
        let couplet = published.iter().find(|c| c["number"] == number).unwrap();
        for lead in couplet["leads"].as_array().unwrap() {
            let mut way = way.clone();
            way.insert(text(&couplet["ask"]).unwrap(), text(&lead["seen"]).unwrap());
            match text(&lead["end"]) {
                Some(species) => shown.push((species, way)),
                None => ways.push((lead["to"].as_u64().unwrap(), way)),
            }
        }
    }
    assert_eq!(shown.len(), 8);
    // The points stand in the reverse of the published order, so that the order of the record does not help.
    let choices: Vec<Choice<'_>> = published
        .iter()
        .rev()
        .map(|couplet| {
            let leads = couplet["leads"].as_array().unwrap().iter();
            let values = leads.map(|lead| lead["seen"].as_str().unwrap());
            (couplet["ask"].as_str().unwrap(), values.collect())
        })
        .collect();
    let table = table(&[&design_of(&choices, &shown)]);
    let key = couplets(&table);
    assert_eq!(key.couplets.len(), published.len());
    for expected in published {
        let number = usize::try_from(expected["number"].as_u64().unwrap()).unwrap();
        let at = CoupletAt::new(number - 1);
        let asked = point_name(&table, key.couplets[at].point);
        assert_eq!(asked, expected["ask"], "couplet {number}");
        let leads = expected["leads"].as_array().unwrap();
        assert_eq!(
            key.couplets[at].leads.len(),
            leads.len(),
            "couplet {number}"
        );
        for lead in leads {
            let seen = lead["seen"].as_str().unwrap();
            let found = lead_for(&table, &key, at, seen).unwrap();
            match (lead["to"].as_u64(), lead["end"].as_str()) {
                (Some(to), None) => {
                    let to = CoupletAt::new(usize::try_from(to).unwrap() - 1);
                    assert_eq!(found.goal, Goal::Couplet(to), "{number}, {seen}");
                }
                (None, Some(species)) => {
                    assert_eq!(found.goal, Goal::End, "{number}, {seen}");
                    let ends: Vec<&str> = found
                        .candidates
                        .iter()
                        .map(|c| candidate_name(&table, *c))
                        .collect();
                    assert_eq!(ends, [species], "{number}, {seen}");
                }
                _ => panic!("a lead goes on or ends"),
            }
        }
    }
}

/// The tree of Quinlan 1986, "Induction of decision trees", Figure 2 (from memory), as five candidates with what the
/// tree asks of each, and whether the day is of class P.
const LEAVES: [(&str, &[(&str, &str)], &str); 5] = [
    (
        "sunny-high",
        &[("outlook", "sunny"), ("humidity", "high")],
        "N",
    ),
    (
        "sunny-normal",
        &[("outlook", "sunny"), ("humidity", "normal")],
        "P",
    ),
    ("overcast", &[("outlook", "overcast")], "P"),
    ("rain-windy", &[("outlook", "rain"), ("windy", "t")], "N"),
    ("rain-calm", &[("outlook", "rain"), ("windy", "f")], "P"),
];

#[test]
fn a_published_tree_is_asked_in_its_own_order_and_classes_every_day_of_its_table() {
    // Source: `tests/checks/information_gain.json` (the 14 days of Quinlan 1986, Table 1, from memory).
    let days: Json =
        serde_json::from_str(include_str!("../../checks/information_gain.json")).unwrap();
    let columns: Vec<&str> = days["columns"]
        .as_array()
        .unwrap()
        .iter()
        .map(|c| c.as_str().unwrap())
        .collect();
    let owned = |(point, value): &(&str, &str)| ((*point).to_owned(), (*value).to_owned());
    let shown: Shown = LEAVES
        .iter()
        .map(|(name, shows, _)| ((*name).to_owned(), shows.iter().map(owned).collect()))
        .collect();
    let choices: [Choice<'_>; 3] = [
        ("windy", vec!["t", "f"]),
        ("humidity", vec!["high", "normal"]),
        ("outlook", vec!["sunny", "overcast", "rain"]),
    ];
    // The root, published as the attribute of the largest gain, stands last in the record.
    let table = table(&[&design_of(&choices, &shown)]);
    let key = couplets(&table);
    assert_eq!(
        point_name(&table, key.couplets[CoupletAt::new(0)].point),
        "outlook"
    );
    assert_eq!(key.couplets.len(), 3, "the tree has three questions");
    let rows = days["rows"].as_array().unwrap();
    assert_eq!(rows.len(), 14);
    for row in rows {
        let row: Vec<&str> = row
            .as_array()
            .unwrap()
            .iter()
            .map(|v| v.as_str().unwrap())
            .collect();
        let day: BTreeMap<String, String> = columns
            .iter()
            .copied()
            .zip(row)
            .map(|p| owned(&p))
            .collect();
        let (found, asked) = followed(&table, &key, &day);
        let [leaf] = found.as_slice() else {
            panic!("{day:?} comes to {found:?}");
        };
        let class = LEAVES.iter().find(|(name, ..)| name == leaf).unwrap().2;
        assert_eq!(class, day["class"], "{day:?}");
        let expected: &[&str] = match day["outlook"].as_str() {
            "sunny" => &["outlook", "humidity"],
            "rain" => &["outlook", "windy"],
            _ => &["outlook"],
        };
        assert_eq!(asked, expected);
    }
}

/// The points of the Fano plane asked by its lines: two lines meet in one point, so after a line of three the next
/// divides 3 as 1 and 2, and the four points off it as 2 and 2. One point is known after two questions and six after
/// three, 20 in all: no code of seven words is shorter (Huffman 1952, from memory: 2 · 1 + 3 · 6).
#[test]
fn the_fano_plane_takes_no_more_questions_than_the_shortest_code() {
    // Source: `tests/checks/separating.json` (the Fano plane: at least three lines separate its points).
    let cases: Json = serde_json::from_str(include_str!("../../checks/separating.json")).unwrap();
    let cases = cases["cases"].as_array().unwrap();
    let fano = cases.iter().find(|case| case["name"] == "fano").unwrap();
    let matrix = fano["matrix"].as_array().unwrap();
    let lines: Vec<String> = (0..7).map(|line| format!("line-{line}")).collect();
    let shown: Shown = (0..)
        .zip(matrix)
        .map(|(item, row): (usize, &Json)| {
            let on = row.as_array().unwrap().iter().map(|on| match on.as_u64() {
                Some(1) => "on".to_owned(),
                _ => "off".to_owned(),
            });
            (
                format!("point-{item}"),
                lines.iter().cloned().zip(on).collect(),
            )
        })
        .collect();
    let choices: Vec<Choice<'_>> = lines
        .iter()
        .map(|line| (line.as_str(), vec!["on", "off"]))
        .collect();
    let table = table(&[&design_of(&choices, &shown)]);
    let key = couplets(&table);
    let minimum = usize::try_from(fano["minimum"].as_u64().unwrap()).unwrap();
    let mut questions: Vec<usize> = shown
        .iter()
        .map(|(name, answers)| {
            let (found, asked) = followed(&table, &key, answers);
            assert_eq!(found, [name.as_str()]);
            asked.len()
        })
        .collect();
    questions.sort_unstable();
    assert_eq!(questions, [2, 3, 3, 3, 3, 3, 3]);
    assert_eq!(questions.last(), Some(&minimum));
}
