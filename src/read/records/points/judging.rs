//! The points of a design, for checking answers: finds the point that an entry names.

use std::collections::{BTreeMap, BTreeSet};

use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::place::Place;
use crate::model::point::Point;
use crate::read::faults::Faults;
use crate::read::near::nearest;
use crate::read::table::fields::Entry;

/// The points of one design, for checking the answers to them.
#[derive(Debug, Default, PartialEq)]
pub(crate) struct Points {
    pub(super) design: String,
    pub(super) by_key: BTreeMap<Key, Point>,
    /// Points that could be read only in part, or that share their key with another. Answers to them are
    /// not checked: the fault has a finding already.
    pub(super) faulty: BTreeSet<Key>,
    /// Whether every point is known. False where the design's file is missing or has syntax faults, and
    /// where some point's key is faulty.
    pub(super) all_known: bool,
    /// The keys of the design's states, in the order of the record.
    pub(in crate::read::records) states: Vec<Key>,
}

impl Points {
    /// The point that an entry names; reports a finding where there is none.
    pub(super) fn named<'t>(
        &self,
        faults: &mut Faults<'t>,
        header: Place,
        entry: Entry<'t>,
        verb: &str,
    ) -> Named<'_> {
        let name: &str = entry.key.get_ref();
        if self.faulty.contains(name) {
            return Named::Unjudged;
        }
        if let Some(point) = self.by_key.get(name) {
            return Named::Point(point);
        }
        if !self.all_known {
            return Named::Unjudged;
        }
        if !faults.swallowed(entry.key, header, false) {
            let finding = Finding::new(
                Code::PointUnknown,
                faults.place(entry.key.span()),
                format!("design {} has no point `{name}`", self.design),
            )
            .saying(format!("{verb} here"));
            let finding = match nearest(name, self.keys().map(Key::as_str)) {
                Some(near) => {
                    let place = self.by_key.get(near).map(|point| point.key.place);
                    let finding = match place {
                        Some(place) => finding.beside(place, "the nearest point"),
                        None => finding,
                    };
                    finding.help(format!(
                        "write `{near}`, or add a point with the key `{name}` to the design"
                    ))
                }
                None if self.keys().next().is_none() => {
                    finding.help(format!("add a point with the key `{name}` to the design"))
                }
                None => {
                    let all: Vec<_> = self.keys().map(Key::as_str).collect();
                    finding.help(format!("its points are {}", all.join(", ")))
                }
            };
            faults.push(finding);
        }
        Named::Nothing
    }

    /// The keys of all points, those that could be read only in part included.
    fn keys(&self) -> impl Iterator<Item = &Key> {
        let all: BTreeSet<&Key> = self.by_key.keys().chain(&self.faulty).collect();
        all.into_iter()
    }
}

/// The result of looking up the point that an entry names.
pub(super) enum Named<'p> {
    Point(&'p Point),
    /// The entry may name a point that could not be read.
    Unjudged,
    /// The entry names no point; this has been reported.
    Nothing,
}
