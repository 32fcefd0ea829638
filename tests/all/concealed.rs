//! What is private acts as if it were not there (docs/definitions.md, "Private and unpublished").
//!
//! The main test is generated from the declarations (`read::shape`): for each key of each kind of record, the site of a
//! catalogue that lists the key as private is, byte for byte, the site of the same catalogue without the key.
//! `tests/every-key.txt` is that catalogue; a key that is declared and not in it fails here.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;
use std::sync::LazyLock;

use keyblock::model::finding::Severity;
use keyblock::press::{PictureWork, judge};
use keyblock::read::shape::{CLAIM, Holds, OBSERVED, PARTY, PRIVATE, RECORDS, Shape, Takes};
use toml::{Table, Value};

/// The catalogue with every key.
const EVERY_KEY: &str = include_str!("../every-key.txt");

/// The keys that cannot be as if absent, each with the reason.
const EXCEPTIONS: &[(&str, &str)] = &[
    ("design.pictures.name", FORMER_NAMES),
    ("impression.pictures.name", FORMER_NAMES),
    ("document.by.name", PARTY_STAYS),
    ("document.to.name", PARTY_STAYS),
    ("design.pictures.publish", DECIDES),
    ("impression.pictures.publish", DECIDES),
    ("impression.publish", DECIDES),
    ("holder.consent.withdrawn", DECIDES),
    ("impression.provenance.owner", ROLE_STAYS),
    ("impression.provenance.agent", ROLE_STAYS),
    ("impression.provenance.keeper", ROLE_STAYS),
    ("impression.owner.name", PARTY_STAYS),
    ("impression.provenance.owner.name", PARTY_STAYS),
    ("impression.provenance.agent.name", PARTY_STAYS),
    ("impression.provenance.keeper.name", PARTY_STAYS),
    ("impression.sightings.by.name", PARTY_STAYS),
];

/// The key of every record that no page shows.
const SETTLED: &str = "settled";

impl DeclaredKey {
    /// Whether it is for the editors alone.
    fn is_for_editors(&self) -> bool {
        self.path.split('.').nth(1) == Some(SETTLED)
    }
}

const FORMER_NAMES: &str = "the former names of a picture are withheld with its name";
const DECIDES: &str = "it decides what is published; without it more would be";
const ROLE_STAYS: &str = "readers may learn that there was an owner, a dealer or a keeper, not who";
const PARTY_STAYS: &str =
    "a party has a name, or is somebody who is not named; without a name it is a fault";

/// A table of a record.
#[derive(Clone, Copy)]
enum TableKeys {
    /// With the keys of a shape.
    Shape(&'static Shape),
    /// A statement: `is`, and the keys of a claim.
    Statement,
    /// With keys that no shape declares.
    Map,
    /// The further keys of an open table.
    Further(&'static Shape),
}

impl TableKeys {
    /// The declared keys, `private` left out; none for a map.
    fn declared(self) -> Vec<&'static str> {
        match self {
            TableKeys::Shape(shape) => {
                let keys = shape.keys().map(|key| key.name);
                keys.filter(|name| *name != PRIVATE.name).collect()
            }
            TableKeys::Statement => {
                let claim = CLAIM.iter().map(|key| key.name);
                std::iter::once("is").chain(claim).collect()
            }
            TableKeys::Map | TableKeys::Further(_) => Vec::new(),
        }
    }

    /// Whether a key of the table is one that no shape declares.
    fn is_further(self, key: &str) -> bool {
        match self {
            TableKeys::Shape(_) | TableKeys::Statement => false,
            TableKeys::Map => true,
            TableKeys::Further(shape) => shape.key(key).is_none(),
        }
    }
}

/// Visits every table below `value`, which a key of this type has, with its path.
fn tables_in(
    takes: &'static Takes,
    value: &mut Value,
    path: &str,
    visit: &mut dyn FnMut(&str, TableKeys, &mut Table),
) {
    if let Value::Array(list) = value {
        for value in list {
            tables_in(takes, value, path, visit);
        }
        return;
    }
    match (takes, value) {
        (Takes::Several(inner), value) => tables_in(inner, value, path, visit),
        (
            Takes::Table(shape) | Takes::Tables(shape) | Takes::TextOrTables(shape),
            Value::Table(table),
        ) => {
            tables_of(shape, table, path, visit);
        }
        (Takes::Party(_), Value::Table(table)) => tables_of(&PARTY, table, path, visit),
        (Takes::Observed, Value::Table(table)) => tables_of(&OBSERVED, table, path, visit),
        (Takes::Statements(_), Value::Table(table)) => visit(path, TableKeys::Statement, table),
        (Takes::Map(_, inner), Value::Table(table)) => {
            for (_, value) in table.iter_mut() {
                tables_in(inner, value, &format!("{path}.*"), visit);
            }
            visit(path, TableKeys::Map, table);
        }
        _ => {}
    }
}

/// Visits a table of a shape, after those in it.
fn tables_of(
    shape: &'static Shape,
    table: &mut Table,
    path: &str,
    visit: &mut dyn FnMut(&str, TableKeys, &mut Table),
) {
    for key in shape.keys() {
        if let Some(value) = table.get_mut(key.name) {
            tables_in(&key.takes, value, &format!("{path}.{}", key.name), visit);
        }
    }
    visit(path, TableKeys::Shape(shape), table);
    if shape.open {
        visit(path, TableKeys::Further(shape), table);
    }
}

/// A key that the shapes declare.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct DeclaredKey {
    /// The kind of record and the keys that lead to it, joined by points; `*` stands for all keys of a map.
    path: String,
    /// Whether it is a key of a claim, which many tables have.
    is_of_claim: bool,
}

impl DeclaredKey {
    fn new(path: String, is_of_claim: bool) -> DeclaredKey {
        DeclaredKey { path, is_of_claim }
    }

    fn kind(&self) -> &str {
        self.path.split('.').next().unwrap()
    }

    fn name(&self) -> &str {
        self.path.rsplit('.').next().unwrap()
    }

    /// Whether one of the keys stands in the other.
    fn is_in_one_branch(&self, other: &DeclaredKey) -> bool {
        let holds = |outer: &str, inner: &str| {
            let below = inner.strip_prefix(outer);
            below.is_some_and(|rest| rest.starts_with('.'))
        };
        holds(&self.path, &other.path) || holds(&other.path, &self.path)
    }
}

/// Every key that the shapes declare. A shape that holds itself is entered once.
fn declared() -> BTreeSet<DeclaredKey> {
    let mut all = BTreeSet::new();
    for (kind, shape, _) in RECORDS {
        declared_by(shape, kind, &[], &mut all);
    }
    all
}

fn declared_by(
    shape: &'static Shape,
    path: &str,
    around: &[&'static Shape],
    all: &mut BTreeSet<DeclaredKey>,
) {
    if around.iter().any(|other| std::ptr::eq(*other, shape)) {
        return;
    }
    let mut around = around.to_vec();
    around.push(shape);
    for key in shape.keys().filter(|key| key.name != PRIVATE.name) {
        let path = format!("{path}.{}", key.name);
        declared_in(&key.takes, &path, &around, all);
        let is_of_claim = shape.claim && CLAIM.iter().any(|claim| claim.name == key.name);
        all.insert(DeclaredKey::new(path, is_of_claim));
    }
    if shape.open {
        all.insert(DeclaredKey::new(format!("{path}.*"), false));
    }
}

fn declared_in(
    takes: &'static Takes,
    path: &str,
    around: &[&'static Shape],
    all: &mut BTreeSet<DeclaredKey>,
) {
    match takes {
        Takes::Several(inner) => declared_in(inner, path, around, all),
        Takes::Table(shape) | Takes::Tables(shape) => declared_by(shape, path, around, all),
        Takes::Party(_) => declared_by(&PARTY, path, around, all),
        Takes::Observed => declared_by(&OBSERVED, path, around, all),
        Takes::Statements(_) => {
            let keys = TableKeys::Statement.declared().into_iter();
            all.extend(keys.map(|key| DeclaredKey::new(format!("{path}.{key}"), key != "is")));
        }
        Takes::Map(_, inner) => {
            let path = format!("{path}.*");
            declared_in(inner, &path, around, all);
            all.insert(DeclaredKey::new(path, false));
        }
        _ => {}
    }
}

/// A file of the catalogue.
#[derive(Clone)]
enum File {
    /// Records of a kind.
    Records {
        kind: &'static str,
        shape: &'static Shape,
        holds: Holds,
        table: Table,
    },
    /// Another text.
    Text(&'static str),
}

/// The files of the catalogue, by path.
static FILES: LazyLock<BTreeMap<&str, File>> = LazyLock::new(|| {
    let files = EVERY_KEY.split("\n-- ").skip(1);
    files
        .map(|file| file.split_once('\n').unwrap())
        .map(|(path, text)| (path, file(path, text)))
        .collect()
});

fn file(path: &str, text: &'static str) -> File {
    let kind = match path.split('/').collect::<Vec<_>>()[..] {
        ["catalogue.toml"] => "catalogue",
        ["records", "exhibitions.toml"] => "exhibitions",
        ["records", "holders", _] => "holder",
        ["records", "people", _] => "person",
        ["records", "marks", _] => "mark",
        ["records", "documents", name] if name.ends_with(".toml") => "document",
        ["records", "series", name] if name.ends_with(".toml") => "series",
        ["records", "vocabulary", _] => "vocabulary",
        ["records", "pages", name] if name.ends_with(".toml") => "page",
        ["records", "designs", _, "design.toml"] => "design",
        ["records", "designs", _, "impressions", name] if name.ends_with(".toml") => "impression",
        _ => return File::Text(text),
    };
    let (_, shape, holds) = RECORDS.iter().find(|(name, ..)| *name == kind).unwrap();
    File::Records {
        kind,
        shape,
        holds: *holds,
        table: toml::from_str(text).unwrap(),
    }
}

/// Visits every table of every record, with its path.
fn every_table(
    files: &mut BTreeMap<&str, File>,
    visit: &mut dyn FnMut(&str, TableKeys, &mut Table),
) {
    for file in files.values_mut() {
        match file {
            File::Records {
                kind,
                shape,
                holds: Holds::One,
                table,
            } => tables_of(shape, table, kind, visit),
            File::Records {
                kind, shape, table, ..
            } => {
                for (_, record) in table.iter_mut() {
                    tables_of(shape, record.as_table_mut().unwrap(), kind, visit);
                }
            }
            File::Text(_) => {}
        }
    }
}

/// What is done to a key.
#[derive(Clone, Copy)]
enum Change {
    /// It is listed as private.
    KeepPrivate,
    /// It is taken away.
    Remove,
}

/// The catalogue with keys changed in every table at their paths.
fn changed(keys: &[DeclaredKey], change: Change) -> BTreeMap<&'static str, File> {
    let mut files = FILES.clone();
    every_table(&mut files, &mut |path, keys_of_table, table| {
        let here = keys
            .iter()
            .filter_map(|key| key.path.strip_prefix(path)?.strip_prefix('.'));
        let names: Vec<String> = here
            .filter(|name| !name.contains('.'))
            .flat_map(|name| match name {
                "*" => {
                    let further = table.keys().filter(|key| keys_of_table.is_further(key));
                    further.cloned().collect()
                }
                _ if matches!(keys_of_table, TableKeys::Further(_)) => Vec::new(),
                name => Vec::from_iter(table.contains_key(name).then(|| name.to_owned())),
            })
            .collect();
        match change {
            Change::Remove => names.iter().for_each(|name| drop(table.remove(name))),
            Change::KeepPrivate if names.is_empty() => {}
            Change::KeepPrivate => drop(table.insert("private".to_owned(), names.into())),
        }
    });
    files
}

/// The picture of every record.
pub static PICTURE: LazyLock<Vec<u8>> = LazyLock::new(|| {
    let picture = image::RgbImage::from_fn(96, 72, |x, y| {
        let tone = (x * 37 + y * 91 + x * y * 7) % 251;
        image::Rgb([u8::try_from(tone).unwrap(); 3])
    });
    let mut bytes = std::io::Cursor::new(Vec::new());
    picture
        .write_to(&mut bytes, image::ImageFormat::Png)
        .unwrap();
    bytes.into_inner()
});

/// Every file of a site: text files with their bytes, pictures with the names that their content gives them.
pub type Site = BTreeMap<String, Vec<u8>>;

/// The site of a catalogue, whatever is wrong with its records, and the errors.
fn site(files: &BTreeMap<&str, File>) -> (Site, Vec<String>) {
    let folder = tempfile::tempdir().unwrap();
    let write = |path: &str, bytes: &[u8]| {
        let path = folder.path().join(path);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, bytes).unwrap();
    };
    for (path, file) in files {
        match file {
            File::Records { table, .. } => write(path, toml::to_string(table).unwrap().as_bytes()),
            File::Text(text) => write(path, text.as_bytes()),
        }
    }
    write(
        "themes/harbour/words/en.ftl",
        b"census = Register of sheets\n",
    );
    write("records/documents/pictures/leaf.png", &PICTURE);
    for name in ["1", "drawing", "block"] {
        write(&format!("records/designs/1/pictures/{name}.png"), &PICTURE);
    }
    compiled(folder.path())
}

/// The site of a literal without errors.
pub fn site_of(literals: &[&str]) -> Site {
    let folder = crate::small::lay_down(literals);
    crate::small::sound(folder.path());
    compiled(folder.path()).0
}

/// The site of the catalogue in a folder, and the errors.
pub fn compiled(folder: &Path) -> (Site, Vec<String>) {
    let judged = judge(folder, &PictureWork::Prepare(&|_, _| {}));
    let errors = judged
        .findings
        .iter()
        .filter(|f| f.severity() == Severity::Error);
    let errors = errors
        .map(|f| format!("{}: {}", f.code.as_str(), f.message))
        .collect();
    let (pulled, site) = judged.pull_site(&|_, _| {}).unwrap();
    let mut files = site.files.clone();
    let parts = pulled.parts(&site);
    files.extend(parts.pictures.keys().map(|path| (path.clone(), Vec::new())));
    for (path, bundle) in &parts.bundles {
        files.insert(path.clone(), bundle.content.clone().into_bytes());
    }
    (files, errors)
}

/// The first file in which two sites differ, with what is around the first difference.
pub fn difference(one: &Site, other: &Site) -> Option<String> {
    let paths: BTreeSet<&String> = one.keys().chain(other.keys()).collect();
    let path = paths
        .into_iter()
        .find(|path| one.get(*path) != other.get(*path))?;
    let (Some(one), Some(other)) = (one.get(path), other.get(path)) else {
        return Some(format!("{path} is in one of them only"));
    };
    let at = one.iter().zip(other).take_while(|(a, b)| a == b).count();
    let around = |bytes: &[u8]| {
        let to = bytes.len().min(at + 120);
        String::from_utf8_lossy(&bytes[at.saturating_sub(60)..to]).into_owned()
    };
    Some(format!(
        "{path}\n    private: {}\n    absent:  {}",
        around(one),
        around(other)
    ))
}

#[test]
fn the_catalogue_of_every_key_is_sound_and_has_every_key() {
    let (_, errors) = site(&FILES);
    assert_eq!(errors, Vec::<String>::new());
    let mut met = BTreeSet::new();
    every_table(&mut FILES.clone(), &mut |path, keys, table| {
        let has = |key: &&str| table.contains_key(*key);
        met.extend(
            keys.declared()
                .iter()
                .filter(|key| has(key))
                .map(|key| format!("{path}.{key}")),
        );
        if table.keys().any(|key| keys.is_further(key)) {
            met.insert(format!("{path}.*"));
        }
    });
    let declared = declared().into_iter().map(|key| key.path);
    let missing: Vec<_> = declared.filter(|path| !met.contains(path)).collect();
    assert_eq!(
        missing,
        Vec::<String>::new(),
        "add these keys to tests/every-key.txt"
    );
}

/// The keys in sets that are changed at once: four keys of a design, four of an impression and four of other records, so
/// that fewer sites need be made. The kinds with fewer keys begin again, so that no set is one key that no page shows.
/// The keys of claims, which many tables have, are changed in all tables of a kind of record at once.
fn sets() -> Vec<Vec<DeclaredKey>> {
    let mut by_kind: [Vec<Vec<DeclaredKey>>; 3] = Default::default();
    let mut claims: BTreeMap<(String, String), Vec<DeclaredKey>> = BTreeMap::new();
    let is_exception = |key: &DeclaredKey| EXCEPTIONS.iter().any(|(path, _)| *path == key.path);
    let place = |kind: &str| match kind {
        "design" => 0,
        "impression" => 1,
        _ => 2,
    };
    let wanted = |key: &DeclaredKey| !is_exception(key) && !key.is_for_editors();
    for key in declared().into_iter().filter(wanted) {
        if key.is_of_claim {
            let of = (key.kind().to_owned(), key.name().to_owned());
            claims.entry(of).or_default().push(key);
        } else {
            by_kind[place(key.kind())].push(vec![key]);
        }
    }
    for ((kind, _), keys) in claims {
        by_kind[place(&kind)].push(keys);
    }
    let by_kind = by_kind.map(in_groups);
    let most = by_kind.iter().map(Vec::len).max().unwrap();
    let set = |at: usize| {
        let of_kind = by_kind.iter().map(|groups| &groups[at % groups.len()]);
        of_kind.flatten().cloned().collect()
    };
    (0..most).map(set).collect()
}

/// How many keys of a kind of record are changed at once.
const KEYS_AT_ONCE: usize = 4;

/// Joins keys of a kind of record four by four, those that stand side by side apart: a key in a table that is absent
/// would not be tested.
fn in_groups(mut keys: Vec<Vec<DeclaredKey>>) -> Vec<Vec<DeclaredKey>> {
    let others = keys.split_off(keys.len().div_ceil(KEYS_AT_ONCE));
    let mut groups: Vec<(Vec<DeclaredKey>, usize)> =
        keys.into_iter().map(|first| (first, 1)).collect();
    for (at, other) in others.into_iter().enumerate() {
        let is_free = |(group, of): &(Vec<DeclaredKey>, usize)| {
            *of < KEYS_AT_ONCE
                && !group
                    .iter()
                    .any(|one| other.iter().any(|key| one.is_in_one_branch(key)))
        };
        let count = groups.len();
        let mut in_turn = (at..at + count).map(|place| place % count);
        match in_turn.find(|place| is_free(&groups[*place])) {
            Some(place) => {
                groups[place].0.extend(other);
                groups[place].1 += 1;
            }
            None => groups.push((other, 1)),
        }
    }
    groups.into_iter().map(|(group, _)| group).collect()
}

/// What `of` gives for each item, from threads of its own: pictures are prepared with tasks of rayon's pool, which must
/// not wait for them.
fn in_parallel<T: Sync, R: Send>(items: &[T], of: impl Fn(&T) -> Vec<R> + Sync) -> Vec<R> {
    let threads = std::thread::available_parallelism().map_or(1, usize::from);
    std::thread::scope(|scope| {
        let of = &of;
        let each = |first: usize| {
            scope.spawn(move || {
                let own = items.iter().skip(first).step_by(threads);
                own.flat_map(of).collect::<Vec<R>>()
            })
        };
        let running: Vec<_> = (0..threads).map(each).collect();
        let results = running.into_iter().map(|thread| thread.join().unwrap());
        results.flatten().collect()
    })
}

/// The site with keys kept private, and without them.
fn private_and_absent(keys: &[DeclaredKey]) -> [Site; 2] {
    [Change::KeepPrivate, Change::Remove].map(|change| site(&changed(keys, change)).0)
}

fn paths(keys: &[DeclaredKey]) -> String {
    let paths: Vec<&str> = keys.iter().map(|key| key.path.as_str()).collect();
    paths.join(", ")
}

#[test]
fn a_private_key_acts_as_absent_in_the_whole_site() {
    let whole = site(&FILES).0;
    let sets = sets();
    let faults: Vec<String> = in_parallel(&sets, |set| {
        let [private, absent] = private_and_absent(set);
        if absent == whole {
            return vec![format!("no page changes without {}", paths(set))];
        }
        let Some(of_set) = difference(&private, &absent) else {
            return Vec::new();
        };
        let of_key = |key: &DeclaredKey| {
            let [private, absent] = private_and_absent(std::slice::from_ref(key));
            let found = difference(&private, &absent)?;
            Some(format!("{}: {found}", key.path))
        };
        let mut faults: Vec<String> = set.iter().filter_map(of_key).collect();
        if faults.is_empty() {
            faults.push(format!("{}: {of_set}", paths(set)));
        }
        faults
    });
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    let keys: usize = sets.iter().map(Vec::len).sum();
    assert!(keys > 400, "only {keys} keys");
}

#[test]
fn every_key_that_cannot_act_as_absent_has_a_reason_and_needs_it() {
    let declared = declared();
    let faults: Vec<String> = in_parallel(EXCEPTIONS, |(path, reason)| {
        assert!(!reason.is_empty());
        let Some(key) = declared.iter().find(|key| key.path == *path) else {
            return vec![format!("no record has {path}")];
        };
        let [private, absent] = private_and_absent(std::slice::from_ref(key));
        let found = difference(&private, &absent);
        let is_needless = found.is_none();
        Vec::from_iter(is_needless.then(|| format!("{path} is an exception no longer")))
    });
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn what_is_settled_changes_no_page_private_or_not() {
    let keys: Vec<DeclaredKey> = declared()
        .into_iter()
        .filter(DeclaredKey::is_for_editors)
        .collect();
    let records: Vec<DeclaredKey> = keys
        .iter()
        .filter(|key| key.name() == SETTLED)
        .cloned()
        .collect();
    assert_eq!((keys.len(), records.len()), (66, 11));
    let whole = site(&FILES).0;
    let sites = [
        site(&changed(&records, Change::Remove)).0,
        site(&changed(&keys, Change::KeepPrivate)).0,
    ];
    for other in sites {
        assert_eq!(difference(&whole, &other), None);
    }
}
