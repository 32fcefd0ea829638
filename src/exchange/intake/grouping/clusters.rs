//! New designs: rows that belong to no design of the catalogue, put together by number, else by title with size and series.
//!
//! In: the clues of rows, one after the other; rows with numbers first, because a number tells more. Out: for each row its
//! place among the new designs, with reasons. Every row is compared with the few designs of its title and about its size
//! alone: they are found by an index of titles and heights.

use std::collections::{BTreeMap, BTreeSet, HashMap};
use std::ops::Bound;
use std::rc::Rc;

use super::clues::{Clues, NewNumber};
use super::extent::{Extent, Part};
use super::placement::{Group, Placement};
use super::recorded::{are_apart, in_years};

/// How many designs of one title and about one size a row is compared with. Further ones are of a file that gives one title
/// to everything.
const MOST_COMPARED: usize = 200;

/// A new design, as far as its rows tell it.
struct Cluster {
    /// The group that its rows get.
    group: Group,
    /// The size of the first row that has one.
    extent: Option<Extent>,
    /// The number of the first row.
    row: u32,
    series: Option<String>,
    years: Option<(i64, i64)>,
    makers: Rc<BTreeSet<String>>,
    numbers: Vec<Rc<NewNumber>>,
    title: Option<Rc<str>>,
}

/// The designs of a title and a series, or of none.
#[derive(Default)]
struct Titled {
    /// By part and height in hundredths of a millimetre.
    sized: BTreeMap<(Part, u64), BTreeSet<usize>>,
    /// Without a size.
    without_size: BTreeSet<usize>,
    /// The largest rounding of a size, in millimetres.
    tolerance: f64,
}

impl Titled {
    /// Those of which a part was measured, by height.
    fn of_part(&self, part: Part) -> impl Iterator<Item = usize> {
        let of_part = self.sized.range((part, 0)..=(part, u64::MAX));
        of_part.flat_map(|(_, at)| at).copied()
    }
}

/// New designs.
#[derive(Default)]
pub(super) struct NewDesigns {
    clusters: Vec<Cluster>,
    by_number: HashMap<(String, String), usize>,
    /// By title, then by series.
    by_title: HashMap<Rc<str>, BTreeMap<Option<String>, Titled>>,
    found: usize,
}

impl NewDesigns {
    /// Adds a row that an editor placed in a new design.
    pub(super) fn seed(&mut self, group: &Group, clues: &Clues, row: u32) {
        let at = self.cluster(group.clone(), clues, row);
        self.index(at, clues);
    }

    /// The new design of a row, made where there is none yet.
    pub(super) fn place(&mut self, clues: &Clues, row: u32) -> Placement {
        if let Some((at, number)) = self.by_number(clues) {
            let said = number.said.clone();
            return self.join(at, clues, vec![format!("the rows are {said}")]);
        }
        let mut splits = Vec::new();
        let mut agreeing: Vec<(usize, String)> = Vec::new();
        let mut unknown: Vec<usize> = Vec::new();
        for at in self.to_compare(clues) {
            let Some(cluster) = self.clusters.get(at) else {
                continue;
            };
            match cluster.fits(clues) {
                Ok(Some(how)) => agreeing.push((at, how)),
                Ok(None) => unknown.push(at),
                Err(how) => {
                    splits.push(format!(
                        "same title as row {}, but {how}: 2 designs",
                        cluster.row
                    ));
                }
            }
        }
        let of = |clusters: &[Cluster], at: usize| clusters.get(at).map_or(0, |c| c.row);
        let mut placed = match (&agreeing[..], &unknown[..]) {
            ([(at, how), others @ ..], _) => {
                let others: Vec<u32> = others
                    .iter()
                    .map(|(at, _)| of(&self.clusters, *at))
                    .collect();
                let mut placed = self.join(*at, clues, vec![format!("same title; {how}")]);
                if !others.is_empty() {
                    let others: Vec<String> = others.iter().map(u32::to_string).collect();
                    placed.doubts.push(format!(
                        "title and size agree with row {} too",
                        others.join(", ")
                    ));
                }
                placed
            }
            ([], [at]) if splits.is_empty() => {
                let first = of(&self.clusters, *at);
                let mut placed = self.join(*at, clues, vec!["same title".to_owned()]);
                placed.doubts.push(format!(
                    "same title as row {first}, and no size of the image to compare"
                ));
                placed
            }
            ([], several) => {
                let at = self.new_group(clues, row);
                let mut placed = Placement::of(self.clusters[at].group.clone());
                if !several.is_empty() {
                    let rows: Vec<String> = several
                        .iter()
                        .take(6)
                        .map(|at| of(&self.clusters, *at).to_string())
                        .collect();
                    placed.doubts.push(format!(
                        "row {} has the title too, and no size of the image tells whether it is the same design",
                        rows.join(", ")
                    ));
                }
                placed
            }
        };
        splits.truncate(8);
        placed.splits = splits;
        placed
    }

    fn by_number<'n>(&self, clues: &'n Clues) -> Option<(usize, &'n NewNumber)> {
        let mut numbers = clues.numbers.iter();
        numbers.find_map(|number| {
            let known = self
                .by_number
                .get(&(number.of.clone(), number.number.clone()))?;
            Some((*known, &**number))
        })
    }

    /// The new designs that have the title of a row and about its size, or no size, the nearest in size first: those of its
    /// series and those of which no series is told. A row without a series is compared with all. Where none is left, one of
    /// another series is named as the reason for a design of its own.
    fn to_compare(&self, clues: &Clues) -> Vec<usize> {
        let title = clues.title.as_ref();
        let Some(titled) = title.and_then(|title| self.by_title.get(title)) else {
            return Vec::new();
        };
        let mut found = Vec::new();
        match &clues.series {
            Some(series) => {
                for series in [Some(series.clone()), None] {
                    self.near(titled.get(&series), clues, &mut found);
                }
            }
            None => {
                for titled in titled.values().take(MOST_COMPARED) {
                    self.near(Some(titled), clues, &mut found);
                }
            }
        }
        if found.is_empty() {
            self.near(titled.values().next(), clues, &mut found);
        }
        let distance = |at: &usize| {
            let other = self.clusters.get(*at).and_then(|cluster| cluster.extent);
            match (&clues.extent, other) {
                (Some(extent), Some(other)) => extent.apart(&other),
                _ => f64::MAX,
            }
        };
        found.sort_by(|a, b| distance(a).total_cmp(&distance(b)).then(a.cmp(b)));
        found.truncate(MOST_COMPARED);
        found
    }

    /// Adds those of a title and series that are about the size of a row, and those without a size. Where none is about the
    /// size, the nearest is named as the reason for a design of its own.
    fn near(&self, titled: Option<&Titled>, clues: &Clues, found: &mut Vec<usize>) {
        let Some(titled) = titled else {
            return;
        };
        found.extend(titled.without_size.iter().copied().take(MOST_COMPARED));
        let Some(extent) = &clues.extent else {
            let all = titled.sized.values().flatten().copied();
            found.extend(all.take(MOST_COMPARED));
            return;
        };
        let near = f64::max(
            extent.height * 0.04,
            extent.tolerance + titled.tolerance + 1.0,
        );
        let from = (extent.part, hundredths(extent.height - near));
        let to = (extent.part, hundredths(extent.height + near));
        let within = titled
            .sized
            .range((Bound::Included(from), Bound::Included(to)));
        let within: Vec<usize> = within
            .flat_map(|(_, at)| at)
            .copied()
            .take(MOST_COMPARED)
            .collect();
        if within.is_empty() {
            let distance = |at: &usize| {
                let other = self.clusters.get(*at).and_then(|cluster| cluster.extent);
                other.map_or(f64::MAX, |other| extent.apart(&other))
            };
            let alike = titled.of_part(extent.part).take(MOST_COMPARED);
            found.extend(alike.min_by(|a, b| distance(a).total_cmp(&distance(b))));
        }
        found.extend(within);
        // Of another part nothing can be compared.
        let other = match extent.part {
            Part::Image => Part::Matrix,
            Part::Matrix => Part::Image,
        };
        found.extend(titled.of_part(other).take(MOST_COMPARED));
    }

    fn join(&mut self, at: usize, clues: &Clues, joins: Vec<String>) -> Placement {
        let mut doubts = Vec::new();
        let Some(cluster) = self.clusters.get_mut(at) else {
            return Placement::of(Group::Undecided);
        };
        if let (Some(known), Some(title)) = (&cluster.title, &clues.title)
            && known != title
        {
            doubts.push(format!("its title is not that of row {}", cluster.row));
        }
        if let (Some(known), Some(extent)) = (&cluster.extent, &clues.extent)
            && extent.agrees(known) == Some(false)
        {
            doubts.push(format!(
                "beside row {}, {}",
                cluster.row,
                extent.difference(known)
            ));
        }
        if let (Some(known), Some(years)) = (cluster.years, clues.years)
            && are_apart(known, years)
        {
            doubts.push(format!(
                "dated {}, row {} {}",
                in_years(years),
                cluster.row,
                in_years(known)
            ));
        }
        let group = cluster.group.clone();
        cluster.series = cluster.series.take().or_else(|| clues.series.clone());
        cluster.years = cluster.years.or(clues.years);
        if cluster.makers.is_empty() {
            cluster.makers.clone_from(&clues.makers);
        }
        for number in &clues.numbers {
            if !cluster.numbers.contains(number) {
                cluster.numbers.push(number.clone());
            }
        }
        let gains = cluster.extent.is_none() && clues.extent.is_some();
        cluster.extent = cluster.extent.or(clues.extent);
        if gains || !clues.numbers.is_empty() {
            self.index(at, clues);
        }
        Placement {
            joins,
            doubts,
            ..Placement::of(group)
        }
    }

    fn new_group(&mut self, clues: &Clues, row: u32) -> usize {
        let group = Group::New(self.found);
        self.found += 1;
        let at = self.cluster(group, clues, row);
        self.index(at, clues);
        at
    }

    fn cluster(&mut self, group: Group, clues: &Clues, row: u32) -> usize {
        self.clusters.push(Cluster {
            group,
            extent: clues.extent,
            row,
            series: clues.series.clone(),
            years: clues.years,
            makers: clues.makers.clone(),
            numbers: clues.numbers.clone(),
            title: clues.title.clone(),
        });
        self.clusters.len() - 1
    }

    fn index(&mut self, at: usize, clues: &Clues) {
        for number in &clues.numbers {
            let number = (number.of.clone(), number.number.clone());
            self.by_number.entry(number).or_insert(at);
        }
        let Some(title) = &clues.title else {
            return;
        };
        let series = self
            .clusters
            .get(at)
            .and_then(|cluster| cluster.series.clone());
        let titled = self.by_title.entry(title.clone()).or_default();
        let titled = titled.entry(series).or_default();
        match &clues.extent {
            Some(extent) => {
                titled.without_size.remove(&at);
                titled.tolerance = titled.tolerance.max(extent.tolerance);
                let of_height = titled.sized.entry((extent.part, hundredths(extent.height)));
                of_height.or_default().insert(at);
            }
            None => {
                titled.without_size.insert(at);
            }
        }
    }
}

impl Cluster {
    /// Whether a row that has its title fits it: how, or `None` where nothing can be compared.
    fn fits(&self, clues: &Clues) -> Result<Option<String>, String> {
        for number in &clues.numbers {
            let other = self
                .numbers
                .iter()
                .find(|n| n.of == number.of && n.number != number.number);
            if let Some(other) = other {
                return Err(format!("it is {}, the other {}", number.said, other.said));
            }
        }
        if let (Some(one), Some(other)) = (&self.series, &clues.series)
            && one != other
        {
            return Err("it is in another series".to_owned());
        }
        if !self.makers.is_empty()
            && !clues.makers.is_empty()
            && self.makers.is_disjoint(&clues.makers)
        {
            return Err("it is by another maker".to_owned());
        }
        if let (Some(own), Some(extent)) = (&self.extent, &clues.extent) {
            match extent.agrees(own) {
                Some(true) => return Ok(Some(own.agreement(extent))),
                Some(false) => return Err(extent.difference(own)),
                None => {}
            }
        }
        match (self.years, clues.years) {
            (Some(own), Some(years)) if are_apart(own, years) => Err(format!(
                "it is dated {}, the other {}",
                in_years(years),
                in_years(own)
            )),
            _ if self.series.is_some() && self.series == clues.series => Ok(Some(
                "same series, no size of the image to compare".to_owned(),
            )),
            _ => Ok(None),
        }
    }
}

/// A height in hundredths of a millimetre.
fn hundredths(mm: f64) -> u64 {
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "lengths of prints are below 20,000 mm; the cast saturates"
    )]
    let hundredths = (mm.max(0.0) * 100.0) as u64;
    hundredths
}
