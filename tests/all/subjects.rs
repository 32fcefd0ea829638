//! The subjects under which changes between editions are told.

use keyblock::model::register::Subject;
use keyblock::read::shape::{DESIGN, IMPRESSION};
use keyblock::study::issued::subjects::subject;

/// Particulars are for holders, people and marks, and for what every kind of record may have: a page or an identifier
/// elsewhere. Another new key of a design or an impression must be given a subject.
#[test]
fn every_key_of_a_design_and_of_an_impression_has_a_subject() {
    for shape in [&DESIGN, &IMPRESSION] {
        for key in shape.keys() {
            let is_silent = ["private", "settled", "was", "web", "ids"].contains(&key.name);
            assert!(
                is_silent || subject(key.name) != Some(Subject::Particulars),
                "`{}` of {} has no subject",
                key.name,
                shape.name
            );
        }
    }
}
