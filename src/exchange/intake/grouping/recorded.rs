//! The designs of the catalogue to which rows may belong.
//!
//! In: the catalogue. Out: [`RecordedDesigns`], made once; for a row its [`Placement`] among them, or `None` where nothing
//! says that its design is recorded. A number or key comes first, then the title with the size; what contradicts is told,
//! and where two designs are named neither is chosen.

use std::collections::{BTreeMap, BTreeSet, HashMap};

use super::clues::Clues;
use super::extent::Extent;
use super::placement::{Group, Placement};
use super::series_names::compared;
use super::titles::title_key;
use crate::exchange::intake::known::CatalogueNames;
use crate::model::catalogue::Catalogue;
use crate::model::design::Design;
use crate::model::key::{ImpressionKey, Key};

/// How many years two dates of one design may lie apart before that is told.
pub(super) const YEARS_APART: i64 = 10;

/// What of a design is compared with rows.
struct Recorded {
    extents: Vec<Extent>,
    series: BTreeSet<String>,
    years: Option<(i64, i64)>,
}

/// The designs of a catalogue.
pub(super) struct RecordedDesigns {
    by_title: HashMap<String, Vec<Key>>,
    designs: BTreeMap<Key, Recorded>,
}

/// The record that the sheet of a row is.
pub(super) enum KnownRecord {
    /// Its holder keeps it under the number of the row.
    ByNumber(ImpressionKey),
    /// An editor says so.
    ByEditor(ImpressionKey),
}

impl KnownRecord {
    pub(super) fn key(&self) -> &ImpressionKey {
        match self {
            KnownRecord::ByNumber(key) | KnownRecord::ByEditor(key) => key,
        }
    }
}

/// How a row fits a recorded design that has its title.
enum Fit {
    /// So, in words.
    Agrees(String),
    /// Nothing can be compared.
    Unknown,
    /// It does not, in words.
    Differs(String),
}

impl RecordedDesigns {
    pub(super) fn of(catalogue: &Catalogue) -> RecordedDesigns {
        let mut by_title: HashMap<String, Vec<Key>> = HashMap::new();
        let mut designs = BTreeMap::new();
        for design in catalogue.designs.values() {
            designs.insert(design.key.clone(), Recorded::of(design));
            if design.standing.is_withdrawn() {
                continue;
            }
            for title in design
                .titles
                .iter()
                .filter_map(|title| title_key(&title.text.value))
            {
                let known = by_title.entry(title).or_default();
                if known.last() != Some(&design.key) {
                    known.push(design.key.clone());
                }
            }
        }
        RecordedDesigns { by_title, designs }
    }

    /// Where a row belongs among the recorded designs. `record`: its sheet in the census.
    pub(super) fn place(
        &self,
        clues: &Clues,
        record: Option<&KnownRecord>,
        names: &CatalogueNames<'_>,
    ) -> Option<Placement> {
        let placed = match record {
            Some(record) => Some(self.by_record(record, clues, names)),
            None if !clues.named.is_empty() => Some(self.by_number(clues, names)),
            None => None,
        };
        placed.or_else(|| self.by_title(clues, names))
    }

    /// The sheet is recorded: its design stands, and what the row says otherwise is told.
    pub(super) fn by_record(
        &self,
        record: &KnownRecord,
        clues: &Clues,
        names: &CatalogueNames<'_>,
    ) -> Placement {
        let design = &record.key().design;
        let mut placed = Placement::of(Group::Recorded(design.clone()));
        placed.joins.push(match record {
            KnownRecord::ByNumber(key) => format!("{key} is recorded with the number of the row"),
            KnownRecord::ByEditor(key) => format!("{key} is a sheet of these, as the editors say"),
        });
        for named in clues
            .named
            .iter()
            .filter(|named| !named.designs.contains(design))
        {
            let other = either(&named.designs, names);
            placed.doubts.push(format!(
                "its record is of {}, and by its number it is {other}",
                names.in_words(design)
            ));
        }
        self.tell_differences(design, clues, names, &mut placed);
        placed
    }

    fn by_number(&self, clues: &Clues, names: &CatalogueNames<'_>) -> Placement {
        let mut may_be: Option<Vec<Key>> = None;
        let mut contradictions = Vec::new();
        for named in &clues.named {
            let Some(known) = &mut may_be else {
                may_be = Some(named.designs.clone());
                continue;
            };
            let both: Vec<Key> = known
                .iter()
                .filter(|key| named.designs.contains(key))
                .cloned()
                .collect();
            if both.is_empty() {
                let (one, other) = (either(known, names), either(&named.designs, names));
                contradictions.push(format!(
                    "one number of the row is that of {one}, another that of {other}"
                ));
                known.extend(named.designs.iter().cloned());
            } else if contradictions.is_empty() {
                *known = both;
            }
        }
        let mut may_be = may_be.unwrap_or_default();
        let titled = self.titled(clues);
        let mut joins: Vec<String> = clues.named.iter().map(|named| named.why.clone()).collect();
        if may_be.len() > 1 && contradictions.is_empty() {
            // The title may say which of the several it is.
            let fitting: Vec<Key> = may_be
                .iter()
                .filter(|key| titled.contains(key))
                .cloned()
                .collect();
            if let [one] = &fitting[..] {
                joins.push(format!("the title is that of {}", names.in_words(one)));
                may_be = fitting;
            }
        }
        if !titled.is_empty() && !may_be.iter().any(|key| titled.contains(key)) {
            let (by_number, by_title) = (either(&may_be, names), either(titled, names));
            contradictions.push(format!(
                "the number is that of {by_number}, the title that of {by_title}"
            ));
            may_be.extend(titled.iter().cloned());
        }
        may_be.sort();
        may_be.dedup();
        let mut placed = match &may_be[..] {
            [one] => {
                let mut placed = Placement::of(Group::Recorded(one.clone()));
                self.tell_differences(one, clues, names, &mut placed);
                placed
            }
            _ => Placement::of(Group::OneOf(may_be)),
        };
        placed.joins = joins;
        placed.doubts.extend(contradictions);
        placed
    }

    /// What the row says otherwise than a design to which it belongs by its number.
    fn tell_differences(
        &self,
        design: &Key,
        clues: &Clues,
        names: &CatalogueNames<'_>,
        placed: &mut Placement,
    ) {
        let words = names.in_words(design);
        let titled = self.titled(clues);
        if !titled.is_empty()
            && !titled.contains(design)
            && matches!(placed.group, Group::Recorded(_))
        {
            placed
                .doubts
                .push(format!("the title is that of {}", either(titled, names)));
        }
        match self
            .designs
            .get(design)
            .map(|recorded| recorded.fits(clues))
        {
            Some(Fit::Differs(how)) => placed.doubts.push(format!("{words}: {how}")),
            Some(Fit::Agrees(_) | Fit::Unknown) | None => {}
        }
        self.tell_years(design, clues, &words, placed);
    }

    fn tell_years(&self, design: &Key, clues: &Clues, words: &str, placed: &mut Placement) {
        let recorded = self.designs.get(design).and_then(|recorded| recorded.years);
        if let (Some(recorded), Some(row)) = (recorded, clues.years)
            && are_apart(recorded, row)
        {
            placed.doubts.push(format!(
                "dated {}, and {words} {}",
                in_years(row),
                in_years(recorded)
            ));
        }
    }

    fn titled(&self, clues: &Clues) -> &[Key] {
        let title = clues.title.as_ref();
        title
            .and_then(|title| self.by_title.get(&**title))
            .map_or(&[], Vec::as_slice)
    }

    /// The design of which a row without a number has the title, where nothing speaks against it.
    fn by_title(&self, clues: &Clues, names: &CatalogueNames<'_>) -> Option<Placement> {
        let (mut agreeing, mut unknown, mut splits) = (Vec::new(), Vec::new(), Vec::new());
        for key in self.titled(clues) {
            match self.designs.get(key)?.fits(clues) {
                Fit::Agrees(how) => agreeing.push((key, how)),
                Fit::Unknown => unknown.push(key),
                Fit::Differs(how) => {
                    splits.push(format!("same title as {}, but {how}", names.in_words(key)));
                }
            }
        }
        let keys = |keys: Vec<&Key>| keys.into_iter().cloned().collect::<Vec<Key>>();
        let mut placed = match (&agreeing[..], &unknown[..]) {
            ([(one, how)], _) => {
                let mut placed = Placement::of(Group::Recorded((*one).clone()));
                placed
                    .joins
                    .push(format!("same title as {}; {how}", names.in_words(one)));
                self.tell_years(one, clues, &names.in_words(one), &mut placed);
                placed
            }
            ([], [one]) => {
                let mut placed = Placement::of(Group::Recorded((*one).clone()));
                placed
                    .joins
                    .push(format!("same title as {}", names.in_words(one)));
                placed.doubts.push(format!(
                    "same title as {}, and no size to compare",
                    names.in_words(one)
                ));
                self.tell_years(one, clues, &names.in_words(one), &mut placed);
                placed
            }
            ([], []) => {
                if splits.is_empty() {
                    return None;
                }
                let mut placed = Placement::of(Group::Undecided);
                placed.splits = splits;
                return Some(placed);
            }
            (several, _) => {
                let several = if several.is_empty() {
                    keys(unknown)
                } else {
                    keys(several.iter().map(|(key, _)| *key).collect())
                };
                let words = either(&several, names);
                let mut placed = Placement::of(Group::OneOf(several));
                placed.doubts.push(format!(
                    "the title is that of {words}, and the size does not tell which"
                ));
                placed
            }
        };
        placed.splits = splits;
        Some(placed)
    }
}

impl Recorded {
    fn of(design: &Design) -> Recorded {
        let date = design.date.own();
        let years = date.and_then(|d| Some((d.first_named()?.year, d.last_named()?.year)));
        Recorded {
            extents: Extent::all_of(design),
            series: design
                .series
                .iter()
                .map(|place| compared(&place.of.value))
                .collect(),
            years,
        }
    }

    fn fits(&self, clues: &Clues) -> Fit {
        if let Some(extent) = &clues.extent {
            let compared: Vec<(&Extent, bool)> = self
                .extents
                .iter()
                .filter_map(|recorded| Some((recorded, extent.agrees(recorded)?)))
                .collect();
            if let Some((recorded, _)) = compared.iter().find(|(_, agrees)| *agrees) {
                return Fit::Agrees(extent.agreement(recorded));
            }
            let nearest = compared.iter().map(|(recorded, _)| *recorded);
            let nearest = nearest.min_by(|a, b| extent.apart(a).total_cmp(&extent.apart(b)));
            if let Some(nearest) = nearest {
                return Fit::Differs(extent.difference(nearest));
            }
        }
        match (self.years, clues.years) {
            (Some(recorded), Some(row)) if are_apart(recorded, row) => Fit::Differs(format!(
                "it is dated {}, the other {}",
                in_years(row),
                in_years(recorded)
            )),
            _ => match &clues.series {
                Some(series) if self.series.contains(series) => {
                    Fit::Agrees("same series".to_owned())
                }
                _ => Fit::Unknown,
            },
        }
    }
}

/// Whether two spans of years lie further apart than dates of one design do.
pub(super) fn are_apart((from, to): (i64, i64), (other_from, other_to): (i64, i64)) -> bool {
    from - other_to > YEARS_APART || other_from - to > YEARS_APART
}

/// "1912", "1912 to 1914".
pub(super) fn in_years((from, to): (i64, i64)) -> String {
    if from == to {
        from.to_string()
    } else {
        format!("{from} to {to}")
    }
}

fn either(designs: &[Key], names: &CatalogueNames<'_>) -> String {
    let words: Vec<String> = designs.iter().map(|key| names.in_words(key)).collect();
    words.join(" or ")
}
