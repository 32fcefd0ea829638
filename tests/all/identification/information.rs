//! The information that the next point is expected to give.

use std::collections::BTreeSet;

use keyblock::model::certainty::Certainty;
use keyblock::study::identify::identify;
use keyblock::study::index::CandidateAt;
use keyblock::study::next_point::{information, next_points};
use keyblock::study::scale::{Answer, Scale};
use serde_json::Value as Json;
use statrs::distribution::Categorical;
use statrs::statistics::Distribution;

use super::by_hand::kinds;
use super::{assert_near, design, seen, table};

#[test]
fn expected_information_is_that_of_the_published_example() {
    // Source: `tests/checks/information_gain.json` (Quinlan 1986, "Induction of decision trees",
    // Table 1): the gains of four attributes on two classes.
    let example: Json =
        serde_json::from_str(include_str!("../../checks/information_gain.json")).unwrap();
    let columns: Vec<&str> = strings(&example["columns"]);
    let rows: Vec<Vec<&str>> = example["rows"]
        .as_array()
        .unwrap()
        .iter()
        .map(strings)
        .collect();
    let class = columns.iter().position(|c| *c == "class").unwrap();
    let distinct = |column: usize| -> Vec<&str> {
        let values: BTreeSet<&str> = rows.iter().map(|row| row[column]).collect();
        values.into_iter().collect()
    };
    let count = |test: &dyn Fn(&Vec<&str>) -> bool| -> f64 {
        f64::from(u32::try_from(rows.iter().filter(|row| test(row)).count()).unwrap())
    };
    let all = count(&|_| true);
    let classes = distinct(class);
    let shares: Vec<f64> = classes
        .iter()
        .map(|c| count(&|row| row[class] == *c) / all)
        .collect();
    for (attribute, published) in [
        ("outlook", 0.246),
        ("humidity", 0.151),
        ("windy", 0.048),
        ("temperature", 0.029),
    ] {
        let column = columns.iter().position(|c| *c == attribute).unwrap();
        let chances: Vec<Vec<f64>> = classes
            .iter()
            .map(|c| {
                let of_class = count(&|row| row[class] == *c);
                distinct(column)
                    .iter()
                    .map(|v| count(&|row| row[class] == *c && row[column] == *v) / of_class)
                    .collect()
            })
            .collect();
        let bits = information(&shares, &chances);
        assert!((bits - published).abs() < 0.001, "{attribute}: {bits}");
    }
    // H = 0.940 bits: an answer that names the class gives all of it.
    let telling = [vec![1.0, 0.0], vec![0.0, 1.0]];
    assert!((information(&shares, &telling) - 0.940).abs() < 0.001);
}

fn strings(list: &Json) -> Vec<&str> {
    list.as_array()
        .unwrap()
        .iter()
        .map(|v| v.as_str().unwrap())
        .collect()
}

/// Entropy in bits, by the crate `statrs`, which gives it in nats.
fn entropy(weights: &[f64]) -> f64 {
    let nats = Categorical::new(weights).unwrap().entropy().unwrap();
    nats / std::f64::consts::LN_2
}

#[test]
fn expected_information_is_the_expected_fall_in_entropy() {
    // H(p) - sum over v of P(v) H(p | v), with the entropies of the crate `statrs`.
    let table = kinds();
    let observed = [seen(&table, "moon", &["present"], Certainty::Probable)];
    let identified = identify(&table, &observed);
    let p: Vec<f64> = identified.candidates.iter().map(|c| c.weight).collect();
    let next = next_points(&table, &identified, &observed);
    assert_eq!(next.len(), 3);
    for next in next {
        let column = &table.points[next.point];
        let answers: Vec<Answer> = match &column.scale {
            Scale::Measure(measure) => {
                // 226, 227 … 252: from 232 - 3·2 to 246 + 3·2 in steps of 2/2.
                let grid = measure.grid();
                assert_eq!(grid.len(), 27);
                assert_eq!((grid[0], grid[26]), (226.0, 252.0));
                grid.into_iter().map(Answer::Number).collect()
            }
            scale => scale.values().map(|v| Answer::OneOf([v].into())).collect(),
        };
        let chance = |candidate: CandidateAt, answer: &Answer| -> f64 {
            // A certain observation, of a sheet that departs in inking one time in ten.
            let error = if column.is_deciding {
                0.01
            } else {
                1.0 - 0.99 * 0.9
            };
            let likelihood =
                |a: &Answer| column.scale.likelihood(a, column.allows(candidate), error);
            let total: f64 = answers.iter().map(likelihood).sum();
            likelihood(answer) / total
        };
        let mut expected = entropy(&p);
        for answer in &answers {
            let joint: Vec<f64> = (0..3)
                .map(|c| p[c] * chance(CandidateAt::new(c), answer))
                .collect();
            let total: f64 = joint.iter().sum();
            expected -= total * entropy(&joint);
        }
        assert_near(next.bits, expected);
    }
}

#[test]
fn ties_stand_in_the_order_of_the_record() {
    let twins = design(
        r#"
points = [
  { key = "z", ask = "Z?", kind = "presence", rests_on = "matrix" },
  { key = "dull", ask = "Dull?", kind = "presence", rests_on = "matrix" },
  { key = "a", ask = "A?", kind = "presence", rests_on = "matrix" },
]
states = [
  { key = "one", shows = { z = "absent", a = "present" } },
  { key = "two", shows = { z = "present", a = "absent" } },
]"#,
    );
    let table = table(&[&twins]);
    let next = next_points(&table, &identify(&table, &[]), &[]);
    let order: Vec<&str> = next
        .iter()
        .map(|n| table.points[n.point].key.as_str())
        .collect();
    assert_eq!(order, ["z", "a", "dull"]);
    assert_near(next[2].bits, 0.0);
}
