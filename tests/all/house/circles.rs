//! The dependencies between files within a stage, and the circles among them.

use std::collections::{BTreeMap, BTreeSet, VecDeque};
use std::path::PathBuf;

use petgraph::algo::tarjan_scc;
use petgraph::graph::{DiGraph, NodeIndex};

use super::modules::House;
use super::sources::stage_of;

/// For each file, the files it depends on and the first line that says so.
pub type Dependencies = BTreeMap<PathBuf, BTreeMap<PathBuf, usize>>;

impl House {
    /// The dependencies between files of one stage. A `pub use` makes none: it only re-exports a name, and a
    /// file that uses the name depends on the file that defines it.
    pub fn dependencies(&self) -> Dependencies {
        let mut found = Dependencies::new();
        for reference in self.references.iter().filter(|r| !r.is_reexport) {
            let file = &self.modules[reference.module].file;
            let Some(other) = self.depends_on(reference) else {
                continue;
            };
            if other != *file && stage_of(&other) == stage_of(file) {
                let others = found.entry(file.clone()).or_default();
                let line = others.entry(other).or_insert(reference.line);
                *line = reference.line.min(*line);
            }
        }
        found
    }
}

/// The circles among files: for each set of files that all depend on each other, how many they are and the
/// shortest way round, each step with the line that makes it.
pub fn circles(dependencies: &Dependencies) -> Vec<String> {
    let mut graph: DiGraph<&PathBuf, ()> = DiGraph::new();
    let mut nodes: BTreeMap<&PathBuf, NodeIndex> = BTreeMap::new();
    for (file, others) in dependencies {
        for other in others.keys() {
            let [from, to] =
                [file, other].map(|f| *nodes.entry(f).or_insert_with(|| graph.add_node(f)));
            graph.add_edge(from, to, ());
        }
    }
    let sets = tarjan_scc(&graph);
    let mut told: Vec<String> = sets
        .into_iter()
        .filter(|set| set.len() > 1)
        .map(|set| {
            tell(
                dependencies,
                &set.into_iter().map(|node| graph[node]).collect(),
            )
        })
        .collect();
    told.sort();
    told
}

fn tell<'a>(dependencies: &'a Dependencies, set: &BTreeSet<&'a PathBuf>) -> String {
    let rounds = set.iter().filter_map(|file| round(dependencies, set, file));
    let shortest = rounds.min_by_key(Vec::len).unwrap_or_default();
    let steps = shortest.windows(2).map(|step| {
        let line = dependencies[step[0]][step[1]];
        format!(
            "\n  {}:{line} uses {}",
            step[0].display(),
            step[1].display()
        )
    });
    let names: Vec<String> = set.iter().map(|f| f.display().to_string()).collect();
    format!(
        "{} files in a circle: {}{}",
        set.len(),
        names.join(", "),
        steps.collect::<String>()
    )
}

/// The shortest way from a file back to itself.
fn round<'a>(
    dependencies: &'a Dependencies,
    set: &BTreeSet<&'a PathBuf>,
    from: &'a PathBuf,
) -> Option<Vec<&'a PathBuf>> {
    let mut before: BTreeMap<&PathBuf, &PathBuf> = BTreeMap::new();
    let mut waiting = VecDeque::from([from]);
    while let Some(at) = waiting.pop_front() {
        for next in dependencies.get(at)?.keys().filter(|f| set.contains(f)) {
            if next == from {
                let mut way = vec![from, at];
                while let Some(earlier) = way.last().and_then(|last| before.get(*last)) {
                    way.push(earlier);
                }
                way.reverse();
                return Some(way);
            }
            if !before.contains_key(next) {
                before.insert(next, at);
                waiting.push_back(next);
            }
        }
    }
    None
}
