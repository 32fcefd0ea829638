//! The photographs that come with a file: which is of which row, and which side it shows.
//!
//! In: the rows, each with its accession number and the file names that its cells give, and the names of the files that
//! were handed in. Out: [`Photographs`]: the matches, the files of which no row tells, the names for which there is no
//! file. A cell that names a file decides. Else a file belongs to the row whose accession number its name begins with, the
//! longest where several do; what follows may only be the words for a side or a view and a running number. Numbers are
//! compared by their parts (`study::search::words::number_parts`), so that `1962-44_recto.jpg` is of `1962.44`. Two rows
//! with one number share no photograph silently: the file stays without a row.

use std::collections::{BTreeMap, BTreeSet};

use crate::model::picture::View;
use crate::model::words::Side;
use crate::study::search::words::number_parts;

/// A row, as far as photographs are concerned.
#[derive(Clone, Debug, Default)]
pub struct PhotographedRow<'r> {
    /// The accession number.
    pub accession: Option<&'r str>,
    /// The names of files that its cells give.
    pub files: Vec<&'r str>,
}

/// Which photographs are of which rows.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Photographs {
    /// The matches, by row and in the order of the file names.
    pub matches: Vec<PhotographMatch>,
    /// Files of which no row tells, by their places in the list of names.
    pub unmatched: Vec<usize>,
    /// Files that would be of several rows, with those rows.
    pub ambiguous: Vec<(usize, Vec<usize>)>,
    /// Names in cells for which there is no file, with the place of the row.
    pub missing: Vec<(usize, String)>,
}

/// A photograph of the sheet of a row.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PhotographMatch {
    /// The place of the row.
    pub row: usize,
    /// The place of the file in the list of names.
    pub file: usize,
    /// The side that it shows; recto where the name does not say.
    pub side: Side,
    /// The view that it shows; the whole sheet where the name does not say.
    pub view: View,
    /// On what ground it is matched.
    pub ground: MatchGround,
}

/// On what ground a file is matched with a row.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum MatchGround {
    /// A cell names it.
    Cell,
    /// Its name begins with the accession number.
    Accession,
}

/// Endings of files that can be photographs: those of the formats that pictures of records may have.
const ENDINGS: [&str; 6] = ["jpg", "jpeg", "png", "tif", "tiff", "webp"];

/// Whether a file can be a photograph, by its name.
#[must_use]
pub fn is_photograph(name: &str) -> bool {
    let ending = name
        .rsplit_once('.')
        .map(|(_, ending)| ending.to_lowercase());
    ending.is_some_and(|ending| ENDINGS.contains(&ending.as_str()))
}

/// Matches files with rows.
///
/// ```
/// # use keyblock::exchange::intake::photographs::{PhotographedRow, matched};
/// # use keyblock::model::words::Side;
/// let row = |accession| PhotographedRow { accession: Some(accession), files: Vec::new() };
/// let found = matched(&[row("1962.4"), row("1962.44")], &["1962-44_verso.jpg", "plan.jpg"]);
/// assert_eq!((found.matches[0].row, found.matches[0].side), (1, Side::Verso));
/// assert_eq!(found.unmatched, [1]);
/// ```
#[must_use]
pub fn matched(rows: &[PhotographedRow<'_>], names: &[&str]) -> Photographs {
    let mut found = Photographs::default();
    let by_name = FilesByName::of(names);
    let mut named: BTreeSet<usize> = BTreeSet::new();
    for (row, photographed) in rows.iter().enumerate() {
        for cell in &photographed.files {
            match by_name.find(cell) {
                Some(file) => {
                    named.insert(file);
                    let (side, view) = shown(names[file], photographed.accession);
                    let ground = MatchGround::Cell;
                    found.matches.push(PhotographMatch {
                        row,
                        file,
                        side,
                        view,
                        ground,
                    });
                }
                None => found.missing.push((row, (*cell).to_owned())),
            }
        }
    }
    let numbers = RowsByNumber::of(rows);
    for (file, name) in names.iter().enumerate() {
        if named.contains(&file) {
            continue;
        }
        match numbers.of_file(name).as_slice() {
            [] => found.unmatched.push(file),
            [(row, side, view)] => found.matches.push(PhotographMatch {
                row: *row,
                file,
                side: *side,
                view: *view,
                ground: MatchGround::Accession,
            }),
            several => {
                let rows = several.iter().map(|(row, _, _)| *row);
                found.ambiguous.push((file, rows.collect()));
            }
        }
    }
    found
        .matches
        .sort_by_key(|found| (found.row, names[found.file].to_owned()));
    found
}

/// The files by their names as cells write them: with or without folder and ending, whatever the capitals.
struct FilesByName<'n> {
    exact: BTreeMap<&'n str, usize>,
    /// `None` where several files have the name.
    loose: BTreeMap<String, Option<usize>>,
}

impl<'n> FilesByName<'n> {
    fn of(names: &[&'n str]) -> FilesByName<'n> {
        let mut loose: BTreeMap<String, Option<usize>> = BTreeMap::new();
        for (file, name) in names.iter().enumerate() {
            let base = base(name).to_lowercase();
            for spelling in BTreeSet::from([stem(&base).to_owned(), base.clone()]) {
                loose
                    .entry(spelling)
                    .and_modify(|known| *known = None)
                    .or_insert(Some(file));
            }
        }
        FilesByName {
            exact: names
                .iter()
                .enumerate()
                .map(|(file, name)| (*name, file))
                .collect(),
            loose,
        }
    }

    fn find(&self, cell: &str) -> Option<usize> {
        let cell = cell.trim();
        if let Some(file) = self.exact.get(cell) {
            return Some(*file);
        }
        let base = base(cell).to_lowercase();
        let found = self.loose.get(&base).copied();
        // A cell may name an ending that the file no longer has: `.tif` where a JPEG is sent.
        let found =
            found.or_else(|| is_photograph(&base).then(|| self.loose.get(stem(&base)).copied())?);
        found.flatten()
    }
}

/// The rows by the parts of their accession numbers.
struct RowsByNumber {
    rows: BTreeMap<Vec<String>, Vec<usize>>,
    longest: usize,
}

impl RowsByNumber {
    fn of(rows: &[PhotographedRow<'_>]) -> RowsByNumber {
        let mut by_number: BTreeMap<Vec<String>, Vec<usize>> = BTreeMap::new();
        for (row, photographed) in rows.iter().enumerate() {
            let parts = number_parts(photographed.accession.unwrap_or_default());
            if !parts.is_empty() {
                by_number.entry(parts).or_default().push(row);
            }
        }
        RowsByNumber {
            longest: by_number.keys().map(Vec::len).max().unwrap_or(0),
            rows: by_number,
        }
    }

    /// The rows whose number the name of a file begins with, and what the rest of the name says: those of the longest
    /// number from which the rest is understood.
    fn of_file(&self, name: &str) -> Vec<(usize, Side, View)> {
        let parts = number_parts(stem(base(name)));
        for length in (1..=parts.len().min(self.longest)).rev() {
            let (number, rest) = parts.split_at(length);
            let Some(rows) = self.rows.get(number) else {
                continue;
            };
            let Some((side, view)) = side_and_view(rest) else {
                continue;
            };
            return rows.iter().map(|row| (*row, side, view)).collect();
        }
        Vec::new()
    }
}

/// What a file that a cell names shows, as far as its name says so.
fn shown(name: &str, accession: Option<&str>) -> (Side, View) {
    let parts = number_parts(stem(base(name)));
    let number = number_parts(accession.unwrap_or_default());
    let rest = parts.strip_prefix(number.as_slice()).unwrap_or(&parts);
    let (mut side, mut view) = (Side::Recto, View::Whole);
    for word in rest {
        // A single letter tells only where the number stands before it.
        let is_telling = word.chars().count() > 1 || rest.len() < parts.len();
        match meaning(word).filter(|_| is_telling) {
            Some(Meaning::Side(said)) => side = said,
            Some(Meaning::View(said)) => view = said,
            _ => {}
        }
    }
    (side, view)
}

/// The side and view that the rest of a name says; `None` where it says anything else.
fn side_and_view(rest: &[String]) -> Option<(Side, View)> {
    let (mut side, mut view) = (Side::Recto, View::Whole);
    let mut numbers = 0;
    for word in rest {
        match meaning(word)? {
            Meaning::Side(said) => side = said,
            Meaning::View(said) => view = said,
            Meaning::Running => numbers += 1,
            Meaning::Nothing => {}
        }
    }
    (numbers <= 1).then_some((side, view))
}

/// What a word in the name of a file means.
#[derive(Clone, Copy)]
enum Meaning {
    Side(Side),
    View(View),
    /// A running number.
    Running,
    Nothing,
}

/// Words in the names of photographs, in English, German, French and Dutch. Common practice, no source.
fn meaning(word: &str) -> Option<Meaning> {
    Some(match word {
        "r" | "recto" | "front" | "vorderseite" | "vs" | "face" | "voorzijde" => {
            Meaning::Side(Side::Recto)
        }
        "v" | "verso" | "back" | "reverse" | "rückseite" | "rueckseite" | "ruckseite" | "rs"
        | "dos" | "achterzijde" => Meaning::Side(Side::Verso),
        "mount" | "montierung" | "montage" | "passepartout" => Meaning::Side(Side::Mount),
        "edge" | "kante" => Meaning::Side(Side::Edge),
        "detail" | "det" | "d" | "ausschnitt" => Meaning::View(View::Detail),
        "raking" | "streiflicht" | "rasante" | "strijklicht" => Meaning::View(View::Raking),
        "transmitted" | "durchlicht" | "transmise" | "doorvallend" => {
            Meaning::View(View::Transmitted)
        }
        "light" | "lumière" | "lumiere" | "licht" | "img" | "image" | "photo" | "foto" | "scan"
        | "print" | "full" | "whole" | "gesamt" => Meaning::Nothing,
        word if word.len() <= 3 && word.chars().all(|c| c.is_ascii_digit()) => Meaning::Running,
        _ => return None,
    })
}

/// The name without its folder.
fn base(name: &str) -> &str {
    name.rsplit(['/', '\\']).next().unwrap_or(name)
}

/// The name without its ending, where that is one of a photograph.
fn stem(name: &str) -> &str {
    match name.rsplit_once('.') {
        Some((stem, _)) if is_photograph(name) => stem,
        _ => name,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn row<'r>(accession: &'r str, files: &[&'r str]) -> PhotographedRow<'r> {
        PhotographedRow {
            accession: (!accession.is_empty()).then_some(accession),
            files: files.to_vec(),
        }
    }

    fn told(rows: &[PhotographedRow<'_>], names: &[&str]) -> Vec<(usize, String, Side, View)> {
        let found = matched(rows, names);
        let told = found
            .matches
            .iter()
            .map(|m| (m.row, names[m.file].to_owned(), m.side, m.view));
        told.collect()
    }

    #[test]
    fn a_cell_that_names_a_file_decides() {
        let rows = [
            row("1962.44", &["KM 17.TIF"]),
            row("1962.45", &["scans/b.jpg"]),
        ];
        let names = ["km 17.jpg", "scans/b.jpg", "1962.44.jpg"];
        assert_eq!(
            told(&rows, &names),
            [
                (0, "1962.44.jpg".to_owned(), Side::Recto, View::Whole),
                (0, "km 17.jpg".to_owned(), Side::Recto, View::Whole),
                (1, "scans/b.jpg".to_owned(), Side::Recto, View::Whole),
            ]
        );
        let found = matched(&[row("7", &["missing.jpg"])], &["other.jpg"]);
        assert_eq!(found.missing, [(0, "missing.jpg".to_owned())]);
        assert_eq!(found.unmatched, [0]);
    }

    #[test]
    fn names_begin_with_the_number_and_say_the_side() {
        let rows = [
            row("P.1962.4", &[]),
            row("P.1962.44", &[]),
            row("P.1962.44.2", &[]),
        ];
        for (name, expected) in [
            ("p1962-44.jpg", Some((1, Side::Recto, View::Whole))),
            ("P_1962_44_v.png", Some((1, Side::Verso, View::Whole))),
            ("P.1962.44.2.jpg", Some((2, Side::Recto, View::Whole))),
            // The third photograph of 44: no row has that number.
            ("P.1962.44.3.jpg", Some((1, Side::Recto, View::Whole))),
            (
                "P 1962.4 Rückseite Streiflicht.tif",
                Some((0, Side::Verso, View::Raking)),
            ),
            (
                "P.1962.44 detail 2.jpg",
                Some((1, Side::Recto, View::Detail)),
            ),
            // Another number, and words that are none of a photograph.
            ("P.1962.441.jpg", None),
            ("P.1962.44 letter.jpg", None),
            ("P.1962.jpg", None),
        ] {
            let found = matched(&rows, &[name]);
            let one = found.matches.first().map(|m| (m.row, m.side, m.view));
            assert_eq!(one, expected, "{name}");
            assert_eq!(
                found.unmatched.len(),
                usize::from(expected.is_none()),
                "{name}"
            );
        }
    }

    #[test]
    fn a_file_of_two_rows_is_of_neither() {
        let rows = [row("1962.44", &[]), row("1962/44", &[])];
        let found = matched(&rows, &["1962.44.jpg"]);
        assert_eq!(found.matches, []);
        assert_eq!(found.ambiguous, [(0, vec![0, 1])]);
        // Two files with one name in two folders: the cell does not say which.
        let found = matched(&[row("1", &["a.jpg"])], &["x/a.jpg", "y/a.jpg"]);
        assert_eq!(found.missing.len(), 1);
    }
}
