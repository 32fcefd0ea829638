//! Properties that every identification has.

use keyblock::model::certainty::Certainty;
use keyblock::study::identify::{Observed, identify};
use keyblock::study::index::{PointAt, ValueAt};
use keyblock::study::next_point::next_points;
use keyblock::study::scale::{Answer, Scale};
use keyblock::study::table::DiagnosticTable;

use super::made_up::{Lehmer, MadeUp};
use super::{assert_near, table};

fn random_observation(table: &DiagnosticTable, numbers: &mut Lehmer) -> Observed {
    let point = PointAt::new(numbers.below(table.points.len()));
    let answer = match &table.points[point].scale {
        Scale::Measure(_) => {
            Answer::Number(f64::from(u32::try_from(95 + numbers.below(20)).unwrap()))
        }
        scale => {
            let places = [numbers.below(scale.len()), numbers.below(scale.len())];
            Answer::OneOf(places.map(ValueAt::new).into())
        }
    };
    let certainty =
        [Certainty::Certain, Certainty::Probable, Certainty::Possible][numbers.below(3)];
    Observed {
        point,
        answer,
        certainty,
    }
}

#[test]
fn what_always_holds_of_an_identification() {
    let mut numbers = Lehmer(23);
    let mut excluded_all = 0;
    for _ in 0..80 {
        let table = table(&[&MadeUp::new(&mut numbers).record()]);
        let mut observed: Vec<Observed> = Vec::new();
        let mut before = identify(&table, &observed);
        for _ in 0..6 {
            let new = random_observation(&table, &mut numbers);
            if observed.iter().any(|o| o.point == new.point) {
                continue;
            }
            let is_unknown = table.points[new.point].classes.iter().all(Option::is_none);
            let is_deciding = table.points[new.point].is_deciding;
            let excludes = is_deciding && new.certainty == Certainty::Certain;
            let least = observed.is_empty();
            observed.insert(0, new);
            let now = identify(&table, &observed);
            excluded_all += usize::from(now.left().next().is_none());
            for (before, now) in before.candidates.iter().zip(&now.candidates) {
                // Adding an observation never brings a candidate back, and only a certain one at a
                // deciding point excludes.
                assert!(!before.is_excluded() || now.is_excluded());
                assert!(excludes || before.is_excluded() == now.is_excluded());
                // A point of which nothing is recorded changes nothing.
                if is_unknown {
                    assert_near(before.weight, now.weight);
                }
            }
            let total: f64 = now.candidates.iter().map(|c| c.weight).sum();
            let expected = if now.left().next().is_some() {
                1.0
            } else {
                0.0
            };
            assert_near(total, expected);
            // The order of the observations does not matter, to the last digit.
            let mut turned = observed.clone();
            turned.reverse();
            assert_eq!(identify(&table, &turned), now);
            for next in next_points(&table, &now, &observed) {
                let column = &table.points[next.point];
                let most = match &column.scale {
                    Scale::Measure(measure) => measure.grid().len(),
                    scale => scale.len(),
                };
                let most = f64::from(u32::try_from(most.max(1)).unwrap()).log2();
                assert!(next.bits >= 0.0 && next.bits <= most + 1e-9);
                if column.classes.iter().all(Option::is_none) {
                    assert_near(next.bits, 0.0);
                }
            }
            assert!(!least || now.candidates.len() == table.candidates.len());
            before = now;
        }
    }
    assert!(
        excluded_all > 0,
        "no random sheet was ever excluded from everything"
    );
}
